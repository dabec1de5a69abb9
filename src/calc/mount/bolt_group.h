#pragma once

// Forces on the bolts of a plate. Axes: x forward, y to port, z up; origin at the group's centroid
// on the faying surface.

#include <vector>

namespace thole {

struct BoltPoint {
  double x_mm = 0.0;
  double y_mm = 0.0;
};

// `row_count` rows of two bolts, `pitch_mm` apart fore and aft and `gauge_mm` athwart, about their
// centroid; aft row first, starboard before port.
std::vector<BoltPoint> bolt_rectangle(int row_count, double pitch_mm, double gauge_mm);

// Second moments of unit bolt areas about the centroid.
struct GroupMoments {
  double x_mm2 = 0.0;      // sum of x^2
  double y_mm2 = 0.0;      // sum of y^2
  double polar_mm2 = 0.0;  // both
};
GroupMoments group_moments(const std::vector<BoltPoint>& bolts);

struct GroupLoad {
  double force_x_N = 0.0;
  double force_y_N = 0.0;
  double force_z_N = 0.0;
  double moment_x_Nm = 0.0;
  double moment_y_Nm = 0.0;
  double moment_z_Nm = 0.0;
};

struct LoadPoint {
  double x_mm = 0.0;
  double y_mm = 0.0;
  double z_mm = 0.0;
};

// The force of `force` (its moments count too) moved from `at` to the centroid:
// Mx = y Fz - z Fy, My = z Fx - x Fz, Mz = x Fy - y Fx.
GroupLoad moved_to_centroid(const GroupLoad& force, const LoadPoint& at);

struct BoltForce {
  double shear_x_N = 0.0;
  double shear_y_N = 0.0;
  double shear_N = 0.0;    // of both
  double tension_N = 0.0;  // negative: pressed
};

// Forces by the elastic method, bolts that push and pull alike (preloaded, no contact):
//   Vx = Fx/n - Mz y/J,  Vy = Fy/n + Mz x/J,  N = Fz/n + Mx y/I_y - My x/I_x
// Source: AISC Manual Part 7; Shigley ch. 8. On the safe side in the plane by 10 to 25 %. At least
// two bolts apart in both directions; `bolts` about their centroid.
std::vector<BoltForce> elastic_forces(const std::vector<BoltPoint>& bolts, const GroupLoad& load);

// Tensions when a rigid plate pivots on its toe ahead of the bolts: N = M (x_p - x) / sum (x_p -
// x)^2.
std::vector<double> toe_tensions_N(const std::vector<BoltPoint>& bolts, double moment_Nm,
                                   double toe_x_mm);

// Tension of each bolt of the front row when it alone holds down a plate that pries over the toe.
double prying_tension_N(double moment_Nm, double lever_mm, int bolts_in_row_count);

}  // namespace thole
