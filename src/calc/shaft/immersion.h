#pragma once

// Thrust lost by a propeller close to the surface.
//
//   factor = 1 - 0.675 (1 - 0.769 h/R)^1.258, not below 0 nor above 1; 1 from h/R = 1.3 on
//
// h: depth of the axis, R: radius. Source: Minsaas, Faltinsen and Persson 1983 (recalled). The
// curve is loss by emergence and wave-making of a lightly loaded propeller; one that pulls at the
// post draws air from deeper and loses more for longer (Koushan 2006), which is why the shaft rule
// asks for h/D = 1.5.

namespace thole {

inline constexpr double kMinsaasLoss_factor = 0.675;
inline constexpr double kMinsaasDepth_factor = 0.769;
inline constexpr double kMinsaasLoss_exponent = 1.258;

// Still water. Precondition: radius_m > 0; depth_m may be negative (axis in the air).
double immersion_factor(double depth_m, double radius_m);

// Mean over a depth that varies as a normal distribution with this standard deviation.
double mean_immersion_factor(double depth_m, double radius_m, double sigma_m);

// Share of time in which the upper blade tip is above the surface.
double emergence_frac(double depth_m, double radius_m, double sigma_m);

}  // namespace thole
