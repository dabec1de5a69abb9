#include "calc/plate_study.h"

#include <algorithm>
#include <cmath>

#include "base/units.h"
#include "calc/mount/plate_rules.h"
#include "calc/mount/slam.h"
#include "calc/plate/outline.h"
#include "data/laminates.h"
#include "data/plate_lines.h"
#include "data/sources.h"
#include "data/sources_mount.h"

namespace thole {
namespace {

// Project decisions, as are the allowables.
constexpr double kCorner_m = 0.020;
constexpr double kFoot_m = 0.120;          // length of the stowed motor's rest on the plate
constexpr double kFootEdge_m = 0.010;      // its distance from the plate's fore edge, at least
constexpr double kBedding_MPa_per_mm = 5.0;  // a millimetre of compound of 5 MPa
constexpr double kBoltModulus_MPa = 193e3;
constexpr double kNutAndBedding_mm = 10.0;
constexpr double kFoot_ratio = 27.0;         // plate and foot as three thicknesses
constexpr double kRebound_frac = 0.25;
constexpr double kTrailer_g = 2.0;
constexpr double kPerson_N = 1500.0;
constexpr double kPersonFoot_m = 0.100;
constexpr int kThrustStep_deg = 30;
constexpr std::size_t kFirstThrustFinding = 5;
constexpr double kBarHeight_ratio = 4.0;  // of the plate's thickness, where nobody gave a height
constexpr double kBarFromEdge_m = 0.015;
constexpr double kBarFromEnd_m = 0.010;
constexpr double kEffective_frac = 0.25;  // of a bar's length goes with it as plate; shear lag, recalled

double through_thickness_MPa(DeckKind deck) {
  switch (deck) {
    case DeckKind::cored_balsa: return core(CoreKind::balsa, 150.0).modulus_MPa;
    case DeckKind::cored_foam: return core(CoreKind::cross_linked_pvc, 80.0).modulus_MPa;
    default: return 0.0;
  }
}

// Whether a core gives under the plate.
bool gives(const MountInput& in) {
  return through_thickness_MPa(in.deck) > 0.0 && in.core_thickness_mm > 0.0;
}

// Deck under the plate and under the nuts give alike: both are as stiff as the flex test says.
void by_flex_test(Step& step, double deck_factor, std::string_view formula) {
  if (deck_factor == 1.0) return;
  step.formula = formula;
  step.terms.push_back({"c_d", deck_factor, "", "stiffness of the deck over what is computed, from a flex test"});
  step.value *= deck_factor;
}

// Pressure that sinks the plate by a metre: bedding compound, on the core.
double add_deck_stiffness(const MountInput& in, double deck_factor, Trace& trace) {
  const double core_MPa = through_thickness_MPa(in.deck);
  Step step{.id = "plate.deck",
            .label = "Pressure on the deck for a sink of one millimetre",
            .symbol = "k_f",
            .formula = "k_b",
            .terms = {{"k_b", kBedding_MPa_per_mm, "MPa", "bedding compound, a millimetre of it"}},
            .value = kBedding_MPa_per_mm,
            .unit = "MPa",
            .source = kWinklerDeck};
  if (gives(in)) {
    step.formula = "1 / (1 / k_b + t_c / E_c)";
    step.terms.push_back({"t_c", in.core_thickness_mm, "mm", "core"});
    step.terms.push_back({"E_c", core_MPa, "MPa", "modulus of the core, through its thickness"});
    step.value = 1.0 / (1.0 / kBedding_MPa_per_mm + in.core_thickness_mm / core_MPa);
  }
  by_flex_test(step, deck_factor, gives(in) ? "c_d / (1 / k_b + t_c / E_c)" : "c_d * k_b");
  trace.steps.push_back(step);
  return step.value * 1e9;
}

// The shank over its grip, on the core under the backing.
double add_bolt_stiffness(const MountInput& in, const BoltSize& size, double thickness_mm, double deck_factor, Trace& trace) {
  const double grip_mm = thickness_mm + kNutAndBedding_mm + in.deck_thickness_mm + in.core_thickness_mm +
                         in.backing_thickness_mm;
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
  if (gives(in)) {
    const double side_mm = std::max(in.backing_side_mm, size.washer_mm);
    const double core_MPa = through_thickness_MPa(in.deck);
    step.formula = "1 / (L / (E * A_s) + t_c / (E_c * b^2))";
    step.terms.push_back({"t_c", in.core_thickness_mm, "mm", "core"});
    step.terms.push_back({"E_c", core_MPa, "MPa", "modulus of the core, through its thickness"});
    step.terms.push_back({"b", side_mm, "mm", "side of the backing"});
    step.value = 1.0 / (1.0 / shank + in.core_thickness_mm / (core_MPa * side_mm * side_mm));
  }
  by_flex_test(step, deck_factor, gives(in) ? "c_d / (L / (E * A_s) + t_c / (E_c * b^2))" : "c_d * E * A_s / L");
  trace.steps.push_back(step);
  return step.value * 1e3;
}

double add_thrust_moment(const MountInput& in, Trace& trace) {
  const double moment_Nm = in.thrust_N * in.thrust_lever_m;
  trace.steps.push_back({.id = "plate.thrust_moment",
                         .label = "Moment of full thrust on the foot",
                         .symbol = "M_T",
                         .formula = "T * h",
                         .terms = {{"T", in.thrust_N, "N", "full thrust"},
                                   {"h", in.thrust_lever_m, "m", "propeller axis below the plate"}},
                         .value = moment_Nm,
                         .unit = "Nm",
                         .source = kDefinition});
  return moment_Nm;
}

// How many times its weight the stowed motor presses in a slam.
double add_slam_factor(double bow_g, double amplification_factor, Trace& trace) {
  const double factor = 1.0 + bow_g * amplification_factor;
  trace.steps.push_back({.id = "plate.slam",
                         .label = "Slam over weight at rest",
                         .symbol = "c_s",
                         .formula = "1 + n_bow * D",
                         .terms = {{"n_bow", bow_g, "", "acceleration at the bow, in g"},
                                   {"D", amplification_factor, "", "amplification at the plate's frequency, at least 1"}},
                         .value = factor,
                         .unit = "",
                         .source = kHalfSineShock,
                         .assumptions = {"Without preload the plate answers in proportion."}});
  return factor;
}

// A foot no wider than the plate is under it.
PlateFoot on_the_plate(PlateFoot foot, const PlateCut& cut) {
  constexpr double kInside_ratio = 0.98;
  for (int round = 0; round < 40; ++round, foot.width_m *= 0.9) {
    bool on = true;
    for (const double along : {-0.5, 0.0, 0.5})
      for (const double across : {-0.5, 0.5})
        on = on && encloses(cut.outer, {foot.middle.x_m + kInside_ratio * along * foot.length_m,
                                        foot.middle.y_m + kInside_ratio * across * foot.width_m});
    if (on) return foot;
  }
  return foot;
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
                     .stress_MPa = factor * std::max(result.worst_stress_Pa, result.bar_stress_Pa) / 1e6,
                     .limit_MPa = limit_MPa,
                     .bar_MPa = factor * result.bar_stress_Pa / 1e6,
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

PlateCorner corner_at(double x_mm, double y_mm, double radius_m) {
  return {.at = {x_mm / 1000.0, y_mm / 1000.0}, .radius_m = radius_m};
}

std::vector<PlateCorner> outline_of(const Mount& job, const MountInput& in) {
  const double length_m = in.plate_length_mm / 1000.0;
  const double width_m = in.plate_width_mm / 1000.0;
  const double usual_m = std::min(kCorner_m, 0.1 * std::min(2.0 * length_m, width_m));
  const double radius_m = job.corner_mm.known() ? job.corner_mm.value / 1000.0 : usual_m;
  if (job.outline.known()) {
    BowPlate bow{.radius_m = radius_m};
    for (const OutlineStation& at : read_outline(job.outline.value).items)
      bow.offsets.push_back({at.forward_mm / 1000.0, at.half_width_mm / 1000.0});
    if (std::vector<PlateCorner> outline = bow_outline(bow).outline; !outline.empty()) return outline;
  }
  const double fore_m = job.front_width_mm.known() ? job.front_width_mm.value / 1000.0 : width_m;
  return trapezoid_outline(length_m, width_m, fore_m, radius_m);
}

std::vector<PlateCorner> cut_out_corners(const CutOut& cut) {
  const double radius_m = cut.round ? 0.5 * cut.length_mm / 1000.0 : 0.1 * std::min(cut.length_mm, cut.width_mm) / 1000.0;
  const double x_mm = cut.middle.forward_mm;
  const double y_mm = cut.middle.port_mm;
  const double l_mm = 0.5 * cut.length_mm;
  const double w_mm = 0.5 * cut.width_mm;
  return {corner_at(x_mm - l_mm, y_mm - w_mm, radius_m), corner_at(x_mm + l_mm, y_mm - w_mm, radius_m),
          corner_at(x_mm + l_mm, y_mm + w_mm, radius_m), corner_at(x_mm - l_mm, y_mm + w_mm, radius_m)};
}

std::vector<PlatePoint> bolt_places(const Mount& job, const MountInput& in) {
  std::vector<PlatePoint> places;
  if (job.bolt_places.known()) {
    for (const BoltPlace& at : read_bolt_places(job.bolt_places.value).items)
      places.push_back({at.forward_mm / 1000.0, at.port_mm / 1000.0});
    if (!places.empty()) return places;
  }
  const double aft_m = aft_margin_mm(in.plate_length_mm) / 1000.0;
  for (int row = 0; row < in.bolt_rows; ++row)
    for (const double side : {1.0, -1.0})
      places.push_back({aft_m + row * in.bolt_pitch_mm / 1000.0, side * 0.5 * in.bolt_gauge_mm / 1000.0});
  return places;
}

// Evenly across the narrower end, one in the middle.
std::vector<PlateBar> bars_of(const Mount& job, const PlateShape& shape) {
  std::vector<PlateBar> bars;
  const int count = job.stiffener_count.known() ? job.stiffener_count.value : 0;
  if (count <= 0) return bars;
  const PlateContour outer = rounded(shape.outline);
  if (outer.empty()) return bars;
  const PlateBox box = bounds(outer);
  const double length_m = box.high.x_m - box.low.x_m - 2.0 * kBarFromEnd_m;
  double half_m = box.high.y_m;
  while (half_m > 0.01 && (!encloses(outer, {box.high.x_m - kBarFromEnd_m, half_m - kBarFromEdge_m}) ||
                           !encloses(outer, {box.low.x_m + kBarFromEnd_m, half_m - kBarFromEdge_m})))
    half_m -= 0.002;
  const double reach_m = half_m - kBarFromEdge_m;
  const double height_m = job.stiffener_height_mm.known() ? job.stiffener_height_mm.value / 1000.0 : kBarHeight_ratio * shape.thickness_m;
  const double thickness_m = job.stiffener_thickness_mm.known() ? job.stiffener_thickness_mm.value / 1000.0 : shape.thickness_m;
  const double spacing_m = count > 1 ? 2.0 * reach_m / (count - 1) : 2.0 * half_m;
  for (int k = 0; k < count; ++k)
    bars.push_back({.y_m = count > 1 ? -reach_m + k * spacing_m : 0.0,
                    .from_x_m = box.low.x_m + kBarFromEnd_m,
                    .to_x_m = box.high.x_m - kBarFromEnd_m,
                    .height_m = height_m,
                    .thickness_m = thickness_m,
                    .effective_width_m = std::min(spacing_m, kEffective_frac * length_m)});
  return bars;
}

struct Pattern {
  double aft_m = 1e9;
  double fore_m = -1e9;
  double half_m = 0.0;
};
Pattern pattern_of(const PlateShape& shape) {
  Pattern pattern;
  for (const PlateHole& bolt : shape.bolts) {
    pattern.aft_m = std::min(pattern.aft_m, bolt.at.x_m);
    pattern.fore_m = std::max(pattern.fore_m, bolt.at.x_m);
    pattern.half_m = std::max(pattern.half_m, std::abs(bolt.at.y_m));
  }
  return pattern;
}

// The worst use of one kind of load, held against its limit.
Check worst_check(const PlateStudy& study, bool thrust, double breaking_N) {
  Check check{.id = thrust ? "plate.bolt_thrust" : "plate.bolt_extreme",
              .label = thrust ? "Worst bolt at full thrust, prying counted" : "Worst bolt otherwise, prying counted",
              .limit = (thrust ? kThrustBolt_frac : kSlamBolt_frac) * breaking_N,
              .unit = "N",
              .source = kProjectDecision,
              .remedy = "Take larger bolts, a thicker plate that pries less, a stiffener, or set the bolts farther apart."};
  for (std::size_t i = 0; i < study.findings.size(); ++i)
    if ((i >= kFirstThrustFinding) == thrust) check.actual = std::max(check.actual, study.findings[i].bolt_N);
  return check;
}

Check stress_check(const PlateStudy& study, bool thrust) {
  Check check{.id = thrust ? "plate.stress_thrust" : "plate.stress_extreme",
              .label = thrust ? "Plate at full thrust, by elements" : "Plate otherwise, by elements",
              .unit = "MPa",
              .source = kProjectDecision,
              .remedy = "Take a thicker plate, a stronger alloy, a stiffener, or rest the stowed motor on a chock."};
  for (std::size_t i = 0; i < study.findings.size(); ++i) {
    if ((i >= kFirstThrustFinding) != thrust) continue;
    check.actual = std::max(check.actual, study.findings[i].stress_MPa);
    check.limit = study.findings[i].limit_MPa;
  }
  return check;
}

}  // namespace

std::optional<ChosenPlate> chosen_plate(const Design& design) {
  ChosenPlate plate{.mount = mount_input(design)};
  MountInput& in = plate.mount;
  plate.alloy = in.plates.empty() ? nullptr : find_alloy(in.plates.front().alloy);
  plate.bolt = in.bolts.empty() ? nullptr : find_bolt_size(in.bolts.front().size);
  if (plate.alloy == nullptr || plate.bolt == nullptr) return std::nullopt;
  const Mount& job = design.job.mount;
  plate.shape = {.outline = outline_of(job, in), .thickness_m = in.plates.front().thickness_mm / 1000.0};
  if (job.cutouts.known())
    for (const CutOut& cut : read_cut_outs(job.cutouts.value).items) plate.shape.cut_outs.push_back(cut_out_corners(cut));
  for (const PlatePoint& at : bolt_places(job, in))
    plate.shape.bolts.push_back({.at = at, .diameter_m = plate.bolt->hole_mm / 1000.0});
  if (job.outline.known()) {
    const PlateBox box = bounds(rounded(plate.shape.outline));
    in.plate_length_mm = 1000.0 * box.high.x_m;
    in.plate_width_mm = 1000.0 * (box.high.y_m - box.low.y_m);
  }
  plate.bars = bars_of(job, plate.shape);
  if (job.deck_factor.known()) plate.deck_factor = job.deck_factor.value;
  return plate;
}

Issues shape_issues(const ChosenPlate& plate, const Design& design) {
  const Mount& job = design.job.mount;
  Issues issues = plate_issues(plate.shape);
  for (Issue& issue : issues) {
    if (issue.field.rfind("plate.outline", 0) == 0) issue.field = job.outline.known() ? "mount.outline" : "mount.corner_mm";
    if (issue.field.rfind("plate.cut_outs", 0) == 0) issue.field = "mount.cutouts";
    if (issue.field.rfind("plate.bolts", 0) == 0) issue.field = job.bolt_places.known() ? "mount.bolt_places" : "mount.bolt_rows";
    if (issue.field == "plate.thickness_m") issue.field = "mount.plate";
  }
  return issues;
}

PlateBasis plate_basis(const ChosenPlate& chosen, const Design& design, Trace& trace) {
  const MountInput& in = chosen.mount;
  PlateBasis basis;
  PlateModel& model = basis.model;
  model.shape = chosen.shape;
  model.bars = chosen.bars;
  basis.front_row_m = pattern_of(model.shape).fore_m;
  const double washer_m = 0.5 * chosen.bolt->washer_mm / 1000.0;
  const Alloy& alloy = *chosen.alloy;
  model.material = {.modulus_Pa = alloy.modulus_GPa * 1e9, .poisson_ratio = alloy.poisson_ratio, .density_kg_per_m3 = alloy.density_kg_per_m3};
  model.support = {.bolt_N_per_m = add_bolt_stiffness(in, *chosen.bolt, 1000.0 * model.shape.thickness_m, chosen.deck_factor, trace),
                   .deck_N_per_m3 = add_deck_stiffness(in, chosen.deck_factor, trace),
                   .deck_edge_m = basis.front_row_m + step_value(design, "mount.deck_ahead") / 1000.0};
  model.wish.bolt_ring_m = washer_m;
  model.stress_clear_m = 1.05 * washer_m;
  const Stowed stowed = stowed_motor(in, basis.front_row_m);
  basis.stowed_foot = on_the_plate(stowed.foot, cut_of(model.shape));
  basis.lead_m = stowed.lead_m;
  basis.carried_frac = stowed.carried_frac;
  return basis;
}

PlateStudy plate_study(const Design& design) {
  PlateStudy study;
  const std::optional<ChosenPlate> chosen = chosen_plate(design);
  if (!chosen) {
    study.solution.problem = kNoPlate;
    return study;
  }
  const auto& [in, shape, bars, deck_factor, alloy, size] = *chosen;
  study.issues = shape_issues(*chosen, design);
  const PlateBasis basis = plate_basis(*chosen, design, study.trace);
  PlateModel& model = study.model;
  model = basis.model;
  const Stowed stowed{basis.stowed_foot, basis.lead_m, basis.carried_frac};
  study.foot_lead_m = stowed.lead_m;
  const PlateCut cut = cut_of(shape);
  const double weight_N = in.motor_mass_kg * kGravity_mps2;

  model.cases.push_back(stowed_case("Motor stowed, at rest", stowed, -weight_N));
  model.cases.push_back(stowed_case("Motor stowed, rebound", stowed, weight_N));
  const double end_m = in.plate_length_mm / 1000.0 - 0.5 * kPersonFoot_m - 0.005;
  const PlateFoot person{.middle = {end_m, 0.0}, .length_m = kPersonFoot_m, .width_m = std::min(kPersonFoot_m, in.plate_width_mm / 1000.0)};
  model.cases.push_back({"A person steps on the fore end", {{.foot = on_the_plate(person, cut), .force_N = -kPerson_N}}});
  const Pattern pattern = pattern_of(shape);
  const double pattern_m = pattern.fore_m - pattern.aft_m;
  const PlateFoot stem = on_the_plate({.middle = {pattern.fore_m - 0.5 * pattern_m, 0.0}, .length_m = std::max(0.5 * pattern_m, 0.04), .width_m = pattern.half_m}, cut);
  model.patches = {{stem, kFoot_ratio}};
  const std::size_t first_thrust = model.cases.size();
  const double moment_Nm = add_thrust_moment(in, study.trace);
  for (int angle_deg = 0; angle_deg <= 180; angle_deg += kThrustStep_deg) {
    const double angle_rad = rad_from_deg(angle_deg);
    model.cases.push_back({"Full thrust " + std::to_string(angle_deg) + "\u00b0 from ahead",
                           {{.foot = stem, .pitch_Nm = moment_Nm * std::cos(angle_rad), .roll_Nm = moment_Nm * std::sin(angle_rad)}}});
  }
  model.masses = {{.foot = stowed.foot, .mass_kg = stowed.carried_frac * in.motor_mass_kg, .lead_m = stowed.lead_m}};
  model.rest_case = 0;
  study.solution = solve_plate(model);
  if (!study.solution.solved) return study;

  study.frequency_Hz = study.solution.frequencies_Hz.front();
  study.amplification_factor = std::max(amplification(study.frequency_Hz, kSlamPulse_s).factor, 1.0);
  const double bow_g = design.mount.bow_acceleration_factor;
  const double extreme_MPa = extreme_stress_MPa(*alloy);
  const double slam_factor = add_slam_factor(bow_g, study.amplification_factor, study.trace);
  study.findings.push_back(finding(study, 0, 1.0, extreme_MPa, kWinklerDeck, stowed.lead_m));
  study.findings.push_back(finding(study, 0, slam_factor, extreme_MPa, kIso12215Acceleration, stowed.lead_m));
  study.findings.back().label = "Motor stowed, in a slam";
  study.findings.push_back(finding(study, 1, kRebound_frac * slam_factor, extreme_MPa, kProjectDecision, stowed.lead_m));
  study.findings.push_back(finding(study, 0, 1.0 + kTrailer_g, extreme_MPa, kProjectDecision, stowed.lead_m));
  study.findings.back().label = "On a trailer";
  study.findings.push_back(finding(study, 2, 1.0, extreme_MPa, kPersonOnPlate, 0.0));
  for (std::size_t i = first_thrust; i < model.cases.size(); ++i)
    study.findings.push_back(finding(study, i, 1.0, working_stress_MPa(*alloy), kProjectDecision, 0.0));
  const double breaking_N = step_value(design, "mount.bolt_breaking");
  study.checks = {stress_check(study, false), stress_check(study, true), worst_check(study, false, breaking_N),
                  worst_check(study, true, breaking_N)};
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
  if (!bars.empty())
    study.assumptions.push_back("Stiffeners bend together with a strip of plate no wider than their spacing or a quarter of their length; "
                                "they are fast all along, their welds or bolts are not looked at.");
  if (deck_factor != 1.0) study.assumptions.push_back("Deck and bolts are as stiff as the flex test found them.");
  return study;
}

}  // namespace thole
