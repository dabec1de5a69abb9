#pragma once

// Shaft length against thrust kept and time ventilating; and the tube as it bends at full thrust.

#include "calc/length_study.h"
#include "draw/drawing.h"
#include "io/measure.h"

namespace thole {

// Precondition of both: the study has no problem; of the second: its tube is known (bend is not empty).
Drawing length_curve_picture(const LengthStudy& study, System system);
Drawing tube_bend_picture(const LengthStudy& study, System system);

}  // namespace thole
