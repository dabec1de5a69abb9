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
#include "trace_support.h"

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

  // By hand, 20 load numbers over 30 + 4 m: light 0.1 * 0.057 * 34 * 20 = 3.876 V, mid 0.1 * 0.0134 * 34 * 20 = 0.9112 V.
  TEST_CASE("a given backbone cable is judged, and the one that serves is named") {
    DataLinkInput in = small_network();
    in.cable_m = 30.0;
    in.load_units_count = 20;
    in.backbone = Backbone::light;
    Trace trace;
    const DataLinkResult light = data_link(in, trace);
    CHECK(light.cable == "Light (micro)");
    CHECK(light.drop_V == rel(3.876, 1e-9));
    CHECK(verdict_of(trace, "control.network_drop") == Verdict::fail);
    CHECK(verdict_of(trace, "control.network_current") == Verdict::pass);
    const Check& drop = *find(trace, "control.network_drop");
    CHECK(drop.remedy.starts_with("Mid cable serves. "));
    REQUIRE(drop.changes.size() == 2);
    CHECK(drop.changes.front().field == "control.backbone_cable");
    CHECK(drop.changes.front().value == 1.0);
    in.backbone = Backbone::mid;
    Trace mended;
    CHECK(data_link(in, mended).drop_V == rel(0.9112, 1e-9));
    CHECK(verdict_of(mended, "control.network_drop") == Verdict::pass);
    CHECK(find(mended, "control.network_drop")->changes.size() == 1);
    in.backbone = {};
    CHECK(data_link(in, mended).cable == "Mid");
    in.backbone = Backbone::heavy;  // more than it needs
    CHECK(data_link(in, mended).cable == "Heavy (mini)");
  }

  // 70 load numbers are 3.5 A: over the light cable's 3 A. Over 1 + 1 m the mid one serves, over 34 m none.
  TEST_CASE("a given backbone cable: current and length, and no cable proposed that does not serve either") {
    DataLinkInput in = small_network();
    in.cable_m = 1.0;
    in.longest_drop_m = 1.0;
    in.load_units_count = 70;
    in.backbone = Backbone::light;
    Trace trace;
    data_link(in, trace);
    CHECK(verdict_of(trace, "control.network_current") == Verdict::fail);
    CHECK(find(trace, "control.network_current")->remedy.starts_with("Mid cable serves. "));
    in.cable_m = 30.0;
    in.longest_drop_m = 4.0;
    Trace none;
    data_link(in, none);
    CHECK(verdict_of(none, "control.network_current") == Verdict::fail);
    CHECK(find(none, "control.network_current")->remedy.starts_with("Feed the backbone"));
    in.load_units_count = 1;
    in.cable_m = 120.0;
    Trace far;
    data_link(in, far);
    CHECK(verdict_of(far, "control.backbone") == Verdict::fail);
    CHECK(find(far, "control.backbone")->remedy.starts_with("Mid cable serves. "));
  }

  TEST_CASE("of a whole job: the heavier cable is among what makes it fit, and its key is kept") {
    Job job = ready_jobs().front().job;
    job.control.link = {DataLink::marine_network, Origin::given};
    job.control.backbone_m = {110.0, Origin::given};
    job.control.backbone_cable = {Backbone::light, Origin::given};
    const Design design = evaluate(job, default_catalogue());
    const Check* length = design.find_check("control.backbone");
    REQUIRE(length != nullptr);
    CHECK(length->verdict() == Verdict::fail);
    REQUIRE_FALSE(length->changes.empty());
    Job mended = job;
    apply(length->changes.front(), mended);
    CHECK(mended.control.backbone_cable.value == Backbone::mid);
    CHECK(evaluate(mended, default_catalogue()).find_check("control.backbone")->verdict() == Verdict::pass);
  }

  // By hand, hardtop up to 2.6 m with its front 3.5 m from the transom, receiver at 1.3 m: from 6.0 m
  // atan(1.3 / 2.5) = 27.4744 degrees, from 5.0 m atan(1.3 / 1.5) = 40.914; there 2.6 - 1.5 tan 30 = 1.734 m is enough.
  TEST_CASE("the boat's outline hides the sky from a receiver whose place is given") {
    ControlInput in = quiet();
    in.receiver = {.placed = true, .x_m = 6.0, .z_m = 1.3, .gap_m = 1.0,
                   .boat = read_view("0,0 0,0.8 2,0.8 2,2.6 3.5,2.6 3.5,1.0 6.5,1.2 7,0").points};
    REQUIRE(in.receiver.boat.size() == 8);
    const ControlResult ahead = control(in);
    CHECK(find(ahead.trace, "control.sky")->actual == rel(27.4744, 1e-5));
    CHECK(verdict_of(ahead.trace, "control.sky") != Verdict::fail);
    CHECK(ahead.sky_frac == rel(1.0 - 1.3 / std::hypot(1.3, 2.5), 1e-12));
    test::check_formulas(ahead.trace);
    in.receiver.x_m = 5.0;
    const ControlResult near = control(in);
    CHECK(find(near.trace, "control.sky")->actual == rel(40.914, 1e-5));
    CHECK(verdict_of(near.trace, "control.sky") == Verdict::fail);
    REQUIRE(find(near.trace, "control.sky")->changes.size() == 1);
    CHECK(find(near.trace, "control.sky")->changes.front().value == rel(1.74, 1e-12));
    in.receiver.z_m = 1.74;
    CHECK(verdict_of(control(in).trace, "control.sky") != Verdict::fail);
    // Right under the middle of a long hardtop, whose ends are far: all of the sky is hidden.
    in.receiver.x_m = 1.5;
    in.receiver.z_m = 2.4;
    in.receiver.boat = {{-6.0, 0.0}, {9.0, 0.0}, {9.0, 2.6}, {-6.0, 2.6}};
    CHECK(find(control(in).trace, "control.sky")->actual > 80.0);
    CHECK(find(control(in).trace, "control.sky")->changes.front().value >= 2.59);
    in.receiver.boat = read_view("0,0 0,0.8 2,0.8 2,2.6 3.5,2.6 3.5,1.0 6.5,1.2 7,0").points;
    in.receiver.z_m = 3.0;  // over all of her
    CHECK(find(control(in).trace, "control.sky")->actual == 0.0);
    in.sky_clear_deg = 12.0;  // measured
    CHECK(find(control(in).trace, "control.sky")->actual == 12.0);
    in.sky_clear_deg = {};
    in.receiver.placed = false;
    CHECK(find(control(in).trace, "control.sky") == nullptr);
    CHECK(find(control(in).trace, "control.receiver_gap") == nullptr);
  }

  TEST_CASE("a receiver on the feeder's way is too near to it; where it is not said, it is not judged") {
    Job job = ready_jobs().front().job;
    const Design before = evaluate(job, default_catalogue());
    CHECK(before.find_check("control.receiver_gap") == nullptr);
    CHECK(before.job.control.receiver_z_m.value == before.job.boat.bow_height_m.value);
    const std::vector<Place> route = feeder_route(before.job);
    job.control.receiver_x_m = {0.5 * (route[1].x_m + route[2].x_m), Origin::given};
    job.control.receiver_y_m = {-route[1].y_m, Origin::given};
    job.control.receiver_z_m = {route[1].z_m + 0.3, Origin::given};
    const Check* gap = nullptr;
    const Design beside = evaluate(job, default_catalogue());
    gap = beside.find_check("control.receiver_gap");
    REQUIRE(gap != nullptr);
    CHECK(gap->actual == rel(0.3, 1e-9));
    CHECK(gap->verdict() == Verdict::fail);
    REQUIRE(gap->changes.size() == 1);
    CHECK(gap->changes.front().value == rel(route[1].z_m + 0.5, 1e-9));
    apply(gap->changes.front(), job);
    CHECK(evaluate(job, default_catalogue()).find_check("control.receiver_gap")->verdict() != Verdict::fail);
    // From below it, too, up past it.
    job.control.receiver_z_m = {route[1].z_m - 0.2, Origin::given};
    const Design below = evaluate(job, default_catalogue());
    gap = below.find_check("control.receiver_gap");
    CHECK(gap->verdict() == Verdict::fail);
    apply(gap->changes.front(), job);
    CHECK(job.control.receiver_z_m.value > route[1].z_m);
    CHECK(evaluate(job, default_catalogue()).find_check("control.receiver_gap")->verdict() != Verdict::fail);
  }

  // Across and up from the centreline at the feeder's height: 0.4 + (4.6 - 0.3) m, beyond the usual two.
  TEST_CASE("the longest drop follows the places of sensor and receiver until it is typed") {
    Job job = ready_jobs().front().job;
    job.control.link = {DataLink::marine_network, Origin::given};
    job.control.feeder_z_m = {0.3, Origin::given};
    CHECK(evaluate(job, default_catalogue()).job.control.longest_drop_m.value == 2.0);
    job.control.receiver_y_m = {-0.4, Origin::given};
    job.control.receiver_z_m = {4.6, Origin::given};
    const Design design = evaluate(job, default_catalogue());
    CHECK(design.job.control.longest_drop_m.value == rel(4.7, 1e-12));
    test::check_formulas(design.estimates);
    job.control.longest_drop_m = {1.5, Origin::given};
    CHECK(evaluate(job, default_catalogue()).job.control.longest_drop_m.value == 1.5);
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
    CHECK(drawing.handles.size() == 3);  // sensor, receiver, feeder
    const std::string text = compass_text(compass_study(design), System::metric);
    CHECK(text.find("No place given") != std::string::npos);
    CHECK(text.find("heading error, worst heading") != std::string::npos);
    CHECK(write_compass(compass_study(design)).find("\"assumed\": true") != std::string::npos);
  }
}
