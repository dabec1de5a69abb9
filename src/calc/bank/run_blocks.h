#pragma once

// The blocks of a bank one by one, as they are put to a day.

#include <cstddef>
#include <vector>

#include "data/parts.h"

namespace thole {

// What sets one block apart from what its label and age say. As they say: all ones.
struct BlockCondition {
  double capacity_frac = 1.0;      // of its aged, cold capacity, > 0
  double charge_frac = 1.0;        // when the day starts, 0 .. 1
  double resistance_factor = 1.0;  // over its aged, cold resistance, > 0
};

struct RunBlock {
  BatteryBlock block{};
  double age_factor = 1.0;  // >= 1
  BlockCondition condition{};
};

struct RunString {
  std::vector<RunBlock> blocks{};  // the positive end first
  int count = 1;                   // strings like this one, > 0
};

// Strings of blocks as the label says, all alike.
RunString alike_string(const BatteryBlock& block, std::size_t series_count, int count,
                       double age_factor);

// A block's place: from 0, in the order of wiring.
struct BlockPlace {
  std::size_t string = 0;
  std::size_t block = 0;
};

}  // namespace thole
