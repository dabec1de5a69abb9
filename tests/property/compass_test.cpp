// What must always hold for the earth's field, the feeder's field and the heading under both.

#include "calc/compass/compass.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <numbers>
#include <string>
#include <vector>

#include "base/units.h"
#include "calc/compass/contours.h"
#include "calc/compass/earth_field.h"
#include "support.h"
#include "trace_support.h"

using namespace thole;

namespace {

constexpr double kNan = std::numeric_limits<double>::quiet_NaN();
constexpr double kInf = std::numeric_limits<double>::infinity();

double size_T(FieldVector f) { return std::hypot(f.x_T, f.y_T, f.z_T); }
FieldVector sum(FieldVector a, FieldVector b) {
  return {a.x_T + b.x_T, a.y_T + b.y_T, a.z_T + b.z_T};
}
double apart_T(FieldVector a, FieldVector b) {
  return std::hypot(a.x_T - b.x_T, a.y_T - b.y_T, a.z_T - b.z_T);
}

// Up, forward with a bend and down to the motor at the bow.
std::vector<Place> bent_route() {
  return {{0.8, 0.5, 0.2}, {0.8, 0.5, 0.6}, {2.0, 0.9, 0.6}, {5.5, 0.4, 0.9}, {6.4, 0.0, 1.0}};
}

CompassInput bay_boat(FeederLay lay = FeederLay::one_above_other) {
  return {.pair = {.route = bent_route(),
                   .spacing_m = 0.10,
                   .lay = lay,
                   .pitch_m = lay == FeederLay::twisted ? 0.4 : 0.0,
                   .current_A = 60.0},
          .sensor = {4.0, 0.2, 1.2},
          .horizontal_T = 20e-6,
          .tilt_deg = 8.0,
          .limit_deg = 1.0};
}

// Changes of the field over a fifth of a millimetre, by size.
struct Slopes {
  double source = 0.0;
  double curl = 0.0;
  double all = 0.0;
};

Slopes slopes_at(const std::vector<Wire>& wires, Place at) {
  constexpr double kStep_m = 1e-4;
  const auto change = [&](Place way) {
    const auto field = [&](double by_m) {
      return wire_field(
          wires, {at.x_m + by_m * way.x_m, at.y_m + by_m * way.y_m, at.z_m + by_m * way.z_m});
    };
    const FieldVector a = field(-kStep_m);
    const FieldVector b = field(kStep_m);
    return FieldVector{b.x_T - a.x_T, b.y_T - a.y_T, b.z_T - a.z_T};
  };
  const FieldVector x = change({1, 0, 0});
  const FieldVector y = change({0, 1, 0});
  const FieldVector z = change({0, 0, 1});
  return {.source = std::abs(x.x_T + y.y_T + z.z_T),
          .curl = std::hypot(y.z_T - z.y_T, z.x_T - x.z_T, x.y_T - y.x_T),
          .all = size_T(x) + size_T(y) + size_T(z)};
}

constexpr std::array kLays{FeederLay::side_by_side, FeederLay::one_above_other, FeederLay::twisted};
const std::array kPlaces{Place{4.0, 0.2, 1.2}, Place{6.0, -0.6, 0.5}, Place{1.2, 0.1, 0.9},
                         Place{3.0, 1.4, 2.0}};

}  // namespace

TEST_SUITE("property") {
  TEST_CASE("compass: a longer wire comes closer to 0.2 I / r from below") {
    double last = 0.0;
    for (const double half_m : {0.1, 1.0, 10.0, 100.0, 1000.0}) {
      const std::vector<Wire> wires{
          {.places = {{-half_m, 0, 0}, {half_m, 0, 0}}, .current_A = 60.0}};
      const double field_T = size_T(wire_field(wires, {0.0, 0.3, 0.4}));
      CHECK(field_T > last);
      last = field_T;
    }
    CHECK(last <= 24e-6);
    CHECK(last == rel(24e-6, 1e-6));
  }

  TEST_CASE("compass: fields add, go with the current, turn with it, and know no joints") {
    const Wire a = pair_wire(bay_boat().pair);
    Wire b = pair_wire(bay_boat(FeederLay::side_by_side).pair);
    b.current_A = -23.0;
    for (const Place at : kPlaces) {
      const FieldVector of_a = wire_field(std::array{a}, at);
      const FieldVector of_b = wire_field(std::array{b}, at);
      const FieldVector both = wire_field(std::array{a, b}, at);
      CHECK(apart_T(both, sum(of_a, of_b)) <= 1e-12 * size_T(both));
      Wire twice = a;
      twice.current_A *= -2.0;
      CHECK(apart_T(wire_field(std::array{twice}, at),
                    {-2.0 * of_a.x_T, -2.0 * of_a.y_T, -2.0 * of_a.z_T}) <= 1e-12 * size_T(of_a));
      Wire back = a;
      std::reverse(back.places.begin(), back.places.end());
      CHECK(apart_T(wire_field(std::array{back}, at), {-of_a.x_T, -of_a.y_T, -of_a.z_T}) <=
            1e-10 * size_T(of_a));
      Wire jointed{.current_A = a.current_A};
      for (std::size_t i = 0; i + 1 < a.places.size(); ++i) {
        const Place p = a.places[i];
        const Place q = a.places[i + 1];
        jointed.places.push_back(p);
        jointed.places.push_back(p);
        jointed.places.push_back(
            {0.7 * p.x_m + 0.3 * q.x_m, 0.7 * p.y_m + 0.3 * q.y_m, 0.7 * p.z_m + 0.3 * q.z_m});
      }
      jointed.places.push_back(a.places.back());
      CHECK(apart_T(wire_field(std::array{jointed}, at), of_a) <= 1e-9 * size_T(of_a));
    }
  }

  TEST_CASE("compass: out and back, far off, falls with the cube of the distance") {
    for (const FeederLay lay : kLays) {
      const std::vector<Wire> wires{pair_wire(bay_boat(lay).pair)};
      REQUIRE(wires[0].places.size() > 4);
      // One wire alone would fall with the square.
      const double near_T = size_T(wire_field(wires, {300.0, 200.0, 400.0}));
      const double far_T = size_T(wire_field(wires, {3000.0, 2000.0, 4000.0}));
      CHECK(near_T / far_T == rel(1000.0, 0.05));
    }
    // Beside a long pair, before its ends count, with the square.
    const std::vector<Wire> pair{
        pair_wire({.route = {{-900, 0, 0}, {900, 0, 0}}, .spacing_m = 0.02, .current_A = 60.0})};
    CHECK(size_T(wire_field(pair, {0, 1, 0})) / size_T(wire_field(pair, {0, 2, 0})) ==
          rel(4.0, 1e-3));
  }

  TEST_CASE("compass: round a closed circuit the field has no source and, off the wire, no curl") {
    for (const FeederLay lay : kLays) {
      const std::vector<Wire> wires{pair_wire(bay_boat(lay).pair)};
      for (const Place at : kPlaces) {
        const Slopes slopes = slopes_at(wires, at);
        REQUIRE(slopes.all > 0.0);
        CHECK(slopes.source < 1e-5 * slopes.all);
        CHECK(slopes.curl < 1e-5 * slopes.all);
      }
    }
    // An open wire is no circuit: no source either, but the test for curl tells it.
    const std::vector<Wire> open{{.places = {{0, 0, 0}, {1, 0, 0}}, .current_A = 60.0}};
    const Slopes slopes = slopes_at(open, {1.5, 0.3, 0.4});
    CHECK(slopes.source < 1e-5 * slopes.all);
    CHECK(slopes.curl > 0.1 * slopes.all);
  }

  TEST_CASE("compass: turned with the boat, the field turns with it") {
    for (const FeederLay lay : {FeederLay::side_by_side, FeederLay::one_above_other}) {
      PairInput pair = bay_boat(lay).pair;
      pair.route.erase(pair.route.begin());  // an upright first leg has no side of its own
      PairInput turned = pair;
      for (Place& p : turned.route) p = {-p.y_m + 2.0, p.x_m - 1.0, p.z_m + 0.5};
      for (const Place at : kPlaces) {
        const FieldVector f = wire_field(std::array{pair_wire(pair)}, at);
        const FieldVector g =
            wire_field(std::array{pair_wire(turned)}, {-at.y_m + 2.0, at.x_m - 1.0, at.z_m + 0.5});
        CHECK(apart_T(g, {-f.y_T, f.x_T, f.z_T}) <= 1e-9 * size_T(f));
      }
    }
  }

  TEST_CASE("compass: the circuit is closed, and its conductors keep their spacing at both ends") {
    for (const FeederLay lay : kLays) {
      const Wire wire = pair_wire(bay_boat(lay).pair);
      REQUIRE(wire.places.size() > 4);
      CHECK(wire.places.front().x_m == wire.places.back().x_m);  // closed
      CHECK(wire.places.front().z_m == wire.places.back().z_m);
      const auto gap_m = [&](std::size_t i, std::size_t k) {
        const Place a = wire.places[i];
        const Place b = wire.places[k];
        return std::hypot(a.x_m - b.x_m, a.y_m - b.y_m, a.z_m - b.z_m);
      };
      // First out with last back, and the motor's two.
      const std::size_t half = (wire.places.size() - 1) / 2;
      const double least = lay == FeederLay::twisted ? 0.0999 : 0.1 - 1e-12;
      for (const double gap : {gap_m(0, wire.places.size() - 2), gap_m(half - 1, half)}) {
        CHECK(gap >= least);
        CHECK(gap <= (lay == FeederLay::twisted ? 0.105 : 0.1 + 1e-12));
      }
    }
  }

  TEST_CASE("compass: the worst heading is the worst of all headings, and asin(B / B_h) there") {
    const FieldVector fields[] = {
        {3e-6, 0, 0}, {-2e-6, 5e-6, 9e-6}, {1e-6, -11e-6, 0}, {0, 0, 7e-6}, {13e-6, 14e-6, 0}};
    for (const FieldVector& field : fields) {
      const double level_T = std::hypot(field.x_T, field.y_T);
      const double claimed_deg = worst_error_deg(level_T, 20e-6);
      double most_deg = 0.0;
      for (int i = 0; i < 36000; ++i) {
        most_deg = std::max(most_deg, std::abs(heading_shift_deg(field, 20e-6, 0.01 * i)));
      }
      CHECK(most_deg <= claimed_deg + 1e-9);
      CHECK(near(most_deg, claimed_deg, 1e-4));
      // More than at the heading where the field lies square to north.
      CHECK(claimed_deg >= deg_from_rad(std::atan(level_T / 20e-6)));
    }
    CHECK(worst_error_deg(19.999e-6, 20e-6) < 90.0);
    CHECK(worst_error_deg(20e-6, 20e-6) == 180.0);
    CHECK(worst_error_deg(50e-6, 20e-6) == 180.0);
  }

  TEST_CASE("compass: the result's own worst heading has its own worst shift") {
    for (const FeederLay lay : {FeederLay::side_by_side, FeederLay::one_above_other}) {
      CompassInput in = bay_boat(lay);
      in.tilt_deg = 0.0;
      for (const Place at : kPlaces) {
        in.sensor = at;
        const CompassResult r = compass(in);
        REQUIRE_FALSE(has_error(r.issues));
        CHECK(heading_shift_deg(r.field, in.horizontal_T, r.worst_heading_deg) ==
              rel(r.error_deg, 1e-9));
        CHECK(r.worst_heading_deg >= 0.0);
        CHECK(r.worst_heading_deg < 360.0);
        REQUIRE(r.by_heading.size() == 24);
        for (const HeadingShift& row : r.by_heading)
          CHECK(std::abs(row.shift_deg) <= r.error_deg + 1e-9);
      }
    }
  }

  TEST_CASE("compass: a lean of the boat counts as if every lean up to it had been tried") {
    const FieldVector f{2e-6, -1e-6, 3e-6};
    double last_T = 0.0;
    for (const double tilt_deg : {0.0, 5.0, 20.0, 50.0, 53.0, 54.0, 90.0}) {
      double tried_T = 0.0;
      for (int lean = 0; lean <= 100; ++lean) {
        for (int toward = 0; toward < 360; ++toward) {
          const double a = rad_from_deg(tilt_deg * lean / 100.0);
          const double d = rad_from_deg(toward);
          // Part along the lean mixes with the upright one; the part across stays.
          const double along = f.x_T * std::cos(d) + f.y_T * std::sin(d);
          const double across = -f.x_T * std::sin(d) + f.y_T * std::cos(d);
          tried_T =
              std::max(tried_T, std::hypot(along * std::cos(a) + f.z_T * std::sin(a), across));
        }
      }
      const double claimed_T = level_field_T({.straight = f}, tilt_deg);
      CHECK(claimed_T == rel(tried_T, 1e-3));
      CHECK(claimed_T >= last_T);
      CHECK(claimed_T <= size_T(f) * (1.0 + 1e-12));
      last_T = claimed_T;
    }
  }

  TEST_CASE("compass: the start of a twist is the worst of all starts") {
    CompassInput in = bay_boat(FeederLay::twisted);
    in.tilt_deg = 0.0;
    for (const Place at : kPlaces) {
      in.sensor = at;
      const double claimed_T = compass(in).level_T;
      double most_T = 0.0;
      for (int i = 0; i < 32; ++i) {
        in.pair.phase_rad = 2.0 * std::numbers::pi * i / 32;
        const FieldVector f = wire_field(circuit_of(in).wires, at);
        most_T = std::max(most_T, std::hypot(f.x_T, f.y_T));
      }
      in.pair.phase_rad = 0.0;
      // Two starts stand for all but for the third harmonic, here at 0.1 m of spacing.
      CHECK(claimed_T == rel(most_T, 0.03));
    }
  }

  TEST_CASE(
      "compass: the spacing and the twist it names keep the limit, and a little more does not") {
    for (const FeederLay lay : {FeederLay::side_by_side, FeederLay::one_above_other}) {
      CompassInput in = bay_boat(lay);
      in.sensor.z_m = 1.8;
      double last_m = 0.0;
      for (const double limit_deg : {0.5, 1.0, 2.0, 5.0}) {
        CAPTURE(limit_deg);
        in.limit_deg = limit_deg;
        const CompassResult r = compass(in);
        REQUIRE(r.spacing_m.has_value());
        CompassInput closer = in;
        closer.pair.spacing_m = *r.spacing_m;
        CHECK(compass(closer).error_deg <= limit_deg * (1.0 + 1e-9));
        if (*r.spacing_m < in.pair.spacing_m) {
          closer.pair.spacing_m *= 1.01;
          CHECK(compass(closer).error_deg > limit_deg);
          CHECK(r.error_deg > limit_deg);
        }
        CHECK(*r.spacing_m >= last_m);  // a looser limit never asks for less
        last_m = *r.spacing_m;
      }
    }
    CompassInput in = bay_boat();
    in.sensor = {4.0, 0.614, 0.95};  // 0.18 m over the feeder
    in.limit_deg = 2.0;
    in.pair.current_A = 120.0;
    const CompassResult r = compass(in);
    CHECK_FALSE(r.spacing_m.has_value());  // touching is not enough there
    REQUIRE(r.pitch_m.has_value());
    CHECK(*r.pitch_m < 0.6);
    CompassInput twisted = in;
    twisted.pair.lay = FeederLay::twisted;
    twisted.pair.spacing_m = in.touching_m;
    twisted.pair.pitch_m = *r.pitch_m;
    CHECK(compass(twisted).error_deg <= 2.0 * (1.0 + 1e-9));
    twisted.pair.pitch_m *= 1.02;
    CHECK(compass(twisted).error_deg > 2.0);
    in.sensor = {4.0, 0.614, 0.78};  // on the cable
    const CompassResult hopeless = compass(in);
    CHECK_FALSE(hopeless.spacing_m.has_value());
    CHECK_FALSE(hopeless.pitch_m.has_value());
    CHECK(hopeless.trace.checks.at(0).remedy.find("Move the sensor") == 0);
  }

  TEST_CASE("compass: split wires are worse than a pair on one side, and are brought together") {
    CompassInput in = bay_boat(FeederLay::side_by_side);
    in.sensor.z_m = 1.8;
    const double paired_deg = compass(in).error_deg;
    in.out = bent_route();
    in.back = bent_route();
    for (Place& p : in.back) p.y_m = -p.y_m;
    const CompassResult split = compass(in);
    CHECK(split.error_deg > paired_deg);
    REQUIRE(split.spacing_m.has_value());
    CompassInput together = bay_boat(FeederLay::side_by_side);
    together.sensor.z_m = 1.8;
    together.pair.spacing_m = *split.spacing_m;
    CHECK(compass(together).error_deg <= in.limit_deg * (1.0 + 1e-9));
  }

  TEST_CASE("compass: more current, or less of the earth's field, never errs less") {
    CompassInput in = bay_boat();
    double last_deg = -1.0;
    for (const double current_A : {0.0, 10.0, 60.0, 200.0, 2000.0}) {
      in.pair.current_A = current_A;
      const CompassResult r = compass(in);
      CHECK(r.error_deg >= last_deg);
      last_deg = r.error_deg;
      test::check_formulas(r.trace);
      for (const Check& check : r.trace.checks) CHECK(check.verdict() != Verdict::not_evaluated);
    }
    CHECK(last_deg == 180.0);
    in.pair.current_A = 60.0;
    const double south_deg = compass(in).error_deg;
    in.horizontal_T = 15e-6;
    CHECK(compass(in).error_deg > south_deg);
    CHECK(compass(bay_boat(FeederLay::twisted)).trace.steps.size() == 2);
    test::check_formulas(compass(bay_boat(FeederLay::twisted)).trace);
  }

  TEST_CASE("compass: the impossible is refused by name, and nothing is filled in") {
    const auto refused = [](const CompassInput& in, const std::string& field) {
      const CompassResult r = compass(in);
      return r.issues.size() == 1 && r.issues[0].field == field && r.trace.checks.empty() &&
             r.by_heading.empty() && !r.spacing_m && !r.issues[0].message.empty();
    };
    const auto changed = [](auto change) {
      CompassInput in = bay_boat();
      change(in);
      return in;
    };
    for (const double bad : {kNan, -1.0, 0.0}) {
      CHECK(refused(changed([&](CompassInput& in) { in.horizontal_T = bad; }), "horizontal_T"));
      CHECK(refused(changed([&](CompassInput& in) { in.limit_deg = bad; }), "limit_deg"));
      CHECK(refused(changed([&](CompassInput& in) { in.touching_m = bad; }), "touching_m"));
      CHECK(refused(changed([&](CompassInput& in) { in.pair.spacing_m = bad; }), "pair"));
      CHECK(refused(changed([&](CompassInput& in) {
                      in.pair.lay = FeederLay::twisted;
                      in.pair.pitch_m = bad;
                    }),
                    "pair"));
    }
    CHECK(refused(changed([](CompassInput& in) { in.pair.current_A = kInf; }), "pair.current_A"));
    CHECK(refused(changed([](CompassInput& in) { in.sensor.z_m = kNan; }), "sensor"));
    CHECK(refused(changed([](CompassInput& in) { in.tilt_deg = 91.0; }), "tilt_deg"));
    CHECK(refused(changed([](CompassInput& in) { in.limit_deg = 90.0; }), "limit_deg"));
    CHECK(refused(changed([](CompassInput& in) { in.pair.route.resize(1); }), "pair"));
    CHECK(refused(changed([](CompassInput& in) { in.pair.route[2].x_m = kNan; }), "pair"));
    CHECK(refused(changed([](CompassInput& in) {
                    in.pair.route = {{1, 1, 1}, {1, 1, 1}};
                  }),
                  "pair"));
    CHECK(refused(changed([](CompassInput& in) { in.out = bent_route(); }), "back"));
    CHECK(refused(changed([](CompassInput& in) {
                    in.pair.lay = FeederLay::twisted;
                    in.pair.pitch_m = 1e-9;
                  }),
                  "pair"));
  }

  TEST_CASE(
      "compass: lines of equal error stand where the error is so, inside the area, unbroken") {
    for (const FeederLay lay : kLays) {
      CompassInput in = bay_boat(lay);
      const PlanArea area{.low = {-0.5, -1.8},
                          .high = {7.5, 1.8},
                          .z_m = 1.2,
                          .columns_count = 81,
                          .rows_count = 41};
      const ErrorGrid grid = error_grid(in, area);
      REQUIRE(grid.field_ratio.size() == 81 * 41);
      in.sensor = {grid.point(30, 20).x_m, grid.point(30, 20).y_m, 1.2};
      // A twist's plan takes its quick field.
      CHECK(grid.error_deg(30, 20) == rel(compass(in).error_deg, lay == FeederLay::twisted ? 1e-3 : 1e-9));
      std::size_t points = 0;
      std::size_t close = 0;
      for (const double level_deg : {1.0, 2.0, 5.0, 10.0}) {
        for (const PlanLine& line : iso_lines(grid, level_deg)) {
          REQUIRE(line.size() >= 2);
          const bool closed =
              line.front().x_m == line.back().x_m && line.front().y_m == line.back().y_m;
          const auto on_edge = [&](PlanPoint p) {
            return p.x_m <= -0.5 || p.x_m >= 7.5 || p.y_m <= -1.8 || p.y_m >= 1.8;
          };
          CHECK((closed || (on_edge(line.front()) && on_edge(line.back()))));
          for (std::size_t i = 0; i < line.size(); ++i) {
            CHECK(line[i].x_m >= -0.5);
            CHECK(line[i].x_m <= 7.5);
            CHECK(std::abs(line[i].y_m) <= 1.8);
            if (i > 0) {
              CHECK(std::hypot(line[i].x_m - line[i - 1].x_m, line[i].y_m - line[i - 1].y_m) <
                    std::hypot(0.1, 0.09) + 1e-12);
            }
            const Circuit circuit = circuit_of(in);
            const double there_deg = worst_error_deg(
                level_field_T(disturbance(circuit, {line[i].x_m, line[i].y_m, 1.2}), in.tilt_deg),
                in.horizontal_T);
            ++points;
            if (std::abs(there_deg / level_deg - 1.0) < 0.05) ++close;
          }
        }
      }
      REQUIRE(points > 0);
      CHECK(static_cast<double>(close) > 0.9 * static_cast<double>(points));
    }
    CHECK(error_grid(bay_boat(), {.low = {1, 1}, .high = {0, 2}}).field_ratio.empty());
    CHECK(error_grid(bay_boat(), {.high = {1, 1}, .columns_count = 1}).field_ratio.empty());
    CHECK(iso_lines({}, 2.0).empty());
  }

  TEST_CASE("earth field: finite, of the known size, and level with itself everywhere") {
    for (int latitude = -90; latitude <= 90; latitude += 5) {
      for (int longitude = -180; longitude <= 360; longitude += 15) {
        const EarthFieldResult r = earth_field({.latitude_deg = static_cast<double>(latitude),
                                                .longitude_deg = static_cast<double>(longitude),
                                                .year = 2025.0});
        REQUIRE(r.field.has_value());
        const EarthField& f = *r.field;
        CHECK(f.total_T > 22e-6);
        CHECK(f.total_T < 67e-6);
        CHECK(f.horizontal_T >= 0.0);
        CHECK(std::hypot(f.north_T, f.east_T) == rel(f.horizontal_T, 1e-12));
        CHECK(std::abs(f.inclination_deg) <= 90.0);
        CHECK(std::abs(f.declination_deg) <= 180.0);
        CHECK(std::isfinite(f.down_T));
      }
    }
  }

  TEST_CASE("earth field: at the poles one vector whatever the meridian, and no jump beside them") {
    for (const double pole_deg : {90.0, -90.0}) {
      const auto from = [&](double latitude_deg, double longitude_deg) {
        const EarthField f =
            *earth_field({.latitude_deg = latitude_deg, .longitude_deg = longitude_deg}).field;
        // North along the meridian, turned to that of 0 degrees.
        const double l = rad_from_deg(longitude_deg) * (pole_deg > 0.0 ? 1.0 : -1.0);
        return FieldVector{f.north_T * std::cos(l) + f.east_T * std::sin(l),
                           -f.north_T * std::sin(l) + f.east_T * std::cos(l), f.down_T};
      };
      const FieldVector at = from(pole_deg, 0.0);
      for (const double longitude_deg : {-180.0, -77.0, 33.0, 145.0, 360.0}) {
        CHECK(apart_T(at, from(pole_deg, longitude_deg)) < 1e-9 * size_T(at));
        CHECK(apart_T(at, from(pole_deg * (1.0 - 1e-9), longitude_deg)) < 1e-7 * size_T(at));
      }
    }
  }

  TEST_CASE("earth field: the same meridian by two names, and a straight line through the years") {
    const auto at = [](double longitude_deg, double year) {
      return *earth_field({.latitude_deg = 41.0, .longitude_deg = longitude_deg, .year = year})
                  .field;
    };
    CHECK(at(-180.0, 2026.0).north_T == rel(at(180.0, 2026.0).north_T, 1e-12));
    CHECK(at(-71.0, 2026.0).east_T == rel(at(289.0, 2026.0).east_T, 1e-12));
    const double first_T = at(-71.0, 2026.0).north_T - at(-71.0, 2025.0).north_T;
    CHECK(first_T != 0.0);
    CHECK(at(-71.0, 2030.0).north_T - at(-71.0, 2025.0).north_T == rel(5.0 * first_T, 1e-6));
    CHECK(earth_field({.year = 2025.0}).source->confirmed);
    CHECK_FALSE(earth_field({.year = 2025.1}).source->confirmed);
  }

  TEST_CASE("earth field: outside its years and the earth it says so") {
    const auto refused = [](const EarthFieldInput& in, const std::string& field) {
      const EarthFieldResult r = earth_field(in);
      return !r.field && r.issues.size() == 1 && r.issues[0].field == field &&
             r.issues[0].severity == Severity::error;
    };
    CHECK(earth_field({.year = 2030.0}).field.has_value());
    for (const double bad : {2024.999, 2030.001, kNan, kInf}) CHECK(refused({.year = bad}, "year"));
    for (const double bad : {-90.001, 90.001, kNan, -kInf})
      CHECK(refused({.latitude_deg = bad}, "latitude_deg"));
    for (const double bad : {-180.001, 360.001, kNan, kInf})
      CHECK(refused({.longitude_deg = bad}, "longitude_deg"));
    for (const double bad : {-1001.0, 600001.0, kNan, kInf})
      CHECK(refused({.altitude_m = bad}, "altitude_m"));
    CHECK(
        earth_field({.latitude_deg = kNan, .longitude_deg = kNan, .altitude_m = kNan, .year = kNan})
            .issues.size() == 4);
  }
}
