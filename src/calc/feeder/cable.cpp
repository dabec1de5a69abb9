#include "calc/feeder/cable.h"

#include <algorithm>

#include "base/units.h"

namespace thole {

double heating_K(const CableLoad& load) {
  const double use = load.current_A / load.ampacity_A;
  return (load.insulation_C - kTableAmbient_C) * use * use /
         (1.0 + kCopperSlope_frac_per_K * (load.insulation_C - 20.0));
}

double conductor_temperature_C(const CableLoad& load) {
  const double q_K = heating_K(load);
  // Near zero the cable heats faster than it cools, and runs away.
  const double restoring = std::max(1.0 - kCopperSlope_frac_per_K * q_K, 0.01);
  return std::min(kHottest_C,
                  (load.ambient_C + q_K * (1.0 - 20.0 * kCopperSlope_frac_per_K)) / restoring);
}

double temperature_from_resistance_C(double resistance_ratio) {
  return 20.0 + (resistance_ratio - 1.0) / kCopperSlope_frac_per_K;
}

double e11_circular_mils(double current_A, double loop_m, double drop_V) {
  return kE11Drop_factor * current_A * ft_from_m(loop_m) / drop_V;
}

double e11_drop_V(double current_A, double loop_m, double circular_mils) {
  return kE11Drop_factor * current_A * ft_from_m(loop_m) / circular_mils;
}

const Conductor* e11_size(double current_A, double loop_m, double drop_V, AreaBasis basis) {
  const double needed = e11_circular_mils(current_A, loop_m, drop_V);
  for (const Conductor& conductor : conductors()) {
    if (conductor.metric) continue;
    const double mils =
        basis == AreaBasis::sae ? conductor.sae_mils_count : circular_mils(conductor.area_mm2);
    if (mils >= needed) return &conductor;
  }
  return nullptr;
}

double iso_drop_V(double current_A, double loop_m, double area_mm2) {
  return kIsoDrop_factor * current_A * loop_m / area_mm2;
}

}  // namespace thole
