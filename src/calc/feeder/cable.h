#pragma once

// A cable under load: how warm, how resistive, how many volts it costs by each method in use.

#include "data/conductors.h"

namespace thole {

inline constexpr double kTableAmbient_C = 30.0;             // kCfrTable5
inline constexpr double kEngineSpace_C = 50.0;             // kCfrEngineSpace
inline constexpr double kHottest_C = 250.0;                 // beyond it a cable is destroyed
inline constexpr double kE11Drop_factor = 10.75;            // kE11Drop: ohm circular mil / ft
inline constexpr double kIsoDrop_factor = 0.0164;           // kIsoDrop: ohm mm2 / m

struct CableLoad {
  double current_A = 0.0;
  double ampacity_A = 0.0;  // at 30 C, single or bundled; > 0
  double insulation_C = 105.0;
  double ambient_C = 30.0;
};

// Share of the rise that goes with the resistance at 20 C:
//   q = (T_ins - 30) (I/Iz)^2 / (1 + a (T_ins - 20))
double heating_K(const CableLoad& load);

// Steady temperature of the conductor, from heat in proportion to resistance and rise in proportion
// to heat, anchored on the ampacity table:
//   T = T_air + q (1 + a (T - 20)), solved for T; at most 250 C
// Source: kCableHeating. Conservative for loads shorter than about two minutes.
double conductor_temperature_C(const CableLoad& load);

// Temperature read back from resistance: 20 + (R/R20 - 1)/a.
double temperature_from_resistance_C(double resistance_ratio);

// ABYC E-11: circular mils needed, and volts lost; `loop_m` is out and back.
double e11_circular_mils(double current_A, double loop_m, double drop_V);
double e11_drop_V(double current_A, double loop_m, double circular_mils);

// The smallest AWG size with the area that E-11 asks for, null when 4/0 is too thin. Published E-11
// answers rest on the SAE areas.
enum class AreaBasis { sae, awg };
const Conductor* e11_size(double current_A, double loop_m, double drop_V, AreaBasis basis);

// ISO 10133: optimistic by 9 % against E-11 and about 20 % against a warm tinned cable.
double iso_drop_V(double current_A, double loop_m, double area_mm2);

}  // namespace thole
