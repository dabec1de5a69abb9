#include "data/sea.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "base/units.h"

namespace thole {
namespace {

constexpr double kLightAir_mps = 0.1;

// Fetch as the forecasting equations count it: g X/U^2.
double fetch_number(double wind_mps, double fetch_m) {
  return kGravity_mps2 * fetch_m / (wind_mps * wind_mps);
}

// Friction speed of the Coastal Engineering Manual.
double friction_mps(double wind_mps) {
  return wind_mps * std::sqrt(0.001 * (1.1 + 0.035 * wind_mps));
}

double at_least_light_air(double wind_mps) { return std::max(kLightAir_mps, wind_mps); }

}  // namespace

double adjusted_wind_mps(double wind_mps) {
  return 0.71 * std::pow(at_least_light_air(wind_mps), 1.23);
}

Sea spm_sea(double wind_mps, double fetch_m, double depth_m) {
  const double wind = adjusted_wind_mps(wind_mps);
  const double fetch = fetch_number(wind, fetch_m);
  const double depth = kGravity_mps2 * depth_m / (wind * wind);
  const double height_depth = std::tanh(0.53 * std::pow(depth, 0.75));
  const double period_depth = std::tanh(0.833 * std::pow(depth, 0.375));
  return {.height_m = wind * wind / kGravity_mps2 * 0.283 * height_depth *
                      std::tanh(0.00565 * std::sqrt(fetch) / height_depth),
          .period_s = wind / kGravity_mps2 * 7.54 * period_depth *
                      std::tanh(0.0379 * std::cbrt(fetch) / period_depth)};
}

Sea jonswap_sea(double wind_mps, double fetch_m) {
  const double wind = at_least_light_air(wind_mps);
  const double fetch = fetch_number(wind, fetch_m);
  const double variance_m2 = 1.6e-7 * fetch * std::pow(wind, 4.0) / (kGravity_mps2 * kGravity_mps2);
  return {.height_m = 4.0 * std::sqrt(variance_m2),
          .period_s = wind / kGravity_mps2 * std::pow(fetch, 0.33) / 3.5};
}

Sea wilson_sea(double wind_mps, double fetch_m) {
  const double wind = at_least_light_air(wind_mps);
  const double fetch = fetch_number(wind, fetch_m);
  const double significant_period_s =
      wind / kGravity_mps2 * 8.61 * (1.0 - std::pow(1.0 + 0.008 * std::cbrt(fetch), -5.0));
  return {.height_m = wind * wind / kGravity_mps2 * 0.30 *
                      (1.0 - std::pow(1.0 + 0.004 * std::sqrt(fetch), -2.0)),
          .period_s = significant_period_s / 0.95};
}

Sea spm_deep_sea(double wind_mps, double fetch_m) {
  const double wind = adjusted_wind_mps(wind_mps);
  const double fetch = fetch_number(wind, fetch_m);
  return {.height_m = wind * wind / kGravity_mps2 * std::min(0.2433, 0.0016 * std::sqrt(fetch)),
          .period_s = wind / kGravity_mps2 * std::min(8.134, 0.2857 * std::cbrt(fetch))};
}

Sea cem_sea(double wind_mps, double fetch_m) {
  const double friction = friction_mps(at_least_light_air(wind_mps));
  const double fetch = fetch_number(friction, fetch_m);
  return {
      .height_m = friction * friction / kGravity_mps2 * std::min(211.5, 0.0413 * std::sqrt(fetch)),
      .period_s = friction / kGravity_mps2 * std::min(239.8, 0.651 * std::cbrt(fetch))};
}

Sea kahma_calkoen_sea(double wind_mps, double fetch_m) {
  const double wind = at_least_light_air(wind_mps);
  const double fetch = fetch_number(wind, fetch_m);
  const double variance = std::min(3.64e-3, 5.2e-7 * std::pow(fetch, 0.9));
  const double frequency = std::max(0.133, 2.18 * std::pow(fetch, -0.27));
  return {.height_m = 4.0 * wind * wind / kGravity_mps2 * std::sqrt(variance),
          .period_s = wind / kGravity_mps2 / frequency};
}

double sea_growth_h(double wind_mps, double fetch_m) {
  const double wind = adjusted_wind_mps(wind_mps);
  const double fetch_root = std::cbrt(fetch_number(wind, fetch_m));
  return 68.8 * fetch_root * fetch_root * wind / kGravity_mps2 / 3600.0;
}

double steep_period_s(double height_m) {
  return std::sqrt(2.0 * std::numbers::pi * height_m / (kSeaSteepness_ratio * kGravity_mps2));
}

}  // namespace thole
