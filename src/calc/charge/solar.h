#pragma once

// A solar panel as a trickle: what a day of sun puts in against what a bank at rest loses.

#include <string>

#include "base/trace.h"
#include "data/parts.h"

namespace thole {

struct SolarInput {
  Chemistry chemistry = Chemistry::agm;
  double bank_Wh = 0.0;       // by the label, > 0
  double panel_W = 0.0;       // by its label, >= 0
  double full_sun_h = 0.0;    // a day's sun as hours of 1000 W/m2, 0 .. 24
  double derate_frac = 0.6;   // lying flat, warm, dirty, controller; kCommonPractice
  double standing_W = 0.0;    // what draws on the bank at rest: electronics, receiver, alarm
  double missing_frac = 0.0;  // taken out and to be put back, 0 .. 1
};

struct SolarResult {
  double gain_Wh = 0.0;       // into the bank in a day
  double self_loss_Wh = 0.0;  // of the bank in a day
  double standing_Wh = 0.0;
  double net_Wh = 0.0;  // in a day; negative: the bank sinks
  bool keeps_full = false;
  double days_to_full_count = 0.0;  // 0: nothing is missing; infinite: never
  double panel_least_W = 0.0;       // that keeps the bank; 0 without sun: none does
  std::string problem{};
  Trace trace{};
};

// Share of its charge that a block at rest loses in a month of 30 days at 25 C: upper ends of what
// the trade reckons with. Common practice.
double self_loss_per_month_frac(Chemistry chemistry);

//   E = W_p h f e_c,   E_self = E_bank r / 30
//
// Sources: definition; derating and self-discharge common practice. Left out: shadow, season, that
// a lead-acid bank near full takes less.
SolarResult solar(const SolarInput& in);

}  // namespace thole
