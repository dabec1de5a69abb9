#pragma once

// The bow from the side with the motor stowed and lowered: deck, plate and bolts, shaft, propeller,
// waterline, crest and trough, with their dimensions.

#include "calc/foredeck_study.h"
#include "draw/drawing.h"
#include "io/measure.h"

namespace thole {

Drawing bow_elevation(const Design& design, System system);

}  // namespace thole
