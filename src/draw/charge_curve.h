#pragma once

// A night on shore against the hours: amps into each block above, its charge below, the three stages
// as bands, and the hour the boat leaves.

#include "calc/charging_study.h"
#include "draw/drawing.h"
#include "io/measure.h"

namespace thole {

// Precondition: the night has points.
Drawing charge_curve_picture(const ChargingNight& night, System system);

}  // namespace thole
