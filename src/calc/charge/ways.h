#pragma once

// The ways to charge, each asked with the boat's own figures: tonight on shore, the engine, the sun,
// and the air that the locker wants meanwhile.

#include "calc/charge/charge.h"
#include "calc/charge/dc_dc.h"
#include "calc/charge/shore.h"
#include "calc/charge/solar.h"
#include "calc/charge/vent_plan.h"

namespace thole {

// Of the outlet, for the charger. Without its breaker: what was allowed.
double shore_spare_A(const ChargeInput& in);

// Each with the charger that was chosen. Precondition: `result` has its charger, output and volts.
ShoreInput shore_input(const ChargeInput& in, const ChargeResult& result);
VentPlanInput vent_plan_input(const ChargeInput& in, const ChargeResult& result);

// Precondition: `result` has its volts.
DcDcInput dc_dc_input(const ChargeInput& in, const ChargeResult& result);

SolarInput solar_input(const ChargeInput& in);

}  // namespace thole
