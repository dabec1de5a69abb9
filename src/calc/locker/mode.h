#pragma once

// The ways in which all blocks of a bank may lie: upright or on their sides, in one tier or two.

#include <vector>

#include "calc/locker/fit.h"
#include "calc/locker/floor.h"

namespace thole {

// One way for all blocks to lie.
struct Mode {
  Posture posture = Posture::upright;
  int tier_count = 1;
  double depth_m = 0.0;  // of the case in plan, across its long side
  double rise_m = 0.0;   // height of the case as it lies
  double over_m = 0.0;   // room above it
  double ahead_m = 0.0;  // room before its top, when that faces aside
  double pitch_m = 0.0;  // from tier to tier
  double height_m = 0.0;
  FloorPlan plan{};
};

Mode mode_of(const PackingInput& in, Posture posture, int tier_count);

// Those that chemistry and maker allow, the simplest first.
std::vector<Mode> modes_of(const PackingInput& in);

}  // namespace thole
