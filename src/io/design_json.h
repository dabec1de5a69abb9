#pragma once

#include <string>

#include "calc/design.h"

namespace thole {

// The design as JSON: verdict, results by stage (calc/outputs.h), the full job with the origin of
// each value, every check, step, caution and assumption, and the issues. A number that does not
// exist (of a check that was not evaluated) is null. Two-space indent, "\n" at the end.
std::string write_design(const Design& design);

}  // namespace thole
