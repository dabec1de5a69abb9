#include "calc/charge/venting.h"

#include <cmath>

namespace thole {

Gassing gassing_of(Chemistry chemistry) {
  switch (chemistry) {
    case Chemistry::flooded:
      return {.float_A_per_Ah = 0.005, .boost_A_per_Ah = 0.020, .traction_A_per_Ah = 0.020};
    case Chemistry::agm:
    case Chemistry::gel:
      return {.float_A_per_Ah = 0.001, .boost_A_per_Ah = 0.008, .traction_A_per_Ah = 0.010};
    case Chemistry::lifepo4:
      break;
  }
  return {};
}

double ventilation_m3_per_h(int cell_count, double gassing_A) {
  return 0.05 * cell_count * gassing_A;
}

double vent_area_cm2(double flow_m3_per_h) { return 28.0 * flow_m3_per_h; }

double spark_clearance_mm(double gassing_A, int cells_per_outlet) {
  return 28.8 * std::cbrt(1000.0 * gassing_A * cells_per_outlet);
}

double hydrogen_L_per_Ah(double temperature_C) {
  // Half a mole per faraday (26.801 Ah); 22.414 L a mole at 0 C.
  return 22.414 / (2.0 * 26.801) * (temperature_C + 273.15) / 273.15;
}

double minutes_to_limit_min(double volume_m3, int cell_count, double charge_A,
                            double temperature_C) {
  constexpr double kLimit_frac = 0.04;  // lower limit of ignition in air, IEC/EN 62485-2
  const double flow_L_per_h = cell_count * charge_A * hydrogen_L_per_Ah(temperature_C);
  return flow_L_per_h > 0.0 ? kLimit_frac * volume_m3 * 1000.0 / flow_L_per_h * 60.0 : 0.0;
}

ChargerClass charger_class(double power_W) {
  if (power_W < 200.0) return ChargerClass::small;
  return power_W <= 2000.0 ? ChargerClass::moderate : ChargerClass::large;
}

std::string_view word(ChargerClass charger) {
  switch (charger) {
    case ChargerClass::small:
      return "small";
    case ChargerClass::moderate:
      return "moderate";
    case ChargerClass::large:
      return "large";
  }
  return "large";
}

}  // namespace thole
