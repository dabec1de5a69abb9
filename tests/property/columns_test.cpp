// Sums six columns abreast: the same bits in whatever registers; and the matrix in bands that rests
// on them, against the dense one of a reference library.

#include "calc/plate/columns.h"

#include <doctest/doctest.h>

#include <Eigen/Cholesky>
#include <array>
#include <cstring>
#include <random>

#include "calc/plate/banded.h"
#include "support.h"

using namespace thole;

namespace {

Abreast random_columns(std::mt19937& dice, std::size_t rows) {
  std::uniform_real_distribution<double> any(-1.0, 1.0);
  Abreast columns(kAbreast * rows);
  for (double& each : columns) each = any(dice);
  return columns;
}

bool same_bits(const Abreast& a, const Abreast& b) {
  return a.size() == b.size() && (a.empty() || std::memcmp(a.data(), b.data(), a.size() * sizeof(double)) == 0);
}

// As columns.h says it, one number after the other.
void plain_product(Abreast& into, const Abreast& a, const Abreast& b, std::size_t rows) {
  for (std::size_t row = 0; row < rows; ++row)
    for (std::size_t i = 0; i < kAbreast; ++i)
      for (std::size_t j = 0; j < kAbreast; ++j)
        into[kAbreast * i + j] -= a[kAbreast * row + i] * b[kAbreast * row + j];
}
void plain_mixture(Abreast& into, const Abreast& a, const Abreast& shares, std::size_t rows) {
  for (std::size_t row = 0; row < rows; ++row)
    for (std::size_t j = 0; j < kAbreast; ++j)
      for (std::size_t i = 0; i < kAbreast; i += 3) {
        const auto part = [&](std::size_t k) { return a[kAbreast * row + k] * shares[kAbreast * k + j]; };
        into[kAbreast * row + j] -= part(i) + part(i + 1) + part(i + 2);
      }
}
// The block's triangle or the transposed one, times the rows.
Abreast plain_turn(const Abreast& rows, const Abreast& inverse, bool transposed) {
  Abreast turned(kBlock);
  for (std::size_t row = 0; row < kAbreast; ++row)
    for (std::size_t j = 0; j < kAbreast; ++j) {
      double sum = inverse[kAbreast * row + row] * rows[kAbreast * row + j];
      for (std::size_t k = 0; k < kAbreast; ++k) {
        if (transposed ? k <= row : k >= row) continue;
        sum += inverse[transposed ? kAbreast * row + k : kAbreast * k + row] * rows[kAbreast * k + j];
      }
      turned[kAbreast * row + j] = sum;
    }
  return turned;
}

}  // namespace

TEST_CASE("sums over six columns have the same bits in all registers that a machine has") {
  std::mt19937 dice(41);
  REQUIRE(!column_loops().empty());
  for (const std::size_t rows : {std::size_t{0}, std::size_t{1}, std::size_t{6}, std::size_t{41}}) {
    const Abreast a = random_columns(dice, rows), b = random_columns(dice, rows), block = random_columns(dice, kAbreast),
                  inverse = random_columns(dice, kAbreast);
    Abreast product = block, mixture = b;
    plain_product(product, a, b, rows);
    plain_mixture(mixture, a, block, rows);
    const Abreast forward = plain_turn(product, inverse, false), back = plain_turn(block, inverse, true);
    Abreast mixed_back = b;
    plain_mixture(mixed_back, a, back, rows);
    for (const ColumnLoops& loops : column_loops()) {
      CAPTURE(rows);
      CAPTURE(loops.registers);
      Abreast into = block;
      loops.product(into.data(), a.data(), b.data(), rows);
      CHECK(same_bits(into, product));
      into = b;
      loops.mixture(into.data(), a.data(), block.data(), rows);
      CHECK(same_bits(into, mixture));
      into = block;
      loops.forward(into.data(), a.data(), b.data(), rows, inverse.data());
      CHECK(same_bits(into, forward));
      into = b;
      Abreast here = block;
      loops.back(into.data(), a.data(), here.data(), rows, inverse.data());
      CHECK(same_bits(here, back));
      CHECK(same_bits(into, mixed_back));
    }
  }
}

// Reference: Eigen's dense LLT.
TEST_CASE("a matrix in bands answers as the same matrix, dense, by Eigen") {
  std::mt19937 dice(42);
  std::uniform_real_distribution<double> any(-1.0, 1.0);
  for (int trial = 0; trial < 12; ++trial) {
    const auto bands = static_cast<std::size_t>(3 + trial);
    std::vector<std::size_t> first(bands);
    for (std::size_t i = 0; i < bands; ++i)
      first[i] = i - std::min(i, static_cast<std::size_t>(std::uniform_int_distribution<int>(0, 3)(dice)));
    Banded banded(first);
    const auto size = static_cast<Eigen::Index>(banded.rows());
    Eigen::MatrixXd dense = Eigen::MatrixXd::Zero(size, size);
    for (Eigen::Index row = 0; row < size; ++row)
      for (Eigen::Index column = 0; column <= row; ++column) {
        const auto i = static_cast<std::size_t>(row), j = static_cast<std::size_t>(column);
        if (j / kAbreast < first[i / kAbreast]) continue;
        const double value = row == column ? 20.0 + any(dice) : any(dice);
        dense(row, column) = dense(column, row) = value;
        banded.add(i, j, value);
        if (i != j) banded.add(j, i, value);
        CHECK(banded.at(i, j) == value);
      }
    Abreast answer = random_columns(dice, banded.rows());
    Eigen::MatrixXd wanted(size, static_cast<Eigen::Index>(kAbreast));
    for (Eigen::Index row = 0; row < size; ++row)
      for (std::size_t c = 0; c < kAbreast; ++c)
        wanted(row, static_cast<Eigen::Index>(c)) = answer[kAbreast * static_cast<std::size_t>(row) + c];
    wanted = dense.llt().solve(wanted);
    REQUIRE(banded.factor());
    banded.solve(answer.data());
    for (Eigen::Index row = 0; row < size; ++row)
      for (std::size_t c = 0; c < kAbreast; ++c)
        CHECK(std::abs(answer[kAbreast * static_cast<std::size_t>(row) + c] - wanted(row, static_cast<Eigen::Index>(c))) <
              1e-14);
  }
  Banded none(std::vector<std::size_t>{0});
  for (std::size_t k = 0; k < kAbreast; ++k) none.add(k, k, k == 4 ? -1.0 : 1.0);
  CHECK_FALSE(none.factor());
}
