#pragma once

// Capability numbers of station keeping, DNV-ST-0111 (2021) [2.4], [2.5] and Table 2-1. They rate
// ships that choose their heading. A boat held by one unit at its bow cannot: it turns into the
// weather, and at other headings no thrust balances. So the number that makes sense is that of the
// heading it takes; the notation by the letter gives 0 for the sectors.

#include <optional>
#include <span>
#include <string>

#include "calc/hold/hold.h"

namespace thole {

// Highest number of Table 2-1 whose sea state, and that of each number below it, leaves the loads
// times 1.25 within the effective thrust, wind, sea and current all from one side and the boat as
// it then lies. 0: not even number 1. `open_ocean`: with the waves of the table; otherwise with
// what this fetch and depth raise.
int capability_number(const HoldInput& in, const MotorClass& motor, bool open_ocean);

// Numbers by heading, evenly spaced clockwise from weather on the bow.
struct SectorNumbers {
  int ahead = 0;      // lowest within 30 degrees of the bow, edges included
  int all_round = 0;  // lowest of all
};
SectorNumbers sector_numbers(std::span<const int> by_heading);

// "DP capability-L1(8, 6, 5, 3)": intact ahead and all round, then after the worst single failure;
// "NA" where nothing is doubled that could fail alone.
std::string capability_notation(const SectorNumbers& intact,
                                const std::optional<SectorNumbers>& after_failure);

}  // namespace thole
