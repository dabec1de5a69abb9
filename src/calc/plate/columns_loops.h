#pragma once

// The loops behind columns.h, over what a machine's registers hold of six columns. Included once
// by each file that is compiled for such registers, so all is that file's own.

#include <cstring>

#include "calc/plate/columns.h"

#define THOLE_INLINE [[gnu::always_inline]] static inline
#define THOLE_MEMBER [[gnu::always_inline]] inline

namespace thole {

// Each is there where its file is compiled.
extern const ColumnLoops kWideColumns, kWidestColumns;

namespace {

// `Columns`: kCount of the six at once, in one row. Each has
//   load, store;
//   take(share, of): less of * share;  take three at once: less their sum;
//   scale(share);  add(share, of).

template <class Columns>
THOLE_INLINE void load_rows(Columns* rows, const double* from) {
  rows[0].load(from);
  rows[1].load(from + kAbreast);
  rows[2].load(from + 2 * kAbreast);
  rows[3].load(from + 3 * kAbreast);
  rows[4].load(from + 4 * kAbreast);
  rows[5].load(from + 5 * kAbreast);
}
template <class Columns>
THOLE_INLINE void store_rows(const Columns* rows, double* to) {
  rows[0].store(to);
  rows[1].store(to + kAbreast);
  rows[2].store(to + 2 * kAbreast);
  rows[3].store(to + 3 * kAbreast);
  rows[4].store(to + 4 * kAbreast);
  rows[5].store(to + 5 * kAbreast);
}

template <class Columns>
THOLE_INLINE void take_rows(Columns* sums, const double* a, const double* b, std::size_t rows) {
  for (std::size_t row = 0; row < rows; ++row, a += kAbreast) {
    Columns of;
    of.load(b + kAbreast * row);
    sums[0].take(a[0], of);
    sums[1].take(a[1], of);
    sums[2].take(a[2], of);
    sums[3].take(a[3], of);
    sums[4].take(a[4], of);
    sums[5].take(a[5], of);
  }
}
template <class Columns>
THOLE_INLINE void take_parts(double* into, const double* a, const Columns* parts, std::size_t rows) {
  for (std::size_t row = 0; row < rows; ++row, a += kAbreast) {
    Columns sum;
    sum.load(into + kAbreast * row);
    sum.take(a, parts);
    sum.take(a + 3, parts + 3);
    sum.store(into + kAbreast * row);
  }
}

// Row `kRow` of the product with a lower triangle, those after it being done; and of its transposed,
// those before it being done.
template <std::size_t kRow, class Columns>
THOLE_INLINE void turn_lower(Columns* rows, const double* inverse) {
  rows[kRow].scale(inverse[kAbreast * kRow + kRow]);
  if constexpr (kRow > 0) rows[kRow].add(inverse[kRow], rows[0]);
  if constexpr (kRow > 1) rows[kRow].add(inverse[kAbreast + kRow], rows[1]);
  if constexpr (kRow > 2) rows[kRow].add(inverse[2 * kAbreast + kRow], rows[2]);
  if constexpr (kRow > 3) rows[kRow].add(inverse[3 * kAbreast + kRow], rows[3]);
  if constexpr (kRow > 4) rows[kRow].add(inverse[4 * kAbreast + kRow], rows[4]);
}
template <std::size_t kRow, class Columns>
THOLE_INLINE void turn_upper(Columns* rows, const double* inverse) {
  const double* const of = inverse + kAbreast * kRow;
  rows[kRow].scale(of[kRow]);
  if constexpr (kRow < 1) rows[kRow].add(of[1], rows[1]);
  if constexpr (kRow < 2) rows[kRow].add(of[2], rows[2]);
  if constexpr (kRow < 3) rows[kRow].add(of[3], rows[3]);
  if constexpr (kRow < 4) rows[kRow].add(of[4], rows[4]);
  if constexpr (kRow < 5) rows[kRow].add(of[5], rows[5]);
}

template <class Columns>
void product(double* into, const double* a, const double* b, std::size_t rows) {
  for (std::size_t c = 0; c < kAbreast; c += Columns::kCount) {
    Columns sums[kAbreast];
    load_rows(sums, into + c);
    take_rows(sums, a, b + c, rows);
    store_rows(sums, into + c);
  }
}
template <class Columns>
void mixture(double* into, const double* a, const double* shares, std::size_t rows) {
  for (std::size_t c = 0; c < kAbreast; c += Columns::kCount) {
    Columns parts[kAbreast];
    load_rows(parts, shares + c);
    take_parts(into + c, a, parts, rows);
  }
}
template <class Columns>
void forward(double* here, const double* a, const double* b, std::size_t rows, const double* inverse) {
  for (std::size_t c = 0; c < kAbreast; c += Columns::kCount) {
    Columns sums[kAbreast];
    load_rows(sums, here + c);
    take_rows(sums, a, b + c, rows);
    turn_lower<5>(sums, inverse);
    turn_lower<4>(sums, inverse);
    turn_lower<3>(sums, inverse);
    turn_lower<2>(sums, inverse);
    turn_lower<1>(sums, inverse);
    turn_lower<0>(sums, inverse);
    store_rows(sums, here + c);
  }
}
template <class Columns>
void back(double* into, const double* a, double* here, std::size_t rows, const double* inverse) {
  for (std::size_t c = 0; c < kAbreast; c += Columns::kCount) {
    Columns parts[kAbreast];
    load_rows(parts, here + c);
    turn_upper<0>(parts, inverse);
    turn_upper<1>(parts, inverse);
    turn_upper<2>(parts, inverse);
    turn_upper<3>(parts, inverse);
    turn_upper<4>(parts, inverse);
    turn_upper<5>(parts, inverse);
    store_rows(parts, here + c);
    take_parts(into + c, a, parts, rows);
  }
}

template <class Columns>
constexpr ColumnLoops loops_of(const char* registers) {
  return {registers, product<Columns>, mixture<Columns>, forward<Columns>, back<Columns>};
}

}  // namespace
}  // namespace thole
