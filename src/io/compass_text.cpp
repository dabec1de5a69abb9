#include "io/compass_text.h"

#include <cmath>
#include <nlohmann/json.hpp>

#include "base/number.h"
#include "io/table_text.h"

namespace thole {
namespace {

using Json = nlohmann::ordered_json;

std::string degrees(double angle_deg) { return fixed(angle_deg, 2) + " deg"; }
std::string microtesla(double field_T) { return fixed(1e6 * field_T, 2) + " uT"; }

Json place(const Place& at) { return {{"x_m", at.x_m}, {"y_m", at.y_m}, {"z_m", at.z_m}}; }

Json or_null(const std::optional<double>& value) { return value ? Json(*value) : Json(nullptr); }

}  // namespace

std::string compass_text(const CompassStudy& study, System system) {
  const CompassResult& at = study.result;
  if (has_error(at.issues)) return at.issues.front().message + "\n";
  const auto length = [&](double length_m) { return show(length_m, "m", system).text(); };
  const auto thin = [&](double length_m) { return show(1000.0 * length_m, "mm", system).text(); };
  const bool shows = at.error_deg < 90.0;
  TextTable rows{.rows = {{"heading sensor", ""}}, .right = {false, true}};
  rows.rows.push_back({"from the pair", length(study.gap_m)});
  rows.rows.push_back({"current at full thrust", fixed(study.input.pair.current_A, 1) + " A"});
  rows.rows.push_back({"feeder's level field there", microtesla(at.level_T)});
  rows.rows.push_back({"earth's level field", microtesla(study.earth.horizontal_T)});
  rows.rows.push_back({"heading error, worst heading", shows ? degrees(at.error_deg) : "no heading"});
  rows.rows.push_back({"allowed", degrees(study.input.limit_deg)});
  rows.rows.push_back({"worst at a heading of", fixed(at.worst_heading_deg, 0) + " deg"});
  rows.rows.push_back({"conductors apart at most", at.spacing_m ? thin(*at.spacing_m) : "none keeps it"});
  rows.rows.push_back({"or twisted, a turn in at most", at.pitch_m ? thin(*at.pitch_m) : "none keeps it"});
  TextTable turns{.rows = {{"boat's heading", "shown off by"}}, .right = {true, true}};
  for (const HeadingShift& shift : at.by_heading) {
    turns.rows.push_back({fixed(shift.heading_deg, 0) + " deg", degrees(shift.shift_deg)});
  }
  std::string text = table_text(rows) + "\n" + table_text(turns) + "\n";
  text += study.earth.assumed
              ? "No place given: the earth's field is a middle latitude's, 20 uT (tropics 27, far north 15).\n"
              : "Earth's field by IGRF-14, which holds from 2025 to 2030" +
                    std::string(study.earth.year_outside ? "; the year given lies outside, its nearest end is taken.\n"
                                                         : ".\n");
  return text + "The table is for a boat that stands level; the error above lets her lean. Steel, magnets and what is\n"
                "set up wrongly come on top.\n";
}

std::string write_compass(const CompassStudy& study) {
  const CompassResult& at = study.result;
  Json route = Json::array();
  for (const Place& point : study.input.pair.route) route.push_back(place(point));
  Json turns = Json::array();
  for (const HeadingShift& shift : at.by_heading) {
    turns.push_back({{"heading_deg", shift.heading_deg}, {"shift_deg", shift.shift_deg}});
  }
  const Json out = {{"route", std::move(route)},
                    {"sensor", place(study.input.sensor)},
                    {"gap_m", study.gap_m},
                    {"current_A", study.input.pair.current_A},
                    {"spacing_m", study.input.pair.spacing_m},
                    {"tilt_deg", study.input.tilt_deg},
                    {"earth", {{"horizontal_T", study.earth.horizontal_T},
                               {"declination_deg", study.earth.declination_deg},
                               {"assumed", study.earth.assumed},
                               {"year_outside", study.earth.year_outside},
                               {"source", study.earth.source->id},
                               {"confirmed", study.earth.source->confirmed}}},
                    {"field_T", {at.field.x_T, at.field.y_T, at.field.z_T}},
                    {"level_T", at.level_T},
                    {"error_deg", at.error_deg},
                    {"limit_deg", study.input.limit_deg},
                    {"worst_heading_deg", at.worst_heading_deg},
                    {"spacing_within_m", or_null(at.spacing_m)},
                    {"pitch_within_m", or_null(at.pitch_m)},
                    {"by_heading", std::move(turns)}};
  return out.dump(2) + "\n";
}

}  // namespace thole
