#pragma once

// The bank's day as pictures: volts, charge and load over the hours; hours against wind.

#include "calc/bank_day_study.h"
#include "draw/drawing.h"
#include "io/measure.h"

namespace thole {

// Over the day, or what was run of it, a line at the moment shown. Precondition: a day that was
// possible.
Drawing day_curves_picture(const BankDay& day, double at_h, System system);

// Hours of holding until something cuts off, over the wind; the day's wind, and where the motor no
// longer holds. Precondition: winds.
Drawing wind_hours_picture(const BankDay& day, System system);

// The same between the winds that were tried.
double hours_at_wind(const BankDay& day, double wind_mps);

// The moment at or before this time. Precondition: moments.
const BankMoment& moment_at(const BankRunResult& run, double at_h);

}  // namespace thole
