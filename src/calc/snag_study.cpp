#include "calc/snag_study.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <optional>

#include "base/order.h"
#include "base/units.h"
#include "calc/mount/bolt_group.h"
#include "calc/mount/deck.h"
#include "calc/plate_study.h"
#include "calc/shaft/tube.h"
#include "data/sources.h"
#include "data/sources_foredeck.h"
#include "data/sources_mount.h"

namespace thole {
namespace {

constexpr double kCompositeBelow_GPa = 60.0;  // as the shaft stage has it
constexpr int kDirectionStep_deg = 5;

bool is_cored(DeckKind deck) { return deck == DeckKind::cored_balsa || deck == DeckKind::cored_foam; }

// The worst bolt's tension, and its yield ratio's inverse, for a push of 1 N at the propeller.
struct PerNewton {
  double tension_ratio = 0.0;
  double combined_ratio = 0.0;  // sqrt(N^2 + 3 V^2)
};

PerNewton worst_bolt(const Design& design, double lever_m) {
  const BoltPattern pattern = pattern_of(mount_input(design));
  const LoadPoint shaft{.x_mm = pattern.front_mm() + design.job.mount.overhang_mm.value,
                        .y_mm = -pattern.middle.y_mm,
                        .z_mm = -1000.0 * lever_m};
  PerNewton worst;
  for (int angle_deg = 0; angle_deg < 360; angle_deg += kDirectionStep_deg) {
    const double angle_rad = rad_from_deg(angle_deg);
    const GroupLoad load = moved_to_centroid({.force_x_N = std::cos(angle_rad), .force_y_N = std::sin(angle_rad)},
                                             shaft);
    for (const BoltForce& force : elastic_forces(pattern.bolts, load)) {
      const double tension = std::max(force.tension_N, 0.0);
      worst.tension_ratio = std::max(worst.tension_ratio, tension);
      worst.combined_ratio = std::max(worst.combined_ratio, std::sqrt(tension * tension + 3.0 * force.shear_N * force.shear_N));
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
  study.composite = motor.tube_modulus_GPa < kCompositeBelow_GPa;
  study.tube_moment_Nm = tube_last_moment_Nm(motor.tube_outer_mm, motor.tube_wall_mm, motor.tube_yield_MPa, study.composite);
  study.tube_N = study.tube_moment_Nm / study.lever_m;
  const TubeSection section = tube_section(motor.tube_outer_mm, motor.tube_wall_mm);
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

void add_plate(const Design& design, const ChosenPlate& plate, SnagStudy& study) {
  const double working_MPa = design.mount.working_stress_MPa;
  if (!(working_MPa > 0.0)) return;
  const double thrust_N = design.hold.motor.thrust_N;
  add(study, SnagPart::plate, "Mount plate yields",
      {.id = "snag.plate",
       .label = "Push at the propeller at which the plate yields",
       .symbol = "F_p",
       .formula = "T * S / sigma_T",
       .terms = {{"T", thrust_N, "N", "full thrust"},
                 {"S", plate.alloy->yield_MPa, "MPa", "yield of the plate"},
                 {"sigma_T", working_MPa, "MPa", "stress in the plate at full thrust"}},
       .value = thrust_N * plate.alloy->yield_MPa / working_MPa,
       .unit = "N",
       .source = kBeamTheory});
}

void add_fastening(const Design& design, const ChosenPlate& plate, SnagStudy& study) {
  const BoltGrade* grade = find_bolt_grade(design.mount.bolt.grade);
  if (grade == nullptr) return;
  const Mount& mount = design.job.mount;
  const BoltSize& size = *plate.bolt;
  const PerNewton worst = worst_bolt(design, study.lever_m);
  add(study, SnagPart::bolts, "Mount bolts yield",
      {.id = "snag.bolts",
       .label = "Push at the propeller at which the worst bolt yields",
       .symbol = "F_b",
       .formula = "A_s * S / q",
       .terms = {{"A_s", stress_area_mm2(size), "mm2", "area that carries the tension in the thread"},
                 {"S", grade->yield_MPa, "MPa", "yield of the bolt"},
                 {"q", worst.combined_ratio, "", "pull and shear in the worst bolt for each newton at the propeller"}},
       .value = yield_N(size, *grade) / worst.combined_ratio,
       .unit = "N",
       .source = kBoltGroup,
       .assumptions = {"Elastic bolt group from every side; a thin plate that pries loads its front bolts more."}});
  const DeckStrength deck = deck_strength(design.job.boat.deck.value);
  const double side_mm = effective_backing_side_mm({.side_mm = mount.backing_side_mm.value,
                                                    .thickness_mm = mount.backing_thickness_mm.value,
                                                    .washer_mm = size.washer_mm,
                                                    .room_mm = pattern_of(plate.mount).room_mm});
  study.backing_mm = side_mm;
  const Term pull{"q", worst.tension_ratio, "", "pull in the worst bolt for each newton at the propeller"};
  add(study, SnagPart::skin, "Bolts tear out of the deck",
      {.id = "snag.skin",
       .label = "Push at the propeller at which a bolt tears through the skin",
       .symbol = "F_d",
       .formula = "4 * s_e * t * tau / q",
       .terms = {{"s_e", side_mm, "mm", "side of the backing that carries"},
                 {"t", mount.deck_thickness_mm.value, "mm", "outer skin, or the single skin"},
                 {"tau", deck.punching_MPa, "MPa", "shear strength of the skin"},
                 pull},
       .value = punching_N(4.0 * side_mm, mount.deck_thickness_mm.value, deck.punching_MPa) / worst.tension_ratio,
       .unit = "N",
       .source = deck.punching_source,
       .assumptions = {"At the skin's own strength, without the factor that the mount's checks keep."}});
  // A plug bears with the core, by their stiffness, until the first of both crushes.
  const bool plugged = design.mount.plug_area_mm2 > 0.0;
  const double area_mm2 = plugged ? design.mount.plug_area_mm2 : backing_area_mm2(side_mm, size.hole_mm);
  const double crushing_MPa =
      plugged ? std::min(kPlugCrushing_MPa, deck.crushing_MPa * kPlugModulus_MPa / deck_core(design.job.boat.deck.value).modulus_MPa)
                      : deck.crushing_MPa;
  add(study, SnagPart::core, is_cored(design.job.boat.deck.value) ? "Deck core crushes" : "Deck crushes under the backing",
      {.id = "snag.core",
       .label = "Push at the propeller at which the deck crushes under a backing",
       .symbol = "F_c",
       .formula = "A_e * sigma_c / q",
       .terms = {{"A_e", area_mm2, "mm2", "area under one bolt that carries"},
                 {"sigma_c", crushing_MPa, "MPa", "crushing strength of the deck"},
                 pull},
       .value = area_mm2 * crushing_MPa / worst.tension_ratio,
       .unit = "N",
       .source = deck.crushing_source,
       .assumptions = {"At its own strength, without the factor that the mount's checks keep."}});
}

double least_N(const SnagStudy& study, bool plate) {
  double least = std::numeric_limits<double>::infinity();
  for (const SnagStrength& each : study.order) {
    if (each.part == SnagPart::tube || (each.part == SnagPart::plate) != plate) continue;
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
                                .remedy = "Larger or thicker backing plates, bolts further apart, solid laminate in place of the core: or a mount "
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

double tube_last_moment_Nm(double outer_mm, double wall_mm, double strength_MPa, bool composite) {
  const TubeSection section = tube_section(outer_mm, wall_mm);
  return 1e-3 * strength_MPa * (composite ? section.modulus_mm3 : section.plastic_modulus_mm3);
}

SnagStudy snag_study(const Design& design) {
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
  }
  if (!study.problem.empty()) return study;
  add_tube(design, study);
  add_plate(design, *plate, study);
  add_fastening(design, *plate, study);
  study.order = sorted(std::move(study.order), [](const SnagStrength& a, const SnagStrength& b) { return a.force_N < b.force_N; });
  add_checks(study);
  study.trace.cautions.push_back({.id = "snag.after",
                                  .text = "After a snag or a grounding look at the deck from below, at every bolt and along the tube, before it is "
                                          "used again: cracks round a backing plate and a tube that does not turn freely are signs.",
                                  .source = kCommonPractice});
  return study;
}

}  // namespace thole
