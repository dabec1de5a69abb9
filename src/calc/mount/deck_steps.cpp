#include "calc/mount/mount_parts.h"

#include <numbers>

#include "base/units.h"
#include "calc/mount/deck.h"
#include "calc/mount/plate_rules.h"
#include "data/sources.h"
#include "data/sources_mount.h"

namespace thole::mounting {
namespace {

constexpr double kPreload_frac = 0.65;   // of yield; common practice
constexpr double kNutFactor_factor = 0.15;  // wet with bedding compound
constexpr double kBackingDiameters_factor = 5.0;
constexpr double kGasket_mm = 1.0;  // common practice: sealant or gasket left under the plate
constexpr double kWasherThickness_mm = 2.0;
constexpr double kBackingLimit_mm = 300.0;  // of the field

// Backing that a check asks for: bigger, and thick enough to spread so far.
std::vector<Change> backing_changes(const MountInput& in, double room_mm, double side_needed_mm, double washer_mm) {
  const double side_mm = round_up(side_needed_mm, 5.0);
  const double thickness_mm = round_up(std::max(0.25 * (side_mm - washer_mm), 0.0), 1.0);
  std::vector<Change> changes;
  if (side_mm > std::min(kBackingLimit_mm, room_mm)) return changes;
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
  double room_mm = 0.0;  // to the next bolt's
  double side_mm = 0.0;
  double area_mm2 = 0.0;
  double bearing_mm2 = 0.0;  // of it, as what bears counts: with a plug, both as if all were plug
  double plug_mm2 = 0.0;     // less the hole; 0: no plug
  double core_ratio = 1.0;   // stiffness of the core over that of the plug

  // The area that bears so much of what counts.
  double area_for_mm2(double counted_mm2) const { return plug_mm2 + std::max(counted_mm2 - plug_mm2, 0.0) / core_ratio; }
};

// What bears under the backings: the deck, or where its core is plugged the filling, which core and skins
// follow.
DeckStrength bearing_strength(const MountInput& in) {
  DeckStrength strength = deck_strength(in.deck);
  if (!has_plugs(in)) return strength;
  // Both give alike: the core must not be pressed beyond its own share.
  const double core_MPa = deck_core(in.deck).modulus_MPa;
  const double core_limits_MPa = strength.crushing_factor * strength.crushing_MPa * kPlugModulus_MPa / core_MPa;
  strength.crushing_factor = std::min(kPlugCrushing_factor, core_limits_MPa / kPlugCrushing_MPa);
  strength.crushing_MPa = kPlugCrushing_MPa;
  strength.crushing_source = kPluggedCore;
  return strength;
}

void add_plug(const MountInput& in, const BoltSize& size, Backing& backing, Trace& trace) {
  backing.bearing_mm2 = backing.area_mm2;
  if (!has_plugs(in)) return;
  const double across_mm = plug_diameter_mm(size.diameter_mm);
  const double core_MPa = deck_core(in.deck).modulus_MPa;
  backing.core_ratio = core_MPa / kPlugModulus_MPa;
  backing.plug_mm2 = std::clamp(std::numbers::pi / 4.0 * (across_mm * across_mm - size.hole_mm * size.hole_mm), 0.0, backing.area_mm2);
  backing.bearing_mm2 = backing.plug_mm2 + (backing.area_mm2 - backing.plug_mm2) * backing.core_ratio;
  tell([&] {
    trace.steps.push_back({.id = "mount.plug_area",
                           .label = "Plug and core under one backing, as if all were plug",
                           .symbol = "A_p",
                           .formula = "A_1 + (A_e - A_1) * E_c / E_p",
                           .terms = {{"A_1", backing.plug_mm2, "mm2", "plug, less the hole"},
                                     {"A_e", backing.area_mm2, "mm2", "area under one bolt that carries"},
                                     {"E_c", core_MPa, "MPa", "modulus of the core, through its thickness"},
                                     {"E_p", kPlugModulus_MPa, "MPa", "modulus of the filling"}},
                           .value = backing.bearing_mm2,
                           .unit = "mm2",
                           .source = kPluggedCore,
                           .assumptions = {"Skins hold plug and core to the same squeeze; the core keeps within its own share."}});
  });
}

Backing add_backing_area(const MountInput& in, double room_mm, const BoltSize& size, Trace& trace) {
  Backing backing{.room_mm = room_mm};
  backing.side_mm = effective_backing_side_mm({.side_mm = in.backing_side_mm,
                                               .thickness_mm = in.backing_thickness_mm,
                                               .washer_mm = size.washer_mm,
                                               .room_mm = room_mm});
  backing.area_mm2 = backing_area_mm2(backing.side_mm, size.hole_mm);
  tell([&] {
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
  });
  return backing;
}

double add_area_required(const MountInput& in, const BoltSize& size, const DeckStrength& strength,
                         double tension_N, const Backing& backing, Trace& trace) {
  const double allowed_MPa = strength.crushing_factor * strength.crushing_MPa;
  const double diameter_mm = kBackingDiameters_factor * size.diameter_mm;
  const double carries_mm2 = backing.area_for_mm2(tension_N / allowed_MPa);
  const double required_mm2 = std::max(carries_mm2, std::numbers::pi / 4.0 * diameter_mm * diameter_mm);
  tell([&] {
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
             !is_cored(in.deck) ? "No core under the plate."
             : has_plugs(in)    ? "Plug and core carry together."
                                : "The core carries: no plug is counted on."}});
    if (!has_plugs(in)) return;
    trace.steps.back().formula = "max(A_1 + max(N / (q * sigma_c) - A_1, 0) / r, pi / 4 * (5 * d)^2)";
    trace.steps.back().terms.push_back({"A_1", backing.plug_mm2, "mm2", "plug, less the hole"});
    trace.steps.back().terms.push_back({"r", backing.core_ratio, "", "stiffness of the core over that of the plug"});
  });
  const double side_mm =
      std::sqrt(required_mm2 + std::numbers::pi / 4.0 * size.hole_mm * size.hole_mm);
  trace.checks.push_back(
      {.id = "mount.backing",
       .label = "Backing under each bolt",
       .actual = backing.area_mm2,
       .limit = required_mm2,
       .unit = "mm2",
       .comparison = Comparison::at_least,
       .source = carries_mm2 >= required_mm2 ? strength.crushing_source : SourceRef(kBackingTests),
       .remedy = is_cored(in.deck)
                     ? "Fit larger, thicker backing plates, or replace the core under the whole "
                       "pattern with solid laminate and describe the deck as that."
                     : "Fit larger, thicker backing plates.",
       .changes = backing_changes(in, backing.room_mm, side_mm, size.washer_mm)});
  return required_mm2;
}

void add_pull_through(const MountInput& in, const BoltSize& size, const DeckStrength& strength,
                      double tension_N, const Backing& backing, Trace& trace) {
  const double allowed_N =
      strength.punching_factor *
      punching_N(4.0 * backing.side_mm, in.deck_thickness_mm, strength.punching_MPa);
  tell([&] {
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
  });
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
         std::vector<Change> changes = backing_changes(in, backing.room_mm, side_mm, size.washer_mm);
         if (!in.chocked) {
           changes.push_back(set_field("mount.chocked", 1.0, "Chock the motor's outer end"));
         }
         return changes;
       }()});
}

// The clamp force to tighten to, as bolt and deck both allow it.
double add_preload(const MountInput& in, const BoltCase& bolt, const DeckStrength& strength,
                   double thrust_tension_N, const Backing& backing, Trace& trace) {
  const double clamp_N = strength.crushing_factor * strength.crushing_MPa * backing.bearing_mm2;
  tell([&] {
    trace.steps.push_back(
        {.id = "mount.core",
         .label = "Clamp that the deck allows each bolt",
         .symbol = "C",
         .formula = "q * sigma_c * A_e",
         .terms = {{"sigma_c", strength.crushing_MPa, "MPa", "crushing strength of the deck"},
                   {"q", strength.crushing_factor, "", "share of it that may be used"},
                   {"A_e", backing.bearing_mm2, "mm2", "area under one bolt that carries"}},
         .value = clamp_N,
         .unit = "N",
         .source = strength.crushing_source});
    if (has_plugs(in)) {
      trace.steps.back().formula = "q * sigma_c * A_p";
      trace.steps.back().terms.back() = {"A_p", backing.bearing_mm2, "mm2", "plug and core, as if all were plug"};
    }
  });
  const double side_mm =
      std::sqrt(backing.area_for_mm2(thrust_tension_N / (strength.crushing_factor * strength.crushing_MPa)) +
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
       .changes = [&] {
         std::vector<Change> changes = backing_changes(in, backing.room_mm, side_mm, bolt.size->washer_mm);
         if (has_core(in) && !in.core_plugged && deck_core(in.deck).modulus_MPa < kPlugModulus_MPa)
           changes.push_back(set_field("mount.core_plugged", 1.0, "Plug the core round the bolts"));
         return changes;
       }()});
  const double bolt_yield_N = yield_N(*bolt.size, *bolt.grade);
  const double preload_N = std::min(kPreload_frac * bolt_yield_N, clamp_N);
  tell([&] {
    trace.steps.push_back({.id = "mount.preload",
                           .label = "Clamp force of each bolt",
                           .symbol = "P",
                           .formula = "min(0.65 * F_y, C)",
                           .terms = {{"F_y", bolt_yield_N, "N", "yield force of the thread"},
                                     {"C", clamp_N, "N", "clamp that the deck allows"}},
                           .value = preload_N,
                           .unit = "N",
                           .source = bolt.grade->source});
  });
  return preload_N;
}

double add_torque(const BoltSize& size, double preload_N, Trace& trace) {
  const double torque = torque_Nm(kNutFactor_factor, size.diameter_mm, preload_N);
  tell([&] {
    trace.steps.push_back({.id = "mount.torque",
                           .label = "Torque on each nut",
                           .symbol = "T_b",
                           .formula = "K * d / 1000 * P",
                           .terms = {{"K", kNutFactor_factor, "", "nut factor, wet with bedding compound"},
                                     {"d", size.diameter_mm, "mm", "bolt"},
                                     {"P", preload_N, "N", "clamp force"}},
                           .value = torque,
                           .unit = "Nm",
                           .source = kNutFactor,
                           .assumptions = {"A torque wrench scatters by a quarter to a third."}});
  });
  return torque;
}

double add_bolt_length(const MountInput& in, double plate_mm, const BoltSize& size, Trace& trace) {
  const double skins_count = is_cored(in.deck) ? 2.0 : 1.0;
  const double length_mm = plate_mm + kGasket_mm + skins_count * in.deck_thickness_mm +
                           in.core_thickness_mm + in.backing_thickness_mm +
                           2.0 * kWasherThickness_mm + size.diameter_mm +
                           2.0 * size.thread_pitch_mm;
  tell([&] {
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
  });
  return length_mm;
}

}  // namespace

bool is_cored(DeckKind kind) {
  return kind == DeckKind::cored_balsa || kind == DeckKind::cored_foam;
}

// Fills the part of `out` that bolts and deck decide.
void take_bolts(const MountInput& in, const Layout& layout, const BoltLoads& loads,
                MountResult& out) {
  const Alloy* alloy = find_alloy(out.plate.alloy);
  const std::optional<BoltCase> bolt = choose_bolt(in, layout, loads, alloy, out.plate_thickness_mm);
  if (!bolt) {
    add_none_check("mount.bolt", "Bolts to choose from",
                   "Offer bolts of a size and grade that Thole knows.",
                   {clear_field("mount.bolt", "Let Thole choose the bolts")}, out.trace);
    return;
  }
  append(bolt->trace, out.trace);
  add_bolt_reach(in, layout, out.plate_thickness_mm, out.trace);
  out.bolt_found = serves(bolt->trace);
  out.bolt = bolt->offer;
  out.bolt_breaking_N = bolt->breaking_N;
  out.bolt_length_mm = add_bolt_length(in, out.plate_thickness_mm, *bolt->size, out.trace);

  const DeckStrength strength = bearing_strength(in);
  Backing backing = add_backing_area(in, layout.pattern.room_mm, *bolt->size, out.trace);
  add_plug(in, *bolt->size, backing, out.trace);
  out.backing_side_mm = backing.side_mm;
  if (has_plugs(in)) out.plug_area_mm2 = backing.bearing_mm2;
  out.pull_limit_N = std::min(strength.crushing_factor * strength.crushing_MPa * backing.bearing_mm2,
                              strength.punching_factor *
                                  punching_N(4.0 * backing.side_mm, in.deck_thickness_mm, strength.punching_MPa));
  out.backing_area_mm2 =
      add_area_required(in, *bolt->size, strength, loads.tension_N(), backing, out.trace);
  add_pull_through(in, *bolt->size, strength, loads.tension_N(), backing, out.trace);
  out.preload_N = add_preload(in, *bolt, strength, loads.thrust_tension_N, backing, out.trace);
  out.bolt_torque_Nm = add_torque(*bolt->size, out.preload_N, out.trace);
  out.clamp_left_N = add_finish(in, *bolt->size, out.plate_thickness_mm, out.preload_N,
                                loads.thrust_tension_N, out.trace);
  add_backing_thickness(in, *bolt->size, out.trace);
  add_overdrill(in, *bolt->size, out.trace);
  add_galvanic(in, alloy, *bolt->grade, out.trace);
  const double weight_N = in.motor_mass_kg * kGravity_mps2;
  const double dynamic_frac = out.slam_N > 0.0 ? std::max(1.0 - weight_N / out.slam_N, 0.0) : 0.0;
  add_bolt_fatigue(*bolt, loads.slam_tension_N, out.clamp_left_N, dynamic_frac, out.trace);
  add_bolt_swings(*bolt, loads.thrust_tension_N, out.clamp_left_N, out.trace);
}

}  // namespace thole::mounting
