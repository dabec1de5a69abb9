#include "calc/trim/trim.h"

#include <cmath>
#include <string_view>

#include "support.h"
#include "trace_support.h"

using namespace thole;

namespace {

TrimInput usual() {
  return {.length_m = 7.6,
          .waterline_length_m = 6.6,
          .waterline_beam_m = 2.3,
          .displacement_kg = 2300.0,
          .waterplane_ratio = 0.77,
          .salt = true,
          .gm_m = 0.97,
          .initial_trim_deg = -0.5,
          .bow_height_m = 0.95,
          .items = {{.label = "Motor and mount", .mass_kg = 32.0, .x_m = 6.7},
                    {.label = "Bank",
                     .mass_kg = 54.0,
                     .x_m = 3.0,
                     .x_field = "trim.bank_x_m",
                     .y_field = "trim.bank_y_m",
                     .lead_bank = true}}};
}

const Check& check_of(const TrimResult& result, std::string_view id) {
  for (const Check& check : result.trace.checks) {
    if (check.id == id) return check;
  }
  FAIL("no such check");
  return result.trace.checks.front();
}

}  // namespace

TEST_SUITE("property") {
  TEST_CASE("a usual job floats well, and its formulas give what they show") {
    const TrimResult result = trim(usual());
    thole::test::check_formulas(result.trace);
    for (const Check& check : result.trace.checks) {
      CAPTURE(check.id);
      CHECK(check.verdict() != Verdict::fail);
      CHECK(check.verdict() != Verdict::not_evaluated);
      CHECK_FALSE(check.remedy.empty());
    }
  }

  TEST_CASE("without weights nothing moves") {
    TrimInput in = usual();
    in.items.clear();
    const TrimResult result = trim(in);
    CHECK(result.added_kg == 0.0);
    CHECK(result.bow_sinkage_m == 0.0);
    CHECK(result.stern_sinkage_m == 0.0);
    CHECK(result.heel_deg == 0.0);
    CHECK(result.trim_deg == -0.5);
    CHECK(result.bow_freeboard_m == 0.95);
    thole::test::check_formulas(result.trace);
  }

  TEST_CASE("weight on the point of trim sinks bow and stern alike") {
    TrimInput in = usual();
    in.items = {{.label = "Weight", .mass_kg = 50.0, .x_m = trim(usual()).flotation_x_m}};
    const TrimResult result = trim(in);
    CHECK(result.bow_sinkage_m == rel(result.stern_sinkage_m, 1e-12));
    CHECK(result.bow_sinkage_m > 0.0);
  }

  TEST_CASE("port and starboard mirror each other, opposite weights cancel") {
    TrimInput in = usual();
    in.items[1].y_m = 0.4;
    const double starboard_deg = trim(in).heel_deg;
    CHECK(starboard_deg > 0.0);
    in.items[1].y_m = -0.4;
    CHECK(trim(in).heel_deg == rel(-starboard_deg, 1e-12));
    in.items[0].y_m = 0.4 * 54.0 / 32.0;
    CHECK(near(trim(in).heel_deg, 0.0, 1e-9));
  }

  TEST_CASE("the bank further forward never lifts the bow") {
    TrimInput in = usual();
    double last_m = -1.0;
    for (double x_m = 0.5; x_m < 6.6; x_m += 0.5) {
      in.items[1].x_m = x_m;
      const double bow_m = trim(in).bow_sinkage_m;
      CHECK(bow_m > last_m);
      last_m = bow_m;
    }
  }

  TEST_CASE("fresh water carries less: the boat sinks more") {
    TrimInput in = usual();
    const double salt_m = trim(in).bow_sinkage_m;
    in.salt = false;
    CHECK(trim(in).bow_sinkage_m == rel(salt_m * 1.025, 1e-9));
  }

  TEST_CASE("a heavy bank at the bow fails, and moving it as proposed mends trim and bow height") {
    TrimInput in = usual();
    in.items[1].mass_kg = 110.0;
    in.items[1].x_m = 5.8;
    const TrimResult result = trim(in);
    const Check& added = check_of(result, "trim.added");
    CHECK(added.verdict() == Verdict::fail);
    REQUIRE_FALSE(added.changes.empty());
    CHECK(added.changes.front().field == "trim.bank_x_m");
    in.items[1].x_m = added.changes.front().value;
    CHECK(check_of(trim(in), "trim.added").verdict() == Verdict::pass);
  }

  TEST_CASE("a bank off the centreline fails, and balancing it as proposed mends the list") {
    TrimInput in = usual();
    in.items[0].mass_kg = 60.0;
    in.items[0].y_m = 0.6;
    in.items[1].y_m = 1.0;
    const TrimResult result = trim(in);
    const Check& list = check_of(result, "trim.list");
    CHECK(list.verdict() == Verdict::fail);
    REQUIRE_FALSE(list.changes.empty());
    CHECK(list.changes.front().field == "trim.bank_y_m");
    in.items[1].y_m = list.changes.front().value;
    CHECK(check_of(trim(in), "trim.list").verdict() == Verdict::pass);
  }

  TEST_CASE("a heavy lead bank is answered with lithium, a heavy lithium one is not") {
    TrimInput in = usual();
    in.items[1].mass_kg = 180.0;
    const TrimResult lead = trim(in);
    CHECK(check_of(lead, "trim.mass").verdict() == Verdict::fail);
    CHECK_FALSE(check_of(lead, "trim.mass").changes.empty());
    in.items[1].lead_bank = false;
    CHECK(check_of(trim(in), "trim.mass").changes.empty());
  }

  TEST_CASE("the weight limit passes at the limit and fails just over it") {
    TrimInput in = usual();
    in.items = {{.label = "Weight", .mass_kg = 115.0, .x_m = 2.6}};
    CHECK(check_of(trim(in), "trim.mass").verdict() == Verdict::marginal);
    in.items[0].mass_kg = 115.001;
    CHECK(check_of(trim(in), "trim.mass").verdict() == Verdict::fail);
  }

  TEST_CASE("finite and consistent over the whole range of the fields, many weights too") {
    for (const double length_m : {3.0, 14.5}) {
      for (const double beam_m : {1.0, 4.8}) {
        for (const double displacement_kg : {250.0, 15000.0}) {
          for (const double ratio : {0.667, 1.0}) {
            for (const double gm_m : {0.1, 4.0}) {
              for (const std::size_t count : {0u, 1u, 6u, 9u}) {
                TrimInput in = usual();
                in.waterline_length_m = length_m;
                in.waterline_beam_m = beam_m;
                in.displacement_kg = displacement_kg;
                in.waterplane_ratio = ratio;
                in.gm_m = gm_m;
                in.bow_height_m = 0.0;
                in.items.assign(count, {.label = "Weight",
                                        .mass_kg = 120.0,
                                        .x_m = 15.0,
                                        .y_m = -2.5,
                                        .x_field = "trim.bank_x_m",
                                        .y_field = "trim.bank_y_m"});
                const TrimResult r = trim(in);
                CHECK(std::isfinite(r.bow_sinkage_m));
                CHECK(std::isfinite(r.stern_sinkage_m));
                CHECK(std::isfinite(r.trim_deg));
                CHECK(std::isfinite(r.heel_deg));
                CHECK(std::isfinite(r.freeboard_loss_frac));
                CHECK(r.added_kg == 120.0 * static_cast<double>(count));
                thole::test::check_formulas(r.trace);
              }
            }
          }
        }
      }
    }
  }
}
