#include "calc/plate_study.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <optional>
#include <string>
#include <vector>

#include "base/units.h"
#include "calc/load_cases_study.h"
#include "base/number.h"
#include "calc/mount/deck.h"
#include "calc/mount/fatigue.h"
#include "calc/mount/plate_rules.h"
#include "calc/mount/slam.h"
#include "calc/plate/outline.h"
#include "calc/plate_supports.h"
#include "calc/shaft/motion.h"
#include "data/sources.h"
#include "data/sources_float.h"
#include "data/sources_mount.h"

namespace thole {
namespace {

// Project decisions, as are the allowables.
constexpr double kEncounter_factor = 5.0;  // times what waves do
constexpr double kFoot_m = 0.120;          // length of the stowed motor's rest on the plate
constexpr double kFootEdge_m = 0.010;      // its distance from the plate's fore edge, at least
constexpr double kFoot_ratio = 27.0;         // plate and foot as three thicknesses
constexpr double kPersonFoot_m = kPersonFoot_mm / 1000.0;
constexpr double kEdge_m = 0.005;  // a foot stays so far from the plate's edge
constexpr int kThrustStep_deg = 30;
constexpr double kPlateGives_factor = 1.15;  // of the worst bolt's shear: a plate of 6 mm against finite elements 1.14, of 16 mm 1.05

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
double add_slam_factor(double motor_g, double amplification_factor, Trace& trace) {
  const double factor = 1.0 + motor_g * amplification_factor;
  trace.steps.push_back({.id = "plate.slam",
                         .label = "Slam over weight at rest",
                         .symbol = "c_s",
                         .formula = "1 + n_x * D",
                         .terms = {{"n_x", motor_g, "", "acceleration where the stowed motor lies, in g"},
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

// A load spread over much of the plate, drawn together until none of it lies over a cut-out or beyond the edge; no
// width: there is no such place.
PlateFoot clear_of_cuts(PlateFoot foot, const PlateCut& cut) {
  constexpr int kPlaces = 7;
  for (int round = 0; round < 40; ++round, foot.width_m *= 0.85, foot.length_m *= 0.92) {
    bool on = true;
    for (int i = 0; i < kPlaces && on; ++i)
      for (int k = 0; k < kPlaces && on; ++k)
        on = on_plate(cut, {foot.middle.x_m + foot.length_m * (i / (kPlaces - 1.0) - 0.5), foot.middle.y_m + foot.width_m * (k / (kPlaces - 1.0) - 0.5)});
    if (on) return foot;
  }
  return {.middle = foot.middle};
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

// Of one bolt, as designed: EN 1993-1-8 has shear and tension add up.
struct BoltResistance {
  double shear_N = 0.0;
  double tension_N = 0.0;
  double use(double pushed_N, double pulled_N) const {
    if (!(shear_N > 0.0) || !(tension_N > 0.0)) return 0.0;
    return pushed_N / shear_N + std::max(pulled_N, 0.0) / (kTensionInShear_factor * tension_N);
  }
};

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
  Reader(PlateStudy& study, const Alloy& alloy, BoltResistance bolt, std::vector<double> leads_m)
      : study_(study), alloy_(alloy), bolt_(bolt), leads_m_(std::move(leads_m)) {}

  // `shears_N`: in each bolt, the factor counted; none: nothing pushes level.
  void read(std::string id, std::string label, LoadGrade grade, const Source& source, std::size_t index, double factor = 1.0,
            const std::vector<double>& shears_N = {}) {
    const PlateCaseSolution& result = study_.solution.cases[index];
    PlateFinding found{.id = std::move(id),
                       .label = std::move(label),
                       .source = source,
                       .grade = grade,
                       .load_case = index,
                       .load_factor = factor,
                       .stress_MPa = factor * std::max(result.worst_stress_Pa, result.bar_stress_Pa) / 1e6,
                       .limit_MPa = limit_MPa(alloy_, grade),
                       .bolt_side_MPa = factor * result.bolt_side_stress_Pa / 1e6,
                       .shears_N = shears_N,
                       .bar_MPa = factor * result.bar_stress_Pa / 1e6,
                       .sag_mm = -1000.0 * factor * (result.foot_sag_m + leads_m_[index] * result.foot_pitch_rad)};
    if (result.worst_node >= 0) found.stress_at = study_.solution.mesh.nodes[static_cast<std::size_t>(result.worst_node)];
    const std::vector<PlateLoad>& loads = study_.model.cases[index].loads;
    found.panel_mm = -1000.0 * factor * study_.panel.rise_m(loads, loads.front().foot.middle.x_m + leads_m_[index]);
    found.sag_mm += found.panel_mm;
    const double load_factor = grade == LoadGrade::ultimate ? 1.0 : kBoltLoad_factor;
    for (std::size_t i = 0; i < result.bolt_N.size(); ++i) {
      const double tension_N = factor * result.bolt_N[i];
      const double shear_N = i < shears_N.size() ? shears_N[i] : 0.0;
      found.bolts_N += tension_N;
      if (tension_N > found.bolt_N) found.bolt_N = tension_N, found.bolt = static_cast<int>(i);
      const double use = load_factor * bolt_.use(shear_N, tension_N);
      if (use > found.together_factor) found.together_factor = use, found.shear_N = shear_N, found.pull_N = tension_N;
    }
    for (const double pressure_Pa : result.deck_Pa) found.deck_MPa = std::max(found.deck_MPa, factor * pressure_Pa / 1e6);
    study_.findings.push_back(std::move(found));
  }

 private:
  PlateStudy& study_;
  const Alloy& alloy_;
  BoltResistance bolt_{};
  std::vector<double> leads_m_;
};

// In its plane the plate is stiff beside bolts in their holes: the elastic group gives each bolt's shear, the same from either
// side, and a thin plate's own give some more.
std::vector<double> shears_N(const std::vector<BoltPoint>& bolts, const LoadCase& load) {
  const GroupLoad level{.force_x_N = load.at_bolts.force_x_N, .force_y_N = load.at_bolts.force_y_N, .moment_z_Nm = load.at_bolts.moment_z_Nm};
  std::vector<double> shears;
  for (const BoltForce& force : elastic_forces(bolts, level)) shears.push_back(kPlateGives_factor * force.shear_N);
  return shears;
}

BoltPattern pattern_of(const PlateShape& shape) {
  std::vector<BoltPoint> places;
  for (const PlateHole& bolt : shape.bolts) places.push_back({1000.0 * bolt.at.x_m, 1000.0 * bolt.at.y_m});
  return bolt_pattern(places);
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

// Shear with tension, what the deck lets each bolt pull, and what presses on the deck.
void add_bolt_checks(PlateStudy& study, double pull_limit_N, const BoltResistance& bolt) {
  const PlateFinding* together = nullptr;
  double pull_N = 0.0;
  for (const PlateFinding& at : study.findings) {
    if (together == nullptr || at.together_factor > together->together_factor) together = &at;
    if (at.grade != LoadGrade::ultimate) pull_N = std::max(pull_N, at.bolt_N);
  }
  const double factor = together->grade == LoadGrade::ultimate ? 1.0 : kBoltLoad_factor;
  study.trace.steps.push_back({.id = "plate.bolt_together",
                               .label = "Shear and tension in one bolt, by elements",
                               .symbol = "u",
                               .formula = "g * V / F_v + g * N / (1.4 * F_t)",
                               .terms = {{"g", factor, "", "load factor; 1 where the shaft folds"},
                                         {"V", together->shear_N, "N", "its shear, by the elastic group, and 15 % for what the plate gives in its plane"},
                                         {"N", together->pull_N, "N", "its tension, by elements, prying in it"},
                                         {"F_v", bolt.shear_N, "N", "resistance in shear, thread in the plane"},
                                         {"F_t", bolt.tension_N, "N", "resistance in tension"}},
                               .value = together->together_factor,
                               .unit = "",
                               .source = kEn1993Bolts,
                               .assumptions = {"Worst of all: " + together->label + "."}});
  study.checks.push_back({.id = "plate.bolt_together",
                          .label = "Shear and tension in one bolt, by elements",
                          .actual = together->together_factor,
                          .limit = 1.0,
                          .unit = "",
                          .source = kEn1993Bolts,
                          .remedy = "Take larger bolts, or set them farther apart."});
  study.checks.push_back({.id = "plate.bolt_pull",
                          .label = "Worst bolt's pull on the deck, by elements",
                          .actual = pull_N,
                          .limit = pull_limit_N,
                          .unit = "N",
                          .source = kProjectDecision,
                          .remedy = "Fit larger, thicker backing plates, or bond a doubler under the deck."});
}

// Where nothing backs the deck but its own core.
void add_deck_check(PlateStudy& study, const MountInput& in) {
  double pressed_MPa = 0.0;
  for (const PlateFinding& at : study.findings)
    if (at.grade != LoadGrade::ultimate) pressed_MPa = std::max(pressed_MPa, at.deck_MPa);
  const DeckStrength deck = deck_strength(in.deck);
  study.checks.push_back({.id = "plate.deck_pressure",
                          .label = "Pressure of the plate on the deck, by elements",
                          .actual = pressed_MPa,
                          .limit = deck.crushing_factor * deck.crushing_MPa,
                          .unit = "MPa",
                          .source = deck.crushing_source,
                          .remedy = "Take a thicker or a wider plate, or solid laminate in place of the core under it."});
}

// What swings over and over in one place: the strip's ranges with the elements' stress.
struct Swing {
  double thrust_MPa = 0.0;
  double slam_MPa = 0.0;  // beyond the weight at rest
};
Swing swing_of(const PlateStudy& study, double PlateFinding::*stress_MPa) {
  Swing swing;
  for (const PlateFinding& at : study.findings) {
    if (at.id == "thrust") swing.thrust_MPa = std::max(swing.thrust_MPa, at.*stress_MPa);
    if (at.id == "slam") swing.slam_MPa = at.*stress_MPa * (1.0 - 1.0 / std::max(at.load_factor, 1.0));
  }
  return swing;
}

// The steady range that harms as much as all slams, over the stress of the hundredth worst.
double slams_factor(const FatigueDetail& detail) { return same_harm_factor(detail.slope_exponent) / highest_one_in_factor(100.0); }

// By the category of the detail, which has the hole in it.
void add_fatigue_checks(PlateStudy& study, const FatigueDetail& detail) {
  const Swing swing = swing_of(study, &PlateFinding::stress_MPa);
  const auto add = [&](std::string id, std::string label, double stress_MPa, double factor, double cycles_count, const char* meaning) {
    study.trace.steps.push_back({.id = id,
                                 .label = label + ": steady range that harms as much",
                                 .symbol = "s",
                                 .formula = "sigma * g",
                                 .terms = {{"sigma", stress_MPa, "MPa", meaning}, {"g", factor, "", "as the strip of beam has it"}},
                                 .value = stress_MPa * factor,
                                 .unit = "MPa",
                                 .source = kFatiguePlate,
                                 .assumptions = {"Read beside the washers: the category of the detail has the hole in it."}});
    study.checks.push_back({.id = std::move(id),
                            .label = std::move(label),
                            .actual = stress_MPa * factor,
                            .limit = range_MPa(detail, cycles_count),
                            .unit = "MPa",
                            .source = kFatiguePlate,
                            .remedy = "Take a thicker plate, a stiffener, or rest the stowed motor on a chock."});
  };
  add("plate.fatigue_thrust", "Fatigue by thrust, by elements", swing.thrust_MPa, swing_factor(detail.slope_exponent, 2.0), swings_in_life(),
      "at full thrust");
  add("plate.fatigue_slam", "Fatigue by slams, by elements", swing.slam_MPa, slams_factor(detail), slams_in_life(),
      "in a slam, beyond the weight at rest");
}

// And by what the hole's edge feels, as plain metal: without the washer's clamp the harder of both, so it counts as a
// word of caution, not in the verdict.
void add_hole_edge(PlateStudy& study, const FatigueDetail& detail, double hole_mm) {
  const Swing swing = swing_of(study, &PlateFinding::bolt_side_MPa);
  if (!(swing.thrust_MPa > 0.0)) return;
  const double thickness_mm = 1000.0 * study.model.shape.thickness_m;
  const double raiser = hole_in_bending_factor(hole_mm, thickness_mm);
  const double slam_factor = slams_factor(detail);
  const double thrust_factor = swing_factor(detail.slope_exponent, 2.0);
  const double years = life_years(detail, raiser * thrust_factor * swing.thrust_MPa, raiser * slam_factor * swing.slam_MPa);
  study.trace.steps.push_back({.id = "plate.raiser",
                               .label = "Stress at the edge of a bolt's hole over that beside it",
                               .symbol = "K_t",
                               .formula = "1.79 + 0.25 / (0.39 + d_0 / t) + 0.81 / (1 + (d_0 / t)^2) - 0.26 / (1 + (d_0 / t)^3)",
                               .terms = {{"d_0", hole_mm, "mm", "hole"}, {"t", thickness_mm, "mm", "plate"}},
                               .value = raiser,
                               .unit = "",
                               .source = kHoleInBending,
                               .assumptions = {"Bent one way, no washer clamped on it; a countersink is left out."}});
  study.trace.steps.push_back({.id = "plate.hole_edge",
                               .label = "Years until a hole's edge may crack, at the worst",
                               .symbol = "Y",
                               .formula = "1 / ((K_t * g_T * sigma_T / C)^m * n_T + (K_t * g_s * sigma_s / C)^m * n_s)",
                               .terms = {{"K_t", raiser, "", "at the hole's edge"},
                                         {"g_T", thrust_factor, "", "all swings of the thrust as one steady range"},
                                         {"sigma_T", swing.thrust_MPa, "MPa", "beside a washer, at full thrust"},
                                         {"g_s", slam_factor, "", "all slams as one steady range"},
                                         {"sigma_s", swing.slam_MPa, "MPa", "beside a washer, in a slam, beyond the weight at rest"},
                                         {"C", range_MPa(detail, 1.0), "MPa", "range of plain metal at one cycle"},
                                         {"m", detail.slope_exponent, "", "its slope"},
                                         {"n_T", swings_in_life() / kLife_year, "", "swings of the thrust in a year"},
                                         {"n_s", slams_in_life() / kLife_year, "", "slams in a year"}},
                               .value = years,
                               .unit = "years",
                               .source = kFatiguePlate,
                               .assumptions = {"The worst of both in one place; harm adds up (Miner)."}});
  if (years < 0.95 * kLife_year)
    study.cautions.push_back({.id = "plate.hole_edge",
                              .text = "By itself a bolt hole's edge may crack after some " +
                                      (years < 1.5 ? fixed(std::max(std::round(12.0 * years), 1.0), 0) + " months" : fixed(years, 0) + " years") +
                                      " of such use, not ten years: look for cracks each season, or take a thicker plate.",
                              .source = kHoleInBending});
}

void add_checks(PlateStudy& study, const MountInput& in, const Alloy& alloy, const BoltSize& size, double pull_limit_N, const BoltResistance& bolt) {
  study.checks = {stress_check(study, LoadGrade::extreme, "plate.stress_extreme", "Plate in rare loads, by elements"),
                  stress_check(study, LoadGrade::working, "plate.stress_thrust", "Plate in working loads, by elements"),
                  bolt_check(study, LoadGrade::extreme, "plate.bolt_extreme", "Worst bolt in rare loads, prying counted"),
                  bolt_check(study, LoadGrade::working, "plate.bolt_thrust", "Worst bolt in working loads, prying counted")};
  if (std::any_of(study.findings.begin(), study.findings.end(), [](const PlateFinding& at) { return at.grade == LoadGrade::ultimate; }))
    study.checks.push_back(bolt_check(study, LoadGrade::ultimate, "plate.bolt_snag", "Worst bolt in a snag, prying counted"));
  add_bolt_checks(study, pull_limit_N, bolt);
  add_deck_check(study, in);
  if (in.motor_mass_kg > 0.0) {
    add_fatigue_checks(study, is_stainless(alloy) ? steel_bolt_holes() : aluminium_bolt_holes());
    add_hole_edge(study, is_stainless(alloy) ? steel_plain() : aluminium_plain(), size.hole_mm);
  }
  study.checks.push_back({.id = "plate.sag",
                          .label = "Sag of the stowed motor, by elements",
                          .actual = study.findings.front().sag_mm,
                          .limit = kSagAtRest_frac * std::max(in.overhang_mm, 1.0),
                          .unit = "mm",
                          .source = kProjectDecision,
                          .remedy = "Rest the stowed motor on a chock, take a thicker plate, or set a beam under the deck."});
  study.checks.push_back({.id = "plate.frequency",
                          .label = "Clear of the engine's idle, by elements",
                          .actual = !(study.frequency_Hz > 0.0)
                                        ? std::numeric_limits<double>::quiet_NaN()
                                        : std::max(kBandLow_factor * kIdleLow_Hz / study.tight_Hz,
                                             study.frequency_Hz / (kBandHigh_factor * kIdleHigh_Hz)),
                          .limit = 1.0,
                          .unit = "",
                          .comparison = Comparison::at_least,
                          .source = kProjectDecision,
                          .remedy = "Rest the stowed motor on a chock, take a thicker plate, or set a beam under the deck."});
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
                          .remedy = "Rest the stowed motor on a chock, take a thicker plate, or set a beam under the deck."});
}

// Plate and panel one behind the other, the motor's weight at their end (Dunkerley).
double together_Hz(double plate_Hz, double panel_Hz) { return 1.0 / std::sqrt(1.0 / (plate_Hz * plate_Hz) + 1.0 / (panel_Hz * panel_Hz)); }

void add_frequency(PlateStudy& study, double motor_kg, double motor_m) {
  const double plate_Hz = study.solution.frequencies_Hz.front();
  const PanelStiffness& panel = study.panel.stiffness;
  const double arm_m = motor_m - study.panel.middle_m;
  const double gives = motor_kg * (1.0 / panel.sink_N_per_m + arm_m * arm_m / panel.tilt_Nm_per_rad) + study.solution.mass_kg / panel.sink_N_per_m;
  const double panel_Hz = study.panel_Hz = 1.0 / (2.0 * std::numbers::pi * std::sqrt(gives));
  study.frequency_Hz = study.tight_Hz = together_Hz(plate_Hz, panel_Hz);
  study.trace.steps.push_back({.id = "plate.panel_frequency",
                               .label = "Frequency of plate and motor on the deck's panel alone",
                               .symbol = "f_p",
                               .formula = "1 / (2 * pi * sqrt(m * (1 / k_d + e^2 / k_t) + m_p / k_d))",
                               .terms = {{"pi", std::numbers::pi, "", "circle constant"},
                                         {"m", motor_kg, "kg", "stowed motor, as far as the plate carries it"},
                                         {"k_d", panel.sink_N_per_m, "N_per_m", "of the panel, sinking"},
                                         {"e", arm_m, "m", "the motor's centre ahead of the bolts' middle"},
                                         {"k_t", panel.tilt_Nm_per_rad, "Nm", "of the panel, tilting"},
                                         {"m_p", study.solution.mass_kg, "kg", "plate"}},
                               .value = panel_Hz,
                               .unit = "Hz",
                               .source = kDeckPanel});
  const auto tell_frequency = [&](std::string id, std::string label, double f_Hz, const char* of_what) {
    study.trace.steps.push_back({.id = std::move(id),
                                 .label = std::move(label),
                                 .symbol = "f",
                                 .formula = "1 / sqrt(1 / f_e^2 + 1 / f_p^2)",
                                 .terms = {{"f_e", f_Hz, "Hz", of_what}, {"f_p", panel_Hz, "Hz", "of the panel alone"}},
                                 .value = together_Hz(f_Hz, panel_Hz),
                                 .unit = "Hz",
                                 .source = kDunkerley});
  };
  tell_frequency("plate.frequency", "Lowest frequency, motor stowed", plate_Hz, "of plate and bolts on a stiff deck, by elements");
  // Below the idle's band, bolts that clamp well may lift it into that.
  if (!(study.frequency_Hz < kBandLow_factor * kIdleLow_Hz)) return;
  PlateModel tight = study.model;
  tight.cases.clear();
  tight.rest_case = -1;
  tight.support.bolts_both_ways = tight.support.deck_both_ways = true;
  const PlateSolution clamped = solve_plate(tight);
  if (!clamped.solved || !(clamped.frequencies_Hz.front() > plate_Hz)) return;
  study.tight_Hz = together_Hz(clamped.frequencies_Hz.front(), panel_Hz);
  tell_frequency("plate.tight_frequency", "The same while the bolts clamp, so that nothing opens", clamped.frequencies_Hz.front(),
                 "of plate and bolts on a stiff deck, by elements, bolts and deck both ways");
}

// Running, the engine's first order passes over the stowed motor's frequency.
void add_cruise_caution(PlateStudy& study) {
  if (study.frequency_Hz < kCruiseLow_Hz || study.frequency_Hz > kCruiseHigh_Hz) return;
  study.cautions.push_back({.id = "plate.cruise",
                            .text = "At some " + fixed(std::round(0.6 * study.frequency_Hz) * 100.0, 0) +
                                    " revolutions a minute the engine shakes the stowed motor in step: pass through, do not cruise there.",
                            .source = kProjectDecision});
}

}  // namespace

double PlatePanel::rise_m(const std::vector<PlateLoad>& loads, double x_m) const {
  double force_N = 0.0;
  double moment_Nm = 0.0;
  for (const PlateLoad& load : loads) {
    force_N += load.force_N;
    moment_Nm += load.pitch_Nm + load.force_N * (load.foot.middle.x_m - middle_m);
  }
  return force_N / stiffness.sink_N_per_m + moment_Nm / stiffness.tilt_Nm_per_rad * (x_m - middle_m);
}

double PlateStudy::bolt_limit_N(LoadGrade grade) const { return bolt_share(grade) * bolt_breaking_N; }

PlateBasis plate_basis(const ChosenPlate& chosen, const Design& design, Trace& trace) {
  const MountInput& in = chosen.mount;
  PlateBasis basis;
  PlateModel& model = basis.model;
  model.shape = chosen.shape;
  model.bars = chosen.bars;
  basis.front_row_m = pattern_of(model.shape).fore_mm / 1000.0;
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
  const BoltPattern pattern = pattern_of(model.shape);
  basis.panel = {.stiffness = add_deck_panel(in, design.job.mount.deck_span_mm.value, design.job.mount.deck_breadth_mm.value, pattern, chosen.panel_factor, trace),
                 .middle_m = pattern.middle.x_mm / 1000.0};
  return basis;
}

PlateStudy plate_study(const Design& design) {
  PlateStudy study;
  const std::optional<ChosenPlate> chosen = chosen_plate(design);
  if (!chosen) {
    study.solution.problem = kNoPlate;
    return study;
  }
  const auto& [in, shape, bars, deck_factor, panel_factor, alloy, size] = *chosen;
  study.issues = shape_issues(*chosen, design);
  const PlateBasis basis = plate_basis(*chosen, design, study.trace);
  PlateModel& model = study.model;
  model = basis.model;
  const Stowed stowed{basis.stowed_foot, basis.lead_m, basis.carried_frac};
  study.foot_lead_m = stowed.lead_m;
  study.panel = basis.panel;
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
  std::optional<std::size_t> dived;
  // A bow that stays dry has a deck's least pressure under it, which a person's foot exceeds by far.
  const LoadCasesInput& sea = loads.input;
  const bool dives = sea.wave_period_s > 0.0 && dive(sea.relative_sigma_m, sea.plate_height_m, sea.wave_period_s, sea.water_kg_per_m3).reaches;
  for (const LoadCase& load : loads.loads.cases) {
    if (load.id != "dive" || !dives) continue;
    const double from_m = basis.front_row_m + design.mount.deck_ahead_mm / 1000.0;
    const double to_m = in.plate_length_mm / 1000.0;
    const PlateFoot under = clear_of_cuts({.middle = {0.5 * (from_m + to_m), 0.0}, .length_m = 0.9 * (to_m - from_m), .width_m = 0.9 * in.plate_width_mm / 1000.0}, cut);
    if (under.width_m > 0.0) dived = solve({load.label, {{.foot = under, .force_N = load.force.force_z_N}}});
  }
  const double height_m = kMotorHeight_mm / 1000.0;
  // What comes from either side: once, if the plate is its own mirror image.
  const bool mirrored = is_mirrored(shape);
  std::vector<std::size_t> hung_on, bends;
  std::size_t braking = 0;
  for (const double side : {-1.0, 1.0}) {
    if (mirrored && side > 0.0) continue;
    const std::string whence = mirrored ? "" : side < 0.0 ? ", to port" : ", to starboard";
    hung_on.push_back(solve(stowed_case("A person hangs on the motor" + whence, stowed, 0.0, 0.0, side * kHandhold_N * height_m), stowed.lead_m));
    if (loads.input.trailered)
      bends.push_back(solve(stowed_case("On the trailer, a bend" + whence, stowed, -weight_N, 0.0, side * weight_N * kRoadAcross_g * height_m), stowed.lead_m));
  }
  if (loads.input.trailered)
    braking = solve(stowed_case("On the trailer, braking", stowed, -weight_N, -weight_N * kRoadAlong_g * height_m), stowed.lead_m);
  const BoltPattern pattern = pattern_of(shape);
  const double pattern_m = pattern.span_mm() / 1000.0;
  const PlateFoot stem = on_the_plate({.middle = {pattern.fore_mm / 1000.0 - 0.5 * pattern_m, 0.0},
                                       .length_m = std::max(0.5 * pattern_m, 0.04),
                                       .width_m = pattern.half_mm / 1000.0}, cut);
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

  add_frequency(study, stowed.carried_frac * in.motor_mass_kg, stowed.foot.middle.x_m + stowed.lead_m);
  add_cruise_caution(study);
  study.amplification_factor = std::max(amplification(study.frequency_Hz, kSlamPulse_s).factor, 1.0);
  const double motor_g = design.mount.motor_acceleration_factor;
  const double slam_factor = add_slam_factor(motor_g, study.amplification_factor, study.trace);
  const BoltGrade* grade = find_bolt_grade(design.mount.bolt.grade);
  BoltResistance resists;
  if (grade != nullptr) resists = {shear_resistance_N(*size, *grade), tension_resistance_N(*size, *grade, in.countersunk)};
  const std::vector<BoltPoint>& bolts = pattern.bolts;
  const auto shears_of = [&](std::string_view id) {
    for (const LoadCase& load : loads.loads.cases)
      if (load.id == id) return shears_N(bolts, load);
    return std::vector<double>();
  };
  Reader reader(study, *alloy, resists, std::move(leads_m));
  using enum LoadGrade;
  reader.read("rest", model.cases[at_rest].label, extreme, kWinklerDeck, at_rest);
  reader.read("slam", "Motor stowed, in a slam", extreme, kIso12215Acceleration, at_rest, slam_factor);
  reader.read("rebound", "Motor stowed, thrown up after it", extreme, kProjectDecision, thrown_up,
              rebound_factor(motor_g, study.amplification_factor));
  reader.read("person.step", model.cases[stepped_on].label, extreme, kPersonOnPlate, stepped_on);
  if (dived) reader.read("dive", model.cases[*dived].label, extreme, kFlatPlateSlam, *dived);
  for (const std::size_t at : hung_on) reader.read("person.pull", model.cases[at].label, extreme, kPersonPulls, at, 1.0, shears_of("person.pull"));
  if (loads.input.trailered) {
    reader.read("road.down", "On the trailer, a pothole", extreme, kRoadLoads, at_rest, 1.0 + kRoadDown_g);
    reader.read("road.along", model.cases[braking].label, extreme, kRoadLoads, braking, 1.0, shears_of("road.along"));
    for (const std::size_t at : bends)
      reader.read("road.across", model.cases[at].label, extreme, kRoadLoads, at, 1.0, shears_of("road.across"));
  }
  const std::size_t thrust_findings = study.findings.size();
  for (std::size_t i = first_thrust; i <= last_thrust; ++i) {
    const int angle_deg = static_cast<int>(i - first_thrust) * kThrustStep_deg;
    std::string number = std::to_string(angle_deg);
    number.insert(0, 3 - number.size(), '0');
    reader.read("thrust", model.cases[i].label, working, kProjectDecision, i, 1.0, shears_of("thrust." + number));
  }
  // Current and waves come along with the thrust from any side: told from those that are worst for the plate and for
  // a bolt.
  const auto read_deployed = [&](const LoadCase& load, double thrust_N) {
    std::size_t stress = first_thrust, pull = first_thrust;
    const auto finding = [&](std::size_t i) -> const PlateFinding& { return study.findings[thrust_findings + i - first_thrust]; };
    for (std::size_t i = first_thrust; i <= last_thrust; ++i) {
      if (finding(i).stress_MPa > finding(stress).stress_MPa) stress = i;
      if (finding(i).together_factor > finding(pull).together_factor) pull = i;
    }
    for (const std::size_t i : stress == pull ? std::vector{stress} : std::vector{stress, pull}) {
      const int angle_deg = static_cast<int>(i - first_thrust) * kThrustStep_deg;
      std::vector<double> shears = finding(i).shears_N;
      for (double& shear_N : shears) shear_N *= std::hypot(load.force.force_x_N, load.force.force_y_N) / thrust_N;
      reader.read(load.id, load.label + ", " + std::to_string(angle_deg) + "\u00b0 from ahead", load.grade, load.source, i,
                  load.moment_Nm / moment_Nm, shears);
    }
  };
  // What else pushes the lowered motor, by its moment on the foot.
  for (const LoadCase& load : loads.loads.cases) {
    if (!load.in_range || !(moment_Nm > 0.0)) continue;
    const auto pushed = [&](int angle_deg) { reader.read(load.id, load.label, load.grade, load.source, thrust_at(angle_deg), load.moment_Nm / moment_Nm, shears_N(bolts, load)); };
    if (load.id == "deployed") read_deployed(load, in.thrust_N);
    if (load.id == "down.limit" || load.id == "snag") pushed(180);
    if (load.id == "snag.side") pushed(90);
    if (load.id == "snag.side" && !mirrored) pushed(270);
  }
  study.bolt_breaking_N = loads.bolt_breaking_N;
  study.thrust_N = in.thrust_N;
  add_checks(study, in, *alloy, *size, design.mount.pull_limit_N, resists);
  add_encounter(design, study);
  study.strip_stress_MPa = design.mount.plate_stress_MPa;
  study.strip_bolt_N = design.mount.slam_tension_N;
  study.group_bolt_N = design.mount.thrust_tension_N;
  study.strip_frequency_Hz = design.mount.frequency_Hz;
  study.assumptions = {
      "Bolts without preload pull only, the deck pushes only; bedding and core give under them, and the deck's panel moves as one piece with plate and "
      "bolts.",
      std::string("The stowed motor rests on the plate's fore end") +
          (in.chocked ? "; a stiff chock at twice the overhang has its share of the weight." : ", its weight ahead of that as a moment."),
      "The deployed motor's foot stands amid the bolts and is half as long and wide as their pattern; under it plate and foot bend as three thicknesses would.",
      mirrored ? "Plate and bolts are their own mirror image: what comes from the other side does the same there."
               : "Plate and bolts are not their own mirror image: what comes from the side is solved from either.",
      "Full thrust is worked out every 30 degrees; between two of these a bolt pulls up to 3.5 % more, and stress is some 4 % higher.",
      "Stress is read from a washer's edge outwards, and from a thickness away from the foot; holes are not cut out.",
  };
  if (!bars.empty())
    study.assumptions.push_back("Stiffeners bend together with a strip of plate no wider than their spacing or a quarter of their length; "
                                "they are fast all along, their welds or bolts are not looked at.");
  if (deck_factor != 1.0 || panel_factor != 1.0) study.assumptions.push_back("Deck and bolts are as stiff as the flex test found them.");
  return study;
}

}  // namespace thole
