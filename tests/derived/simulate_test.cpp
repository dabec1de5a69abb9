// Holding in time against other means: the handbook's own simulation (another program, section 5.4;
// it expects honest programs to agree within 30 %), sums written out, and boats set adrift at sea.

#include "calc/hold/simulate.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>
#include <vector>

#include "base/number.h"
#include "base/units.h"
#include "calc/hold/wave_train.h"
#include "held_boats.h"
#include "support.h"

using namespace thole;
using namespace thole::test;

namespace {

struct Hours {
  double radius_half_m = 0.0;
  double radius_95_m = 0.0;
  double thrust_mean_N = 0.0;
  double duty_ratio = 0.0;
  double full_frac = 0.0;
  double heading_deviation_deg = 0.0;
};

// Mean over the records of some seeds.
Hours hours(HoldRunInput in, int seeds = 3) {
  Hours mean;
  in.track_s = 0.0;
  for (int seed = 1; seed <= seeds; ++seed) {
    in.seed = static_cast<std::uint64_t>(seed);
    const HoldStatistics s = simulate_hold(in).statistics;
    mean.radius_half_m += s.radius_half_m / seeds;
    mean.radius_95_m += s.radius_95_m / seeds;
    mean.thrust_mean_N += s.thrust_mean_N / seeds;
    mean.duty_ratio += s.duty_ratio / seeds;
    mean.full_frac += s.full_frac / seeds;
    mean.heading_deviation_deg += s.heading_deviation_deg / seeds;
  }
  return mean;
}

HoldRunInput base() { return r25_held(kFifteenKnots_mps); }

struct Drift {
  double downwind_percent = 0.0;  // of the wind
  double crosswind_percent = 0.0;
};

// Adrift for half an hour in a steady wind, once it lies as it will.
Drift drift(HoldRunInput in) {
  in.adrift = true;
  in.gust.strength_factor = 0.0;
  in.start_heading_rad = 1.2;
  in.settle_s = 900.0;
  in.record_h = 0.5;
  const HoldRun run = simulate_hold(in);
  const TrackPoint& first = run.track.front();
  const TrackPoint& last = run.track.back();
  const double of_wind = 100.0 / ((last.time_s - first.time_s) * in.gust.wind_mps);
  return {.downwind_percent = of_wind * (first.upwind_m - last.upwind_m),
          .crosswind_percent = of_wind * std::abs(last.right_m - first.right_m)};
}

double off_percent(double ours, double theirs) { return 100.0 * (ours / theirs - 1.0); }

}  // namespace

TEST_SUITE("derived") {
  // HL-58, bands as the handbook has them.
  TEST_CASE("an hour of holding at 15 knots [handbook 5.4, computed there]") {
    const Hours h = hours(base(), 6);
    CHECK(h.radius_95_m >= 1.8);
    CHECK(h.radius_95_m <= 3.0);
    CHECK(h.thrust_mean_N >= 160.0);
    CHECK(h.thrust_mean_N <= 185.0);
    CHECK(h.duty_ratio >= 0.30);
    CHECK(h.duty_ratio <= 0.40);
    CHECK(near(h.radius_half_m, 1.1, 0.3));
    CHECK(near(h.heading_deviation_deg, 14.0, 4.0));
  }

  TEST_CASE("law and sensors that are not the usual ones [handbook 5.4, computed there]") {
    struct Row {
      const char* name = "";
      HoldRunInput in{};
      double radius_95_m = 0.0;
      double thrust_mean_N = 0.0;
      double duty_ratio = 0.0;
    };
    std::vector<Row> rows;
    const auto row = [&](const char* name, HoldRunInput in, double radius_95_m, double thrust_N,
                         double duty_ratio) {
      rows.push_back({name, std::move(in), radius_95_m, thrust_N, duty_ratio});
    };
    HoldRunInput in = base();
    row("5 m/s", r25_held(5.0), 1.9, 73.0, 0.10);
    in.law.bandwidth_rad_per_s = 0.08;
    row("slack", in, 3.8, 167.0, 0.33);
    in.law.bandwidth_rad_per_s = 0.25;
    row("brisk", in, 2.0, 180.0, 0.40);
    in.law.bandwidth_rad_per_s = 0.40;
    row("hunting", in, 2.6, 273.0, 0.72);
    in = base();
    in.sensors.drift_m = 0.0;
    in.sensors.jitter_m = 0.0;
    row("receiver without error", in, 1.5, 169.0, 0.34);
    in.sensors.drift_m = 2.0;
    in.sensors.jitter_m = 0.1;
    row("receiver errs by 2 m", in, 5.3, 190.0, 0.43);
    in = base();
    in.law.dead_zone_m = 1.5;
    row("dead zone", in, 3.3, 164.0, 0.32);
    in = base();
    in.motor.steering_deg_per_s = 20.0;
    row("slow steering", in, 2.3, 171.0, 0.35);
    in = base();
    in.sensors.fix_Hz = 1.0;
    row("a fix a second", in, 2.3, 173.0, 0.36);
    in = base();
    in.current_mps = kOneKnot_mps;
    row("1 kn with the wind", in, 2.3, 234.0, 0.54);
    in.current_from_rad = 0.5 * std::numbers::pi;
    row("1 kn across", in, 2.0, 154.0, 0.30);
    for (const Row& each : rows) {
      CAPTURE(each.name);
      const Hours h = hours(each.in);
      CHECK(h.radius_95_m == rel(each.radius_95_m, 0.3));
      CHECK(h.thrust_mean_N == rel(each.thrust_mean_N, 0.15));
      CHECK(h.duty_ratio == rel(each.duty_ratio, 0.3));
    }
  }

  // The handbook's table of margins. At 1.25 gusts let go and circles scatter from hour to hour.
  TEST_CASE("margin 1.1 loses the spot, 1.6 holds it [handbook 5.4, computed there]") {
    const auto with_margin = [](double wind_mps, double load_N, double margin) {
      return r25_held(wind_mps, margin * load_N);
    };
    for (const std::uint64_t seed : {1U, 2U, 3U}) {
      CAPTURE(seed);
      HoldRunInput in = with_margin(kFifteenKnots_mps, 152.0, 1.1);
      in.seed = seed;
      const HoldStatistics weak = simulate_hold(in).statistics;
      CHECK(weak.lost);
      CHECK(weak.radius_95_m > 40.0);
      CHECK(weak.full_frac > 0.95);
      in = with_margin(kFifteenKnots_mps, 152.0, 1.6);
      in.seed = seed;
      const HoldStatistics firm = simulate_hold(in).statistics;
      CHECK_FALSE(firm.lost);
      CHECK(firm.radius_95_m < 5.0);
      CHECK(firm.lost_at_s == 0.0);
    }
    const Hours at_fifteen = hours(with_margin(kFifteenKnots_mps, 152.0, 1.6));
    CHECK(at_fifteen.radius_95_m == rel(2.4, 0.3));
    CHECK(near(at_fifteen.full_frac, 0.14, 0.05));
    CHECK(hours(with_margin(kTwentyKnots_mps, 268.0, 1.6)).radius_95_m == rel(3.7, 0.3));
    HoldRunInput gusty = with_margin(kFifteenKnots_mps, 152.0, 2.0);
    gusty.gust.strength_factor = 2.0;
    CHECK(hours(gusty).radius_95_m == rel(2.9, 0.3));
    const double loose_m = hours(with_margin(kFifteenKnots_mps, 152.0, 1.25)).radius_95_m;
    CHECK(loose_m > 6.0);
    CHECK(loose_m < 25.0);
  }

  // US Coast Guard leeway table (Allen & Plourde 1999, Allen 2005; list of 2010-11-15), slopes in
  // per cent of the wind at 10 m; measured drift includes what the open sea's waves did. R25 and
  // R18 are the handbook's, not the boats that were measured. Prints how far off each way of
  // counting the wind is, and holds the best of them to what was found.
  TEST_CASE("boats adrift against the Coast Guard's slopes [leeway-allen-2005]") {
    HoldRunInput console = r25_held(10.0);
    console.sea = {};
    HoldRunInput reduced = console;
    reduced.wind_mps = 10.0 * wind_profile_ratio(10.0, 9.0 / 7.6);
    HoldRunInput in_chop = r25_held(10.0);
    HoldRunInput skiff = console;
    skiff.hull.wind = {2.4, 4.6, 0.2, 4.9};
    skiff.hull.current.surge_area_m2 = 0.12;
    skiff.hull.current.underwater_area_m2 = 1.55;
    skiff.hull.current.underwater_centroid_m = -0.25;
    skiff.hull.current.waterline_length_m = 4.9;
    skiff.displacement_kg = 900.0;
    skiff.length_m = 5.5;
    const Drift plain = drift(console);
    const Drift low = drift(reduced);
    const Drift chop = drift(in_chop);
    const Drift open = drift(skiff);
    const auto tell = [](const std::string& boat, const std::string& against, const Drift& ours,
                         double theirs) {
      MESSAGE(boat << " drifts at " << fixed(ours.downwind_percent, 2) << " % of the wind and "
                   << fixed(ours.crosswind_percent, 2) << " % across; " << against << " "
                   << fixed(theirs, 2)
                   << " %: " << fixed(off_percent(ours.downwind_percent, theirs), 0) << " % off");
    };
    tell("centre console, wind of 10 m", "sport boat", plain, 6.54);
    tell("centre console, wind of 10 m", "sport fisher, centre console", plain, 5.55);
    tell("centre console, wind at its height", "sport boat", low, 6.54);
    tell("centre console, wind at its height", "sport fisher, centre console", low, 5.55);
    tell("centre console, wind of 10 m and chop", "sport fisher, centre console", chop, 5.55);
    tell("open skiff, wind of 10 m", "skiff, modified V-hull", open, 3.15);

    // Wind alone: within a tenth of the sport boat, and a quarter of the centre console.
    CHECK(plain.downwind_percent == rel(6.54, 0.10));
    CHECK(plain.downwind_percent == rel(5.55, 0.25));
    CHECK(low.downwind_percent == rel(5.55, 0.10));
    // Measured 2.19 and 2.27: a boat that lies askew slides off to one side, ours less so.
    CHECK(plain.crosswind_percent > 0.5);
    CHECK(plain.crosswind_percent < 2.3);
    // The steep chop of a short fetch adds its push; drift at sea was measured in longer waves.
    CHECK(chop.downwind_percent > plain.downwind_percent);
    // A static balance beam on gives 7.05 % (HL-17): the linear drag and the lie cost a little.
    CHECK(plain.downwind_percent == rel(7.05, 0.10));
    // Skiffs were measured laden and deep: half of what the handbook's light one does.
    CHECK(open.downwind_percent > 3.15);
  }

  TEST_CASE("drag across a turning boat is the sum over many strips") {
    for (const double centroid_m : {-0.3, 0.0, 0.9}) {
      const CrossFlowShape shape{.length_m = 6.6,
                                 .area_m2 = 2.8,
                                 .centroid_m = centroid_m,
                                 .drag_factor = 0.6,
                                 .water_density_kg_per_m3 = 1025.0};
      for (const double v_mps : {-0.8, -0.1, 0.0, 0.3}) {
        for (const double r_rad_per_s : {-0.4, 0.0, 0.02, 0.3}) {
          constexpr int kStrips = 20000;
          double sway_N = 0.0;
          double yaw_Nm = 0.0;
          const double width_m = 6.6 / kStrips;
          for (int i = 0; i < kStrips; ++i) {
            const double x_m = -3.3 + (i + 0.5) * width_m;
            const double depth_m = 2.8 / 6.6 + 12.0 * 2.8 * centroid_m / (6.6 * 6.6 * 6.6) * x_m;
            const double flow_mps = v_mps + x_m * r_rad_per_s;
            const double force_N =
                -0.5 * 1025.0 * 0.6 * std::abs(flow_mps) * flow_mps * depth_m * width_m;
            sway_N += force_N;
            yaw_Nm += x_m * force_N;
          }
          CAPTURE(v_mps);
          CAPTURE(r_rad_per_s);
          const Load load = cross_flow(shape, v_mps, r_rad_per_s);
          CHECK(near(load.sway_N, sway_N, 1e-5 * std::abs(sway_N) + 1e-6));
          CHECK(near(load.yaw_Nm, yaw_Nm, 1e-5 * std::abs(yaw_Nm) + 1e-5));
        }
      }
    }
  }

  TEST_CASE("loads read off the table are those of the formulas") {
    const HeldHull hull = base().hull;
    const DirectionTable table([&](double from_rad) { return wave_areas(hull.wave, from_rad); });
    const DirectionTable wind([&](double from_rad) { return wind_areas(hull.wind, from_rad); });
    for (int i = 0; i < 1000; ++i) {
      const double from_rad = -4.0 + 0.0083 * i;
      CAPTURE(from_rad);
      const double cosine = 3.0 * std::cos(from_rad);
      const double sine = 3.0 * std::sin(from_rad);
      const DragAreas exact = wave_areas(hull.wave, from_rad);
      const DragAreas read = table.at(cosine, sine);
      CHECK(near(read.surge_m2, exact.surge_m2, 1e-5 * 0.2));
      CHECK(near(read.side.sway_m2, exact.side.sway_m2, 1e-5 * 0.6));
      const DragAreas blown = wind.at(cosine, sine);
      const DragAreas formula = wind_areas(hull.wind, from_rad);
      CHECK(near(blown.surge_m2, formula.surge_m2, 1e-5 * 2.8));
      CHECK(near(blown.side.yaw_m3, formula.side.yaw_m3, 1e-5 * 18.0));
    }
    CHECK(std::isfinite(wind.at(0.0, 0.0).surge_m2));
  }

  TEST_CASE("tones read between samples are sums of cosines") {
    const std::vector<Tone> tones{{0.02, 1.0, 0.3}, {0.11, 0.5, 2.0}, {0.4, 0.1, 5.0}};
    constexpr double kInterval_s = 0.25;
    ToneSeries series(tones, kInterval_s);
    for (int i = 0; i < 400; ++i) {
      for (const double part : {0.0, 0.3, 0.9}) {
        const double time_s = (i + part) * kInterval_s;
        double cosine = 0.0;
        double sine = 0.0;
        for (const Tone& tone : tones) {
          const double at_rad =
              2.0 * std::numbers::pi * tone.frequency_Hz * time_s + tone.phase_rad;
          cosine += tone.amplitude_factor * std::cos(at_rad);
          sine += tone.amplitude_factor * std::sin(at_rad);
        }
        CHECK(near(series.at(part).cosine_factor, cosine, 2e-3));
        CHECK(near(series.at(part).sine_factor, sine, 2e-3));
        if (part == 0.0) CHECK(near(series.cosine_at(part), cosine, 1e-12));
      }
      series.advance();
    }
  }

  TEST_CASE("gusts have the deviation of their spectrum") {
    for (const GustLaw law :
         {GustLaw::npd, GustLaw::davenport, GustLaw::harris, GustLaw::ochi_shin}) {
      CAPTURE(static_cast<int>(law));
      const GustShape shape{.law = law, .wind_mps = 8.0};
      double squares = 0.0;
      for (const Tone& tone : gust_tones(shape, 240, 7, 1)) {
        CHECK(tone.frequency_Hz >= kGustLowest_Hz);
        CHECK(tone.frequency_Hz <= kGustHighest_Hz);
        squares += 0.5 * tone.amplitude_factor * tone.amplitude_factor;
      }
      CHECK(std::sqrt(squares) ==
            rel(gust_deviation_mps(shape, kGustLowest_Hz, kGustHighest_Hz), 0.01));
    }
  }

  // Newman's push of a narrow-band sea: mean 1, standard deviation 1.
  TEST_CASE("waves come in groups [newman-1974]") {
    const Sea sea{.height_m = 0.3, .period_s = 2.1};
    double height_m2 = 0.0;
    for (const Tone& tone : wave_tones(sea, 100, 3, 3)) {
      height_m2 += 8.0 * tone.amplitude_factor * tone.amplitude_factor;
    }
    CHECK(std::sqrt(height_m2) == rel(0.3, 1e-12));
    double sum = 0.0;
    double squares = 0.0;
    constexpr int kCount = 200000;
    ToneSeries envelope(wave_tones(sea, 100, 3, 3), 0.25);
    for (int i = 0; i < kCount; ++i) {
      const double ratio = push_ratio(sea, envelope.at(0.0));
      sum += ratio;
      squares += ratio * ratio;
      envelope.advance();
    }
    const double mean = sum / kCount;
    CHECK(near(mean, 1.0, 0.03));
    CHECK(near(std::sqrt(squares / kCount - mean * mean), 1.0, 0.06));
  }
}
