#include <doctest/doctest.h>

#include <cmath>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <random>
#include <string>

#include "base/decimal.h"

namespace {

// The C library (ISO 9899, 7.21.6.1 and 7.22.1.3: IEEE 754 conversions) on the machine of the test; on the web it is
// our own for reading, and only writing is compared.
std::string by_library(double value, int decimals) {
  char text[800];
  std::snprintf(text, sizeof text, "%.*f", decimals, value);
  return text;
}
bool same(double a, double b) { return std::memcmp(&a, &b, sizeof a) == 0; }

double any_double(std::mt19937_64& random) {
  for (;;) {
    const std::uint64_t bits = random();
    double value = 0.0;
    std::memcpy(&value, &bits, sizeof value);
    if (std::isfinite(value)) return value;
  }
}

}  // namespace

TEST_SUITE("decimal figures") {
  using thole::decimal;
  using thole::read_decimal;

  TEST_CASE("written as the C library writes them: ties, borders, and at random") {
    for (const double value : {0.0, -0.0, 0.5, 1.5, 2.5, 0.125, 0.375, 1.005, 2.675, 9.5, 99.5, 0.05, 0.25, 1e15, 123456789012345678.0, 5e-324,
                               2.2250738585072014e-308, 1.7976931348623157e308, 0.1, 1.0 / 3.0, -2.5, -1e-9})
      for (const int decimals : {0, 1, 2, 3, 6, 12, 40}) {
        CAPTURE(value);
        CAPTURE(decimals);
        CHECK(decimal(value, decimals) == by_library(value, decimals));
      }
    std::mt19937_64 random(20);
    for (int k = 0; k < 4000; ++k) {
      const double wild = any_double(random);
      const double tame = std::ldexp(static_cast<double>(random() >> 11), static_cast<int>(random() % 80) - 90);
      const int decimals = static_cast<int>(random() % 13);
      CHECK(decimal(wild, decimals) == by_library(wild, decimals));
      CHECK(decimal(tame, decimals) == by_library(tame, decimals));
    }
  }

  // Steele and White's condition: 17 figures tell every double; halfway cases by exact sums of powers of two.
  TEST_CASE("read back to the last bit") {
    std::mt19937_64 random(21);
    for (int k = 0; k < 4000; ++k) {
      const double value = any_double(random);
      char text[64];
      std::snprintf(text, sizeof text, "%.17g", value);
      CAPTURE(text);
      CHECK(same(read_decimal(text).value, value));
      CHECK(read_decimal(text).length == std::string_view(text).size());
    }
    CHECK(same(read_decimal("9007199254740993").value, 9007199254740992.0));  // 2^53 + 1: to the even one
    CHECK(same(read_decimal("9007199254740993.00000000000000000000000000000001").value, 9007199254740994.0));
    CHECK(same(read_decimal("9007199254740995").value, 9007199254740996.0));
    CHECK(same(read_decimal("2.4703282292062327208e-324").value, 0.0));    // below half of the least
    CHECK(same(read_decimal("2.4703282292062328e-324").value, 5e-324));  // above it
    CHECK(same(read_decimal("2.2250738585072011e-308").value, 2.2250738585072011e-308));
    CHECK(std::isinf(read_decimal("1.7976931348623159e308").value));
    CHECK(same(read_decimal("1.7976931348623157e308").value, 1.7976931348623157e308));
    const std::string exactly_half = decimal(std::ldexp(1.0, -1074), 1074);  // the least double, every figure
    CHECK(same(read_decimal(exactly_half).value, 5e-324));
  }

#ifndef __EMSCRIPTEN__
  TEST_CASE("read as the C library reads them: any figures, with any exponent") {
    std::mt19937_64 random(22);
    for (int k = 0; k < 6000; ++k) {
      std::string text;
      const auto figures = [&](std::uint64_t most) {
        for (std::uint64_t left = random() % most; left > 0; --left) text += static_cast<char>('0' + random() % 10);
      };
      if (random() % 3 == 0) text += '-';
      text += static_cast<char>('0' + random() % 10);
      figures(random() % 10 == 0 ? 900 : 24);
      if (random() % 2 == 0) text += '.', figures(random() % 10 == 0 ? 900 : 24);
      if (random() % 2 == 0) text += (random() % 2 == 0 ? "e-" : "E+") + std::to_string(random() % 400);
      CAPTURE(text);
      char* end = nullptr;
      const double value = std::strtod(text.c_str(), &end);
      CHECK(same(read_decimal(text).value, value));
      CHECK(read_decimal(text).length == static_cast<std::size_t>(end - text.c_str()));
    }
  }
#endif

  TEST_CASE("what is no number reads nothing; what follows one is left") {
    for (const char* text : {"", "-", "+", ".", "e5", "-.", "x1", " 1", "inf", "nan"}) {
      CAPTURE(text);
      CHECK(read_decimal(text).length == 0);
    }
    CHECK(read_decimal("12.5kN").length == 4);
    CHECK(read_decimal("3e").length == 1);
    CHECK(read_decimal("3e+x").length == 1);
    CHECK(read_decimal("0x10").length == 1);
    CHECK(read_decimal(".5").value == 0.5);
    CHECK(read_decimal("5.").length == 2);
    CHECK(read_decimal("1e999999999999").value > 1e308);
    CHECK(read_decimal("1e-999999999999").value == 0.0);
    CHECK(read_decimal("0e999999999999").value == 0.0);
    CHECK(std::signbit(read_decimal("-0").value));
    CHECK(read_decimal("0." + std::string(5000, '0') + "1").value == 0.0);
    CHECK(std::isinf(read_decimal("1" + std::string(5000, '0')).value));
    CHECK(read_decimal("0." + std::string(5000, '0') + "1e5001").value == 1.0);
    CHECK(read_decimal("1" + std::string(5000, '0') + "e-5000").value == 1.0);
    CHECK(read_decimal("0." + std::string(300, '0') + "1e301").value == 1.0);
  }
}
