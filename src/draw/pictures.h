#pragma once

// One picture to a page, made from the design alone. What is estimated is drawn dotted.

#include "calc/design.h"
#include "draw/drawing.h"
#include "io/measure.h"

namespace thole {

Drawing boat_picture(const Design& design, System system);    // side view with its dimensions
Drawing water_picture(const Design& design, System system);   // waves, depth, current
Drawing hold_picture(const Design& design, System system);    // rose of the wind that can be held
Drawing shaft_picture(const Design& design, System system);   // bow, shaft and propeller
Drawing bank_picture(const Design& design, System system);    // energy over the day
Drawing feeder_picture(const Design& design, System system);  // volts at each node
Drawing charge_picture(const Design& design, System system);  // locker with its vents
Drawing mount_picture(const Design& design, System system);   // plate in plan with its bolts
Drawing trim_picture(const Design& design, System system);    // waterline before and after
Drawing control_picture(const Design& design, System system); // sensors and links from above

}  // namespace thole
