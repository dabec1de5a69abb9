#include "calc/length_study.h"

#include <algorithm>
#include <cmath>

#include "base/number.h"
#include "base/units.h"
#include "calc/shaft/immersion.h"
#include "calc/shaft/tube.h"

namespace thole {
namespace {

constexpr int kPoints = 80;
constexpr int kBendPoints = 12;
constexpr double kBeyond_m = 0.2;     // of what is sold or needed, on either side
constexpr double kLeastArm_m = 0.05;  // as the shaft stage has it
constexpr double kStep_m = 0.15;      // customary step of lengths sold; common practice

bool tube_known(const MotorClass& motor) {
  return motor.tube_outer_mm > 0.0 && motor.tube_wall_mm > 0.0 && motor.tube_modulus_GPa > 0.0;
}

double arm_m(const Design& design, double length_m) {
  return std::max(length_m - design.job.shaft.collar_m.value, kLeastArm_m);
}

LengthPoint point_at(const Design& design, double length_m) {
  const MotorClass& motor = design.hold.motor;
  const Shaft& shaft = design.job.shaft;
  const double radius_m = 0.5 * motor.propeller_diameter_m;
  const double light_m = length_m - shaft.collar_m.value - design.job.boat.bow_height_m.value - shaft.trim_allowance_m.value;
  LengthPoint point{.length_m = length_m,
                    .kept_frac = mean_immersion_factor(light_m, radius_m, design.shaft.relative_sigma_m),
                    .ventilating_frac = emergence_frac(light_m, kVentilates_ratio * motor.propeller_diameter_m,
                                                       design.shaft.relative_sigma_m),
                    .tip_frac = emergence_frac(light_m, radius_m, design.shaft.relative_sigma_m)};
  if (tube_known(motor)) {
    const Cantilever beam = bend(tube_section(motor.tube_outer_mm, motor.tube_wall_mm), motor.tube_modulus_GPa,
                                 arm_m(design, length_m), motor.thrust_N);
    point.stress_MPa = beam.stress_MPa;
    point.deflection_mm = beam.deflection_mm;
    point.slope_deg = deg_from_rad(beam.slope_rad);
  }
  return point;
}

void add_bend(const Design& design, LengthStudy& study) {
  const MotorClass& motor = design.hold.motor;
  if (!tube_known(motor)) return;
  if (const Check* check = design.find_check("shaft.tube")) study.limit_MPa = check->limit;
  const double arm = arm_m(design, study.chosen.length_m);
  for (int i = 0; i <= kBendPoints; ++i) {
    study.bend.push_back(bend_at(motor.tube_outer_mm, motor.tube_wall_mm, motor.tube_modulus_GPa, arm, motor.thrust_N,
                                 arm * i / kBendPoints));
  }
}

void add_advice(const Design& design, LengthStudy& study) {
  const double over_m = study.chosen.length_m - study.needed_m;
  if (over_m < 0.0) {
    study.advice.push_back("The chosen shaft is " + fixed(-1000.0 * over_m, 0) + " mm too short: nothing is to be cut, take a longer one.");
    return;
  }
  study.advice.push_back("The chosen shaft is " + fixed(1000.0 * over_m, 0) +
                         " mm longer than needed. Leave it so: the rest keeps the propeller under when the bow is light or the sea is steeper.");
  if (tube_known(design.hold.motor) && study.chosen.stress_MPa > 0.0) {
    const LengthPoint longer = point_at(design, study.chosen.length_m + kStep_m);
    study.advice.push_back("150 mm more would raise the tube's stress by " +
                           fixed(100.0 * (longer.stress_MPa / study.chosen.stress_MPa - 1.0), 0) + " % and its bend by " +
                           fixed(100.0 * (longer.deflection_mm / study.chosen.deflection_mm - 1.0), 0) + " %.");
  }
  study.advice.push_back(
      "Cut to length only where the motor's maker says how: cables and the steering run inside, the tube is stressed most at its "
      "lower bearing, and the cut must be square, free of burrs and never below the length needed. Measure collar to axis afloat, "
      "loaded and light, mark twice, and keep what was cut off. It may end the guarantee.");
}

}  // namespace

BendPoint bend_at(double outer_mm, double wall_mm, double modulus_GPa, double arm_m, double thrust_N, double below_m) {
  const TubeSection section = tube_section(outer_mm, wall_mm);
  const double rigidity_Nm2 = 1e-3 * modulus_GPa * section.inertia_mm4;  // 1e9 Pa * 1e-12 m4
  const double x = below_m;
  const double moment_Nm = thrust_N * (arm_m - x);
  return {.below_m = x,
          .moment_Nm = moment_Nm,
          .stress_MPa = 1000.0 * moment_Nm / section.modulus_mm3,
          .deflection_mm = 1000.0 * thrust_N * x * x * (3.0 * arm_m - x) / (6.0 * rigidity_Nm2),
          .slope_deg = deg_from_rad(thrust_N * x * (2.0 * arm_m - x) / (2.0 * rigidity_Nm2))};
}

LengthStudy length_study(const Design& design) {
  LengthStudy study;
  const MotorClass& motor = design.hold.motor;
  if (!(design.shaft.length_m > 0.0 && motor.propeller_diameter_m > 0.0)) {
    study.problem = "There is no motor with a shaft in this catalogue.";
    return study;
  }
  study.needed_m = design.shaft.length_required_m;
  study.chosen = point_at(design, design.shaft.length_m);
  study.deepest_m = design.shaft.draft_deployed_m;
  std::vector<double> sold = motor.shaft_lengths_m;
  std::sort(sold.begin(), sold.end());
  for (const double length_m : sold) study.sold.push_back(point_at(design, length_m));
  double low_m = std::min(study.needed_m, study.chosen.length_m);
  double high_m = std::max(study.needed_m, study.chosen.length_m);
  if (!sold.empty()) {
    low_m = std::min(low_m, sold.front());
    high_m = std::max(high_m, sold.back());
  }
  low_m = std::max(low_m - kBeyond_m, kBeyond_m);
  high_m += kBeyond_m;
  for (int i = 0; i <= kPoints; ++i) study.curve.push_back(point_at(design, low_m + (high_m - low_m) * i / kPoints));
  add_bend(design, study);
  add_advice(design, study);
  return study;
}

}  // namespace thole
