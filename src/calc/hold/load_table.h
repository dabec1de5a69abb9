#pragma once

// Loads over the angle between boat and weather, as classification societies print them.

#include <vector>

#include "calc/hold/equilibrium.h"

namespace thole {

// Wind, current and waves all from one side, `from_deg` off the bow, clockwise. Signs of loads.h.
struct LoadRow {
  double from_deg = 0.0;
  Load wind{};
  Load wind_likely{};  // by another law, beside the sizing one; not in the total
  Load current{};
  Load wave{};
  Load total{};  // wind, current and waves, times the dynamic factor
};

struct LoadTableInput {
  HeldHull hull{};
  WindShape likely_wind{};
  Weather weather{};            // where its current comes from does not count
  double dynamic_factor = 1.0;  // DNV-ST-0111 [3.2.2]: 1.25
  double step_deg = 10.0;       // > 0
};

// 0 to 180 degrees in those steps; the other side mirrors sway and yaw.
std::vector<LoadRow> load_table(const LoadTableInput& in);

}  // namespace thole
