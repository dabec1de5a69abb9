// Where a design's bank lives: what the verdict says of it, against what the full search finds, and
// against the locker that the drawn blocks need.

#include <algorithm>
#include <string>

#include "base/units.h"
#include "calc/locker_study.h"
#include "draw/chapters.h"
#include "io/locker_text.h"
#include "io/presets.h"
#include "job/fields.h"
#include "papers/job_sheet.h"
#include "support.h"

using namespace thole;

namespace {

const Catalogue& catalogue() { return default_catalogue(); }

Job ready_job(std::string_view id) {
  for (const ReadyJob& ready : ready_jobs()) {
    if (ready.id == id) return ready.job;
  }
  FAIL("no such job");
  return {};
}

void measure(Job& job, double length_m, double width_m, double height_m) {
  job.locker.length_m = {length_m, Origin::given};
  job.locker.width_m = {width_m, Origin::given};
  job.locker.height_m = {height_m, Origin::given};
}

Design first_look(const Job& job) { return Evaluation(job, catalogue()).design(); }

// One design for all: group 31 by name, so that nothing else is chosen.
Job three_group_31() {
  Job job = ready_job("centre-console-in-the-tidal-sea");
  job.bank.block = {"agm-31", Origin::given};
  job.bank.series_count = {3, Origin::given};
  job.bank.parallel_count = {1, Origin::given};
  return job;
}

const Check& fit_of(const Design& design) {
  const Check* check = design.find_check("locker.fit");
  REQUIRE(check != nullptr);
  return *check;
}

}  // namespace

TEST_SUITE("derived") {
  TEST_CASE("a job whose locker was not measured has no check of it, and restraint all the same") {
    for (const ReadyJob& ready : ready_jobs()) {
      CAPTURE(ready.id);
      const Design design = first_look(ready.job);
      CHECK_FALSE(design.locker.measured);
      CHECK(design.locker.trace.checks.empty());
      CHECK(design.locker.restraint_N >= 2.0 * design.bank.block.mass_kg * kGravity_mps2 - 1e-9);
    }
  }

  TEST_CASE("three group 31 in a row: 1038 x 209 x 280 mm holds them, a millimetre less fails") {
    // Sizes of the block: BCI group 31, 330 x 173 x 240 mm. Gaps of 12 mm, 40 mm over the posts.
    Job job = three_group_31();
    measure(job, 1.038, 0.209, 0.280);
    CHECK(fit_of(first_look(job)).verdict() == Verdict::pass);
    for (Given<double> Locker::*side : {&Locker::length_m, &Locker::width_m, &Locker::height_m}) {
      Job smaller = job;
      (smaller.locker.*side).value -= 0.001;
      const Design design = first_look(smaller);
      const Check& check = fit_of(design);
      CHECK(check.verdict() == Verdict::fail);
      CHECK(check.remedy.find("1 mm too ") != std::string::npos);
      CHECK_FALSE(check.changes.empty());
      const LockerStudy study = locker_study(design, catalogue());
      CHECK_FALSE(study.packing.fits);
      CHECK(check.remedy.find(study.packing.problem) == 0);
    }
  }

  TEST_CASE("the verdict and the full search agree; the arrangement's jumpers need what is counted on") {
    int fitting = 0;
    int missing = 0;
    for (const ReadyJob& ready : ready_jobs()) {
      for (const double scale : {0.5, 0.8, 1.2, 2.0}) {
        Job job = ready.job;
        measure(job, 0.9 * scale, 0.45 * scale, 0.35);
        const Design design = first_look(job);
        const LockerStudy study = locker_study(design, catalogue());
        CAPTURE(ready.id);
        CAPTURE(scale);
        if (const Check* check = design.find_check("locker.fit")) {
          CHECK((check->verdict() == Verdict::pass) == study.packing.fits);
        }
        (study.packing.fits ? fitting : missing) += 1;
        for (const Arrangement& arrangement : study.packing.arrangements) {
          const double each_m = jumper_each_m(arrangement);
          CHECK(each_m * static_cast<double>(arrangement.jumpers.size()) >= arrangement.jumpers_m - 1e-9);
          CHECK(jumper_check(arrangement, each_m).verdict() == Verdict::pass);
          if (!arrangement.jumpers.empty()) CHECK(jumper_check(arrangement, each_m - 0.01).verdict() == Verdict::fail);
        }
      }
    }
    CHECK(fitting > 5);
    CHECK(missing > 5);
  }

  TEST_CASE("where the bank of choice does not go in, another that does and passes is chosen") {
    // Group 31 of 105 Ah three in a row are what a 36 V day takes; a low locker leaves lithium.
    Job job = ready_job("centre-console-in-the-tidal-sea");
    const Design free = first_look(job);
    const PackingInput lies = locker_input(free).packing;
    measure(job, 3.0, 3.0, lies.block_height_m + 0.040 - 0.002);
    const Design design = first_look(job);
    if (design.locker.fits) {
      CHECK(design.bank.block.height_mm < 1000.0 * lies.block_height_m);
      CHECK(std::none_of(design.bank.trace.checks.begin(), design.bank.trace.checks.end(),
                         [](const Check& check) { return check.verdict() == Verdict::fail; }));
    } else {
      CHECK(fit_of(design).verdict() == Verdict::fail);
    }
  }

  TEST_CASE("each option that is offered goes in and passes the bank's checks when it is taken") {
    Job job = three_group_31();
    measure(job, 1.2, 0.9, 0.275);  // too low for group 31, not for a block of 230 mm
    const Design design = first_look(job);
    REQUIRE_FALSE(design.locker.fits);
    const LockerStudy study = locker_study(design, catalogue());
    REQUIRE_FALSE(study.options.empty());
    for (const LockerOption& option : study.options) {
      CAPTURE(option.block.id);
      Job taken = job;
      taken.bank.series_count = {};
      taken.bank.parallel_count = {};
      apply(option.change, taken);
      const Design then = first_look(taken);
      CHECK(then.bank.block.id == option.block.id);
      CHECK(then.locker.fits);
    }
  }

  TEST_CASE("measured, the sheet has a chapter with the plan, straps and cautions; else none") {
    Job job = three_group_31();
    const auto sheet = [&] { return job_sheet_html(first_look(job), catalogue(), {}); };
    CHECK(sheet().find("<h2>Locker</h2>") == std::string::npos);
    measure(job, 1.2, 0.5, 0.35);
    const std::string page = sheet();
    CHECK(page.find("<h2>Locker</h2>") != std::string::npos);
    CHECK(page.find("3 blocks upright in a locker of") != std::string::npos);
    CHECK(page.find("Each strap rated at least") != std::string::npos);
    CHECK(page.find("Bolt the strap anchors through") != std::string::npos);
    CHECK(find_chapter("locker")->told(first_look(job)));
  }

  TEST_CASE("as text: the arrangement, each jumper, what is not measured; as JSON the same figures") {
    Job job = three_group_31();
    measure(job, 1.2, 0.5, 0.35);
    const Design design = first_look(job);
    const LockerStudy study = locker_study(design, catalogue());
    const std::string text = locker_text(study, design, System::metric);
    for (const std::string_view part : {"Upright", "1 to 2, plus to minus", "not measured yet", "33 CFR 183.420", ": counts",
                                        "Caution: "}) {
      CAPTURE(part);
      CHECK(text.find(part) != std::string::npos);
    }
    const std::string json = write_locker(study, design);
    CHECK(json.find("\"fits\": true") != std::string::npos);
    CHECK(json.find("\"posture\": \"upright\"") != std::string::npos);
  }

  TEST_CASE("at the bow of a fast boat 6, 3 and 3; slower than 5 sqrt(L) no slamming is asked for beyond what is reckoned") {
    // Factors: common practice; the speed: ISO 12215-5:2008, planing from V = 5 sqrt(L_WL) knots.
    LockerInput in;
    in.restraint = {.block_mass_kg = 27.0, .block_height_m = 0.24};
    in.motion = {.speed_mps = mps_from_kn(15.1), .waterline_length_m = 9.0, .bank_x_m = 7.0};
    CHECK(locker(in).restraint_N == rel(6.0 * 27.0 * kGravity_mps2, 1e-12));
    in.motion.bank_x_m = 6.7;
    CHECK(locker(in).restraint_N == rel(4.0 * 27.0 * kGravity_mps2, 1e-12));
    in.motion.speed_mps = mps_from_kn(14.9);
    CHECK(locker(in).restraint_N == rel(2.0 * 27.0 * kGravity_mps2, 1e-12));
    // Half way from the centre of gravity (3.6 m) to the bow (9 m): half way between 5 and 8 g.
    in.motion = {.speed_mps = mps_from_kn(15.1), .waterline_length_m = 9.0, .bank_x_m = 6.3, .cg_g = 5.0, .bow_g = 8.0};
    CHECK(locker(in).restraint_N == rel(6.5 * 27.0 * kGravity_mps2, 1e-12));
    in.motion.bank_x_m = 0.5;  // aft of it no less
    CHECK(locker(in).restraint_N == rel(5.0 * 27.0 * kGravity_mps2, 1e-12));
  }
}
