// What a bolted joint of plate and deck asks beside strength: bearing, backing, core, finish, metals.

#include <numbers>

#include "calc/mount/deck.h"
#include "calc/mount/fatigue.h"
#include "calc/mount/mount_parts.h"
#include "calc/mount/plate_rules.h"
#include "data/galvanic.h"
#include "data/sources.h"
#include "data/sources_mount.h"

namespace thole::mounting {
namespace {

constexpr double kGammaM2_factor = 1.25;
constexpr double kBearing_factor = 2.5;         // EN 1993-1-8, k_1 with 1.5 holes to the side
constexpr double kLaminateBearing_MPa = 150.0;  // mat and roving, the least of what is quoted
constexpr double kLaminateShare_frac = 0.25;
constexpr double kMetalShare_frac = 0.4;
constexpr double kGlassBacking_factor = 2.0 / 3.0;  // of the bolt, published pull tests
constexpr double kMetalBacking_factor = 1.0 / 3.0;
constexpr double kCreep_frac = 0.15;  // of paint or film under a bolt; project decision
constexpr double kTightShare_frac = 0.3;  // of a load that a tight bolt feels; common practice
constexpr double kThreadSafety_factor = 1.15;  // EN 1993-1-9, recalled

double deck_bearing_MPa(DeckKind kind) {
  if (kind != DeckKind::aluminium) return kLaminateShare_frac * kLaminateBearing_MPa;
  const Alloy* alloy = find_alloy("5083-O");
  return alloy != nullptr ? kMetalShare_frac * alloy->yield_MPa * 2.0 : 0.0;
}

}  // namespace

void add_bearing(const MountInput& in, const Layout& layout, const BoltLoads& loads,
                 const Alloy* alloy, double plate_mm, BoltCase& bolt) {
  const BoltSize& size = *bolt.size;
  if (alloy != nullptr && plate_mm > 0.0) {
    const double edge_mm = layout.edge_mm;
    const double sunk_mm = in.countersunk ? 0.5 * size.countersunk_head_mm : 0.0;
    const double counted_mm = std::max(plate_mm - sunk_mm, 0.0);
    const double limit_N = kBearing_factor * std::clamp(edge_mm / (3.0 * size.hole_mm), 0.0, 1.0) *
                           alloy->tensile_MPa * size.diameter_mm * counted_mm / kGammaM2_factor;
    tell([&] {
      bolt.trace.steps.push_back(
          {.id = "mount.bearing_plate",
           .label = "Bearing that the plate stands at one bolt",
           .symbol = "F_b",
           .formula = "2.5 * max(min(e / (3 * d_0), 1), 0) * sigma_u * d * max(t - h / 2, 0) / 1.25",
           .terms = {{"e", edge_mm, "mm", "bolt to the plate's nearest edge"},
                     {"d_0", size.hole_mm, "mm", "hole"},
                     {"sigma_u", alloy->tensile_MPa, "MPa", "strength of the plate"},
                     {"d", size.diameter_mm, "mm", "bolt"},
                     {"t", plate_mm, "mm", "plate"},
                     {"h", 2.0 * sunk_mm, "mm", "countersink, of which half counts"}},
           .value = limit_N,
           .unit = "N",
           .source = kEn1993Bearing});
    });
    bolt.trace.checks.push_back({.id = "mount.bearing_plate",
                                 .label = "Bolts bearing on the plate",
                                 .actual = kBoltLoad_factor * loads.shear_N,
                                 .limit = limit_N,
                                 .unit = "N",
                                 .source = kEn1993Bearing,
                                 .remedy = "Take a thicker plate, larger bolts, or set them farther from its edge.",
                                 .changes = bolt_changes(in)});
  }
  const double pressure_MPa = loads.shear_N / (size.diameter_mm * in.deck_thickness_mm);
  tell([&] {
    bolt.trace.steps.push_back({.id = "mount.bearing_deck",
                                .label = "Bolt bearing on the deck's skin",
                                .symbol = "p",
                                .formula = "V_T / (d * t)",
                                .terms = {{"V_T", loads.shear_N, "N", "shear in the worst bolt"},
                                          {"d", size.diameter_mm, "mm", "bolt"},
                                          {"t", in.deck_thickness_mm, "mm", "outer skin, or the single skin"}},
                                .value = pressure_MPa,
                                .unit = "MPa",
                                .source = kLaminateBearing,
                                .assumptions = {"Friction of the clamped plate is not counted on."}});
  });
  bolt.trace.checks.push_back({.id = "mount.bearing_deck",
                               .label = "Bolts bearing on the deck's skin",
                               .actual = pressure_MPa,
                               .limit = deck_bearing_MPa(in.deck),
                               .unit = "MPa",
                               .source = kLaminateBearing,
                               .remedy = "Take larger bolts or add a row, or bond a doubler to the deck.",
                               .changes = bolt_changes(in)});
}

void add_backing_thickness(const MountInput& in, const BoltSize& size, Trace& trace) {
  const bool metal = in.deck == DeckKind::aluminium;
  const double needed_mm = (metal ? kMetalBacking_factor : kGlassBacking_factor) * size.diameter_mm;
  trace.checks.push_back({.id = "mount.backing_thickness",
                          .label = "Backing plates thick enough",
                          .actual = in.backing_thickness_mm,
                          .limit = needed_mm,
                          .unit = "mm",
                          .comparison = Comparison::at_least,
                          .source = kBackingTests,
                          .remedy =
                              "Take backing of two thirds of the bolt in glass, a third in aluminium: thin "
                              "washers dish into cones.",
                          .changes = {set_field("mount.backing_thickness_mm", std::ceil(needed_mm),
                                                "Thicker backing plates")}});
}

void add_overdrill(const MountInput& in, const BoltSize& size, Trace& trace) {
  if (!is_cored(in.deck)) return;
  tell([&] {
    trace.steps.push_back(
        {.id = "mount.overdrill",
         .label = "Clear the core to this diameter round each bolt",
         .symbol = "D",
         .formula = "max(2.5 * d, d + 12)",
         .terms = {{"d", size.diameter_mm, "mm", "bolt"}},
         .value = plug_diameter_mm(size.diameter_mm),
         .unit = "mm",
         .source = kCommonPractice,
         .assumptions = {"From above, the lower skin left whole; filled with thickened epoxy and drilled again "
                         "through its middle. A crush tube of the core's height does the same."}});
  });
}

double add_finish(const MountInput& in, const BoltSize& size, double plate_mm, double preload_N,
                  double thrust_tension_N, Trace& trace) {
  if (!(in.finish_mm > 0.0) || in.finish == Finish::anodised) return preload_N;  // an oxide does not creep
  const double grip_mm = bolt_grip_mm(in, plate_mm);
  const double stiffness = kBoltModulus_MPa * stress_area_mm2(size) / grip_mm;
  const double left_N = std::max(preload_N - kCreep_frac * 2.0 * in.finish_mm * stiffness, 0.0);
  tell([&] {
    trace.steps.push_back(
        {.id = "mount.clamp_left",
         .label = "Clamp left when the finish under the heads has crept",
         .symbol = "P_1",
         .formula = "max(P - c * 2 * t_f * E * A_s / L, 0)",
         .terms = {{"P", preload_N, "N", "clamp force as tightened"},
                   {"c", kCreep_frac, "", "share of its thickness that paint or film gives"},
                   {"t_f", in.finish_mm, "mm", "finish, on each face of the plate"},
                   {"E", kBoltModulus_MPa, "MPa", "modulus of stainless steel"},
                   {"A_s", stress_area_mm2(size), "mm2", "area that carries the tension"},
                   {"L", grip_mm, "mm", "grip"}},
         .value = left_N,
         .unit = "N",
         .source = kFinishCreep,
         .assumptions = {"The deck is taken as stiff: a soft core loses less."}});
  });
  trace.checks.push_back({.id = "mount.clamp_left",
                          .label = "Clamp left under the finish, against thrust",
                          .actual = left_N,
                          .limit = thrust_tension_N,
                          .unit = "N",
                          .comparison = Comparison::at_least,
                          .source = kFinishCreep,
                          .remedy =
                              "Mask the plate bare under heads and washers, or tighten again after two days and after "
                              "a month; seal the bare rings.",
                          .changes = {set_field("mount.finish_mm", 0.0, "Leave it bare under the bolts")}});
  return left_N;
}

void add_galvanic(const MountInput& in, const Alloy* alloy, const BoltGrade& grade, Trace& trace) {
  const MetalPotential* aluminium = find_metal(kAluminium);
  const MetalPotential* bolt = metal_of(grade);
  if (aluminium == nullptr || bolt == nullptr || alloy == nullptr) return;
  const bool stainless_plate = is_stainless(*alloy);
  if (stainless_plate && in.deck != DeckKind::aluminium) return;  // one kind of metal only
  const double gap_V = potential_gap_V(*bolt, *aluminium);
  tell([&] {
    trace.steps.push_back({.id = "mount.galvanic",
                           .label = "Potential between bolts and aluminium, at most",
                           .symbol = "E",
                           .formula = "abs(E_1 - E_2)",
                           .terms = {{"E_1", bolt->noble_V, "V", "bolts, in flowing sea water"},
                                     {"E_2", aluminium->base_V, "V", "aluminium, likewise"}},
                           .value = gap_V,
                           .unit = "V",
                           .source = kGalvanicTable});
  });
  trace.checks.push_back({.id = "mount.isolation",
                          .label = "Unlike metals touching",
                          .actual = in.isolated ? 0.0 : gap_V,
                          .limit = kGapSpray_V,
                          .unit = "V",
                          .source = kGalvanicLimit,
                          .remedy =
                              "Keep stainless off the aluminium: a sleeve in the hole, a plastic washer under the steel "
                              "one, a gasket under the plate, paste on the thread.",
                          .changes = {set_field("mount.isolated", 1.0, "Isolate the bolts")}});
  if (stainless_plate) {
    trace.cautions.push_back(
        {.id = "mount.area_ratio",
         .text = "A stainless plate on an aluminium deck is the bad way round: a large noble face eats a small "
                 "base one. Take an aluminium plate, or isolate all of it.",
         .source = kGalvanicTable});
  }
}

void add_bolt_fatigue(const BoltCase& bolt, double slam_tension_N, double preload_N, double dynamic_frac,
                      Trace& trace) {
  const FatigueDetail detail = bolt_thread();
  const bool tight = preload_N >= slam_tension_N;
  const double felt = tight ? kTightShare_frac : 1.0;
  const double area_mm2 = stress_area_mm2(*bolt.size);
  const double factor = same_harm_factor(detail.slope_exponent);
  const double highest = highest_one_in_factor(100.0);
  const double range = felt * dynamic_frac * slam_tension_N / area_mm2 / highest * factor;
  const double limit = range_MPa(detail, slams_in_life()) / kThreadSafety_factor;
  tell([&] {
    trace.steps.push_back(
        {.id = "mount.fatigue_bolt",
         .label = "Steady range in a front bolt's thread that harms as much as the slams",
         .symbol = "s_b",
         .formula = "q * u * N_S / A_s / k * g",
         .terms = {{"q", felt, "", tight ? "share that a tight bolt feels" : "a bolt not clamped feels it all"},
                   {"u", dynamic_frac, "", "share of the slam beyond its weight"},
                   {"N_S", slam_tension_N, "N", "in a front bolt in a slam"},
                   {"A_s", area_mm2, "mm2", "area that carries the tension"},
                   {"k", highest, "", "hundredth highest over the mean"},
                   {"g", factor, "", "(m!)^(1/m), exponential peaks"}},
         .value = range,
         .unit = "MPa",
         .source = kFatigueBolt});
  });
  trace.checks.push_back({.id = "mount.fatigue_bolt",
                          .label = "Bolts, fatigue in slams",
                          .actual = range,
                          .limit = limit,
                          .unit = "MPa",
                          .source = kFatigueBolt,
                          .remedy =
                              "Rest the stowed motor on a chock, take larger bolts, or make the deck bear a tighter bolt: a tight "
                              "one hardly feels the slams.",
                          .changes = {}});
}

void add_bolt_swings(const BoltCase& bolt, double thrust_tension_N, double preload_N, Trace& trace) {
  const FatigueDetail detail = bolt_thread();
  const double felt = preload_N >= thrust_tension_N ? kTightShare_frac : kPrying_factor;
  const double area_mm2 = stress_area_mm2(*bolt.size);
  const double factor = swing_factor(detail.slope_exponent, 1.0);
  const double range = felt * thrust_tension_N / area_mm2 * factor;
  tell([&] {
    trace.steps.push_back({.id = "mount.fatigue_bolt_thrust",
                           .label = "Steady range in the thread that harms as much as the thrust's swings",
                           .symbol = "s_t",
                           .formula = "q * N_T / A_s * g_T",
                           .terms = {{"q", felt, "", "share that the bolt feels; loose, with prying"},
                                     {"N_T", thrust_tension_N, "N", "in the worst bolt at full thrust"},
                                     {"A_s", area_mm2, "mm2", "area that carries the tension"},
                                     {"g_T", factor, "", "((g / k)^m + 1 / 360)^(1/m), as in the plate"}},
                           .value = range,
                           .unit = "MPa",
                           .source = kFatigueBolt});
  });
  trace.checks.push_back({.id = "mount.fatigue_bolt_thrust",
                          .label = "Bolts, fatigue by thrust",
                          .actual = range,
                          .limit = range_MPa(detail, swings_in_life()) / kThreadSafety_factor,
                          .unit = "MPa",
                          .source = kFatigueBolt,
                          .remedy = "Take larger bolts, or make the deck bear a tighter bolt.",
                          .changes = {}});
}

}  // namespace thole::mounting
