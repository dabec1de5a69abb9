#include "io/trial_text.h"

#include <array>
#include <cmath>
#include <nlohmann/json.hpp>

#include "base/number.h"
#include "io/explain.h"
#include "io/named_measures.h"
#include "io/table_text.h"

namespace thole {
namespace {

using Json = nlohmann::ordered_json;

Json number(double value) { return std::isfinite(value) ? Json(value) : Json(nullptr); }

std::vector<std::string> row(const std::string& label, const Band& band) {
  return {label, fixed(band.value_factor, 2), fixed(band.low_factor, 2),
          fixed(band.high_factor, 2)};
}

Json json_of(const Band& band) {
  return {{"value", number(band.value_factor)},
          {"low", number(band.low_factor)},
          {"high", number(band.high_factor)}};
}

}  // namespace

std::optional<DriftReading> read_drift(std::string_view text, System system, std::string& message) {
  DriftReading reading;
  std::array measures{NamedMeasure{"minutes", "min", true, &reading.time_min},
                      NamedMeasure{"speed", "mps", true, &reading.drift_mps},
                      NamedMeasure{"off", "deg", false, &reading.drift_angle_deg},
                      NamedMeasure{"wind", "mps", true, &reading.wind_mps},
                      NamedMeasure{"height", "m", false, &reading.wind_height_m},
                      NamedMeasure{"current", "mps", false, &reading.current_mps},
                      NamedMeasure{"from", "deg", false, &reading.current_angle_deg}};
  message = read_named_measures(text, measures, system);
  if (!message.empty()) return std::nullopt;
  return reading;
}

std::optional<HeldReading> read_held(std::string_view text, System system, std::string& message) {
  HeldReading reading;
  double wave_m = 0.0;
  std::array measures{NamedMeasure{"thrust", "frac", true, &reading.thrust_frac},
                      NamedMeasure{"wind", "mps", true, &reading.wind_mps},
                      NamedMeasure{"height", "m", false, &reading.wind_height_m},
                      NamedMeasure{"current", "mps", false, &reading.current_mps},
                      NamedMeasure{"from", "deg", false, &reading.current_angle_deg},
                      NamedMeasure{"waves", "m", false, &wave_m}};
  message = read_named_measures(text, measures, system);
  if (!message.empty()) return std::nullopt;
  if (measures.back().named) reading.wave_height_m = wave_m;
  return reading;
}

std::string trial_text(const CalibrateResult& trial) {
  const TextTable factors{.rows = {{"Times what is computed", "best", "from", "to"},
                                   row("Wind load", trial.windage),
                                   row("Current load", trial.drag),
                                   row("Ratio of the two", trial.windage_over_drag)},
                          .right = {false, true, true, true}};
  TextTable readings{.rows = {{"", "read", "computed", "with the factors", "off by"}},
                     .right = {false, true, true, true, true}};
  for (const ReadingFit& one : trial.readings) {
    const auto share = [&](double value) { return show(value, "frac", System::metric).text(); };
    readings.rows.push_back({one.label, share(one.measured_frac), share(one.computed_frac),
                             share(one.calibrated_frac), fixed(one.off_ratio, 1)});
  }
  std::string text = table_text(factors) + "\n" + table_text(readings) +
                     "\nDrift as a share of the wind over the water, held as a share of full "
                     "thrust; off by so many standard deviations.\n";
  for (const Check& check : trial.trace.checks) text += "\n" + explain(check);
  return text;
}

std::string write_trial(const CalibrateResult& trial) {
  Json readings = Json::array();
  for (const ReadingFit& one : trial.readings) {
    readings.push_back({{"label", one.label},
                        {"measured_frac", number(one.measured_frac)},
                        {"computed_frac", number(one.computed_frac)},
                        {"calibrated_frac", number(one.calibrated_frac)},
                        {"cross_frac", number(one.cross_frac)},
                        {"off_ratio", number(one.off_ratio)}});
  }
  Json checks = Json::array();
  for (const Check& check : trial.trace.checks) {
    checks.push_back({{"id", check.id},
                      {"label", check.label},
                      {"verdict", std::string(word(check.verdict()))},
                      {"actual", number(check.actual)},
                      {"limit", number(check.limit)},
                      {"remedy", check.remedy}});
  }
  const Json out = {{"windage_factor", json_of(trial.windage)},
                    {"drag_factor", json_of(trial.drag)},
                    {"windage_over_drag", json_of(trial.windage_over_drag)},
                    {"readings", std::move(readings)},
                    {"checks", std::move(checks)}};
  return out.dump(2) + "\n";
}

}  // namespace thole
