#pragma once

// Open-water thrust and torque of the Wageningen B-series: what real propellers of given pitch and
// blade area do, against which a claim or a figure of merit can be held.
//
// K = sum of C J^s (P/D)^t (AE/A0)^u Z^v. Source: Oosterveld & van Oossanen 1975, Reynolds number
// 2e6. Range: 2 to 7 blades, area ratio 0.30 to 1.05, pitch ratio 0.5 to 1.4 (from memory). At the
// Reynolds numbers of bow motors, a third of that, real propellers lose some per cent more.

namespace thole {

struct Propeller {
  int blade_count = 3;
  double area_ratio = 0.5;   // AE/A0
  double pitch_ratio = 0.8;  // P/D
};

struct OpenWater {
  double thrust_factor = 0.0;  // K_T = T/(rho n^2 D^4)
  double torque_factor = 0.0;  // K_Q = Q/(rho n^2 D^5)
};
// advance_ratio: J = V/(n D), >= 0.
OpenWater open_water(const Propeller& propeller, double advance_ratio);

// Ideal over actual power at rest: K_T^1.5/(2 pi K_Q (pi/2)^(1/2)).
double bollard_merit_frac(const Propeller& propeller);

}  // namespace thole
