#include "calc/hold/wave_train.h"

#include <cmath>
#include <numbers>

#include "calc/hold/random.h"

namespace thole {
namespace {

// Band of the tones over the peak frequency: outside of it lies less than 3 % of the energy.
constexpr double kLowest_ratio = 0.6;
constexpr double kHighest_ratio = 2.5;

}  // namespace

double jonswap_shape_ratio(double frequency_ratio) {
  const double r = frequency_ratio;
  const double width = r <= 1.0 ? 0.07 : 0.09;
  const double off_peak = (r - 1.0) / width;
  const double square = r * r;
  return std::exp(-1.25 / (square * square)) / (square * square * r) *
         std::pow(3.3, std::exp(-0.5 * off_peak * off_peak));
}

std::vector<Tone> wave_tones(const Sea& sea, int tone_count, std::uint64_t seed,
                             std::uint64_t stream) {
  if (!(sea.height_m > 0.0) || !(sea.period_s > 0.0)) return {};
  Pcg32 chance(seed, stream);
  std::vector<Tone> tones;
  const double width_ratio = (kHighest_ratio - kLowest_ratio) / tone_count;
  double squares_m2 = 0.0;
  for (int i = 0; i < tone_count; ++i) {
    const double ratio = kLowest_ratio + width_ratio * (i + chance.uniform());
    const double phase_rad = 2.0 * std::numbers::pi * chance.uniform();
    const double square = jonswap_shape_ratio(ratio);
    squares_m2 += square;
    tones.push_back({.frequency_Hz = (ratio - 1.0) / sea.period_s,
                     .amplitude_factor = std::sqrt(square),
                     .phase_rad = phase_rad});
  }
  const double scale_factor = sea.height_m / std::sqrt(8.0 * squares_m2);
  for (Tone& tone : tones) tone.amplitude_factor *= scale_factor;
  return tones;
}

double push_ratio(const Sea& sea, const Quadrature& envelope_m) {
  if (!(sea.height_m > 0.0)) return 1.0;
  return 8.0 *
         (envelope_m.cosine_factor * envelope_m.cosine_factor +
          envelope_m.sine_factor * envelope_m.sine_factor) /
         (sea.height_m * sea.height_m);
}

}  // namespace thole
