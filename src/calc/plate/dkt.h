#pragma once

// A bending triangle of three nodes, each (w, w_y, -w_x), with the slope along each side quadratic and
// tied to the deflections at the side's ends. With shear it is the discrete Kirchhoff-Mindlin triangle;
// without, the discrete Kirchhoff triangle.
//
// Sources: Batoz, Bathe and Ho, Int. J. Num. Meth. Eng. 15 (1980) 1771-1812 (kDiscreteKirchhoff);
// shear: Katili, Int. J. Num. Meth. Eng. 36 (1993) 1859-1883 (kKirchhoffMindlin, recalled).

#include <Eigen/Core>
#include <array>

#include "calc/plate/shape.h"

namespace thole {

using DktMatrix = Eigen::Matrix<double, 9, 9>;
using DktCurvature = Eigen::Matrix<double, 3, 9>;
using DktShear = Eigen::Matrix<double, 2, 9>;

// Rigidity for one unit of D = E t^3 / (12 (1 - nu^2)).
Eigen::Matrix3d plate_rigidity(double poisson_ratio);

class DktTriangle {
 public:
  // Corners counter-clockwise. `shear_length_m`: square root of bending over shear rigidity,
  // t / sqrt(6 kappa (1 - nu)); 0: a thin plate. Caller must ensure: area > 0.
  explicit DktTriangle(const std::array<PlatePoint, 3>& corners, double shear_length_m = 0.0);

  double area_m2() const { return 0.5 * twice_area_m2_; }
  // Curvatures (w_xx, w_yy, 2 w_xy) with the sign of the moments, from the nine unknowns; (0, 0), (1, 0)
  // and (0, 1) are the corners.
  DktCurvature curvature(double xi, double eta) const;
  std::array<DktCurvature, 3> at_corners() const { return {curvature(0.0, 0.0), curvature(1.0, 0.0), curvature(0.0, 1.0)}; }
  // Times D gives N/m and N m. `at_corners`: of this triangle.
  DktMatrix stiffness(const Eigen::Matrix3d& rigidity, const std::array<DktCurvature, 3>& at_corners) const;
  DktMatrix stiffness(const Eigen::Matrix3d& rigidity) const { return stiffness(rigidity, at_corners()); }

 private:
  DktShear shear(double xi, double eta) const;

  double shear_length_m_;
  double twice_area_m2_;
  std::array<double, 3> x_;                    // derivatives of the area coordinates, times 2 A
  std::array<double, 3> y_;
  std::array<double, 3> cosine_;               // of the sides 1-2, 2-3, 3-1
  std::array<double, 3> sine_;
  Eigen::Matrix<double, 3, 9> bow_;            // of the slope at each side's middle, from the unknowns
  Eigen::Matrix<double, 3, 9> side_shear_;     // along each side
};

// t / sqrt(6 kappa (1 - nu)), kappa 5/6.
double shear_length_m(double thickness_m, double poisson_ratio);

}  // namespace thole
