#pragma once

// A day's draw as text, and the stretches that a command names.

#include <optional>
#include <string>
#include <string_view>

#include "calc/hold/day.h"
#include "io/measure.h"

namespace thole {

// A stretch as it is typed: "hours=2, wind=12 kn", or "hours=0.5, thrust=50" (percent of full).
struct Stretch {
  double duration_h = 0.0;
  std::optional<double> wind_mps{};
  double thrust_frac = 0.0;  // creeping, when there is no wind
};

// Empty, and a sentence in `message`, when it cannot be read.
std::optional<Stretch> read_stretch(std::string_view text, System system, std::string& message);

std::string day_text(const DayResult& day, System system);
std::string write_day(const DayResult& day);  // JSON, SI

}  // namespace thole
