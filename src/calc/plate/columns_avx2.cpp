// Compiled for x86-64 with AVX2.

#include "calc/plate/columns_loops.h"

namespace thole {
namespace {

struct Wide {
  using Four = double __attribute__((vector_size(4 * sizeof(double))));
  using Two = double __attribute__((vector_size(2 * sizeof(double))));
  static constexpr std::size_t kCount = 6;
  Four four;
  Two two;
  THOLE_MEMBER void load(const double* from) {
    std::memcpy(&four, from, sizeof four);
    std::memcpy(&two, from + 4, sizeof two);
  }
  THOLE_MEMBER void store(double* to) const {
    std::memcpy(to, &four, sizeof four);
    std::memcpy(to + 4, &two, sizeof two);
  }
  THOLE_MEMBER void take(double share, const Wide& of) {
    four -= share * of.four;
    two -= share * of.two;
  }
  THOLE_MEMBER void take(const double* shares, const Wide* of) {
    four -= shares[0] * of[0].four + shares[1] * of[1].four + shares[2] * of[2].four;
    two -= shares[0] * of[0].two + shares[1] * of[1].two + shares[2] * of[2].two;
  }
  THOLE_MEMBER void scale(double share) {
    four *= share;
    two *= share;
  }
  THOLE_MEMBER void add(double share, const Wide& of) {
    four += share * of.four;
    two += share * of.two;
  }
};

}  // namespace

const ColumnLoops kWideColumns = loops_of<Wide>("AVX2");

}  // namespace thole
