#pragma once

// Time to refill a battery: constant current up to the absorption voltage, then a current that dies
// away until its tail.

#include "data/parts.h"

namespace thole {

struct TaperInput {
  double capacity_Ah = 0.0;            // > 0
  double depth_frac = 0.0;             // taken out, 0 .. 1
  double bulk_A = 0.0;                 // > tail_A
  double tail_A = 0.0;                 // ends absorption, > 0
  double switch_frac = 0.8;            // charge at which the absorption voltage is reached
  double bulk_efficiency_frac = 0.95;  // amp-hours stored over amp-hours put in
  double absorption_efficiency_frac = 0.75;
  double absorption_min_h = 0.0;  // absorption is kept up at least so long
};

struct TaperResult {
  double bulk_h = 0.0;
  double absorption_Ah = 0.0;  // put in during absorption
  double absorption_h = 0.0;
  double time_h = 0.0;
};

//   t_bulk = max(0, s_w - (1 - DoD)) C / (eta_b I_b)
//   Q_r = (1 - max(s_w, 1 - DoD)) C / eta_a,  t_abs = Q_r ln(I_b / I_t) / (I_b - I_t)
//
// An exponential taper that carries exactly Q_r. Source: derived; common practice for its figures.
TaperResult taper(const TaperInput& in);

// Charge at which a charger of this current, as a share of capacity per hour, reaches the
// absorption voltage. Lead-acid 0.75 at C/5 and 0.80 at 0.15 C, lithium 0.95: common practice.
double switch_charge_frac(Chemistry chemistry, double rate_frac);

// Absorption volts of a cell at another temperature than 25 C.
double compensated_V(double cell_25_V, double slope_V_per_K, double temperature_C);

// Current from the mains: n V I / (eta pf V_ac).
struct MainsInput {
  int output_count = 1;
  double charge_V = 0.0;
  double output_A = 0.0;
  double efficiency_frac = 0.85;  // > 0
  double power_factor = 0.65;     // > 0
  double shore_V = 120.0;         // > 0
};
double mains_A(const MainsInput& in);

}  // namespace thole
