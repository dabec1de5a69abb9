#pragma once

// JSON Schema (2020-12) of what the readers accept and of what evaluate() says, made from the same
// tables. docs/formats/ holds the output, so that editors complete and check a file while it is
// typed; the types of the engine's module are made from it.

#include <string>

namespace thole {

std::string job_schema();
std::string catalogue_schema();
std::string preset_schema();
std::string design_schema();

}  // namespace thole
