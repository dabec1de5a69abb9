#pragma once

// The battery locker from the side, to scale: its low and its high opening as round holes, the fan
// where there is one, how near to the blocks nothing may spark.

#include "calc/charging_study.h"
#include "draw/drawing.h"
#include "io/measure.h"

namespace thole {

// Without a measured locker: one of the free volume's size, twice as long as high. The blocks as the
// catalogue has them, in a row; no more than fit are drawn. Lithium: the high opening alone.
Drawing vent_plan_picture(const ChargingStudy& study, const Design& design, System system);

}  // namespace thole
