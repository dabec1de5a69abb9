#include "calc/hold/capability.h"

#include <algorithm>
#include <cmath>
#include <cstddef>

#include "calc/hold/site.h"
#include "data/capability_seas.h"

namespace thole {

int capability_number(const HoldInput& in, const MotorClass& motor, bool open_ocean) {
  HoldInput there = in;
  there.wind_at_boat_height = false;  // level 1 takes the wind as it blows at 10 m
  int number = 0;
  for (const CapabilitySea& sea : kCapabilitySeas) {
    there.current_mps = sea.current_mps;
    const HeldHull hull = held_hull(there);
    const Sea waves = open_ocean ? Sea{sea.wave_height_m, sea.wave_period_s}
                                 : spm_sea(sea.wind_mps, in.fetch_m, in.depth_m);
    const Weather weather{.wind_mps = sea.wind_mps, .sea = waves, .current_mps = sea.current_mps};
    const Equilibrium lies = worst_heading(hull, vane_table(hull, 0.0), weather);
    if (kDynamic_factor * lies.thrust_N > effective_thrust_N(there, motor)) break;
    number = sea.number;
  }
  return number;
}

SectorNumbers sector_numbers(std::span<const int> by_heading) {
  if (by_heading.empty()) return {};
  constexpr double kSector_deg = 30.0 + 1e-9;
  const double step_deg = 360.0 / static_cast<double>(by_heading.size());
  SectorNumbers lowest{.ahead = by_heading.front(), .all_round = by_heading.front()};
  for (std::size_t i = 0; i < by_heading.size(); ++i) {
    const double clockwise_deg = static_cast<double>(i) * step_deg;
    const double off_deg = std::min(clockwise_deg, 360.0 - clockwise_deg);
    if (off_deg <= kSector_deg) lowest.ahead = std::min(lowest.ahead, by_heading[i]);
    lowest.all_round = std::min(lowest.all_round, by_heading[i]);
  }
  return lowest;
}

std::string capability_notation(const SectorNumbers& intact,
                                const std::optional<SectorNumbers>& after_failure) {
  const auto pair = [](const SectorNumbers& numbers) {
    return std::to_string(numbers.ahead) + ", " + std::to_string(numbers.all_round);
  };
  return "DP capability-L1(" + pair(intact) + ", " +
         (after_failure ? pair(*after_failure) : "NA, NA") + ")";
}

}  // namespace thole
