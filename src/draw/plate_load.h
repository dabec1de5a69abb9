#pragma once

// The plate in plan under one load, with lines of equal stress and what each bolt pulls; below it, from
// the side, how it bends: enlarged as far as there is room, by a round number that it says, or to scale.

#include "calc/plate_study.h"
#include "draw/drawing.h"
#include "io/measure.h"

namespace thole {

// Precondition: the study was solved; index < findings.
Drawing plate_load_picture(const PlateStudy& study, std::size_t index, System system, bool to_scale = false);
// What the side view is enlarged by.
double bent_factor(const PlateStudy& study, std::size_t index);

}  // namespace thole
