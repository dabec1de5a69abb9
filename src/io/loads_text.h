#pragma once

// The mount's load cases, as text for a person; JSON for a program.

#include <string>

#include "calc/load_cases_study.h"
#include "io/measure.h"

namespace thole {

std::string loads_text(const LoadsStudy& study, System system);
std::string write_loads(const LoadsStudy& study);  // SI

}  // namespace thole
