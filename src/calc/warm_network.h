#pragma once

// A circuit whose copper warms under its own load: the currents warm it, warm copper resists more, and
// that changes the currents, until both rest.

#include <vector>

#include "calc/feeder/cable.h"
#include "calc/network/network.h"

namespace thole {

// What of a branch is copper. Without any it keeps its resistance.
struct BranchCopper {
  double cold_ohm = 0.0;   // of its copper, 20 C; 0: none
  double fixed_ohm = 0.0;  // of joints and devices besides
  CableLoad load{};        // what it may carry and the air round it; the current is found
};

struct WarmNetwork {
  NetworkSolution solution{};
  std::vector<double> temperature_C{};  // by branch; 0 without copper
  int pass_count = 0;
  bool rests = false;  // temperatures changed by less than 1e-9 K in the last pass
};

// Sets the resistances of `network` to those of its temperatures. From the air's temperature up: more
// current warms, and warmer copper takes more of a motor of constant power, so that the passes close in
// on the first balance. A copper beyond all insulation is 250 C (kHottest_C). Where the circuit cannot
// be solved the solution's message says which part is at fault.
// Source: kCableHeating, steady state. Precondition: `copper` has an entry for each branch.
WarmNetwork warm_network(Network& network, const std::vector<BranchCopper>& copper);

}  // namespace thole
