#include "calc/trim/hydrostatics.h"

#include <algorithm>
#include <cmath>

#include "base/units.h"

namespace thole {

WaterplaneShape transom_waterplane(double waterplane_ratio) {
  const double c = std::clamp(waterplane_ratio, 2.0 / 3.0, 1.0);
  const double p = 3.0 * c - 2.0;  // share of the length with full beam
  const double q = 1.0 - p;
  // Integrals of 1 - s^2 over the closing part: 2/3; with s, 1/4; with s^2, 2/15; of its cube,
  // 16/35.
  const double first = p * p / 2.0 + q * (p * 2.0 / 3.0 + q / 4.0);
  const double second =
      p * p * p / 3.0 + q * (p * p * 2.0 / 3.0 + p * q / 2.0 + q * q * 2.0 / 15.0);
  WaterplaneShape shape;
  shape.flotation_ratio = first / c;
  shape.longitudinal_inertia_ratio = second - first * first / c;
  shape.transverse_inertia_ratio = (p + q * 16.0 / 35.0) / 12.0;
  return shape;
}

Hydrostatics hydrostatics(double length_m, double beam_m, double waterplane_ratio,
                          double density_kg_per_m3) {
  const WaterplaneShape shape = transom_waterplane(waterplane_ratio);
  const double inertia_m4 =
      shape.longitudinal_inertia_ratio * beam_m * length_m * length_m * length_m;
  Hydrostatics water;
  water.area_m2 = waterplane_ratio * length_m * beam_m;
  water.flotation_x_m = shape.flotation_ratio * length_m;
  water.immersion_kg_per_cm = density_kg_per_m3 * water.area_m2 / 100.0;
  water.moment_kgm_per_cm = density_kg_per_m3 * inertia_m4 / (100.0 * length_m);
  return water;
}

Settling settle(double length_m, double flotation_x_m, double immersion_kg_per_cm,
                double moment_kgm_per_cm, double mass_kg, double moment_kgm) {
  Settling settling;
  settling.sinkage_m = mass_kg / immersion_kg_per_cm / 100.0;
  settling.trim_m = moment_kgm / moment_kgm_per_cm / 100.0;
  const double aft_ratio = flotation_x_m / length_m;
  settling.bow_sinkage_m = settling.sinkage_m + settling.trim_m * (1.0 - aft_ratio);
  settling.stern_sinkage_m = settling.sinkage_m - settling.trim_m * aft_ratio;
  return settling;
}

double heel_deg(double moment_kgm, double displacement_kg, double gm_m) {
  return deg_from_rad(std::atan(moment_kgm / (displacement_kg * gm_m)));
}

double gm_with_weights_m(double gm_m, double displacement_kg, double mass_kg, double height_kgm,
                         double sinkage_m) {
  return (displacement_kg * gm_m - height_kgm + 0.5 * mass_kg * sinkage_m) /
         (displacement_kg + mass_kg);
}

double inclining_gm_m(double mass_kg, double shift_m, double displacement_kg, double angle_deg) {
  return mass_kg * shift_m / (displacement_kg * std::tan(rad_from_deg(angle_deg)));
}

double roll_test_gm_m(double roll_factor, double beam_m, double period_s) {
  const double root = roll_factor * beam_m / period_s;
  return root * root;
}

}  // namespace thole
