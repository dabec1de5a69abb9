#include <string>

#include "job/estimate.h"
#include "job/fields.h"
#include "support.h"
#include "trace_support.h"

using namespace thole;

namespace {

// A boat of this waterline, its other fields in proportion; nothing of shaft or trim known.
Job boat(double waterline_length_m, double deadrise_deg, Layout layout) {
  Job job;
  job.boat.waterline_length_m = {waterline_length_m, Origin::given};
  job.boat.waterline_beam_m = {0.35 * waterline_length_m, Origin::given};
  job.boat.deadrise_deg = {deadrise_deg, Origin::given};
  job.boat.layout = {layout, Origin::given};
  return job;
}

// Read off a plate or in a test at the dock: nothing stands in for them.
bool must_be_measured(std::string_view key) {
  for (const std::string_view start : {"roll_", "incline_", "pendulum_", "immersion_mass_kg", "immersion_mm", "capacity_"}) {
    if (key.starts_with(start)) return true;
  }
  return false;
}

}  // namespace

TEST_SUITE("property") {
  TEST_CASE("every blank of shaft and trim that need not be measured is filled within its range, for every boat") {
    for (const double length_m : {3.0, 4.9, 6.6, 9.6, 13.7}) {
      for (const double deadrise_deg : {0.0, 12.0, 30.0}) {
        for (const Layout layout : {Layout::open_skiff, Layout::pilothouse}) {
          Job job = boat(length_m, deadrise_deg, layout);
          Trace trace;
          estimate_shaft(job, trace);
          estimate_trim(job, trace);
          thole::test::check_formulas(trace);
          for (const Field& field : all_fields()) {
            if (field.section != "shaft" && field.section != "trim") continue;
            const bool from_motor = field.key == "length_m" || field.key.starts_with("tube_");
            const bool measured = must_be_measured(field.key);
            CAPTURE(std::string(field.key));
            CHECK((field.access.origin(job) == Origin::absent) == (from_motor || measured));
            if (!from_motor && !measured) CHECK(range_message(field, field.access.get(job)) == "");
          }
        }
      }
    }
  }

  TEST_CASE("what is given is kept") {
    Job job = boat(6.6, 18.0, Layout::centre_console);
    job.shaft.collar_m = {0.3, Origin::given};
    job.trim.gm_m = {1.4, Origin::given};
    Trace trace;
    estimate_shaft(job, trace);
    estimate_trim(job, trace);
    CHECK(job.shaft.collar_m.value == 0.3);
    CHECK(job.trim.gm_m.value == 1.4);
    CHECK(job.trim.gm_m.given());
  }
}
