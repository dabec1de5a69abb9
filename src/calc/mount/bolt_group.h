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

// Bolts by where they stand on their plate, and what their places decide.
struct BoltPattern {
  std::vector<BoltPoint> bolts{};  // about their middle, in the order given
  BoltPoint middle{};              // forward of the plate's aft edge, to port of its middle line
  double aft_mm = 0.0;             // aftmost and foremost bolt, forward of the aft edge
  double fore_mm = 0.0;
  double half_mm = 0.0;     // the bolt farthest from the middle line
  double room_mm = 0.0;     // side of the largest squares, edges fore and aft, that fit under all bolts
  double nearest_mm = 0.0;   // least distance of two bolts
  double farthest_mm = 0.0;  // the most that a bolt stands from the one next to it
  int front_count = 0;      // in the front row: no farther behind the foremost than kSameRow_mm

  double span_mm() const { return fore_mm - aft_mm; }
  double front_mm() const { return fore_mm - middle.x_mm; }  // the foremost ahead of the middle
};
inline constexpr double kSameRow_mm = 5.0;

// `places`: x forward of the plate's aft edge, y to port of its middle line. At least one; of a single
// bolt room and distance are 0.
BoltPattern bolt_pattern(const std::vector<BoltPoint>& places);

// Second moments of unit bolt areas about the centroid.
struct GroupMoments {
  double x_mm2 = 0.0;      // sum of x^2
  double y_mm2 = 0.0;      // sum of y^2
  double xy_mm2 = 0.0;     // sum of x y: 0 when the bolts are their own mirror image
  double polar_mm2 = 0.0;  // x^2 and y^2
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
// and bolts that are no mirror image bend about their own two axes:
//   N = Fz/n + (x (-My I_y - Mx I_xy) + y (Mx I_x + My I_xy)) / (I_x I_y - I_xy^2)
// Source: AISC Manual Part 7; Shigley ch. 8. On the safe side in the plane by 10 to 25 %. At least
// three bolts that do not stand in one line; `bolts` about their centroid.
std::vector<BoltForce> elastic_forces(const std::vector<BoltPoint>& bolts, const GroupLoad& load);

// Tensions when a rigid plate pivots on its toe ahead of the bolts: N = M (x_p - x) / sum (x_p -
// x)^2.
std::vector<double> toe_tensions_N(const std::vector<BoltPoint>& bolts, double moment_Nm,
                                   double toe_x_mm);

// Tension of each bolt of the front row when it alone holds down a plate that pries over the toe.
double prying_tension_N(double moment_Nm, double lever_mm, int bolts_in_row_count);

}  // namespace thole
