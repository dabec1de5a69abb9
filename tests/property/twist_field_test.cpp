// The quick field of a twisted pair against the sum over its straight pieces.

#include "calc/compass/twist_field.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <random>

#include "calc/compass/contours.h"
#include "support.h"

using namespace thole;

namespace {

double size_T(const FieldVector& a, const FieldVector& b = {}) {
  return std::hypot(a.x_T - b.x_T, a.y_T - b.y_T, a.z_T - b.z_T);
}

CompassInput twisted(std::mt19937& random) {
  std::uniform_real_distribution<double> share(0.0, 1.0);
  CompassInput in{.pair = {.route = {{1.0 + share(random), 0.6 * share(random), 0.4},
                                     {1.5, 0.3 * share(random), 0.2},
                                     {5.5 + share(random), 0.1, 0.2},
                                     {6.4, 0.0, 1.0}},
                           .spacing_m = 0.012 + 0.01 * share(random),
                           .lay = FeederLay::twisted,
                           .phase_rad = 6.0 * share(random),
                           .current_A = 60.0},
                  .horizontal_T = 20e-6};
  in.pair.pitch_m = 10.0 * in.pair.spacing_m + 0.4 * share(random);
  return in;
}

constexpr double kDegree_T = 2.6e-7;  // turns a heading by a degree where the earth's level field is weak, 15 uT

}  // namespace

TEST_SUITE("property") {
  TEST_CASE("the quick field of a twist is the sum of its pieces, within 1e-3") {
    std::mt19937 random(7);
    std::uniform_real_distribution<double> share(0.0, 1.0);
    int near_count = 0;
    for (int boat = 0; boat < 20; ++boat) {
      const Circuit circuit = circuit_of(twisted(random));
      const TwistField quick(circuit);
      REQUIRE_FALSE(quick.empty());
      for (int k = 0; k < 200; ++k) {
        // Over the whole plan, and as many close to the pair.
        const double wide_m = k % 2 == 0 ? 4.0 : 0.6;
        const Place at{-0.5 + 8.0 * share(random), wide_m * (share(random) - 0.5), 0.5 * share(random)};
        const Disturbance sum = disturbance(circuit, at);
        const Disturbance field = quick.at(at);
        const double off_T = std::max(size_T(field.straight, sum.straight), size_T(field.turned, sum.turned));
        const double all_T = std::hypot(size_T(sum.straight), size_T(sum.turned));
        near_count += all_T > kDegree_T;
        CAPTURE(at.x_m);
        CAPTURE(at.y_m);
        CAPTURE(at.z_m);
        CHECK(off_T <= 1e-3 * std::max(all_T, kDegree_T));
      }
    }
    CHECK(near_count > 400);  // where it counts
  }

  TEST_CASE("the plan of a twist is the one that the pieces give") {
    std::mt19937 random(3);
    const CompassInput in = twisted(random);
    const PlanArea area{.low = {0.0, -1.0}, .high = {7.0, 1.0}, .z_m = 0.5, .columns_count = 15, .rows_count = 9};
    const ErrorGrid grid = error_grid(in, area);
    const Circuit circuit = circuit_of(in);
    for (int row = 0; row < area.rows_count; ++row) {
      for (int column = 0; column < area.columns_count; ++column) {
        const PlanPoint here = grid.point(column, row);
        const double level_T = level_field_T(disturbance(circuit, {here.x_m, here.y_m, area.z_m}), in.tilt_deg);
        CHECK(near(grid.ratio(column, row) * in.horizontal_T, level_T, 1e-3 * std::max(level_T, kDegree_T)));
      }
    }
  }

  TEST_CASE("the greatest level field over all starts of a twist") {
    std::mt19937 random(11);
    std::uniform_real_distribution<double> part(-1e-6, 1e-6);
    for (int k = 0; k < 200; ++k) {
      const Disturbance d{.straight = {part(random), part(random), part(random)},
                          .turned = {part(random), part(random), part(random)}};
      for (const double tilt_deg : {0.0, 10.0, 60.0}) {
        double most_T = 0.0;  // by a fine search
        for (int i = 0; i < 20000; ++i) {
          const double c = std::cos(std::numbers::pi * i / 20000.0);
          const double s = std::sin(std::numbers::pi * i / 20000.0);
          const FieldVector at{c * d.straight.x_T + s * d.turned.x_T, c * d.straight.y_T + s * d.turned.y_T,
                               c * d.straight.z_T + s * d.turned.z_T};
          most_T = std::max(most_T, level_field_T({.straight = at}, tilt_deg));
        }
        CHECK(level_field_T(d, tilt_deg) == rel(most_T, 5e-3));
      }
    }
  }

  TEST_CASE("no twist, no quick field") {
    std::mt19937 random(5);
    CompassInput in = twisted(random);
    in.pair.lay = FeederLay::side_by_side;
    CHECK(TwistField(circuit_of(in)).empty());
    in.pair.lay = FeederLay::twisted;
    in.pair.pitch_m = 0.0;
    CHECK(TwistField(circuit_of(in)).empty());
  }
}
