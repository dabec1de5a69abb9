#pragma once

// Customary units meet SI here and nowhere else. Names read to-from, so that the units touch:
// N_from_lbf(x_lbf). Factors are exact by definition unless a comment says otherwise.

#include <numbers>

namespace thole {

inline constexpr double kMetrePerFoot = 0.3048;
inline constexpr double kMetrePerInch = 0.0254;
inline constexpr double kMetrePerNauticalMile = 1852.0;
inline constexpr double kKilogramPerPound = 0.45359237;
inline constexpr double kNewtonPerPoundForce = 4.4482216152605;
inline constexpr double kGravity_mps2 = 9.80665;  // standard gravity, ISO 80000-3
inline constexpr double kRadPerDeg = std::numbers::pi / 180.0;

constexpr double m_from_ft(double length_ft) { return length_ft * kMetrePerFoot; }
constexpr double ft_from_m(double length_m) { return length_m / kMetrePerFoot; }
constexpr double m_from_in(double length_in) { return length_in * kMetrePerInch; }
constexpr double in_from_m(double length_m) { return length_m / kMetrePerInch; }
constexpr double mps_from_kn(double speed_kn) { return speed_kn * kMetrePerNauticalMile / 3600.0; }
constexpr double kn_from_mps(double speed_mps) {
  return speed_mps * 3600.0 / kMetrePerNauticalMile;
}
constexpr double mps_from_mph(double speed_mph) { return speed_mph * 1609.344 / 3600.0; }
constexpr double kg_from_lb(double mass_lb) { return mass_lb * kKilogramPerPound; }
constexpr double lb_from_kg(double mass_kg) { return mass_kg / kKilogramPerPound; }
constexpr double N_from_lbf(double force_lbf) { return force_lbf * kNewtonPerPoundForce; }
constexpr double lbf_from_N(double force_N) { return force_N / kNewtonPerPoundForce; }
constexpr double rad_from_deg(double angle_deg) { return angle_deg * kRadPerDeg; }
constexpr double deg_from_rad(double angle_rad) { return angle_rad / kRadPerDeg; }
constexpr double C_from_F(double temp_F) { return (temp_F - 32.0) / 1.8; }
constexpr double F_from_C(double temp_C) { return temp_C * 1.8 + 32.0; }

}  // namespace thole
