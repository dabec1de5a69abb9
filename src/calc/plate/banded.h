#pragma once

#include <cstddef>
#include <vector>

#include "calc/plate/columns.h"

namespace thole {

// A symmetric matrix in bands of six rows, each kept from its first entry to the diagonal.
class Banded {
 public:
  Banded() = default;
  // For each band the first that it is tied to, itself at most. All zero.
  explicit Banded(std::vector<std::size_t> first);

  std::size_t rows() const { return kAbreast * first_.size(); }
  double at(std::size_t row, std::size_t column) const;
  // One more band, tied to all before it.
  void grow();
  Banded head(std::size_t bands) const;  // the first of them
  const double* band(std::size_t i) const { return values_.data() + starts_[i]; }
  double* band(std::size_t i) { return values_.data() + starts_[i]; }
  // Both (row, column) and (column, row) are given; what lies above the bands is left out.
  void add(std::size_t row, std::size_t column, double value) {
    const std::size_t i = row / kAbreast;
    if (i >= column / kAbreast) band(i)[kAbreast * (column - kAbreast * first_[i]) + row % kAbreast] += value;
  }
  // Less the product with this matrix's first bands, not factored.
  void take_product_with(const double* columns, double* into, std::size_t bands) const;

  // Cholesky, in place, the bands before `from` being so already; blocks on the diagonal are kept
  // inverted. False: not positive definite.
  bool factor(std::size_t from = 0);
  // Columns are answered in place. Caller must ensure: factored.
  void solve(double* columns) const;

 private:
  const double* diagonal(std::size_t i) const { return band(i) + kBlock * (i - first_[i]); }
  void eliminate(double* columns, std::size_t from, std::size_t until) const;

  std::vector<std::size_t> first_{};
  std::vector<std::size_t> starts_{};
  std::vector<double> values_{};  // of each band column by column
};

}  // namespace thole
