// Sensors and links where they cannot be: named in a sentence, never a crash.

#include <cmath>

#include "calc/compass_study.h"
#include "calc/control/control.h"
#include "io/compass_text.h"
#include "io/presets.h"
#include "support.h"

using namespace thole;

TEST_SUITE("bad input") {
  TEST_CASE("a heading sensor on the wire errs, finitely, and fails with a remedy") {
    Job job = ready_jobs().front().job;
    const Design first = evaluate(job, default_catalogue());
    job.control.sensor_y_m = {first.job.control.feeder_y_m.value, Origin::given};
    job.control.sensor_z_m = {first.job.control.feeder_z_m.value, Origin::given};
    const Design design = evaluate(job, default_catalogue());
    CHECK(std::isfinite(design.control.heading_error_deg));
    const Check* check = design.find_check("control.heading");
    REQUIRE(check != nullptr);
    CHECK(check->verdict() == Verdict::fail);
    CHECK_FALSE(check->remedy.empty());
    CHECK_FALSE(compass_text(compass_study(design), System::metric).empty());
  }

  TEST_CASE("at both poles of the earth and near the magnetic ones the page says that no compass serves") {
    const double places[][2] = {{90.0, 0.0}, {-90.0, 0.0}, {86.0, 139.0}, {-64.0, 136.0}};
    for (const auto& place : places) {
      CAPTURE(place[0]);
      Job job = ready_jobs().front().job;
      job.control.latitude_deg = {place[0], Origin::given};
      job.control.longitude_deg = {place[1], Origin::given};
      const Design design = evaluate(job, default_catalogue());
      CHECK(std::isfinite(design.control.heading_error_deg));
      bool warned = false;
      for (const Caution& caution : design.control.trace.cautions) warned |= caution.id == "control.weak_field";
      // The earth's south pole lies 26 degrees from the magnetic one, where there is field enough.
      CHECK(warned == (place[0] != -90.0));
      if (warned) CHECK(design.control.heading_error_deg > 2.0);
    }
  }

  TEST_CASE("a field of nothing, a year of long ago, no cable at all") {
    ControlInput in{.heading = {.field_T = 1e-6, .horizontal_T = 1e-12}};
    CHECK(control(in).heading_error_deg == 180.0);
    CHECK(control(in).trace.checks.front().verdict() == Verdict::fail);
    Trace trace;
    const DataLinkResult none = data_link({.kind = DataLink::marine_network}, trace);
    CHECK(std::isfinite(none.drop_V));
    for (const Check& check : trace.checks) CHECK(std::isfinite(check.actual));
    Control control;
    control.latitude_deg = {50.0, Origin::given};
    control.longitude_deg = {0.0, Origin::given};
    control.year = {1900, Origin::given};
    CHECK(earth_here(control).year_outside);
    CHECK(earth_here(control).horizontal_T > 10e-6);
  }
}
