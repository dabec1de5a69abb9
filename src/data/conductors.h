#pragma once

// Copper conductors that boat cable is sold in: area, resistance, allowable current. AWG sizes by
// ASTM B258 (UL 1426 boat cable), their smaller SAE J1127 areas, and IEC 60228 class 5 metric
// sizes. Never map one family to the other by area: the metric area is nominal and only its
// resistance binds.

#include <span>
#include <string_view>

#include "base/trace.h"

namespace thole {

struct Conductor {
  std::string_view label{};  // "4 AWG", "1/0 AWG", "25 mm2"
  bool metric = false;
  double area_mm2 = 0.0;
  double sae_mils_count = 0.0;    // least area by SAE J1127, circular mils; 0: not in that table
  double bare_ohm_per_m = 0.0;    // one conductor, 20 C
  double tinned_ohm_per_m = 0.0;  // one conductor, 20 C
};

// AWG sizes first, thin to thick; then the metric ones.
std::span<const Conductor> conductors();

// Null when the label is not in the tables.
const Conductor* find_conductor(std::string_view label);

// 36 AWG is 0.005 in, 4/0 (gauge -3) is 0.460 in, 39 equal ratios apart.
double awg_diameter_mm(int gauge);

inline constexpr double kCopperSlope_frac_per_K = 0.00393;  // kCopperTemperature, at 20 C

inline constexpr double kPureCopper_ohm_mm2_per_m = 0.017241;  // kCopperLay: IEC 60028, 20 C

// Resistance at another temperature: R20 (1 + 0.00393 (T - 20)).
double resistance_at(double at_20_ohm, double temperature_C);

// Of stranded bare copper, 20 C, by its area: pure copper, 2 % longer by lay. Source: kCopperLay;
// for areas that the tables leave out.
double stranded_ohm_per_m(double area_mm2);

// Area in circular mils: the square of a diameter in thousandths of an inch.
double circular_mils(double area_mm2);

// What a conductor by itself may carry in 30 C air, from the column at or below its insulation's
// rating; 0 when the label or the rating is below the tables. AWG: 18 to 4/0, 60 to 200 C.
double ampacity_A(std::string_view label, double insulation_C);

// Of that, in an engine space (50 C air).
double engine_space_factor(double insulation_C);

// Of that, in other air; never above 1. Precondition: insulation_C > 30.
double ambient_factor(double insulation_C, double ambient_C);

// Of that, with so many loaded conductors in one bundle.
double bundling_factor(int bundled_count);

// Force that a crimped terminal must stand for a minute; 0 when the label is not in the tables.
double pull_test_N(std::string_view label);

const Source& pull_source(std::string_view label);
const Source& resistance_source(const Conductor& conductor);
const Source& ampacity_source(const Conductor& conductor);
const Source& engine_space_source(double insulation_C);

}  // namespace thole
