#pragma once

// Sea states by which station keeping of ships is numbered: open ocean, wind at 10 m at the upper
// bound of its Beaufort number. Source: DNV-ST-0111 (2021) Table 2-1. A lake or a bay never sees
// such waves: 1.3 m in Beaufort 4, where 5 km of fetch raise 0.3 m.

#include <array>

namespace thole {

struct CapabilitySea {
  int number = 0;  // Beaufort, and DP capability number
  double wind_mps = 0.0;
  double wave_height_m = 0.0;  // significant
  double wave_period_s = 0.0;  // peak
  double current_mps = 0.0;
};

inline constexpr std::array kCapabilitySeas{
    CapabilitySea{1, 1.5, 0.1, 3.5, 0.25},    CapabilitySea{2, 3.4, 0.4, 4.5, 0.50},
    CapabilitySea{3, 5.4, 0.8, 5.5, 0.75},    CapabilitySea{4, 7.9, 1.3, 6.5, 0.75},
    CapabilitySea{5, 10.7, 2.1, 7.5, 0.75},   CapabilitySea{6, 13.8, 3.1, 8.5, 0.75},
    CapabilitySea{7, 17.1, 4.2, 9.0, 0.75},   CapabilitySea{8, 20.7, 5.7, 10.0, 0.75},
    CapabilitySea{9, 24.4, 7.4, 10.5, 0.75},  CapabilitySea{10, 28.4, 9.5, 11.5, 0.75},
    CapabilitySea{11, 32.6, 12.1, 12.0, 0.75}};

}  // namespace thole
