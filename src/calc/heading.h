#pragma once

// What the motor's cable does to a heading sensor or compass: the error that a disturbing field
// makes, and the field of long straight wires (Biot-Savart; microtesla, amperes, metres).

#include <cmath>

#include "base/units.h"

namespace thole {

inline constexpr double kWireField_factor = 0.2;  // kBiotSavart: mu0 / 2 pi in uT m / A

// Level part of the earth's field where nobody says where: of the middle latitudes (27 uT in the
// tropics, 15 uT in the far north). Project decision.
inline constexpr double kMiddleLatitudes_T = 20e-6;

// A wire whose return runs elsewhere. Precondition: distances > 0, here and below.
inline double wire_field_uT(double current_A, double distance_m) {
  return kWireField_factor * current_A / distance_m;
}

// Out and back `spacing_m` apart, exact, at distances r1 and r2 from the two wires.
inline double pair_field_uT(double current_A, double spacing_m, double r1_m, double r2_m) {
  return kWireField_factor * current_A * spacing_m / (r1_m * r2_m);
}

// The largest error over all headings: asin(B / B_h), 180 where the disturbing field is the
// stronger, for then the shown heading need not turn at all. The design's checks use this one: a
// boat that holds comes to every heading. Both fields in the same unit, level parts. Source:
// kHeadingTriangle. Precondition: horizontal > 0, here and below.
inline double worst_error_deg(double field_T, double horizontal_T) {
  return field_T < horizontal_T ? deg_from_rad(std::asin(field_T / horizontal_T)) : 180.0;
}

// The error while the disturbing field lies square to magnetic north: atan(B / B_h), less than the
// worst; the same within 0.1 % up to 2 degrees.
inline double square_error_deg(double field_T, double horizontal_T) {
  return deg_from_rad(std::atan(field_T / horizontal_T));
}

// Distance from a long straight pair at which the heading errs by `error_deg` at the worst heading.
inline double clear_distance_m(double current_A, double spacing_m, double horizontal_uT,
                               double error_deg) {
  return std::sqrt(kWireField_factor * current_A * spacing_m /
                   (horizontal_uT * std::sin(rad_from_deg(error_deg))));
}

// The disturbing field that a compass-safe-distance rule of so many degrees over H stands for: the
// same at every place.
inline double compass_limit_uT(double limit_deg_uT) { return rad_from_deg(limit_deg_uT); }

}  // namespace thole
