#include "data/device_curves.h"

#include <algorithm>
#include <array>

#include "data/sources_power.h"

namespace thole {
namespace {

// kBladeCurve
constexpr std::array kBlade{CurvePoint{1.35, 0.75, 1800.0}, CurvePoint{2.0, 0.15, 5.0},
                            CurvePoint{3.5, 0.04, 0.5}, CurvePoint{6.0, 0.02, 0.1}};
// kDeviceCurves
constexpr std::array kBolt{CurvePoint{1.35, 120.0, 1800.0}, CurvePoint{2.0, 1.0, 15.0},
                           CurvePoint{3.5, 0.3, 5.0}, CurvePoint{6.0, 0.1, 1.0}};
// kFastFuseCurve: times to open are those of the largest sizes, 2 h and 10 min.
constexpr std::array kFast{CurvePoint{1.35, 120.0, 7200.0}, CurvePoint{2.0, 5.0, 600.0},
                           CurvePoint{5.0, 0.05, 2.0}, CurvePoint{10.0, 0.004, 0.03}};
// kThermalBreakerCurve: 100 s and 5 s on the published line; soonest half, latest twice as long.
constexpr std::array kThermal{CurvePoint{1.0, 50.0, 200.0}, CurvePoint{2.0, 2.5, 10.0}};
// kMagneticDelays; the medium delay's latest times are those of kDeviceCurves.
constexpr std::array kInstant{CurvePoint{1.35, 0.005, 3600.0}, CurvePoint{2.0, 0.005, 0.1}};
constexpr std::array kShort{CurvePoint{1.35, 0.5, 3600.0}, CurvePoint{2.0, 0.5, 4.0},
                            CurvePoint{6.0, 0.01, 1.0}};
constexpr std::array kMedium{CurvePoint{1.35, 5.0, 3600.0}, CurvePoint{2.0, 5.0, 30.0},
                             CurvePoint{6.0, 0.01, 1.0}};
constexpr std::array kLong{CurvePoint{1.35, 20.0, 3600.0}, CurvePoint{2.0, 20.0, 120.0},
                           CurvePoint{6.0, 0.5, 20.0}};

constexpr double kThermalLoss_frac_per_K = 0.01;  // kCommonPractice: 0.5 to 1 % per K

constexpr DeviceCurve magnetic(DeviceClass device_class, std::string_view label,
                               std::span<const CurvePoint> points, double instant_ratio) {
  return {.device_class = device_class,
          .label = label,
          .kind = DeviceKind::breaker,
          .carries_ratio = 1.0,
          .points = points,
          .instant_ratio = instant_ratio,
          .instant_shortest_s = 0.005,
          .instant_longest_s = 0.1,
          .source = kMagneticDelays};
}

// In the order of DeviceClass.
constexpr std::array kCurves{
    DeviceCurve{.device_class = DeviceClass::blade_fuse,
                .label = "blade fuse",
                .carries_ratio = 1.10,
                .points = kBlade,
                .source = kBladeCurve},
    DeviceCurve{.device_class = DeviceClass::bolt_fuse,
                .label = "bolt-down fuse",
                .carries_ratio = 1.10,
                .points = kBolt,
                .source = kDeviceCurves},
    DeviceCurve{.device_class = DeviceClass::fast_fuse,
                .label = "Class T fuse",
                .carries_ratio = 1.10,
                .points = kFast,
                .source = kFastFuseCurve},
    DeviceCurve{.device_class = DeviceClass::thermal_breaker,
                .label = "thermal breaker",
                .kind = DeviceKind::breaker,
                .carries_ratio = 0.7,
                .points = kThermal,
                .instant_ratio = 10.0,
                .instant_shortest_s = 0.1,
                .instant_longest_s = 0.2,
                .loss_frac_per_K = kThermalLoss_frac_per_K,
                .source = kThermalBreakerCurve},
    magnetic(DeviceClass::magnetic_instant, "breaker without delay", kInstant, 2.0),
    magnetic(DeviceClass::magnetic_short, "breaker of short delay", kShort, 10.0),
    magnetic(DeviceClass::magnetic_medium, "breaker of medium delay", kMedium, 10.0),
    magnetic(DeviceClass::magnetic_long, "breaker of long delay", kLong, 12.0),
};

// More current never takes longer, and the soonest is never after the latest.
constexpr bool falls(const DeviceCurve& curve) {
  double ratio = curve.carries_ratio;
  CurvePoint before{.shortest_s = kMayNeverOpen_s, .longest_s = kMayNeverOpen_s};
  for (const CurvePoint& point : curve.points) {
    if (point.rating_ratio < ratio || point.shortest_s > point.longest_s) return false;
    if (point.shortest_s > before.shortest_s || point.longest_s > before.longest_s) return false;
    ratio = point.rating_ratio;
    before = point;
  }
  return curve.instant_ratio == 0.0 ||
         (curve.instant_ratio >= ratio && curve.instant_shortest_s <= before.shortest_s &&
          curve.instant_longest_s <= before.longest_s);
}
static_assert(std::all_of(kCurves.begin(), kCurves.end(), falls));

constexpr bool in_order() {
  for (std::size_t i = 0; i < kCurves.size(); ++i) {
    if (kCurves[i].device_class != static_cast<DeviceClass>(i)) return false;
  }
  return true;
}
static_assert(in_order());

}  // namespace

std::span<const DeviceCurve> device_curves() { return kCurves; }

const DeviceCurve& curve_of(DeviceClass device_class) {
  return kCurves[static_cast<std::size_t>(device_class)];
}

DeviceClass usual_class(DeviceKind kind) {
  return kind == DeviceKind::fuse ? DeviceClass::bolt_fuse : DeviceClass::magnetic_medium;
}

DeviceClass class_of(const ProtectiveDevice& device) {
  const bool named = device.curve && curve_of(*device.curve).kind == device.kind;
  return named ? *device.curve : usual_class(device.kind);
}

}  // namespace thole
