#pragma once

// A day on the water as one line of text: stretches of holding in a wind and of creeping at a share of
// full thrust.

#include <string>
#include <string_view>
#include <vector>

namespace thole {

struct PlannedStretch {
  double duration_h = 0.0;
  bool creeping = false;
  double wind_mps = 0.0;     // holding: ten-minute mean at 10 m
  double thrust_frac = 0.0;  // creeping
};

inline constexpr double kMostDay_h = 24.0;
inline constexpr double kMostPlannedWind_mps = 35.0;

// Reads "hours@wind" and "hours@share" with blanks between, as in "2h@8kn 1.5h@6m/s 0.5h@50%": up to 24
// stretches, together at most a day. Not understood or out of range: `message` is one sentence.
struct DayPlanRead {
  std::vector<PlannedStretch> stretches{};
  std::string message{};  // empty: it was understood
};
DayPlanRead read_day_plan(std::string_view text);

}  // namespace thole
