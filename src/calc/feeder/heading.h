#pragma once

// What the motor's cable does to a heading sensor or compass. Field of long straight wires
// (Biot-Savart); microtesla, amperes, metres. Worst case: the field lies level and square to
// magnetic north, so the error is atan(B / B_h).

#include <cmath>

#include "base/units.h"

namespace thole {

inline constexpr double kWireField_factor = 0.2;  // kBiotSavart: mu0 / 2 pi in uT m / A

// A wire whose return runs elsewhere. Precondition: distances > 0, here and below.
inline double wire_field_uT(double current_A, double distance_m) {
  return kWireField_factor * current_A / distance_m;
}

// Out and back `spacing_m` apart, exact, at distances r1 and r2 from the two wires.
inline double pair_field_uT(double current_A, double spacing_m, double r1_m, double r2_m) {
  return kWireField_factor * current_A * spacing_m / (r1_m * r2_m);
}

inline double heading_error_deg(double field_uT, double horizontal_uT) {
  return deg_from_rad(std::atan(field_uT / horizontal_uT));
}

// Distance from a pair at which the heading errs by `error_deg`.
inline double clear_distance_m(double current_A, double spacing_m, double horizontal_uT,
                               double error_deg) {
  return std::sqrt(kWireField_factor * current_A * spacing_m /
                   (horizontal_uT * std::tan(rad_from_deg(error_deg))));
}

// The disturbing field that a compass-safe-distance rule of so many degrees over H stands for: the
// same at every place.
inline double compass_limit_uT(double limit_deg_uT) { return rad_from_deg(limit_deg_uT); }

}  // namespace thole
