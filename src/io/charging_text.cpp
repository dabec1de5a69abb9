#include "io/charging_text.h"

#include <cmath>
#include <nlohmann/json.hpp>

#include "base/number.h"
#include "io/figures.h"
#include "io/table_text.h"

namespace thole {
namespace {

using Json = nlohmann::ordered_json;

Json number(double value) { return std::isfinite(value) ? Json(value) : Json(nullptr); }

std::string hours(double time_h, System system) { return show(time_h, "h", system).text(); }

std::string percent(double share_frac, System system) {
  return show(share_frac, "frac", system).text();
}

Json checks_json(const Trace& trace) {
  Json out = Json::array();
  for (const Check& check : trace.checks) {
    out.push_back({{"id", check.id}, {"label", check.label}, {"verdict", word(check.verdict())},
                   {"actual", number(check.actual)}, {"limit", number(check.limit)}, {"unit", check.unit},
                   {"source", check.source->id}, {"confirmed", check.source->confirmed}, {"remedy", check.remedy}});
  }
  return out;
}

Json cautions_json(const Trace& trace) {
  Json out = Json::array();
  for (const Caution& caution : trace.cautions) {
    out.push_back({{"id", caution.id}, {"text", caution.text}, {"source", caution.source->id}});
  }
  return out;
}

std::string trace_text(const Trace& trace, System system) {
  std::string text;
  for (const Check& check : trace.checks) {
    text += "  " + check.label + ": " + shown_check(check, system) + ", " + std::string(word(check.verdict())) + "\n";
    if (check.verdict() == Verdict::fail) text += "    " + check.remedy + "\n";
  }
  for (const Caution& caution : trace.cautions) text += "  ! " + caution.text + "\n";
  return text;
}

}  // namespace

std::string_view word(VentCase of) {
  switch (of) {
    case VentCase::floating:
      return "float";
    case VentCase::boost:
      return "boost";
    case VentCase::failed:
      return "failed charger";
  }
  return "boost";
}

std::string stages_said(const ChargingNight& night, System system) {
  const auto volts = [&](double value_V) { return show(value_V, "V", system).text(); };
  return "bulk to " + volts(night.absorption_V) + ", absorption at it, then " +
         (night.float_V > 0.0 ? "float at " + volts(night.float_V) : "rest without charge");
}

std::string night_said(const ChargingStudy& study, System system) {
  const ShoreResult& shore = study.shore;
  if (!shore.problem.empty()) return shore.problem;
  const std::string leaving = hours(study.night.leaves_h, system);
  if (shore.full_h <= 0.0) return "The bank is full: nothing was taken out.";
  if (shore.full_tonight) return "Full after " + hours(shore.full_h, system) + "; the boat leaves after " + leaving + ".";
  return "At " + percent(shore.left_frac, system) + " when the boat leaves after " + leaving + "; full takes " +
         hours(shore.full_h, system) + ".";
}

std::string engine_said(const ChargingStudy& study, System system) {
  const DcDcResult& engine = study.engine;
  if (!engine.problem.empty()) return engine.problem;
  const std::string size = show(study.converter_A, "A", system).text();
  const std::string run = hours(study.input.engine_h, system) + " under engine";
  const std::string reaches = run + " bring the bank to " + percent(std::min(1.0, engine.left_frac), system) + "; full takes " +
                              hours(engine.full_h, system) + ".";
  return study.converter ? "A converter of " + size + ": " + reaches
                         : "None. One of " + size + " is the largest that the alternator feeds: " + reaches;
}

std::string sun_said(const ChargingStudy& study, System system) {
  const SolarResult& sun = study.sun;
  if (!sun.problem.empty()) return sun.problem;
  const std::string loses = "At rest the bank loses " + show(sun.self_loss_Wh + sun.standing_Wh, "Wh", system).text() + " a day. ";
  if (!(sun.panel_least_W > 0.0)) return loses + "Without sun no panel keeps it.";
  const std::string least = show(std::ceil(sun.panel_least_W), "W", system).text();
  if (!study.panel) return loses + "No panel; one of " + least + " would keep it.";
  if (!sun.keeps_full) return loses + "This panel does not keep it; one of " + least + " would.";
  if (!(sun.days_to_full_count > 0.0)) return loses + "This panel keeps it full.";
  return loses + "This panel keeps it, and puts a day's use back in " + trimmed(fixed(std::ceil(sun.days_to_full_count), 0)) +
         " days of sun.";
}

std::string charging_text(const ChargingStudy& study, System system) {
  if (!study.problem.empty()) return study.problem + "\n";
  const auto say = [&](double value, std::string_view unit) { return show(value, unit, system).text(); };
  std::string text = "Tonight on shore\n  " + night_said(study, system) + "\n";
  if (study.shore.problem.empty()) {
    const ChargingNight& night = study.night;
    text += "  Each block: " + stages_said(night, system) + "; at " + say(night.temperature_C, "C") + "\n\n";
    TextTable table{.rows = {{"hour", "into each block", "charge"}}, .right = {true, true, true}};
    constexpr std::size_t kEvery = 8;
    for (std::size_t i = 0; i < night.points.size(); i += kEvery) {
      const NightPoint& point = night.points[i];
      table.rows.push_back({fixed(point.time_h, 1), say(point.current_A, "A"), percent(point.charge_frac, system)});
    }
    text += table_text(table) + "\n";
  }
  text += trace_text(study.shore.trace, system);
  text += "\nUnder way, from the engine\n  " + engine_said(study, system) + "\n";
  text += trace_text(study.engine.trace, system);
  text += "\nBy the sun\n  " + sun_said(study, system) + "\n" + trace_text(study.sun.trace, system);
  text += "\nThe locker's air\n";
  if (!study.venting.problem.empty()) text += "  " + study.venting.problem + "\n";
  if (!study.venting.demands.empty()) {
    TextTable table{.rows = {{"charge", "air", "opening, each", "one hole", "no spark within", "closed: 4 % in"}},
                    .right = {false, true, true, true, true, true}};
    for (const VentDemand& demand : study.venting.demands) {
      table.rows.push_back({std::string(word(demand.of)), say(demand.flow_m3_per_h, "m3/h"), say(demand.opening_cm2, "cm2"),
                            say(demand.round_hole_mm, "mm"), say(demand.spark_mm, "mm"), say(demand.closed_min, "min")});
    }
    text += table_text(table) + "\n";
  } else if (study.venting.problem.empty()) {
    text += "  Lithium gives off no hydrogen on charge.\n";
  }
  return text + trace_text(study.venting.trace, system);
}

std::string write_charging(const ChargingStudy& study) {
  if (!study.problem.empty()) return Json{{"problem", study.problem}}.dump(2) + "\n";
  Json points = Json::array();
  for (const NightPoint& point : study.night.points) {
    points.push_back({{"time_h", point.time_h}, {"current_A", point.current_A}, {"charge_frac", point.charge_frac}});
  }
  Json demands = Json::array();
  for (const VentDemand& demand : study.venting.demands) {
    demands.push_back({{"case", word(demand.of)}, {"flow_m3_per_h", demand.flow_m3_per_h}, {"opening_cm2", demand.opening_cm2},
                       {"round_hole_mm", demand.round_hole_mm}, {"spark_mm", demand.spark_mm}, {"closed_min", demand.closed_min}});
  }
  const auto way = [](const std::string& problem, const Trace& trace, Json figures) {
    if (!problem.empty()) figures["problem"] = problem;
    figures["checks"] = checks_json(trace);
    figures["cautions"] = cautions_json(trace);
    return figures;
  };
  const Json out = {
      {"shore", way(study.shore.problem, study.shore.trace,
                    {{"spare_A", study.shore.spare_A}, {"output_A", study.shore.output_A}, {"shore_A", study.shore.shore_A},
                     {"full_h", study.shore.full_h}, {"left_frac", study.shore.left_frac}, {"leaves_h", study.night.leaves_h},
                     {"absorption_V", study.night.absorption_V}, {"float_V", study.night.float_V}, {"night", std::move(points)}})},
      {"engine", way(study.engine.problem, study.engine.trace,
                     {{"fitted", study.converter}, {"converter_A", study.converter_A}, {"input_A", study.engine.input_A},
                      {"spare_A", study.engine.spare_A}, {"full_h", study.engine.full_h}, {"left_frac", study.engine.left_frac}})},
      {"sun", way(study.sun.problem, study.sun.trace,
                  {{"fitted", study.panel}, {"gain_Wh", study.sun.gain_Wh}, {"net_Wh", study.sun.net_Wh},
                   {"panel_least_W", study.sun.panel_least_W}, {"days_to_full_count", number(study.sun.days_to_full_count)}})},
      {"venting", way(study.venting.problem, study.venting.trace,
                      {{"opening_cm2", study.venting.opening_cm2}, {"fan_m3_per_h", study.venting.fan_m3_per_h},
                       {"demands", std::move(demands)}})}};
  return out.dump(2) + "\n";
}

}  // namespace thole
