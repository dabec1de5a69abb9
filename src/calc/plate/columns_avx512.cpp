// Compiled for x86-64 with AVX-512.

#include <immintrin.h>

#include "calc/plate/columns_loops.h"

namespace thole {
namespace {

// Six of the eight that a register holds. Fetched and put as four and two: what was just put that
// way is at hand, and nothing beyond is touched.
struct Widest {
  static constexpr std::size_t kCount = 6;
  static constexpr __mmask8 kAll = 0xff;
  __m512d of;
  THOLE_MEMBER void load(const double* from) {
    of = _mm512_maskz_insertf64x4(kAll, _mm512_castpd256_pd512(_mm256_loadu_pd(from)),
                                  _mm256_castpd128_pd256(_mm_loadu_pd(from + 4)), 1);
  }
  THOLE_MEMBER void store(double* to) const {
    _mm256_storeu_pd(to, _mm512_maskz_extractf64x4_pd(kAll, of, 0));
    _mm_storeu_pd(to + 4, _mm256_castpd256_pd128(_mm512_maskz_extractf64x4_pd(kAll, of, 1)));
  }
  THOLE_MEMBER void take(double share, const Widest& other) { of -= share * other.of; }
  THOLE_MEMBER void take(const double* shares, const Widest* others) {
    of -= shares[0] * others[0].of + shares[1] * others[1].of + shares[2] * others[2].of;
  }
  THOLE_MEMBER void scale(double share) { of *= share; }
  THOLE_MEMBER void add(double share, const Widest& other) { of += share * other.of; }
};

}  // namespace

const ColumnLoops kWidestColumns = loops_of<Widest>("AVX-512");

}  // namespace thole
