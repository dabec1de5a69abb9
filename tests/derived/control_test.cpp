// The control stage by hand: network drop, a turned sensor, the sky, and the compass of a whole boat.

#include "calc/control/control.h"

#include <algorithm>
#include <cmath>
#include <string_view>

#include "calc/compass_study.h"
#include "calc/heading.h"
#include "draw/chapters.h"
#include "io/compass_text.h"
#include "io/presets.h"
#include "job/fields.h"
#include "support.h"

using namespace thole;

namespace {

const Check* find(const Trace& trace, std::string_view id) {
  for (const Check& check : trace.checks) {
    if (check.id == id) return &check;
  }
  return nullptr;
}

Verdict verdict_of(const Trace& trace, std::string_view id) {
  const Check* check = find(trace, id);
  REQUIRE(check != nullptr);
  return check->verdict();
}

DataLinkInput small_network() {
  return {.kind = DataLink::marine_network,
          .cable_m = 18.0,
          .longest_drop_m = 4.0,
          .drops_m = 9.0,
          .device_count = 4,
          .load_units_count = 10,
          .terminator_count = 2,
          .fuse_A = 3.0,
          .drip_loops = true,
          .ties_negatives = false};
}

ControlInput quiet() { return {.heading = {.field_T = 0.4e-6, .horizontal_T = 20e-6}}; }

}  // namespace

TEST_SUITE("derived") {
  // 10 load numbers are 0.5 A; 0.053 ohm/m out and back over 22 m is 2.332 ohm: 1.166 V, by Ohm's law
  // and not by the printed rule of 0.1.
  TEST_CASE("network drop is Ohm's law of all devices at the far end") {
    CHECK(network_drop_V(0.053, 22.0, 10.0) == rel(0.5 * 2.0 * 0.053 * 22.0, 1e-12));
    CHECK(network_drop_V(0.053, 22.0, 10.0) == rel(1.166, 1e-9));
    Trace trace;
    const DataLinkResult end = data_link(small_network(), trace);
    CHECK(end.cable == "Light (micro)");
    CHECK(end.current_A == rel(0.5, 1e-12));
    CHECK(end.drop_V == rel(0.5 * 2.0 * 0.057 * 22.0, 1e-12));
    for (const Check& check : trace.checks) {
      CAPTURE(check.id);
      CHECK(check.verdict() != Verdict::fail);
    }
    DataLinkInput middle = small_network();
    middle.feed = NetworkFeed::middle;
    Trace other;
    // 9 m of backbone and the drop, 5 load numbers: 0.25 A x 2 x 0.057 x 13.
    CHECK(data_link(middle, other).drop_V == rel(0.25 * 2.0 * 0.057 * 13.0, 1e-12));
  }

  TEST_CASE("more load than light cable stands takes a heavier one") {
    DataLinkInput in = small_network();
    in.load_units_count = 40;  // 2 A, 5 V over light cable
    Trace trace;
    CHECK(data_link(in, trace).cable == "Mid");
    in.load_units_count = 100;  // 5 A
    CHECK(data_link(in, trace).cable == "Heavy (mini)");
  }

  TEST_CASE("each limit of the network on it and just over it") {
    const auto verdict = [](const DataLinkInput& in, std::string_view id) {
      Trace trace;
      data_link(in, trace);
      return verdict_of(trace, id);
    };
    DataLinkInput in = small_network();
    in.longest_drop_m = 6.0;
    CHECK(verdict(in, "control.drop") != Verdict::fail);
    in.longest_drop_m = 6.01;
    CHECK(verdict(in, "control.drop") == Verdict::fail);
    in = small_network();
    in.drops_m = 78.0;
    CHECK(verdict(in, "control.drops") != Verdict::fail);
    in.drops_m = 78.1;
    CHECK(verdict(in, "control.drops") == Verdict::fail);
    in = small_network();
    in.device_count = 50;
    CHECK(verdict(in, "control.devices") != Verdict::fail);
    in.device_count = 51;
    CHECK(verdict(in, "control.devices") == Verdict::fail);
    for (const int count : {0, 1, 3}) {
      in = small_network();
      in.terminator_count = count;
      CHECK(verdict(in, "control.terminators") == Verdict::fail);
    }
    in = small_network();
    CHECK(verdict(in, "control.terminators") == Verdict::pass);
    in.fuse_A = 0.0;
    CHECK(verdict(in, "control.network_fuse") == Verdict::fail);
    in.fuse_A = 10.0;
    CHECK(verdict(in, "control.network_fuse_most") == Verdict::fail);
    in.ties_negatives = true;
    CHECK(verdict(in, "control.negatives") == Verdict::fail);
    in.floating = false;
    Trace trace;
    data_link(in, trace);
    CHECK(find(trace, "control.negatives") == nullptr);
  }

  // 30 degrees: half the push goes across, half of the sky is left.
  TEST_CASE("a sensor turned off the keel line, and what hides the sky") {
    ControlInput in = quiet();
    in.thrust_N = 200.0;
    in.heading.turn_deg = -30.0;
    in.sky_clear_deg = 30.0;
    const ControlResult result = control(in);
    CHECK(result.side_push_N == rel(100.0, 1e-12));
    CHECK(result.sky_frac == rel(0.5, 1e-12));
    CHECK(verdict_of(result.trace, "control.alignment") == Verdict::fail);
  }

  TEST_CASE("what was not told is asked for and not judged") {
    const ControlResult result = control(quiet());
    CHECK(result.trace.checks.size() == 1);  // the heading, which is worked out
    for (const char* field : {"control.sensor_turn_deg", "control.receiver_clear_deg", "control.remote",
                              "control.switch_rated_A", "control.latitude_deg"}) {
      CAPTURE(field);
      CHECK(std::any_of(result.trace.assumptions.begin(), result.trace.assumptions.end(),
                        [&](const Assumption& assumption) { return assumption.field == field; }));
    }
  }

  TEST_CASE("remote and switch against the day and the motor") {
    ControlInput in = quiet();
    in.hours_on_h = 8.0;
    in.current_A = 60.0;
    in.remote = RemotePower::charged;
    in.remote_h = 7.9;
    in.switch_rated_A = 59.0;
    CHECK(verdict_of(control(in).trace, "control.remote") == Verdict::fail);
    CHECK(verdict_of(control(in).trace, "control.switch") == Verdict::fail);
    in.remote_h = 20.0;
    in.switch_rated_A = 175.0;
    CHECK(verdict_of(control(in).trace, "control.remote") == Verdict::pass);
    CHECK(verdict_of(control(in).trace, "control.switch") == Verdict::pass);
    in.main_switch = MainSwitch::none;
    in.breaker = false;
    in.bank_Ah = 101.0;
    CHECK(verdict_of(control(in).trace, "control.no_switch") == Verdict::fail);
  }

  // The feeder page's distance is for a long straight pair: put there, the page's own error is the limit.
  TEST_CASE("feeder's distance and the control page's error are one idea") {
    Job job = ready_jobs().front().job;
    job.control.tilt_deg = {0.0, Origin::given};
    const Design design = evaluate(job, default_catalogue());
    const Step* distance = design.find_step("feeder.heading_distance");
    REQUIRE(distance != nullptr);
    CompassInput in = compass_input(design.job, design.feeder.current_A, earth_here(design.job.control));
    in.pair.route = {{-3000.0, 0.0, 0.0}, {3000.0, 0.0, 0.0}};
    in.pair.lay = FeederLay::one_above_other;
    in.sensor = {0.0, 0.0, distance->value};
    CHECK(worst_error_deg(level_field_at_sensor_T(in), in.horizontal_T) == rel(in.limit_deg, 2e-3));
  }

  TEST_CASE("the study is the stage's own figure; places are mirrored to port") {
    for (const ReadyJob& ready : ready_jobs()) {
      CAPTURE(ready.id);
      const Design design = evaluate(ready.job, default_catalogue());
      const CompassStudy study = compass_study(design);
      CHECK(study.result.issues.empty());
      CHECK(study.result.error_deg == rel(design.control.heading_error_deg, 1e-12));
      CHECK(study.input.pair.route[1].y_m == -design.job.control.feeder_y_m.value);
      CHECK(find(design.control.trace, "control.heading")->verdict() != Verdict::fail);
    }
  }

  // Published values of IGRF-14 stand in tests/published/compass_test.cpp; handbook 6.6 has 20.6 uT for
  // Boston at 2025.0 by IGRF-13, to 0.2 uT.
  TEST_CASE("a place gives the field there; outside the model's years it says so") {
    Control control;
    control.year = {2025, Origin::given};
    CHECK(earth_here(control).assumed);
    CHECK(earth_here(control).horizontal_T == 20e-6);
    control.latitude_deg = {42.4, Origin::given};
    control.longitude_deg = {-71.0, Origin::given};
    CHECK(near(1e6 * earth_here(control).horizontal_T, 20.6, 0.2));
    CHECK_FALSE(earth_here(control).year_outside);
    control.year = {2031, Origin::given};
    CHECK(earth_here(control).year_outside);
    CHECK(near(1e6 * earth_here(control).horizontal_T, 20.6, 0.6));
  }

  TEST_CASE("an unshielded feeder under the sensor: every change that is offered mends it") {
    Job job = ready_jobs().front().job;
    job.control.spacing_mm = {200.0, Origin::given};
    job.control.feeder_y_m = {0.0, Origin::given};
    const Design bad = evaluate(job, default_catalogue());
    const Check* check = bad.find_check("control.heading");
    REQUIRE(check != nullptr);
    REQUIRE(check->verdict() == Verdict::fail);
    REQUIRE_FALSE(check->changes.empty());
    for (const Change& change : check->changes) {
      CAPTURE(change.field);
      Job mended = job;
      apply(change, mended);
      const Design good = evaluate(mended, default_catalogue());
      CHECK(good.find_check("control.heading")->verdict() != Verdict::fail);
    }
  }

  TEST_CASE("parts of a network are listed once there is one") {
    Job job = ready_jobs().front().job;
    const auto count = [](const Design& design, std::string_view id) {
      double quantity = 0.0;
      for (const PartLine& line : design.parts.lines) {
        if (line.id == id) quantity += line.quantity;
      }
      return quantity;
    };
    CHECK(count(evaluate(job, default_catalogue()), "network-tee") == 0.0);
    job.control.link = {DataLink::marine_network, Origin::given};
    job.control.node_count = {4, Origin::given};
    job.control.backbone_m = {7.2, Origin::given};
    const Design design = evaluate(job, default_catalogue());
    CHECK(count(design, "network-tee") == 4.0);
    CHECK(count(design, "network-terminator") == 2.0);
    CHECK(count(design, "network-tap") == 1.0);
    CHECK(count(design, "network-backbone") == 8.0);
    CHECK(count(design, "ethernet-cable") == 0.0);
  }

  TEST_CASE("picture and text name sensor, error and link") {
    Job job = ready_jobs().front().job;
    job.control.link = {DataLink::marine_network, Origin::given};
    const Design design = evaluate(job, default_catalogue());
    const Chapter* chapter = find_chapter("control");
    REQUIRE(chapter != nullptr);
    const Drawing drawing = chapter->picture(design, System::metric);
    CHECK(drawing.description.find("network") != std::string::npos);
    CHECK(drawing.description.find("is allowed") != std::string::npos);
    CHECK(drawing.handles.size() == 2);
    const std::string text = compass_text(compass_study(design), System::metric);
    CHECK(text.find("No place given") != std::string::npos);
    CHECK(text.find("heading error, worst heading") != std::string::npos);
    CHECK(write_compass(compass_study(design)).find("\"assumed\": true") != std::string::npos);
  }
}
