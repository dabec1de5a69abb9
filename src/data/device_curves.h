#pragma once

// How long fuses and breakers take to open, by class: bands between the soonest and the latest, at
// multiples of the rating. A device at hand follows its maker's curve; these are what its class
// promises.

#include <span>
#include <string_view>

#include "base/trace.h"
#include "data/parts.h"

namespace thole {

// Stands for "may never open", and for "holds": two hours.
inline constexpr double kMayNeverOpen_s = 7200.0;

struct CurvePoint {
  double rating_ratio = 0.0;
  double shortest_s = 0.0;  // a fuse begins to melt, a breaker to trip
  double longest_s = 0.0;   // the current is gone
};

struct DeviceCurve {
  DeviceClass device_class = DeviceClass::bolt_fuse;
  std::string_view label{};
  DeviceKind kind = DeviceKind::fuse;
  double carries_ratio = 1.0;            // up to here it holds
  std::span<const CurvePoint> points{};  // rising multiples; from the first on it opens for sure
  double instant_ratio = 0.0;  // from here on a breaker's short-circuit release acts; 0: a fuse
  double instant_shortest_s = 0.0;
  double instant_longest_s = 0.0;
  double loss_frac_per_K = 0.0;  // of its rating, above 25 C
  SourceRef source{};
};

std::span<const DeviceCurve> device_curves();
const DeviceCurve& curve_of(DeviceClass device_class);

// What is meant when only "fuse" or "breaker" is said.
DeviceClass usual_class(DeviceKind kind);

// The one that the catalogue names, if it is of the device's kind; else the usual one.
DeviceClass class_of(const ProtectiveDevice& device);

}  // namespace thole
