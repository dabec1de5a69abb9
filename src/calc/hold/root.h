#pragma once

// Narrows a stretch at whose ends a function has different signs.

#include <algorithm>

namespace thole {

// `f_low` <= 0 < `f_high`, and so they stay.
template <class Real>
struct Bracket {
  Real low{};
  Real f_low{};
  Real high{};
  Real f_high{};
};

// False position; an end that stands still counts half (Illinois), every fourth step is a
// bisection, since `f` may jump, and no step is shorter than half the tolerance, so that both ends
// close in.
template <class Real, class Function>
Bracket<Real> narrow(Function f, Bracket<Real> b, Real tolerance) {
  Real low_factor = 1;
  Real high_factor = 1;
  for (int step = 1; step <= 80 && b.high - b.low > tolerance; ++step) {
    const Real pull_low = low_factor * b.f_low;
    const Real share = step % 6 == 0 ? Real(0.5) : pull_low / (pull_low - high_factor * b.f_high);
    const Real shortest = tolerance / 2;
    const Real x =
        std::clamp(b.low + share * (b.high - b.low), b.low + shortest, b.high - shortest);
    const Real value = f(x);
    if (value > 0) {
      b.high = x;
      b.f_high = value;
      low_factor /= 2;
      high_factor = 1;
    } else {
      b.low = x;
      b.f_low = value;
      high_factor /= 2;
      low_factor = 1;
    }
  }
  return b;
}

}  // namespace thole
