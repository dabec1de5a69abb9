#include "calc/mount/mount.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <optional>
#include <string>
#include <utility>

#include "base/number.h"
#include "base/units.h"
#include "calc/mount/bolt_group.h"
#include "calc/mount/deck.h"
#include "calc/mount/plate.h"
#include "calc/mount/plate_rules.h"
#include "calc/mount/slam.h"
#include "data/alloys.h"
#include "data/bolts.h"
#include "data/sources.h"
#include "data/sources_mount.h"

namespace thole {
namespace {

// --- coefficients
// ---------------------------------------------------------------------------------
constexpr double kLeastAcceleration_g = 1.0;  // DNV HSLC 2011 B201
constexpr double kBowRatioLeast_ratio = 1.5;  // this and the next four: project decisions
constexpr double kBowRatioMost_ratio = 2.0;
constexpr double kSlamSagLimit_frac = 1.0 / 30.0;    // of the overhang, in a slam
constexpr double kWorstAmplification_factor = 1.65;  // when no plate tells the frequency
constexpr double kPlateMassShare_factor = 33.0 / 140.0;  // Rayleigh, cantilever

// Where the pattern sits on the plate, and how far the deck carries the plate ahead of the front
// row: no bolt can stand nearer the stem than its backing and the hull-deck joint let it.
constexpr double kDeckAhead_mm = 80.0;  // this and the next three: project decisions
constexpr double kDeckAheadLeast_mm = 10.0;
constexpr double kReachLeast_mm = 50.0;
// A foot amid the pattern leaves half its moment to either side; half as long as the pattern, it
// bridges half of that half itself.
constexpr double kFootMoment_frac = 0.25;

constexpr double kCountersunk_factor = 0.7;     // EN 1993-1-8: 0.63 against 0.9
constexpr double kLoad_factor = 1.5;            // EN 1990, recalled
constexpr double kTensionInShear_factor = 1.4;  // EN 1993-1-8 Table 3.4, recalled
constexpr double kCountersinkDepth_frac = 2.0 / 3.0;
constexpr double kEdge_factor = 2.0;     // hole diameters, EN 1993-1-8 Table 3.3
constexpr double kSpacing_factor = 3.0;  // bolt diameters
constexpr double kPreload_frac = 0.65;   // of yield; common practice
constexpr double kNut_factor = 0.15;     // wet with bedding compound
constexpr double kBackingDiameters_factor = 5.0;
constexpr double kGasket_mm = 1.0;  // common practice: sealant or gasket left under the plate
constexpr double kWasherThickness_mm = 2.0;
constexpr int kDirectionStep_deg = 5;

constexpr double kBackingLimit_mm = 300.0;  // of the fields
constexpr double kWidthLimit_mm = 600.0;
constexpr double kLengthLimit_mm = 1200.0;
constexpr int kRowLimit = 6;

double round_up(double value, double step) { return std::ceil(value / step) * step; }

Change clear_field(std::string field, std::string label) {
  return {.field = std::move(field), .clear = true, .label = std::move(label)};
}

Change set_field(std::string field, double value, std::string label) {
  return {.field = std::move(field), .value = value, .label = std::move(label)};
}

// --- the boat
// -------------------------------------------------------------------------------------
PlaningHull hull_of(const MountInput& in) {
  return {.waterline_length_m = in.waterline_length_m,
          .chine_beam_m = in.chine_beam_m,
          .deadrise_deg = in.deadrise_deg,
          .displacement_kg = in.displacement_kg,
          .speed_mps = in.run_speed_mps};
}

// 1/100 highest acceleration at the centre of gravity, with its steps.
double cg_acceleration_g(const PlaningHull& hull, Trace& trace) {
  const CgAcceleration n = cg_acceleration(hull);
  const double speed_kn = design_speed_kn(hull);
  const bool planing = speed_kn >= 5.0 * std::sqrt(hull.waterline_length_m);
  trace.steps.push_back(
      {.id = "mount.cg_acceleration_first",
       .label = "Acceleration at the centre of gravity, first formula",
       .symbol = "n_1",
       .formula = "0.32 * (L / (10 * B) + 0.084) * (50 - beta) * V^2 * B^2 / m",
       .terms = {{"L", hull.waterline_length_m, "m", "waterline length"},
                 {"B", hull.chine_beam_m, "m", "beam at the chine"},
                 {"beta", effective_deadrise_deg(hull), "deg", "deadrise, taken as 10 to 30"},
                 {"V", speed_kn, "kn", "fastest run, at least 2.36 sqrt(L) and at most 50"},
                 {"m", hull.displacement_kg, "kg", "loaded weight"}},
       .value = n.first_g,
       .unit = "g",
       .source = kIso12215Acceleration,
       .assumptions = planing ? std::vector<std::string>{"Average of the 1/100 highest."}
                              : std::vector<std::string>{
                                    "The formula is for planing craft; this boat is slower, and "
                                    "the least value of the next step may govern."}});
  trace.steps.push_back({.id = "mount.cg_acceleration_second",
                         .label = "Acceleration at the centre of gravity, second formula",
                         .symbol = "n_2",
                         .formula = "0.5 * V / m^0.17",
                         .terms = {{"V", speed_kn, "kn", "fastest run"},
                                   {"m", hull.displacement_kg, "kg", "loaded weight"}},
                         .value = n.second_g,
                         .unit = "g",
                         .source = kIso12215Acceleration});
  const double used_g = std::max(n.used_g, kLeastAcceleration_g);
  const bool first_alone = n.first_g <= 3.0;
  trace.steps.push_back(
      {.id = "mount.cg_acceleration",
       .label = "Acceleration at the centre of gravity",
       .symbol = "n_cg",
       .formula = first_alone ? "max(n_1, n_min)" : "max(min(min(n_1, n_2), 7), n_min)",
       .terms = {{"n_1", n.first_g, "g", "first formula"},
                 {"n_2", n.second_g, "g", "second formula"},
                 {"n_min", kLeastAcceleration_g, "g", "least design value"}},
       .value = used_g,
       .unit = "g",
       .source = used_g > n.used_g ? kDnvHslcMinimum : kIso12215Acceleration,
       .assumptions = {first_alone ? "The first formula stands alone up to 3 g."
                                   : "Above 3 g the smaller of both, at most 7 g."}});
  return used_g;
}

double bow_acceleration_g(const PlaningHull& hull, double cg_g, Trace& trace) {
  const double speed_kn = design_speed_kn(hull);
  const double ratio = std::clamp(bow_ratio(hull.waterline_length_m, hull.chine_beam_m, speed_kn),
                                  kBowRatioLeast_ratio, kBowRatioMost_ratio);
  trace.steps.push_back(
      {.id = "mount.bow_acceleration",
       .label = "Acceleration at the bow",
       .symbol = "n_bow",
       .formula = "n_cg * min(max(r_min, 1 + 3.8 * (L / B - 2.25) * sqrt(L / 0.3048) / V), r_max)",
       .terms = {{"n_cg", cg_g, "g", "at the centre of gravity"},
                 {"L", hull.waterline_length_m, "m", "waterline length"},
                 {"B", hull.chine_beam_m, "m", "beam at the chine"},
                 {"V", speed_kn, "kn", "fastest run"},
                 {"r_min", kBowRatioLeast_ratio, "", "least ratio, our own judgement"},
                 {"r_max", kBowRatioMost_ratio, "", "largest ratio, our own judgement"}},
       .value = cg_g * ratio,
       .unit = "g",
       .source = kSavitskyBrown1976,
       .assumptions = {"Small fast boats lie outside the measured range, so the ratio is kept "
                       "between 1.5 and 2."}});
  return cg_g * ratio;
}

// Speed in the sea that the boat is run in at which slams reach the design value.
double speed_limit_mps(const MountInput& in, double cg_g, Trace& trace) {
  const PlaningHull hull = hull_of(in);
  const double limit_mps = speed_in_sea_mps(hull, in.run_wave_m, cg_g);
  trace.steps.push_back(
      {.id = "mount.speed_limit",
       .label = "Slow to this in that sea, motor stowed",
       .symbol = "V_s",
       .formula = "k * sqrt(1650 * n_cg * (m / 1000) / ((H / B + 0.084) * (50 - beta) * B^2))",
       .terms = {{"k", mps_from_kn(1.0), "mps", "one knot"},
                 {"n_cg", cg_g, "g", "design value at the centre of gravity"},
                 {"m", in.displacement_kg, "kg", "loaded weight"},
                 {"H", in.run_wave_m, "m", "significant height of the sea it is run in"},
                 {"B", in.chine_beam_m, "m", "beam at the chine"},
                 {"beta", effective_deadrise_deg(hull), "deg", "deadrise, taken as 10 to 30"}},
       .value = limit_mps,
       .unit = "mps",
       .source = kDnvHslcSpeed,
       .assumptions = {"1/100 highest acceleration on a straight course into the sea; a skipper "
                       "who feels his way goes faster between the waves."}});
  return limit_mps;
}

// --- the pattern
// ----------------------------------------------------------------------------------
struct Layout {
  double aft_margin_mm = 0.0;    // plate behind the aft row
  double front_margin_mm = 0.0;  // plate ahead of the front row; negative: the pattern is too long
  double side_margin_mm = 0.0;
  double span_mm = 0.0;        // aft row to front row
  double deck_ahead_mm = 0.0;  // front row to where the plate leaves the deck
  double reach_mm = 0.0;       // front row to the motor's centre of mass, as it counts
};

Layout layout_of(const MountInput& in, Trace& trace) {
  Layout layout{};
  layout.aft_margin_mm = aft_margin_mm(in.plate_length_mm);
  layout.span_mm = in.bolt_pitch_mm * (in.bolt_rows - 1);
  layout.front_margin_mm = in.plate_length_mm - layout.aft_margin_mm - layout.span_mm;
  layout.side_margin_mm = 0.5 * (in.plate_width_mm - in.bolt_gauge_mm);
  layout.deck_ahead_mm =
      std::max(std::min(layout.front_margin_mm, kDeckAhead_mm), kDeckAheadLeast_mm);
  layout.reach_mm = std::max(in.overhang_mm, kReachLeast_mm);
  trace.steps.push_back(
      {.id = "mount.deck_ahead",
       .label = "Deck under the plate ahead of the front row",
       .symbol = "a",
       .formula = "max(min(l - max(0.12 * l, 30) - s, a_max), a_min)",
       .terms = {{"l", in.plate_length_mm, "mm", "plate length"},
                 {"s", layout.span_mm, "mm", "aft row to front row"},
                 {"a_max", kDeckAhead_mm, "mm", "deck ahead of a bolt that can still be backed"},
                 {"a_min", kDeckAheadLeast_mm, "mm", "least that counts"}},
       .value = layout.deck_ahead_mm,
       .unit = "mm",
       .source = kProjectDecision,
       .assumptions = {"The aft row stands 12 % of the plate's length from its aft edge, at least "
                       "30 mm; the deck ends 80 mm ahead of the front row, or with the plate."}});
  return layout;
}

// --- the plate
// ------------------------------------------------------------------------------------
struct Slam {
  double force_N = 0.0;
  double moment_Nm = 0.0;  // at the deck's edge
};

// The stowed motor's push on the plate, amplified by `factor`, and its moment over the deck's edge.
Slam slam_on_plate(const MountInput& in, const Layout& layout, double bow_g, double factor,
                   Trace& trace) {
  Slam slam{};
  slam.force_N = in.motor_mass_kg * kGravity_mps2 * (1.0 + bow_g * std::max(factor, 1.0));
  trace.steps.push_back(
      {.id = "mount.slam",
       .label = "Stowed motor on the plate in a slam",
       .symbol = "F",
       .formula = "m * g * (1 + n_bow * max(D, 1))",
       .terms = {{"m", in.motor_mass_kg, "kg", "motor with its mount"},
                 {"g", kGravity_mps2, "mps2", "gravity"},
                 {"n_bow", bow_g, "g", "acceleration at the bow"},
                 {"D", factor, "", "amplification by the springing plate"}},
       .value = slam.force_N,
       .unit = "N",
       .source = kProjectDecision,
       .assumptions = {"A plate too soft to follow the pulse is not credited for it."}});
  const MomentShares shares = moment_shares(in.chocked);
  slam.moment_Nm = std::max(
      slam.force_N *
          (shares.moment_factor * layout.reach_mm - shares.reaction_factor * layout.deck_ahead_mm) /
          1000.0,
      0.0);
  trace.steps.push_back(
      {.id = "mount.slam_moment",
       .label = "Bending over the edge of the deck in a slam",
       .symbol = "M_s",
       .formula = "max(F * (c_M * L - c_R * a) / 1000, 0)",
       .terms = {{"F", slam.force_N, "N", "stowed motor in a slam"},
                 {"L", layout.reach_mm, "mm", "front row to the motor's centre of mass"},
                 {"a", layout.deck_ahead_mm, "mm", "front row to the edge of the deck"},
                 {"c_M", shares.moment_factor, "", "share of the moment that the bolts hold"},
                 {"c_R", shares.reaction_factor, "", "share of the force that the bolts hold"}},
       .value = slam.moment_Nm,
       .unit = "Nm",
       .source = kBeamTheory,
       .assumptions = {in.chocked ? "Held at the front row, on a chock at twice the overhang."
                                  : "Nothing carries the motor's outer end."}});
  return slam;
}

// One plate of the candidates, worked through.
struct PlateCase {
  PlateStock stock{};
  double mass_kg = 0.0;
  double stress_MPa = 0.0;
  double sag_mm = 0.0;
  double frequency_Hz = 0.0;
  Slam slam{};
  Trace trace{};
};

PlateStrip strip_of(const MountInput& in, const Layout& layout, const PlateStock& stock,
                    const Alloy& alloy) {
  return {.modulus_GPa = alloy.modulus_GPa,
          .width_mm = in.plate_width_mm,
          .thickness_mm = stock.thickness_mm,
          .reach_mm = layout.reach_mm,
          .propped = in.chocked};
}

void add_stiffness(const MountInput& in, const PlateStrip& strip, const Alloy& alloy,
                   PlateCase& plate) {
  const double second_moment = second_moment_mm4(strip);
  const double stiffness = strip_stiffness_N_per_mm(strip);
  std::vector<Step>& steps = plate.trace.steps;
  plate.mass_kg =
      in.plate_length_mm * in.plate_width_mm * strip.thickness_mm * 1e-9 * alloy.density_kg_per_m3;
  steps.push_back({.id = "mount.plate_mass",
                   .label = "Plate, before holes and corners",
                   .symbol = "m_p",
                   .formula = "l * b * t * rho / 10^9",
                   .terms = {{"l", in.plate_length_mm, "mm", "plate length"},
                             {"b", in.plate_width_mm, "mm", "plate width"},
                             {"t", strip.thickness_mm, "mm", "plate thickness"},
                             {"rho", alloy.density_kg_per_m3, "kg_per_m3", "density of the alloy"}},
                   .value = plate.mass_kg,
                   .unit = "kg",
                   .source = alloy.source});
  steps.push_back({.id = "mount.second_moment",
                   .label = "Second moment of the strip",
                   .symbol = "I",
                   .formula = "min(b, 1.5 * L) * t^3 / 12",
                   .terms = {{"b", in.plate_width_mm, "mm", "plate width"},
                             {"L", strip.reach_mm, "mm", "front row to the motor's centre of mass"},
                             {"t", strip.thickness_mm, "mm", "plate thickness"}},
                   .value = second_moment,
                   .unit = "mm4",
                   .source = kBeamTheory,
                   .assumptions = {"A load in the middle of a wide plate does not reach its sides: "
                                   "at most one and a half reaches bend."}});
  steps.push_back(
      {.id = "mount.stiffness",
       .label = "Stiffness under the motor",
       .symbol = "k",
       .formula = in.chocked ? "768 * E * I / (7 * (2 * L)^3)" : "3 * E * I / L^3",
       .terms = {{"E", 1000.0 * alloy.modulus_GPa, "MPa", "modulus of the alloy"},
                 {"I", second_moment, "mm4", "second moment of the strip"},
                 {"L", strip.reach_mm, "mm", "front row to the motor's centre of mass"}},
       .value = stiffness,
       .unit = "N_per_mm",
       .source = kBeamTheory,
       .assumptions = {in.chocked ? "Held at the front row, propped by the chock at twice the "
                                    "overhang; the motor is as stiff as the plate."
                                  : "Held at the front row; a finite-element plate on one-sided "
                                    "deck contact sags as much."}});
  plate.sag_mm = in.motor_mass_kg * kGravity_mps2 / stiffness;
  steps.push_back({.id = "mount.sag",
                   .label = "Sag under the motor at rest",
                   .symbol = "w",
                   .formula = "m * g / k",
                   .terms = {{"m", in.motor_mass_kg, "kg", "motor with its mount"},
                             {"g", kGravity_mps2, "mps2", "gravity"},
                             {"k", stiffness, "N_per_mm", "stiffness under the motor"}},
                   .value = plate.sag_mm,
                   .unit = "mm",
                   .source = kBeamTheory});
  const double overhanging_kg = effective_width_mm(strip) * strip.reach_mm * strip.thickness_mm *
                                1e-9 * alloy.density_kg_per_m3;
  plate.frequency_Hz =
      natural_frequency_Hz(stiffness, in.motor_mass_kg + kPlateMassShare_factor * overhanging_kg);
  steps.push_back({.id = "mount.frequency",
                   .label = "Natural frequency of the stowed motor",
                   .symbol = "f",
                   .formula = "sqrt(1000 * k / (m + 33 / 140 * m_o)) / (2 * pi)",
                   .terms = {{"k", stiffness, "N_per_mm", "stiffness under the motor"},
                             {"m", in.motor_mass_kg, "kg", "motor with its mount"},
                             {"m_o", overhanging_kg, "kg", "plate that bends with it"},
                             {"pi", std::numbers::pi, "", "circle constant"}},
                   .value = plate.frequency_Hz,
                   .unit = "Hz",
                   .source = kBeamTheory});
}

double add_amplification(double frequency_Hz, Trace& trace) {
  const Amplification shock = amplification(frequency_Hz, kSlamPulse_s);
  trace.steps.push_back(
      {.id = "mount.amplification",
       .label = "Amplification by the springing plate",
       .symbol = "D",
       .formula = "D_1 + (D_2 - D_1) * (min(f * t_d, 5) - c_1) / (c_2 - c_1)",
       .terms = {{"f", frequency_Hz, "Hz", "natural frequency of the stowed motor"},
                 {"t_d", kSlamPulse_s, "s", "length of the slam pulse"},
                 {"c_1", shock.lower_count, "", "cycles in the pulse, row below in the table"},
                 {"c_2", shock.upper_count, "", "cycles in the pulse, row above"},
                 {"D_1", shock.lower_factor, "", "amplification in the row below"},
                 {"D_2", shock.upper_factor, "", "amplification in the row above"}},
       .value = shock.factor,
       .unit = "",
       .source = kHalfSineShock,
       .assumptions = {"A half-sine pulse of 0.15 s (0.1 to 0.25 s is recalled, not confirmed), "
                       "5 % damping."}});
  return shock.factor;
}

// What the installer can do about a plate that slams, sags or shakes too much.
std::vector<Change> plate_changes(const MountInput& in) {
  std::vector<Change> changes;
  if (in.plates.size() == 1)
    changes.push_back(clear_field("mount.plate", "Let Thole choose the plate"));
  if (!in.chocked)
    changes.push_back(set_field("mount.chocked", 1.0, "Chock the motor's outer end"));
  return changes;
}

std::string_view chock_or_thicker(const MountInput& in) {
  return in.chocked
             ? "Take a thicker plate, or bring the stowed motor's weight closer to the front bolts."
             : "Rest the outer end of the stowed motor on a chock, take a thicker plate, or "
               "bring its weight closer to the front bolts.";
}

void add_slam_checks(const MountInput& in, const PlateStrip& strip, const Alloy& alloy,
                     PlateCase& plate) {
  const double width_mm = effective_width_mm(strip);
  plate.stress_MPa = bending_stress_MPa(plate.slam.moment_Nm, width_mm, strip.thickness_mm);
  plate.trace.steps.push_back(
      {.id = "mount.plate_stress",
       .label = "Stress in the plate in a slam",
       .symbol = "sigma",
       .formula = "6000 * M_s / (min(b, 1.5 * L) * t^2)",
       .terms = {{"M_s", plate.slam.moment_Nm, "Nm", "bending over the edge of the deck"},
                 {"b", in.plate_width_mm, "mm", "plate width"},
                 {"L", strip.reach_mm, "mm", "front row to the motor's centre of mass"},
                 {"t", strip.thickness_mm, "mm", "plate thickness"}},
       .value = plate.stress_MPa,
       .unit = "MPa",
       .source = kBeamTheory});
  const std::string remedy(chock_or_thicker(in));
  plate.trace.checks.push_back({.id = "mount.plate_slam",
                                .label = "Plate stress in a slam",
                                .actual = plate.stress_MPa,
                                .limit = extreme_stress_MPa(alloy),
                                .unit = "MPa",
                                .source = kProjectDecision,
                                .remedy = remedy,
                                .changes = plate_changes(in)});
  plate.trace.checks.push_back({.id = "mount.sag",
                                .label = "Sag of the stowed motor",
                                .actual = plate.sag_mm,
                                .limit = kSagAtRest_frac * strip.reach_mm,
                                .unit = "mm",
                                .source = kProjectDecision,
                                .remedy = remedy,
                                .changes = plate_changes(in)});
  const double stiffness = strip_stiffness_N_per_mm(strip);
  plate.trace.steps.push_back({.id = "mount.sag_slam",
                               .label = "Sag under the motor in a slam",
                               .symbol = "w_s",
                               .formula = "F / k",
                               .terms = {{"F", plate.slam.force_N, "N", "stowed motor in a slam"},
                                         {"k", stiffness, "N_per_mm", "stiffness under the motor"}},
                               .value = plate.slam.force_N / stiffness,
                               .unit = "mm",
                               .source = kBeamTheory});
  plate.trace.checks.push_back({.id = "mount.sag_slam",
                                .label = "Sag in a slam",
                                .actual = plate.slam.force_N / stiffness,
                                .limit = kSlamSagLimit_frac * strip.reach_mm,
                                .unit = "mm",
                                .source = kProjectDecision,
                                .remedy = remedy,
                                .changes = plate_changes(in)});
}

// Outside the idling engine's band: 1 at its edge, more outside.
void add_frequency_check(const MountInput& in, PlateCase& plate) {
  const double low_Hz = kBandLow_factor * kIdleLow_Hz;
  const double high_Hz = kBandHigh_factor * kIdleHigh_Hz;
  const double clearance = std::max(low_Hz / plate.frequency_Hz, plate.frequency_Hz / high_Hz);
  plate.trace.steps.push_back(
      {.id = "mount.frequency_clearance",
       .label = "Distance from the idling engine's shake",
       .symbol = "c",
       .formula = "max(0.8 * f_1 / f, f / (1.25 * f_2))",
       .terms = {{"f", plate.frequency_Hz, "Hz", "natural frequency of the stowed motor"},
                 {"f_1", kIdleLow_Hz, "Hz", "engine idling at 600 rpm"},
                 {"f_2", kIdleHigh_Hz, "Hz", "engine idling at 900 rpm"}},
       .value = clearance,
       .unit = "",
       .source = kProjectDecision,
       .assumptions = {"First order of an engine that idles between 600 and 900 rpm."}});
  plate.trace.checks.push_back({.id = "mount.frequency",
                                .label = "Clear of the engine's idle",
                                .actual = clearance,
                                .limit = 1.0,
                                .unit = "",
                                .comparison = Comparison::at_least,
                                .source = kProjectDecision,
                                .remedy = std::string(chock_or_thicker(in)),
                                .changes = plate_changes(in)});
}

void add_thrust_check(const MountInput& in, double thrust_moment_Nm, const Alloy& alloy,
                      PlateCase& plate) {
  const double width_mm = std::min(in.plate_width_mm, in.plate_length_mm);
  const double thickness_mm = plate.stock.thickness_mm;
  const double stress_MPa =
      bending_stress_MPa(kFootMoment_frac * thrust_moment_Nm, width_mm, thickness_mm);
  plate.trace.steps.push_back(
      {.id = "mount.plate_stress_working",
       .label = "Stress in the plate at full thrust",
       .symbol = "sigma_T",
       .formula = "6000 * q * M_T / (min(b, l) * t^2)",
       .terms = {{"M_T", thrust_moment_Nm, "Nm", "full thrust on its lever"},
                 {"q", kFootMoment_frac, "", "share that the plate bends under"},
                 {"b", in.plate_width_mm, "mm", "plate width"},
                 {"l", in.plate_length_mm, "mm", "plate length"},
                 {"t", thickness_mm, "mm", "plate thickness"}},
       .value = stress_MPa,
       .unit = "MPa",
       .source = kProjectDecision,
       .assumptions = {
           "The deployed motor's foot stands amid the bolts and is half as long as their "
           "pattern: half of the moment goes to either side of it, and it bridges half "
           "of that. A foot ahead of the front row needs its own calculation."}});
  const double limit_MPa = working_stress_MPa(alloy);
  const double width_needed_mm = round_up(width_mm * stress_MPa / limit_MPa, 10.0);
  std::vector<Change> changes;
  if (in.plates.size() == 1)
    changes.push_back(clear_field("mount.plate", "Let Thole choose the plate"));
  if (width_needed_mm > in.plate_width_mm && width_needed_mm <= kWidthLimit_mm) {
    changes.push_back(set_field("mount.plate_width_mm", width_needed_mm, "Widen the plate"));
  }
  plate.trace.checks.push_back({.id = "mount.plate_working",
                                .label = "Plate stress at full thrust",
                                .actual = stress_MPa,
                                .limit = limit_MPa,
                                .unit = "MPa",
                                .source = kProjectDecision,
                                .remedy = "Take a thicker or a wider plate.",
                                .changes = std::move(changes)});
}

PlateCase plate_case(const MountInput& in, const Layout& layout, double bow_g,
                     double thrust_moment_Nm, const PlateStock& stock, const Alloy& alloy) {
  PlateCase plate{.stock = stock};
  const PlateStrip strip = strip_of(in, layout, stock, alloy);
  add_stiffness(in, strip, alloy, plate);
  const double factor = add_amplification(plate.frequency_Hz, plate.trace);
  plate.slam = slam_on_plate(in, layout, bow_g, factor, plate.trace);
  add_slam_checks(in, strip, alloy, plate);
  add_frequency_check(in, plate);
  add_thrust_check(in, thrust_moment_Nm, alloy, plate);
  return plate;
}

// Whether all checks pass, and the use of the worst of them.
bool serves(const Trace& trace) {
  return std::none_of(trace.checks.begin(), trace.checks.end(), [](const Check& check) {
    return check.verdict() == Verdict::fail || check.verdict() == Verdict::not_evaluated;
  });
}

double worst_use(const Trace& trace) {
  const Check* governing = trace.governing();
  return governing != nullptr ? governing->utilisation() : 0.0;
}

// The first case that serves, else the one that comes closest; empty when there is none.
// `make(candidate)` gives an optional case: nothing when the candidate is unknown here.
template <class Case, class Candidate, class Make>
std::optional<Case> first_that_serves(const std::vector<Candidate>& candidates, Make make) {
  std::optional<Case> closest;
  for (const Candidate& candidate : candidates) {
    std::optional<Case> now = make(candidate);
    if (!now) continue;
    if (serves(now->trace)) return now;
    if (!closest || worst_use(now->trace) < worst_use(closest->trace)) closest = std::move(now);
  }
  return closest;
}

// Thinnest first, the cheapest of equals.
std::optional<PlateCase> choose_plate(const MountInput& in, const Layout& layout, double bow_g,
                                      double thrust_moment_Nm) {
  std::vector<PlateStock> plates = in.plates;
  std::stable_sort(plates.begin(), plates.end(), [](const PlateStock& a, const PlateStock& b) {
    if (a.thickness_mm != b.thickness_mm) return a.thickness_mm < b.thickness_mm;
    return a.price_per_m2 < b.price_per_m2;
  });
  return first_that_serves<PlateCase>(
      plates, [&](const PlateStock& stock) -> std::optional<PlateCase> {
        const Alloy* alloy = find_alloy(stock.alloy);
        if (alloy == nullptr || !(stock.thickness_mm > 0.0)) return std::nullopt;
        return plate_case(in, layout, bow_g, thrust_moment_Nm, stock, *alloy);
      });
}

// --- the bolts ---------------------------------------------------------------------------------
struct BoltLoads {
  double slam_tension_N = 0.0;
  double thrust_tension_N = 0.0;
  double shear_N = 0.0;

  double tension_N() const { return std::max(slam_tension_N, thrust_tension_N); }
};

struct WorstBolt {
  double value_N = 0.0;
  double angle_rad = 0.0;
  BoltPoint at{};
};

void add_thrust_steps(const MountInput& in, double lead_mm, const GroupMoments& sum,
                      const WorstBolt& tension, const WorstBolt& shear, Trace& trace) {
  const char* const every_side =
      "The worst of thrusts from every side in steps of 5 degrees, and of all bolts.";
  trace.steps.push_back(
      {.id = "mount.bolt_tension_thrust",
       .label = "Tension in the worst bolt at full thrust",
       .symbol = "N_T",
       .formula = "1000 * T * h * (sin(theta) * y / I_y + cos(theta) * x / I_x)",
       .terms = {{"T", in.thrust_N, "N", "full thrust"},
                 {"h", in.thrust_lever_m, "m", "propeller axis below the plate"},
                 {"theta", tension.angle_rad, "rad", "direction of the thrust, from ahead"},
                 {"x", tension.at.x_mm, "mm", "worst bolt forward of the pattern's middle"},
                 {"y", tension.at.y_mm, "mm", "worst bolt to port of it"},
                 {"I_x", sum.x_mm2, "mm2", "sum of x squared over the bolts"},
                 {"I_y", sum.y_mm2, "mm2", "sum of y squared over the bolts"}},
       .value = tension.value_N,
       .unit = "N",
       .source = kBoltGroup,
       .assumptions = {every_side, "Preloaded bolts share by the elastic method."}});
  trace.steps.push_back(
      {.id = "mount.bolt_shear",
       .label = "Shear in the worst bolt at full thrust",
       .symbol = "V_T",
       .formula =
           "T * sqrt((cos(theta) / n - x_0 * sin(theta) * y / J)^2 + (sin(theta) / n + x_0 * "
           "sin(theta) * x / J)^2)",
       .terms = {{"T", in.thrust_N, "N", "full thrust"},
                 {"theta", shear.angle_rad, "rad", "direction of the thrust, from ahead"},
                 {"n", 2.0 * in.bolt_rows, "", "bolts"},
                 {"x_0", lead_mm, "mm", "shaft forward of the pattern's middle"},
                 {"x", shear.at.x_mm, "mm", "worst bolt forward of the pattern's middle"},
                 {"y", shear.at.y_mm, "mm", "worst bolt to port of it"},
                 {"J", sum.polar_mm2, "mm2", "sum of x and y squared over the bolts"}},
       .value = shear.value_N,
       .unit = "N",
       .source = kBoltGroup,
       .assumptions = {every_side, "The shaft stands as far ahead as the stowed motor's weight."}});
}

BoltLoads bolt_loads(const MountInput& in, const Layout& layout, const Slam& slam, Trace& trace) {
  const std::vector<BoltPoint> bolts =
      bolt_rectangle(in.bolt_rows, in.bolt_pitch_mm, in.bolt_gauge_mm);
  const double lead_mm = 0.5 * layout.span_mm + layout.reach_mm;
  WorstBolt tension{};
  WorstBolt shear{};
  // Thrusts from either side load the group alike: of equals the first stands, or else the last bit
  // of a sine would decide, and another machine name another bolt.
  const auto worse = [](double value_N, const WorstBolt& worst) {
    constexpr double kTie_ratio = 1.0 + 1e-9;
    return value_N > worst.value_N * kTie_ratio;
  };
  for (int angle_deg = 0; angle_deg < 360; angle_deg += kDirectionStep_deg) {
    const double angle_rad = rad_from_deg(angle_deg);
    const GroupLoad load =
        moved_to_centroid({.force_x_N = in.thrust_N * std::cos(angle_rad),
                           .force_y_N = in.thrust_N * std::sin(angle_rad)},
                          {.x_mm = lead_mm, .z_mm = -1000.0 * in.thrust_lever_m});
    const std::vector<BoltForce> forces = elastic_forces(bolts, load);
    for (std::size_t i = 0; i < bolts.size(); ++i) {
      const BoltForce& force = forces[i];
      if (worse(force.tension_N, tension)) tension = {force.tension_N, angle_rad, bolts[i]};
      if (worse(force.shear_N, shear)) shear = {force.shear_N, angle_rad, bolts[i]};
    }
  }
  add_thrust_steps(in, lead_mm, group_moments(bolts), tension, shear, trace);

  BoltLoads loads{.thrust_tension_N = tension.value_N, .shear_N = shear.value_N};
  loads.slam_tension_N = prying_tension_N(slam.moment_Nm, layout.deck_ahead_mm, 2);
  trace.steps.push_back(
      {.id = "mount.bolt_tension_slam",
       .label = "Tension in a front bolt in a slam",
       .symbol = "N_S",
       .formula = "1000 * M_s / (2 * a)",
       .terms = {{"M_s", slam.moment_Nm, "Nm", "bending over the edge of the deck"},
                 {"a", layout.deck_ahead_mm, "mm", "front row to the edge of the deck"}},
       .value = loads.slam_tension_N,
       .unit = "N",
       .source = kProjectDecision,
       .assumptions = {"Thin plates pry: the front row alone holds the plate down over the edge of "
                       "the deck. Thicker plates share more with the rows behind."}});
  trace.steps.push_back({.id = "mount.bolt_tension",
                         .label = "Tension in the worst bolt",
                         .symbol = "N",
                         .formula = "max(N_T, N_S)",
                         .terms = {{"N_T", loads.thrust_tension_N, "N", "at full thrust"},
                                   {"N_S", loads.slam_tension_N, "N", "in a slam"}},
                         .value = loads.tension_N(),
                         .unit = "N",
                         .source = kDefinition});
  return loads;
}

struct BoltCase {
  BoltOffer offer{};
  const BoltSize* size = nullptr;
  const BoltGrade* grade = nullptr;
  Trace trace{};
};

std::vector<Change> bolt_changes(const MountInput& in) {
  if (in.bolts.size() != 1) return {};
  return {clear_field("mount.bolt", "Let Thole choose the bolts")};
}

// One more row, with the plate to carry it.
void add_row_changes(const MountInput& in, std::vector<Change>& changes) {
  const double length_mm =
      round_up((in.plate_length_mm + in.bolt_pitch_mm) / (1.0 - kAftMargin_frac), 10.0);
  if (in.bolt_rows >= kRowLimit || length_mm > kLengthLimit_mm) return;
  changes.push_back(set_field("mount.bolt_rows", in.bolt_rows + 1.0, "Add a row of bolts"));
  changes.push_back(set_field("mount.plate_length_mm", length_mm, "Lengthen the plate"));
}

// Force that breaks the thread, or pulls a countersunk head through.
double add_breaking_force(const MountInput& in, BoltCase& bolt) {
  const bool metric = bolt.size->series == ThreadSeries::metric;
  const double head_factor = in.countersunk ? kCountersunk_factor : 1.0;
  const double breaking_N = head_factor * tensile_N(*bolt.size, *bolt.grade);
  bolt.trace.steps.push_back(
      {.id = "mount.bolt_breaking",
       .label = "Force that breaks one bolt",
       .symbol = "F_u",
       .formula = "c * sigma_u * pi / 4 * (d - e * P)^2",
       .terms = {{"c", head_factor, "", "1 for hexagon heads, 0.7 for countersunk"},
                 {"sigma_u", bolt.grade->tensile_MPa, "MPa", "strength of the grade"},
                 {"pi", std::numbers::pi, "", "circle constant"},
                 {"d", bolt.size->diameter_mm, "mm", "bolt"},
                 {"e", metric ? 0.9382 : 0.9743, "", "depth of the thread, in pitches"},
                 {"P", bolt.size->thread_pitch_mm, "mm", "thread pitch"}},
       .value = breaking_N,
       .unit = "N",
       .source = metric ? kIso898StressArea : kAsmeB11StressArea});
  return breaking_N;
}

void add_strength_checks(const MountInput& in, const BoltLoads& loads, BoltCase& bolt) {
  const double breaking_N = add_breaking_force(in, bolt);
  std::vector<Change> slam_changes = bolt_changes(in);
  if (!in.chocked) {
    slam_changes.push_back(set_field("mount.chocked", 1.0, "Chock the motor's outer end"));
  }
  bolt.trace.checks.push_back(
      {.id = "mount.bolt_tension",
       .label = "Front bolts in a slam",
       .actual = loads.slam_tension_N,
       .limit = kExtremeBolt_frac * breaking_N,
       .unit = "N",
       .source = kProjectDecision,
       .remedy =
           "Take larger bolts, rest the stowed motor on a chock, or set the front row farther "
           "from the edge of the deck.",
       .changes = std::move(slam_changes)});
  std::vector<Change> thrust_changes = bolt_changes(in);
  add_row_changes(in, thrust_changes);
  const std::string thrust_remedy = "Take larger bolts, add a row, or set the rows farther apart.";
  bolt.trace.checks.push_back({.id = "mount.bolt_working",
                               .label = "Bolt tension at full thrust",
                               .actual = loads.thrust_tension_N,
                               .limit = kWorkingBolt_frac * breaking_N,
                               .unit = "N",
                               .source = kProjectDecision,
                               .remedy = thrust_remedy,
                               .changes = thrust_changes});
  const double shear_limit_N = shear_resistance_N(*bolt.size, *bolt.grade);
  const double tension_limit_N = tension_resistance_N(*bolt.size, *bolt.grade, in.countersunk);
  const double use =
      kLoad_factor * loads.shear_N / shear_limit_N +
      kLoad_factor * loads.thrust_tension_N / (kTensionInShear_factor * tension_limit_N);
  bolt.trace.steps.push_back(
      {.id = "mount.bolt_interaction",
       .label = "Shear and tension together at full thrust",
       .symbol = "u",
       .formula = "g * V_T / F_v + g * N_T / (1.4 * F_t)",
       .terms = {{"g", kLoad_factor, "", "load factor"},
                 {"V_T", loads.shear_N, "N", "shear in the worst bolt"},
                 {"N_T", loads.thrust_tension_N, "N", "tension in the worst bolt"},
                 {"F_v", shear_limit_N, "N", "resistance in shear, thread in the plane"},
                 {"F_t", tension_limit_N, "N", "resistance in tension"}},
       .value = use,
       .unit = "",
       .source = kEn1993Bolts,
       .assumptions = {"The worst bolt in tension is taken to be the worst in shear."}});
  bolt.trace.checks.push_back({.id = "mount.bolt_interaction",
                               .label = "Bolts in shear and tension",
                               .actual = use,
                               .limit = 1.0,
                               .unit = "",
                               .source = kEn1993Bolts,
                               .remedy = thrust_remedy,
                               .changes = std::move(thrust_changes)});
}

void add_edge_checks(const MountInput& in, const Layout& layout, BoltCase& bolt) {
  const double needed_mm = kEdge_factor * bolt.size->hole_mm;
  const double length_mm = round_up(std::max((layout.span_mm + needed_mm) / (1.0 - kAftMargin_frac),
                                             layout.span_mm + needed_mm + kAftMarginLeast_mm),
                                    10.0);
  const double width_mm = round_up(in.bolt_gauge_mm + 2.0 * needed_mm, 10.0);
  std::vector<Change> changes = bolt_changes(in);
  if (layout.front_margin_mm < needed_mm && length_mm <= kLengthLimit_mm) {
    changes.push_back(set_field("mount.plate_length_mm", length_mm, "Lengthen the plate"));
  }
  if (layout.side_margin_mm < needed_mm && width_mm <= kWidthLimit_mm) {
    changes.push_back(set_field("mount.plate_width_mm", width_mm, "Widen the plate"));
  }
  bolt.trace.checks.push_back(
      {.id = "mount.edge",
       .label = "Bolts from the plate's edge",
       .actual = std::min({layout.front_margin_mm, layout.aft_margin_mm, layout.side_margin_mm}),
       .limit = needed_mm,
       .unit = "mm",
       .comparison = Comparison::at_least,
       .source = kEn1993Edges,
       .remedy = "Take a longer or wider plate, or draw the bolts closer together.",
       .changes = std::move(changes)});
  bolt.trace.checks.push_back({.id = "mount.bolt_spacing",
                               .label = "Bolts from one another",
                               .actual = std::min(in.bolt_pitch_mm, in.bolt_gauge_mm),
                               .limit = kSpacing_factor * bolt.size->diameter_mm,
                               .unit = "mm",
                               .comparison = Comparison::at_least,
                               .source = kBoltSpacing,
                               .remedy = "Set the bolts farther apart.",
                               .changes = bolt_changes(in)});
}

void add_countersink_check(const MountInput& in, double thickness_mm, BoltCase& bolt) {
  if (!in.countersunk || !(thickness_mm > 0.0)) return;
  std::vector<Change> changes = bolt_changes(in);
  if (in.plates.size() == 1)
    changes.push_back(clear_field("mount.plate", "Let Thole choose the plate"));
  changes.push_back(set_field("mount.head", 0.0, "Use hexagon heads"));
  bolt.trace.checks.push_back(
      {.id = "mount.countersink",
       .label = "Depth of the countersinks",
       .actual = bolt.size->countersunk_head_mm,
       .limit = kCountersinkDepth_frac * thickness_mm,
       .unit = "mm",
       .source = kCountersinkDepth,
       .remedy = "Use hexagon heads, a thicker plate, or smaller bolts and more of them.",
       .changes = std::move(changes)});
}

// Smallest first, the cheapest of equals. `thickness_mm` of the plate, 0 when there is none.
std::optional<BoltCase> choose_bolt(const MountInput& in, const Layout& layout,
                                    const BoltLoads& loads, double thickness_mm) {
  const auto area_mm2 = [](const BoltOffer& offer) {
    const BoltSize* size = find_bolt_size(offer.size);
    return size != nullptr ? stress_area_mm2(*size) : 0.0;
  };
  std::vector<BoltOffer> offers = in.bolts;
  std::stable_sort(offers.begin(), offers.end(), [&](const BoltOffer& a, const BoltOffer& b) {
    if (area_mm2(a) != area_mm2(b)) return area_mm2(a) < area_mm2(b);
    return a.price_each < b.price_each;
  });
  return first_that_serves<BoltCase>(offers,
                                     [&](const BoltOffer& offer) -> std::optional<BoltCase> {
                                       BoltCase bolt{.offer = offer,
                                                     .size = find_bolt_size(offer.size),
                                                     .grade = find_bolt_grade(offer.grade)};
                                       if (bolt.size == nullptr || bolt.grade == nullptr)
                                         return std::nullopt;
                                       add_strength_checks(in, loads, bolt);
                                       add_edge_checks(in, layout, bolt);
                                       add_countersink_check(in, thickness_mm, bolt);
                                       return bolt;
                                     });
}

// --- the deck
// -------------------------------------------------------------------------------------
bool is_cored(DeckKind kind) {
  return kind == DeckKind::cored_balsa || kind == DeckKind::cored_foam;
}

// Backing that a check asks for: bigger, and thick enough to spread so far.
std::vector<Change> backing_changes(const MountInput& in, double side_needed_mm, double washer_mm) {
  const double side_mm = round_up(side_needed_mm, 5.0);
  const double thickness_mm = round_up(std::max(0.25 * (side_mm - washer_mm), 0.0), 1.0);
  std::vector<Change> changes;
  if (side_mm > std::min({kBackingLimit_mm, in.bolt_pitch_mm, in.bolt_gauge_mm})) return changes;
  if (side_mm > in.backing_side_mm) {
    changes.push_back(set_field("mount.backing_side_mm", side_mm, "Larger backing plates"));
  }
  if (thickness_mm > in.backing_thickness_mm) {
    changes.push_back(
        set_field("mount.backing_thickness_mm", thickness_mm, "Thicker backing plates"));
  }
  return changes;
}

struct Backing {
  double side_mm = 0.0;
  double area_mm2 = 0.0;
};

Backing add_backing_area(const MountInput& in, const BoltSize& size, Trace& trace) {
  const double room_mm = std::min(in.bolt_pitch_mm, in.bolt_gauge_mm);
  Backing backing{};
  backing.side_mm = effective_backing_side_mm({.side_mm = in.backing_side_mm,
                                               .thickness_mm = in.backing_thickness_mm,
                                               .washer_mm = size.washer_mm,
                                               .room_mm = room_mm});
  backing.area_mm2 = backing_area_mm2(backing.side_mm, size.hole_mm);
  trace.steps.push_back(
      {.id = "mount.backing_side",
       .label = "Side of the backing plate that carries",
       .symbol = "s_e",
       .formula = "min(min(s, d_w + 4 * t_b), r)",
       .terms = {{"s", in.backing_side_mm, "mm", "side of the backing plate"},
                 {"d_w", size.washer_mm, "mm", "washer, thick and large"},
                 {"t_b", in.backing_thickness_mm, "mm", "thickness of the backing plate"},
                 {"r", room_mm, "mm", "distance to the next bolt"}},
       .value = backing.side_mm,
       .unit = "mm",
       .source = kCommonPractice,
       .assumptions = {"Load spreads two thicknesses beyond the washer; washers of three bolt "
                       "diameters."}});
  trace.steps.push_back({.id = "mount.backing_area_effective",
                         .label = "Area under one bolt that carries",
                         .symbol = "A_e",
                         .formula = "max(s_e^2 - pi / 4 * d_0^2, 0)",
                         .terms = {{"s_e", backing.side_mm, "mm", "side that carries"},
                                   {"pi", std::numbers::pi, "", "circle constant"},
                                   {"d_0", size.hole_mm, "mm", "hole"}},
                         .value = backing.area_mm2,
                         .unit = "mm2",
                         .source = kHoleSizes});
  return backing;
}

double add_area_required(const MountInput& in, const BoltSize& size, const DeckStrength& strength,
                         double tension_N, const Backing& backing, Trace& trace) {
  const double allowed_MPa = strength.crushing_factor * strength.crushing_MPa;
  const double diameter_mm = kBackingDiameters_factor * size.diameter_mm;
  const double required_mm2 =
      std::max(tension_N / allowed_MPa, std::numbers::pi / 4.0 * diameter_mm * diameter_mm);
  trace.steps.push_back(
      {.id = "mount.backing_area",
       .label = "Area needed under one bolt",
       .symbol = "A",
       .formula = "max(N / (q * sigma_c), pi / 4 * (5 * d)^2)",
       .terms = {{"N", tension_N, "N", "tension in the worst bolt"},
                 {"sigma_c", strength.crushing_MPa, "MPa", "crushing strength of the deck"},
                 {"q", strength.crushing_factor, "", "share of it that may be used"},
                 {"pi", std::numbers::pi, "", "circle constant"},
                 {"d", size.diameter_mm, "mm", "bolt"}},
       .value = required_mm2,
       .unit = "mm2",
       .source = strength.crushing_source,
       .assumptions = {
           "Never less across than five bolt diameters, as published pull tests advise.",
           is_cored(in.deck) ? "The core carries: no plug is counted on."
                             : "No core under the plate."}});
  const double side_mm =
      std::sqrt(required_mm2 + std::numbers::pi / 4.0 * size.hole_mm * size.hole_mm);
  trace.checks.push_back(
      {.id = "mount.backing",
       .label = "Backing under each bolt",
       .actual = backing.area_mm2,
       .limit = required_mm2,
       .unit = "mm2",
       .comparison = Comparison::at_least,
       .source = tension_N / allowed_MPa >= required_mm2 ? strength.crushing_source : kBackingTests,
       .remedy = is_cored(in.deck)
                     ? "Fit larger, thicker backing plates, or replace the core under the whole "
                       "pattern with solid laminate and describe the deck as that."
                     : "Fit larger, thicker backing plates.",
       .changes = backing_changes(in, side_mm, size.washer_mm)});
  return required_mm2;
}

void add_pull_through(const MountInput& in, const BoltSize& size, const DeckStrength& strength,
                      double tension_N, const Backing& backing, Trace& trace) {
  const double allowed_N =
      strength.punching_factor *
      punching_N(4.0 * backing.side_mm, in.deck_thickness_mm, strength.punching_MPa);
  trace.steps.push_back(
      {.id = "mount.pull_through",
       .label = "Pull that the skin allows each bolt",
       .symbol = "N_p",
       .formula = "q * 4 * s_e * t * tau",
       .terms = {{"s_e", backing.side_mm, "mm", "side of the backing that carries"},
                 {"t", in.deck_thickness_mm, "mm", "outer skin, or the single skin"},
                 {"tau", strength.punching_MPa, "MPa", "shear strength of the skin"},
                 {"q", strength.punching_factor, "", "share of it that may be used"}},
       .value = allowed_N,
       .unit = "N",
       .source = strength.punching_source,
       .assumptions = {
           "One skin alone holds, sheared between its layers along the backing's edge."}});
  const double side_mm =
      tension_N / (4.0 * strength.punching_factor * in.deck_thickness_mm * strength.punching_MPa);
  trace.checks.push_back(
      {.id = "mount.pull_through",
       .label = "Bolts pulling through the deck",
       .actual = tension_N,
       .limit = allowed_N,
       .unit = "N",
       .source = kProjectDecision,
       .remedy = "Fit larger, thicker backing plates, bond a doubler under the deck, or rest the "
                 "stowed motor on a chock.",
       .changes = [&] {
         std::vector<Change> changes = backing_changes(in, side_mm, size.washer_mm);
         if (!in.chocked) {
           changes.push_back(set_field("mount.chocked", 1.0, "Chock the motor's outer end"));
         }
         return changes;
       }()});
}

// The clamp force to tighten to, as bolt and deck both allow it.
double add_preload(const MountInput& in, const BoltCase& bolt, const DeckStrength& strength,
                   double thrust_tension_N, const Backing& backing, Trace& trace) {
  const double clamp_N = strength.crushing_factor * strength.crushing_MPa * backing.area_mm2;
  trace.steps.push_back(
      {.id = "mount.core",
       .label = "Clamp that the deck allows each bolt",
       .symbol = "C",
       .formula = "q * sigma_c * A_e",
       .terms = {{"sigma_c", strength.crushing_MPa, "MPa", "crushing strength of the deck"},
                 {"q", strength.crushing_factor, "", "share of it that may be used"},
                 {"A_e", backing.area_mm2, "mm2", "area under one bolt that carries"}},
       .value = clamp_N,
       .unit = "N",
       .source = strength.crushing_source});
  const double side_mm =
      std::sqrt(thrust_tension_N / (strength.crushing_factor * strength.crushing_MPa) +
                std::numbers::pi / 4.0 * bolt.size->hole_mm * bolt.size->hole_mm);
  trace.checks.push_back(
      {.id = "mount.core",
       .label = "Clamp against thrust, deck's limit",
       .actual = clamp_N,
       .limit = thrust_tension_N,
       .unit = "N",
       .comparison = Comparison::at_least,
       .source = kProjectDecision,
       .remedy = "Fit larger, thicker backing plates, or plug the core so that the bolts may be "
                 "tightened until thrust no longer works them loose.",
       .changes = backing_changes(in, side_mm, bolt.size->washer_mm)});
  const double bolt_yield_N = yield_N(*bolt.size, *bolt.grade);
  const double preload_N = std::min(kPreload_frac * bolt_yield_N, clamp_N);
  trace.steps.push_back({.id = "mount.preload",
                         .label = "Clamp force of each bolt",
                         .symbol = "P",
                         .formula = "min(0.65 * F_y, C)",
                         .terms = {{"F_y", bolt_yield_N, "N", "yield force of the thread"},
                                   {"C", clamp_N, "N", "clamp that the deck allows"}},
                         .value = preload_N,
                         .unit = "N",
                         .source = bolt.grade->source});
  return preload_N;
}

double add_torque(const BoltSize& size, double preload_N, Trace& trace) {
  const double torque = torque_Nm(kNut_factor, size.diameter_mm, preload_N);
  trace.steps.push_back({.id = "mount.torque",
                         .label = "Torque on each nut",
                         .symbol = "T_b",
                         .formula = "K * d / 1000 * P",
                         .terms = {{"K", kNut_factor, "", "nut factor, wet with bedding compound"},
                                   {"d", size.diameter_mm, "mm", "bolt"},
                                   {"P", preload_N, "N", "clamp force"}},
                         .value = torque,
                         .unit = "Nm",
                         .source = kNutFactor,
                         .assumptions = {"A torque wrench scatters by a quarter to a third."}});
  return torque;
}

double add_bolt_length(const MountInput& in, double plate_mm, const BoltSize& size, Trace& trace) {
  const double skins_count = is_cored(in.deck) ? 2.0 : 1.0;
  const double length_mm = plate_mm + kGasket_mm + skins_count * in.deck_thickness_mm +
                           in.core_thickness_mm + in.backing_thickness_mm +
                           2.0 * kWasherThickness_mm + size.diameter_mm +
                           2.0 * size.thread_pitch_mm;
  trace.steps.push_back(
      {.id = "mount.bolt_length",
       .label = "Bolt length needed",
       .symbol = "l_b",
       .formula = "t_p + t_g + n_s * t + t_c + t_b + 2 * t_w + d + 2 * P",
       .terms = {{"t_p", plate_mm, "mm", "plate"},
                 {"t_g", kGasket_mm, "mm", "bedding"},
                 {"n_s", skins_count, "", "skins"},
                 {"t", in.deck_thickness_mm, "mm", "skin"},
                 {"t_c", in.core_thickness_mm, "mm", "core"},
                 {"t_b", in.backing_thickness_mm, "mm", "backing plate"},
                 {"t_w", kWasherThickness_mm, "mm", "washer"},
                 {"d", size.diameter_mm, "mm", "bolt, and height of a locking nut"},
                 {"P", size.thread_pitch_mm, "mm", "thread pitch"}},
       .value = length_mm,
       .unit = "mm",
       .source = kCommonPractice,
       .assumptions = {
           "Two threads show. Take the next length up; measure the deck first, the inner "
           "skin is taken to be as thick as the outer."}});
  return length_mm;
}

// --- cautions
// -------------------------------------------------------------------------------------
void add_cautions(const MountInput& in, double speed_limit, Trace& trace) {
  const auto warn = [&](std::string id, std::string text, const Source& source) {
    trace.cautions.push_back({std::move(id), std::move(text), source});
  };
  warn(
      "mount.drilling",
      "Look under the deck before drilling: wiring, fuel lines, tanks, the hull-deck joint and the "
      "anchor locker's drain. Do not cut structure without the builder or a surveyor; local rules "
      "for the boat come first.",
      kCommonPractice);
  const double strong_kN =
      strong_point_N(StrongPoint::anchoring, in.waterline_length_m, 1.0) / 1000.0;
  warn("mount.not_a_strong_point",
       "Never tow, moor or anchor from this plate or the motor: a strong point for anchoring this "
       "boat is built for some " +
           fixed(strong_kN, 0) +
           " kN. Keep the plate clear of the anchor roller's and cleat's own backing.",
       kIso15084);
  warn("mount.isolation",
       "Keep stainless steel and aluminium apart with sleeves, washers and a gasket, and never let "
       "the "
       "plate carry the motor's return current. Prove more than 1 Mohm from plate to bolt, dry, "
       "before "
       "the motor is wired; leave the wiring to someone qualified for it.",
       kProjectDecision);
  warn("mount.lifting",
       "Lift the " + fixed(in.motor_mass_kg, 0) +
           " kg motor with two people or a hoist, the boat secured, and keep hands out of its "
           "folding "
           "joint.",
       kCommonPractice);
  warn("mount.speed",
       "Stow, lock and strap the motor before running, and support its outer end where you can. In "
       "a "
       "sea of " +
           fixed(in.run_wave_m, 1) + " m slow to " + fixed(kn_from_mps(speed_limit), 0) +
           " kn: beyond that slams exceed what this mount is designed for.",
       kDnvHslcSpeed);
  warn("mount.welding",
       "Do not weld or tightly bend the plate: welded 6061-T6 keeps half of its strength, and cold "
       "bending cracks it. A welded bracket needs its own design.",
       kIso12215Alloys);
  warn("mount.bolts",
       "Buy bolts with the grade marked on the head: an unmarked stainless bolt may be annealed, "
       "with "
       "less than half the yield. Lubricate the threads, turn the nut by hand tool, and tighten "
       "again "
       "after two days and after the first season.",
       kAstmF593);
  if (is_cored(in.deck)) {
    warn(
        "mount.core",
        "Seal every edge of the core: clear it back round each hole, fill with thickened epoxy and "
        "drill again. A wet core is the usual failure.",
        kCommonPractice);
  }
}

void add_assumptions(const MountInput& in, Trace& trace) {
  trace.assumptions.push_back(
      {.text = "A slam pulse at the bow lasts 0.15 s.", .source = kPulseLength});
  trace.assumptions.push_back(
      {.text = "Thick washers of three bolt diameters lie on the backing plates.",
       .source = kWasherSizes});
  if (in.countersunk) {
    trace.assumptions.push_back({.field = "mount.head",
                                 .text = "Countersunk heads have their full theoretical height.",
                                 .source = kHeadSizes});
  }
}

void add_none_check(std::string id, std::string label, std::string remedy,
                    std::vector<Change> changes, Trace& trace) {
  trace.checks.push_back({.id = std::move(id),
                          .label = std::move(label),
                          .actual = 0.0,
                          .limit = 1.0,
                          .unit = "",
                          .comparison = Comparison::at_least,
                          .source = kDefinition,
                          .remedy = std::move(remedy),
                          .changes = std::move(changes)});
}

void append(const Trace& part, Trace& trace) {
  trace.steps.insert(trace.steps.end(), part.steps.begin(), part.steps.end());
  trace.checks.insert(trace.checks.end(), part.checks.begin(), part.checks.end());
}

// Fills the part of `out` that the plate decides, and returns what the bolts must hold in a slam.
Slam take_plate(const MountInput& in, const Layout& layout, MountResult& out) {
  const std::optional<PlateCase> plate =
      choose_plate(in, layout, out.bow_acceleration_factor, out.thrust_moment_Nm);
  if (!plate) {
    add_none_check("mount.plate", "Plate to choose from",
                   "Offer plate stock of an alloy that Thole knows.",
                   {clear_field("mount.plate", "Let Thole choose the plate")}, out.trace);
    return slam_on_plate(in, layout, out.bow_acceleration_factor, kWorstAmplification_factor,
                         out.trace);
  }
  append(plate->trace, out.trace);
  out.plate_found = serves(plate->trace);
  out.plate = plate->stock;
  out.plate_thickness_mm = plate->stock.thickness_mm;
  out.plate_mass_kg = plate->mass_kg;
  out.plate_stress_MPa = plate->stress_MPa;
  out.sag_mm = plate->sag_mm;
  out.frequency_Hz = plate->frequency_Hz;
  return plate->slam;
}

// Fills the part of `out` that bolts and deck decide.
void take_bolts(const MountInput& in, const Layout& layout, const BoltLoads& loads,
                MountResult& out) {
  const std::optional<BoltCase> bolt = choose_bolt(in, layout, loads, out.plate_thickness_mm);
  if (!bolt) {
    add_none_check("mount.bolt", "Bolts to choose from",
                   "Offer bolts of a size and grade that Thole knows.",
                   {clear_field("mount.bolt", "Let Thole choose the bolts")}, out.trace);
    return;
  }
  append(bolt->trace, out.trace);
  out.bolt_found = serves(bolt->trace);
  out.bolt = bolt->offer;
  out.bolt_length_mm = add_bolt_length(in, out.plate_thickness_mm, *bolt->size, out.trace);

  const DeckStrength strength = deck_strength(in.deck);
  const Backing backing = add_backing_area(in, *bolt->size, out.trace);
  out.backing_area_mm2 =
      add_area_required(in, *bolt->size, strength, loads.tension_N(), backing, out.trace);
  add_pull_through(in, *bolt->size, strength, loads.tension_N(), backing, out.trace);
  out.preload_N = add_preload(in, *bolt, strength, loads.thrust_tension_N, backing, out.trace);
  out.bolt_torque_Nm = add_torque(*bolt->size, out.preload_N, out.trace);
}

}  // namespace

MountResult mount(const MountInput& in) {
  MountResult out{.bolt_count = 2 * in.bolt_rows};
  const PlaningHull hull = hull_of(in);
  const double cg_g = cg_acceleration_g(hull, out.trace);
  out.bow_acceleration_factor = bow_acceleration_g(hull, cg_g, out.trace);
  out.speed_limit_mps = speed_limit_mps(in, cg_g, out.trace);

  out.thrust_moment_Nm = in.thrust_N * in.thrust_lever_m;
  out.trace.steps.push_back(
      {.id = "mount.thrust_moment",
       .label = "Moment of full thrust at the plate",
       .symbol = "M_T",
       .formula = "T * h",
       .terms = {{"T", in.thrust_N, "N", "full thrust"},
                 {"h", in.thrust_lever_m, "m", "propeller axis below the plate"}},
       .value = out.thrust_moment_Nm,
       .unit = "Nm",
       .source = kDefinition});

  add_assumptions(in, out.trace);
  const Layout layout = layout_of(in, out.trace);
  const Slam slam = take_plate(in, layout, out);
  out.slam_N = slam.force_N;
  out.slam_moment_Nm = slam.moment_Nm;
  const BoltLoads loads = bolt_loads(in, layout, slam, out.trace);
  out.bolt_tension_N = loads.tension_N();
  out.bolt_shear_N = loads.shear_N;
  take_bolts(in, layout, loads, out);
  add_cautions(in, out.speed_limit_mps, out.trace);
  return out;
}

}  // namespace thole
