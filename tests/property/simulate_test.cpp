// What anyone on the water knows of a boat that is held, whatever its figures.

#include "calc/hold/simulate.h"

#include <cmath>
#include <limits>
#include <numbers>

#include "base/units.h"
#include "held_boats.h"
#include "support.h"
#include "trace_support.h"

using namespace thole;
using namespace thole::test;

namespace {

HoldRunInput base() { return r25_held(kFifteenKnots_mps); }

HoldRunInput brief(HoldRunInput in) {
  in.record_h = 0.05;
  in.settle_s = 60.0;
  return in;
}

bool finite(const HoldStatistics& s) {
  for (const double value : {s.radius_half_m,
                             s.radius_95_m,
                             s.radius_max_m,
                             s.within_frac,
                             s.thrust_mean_N,
                             s.pull_N,
                             s.hunting_ratio,
                             s.steering_deg_per_s,
                             s.full_frac,
                             s.power_mean_W,
                             s.power_rms_W,
                             s.power_peak_W,
                             s.duty_ratio,
                             s.current_mean_A,
                             s.energy_per_hour_Wh,
                             s.heading_mean_deg,
                             s.heading_deviation_deg,
                             s.wind_mean_mps,
                             s.wind_deviation_mps,
                             s.lost_at_s}) {
    if (!std::isfinite(value)) return false;
  }
  return true;
}

double sum(const Histogram& histogram) {
  double total = 0.0;
  for (const double share : histogram) total += share;
  return total;
}

}  // namespace

TEST_SUITE("property") {
  TEST_CASE("without wind a boat returns to the spot") {
    HoldRunInput in = without_chance(r25_held(0.0));
    in.start_upwind_m = -15.0;
    in.start_right_m = 10.0;
    in.start_heading_rad = 2.0;
    in.settle_s = 1200.0;
    in.record_h = 0.05;
    const HoldRun run = simulate_hold(in);
    CHECK(run.statistics.radius_max_m < 0.05);
    CHECK(run.statistics.thrust_mean_N < 3.0);
    in.settle_s = 0.0;
    CHECK(simulate_hold(in).track.front().upwind_m == rel(-15.0, 1e-9));
    CHECK(simulate_hold(in).track.front().right_m == rel(10.0, 1e-9));
    CHECK(simulate_hold(in).track.front().heading_deg == rel(deg_from_rad(2.0), 1e-9));
  }

  TEST_CASE("in a steady wind the mean thrust is the static load and the bow is on the spot") {
    HoldRunInput in = without_chance(base());
    in.settle_s = 1800.0;
    in.record_h = 0.1;
    const HoldStatistics s = simulate_hold(in).statistics;
    // 0.5 rho V^2 0.7 A_F, HL-06.
    CHECK(near(s.thrust_mean_N, 102.0, 1.0));
    CHECK(s.radius_max_m < 0.1);
    CHECK(near(s.heading_mean_deg, 0.0, 0.5));
    CHECK(near(s.hunting_ratio, 1.0, 0.005));
  }

  TEST_CASE("the work of the loads is the energy gained") {
    for (const double angle_deg : {0.0, 60.0, 150.0}) {
      HoldRunInput in = base();
      in.current_mps = kOneKnot_mps;
      in.current_from_rad = rad_from_deg(angle_deg);
      in.record_h = 0.3;
      const HoldRun run = simulate_hold(in);
      const Manoeuvre::Work& w = run.work;
      const double size_J =
          std::abs(w.wind_J) + std::abs(w.wave_J) + std::abs(w.water_J) + std::abs(w.thruster_J);
      CAPTURE(angle_deg);
      CHECK(size_J > 1000.0);
      CHECK(near(w.wind_J + w.wave_J + w.water_J + w.thruster_J, run.energy_gain_J, 1e-7 * size_J));
      CHECK(w.water_J < 0.0);  // drag takes and never gives
    }
  }

  TEST_CASE("electrical energy is the sum over its histogram, and mean times time") {
    const HoldRun run = simulate_hold(base());
    const HoldStatistics& s = run.statistics;
    CHECK(sum(s.thrust_share) == rel(1.0, 1e-12));
    CHECK(sum(s.power_share) == rel(1.0, 1e-12));
    double from_bins_W = 0.0;
    for (std::size_t i = 0; i < kHistogramBins; ++i) {
      from_bins_W += s.power_share[i] * (static_cast<double>(i) + 0.5) / kHistogramBins * 1236.0;
    }
    CHECK(near(s.power_mean_W, from_bins_W, 0.5 * 1236.0 / kHistogramBins));
    CHECK(s.energy_per_hour_Wh == rel(s.power_mean_W, 1e-12));
    CHECK(s.current_mean_A == rel(s.power_mean_W / 24.0, 1e-12));
    CHECK(s.power_rms_W >= s.power_mean_W);
    CHECK(s.power_peak_W >= s.power_rms_W);
    CHECK(s.power_peak_W <= 1236.0 + 1e-9);
    // The track tells the same story a second at a time.
    double track_W = 0.0;
    for (const TrackPoint& point : run.track) track_W += point.power_W;
    CHECK(run.track.size() == 3600);
    CHECK(track_W / 3600.0 == rel(s.power_mean_W, 0.01));
  }

  TEST_CASE("what is mirrored in the weather is mirrored in the track") {
    HoldRunInput right = without_chance(base());
    right.current_mps = 0.4;
    right.current_from_rad = 1.0;
    right.start_right_m = 3.0;
    right.start_heading_rad = 0.2;
    right.record_h = 0.2;
    HoldRunInput left = right;
    left.current_from_rad = -1.0;
    left.start_right_m = -3.0;
    left.start_heading_rad = -0.2;
    const HoldRun a = simulate_hold(right);
    const HoldRun b = simulate_hold(left);
    REQUIRE(a.track.size() == b.track.size());
    for (std::size_t i = 0; i < a.track.size(); i += 50) {
      CHECK(near(a.track[i].upwind_m, b.track[i].upwind_m, 1e-9));
      CHECK(near(a.track[i].right_m, -b.track[i].right_m, 1e-9));
      CHECK(near(a.track[i].heading_deg, -b.track[i].heading_deg, 1e-7));
    }
    CHECK(a.statistics.thrust_mean_N == rel(b.statistics.thrust_mean_N, 1e-9));
    CHECK(a.statistics.heading_mean_deg > 5.0);  // toward the current, as the static answer has it
  }

  TEST_CASE("the same seed gives the same bits, another one another hour") {
    const HoldRunInput in = brief(base());
    const HoldRun a = simulate_hold(in);
    const HoldRun b = simulate_hold(in);
    CHECK(a.statistics.radius_95_m == b.statistics.radius_95_m);
    CHECK(a.track.back().upwind_m == b.track.back().upwind_m);
    HoldRunInput other = in;
    other.seed = 2;
    CHECK(simulate_hold(other).statistics.radius_95_m != a.statistics.radius_95_m);
  }

  TEST_CASE("an hour in slices is the same hour") {
    const HoldRunInput in = brief(base());
    const HoldRun whole = simulate_hold(in);
    HoldSimulation sliced(in);
    double before_frac = -1.0;
    do {
      CHECK(sliced.done_frac() > before_frac);
      before_frac = sliced.done_frac();
    } while (sliced.advance(700));
    CHECK(sliced.done_frac() == 1.0);
    CHECK_FALSE(sliced.advance(1));
    const HoldRun run = sliced.take();
    CHECK(run.statistics.radius_max_m == whole.statistics.radius_max_m);
    CHECK(run.track.size() == whole.track.size());
  }

  // Taken from a native build and held to on every platform: natively and as WebAssembly.
  TEST_CASE("statistics are alike to a millionth on all platforms") {
    const HoldStatistics s = simulate_hold(base()).statistics;
    CHECK(s.radius_95_m == rel(2.454965549, 1e-6));
    CHECK(s.thrust_mean_N == rel(170.7385461, 1e-6));
    CHECK(s.duty_ratio == rel(0.3479324817, 1e-6));
    CHECK(s.steering_deg_per_s == rel(9.81738803, 1e-6));
    CHECK(s.heading_deviation_deg == rel(14.40898364, 1e-6));
    CHECK(s.wind_deviation_mps == rel(0.6072326212, 1e-6));
  }

  TEST_CASE("half the step changes an hour without chance by next to nothing") {
    HoldRunInput in = without_chance(base());
    in.current_mps = 0.3;
    in.current_from_rad = 2.0;
    in.record_h = 0.2;
    HoldRunInput finer = in;
    finer.step_s = 0.5 * in.step_s;
    const HoldStatistics a = simulate_hold(in).statistics;
    const HoldStatistics b = simulate_hold(finer).statistics;
    CHECK(a.thrust_mean_N == rel(b.thrust_mean_N, 0.01));
    CHECK(near(a.heading_mean_deg, b.heading_mean_deg, 1.0));
  }

  TEST_CASE("more thrust never widens the circle, stronger gusts never narrow it") {
    double before_m = 1e9;
    for (const double margin : {1.2, 1.4, 1.7, 2.2}) {
      const double circle_m =
          simulate_hold(r25_held(kFifteenKnots_mps, margin * 152.0)).statistics.radius_95_m;
      CHECK(circle_m <= before_m * 1.02);
      before_m = circle_m;
    }
    HoldRunInput in = base();
    before_m = 0.0;
    for (const double strength : {0.0, 1.0, 2.0}) {
      in.gust.strength_factor = strength;
      const double circle_m = simulate_hold(in).statistics.radius_95_m;
      CHECK(circle_m >= before_m);
      before_m = circle_m;
    }
  }

  TEST_CASE("thrust, steering and lag keep their limits") {
    constexpr double kStep_s = 0.05;
    Thruster thruster({.thrust_N = 300.0, .lag_s = 0.4, .steering_deg_per_s = 60.0}, kStep_s);
    // A right angle off: no thrust until it has turned, 1.5 s at 60 degrees a second.
    const Command across{.thrust_N = 300.0, .azimuth_rad = 0.5 * std::numbers::pi};
    double before_rad = 0.0;
    PushStep push{};
    for (int i = 0; i < 30; ++i) {
      push = thruster.step(across);
      CHECK(push.end.azimuth_rad - before_rad <= rad_from_deg(60.0) * kStep_s + 1e-12);
      CHECK(push.end.thrust_N <= 300.0);
      before_rad = push.end.azimuth_rad;
    }
    CHECK(before_rad == rel(0.5 * std::numbers::pi, 1e-9));
    CHECK(deg_from_rad(thruster.turned_rad()) == rel(90.0, 1e-9));
    // From rest, pointing right: 63 % after one lag.
    Thruster straight({.thrust_N = 300.0, .lag_s = 0.4, .steering_deg_per_s = 60.0}, kStep_s);
    for (int i = 0; i < 8; ++i) push = straight.step({.thrust_N = 300.0, .azimuth_rad = 0.0});
    CHECK(push.end.thrust_N == rel(300.0 * (1.0 - std::exp(-1.0)), 1e-9));
    // Nothing asked for: it keeps pointing where it did, and lets go.
    const double pointed_rad = thruster.step({}).end.azimuth_rad;
    CHECK(pointed_rad == rel(0.5 * std::numbers::pi, 1e-9));
  }

  TEST_CASE("gains follow the boat") {
    const HoldRun run = simulate_hold(brief(base()));
    CHECK(run.gains.ahead_N_per_m == rel(2544.0 * 0.0225, 0.001));
    CHECK(run.gains.across_N_per_m == rel(777.0 * 0.0225, 0.001));
    CHECK(run.gains.ahead_N_per_m / run.gains.across_N_per_m > 3.0);
  }

  TEST_CASE("adrift the motor does nothing") {
    HoldRunInput in = brief(base());
    in.adrift = true;
    const HoldStatistics s = simulate_hold(in).statistics;
    CHECK(s.thrust_mean_N == 0.0);
    CHECK(s.lost);
  }

  TEST_CASE(
      "a wider tolerance never needs more thrust; one below the receiver's error is refused") {
    HoldRunInput in = base();
    in.record_h = 0.3;
    in.tolerance_m = 4.0;
    const RequiredMargin narrow = required_margin(in, 152.0);
    in.tolerance_m = 15.0;
    const RequiredMargin wide = required_margin(in, 152.0);
    REQUIRE(narrow.found);
    REQUIRE(wide.found);
    CHECK(wide.margin_factor <= narrow.margin_factor);
    CHECK(narrow.within_frac >= 0.95);
    CHECK(narrow.thrust_N == rel(narrow.margin_factor * 152.0, 1e-12));
    // Between letting go and holding by far: handbook 5.4 has 12.5 m at 1.25 and 3.0 m at 1.4.
    CHECK(narrow.margin_factor > 1.1);
    CHECK(narrow.margin_factor < 1.6);
    in.tolerance_m = 0.3;
    CHECK_FALSE(required_margin(in, 152.0).found);
  }

  TEST_CASE("every shown formula gives its shown value") {
    for (const GustLaw law :
         {GustLaw::npd, GustLaw::davenport, GustLaw::harris, GustLaw::ochi_shin}) {
      HoldRunInput in = brief(base());
      in.gust.law = law;
      const HoldRun run = simulate_hold(in);
      check_formulas(run.trace);
      CHECK(run.trace.steps.size() > 8);
      CHECK(run.trace.checks.size() == 2);
      for (const Check& check : run.trace.checks) {
        CHECK(check.verdict() == Verdict::pass);
        CHECK_FALSE(check.remedy.empty());
      }
    }
    check_formulas(simulate_hold(brief(r25_held(0.0, 0.0))).trace);
    const Trace weak = simulate_hold(r25_held(kFifteenKnots_mps, 160.0)).trace;
    check_formulas(weak);
    for (const Check& check : weak.checks) CHECK(check.verdict() == Verdict::fail);
  }

  TEST_CASE("bad input gets a clear answer") {
    const auto refused = [](const HoldRunInput& in, const char* field) {
      const HoldRun run = simulate_hold(in);
      CAPTURE(field);
      REQUIRE(run.issues.size() == 1);
      CHECK(run.issues.front().field == field);
      CHECK(run.issues.front().severity == Severity::error);
      CHECK(run.track.empty());
      CHECK(finite(run.statistics));
    };
    HoldRunInput in = base();
    in.displacement_kg = 0.0;
    refused(in, "boat.displacement_kg");
    in = base();
    in.displacement_kg = std::numeric_limits<double>::quiet_NaN();
    refused(in, "boat.displacement_kg");
    in = base();
    in.length_m = 0.0;
    refused(in, "boat.length_m");
    in = base();
    in.wind_mps = std::numeric_limits<double>::infinity();
    refused(in, "water.wind_mps");
    in = base();
    in.record_h = 0.0;
    refused(in, "");
    in = base();
    in.record_h = 25.0;
    refused(in, "");
    in = base();
    in.step_s = 0.0;
    refused(in, "");
  }

  TEST_CASE("weather beyond the motor loses the spot, and says when") {
    HoldRunInput in = brief(base());
    in.current_mps = 4.0;  // faster than full thrust drives it
    HoldStatistics s = simulate_hold(in).statistics;
    CHECK(s.lost);
    CHECK(finite(s));
    CHECK(s.full_frac > 0.99);
    in = brief(r25_held(mps_from_kn(100.0)));
    s = simulate_hold(in).statistics;
    CHECK(s.lost);
    CHECK(finite(s));
    in = brief(base());
    in.settle_s = 0.0;
    in.motor.thrust_N = in.power.thrust_N = 0.0;
    s = simulate_hold(in).statistics;
    CHECK(s.lost);
    CHECK(s.lost_at_s > 10.0);
    CHECK(s.lost_at_s < 180.0);
    CHECK(finite(s));
  }

  TEST_CASE(
      "corners stay finite: no fetch to speak of, light and stiff boats, long and short waves") {
    HoldRunInput in = brief(base());
    in.sea = spm_sea(kFifteenKnots_mps, 0.1, 5.0);
    HoldRun run = simulate_hold(in);
    CHECK(run.issues.empty());
    CHECK(finite(run.statistics));
    CHECK_FALSE(run.statistics.lost);
    in = brief(base());
    in.displacement_kg = 150.0;
    in.hull.current.underwater_area_m2 = 12.0;
    in.hull.current.sway_factor = 3.2;
    in.wind_mps = in.gust.wind_mps = 51.0;
    in.current_mps = 3.0;
    run = simulate_hold(in);
    CHECK(run.issues.empty());
    CHECK(finite(run.statistics));
    for (const double period_s : {0.2, 25.0}) {
      in = brief(base());
      in.sea = {.height_m = 1.0, .period_s = period_s};
      run = simulate_hold(in);
      CHECK(run.issues.empty());
      CHECK(finite(run.statistics));
    }
  }
}
