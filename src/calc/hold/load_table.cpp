#include "calc/hold/load_table.h"

#include <algorithm>
#include <cmath>

#include "base/units.h"

namespace thole {

std::vector<LoadRow> load_table(const LoadTableInput& in) {
  HeldHull likely = in.hull;
  likely.wind = in.likely_wind;
  Weather weather = in.weather;
  weather.current_from_rad = 0.0;
  const int step_count = static_cast<int>(std::floor(180.0 / std::max(1.0, in.step_deg) + 1e-9));
  std::vector<LoadRow> rows;
  for (int i = 0; i <= step_count; ++i) {
    const double from_deg = i * std::max(1.0, in.step_deg);
    const double heading_rad =
        -rad_from_deg(from_deg);  // weather from starboard: bow to port of it
    const LoadParts parts = loads_at(in.hull, weather, heading_rad);
    rows.push_back({.from_deg = from_deg,
                    .wind = parts.wind,
                    .wind_likely = loads_at(likely, weather, heading_rad).wind,
                    .current = parts.current,
                    .wave = parts.wave,
                    .total = {.surge_N = in.dynamic_factor * parts.total.surge_N,
                              .sway_N = in.dynamic_factor * parts.total.sway_N,
                              .yaw_Nm = in.dynamic_factor * parts.total.yaw_Nm}});
  }
  return rows;
}

}  // namespace thole
