#pragma once

// The factors that a trial at sea gives, each with its band, beside what was computed.

#include "calc/hold/calibrate.h"
#include "draw/drawing.h"

namespace thole {

Drawing trial_picture(const CalibrateResult& trial);

}  // namespace thole
