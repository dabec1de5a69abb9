#pragma once

// The blocks in the boat, one by one: what the text does not say is as the bank's other figures have
// it.

#include <string>
#include <vector>

#include "calc/bank/run_blocks.h"
#include "calc/bank/thresholds.h"
#include "data/fitted_blocks.h"

namespace thole {

// A block as it is said to be. Of another chemistry than `base` it takes nothing from it but the
// rated hours: resistance and wells are then typical of its kind, and no limit of current is known.
BatteryBlock block_as_said(const SaidBlock& said, const BatteryBlock& base);

// The bank as the text has it; without a text, or when it cannot be read, no strings.
struct FittedBank {
  std::vector<RunString> strings{};
  std::vector<FittedBlock> blocks{};  // the same one after the other, for mixed_blocks()
  BlockPlace weakest{};  // least capacity left for its age
  bool found() const { return !strings.empty(); }
  const RunBlock& weakest_block() const { return strings[weakest.string].blocks[weakest.block]; }
};

// `age_factor`: of blocks whose age is not said. `series_count` as in strings_of().
FittedBank fitted_bank(std::string_view text, const BatteryBlock& base, double age_factor,
                       int series_count, double motor_V);

// Capacity that its age and condition have left it, 25 C.
double left_Ah(const RunBlock& block);

// "block 3 of string 1", or "block 3" in a single string.
std::string name_of(BlockPlace place, std::size_t strings_count);

}  // namespace thole
