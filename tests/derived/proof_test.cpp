// What the proof adds to a design: the plate by elements, snag and foredeck in the verdict.

#include "calc/proof.h"

#include <doctest/doctest.h>

#include <cmath>
#include <string>

#include "io/presets.h"
#include "job/fields.h"
#include "support.h"

using namespace thole;

namespace {

Job ready_job(std::string_view id) {
  for (const ReadyJob& ready : ready_jobs())
    if (ready.id == id) return ready.job;
  FAIL("no such job");
  return {};
}

bool fails(const Design& design, std::string_view id) {
  const Check* check = design.find_check(id);
  return check != nullptr && check->verdict() == Verdict::fail;
}

bool all_pass(const Design& design) {
  for (const Check* check : design.checks_by_seriousness())
    if (check->verdict() == Verdict::fail || check->verdict() == Verdict::not_evaluated) return false;
  return true;
}

Job changed(Job job, const std::vector<Change>& changes) {
  for (const Change& change : changes) apply(change, job);
  return job;
}

}  // namespace

TEST_SUITE("proof") {
  TEST_CASE("the verdict of a proven design is that of all its checks, and what it says makes it fit does") {
    int mended_by_proof = 0;
    for (const ReadyJob& ready : ready_jobs()) {
      CAPTURE(ready.id);
      const Design quick = evaluate(ready.job, default_catalogue());
      const Design design = proven(ready.job, default_catalogue());
      CHECK_FALSE(quick.outcome.proven);
      CHECK(design.outcome.proven);
      CHECK(quick.find_check("plate.bolt_thrust") == nullptr);
      REQUIRE(design.find_check("plate.bolt_thrust") != nullptr);
      CHECK(design.find_step("plate.thrust_moment") != nullptr);  // what a check rests on is told with it
      CHECK(design.find_step("snag.tube") != nullptr);
      CHECK((design.outcome.fit == Fit::fits) == all_pass(design));
      CHECK(design.outcome.governing == design.checks_by_seriousness().front()->id);
      if (design.outcome.fit != Fit::fits_with_changes) continue;
      const Design mended = proven(changed(ready.job, design.outcome.changes), default_catalogue());
      CHECK(mended.outcome.fit == Fit::fits);
      mended_by_proof += quick.outcome.fit == Fit::fits;
    }
    CHECK(mended_by_proof > 0);
  }

  TEST_CASE("a plate that the strip of beam lets pass and the elements do not is not passed, and is mended") {
    Job job = ready_job("walkaround-in-sheltered-water");
    REQUIRE(proven(job, default_catalogue()).outcome.fit == Fit::fits);
    // Four of the six bolts: enough for the strip of beam.
    job.mount.bolt_places = {"50,70 50,-70 290,70 290,-70", Origin::given};
    CHECK(evaluate(job, default_catalogue()).outcome.fit == Fit::fits);
    const Design four = proven(job, default_catalogue());
    CHECK(fails(four, "plate.stress_thrust"));
    REQUIRE(four.outcome.fit == Fit::fits_with_changes);
    CHECK(proven(changed(job, four.outcome.changes), default_catalogue()).outcome.fit == Fit::fits);
    // Close together at the aft end nothing mends it.
    job.mount.bolt_places = {"50,30 50,-30 110,30 110,-30", Origin::given};
    CHECK(evaluate(job, default_catalogue()).outcome.fit != Fit::fits);
    const Design close = proven(job, default_catalogue());
    CHECK(close.outcome.fit == Fit::does_not_fit);
  }

  TEST_CASE("a plate that cannot be worked out is not evaluated, and says why") {
    Job job = ready_job("walkaround-in-sheltered-water");
    job.mount.bolt_places = {"50,50 50,-50 1100,0", Origin::given};
    const Design design = proven(job, default_catalogue());
    const Check* check = design.find_check("plate.solved");
    REQUIRE(check != nullptr);
    CHECK(check->verdict() == Verdict::not_evaluated);
    CHECK(check->remedy.find("olt") != std::string::npos);
    CHECK(design.outcome.fit != Fit::fits);
  }

  TEST_CASE("a deck that tears before the shaft bends is given more backing") {
    Job job = ready_job("centre-console-in-the-tidal-sea");
    job.mount.backing_side_mm = {75.0, Origin::given};
    job.mount.backing_thickness_mm = {12.0, Origin::given};
    const Design design = proven(job, default_catalogue());
    REQUIRE(fails(design, "snag.deck"));
    CHECK(design.outcome.fit == Fit::fits_with_changes);
    bool wider = false;
    for (const Change& change : design.outcome.changes) wider = wider || change.field == "mount.backing_side_mm";
    CHECK(wider);
  }

  TEST_CASE("the foredeck counts as far as it is measured") {
    Job job = ready_job("walkaround-in-sheltered-water");
    CHECK(proven(job, default_catalogue()).find_check("foredeck.reach") == nullptr);
    job.foredeck.reach_m = {3.0, Origin::given};
    const Design design = proven(job, default_catalogue());
    CHECK(fails(design, "foredeck.reach"));
    CHECK(design.outcome.fit != Fit::fits);
  }

  TEST_CASE("a page that stops before the proof has the verdict of the stages, and goes on to the same end") {
    const Job job = ready_job("centre-console-in-the-tidal-sea");
    Evaluation evaluation(job, default_catalogue(), {}, Telling::every_step, kAll);
    while (!evaluation.proving() && evaluation.step()) {
    }
    CHECK(evaluation.design().outcome.fit == evaluate(job, default_catalogue()).outcome.fit);
    CHECK_FALSE(evaluation.design().outcome.proven);
    while (evaluation.step()) {
    }
    const Design whole = proven(job, default_catalogue());
    CHECK(evaluation.design().outcome.fit == whole.outcome.fit);
    CHECK(evaluation.design().outcome.changes.size() == whole.outcome.changes.size());
  }
}
