#pragma once

// Charging under way: a converter between the engine's alternator and the bank.

#include <string>
#include <string_view>

#include "base/trace.h"
#include "data/parts.h"

namespace thole {

inline constexpr std::string_view kAlternatorCheck = "charge.dc_dc_alternator";

struct DcDcInput {
  Chemistry chemistry = Chemistry::agm;
  double capacity_Ah = 0.0;  // of the bank, > 0
  double depth_frac = 0.0;   // taken out, 0 .. 1
  double charge_V = 0.0;     // of the bank on charge, > 0
  double output_A = 0.0;     // of the converter into the bank, > 0
  double efficiency_frac = 0.88;
  double alternator_V = 13.5;  // at the converter's input, running
  double alternator_A = 0.0;   // its label, > 0
  double hot_frac = 0.5;       // what it gives hot and at idle, of its label; kCommonPractice
  double own_loads_A = 0.0;    // engine, instruments, start battery
  double running_h = 0.0;      // of the engine in a day
};

struct DcDcResult {
  double input_A = 0.0;     // that the converter draws at its full output
  double spare_A = 0.0;     // that the alternator has for it
  double output_A = 0.0;    // that reaches the bank within that share
  double full_h = 0.0;      // of running to full; 0 when nothing is missing
  double stored_Ah = 0.0;   // in a day's running
  double left_frac = 0.0;   // charge of the bank after it
  double share_frac = 0.0;  // of the alternator's label that the converter takes
  std::string problem{};    // a sentence; empty when all was computed
  Trace trace{};
};

//   I_in = V_out I_out / (eta V_in);   I_spare = f I_label - I_own;   the output shrinks to fit
//
// Hours to full by taper(). Sources: definition; half of the label when hot at idle, the
// converter's efficiency: common practice. Left out: the drop in the leads, the converter's own
// limits in heat.
DcDcResult dc_dc(const DcDcInput& in);

}  // namespace thole
