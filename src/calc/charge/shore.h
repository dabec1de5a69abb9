#pragma once

// Tonight on shore: when the bank is full on the current that this outlet can spare, and the
// ratings to look for on the shore side.

#include <limits>
#include <string>

#include "base/trace.h"
#include "data/parts.h"

namespace thole {

struct ShoreInput {
  Chemistry chemistry = Chemistry::agm;
  double block_capacity_Ah = 0.0;  // > 0
  double block_charge_V = 0.0;     // > 0
  int block_count = 0;             // each on its own output, charged at once
  double depth_frac = 0.0;         // taken out, 0 .. 1
  double charger_A = 0.0;          // into each block, > 0
  double efficiency_frac = 0.85;
  double power_factor = 0.65;
  double shore_V = 120.0;
  double outlet_A = 15.0;      // its breaker
  double other_loads_A = 0.0;  // on the same outlet, all night
  double limit_A = std::numeric_limits<double>::infinity();  // that the charger may take of it
  double night_h = 0.0;        // until the boat leaves
};

// What an outlet can give a charger for hours: 80 % of its breaker less what else hangs on it, and
// no more than the charger may take. Source: kShoreLoad, recalled.
double outlet_spare_A(double outlet_A, double other_loads_A, double limit_A);

struct ShoreResult {
  double spare_A = 0.0;    // of the outlet, continuous
  double output_A = 0.0;   // into each block, within that
  double shore_A = 0.0;    // drawn then
  double full_h = 0.0;     // 0: it is full already
  double left_frac = 0.0;  // charge at the end of the night
  bool full_tonight = false;
  std::string problem{};
  Trace trace{};
};

//   I_spare = min(I_limit, 0.8 I_outlet - I_other);   I_b = min(I_charger, I_spare e pf V_ac / (n V))
//
// A charger that can be turned down is taken to be turned down; one that cannot trips the outlet,
// and the check on it says so. Sources: the continuous 80 % (recalled), definition, taper().
ShoreResult shore(const ShoreInput& in);

}  // namespace thole
