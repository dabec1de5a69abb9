#include "calc/trip.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <utility>

#include "base/order.h"

namespace thole {
namespace {

constexpr double kCalibrated_C = 25.0;    // kCommonPractice: 25 to 40 C
constexpr double kLeastShare_frac = 0.5;  // of its rating, however hot

// What is left of a rating in this air, or gained.
double rating_share(const DeviceCurve& curve, double air_C) {
  return std::max(kLeastShare_frac, 1.0 - curve.loss_frac_per_K * (air_C - kCalibrated_C));
}

double hot_share(const DeviceCurve& curve, DeviceAir air) {
  return rating_share(curve, std::max(air.hot_C, kCalibrated_C));
}
double cold_share(const DeviceCurve& curve, DeviceAir air) {
  return rating_share(curve, std::min(air.cold_C, kCalibrated_C));
}

double on_line(const CurvePoint& a, const CurvePoint& b, double CurvePoint::*time_s, double ratio) {
  const double share_frac =
      std::log(ratio / a.rating_ratio) / std::log(b.rating_ratio / a.rating_ratio);
  return a.*time_s * std::pow(b.*time_s / a.*time_s, share_frac);
}

double on_curve(const DeviceCurve& curve, double CurvePoint::*time_s, double instant_s,
                double ratio) {
  if (curve.instant_ratio > 0.0 && ratio >= curve.instant_ratio) return instant_s;
  const auto above =
      std::find_if(curve.points.begin(), curve.points.end(),
                   [&](const CurvePoint& point) { return point.rating_ratio > ratio; });
  if (above == curve.points.begin()) return curve.points.front().*time_s;
  if (above != curve.points.end()) return on_line(*(above - 1), *above, time_s, ratio);
  const CurvePoint& last = curve.points.back();
  if (curve.instant_ratio > 0.0) return last.*time_s;
  const double share_frac = last.rating_ratio / ratio;
  return last.*time_s * share_frac * share_frac;
}

}  // namespace

DeviceAir device_air(double coldest_C, double hottest_C) {
  return {.cold_C = std::min(coldest_C, kCalibrated_C), .hot_C = std::max(hottest_C, kCalibrated_C)};
}

OpeningBand opening_band(const DeviceCurve& curve, double rating_ratio, DeviceAir air) {
  OpeningBand band;
  const double hot_ratio = rating_ratio / hot_share(curve, air);
  if (hot_ratio > curve.carries_ratio) {
    band.shortest_s = on_curve(curve, &CurvePoint::shortest_s, curve.instant_shortest_s, hot_ratio);
  }
  const double cold_ratio = rating_ratio / cold_share(curve, air);
  if (cold_ratio >= curve.points.front().rating_ratio) {
    band.longest_s = on_curve(curve, &CurvePoint::longest_s, curve.instant_longest_s, cold_ratio);
  }
  return band;
}

double opens_ratio(const DeviceCurve& curve, DeviceAir air) {
  return curve.points.front().rating_ratio * cold_share(curve, air);
}

double holds_ratio(const DeviceCurve& curve, DeviceAir air) {
  return curve.carries_ratio * hot_share(curve, air);
}

std::vector<double> bends(const DeviceCurve& curve, DeviceAir air) {
  std::vector<double> ratios;
  for (const double share : {hot_share(curve, air), cold_share(curve, air)}) {
    ratios.push_back(share * curve.carries_ratio);
    for (const CurvePoint& point : curve.points) ratios.push_back(share * point.rating_ratio);
    if (curve.instant_ratio > 0.0) ratios.push_back(share * curve.instant_ratio);
  }
  ratios = sorted(std::move(ratios), std::less<>());
  ratios.erase(std::unique(ratios.begin(), ratios.end()), ratios.end());
  return ratios;
}

}  // namespace thole
