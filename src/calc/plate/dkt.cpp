#include "calc/plate/dkt.h"

#include <cmath>

namespace thole {
namespace {

constexpr double kShearFactor = 5.0 / 6.0;  // of a rectangular section

// Rotations (b_x, b_y) = -(w_x, w_y) of a thin plate, from the unknowns of a corner.
constexpr Eigen::Index kTurnX = 2;  // b_x = theta_y
constexpr Eigen::Index kTurnY = 1;  // b_y = -theta_x

}  // namespace

Eigen::Matrix3d plate_rigidity(double poisson_ratio) {
  Eigen::Matrix3d rigidity = Eigen::Matrix3d::Zero();
  rigidity(0, 0) = rigidity(1, 1) = 1.0;
  rigidity(0, 1) = rigidity(1, 0) = poisson_ratio;
  rigidity(2, 2) = 0.5 * (1.0 - poisson_ratio);
  return rigidity;
}

double shear_length_m(double thickness_m, double poisson_ratio) {
  return thickness_m / std::sqrt(6.0 * kShearFactor * (1.0 - poisson_ratio));
}

DktTriangle::DktTriangle(const std::array<PlatePoint, 3>& corners, double shear_length_m)
    : shear_length_m_(shear_length_m) {
  const auto& [one, two, three] = corners;
  x_ = {two.y_m - three.y_m, three.y_m - one.y_m, one.y_m - two.y_m};
  y_ = {three.x_m - two.x_m, one.x_m - three.x_m, two.x_m - one.x_m};
  twice_area_m2_ = x_[1] * y_[2] - x_[2] * y_[1];
  bow_.setZero();
  side_shear_.setZero();
  for (std::size_t k = 0; k < 3; ++k) {
    const std::size_t i = k;
    const std::size_t j = (k + 1) % 3;
    const double dx_m = corners[j].x_m - corners[i].x_m;
    const double dy_m = corners[j].y_m - corners[i].y_m;
    const double length_m = distance_m(corners[i], corners[j]);
    cosine_[k] = dx_m / length_m;
    sine_[k] = dy_m / length_m;
    // 12 times bending over shear rigidity and length squared, as of a beam along the side.
    const double soft = 12.0 * shear_length_m_ * shear_length_m_ / (length_m * length_m);
    // The mean of shear strain along the side is what its bow lacks: w_j - w_i + L (b_i + b_j) / 2 +
    // 2 L bow / 3 = L gamma, gamma = -2 soft bow / 3.
    const auto row = static_cast<Eigen::Index>(k);
    const auto at_i = 3 * static_cast<Eigen::Index>(i);
    const auto at_j = 3 * static_cast<Eigen::Index>(j);
    const double share = 1.5 / (1.0 + soft);
    bow_(row, at_i) = share / length_m;
    bow_(row, at_j) = -share / length_m;
    for (const Eigen::Index at : {at_i, at_j}) {
      bow_(row, at + kTurnX) = -0.5 * share * cosine_[k];
      bow_(row, at + kTurnY) = 0.5 * share * sine_[k];
    }
    side_shear_.row(row) = -(2.0 / 3.0) * soft * bow_.row(row);
  }
}

DktCurvature DktTriangle::curvature(double xi, double eta) const {
  const std::array<double, 3> area{1.0 - xi - eta, xi, eta};
  DktCurvature b = DktCurvature::Zero();
  for (std::size_t i = 0; i < 3; ++i) {
    const auto at = 3 * static_cast<Eigen::Index>(i);
    b(0, at + kTurnX) = b(2, at + kTurnY) = x_[i];
    b(1, at + kTurnY) = b(2, at + kTurnX) = y_[i];
  }
  for (const Eigen::Index turn_y : {kTurnY, 3 + kTurnY, 6 + kTurnY}) b.col(turn_y) = -b.col(turn_y);
  for (std::size_t k = 0; k < 3; ++k) {
    const std::size_t i = k;
    const std::size_t j = (k + 1) % 3;
    // Of the bubble 4 L_i L_j.
    const double along_x = 4.0 * (x_[i] * area[j] + area[i] * x_[j]);
    const double along_y = 4.0 * (y_[i] * area[j] + area[i] * y_[j]);
    const Eigen::Vector3d turned(along_x * cosine_[k], along_y * sine_[k],
                                 along_y * cosine_[k] + along_x * sine_[k]);
    for (const std::size_t end : {i, j}) {
      const auto at = 3 * static_cast<Eigen::Index>(end);
      for (Eigen::Index c = at; c < at + 3; ++c) b.col(c) += bow_(static_cast<Eigen::Index>(k), c) * turned;
    }
  }
  return (1.0 / twice_area_m2_) * b;
}

DktShear DktTriangle::shear(double xi, double eta) const {
  const std::array<double, 3> area{1.0 - xi - eta, xi, eta};
  DktShear b = DktShear::Zero();
  for (std::size_t i = 0; i < 3; ++i) {
    // The vector at a corner whose parts along its two sides are theirs.
    const std::size_t k = i;
    const std::size_t m = (i + 2) % 3;
    const double cross = cosine_[k] * sine_[m] - cosine_[m] * sine_[k];
    const auto of_k = side_shear_.row(static_cast<Eigen::Index>(k));
    const auto of_m = side_shear_.row(static_cast<Eigen::Index>(m));
    b.row(0) += area[i] / cross * (sine_[m] * of_k - sine_[k] * of_m);
    b.row(1) += area[i] / cross * (cosine_[k] * of_m - cosine_[m] * of_k);
  }
  return b;
}

DktMatrix DktTriangle::stiffness(const Eigen::Matrix3d& rigidity, const std::array<DktCurvature, 3>& at_corners) const {
  // Exact with the three mid-side points: curvatures and shear are linear.
  DktMatrix stiffness = DktMatrix::Zero();
  const double weight_m2 = twice_area_m2_ / 6.0;
  for (std::size_t k = 0; k < 3; ++k) {
    const DktCurvature b = 0.5 * (at_corners[k] + at_corners[(k + 1) % 3]);
    const DktCurvature moment = weight_m2 * rigidity.lazyProduct(b);
    stiffness += b.transpose().lazyProduct(moment);
    if (shear_length_m_ > 0.0) {
      const DktShear s = shear(k == 2 ? 0.0 : 0.5, k == 0 ? 0.0 : 0.5);
      const DktShear force = weight_m2 * rigidity(0, 0) / (shear_length_m_ * shear_length_m_) * s;
      stiffness += s.transpose().lazyProduct(force);
    }
  }
  return stiffness;
}

}  // namespace thole
