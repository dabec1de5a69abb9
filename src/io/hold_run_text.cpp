#include "io/hold_run_text.h"

#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>

#include "base/number.h"

namespace thole {
namespace {

using Json = nlohmann::ordered_json;

Json number(double value) { return std::isfinite(value) ? Json(value) : Json(nullptr); }

Json shares(const Histogram& histogram) {
  Json out = Json::array();
  for (const double share : histogram) out.push_back(number(share));
  return out;
}

Json json_of(const Check& check) {
  return {{"id", check.id},
          {"label", check.label},
          {"actual", number(check.actual)},
          {"limit", number(check.limit)},
          {"unit", std::string(check.unit)},
          {"verdict", std::string(word(check.verdict()))},
          {"remedy", check.remedy}};
}

Json statistics_json(const HoldStatistics& s) {
  return {{"radius_half_m", number(s.radius_half_m)},
          {"radius_95_m", number(s.radius_95_m)},
          {"radius_max_m", number(s.radius_max_m)},
          {"within_frac", number(s.within_frac)},
          {"lost", s.lost},
          {"lost_at_s", s.lost ? number(s.lost_at_s) : Json(nullptr)},
          {"thrust_mean_N", number(s.thrust_mean_N)},
          {"pull_N", number(s.pull_N)},
          {"full_frac", number(s.full_frac)},
          {"hunting_ratio", number(s.hunting_ratio)},
          {"steering_deg_per_s", number(s.steering_deg_per_s)},
          {"duty_ratio", number(s.duty_ratio)},
          {"power_mean_W", number(s.power_mean_W)},
          {"power_rms_W", number(s.power_rms_W)},
          {"power_peak_W", number(s.power_peak_W)},
          {"current_mean_A", number(s.current_mean_A)},
          {"energy_per_hour_Wh", number(s.energy_per_hour_Wh)},
          {"heading_mean_deg", number(s.heading_mean_deg)},
          {"heading_deviation_deg", number(s.heading_deviation_deg)},
          {"wind_mean_mps", number(s.wind_mean_mps)},
          {"wind_deviation_mps", number(s.wind_deviation_mps)},
          {"thrust_share", shares(s.thrust_share)},
          {"power_share", shares(s.power_share)}};
}

Json required_json(const HoldReport& report) {
  const RequiredMargin& required = report.required;
  return {{"tolerance_m", number(report.input.tolerance_m)},
          {"tolerance_frac", number(report.input.tolerance_frac)},
          {"found", required.found},
          {"margin_factor", required.found ? number(required.margin_factor) : Json(nullptr)},
          {"thrust_N", required.found ? number(required.thrust_N) : Json(nullptr)}};
}

// Characters, not bytes: those that go on with a character do not count.
std::size_t width(std::string_view text) {
  return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), [](char byte) {
    return (static_cast<unsigned char>(byte) & 0xC0U) != 0x80U;
  }));
}

std::string line(std::string_view label, const std::string& value) {
  constexpr std::size_t kColumn = 34;
  std::string text = "  " + std::string(label);
  text.append(kColumn - std::min(kColumn - 1, width(text)), ' ');
  return text + value + "\n";
}

std::string percent(double share) { return fixed(100.0 * share, 0) + " %"; }

// Twenty bars, a mark to each two and a half percent.
std::string bars(const Histogram& histogram) {
  std::string text;
  for (std::size_t i = 0; i < histogram.size(); ++i) {
    const std::string from = fixed(100.0 * static_cast<double>(i) / kHistogramBins, 0);
    const auto marks = static_cast<std::size_t>(std::lround(histogram[i] * 40.0));
    text += "  " + std::string(3 - from.size(), ' ') + from + " %  " + std::string(marks, '#');
    text += (marks > 0 ? " " : "") + percent(histogram[i]) + "\n";
  }
  return text;
}

std::string minutes(double time_s) { return fixed(time_s / 60.0, 1) + " min"; }

}  // namespace

std::string hold_report_text(const HoldReport& report, System system) {
  const HoldStatistics& s = report.run.statistics;
  const auto say = [&](double value, std::string_view unit) {
    return show(value, unit, system).text();
  };
  const std::string share = percent(report.input.tolerance_frac);
  std::string text = "Holding, simulated for " + trimmed(fixed(report.input.record_h, 2)) + " h\n";
  text += line("Bow within, half of the time", say(s.radius_half_m, "m"));
  text += line("Bow within, 95 % of the time", say(s.radius_95_m, "m"));
  text += line("Farthest from the spot", say(s.radius_max_m, "m"));
  text += line("Within " + say(report.input.tolerance_m, "m"), percent(s.within_frac));
  text += line("Spot lost", s.lost ? "after " + minutes(s.lost_at_s) + ", more than " +
                                         say(report.run.lost_m, "m") + " off"
                                   : "no");
  text += line("Mean thrust", say(s.thrust_mean_N, "N"));
  text += line("All thrust wanted", percent(s.full_frac) + " of the time");
  text += line("Thrust spent over thrust needed", fixed(s.hunting_ratio, 2));
  text += line("Steering", fixed(s.steering_deg_per_s, 1) + " degrees a second");
  text += line("Mean power", say(s.power_mean_W, "W"));
  text += line("Power, root mean square", say(s.power_rms_W, "W"));
  text += line("Power, highest", say(s.power_peak_W, "W"));
  text += line("Mean current", say(s.current_mean_A, "A"));
  text += line("Energy in an hour", say(s.energy_per_hour_Wh, "Wh"));
  text += line("Heading off the wind", fixed(s.heading_mean_deg, 0) + " degrees, give or take " +
                                           fixed(s.heading_deviation_deg, 0));
  text += "\nThrust over mean load\n";
  text += line("This motor", fixed(report.margin_factor, 2));
  text += line("For " + say(report.input.tolerance_m, "m") + ", " + share + " of the time",
               report.required.found ? fixed(report.required.margin_factor, 2) + ", " +
                                           say(report.required.thrust_N, "N") + " at the boat"
                                     : "not even four times; the receiver errs too much");
  text += "\nShare of the time at each thrust\n" + bars(s.thrust_share);
  return text;
}

std::string write_hold_report(const HoldReport& report) {
  Json checks = Json::array();
  for (const Check& check : report.run.trace.checks) checks.push_back(json_of(check));
  const Json out = {{"hours_h", number(report.input.record_h)},
                    {"seed", report.input.seed},
                    {"mean_load_N", number(report.mean_load_N)},
                    {"margin_factor", number(report.margin_factor)},
                    {"statistics", statistics_json(report.run.statistics)},
                    {"required", required_json(report)},
                    {"checks", std::move(checks)}};
  return out.dump(2) + "\n";
}

std::string track_csv(const std::vector<TrackPoint>& track) {
  std::string text =
      "time_s,upwind_m,right_m,heading_deg,thrust_N,thrust_from_wind_deg,power_W,wind_mps\n";
  for (const TrackPoint& p : track) {
    text += fixed(p.time_s, 2) + "," + fixed(p.upwind_m, 3) + "," + fixed(p.right_m, 3) + "," +
            fixed(p.heading_deg, 2) + "," + fixed(p.thrust_N, 1) + "," +
            fixed(p.thrust_from_wind_deg, 2) + "," + fixed(p.power_W, 1) + "," +
            fixed(p.wind_mps, 3) + "\n";
  }
  return text;
}

}  // namespace thole
