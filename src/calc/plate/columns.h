#pragma once

// Sums over columns, always six abreast: they fill the registers. Each machine takes the widest
// that it has; all give the same bits.

#include <cstddef>
#include <vector>

namespace thole {

inline constexpr std::size_t kAbreast = 6;
inline constexpr std::size_t kBlock = kAbreast * kAbreast;
using Abreast = std::vector<double>;  // six columns, row by row

// Less the product, over `rows` rows: into[i][j] -= sum of a[row][i] * b[row][j].
void take_product(double* into, const double* a, const double* b, std::size_t rows);
// into[row][j] -= sum of a[row][i] * shares[i][j].
void take_mixture(double* into, const double* a, const double* shares, std::size_t rows);
// The same on the way forward and back through a triangular factor. `inverse`: of its block on the
// diagonal, column by column. First here -= the product, then here = inverse * here;
void go_forward(double* here, const double* a, const double* b, std::size_t rows, const double* inverse);
// first here = transposed inverse * here, then into -= the mixture.
void go_back(double* into, const double* a, double* here, std::size_t rows, const double* inverse);

// The same four by the registers that they use.
struct ColumnLoops {
  const char* registers;
  void (*product)(double* into, const double* a, const double* b, std::size_t rows);
  void (*mixture)(double* into, const double* a, const double* shares, std::size_t rows);
  void (*forward)(double* here, const double* a, const double* b, std::size_t rows, const double* inverse);
  void (*back)(double* into, const double* a, double* here, std::size_t rows, const double* inverse);
};
const std::vector<ColumnLoops>& column_loops();  // that this machine can run, the widest first

// Six shapes made square to each other by the work of the forces that go with them, and this to
// one; a shape that says little beyond those before it becomes nothing.
void make_square(Abreast& shapes, Abreast& forces);

}  // namespace thole
