#pragma once

// How a stage ranks what it may choose from: what misses its limits least, then the least of what
// counts (mass, current ...), then the cheaper.

#include <algorithm>
#include <cmath>
#include <span>

#include "base/trace.h"

namespace thole {

// By how much the demands pass their limits, in all; 0 when every check passes. A check that cannot
// be evaluated weighs as one missed by as much again as its limit.
inline double shortfall_ratio(std::span<const Check> demands) {
  constexpr double kUnknown_ratio = 1.0;
  constexpr double kHopeless_ratio = 10.0;  // beyond it, worse is no worse
  double sum_ratio = 0.0;
  for (const Check& check : demands) {
    const double used_ratio = check.utilisation();
    sum_ratio += std::isnan(used_ratio)
                     ? kUnknown_ratio
                     : std::min(kHopeless_ratio, std::max(0.0, used_ratio - 1.0));
  }
  return sum_ratio;
}

struct Rank {
  double shortfall_ratio = 0.0;
  double least_count = 0.0;  // of what is to be least
  double price = 0.0;
  bool operator<(const Rank& other) const {
    if (shortfall_ratio != other.shortfall_ratio) return shortfall_ratio < other.shortfall_ratio;
    if (least_count != other.least_count) return least_count < other.least_count;
    return price < other.price;
  }
};

}  // namespace thole
