#pragma once

// Hydrogen from lead-acid cells on charge: the air that thins it, the openings that let the air
// through, how near a spark may be, how long a closed locker lasts.

#include <string_view>

#include "data/parts.h"

namespace thole {

// Gassing current by IEC/EN 62485-2, safety factors included, per Ah of capacity.
struct Gassing {
  double float_A_per_Ah = 0.0;
  double boost_A_per_Ah = 0.0;
  double traction_A_per_Ah = 0.0;  // part 3, charger limited to 2.4 V a cell
};
Gassing gassing_of(Chemistry chemistry);  // all zero for lithium

// Air that keeps hydrogen under 4 % with a fivefold margin: Q = 0.05 n I_gas C, with I_gas in A per
// Ah and C the ten-hour capacity. IEC/EN 62485-2; the factor is 24 x 0.42 L x 5 rounded. With the
// whole charger current instead of I_gas C it is the flow for a charger that has failed high.
double ventilation_m3_per_h(int cell_count, double gassing_A);

// Each of a low inlet and a high outlet, by natural draught of 0.1 m/s: A = 28 Q.
double vent_area_cm2(double flow_m3_per_h);

// No spark, and no surface over 300 C, nearer to a vent than this: d = 28.8 (I_gas C)^(1/3), I_gas
// in mA per Ah; of several cells with one outlet N^(1/3) of it (from memory).
double spark_clearance_mm(double gassing_A, int cells_per_outlet);

// Hydrogen of one cell per Ah of overcharge, by Faraday's law; 0.418 L at 0 C.
double hydrogen_L_per_Ah(double temperature_C);

// Minutes until a closed space holds 4 % of hydrogen when `charge_A` goes through `cell_count` full
// cells.
double minutes_to_limit_min(double volume_m3, int cell_count, double charge_A,
                            double temperature_C);

// 46 CFR 111.15-3: by highest charging current times rated battery voltage.
enum class ChargerClass { small, moderate, large };
ChargerClass charger_class(double power_W);
std::string_view word(ChargerClass charger);  // "small", "moderate", "large"

}  // namespace thole
