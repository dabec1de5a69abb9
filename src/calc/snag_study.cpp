#include "calc/snag_study.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <optional>
#include <string_view>
#include <vector>

#include "base/order.h"
#include "base/units.h"
#include "calc/mount/bolt_group.h"
#include "calc/mount/deck.h"
#include "calc/mount/plate_rules.h"
#include "calc/shaft/tube.h"
#include "data/sources.h"
#include "data/sources_foredeck.h"
#include "data/sources_mount.h"

namespace thole {
namespace {


bool is_cored(DeckKind deck) { return deck == DeckKind::cored_balsa || deck == DeckKind::cored_foam; }

// What full thrust does by the plate's elements, from the side that is worst for each.
struct AtThrust {
  double tension_N = 0.0;     // of the worst bolt
  double combined_N = 0.0;    // sqrt(N^2 + 3 V^2) of the worst bolt
  double stress_MPa = 0.0;    // in the plate
  double pressure_MPa = 0.0;  // of the plate on the deck
};

AtThrust at_thrust(const PlateStudy& plate) {
  AtThrust worst;
  for (const PlateFinding& at : plate.findings) {
    if (at.id != "thrust") continue;
    worst.stress_MPa = std::max(worst.stress_MPa, at.stress_MPa);
    worst.pressure_MPa = std::max(worst.pressure_MPa, at.deck_MPa);
    const std::vector<double>& bolts_N = plate.solution.cases[at.load_case].bolt_N;
    for (std::size_t i = 0; i < bolts_N.size(); ++i) {
      const double tension_N = std::max(bolts_N[i], 0.0);
      worst.tension_N = std::max(worst.tension_N, tension_N);
      worst.combined_N = std::max(worst.combined_N, std::sqrt(tension_N * tension_N + 3.0 * at.shears_N[i] * at.shears_N[i]));
    }
  }
  return worst;
}

void add(SnagStudy& study, SnagPart part, std::string label, Step step) {
  if (!(step.value > 0.0) || !std::isfinite(step.value)) return;
  study.order.push_back({part, std::move(label), step.value});
  study.trace.steps.push_back(std::move(step));
}

void add_tube(const Design& design, SnagStudy& study) {
  const MotorClass& motor = design.hold.motor;
  study.composite = is_composite(motor.tube_modulus_GPa);
  const TubeSection section = tube_section(motor.tube_outer_mm, motor.tube_wall_mm);
  study.tube_moment_Nm = tube_last_moment_Nm(section, motor.tube_yield_MPa, study.composite);
  study.tube_N = study.tube_moment_Nm / study.lever_m;
  study.stiffness_N_per_m = bend(section, motor.tube_modulus_GPa, study.lever_m, 1.0).stiffness_N_per_m;
  study.speed_mps = study.tube_N / std::sqrt(design.job.boat.displacement_kg.value * study.stiffness_N_per_m);
  const Term strength{"S", motor.tube_yield_MPa, "MPa", study.composite ? "flexural strength" : "yield"};
  const Term outer{"D", section.outer_mm, "mm", "outside diameter"};
  const Term inner{"d", section.inner_mm, "mm", "inside diameter"};
  const Term lever{"h", study.lever_m, "m", "propeller axis under the deck"};
  Step step{.id = "snag.tube",
            .label = "Push at the propeller at which the tube gives",
            .symbol = "F_t",
            .formula = "S * (D^3 - d^3) / (6000 * h)",
            .terms = {strength, outer, inner, lever},
            .value = study.tube_N,
            .unit = "N",
            .source = kPlasticTube};
  if (study.composite) {
    step.formula = "S * pi * (D^4 - d^4) / (32000 * D * h)";
    step.terms.push_back({"pi", std::numbers::pi, "", "circle constant"});
  }
  add(study, SnagPart::tube, study.composite ? "Shaft tube breaks" : "Shaft tube bends for good", std::move(step));
  study.trace.steps.push_back({.id = "snag.speed",
                               .label = "Speed of the boat whose way alone bends the tube so far",
                               .symbol = "v",
                               .formula = "F_t / sqrt(m * k)",
                               .terms = {{"F_t", study.tube_N, "N", "push at which the tube gives"},
                                         {"m", design.job.boat.displacement_kg.value, "kg", "loaded weight"},
                                         {"k", study.stiffness_N_per_m, "N_per_m", "stiffness of the tube, 3 E I / h^3"}},
                               .value = study.speed_mps,
                               .unit = "mps",
                               .source = kDefinition,
                               .assumptions = {"The mount does not give and the rock does not move."}});
}

// The push at which what grows with it reaches its strength: its thrust times strength over what full thrust does.
Step push_step(std::string id, std::string label, std::string_view symbol, const PlateStudy& solved, double strength, std::string_view formula,
               std::vector<Term> strengths, Term at_thrust, SourceRef source) {
  Step step{.id = std::move(id),
            .label = std::move(label),
            .symbol = symbol,
            .formula = formula,
            .terms = std::move(strengths),
            .value = solved.thrust_N * strength / at_thrust.value,
            .unit = "N",
            .source = source};
  step.terms.push_back({"T", solved.thrust_N, "N", "full thrust"});
  step.terms.push_back(at_thrust);
  return step;
}

void add_mount(const Design& design, const ChosenPlate& plate, const PlateStudy& solved, SnagStudy& study) {
  const BoltGrade* grade = find_bolt_grade(design.mount.bolt.grade);
  if (grade == nullptr) return;
  const AtThrust worst = at_thrust(solved);
  const Mount& mount = design.job.mount;
  const BoltSize& size = *plate.bolt;
  // A sunk head may pull through before the thread yields.
  const double bolt_MPa = std::min(grade->yield_MPa, bolt_head_factor(mount.head.value == Head::countersunk) * grade->tensile_MPa);
  add(study, SnagPart::plate, "Mount plate yields",
      push_step("snag.plate", "Push at the propeller at which the plate yields", "F_p", solved, plate.alloy->yield_MPa, "T * S / sigma_T",
                {{"S", plate.alloy->yield_MPa, "MPa", "yield of the plate"}},
                {"sigma_T", worst.stress_MPa, "MPa", "stress in the plate at full thrust, by elements"}, kDiscreteKirchhoff));
  add(study, SnagPart::bolts, "Mount bolts yield",
      push_step("snag.bolts", "Push at the propeller at which the worst bolt yields", "F_b", solved, stress_area_mm2(size) * bolt_MPa, "T * A_s * S / q",
                {{"A_s", stress_area_mm2(size), "mm2", "area that carries the tension in the thread"},
                 {"S", bolt_MPa, "MPa", "yield of the bolt, or what pulls a sunk head through"}},
                {"q", worst.combined_N, "N", "sqrt(N^2 + 3 V^2) of the worst bolt at full thrust: pull by elements, prying in it, and shear"},
                kDiscreteKirchhoff));
  const DeckStrength deck = deck_strength(design.job.boat.deck.value);
  const double side_mm = effective_backing_side_mm({.side_mm = mount.backing_side_mm.value,
                                                    .thickness_mm = mount.backing_thickness_mm.value,
                                                    .washer_mm = size.washer_mm,
                                                    .room_mm = pattern_of(plate.mount).room_mm});
  study.backing_mm = side_mm;
  const Term pull{"q", worst.tension_N, "N", "pull of the worst bolt at full thrust, by elements, prying in it"};
  const double skin_mm = mount.deck_thickness_mm.value;
  Step skin = push_step("snag.skin", "Push at the propeller at which a bolt tears through the skin", "F_d", solved,
                        punching_N(4.0 * side_mm, skin_mm, deck.punching_MPa), "T * 4 * s_e * t * tau / q",
                        {{"s_e", side_mm, "mm", "side of the backing that carries"},
                         {"t", skin_mm, "mm", "outer skin, or the single skin"},
                         {"tau", deck.punching_MPa, "MPa", "shear strength of the skin"}},
                        pull, deck.punching_source);
  skin.assumptions = {"At the skin's own strength, without the factor that the mount's checks keep."};
  add(study, SnagPart::skin, "Bolts tear out of the deck", std::move(skin));
  // A plug bears with the core, by their stiffness, until the first of both crushes.
  const bool plugged = design.mount.plug_area_mm2 > 0.0;
  const double area_mm2 = plugged ? design.mount.plug_area_mm2 : backing_area_mm2(side_mm, size.hole_mm);
  const double crushing_MPa =
      plugged ? std::min(kPlugCrushing_MPa, deck.crushing_MPa * kPlugModulus_MPa / deck_core(design.job.boat.deck.value).modulus_MPa)
              : deck.crushing_MPa;
  const bool cored = is_cored(design.job.boat.deck.value);
  Step core = push_step("snag.core", "Push at the propeller at which the deck crushes under a backing", "F_c", solved, area_mm2 * crushing_MPa,
                        "T * A_e * sigma_c / q",
                        {{"A_e", area_mm2, "mm2", "area under one bolt that carries"}, {"sigma_c", crushing_MPa, "MPa", "crushing strength of the deck"}},
                        pull, deck.crushing_source);
  core.assumptions = {"At its own strength, without the factor that the mount's checks keep."};
  add(study, SnagPart::core, cored ? "Deck core crushes under a backing" : "Deck crushes under a backing", std::move(core));
  add(study, SnagPart::deck, cored ? "Deck core dents under the plate" : "Deck dents under the plate",
      push_step("snag.pressed", "Push at the propeller at which the plate dents the deck", "F_e", solved, deck.crushing_MPa,
                "T * sigma_c / p_T", {{"sigma_c", deck.crushing_MPa, "MPa", "crushing strength of the deck"}},
                {"p_T", worst.pressure_MPa, "MPa", "pressure of the plate on the deck at full thrust, by elements"}, deck.crushing_source));
  if (study.order.back().part == SnagPart::deck) study.trace.steps.back().assumptions = {"The skin spreads nothing; not in the verdict."};
}

double least_N(const SnagStudy& study, bool plate) {
  double least = std::numeric_limits<double>::infinity();
  for (const SnagStrength& each : study.order) {
    // Dented under the plate's edge it neither lets go nor lets water in.
    if (each.part == SnagPart::tube || each.part == SnagPart::deck || (each.part == SnagPart::plate) != plate) continue;
    least = std::min(least, each.force_N);
  }
  return std::isfinite(least) ? least : std::numeric_limits<double>::quiet_NaN();
}

void add_checks(SnagStudy& study) {
  study.over_ratio = least_N(study, false) / study.tube_N;
  study.trace.checks.push_back({.id = "snag.deck",
                                .label = "The shaft gives before bolts and deck do",
                                .actual = least_N(study, false),
                                .limit = kSnagOver_factor * study.tube_N,
                                .unit = "N",
                                .comparison = Comparison::at_least,
                                .source = kProjectDecision,
                                .remedy = "Larger or thicker backing plates, larger bolts or further apart, solid laminate in place of the core: or a mount "
                                          "with a breakaway that lets go first."});
  study.trace.checks.push_back({.id = "snag.plate",
                                .label = "The shaft gives before the plate does",
                                .actual = least_N(study, true),
                                .limit = study.tube_N,
                                .unit = "N",
                                .comparison = Comparison::at_least,
                                .source = kProjectDecision,
                                .remedy = "A bent plate is cheaper than a torn deck, but dearer than a tube: take a thicker or a wider plate."});
}

}  // namespace

double snag_force_N(double mass_kg, double speed_mps, double stiffness_N_per_m) {
  return speed_mps * std::sqrt(mass_kg * stiffness_N_per_m);
}

SnagStudy snag_study(const Design& design) { return snag_study(design, plate_study(design)); }

SnagStudy snag_study(const Design& design, const PlateStudy& solved) {
  SnagStudy study;
  const MotorClass& motor = design.hold.motor;
  const bool known = motor.tube_outer_mm > 0.0 && motor.tube_wall_mm > 0.0 && motor.tube_yield_MPa > 0.0 && motor.tube_modulus_GPa > 0.0;
  const std::optional<ChosenPlate> plate = chosen_plate(design);
  study.lever_m = design.shaft.length_m - design.job.shaft.collar_m.value;
  if (!known) {
    study.problem = "The shaft tube's diameter, wall, strength and stiffness are not all known.";
  } else if (!plate) {
    study.problem = kNoPlate;
  } else if (!(study.lever_m > 0.0)) {
    study.problem = "The shaft ends above the deck.";
  } else if (!solved.solution.solved) {
    study.problem = solved.solution.problem;
  }
  if (!study.problem.empty()) return study;
  add_tube(design, study);
  add_mount(design, *plate, solved, study);
  study.order = sorted(std::move(study.order), [](const SnagStrength& a, const SnagStrength& b) { return a.force_N < b.force_N; });
  add_checks(study);
  study.trace.cautions.push_back({.id = "snag.after",
                                  .text = "After a snag or a grounding look at the deck from below, at every bolt and along the tube, before it is "
                                          "used again: cracks round a backing plate and a tube that does not turn freely are signs.",
                                  .source = kCommonPractice});
  return study;
}

}  // namespace thole
