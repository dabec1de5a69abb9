// The boat of the equations of motion under forces written down in full, step by step as the
// product computes it, for another solver to repeat: motion_test.py.
//
// usage: thole_motion_cases open|sampled   lines of time, place, heading and speeds
//        thole_motion_cases rose           limiting wind for 72 angles of the current
//        thole_motion_cases time|rose_time milliseconds of processor time for an hour, for the rose

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>
#include <ctime>
#include <cstddef>
#include <string_view>

#include "base/units.h"
#include "calc/hold/equilibrium.h"
#include "held_boats.h"

namespace {

using namespace thole;
using namespace thole::test;

constexpr double kStep_s = 0.05;
constexpr Sea kSea{.height_m = 0.279, .period_s = 2.06};

// A wind that swells and veers, waves in groups, a current from 60 degrees to the right, and a pull
// that wanders about dead ahead.
Surroundings acting_at(double time_s) {
  return {.wind_mps = 7.7 + 1.2 * std::cos(0.11 * time_s) + 0.8 * std::cos(0.53 * time_s + 1.0),
          .wind_across_mps = 0.9 * std::cos(0.23 * time_s + 0.4),
          .wave_push_ratio = 1.0 + 0.6 * std::cos(0.4 * time_s),
          .current_x_mps = -0.5 * std::cos(1.0471975511965976),
          .current_y_mps = 0.5 * std::sin(1.0471975511965976),
          .thrust_ahead_N = 150.0 + 40.0 * std::cos(0.05 * time_s),
          .thrust_port_N = 30.0 * std::sin(0.07 * time_s)};
}

Manoeuvre boat() {
  const HoldRunInput in = r25_held(kFifteenKnots_mps);
  return Manoeuvre({.hull = in.hull,
                    .mass = inertia({.displacement_kg = in.displacement_kg,
                                     .length_m = in.length_m,
                                     .waterline_length_m = 6.6,
                                     .water_density_kg_per_m3 = 1026.0})},
                   kSea);
}

void print(double time_s, const Motion& m) {
  std::printf("%.2f %.17g %.17g %.17g %.17g %.17g %.17g\n", time_s, m.x_m, m.y_m, m.heading_rad,
              m.surge_mps, m.sway_mps, m.yaw_rad_per_s);
}

// Ten minutes under that pull.
void print_open() {
  const Manoeuvre craft = boat();
  Manoeuvre::Work work;
  Motion motion{.heading_rad = 0.3};
  for (int i = 0; i <= 12000; ++i) {
    const double time_s = i * kStep_s;
    if (i % 200 == 0) print(time_s, motion);
    motion = craft.step(motion, acting_at(time_s), acting_at(time_s + 0.5 * kStep_s),
                        acting_at(time_s + kStep_s), kStep_s, work);
  }
}

// A minute under a pull toward the spot that is measured and set anew at every step.
void print_sampled() {
  const Manoeuvre craft = boat();
  const double forward_m = craft.craft().hull.thruster_forward_m;
  Manoeuvre::Work work;
  Motion motion{.x_m = -8.0, .y_m = 3.0, .heading_rad = 0.3};
  for (int i = 0; i <= 1200; ++i) {
    const double time_s = i * kStep_s;
    if (i % 20 == 0) print(time_s, motion);
    const double cosine = std::cos(motion.heading_rad);
    const double sine = std::sin(motion.heading_rad);
    const double bow_x_m = motion.x_m + forward_m * cosine;
    const double bow_y_m = motion.y_m + forward_m * sine;
    const double ahead_N = -57.0 * (cosine * bow_x_m + sine * bow_y_m) - 600.0 * motion.surge_mps;
    const double port_N = -17.5 * (cosine * bow_y_m - sine * bow_x_m) -
                          190.0 * (motion.sway_mps + forward_m * motion.yaw_rad_per_s);
    const double wanted_N = std::hypot(ahead_N, port_N);
    const double share = std::min(1.0, 250.0 / std::max(1e-9, wanted_N));
    const auto pulled = [&](double at_s) {
      Surroundings now = acting_at(at_s);
      now.thrust_ahead_N = share * ahead_N;
      now.thrust_port_N = share * port_N;
      return now;
    };
    motion = craft.step(motion, pulled(time_s), pulled(time_s + 0.5 * kStep_s),
                        pulled(time_s + kStep_s), kStep_s, work);
  }
}

// The quickest of several; what else the machine did is not ours.
template <class Work>
void print_time(Work work) {
  double best_ms = 1e9;
  for (int run = 0; run < 15; ++run) {
    const std::clock_t from = std::clock();
    work();
    best_ms = std::min(best_ms, 1e3 * static_cast<double>(std::clock() - from) / CLOCKS_PER_SEC);
  }
  std::printf("%.3f\n", best_ms);
}

constexpr int kRoseAngles = 72;
using Limits_mps = std::array<double, kRoseAngles>;

// The strongest wind, with the sea that it raises, in which 220 N hold the boat in a knot of current
// from each side: in steps of 2 m/s, then halved down to a hundredth.
Limits_mps rose_limits() {
  constexpr double kAllowed_N = 220.0;
  const HeldHull hull = r25_held(kFifteenKnots_mps).hull;
  VaneTable table = vane_table(hull, 0.0);
  Limits_mps limits{};
  for (int i = 0; i < kRoseAngles; ++i) {
    const double from_rad = rad_from_deg(5.0 * i);
    turn_current(table, hull, from_rad);
    const auto holds = [&](double wind_mps) {
      const Weather weather{wind_mps, jonswap_sea(wind_mps, 5000.0), kOneKnot_mps, from_rad};
      return worst_heading(hull, table, weather).thrust_N <= kAllowed_N;
    };
    double low = 0.0;
    while (holds(low + 2.0)) low += 2.0;
    double high = low + 2.0;
    while (high - low > 0.01) {
      const double middle = 0.5 * (low + high);
      (holds(middle) ? low : high) = middle;
    }
    limits[static_cast<std::size_t>(i)] = low;
  }
  return limits;
}

}  // namespace

int main(int argc, char** argv) {
  const std::string_view which = argc > 1 ? argv[1] : "";
  if (which == "open") {
    print_open();
  } else if (which == "sampled") {
    print_sampled();
  } else if (which == "rose") {
    for (const double limit_mps : rose_limits()) std::printf("%.9g\n", limit_mps);
  } else if (which == "time") {
    HoldRunInput in = r25_held(kFifteenKnots_mps);
    in.settle_s = 0.0;
    print_time([&] { simulate_hold(in); });
  } else if (which == "rose_time") {
    double sum_mps = 0.0;
    print_time([&] { sum_mps += rose_limits()[0]; });
    if (!(sum_mps > 0.0)) return 1;
  } else {
    return 2;
  }
  return 0;
}
