#pragma once

// The plate by finite elements, as text: load case by load case for a person; JSON for a program.

#include <string>

#include "calc/plate_study.h"
#include "io/measure.h"

namespace thole {

std::string plate_text(const PlateStudy& study, System system);
std::string write_plate(const PlateStudy& study);  // SI; nodes and triangles as well

}  // namespace thole
