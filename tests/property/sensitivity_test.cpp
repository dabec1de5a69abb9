// What must hold of how well values are known, and of what they move.

#include "calc/sensitivity.h"

#include <algorithm>
#include <cmath>
#include <set>

#include "io/presets.h"
#include "io/sensitivity_text.h"
#include "job/fields.h"
#include "job/uncertainty.h"
#include "support.h"

using namespace thole;

namespace {

SensitivityResult of(const Job& job, std::string_view output = "hold.margin_actual_factor") {
  return sensitivity(job, default_catalogue(), {.output = output});
}

double answer(const Job& job, std::string_view output = "hold.margin_actual_factor") {
  return find_output(output)->number(evaluate(job, default_catalogue()));
}

const Swing* find(const SensitivityResult& result, std::string_view field) {
  for (const Swing& swing : result.swings) {
    if (swing.field == field) return &swing;
  }
  return nullptr;
}

void give(Job& job, std::string_view path, double value) {
  const Field* field = find_field(path);
  REQUIRE(field != nullptr);
  field->access.set(job, value);
  field->access.set_origin(job, Origin::given);
}

}  // namespace

TEST_SUITE("property") {
  TEST_CASE("each uncertainty belongs to one number of the job and says why") {
    std::set<std::string_view> seen;
    for (const Uncertainty& one : all_uncertainties()) {
      CAPTURE(one.field);
      const Field* field = find_field(one.field);
      REQUIRE(field != nullptr);
      CHECK((field->kind == Kind::number || field->kind == Kind::count));
      CHECK(seen.insert(one.field).second);
      CHECK_FALSE(one.why.empty());
      CHECK_FALSE(one.source->id.empty());
      CHECK(one.measured.low >= 0.0);
      CHECK(one.measured.high >= 0.0);
      CHECK(one.measured.low <= one.estimated.low);  // a tape is no worse than a guess
      CHECK(one.measured.high <= one.estimated.high + 1e-12);
      CHECK(one.estimated.low + one.estimated.high > 0.0);
      if (one.spread == Spread::share) CHECK(one.estimated.low < 1.0);
      const double middle = 0.5 * (field->min + field->max);
      for (const double value : {field->min, middle, field->max}) {
        for (const Origin origin : {Origin::given, Origin::estimated, Origin::preset}) {
          const ValueRange range = likely_range(one, value, origin);
          CHECK(range.low >= field->min);
          CHECK(range.high <= field->max);
          CHECK(range.low <= value);
          CHECK(range.high >= value);
        }
      }
    }
    CHECK(find_uncertainty("bank.series_count") == nullptr);
  }

  // What moves the margin must have a stated uncertainty, or it would go unranked.
  TEST_CASE("a number without an uncertainty does not move the margin") {
    for (const ReadyJob& ready : ready_jobs()) {
      const Design design = evaluate(ready.job, default_catalogue());
      const Job kept = with_choices_kept(ready.job, design);
      const double as_is = answer(kept);
      for (const Field& field : all_fields()) {
        if (field.kind != Kind::number || find_uncertainty(field.path()) != nullptr) continue;
        Job job = kept;
        const double value = field.access.get(design.job);
        give(job, field.path(), std::clamp(1.1 * value + field.step, field.min, field.max));
        CAPTURE(ready.id);
        CAPTURE(field.path());
        CHECK(answer(job) == rel(as_is, 1e-9));
      }
    }
  }

  TEST_CASE("a design is the same when what was chosen is set down as given") {
    for (const ReadyJob& ready : ready_jobs()) {
      CAPTURE(ready.id);
      const Design design = evaluate(ready.job, default_catalogue());
      const Design again = evaluate(with_choices_kept(ready.job, design), default_catalogue());
      for (const Output& output : all_outputs()) {
        if (output.number == nullptr) continue;
        CAPTURE(output.path());
        CHECK(near(again.hold.motor.id == design.hold.motor.id ? output.number(again) : std::nan(""),
                   output.number(design), 1e-9 * std::abs(output.number(design)) + 1e-12));
      }
    }
  }

  TEST_CASE(
      "widest first, the answer between the ends, all of them together no narrower than one") {
    for (const ReadyJob& ready : ready_jobs()) {
      CAPTURE(ready.id);
      const SensitivityResult result = of(ready.job);
      REQUIRE(result.known_output);
      REQUIRE(result.swings.size() > 5);
      CHECK(result.answer == answer(ready.job));
      CHECK(result.low < result.answer);
      CHECK(result.high > result.answer);
      double before = result.swings.front().width;
      for (const Swing& swing : result.swings) {
        CAPTURE(swing.field);
        CHECK(swing.width <= before);
        before = swing.width;
        CHECK(swing.low < swing.high);
        CHECK(std::isfinite(swing.at_low));
        CHECK(std::isfinite(swing.at_high));
        CHECK(std::min(swing.at_low, swing.at_high) >= result.low - 1e-12);
        CHECK(std::max(swing.at_low, swing.at_high) <= result.high + 1e-12);
      }
    }
  }

  TEST_CASE(
      "more wind, windage, current, drag or waves leave less margin, more thrust leaves more") {
    const Job& job = ready_jobs().front().job;
    const SensitivityResult result = of(job);
    for (const char* field :
         {"water.wind_mps", "hold.windage_factor", "boat.frontal_area_m2", "water.wave_height_m"}) {
      CAPTURE(field);
      const Swing* swing = find(result, field);
      REQUIRE(swing != nullptr);
      CHECK(swing->at_low > swing->at_high);
    }
    const Swing* thrust = find(result, "hold.thrust_N");
    REQUIRE(thrust != nullptr);
    CHECK(thrust->at_low < thrust->at_high);
  }

  // The same by hand: the job with that one value typed in.
  TEST_CASE("each end is the design with that one value changed") {
    const Job& given = ready_jobs().front().job;
    const Job kept = with_choices_kept(given, evaluate(given, default_catalogue()));
    const SensitivityResult result = of(given);
    for (const char* field : {"hold.windage_factor", "hold.thrust_N", "water.wind_mps"}) {
      CAPTURE(field);
      const Swing* swing = find(result, field);
      REQUIRE(swing != nullptr);
      Job job = kept;
      give(job, field, swing->high);
      CHECK(swing->at_high == rel(answer(job), 1e-9));
    }
  }

  TEST_CASE("a trial at sea narrows what the loads leave open") {
    Job job = ready_jobs().front().job;
    const SensitivityResult before = of(job);
    give(job, "hold.windage_factor", 1.0);
    give(job, "hold.drag_factor", 1.0);
    const SensitivityResult after = of(job);
    CHECK(after.answer == rel(before.answer, 1e-12));
    CHECK(find(after, "hold.windage_factor")->width <
          0.6 * find(before, "hold.windage_factor")->width);
    CHECK(after.high - after.low < before.high - before.low);
  }

  TEST_CASE("any number that a design says can be asked for, nothing else") {
    const Job& job = ready_jobs().front().job;
    for (const Output& output : all_outputs()) {
      CAPTURE(output.path());
      const SensitivityResult result = of(job, output.path());
      CHECK(result.known_output == (output.number != nullptr));
      if (!result.known_output) continue;
      CHECK(std::isfinite(result.low));
      CHECK(std::isfinite(result.high));
      CHECK_FALSE(sensitivity_text(result, output, System::us).empty());
      CHECK(write_sensitivity(result, output).find(output.path()) != std::string::npos);
    }
    CHECK_FALSE(of(job, "").known_output);
    CHECK_FALSE(of(job, "hold").known_output);
    CHECK_FALSE(of(job, "hold.mystery").known_output);
  }

  TEST_CASE("a job with nothing in it has an answer too, and the same each time") {
    const SensitivityResult once = of({});
    const SensitivityResult twice = of({});
    REQUIRE(once.swings.size() == twice.swings.size());
    CHECK(once.swings.size() > 5);
    for (std::size_t i = 0; i < once.swings.size(); ++i) {
      CHECK(once.swings[i].field == twice.swings[i].field);
      CHECK(once.swings[i].at_low == twice.swings[i].at_low);
    }
  }
}
