#include "calc/power_day.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <span>

#include "calc/hold/thruster.h"
#include "data/day_plan.h"

namespace thole {
namespace {

constexpr double kGolden_frac = 0.6180339887498949;
constexpr double kDayStep_s = 1.0;
constexpr double kRuntimeStep_s = 10.0;

}  // namespace

BankRunInput bank_run_input(const Design& design) {
  BankRunInput in;
  if (!design.bank.found) return in;
  in.strings = design.bank.strings;
  in.temperature_C = design.job.bank.temperature_C.value;
  in.minimum_V = design.hold.motor.minimum_V;
  // Drop over current, at full thrust: the feeder hot.
  if (design.feeder.found && design.feeder.current_A > 0.0) {
    in.feeder_ohm = design.feeder.drop_V / design.feeder.current_A;
  }
  return in;
}

DayInput day_input(const Design& design) {
  const HoldInput input = hold_input(design);
  const MotorClass& motor = design.hold.motor;
  const Given<std::string>& planned = design.job.hold.day;
  return {.power_full_W = motor.power_full_W,
          .power_idle_W = motor.power_idle_W,
          .supply_V = std::max(1.0, design.bank.nominal_V),
          .segments = planned.known()
                          ? segments_of(read_day_plan(planned.value), input, motor)
                          : planned_day(input, motor)};
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

PowerDayRun::PowerDayRun(const BankRunInput& bank, const DayInput& day, double moment_s)
    : result_{.segments = day.segments}, run_(bank, moment_s) {
  for (const DaySegment& segment : day.segments) {
    const std::vector<PowerStep> more =
        power_steps(segment, day.power_full_W, day.power_idle_W, kDayStep_s);
    steps_.insert(steps_.end(), more.begin(), more.end());
  }
  result_.asked_h = static_cast<double>(steps_.size()) * kDayStep_s / 3600.0;
}

// The day is over, or was cut short; what is left is run on at its mean power.
void PowerDayRun::finish_day() {
  result_.run = run_.result();
  result_.after = result_.run;
  done_ = !run_.runs() || !(result_.asked_h > 0.0);
  if (done_) return;
  after_day_ = true;
  const double mean_W = result_.run.load_Wh / result_.asked_h;
  steps_.assign(static_cast<std::size_t>(3600.0 * kLongestRuntime_h / kRuntimeStep_s),
                PowerStep{mean_W, kRuntimeStep_s});
  at_ = 0;
}

bool PowerDayRun::advance(std::size_t steps_count) {
  if (done_) return false;
  const std::size_t count = std::min(steps_count, steps_.size() - at_);
  const bool runs = run_.take(std::span(steps_).subspan(at_, count));
  at_ += count;
  if (runs && at_ < steps_.size()) return true;
  if (!after_day_) {
    finish_day();
    return !done_;
  }
  const BankRunResult on = run_.result();
  result_.after = on;
  result_.left_h = on.cut_off_h - result_.asked_h;
  result_.left_until = on.cut_off;
  done_ = true;
  return false;
}

double PowerDayRun::done_frac() const {
  if (done_) return 1.0;
  const double part =
      steps_.empty() ? 0.0 : static_cast<double>(at_) / static_cast<double>(steps_.size());
  return 0.5 * (part + (after_day_ ? 1.0 : 0.0));
}

PowerDay power_day(const BankRunInput& bank, const DayInput& day, double moment_s) {
  PowerDayRun run(bank, day, moment_s);
  constexpr std::size_t kAtOnce = 1000000;
  while (run.advance(kAtOnce)) {
  }
  return run.result();
}

double hours_until_cut(const PowerDay& day) {
  return day.run.cut_off != CutOff::none ? day.run.cut_off_h : day.asked_h + day.left_h;
}

WindRuntime runtime_in(const Design& design, const BankRunInput& bank, double wind_mps) {
  const MotorClass& motor = design.hold.motor;
  const BankRunResult run = run_bank(
      bank,
      power_steps(holding_segment(hold_input(design), motor, wind_mps, kLongestRuntime_h),
                  motor.power_full_W, motor.power_idle_W, kRuntimeStep_s),
      3600.0 * kLongestRuntime_h);
  return {.wind_mps = wind_mps,
          .time_h = run.cut_off_h,
          .held = wind_mps <= design.hold.limiting_wind_mps,
          .cut_off = run.cut_off};
}

std::vector<WindRuntime> runtime_by_wind(const Design& design, const BankRunInput& bank,
                                         const std::vector<double>& winds_mps) {
  std::vector<WindRuntime> runtimes;
  if (!design.hold.motor_found || bank.strings.empty()) return runtimes;
  for (const double wind_mps : winds_mps) runtimes.push_back(runtime_in(design, bank, wind_mps));
  return runtimes;
}

}  // namespace thole
