#pragma once

// A slow signal made of many tones, read off at any time while time goes on.

#include <array>
#include <cstddef>
#include <vector>

namespace thole {

struct Tone {
  double frequency_Hz = 0.0;
  double amplitude_factor = 0.0;  // in the unit of the signal
  double phase_rad = 0.0;
};

// sum of a cos(2 pi f t + phase), and the same with the sine.
struct Quadrature {
  double cosine_factor = 0.0;
  double sine_factor = 0.0;
};

// Sampled every `interval_s` by turning each tone's pointer on by a fixed angle, and read between
// samples by a cubic through four of them (Catmull-Rom). With five samples to a period or more the
// cubic errs by less than 3 % of a tone, and with ten by less than 0.3 %. A sum of cosines at every
// step would take as long as all the rest of a simulation twice over.
class ToneSeries {
 public:
  ToneSeries(const std::vector<Tone>& tones, double interval_s);

  // One interval further.
  void advance();

  // `part_frac` of the way from this sample to the next, 0 to 1.
  Quadrature at(double part_frac) const;
  double cosine_at(double part_frac) const;

 private:
  Quadrature turn();  // what the pointers sum to, before they are turned on

  std::vector<double> cosines_{};
  std::vector<double> sines_{};
  std::vector<double> turn_cosines_{};
  std::vector<double> turn_sines_{};
  std::array<Quadrature, 4> samples_{};  // one before, this one, two to come
};

}  // namespace thole
