#pragma once

// The foredeck from above and from the side: what stands on it, the motor stowed and on its way up, the
// nearest thing, the arc of the bow light with what is hidden of it. The bow points to the right.

#include "calc/foredeck_study.h"
#include "draw/drawing.h"
#include "io/measure.h"

namespace thole {

Drawing foredeck_plan(const ForedeckStudy& study, System system);  // from above
Drawing foredeck_side(const ForedeckStudy& study, System system);
Drawing foredeck_picture(const Design& design, System system);  // from above, for a chapter

}  // namespace thole
