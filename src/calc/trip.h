#pragma once

// When a protective device opens, as a band over the current; and when several in series do.

#include <vector>

#include "data/device_curves.h"

namespace thole {

// Temperatures that a device may have. Thermal breakers open sooner in heat, later in cold.
struct DeviceAir {
  double cold_C = 25.0;
  double hot_C = 25.0;
};

// Between the coldest and the hottest air; curves are calibrated at 25 C.
DeviceAir device_air(double coldest_C, double hottest_C);

struct OpeningBand {
  double shortest_s = kMayNeverOpen_s;  // kMayNeverOpen_s: it holds
  double longest_s = kMayNeverOpen_s;   // kMayNeverOpen_s: it may never open
};

// At a multiple of the rating: straight lines between the class's points on logarithmic scales.
// Beyond the last point a fuse's I^2 t stays (its wire has no time to lose heat), and a breaker's
// time stays until its short-circuit release acts. Between what it carries and its first point a
// device may open, no sooner than at that point, or hold. Source: the curve's.
OpeningBand opening_band(const DeviceCurve& curve, double rating_ratio, DeviceAir air = {});

// Multiple of the rating from which it opens for sure, and up to which it surely holds.
double opens_ratio(const DeviceCurve& curve, DeviceAir air = {});
double holds_ratio(const DeviceCurve& curve, DeviceAir air = {});

// Multiples at which either edge of the band bends or steps, rising. Between two neighbours both
// are straight lines on logarithmic scales.
std::vector<double> bends(const DeviceCurve& curve, DeviceAir air = {});

}  // namespace thole
