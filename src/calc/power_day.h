#pragma once

// A design's bank over a day: what hold and feeder say, put to the bank second by second.

#include <vector>

#include "calc/bank/day_run.h"
#include "calc/design.h"
#include "calc/hold/day.h"

namespace thole {

// The bank of a design, cold and aged as its job says, full but for what its job says of a block. No
// strings when there is no bank.
BankRunInput bank_run_input(const Design& design);

// The day that a design's job plans, stretch by stretch or by its hours. Precondition: a motor.
DayInput day_input(const Design& design);

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
  BankRunResult after{};  // the same run to its end; as `run` when the day was cut short
};
PowerDay power_day(const BankRunInput& bank, const DayInput& day, double moment_s = 3600.0);

// Hours until something cuts off: within the day, or after it at its mean power.
double hours_until_cut(const PowerDay& day);

// power_day() in slices, for a page that must draw in between.
class PowerDayRun {
 public:
  PowerDayRun(const BankRunInput& bank, const DayInput& day, double moment_s);

  // So many more steps; false when the day and what it leaves are known.
  bool advance(std::size_t steps_count);
  double done_frac() const;
  const PowerDay& result() const { return result_; }

 private:
  void finish_day();

  PowerDay result_{};
  std::vector<PowerStep> steps_{};
  std::size_t at_ = 0;
  BankRun run_;
  bool after_day_ = false;
  bool done_ = false;
};

// Hours of holding in a wind until something cuts off.
struct WindRuntime {
  double wind_mps = 0.0;
  double time_h = 0.0;
  bool held = true;               // with the margin that the job asks
  CutOff cut_off = CutOff::none;  // none: longer than was tried
};
inline constexpr double kLongestRuntime_h = 48.0;
WindRuntime runtime_in(const Design& design, const BankRunInput& bank, double wind_mps);
std::vector<WindRuntime> runtime_by_wind(const Design& design, const BankRunInput& bank,
                                         const std::vector<double>& winds_mps);

}  // namespace thole
