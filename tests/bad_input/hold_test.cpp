// Hold: what cannot be, and what is only just possible, by document, link and engine: each gets a clear
// answer, a number or a sentence, never a NaN and never a hang.

#include <doctest/doctest.h>

#include <cmath>
#include <string>
#include <vector>

#include "calc/hold/rose.h"
#include "calc/sensitivity.h"
#include "calc/studies.h"
#include "io/design_json.h"
#include "io/job_json.h"
#include "io/link.h"
#include "io/presets.h"
#include "job/fields.h"

using namespace thole;

namespace {

struct Refused {
  const char* values = "";  // of the job's sections
  const char* field = "";
  const char* says = "";  // in the message: what would be right
};

std::string message_for(const Issues& issues, std::string_view field) {
  for (const Issue& issue : issues) {
    if (issue.field == field) return issue.message;
  }
  return {};
}

// Everything that this job can be asked about holding.
void ask_everything(const Job& job) {
  const Design design = evaluate(job, default_catalogue());
  CHECK(write_design(design).find("NaN") == std::string::npos);
  CHECK(std::isfinite(design.hold.thrust_mean_N));
  CHECK(std::isfinite(design.hold.limiting_wind_mps));
  REQUIRE(design.hold.motor_found);
  const RoseResult limits = rose(hold_input(design), design.hold.motor);
  CHECK(limits.rows.size() == kRoseRowCount);
  for (const RoseRow& row : limits.rows) {
    CHECK(std::isfinite(row.limiting_wind_mps));
    CHECK(std::isfinite(row.limiting_current_mps));
    CHECK(std::isfinite(row.thrust_N));
  }
  HoldRunInput in = hold_run_input(design);
  in.record_h = 0.1;
  const HoldRun run = simulate_hold(in);
  CHECK(run.issues.empty());
  for (const double figure :
       {run.statistics.radius_95_m, run.statistics.current_mean_A, run.statistics.hunting_ratio}) {
    CHECK(std::isfinite(figure));
  }
  const SensitivityResult moves = sensitivity(job, default_catalogue(), {});
  CHECK(std::isfinite(moves.low));
  CHECK(std::isfinite(moves.high));
}

Job boat_of(double length_m, double displacement_kg) {
  Job job;
  job.boat.length_m = {length_m, Origin::given};
  job.boat.displacement_kg = {displacement_kg, Origin::given};
  return job;
}

}  // namespace

TEST_SUITE("bad_input") {
  TEST_CASE("hold: what cannot be is named, with what would be right") {
    const Refused refused[] = {
        {R"("boat": {"displacement_kg": 0})", "boat.displacement_kg", "between 250 and 15000 kg"},
        {R"("boat": {"length_m": 0})", "boat.length_m", "between 4 and 15 m"},
        {R"("water": {"wind_mps": 51.4})", "water.wind_mps", "between 0 and 35 mps"},
        {R"("water": {"fetch_m": 0.1})", "water.fetch_m", "between 50 and 200000 m"},
        {R"("water": {"depth_m": 0})", "water.depth_m", "between 0.5 and 200 m"},
        {R"("water": {"current_mps": 9})", "water.current_mps", "between 0 and 4 mps"},
        {R"("hold": {"tolerance_m": 0})", "hold.tolerance_m", "between 0.5 and 100 m"},
        {R"("hold": {"gusts": "storm"})", "hold.gusts", "\"npd\""},
        {R"("hold": {"drift_mps": -1})", "hold.drift_mps", "between 0 and 5 mps"},
        {R"("hold": {"held_thrust_frac": 0})", "hold.held_thrust_frac", "between"},
    };
    for (const Refused& one : refused) {
      CAPTURE(one.field);
      const std::string text =
          std::string(R"({"schema": 1, "boat": {"bow_height_m": 1.2}, )") + one.values + "}";
      const bool boat = std::string_view(one.values).starts_with(R"("boat")");
      const JobRead read =
          read_job(boat ? std::string(R"({"schema": 1, )") + one.values + "}" : text);
      const std::string message = message_for(read.issues, one.field);
      CAPTURE(message);
      CHECK(message.find(one.says) != std::string::npos);
      if (!boat) CHECK(read.job.boat.bow_height_m.value == 1.2);
      const Design design = evaluate(read.job, default_catalogue());
      CHECK(std::isfinite(design.hold.thrust_mean_N));
    }
  }

  TEST_CASE("hold: the corners of what can be get numbers") {
    for (const double wind_mps : {0.0, 35.0}) {
      for (const double current_mps : {0.0, 4.0}) {
        for (const double fetch_m : {50.0, 200000.0}) {
          CAPTURE(wind_mps);
          CAPTURE(current_mps);
          CAPTURE(fetch_m);
          Job job = boat_of(4.0, 250.0);
          job.water.wind_mps = {wind_mps, Origin::given};
          job.water.current_mps = {current_mps, Origin::given};
          job.water.current_angle_deg = {90.0, Origin::given};
          job.water.fetch_m = {fetch_m, Origin::given};
          ask_everything(job);
        }
      }
    }
  }

  TEST_CASE("hold: a current faster than full thrust fails with a remedy, and the hour says it was lost") {
    Job job = boat_of(12.0, 9000.0);
    job.water.current_mps = {4.0, Origin::given};
    job.water.wind_mps = {12.0, Origin::given};
    const Design design = evaluate(job, default_catalogue());
    const Check* check = design.find_check("hold.margin");
    REQUIRE(check != nullptr);
    CHECK(check->verdict() == Verdict::fail);
    CHECK_FALSE(check->remedy.empty());
    CHECK(design.hold.limiting_wind_mps == 0.0);
    HoldRunInput in = hold_run_input(design);
    in.record_h = 0.1;
    const HoldRun run = simulate_hold(in);
    CHECK(run.statistics.lost);
    const RequiredMargin margin = required_margin(in, 0.0);  // no load to speak of
    CHECK(std::isfinite(margin.margin_factor));
  }

  TEST_CASE("hold: the new fields travel by link and file, to their quantum") {
    Job job = boat_of(7.6, 2300.0);
    job.hold.tolerance_m = {3.3, Origin::given};
    job.hold.tolerance_frac = {0.9, Origin::given};
    job.hold.gusts = {GustLaw::ochi_shin, Origin::given};
    job.hold.drift_min = {8.0, Origin::given};
    job.hold.drift_mps = {0.35, Origin::given};
    job.hold.drift_angle_deg = {-20.0, Origin::given};
    job.hold.trial_wind_mps = {6.0, Origin::given};
    CHECK(read_link(write_link(job)).job.hold == job.hold);
    CHECK(read_job(write_job(job)).job.hold == job.hold);
  }

  TEST_CASE("hold: a trial counts once it is whole") {
    Job job = boat_of(7.6, 2300.0);
    const auto readings = [&] {
      const CalibrateInput in = trial_input(evaluate(job, default_catalogue()));
      return in.drifts.size() + in.holds.size();
    };
    job.hold.drift_min = {8.0, Origin::given};
    job.hold.drift_mps = {0.35, Origin::given};
    job.hold.held_thrust_frac = {0.4, Origin::given};
    CHECK(readings() == 0);  // nothing without the wind
    job.hold.trial_wind_mps = {6.0, Origin::given};
    CHECK(readings() == 2);
    job.hold.drift_mps = {};
    CHECK(readings() == 1);
  }
}
