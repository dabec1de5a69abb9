#include "io/day_text.h"

#include <array>
#include <cmath>
#include <nlohmann/json.hpp>

#include "io/named_measures.h"
#include "io/table_text.h"

namespace thole {
namespace {

using Json = nlohmann::ordered_json;

Json number(double value) { return std::isfinite(value) ? Json(value) : Json(nullptr); }

std::vector<std::string> row(const std::string& label, const Draw& draw, System system) {
  return {label,
          show(draw.duration_h, "h", system).text(),
          show(draw.mean_W, "W", system).text(),
          show(draw.mean_A, "A", system).text(),
          show(draw.rms_A, "A", system).text(),
          show(draw.peak_A, "A", system).text(),
          show(draw.energy_Wh, "Wh", system).text(),
          show(draw.full_thrust_frac, "frac", system).text()};
}

Json json_of(const Draw& draw) {
  return {{"duration_h", number(draw.duration_h)},
          {"energy_Wh", number(draw.energy_Wh)},
          {"charge_Ah", number(draw.charge_Ah)},
          {"mean_W", number(draw.mean_W)},
          {"peak_W", number(draw.peak_W)},
          {"mean_A", number(draw.mean_A)},
          {"peak_A", number(draw.peak_A)},
          {"rms_A", number(draw.rms_A)},
          {"full_thrust_frac", number(draw.full_thrust_frac)}};
}

Json json_of(const std::vector<DrawLevel>& levels) {
  Json out = Json::array();
  for (const DrawLevel& level : levels) {
    out.push_back({{"thrust_frac", number(level.thrust_frac)},
                   {"power_W", number(level.power_W)},
                   {"current_A", number(level.current_A)},
                   {"duration_h", number(level.duration_h)}});
  }
  return out;
}

}  // namespace

std::optional<Stretch> read_stretch(std::string_view text, System system, std::string& message) {
  Stretch stretch;
  double wind_mps = 0.0;
  std::array measures{NamedMeasure{"hours", "h", true, &stretch.duration_h},
                      NamedMeasure{"wind", "mps", false, &wind_mps},
                      NamedMeasure{"thrust", "frac", false, &stretch.thrust_frac}};
  message = read_named_measures(text, measures, system);
  if (!message.empty()) return std::nullopt;
  if (measures[1].named == measures[2].named) {
    message = "A stretch has either a wind to hold in or a thrust to creep with.";
  } else if (!(stretch.duration_h >= 0.0 && stretch.duration_h <= 72.0)) {
    message = "Hours are 0 to 72.";
  } else if (!(wind_mps >= 0.0 && wind_mps <= 35.0)) {
    message = "The wind to hold in is at most 35 m/s.";
  } else if (!(stretch.thrust_frac >= 0.0 && stretch.thrust_frac <= 1.0)) {
    message = "Thrust is 0 to 100 %.";
  }
  if (!message.empty()) return std::nullopt;
  if (measures[1].named) stretch.wind_mps = wind_mps;
  return stretch;
}

std::string day_text(const DayResult& day, System system) {
  TextTable table{
      .rows = {{"", "time", "mean", "mean", "r.m.s.", "peak", "energy", "at full thrust"}},
      .right = {false, true, true, true, true, true, true, true}};
  for (const SegmentDraw& segment : day.segments) {
    table.rows.push_back(row(segment.label, segment.draw, system));
  }
  table.rows.push_back(row("The day", day.day, system));
  return table_text(table) +
         "\nMean power and energy for endurance, peak current for sag and trips, r.m.s. current "
         "for heat;\nat the bank's nominal voltage.\n";
}

std::string write_day(const DayResult& day) {
  Json segments = Json::array();
  for (const SegmentDraw& segment : day.segments) {
    segments.push_back({{"label", segment.label},
                        {"draw", json_of(segment.draw)},
                        {"levels", json_of(segment.levels)}});
  }
  const Json out = {{"day", json_of(day.day)},
                    {"segments", std::move(segments)},
                    {"levels", json_of(day.levels)}};
  return out.dump(2) + "\n";
}

}  // namespace thole
