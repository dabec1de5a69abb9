#include "calc/shaft/immersion.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace thole {
namespace {

// The normal distribution is summed over +/- 5 standard deviations; 200 steps are exact to 1e-4.
constexpr double kReach = 5.0;
constexpr int kSteps = 200;

}  // namespace

double immersion_factor(double depth_m, double radius_m) {
  const double uncovered = std::max(1.0 - kMinsaasDepth_factor * depth_m / radius_m, 0.0);
  return std::max(1.0 - kMinsaasLoss_factor * std::pow(uncovered, kMinsaasLoss_exponent), 0.0);
}

double mean_immersion_factor(double depth_m, double radius_m, double sigma_m) {
  double weights = 0.0;
  double sum = 0.0;
  for (int i = 0; i <= kSteps; ++i) {
    const double z = kReach * (2.0 * i / kSteps - 1.0);
    const double weight = std::exp(-0.5 * z * z);
    weights += weight;
    sum += weight * immersion_factor(depth_m + sigma_m * z, radius_m);
  }
  return sum / weights;
}

double emergence_frac(double depth_m, double radius_m, double sigma_m) {
  const double cover_m = depth_m - radius_m;
  if (!(sigma_m > 0.0)) return cover_m < 0.0 ? 1.0 : 0.0;
  return 0.5 * std::erfc(cover_m / sigma_m / std::numbers::sqrt2);
}

}  // namespace thole
