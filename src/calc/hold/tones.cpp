#include "calc/hold/tones.h"

#include <cmath>
#include <numbers>

namespace thole {
namespace {

// Catmull-Rom between `b` and `c`.
double between(double a, double b, double c, double d, double t) {
  return b +
         0.5 * t * (c - a + t * (2.0 * a - 5.0 * b + 4.0 * c - d + t * (3.0 * (b - c) + d - a)));
}

}  // namespace

ToneSeries::ToneSeries(const std::vector<Tone>& tones, double interval_s) {
  const double turn_s = 2.0 * std::numbers::pi * interval_s;
  for (const Tone& tone : tones) {
    const double turn_rad = turn_s * tone.frequency_Hz;
    // The first sample lies one interval before time 0.
    const double start_rad = tone.phase_rad - turn_rad;
    cosines_.push_back(tone.amplitude_factor * std::cos(start_rad));
    sines_.push_back(tone.amplitude_factor * std::sin(start_rad));
    turn_cosines_.push_back(std::cos(turn_rad));
    turn_sines_.push_back(std::sin(turn_rad));
  }
  for (Quadrature& sample : samples_) sample = turn();
}

void ToneSeries::advance() {
  samples_[0] = samples_[1];
  samples_[1] = samples_[2];
  samples_[2] = samples_[3];
  samples_[3] = turn();
}

Quadrature ToneSeries::turn() {
  // Two sums of every second tone: half as long a chain of additions that wait for each other.
  Quadrature even{};
  Quadrature odd{};
  const std::size_t count = cosines_.size();
  for (std::size_t i = 0; i < count; ++i) {
    const double cosine = cosines_[i];
    const double sine = sines_[i];
    Quadrature& sum = i % 2 == 0 ? even : odd;
    sum.cosine_factor += cosine;
    sum.sine_factor += sine;
    cosines_[i] = cosine * turn_cosines_[i] - sine * turn_sines_[i];
    sines_[i] = cosine * turn_sines_[i] + sine * turn_cosines_[i];
  }
  return {even.cosine_factor + odd.cosine_factor, even.sine_factor + odd.sine_factor};
}

double ToneSeries::cosine_at(double part_frac) const {
  return between(samples_[0].cosine_factor, samples_[1].cosine_factor, samples_[2].cosine_factor,
                 samples_[3].cosine_factor, part_frac);
}

Quadrature ToneSeries::at(double part_frac) const {
  return {cosine_at(part_frac),
          between(samples_[0].sine_factor, samples_[1].sine_factor, samples_[2].sine_factor,
                  samples_[3].sine_factor, part_frac)};
}

}  // namespace thole
