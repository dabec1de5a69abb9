#pragma once

// The foredeck from the side and, below it, from above: what stands on it, the motor stowed and on its way
// up, the nearest things dimensioned, the arc of the bow light with what is hidden of it. The bow points to
// the right.

#include "calc/foredeck_study.h"
#include "draw/drawing.h"
#include "io/measure.h"

namespace thole {

Drawing foredeck_plan(const ForedeckStudy& study, System system);
Drawing foredeck_picture(const Design& design, System system);  // the same, for a chapter

}  // namespace thole
