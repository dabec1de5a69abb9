#pragma once

// The boat from above with the feeder's way and lines of equal heading error at full thrust.

#include "calc/compass/compass.h"
#include "draw/drawing.h"
#include "io/measure.h"

namespace thole {

// Bow to the right. Lines at 1, 2, 5 and 10 degrees and at the limit, the limit's in colour, at the
// sensor's height; the sensor with its own error. Precondition: the result of compass(in).
Drawing compass_plan_picture(const CompassInput& in, const CompassResult& result,
                             double boat_length_m, System system);

}  // namespace thole
