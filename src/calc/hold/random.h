#pragma once

// Chance that is the same everywhere: a generator with 64 bits of state, seeded by a number.

#include <cmath>
#include <cstdint>

namespace thole {

// PCG32, XSH-RR variant. Source: O'Neill 2014, PCG: A family of simple fast space-efficient
// statistically good algorithms for random number generation; reference outputs for seed 42, stream
// 54 are tested. Streams of one seed do not resemble each other.
class Pcg32 {
 public:
  explicit Pcg32(std::uint64_t seed, std::uint64_t stream = 0) : increment_((stream << 1) | 1) {
    next();
    state_ += seed;
    next();
  }

  std::uint32_t next() {
    const std::uint64_t old = state_;
    state_ = old * 6364136223846793005ULL + increment_;
    const auto mixed = static_cast<std::uint32_t>(((old >> 18) ^ old) >> 27);
    const auto turns = static_cast<std::uint32_t>(old >> 59);
    return (mixed >> turns) | (mixed << ((0U - turns) & 31U));
  }

  // From 0 up to, and without, 1; exact in a double, so the same bits everywhere.
  double uniform() { return next() * 0x1p-32; }

 private:
  std::uint64_t state_ = 0;
  std::uint64_t increment_ = 1;
};

// Numbers of mean 0 and standard deviation 1. Source: Marsaglia & Bray 1964, polar method: which
// pairs are thrown away depends on exact sums alone, so that every platform keeps the same ones.
class Normal {
 public:
  explicit Normal(Pcg32 generator) : generator_(generator) {}

  double next() {
    if (spare_kept_) {
      spare_kept_ = false;
      return spare_ratio_;
    }
    double x = 0.0;
    double y = 0.0;
    double square = 0.0;
    do {
      x = 2.0 * generator_.uniform() - 1.0;
      y = 2.0 * generator_.uniform() - 1.0;
      square = x * x + y * y;
    } while (square >= 1.0 || square == 0.0);
    const double stretch = std::sqrt(-2.0 * std::log(square) / square);
    spare_ratio_ = stretch * y;
    spare_kept_ = true;
    return stretch * x;
  }

 private:
  Pcg32 generator_;
  double spare_ratio_ = 0.0;
  bool spare_kept_ = false;
};

}  // namespace thole
