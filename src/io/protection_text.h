#pragma once

// Protection by curves, as text for a person; JSON for a program.

#include <string>

#include "calc/protection_study.h"
#include "io/measure.h"

namespace thole {

std::string protection_text(const ProtectionStudy& study, System system);
std::string write_protection(const ProtectionStudy& study);  // SI

}  // namespace thole
