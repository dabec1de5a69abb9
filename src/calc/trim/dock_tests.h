#pragma once

// Tests at the dock that put a measured figure in the place of an estimated one: the metacentric
// height from a roll's period or from a weight moved across, kg per cm from a known weight. Each
// comes with its spread: nineteen of twenty true values lie within it, if readings and boat are as
// well known as the input says (errors taken as independent, added as squares).

#include <string>
#include <vector>

#include "base/trace.h"

namespace thole {

struct GmReading {
  double gm_m = 0.0;
  double spread_m = 0.0;  // to either side
  Trace trace{};          // two steps: the figure, and its spread
  std::vector<std::string> doubts{};  // what speaks against using it; empty: sound
};

struct RollTestInput {
  double beam_m = 0.0;    // largest, of the hull; > 0
  double period_s = 0.0;  // side to side and back; > 0
  double roll_factor = 0.80;
  double roll_factor_spread_factor = 0.08;  // published ones go from 0.73 to 0.88
  double period_spread_s = 0.03;            // a tenth of what a thumb on a watch is off in ten
  double beam_spread_frac = 0.01;
};

// GM = (f B / T)^2.
//
// Source: IMO A.749(18) Annex 3; f 0.80 is for small fishing vessels, other craft are
// extrapolated. Range: 0.1 .. 4 m, beyond which a doubt says so. Precondition: > 0 where said.
GmReading roll_test(const RollTestInput& in);

struct InclineInput {
  double mass_kg = 0.0;            // moved; > 0
  double shift_m = 0.0;            // athwart; > 0
  double pendulum_m = 0.0;         // length of the plumb line; > 0
  double pendulum_shift_mm = 0.0;  // of its foot; > 0
  double displacement_kg = 0.0;    // as she floats in the test, that weight aboard; > 0
  double displacement_spread_frac = 0.10;
  double mass_spread_frac = 0.02;   // bathroom scales
  double shift_spread_m = 0.02;     // tape
  double pendulum_spread_m = 0.01;
  double reading_spread_mm = 2.0;   // the foot swings
};

// GM = w d / (D tan phi), tan phi = shift of the foot over the line's length.
//
// Source: inclining experiment (Derrett). Range: wall sides and small angles; below 1 deg and above
// 7 deg a doubt says so. Precondition: > 0 where said.
GmReading inclining_test(const InclineInput& in);

// The angle that the plumb line shows.
double pendulum_deg(double pendulum_m, double pendulum_shift_mm);

struct ImmersionInput {
  double mass_kg = 0.0;      // put amidships; > 0
  double sinkage_mm = 0.0;   // mean of bow and stern; > 0
  double waterline_length_m = 0.0;
  double waterline_beam_m = 0.0;
  double density_kg_per_m3 = 1025.0;
  double mass_spread_frac = 0.02;
  double reading_spread_mm = 3.0;  // of the mean, with ripples
  double length_spread_frac = 0.02;
  double beam_spread_frac = 0.02;
};

struct ImmersionReading {
  double immersion_kg_per_cm = 0.0;
  double immersion_spread_kg_per_cm = 0.0;
  double waterplane_ratio = 0.0;
  double waterplane_spread_ratio = 0.0;
  Trace trace{};
  std::vector<std::string> doubts{};
};

// T1 = w / s; C = 100 T1 / (rho L B).
//
// Source: definition of kg per cm (Derrett). Range: C from 2/3 to 1, beyond which a doubt says so.
// Precondition: > 0 where said, and length and beam > 0.
ImmersionReading immersion_test(const ImmersionInput& in);

}  // namespace thole
