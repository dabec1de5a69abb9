#include "data/bolts.h"

#include <array>
#include <numbers>

#include "base/units.h"
#include "data/sources_mount.h"

namespace thole {
namespace {

constexpr double mm_from_in(double length_in) { return 1000.0 * m_from_in(length_in); }

constexpr BoltSize metric(std::string_view name, double diameter_mm, double thread_pitch_mm,
                          double hole_mm, double countersunk_head_mm, double countersunk_across_mm) {
  return {name,    ThreadSeries::metric, diameter_mm,           thread_pitch_mm,
          hole_mm, countersunk_head_mm,  countersunk_across_mm, 3.0 * diameter_mm};
}

constexpr BoltSize inch(std::string_view name, double diameter_in, double threads_per_in,
                        double hole_in, double countersunk_head_in, double countersunk_across_in) {
  return {name,
          ThreadSeries::inch,
          mm_from_in(diameter_in),
          mm_from_in(1.0 / threads_per_in),
          mm_from_in(hole_in),
          mm_from_in(countersunk_head_in),
          mm_from_in(countersunk_across_in),
          3.0 * mm_from_in(diameter_in)};
}

// Holes: kHoleSizes. Heads: kHeadSizes. Washers, three diameters across: kWasherSizes.
constexpr std::array kSizes{
    metric("M6", 6.0, 1.0, 6.6, 3.3, 13.44),         metric("M8", 8.0, 1.25, 9.0, 4.4, 17.92),
    metric("M10", 10.0, 1.5, 11.0, 5.5, 22.40),      metric("M12", 12.0, 1.75, 13.5, 6.5, 26.88),
    inch("1/4-20", 0.25, 20.0, 0.281, 0.161, 0.531), inch("5/16-18", 0.3125, 18.0, 0.344, 0.198, 0.656),
    inch("3/8-16", 0.375, 16.0, 0.406, 0.234, 0.781), inch("1/2-13", 0.5, 13.0, 0.562, 0.251, 0.938),
};

constexpr double MPa_from_ksi(double stress_ksi) { return stress_ksi * 6.894757293168; }

constexpr std::array kGrades{
    BoltGrade{"A2-50", 500, 210, kIso3506},
    BoltGrade{"A2-70", 700, 450, kIso3506},
    BoltGrade{"A2-80", 800, 600, kIso3506},
    BoltGrade{"A4-50", 500, 210, kIso3506},
    BoltGrade{"A4-70", 700, 450, kIso3506},
    BoltGrade{"A4-80", 800, 600, kIso3506},
    BoltGrade{"F593C", MPa_from_ksi(100), MPa_from_ksi(65), kAstmF593},
    BoltGrade{"F593F", MPa_from_ksi(75), MPa_from_ksi(30), kAstmF593},
    BoltGrade{"F593G", MPa_from_ksi(100), MPa_from_ksi(65), kAstmF593},
    BoltGrade{"J429-2", MPa_from_ksi(74), MPa_from_ksi(57), kSaeJ429, true},
    BoltGrade{"J429-5", MPa_from_ksi(120), MPa_from_ksi(92), kSaeJ429, true},
    BoltGrade{"J429-8", MPa_from_ksi(150), MPa_from_ksi(130), kSaeJ429, true},
};

// EN 1993-1-8 Table 3.4 and EN 1993-1-4 (recalled): thread in the shear plane, hexagon,
// countersunk.
constexpr double kShearThread_factor = 0.5;
constexpr double kTensionHexagon_factor = 0.9;
constexpr double kTensionCountersunk_factor = 0.63;
constexpr double kGammaM2_factor = 1.25;

template <class Row, std::size_t count>
const Row* find_by_name(const std::array<Row, count>& rows, std::string_view name) {
  for (const Row& row : rows) {
    if (row.name == name) return &row;
  }
  return nullptr;
}

}  // namespace

const BoltSize* find_bolt_size(std::string_view name) { return find_by_name(kSizes, name); }

const BoltGrade* find_bolt_grade(std::string_view name) { return find_by_name(kGrades, name); }

double stress_area_mm2(const BoltSize& size) {
  // The two standards round the same thread geometry differently.
  const double depth_factor = size.series == ThreadSeries::metric ? 0.9382 : 0.9743;
  const double core_mm = size.diameter_mm - depth_factor * size.thread_pitch_mm;
  return std::numbers::pi / 4.0 * core_mm * core_mm;
}

double tensile_N(const BoltSize& size, const BoltGrade& grade) {
  return grade.tensile_MPa * stress_area_mm2(size);
}

double yield_N(const BoltSize& size, const BoltGrade& grade) {
  return grade.yield_MPa * stress_area_mm2(size);
}

double shear_resistance_N(const BoltSize& size, const BoltGrade& grade) {
  return kShearThread_factor * tensile_N(size, grade) / kGammaM2_factor;
}

double tension_resistance_N(const BoltSize& size, const BoltGrade& grade, bool countersunk) {
  const double factor = countersunk ? kTensionCountersunk_factor : kTensionHexagon_factor;
  return factor * tensile_N(size, grade) / kGammaM2_factor;
}

double torque_Nm(double nut_factor, double diameter_mm, double preload_N) {
  return nut_factor * diameter_mm / 1000.0 * preload_N;
}

}  // namespace thole
