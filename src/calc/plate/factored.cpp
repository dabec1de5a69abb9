#include "calc/plate/factored.h"

#include <algorithm>

namespace thole {
namespace {

// Wide enough to hide the index arithmetic, narrow enough to stay in the cache.
constexpr int kAbreast = 8;
using Abreast = Eigen::Matrix<double, Eigen::Dynamic, kAbreast, Eigen::RowMajor>;
using Order = Eigen::PermutationMatrix<Eigen::Dynamic, Eigen::Dynamic, int>;

constexpr int kPerNode = 3;

// Approximate minimum degree on the nodes.
Order order_by_nodes(const Eigen::SparseMatrix<double>& lower) {
  const int nodes = static_cast<int>(lower.rows()) / kPerNode;
  std::vector<Eigen::Triplet<double>> links;
  for (int column = 0; column < nodes; ++column) {
    for (Eigen::SparseMatrix<double>::InnerIterator at(lower, kPerNode * column); at; ++at) {
      const int row = static_cast<int>(at.row()) / kPerNode;
      links.emplace_back(row, column, 1.0);
      if (row != column) links.emplace_back(column, row, 1.0);
    }
  }
  Eigen::SparseMatrix<double> graph(nodes, nodes);
  graph.setFromTriplets(links.begin(), links.end());
  Order of_nodes;
  Eigen::AMDOrdering<int>()(graph, of_nodes);
  Order order(lower.rows());
  // Column k of the ordered matrix is column of_nodes[k] of the given one.
  for (int k = 0; k < nodes; ++k)
    for (int c = 0; c < kPerNode; ++c) order.indices()[kPerNode * of_nodes.indices()[k] + c] = kPerNode * k + c;
  return order;
}

}  // namespace

bool Factored::factor(const Eigen::SparseMatrix<double>& lower) {
  const bool known = order_.size() == lower.rows();
  if (!known) order_ = order_by_nodes(lower);
  Eigen::SparseMatrix<double> ordered(lower.rows(), lower.cols());
  ordered.selfadjointView<Eigen::Lower>() = lower.selfadjointView<Eigen::Lower>().twistedBy(order_);
  if (!known) solver_.analyzePattern(ordered);
  solver_.factorize(ordered);
  return solver_.info() == Eigen::Success;
}

void Factored::solve(Eigen::Ref<Eigen::MatrixXd> columns) const {
  const Eigen::SparseMatrix<double>& L = solver_.matrixL().nestedExpression();
  const auto& order = order_.indices();
  const Eigen::Index n = L.rows();
  const int* const starts = L.outerIndexPtr();
  const int* const rows = L.innerIndexPtr();
  const double* const values = L.valuePtr();
  Abreast x(n, kAbreast);
  for (Eigen::Index first = 0; first < columns.cols(); first += kAbreast) {
    const Eigen::Index count = std::min<Eigen::Index>(kAbreast, columns.cols() - first);
    x.setZero();
    for (Eigen::Index i = 0; i < n; ++i)
      for (Eigen::Index k = 0; k < count; ++k) x(order[i], k) = columns(i, first + k);
    for (Eigen::Index j = 0; j < n; ++j) {
      if (x.row(j).isZero(0.0)) continue;  // a load at one node wakes few rows
      const Eigen::Matrix<double, 1, kAbreast> pivot = x.row(j) / values[starts[j]];
      x.row(j) = pivot;
      for (int at = starts[j] + 1; at < starts[j + 1]; ++at) x.row(rows[at]) -= values[at] * pivot;
    }
    for (Eigen::Index j = n - 1; j >= 0; --j) {
      Eigen::Matrix<double, 1, kAbreast> sum = x.row(j);
      for (int at = starts[j] + 1; at < starts[j + 1]; ++at) sum -= values[at] * x.row(rows[at]);
      x.row(j) = sum / values[starts[j]];
    }
    for (Eigen::Index i = 0; i < n; ++i)
      for (Eigen::Index k = 0; k < count; ++k) columns(i, first + k) = x(order[i], k);
  }
}

}  // namespace thole
