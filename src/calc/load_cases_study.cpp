#include "calc/load_cases_study.h"

#include <algorithm>

#include "calc/mount/plate_rules.h"
#include "calc/shaft/tube.h"
#include "data/bolts.h"

namespace thole {
namespace {

constexpr double kUnknownStem_m = 0.038;  // as the shaft stage takes it

void add_shaft(const Design& design, LoadCasesInput& in) {
  const Shaft& shaft = design.job.shaft;
  const double outer_mm = shaft.tube_outer_mm.known() ? shaft.tube_outer_mm.value : 0.0;
  in.immersed_m = std::max(design.shaft.propeller_depth_m, 0.0);
  in.stem_drag_N_s2_per_m2 =
      drag_per_speed_squared(outer_mm > 0.0 ? 0.001 * outer_mm : kUnknownStem_m, in.immersed_m);
  in.wave_drag_N = design.shaft.wave_drag_N;
  in.deployed_limit_mps = design.shaft.speed_limit_deployed_mps;
  const bool known = outer_mm > 0.0 && shaft.tube_wall_mm.known() && shaft.tube_yield_MPa.known() &&
                     shaft.tube_modulus_GPa.known();
  in.shaft_arm_m = std::max(design.job.boat.bow_height_m.value + design.shaft.propeller_depth_m, 0.0);
  if (!known || !(in.shaft_arm_m > 0.0)) return;
  const TubeSection section = tube_section(outer_mm, shaft.tube_wall_mm.value);
  in.shaft_N_per_m = bend(section, shaft.tube_modulus_GPa.value, in.shaft_arm_m, 1.0).stiffness_N_per_m;
  in.shaft_plastic_Nm = section.plastic_modulus_mm3 * shaft.tube_yield_MPa.value / 1000.0;
}

}  // namespace

LoadCasesInput load_cases_input(const Design& design) {
  const MountInput mount = mount_input(design);
  LoadCasesInput in{.thrust_N = mount.thrust_N,
                    .thrust_lever_m = mount.thrust_lever_m,
                    .motor_mass_kg = mount.motor_mass_kg,
                    .chocked = mount.chocked,
                    .bolt_rows = mount.bolt_rows,
                    .bolt_pitch_mm = mount.bolt_pitch_mm,
                    .bolt_gauge_mm = mount.bolt_gauge_mm,
                    .reach_mm = mount.overhang_mm,
                    .plate_end_mm = mount.plate_length_mm - aft_margin_mm(mount.plate_length_mm) -
                                    mount.bolt_pitch_mm * (mount.bolt_rows - 1),
                    .slam_N = design.mount.slam_N,
                    .bow_g = design.mount.bow_acceleration_factor,
                    .amplification_factor = design.mount.amplification_factor,
                    .hull = {.waterline_length_m = mount.waterline_length_m,
                             .chine_beam_m = mount.chine_beam_m,
                             .deadrise_deg = mount.deadrise_deg,
                             .displacement_kg = mount.displacement_kg,
                             .speed_mps = mount.run_speed_mps},
                    .run_wave_m = mount.run_wave_m,
                    .motor_x_m = design.job.trim.motor_x_m.value,
                    .centre_x_m = design.trim.flotation_x_m,
                    .design_cg_g = design.mount.cg_acceleration_factor,
                    .trailered = design.job.mount.trailered.value,
                    .current_mps = design.job.water.current_mps.value};
  add_shaft(design, in);
  return in;
}

LoadsStudy load_cases_study(const Design& design) {
  LoadsStudy study{.stowed_limit_mps = design.mount.speed_limit_mps,
                   .stowed_wave_m = design.job.mount.run_wave_m.value,
                   .deployed_limit_mps = design.shaft.speed_limit_deployed_mps};
  study.known = design.hold.motor_found && design.job.mount.bolt_rows.value >= 2;
  if (!study.known) return study;
  study.input = load_cases_input(design);
  study.loads = load_cases(study.input);
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
