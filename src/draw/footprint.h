#pragma once

// The hour of holding as pictures: the bow's track on the water, and what the motor gave.

#include "calc/hold/simulate.h"
#include "draw/drawing.h"
#include "io/measure.h"

namespace thole {

// The water from above, the wind from the top, the boat to scale where it was `at_s` into the record,
// with the track so far. Precondition: a run with a track.
Drawing footprint_picture(const HoldRun& run, const HoldRunInput& in, double at_s, System system);

enum class Effort { thrust, power };

// Share of all there is, over the time, a line at the moment shown, and at the right how often.
Drawing effort_picture(const HoldRun& run, const HoldRunInput& in, Effort effort, double at_s,
                       System system);

}  // namespace thole
