// The text of a step and of a check, written out by hand.

#include "io/explain.h"

#include <cmath>

#include "support.h"

using namespace thole;

namespace {

constexpr Source kBook{.id = "x", .title = "A book", .locator = "page 3", .confirmed = false};
constexpr Source kRule{.id = "x", .title = "A rule", .locator = ""};

}  // namespace

TEST_SUITE("derived") {
  TEST_CASE("a step as an engineer writes it") {
    const Step step{
        .id = "feeder.run.drop",
        .label = "Voltage lost in the run",
        .symbol = "V_d",
        .formula = "I * r * L + 0 * max(I, R_0)",
        .terms = {{"I", 52.0, "A", "current"},
                  {"r", 0.000866, "ohm_per_m", "of one metre"},
                  {"L", 12.0, "m", "out and back"},
                  {"R_0", -5.08e-8, "", "nothing"}},
        .value = 0.540384,
        .unit = "V",
        .source = kBook,
        .assumptions = {"Copper is new."}};
    CHECK(numbers_put_in(step) == "52 * 0.000866 * 12 + 0 * max(52, (-5.08 * 10^-8))");
    CHECK(explain(step) ==
          "Voltage lost in the run  [feeder.run.drop]\n"
          "  V_d = I * r * L + 0 * max(I, R_0)\n"
          "      = 52 * 0.000866 * 12 + 0 * max(52, (-5.08 * 10^-8))\n"
          "      = 0.5404 V\n"
          "    I = 52 A: current\n"
          "    r = 0.000866 Ω/m: of one metre\n"
          "    L = 12 m: out and back\n"
          "    R_0 = -5.08 * 10^-8: nothing\n"
          "  Assumed: Copper is new.\n"
          "  Source: A book, page 3 (unconfirmed)\n");
  }

  TEST_CASE("a check as it is told") {
    Check check{.id = "feeder.drop",
                .label = "Voltage drop",
                .actual = 1.35,
                .limit = 1.08,
                .unit = "V",
                .source = kRule,
                .remedy = "Take thicker cable."};
    CHECK(explain(check) ==
          "Voltage drop  [feeder.drop]\n"
          "  fails: 1.35 V, at most 1.08 V (125 % of the limit used)\n"
          "  Remedy: Take thicker cable.\n"
          "  Limit by: A rule\n");
    check.actual = std::nan("");
    CHECK(explain(check).find("not evaluated\n") != std::string::npos);
    check.actual = 2.16;
    check.comparison = Comparison::at_least;
    CHECK(explain(check) ==
          "Voltage drop  [feeder.drop]\n"
          "  passes: 2.16 V, at least 1.08 V (50 % of the limit used)\n"
          "  Limit by: A rule\n");
  }
}
