// What must hold of whole designs.

#include <cmath>
#include <limits>
#include <random>
#include <set>

#include "calc/outputs.h"
#include "io/presets.h"
#include "job/fields.h"
#include "support.h"
#include "trace_support.h"

namespace {

using namespace thole;

Design design_of(const Job& job) { return evaluate(job, default_catalogue()); }

void give(Job& job, std::string_view path, double value) {
  const Field* field = find_field(path);
  REQUIRE(field != nullptr);
  field->access.set(job, value);
  field->access.set_origin(job, Origin::given);
}

void give_text(Job& job, std::string_view path, std::string_view text) {
  const Field* field = find_field(path);
  REQUIRE(field != nullptr);
  field->access.set_text(job, text);
  field->access.set_origin(job, Origin::given);
}

// A design is sound: finite results, explained steps, named checks with remedies.
void check_sound(const Design& design) {
  for (const Output& output : all_outputs()) {
    CAPTURE(output.path());
    if (output.number != nullptr) CHECK(std::isfinite(output.number(design)));
  }
  std::set<std::string> ids;
  for (const Trace* trace : design.traces()) {
    test::check_formulas(*trace);
    for (const Step& step : trace->steps) {
      CAPTURE(step.id);
      CHECK(std::isfinite(step.value));
      CHECK(ids.insert("step " + step.id).second);
      CHECK_FALSE(step.source->title.empty());
    }
    for (const Check& check : trace->checks) {
      CAPTURE(check.id);
      CHECK(ids.insert("check " + check.id).second);
      CHECK_FALSE(check.label.empty());
      CHECK_FALSE(check.remedy.empty());
      CHECK_FALSE(check.source->id.empty());
      for (const Change& change : check.changes) {
        CAPTURE(change.field);
        CHECK(find_field(change.field) != nullptr);
        CHECK_FALSE(change.label.empty());
      }
    }
  }
  CHECK_FALSE(design.outcome.governing.empty());
  if (design.outcome.fit == Fit::fits) {
    for (const Check* check : design.checks_by_seriousness()) {
      CAPTURE(check->id);
      CHECK(check->verdict() != Verdict::fail);
      CHECK(check->verdict() != Verdict::not_evaluated);
    }
  }
}

// What nobody can estimate: the boat's own places, tests at the dock, the plate as it is made.
bool only_measured(const std::string& path) {
  for (const char* start : {"locker.", "control.", "foredeck.", "mount.test_", "mount.stiffener_", "trim.incline_", "trim.pendulum_",
                            "trim.immersion_", "trim.capacity_"}) {
    if (path.starts_with(start)) return true;
  }
  for (const char* whole : {"trim.roll_period_s", "mount.corner_mm", "mount.front_width_mm", "mount.deck_factor", "mount.panel_factor", "charge.vents_apart_m"}) {
    if (path == whole) return true;
  }
  return false;
}

}  // namespace

TEST_SUITE("property") {
  TEST_CASE("a design without its steps is the same in all else") {
    for (const ReadyJob& ready : ready_jobs()) {
      CAPTURE(ready.id);
      const Evaluation told(ready.job, default_catalogue());
      const Evaluation untold(ready.job, default_catalogue(), {}, Telling::no_steps);
      const Design& whole = told.design();
      const Design& bare = untold.design();
      CHECK(bare.outcome.governing == whole.outcome.governing);
      for (const Output& output : all_outputs()) {
        CAPTURE(output.path());
        if (output.text != nullptr) {
          CHECK(output.text(bare) == output.text(whole));
        } else {
          CHECK((output.number(bare) == output.number(whole) ||
                 (std::isnan(output.number(bare)) && std::isnan(output.number(whole)))));
        }
      }
      std::size_t told_steps = 0, untold_steps = 0;
      for (std::size_t i = 0; i < whole.traces().size(); ++i) {
        const Trace& a = *whole.traces()[i];
        const Trace& b = *bare.traces()[i];
        REQUIRE(a.checks.size() == b.checks.size());
        for (std::size_t k = 0; k < a.checks.size(); ++k) {
          CAPTURE(a.checks[k].id);
          CHECK(a.checks[k].id == b.checks[k].id);
          CHECK(a.checks[k].remedy == b.checks[k].remedy);
          CHECK(a.checks[k].verdict() == b.checks[k].verdict());
          CHECK(a.checks[k].changes.size() == b.checks[k].changes.size());
        }
        CHECK(a.cautions.size() == b.cautions.size());
        CHECK(a.assumptions.size() == b.assumptions.size());
        if (&a == &whole.estimates) continue;  // these fill blanks, and stay
        told_steps += a.steps.size();
        untold_steps += b.steps.size();
      }
      CHECK(told_steps > 100);
      CHECK(untold_steps == 0);
    }
  }

  TEST_CASE("nothing given at all still gives a whole answer, marked as estimated") {
    const Design design = design_of({});
    check_sound(design);
    for (const Field& field : all_fields()) {
      if (field.kind == Kind::text || field.list == "boats" || field.list == "waters") continue;
      CAPTURE(field.path());
      // The block's label says the exponent; nobody but a trial at sea says its readings.
      const bool reading = field.path().starts_with("hold.drift_") ||
                           field.path().starts_with("hold.trial_") ||
                           field.path() == "hold.held_thrust_frac";
      const bool optional =
          field.path() == "bank.peukert_exponent" || reading || only_measured(field.path());
      if (reading) CHECK(field.access.origin(design.job) == Origin::absent);
      if (!optional) CHECK(field.access.origin(design.job) != Origin::absent);
      CHECK(field.access.origin(design.job) != Origin::given);
    }
  }

  TEST_CASE("ready-made jobs are sound") {
    for (const ReadyJob& ready : ready_jobs()) {
      CAPTURE(ready.id);
      const Design design = design_of(ready.job);
      CHECK(design.issues.empty());
      check_sound(design);
    }
  }

  TEST_CASE("each field at both ends of its range, alone") {
    for (const Field& field : all_fields()) {
      if (field.access.is_text()) continue;
      for (const double value : {field.min, field.max}) {
        CAPTURE(field.path());
        CAPTURE(value);
        Job job;
        give(job, field.path(), value);
        const Design design = design_of(job);
        CHECK(design.issues.empty());
        check_sound(design);
      }
    }
  }

  TEST_CASE("just outside its range a field is named and estimated instead") {
    for (const Field& field : all_fields()) {
      if (field.kind != Kind::number) continue;
      for (const double value : {field.min - 1e-6 - std::abs(field.min) * 1e-6,
                                 field.max * (1.0 + 1e-6) + 1e-6,
                                 std::numeric_limits<double>::quiet_NaN(),
                                 std::numeric_limits<double>::infinity()}) {
        CAPTURE(field.path());
        CAPTURE(value);
        Job job;
        give(job, field.path(), value);
        const Design design = design_of(job);
        REQUIRE(design.issues.size() == 1);
        CHECK(design.issues[0].field == field.path());
        CHECK(field.access.origin(design.job) != Origin::given);
      }
    }
  }

  TEST_CASE("random jobs are sound") {
    std::mt19937 random(20240601);
    std::uniform_real_distribution<double> share(0.0, 1.0);
    for (int i = 0; i < 150; ++i) {
      Job job;
      for (const Field& field : all_fields()) {
        if (field.access.is_text() || share(random) < 0.6) continue;
        double value = field.min + (field.max - field.min) * share(random);
        if (field.kind != Kind::number) value = std::round(value);
        give(job, field.path(), value);
      }
      CAPTURE(i);
      check_sound(design_of(job));
    }
  }

  TEST_CASE("the same job gives the same design") {
    for (const ReadyJob& ready : ready_jobs()) {
      const Design a = design_of(ready.job);
      const Design b = design_of(ready.job);
      for (const Output& output : all_outputs()) {
        if (output.number != nullptr) CHECK(output.number(a) == output.number(b));
      }
    }
  }

  TEST_CASE("more wind never needs less thrust, and lasts no longer") {
    for (const ReadyJob& ready : ready_jobs()) {
      CAPTURE(ready.id);
      double thrust_N = 0.0;
      for (double wind_mps = 1.0; wind_mps <= 15.0; wind_mps += 1.0) {
        Job job = ready.job;
        give(job, "water.wind_mps", wind_mps);
        give(job, "water.current_mps", 0.0);
        const Design design = design_of(job);
        CHECK(design.hold.thrust_required_N >= thrust_N);
        thrust_N = design.hold.thrust_required_N;
      }
    }
  }

  TEST_CASE("a longer run of the same cable never drops less") {
    for (const ReadyJob& ready : ready_jobs()) {
      Job job = ready.job;
      const Design first = design_of(job);
      give_text(job, "feeder.conductor", first.feeder.cable.id);
      give_text(job, "bank.block", first.bank.block.id);
      give_text(job, "feeder.device", first.feeder.device.id);
      if (first.job.feeder.tail_m.value > 0.0) {
        give_text(job, "feeder.tail_conductor", first.feeder.tail_cable.id);
      }
      give(job, "bank.series_count", first.bank.series_count);
      give(job, "bank.parallel_count", first.bank.parallel_count);
      give_text(job, "hold.motor", first.hold.motor.id);
      double drop_V = 0.0;
      for (double run_m = 1.0; run_m <= 12.0; run_m += 1.0) {
        give(job, "feeder.run_m", run_m);
        CAPTURE(ready.id);
        CAPTURE(run_m);
        const Design design = design_of(job);
        CHECK(design.feeder.drop_V >= drop_V);
        drop_V = design.feeder.drop_V;
      }
    }
  }

  TEST_CASE("a stricter limit never turns a fail into a pass") {
    for (const ReadyJob& ready : ready_jobs()) {
      Job job = ready.job;
      const Design first = design_of(job);
      give_text(job, "feeder.conductor", first.feeder.cable.id);
      bool failed = false;
      for (double allowed_frac = 0.15; allowed_frac >= 0.005; allowed_frac -= 0.005) {
        give(job, "feeder.allowed_drop_frac", allowed_frac);
        const Design design = design_of(job);
        const Check* drop = design.find_check("feeder.drop");
        REQUIRE(drop != nullptr);
        const bool fails = drop->verdict() == Verdict::fail;
        CHECK_FALSE((failed && !fails));
        failed = fails;
      }
    }
  }

  TEST_CASE("a higher bow never needs a shorter shaft") {
    double length_m = 0.0;
    for (double bow_m = 0.4; bow_m <= 2.4; bow_m += 0.1) {
      Job job;
      give(job, "boat.bow_height_m", bow_m);
      const Design design = design_of(job);
      CHECK(design.shaft.length_required_m > length_m);
      length_m = design.shaft.length_required_m;
    }
  }

  TEST_CASE("the same weight to port as to starboard heels as far the other way") {
    Job port;
    Job starboard;
    give(port, "trim.bank_y_m", -0.4);
    give(starboard, "trim.bank_y_m", 0.4);
    give(port, "trim.motor_y_m", 0.0);
    give(starboard, "trim.motor_y_m", 0.0);
    CHECK(design_of(port).trim.heel_deg == rel(-design_of(starboard).trim.heel_deg, 1e-9));
  }

  TEST_CASE("what makes it fit does make it fit, and nothing in it is idle") {
    int tried = 0;
    for (const ReadyJob& ready : ready_jobs()) {
      const Design design = design_of(ready.job);
      if (design.outcome.fit != Fit::fits_with_changes) continue;
      ++tried;
      CAPTURE(ready.id);
      Job changed = ready.job;
      for (const Change& change : design.outcome.changes) apply(change, changed);
      CHECK(design_of(changed).outcome.fit == Fit::fits);
      for (std::size_t skip = 0; skip < design.outcome.changes.size(); ++skip) {
        Job fewer = ready.job;
        for (std::size_t i = 0; i < design.outcome.changes.size(); ++i) {
          if (i != skip) apply(design.outcome.changes[i], fewer);
        }
        CHECK(design_of(fewer).outcome.fit != Fit::fits);
      }
    }
    CHECK(tried >= 1);
  }

  TEST_CASE("nothing on sale is an answer, not a crash") {
    Catalogue empty;
    const Design design = evaluate({}, empty);
    check_sound(design);
    CHECK(design.outcome.fit != Fit::fits);
    CHECK(design.outcome.fit != Fit::fits_with_changes);
  }

  TEST_CASE("the unit of a name is its suffix, also one per another") {
    CHECK(unit_of("bow_height_m") == "m");
    CHECK(unit_of("ventilation_m3_per_h") == "m3_per_h");
    CHECK(unit_of("mass_kg_per_m") == "kg_per_m");
    CHECK(unit_of("price_per_m") == "");
    CHECK(unit_of("drop_frac") == "");
  }

  TEST_CASE("the stowed motor's weight lies where its class has it, until it is measured") {
    const Design design = design_of({});
    REQUIRE(design.hold.motor.stowed_overhang_m > 0.0);
    CHECK(design.job.mount.overhang_mm.value ==
          rel(1000.0 * design.hold.motor.stowed_overhang_m, 1e-12));
    Job measured;
    give(measured, "mount.overhang_mm", 290.0);
    CHECK(design_of(measured).job.mount.overhang_mm.value == 290.0);
  }

  TEST_CASE("an id that the catalogue does not know is named, and Thole chooses") {
    Job job;
    give_text(job, "hold.motor", "no-such-motor");
    const Design design = design_of(job);
    REQUIRE(design.issues.size() == 1);
    CHECK(design.issues[0].field == "hold.motor");
    CHECK(design.issues[0].severity == Severity::warning);
    CHECK(design.hold.motor_found);
  }

  TEST_CASE("an evaluation in slices ends where evaluate ends, and says nothing better on the way") {
    const Catalogue catalogue = default_catalogue();
    std::vector<Job> jobs{Job{}};
    for (const ReadyJob& ready : ready_jobs()) jobs.push_back(ready.job);
    Outcome before;
    for (const Job& job : jobs) {
      const Design whole = evaluate(job, catalogue);
      Evaluation evaluation(job, catalogue, before);
      int trials = 0;
      while (evaluation.step()) {
        CHECK(evaluation.searching());
        // Never green, and never an answer that was not there before.
        const Fit fit = evaluation.design().outcome.fit;
        CHECK(fit != Fit::fits);
        if (before.fit != Fit::fits_with_changes) CHECK(fit != Fit::fits_with_changes);
        REQUIRE(++trials < 60);
      }
      CHECK_FALSE(evaluation.searching());
      const Outcome& found = evaluation.design().outcome;
      CHECK(found.fit == whole.outcome.fit);
      CHECK(found.governing == whole.outcome.governing);
      REQUIRE(found.changes.size() == whole.outcome.changes.size());
      for (std::size_t i = 0; i < found.changes.size(); ++i) {
        CHECK(found.changes[i].field == whole.outcome.changes[i].field);
        CHECK(found.changes[i].label == whole.outcome.changes[i].label);
      }
      before = found;
    }
  }
}
