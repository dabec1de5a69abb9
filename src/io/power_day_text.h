#pragma once

// The bank over a day as text and as JSON.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "calc/power_day.h"
#include "io/measure.h"

namespace thole {

// One block apart from its fellows, as it is typed: "capacity=70", "capacity=80, charge=90"
// (percent). Empty, and a sentence in `message`, when it cannot be read.
std::optional<BlockCondition> read_weak_block(std::string_view text, System system,
                                              std::string& message);

// `refill_h`: of the job's own day on its charger; negative when there is no charger.
std::string power_day_text(const PowerDay& day, const std::vector<WindRuntime>& runtimes,
                           double refill_h, System system);

// JSON, SI: write_day() of the draw, and the bank's part as "bank".
std::string write_power_day(const DayResult& draw, const PowerDay& day,
                            const std::vector<WindRuntime>& runtimes, double refill_h);

}  // namespace thole
