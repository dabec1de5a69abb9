#pragma once

// The Beaufort scale: upper bound of each number at 10 m height, and its word.
// Source: WMO Beaufort scale; the bounds in m/s are the wind column of DNV-ST-0111 (2021) Table 2-1
// up to 11.

#include <array>
#include <cmath>
#include <string_view>

namespace thole {

struct BeaufortBand {
  int number = 0;
  double upper_mps = 0.0;
  std::string_view name{};
};

inline constexpr std::array kBeaufort{
    BeaufortBand{0, 0.2, "calm"},
    BeaufortBand{1, 1.5, "light air"},
    BeaufortBand{2, 3.4, "light breeze"},
    BeaufortBand{3, 5.4, "gentle breeze"},
    BeaufortBand{4, 7.9, "moderate breeze"},
    BeaufortBand{5, 10.7, "fresh breeze"},
    BeaufortBand{6, 13.8, "strong breeze"},
    BeaufortBand{7, 17.1, "near gale"},
    BeaufortBand{8, 20.7, "gale"},
    BeaufortBand{9, 24.4, "strong gale"},
    BeaufortBand{10, 28.4, "storm"},
    BeaufortBand{11, 32.6, "violent storm"},
    BeaufortBand{12, 1e9, "hurricane"},
};

// Wind in the middle of a number's band: V = 0.836 B^1.5. Source: WMO, from memory.
inline double beaufort_wind_mps(double number_count) {
  return 0.836 * number_count * std::sqrt(number_count);
}

// The band that this wind falls in; a wind at a bound belongs to the lower band.
constexpr const BeaufortBand& beaufort(double wind_mps) {
  for (const BeaufortBand& band : kBeaufort) {
    if (wind_mps <= band.upper_mps) return band;
  }
  return kBeaufort.back();
}

}  // namespace thole
