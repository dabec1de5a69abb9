#pragma once

// What a small propeller can push, at rest and in a current, and what that takes.

namespace thole {

// The disc that the propeller sweeps, and the water in it.
struct Disc {
  double diameter_m = 0.0;  // > 0
  double density_kg_per_m3 = 1026.0;
};
double disc_area_m2(const Disc& disc);

// Least power that makes this thrust: P = T/2 (V + (V^2 + 2 T/(rho A))^(1/2)); at rest
// T^1.5/(2 rho A)^(1/2). Source: momentum theory. Left out: swirl, blade friction, motor losses.
double ideal_power_W(const Disc& disc, double thrust_N, double inflow_mps);

// Most thrust at rest that this power can make: (2 rho A P^2)^(1/3). No open propeller exceeds it.
double ideal_thrust_N(const Disc& disc, double power_W);

// Share of the power that becomes ideal power; P_ideal(T, at rest)/P. Of the shaft's power: figure
// of merit, 0.55 to 0.64 for real propellers. 0 when there is no power.
double merit_frac(const Disc& disc, double thrust_N, double power_W);

// Speed that the disc adds to the water, at the power that makes `static_thrust_N` at rest: the
// root w of 2 rho A w (V + w)^2 = P. Then T = 2 rho A w (V + w). Source: momentum theory.
// inflow_mps >= 0.
double induced_speed_mps(const Disc& disc, double static_thrust_N, double inflow_mps);

// Thrust left at the same power when the water comes in at `inflow_mps`.
double thrust_in_current_N(const Disc& disc, double static_thrust_N, double inflow_mps);

// T = eta1 eta2 (D P)^(2/3), N, D in m, P in kW behind the mechanical losses.
// Source: DNV-ST-0111 [3.9.2]. eta1 of open propellers 800, tunnels 900, contra-rotating 950,
// ducted 1200; eta2 from Tables 3-2 and 3-3.
struct NominalThrustInput {
  double propeller_factor = 800.0;  // eta1
  double direction_factor = 1.0;    // eta2
  double diameter_m = 0.0;
  double power_W = 0.0;  // at the propeller: P_B eta_M
};
double nominal_thrust_N(const NominalThrustInput& in);

inline constexpr double kOpenPropeller_factor = 800.0;     // eta1, Table 3-1
inline constexpr double kAzimuthMechanical_factor = 0.93;  // eta_M, Table 3-4

// Thrust left as a ship's thruster draws air in waves, [3.9.4]:
// Phi(2 * 2 xi/D - 1.5 sigma), sigma = 0.25 (A Hs min(T0, 1) + max(PLF - 1, 0)),
// PLF = (T/D^3)^(1/2)/15.2, T0 = 0.64 L^(1/2)/Tz, A = 0.85 B C, B = 1 + 0.38 dir/pi ahead of the
// beam and 1.38 - 0.38 dir/pi behind it, C = 1 forward of midships and 1 + 0.4 x/L behind. sigma is
// in metres and does not scale with D: below a metre of diameter the answer is too high, and the
// shaft stage counts by the depth of the axis instead. Source: DNV-ST-0111 (2021).
struct VentilationInput {
  double diameter_m = 0.0;     // > 0
  double submergence_m = 0.0;  // of the axis
  double thrust_N = 0.0;       // nominal
  double waterline_length_m = 0.0;
  double forward_m = 0.0;  // of midships
  double from_rad = 0.0;   // where the waves come from, off the bow
  double wave_height_m = 0.0;
  double peak_period_s = 0.0;  // > 0
};
double ventilation_factor(const VentilationInput& in);
double propeller_load_factor(double thrust_N, double diameter_m);  // PLF

// Share of the power above idle that a share of full thrust takes: r^1.5. Source: momentum theory.
double power_share_frac(double thrust_share_frac);

}  // namespace thole
