#pragma once

// Same cable, six answers: the volts lost along one run by each method in use, side by side.

#include <string_view>
#include <vector>

#include "base/trace.h"
#include "calc/feeder/cable.h"

namespace thole {

struct DropMethod {
  std::string_view id{};  // "iso", "bare_20", "e11_awg", "e11_sae", "tinned_warm", "tinned_75"
  std::string_view label{};
  std::string_view table{};    // what its resistance rests on
  double temperature_C = 0.0;  // of the copper; of a rule, at which pure copper has its constant
  double ohm_per_m = 0.0;      // one conductor
  double drop_V = 0.0;
  SourceRef source{};
};

// From the most lenient rule to the strictest table. The SAE area is left out for conductors that
// SAE J1127 does not list. `loop_m` is out and back; `load` warms the cable for "tinned_warm".
std::vector<DropMethod> drop_methods(const Conductor& conductor, const CableLoad& load,
                                     double loop_m);

}  // namespace thole
