#pragma once

// Bolts: the rows that BoltOffer::size and BoltOffer::grade name, and what one bolt carries.

#include <string_view>

#include "base/trace.h"

namespace thole {

enum class ThreadSeries { metric, inch };

struct BoltSize {
  std::string_view name{};  // "M8", "3/8-16"
  ThreadSeries series = ThreadSeries::metric;
  double diameter_mm = 0.0;
  double thread_pitch_mm = 0.0;
  double hole_mm = 0.0;              // clearance hole, medium (ISO 273) or normal (ASME B18.2.8)
  double countersunk_head_mm = 0.0;    // theoretical height: 90 deg (metric), 82 deg (inch)
  double countersunk_across_mm = 0.0;  // theoretical diameter of that head: of the countersink, too
  double washer_mm = 0.0;            // outside diameter of a thick washer of the large series
};

struct BoltGrade {
  std::string_view name{};  // "A4-70", "F593G"
  double tensile_MPa = 0.0;
  double yield_MPa = 0.0;
  SourceRef source{};
  bool carbon_steel = false;  // it rusts: zinc and paint only put that off
};

// Null when there is none of this name.
const BoltSize* find_bolt_size(std::string_view name);
const BoltGrade* find_bolt_grade(std::string_view name);

// Area that carries the tension in the thread: pi/4 (d - 0.9382 P)^2 metric, (d - 0.9743/n) inch.
// Source: ISO 898-1, ASME B1.1.
double stress_area_mm2(const BoltSize& size);

// How much of that a head holds, EN 1993-1-8: 0.63 against 0.9.
inline double bolt_head_factor(bool countersunk) { return countersunk ? 0.7 : 1.0; }

// Breaking force and yield force of the thread.
double tensile_N(const BoltSize& size, const BoltGrade& grade);
double yield_N(const BoltSize& size, const BoltGrade& grade);

// Design resistances: shear with the thread in the plane 0.5 f_ub A_s / 1.25; tension k2 f_ub A_s /
// 1.25 with k2 0.9, or 0.63 for a countersunk head. Source: EN 1993-1-8 Table 3.4 (recalled).
double shear_resistance_N(const BoltSize& size, const BoltGrade& grade);
double tension_resistance_N(const BoltSize& size, const BoltGrade& grade, bool countersunk);

// T = K d F. K is the nut factor: 0.20 as received, 0.15 wet with bedding compound.
double torque_Nm(double nut_factor, double diameter_mm, double preload_N);

}  // namespace thole
