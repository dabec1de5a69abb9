#pragma once

// A factored symmetric matrix that answers many right-hand sides at once.

#include <Eigen/SparseCholesky>
#include <vector>

namespace thole {

class Factored {
 public:
  // False: not positive definite, the structure can move.
  bool factor(const Eigen::SparseMatrix<double>& lower);
  Eigen::Index size() const { return solver_.rows(); }
  // Columns are answered in place, several side by side.
  void solve(Eigen::Ref<Eigen::MatrixXd> columns) const;

 private:
  Eigen::SimplicialLLT<Eigen::SparseMatrix<double>, Eigen::Lower> solver_{};
};

}  // namespace thole
