#include "calc/plate_study.h"

#include <algorithm>
#include <cmath>

#include "base/number.h"
#include "base/units.h"
#include "calc/mount/deck.h"
#include "calc/mount/slam.h"
#include "data/alloys.h"
#include "data/bolts.h"
#include "data/laminates.h"
#include "data/sources.h"
#include "data/sources_mount.h"

namespace thole {
namespace {

// Project decisions, as are the allowables.
constexpr double kCorner_m = 0.020;
constexpr double kAftMargin_frac = 0.12;
constexpr double kAftMarginLeast_m = 0.030;
constexpr double kFoot_m = 0.120;          // length of the stowed motor's rest on the plate
constexpr double kFootEdge_m = 0.010;      // its distance from the plate's fore edge, at least
constexpr double kBedding_N_per_m3 = 5e9;  // a millimetre of bedding compound of 5 MPa
constexpr double kBoltModulus_Pa = 193e9;
constexpr double kNutAndBedding_m = 0.010;
constexpr double kFoot_ratio = 27.0;         // plate and foot as three thicknesses
constexpr double kRebound_frac = 0.25;
constexpr double kTrailer_g = 2.0;
constexpr double kPerson_N = 1500.0;
constexpr double kPersonFoot_m = 0.100;
constexpr double kPulse_s = 0.15;
constexpr double kWorking_frac = 0.4;  // of yield, at full thrust
constexpr int kThrustStep_deg = 30;

double through_thickness_MPa(DeckKind deck) {
  switch (deck) {
    case DeckKind::cored_balsa: return core(CoreKind::balsa, 150.0).modulus_MPa;
    case DeckKind::cored_foam: return core(CoreKind::cross_linked_pvc, 80.0).modulus_MPa;
    default: return 0.0;
  }
}

// Pressure that sinks the plate by a metre: bedding compound on the core.
double deck_stiffness_N_per_m3(const MountInput& in) {
  const double core_MPa = through_thickness_MPa(in.deck);
  if (!(core_MPa > 0.0) || !(in.core_thickness_mm > 0.0)) return kBedding_N_per_m3;
  const double core_N_per_m3 = core_MPa * 1e6 / (in.core_thickness_mm / 1000.0);
  return 1.0 / (1.0 / kBedding_N_per_m3 + 1.0 / core_N_per_m3);
}

// The shank over its grip, on the core under the backing.
double bolt_stiffness_N_per_m(const MountInput& in, const BoltSize& size, double thickness_m) {
  const double grip_m = thickness_m + kNutAndBedding_m +
                        (in.deck_thickness_mm + in.core_thickness_mm + in.backing_thickness_mm) / 1000.0;
  const double shank = kBoltModulus_Pa * stress_area_mm2(size) * 1e-6 / grip_m;
  const double core_MPa = through_thickness_MPa(in.deck);
  if (!(core_MPa > 0.0) || !(in.core_thickness_mm > 0.0)) return shank;
  const double area_m2 = std::max(in.backing_side_mm, size.washer_mm) * std::max(in.backing_side_mm, size.washer_mm) * 1e-6;
  const double pad = core_MPa * 1e6 * area_m2 / (in.core_thickness_mm / 1000.0);
  return 1.0 / (1.0 / shank + 1.0 / pad);
}

struct Stowed {
  PlateFoot foot{};
  double lead_m = 0.0;       // the motor's centre ahead of it
  double carried_frac = 1.0; // by the plate; a chock has the rest
};

Stowed stowed_motor(const MountInput& in, double front_row_m) {
  const double length_m = in.plate_length_mm / 1000.0;
  const double centre_m = front_row_m + in.overhang_mm / 1000.0;
  const double foot_m = std::min(kFoot_m, 0.3 * length_m);
  const double middle_m = std::min(centre_m, length_m - kFootEdge_m - 0.5 * foot_m);
  Stowed stowed{.foot = {.middle = {middle_m, 0.0}, .length_m = foot_m, .width_m = 0.5 * in.plate_width_mm / 1000.0},
                .lead_m = centre_m - middle_m};
  if (in.chocked) {
    const double chock_m = front_row_m + 2.0 * in.overhang_mm / 1000.0;
    stowed.carried_frac = (chock_m - centre_m) / (chock_m - middle_m);
    stowed.lead_m = 0.0;  // held at both ends it only presses
  }
  return stowed;
}

PlateLoadCase stowed_case(std::string label, const Stowed& stowed, double up_N) {
  const double carried_N = stowed.carried_frac * up_N;
  return {std::move(label), {{.foot = stowed.foot, .force_N = carried_N, .pitch_Nm = carried_N * stowed.lead_m}}};
}

PlateFinding finding(const PlateStudy& study, std::size_t index, double factor, double limit_MPa,
                     const Source& source, double lead_m) {
  const PlateCaseSolution& result = study.solution.cases[index];
  PlateFinding found{.label = study.model.cases[index].label,
                     .source = std::string(source.id),
                     .load_case = index,
                     .load_factor = factor,
                     .stress_MPa = factor * result.worst_stress_Pa / 1e6,
                     .limit_MPa = limit_MPa,
                     .sag_mm = -1000.0 * factor * (result.foot_sag_m + lead_m * result.foot_pitch_rad)};
  if (result.worst_node >= 0) found.stress_at = study.solution.mesh.nodes[static_cast<std::size_t>(result.worst_node)];
  for (std::size_t i = 0; i < result.bolt_N.size(); ++i) {
    found.bolts_N += factor * result.bolt_N[i];
    if (factor * result.bolt_N[i] > found.bolt_N) found.bolt_N = factor * result.bolt_N[i], found.bolt = static_cast<int>(i);
  }
  for (const double pressure_Pa : result.deck_Pa) found.deck_MPa = std::max(found.deck_MPa, factor * pressure_Pa / 1e6);
  return found;
}

double step_value(const Design& design, const char* id) {
  const Step* step = design.find_step(id);
  return step != nullptr ? step->value : 0.0;
}

}  // namespace

PlateShape plate_shape(const MountInput& in, double hole_m) {
  const double length_m = in.plate_length_mm / 1000.0;
  const double half_m = 0.5 * in.plate_width_mm / 1000.0;
  const double radius_m = std::min(kCorner_m, 0.2 * std::min(length_m, half_m));
  PlateShape shape{.outline = {{{0.0, -half_m}, radius_m}, {{length_m, -half_m}, radius_m},
                               {{length_m, half_m}, radius_m}, {{0.0, half_m}, radius_m}}};
  const double aft_m = std::max(kAftMargin_frac * length_m, kAftMarginLeast_m);
  for (int row = 0; row < in.bolt_rows; ++row)
    for (const double side : {1.0, -1.0})
      shape.bolts.push_back({.at = {aft_m + row * in.bolt_pitch_mm / 1000.0, side * 0.5 * in.bolt_gauge_mm / 1000.0},
                             .diameter_m = hole_m});
  return shape;
}

PlateStudy plate_study(const Design& design) {
  PlateStudy study;
  const MountInput in = mount_input(design);
  const Alloy* alloy = in.plates.empty() ? nullptr : find_alloy(in.plates.front().alloy);
  const BoltSize* size = in.bolts.empty() ? nullptr : find_bolt_size(in.bolts.front().size);
  if (alloy == nullptr || size == nullptr) {
    study.solution.problem = "There is no plate of a known alloy, or no bolt of a known size, in this catalogue.";
    return study;
  }
  const double thickness_m = design.mount.plate.thickness_mm / 1000.0;
  PlateModel& model = study.model;
  model.shape = plate_shape(in, size->hole_mm / 1000.0);
  model.shape.thickness_m = thickness_m;
  const double front_row_m = model.shape.bolts.back().at.x_m;
  const double washer_m = 0.5 * size->washer_mm / 1000.0;
  model.material = {.modulus_Pa = alloy->modulus_GPa * 1e9, .poisson_ratio = alloy->poisson_ratio, .density_kg_per_m3 = alloy->density_kg_per_m3};
  model.support = {.bolt_N_per_m = bolt_stiffness_N_per_m(in, *size, thickness_m),
                   .deck_N_per_m3 = deck_stiffness_N_per_m3(in),
                   .deck_edge_m = front_row_m + step_value(design, "mount.deck_ahead") / 1000.0};
  model.wish.bolt_ring_m = washer_m;
  model.stress_clear_m = 1.05 * washer_m;
  const Stowed stowed = stowed_motor(in, front_row_m);
  const double weight_N = in.motor_mass_kg * kGravity_mps2;

  model.cases.push_back(stowed_case("Motor stowed, at rest", stowed, -weight_N));
  model.cases.push_back(stowed_case("Motor stowed, rebound", stowed, weight_N));
  const double end_m = in.plate_length_mm / 1000.0 - 0.5 * kPersonFoot_m - 0.005;
  model.cases.push_back({"A person steps on the fore end",
                         {{.foot = {.middle = {end_m, 0.0}, .length_m = kPersonFoot_m, .width_m = std::min(kPersonFoot_m, in.plate_width_mm / 1000.0)}, .force_N = -kPerson_N}}});
  const double pattern_m = in.bolt_pitch_mm * (in.bolt_rows - 1) / 1000.0;
  const PlateFoot stem{.middle = {front_row_m - 0.5 * pattern_m, 0.0}, .length_m = std::max(0.5 * pattern_m, 0.04), .width_m = 0.5 * in.bolt_gauge_mm / 1000.0};
  model.patches = {{stem, kFoot_ratio}};
  const std::size_t first_thrust = model.cases.size();
  for (int angle_deg = 0; angle_deg <= 180; angle_deg += kThrustStep_deg) {
    const double moment_Nm = in.thrust_N * in.thrust_lever_m;
    const double angle_rad = rad_from_deg(angle_deg);
    model.cases.push_back({"Full thrust " + std::to_string(angle_deg) + "\u00b0 from ahead",
                           {{.foot = stem, .pitch_Nm = moment_Nm * std::cos(angle_rad), .roll_Nm = moment_Nm * std::sin(angle_rad)}}});
  }
  model.masses = {{.foot = stowed.foot, .mass_kg = stowed.carried_frac * in.motor_mass_kg, .lead_m = stowed.lead_m}};
  model.rest_case = 0;
  study.solution = solve_plate(model);
  if (!study.solution.solved) return study;

  study.frequency_Hz = study.solution.frequencies_Hz.front();
  study.amplification_factor = std::max(amplification(study.frequency_Hz, kPulse_s).factor, 1.0);
  const double bow_g = design.mount.bow_acceleration_factor;
  const double extreme_MPa = std::min(0.7 * alloy->yield_MPa, 0.5 * alloy->tensile_MPa);
  // Without preload the plate answers in proportion: a slam is the weight at rest, times.
  const double slam_factor = 1.0 + bow_g * study.amplification_factor;
  study.findings.push_back(finding(study, 0, 1.0, extreme_MPa, kWinklerDeck, stowed.lead_m));
  study.findings.push_back(finding(study, 0, slam_factor, extreme_MPa, kIso12215Acceleration, stowed.lead_m));
  study.findings.back().label = "Motor stowed, in a slam";
  study.findings.push_back(finding(study, 1, kRebound_frac * slam_factor, extreme_MPa, kProjectDecision, stowed.lead_m));
  study.findings.push_back(finding(study, 0, 1.0 + kTrailer_g, extreme_MPa, kProjectDecision, stowed.lead_m));
  study.findings.back().label = "On a trailer";
  study.findings.push_back(finding(study, 2, 1.0, extreme_MPa, kPersonOnPlate, 0.0));
  for (std::size_t i = first_thrust; i < model.cases.size(); ++i)
    study.findings.push_back(finding(study, i, 1.0, kWorking_frac * alloy->yield_MPa, kProjectDecision, 0.0));
  study.strip_stress_MPa = design.mount.plate_stress_MPa;
  study.strip_bolt_N = step_value(design, "mount.bolt_tension_slam");
  study.group_bolt_N = step_value(design, "mount.bolt_tension_thrust");
  study.strip_frequency_Hz = design.mount.frequency_Hz;
  study.assumptions = {
      "Bolts without preload pull only, the deck pushes only; the deck as a whole is stiff, what gives is its core and the bedding compound.",
      std::string("The stowed motor rests on the plate's fore end") +
          (in.chocked ? "; a stiff chock at twice the overhang has its share of the weight." : ", its weight ahead of that as a moment."),
      "The deployed motor's foot stands amid the bolts and is half as long and wide as their pattern; under it plate and foot bend as three thicknesses would. Thrust from the other side gives the mirror image.",
      "Stress is read from a washer's edge outwards, and from a thickness away from the foot; holes are not cut out.",
  };
  return study;
}

}  // namespace thole
