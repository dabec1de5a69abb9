#pragma once

// How a sea comes in groups: high waves push a boat harder than low ones, and the push changes as
// slowly as the groups pass.

#include <cstdint>
#include <vector>

#include "calc/hold/tones.h"
#include "data/sea.h"

namespace thole {

// One-sided spectrum of the surface, m^2/Hz, of that shape and any size: (f/fp)^-5
// exp(-1.25 (f/fp)^-4) 3.3^b, b = exp(-((f/fp - 1)/s)^2/2), s = 0.07 below and 0.09 above the peak.
// Source: Hasselmann et al. 1973 (JONSWAP). `ratio` = f/fp > 0.
double jonswap_shape_ratio(double frequency_ratio);

// Tones of the surface as seen from one that swings at the peak frequency: their sum turns slowly,
// and its length is the envelope of the waves. The surface itself is the sum turned on by the peak.
// Sum of a^2/2 = Hs^2/16 exactly.
std::vector<Tone> wave_tones(const Sea& sea, int tone_count, std::uint64_t seed,
                             std::uint64_t stream);

// Push of the moment over the mean push: envelope squared over its mean, `8 A^2/Hs^2`.
// Source: Newman 1974, for a narrow band; its mean is 1 and so is its standard deviation. 1 for a
// sea without height.
double push_ratio(const Sea& sea, const Quadrature& envelope_m);

}  // namespace thole
