#pragma once

// The heading sensor and the feeder's field, as text for a person; JSON for a program.

#include <string>

#include "calc/compass_study.h"
#include "io/measure.h"

namespace thole {

std::string compass_text(const CompassStudy& study, System system);
std::string write_compass(const CompassStudy& study);  // SI

}  // namespace thole
