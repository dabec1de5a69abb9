#pragma once

// The bank over a day as text and as JSON.

#include <optional>
#include <string>
#include <string_view>

#include "calc/bank_day_study.h"
#include "io/measure.h"

namespace thole {

// One block apart from its fellows, as it is typed: "capacity=70", "capacity=80, charge=90"
// (percent). Empty, and a sentence in `message`, when it cannot be read.
std::optional<BlockCondition> read_weak_block(std::string_view text, System system,
                                              std::string& message);

// The hours as a table, what ends them, the blocks one by one where they differ, years, winds.
std::string power_day_text(const BankDay& day, const Design& design, System system);

// JSON, SI: write_day() of the draw, and the bank's part as "bank".
std::string write_power_day(const DayResult& draw, const BankDay& day, const Design& design);

}  // namespace thole
