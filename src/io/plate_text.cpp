#include "io/plate_text.h"

#include <cmath>
#include <nlohmann/json.hpp>

#include "base/number.h"
#include "io/explain.h"
#include "io/table_text.h"

namespace thole {
namespace {

using Json = nlohmann::ordered_json;

Json points(const std::vector<PlatePoint>& nodes) {
  Json out = Json::array();
  for (const PlatePoint& p : nodes) out.push_back({p.x_m, p.y_m});
  return out;
}

std::string bolt_name(const PlateStudy& study, int bolt) {
  if (bolt < 0) return "none";
  const PlatePoint at = study.model.shape.bolts[static_cast<std::size_t>(bolt)].at;
  const int row = bolt / 2 + 1;
  const auto partner = static_cast<std::size_t>(bolt ^ 1);
  const bool in_rows = partner < study.model.shape.bolts.size() && study.model.shape.bolts[partner].at.x_m == at.x_m;
  if (!in_rows) return fixed(1000.0 * at.x_m, 0) + " mm forward, " + fixed(1000.0 * std::abs(at.y_m), 0) + (at.y_m >= 0.0 ? " port" : " starboard");
  return "row " + std::to_string(row) + (at.y_m > 0.0 ? " port" : " starboard");
}

}  // namespace

std::string plate_text(const PlateStudy& study, System system) {
  std::string issues;
  for (const Issue& issue : study.issues) issues += issue.message + "\n";
  if (!study.solution.solved) return issues + "Not worked out: " + study.solution.problem + "\n";
  TextTable table{.rows = {{"", "stress", "may be", "worst bolt", "which", "all bolts", "on the deck", "sag"}},
                  .right = {false, true, true, true, false, true, true, true}};
  for (const PlateFinding& at : study.findings) {
    table.rows.push_back({at.label, show(at.stress_MPa, "MPa", system).text(), show(at.limit_MPa, "MPa", system).text(),
                          show(at.bolt_N, "N", system).text(), bolt_name(study, at.bolt),
                          show(at.bolts_N, "N", system).text(), show(at.deck_MPa, "MPa", system).text(),
                          show(at.sag_mm, "mm", system).text()});
  }
  const PlateMesh& mesh = study.solution.mesh;
  std::string text = issues +
      "The plate by finite elements: " + std::to_string(mesh.triangles.size()) + " triangles, " +
      std::to_string(3 * mesh.nodes.size()) + " unknowns; rows of bolts are counted from aft\n\n" + table_text(table) +
      "\nLowest natural frequency, motor stowed: " + show(study.frequency_Hz, "Hz", system).text() +
      "; a slam is amplified " + fixed(study.amplification_factor, 2) + " times.\n" +
      "By the strip of beam that chose the plate: " + show(study.strip_stress_MPa, "MPa", system).text() +
      " and " + show(study.strip_bolt_N, "N", system).text() + " in a slam, " +
      show(study.strip_frequency_Hz, "Hz", system).text() + "; by the elastic bolt group, which knows no prying, " +
      show(study.group_bolt_N, "N", system).text() + " at full thrust.\n\n";
  for (const Check& check : study.checks)
    text += std::string(check.verdict() == Verdict::fail ? "FAILS  " : "holds  ") + check.label + ": " + show(check.actual, std::string(check.unit), system).text() + " of " +
            show(check.limit, std::string(check.unit), system).text() + ".\n";
  text += "These stand in the verdict, beside the design's own by a strip of beam.\n\n";
  for (const Step& step : study.trace.steps) text += explain(step) + "\n";
  for (const std::string& assumption : study.assumptions) text += assumption + "\n";
  return text +
         "Source: Batoz, Bathe and Ho (1980), discrete Kirchhoff triangle; shear by Katili (1993, not confirmed). What the stress may be is a choice of "
         "this project: the lesser of 0.7 of yield and half of the breaking strength, 0.4 of yield at full thrust.\n"
         "Not a strong point: never tow or anchor from the plate.\n";
}

std::string write_plate(const PlateStudy& study) {
  const PlateSolution& solution = study.solution;
  Json out = {{"solved", solution.solved}, {"message", solution.problem}};
  if (!solution.solved) return out.dump(2) + "\n";
  Json findings = Json::array();
  for (const PlateFinding& at : study.findings) {
    findings.push_back({{"id", at.id}, {"label", at.label}, {"grade", std::string(word(at.grade))}, {"source", std::string(at.source->id)}, {"stress_MPa", at.stress_MPa},
                        {"limit_MPa", at.limit_MPa}, {"stress_x_m", at.stress_at.x_m}, {"stress_y_m", at.stress_at.y_m},
                        {"bolt_N", at.bolt_N}, {"bolt", at.bolt}, {"bolts_N", at.bolts_N}, {"deck_MPa", at.deck_MPa},
                        {"sag_mm", at.sag_mm}, {"panel_mm", at.panel_mm}, {"bar_MPa", at.bar_MPa},
                        {"shear_N", at.shear_N}, {"pull_N", at.pull_N}, {"together_factor", at.together_factor}});
  }
  Json cases = Json::array();
  for (std::size_t i = 0; i < solution.cases.size(); ++i) {
    const PlateCaseSolution& at = solution.cases[i];
    cases.push_back({{"label", study.model.cases[i].label}, {"bolt_N", at.bolt_N}, {"deck_N", at.deck_N},
                     {"rounds", at.rounds}, {"sag_m", at.sag_m}, {"stress_Pa", at.stress_Pa}});
  }
  Json bolts = Json::array();
  for (const PlateHole& bolt : study.model.shape.bolts) bolts.push_back({{"x_m", bolt.at.x_m}, {"y_m", bolt.at.y_m}, {"diameter_m", bolt.diameter_m}});
  out["thickness_m"] = study.model.shape.thickness_m;
  out["area_m2"] = solution.area_m2;
  out["mass_kg"] = solution.mass_kg;
  out["bolt_N_per_m"] = study.model.support.bolt_N_per_m;
  out["deck_N_per_m3"] = study.model.support.deck_N_per_m3;
  out["deck_edge_m"] = study.model.support.deck_edge_m;
  out["frequencies_Hz"] = solution.frequencies_Hz;
  out["frequency_Hz"] = study.frequency_Hz;
  out["tight_Hz"] = study.tight_Hz;
  out["panel_N_per_m"] = study.panel.stiffness.sink_N_per_m;
  out["panel_Nm_per_rad"] = study.panel.stiffness.tilt_Nm_per_rad;
  out["amplification"] = study.amplification_factor;
  out["bolts"] = std::move(bolts);
  out["checks"] = Json::array();
  for (const Check& check : study.checks)
    out["checks"].push_back({{"id", check.id}, {"label", check.label}, {"actual", check.actual}, {"limit", check.limit}, {"unit", std::string(check.unit)}});
  out["issues"] = Json::array();
  for (const Issue& issue : study.issues) out["issues"].push_back({{"field", issue.field}, {"message", issue.message}});
  out["findings"] = std::move(findings);
  out["cases"] = std::move(cases);
  out["nodes_m"] = points(solution.mesh.nodes);
  out["triangles"] = solution.mesh.triangles;
  out["assumptions"] = study.assumptions;
  return out.dump(2) + "\n";
}

}  // namespace thole
