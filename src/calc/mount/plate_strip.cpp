#include "calc/mount/mount_parts.h"

#include <numbers>

#include "base/order.h"
#include "base/units.h"
#include "calc/mount/fatigue.h"
#include "calc/mount/load_cases.h"
#include "calc/mount/plate.h"
#include "calc/mount/plate_rules.h"
#include "data/alloys.h"
#include "data/sources.h"
#include "data/sources_mount.h"

namespace thole::mounting {
namespace {

// Where the pattern sits on the plate, and how far the deck carries the plate ahead of the front
// row: no bolt can stand nearer the stem than its backing and the hull-deck joint let it.
constexpr double kDeckAhead_mm = 80.0;  // this and the next two: project decisions
constexpr double kDeckAheadLeast_mm = 10.0;
constexpr double kReachLeast_mm = 50.0;

constexpr double kSlamSagLimit_frac = 1.0 / 30.0;    // of the overhang, in a slam
constexpr double kPlateMassShare_factor = 33.0 / 140.0;  // Rayleigh, cantilever

// A foot amid the pattern leaves half its moment to either side; half as long as the pattern, it
// bridges half of that half itself.
constexpr double kFootMoment_frac = 0.25;

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
  tell([&] {
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
  });
  plate.sag_mm = in.motor_mass_kg * kGravity_mps2 / stiffness;
  tell([&] {
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
  });
  const double overhanging_kg = effective_width_mm(strip) * strip.reach_mm * strip.thickness_mm *
                                1e-9 * alloy.density_kg_per_m3;
  plate.frequency_Hz =
      natural_frequency_Hz(stiffness, in.motor_mass_kg + kPlateMassShare_factor * overhanging_kg);
  tell([&] {
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
  });
}

double add_amplification(double frequency_Hz, Trace& trace) {
  const Amplification shock = amplification(frequency_Hz, kSlamPulse_s);
  tell([&] {
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
  });
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
  tell([&] {
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
  });
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
  tell([&] {
    plate.trace.steps.push_back({.id = "mount.sag_slam",
                                 .label = "Sag under the motor in a slam",
                                 .symbol = "w_s",
                                 .formula = "F / k",
                                 .terms = {{"F", plate.slam.force_N, "N", "stowed motor in a slam"},
                                           {"k", stiffness, "N_per_mm", "stiffness under the motor"}},
                                 .value = plate.slam.force_N / stiffness,
                                 .unit = "mm",
                                 .source = kBeamTheory});
  });
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
  tell([&] {
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
  });
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
  plate.working_stress_MPa = stress_MPa;
  tell([&] {
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
  });
  const auto widened = [&](double limit_MPa) {
    const double width_needed_mm = round_up(width_mm * stress_MPa / limit_MPa, 10.0);
    std::vector<Change> changes;
    if (in.plates.size() == 1)
      changes.push_back(clear_field("mount.plate", "Let Thole choose the plate"));
    if (!in.outlined && width_needed_mm > in.plate_width_mm && width_needed_mm <= kWidthLimit_mm) {
      changes.push_back(set_field("mount.plate_width_mm", width_needed_mm, "Widen the plate"));
    }
    return changes;
  };
  const double limit_MPa = working_stress_MPa(alloy);
  plate.trace.checks.push_back({.id = "mount.plate_working",
                                .label = "Plate stress at full thrust",
                                .actual = stress_MPa,
                                .limit = limit_MPa,
                                .unit = "MPa",
                                .source = kProjectDecision,
                                .remedy = "Take a thicker or a wider plate.",
                                .changes = widened(limit_MPa)});
  const FatigueDetail detail = is_stainless(alloy) ? steel_bolt_holes() : aluminium_bolt_holes();
  const double factor = swing_factor(detail.slope_exponent, 2.0);
  const double range_limit_MPa = range_MPa(detail, swings_in_life());
  tell([&] {
    plate.trace.steps.push_back(
        {.id = "mount.fatigue_thrust",
         .label = "Steady range in the plate that harms as much as the thrust's swings",
         .symbol = "s_T",
         .formula = "sigma_T * g_T",
         .terms = {{"sigma_T", stress_MPa, "MPa", "at full thrust"},
                   {"g_T", factor, "", "((g / k)^m + 2^m / 360)^(1/m), g and k as in slams"}},
         .value = stress_MPa * factor,
         .unit = "MPa",
         .source = kFatiguePlate,
         .assumptions = {"A swing every ten seconds for 300 hours a year, ten years, 0.18 of full thrust on average about half of it; "
                         "once an hour it turns right round."}});
  });
  plate.trace.checks.push_back({.id = "mount.fatigue_thrust",
                                .label = "Plate, fatigue by thrust",
                                .actual = stress_MPa * factor,
                                .limit = range_limit_MPa,
                                .unit = "MPa",
                                .source = kFatiguePlate,
                                .remedy = "Take a thicker or a wider plate.",
                                .changes = widened(range_limit_MPa / factor)});
}

// Somebody on the fore end: bends what lies beyond the deck's edge.
void add_person_check(const MountInput& in, const Layout& layout, const Alloy& alloy, PlateCase& plate) {
  const double lever_mm =
      std::max(layout.front_margin_mm - layout.deck_ahead_mm - 0.5 * kPersonFoot_mm, 0.0);
  const double width_mm = std::min(in.plate_width_mm, kPersonFoot_mm + 2.0 * lever_mm);
  const double thickness_mm = plate.stock.thickness_mm;
  const double stress_MPa = bending_stress_MPa(kPerson_N * lever_mm / 1000.0, width_mm, thickness_mm);
  tell([&] {
    plate.trace.steps.push_back(
        {.id = "mount.plate_person",
         .label = "Stress in the plate under a person on its fore end",
         .symbol = "sigma_P",
         .formula = "6 * P * u / (min(b, f + 2 * u) * t^2)",
         .terms = {{"P", kPerson_N, "N", "a person stepping"},
                   {"u", lever_mm, "mm", "middle of the foot beyond the deck's edge"},
                   {"b", in.plate_width_mm, "mm", "plate width"},
                   {"f", kPersonFoot_mm, "mm", "foot"},
                   {"t", thickness_mm, "mm", "plate thickness"}},
         .value = stress_MPa,
         .unit = "MPa",
         .source = kPersonOnPlate});
  });
  plate.trace.checks.push_back({.id = "mount.plate_person",
                                .label = "Plate stress under a person",
                                .actual = stress_MPa,
                                .limit = extreme_stress_MPa(alloy),
                                .unit = "MPa",
                                .source = kPersonOnPlate,
                                .remedy = "Take a thicker plate, or one that ends nearer the deck's edge.",
                                .changes = plate_changes(in)});
}

// A pothole with the motor stowed on it.
void add_road_check(const MountInput& in, const Layout& layout, const PlateStrip& strip,
                    const Alloy& alloy, PlateCase& plate) {
  if (!in.trailered) return;
  const MomentShares shares = moment_shares(in.chocked);
  const double force_N = in.motor_mass_kg * kGravity_mps2 * (1.0 + kRoadDown_g);
  const double moment_Nm = std::max(force_N *
                                        (shares.moment_factor * layout.reach_mm -
                                         shares.reaction_factor * layout.deck_ahead_mm) /
                                        1000.0,
                                    0.0);
  const double stress_MPa =
      bending_stress_MPa(moment_Nm, effective_width_mm(strip), strip.thickness_mm);
  tell([&] {
    plate.trace.steps.push_back(
        {.id = "mount.plate_road",
         .label = "Stress in the plate on the road",
         .symbol = "sigma_R",
         .formula = "6 * max(m * g * (1 + n) * (c_M * L - c_R * a), 0) / (min(b, 1.5 * L) * t^2)",
         .terms = {{"m", in.motor_mass_kg, "kg", "motor with its mount"},
                   {"g", kGravity_mps2, "mps2", "gravity"},
                   {"n", kRoadDown_g, "g", "in a pothole"},
                   {"c_M", shares.moment_factor, "", "share of the moment that the bolts hold"},
                   {"c_R", shares.reaction_factor, "", "share of the force that the bolts hold"},
                   {"L", layout.reach_mm, "mm", "front row to the motor's centre of mass"},
                   {"a", layout.deck_ahead_mm, "mm", "front row to the edge of the deck"},
                   {"b", in.plate_width_mm, "mm", "plate width"},
                   {"t", strip.thickness_mm, "mm", "plate thickness"}},
         .value = stress_MPa,
         .unit = "MPa",
         .source = kRoadLoads});
  });
  plate.trace.checks.push_back({.id = "mount.plate_road",
                                .label = "Plate stress on the road",
                                .actual = stress_MPa,
                                .limit = extreme_stress_MPa(alloy),
                                .unit = "MPa",
                                .source = kRoadLoads,
                                .remedy = "Take the motor off for the road, strap its outer end to a chock, or take a thicker plate.",
                                .changes = plate_changes(in)});
}

// Slams one a second in rough water, their peaks spread exponentially.
void add_fatigue_check(const MountInput& in, const Alloy& alloy, PlateCase& plate) {
  const FatigueDetail detail = is_stainless(alloy) ? steel_bolt_holes() : aluminium_bolt_holes();
  const double weight_N = in.motor_mass_kg * kGravity_mps2;
  const double dynamic_frac =
      plate.slam.force_N > 0.0 ? std::max(1.0 - weight_N / plate.slam.force_N, 0.0) : 0.0;
  const double highest = highest_one_in_factor(100.0);
  const double factor = same_harm_factor(detail.slope_exponent);
  const double range = plate.stress_MPa * dynamic_frac / highest * factor;
  tell([&] {
    plate.trace.steps.push_back(
        {.id = "mount.fatigue_plate",
         .label = "Steady range in the plate that harms as much as the slams",
         .symbol = "s_p",
         .formula = "sigma * u / k * g",
         .terms = {{"sigma", plate.stress_MPa, "MPa", "in a slam"},
                   {"u", dynamic_frac, "", "share of the slam beyond its weight"},
                   {"k", highest, "", "hundredth highest over the mean, 1 + ln 100"},
                   {"g", factor, "", "gamma(m + 1)^(1/m), exponential peaks"}},
         .value = range,
         .unit = "MPa",
         .source = kFatiguePlate,
         .assumptions = {"A slam a second for 50 hours of rough running a year, ten years; bolt holes under little "
                         "steady stress."}});
  });
  plate.trace.checks.push_back({.id = "mount.fatigue_plate",
                                .label = "Plate, fatigue in slams",
                                .actual = range,
                                .limit = range_MPa(detail, slams_in_life()),
                                .unit = "MPa",
                                .source = kFatiguePlate,
                                .remedy = std::string(chock_or_thicker(in)),
                                .changes = plate_changes(in)});
}

PlateCase plate_case(const MountInput& in, const Layout& layout, double motor_g,
                     double thrust_moment_Nm, const PlateStock& stock, const Alloy& alloy) {
  PlateCase plate{.stock = stock};
  const PlateStrip strip = strip_of(in, layout, stock, alloy);
  add_stiffness(in, strip, alloy, plate);
  plate.amplification_factor = add_amplification(plate.frequency_Hz, plate.trace);
  plate.slam = slam_on_plate(in, layout, motor_g, plate.amplification_factor, plate.trace);
  add_slam_checks(in, strip, alloy, plate);
  add_frequency_check(in, plate);
  add_thrust_check(in, thrust_moment_Nm, alloy, plate);
  add_fatigue_check(in, alloy, plate);
  add_person_check(in, layout, alloy, plate);
  add_road_check(in, layout, strip, alloy, plate);
  return plate;
}

}  // namespace

Layout layout_of(const MountInput& in, Trace& trace) {
  Layout layout;
  layout.pattern = pattern_of(in);
  layout.aft_margin_mm = layout.pattern.aft_mm;
  layout.front_margin_mm = in.plate_length_mm - layout.pattern.fore_mm;
  layout.side_margin_mm = 0.5 * in.plate_width_mm - layout.pattern.half_mm;
  layout.edge_mm = in.bolt_edge_mm > 0.0
                       ? in.bolt_edge_mm
                       : std::min({layout.front_margin_mm, layout.aft_margin_mm, layout.side_margin_mm});
  layout.deck_ahead_mm =
      std::max(std::min(layout.front_margin_mm, kDeckAhead_mm), kDeckAheadLeast_mm);
  layout.reach_mm = std::max(in.overhang_mm, kReachLeast_mm);
  tell([&] {
    trace.steps.push_back(
        {.id = "mount.deck_ahead",
         .label = "Deck under the plate ahead of the front row",
         .symbol = "a",
         .formula = "max(min(l - x_f, a_max), a_min)",
         .terms = {{"l", in.plate_length_mm, "mm", "plate length"},
                   {"x_f", layout.pattern.fore_mm, "mm", "front row forward of the plate's aft edge"},
                   {"a_max", kDeckAhead_mm, "mm", "deck ahead of a bolt that can still be backed"},
                   {"a_min", kDeckAheadLeast_mm, "mm", "least that counts"}},
         .value = layout.deck_ahead_mm,
         .unit = "mm",
         .source = kProjectDecision,
         .assumptions = {in.bolt_places.empty() ? "The aft row stands 12 % of the plate's length from its aft edge, at least "
                                                  "30 mm; the deck ends 80 mm ahead of the front row, or with the plate."
                                                : "Bolts stand where they were put; the deck ends 80 mm ahead of the "
                                                  "foremost, or with the plate."}});
  });
  return layout;
}

// Thinnest first, the cheapest of equals.
std::optional<PlateCase> choose_plate(const MountInput& in, const Layout& layout, double motor_g,
                                      double thrust_moment_Nm) {
  const std::vector<PlateStock> plates =
      sorted(in.plates, [](const PlateStock& a, const PlateStock& b) {
        if (a.thickness_mm != b.thickness_mm) return a.thickness_mm < b.thickness_mm;
        return a.price_per_m2 < b.price_per_m2;
      });
  return first_that_serves<PlateCase>(
      plates, [&](const PlateStock& stock) -> std::optional<PlateCase> {
        const Alloy* alloy = find_alloy(stock.alloy);
        if (alloy == nullptr || !(stock.thickness_mm > 0.0)) return std::nullopt;
        return plate_case(in, layout, motor_g, thrust_moment_Nm, stock, *alloy);
      });
}

}  // namespace thole::mounting
