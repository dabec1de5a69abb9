#include "calc/charge/taper.h"

#include <algorithm>
#include <cmath>

namespace thole {

TaperResult taper(const TaperInput& in) {
  const double start_frac = 1.0 - in.depth_frac;
  TaperResult result{};
  result.bulk_h = std::max(0.0, in.switch_frac - start_frac) * in.capacity_Ah /
                  (in.bulk_efficiency_frac * in.bulk_A);
  result.absorption_Ah =
      (1.0 - std::max(in.switch_frac, start_frac)) * in.capacity_Ah / in.absorption_efficiency_frac;
  result.absorption_h =
      std::max(in.absorption_min_h,
               result.absorption_Ah * std::log(in.bulk_A / in.tail_A) / (in.bulk_A - in.tail_A));
  result.time_h = result.bulk_h + result.absorption_h;
  return result;
}

double switch_charge_frac(Chemistry chemistry, double rate_frac) {
  if (!is_lead(chemistry)) return 0.95;
  return std::clamp(0.95 - rate_frac, 0.60, 0.90);
}

double compensated_V(double cell_25_V, double slope_V_per_K, double temperature_C) {
  return cell_25_V + slope_V_per_K * (temperature_C - 25.0);
}

double mains_A(const MainsInput& in) {
  return in.output_count * in.charge_V * in.output_A /
         (in.efficiency_frac * in.power_factor * in.shore_V);
}

}  // namespace thole
