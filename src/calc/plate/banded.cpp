#include "calc/plate/banded.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace thole {
namespace {

// A symmetric block becomes the inverse of its triangular factor, column by column. False: not
// positive definite.
bool invert_factor(double* own) {
  const auto at = [own](std::size_t row, std::size_t column) -> double& { return own[kAbreast * column + row]; };
  for (std::size_t c = 0; c < kAbreast; ++c) {
    for (std::size_t k = 0; k < c; ++k)
      for (std::size_t row = c; row < kAbreast; ++row) at(row, c) -= at(c, k) * at(row, k);
    if (!(at(c, c) > 0.0)) return false;
    const double scale = 1.0 / std::sqrt(at(c, c));
    for (std::size_t row = c + 1; row < kAbreast; ++row) at(row, c) *= scale;
    at(c, c) = scale;
  }
  for (std::size_t c = kAbreast; c-- > 0;)
    for (std::size_t row = kAbreast; row-- > c + 1;) {
      double sum = 0.0;
      for (std::size_t k = c + 1; k <= row; ++k) sum += at(row, k) * at(k, c);
      at(row, c) = -at(c, c) * sum;
    }
  return true;
}

}  // namespace

Banded::Banded(std::vector<std::size_t> first) : first_(std::move(first)) {
  std::size_t size = 0;
  for (std::size_t i = 0; i < first_.size(); ++i) {
    starts_.push_back(size);
    size += kBlock * (i + 1 - first_[i]);
  }
  values_.assign(size, 0.0);
}

void Banded::grow() {
  starts_.push_back(values_.size());
  first_.push_back(0);
  values_.resize(values_.size() + kBlock * first_.size());
}

Banded Banded::head(std::size_t bands) const {
  Banded part(std::vector<std::size_t>(first_.begin(), first_.begin() + static_cast<std::ptrdiff_t>(bands)));
  std::copy_n(values_.begin(), part.values_.size(), part.values_.begin());
  return part;
}

double Banded::at(std::size_t row, std::size_t column) const {
  if (row < column) std::swap(row, column);
  const std::size_t i = row / kAbreast;
  return column / kAbreast < first_[i] ? 0.0 : band(i)[kAbreast * (column - kAbreast * first_[i]) + row % kAbreast];
}

void Banded::take_product_with(const double* columns, double* into, std::size_t bands) const {
  for (std::size_t i = 0; i < bands; ++i) {
    const std::size_t from = kBlock * first_[i];
    const std::size_t before = kAbreast * (i - first_[i]);
    take_product(into + kBlock * i, band(i), columns + from, before + kAbreast);
    take_mixture(into + from, band(i), columns + kBlock * i, before);
  }
}

// Forward through the factor: what makes the columns abreast an answer makes a band its part of the
// factor.
void Banded::eliminate(double* columns, std::size_t from, std::size_t until) const {
  for (std::size_t i = from; i < until; ++i) {
    const std::size_t both = std::max(from, first_[i]);
    go_forward(columns + kBlock * (i - from), band(i) + kBlock * (both - first_[i]), columns + kBlock * (both - from),
               kAbreast * (i - both), diagonal(i));
  }
}

bool Banded::factor(std::size_t from) {
  for (std::size_t i = from; i < first_.size(); ++i) {
    eliminate(band(i), first_[i], i);
    double* const own = band(i) + kBlock * (i - first_[i]);
    take_product(own, band(i), band(i), kAbreast * (i - first_[i]));
    if (!invert_factor(own)) return false;
  }
  return true;
}

void Banded::solve(double* columns) const {
  eliminate(columns, 0, first_.size());
  for (std::size_t i = first_.size(); i-- > 0;)
    go_back(columns + kBlock * first_[i], band(i), columns + kBlock * i, kAbreast * (i - first_[i]), diagonal(i));
}

}  // namespace thole
