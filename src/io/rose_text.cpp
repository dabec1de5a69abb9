#include "io/rose_text.h"

#include <cmath>
#include <nlohmann/json.hpp>

#include "base/number.h"
#include "base/units.h"
#include "io/explain.h"
#include "io/table_text.h"

namespace thole {
namespace {

using Json = nlohmann::ordered_json;

// --- for a person
// ---------------------------------------------------------------------------------

// Forces of less than a twentieth of a newton are what rounding leaves of none.
std::string newtons(double value_N, System system) {
  return show(std::abs(value_N) < 0.05 ? 0.0 : value_N, "N", system).text();
}

std::string degrees(double value_deg) { return fixed(value_deg, 0) + "°"; }

// A limit; what lies beyond the search as "40 m/s or more".
std::string limit(double value_mps, double top_mps, System system) {
  return show(value_mps, "mps", system).text() + (value_mps >= top_mps ? " or more" : "");
}

std::string rows_text(const RoseResult& rose, System system) {
  TextTable table{.rows = {{"current from", "lies", "thrust points", "thrust", "headings",
                            "wind held", "likely", "current held"}},
                  .right = {true, true, true, true, true, true, true, true}};
  for (const RoseRow& row : rose.rows) {
    if (row.angle_deg > 180.0) break;  // the other side mirrors it
    int stable_count = 0;
    for (const Balance& one : row.balances) stable_count += one.stable ? 1 : 0;
    table.rows.push_back({degrees(row.angle_deg), degrees(row.heading_deg),
                          degrees(row.azimuth_deg), newtons(row.thrust_N, system),
                          std::to_string(stable_count), limit(row.limiting_wind_mps, 40.0, system),
                          limit(row.likely_wind_mps, 40.0, system),
                          limit(row.limiting_current_mps, kRoseHighestCurrent_mps, system)});
  }
  return table_text(table);
}

std::string balances_text(const RoseResult& rose, System system) {
  if (rose.balances.empty()) return "Nothing turns the boat: no wind, no waves, no current.\n";
  TextTable table{.rows = {{"heading", "", "thrust", "points"}},
                  .right = {true, false, true, true}};
  for (const Balance& one : rose.balances) {
    table.rows.push_back({degrees(deg_from_rad(one.heading_rad)),
                          one.stable ? "comes back" : "swings away", newtons(one.thrust_N, system),
                          degrees(deg_from_rad(one.azimuth_rad))});
  }
  return table_text(table);
}

std::string loads_text(const RoseResult& rose, System system) {
  TextTable table{.rows = {{"from", "wind X", "Y", "N", "likely X", "Y", "current X", "Y",
                            "waves X", "Y", "sum x 1.25: X", "Y", "N"}},
                  .right = std::vector<char>(13, true)};
  const auto moment = [](double value_Nm) { return fixed(value_Nm, 0) + " N m"; };
  for (const LoadRow& row : rose.loads) {
    const auto force = [&](double value_N) { return newtons(value_N, system); };
    table.rows.push_back({degrees(row.from_deg), force(row.wind.surge_N), force(row.wind.sway_N),
                          moment(row.wind.yaw_Nm), force(row.wind_likely.surge_N),
                          force(row.wind_likely.sway_N), force(row.current.surge_N),
                          force(row.current.sway_N), force(row.wave.surge_N),
                          force(row.wave.sway_N), force(row.total.surge_N), force(row.total.sway_N),
                          moment(row.total.yaw_Nm)});
  }
  return table_text(table);
}

// --- for a program
// --------------------------------------------------------------------------------

Json number(double value) { return std::isfinite(value) ? Json(value) : Json(nullptr); }

Json json_of(const Load& load) {
  return {{"surge_N", number(load.surge_N)},
          {"sway_N", number(load.sway_N)},
          {"yaw_Nm", number(load.yaw_Nm)}};
}

Json json_of(const std::vector<Balance>& balances) {
  Json out = Json::array();
  for (const Balance& one : balances) {
    out.push_back({{"heading_deg", number(deg_from_rad(one.heading_rad))},
                   {"stable", one.stable},
                   {"thrust_N", number(one.thrust_N)},
                   {"azimuth_deg", number(deg_from_rad(one.azimuth_rad))}});
  }
  return out;
}

Json json_of(const RoseRow& row) {
  return {{"angle_deg", number(row.angle_deg)},
          {"heading_deg", number(row.heading_deg)},
          {"azimuth_deg", number(row.azimuth_deg)},
          {"thrust_N", number(row.thrust_N)},
          {"limiting_wind_mps", number(row.limiting_wind_mps)},
          {"likely_wind_mps", number(row.likely_wind_mps)},
          {"limiting_current_mps", number(row.limiting_current_mps)},
          {"balances", json_of(row.balances)}};
}

Json json_of(const LoadRow& row) {
  return {{"from_deg", number(row.from_deg)},
          {"wind", json_of(row.wind)},
          {"wind_likely", json_of(row.wind_likely)},
          {"current", json_of(row.current)},
          {"wave", json_of(row.wave)},
          {"total", json_of(row.total)}};
}

Json json_of(const Step& step) {
  return {{"id", step.id},
          {"label", step.label},
          {"formula", std::string(step.formula)},
          {"value", number(step.value)},
          {"unit", std::string(step.unit)},
          {"source", std::string(step.source->id)},
          {"confirmed", step.source->confirmed}};
}

template <class Item>
Json list_of(const std::vector<Item>& items) {
  Json out = Json::array();
  for (const Item& item : items) out.push_back(json_of(item));
  return out;
}

}  // namespace

std::string rose_text(const RoseResult& rose, System system) {
  std::string text = "Thrust that reaches the boat: " + newtons(rose.thrust_effective_N, system) +
                     ", margin asked for: " + significant(rose.margin_factor, 3) +
                     ". Bow-on load: " + newtons(rose.band.sizing_N, system) + " sized on, " +
                     newtons(rose.band.likely_N, system) + " likely, " +
                     newtons(rose.band.low_N, system) + " to " + newtons(rose.band.high_N, system) +
                     " as far as it is known.\n\n";
  text += "What is held, by where the current comes from off the wind\n" + rows_text(rose, system) +
          "\n";
  text += "Every heading that balances, off the wind, at the job's own angle\n" +
          balances_text(rose, system) + "\n";
  text += "Loads by where wind, current and waves come from together, off the bow\n" +
          loads_text(rose, system) + "\n";
  text += "Capability number, lying as it does: " + std::to_string(rose.capability_number) +
          " in the ocean's waves, " + std::to_string(rose.capability_here_number) +
          " in those of this fetch. By the letter " + rose.notation +
          ": one unit at the bow holds no heading off the weather.\n\n";
  for (const Step& step : rose.trace.steps) text += explain(step) + "\n";
  for (const Caution& caution : rose.trace.cautions) text += caution.text + "\n";
  for (const Assumption& assumption : rose.trace.assumptions) text += assumption.text + "\n";
  return text;
}

std::string write_rose(const RoseResult& rose) {
  Json cautions = Json::array();
  for (const Caution& caution : rose.trace.cautions) {
    cautions.push_back({{"id", caution.id}, {"text", caution.text}});
  }
  const Json document = {{"thrust_effective_N", number(rose.thrust_effective_N)},
                         {"margin_factor", number(rose.margin_factor)},
                         {"bow_on",
                          {{"low_N", number(rose.band.low_N)},
                           {"sizing_N", number(rose.band.sizing_N)},
                           {"likely_N", number(rose.band.likely_N)},
                           {"high_N", number(rose.band.high_N)}}},
                         {"rose", list_of(rose.rows)},
                         {"balances", json_of(rose.balances)},
                         {"loads", list_of(rose.loads)},
                         {"capability_number", rose.capability_number},
                         {"capability_here_number", rose.capability_here_number},
                         {"capability_notation", rose.notation},
                         {"steps", list_of(rose.trace.steps)},
                         {"cautions", cautions}};
  return document.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace thole
