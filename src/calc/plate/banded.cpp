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

#define THOLE_INLINE [[gnu::always_inline]] inline
#if defined(__x86_64__) && defined(__GNUC__)
#define THOLE_WIDE
#endif

// Some of the columns at once: all six in registers that are wide, else as many as a compiler keeps in those
// there are. All ways give the same bits.
template <std::size_t kColumns>
struct Narrow {
  static constexpr std::size_t kCount = kColumns;
  double of[kColumns];
  THOLE_INLINE void load(const double* from) { std::memcpy(of, from, sizeof of); }
  THOLE_INLINE void store(double* to) const { std::memcpy(to, of, sizeof of); }
  THOLE_INLINE void take(double share, const Narrow& other) {
    for (std::size_t c = 0; c < kColumns; ++c) of[c] -= share * other.of[c];
  }
  THOLE_INLINE void take(const double* shares, const Narrow* others) {
    for (std::size_t c = 0; c < kColumns; ++c)
      of[c] -= shares[0] * others[0].of[c] + shares[1] * others[1].of[c] + shares[2] * others[2].of[c];
  }
};

template <class Use, std::size_t... kIndex>
THOLE_INLINE void unrolled(Use&& use, std::index_sequence<kIndex...>) {
  (use(std::integral_constant<std::size_t, kIndex>()), ...);
}

template <class Columns, std::size_t kRows>
THOLE_INLINE void product(double* into, const double* a, const double* b, std::size_t rows) {
  constexpr auto kEach = std::make_index_sequence<kRows>();
  for (std::size_t i = 0; i < kAbreast; i += kRows) {
    for (std::size_t c = 0; c < kAbreast; c += Columns::kCount) {
      double* const here = into + kAbreast * i + c;
      Columns sums[kRows];
      unrolled(
          [&](auto k) __attribute__((always_inline)) { sums[k].load(here + kAbreast * k); }, kEach);
      for (std::size_t row = 0; row < rows; ++row) {
        const double* const shares = a + kAbreast * row + i;
        Columns of;
        of.load(b + kAbreast * row + c);
        unrolled(
            [&](auto k) __attribute__((always_inline)) { sums[k].take(shares[k], of); }, kEach);
      }
      unrolled(
          [&](auto k) __attribute__((always_inline)) { sums[k].store(here + kAbreast * k); }, kEach);
    }
  }
}

template <class Columns, std::size_t kRows>
THOLE_INLINE void mixture(double* into, const double* a, const double* shares, std::size_t rows) {
  for (std::size_t i = 0; i < kAbreast; i += kRows) {
    for (std::size_t c = 0; c < kAbreast; c += Columns::kCount) {
      Columns parts[kRows];
      unrolled(
          [&](auto k) __attribute__((always_inline)) { parts[k].load(shares + kAbreast * (i + k) + c); },
          std::make_index_sequence<kRows>());
      for (std::size_t row = 0; row < rows; ++row) {
        const double* const of = a + kAbreast * row + i;
        Columns sum;
        sum.load(into + kAbreast * row + c);
        unrolled(
            [&](auto third) __attribute__((always_inline)) { sum.take(of + 3 * third, parts + 3 * third); },
            std::make_index_sequence<kRows / 3>());
        sum.store(into + kAbreast * row + c);
      }
    }
  }
}

#ifdef THOLE_WIDE
struct Wide {
  using Four = double __attribute__((vector_size(4 * sizeof(double))));
  using Two = double __attribute__((vector_size(2 * sizeof(double))));
  static constexpr std::size_t kCount = 6;
  Four four;
  Two two;
  THOLE_INLINE void load(const double* from) {
    std::memcpy(&four, from, sizeof four);
    std::memcpy(&two, from + 4, sizeof two);
  }
  THOLE_INLINE void store(double* to) const {
    std::memcpy(to, &four, sizeof four);
    std::memcpy(to + 4, &two, sizeof two);
  }
  THOLE_INLINE void take(double share, const Wide& of) {
    four -= share * of.four;
    two -= share * of.two;
  }
  THOLE_INLINE void take(const double* shares, const Wide* of) {
    four -= shares[0] * of[0].four + shares[1] * of[1].four + shares[2] * of[2].four;
    two -= shares[0] * of[0].two + shares[1] * of[1].two + shares[2] * of[2].two;
  }
};
const bool kWide = __builtin_cpu_supports("avx2");
__attribute__((target("avx2"))) void wide_product(double* into, const double* a, const double* b, std::size_t rows) {
  product<Wide, 6>(into, a, b, rows);
}
__attribute__((target("avx2"))) void wide_mixture(double* into, const double* a, const double* shares,
                                                  std::size_t rows) {
  mixture<Wide, 6>(into, a, shares, rows);
}
#endif

}  // namespace

void take_product(double* into, const double* a, const double* b, std::size_t rows) {
#ifdef THOLE_WIDE
  if (kWide) return wide_product(into, a, b, rows);
#endif
  product<Narrow<3>, 6>(into, a, b, rows);
}

void take_mixture(double* into, const double* a, const double* shares, std::size_t rows) {
#ifdef THOLE_WIDE
  if (kWide) return wide_mixture(into, a, shares, rows);
#endif
  mixture<Narrow<6>, 6>(into, a, shares, rows);
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
