#include "calc/hold/gust.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "calc/hold/random.h"

namespace thole {
namespace {

constexpr double kDavenport_m = 1200.0;
constexpr double kHarris_m = 1800.0;
constexpr double kNpd_exponent = 0.468;
constexpr double kStill_mps = 0.01;  // below this there is no wind to be gusty

double npd(const GustShape& shape, double frequency_Hz) {
  const double wind = shape.wind_mps / 10.0;
  const double height = std::max(1.0, shape.height_m) / 10.0;
  const double reduced = 172.0 * frequency_Hz * std::pow(height, 2.0 / 3.0) * std::pow(wind, -0.75);
  return 320.0 * wind * wind * std::pow(height, 0.45) /
         std::pow(1.0 + std::pow(reduced, kNpd_exponent), 5.0 / (3.0 * kNpd_exponent));
}

double davenport(const GustShape& shape, double frequency_Hz) {
  const double x = frequency_Hz * kDavenport_m / shape.wind_mps;
  return 4.0 * shape.surface_drag_factor * kDavenport_m * shape.wind_mps * x /
         std::pow(1.0 + x * x, 4.0 / 3.0);
}

double harris(const GustShape& shape, double frequency_Hz) {
  const double x = frequency_Hz * kHarris_m / shape.wind_mps;
  return 4.0 * shape.surface_drag_factor * kHarris_m * shape.wind_mps /
         std::pow(2.0 + x * x, 5.0 / 6.0);
}

double ochi_shin(const GustShape& shape, double frequency_Hz) {
  const double stress_factor = 1e-3 * (0.75 + 0.067 * shape.wind_mps);
  const double friction_m2_per_s2 = stress_factor * shape.wind_mps * shape.wind_mps;
  return ochi_shin_ratio(10.0 * frequency_Hz / shape.wind_mps) * friction_m2_per_s2 / frequency_Hz;
}

double published(const GustShape& shape, double frequency_Hz) {
  switch (shape.law) {
    case GustLaw::npd:
      return npd(shape, frequency_Hz);
    case GustLaw::davenport:
      return davenport(shape, frequency_Hz);
    case GustLaw::harris:
      return harris(shape, frequency_Hz);
    case GustLaw::ochi_shin:
      return ochi_shin(shape, frequency_Hz);
  }
  return 0.0;
}

}  // namespace

double ochi_shin_ratio(double reduced_frequency_ratio) {
  const double s = reduced_frequency_ratio;
  if (s < 0.003) return 583.0 * s;
  const double fall = std::pow(1.0 + std::pow(s, 0.35), 11.5);
  return (s <= 0.1 ? 420.0 * std::pow(s, 0.70) : 838.0 * s) / fall;
}

double gust_spectrum_m2_per_s2_per_Hz(const GustShape& shape, double frequency_Hz) {
  if (!(shape.wind_mps > kStill_mps)) return 0.0;
  return shape.strength_factor * shape.strength_factor * published(shape, frequency_Hz);
}

double gust_deviation_mps(const GustShape& shape, double lowest_Hz, double highest_Hz) {
  constexpr int kParts = 2000;  // even
  const double ratio = std::log(highest_Hz / lowest_Hz);
  double sum = 0.0;
  for (int i = 0; i <= kParts; ++i) {
    const double frequency_Hz = lowest_Hz * std::exp(ratio * i / kParts);
    const double weight = i == 0 || i == kParts ? 1.0 : i % 2 == 1 ? 4.0 : 2.0;
    sum += weight * frequency_Hz * gust_spectrum_m2_per_s2_per_Hz(shape, frequency_Hz);
  }
  return std::sqrt(sum * ratio / kParts / 3.0);
}

std::vector<Tone> gust_tones(const GustShape& shape, int tone_count, std::uint64_t seed,
                             std::uint64_t stream) {
  Pcg32 chance(seed, stream);
  std::vector<Tone> tones;
  const double step_ratio = std::pow(kGustHighest_Hz / kGustLowest_Hz, 1.0 / tone_count);
  double low_Hz = kGustLowest_Hz;
  for (int i = 0; i < tone_count; ++i) {
    const double width_Hz = low_Hz * (step_ratio - 1.0);
    const double frequency_Hz = low_Hz + width_Hz * chance.uniform();
    const double phase_rad = 2.0 * std::numbers::pi * chance.uniform();
    const double square = 2.0 * gust_spectrum_m2_per_s2_per_Hz(shape, frequency_Hz) * width_Hz;
    tones.push_back({.frequency_Hz = frequency_Hz,
                     .amplitude_factor = std::sqrt(square),
                     .phase_rad = phase_rad});
    low_Hz += width_Hz;
  }
  return tones;
}

}  // namespace thole
