#pragma once

// The sea that a wind raises over a stretch of open water.

namespace thole {

// Whose law says how the wind varies about its mean; see calc/hold/gust.h.
enum class GustLaw { npd, davenport, harris, ochi_shin };

struct Sea {
  double height_m = 0.0;  // significant
  double period_s = 0.0;  // peak
};

// Wind stress factor of the Shore Protection Manual: UA = 0.71 U^1.23, U in m/s at 10 m height.
// Light airs are taken as 0.1 m/s, so that nothing is divided by zero.
double adjusted_wind_mps(double wind_mps);

// Fetch-limited sea in water of any depth, the one the program goes by.
//
//   g H/UA^2 = 0.283 tanh(a) tanh(0.00565 (g X/UA^2)^(1/2) / tanh(a)),   a = 0.53 (g d/UA^2)^0.75
//   g T/UA   = 7.54  tanh(b) tanh(0.0379  (g X/UA^2)^(1/3) / tanh(b)),   b = 0.833 (g d/UA^2)^0.375
//
// Source: Shore Protection Manual (1984), shallow-water forecasting equations. Range: winds that
// have blown long enough (an hour or two over a few kilometres). Precondition: fetch and depth > 0.
Sea spm_sea(double wind_mps, double fetch_m, double depth_m);

// Deep water; with Wilson's, the spread between authors. Hasselmann et al. 1973 (JONSWAP):
// m0 = 1.6e-7 (g X/U^2) U^4/g^2, fp = 3.5 (g X/U^2)^-0.33 g/U.
Sea jonswap_sea(double wind_mps, double fetch_m);

// Deep water. Wilson 1965: g H/U^2 = 0.30 (1 - (1 + 0.004 (g X/U^2)^(1/2))^-2),
// g Ts/U = 8.61 (1 - (1 + 0.008 (g X/U^2)^(1/3))^-5), Tp = Ts/0.95.
Sea wilson_sea(double wind_mps, double fetch_m);

// Deep water, Shore Protection Manual 1984: g H/UA^2 = 0.0016 (g X/UA^2)^(1/2), no more than
// 0.2433; g Tp/UA = 0.2857 (g X/UA^2)^(1/3), no more than 8.134.
Sea spm_deep_sea(double wind_mps, double fetch_m);

// Deep water, Coastal Engineering Manual II-2-36: u*^2 = C U^2, C = 0.001 (1.1 + 0.035 U);
// g H/u*^2 = 0.0413 (g X/u*^2)^(1/2), no more than 211.5; g Tp/u* = 0.651 (g X/u*^2)^(1/3), no more
// than 239.8. Its period is short of the others'.
Sea cem_sea(double wind_mps, double fetch_m);

// Deep water. Kahma & Calkoen 1992: g^2 m0/U^4 = 5.2e-7 (g X/U^2)^0.9, no more than 3.64e-3;
// fp U/g = 2.18 (g X/U^2)^-0.27, no less than 0.133 (fully grown: Pierson & Moskowitz 1964).
Sea kahma_calkoen_sea(double wind_mps, double fetch_m);

// How long the wind must blow until the fetch and not the time limits the sea: g t/UA = 68.8
// (g X/UA^2)^(2/3). Source: Shore Protection Manual 1984, from memory. Equation II-2-38 of the
// Coastal Engineering Manual gives half as much again.
double sea_growth_h(double wind_mps, double fetch_m);

// Peak period of a wind sea of which only the height is known: that of deep-water waves one
// twenty-fifth as high as they are long, T = (2 pi H/(0.04 g))^(1/2). Seas of short fetch lie
// between 0.036 and 0.046 by the equations above; 0.04 is our own judgement.
inline constexpr double kSeaSteepness_ratio = 0.04;
double steep_period_s(double height_m);

}  // namespace thole
