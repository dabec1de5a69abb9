#pragma once

// A factored symmetric matrix of three unknowns to a node that answers many right-hand sides at once.

#include <Eigen/SparseCholesky>
#include <vector>

namespace thole {

class Factored {
 public:
  // False: not positive definite, the structure can move. The same pattern each time: it is ordered once.
  bool factor(const Eigen::SparseMatrix<double>& lower);
  Eigen::Index size() const { return solver_.rows(); }
  // Columns are answered in place, several side by side.
  void solve(Eigen::Ref<Eigen::MatrixXd> columns) const;

 private:
  // Ordered by nodes: a ninth of the work, and the factor is as sparse.
  Eigen::PermutationMatrix<Eigen::Dynamic, Eigen::Dynamic, int> order_{};
  Eigen::SimplicialLLT<Eigen::SparseMatrix<double>, Eigen::Lower, Eigen::NaturalOrdering<int>> solver_{};
};

}  // namespace thole
