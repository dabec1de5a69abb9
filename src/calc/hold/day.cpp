#include "calc/hold/day.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numbers>
#include <utility>

#include "base/number.h"
#include "base/order.h"
#include "base/units.h"
#include "calc/hold/site.h"
#include "calc/hold/thruster.h"
#include "data/sources.h"
#include "data/sources_hold.h"

namespace thole {
namespace {

// Of simulated hours of holding, docs/decisions.md.
constexpr double kThrustSpread_frac = 0.365;  // standard deviation over the mean
constexpr int kLevels_count = 40;
constexpr double kTail_ratio = 4.0;  // standard deviations above the mean that levels reach

double normal_frac_below(double z) { return 0.5 * std::erfc(-z / std::numbers::sqrt2); }

// Mean of the power above idle, as a share of that at full thrust.
double power_share_of(const std::vector<Duty>& duty) {
  double sum_frac = 0.0;
  for (const Duty& part : duty) sum_frac += part.time_frac * power_share_frac(part.thrust_frac);
  return sum_frac;
}

// A boat that is pushed off its spot comes back at full thrust: where the levels below it give less
// than the mean power, the rest of the time goes there.
void come_back(std::vector<Duty>& duty, double power_share_wanted_frac) {
  const double there_frac = power_share_of(duty);
  if (there_frac >= power_share_wanted_frac) return;
  const double back_frac = (power_share_wanted_frac - there_frac) / (1.0 - there_frac);
  for (Duty& part : duty) part.time_frac *= 1.0 - back_frac;
  duty.back().time_frac += back_frac;
}

DrawLevel level_of(const DayInput& in, const DaySegment& segment, const Duty& part) {
  const double power_W =
      in.power_idle_W + (in.power_full_W - in.power_idle_W) * power_share_frac(part.thrust_frac);
  return {.thrust_frac = part.thrust_frac,
          .power_W = power_W,
          .current_A = power_W / in.supply_V,
          .duration_h = part.time_frac * segment.duration_h};
}

std::vector<DrawLevel> in_order(std::vector<DrawLevel> levels) {
  std::vector<DrawLevel> merged;
  for (const DrawLevel& level : sorted(std::move(levels), [](const DrawLevel& a, const DrawLevel& b) {
         return a.thrust_frac < b.thrust_frac;
       })) {
    if (!merged.empty() && merged.back().thrust_frac == level.thrust_frac) {
      merged.back().duration_h += level.duration_h;
    } else {
      merged.push_back(level);
    }
  }
  return merged;
}

// All but the peak, which is what may be asked for and not what is.
Draw draw_of(const std::vector<DrawLevel>& levels) {
  Draw draw;
  double squares_A2h = 0.0;
  double full_h = 0.0;
  for (const DrawLevel& level : levels) {
    draw.duration_h += level.duration_h;
    draw.energy_Wh += level.power_W * level.duration_h;
    draw.charge_Ah += level.current_A * level.duration_h;
    squares_A2h += level.current_A * level.current_A * level.duration_h;
    if (level.thrust_frac >= 1.0) full_h += level.duration_h;
  }
  if (!(draw.duration_h > 0.0)) return draw;
  draw.mean_W = draw.energy_Wh / draw.duration_h;
  draw.mean_A = draw.charge_Ah / draw.duration_h;
  draw.rms_A = std::sqrt(squares_A2h / draw.duration_h);
  draw.full_thrust_frac = full_h / draw.duration_h;
  return draw;
}

void show_segment(const DayInput& in, const DaySegment& segment, const Draw& draw,
                  const std::string& id, Trace& trace) {
  tell([&] {
    trace.steps.push_back(
        {.id = id + ".power_mean",
         .label = segment.label + ": mean power",
         .symbol = "P",
         .formula = "P_idle + (P_full - P_idle) * q",
         .terms = {{"P_idle", in.power_idle_W, "W", "electrical, at rest"},
                   {"P_full", in.power_full_W, "W", "electrical, at full thrust"},
                   {"q", power_share_of(segment.duty), "",
                    "mean over the time of the share of full thrust to the power of 1.5"}},
         .value = draw.mean_W,
         .unit = "W",
         .source = kMomentumTheory,
         .assumptions = {"How the thrust is spread over the time is from simulated hours of "
                         "holding."}});
    trace.steps.push_back({.id = id + ".current_rms",
                           .label = segment.label + ": current that heats as much",
                           .symbol = "I_rms",
                           .formula = "I * w",
                           .terms = {{"I", draw.mean_A, "A", "mean current"},
                                     {"w", draw.mean_A > 0.0 ? draw.rms_A / draw.mean_A : 1.0, "",
                                      "root of the mean square over the mean, over all levels"}},
                           .value = draw.rms_A,
                           .unit = "A",
                           .source = kDefinition});
  });
}

// Energy and heat up to and with this segment.
struct Sums {
  double energy_Wh = 0.0;
  double heat_A2h = 0.0;
};
Sums show_sums(const DaySegment& segment, const Draw& draw, const Sums& before,
               const std::string& id, Trace& trace) {
  const Sums sums{.energy_Wh = before.energy_Wh + draw.mean_W * draw.duration_h,
                  .heat_A2h = before.heat_A2h + draw.rms_A * draw.rms_A * draw.duration_h};
  const Term time{"t", draw.duration_h, "h", "how long"};
  tell([&] {
    trace.steps.push_back({.id = id + ".energy",
                           .label = segment.label + ": energy of the day up to here",
                           .symbol = "E",
                           .formula = "E_before + P * t",
                           .terms = {{"E_before", before.energy_Wh, "Wh", "before it"},
                                     {"P", draw.mean_W, "W", "mean power"},
                                     time},
                           .value = sums.energy_Wh,
                           .unit = "Wh",
                           .source = kDefinition});
    trace.steps.push_back({.id = id + ".heat",
                           .label = segment.label + ": current squared by time, up to here",
                           .symbol = "Q",
                           .formula = "Q_before + I_rms^2 * t",
                           .terms = {{"Q_before", before.heat_A2h, "A2 h", "before it"},
                                     {"I_rms", draw.rms_A, "A", "current that heats as much"},
                                     time},
                           .value = sums.heat_A2h,
                           .unit = "A2 h",
                           .source = kDefinition});
  });
  return sums;
}

void show_day(const DayInput& in, const Draw& day, const Sums& sums, Trace& trace) {
  if (!(day.duration_h > 0.0)) return;
  const Term time{"t", day.duration_h, "h", "all of the day's hours"};
  tell([&] {
    trace.steps.push_back({.id = "day.power_mean",
                           .label = "Mean power of the day",
                           .symbol = "P_day",
                           .formula = "E / t",
                           .terms = {{"E", sums.energy_Wh, "Wh", "energy of the day"}, time},
                           .value = day.mean_W,
                           .unit = "W",
                           .source = kDefinition});
    trace.steps.push_back({.id = "day.current_rms",
                           .label = "Current that heats as much as the day",
                           .symbol = "I_rms",
                           .formula = "sqrt(Q / t)",
                           .terms = {{"Q", sums.heat_A2h, "A2 h", "current squared by time"}, time},
                           .value = day.rms_A,
                           .unit = "A",
                           .source = kDefinition});
    trace.steps.push_back({.id = "day.current_peak",
                           .label = "Most current at any moment",
                           .symbol = "I_peak",
                           .formula = "P_peak / U",
                           .terms = {{"P_peak", day.peak_W, "W", "most power that may be asked for"},
                                     {"U", in.supply_V, "V", "nominal voltage of the bank"}},
                           .value = day.peak_A,
                           .unit = "A",
                           .source = kDefinition,
                           .assumptions = {"While it holds, full thrust may be asked for at any "
                                           "moment."}});
  });
}

}  // namespace

std::vector<Duty> holding_duty(double load_frac) {
  const double mean_frac = kGustThrust_factor * std::max(0.0, load_frac);
  if (!(mean_frac > 0.0)) return {{.thrust_frac = 0.0, .time_frac = 1.0}};
  const double spread_frac = kThrustSpread_frac * mean_frac;
  const double top_frac = std::min(1.0, mean_frac + kTail_ratio * spread_frac);
  const double step_frac = top_frac / kLevels_count;
  const auto below = [&](double thrust_frac) {
    return normal_frac_below((thrust_frac - mean_frac) / spread_frac);
  };
  std::vector<Duty> duty{{.thrust_frac = 0.0, .time_frac = below(0.0)}};
  for (int i = 0; i < kLevels_count; ++i) {
    const double from_frac = i * step_frac;
    duty.push_back({.thrust_frac = from_frac + 0.5 * step_frac,
                    .time_frac = below(from_frac + step_frac) - below(from_frac)});
  }
  duty.push_back({.thrust_frac = 1.0, .time_frac = 1.0 - below(top_frac)});
  come_back(duty, std::min(1.0, kGustPower_factor * power_share_frac(std::max(0.0, load_frac))));
  return duty;
}

std::vector<Duty> recorded_duty(std::span<const double> shares, double full_frac) {
  std::vector<Duty> duty;
  if (shares.empty()) return duty;
  const double step_frac = 1.0 / static_cast<double>(shares.size());
  for (std::size_t i = 0; i < shares.size(); ++i) {
    duty.push_back(
        {.thrust_frac = (static_cast<double>(i) + 0.5) * step_frac, .time_frac = shares[i]});
  }
  const double full_share_frac = std::clamp(full_frac, 0.0, duty.back().time_frac);
  duty.back().time_frac -= full_share_frac;
  duty.push_back({.thrust_frac = 1.0, .time_frac = full_share_frac});
  return duty;
}

DaySegment holding_segment(const HoldInput& in, const MotorClass& motor, double wind_mps,
                           double duration_h) {
  const Site site(in);
  const double current_from_rad = rad_from_deg(in.current_angle_deg);
  const Weather weather = site.weather_in(wind_mps, current_from_rad);
  const double turned_N =
      worst_heading(site.hull, vane_table(site.hull, current_from_rad), weather).thrust_N;
  const double load_N = std::max(head_on_N(site, weather), turned_N);
  const double effective_N = effective_thrust_N(in, motor);
  return {.label = "Holding in " + fixed(kn_from_mps(wind_mps), 0) + " kn of wind",
          .duration_h = duration_h,
          .duty = holding_duty(effective_N > 0.0 ? load_N / effective_N : 1.0),
          .peak_thrust_frac = 1.0};
}

DaySegment creeping_segment(double thrust_frac, double duration_h) {
  return {.label = "Creeping at " + fixed(100.0 * thrust_frac, 0) + " % thrust",
          .duration_h = duration_h,
          .duty = {{.thrust_frac = thrust_frac, .time_frac = 1.0}},
          .peak_thrust_frac = thrust_frac};
}

std::vector<DaySegment> segments_of(const DayPlanRead& plan, const HoldInput& in,
                                    const MotorClass& motor) {
  std::vector<DaySegment> segments;
  for (const PlannedStretch& stretch : plan.stretches) {
    segments.push_back(stretch.creeping
                           ? creeping_segment(stretch.thrust_frac, stretch.duration_h)
                           : holding_segment(in, motor, stretch.wind_mps, stretch.duration_h));
  }
  return segments;
}

std::vector<DaySegment> planned_day(const HoldInput& in, const MotorClass& motor) {
  return {holding_segment(in, motor, in.wind_mps, in.holding_h),
          creeping_segment(in.transit_thrust_frac, in.transit_h)};
}

DayResult day_draw(const DayInput& in) {
  DayResult result;
  std::vector<DrawLevel> all;
  Sums sums;
  for (const DaySegment& segment : in.segments) {
    std::vector<DrawLevel> levels;
    for (const Duty& part : segment.duty) levels.push_back(level_of(in, segment, part));
    Draw draw = draw_of(levels);
    if (!(draw.duration_h > 0.0)) continue;
    const DrawLevel peak = level_of(in, segment, {.thrust_frac = segment.peak_thrust_frac});
    draw.peak_W = peak.power_W;
    draw.peak_A = peak.current_A;
    result.day.peak_W = std::max(result.day.peak_W, draw.peak_W);
    result.day.peak_A = std::max(result.day.peak_A, draw.peak_A);
    all.insert(all.end(), levels.begin(), levels.end());
    const std::string id = "day." + std::to_string(result.segments.size() + 1);
    show_segment(in, segment, draw, id, result.trace);
    sums = show_sums(segment, draw, sums, id, result.trace);
    result.segments.push_back(
        {.label = segment.label, .draw = draw, .levels = in_order(std::move(levels))});
  }
  result.levels = in_order(std::move(all));
  Draw day = draw_of(result.levels);
  day.peak_W = result.day.peak_W;
  day.peak_A = result.day.peak_A;
  result.day = day;
  show_day(in, day, sums, result.trace);
  return result;
}

}  // namespace thole
