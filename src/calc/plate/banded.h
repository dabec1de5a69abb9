#pragma once

// Sums that the plate's elements need, always six columns abreast: they fill the registers.

#include <cstddef>
#include <vector>

namespace thole {

inline constexpr std::size_t kAbreast = 6;
using Abreast = std::vector<double>;  // six columns, row by row

// Less the product, over `rows` rows: into[i][j] -= sum of a[row][i] * b[row][j].
void take_product(double* into, const double* a, const double* b, std::size_t rows);
// into[row][j] -= sum of a[row][i] * shares[i][j].
void take_mixture(double* into, const double* a, const double* shares, std::size_t rows);
// Six shapes made square to each other by the work of the forces that go with them, and this to
// one; a shape that says little beyond those before it becomes nothing.
void make_square(Abreast& shapes, Abreast& forces);

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
  void add(std::size_t row, std::size_t column, double value);
  // Less the product with this matrix's first bands, not factored.
  void take_product_with(const double* columns, double* into, std::size_t bands) const;

  // Cholesky, in place, the bands before `from` being so already. False: not positive definite.
  bool factor(std::size_t from = 0);
  // Columns are answered in place. Caller must ensure: factored.
  void solve(double* columns) const;

 private:
  const double* diagonal(std::size_t i) const { return band(i) + kAbreast * kAbreast * (i - first_[i]); }
  void eliminate(double* columns, std::size_t from, std::size_t until) const;

  std::vector<std::size_t> first_{};
  std::vector<std::size_t> starts_{};
  std::vector<double> values_{};  // of each band column by column
};

}  // namespace thole
