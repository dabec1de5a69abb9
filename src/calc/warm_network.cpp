#include "calc/warm_network.h"

#include <algorithm>
#include <cmath>

namespace thole {
namespace {

constexpr int kMostPasses = 200;
constexpr double kRest_K = 1e-9;

// Of one branch, by what flows through it; 0 without copper.
double temperature_of(const BranchCopper& copper, double current_A) {
  if (!(copper.cold_ohm > 0.0)) return 0.0;
  CableLoad load = copper.load;
  load.current_A = std::abs(current_A);
  return conductor_temperature_C(load);
}

}  // namespace

WarmNetwork warm_network(Network& network, const std::vector<BranchCopper>& copper) {
  WarmNetwork warm;
  for (const BranchCopper& each : copper) warm.temperature_C.push_back(temperature_of(each, 0.0));
  for (warm.pass_count = 1; warm.pass_count <= kMostPasses; ++warm.pass_count) {
    for (std::size_t k = 0; k < copper.size(); ++k) {
      if (!(copper[k].cold_ohm > 0.0)) continue;
      network.branches[k].resistance_ohm =
          copper[k].fixed_ohm + resistance_at(copper[k].cold_ohm, warm.temperature_C[k]);
    }
    warm.solution = solve_network(network);
    if (!warm.solution.solved) return warm;
    double most_K = 0.0;
    for (std::size_t k = 0; k < copper.size(); ++k) {
      const double next_C = temperature_of(copper[k], warm.solution.branch_A[k]);
      most_K = std::max(most_K, std::abs(next_C - warm.temperature_C[k]));
      // What was solved belongs to the temperatures that stand.
      if (most_K > kRest_K) warm.temperature_C[k] = next_C;
    }
    warm.rests = most_K <= kRest_K;
    if (warm.rests) return warm;
  }
  return warm;
}

}  // namespace thole
