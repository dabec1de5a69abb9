#include "io/loads_text.h"

#include <cmath>

#include <nlohmann/json.hpp>

#include "base/number.h"
#include "io/explain.h"
#include "io/figures.h"
#include "io/table_text.h"

namespace thole {
namespace {

using Json = nlohmann::ordered_json;

constexpr std::string_view kUnknown = "No motor or no pattern of bolts to work it out for.";

Json vector(const GroupLoad& load) {
  return {{"force_N", {load.force_x_N, load.force_y_N, load.force_z_N}},
          {"moment_Nm", {load.moment_x_Nm, load.moment_y_Nm, load.moment_z_Nm}}};
}

std::string cases_table(const LoadsStudy& study, System system) {
  TextTable table{.rows = {{"case", "force", "times", "moment on bolts", "worst bolt", "may be", "grade"}},
                  .right = {false, true, true, true, true, true, false}};
  for (const LoadCase& at : study.loads.cases) {
    const double force_N = std::hypot(at.force.force_x_N, at.force.force_y_N, at.force.force_z_N);
    table.rows.push_back({at.label + (at.in_range ? "" : " *"), show(force_N, "N", system).text(), fixed(at.load_factor, 1),
                          show(at.moment_Nm, "Nm", system).text(), show(at.bolt_N, "N", system).text(),
                          study.bolt_breaking_N > 0.0 ? show(bolt_share(at.grade) * study.bolt_breaking_N, "N", system).text() : "-",
                          std::string(word(at.grade))});
  }
  return table_text(table);
}

std::string ranges(const LoadsStudy& study) {
  std::string text;
  bool thrust = false;
  for (const LoadCase& at : study.loads.cases) {
    const bool repeated = at.id.starts_with("thrust.");
    if (repeated && thrust) continue;
    thrust = thrust || repeated;
    text += (repeated ? std::string("Full thrust") : at.label) + ": " + at.range + ". Source: " + shown_source(at.source) + "\n";
  }
  return text;
}

std::string formulas_table(const LoadsStudy& study) {
  TextTable table{.rows = {{"acceleration, g above gravity, 1/100 highest", "centre", "bow", "motor", ""}},
                  .right = {false, true, true, true, false}};
  for (const SlamFormula& row : study.loads.formulas) {
    table.rows.push_back({std::string(row.label), fixed(row.cg_g, 2), fixed(row.bow_g, 2), fixed(row.motor_g, 2),
                          row.outside.empty() ? "in range" : "outside: " + row.outside.front()});
  }
  return table_text(table);
}

std::string seas_table(const LoadsStudy& study, System system) {
  TextTable table{.rows = {{"sea", "never faster, stowed", "slam at full run"}}, .right = {true, true, true}};
  for (const SeaSpeed& sea : study.loads.seas) {
    table.rows.push_back({show(sea.wave_m, "m", system).text(),
                          show(sea.speed_mps, "mps", system).text() + (sea.in_range ? "" : " *"), show(sea.slam_N, "N", system).text()});
  }
  return table_text(table);
}

}  // namespace

std::string loads_text(const LoadsStudy& study, System system) {
  if (!study.known) return std::string(kUnknown) + "\n";
  std::string text = "Never faster with the motor stowed, in a sea of " + show(study.stowed_wave_m, "m", system).text() + ": " +
                     show(study.stowed_limit_mps, "mps", system).text() + "\nNever faster with the motor down: " +
                     show(study.deployed_limit_mps, "mps", system).text() + "\n\n" + cases_table(study, system) + "\n" +
                     formulas_table(study) + "\n" + seas_table(study, system) +
                     "\n* outside of the range of its formula, or not worked out: see below. Bolts by the elastic group, which "
                     "knows no prying; `thole plate` does.\n\n" +
                     ranges(study) + "\n";
  for (const Step& step : study.loads.trace.steps) text += explain(step) + "\n";
  return text + "Not a strong point: never tow, moor or anchor from the plate.\n";
}

std::string write_loads(const LoadsStudy& study) {
  Json out = {{"known", study.known},
              {"stowed_limit_mps", study.stowed_limit_mps},
              {"stowed_wave_m", study.stowed_wave_m},
              {"deployed_limit_mps", study.deployed_limit_mps}};
  if (!study.known) return out.dump(2) + "\n";
  Json cases = Json::array();
  for (const LoadCase& at : study.loads.cases) {
    Json row = {{"id", at.id}, {"label", at.label}, {"force", vector(at.force)}, {"at_mm", {at.at.x_mm, at.at.y_mm, at.at.z_mm}},
                {"factor", at.load_factor}, {"grade", word(at.grade)}, {"at_bolts", vector(at.at_bolts)}, {"moment_Nm", at.moment_Nm},
                {"bolt_N", at.bolt_N}, {"in_range", at.in_range}, {"range", at.range}, {"source", at.source->id},
                {"confirmed", at.source->confirmed}};
    if (study.bolt_breaking_N > 0.0) row["bolt_limit_N"] = bolt_share(at.grade) * study.bolt_breaking_N;
    cases.push_back(std::move(row));
  }
  Json formulas = Json::array();
  for (const SlamFormula& row : study.loads.formulas) {
    formulas.push_back({{"label", row.label}, {"cg_g", row.cg_g}, {"bow_g", row.bow_g}, {"motor_g", row.motor_g},
                        {"outside", row.outside}, {"range", row.range}, {"source", row.source->id}, {"confirmed", row.source->confirmed}});
  }
  Json seas = Json::array();
  for (const SeaSpeed& sea : study.loads.seas) {
    seas.push_back({{"wave_m", sea.wave_m}, {"speed_mps", sea.speed_mps}, {"slam_N", sea.slam_N}, {"in_range", sea.in_range}});
  }
  out["cases"] = std::move(cases);
  out["formulas"] = std::move(formulas);
  out["seas"] = std::move(seas);
  return out.dump(2) + "\n";
}

}  // namespace thole
