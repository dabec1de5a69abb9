#pragma once

// A design's bank over a day: what hold and feeder say, put to the bank second by second.

#include <vector>

#include "calc/bank/day_run.h"
#include "calc/design.h"
#include "calc/hold/day.h"

namespace thole {

// The bank of a design as it was chosen, cold and aged as its job says, all blocks alike and full.
// No conditions when there is no bank.
BankRunInput bank_run_input(const Design& design);

// A segment's levels as steps of `step_s`: each level comes as often as its share of the time says,
// in an order that spreads it over the segment (multiples of the golden ratio), so that bursts and
// rest follow each other as they do on the water. The current's order within a gust is not known;
// the wells of a battery level out in an hour, so it hardly matters.
std::vector<PowerStep> power_steps(const DaySegment& segment, double power_full_W,
                                   double power_idle_W, double step_s);

// The bank over a day of segments, second by second.
struct PowerDay {
  std::vector<DaySegment> segments{};
  BankRunResult run{};
  double asked_h = 0.0;  // the segments' length
  double left_h = 0.0;   // after the day, at its mean power, until something cuts off
  CutOff left_until = CutOff::none;
};
PowerDay power_day(const BankRunInput& bank, const DayInput& day);

// Hours of holding in a wind until something cuts off.
struct WindRuntime {
  double wind_mps = 0.0;
  double time_h = 0.0;
  bool held = true;               // with the margin that the job asks
  CutOff cut_off = CutOff::none;  // none: longer than was tried
};
inline constexpr double kLongestRuntime_h = 48.0;
std::vector<WindRuntime> runtime_by_wind(const Design& design, const BankRunInput& bank,
                                         const std::vector<double>& winds_mps);

}  // namespace thole
