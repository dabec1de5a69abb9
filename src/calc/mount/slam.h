#pragma once

// How hard the bow of a planing boat slams, and what a sprung mass on it makes of that.
// Accelerations are in g, above gravity.

namespace thole {

struct PlaningHull {
  double waterline_length_m = 0.0;  // > 0
  double chine_beam_m = 0.0;        // > 0
  double deadrise_deg = 0.0;        // taken as 10 .. 30
  double displacement_kg = 0.0;     // > 0
  double speed_mps = 0.0;           // >= 0
};

// Deadrise as the formulas take it: 10 .. 30.
double effective_deadrise_deg(const PlaningHull& hull);

// Speed for the design acceleration in knots: at least 2.36 sqrt(L_WL), at most 50.
double design_speed_kn(const PlaningHull& hull);

struct CgAcceleration {
  double first_g = 0.0;   // equation (1)
  double second_g = 0.0;  // equation (2)
  double used_g = 0.0;    // first up to 3; above, the smaller of both; at most 7
};

// Average of the 1/100 highest accelerations at the centre of gravity.
//
//   n1 = 0.32 (L/(10 B) + 0.084) (50 - beta) V^2 B^2 / m,   n2 = 0.5 V / m^0.17
//
// Source: ISO 12215-5:2008, 7.3, equations (1) and (2). Range: V by design_speed_kn().
CgAcceleration cg_acceleration(const PlaningHull& hull);

// How much more the bow gets than the centre of gravity: 1 + 3.8 (L/b - 2.25) / (V_kn /
// sqrt(L_ft)). Source: Savitsky and Brown 1976. Small fast boats lie outside its range; the caller
// bounds it.
double bow_ratio(double length_m, double beam_m, double speed_kn);

struct ImpactInput {
  double length_m = 0.0;
  double beam_m = 0.0;  // at the chine
  double deadrise_deg = 0.0;
  double trim_deg = 0.0;  // running trim
  double weight_N = 0.0;
  double wave_m = 0.0;  // significant height
  double speed_kn = 0.0;
  double water_density_kg_per_m3 = 1025.0;
  double gravity_mps2 = 9.80665;
};
struct Impact {
  double cg_g = 0.0;
  double bow_g = 0.0;
};

// Average impact in irregular head seas.
//
//   n_cg = 0.0104 (H/b + 0.084) (tau/4) (5/3 - beta/30) (V_kn/sqrt(L_ft))^2 (L/b) / C_Delta
//
// Source: Savitsky and Brown 1976. C_Delta = weight / (rho g b^3).
Impact average_impact(const ImpactInput& in);

// Average of the 1/N highest of exponentially distributed peaks over the average: 1 + ln N. Peaks
// of planing boats are close to that (Fridsma 1971).
double highest_one_in_factor(double one_in_count);

// 1/100 highest acceleration at the centre of gravity in a sea of this significant height.
//
//   a = (1/1650) (H/B + 0.084) (50 - beta) (V/sqrt(L))^2 L B^2 / Delta,   V in knots, Delta in
//   tonnes
//
// Source: DNV HSLC 2011, Pt.3 Ch.1 Sec.2 B204 (constant recalled). Meant for V/sqrt(L) >= 3.
double acceleration_in_sea_g(const PlaningHull& hull, double wave_m);

// The same turned round: the speed that gives this acceleration.
double speed_in_sea_mps(const PlaningHull& hull, double wave_m, double acceleration_g);

// Two neighbours in the shock spectrum and the value between them.
struct Amplification {
  double cycles_count = 0.0;  // natural frequency times pulse length, at most 5
  double lower_count = 0.0;
  double upper_count = 0.0;
  double lower_factor = 0.0;
  double upper_factor = 0.0;
  double factor = 0.0;
};

// Peak response over peak acceleration of a sprung mass with 5 % damping under a half-sine pulse;
// linear between the rows of a computed table.
Amplification amplification(double frequency_Hz, double pulse_s);

}  // namespace thole
