#include "calc/shaft/shaft.h"

#include <algorithm>
#include <cmath>
#include <string_view>
#include <vector>

#include "calc/shaft/immersion.h"
#include "calc/shaft/motion.h"
#include "support.h"
#include "trace_support.h"

using namespace thole;

namespace {

ShaftInput usual() {
  return {.bow_height_m = 0.95,
          .collar_m = 0.15,
          .propeller_diameter_m = 0.28,
          .immersion_ratio = 1.5,
          .wave_height_m = 0.3,
          .wave_period_s = 2.1,
          .waterline_length_m = 6.6,
          .waterline_beam_m = 2.3,
          .draft_m = 0.45,
          .thruster_forward_m = 3.7,
          .trim_allowance_m = 0.05,
          .stock_lengths_m = {2.2, 1.2, 1.9, 1.5},
          .thrust_N = 360.0,
          .tube_outer_mm = 38.0,
          .tube_wall_mm = 6.0,
          .tube_yield_MPa = 700.0,
          .tube_modulus_GPa = 40.0};
}

const Check& check_of(const ShaftResult& result, std::string_view id) {
  for (const Check& check : result.trace.checks) {
    if (check.id == id) return check;
  }
  FAIL("no such check");
  return result.trace.checks.front();
}

bool all_finite(const ShaftResult& r) {
  const double values[] = {r.length_required_m, r.length_m,
                           r.margin_m,          r.propeller_depth_m,
                           r.depth_required_m,  r.relative_motion_m,
                           r.relative_sigma_m,  r.immersion_factor,
                           r.emergence_frac,    r.draft_deployed_m,
                           r.tube_stress_MPa,   r.tube_deflection_mm,
                           r.tube_slope_deg,    r.speed_limit_deployed_mps};
  return std::all_of(std::begin(values), std::end(values),
                     [](double v) { return std::isfinite(v); });
}

}  // namespace

TEST_SUITE("property") {
  TEST_CASE("a usual job fits, and its formulas give what they show") {
    const ShaftResult result = shaft(usual());
    thole::test::check_formulas(result.trace);
    CHECK(result.length_found);
    CHECK(result.length_m == 1.9);
    for (const Check& check : result.trace.checks) {
      CAPTURE(check.id);
      CHECK(check.verdict() != Verdict::fail);
      CHECK(check.verdict() != Verdict::not_evaluated);
      CHECK_FALSE(check.remedy.empty());
    }
  }

  TEST_CASE("the shortest length that reaches is taken, and one at the need itself reaches") {
    ShaftInput in = usual();
    const double needed_m = shaft(in).length_required_m;
    in.stock_lengths_m = {needed_m + 0.3, needed_m - 1e-6, needed_m, needed_m + 0.1};
    const ShaftResult result = shaft(in);
    CHECK(result.length_m == needed_m);
    CHECK(result.length_found);
    in.stock_lengths_m = {needed_m - 1e-6};
    CHECK_FALSE(shaft(in).length_found);
    CHECK(next_length_up_m({1.0, 2.0}, 2.0) == 2.0);
    CHECK(next_length_up_m({1.0, 2.0}, 2.1) == 0.0);
    CHECK(next_length_up_m({}, 1.0) == 0.0);
  }

  TEST_CASE("none long enough is an answer: the longest, and a failed check with a way out") {
    ShaftInput in = usual();
    in.bow_height_m = 1.45;
    const ShaftResult result = shaft(in);
    CHECK_FALSE(result.length_found);
    CHECK(result.length_m == 2.2);
    CHECK(result.margin_m < 0.0);
    const Check& check = check_of(result, "shaft.length");
    CHECK(check.verdict() == Verdict::fail);
    REQUIRE_FALSE(check.changes.empty());
    for (const Change& change : check.changes) {
      REQUIRE(change.field == "shaft.immersion_ratio");
      in.immersion_ratio = change.value;
    }
    CHECK(in.immersion_ratio >= 1.0);
    CHECK(shaft(in).length_found);
  }

  TEST_CASE("an empty stock list and an unknown tube are reported, not guessed") {
    ShaftInput in = usual();
    in.stock_lengths_m.clear();
    in.tube_outer_mm = 0.0;
    const ShaftResult result = shaft(in);
    CHECK_FALSE(result.length_found);
    CHECK(check_of(result, "shaft.length").verdict() == Verdict::fail);
    CHECK(check_of(result, "shaft.tube").verdict() == Verdict::not_evaluated);
    CHECK(all_finite(result));
    thole::test::check_formulas(result.trace);
  }

  TEST_CASE("a given length is kept; when too short, letting it go is proposed and mends it") {
    ShaftInput in = usual();
    in.length_m = 1.2;
    const ShaftResult result = shaft(in);
    CHECK(result.length_m == 1.2);
    CHECK_FALSE(result.length_found);
    for (const std::string_view id : {"shaft.length", "shaft.immersion"}) {
      const Check& check = check_of(result, id);
      CHECK(check.verdict() == Verdict::fail);
      REQUIRE_FALSE(check.changes.empty());
      CHECK(check.changes.front().field == "shaft.length_m");
      CHECK(check.changes.front().clear);
    }
    in.length_m = 0.0;
    CHECK(shaft(in).length_found);
  }

  TEST_CASE("a higher bow or higher waves never need less shaft") {
    ShaftInput in = usual();
    double last_m = 0.0;
    for (double bow_m = 0.2; bow_m <= 3.0; bow_m += 0.2) {
      in.bow_height_m = bow_m;
      const double needed_m = shaft(in).length_required_m;
      CHECK(needed_m > last_m);
      last_m = needed_m;
    }
    in = usual();
    last_m = 0.0;
    for (double wave_m = 0.0; wave_m <= 4.0; wave_m += 0.25) {
      in.wave_height_m = wave_m;
      const double needed_m = shaft(in).length_required_m;
      CHECK(needed_m >= last_m);
      last_m = needed_m;
    }
  }

  TEST_CASE("a longer shaft never loses more thrust and never bends less") {
    ShaftInput in = usual();
    double last_factor = -1.0;
    double last_mm = 0.0;
    for (double length_m = 0.5; length_m <= 4.0; length_m += 0.1) {
      in.length_m = length_m;
      const ShaftResult result = shaft(in);
      CHECK(result.immersion_factor >= last_factor);
      CHECK(result.tube_deflection_mm > last_mm);
      CHECK(result.immersion_factor <= 1.0);
      last_factor = result.immersion_factor;
      last_mm = result.tube_deflection_mm;
    }
  }

  TEST_CASE("without waves the water at the bow is still") {
    ShaftInput in = usual();
    in.wave_height_m = 0.0;
    const ShaftResult result = shaft(in);
    CHECK(result.relative_motion_m == 0.0);
    CHECK(result.emergence_frac == 0.0);
    CHECK(result.immersion_factor == 1.0);
    thole::test::check_formulas(result.trace);
  }

  TEST_CASE("a propeller in the air pushes nothing") {
    CHECK(immersion_factor(-0.3, 0.15) == 0.0);
    CHECK(emergence_frac(-0.3, 0.15, 0.0) == 1.0);
    CHECK(mean_immersion_factor(2.0, 0.15, 0.1) == rel(1.0, 1e-12));
  }

  // A wave as long as the beam of a shallow hull is the pole of the closed form.
  TEST_CASE("motion stays within bounds at every period") {
    for (const double draft_m : {0.1, 0.1989, 0.2, 0.35, 1.5}) {
      for (double period_s = 0.5; period_s <= 15.0; period_s += 0.05) {
        const FloatingHull hull{
            .waterline_length_m = 6.6, .waterline_beam_m = 2.5, .draft_m = draft_m};
        const double sigma_m = relative_motion_sigma_m(hull, 3.7, 1.0, period_s);
        CHECK(sigma_m >= 0.0);
        CHECK(sigma_m < 1.5);
      }
    }
  }

  TEST_CASE("finite and consistent over the whole range of the fields") {
    for (const double bow_m : {0.2, 3.0}) {
      for (const double diameter_m : {0.12, 0.6}) {
        for (const double wave_m : {0.0, 0.3, 4.0}) {
          for (const double period_s : {0.0, 0.5, 15.0}) {
            for (const double length_m : {3.0, 14.5}) {
              for (const double given_m : {0.0, 0.5, 4.0}) {
                for (const double outer_mm : {0.0, 15.0, 80.0}) {
                  ShaftInput in = usual();
                  in.bow_height_m = bow_m;
                  in.propeller_diameter_m = diameter_m;
                  in.wave_height_m = wave_m;
                  in.wave_period_s = period_s;
                  in.waterline_length_m = length_m;
                  in.length_m = given_m;
                  in.tube_outer_mm = outer_mm;
                  in.tube_wall_mm = 15.0;  // more than half of the thinner: a solid bar
                  const ShaftResult result = shaft(in);
                  REQUIRE(all_finite(result));
                  thole::test::check_formulas(result.trace);
                }
              }
            }
          }
        }
      }
    }
  }
}
