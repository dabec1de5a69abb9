#include "calc/mount/load_cases.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <utility>

#include "base/number.h"
#include "base/units.h"
#include "calc/mount/plate.h"
#include "calc/mount/plate_rules.h"
#include "data/sources.h"
#include "data/sources_mount.h"

namespace thole {
namespace {

constexpr int kThrustStep_deg = 15;
constexpr double kDrag_factor = 1.5;     // project decision, as the next two
constexpr double kRebound_frac = 0.5;    // of the acceleration at the bow
constexpr double kSnagSpeed_mps = 0.5;   // drifting or steering

constexpr double kDiveWaves_count = 1000.0;
constexpr double kPlateSlam_factor = 2.0 * std::numbers::pi;  // DNV-RP-C205, recalled
constexpr double kLeastDeck_Pa = 5000.0;                      // ISO 12215-5:2008 equation 16

constexpr double kRunningTrim_deg = 4.0;  // Savitsky and Brown with it gives the standards' constants
constexpr double kHundredth_count = 100.0;
constexpr double kRestricted_factor = 3.0;  // V / sqrt(L) of DNV B201, at most; of B204, at least
constexpr double kDnvBow_ratio = 2.0;       // kv at the fore perpendicular, recalled
constexpr std::array kSeas_m{0.2, 0.3, 0.5, 0.75, 1.0, 1.5};
constexpr double kKilogramPerLongTon = 1016.0469088;

bool within(double value, double low, double high) { return value >= low && value <= high; }

std::string between(std::string_view what, double value, double low, double high, int decimals) {
  return std::string(what) + " is " + fixed(value, decimals) + ", meant for " + trimmed(fixed(low, decimals)) + " to " +
         trimmed(fixed(high, decimals)) + ".";
}

class Bounds {
 public:
  void keep(std::string_view what, double value, double low, double high, int decimals = 1) {
    if (!within(value, low, high)) outside_.push_back(between(what, value, low, high, decimals));
  }
  std::vector<std::string> take() { return std::move(outside_); }

 private:
  std::vector<std::string> outside_{};
};

double at_motor_g(const LoadCasesInput& in, double cg_g, double bow_g) {
  return acceleration_at_g(cg_g, bow_g, in.motor_x_m, in.centre_x_m, in.hull.waterline_length_m);
}

// --- formulas -------------------------------------------------------------------------------------

SlamFormula by_iso(const LoadCasesInput& in) {
  const PlaningHull& hull = in.hull;
  const double speed_kn = kn_from_mps(hull.speed_mps);
  SlamFormula row{.label = "ISO 12215-5, planing craft",
                  .cg_g = cg_acceleration(hull).used_g,
                  .range = "planing craft of 2.5 to 24 m, V/sqrt(L) from 5 (knots, m), to 50 kn, deadrise 10 to 30 degrees",
                  .source = kIso12215Acceleration};
  row.bow_g = row.cg_g * std::clamp(bow_ratio(hull.waterline_length_m, hull.chine_beam_m, design_speed_kn(hull)), 1.5, 2.0);
  Bounds bounds;
  bounds.keep("Waterline length in m", hull.waterline_length_m, 2.5, 24.0);
  bounds.keep("V/sqrt(L)", speed_kn / std::sqrt(hull.waterline_length_m), 5.0, 50.0);
  bounds.keep("Speed in knots", speed_kn, 2.36 * std::sqrt(hull.waterline_length_m), 50.0);
  bounds.keep("Deadrise", hull.deadrise_deg, 10.0, 30.0, 0);
  row.outside = bounds.take();
  return row;
}

SlamFormula by_savitsky(const LoadCasesInput& in) {
  const PlaningHull& hull = in.hull;
  const double speed_kn = std::max(kn_from_mps(hull.speed_mps), 0.1);
  const Impact average = average_impact({.length_m = hull.waterline_length_m,
                                         .beam_m = hull.chine_beam_m,
                                         .deadrise_deg = effective_deadrise_deg(hull),
                                         .trim_deg = kRunningTrim_deg,
                                         .weight_N = hull.displacement_kg * kGravity_mps2,
                                         .wave_m = in.run_wave_m,
                                         .speed_kn = speed_kn});
  const double highest = highest_one_in_factor(kHundredth_count);
  const double length_ft = ft_from_m(hull.waterline_length_m);
  const double slenderness = hull.displacement_kg / kKilogramPerLongTon / std::pow(0.01 * length_ft, 3);
  SlamFormula row{.label = "Savitsky and Brown, in the sea she is run in",
                  .cg_g = highest * average.cg_g,
                  .bow_g = highest * average.bow_g,
                  .range = "weight in long tons over (L/100 ft)^3 100 to 250, L/b 3 to 5, deadrise 10 to 30, H/b 0.2 to 0.7, "
                           "V/sqrt(L) 2 to 6 (knots, ft); recalled",
                  .source = kSavitskyBrown1976};
  Bounds bounds;
  bounds.keep("Weight over length cubed", slenderness, 100.0, 250.0, 0);
  bounds.keep("L/b", hull.waterline_length_m / hull.chine_beam_m, 3.0, 5.0, 2);
  bounds.keep("Deadrise", hull.deadrise_deg, 10.0, 30.0, 0);
  bounds.keep("H/b", in.run_wave_m / hull.chine_beam_m, 0.2, 0.7, 2);
  bounds.keep("V/sqrt(L)", speed_kn / std::sqrt(length_ft), 2.0, 6.0, 2);
  row.outside = bounds.take();
  return row;
}

SlamFormula by_dnv_rule(const LoadCasesInput& in) {
  const double length_m = in.hull.waterline_length_m;
  const double ratio = kn_from_mps(in.hull.speed_mps) / std::sqrt(length_m);
  SlamFormula row{.label = "DNV light craft, rule value",
                  .cg_g = std::max(std::min(ratio, kRestricted_factor) * 3.2 / std::pow(length_m, 0.76), 1.0),
                  .range = "craft of 24 m and more with V/sqrt(L) (knots, m) taken as 3 at most; twice as much at the bow (recalled)",
                  .source = kDnvHslcMinimum};
  row.bow_g = kDnvBow_ratio * row.cg_g;
  Bounds bounds;
  bounds.keep("Length in m", length_m, 24.0, 100.0);
  row.outside = bounds.take();
  return row;
}

SlamFormula by_dnv_sea(const LoadCasesInput& in) {
  const PlaningHull& hull = in.hull;
  SlamFormula row{.label = "DNV light craft, speed and sea",
                  .cg_g = acceleration_in_sea_g(hull, in.run_wave_m),
                  .range = "V/sqrt(L) from 3 (knots, m), deadrise 10 to 30 degrees; a straight course into that sea",
                  .source = kDnvHslcSpeed};
  row.bow_g = row.cg_g * std::clamp(bow_ratio(hull.waterline_length_m, hull.chine_beam_m, design_speed_kn(hull)), 1.5, 2.0);
  Bounds bounds;
  bounds.keep("V/sqrt(L)", kn_from_mps(hull.speed_mps) / std::sqrt(hull.waterline_length_m), kRestricted_factor, 50.0, 2);
  bounds.keep("Deadrise", hull.deadrise_deg, 10.0, 30.0, 0);
  row.outside = bounds.take();
  return row;
}

// --- cases ----------------------------------------------------------------------------------------

struct Places {
  LoadPoint propeller{};
  LoadPoint half_shaft{};  // where drag acts
  LoadPoint stowed{};
  // Where pressed on its chock: the bolts' share of the force acts so far out that it makes their
  // share of the moment about the front row.
  LoadPoint pressed{};
  double pressed_frac = 1.0;
  LoadPoint plate_end{};
};

Places places_of(const LoadCasesInput& in) {
  const double front_mm = in.pattern.front_mm();
  const double beside_mm = -in.pattern.middle.y_mm;  // the plate's middle line, of the bolts' middle
  const double lead_mm = front_mm + in.reach_mm;
  const double lever_mm = 1000.0 * in.thrust_lever_m;
  const MomentShares shares = moment_shares(in.chocked);
  const double pressed_mm = front_mm + in.reach_mm * shares.moment_factor / shares.reaction_factor;
  return {.propeller = {.x_mm = lead_mm, .y_mm = beside_mm, .z_mm = -lever_mm},
          .half_shaft = {.x_mm = lead_mm, .y_mm = beside_mm, .z_mm = -(lever_mm - 500.0 * in.immersed_m)},
          .stowed = {.x_mm = lead_mm, .y_mm = beside_mm, .z_mm = kMotorHeight_mm},
          .pressed = {.x_mm = pressed_mm, .y_mm = beside_mm, .z_mm = kMotorHeight_mm},
          .pressed_frac = shares.reaction_factor,
          .plate_end = {.x_mm = front_mm + std::max(in.plate_end_mm - 0.5 * kPersonFoot_mm, 0.0), .y_mm = beside_mm}};
}

class Builder {
 public:
  Builder(const LoadCasesInput& in, LoadCases& out) : bolts_(in.pattern.bolts), out_(out) {}

  void add(LoadCase made) {
    made.at_bolts = moved_to_centroid(made.force, made.at);
    for (double* part : {&made.at_bolts.force_x_N, &made.at_bolts.force_y_N, &made.at_bolts.force_z_N,
                         &made.at_bolts.moment_x_Nm, &made.at_bolts.moment_y_Nm, &made.at_bolts.moment_z_Nm}) {
      *part *= made.load_factor;
    }
    made.moment_Nm = std::hypot(made.at_bolts.moment_x_Nm, made.at_bolts.moment_y_Nm);
    for (const BoltForce& force : elastic_forces(bolts_, made.at_bolts)) {
      made.bolt_N = std::max(made.bolt_N, force.tension_N);
    }
    out_.cases.push_back(std::move(made));
  }

 private:
  const std::vector<BoltPoint>& bolts_;
  LoadCases& out_;
};

void add_thrusts(const LoadCasesInput& in, const Places& places, Builder& builder) {
  for (int angle_deg = 0; angle_deg < 360; angle_deg += kThrustStep_deg) {
    const double angle_rad = rad_from_deg(angle_deg);
    std::string number = std::to_string(angle_deg);
    number.insert(0, 3 - number.size(), '0');
    builder.add({.id = "thrust." + number,
                 .label = "Full thrust, " + std::to_string(angle_deg) + "° from ahead",
                 .force = {.force_x_N = in.thrust_N * std::cos(angle_rad), .force_y_N = in.thrust_N * std::sin(angle_rad)},
                 .at = places.propeller,
                 .grade = LoadGrade::working,
                 .range = "static thrust, the motor turning any way; comes over and over",
                 .source = kDefinition});
  }
}

void add_slams(const LoadCasesInput& in, const Places& places, const SlamFormula& iso, Builder& builder) {
  const std::string outside = iso.outside.empty() ? std::string(iso.range) : "outside: " + iso.outside.front();
  builder.add({.id = "slam",
               .label = "Motor stowed, in a slam",
               .force = {.force_z_N = -places.pressed_frac * in.slam_N},
               .at = places.pressed,
               .in_range = iso.outside.empty(),
               .range = outside,
               .source = kIso12215Acceleration});
  const double weight_N = in.motor_mass_kg * kGravity_mps2;
  builder.add({.id = "rebound",
               .label = "Stowed, thrown up after it",
               .force = {.force_z_N = weight_N * rebound_factor(in.motor_g, in.amplification_factor)},
               .at = places.stowed,
               .in_range = iso.outside.empty(),
               .range = "half of its acceleration upward, less its weight; " + outside,
               .source = kProjectDecision});
}

void add_deployed(const LoadCasesInput& in, const Places& places, Builder& builder) {
  const double drag_N = kDrag_factor * in.deployed_drag_N;
  // Both forces as one, between where either acts.
  const double both_N = in.thrust_N + drag_N;
  LoadPoint between = places.propeller;
  if (both_N > 0.0) between.z_mm = -1000.0 * (in.thrust_N * in.thrust_lever_m + drag_N * in.deployed_lever_m) / both_N;
  builder.add({.id = "deployed",
               .label = "Thrust with current and waves",
               .force = {.force_x_N = -both_N},
               .at = between,
               .grade = LoadGrade::working,
               .range = "drag times 1.5; smooth tube below Reynolds 2e5, thinner than a tenth of "
                        "the wave's length",
               .source = kMountDrag});
  const auto forgotten = [&](std::string id, std::string label, double speed_mps, bool allowed) {
    builder.add({.id = std::move(id),
                 .label = std::move(label),
                 .force = {.force_x_N = -in.stem_drag_N_s2_per_m2 * speed_mps * speed_mps},
                 .at = places.half_shaft,
                 .load_factor = kDrag_factor,
                 .in_range = allowed,
                 .range = allowed ? "drag of an upright tube; at this speed it equals full thrust"
                                  : "for show: the shaft ventilates and folds before; never run with it down",
                 .source = kMountDrag});
  };
  forgotten("down.limit", "Left down, at its limit: " + fixed(kn_from_mps(in.deployed_limit_mps), 1) + " kn",
            in.deployed_limit_mps, true);
  forgotten("down.run", "Left down at full run, " + fixed(kn_from_mps(in.hull.speed_mps), 0) + " kn", in.hull.speed_mps, false);
}

void add_snag(const LoadCasesInput& in, const Places& places, Builder& builder) {
  LoadCase snag{.id = "snag",
                .label = "Shaft caught on something fast",
                .at = places.propeller,
                .load_factor = kSnagOver_factor,
                .grade = LoadGrade::ultimate,
                .source = kSnag};
  if (!(in.shaft_plastic_Nm > 0.0) || !(in.shaft_N_per_m > 0.0) || !(in.shaft_arm_m > 0.0)) {
    snag.in_range = false;
    snag.range = "not worked out: the shaft's tube is not known";
    builder.add(std::move(snag));
    return;
  }
  const double speed_mps = std::max(kSnagSpeed_mps, in.current_mps);
  const double stop_N = speed_mps * std::sqrt(in.hull.displacement_kg * in.shaft_N_per_m);
  const double fold_N = in.shaft_plastic_Nm / in.shaft_arm_m;
  snag.force.force_x_N = -std::min(stop_N, fold_N);
  snag.range = stop_N < fold_N ? "the boat stopped by the springing shaft, from " + fixed(speed_mps, 1) + " m/s"
                               : "the shaft folds first, which is what it should do; the deck must outlast it";
  builder.add(snag);
  // Set sideways by wind or stream she comes upon it with her beam.
  snag.id = "snag.side";
  snag.label = "Shaft caught from the side";
  std::swap(snag.force.force_x_N, snag.force.force_y_N);
  builder.add(std::move(snag));
}

void add_people(const Places& places, Builder& builder) {
  builder.add({.id = "person.step",
               .label = "A person steps on its fore end",
               .force = {.force_z_N = -kPerson_N},
               .at = places.plate_end,
               .range = "1500 N on 100 by 100 mm",
               .source = kPersonOnPlate});
  builder.add({.id = "person.pull",
               .label = "A person hangs on the motor",
               .force = {.force_y_N = kHandhold_N},
               .at = places.stowed,
               .range = "1000 N level, as a handhold",
               .source = kPersonPulls});
}

void add_road(const LoadCasesInput& in, const Places& places, Builder& builder) {
  if (!in.trailered) return;
  const double weight_N = in.motor_mass_kg * kGravity_mps2;
  const auto road = [&](std::string id, std::string label, GroupLoad force, const LoadPoint& at) {
    builder.add({.id = std::move(id), .label = std::move(label), .force = force, .at = at, .range = "potholes and braking; no crash", .source = kRoadLoads});
  };
  road("road.down", "On the trailer, a pothole", {.force_z_N = -places.pressed_frac * weight_N * (1.0 + kRoadDown_g)}, places.pressed);
  road("road.along", "On the trailer, braking", {.force_x_N = weight_N * kRoadAlong_g, .force_z_N = -weight_N}, places.stowed);
  road("road.across", "On the trailer, a bend", {.force_y_N = weight_N * kRoadAcross_g, .force_z_N = -weight_N}, places.stowed);
}

void add_seas(const LoadCasesInput& in, LoadCases& out) {
  const double least_mps = mps_from_kn(kRestricted_factor * std::sqrt(in.hull.waterline_length_m));
  std::vector<double> waves_m(kSeas_m.begin(), kSeas_m.end());
  if (in.run_wave_m > 0.0 && std::find(waves_m.begin(), waves_m.end(), in.run_wave_m) == waves_m.end()) {
    waves_m.push_back(in.run_wave_m);
    std::sort(waves_m.begin(), waves_m.end());
  }
  const double ratio = in.design_cg_g > 0.0 ? in.bow_g / in.design_cg_g : 1.5;
  for (const double wave_m : waves_m) {
    const double cg_g = acceleration_in_sea_g(in.hull, wave_m);
    const double motor_g = at_motor_g(in, cg_g, ratio * cg_g);
    const double speed_mps = speed_in_sea_mps(in.hull, wave_m, in.design_cg_g);
    out.seas.push_back({.wave_m = wave_m,
                        .speed_mps = speed_mps,
                        .slam_N = in.motor_mass_kg * kGravity_mps2 * (1.0 + motor_g * std::max(in.amplification_factor, 1.0)),
                        .in_range = speed_mps >= least_mps});
  }
}

double dive_peak_factor() { return std::sqrt(2.0 * std::log(kDiveWaves_count)); }

// The sea comes up under what overhangs.
void add_dive(const LoadCasesInput& in, Builder& builder, Trace& trace) {
  const double overhang_mm = in.plate_end_mm - in.deck_ahead_mm;
  if (!(overhang_mm > 1.0) || !(in.overhang_m2 > 0.0) || !(in.wave_period_s > 0.0)) return;
  const Dive sea = dive(in.relative_sigma_m, in.plate_height_m, in.wave_period_s, in.water_kg_per_m3);
  tell([&] {
    trace.steps.push_back({.id = "loads.dive_speed",
                           .label = "How fast the water comes up against the bow",
                           .symbol = "v_r",
                           .formula = "2 * pi / T * c * s",
                           .terms = {{"pi", std::numbers::pi, "", "circle constant"},
                                     {"T", in.wave_period_s, "s", "peak period"},
                                     {"c", dive_peak_factor(), "", "worst of a thousand waves, sqrt(2 ln 1000)"},
                                     {"s", in.relative_sigma_m, "m", "standard deviation of the water against the bow"}},
                           .value = sea.speed_mps,
                           .unit = "mps",
                           .source = kFlatPlateSlam});
    trace.steps.push_back({.id = "loads.dive",
                           .label = "Pressure on the underside of the plate",
                           .symbol = "p",
                           .formula = sea.reaches ? "max(rho / 2 * 2 * pi * v_r^2 / 10^6, p_0)" : "p_0",
                           .terms = {{"p_0", kLeastDeck_Pa / 1e6, "MPa", "a deck's least pressure"}},
                           .value = sea.pressure_Pa / 1e6,
                           .unit = "MPa",
                           .source = kFlatPlateSlam,
                           .assumptions = {sea.reaches ? "One wave in a thousand comes up to the plate."
                                                       : "Not one wave in a thousand comes up to the plate."}});
    if (!sea.reaches) return;
    trace.steps.back().terms.push_back({"rho", in.water_kg_per_m3, "kg_per_m3", "sea water"});
    trace.steps.back().terms.push_back({"pi", std::numbers::pi, "", "circle constant"});
    trace.steps.back().terms.push_back({"v_r", sea.speed_mps, "mps", "how fast it comes"});
  });
  builder.add({.id = "dive",
               .label = "The sea under the plate's overhang",
               .force = {.force_z_N = sea.pressure_Pa * in.overhang_m2},
               .at = {.x_mm = in.pattern.front_mm() + in.deck_ahead_mm + 0.5 * overhang_mm, .y_mm = -in.pattern.middle.y_mm},
               .range = sea.reaches ? "flat plate, no way on, one wave in a thousand" : "the bow stays dry in that sea: a deck's least pressure",
               .source = kFlatPlateSlam});
}

}  // namespace

std::string_view word(LoadGrade grade) {
  switch (grade) {
    case LoadGrade::working:
      return "working";
    case LoadGrade::extreme:
      return "extreme";
    case LoadGrade::ultimate:
      return "ultimate";
  }
  return "extreme";
}

double rebound_factor(double motor_g, double amplification_factor) {
  return std::max(kRebound_frac * motor_g * std::max(amplification_factor, 1.0) - 1.0, 0.0);
}

Dive dive(double relative_sigma_m, double plate_height_m, double period_s, double water_kg_per_m3) {
  Dive sea{.rise_m = dive_peak_factor() * relative_sigma_m};
  sea.speed_mps = 2.0 * std::numbers::pi / period_s * sea.rise_m;
  sea.reaches = sea.rise_m > plate_height_m;
  sea.pressure_Pa = kLeastDeck_Pa;
  if (sea.reaches)
    sea.pressure_Pa = std::max(0.5 * water_kg_per_m3 * kPlateSlam_factor * sea.speed_mps * sea.speed_mps, kLeastDeck_Pa);
  return sea;
}

double acceleration_at_g(double cg_g, double bow_g, double x_m, double centre_x_m, double bow_x_m) {
  return cg_g + (bow_g - cg_g) * (x_m - centre_x_m) / (bow_x_m - centre_x_m);
}

LoadCases load_cases(const LoadCasesInput& in) {
  LoadCases out;
  for (SlamFormula row : {by_iso(in), by_savitsky(in), by_dnv_sea(in), by_dnv_rule(in)}) {
    row.motor_g = at_motor_g(in, row.cg_g, row.bow_g);
    out.formulas.push_back(std::move(row));
  }
  const Places places = places_of(in);
  Builder builder(in, out);
  add_thrusts(in, places, builder);
  add_slams(in, places, out.formulas.front(), builder);
  add_deployed(in, places, builder);
  add_snag(in, places, builder);
  add_dive(in, builder, out.trace);
  add_people(places, builder);
  add_road(in, places, builder);
  add_seas(in, out);
  return out;
}

}  // namespace thole
