#pragma once

// How the wind varies about its mean: spectra as published, and a wind made from one.

#include <cstdint>
#include <vector>

#include "calc/hold/tones.h"
#include "data/sea.h"

namespace thole {

struct GustShape {
  GustLaw law = GustLaw::npd;
  double wind_mps = 0.0;                // mean at 10 m height, of an hour
  double height_m = 10.0;               // of the boat's side; the NPD law alone asks for it
  double surface_drag_factor = 0.0015;  // kappa of Davenport and Harris: sea
  double strength_factor = 1.0;         // on speeds: above 1 where land lies close to windward
};

// The band that is made and summed: nothing slower than twenty minutes happens within an hour that
// a mean does not cover, and nothing faster than 2 s moves a boat.
inline constexpr double kGustLowest_Hz = 1.0 / 1200.0;
inline constexpr double kGustHighest_Hz = 0.5;

// One-sided spectrum of the speed along the wind, (m/s)^2/Hz:
//
//   NPD        320 (U/10)^2 (z/10)^0.45 / (1 + F^n)^(5/(3 n)),  n = 0.468,
//              F = 172 f (z/10)^(2/3) (U/10)^-0.75
//   Davenport  4 k L U x/(1 + x^2)^(4/3),  x = f L/U,  L = 1200 m
//   Harris     4 k L U/(2 + x^2)^(5/6),    L = 1800 m
//   Ochi-Shin  at 10 m, s = 10 f/U, u*^2 = (0.75 + 0.067 U) U^2/1000:  f S/u*^2 =
//              583 s | 420 s^0.7/(1 + s^0.35)^11.5 | 838 s/(1 + s^0.35)^11.5
//              below 0.003 | to 0.1 | above
//
// Sources: ISO 19901-1 (NPD); Davenport 1961; Harris 1971; Ochi & Shin 1988 (u* from memory).
// Range: open water, wind above 1 m/s; no wind, no gusts. frequency_Hz > 0. NPD, in shape and
// strength, is for 1/2400 to 0.5 Hz.
double gust_spectrum_m2_per_s2_per_Hz(const GustShape& shape, double frequency_Hz);

// Ochi and Shin's curve: f S/u*^2 over s = f z/U.
double ochi_shin_ratio(double reduced_frequency_ratio);

// Standard deviation of the speed within a band, by Simpson's rule over the logarithm of the
// frequency.
double gust_deviation_mps(const GustShape& shape, double lowest_Hz, double highest_Hz);

// Tones whose sum has that spectrum within the band: as many bins of equal ratio, in each one tone
// at a random frequency and phase. The same seed gives the same gusts at every strength.
std::vector<Tone> gust_tones(const GustShape& shape, int tone_count, std::uint64_t seed,
                             std::uint64_t stream);

// Gusts across the wind over those along it. Source: IEC 61400-1.
inline constexpr double kAcrossGust_ratio = 0.8;

}  // namespace thole
