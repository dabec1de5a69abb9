#include "io/foredeck_text.h"

#include <nlohmann/json.hpp>

#include <cmath>

#include "base/number.h"
#include "io/explain.h"
#include "io/figures.h"
#include "io/table_text.h"

namespace thole {
namespace {

using Json = nlohmann::ordered_json;

std::string percent(double share_frac) { return fixed(100.0 * share_frac, 1) + " %"; }

std::string of_trace(const Trace& trace) {
  std::string text;
  for (const Step& step : trace.steps) text += explain(step) + "\n";
  for (const Check& check : trace.checks) text += explain(check) + "\n";
  for (const Caution& caution : trace.cautions) text += "Caution: " + caution.text + "\n";
  return text;
}

void add_rows(TextTable& table, const std::vector<Clearance>& all, const char* when, System system) {
  for (const Clearance& at : all) {
    table.rows.push_back({when, at.label, at.distance_m > 0.0 ? show(1000.0 * at.distance_m, "mm", system).text() : "touches", std::string(at.part), fixed(at.raised_deg, 0) + "°"});
  }
}

Json arcs_json(const std::vector<Arc>& arcs) {
  Json out = Json::array();
  for (const Arc& arc : arcs) out.push_back({arc.from_deg, arc.to_deg});
  return out;
}

Json shadow_json(const Shadow& shadow) {
  return {{"hidden_deg", shadow.hidden_deg}, {"hidden_most_deg", shadow.hidden_most_deg}, {"all_round_deg", shadow.all_round_deg},
          {"arcs_deg", arcs_json(shadow.full)}};
}

Json number_or_null(double value) { return std::isfinite(value) ? Json(value) : Json(nullptr); }

Json checks_json(const std::vector<const Check*>& checks) {
  Json out = Json::array();
  for (const Check* check : checks) {
    out.push_back({{"id", check->id}, {"label", check->label}, {"actual", number_or_null(check->actual)}, {"limit", check->limit},
                   {"unit", check->unit}, {"verdict", word(check->verdict())}, {"source", check->source->id}, {"remedy", check->remedy}});
  }
  return out;
}

Json clearances_json(const std::vector<Clearance>& all) {
  Json out = Json::array();
  for (const Clearance& at : all) {
    out.push_back({{"label", at.label}, {"distance_m", at.distance_m}, {"part", at.part}, {"raised_deg", at.raised_deg}});
  }
  return out;
}

Json point_json(const LengthPoint& at) {
  return {{"length_m", at.length_m}, {"kept", at.kept_frac}, {"ventilating", at.ventilating_frac}, {"tip_in_air", at.tip_frac},
          {"stress_MPa", at.stress_MPa}, {"deflection_mm", at.deflection_mm}, {"slope_deg", at.slope_deg}};
}

Json points_json(const std::vector<LengthPoint>& all) {
  Json out = Json::array();
  for (const LengthPoint& at : all) out.push_back(point_json(at));
  return out;
}

std::vector<const Check*> checks_of(const Trace& trace) {
  std::vector<const Check*> all;
  for (const Check& check : trace.checks) all.push_back(&check);
  return all;
}

}  // namespace

std::string foredeck_text(const ForedeckStudy& study, System system) {
  std::string text = "The foredeck\n\n";
  if (!study.room.problem.empty()) {
    text += "Not worked out: " + study.room.problem + "\n";
  } else {
    text += "Stowed it is " + show(study.room.stowed_m, "m", system).text() + " long and ends " +
            show(study.room.stowed_end_m, "m", system).text() + " aft of the stem.\n";
    TextTable table{.rows = {{"when", "from", "clear by", "part", "raised"}}, .right = {false, false, true, false, true}};
    add_rows(table, study.room.stowed, "stowed", system);
    add_rows(table, study.room.swinging, "swinging", system);
    add_rows(table, study.room.opening, "to open", system);
    if (table.rows.size() > 1) text += "\n" + table_text(table) + "\n";
  }
  for (const std::string& note : study.notes) text += note + "\n";
  text += "\n" + of_trace(study.room.trace);
  return text + of_trace(study.light.trace) + of_trace(study.stowing.trace);
}

std::string shaft_length_text(const LengthStudy& study, System system) {
  if (!study.problem.empty()) return "Not worked out: " + study.problem + "\n";
  std::string text = "Thrust against shaft length; needed " + show(study.needed_m, "m", system).text() + ", chosen " +
                     show(study.chosen.length_m, "m", system).text() + "\n\n";
  TextTable table{.rows = {{"sold", "thrust kept", "drawing air", "tip in air", "tube stress", "bend", "tilt"}}, .right = {true, true, true, true, true, true, true}};
  for (const LengthPoint& at : study.sold) {
    table.rows.push_back({show(at.length_m, "m", system).text(), percent(at.kept_frac), percent(at.ventilating_frac), percent(at.tip_frac),
                          show(at.stress_MPa, "MPa", system).text(), show(at.deflection_mm, "mm", system).text(), fixed(at.slope_deg, 1) + "°"});
  }
  text += table_text(table) + "\n";
  if (!study.bend.empty()) {
    TextTable bend{.rows = {{"below the bearing", "moment", "stress", "bend", "tilt"}}, .right = {true, true, true, true, true}};
    for (std::size_t i = 0; i < study.bend.size(); i += 3) {
      const BendPoint& at = study.bend[i];
      bend.rows.push_back({show(at.below_m, "m", system).text(), show(at.moment_Nm, "Nm", system).text(), show(at.stress_MPa, "MPa", system).text(),
                           show(at.deflection_mm, "mm", system).text(), fixed(at.slope_deg, 1) + "°"});
    }
    text += "At full thrust, along the chosen shaft\n\n" + table_text(bend) + "\n";
  }
  text += "Drawing air: the share of time in which the axis lies less than one diameter down; there a propeller that pulls at the post "
          "loses more than the thrust kept says (Koushan 2006).\n";
  for (const std::string& line : study.advice) text += line + "\n";
  return text;
}

std::string snag_text(const SnagStudy& study, System system) {
  if (!study.problem.empty()) return "A snag: not worked out: " + study.problem + "\n";
  std::string text = "A snag: push at the propeller at which each gives, weakest first\n\n";
  TextTable table{.rows = {{"what", "push"}}, .right = {false, true}};
  for (const SnagStrength& each : study.order) table.rows.push_back({each.label, show(each.force_N, "N", system).text()});
  return text + table_text(table) + "\n" + of_trace(study.trace);
}

std::string write_foredeck(const ForedeckStudy& deck, const LengthStudy& length, const SnagStudy& snag) {
  Json out;
  out["foredeck"] = {{"message", deck.room.problem}, {"measured", deck.room_input.mount_measured}, {"stowed_m", deck.room.stowed_m},
                     {"stowed_end_m", deck.room.stowed_end_m}, {"outside_m", deck.room.outside_m},
                     {"stowed", clearances_json(deck.room.stowed)}, {"swinging", clearances_json(deck.room.swinging)},
                     {"opening", clearances_json(deck.room.opening)}, {"notes", deck.notes}};
  out["light"] = {{"measured", deck.light_input.measured}, {"arc_deg", {deck.light.arc.from_deg, deck.light.arc.to_deg}},
                  {"stowed", shadow_json(deck.light.stowed)}, {"lowered", shadow_json(deck.light.deployed)}};
  out["stowing"] = {{"moving_mass_kg", deck.stowing.moving_mass_kg}, {"lift_N", deck.stowing.lift_N},
                    {"lift_limit_kg", deck.stowing.lift_limit_kg}, {"rebound_N", deck.stowing.rebound_N},
                    {"holder_N", deck.stowing.holder_N}, {"holders_needed", deck.stowing.holders_needed_count}};
  Json bend = Json::array();
  for (const BendPoint& at : length.bend) {
    bend.push_back({{"below_m", at.below_m}, {"moment_Nm", at.moment_Nm}, {"stress_MPa", at.stress_MPa}, {"deflection_mm", at.deflection_mm},
                    {"slope_deg", at.slope_deg}});
  }
  out["length"] = {{"message", length.problem}, {"needed_m", length.needed_m}, {"chosen", point_json(length.chosen)},
                   {"sold", points_json(length.sold)}, {"curve", points_json(length.curve)}, {"bend", std::move(bend)}, {"advice", length.advice}};
  Json order = Json::array();
  for (const SnagStrength& each : snag.order) order.push_back({{"label", each.label}, {"force_N", each.force_N}});
  out["snag"] = {{"message", snag.problem}, {"lever_m", snag.lever_m}, {"speed_mps", snag.speed_mps}, {"order", std::move(order)}};
  std::vector<const Check*> checks = deck.checks();
  for (const Check* check : checks_of(snag.trace)) checks.push_back(check);
  out["checks"] = checks_json(checks);
  return out.dump(2) + "\n";
}

}  // namespace thole
