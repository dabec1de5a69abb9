#pragma once

// Breakers and fuses: which rating, where, against which fault, and whether the cable outlives it.

#include "data/parts.h"

namespace thole {

// Least rating for a continuous load: I / 0.8. Source: kContinuousLoad.
double device_min_A(double current_A);

// The standard rating at or above `current_A`; the largest, 600 A, when there is none.
double standard_rating_up_A(double current_A);

// Greatest rating for a conductor: its ampacity, or the next standard rating above it when that is
// at most 150 % of it. Source: kE11Rating; 33 CFR 183.455(c)(2) says the same from 50 V.
double device_max_A(double ampacity_A);

// 33 CFR 183.455(c)(1), below 50 V: 150 % of the Table 5 value. More lenient than E-11.
double device_ceiling_A(double table_ampacity_A);

// Farthest that the device may stand from the source, along the conductor. Source: kE11Placement.
double placement_limit_m(bool sheathed, bool from_battery_terminal);

// Resistance of a 12 V lead-acid battery at -18 C from its cold-cranking amperes (kCrankingFault).
double cranking_resistance_ohm(double cranking_A);

struct InterruptRating {
  double main_A = 0.0;
  double branch_A = 0.0;
};

// Interrupting capacity that E-11 asks of devices at 12 and 24 V, by the bank's total cold-cranking
// amperes. Banks above 2200 CCA or 500 Ah need their short-circuit current instead.
InterruptRating interrupt_for_cranking(double total_cranking_A);

}  // namespace thole
