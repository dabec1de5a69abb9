#pragma once

// The discrete Kirchhoff triangle: thin-plate bending, three nodes of (w, w_y, -w_x).
//
// Source: Batoz, Bathe and Ho, Int. J. Num. Meth. Eng. 15 (1980) 1771-1812 (kDiscreteKirchhoff).
// Thin plates only: no shear deformation (under 2 % of the sag when the span is twenty thicknesses).

#include <Eigen/Core>
#include <array>

#include "calc/plate/shape.h"

namespace thole {

using DktMatrix = Eigen::Matrix<double, 9, 9>;
using DktCurvature = Eigen::Matrix<double, 3, 9>;

// Rigidity for one unit of D = E t^3 / (12 (1 - nu^2)).
Eigen::Matrix3d plate_rigidity(double poisson_ratio);

class DktTriangle {
 public:
  // Corners counter-clockwise; Caller must ensure: area > 0.
  explicit DktTriangle(const std::array<PlatePoint, 3>& corners);

  double area_m2() const { return 0.5 * twice_area_m2_; }
  // Curvatures (w_xx, w_yy, 2 w_xy) with the sign of the moments, from the nine unknowns; (0, 0), (1, 0)
  // and (0, 1) are the corners.
  DktCurvature curvature(double xi, double eta) const;
  // Times D gives N/m and N m.
  DktMatrix stiffness(const Eigen::Matrix3d& rigidity) const;

 private:
  using Side = std::array<double, 4>;  // P, q, r, t of the paper; P and t per metre
  double x31_m_, y31_m_, x12_m_, y12_m_;
  double twice_area_m2_;
  Side side4_, side5_, side6_;
};

}  // namespace thole
