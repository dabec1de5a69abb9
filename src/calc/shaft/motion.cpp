#include "calc/shaft/motion.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "base/units.h"

namespace thole {
namespace {

constexpr double kPi = std::numbers::pi;

// JONSWAP, Hasselmann et al. 1973: peak enhancement and the widths of the peak.
constexpr double kPeakEnhancement_factor = 3.3;
constexpr double kWidthBelow_ratio = 0.07;
constexpr double kWidthAbove_ratio = 0.09;

// The closed form has a pole where the wave is as long as the hull's section is round, which a real
// hull damps. Dynamic magnification is held to this. Project decision; no effect in the sources'
// checks.
constexpr double kMagnificationLimit_factor = 10.0;

// Frequencies over the peak's that carry the sea; with 160 steps the sum is exact to 1e-4.
constexpr double kLowest_ratio = 0.5;
constexpr double kHighest_ratio = 5.0;
constexpr int kSteps = 160;

// Shape of the spectrum over frequency / peak frequency; only its proportions are used.
double jonswap_shape(double ratio) {
  const double width = ratio <= 1.0 ? kWidthBelow_ratio : kWidthAbove_ratio;
  const double off = (ratio - 1.0) / width;
  const double r2 = ratio * ratio;
  return std::exp(-1.25 / (r2 * r2)) / (r2 * r2 * ratio) *
         std::pow(kPeakEnhancement_factor, std::exp(-0.5 * off * off));
}

}  // namespace

double encounter_rad_per_s(double period_s, double speed_mps) {
  const double w = 2.0 * kPi / period_s;
  return w + w * w * speed_mps / kGravity_mps2;
}

double deep_wavelength_m(double period_s) {
  return kGravity_mps2 * period_s * period_s / (2.0 * kPi);
}

BowResponse bow_response(const FloatingHull& hull, double x_m, double period_s) {
  // Letters as in the paper: k wave number, s half length in wave radians, kappa the Smith factor,
  // d = A^2 / (k B) the radiated waves' share.
  const double k = 2.0 * kPi / deep_wavelength_m(period_s);
  const double s = 0.5 * k * hull.waterline_length_m;
  const double kT = k * hull.draft_m;
  const double kB = k * hull.waterline_beam_m;
  const double kappa = std::exp(-kT);
  const double a = 2.0 * std::sin(0.5 * kB) * kappa;
  const double d = a * a / kB;
  const double force = kappa * std::hypot(1.0 - kT, d);
  const double eta =
      1.0 / std::max(std::hypot(1.0 - 2.0 * kT, d), 1.0 / kMagnificationLimit_factor);

  BowResponse response;
  response.heave_ratio = eta * force * std::sin(s) / s;
  response.pitch_rad_per_m =
      eta * force * 6.0 / (hull.waterline_length_m * s) * (std::sin(s) / s - std::cos(s));
  const double pitch_at_x = x_m * response.pitch_rad_per_m;
  response.relative_ratio =
      std::hypot(response.heave_ratio - std::cos(k * x_m), std::sin(k * x_m) - pitch_at_x);
  response.absolute_ratio = std::hypot(response.heave_ratio, pitch_at_x);
  return response;
}

double relative_motion_sigma_m(const FloatingHull& hull, double x_m, double wave_height_m,
                               double peak_period_s) {
  if (!(wave_height_m > 0.0) || !(peak_period_s > 0.0)) return 0.0;
  double sea = 0.0;
  double motion = 0.0;
  for (int i = 0; i <= kSteps; ++i) {
    const double ratio = kLowest_ratio + (kHighest_ratio - kLowest_ratio) * i / kSteps;
    const double energy = jonswap_shape(ratio);
    const double relative = bow_response(hull, x_m, peak_period_s / ratio).relative_ratio;
    sea += energy;
    motion += energy * relative * relative;
  }
  // The standard deviation of the surface itself is a quarter of the significant height.
  return 0.25 * wave_height_m * std::sqrt(motion / sea);
}

BoxResponse box_response(double wavelength_ratio, double x_ratio) {
  const double u = kPi / wavelength_ratio;
  BoxResponse response;
  response.heave_ratio = std::sin(u) / u;
  response.pitch_ratio = 6.0 * (std::sin(u) / (u * u) - std::cos(u) / u);
  response.relative_ratio =
      std::hypot(std::cos(2.0 * u * x_ratio) - response.heave_ratio,
                 std::sin(2.0 * u * x_ratio) - response.pitch_ratio * x_ratio);
  return response;
}

}  // namespace thole
