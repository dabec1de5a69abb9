#include "calc/plate_supports.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string_view>
#include <utility>

#include "calc/mount/deck.h"
#include "calc/mount/plate_rules.h"
#include "data/laminates.h"
#include "data/sources_mount.h"

namespace thole {
namespace {

// Project decisions.
constexpr double kBedding_MPa_per_mm = 5.0;  // a millimetre of compound of 5 MPa
constexpr double kInsidePanel_frac = 0.9;  // of its span, at most, that the loads stand apart

// What the flex test says of bolts and bedding.
void by_flex_test(Step& step, double deck_factor, std::string_view formula) {
  if (deck_factor == 1.0) return;
  step.formula = formula;
  step.terms.push_back({"c_d", deck_factor, "", "stiffness of bolts and bedding over what is computed, from a flex test"});
  step.value *= deck_factor;
}

}  // namespace

double add_deck_stiffness(const MountInput& in, double deck_factor, Trace& trace) {
  const double core_MPa = deck_core(in.deck).modulus_MPa;
  Step step{.id = "plate.deck",
            .label = "Pressure on the deck for a sink of one millimetre",
            .symbol = "k_f",
            .formula = "k_b",
            .terms = {{"k_b", kBedding_MPa_per_mm, "MPa", "bedding compound, a millimetre of it"}},
            .value = kBedding_MPa_per_mm,
            .unit = "MPa",
            .source = kWinklerDeck};
  if (has_core(in)) {
    step.formula = "1 / (1 / k_b + t_c / E_c)";
    step.terms.push_back({"t_c", in.core_thickness_mm, "mm", "core"});
    step.terms.push_back({"E_c", core_MPa, "MPa", "modulus of the core, through its thickness"});
    step.value = 1.0 / (1.0 / kBedding_MPa_per_mm + in.core_thickness_mm / core_MPa);
  }
  by_flex_test(step, deck_factor, has_core(in) ? "c_d / (1 / k_b + t_c / E_c)" : "c_d * k_b");
  trace.steps.push_back(step);
  return step.value * 1e9;
}

double add_bolt_stiffness(const MountInput& in, const BoltSize& size, double thickness_mm, double deck_factor, Trace& trace) {
  const double grip_mm = bolt_grip_mm(in, thickness_mm);
  const double area_mm2 = stress_area_mm2(size);
  const double shank = kBoltModulus_MPa * area_mm2 / grip_mm;
  Step step{.id = "plate.bolt",
            .label = "Stiffness of a bolt",
            .symbol = "k_s",
            .formula = "E * A_s / L",
            .terms = {{"E", kBoltModulus_MPa, "MPa", "modulus of stainless steel"},
                      {"A_s", area_mm2, "mm2", "area that carries the tension in the thread"},
                      {"L", grip_mm, "mm", "grip: plate, deck, backing, 10 mm for nut and bedding"}},
            .value = shank,
            .unit = "N_per_mm",
            .source = kWinklerDeck};
  if (has_core(in)) {
    const double side_mm = std::max(in.backing_side_mm, size.washer_mm);
    const double core_MPa = deck_core(in.deck).modulus_MPa;
    step.formula = "1 / (L / (E * A_s) + t_c / (E_c * b^2))";
    step.terms.push_back({"t_c", in.core_thickness_mm, "mm", "core"});
    step.terms.push_back({"E_c", core_MPa, "MPa", "modulus of the core, through its thickness"});
    step.terms.push_back({"b", side_mm, "mm", "side of the backing"});
    double core_N = core_MPa * side_mm * side_mm;
    if (has_plugs(in)) {
      const double across_mm = std::min(plug_diameter_mm(size.diameter_mm), side_mm);
      step.formula = "1 / (L / (E * A_s) + t_c / (E_c * b^2 + (E_p - E_c) * pi / 4 * D^2))";
      step.terms.push_back({"E_p", kPlugModulus_MPa, "MPa", "modulus of the filling"});
      step.terms.push_back({"pi", std::numbers::pi, "", "circle constant"});
      step.terms.push_back({"D", across_mm, "mm", "plug across"});
      core_N += (kPlugModulus_MPa - core_MPa) * std::numbers::pi / 4.0 * across_mm * across_mm;
    }
    step.value = 1.0 / (1.0 / shank + in.core_thickness_mm / core_N);
  }
  by_flex_test(step, deck_factor,
               !has_core(in)        ? "c_d * E * A_s / L"
               : has_plugs(in) ? "c_d / (L / (E * A_s) + t_c / (E_c * b^2 + (E_p - E_c) * pi / 4 * D^2))"
                                 : "c_d / (L / (E * A_s) + t_c / (E_c * b^2))");
  trace.steps.push_back(step);
  return step.value * 1e3;
}

PanelStiffness add_deck_panel(const MountInput& in, double span_mm, double breadth_mm, const BoltPattern& pattern, double panel_factor, Trace& trace) {
  const double span_m = span_mm / 1000.0;
  const double breadth_m = breadth_mm / 1000.0;
  const double patch_m = std::min(std::max(in.backing_side_mm, 10.0) / 1000.0, 0.3 * std::min(span_m, breadth_m));
  const double most_m = kInsidePanel_frac * span_m - patch_m;
  const double widest_m = kInsidePanel_frac * breadth_m - patch_m;
  const double long_m = std::clamp(pattern.span_mm() / 1000.0, 0.1 * most_m, most_m);
  const double wide_m = std::min(2.0 * pattern.half_mm / 1000.0, widest_m);
  const bool drawn_in = pattern.span_mm() > 1000.0 * long_m + 1.0 || 2.0 * pattern.half_mm > 1000.0 * wide_m + 1.0;
  const DeckSection section = deck_section(in.deck, in.deck_thickness_mm, in.core_thickness_mm);
  PanelStiffness panel = panel_stiffness({.length_m = span_m, .width_m = breadth_m, .patch_m = patch_m, .section = section}, long_m, wide_m);
  panel.sink_N_per_m *= panel_factor;
  panel.tilt_Nm_per_rad *= panel_factor;
  // The series has no short form: what it gives for this pattern and core stands as one coefficient.
  const Term found{"c_d", panel_factor, "", "stiffness over what is computed, from a flex test"};
  const Term rigidity{"D", section.rigidity_Nm, "Nm", "bending stiffness of the deck per width"};
  trace.steps.push_back({.id = "plate.panel_sink",
                         .label = "Push that sinks the deck's panel by a metre",
                         .symbol = "k_d",
                         .formula = "c_d * c * D / a^2",
                         .terms = {found,
                                   {"c", panel.sink_N_per_m / panel_factor * span_m * span_m / section.rigidity_Nm, "", "by the series, for this pattern, core and free breadth"},
                                   rigidity,
                                   {"a", span_m, "m", "deck free fore and aft"}},
                         .value = panel.sink_N_per_m,
                         .unit = "N_per_m",
                         .source = kDeckPanel,
                         .assumptions = {drawn_in ? "A panel held at its edges and free to turn there; the bolts reach to its edges and are drawn in as far as "
                                                    "their backing has room."
                                                  : "A panel held at its edges and free to turn there, the bolts amid it."}});
  trace.steps.push_back({.id = "plate.panel_tilt",
                         .label = "Moment that tilts the deck's panel fore and aft by a radian",
                         .symbol = "k_t",
                         .formula = "c_d * c * D",
                         .terms = {found,
                                   {"c", panel.tilt_Nm_per_rad / panel_factor / section.rigidity_Nm, "", "by the series, for this pattern, core and free breadth"},
                                   rigidity},
                         .value = panel.tilt_Nm_per_rad,
                         .unit = "Nm",
                         .source = kDeckPanel});
  return panel;
}

}  // namespace thole
