#include "calc/load_cases_study.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

#include "calc/mount/plate_rules.h"
#include "calc/shaft/tube.h"
#include "calc/told_plate.h"
#include "data/bolts.h"
#include "data/sources_float.h"

namespace thole {
namespace {

double stem_m(const Design& design) {
  const Given<double>& outer_mm = design.job.shaft.tube_outer_mm;
  return outer_mm.known() && outer_mm.value > 0.0 ? 0.001 * outer_mm.value : kUnknownStem_m;
}

struct DeployedDrag {
  double force_N = 0.0;
  double lever_m = 0.0;  // below the plate, where the whole of it acts
};

// Of waves and current together, on the shaft and, at its end, the pod.
DeployedDrag add_deployed_drag(const Design& design, double immersed_m, Trace& trace) {
  const double current_mps = design.job.water.current_mps.value;
  const double wave_m = design.job.water.wave_height_m.value;
  const double period_s = std::max(design.job.water.wave_period_s.value, kShortestWave_s);
  const StemPush push = stem_push(stem_m(design), immersed_m, wave_m, period_s, current_mps);
  const double pod_mps = current_mps + push.crest_mps * std::exp(-push.wave_number_rad_per_m * immersed_m);
  const double pod_N = 0.5 * kStemWater_kg_per_m3 * kPodDrag_factor * kPodFrontal_m2 * pod_mps * pod_mps;
  const double force_N = push.peak_N() + pod_N;
  const double height_m = design.job.boat.bow_height_m.value;
  const double lever_m = force_N > 0.0 ? height_m + (push.moment_Nm() + pod_N * immersed_m) / force_N : height_m;
  tell([&] {
    const Term density{"rho", kStemWater_kg_per_m3, "kg_per_m3", "density of sea water"};
    const Term stem{"d", stem_m(design), "m", "tube diameter"};
    const Term current{"U", current_mps, "mps", "current"};
    const Term crest{"a", push.crest_mps, "mps", "the wave's own speed at the surface, pi H / T"};
    const Term depth{"z", immersed_m, "m", "tube under water"};
    const Term reach{"z_1", push.crest_reach_m, "m", "(1 - exp(-k z)) / k"};
    trace.steps.push_back({.id = "loads.crest_drag",
                           .label = "Drag of current and wave together on the tube, in a crest",
                           .symbol = "F_d",
                           .formula = "rho / 2 * Cd * d * (U^2 * z + 2 * U * a * z_1 + a^2 * z_2)",
                           .terms = {density,
                                     {"Cd", kStemDrag_factor, "", "drag coefficient of a round tube"},
                                     stem,
                                     current,
                                     depth,
                                     crest,
                                     reach,
                                     {"z_2", push.square_reach_m, "m", "(1 - exp(-2 k z)) / (2 k)"}},
                           .value = push.drag_N,
                           .unit = "N",
                           .source = kStemDrag});
    trace.steps.push_back({.id = "loads.water_inertia",
                           .label = "What the water's inertia adds at its most, a quarter of a period from it",
                           .symbol = "F_i",
                           .formula = "rho * Cm * pi / 4 * d^2 * a * (2 * pi / T) * z_1",
                           .terms = {density,
                                     {"Cm", kStemInertia_factor, "", "inertia coefficient of a round tube"},
                                     {"pi", std::numbers::pi, "", "circle constant"},
                                     stem,
                                     crest,
                                     {"T", period_s, "s", "peak period"},
                                     reach},
                           .value = push.inertia_N,
                           .unit = "N",
                           .source = kStemDrag});
    trace.steps.push_back({.id = "loads.deployed_drag",
                           .label = "Waves and current on shaft and pod, motor down",
                           .symbol = "F",
                           .formula = push.inertia_N > 0.0 ? "F_d + F_i^2 / max(2 * F_c, F_i) + rho / 2 * Cp * A * (U + a * exp(-k * z))^2"
                                                           : "F_d + rho / 2 * Cp * A * (U + a * exp(-k * z))^2",
                           .terms = {{"F_d", push.drag_N, "N", "drag on the tube in a crest"},
                                     {"F_i", push.inertia_N, "N", "the water's inertia at its most"},
                                     {"F_c", push.fall_N, "N", "how the drag falls off beside the crest, rho Cd d (U a z_1 + a^2 z_2)"},
                                     density,
                                     {"Cp", kPodDrag_factor, "", "drag coefficient of the pod (our own judgement)"},
                                     {"A", kPodFrontal_m2, "m2", "pod from ahead (our own judgement)"},
                                     current,
                                     crest,
                                     {"k", push.wave_number_rad_per_m, "rad_per_m", "wave number"},
                                     depth},
                           .value = force_N,
                           .unit = "N",
                           .source = kStemDrag,
                           .assumptions = {"Waves run along the current, which is their worst way; speeds are added before they are squared."}});
    trace.steps.push_back({.id = "loads.deployed_lever",
                           .label = "How far below the plate waves and current push",
                           .symbol = "l",
                           .formula = force_N > 0.0 ? "h + (M_s + F_p * z) / F" : "h",
                           .terms = {{"h", height_m, "m", "plate above the water"}},
                           .value = lever_m,
                           .unit = "m",
                           .source = kStemDrag});
    if (!(force_N > 0.0)) return;
    std::vector<Term>& terms = trace.steps.back().terms;
    terms.push_back({"M_s", push.moment_Nm(), "Nm", "moment on the tube about the surface, summed over the depth as its force"});
    terms.push_back({"F_p", pod_N, "N", "on the pod"});
    terms.push_back(depth);
    terms.push_back({"F", force_N, "N", "on both"});
  });
  return {force_N, lever_m};
}

void add_shaft(const Design& design, LoadCasesInput& in) {
  const Shaft& shaft = design.job.shaft;
  const double outer_mm = shaft.tube_outer_mm.known() ? shaft.tube_outer_mm.value : 0.0;
  in.immersed_m = std::max(design.shaft.propeller_depth_m, 0.0);
  in.stem_drag_N_s2_per_m2 = drag_per_speed_squared(stem_m(design), in.immersed_m);
  in.deployed_limit_mps = design.shaft.speed_limit_deployed_mps;
  const bool known = outer_mm > 0.0 && shaft.tube_wall_mm.known() && shaft.tube_yield_MPa.known() &&
                     shaft.tube_modulus_GPa.known();
  in.shaft_arm_m = std::max(design.job.boat.bow_height_m.value + design.shaft.propeller_depth_m, 0.0);
  if (!known || !(in.shaft_arm_m > 0.0)) return;
  const TubeSection section = tube_section(outer_mm, shaft.tube_wall_mm.value);
  in.shaft_N_per_m = bend(section, shaft.tube_modulus_GPa.value, in.shaft_arm_m, 1.0).stiffness_N_per_m;
  in.shaft_plastic_Nm = tube_last_moment_Nm(section, shaft.tube_yield_MPa.value, is_composite(shaft.tube_modulus_GPa.value));
}

LoadCasesInput load_cases_input(const Design& design, Trace& trace) {
  const MountInput mount = mount_input(design);
  LoadCasesInput in{.thrust_N = mount.thrust_N,
                    .thrust_lever_m = mount.thrust_lever_m,
                    .motor_mass_kg = mount.motor_mass_kg,
                    .chocked = mount.chocked,
                    .pattern = pattern_of(mount),
                    .reach_mm = mount.overhang_mm,
                    .plate_end_mm = mount.plate_length_mm - pattern_of(mount).fore_mm,
                    .overhang_m2 = area_ahead_m2(design.job.mount, (pattern_of(mount).fore_mm + design.mount.deck_ahead_mm) / 1000.0),
                    .deck_ahead_mm = design.mount.deck_ahead_mm,
                    .plate_height_m = design.job.boat.bow_height_m.value,
                    .relative_sigma_m = design.shaft.relative_sigma_m,
                    .wave_period_s = design.job.water.wave_period_s.value,
                    .water_kg_per_m3 = kStemWater_kg_per_m3,
                    .slam_N = design.mount.slam_N,
                    .bow_g = design.mount.bow_acceleration_factor,
                    .motor_g = design.mount.motor_acceleration_factor,
                    .amplification_factor = design.mount.amplification_factor,
                    .hull = {.waterline_length_m = mount.waterline_length_m,
                             .chine_beam_m = mount.chine_beam_m,
                             .deadrise_deg = mount.deadrise_deg,
                             .displacement_kg = mount.displacement_kg,
                             .speed_mps = mount.run_speed_mps},
                    .run_wave_m = mount.run_wave_m,
                    .motor_x_m = mount.motor_x_m,
                    .centre_x_m = mount.centre_x_m,
                    .design_cg_g = design.mount.cg_acceleration_factor,
                    .trailered = design.job.mount.trailered.value,
                    .current_mps = design.job.water.current_mps.value};
  add_shaft(design, in);
  const DeployedDrag drag = add_deployed_drag(design, in.immersed_m, trace);
  in.deployed_drag_N = drag.force_N;
  in.deployed_lever_m = drag.lever_m;
  return in;
}

}  // namespace

LoadsStudy load_cases_study(const Design& design) {
  LoadsStudy study{.stowed_limit_mps = design.mount.speed_limit_mps,
                   .stowed_wave_m = design.job.mount.run_wave_m.value,
                   .deployed_limit_mps = design.shaft.speed_limit_deployed_mps};
  study.known = design.hold.motor_found && design.job.mount.bolt_rows.value >= 2;
  if (!study.known) return study;
  Trace drag;
  study.input = load_cases_input(design, drag);
  study.loads = load_cases(study.input);
  for (Step& step : drag.steps) study.loads.trace.steps.push_back(std::move(step));
  study.bolt_breaking_N = design.mount.bolt_breaking_N;
  return study;
}

double bolt_share(LoadGrade grade) {
  switch (grade) {
    case LoadGrade::working:
      return kThrustBolt_frac;
    case LoadGrade::extreme:
      return kSlamBolt_frac;
    case LoadGrade::ultimate:
      return kUltimateBolt_frac;
  }
  return kThrustBolt_frac;
}

const LoadCase* worst_case(const LoadCases& loads, LoadGrade grade) {
  const LoadCase* worst = nullptr;
  for (const LoadCase& at : loads.cases) {
    if (at.grade != grade || !at.in_range) continue;
    if (worst == nullptr || at.moment_Nm > worst->moment_Nm * (1.0 + 1e-9)) worst = &at;
  }
  return worst;
}

}  // namespace thole
