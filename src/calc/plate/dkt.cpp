#include "calc/plate/dkt.h"

namespace thole {

Eigen::Matrix3d plate_rigidity(double poisson_ratio) {
  Eigen::Matrix3d rigidity = Eigen::Matrix3d::Zero();
  rigidity(0, 0) = rigidity(1, 1) = 1.0;
  rigidity(0, 1) = rigidity(1, 0) = poisson_ratio;
  rigidity(2, 2) = 0.5 * (1.0 - poisson_ratio);
  return rigidity;
}

DktTriangle::DktTriangle(const std::array<PlatePoint, 3>& corners) {
  const auto& [one, two, three] = corners;
  x31_m_ = three.x_m - one.x_m;
  y31_m_ = three.y_m - one.y_m;
  x12_m_ = one.x_m - two.x_m;
  y12_m_ = one.y_m - two.y_m;
  twice_area_m2_ = x31_m_ * y12_m_ - x12_m_ * y31_m_;
  const auto side = [](double x_m, double y_m) {
    const double square_m2 = x_m * x_m + y_m * y_m;
    return Side{-6.0 * x_m / square_m2, 3.0 * x_m * y_m / square_m2, 3.0 * y_m * y_m / square_m2, -6.0 * y_m / square_m2};
  };
  side4_ = side(two.x_m - three.x_m, two.y_m - three.y_m);
  side5_ = side(x31_m_, y31_m_);
  side6_ = side(x12_m_, y12_m_);
}

DktCurvature DktTriangle::curvature(double xi, double eta) const {
  const auto [P4, q4, r4, t4] = side4_;
  const auto [P5, q5, r5, t5] = side5_;
  const auto [P6, q6, r6, t6] = side6_;
  const double from6 = 1.0 - 2.0 * xi;
  const double from5 = 1.0 - 2.0 * eta;
  Eigen::Matrix<double, 1, 9> x_xi, y_xi, x_eta, y_eta;
  x_xi << P6 * from6 + (P5 - P6) * eta, q6 * from6 - (q5 + q6) * eta,
      -4.0 + 6.0 * (xi + eta) + r6 * from6 - eta * (r5 + r6), -P6 * from6 + eta * (P4 + P6),
      q6 * from6 - eta * (q6 - q4), -2.0 + 6.0 * xi + r6 * from6 + eta * (r4 - r6),
      -eta * (P5 + P4), eta * (q4 - q5), -eta * (r5 - r4);
  y_xi << t6 * from6 + eta * (t5 - t6), 1.0 + r6 * from6 - eta * (r5 + r6),
      -q6 * from6 + eta * (q5 + q6), -t6 * from6 + eta * (t4 + t6),
      -1.0 + r6 * from6 + eta * (r4 - r6), -q6 * from6 - eta * (q4 - q6), -eta * (t4 + t5),
      eta * (r4 - r5), -eta * (q4 - q5);
  x_eta << -P5 * from5 - xi * (P6 - P5), q5 * from5 - xi * (q5 + q6),
      -4.0 + 6.0 * (xi + eta) + r5 * from5 - xi * (r5 + r6), xi * (P4 + P6), xi * (q4 - q6),
      -xi * (r6 - r4), P5 * from5 - xi * (P4 + P5), q5 * from5 + xi * (q4 - q5),
      -2.0 + 6.0 * eta + r5 * from5 + xi * (r4 - r5);
  y_eta << -t5 * from5 - xi * (t6 - t5), 1.0 + r5 * from5 - xi * (r5 + r6),
      -q5 * from5 + xi * (q5 + q6), xi * (t4 + t6), xi * (r4 - r6), -xi * (q4 - q6),
      t5 * from5 - xi * (t4 + t5), -1.0 + r5 * from5 + xi * (r4 - r5),
      -q5 * from5 - xi * (q4 - q5);
  DktCurvature b;
  b.row(0) = y31_m_ * x_xi + y12_m_ * x_eta;
  b.row(1) = -x31_m_ * y_xi - x12_m_ * y_eta;
  b.row(2) = -x31_m_ * x_xi - x12_m_ * x_eta + y31_m_ * y_xi + y12_m_ * y_eta;
  return b / twice_area_m2_;
}

DktMatrix DktTriangle::stiffness(const Eigen::Matrix3d& rigidity) const {
  // Exact with the three mid-side points: the curvatures are linear.
  DktMatrix stiffness = DktMatrix::Zero();
  for (const auto& [xi, eta] : {std::array{0.5, 0.0}, std::array{0.5, 0.5}, std::array{0.0, 0.5}}) {
    const DktCurvature b = curvature(xi, eta);
    stiffness.noalias() += (twice_area_m2_ / 6.0) * (b.transpose() * (rigidity * b));
  }
  return stiffness;
}

}  // namespace thole
