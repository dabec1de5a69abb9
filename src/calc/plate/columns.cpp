#include "calc/plate/columns.h"

#include <cmath>

#include "calc/plate/columns_loops.h"

namespace thole {
namespace {

// As many as a compiler keeps in the registers there are.
template <std::size_t kColumns>
struct Narrow {
  static constexpr std::size_t kCount = kColumns;
  double of[kColumns];
  THOLE_MEMBER void load(const double* from) { std::memcpy(of, from, sizeof of); }
  THOLE_MEMBER void store(double* to) const { std::memcpy(to, of, sizeof of); }
  THOLE_MEMBER void take(double share, const Narrow& other) {
    for (std::size_t c = 0; c < kColumns; ++c) of[c] -= share * other.of[c];
  }
  THOLE_MEMBER void take(const double* shares, const Narrow* others) {
    for (std::size_t c = 0; c < kColumns; ++c)
      of[c] -= shares[0] * others[0].of[c] + shares[1] * others[1].of[c] + shares[2] * others[2].of[c];
  }
  THOLE_MEMBER void scale(double share) {
    for (std::size_t c = 0; c < kColumns; ++c) of[c] *= share;
  }
  THOLE_MEMBER void add(double share, const Narrow& other) {
    for (std::size_t c = 0; c < kColumns; ++c) of[c] += share * other.of[c];
  }
};

}  // namespace

#ifdef THOLE_WIDE_COLUMNS
const std::vector<ColumnLoops>& column_loops() {
  static const std::vector<ColumnLoops> kLoops = [] {
    std::vector<ColumnLoops> found;
    if (__builtin_cpu_supports("avx512f")) found.push_back(kWidestColumns);
    if (__builtin_cpu_supports("avx2")) found.push_back(kWideColumns);
    found.push_back(loops_of<Narrow<3>>("three"));
    return found;
  }();
  return kLoops;
}

void take_product(double* into, const double* a, const double* b, std::size_t rows) {
  column_loops().front().product(into, a, b, rows);
}
void take_mixture(double* into, const double* a, const double* shares, std::size_t rows) {
  column_loops().front().mixture(into, a, shares, rows);
}
void go_forward(double* here, const double* a, const double* b, std::size_t rows, const double* inverse) {
  column_loops().front().forward(here, a, b, rows, inverse);
}
void go_back(double* into, const double* a, double* here, std::size_t rows, const double* inverse) {
  column_loops().front().back(into, a, here, rows, inverse);
}
#else
const std::vector<ColumnLoops>& column_loops() {
  static const std::vector<ColumnLoops> kLoops{loops_of<Narrow<3>>("three"), loops_of<Narrow<6>>("six")};
  return kLoops;
}

void take_product(double* into, const double* a, const double* b, std::size_t rows) {
  product<Narrow<3>>(into, a, b, rows);
}
void take_mixture(double* into, const double* a, const double* shares, std::size_t rows) {
  mixture<Narrow<6>>(into, a, shares, rows);
}
void go_forward(double* here, const double* a, const double* b, std::size_t rows, const double* inverse) {
  forward<Narrow<3>>(here, a, b, rows, inverse);
}
void go_back(double* into, const double* a, double* here, std::size_t rows, const double* inverse) {
  back<Narrow<6>>(into, a, here, rows, inverse);
}
#endif

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

}  // namespace thole
