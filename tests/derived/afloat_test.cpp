// The boat afloat through the whole engine: heights, shares, the capacity plate, the dock's figures.

#include "calc/dock_study.h"

#include <cmath>
#include <string>

#include "io/presets.h"
#include "job/fields.h"
#include "papers/job_sheet.h"
#include "support.h"

using namespace thole;

namespace {

Job bay_boat() {
  for (const ReadyJob& ready : ready_jobs()) {
    if (ready.id == "bay-boat-in-the-estuary") return ready.job;
  }
  FAIL("no such job");
  return {};
}

Design with(const Job& job) { return evaluate(job, default_catalogue()); }

void set(Job& job, std::string_view path, double value) { apply(Change{.field = std::string(path), .value = value}, job); }

}  // namespace

TEST_SUITE("derived") {
  TEST_CASE("shares add up to the whole boat's sinkage, trim and metacentric height") {
    Job job = bay_boat();
    set(job, "trim.bank_y_m", 0.3);
    const Design design = with(job);
    double bow_m = 0.0, stern_m = 0.0, trim_m = 0.0, heel_deg = 0.0, gm_m = 0.0;
    for (const TrimShare& share : design.trim.shares) {
      bow_m += share.bow_sinkage_m;
      stern_m += share.stern_sinkage_m;
      trim_m += share.trim_change_m;
      heel_deg += share.heel_deg;
      gm_m += share.gm_change_m;
    }
    CHECK(bow_m == rel(design.trim.bow_sinkage_m, 1e-9));
    CHECK(stern_m == rel(design.trim.stern_sinkage_m, 1e-9));
    CHECK(trim_m == rel(design.trim.trim_change_m, 1e-9));
    CHECK(heel_deg == rel(design.trim.heel_deg, 1e-3));  // tangents, not angles
    CHECK(gm_m == rel(design.trim.gm_after_m - design.job.trim.gm_m.value, 1e-9));
  }

  TEST_CASE("weights set higher leave less metacentric height, and more list") {
    Job job = bay_boat();
    set(job, "trim.bank_y_m", 0.3);
    set(job, "trim.bank_z_m", -0.2);
    const Design low = with(job);
    set(job, "trim.bank_z_m", 1.5);
    const Design high = with(job);
    CHECK(high.trim.gm_after_m < low.trim.gm_after_m);
    CHECK(high.trim.heel_deg > low.trim.heel_deg);
  }

  TEST_CASE("the bank moved aft takes the bow up") {
    Job job = bay_boat();
    double last_deg = 90.0;
    for (const double x_m : {5.0, 4.0, 3.0, 2.0, 1.0}) {
      set(job, "trim.bank_x_m", x_m);
      const double trim_deg = with(job).trim.trim_deg;
      CHECK(trim_deg < last_deg);
      last_deg = trim_deg;
    }
  }

  // 33 CFR 183.75 counts one battery of 45 lb, 183.41 persons of 141 lb.
  TEST_CASE("the plate's persons: as many as are left pass, one more fails and is answered") {
    Job job = bay_boat();
    set(job, "trim.capacity_persons_count", 6);
    const Design design = with(job);
    const double taken = (design.trim.added_kg - 45.0 * 0.45359237) / (141.0 * 0.45359237);
    CHECK(design.trim.persons_taken_count == rel(taken, 1e-9));
    CHECK(design.trim.persons_left_count == rel(6.0 - taken, 1e-9));
    const int left = static_cast<int>(std::floor(6.0 - taken));
    set(job, "boat.crew_count", left);
    CHECK(with(job).find_check("trim.persons")->verdict() != Verdict::fail);
    set(job, "boat.crew_count", left + 1);
    const Design crowded = with(job);
    const Check& check = *crowded.find_check("trim.persons");
    CHECK(check.verdict() == Verdict::fail);
    REQUIRE_FALSE(check.changes.empty());
    CHECK(check.changes.back().field == "boat.crew_count");
    CHECK(check.changes.back().value == left);
  }

  TEST_CASE("without a plate read nothing is said of persons left") {
    const Design design = with(bay_boat());
    CHECK(design.find_check("trim.persons") == nullptr);
    CHECK(design.find_check("trim.plate_mass") == nullptr);
  }

  TEST_CASE("a test at the dock goes into the job, rounded as the field is") {
    Job job = bay_boat();
    CHECK_FALSE(roll_test_of(with(job)).has_value());
    set(job, "trim.roll_period_s", 2.0);
    const Design design = with(job);
    const GmReading reading = *roll_test_of(design);
    const Change change = *use_gm(reading);
    apply(change, job);
    CHECK(near(with(job).job.trim.gm_m.value, reading.gm_m, 0.0051));
    CHECK(with(job).job.trim.gm_m.given());
    // A roll in less than half a second: no boat has such a height; nothing is offered.
    set(job, "trim.roll_period_s", 0.4);
    CHECK_FALSE(use_gm(*roll_test_of(with(job))).has_value());
  }

  TEST_CASE("the weight of an estimated boat is known worse than that of a weighed one") {
    Job job = bay_boat();
    for (const auto& [path, value] : {std::pair{"trim.incline_mass_kg", 80.0}, {"trim.incline_shift_m", 1.0}, {"trim.pendulum_m", 1.0}, {"trim.pendulum_shift_mm", 40.0}}) {
      set(job, path, value);
    }
    set(job, "boat.displacement_kg", 1800.0);
    const double weighed = inclining_test_of(with(job))->spread_m / inclining_test_of(with(job))->gm_m;
    clear(*find_field("boat.displacement_kg"), job);
    const double guessed = inclining_test_of(with(job))->spread_m / inclining_test_of(with(job))->gm_m;
    CHECK(guessed > weighed);
  }

  TEST_CASE("worksheets are printed blank, and filled once a reading is known") {
    Job job = bay_boat();
    const std::string blank = job_sheet_html(with(job), default_catalogue(), {});
    CHECK(blank.find("Tests at the dock") != std::string::npos);
    CHECK(blank.find("Inclining test") != std::string::npos);
    set(job, "trim.roll_period_s", 2.34);
    const std::string filled = job_sheet_html(with(job), default_catalogue(), {});
    CHECK(filled.find("2.34 s</td>") != std::string::npos);
    CHECK(filled.find(" ± ") != std::string::npos);
    CHECK(blank.find(" ± ") == std::string::npos);
  }
}
