#pragma once

// Which input moves an answer most, as text: a table with bars for a person, JSON for a program.

#include <string>

#include "calc/sensitivity.h"
#include "io/measure.h"

namespace thole {

// Precondition of both: the output was known.
std::string sensitivity_text(const SensitivityResult& result, const Output& output, System system);
std::string write_sensitivity(const SensitivityResult& result, const Output& output);  // SI

}  // namespace thole
