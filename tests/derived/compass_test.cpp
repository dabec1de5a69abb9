// The earth's field and the feeder's against other ways to the same figure: the potential written
// out, closed forms of textbooks, the series of a twisted pair.

#include "calc/compass/compass.h"

#include <array>
#include <cmath>
#include <numbers>
#include <span>
#include <vector>

#include "base/units.h"
#include "calc/compass/contours.h"
#include "calc/compass/earth_field.h"
#include "calc/heading.h"
#include "data/igrf.h"
#include "support.h"

using namespace thole;

namespace {

constexpr double kPi = std::numbers::pi;
using Vec = std::array<double, 3>;

double factorial(int n) { return n < 2 ? 1.0 : n * factorial(n - 1); }

// P(n,m)(x) over (1 - x^2)^(m/2), from the powers of x in Rodrigues' formula.
double polynomial_part(int n, int m, double x) {
  double sum = 0.0;
  for (int k = 0; 2 * k <= n - m; ++k) {
    const double sign = k % 2 == 0 ? 1.0 : -1.0;
    sum += sign * factorial(2 * n - 2 * k) /
           (factorial(k) * factorial(n - k) * factorial(n - m - 2 * k)) *
           std::pow(x, n - m - 2 * k);
  }
  const double schmidt = m == 0 ? 1.0 : std::sqrt(2.0 * factorial(n - m) / factorial(n + m));
  return schmidt * sum / std::pow(2.0, n);
}

// Potential over the reference radius, nT, at a place from the earth's middle.
double potential_nT(const Vec& at_m, double years) {
  const double r_m = std::hypot(at_m[0], at_m[1], at_m[2]);
  const double x = at_m[2] / r_m;
  const double sine = std::hypot(at_m[0], at_m[1]) / r_m;
  const double longitude_rad = std::atan2(at_m[1], at_m[0]);
  double sum = 0.0;
  for (const IgrfTerm& t : igrf_terms()) {
    const double g = t.g_nT + years * t.g_rate_nT_per_year;
    const double h = t.h_nT + years * t.h_rate_nT_per_year;
    sum += std::pow(6371200.0 / r_m, t.degree + 1) * polynomial_part(t.degree, t.order, x) *
           std::pow(sine, t.order) *
           (g * std::cos(t.order * longitude_rad) + h * std::sin(t.order * longitude_rad));
  }
  return sum;
}

struct Frame3 {
  Vec at_m{};
  Vec north{};
  Vec east{};
  Vec down{};
};

// On the ellipsoid of the half axes 6378137 and 6356752.3142 m.
Frame3 frame(double latitude_deg, double longitude_deg, double altitude_m) {
  const double p = rad_from_deg(latitude_deg);
  const double l = rad_from_deg(longitude_deg);
  constexpr double a = 6378137.0;
  constexpr double b = 6356752.3142;
  const double n = a * a / std::hypot(a * std::cos(p), b * std::sin(p));
  return {.at_m = {(n + altitude_m) * std::cos(p) * std::cos(l),
                   (n + altitude_m) * std::cos(p) * std::sin(l),
                   (b * b / (a * a) * n + altitude_m) * std::sin(p)},
          .north = {-std::sin(p) * std::cos(l), -std::sin(p) * std::sin(l), std::cos(p)},
          .east = {-std::sin(l), std::cos(l), 0.0},
          .down = {-std::cos(p) * std::cos(l), -std::cos(p) * std::sin(l), -std::sin(p)}};
}

double falls_along_nT(const Frame3& here, const Vec& way, double years) {
  constexpr double kStep_m = 500.0;
  const auto moved = [&](double by_m) {
    return Vec{here.at_m[0] + by_m * way[0], here.at_m[1] + by_m * way[1],
               here.at_m[2] + by_m * way[2]};
  };
  return -(potential_nT(moved(kStep_m), years) - potential_nT(moved(-kStep_m), years)) /
         (2.0 * kStep_m) * 6371200.0;
}

double integral(double from, double to, auto&& f) {  // Simpson
  constexpr int kSteps = 2000;
  const double h = (to - from) / kSteps;
  double sum = f(from) + f(to);
  for (int i = 1; i < kSteps; ++i) sum += (i % 2 == 1 ? 4.0 : 2.0) * f(from + i * h);
  return sum * h / 3.0;
}

// Modified Bessel functions by their integrals.
double bessel_K(int n, double x) {
  return integral(0.0, 12.0,
                  [&](double t) { return std::exp(-x * std::cosh(t)) * std::cosh(n * t); });
}
double bessel_K_slope(int n, double x) {
  return -integral(0.0, 12.0, [&](double t) {
    return std::exp(-x * std::cosh(t)) * std::cosh(t) * std::cosh(n * t);
  });
}
double bessel_I_slope(int n, double x) {
  return integral(
             0.0, kPi,
             [&](double t) { return std::exp(x * std::cos(t)) * std::cos(t) * std::cos(n * t); }) /
         kPi;
}

double size_T(FieldVector f) { return std::hypot(f.x_T, f.y_T, f.z_T); }

std::vector<Place> polygon(int corners, double radius_m) {
  std::vector<Place> places;
  for (int i = 0; i <= corners; ++i) {
    const double angle = 2.0 * kPi * i / corners;
    places.push_back({radius_m * std::cos(angle), radius_m * std::sin(angle), 0.0});
  }
  return places;
}

}  // namespace

TEST_SUITE("derived") {
  TEST_CASE("earth field: the slope of the potential written out, in the plumb line's frame") {
    for (const double latitude_deg : {-89.0, -52.3, -7.5, 0.0, 33.3, 64.1, 89.5}) {
      for (const double longitude_deg : {-151.0, -40.0, 12.5, 118.0}) {
        CAPTURE(latitude_deg);
        CAPTURE(longitude_deg);
        const EarthFieldResult result = earth_field({.latitude_deg = latitude_deg,
                                                     .longitude_deg = longitude_deg,
                                                     .altitude_m = 1500.0,
                                                     .year = 2027.5});
        REQUIRE(result.field.has_value());
        const Frame3 here = frame(latitude_deg, longitude_deg, 1500.0);
        // The step of 500 m costs some (13 * 500 / r)^2 = 1e-6 of the field.
        CHECK(near(1e9 * result.field->north_T, falls_along_nT(here, here.north, 2.5), 0.05));
        CHECK(near(1e9 * result.field->east_T, falls_along_nT(here, here.east, 2.5), 0.05));
        CHECK(near(1e9 * result.field->down_T, falls_along_nT(here, here.down, 2.5), 0.05));
      }
    }
  }

  TEST_CASE("wire: the middle of a square, 2 sqrt(2) mu0 I / (pi a)") {
    const std::vector<Wire> square{
        {.places = {{0, 0, 0}, {0.4, 0, 0}, {0.4, 0.4, 0}, {0, 0.4, 0}, {0, 0, 0}},
         .current_A = 50}};
    const FieldVector field = wire_field(square, {0.2, 0.2, 0.0});
    CHECK(field.z_T == rel(2.0 * std::sqrt(2.0) * 4e-7 * 50.0 / 0.4, 1e-12));
    CHECK(std::hypot(field.x_T, field.y_T) < 1e-20);
  }

  TEST_CASE("wire: on the axis of a circle, mu0 I R^2 / (2 (R^2 + z^2)^(3/2))") {
    const std::vector<Wire> circle{{.places = polygon(720, 0.3), .current_A = 40.0}};
    for (const double z_m : {0.0, 0.2, 1.0}) {
      // A polygon's area is that of the circle but for (2 pi / 720)^2 * 2/3.
      CHECK(wire_field(circle, {0.0, 0.0, z_m}).z_T ==
            rel(0.5 * 4e-7 * kPi * 40.0 * 0.09 / std::pow(0.09 + z_m * z_m, 1.5), 6e-5));
    }
  }

  TEST_CASE("wire: inside a conductor the field falls to its axis, and no place gives infinity") {
    const std::vector<Wire> wires{{.places = {{-50, 0, 0}, {50, 0, 0}}, .current_A = 100.0}};
    CHECK(size_T(wire_field(wires, {0.0, 0.0, 0.005}, 0.005)) == rel(4e-3, 1e-6));
    CHECK(size_T(wire_field(wires, {0.0, 0.002, 0.0}, 0.005)) == rel(4e-3 * 0.4, 1e-6));
    CHECK(size_T(wire_field(wires, {0.0, 0.0, 0.0}, 0.005)) == 0.0);
    for (const double x_m : {-50.0, 49.999, 50.0, 50.001}) {
      CHECK(size_T(wire_field(wires, {x_m, 0.0, 0.0}, 0.005)) <= 4e-3);
    }
  }

  // Two helices of radius a with opposite currents, k = 2 pi / p: outside, the potential is
  //   sum over odd n of A_n K_n(n k r) sin(n psi), A_n = 2 mu0 I k a / pi I_n'(n k a),
  // psi from the wires' own angle. Straight above wires that lie level, psi is 90 degrees and the
  // field radial; above wires that stand upright, psi is 0 and the field lies along and round.
  TEST_CASE("twisted pair: the series of Bessel functions") {
    constexpr double kCurrent_A = 60.0;
    for (const double pitch_m : {0.30, 0.15}) {
      for (const double spacing_m : {0.012, 0.030}) {
        for (const double r_m : {0.05, 0.1, 0.2}) {
          CAPTURE(pitch_m);
          CAPTURE(spacing_m);
          CAPTURE(r_m);
          const double k = 2.0 * kPi / pitch_m;
          const double a = 0.5 * spacing_m;
          double radial = 0.0;
          double round_T = 0.0;
          double along_T = 0.0;
          for (const int n : {1, 3, 5, 7, 9}) {
            const double A = 2.0 * 4e-7 * kCurrent_A * k * a * bessel_I_slope(n, n * k * a);
            radial += A * n * k * bessel_K_slope(n, n * k * r_m) * (n % 4 == 1 ? 1.0 : -1.0);
            round_T += A * n / r_m * bessel_K(n, n * k * r_m);
            along_T += A * n * k * bessel_K(n, n * k * r_m);
          }
          const auto at_phase = [&](double phase_rad) {
            const std::vector<Wire> wires{pair_wire({.route = {{-15.0, 0, 0}, {15.0, 0, 0}},
                                                     .spacing_m = spacing_m,
                                                     .lay = FeederLay::twisted,
                                                     .pitch_m = pitch_m,
                                                     .phase_rad = phase_rad,
                                                     .current_A = kCurrent_A})};
            return size_T(wire_field(wires, {0.0, 0.0, r_m}));
          };
          // 12 pieces to a turn leave a trace of the eleventh harmonic; the ends, 15 m off, 1e-9 T.
          CHECK(near(at_phase(0.0), std::abs(radial), 2e-3 * std::abs(radial) + 2e-9));
          const double level = std::hypot(round_T, along_T);
          CHECK(near(at_phase(0.5 * kPi), level, 2e-3 * level + 2e-9));
        }
      }
    }
  }

  // A long pair one above the other, the sensor 1 m aside at its height: level field
  // 0.2 I d / (1 + d^2 / 4) uT. 20 uT sin 2 degrees = 0.69799 uT at 60 A: d = 0.058215 m.
  TEST_CASE("spacing that keeps 2 degrees, by hand") {
    CompassInput in{.pair = {.route = {{-2000.0, 0, 0}, {2000.0, 0, 0}},
                             .spacing_m = 0.2,
                             .lay = FeederLay::one_above_other,
                             .current_A = 60.0},
                    .sensor = {0.0, 1.0, 0.0},
                    .horizontal_T = 20e-6,
                    .limit_deg = 2.0};
    const CompassResult result = compass(in);
    REQUIRE(result.spacing_m.has_value());
    CHECK(*result.spacing_m == rel(0.058215, 2e-5));
    // 0.2 m: 2.4 / 1.01 uT of 20, asin 0.1188119.
    CHECK(result.error_deg == rel(6.82354, 1e-6));
  }

  TEST_CASE(
      "the feeder stage's estimate for a long straight pair is met by the sum over its pieces") {
    constexpr double kCurrent_A = 60.0;
    for (const double spacing_m : {0.012, 0.1}) {
      const std::vector<Wire> pair{pair_wire({.route = {{-2000.0, 0, 0}, {2000.0, 0, 0}},
                                              .spacing_m = spacing_m,
                                              .lay = FeederLay::one_above_other,
                                              .current_A = kCurrent_A})};
      const double r1_m = std::hypot(0.4, 0.3 - 0.5 * spacing_m);
      const double r2_m = std::hypot(0.4, 0.3 + 0.5 * spacing_m);
      CHECK(1e6 * size_T(wire_field(pair, {0.0, 0.4, 0.3})) ==
            rel(pair_field_uT(kCurrent_A, spacing_m, r1_m, r2_m), 1e-5));
      // Its clear distance is for the worst heading, from far off.
      const double clear_m = clear_distance_m(kCurrent_A, spacing_m, 20.0, 2.0);
      const FieldVector there = wire_field(pair, {0.0, 0.0, clear_m});
      CHECK(worst_error_deg(size_T(there), 20e-6) ==
            rel(2.0, spacing_m * spacing_m / (clear_m * clear_m)));
    }
  }

  // Long wires to port and starboard, the sensor over the middle between them: each gives 0.2 I / r
  // across its own radius; upright the two add, level they cancel.
  TEST_CASE("split wires: upright field over the middle, which counts only in a boat that leans") {
    CompassInput in{.pair = {.current_A = 60.0},
                    .out = {{-900.0, 1.0, 0.0}, {900.0, 1.0, 0.0}},
                    .back = {{-900.0, -1.0, 0.0}, {900.0, -1.0, 0.0}},
                    .sensor = {0.0, 0.0, 1.0},
                    .horizontal_T = 20e-6};
    const CompassResult level = compass(in);
    CHECK(std::abs(level.field.z_T) == rel(12e-6, 1e-5));  // 2 * 12 uT / sqrt 2 * cos 45 degrees
    CHECK(level.error_deg < 1e-6);
    in.tilt_deg = 30.0;
    CHECK(compass(in).level_T == rel(6e-6, 1e-5));
    in.tilt_deg = 90.0;
    CHECK(compass(in).level_T == rel(12e-6, 1e-5));
  }

  TEST_CASE("lines of equal error: a field of 1 / r^2 gives circles") {
    // Ratio 0.01 / r^2 about (0.3, -0.2); sin 10 degrees at r = 0.23998, sin 2 degrees at 0.53529.
    ErrorGrid grid{
        .area = {.low = {-1.0, -1.0}, .high = {1.0, 1.0}, .columns_count = 201, .rows_count = 201}};
    for (int row = 0; row < 201; ++row) {
      for (int column = 0; column < 201; ++column) {
        const PlanPoint p = grid.point(column, row);
        const double r2 = std::pow(p.x_m - 0.3, 2) + std::pow(p.y_m + 0.2, 2);
        grid.field_ratio.push_back(0.01 / std::max(r2, 1e-6));
      }
    }
    const double radii[][2] = {{10.0, 0.23998}, {2.0, 0.53529}};
    for (const auto& row : radii) {
      const std::vector<PlanLine> lines = iso_lines(grid, row[0]);
      REQUIRE(lines.size() == 1);
      CHECK(lines[0].front().x_m == lines[0].back().x_m);
      CHECK(lines[0].front().y_m == lines[0].back().y_m);
      double turned_rad = 0.0;
      for (std::size_t i = 0; i < lines[0].size(); ++i) {
        const PlanPoint p = lines[0][i];
        CHECK(std::hypot(p.x_m - 0.3, p.y_m + 0.2) == rel(row[1], 5e-4));
        if (i == 0) continue;
        const PlanPoint q = lines[0][i - 1];
        turned_rad += std::remainder(
            std::atan2(p.y_m + 0.2, p.x_m - 0.3) - std::atan2(q.y_m + 0.2, q.x_m - 0.3), 2.0 * kPi);
      }
      CHECK(std::abs(turned_rad) == rel(2.0 * kPi, 1e-9));
    }
    CHECK(iso_lines(grid, 0.0).empty());
    CHECK(iso_lines(grid, 90.0).empty());
  }

  TEST_CASE("lines of equal error: a saddle's two ways, and lines that leave the area") {
    // One square: high in two opposite corners. The mean of the logarithms decides.
    ErrorGrid grid{.area = {.high = {1.0, 1.0}, .columns_count = 2, .rows_count = 2}};
    const double level = std::sin(rad_from_deg(5.0));
    // The point (0, 0) is high; halfway in logarithms on every side.
    grid.field_ratio = {level * 4.0, level / 2.0, level / 2.0, level * 4.0};
    std::vector<PlanLine> lines = iso_lines(grid, 5.0);
    REQUIRE(lines.size() == 2);
    for (const PlanLine& line : lines) {  // the middle is high: each line cuts off a low corner
      REQUIRE(line.size() == 2);
      const double x = 0.5 * (line[0].x_m + line[1].x_m);
      const double y = 0.5 * (line[0].y_m + line[1].y_m);
      CHECK(std::abs(x - y) ==
            rel(2.0 / 3.0, 1e-9));  // the crossings lie 2/3 from the high corners
    }
    grid.field_ratio = {level * 2.0, level / 4.0, level / 4.0, level * 2.0};
    lines = iso_lines(grid, 5.0);
    REQUIRE(lines.size() == 2);
    for (const PlanLine& line : lines) {
      REQUIRE(line.size() == 2);
      const double x = 0.5 * (line[0].x_m + line[1].x_m);
      const double y = 0.5 * (line[0].y_m + line[1].y_m);
      CHECK(std::abs(x + y - 1.0) == rel(2.0 / 3.0, 1e-9));  // 1/3 from the high corners
    }
  }
}
