#pragma once

// Time against current, both logarithmic: when each device opens, how long the cable stands it,
// what the motor asks, and what a short circuit may draw.

#include "calc/protection/protection.h"
#include "draw/drawing.h"
#include "io/measure.h"

namespace thole {

// Precondition: a run, and `result` is that of `in`.
Drawing trip_curves_picture(const ProtectionInput& in, const ProtectionResult& result,
                            System system);

}  // namespace thole
