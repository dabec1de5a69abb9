#include "calc/hold/thruster.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "calc/hold/loads.h"

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

double propeller_load_factor(double thrust_N, double diameter_m) {
  return std::sqrt(thrust_N / (diameter_m * diameter_m * diameter_m)) / 15.2;
}

double ventilation_factor(const VentilationInput& in) {
  const double turns = in.from_rad / (2.0 * std::numbers::pi);
  const double dir_ratio = 2.0 * std::abs(turns - std::floor(turns + 0.5));  // 0 ahead, 1 astern
  const double heading_factor = dir_ratio <= 0.5 ? 1.0 + 0.38 * dir_ratio : 1.38 - 0.38 * dir_ratio;
  const double place_factor =
      in.forward_m >= 0.0 ? 1.0 : 1.0 + 0.4 * in.forward_m / in.waterline_length_m;
  const double zero_crossing_s = in.peak_period_s / kPeakToZeroCrossing_ratio;
  const double period_ratio = 0.64 * std::sqrt(in.waterline_length_m) / zero_crossing_s;
  const double overload = std::max(0.0, propeller_load_factor(in.thrust_N, in.diameter_m) - 1.0);
  const double sigma = 0.25 * (0.85 * heading_factor * place_factor * in.wave_height_m *
                                   std::min(period_ratio, 1.0) +
                               overload);
  const double sigmas = 2.0 * 2.0 * in.submergence_m / in.diameter_m - 1.5 * sigma;
  return 0.5 * std::erfc(-sigmas / std::numbers::sqrt2);
}

double power_share_frac(double thrust_share_frac) { return std::pow(thrust_share_frac, 1.5); }

}  // namespace thole
