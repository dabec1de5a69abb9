#include "calc/plate/banded.h"

#include <Eigen/Core>
#include <algorithm>
#include <cmath>

namespace thole {
namespace {

constexpr std::size_t kBlock = kAbreast * kAbreast;
using Six = Eigen::Array<double, kAbreast, 1>;

Eigen::Map<const Six> six(const double* from) { return Eigen::Map<const Six>(from); }
Eigen::Map<Six> six(double* from) { return Eigen::Map<Six>(from); }

}  // namespace

void take_product(double* into, const double* a, const double* b, std::size_t rows) {
  for (std::size_t i = 0; i < kAbreast; i += 3, into += 3 * kAbreast, a += 3) {
    Six one = six(into), two = six(into + kAbreast), three = six(into + 2 * kAbreast);
    for (std::size_t row = 0; row < rows; ++row) {
      const double* const shares = a + kAbreast * row;
      const Six of = six(b + kAbreast * row);
      one -= shares[0] * of;
      two -= shares[1] * of;
      three -= shares[2] * of;
    }
    six(into) = one;
    six(into + kAbreast) = two;
    six(into + 2 * kAbreast) = three;
  }
}

void take_mixture(double* into, const double* a, const double* shares, std::size_t rows) {
  for (std::size_t i = 0; i < kAbreast; i += 3, shares += 3 * kAbreast, a += 3) {
    const Six one = six(shares), two = six(shares + kAbreast), three = six(shares + 2 * kAbreast);
    for (std::size_t row = 0; row < rows; ++row) {
      const double* const of = a + kAbreast * row;
      six(into + kAbreast * row) -= of[0] * one + of[1] * two + of[2] * three;
    }
  }
}

void make_square(Abreast& shapes, Abreast& forces, Abreast* more) {
  constexpr double kSaysLittle_frac = 1e-8;
  double lost[kBlock] = {}, mixed[kBlock] = {};  // minus the work of each pair; minus the new shapes in the old ones
  take_product(lost, shapes.data(), forces.data(), shapes.size() / kAbreast);
  for (std::size_t c = 0; c < kAbreast; ++c) {
    double part[kAbreast] = {};
    part[c] = 1.0;
    const auto work = [&](const double* with, std::size_t step) {
      double sum = 0.0;
      for (std::size_t i = 0; i < kAbreast; ++i)
        for (std::size_t k = 0; k < kAbreast; ++k) sum -= with[step * i] * lost[kAbreast * i + k] * part[k];
      return sum;
    };
    for (std::size_t other = 0; other < c; ++other) {
      const double share = work(mixed + other, kAbreast);
      for (std::size_t i = 0; i < kAbreast; ++i) part[i] -= share * mixed[kAbreast * i + other];
    }
    const double left = work(part, 1);
    const double scale = left > -kSaysLittle_frac * lost[kAbreast * c + c] ? -1.0 / std::sqrt(left) : 0.0;
    for (std::size_t i = 0; i < kAbreast; ++i) mixed[kAbreast * i + c] = scale * part[i];
  }
  for (Abreast* each : {&shapes, &forces, more}) {
    if (each == nullptr) continue;
    Abreast now(each->size());
    take_mixture(now.data(), each->data(), mixed, now.size() / kAbreast);
    *each = std::move(now);
  }
}

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

void Banded::add(std::size_t row, std::size_t column, double value) {
  const std::size_t i = row / kAbreast;
  if (i >= column / kAbreast) band(i)[kAbreast * (column - kAbreast * first_[i]) + row % kAbreast] += value;
}

void Banded::take_product_with(const double* columns, double* into) const {
  for (std::size_t i = 0; i < first_.size(); ++i) {
    const std::size_t from = kBlock * first_[i];
    const std::size_t before = kAbreast * (i - first_[i]);
    take_product(into + kBlock * i, band(i), columns + from, before + kAbreast);
    take_mixture(into + from, band(i), columns + kBlock * i, before);
  }
}

// Forward through the factor: what makes the columns abreast an answer makes a band its part of the factor.
void Banded::eliminate(double* columns, std::size_t from, std::size_t until) const {
  for (std::size_t i = from; i < until; ++i) {
    double* const here = columns + kBlock * (i - from);
    const std::size_t both = std::max(from, first_[i]);
    take_product(here, band(i) + kBlock * (both - first_[i]), columns + kBlock * (both - from), kAbreast * (i - both));
    const double* const own = diagonal(i);
    for (std::size_t c = 0; c < kAbreast; ++c) {
      Six sum = six(here + kAbreast * c);
      for (std::size_t k = 0; k < c; ++k) sum -= own[kAbreast * k + c] * six(here + kAbreast * k);
      six(here + kAbreast * c) = own[kAbreast * c + c] * sum;
    }
  }
}

bool Banded::factor(std::size_t from) {
  for (std::size_t i = from; i < first_.size(); ++i) {
    eliminate(band(i), first_[i], i);
    double* const own = band(i) + kBlock * (i - first_[i]);
    take_product(own, band(i), band(i), kAbreast * (i - first_[i]));
    for (std::size_t c = 0; c < kAbreast; ++c) {
      Six sum = six(own + kAbreast * c);
      for (std::size_t k = 0; k < c; ++k) sum -= own[kAbreast * k + c] * six(own + kAbreast * k);
      const double pivot = sum[static_cast<Eigen::Index>(c)];
      if (!(pivot > 0.0)) return false;
      six(own + kAbreast * c) = sum / std::sqrt(pivot);
      own[kAbreast * c + c] = 1.0 / std::sqrt(pivot);
    }
  }
  return true;
}

void Banded::solve(double* columns) const {
  eliminate(columns, 0, first_.size());
  for (std::size_t i = first_.size(); i-- > 0;) {
    double* const here = columns + kBlock * i;
    const double* const own = diagonal(i);
    for (std::size_t c = kAbreast; c-- > 0;) {
      Six sum = six(here + kAbreast * c);
      for (std::size_t k = c + 1; k < kAbreast; ++k) sum -= own[kAbreast * c + k] * six(here + kAbreast * k);
      six(here + kAbreast * c) = own[kAbreast * c + c] * sum;
    }
    take_mixture(columns + kBlock * first_[i], band(i), here, kAbreast * (i - first_[i]));
  }
}

}  // namespace thole
