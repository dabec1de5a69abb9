#include "calc/plate_study.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <string>
#include <vector>

#include "base/units.h"
#include "calc/load_cases_study.h"
#include "calc/mount/plate_rules.h"
#include "calc/mount/slam.h"
#include "calc/plate/outline.h"
#include "calc/shaft/motion.h"
#include "data/laminates.h"
#include "data/sources.h"
#include "data/sources_float.h"
#include "data/sources_mount.h"

namespace thole {
namespace {

// Project decisions, as are the allowables.
constexpr double kEncounter_factor = 5.0;  // times what waves do
constexpr double kFoot_m = 0.120;          // length of the stowed motor's rest on the plate
constexpr double kFootEdge_m = 0.010;      // its distance from the plate's fore edge, at least
constexpr double kBedding_MPa_per_mm = 5.0;  // a millimetre of compound of 5 MPa
constexpr double kBoltModulus_MPa = 193e3;
constexpr double kNutAndBedding_mm = 10.0;
constexpr double kFoot_ratio = 27.0;         // plate and foot as three thicknesses
constexpr double kPersonFoot_m = kPersonFoot_mm / 1000.0;
constexpr double kEdge_m = 0.005;  // a foot stays so far from the plate's edge
constexpr int kThrustStep_deg = 30;

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

// Outline, cut-outs and bolts across the middle line.
bool is_mirrored(const PlateShape& shape) {
  constexpr double kSame_m = 1e-6;
  const auto stands = [](const PlatePoint& a, const PlatePoint& b) { return std::hypot(a.x_m - b.x_m, a.y_m + b.y_m) < kSame_m; };
  const auto has_images = [&](const auto& parts) {
    return std::all_of(parts.begin(), parts.end(), [&](const auto& part) {
      return std::any_of(parts.begin(), parts.end(), [&](const auto& other) { return stands(part.at, other.at); });
    });
  };
  std::vector<PlateCorner> cut_corners;
  for (const std::vector<PlateCorner>& cut : shape.cut_outs) cut_corners.insert(cut_corners.end(), cut.begin(), cut.end());
  return has_images(shape.outline) && has_images(shape.bolts) && has_images(cut_corners);
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

// Level forces at the stowed motor's middle turn the plate as well: pitch and roll.
PlateLoadCase stowed_case(std::string label, const Stowed& stowed, double up_N, double pitch_Nm = 0.0, double roll_Nm = 0.0) {
  const double carried_N = stowed.carried_frac * up_N;
  return {std::move(label),
          {{.foot = stowed.foot, .force_N = carried_N, .pitch_Nm = carried_N * stowed.lead_m + pitch_Nm, .roll_Nm = roll_Nm}}};
}

double limit_MPa(const Alloy& alloy, LoadGrade grade) {
  switch (grade) {
    case LoadGrade::working:
      return working_stress_MPa(alloy);
    case LoadGrade::extreme:
      return extreme_stress_MPa(alloy);
    case LoadGrade::ultimate:
      return alloy.yield_MPa;
  }
  return extreme_stress_MPa(alloy);
}

// Reads cases off the solution. Without preload the plate answers in proportion, so that one case stands for
// all of its kind.
class Reader {
 public:
  // `leads_m`: by case of the solution, the motor's centre ahead of the foot.
  Reader(PlateStudy& study, const Alloy& alloy, std::vector<double> leads_m)
      : study_(study), alloy_(alloy), leads_m_(std::move(leads_m)) {}

  void read(std::string id, std::string label, LoadGrade grade, const Source& source, std::size_t index, double factor = 1.0) {
    const PlateCaseSolution& result = study_.solution.cases[index];
    PlateFinding found{.id = std::move(id),
                       .label = std::move(label),
                       .source = source,
                       .grade = grade,
                       .load_case = index,
                       .load_factor = factor,
                       .stress_MPa = factor * std::max(result.worst_stress_Pa, result.bar_stress_Pa) / 1e6,
                       .limit_MPa = limit_MPa(alloy_, grade),
                       .bar_MPa = factor * result.bar_stress_Pa / 1e6,
                       .sag_mm = -1000.0 * factor * (result.foot_sag_m + leads_m_[index] * result.foot_pitch_rad)};
    if (result.worst_node >= 0) found.stress_at = study_.solution.mesh.nodes[static_cast<std::size_t>(result.worst_node)];
    for (std::size_t i = 0; i < result.bolt_N.size(); ++i) {
      found.bolts_N += factor * result.bolt_N[i];
      if (factor * result.bolt_N[i] > found.bolt_N) found.bolt_N = factor * result.bolt_N[i], found.bolt = static_cast<int>(i);
    }
    for (const double pressure_Pa : result.deck_Pa) found.deck_MPa = std::max(found.deck_MPa, factor * pressure_Pa / 1e6);
    study_.findings.push_back(std::move(found));
  }

 private:
  PlateStudy& study_;
  const Alloy& alloy_;
  std::vector<double> leads_m_;
};

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

Check stress_check(const PlateStudy& study, LoadGrade grade, std::string id, std::string label) {
  Check check{.id = std::move(id), .label = std::move(label), .unit = "MPa", .source = kProjectDecision,
              .remedy = grade == LoadGrade::working ? "Take a thicker plate, a stronger alloy or a stiffener."
                                                    : "Take a thicker plate, a stronger alloy, a stiffener, or rest the stowed motor on a chock."};
  for (const PlateFinding& at : study.findings) {
    if (at.grade != grade) continue;
    check.actual = std::max(check.actual, at.stress_MPa);
    check.limit = at.limit_MPa;
  }
  return check;
}

Check bolt_check(const PlateStudy& study, LoadGrade grade, std::string id, std::string label) {
  Check check{.id = std::move(id), .label = std::move(label), .limit = study.bolt_limit_N(grade), .unit = "N", .source = kProjectDecision,
              .remedy = "Take larger bolts, a thicker plate that pries less, a stiffener, or set the bolts farther apart."};
  for (const PlateFinding& at : study.findings)
    if (at.grade == grade) check.actual = std::max(check.actual, at.bolt_N);
  return check;
}

void add_checks(PlateStudy& study, const MountInput& in) {
  study.checks = {stress_check(study, LoadGrade::extreme, "plate.stress_extreme", "Plate in rare loads, by elements"),
                  stress_check(study, LoadGrade::working, "plate.stress_thrust", "Plate in working loads, by elements"),
                  bolt_check(study, LoadGrade::extreme, "plate.bolt_extreme", "Worst bolt in rare loads, prying counted"),
                  bolt_check(study, LoadGrade::working, "plate.bolt_thrust", "Worst bolt in working loads, prying counted")};
  if (std::any_of(study.findings.begin(), study.findings.end(), [](const PlateFinding& at) { return at.grade == LoadGrade::ultimate; }))
    study.checks.push_back(bolt_check(study, LoadGrade::ultimate, "plate.bolt_snag", "Worst bolt in a snag, prying counted"));
  study.checks.push_back({.id = "plate.sag",
                          .label = "Sag of the stowed motor, by elements",
                          .actual = study.findings.front().sag_mm,
                          .limit = kSagAtRest_frac * std::max(in.overhang_mm, 1.0),
                          .unit = "mm",
                          .source = kProjectDecision,
                          .remedy = "Rest the stowed motor on a chock, or take a thicker plate."});
  study.checks.push_back({.id = "plate.frequency",
                          .label = "Clear of the engine's idle, by elements",
                          .actual = !(study.frequency_Hz > 0.0)
                                        ? std::numeric_limits<double>::quiet_NaN()
                                        : std::max(kBandLow_factor * kIdleLow_Hz / study.frequency_Hz,
                                             study.frequency_Hz / (kBandHigh_factor * kIdleHigh_Hz)),
                          .limit = 1.0,
                          .unit = "",
                          .comparison = Comparison::at_least,
                          .source = kProjectDecision,
                          .remedy = "Rest the stowed motor on a chock, or take a thicker plate."});
}

// Waves that she meets when she runs must not rock the stowed motor in step.
void add_encounter(const Design& design, PlateStudy& study) {
  const double period_s = design.job.water.wave_period_s.value;
  const double speed_mps = design.job.boat.cruise_speed_mps.value;
  if (!(period_s > 0.0) || !(study.frequency_Hz > 0.0)) return;
  const double met_Hz = encounter_rad_per_s(period_s, std::max(speed_mps, 0.0)) / (2.0 * std::numbers::pi);
  study.trace.steps.push_back({.id = "plate.encounter",
                               .label = "How often she meets a wave, head to sea at her running speed",
                               .symbol = "f_e",
                               .formula = "1 / T + 2 * pi * V / (g * T^2)",
                               .terms = {{"T", period_s, "s", "wave period"},
                                         {"pi", std::numbers::pi, "", "circle constant"},
                                         {"V", std::max(speed_mps, 0.0), "mps", "speed"},
                                         {"g", kGravity_mps2, "mps2", "gravity"}},
                               .value = met_Hz,
                               .unit = "Hz",
                               .source = kAiryWave});
  study.checks.push_back({.id = "plate.encounter",
                          .label = "Clear of the waves she meets, by elements",
                          .actual = study.frequency_Hz,
                          .limit = kEncounter_factor * met_Hz,
                          .unit = "Hz",
                          .comparison = Comparison::at_least,
                          .source = kProjectDecision,
                          .remedy = "Rest the stowed motor on a chock, or take a thicker plate."});
}

}  // namespace

double PlateStudy::bolt_limit_N(LoadGrade grade) const { return bolt_share(grade) * bolt_breaking_N; }

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
                   .deck_edge_m = basis.front_row_m + design.mount.deck_ahead_mm / 1000.0};
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
  const LoadsStudy loads = load_cases_study(design);
  std::vector<double> leads_m;
  const auto solve = [&](PlateLoadCase load_case, double lead_m = 0.0) {
    model.cases.push_back(std::move(load_case));
    leads_m.push_back(lead_m);
    return model.cases.size() - 1;
  };

  const std::size_t at_rest = solve(stowed_case("Motor stowed, at rest", stowed, -weight_N), stowed.lead_m);
  MountInput loose = in;
  loose.chocked = false;  // a chock holds nothing down
  Stowed unheld = stowed_motor(loose, basis.front_row_m);
  unheld.foot = on_the_plate(unheld.foot, cut);
  const std::size_t thrown_up = solve(stowed_case("Motor stowed, rebound", unheld, weight_N), unheld.lead_m);
  const double end_m = in.plate_length_mm / 1000.0 - 0.5 * kPersonFoot_m - kEdge_m;
  const PlateFoot person{.middle = {end_m, 0.0}, .length_m = kPersonFoot_m, .width_m = std::min(kPersonFoot_m, in.plate_width_mm / 1000.0)};
  const std::size_t stepped_on = solve({"A person steps on the fore end", {{.foot = on_the_plate(person, cut), .force_N = -kPerson_N}}});
  const double height_m = kMotorHeight_mm / 1000.0;
  // What comes from either side: once, if the plate is its own mirror image.
  const bool mirrored = is_mirrored(shape);
  std::vector<std::size_t> hung_on, bends;
  std::size_t braking = 0;
  for (const double side : {-1.0, 1.0}) {
    if (mirrored && side > 0.0) continue;
    const std::string whence = mirrored ? "" : side < 0.0 ? ", to starboard" : ", to port";
    hung_on.push_back(solve(stowed_case("A person hangs on the motor" + whence, stowed, 0.0, 0.0, side * kHandhold_N * height_m), stowed.lead_m));
    if (loads.input.trailered)
      bends.push_back(solve(stowed_case("On the trailer, a bend" + whence, stowed, -weight_N, 0.0, side * weight_N * kRoadAcross_g * height_m), stowed.lead_m));
  }
  if (loads.input.trailered)
    braking = solve(stowed_case("On the trailer, braking", stowed, -weight_N, -weight_N * kRoadAlong_g * height_m), stowed.lead_m);
  const Pattern pattern = pattern_of(shape);
  const double pattern_m = pattern.fore_m - pattern.aft_m;
  const PlateFoot stem = on_the_plate({.middle = {pattern.fore_m - 0.5 * pattern_m, 0.0}, .length_m = std::max(0.5 * pattern_m, 0.04), .width_m = pattern.half_m}, cut);
  model.patches = {{stem, kFoot_ratio}};
  const std::size_t first_thrust = model.cases.size();
  const double moment_Nm = add_thrust_moment(in, study.trace);
  for (int angle_deg = 0; angle_deg < (mirrored ? 181 : 360); angle_deg += kThrustStep_deg) {
    const double angle_rad = rad_from_deg(angle_deg);
    solve({"Full thrust " + std::to_string(angle_deg) + "\u00b0 from ahead",
           {{.foot = stem, .pitch_Nm = moment_Nm * std::cos(angle_rad), .roll_Nm = moment_Nm * std::sin(angle_rad)}}});
  }
  const std::size_t last_thrust = model.cases.size() - 1;
  const auto thrust_at = [&](int angle_deg) { return first_thrust + static_cast<std::size_t>(angle_deg / kThrustStep_deg); };
  model.masses = {{.foot = stowed.foot, .mass_kg = stowed.carried_frac * in.motor_mass_kg, .lead_m = stowed.lead_m}};
  model.rest_case = static_cast<int>(at_rest);
  study.solution = solve_plate(model);
  if (!study.solution.solved) return study;

  study.frequency_Hz = study.solution.frequencies_Hz.front();
  study.amplification_factor = std::max(amplification(study.frequency_Hz, kSlamPulse_s).factor, 1.0);
  const double bow_g = design.mount.bow_acceleration_factor;
  const double slam_factor = add_slam_factor(bow_g, study.amplification_factor, study.trace);
  Reader reader(study, *alloy, std::move(leads_m));
  using enum LoadGrade;
  reader.read("rest", model.cases[at_rest].label, extreme, kWinklerDeck, at_rest);
  reader.read("slam", "Motor stowed, in a slam", extreme, kIso12215Acceleration, at_rest, slam_factor);
  reader.read("rebound", "Motor stowed, thrown up after it", extreme, kProjectDecision, thrown_up,
              rebound_factor(bow_g, study.amplification_factor));
  reader.read("person.step", model.cases[stepped_on].label, extreme, kPersonOnPlate, stepped_on);
  for (const std::size_t at : hung_on) reader.read("person.pull", model.cases[at].label, extreme, kPersonPulls, at);
  if (loads.input.trailered) {
    reader.read("road.down", "On the trailer, a pothole", extreme, kRoadLoads, at_rest, 1.0 + kRoadDown_g);
    reader.read("road.along", model.cases[braking].label, extreme, kRoadLoads, braking);
    for (const std::size_t at : bends) reader.read("road.across", model.cases[at].label, extreme, kRoadLoads, at);
  }
  for (std::size_t i = first_thrust; i <= last_thrust; ++i) reader.read("thrust", model.cases[i].label, working, kProjectDecision, i);
  // What else pushes the lowered motor, by its moment on the foot.
  for (const LoadCase& load : loads.loads.cases) {
    if (!load.in_range || !(moment_Nm > 0.0)) continue;
    const auto pushed = [&](int angle_deg) { reader.read(load.id, load.label, load.grade, load.source, thrust_at(angle_deg), load.moment_Nm / moment_Nm); };
    if (load.id == "deployed" || load.id == "down.limit" || load.id == "snag") pushed(180);
    if (load.id == "snag.side") pushed(90);
    if (load.id == "snag.side" && !mirrored) pushed(270);
  }
  study.bolt_breaking_N = loads.bolt_breaking_N;
  add_checks(study, in);
  add_encounter(design, study);
  study.strip_stress_MPa = design.mount.plate_stress_MPa;
  study.strip_bolt_N = design.mount.slam_tension_N;
  study.group_bolt_N = design.mount.thrust_tension_N;
  study.strip_frequency_Hz = design.mount.frequency_Hz;
  study.assumptions = {
      "Bolts without preload pull only, the deck pushes only; the deck as a whole is stiff, what gives is its core and the bedding compound.",
      std::string("The stowed motor rests on the plate's fore end") +
          (in.chocked ? "; a stiff chock at twice the overhang has its share of the weight." : ", its weight ahead of that as a moment."),
      "The deployed motor's foot stands amid the bolts and is half as long and wide as their pattern; under it plate and foot bend as three thicknesses would.",
      mirrored ? "Plate and bolts are their own mirror image: what comes from the other side does the same there."
               : "Plate and bolts are not their own mirror image: what comes from the side is solved from either.",
      "Stress is read from a washer's edge outwards, and from a thickness away from the foot; holes are not cut out.",
  };
  if (!bars.empty())
    study.assumptions.push_back("Stiffeners bend together with a strip of plate no wider than their spacing or a quarter of their length; "
                                "they are fast all along, their welds or bolts are not looked at.");
  if (deck_factor != 1.0) study.assumptions.push_back("Deck and bolts are as stiff as the flex test found them.");
  return study;
}

}  // namespace thole
