#include "calc/hold/thruster.h"

#include <cmath>
#include <numbers>

namespace thole {
namespace {

// 2 rho A: momentum theory knows the disc by this alone.
double twice_rho_area(const Disc& disc) {
  return 2.0 * disc.density_kg_per_m3 * disc_area_m2(disc);
}

}  // namespace

double disc_area_m2(const Disc& disc) {
  return std::numbers::pi / 4.0 * disc.diameter_m * disc.diameter_m;
}

double ideal_power_W(const Disc& disc, double thrust_N, double inflow_mps) {
  return 0.5 * thrust_N *
         (inflow_mps + std::sqrt(inflow_mps * inflow_mps + 4.0 * thrust_N / twice_rho_area(disc)));
}

double ideal_thrust_N(const Disc& disc, double power_W) {
  return std::cbrt(twice_rho_area(disc) * power_W * power_W);
}

double merit_frac(const Disc& disc, double thrust_N, double power_W) {
  return power_W > 0.0 ? ideal_power_W(disc, thrust_N, 0.0) / power_W : 0.0;
}

double induced_speed_mps(const Disc& disc, double static_thrust_N, double inflow_mps) {
  // In units of the speed at rest w0: x (v + x)^2 = 1, with 0 < x <= 1 for v >= 0. Newton from x =
  // 1 comes down to the root without overshoot, the left side being convex there.
  const double at_rest_mps = std::sqrt(static_thrust_N / twice_rho_area(disc));
  if (!(at_rest_mps > 0.0)) return 0.0;
  const double v = inflow_mps / at_rest_mps;
  double x = 1.0;
  for (int step = 0; step < 50; ++step) {
    const double sum = v + x;
    const double change = (x * sum * sum - 1.0) / (sum * (sum + 2.0 * x));
    x -= change;
    if (std::abs(change) < 1e-14 * x) break;
  }
  return x * at_rest_mps;
}

double thrust_in_current_N(const Disc& disc, double static_thrust_N, double inflow_mps) {
  const double induced_mps = induced_speed_mps(disc, static_thrust_N, inflow_mps);
  return twice_rho_area(disc) * induced_mps * (inflow_mps + induced_mps);
}

double nominal_thrust_N(const NominalThrustInput& in) {
  return in.propeller_factor * in.direction_factor *
         std::pow(in.diameter_m * in.power_W / 1000.0, 2.0 / 3.0);
}

double power_share_frac(double thrust_share_frac) { return std::pow(thrust_share_frac, 1.5); }

}  // namespace thole
