// QR codes against ISO/IEC 18004: what fits into which version at level M, and the patterns that
// every code has at the same place.

#include "io/qr.h"

#include <string>

#include "support.h"

using namespace thole;

namespace {

int version_of(const Qr& qr) { return (qr.side - 17) / 4; }

Qr code_of(int bytes) { return make_qr(std::string(static_cast<std::size_t>(bytes), 'a')); }

// A square of 7 by 7: dark frame, light ring, dark middle.
bool has_finder(const Qr& qr, int left, int top) {
  for (int y = 0; y < 7; ++y) {
    for (int x = 0; x < 7; ++x) {
      const bool frame = x == 0 || x == 6 || y == 0 || y == 6;
      const bool middle = x >= 2 && x <= 4 && y >= 2 && y <= 4;
      if (qr.at(left + x, top + y) != (frame || middle)) return false;
    }
  }
  return true;
}

}  // namespace

TEST_SUITE("published") {
  // Bytes that fit at level M. Versions 20 and 40 recomputed from the totals of code words, the
  // others from memory, as is usual for this table.
  TEST_CASE("bytes by version at level M [iso-iec-18004 capacity table, 8-bit byte mode]") {
    struct Row {
      int version = 0;
      int bytes = 0;
    };
    const Row rows[] = {{1, 14},   {2, 26},    {3, 42},    {4, 62},   {5, 84},   {6, 106},
                        {7, 122},  {8, 152},   {9, 180},   {10, 213}, {15, 412}, {20, 666},
                        {25, 997}, {30, 1370}, {39, 2213}, {40, 2331}};
    for (const Row& row : rows) {
      CAPTURE(row.version);
      CHECK(version_of(code_of(row.bytes)) == row.version);
      if (row.version < 40) CHECK(version_of(code_of(row.bytes + 1)) == row.version + 1);
    }
  }

  TEST_CASE("an address of 162 bytes is a code of 53 modules [iso-iec-18004, handbook W25]") {
    CHECK(code_of(162).side == 53);
  }

  TEST_CASE("what is longer than version 40 holds gives no code [iso-iec-18004]") {
    CHECK(code_of(2332).side == 0);
    CHECK(code_of(100'000).dark.empty());
    CHECK_FALSE(code_of(2332).at(0, 0));
  }

  TEST_CASE("finders, timing and the dark module [iso-iec-18004, function patterns]") {
    for (const int bytes : {0, 1, 100, 250, 700, 2331}) {
      CAPTURE(bytes);
      const Qr qr = code_of(bytes);
      REQUIRE(qr.side >= 21);
      CHECK(has_finder(qr, 0, 0));
      CHECK(has_finder(qr, qr.side - 7, 0));
      CHECK(has_finder(qr, 0, qr.side - 7));
      for (int i = 8; i < qr.side - 8; ++i) {
        CHECK(qr.at(i, 6) == (i % 2 == 0));
        CHECK(qr.at(6, i) == (i % 2 == 0));
      }
      CHECK(qr.at(8, 4 * version_of(qr) + 9));
    }
  }
}
