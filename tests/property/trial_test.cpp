// A trial at sea finds the boat that it was made with.

#include <cmath>
#include <limits>
#include <random>

#include "base/units.h"
#include "calc/design.h"
#include "calc/hold/calibrate.h"
#include "calc/hold/loads.h"
#include "calc/hold/thruster.h"
#include "io/presets.h"
#include "support.h"
#include "trace_support.h"

using namespace thole;

namespace {

MotorClass motor() {
  return {.id = "motor",
          .label = "Motor",
          .thrust_N = 500.0,
          .nominal_V = 36.0,
          .power_full_W = 1900.0,
          .power_idle_W = 20.0,
          .propeller_diameter_m = 0.30,
          .mass_kg = 33.0};
}

HoldInput boat() {
  return {.length_m = 7.6,
          .waterline_length_m = 6.6,
          .waterline_beam_m = 2.3,
          .draft_m = 0.45,
          .displacement_kg = 2300.0,
          .frontal_area_m2 = 4.0,
          .lateral_area_m2 = 9.0,
          .lateral_centroid_m = 0.3,
          .underwater_area_m2 = 2.8,
          .underwater_centroid_m = -0.3,
          .bow_angle_rad = 0.44684,
          .thruster_forward_m = 3.7,
          .fetch_m = 2000.0,
          .motors = {motor()}};
}

// What is true of a boat, and of a day, that nobody knows.
struct Truth {
  double windage = 1.0;
  double drag = 1.0;
  double wave = 1.0;
  double drift_law = 1.0;
  double thrust = 1.0;
};

// The boat of that truth, adrift: the balance of its side areas, in the water's frame, put back on
// the ground by hand. The fifth of the terms is the shallow-water drag of this hull at 5 m.
DriftReading drift(const Truth& truth, double wind_mps, double current_mps, double current_deg) {
  const HoldResult held = hold(boat());
  double sway_factor = 0.0;
  for (const Step& step : held.trace.steps) {
    if (step.id == "hold.cross_flow") sway_factor = step.value;
  }
  const double ratio = truth.drift_law * truth.windage * air_density_kg_per_m3(15.0) * 0.9 * 9.0 /
                       (truth.drag * 1026.0 * sway_factor * 2.8);
  const double share = drift_frac(ratio);
  const double set_x = current_mps * std::cos(rad_from_deg(current_deg));
  const double set_y = current_mps * std::sin(rad_from_deg(current_deg));
  const double over_ground_x = share * (wind_mps - set_x) + set_x;
  const double over_ground_y = share * (0.0 - set_y) + set_y;
  return {.time_min = 5.0,
          .drift_mps = std::hypot(over_ground_x, over_ground_y),
          .drift_angle_deg = deg_from_rad(std::atan2(over_ground_y, over_ground_x)),
          .wind_mps = wind_mps,
          .current_mps = current_mps,
          .current_angle_deg = current_deg};
}

// The same boat held: thrust of the hold stage's own equilibrium over what its motor gives after
// general losses and race; an eighth more for gusts and yawing.
HeldReading held(const Truth& truth, double wind_mps, double current_mps, double current_deg,
                 double wave_m) {
  HoldInput in = boat();
  in.wind_mps = wind_mps;
  in.current_mps = current_mps;
  in.current_angle_deg = current_deg;
  in.wave_height_m = wave_m * std::sqrt(truth.wave);
  in.wave_period_s = std::sqrt(2.0 * 3.141592653589793 * wave_m / (0.04 * kGravity_mps2));
  in.windage_factor = truth.windage;
  in.drag_factor = truth.drag;
  const double left_N =
      0.9 * 0.95 * truth.thrust * thrust_in_current_N({.diameter_m = 0.30}, 500.0, current_mps);
  return {.thrust_frac = 1.125 * hold(in).thrust_equilibrium_N / left_N,
          .wind_mps = wind_mps,
          .current_mps = current_mps,
          .current_angle_deg = current_deg,
          .wave_height_m = wave_m};
}

CalibrateInput trial_of(const Truth& truth) {
  return {.boat = boat(),
          .motor = motor(),
          .drifts = {drift(truth, 7.0, 0.0, 0.0), drift(truth, 9.0, 0.3, 60.0)},
          .holds = {held(truth, 8.0, 0.1, 0.0, 0.05), held(truth, 5.0, 1.3, 20.0, 0.05)}};
}

bool inside(const Band& band, double truth) {
  return band.low_factor <= truth && truth <= band.high_factor;
}

double width(const Band& band) { return std::log(band.high_factor / band.low_factor); }

}  // namespace

TEST_SUITE("property") {
  TEST_CASE("readings as computed leave the factors at 1, narrower than before") {
    const CalibrateResult r = calibrate(trial_of({}));
    REQUIRE(r.fitted);
    CHECK(r.issues.empty());
    CHECK(r.readings.size() == 4);
    for (const Band* band : {&r.windage, &r.drag, &r.windage_over_drag}) {
      CHECK(band->value_factor == rel(1.0, 1e-4));
    }
    CHECK(width(r.windage) < 4.0 * 0.20);  // two deviations either side of what was thought before
    CHECK(width(r.drag) < 4.0 * 0.35);
    for (const ReadingFit& one : r.readings) {
      CAPTURE(one.label);
      CHECK(one.measured_frac == rel(one.computed_frac, 1e-4));
      CHECK(std::abs(one.off_ratio) < 1e-2);
    }
  }

  TEST_CASE("readings of another boat put its factors within the band") {
    for (const double windage : {0.7, 0.85, 1.15, 1.4}) {
      for (const double drag : {0.6, 0.8, 1.25, 1.7}) {
        CAPTURE(windage);
        CAPTURE(drag);
        const CalibrateResult r = calibrate(trial_of({.windage = windage, .drag = drag}));
        CHECK(inside(r.windage, windage));
        CHECK(inside(r.drag, drag));
        CHECK(inside(r.windage_over_drag, windage / drag));
        for (const ReadingFit& one : r.readings) {
          CHECK(std::abs(std::log(one.calibrated_frac / one.measured_frac)) <=
                std::abs(std::log(one.computed_frac / one.measured_frac)) + 0.03);
        }
        test::check_formulas(r.trace);
      }
    }
  }

  // Boats, days and readings drawn at random, as far from the computed ones as is thought of them
  // beforehand: two standard deviations must hold 95 % of them. Of 300 draws of 0.954, fewer than
  // 0.92 come once in a hundred runs; the seed is fixed.
  TEST_CASE("nineteen of twenty true factors lie in the band, with noise on every reading") {
    std::mt19937 generator(20260);
    // Not std::normal_distribution, which differs between libraries: twelve evenly spread numbers.
    const auto normal = [&] {
      double sum = -6.0;
      for (int i = 0; i < 12; ++i) sum += static_cast<double>(generator()) / 4294967296.0;
      return sum;
    };
    const int draws = 300;
    int windage_inside = 0;
    int drag_inside = 0;
    int ratio_inside = 0;
    int used = 0;
    for (int i = 0; i < draws; ++i) {
      const Truth truth{.windage = std::exp(0.20 * normal()),
                        .drag = std::exp(0.35 * normal()),
                        .wave = std::exp(0.35 * normal()),
                        .drift_law = std::exp(0.20 * normal()),
                        .thrust = std::exp(0.10 * normal())};
      CalibrateInput in = trial_of(truth);
      for (DriftReading& one : in.drifts) {
        one.drift_mps += 0.0141 * normal();  // two fixes of 3 m, 300 s apart
        one.wind_mps *= 1.0 + 0.10 * normal();
        one.current_mps = std::max(0.0, one.current_mps + 0.05 * normal());
        one.current_angle_deg += 10.0 * normal();
      }
      for (HeldReading& one : in.holds) {
        one.thrust_frac += 0.03 * normal();
        one.wind_mps *= 1.0 + 0.10 * normal();
        one.current_mps = std::max(0.0, one.current_mps + 0.05 * normal());
        one.current_angle_deg += 10.0 * normal();
      }
      const CalibrateResult r = calibrate(in);
      if (!r.fitted) continue;
      ++used;
      windage_inside += inside(r.windage, truth.windage) ? 1 : 0;
      drag_inside += inside(r.drag, truth.drag) ? 1 : 0;
      ratio_inside += inside(r.windage_over_drag, truth.windage / truth.drag) ? 1 : 0;
    }
    CHECK(used > 0.95 * draws);
    CHECK(windage_inside > 0.92 * used);
    CHECK(drag_inside > 0.92 * used);
    CHECK(ratio_inside > 0.92 * used);
  }

  TEST_CASE("a drift alone tells the ratio: more windage and less drag share it") {
    CalibrateInput in = trial_of({.windage = 1.5});
    in.holds.clear();
    const CalibrateResult r = calibrate(in);
    CHECK(r.windage.value_factor > 1.02);
    CHECK(r.drag.value_factor < 0.98);
    CHECK(r.windage_over_drag.value_factor > 1.15);
    CHECK(inside(r.windage_over_drag, 1.5));
  }

  TEST_CASE("more readings never widen the band") {
    const CalibrateInput all = trial_of({.windage = 1.2, .drag = 0.8});
    CalibrateInput in = all;
    in.drifts.resize(1);
    in.holds.clear();
    double windage = width(calibrate(in).windage);
    double drag = width(calibrate(in).drag);
    for (int i = 0; i < 3; ++i) {
      if (i == 0) in.drifts.push_back(all.drifts[1]);
      if (i > 0) in.holds.push_back(all.holds[static_cast<std::size_t>(i - 1)]);
      const CalibrateResult r = calibrate(in);
      CAPTURE(i);
      CHECK(width(r.windage) <= windage * (1.0 + 1e-3));
      CHECK(width(r.drag) <= drag * (1.0 + 1e-3));
      windage = width(r.windage);
      drag = width(r.drag);
    }
  }

  TEST_CASE("the turn of the compass does not matter: a mirrored trial finds the same") {
    CalibrateInput in = trial_of({.windage = 1.3, .drag = 0.9});
    const CalibrateResult there = calibrate(in);
    for (DriftReading& one : in.drifts) {
      one.drift_angle_deg = -one.drift_angle_deg;
      one.current_angle_deg = 360.0 - one.current_angle_deg;
    }
    for (HeldReading& one : in.holds) one.current_angle_deg = -one.current_angle_deg;
    const CalibrateResult back = calibrate(in);
    REQUIRE(back.fitted);
    CHECK(back.windage.value_factor == rel(there.windage.value_factor, 1e-4));
    CHECK(back.drag.value_factor == rel(there.drag.value_factor, 1e-4));
  }

  TEST_CASE("readings that contradict each other are named") {
    CalibrateInput in = trial_of({});
    in.holds[0].thrust_frac = 0.9;  // of a load that takes a third
    in.holds[1].thrust_frac *= 0.4;
    const CalibrateResult r = calibrate(in);
    REQUIRE(r.fitted);
    REQUIRE_FALSE(r.trace.checks.empty());
    CHECK(r.trace.checks.front().verdict() == Verdict::fail);
    CHECK(calibrate(trial_of({})).trace.checks.front().verdict() == Verdict::pass);
  }

  TEST_CASE("a drift across the wind points at the current") {
    const auto across = [](double drift_deg) {
      CalibrateInput in{.boat = boat(), .motor = motor(), .drifts = {drift({}, 8.0, 0.0, 0.0)}};
      in.drifts[0].drift_angle_deg = drift_deg;
      const CalibrateResult r = calibrate(in);
      REQUIRE(r.trace.checks.size() == 2);
      return r.trace.checks[1].verdict();
    };
    CHECK(across(18.0) == Verdict::pass);  // a third, as the published table has it
    CHECK(across(45.0) == Verdict::fail);
    CHECK(across(-45.0) == Verdict::fail);
  }

  TEST_CASE("a wind read lower down is a stronger wind at 10 m") {
    for (const double wind_mps : {0.0, 2.0, 8.0, 20.0, 60.0}) {
      double before = wind_at_ten_metres_mps(wind_mps, 30.0);
      for (const double height_m : {20.0, 10.0, 5.0, 2.0, 1.0}) {
        const double here = wind_at_ten_metres_mps(wind_mps, height_m);
        CHECK(here >= before);
        before = here;
      }
      CHECK(near(wind_at_ten_metres_mps(wind_mps, 10.0), wind_mps, 1e-12));
    }
  }

  TEST_CASE("the design is worked out anew with the factors") {
    HoldInput in = boat();
    in.wind_mps = 8.0;
    in.current_mps = 0.7;
    const HoldResult before = hold(in);
    in.windage_factor = 1.5;
    in.drag_factor = 0.5;
    const HoldResult after = hold(in);
    CHECK(after.wind_N == rel(1.5 * before.wind_N, 1e-12));
    CHECK(after.current_N == rel(0.5 * before.current_N, 1e-12));
    CHECK(after.wave_N == rel(before.wave_N, 1e-12));
    test::check_formulas(after.trace);
    Job job = ready_jobs().front().job;
    const Design as_computed = evaluate(job, default_catalogue());
    job.hold.windage_factor = {1.3, Origin::given};
    const Design worked_out_anew = evaluate(job, default_catalogue());
    CHECK(worked_out_anew.hold.wind_N == rel(1.3 * as_computed.hold.wind_N, 1e-12));
    CHECK(worked_out_anew.hold.thrust_required_N > as_computed.hold.thrust_required_N);
  }
}
