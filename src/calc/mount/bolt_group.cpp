#include "calc/mount/bolt_group.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace thole {

std::vector<BoltPoint> bolt_rectangle(int row_count, double pitch_mm, double gauge_mm) {
  std::vector<BoltPoint> bolts;
  const double aft_x_mm = -0.5 * pitch_mm * (row_count - 1);
  for (int row = 0; row < row_count; ++row) {
    const double x_mm = aft_x_mm + pitch_mm * row;
    bolts.push_back({.x_mm = x_mm, .y_mm = -0.5 * gauge_mm});
    bolts.push_back({.x_mm = x_mm, .y_mm = 0.5 * gauge_mm});
  }
  return bolts;
}

BoltPattern bolt_pattern(const std::vector<BoltPoint>& places) {
  BoltPattern pattern{.bolts = places};
  if (places.empty()) return pattern;
  pattern.aft_mm = pattern.fore_mm = places.front().x_mm;
  constexpr double kNone_mm = std::numeric_limits<double>::infinity();
  pattern.nearest_mm = pattern.room_mm = kNone_mm;
  for (const BoltPoint& at : places) {
    pattern.middle.x_mm += at.x_mm / double(places.size());
    pattern.middle.y_mm += at.y_mm / double(places.size());
    pattern.aft_mm = std::min(pattern.aft_mm, at.x_mm);
    pattern.fore_mm = std::max(pattern.fore_mm, at.x_mm);
    pattern.half_mm = std::max(pattern.half_mm, std::abs(at.y_mm));
    double next_mm = kNone_mm;
    for (const BoltPoint& other : places) {
      if (&other == &at) continue;
      const double ahead_mm = std::abs(at.x_mm - other.x_mm);
      const double beside_mm = std::abs(at.y_mm - other.y_mm);
      next_mm = std::min(next_mm, std::hypot(ahead_mm, beside_mm));
      pattern.room_mm = std::min(pattern.room_mm, std::max(ahead_mm, beside_mm));
    }
    pattern.nearest_mm = std::min(pattern.nearest_mm, next_mm);
    pattern.farthest_mm = std::max(pattern.farthest_mm, next_mm);
  }
  for (BoltPoint& bolt : pattern.bolts) {
    if (bolt.x_mm >= pattern.fore_mm - kSameRow_mm) ++pattern.front_count;
    bolt.x_mm -= pattern.middle.x_mm;
    bolt.y_mm -= pattern.middle.y_mm;
  }
  if (places.size() == 1) pattern.nearest_mm = pattern.farthest_mm = pattern.room_mm = 0.0;
  return pattern;
}

GroupMoments group_moments(const std::vector<BoltPoint>& bolts) {
  GroupMoments sum{};
  for (const BoltPoint& bolt : bolts) {
    sum.x_mm2 += bolt.x_mm * bolt.x_mm;
    sum.y_mm2 += bolt.y_mm * bolt.y_mm;
    sum.xy_mm2 += bolt.x_mm * bolt.y_mm;
  }
  sum.polar_mm2 = sum.x_mm2 + sum.y_mm2;
  return sum;
}

GroupLoad moved_to_centroid(const GroupLoad& force, const LoadPoint& at) {
  GroupLoad load = force;
  load.moment_x_Nm += (at.y_mm * force.force_z_N - at.z_mm * force.force_y_N) / 1000.0;
  load.moment_y_Nm += (at.z_mm * force.force_x_N - at.x_mm * force.force_z_N) / 1000.0;
  load.moment_z_Nm += (at.x_mm * force.force_y_N - at.y_mm * force.force_x_N) / 1000.0;
  return load;
}

std::vector<BoltForce> elastic_forces(const std::vector<BoltPoint>& bolts, const GroupLoad& load) {
  const GroupMoments sum = group_moments(bolts);
  const double n = static_cast<double>(bolts.size());
  // Tension is a plane over the bolts; its slopes:
  const double det_mm4 = sum.x_mm2 * sum.y_mm2 - sum.xy_mm2 * sum.xy_mm2;
  const double by_x_N_per_mm = 1000.0 * (-load.moment_y_Nm * sum.y_mm2 - load.moment_x_Nm * sum.xy_mm2) / det_mm4;
  const double by_y_N_per_mm = 1000.0 * (load.moment_x_Nm * sum.x_mm2 + load.moment_y_Nm * sum.xy_mm2) / det_mm4;
  std::vector<BoltForce> forces;
  for (const BoltPoint& bolt : bolts) {
    BoltForce force{};
    force.shear_x_N = load.force_x_N / n - 1000.0 * load.moment_z_Nm * bolt.y_mm / sum.polar_mm2;
    force.shear_y_N = load.force_y_N / n + 1000.0 * load.moment_z_Nm * bolt.x_mm / sum.polar_mm2;
    force.shear_N = std::hypot(force.shear_x_N, force.shear_y_N);
    force.tension_N = load.force_z_N / n + by_x_N_per_mm * bolt.x_mm + by_y_N_per_mm * bolt.y_mm;
    forces.push_back(force);
  }
  return forces;
}

std::vector<double> toe_tensions_N(const std::vector<BoltPoint>& bolts, double moment_Nm,
                                   double toe_x_mm) {
  double lever_sum_mm2 = 0.0;
  for (const BoltPoint& bolt : bolts) {
    lever_sum_mm2 += (toe_x_mm - bolt.x_mm) * (toe_x_mm - bolt.x_mm);
  }
  std::vector<double> tensions_N;
  tensions_N.reserve(bolts.size());
  for (const BoltPoint& bolt : bolts) {
    tensions_N.push_back(1000.0 * moment_Nm * (toe_x_mm - bolt.x_mm) / lever_sum_mm2);
  }
  return tensions_N;
}

double prying_tension_N(double moment_Nm, double lever_mm, int bolts_in_row_count) {
  return 1000.0 * moment_Nm / (lever_mm * bolts_in_row_count);
}

}  // namespace thole
