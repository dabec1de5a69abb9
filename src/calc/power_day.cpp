#include "calc/power_day.h"

#include <algorithm>
#include <cmath>
#include <cstddef>

#include "calc/hold/thruster.h"

namespace thole {
namespace {

constexpr double kGolden_frac = 0.6180339887498949;
constexpr double kDayStep_s = 1.0;
constexpr double kRuntimeStep_s = 10.0;

}  // namespace

BankRunInput bank_run_input(const Design& design) {
  BankRunInput in;
  if (!design.bank.found) return in;
  in.block = design.bank.block;
  in.parallel_count = design.bank.parallel_count;
  in.conditions.resize(static_cast<std::size_t>(std::max(0, design.bank.series_count)));
  in.temperature_C = design.job.bank.temperature_C.value;
  in.age_factor = design.job.bank.age_factor.value;
  in.minimum_V = design.hold.motor.minimum_V;
  // Drop over current, at full thrust: the feeder hot.
  if (design.feeder.found && design.feeder.current_A > 0.0) {
    in.feeder_ohm = design.feeder.drop_V / design.feeder.current_A;
  }
  return in;
}

std::vector<PowerStep> power_steps(const DaySegment& segment, double power_full_W,
                                   double power_idle_W, double step_s) {
  std::vector<PowerStep> steps;
  const auto count = static_cast<std::size_t>(std::lround(segment.duration_h * 3600.0 / step_s));
  if (segment.duty.empty()) return steps;
  steps.reserve(count);
  std::vector<double> up_to_frac;
  std::vector<double> power_W;
  double sum_frac = 0.0;
  for (const Duty& part : segment.duty) {
    sum_frac += part.time_frac;
    up_to_frac.push_back(sum_frac);
    power_W.push_back(power_idle_W +
                      (power_full_W - power_idle_W) * power_share_frac(part.thrust_frac));
  }
  double at_frac = 0.5;
  for (std::size_t i = 0; i < count; ++i) {
    const auto level =
        std::upper_bound(up_to_frac.begin(), up_to_frac.end() - 1, at_frac * sum_frac) -
        up_to_frac.begin();
    steps.push_back({power_W[static_cast<std::size_t>(level)], step_s});
    at_frac += kGolden_frac;
    if (at_frac >= 1.0) at_frac -= 1.0;
  }
  return steps;
}

PowerDay power_day(const BankRunInput& bank, const DayInput& day) {
  PowerDay result{.segments = day.segments};
  std::vector<PowerStep> steps;
  for (const DaySegment& segment : day.segments) {
    const std::vector<PowerStep> more =
        power_steps(segment, day.power_full_W, day.power_idle_W, kDayStep_s);
    steps.insert(steps.end(), more.begin(), more.end());
  }
  result.asked_h = static_cast<double>(steps.size()) * kDayStep_s / 3600.0;
  result.run = run_bank(bank, steps, 3600.0);
  if (result.run.cut_off != CutOff::none || !(result.asked_h > 0.0)) return result;
  const double mean_W = result.run.load_Wh / result.asked_h;
  const auto more_count = static_cast<std::size_t>(3600.0 * kLongestRuntime_h / kRuntimeStep_s);
  steps.insert(steps.end(), more_count, PowerStep{mean_W, kRuntimeStep_s});
  const BankRunResult on = run_bank(bank, steps, 3600.0 * kLongestRuntime_h);
  result.left_h = on.cut_off_h - result.asked_h;
  result.left_until = on.cut_off;
  return result;
}

std::vector<WindRuntime> runtime_by_wind(const Design& design, const BankRunInput& bank,
                                         const std::vector<double>& winds_mps) {
  std::vector<WindRuntime> runtimes;
  if (!design.hold.motor_found || bank.conditions.empty()) return runtimes;
  const HoldInput hold = hold_input(design);
  const MotorClass& motor = design.hold.motor;
  for (const double wind_mps : winds_mps) {
    const BankRunResult run =
        run_bank(bank,
                 power_steps(holding_segment(hold, motor, wind_mps, kLongestRuntime_h),
                             motor.power_full_W, motor.power_idle_W, kRuntimeStep_s),
                 3600.0 * kLongestRuntime_h);
    runtimes.push_back({.wind_mps = wind_mps,
                        .time_h = run.cut_off_h,
                        .held = wind_mps <= design.hold.limiting_wind_mps,
                        .cut_off = run.cut_off});
  }
  return runtimes;
}

}  // namespace thole
