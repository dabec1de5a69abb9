#include "calc/plate/banded.h"

#include <Eigen/Core>
#include <algorithm>
#include <cmath>
#include <cstring>
#include <type_traits>
#include <utility>

namespace thole {
namespace {

constexpr std::size_t kBlock = kAbreast * kAbreast;
using Six = Eigen::Array<double, kAbreast, 1>;

Eigen::Map<Six> six(double* from) { return Eigen::Map<Six>(from); }

// Six numbers as the registers hold them; both kinds of processor get the same bits.
using Four = double __attribute__((vector_size(4 * sizeof(double))));
using Two = double __attribute__((vector_size(2 * sizeof(double))));
struct Row {
  Four four;
  Two two;
  [[gnu::always_inline]] void load(const double* from) {
    std::memcpy(&four, from, sizeof four);
    std::memcpy(&two, from + 4, sizeof two);
  }
  [[gnu::always_inline]] void store(double* to) const {
    std::memcpy(to, &four, sizeof four);
    std::memcpy(to + 4, &two, sizeof two);
  }
};

template <class Use, std::size_t... kIndex>
[[gnu::always_inline]] inline void unrolled(Use&& use, std::index_sequence<kIndex...>) {
  (use(std::integral_constant<std::size_t, kIndex>()), ...);
}

template <std::size_t kRows>  // at once: as many as the registers hold
[[gnu::always_inline]] inline void product(double* into, const double* a, const double* b, std::size_t rows) {
  constexpr auto kEach = std::make_index_sequence<kRows>();
  for (std::size_t i = 0; i < kAbreast; i += kRows, into += kRows * kAbreast, a += kRows) {
    Row sums[kRows];
    unrolled(
        [&](auto k) __attribute__((always_inline)) { sums[k].load(into + kAbreast * k); }, kEach);
    for (std::size_t row = 0; row < rows; ++row) {
      const double* const shares = a + kAbreast * row;
      Row of;
      of.load(b + kAbreast * row);
      unrolled(
          [&](auto k) __attribute__((always_inline)) {
            sums[k].four -= shares[k] * of.four;
            sums[k].two -= shares[k] * of.two;
          },
          kEach);
    }
    unrolled(
        [&](auto k) __attribute__((always_inline)) { sums[k].store(into + kAbreast * k); }, kEach);
  }
}

template <std::size_t kRows>
[[gnu::always_inline]] inline void mixture(double* into, const double* a, const double* shares, std::size_t rows) {
  for (std::size_t i = 0; i < kAbreast; i += kRows, shares += kRows * kAbreast, a += kRows) {
    Row parts[kRows];
    unrolled(
        [&](auto k) __attribute__((always_inline)) { parts[k].load(shares + kAbreast * k); },
        std::make_index_sequence<kRows>());
    for (std::size_t row = 0; row < rows; ++row) {
      const double* const of = a + kAbreast * row;
      Row sum;
      sum.load(into + kAbreast * row);
      unrolled(
          [&](auto third) __attribute__((always_inline)) {
            constexpr std::size_t k = 3 * third;
            sum.four -= of[k] * parts[k].four + of[k + 1] * parts[k + 1].four + of[k + 2] * parts[k + 2].four;
            sum.two -= of[k] * parts[k].two + of[k + 1] * parts[k + 1].two + of[k + 2] * parts[k + 2].two;
          },
          std::make_index_sequence<kRows / 3>());
      sum.store(into + kAbreast * row);
    }
  }
}

#if defined(__x86_64__) && defined(__GNUC__)
const bool kWide = __builtin_cpu_supports("avx2");
__attribute__((target("avx2"))) void wide_product(double* into, const double* a, const double* b, std::size_t rows) {
  product<6>(into, a, b, rows);
}
__attribute__((target("avx2"))) void wide_mixture(double* into, const double* a, const double* shares,
                                                  std::size_t rows) {
  mixture<6>(into, a, shares, rows);
}
#else
constexpr bool kWide = false;
constexpr auto wide_product = product<3>;
constexpr auto wide_mixture = mixture<3>;
#endif

}  // namespace

void take_product(double* into, const double* a, const double* b, std::size_t rows) {
  kWide ? wide_product(into, a, b, rows) : product<3>(into, a, b, rows);
}

void take_mixture(double* into, const double* a, const double* shares, std::size_t rows) {
  kWide ? wide_mixture(into, a, shares, rows) : mixture<3>(into, a, shares, rows);
}

void make_square(Abreast& shapes, Abreast& forces) {
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
  for (Abreast* each : {&shapes, &forces}) {
    const Abreast before = *each;
    each->assign(before.size(), 0.0);
    take_mixture(each->data(), before.data(), mixed, before.size() / kAbreast);
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

Banded Banded::head(std::size_t bands) const {
  Banded part(std::vector<std::size_t>(first_.begin(), first_.begin() + static_cast<std::ptrdiff_t>(bands)));
  std::copy_n(values_.begin(), part.values_.size(), part.values_.begin());
  return part;
}

void Banded::add(std::size_t row, std::size_t column, double value) {
  const std::size_t i = row / kAbreast;
  if (i >= column / kAbreast) band(i)[kAbreast * (column - kAbreast * first_[i]) + row % kAbreast] += value;
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
