#pragma once

// Questions beyond evaluate(), asked of a finished design: the hour of holding, and the trial at sea.

#include "calc/design.h"
#include "calc/hold/calibrate.h"
#include "calc/hold/simulate.h"

namespace thole {

// An hour in the weather, with the motor, tolerance and gusts of the job. Precondition: a motor.
HoldRunInput hold_run_input(const Design& design);

// The trial at sea as far as the job knows it: at most one reading of each kind. A drift counts once
// its minutes, speed and wind are known, a held reading once its thrust and wind are.
CalibrateInput trial_input(const Design& design);

// The job with the factors of a trial, as fine as their fields are.
Job with_trial_factors(Job job, const CalibrateResult& trial);

}  // namespace thole
