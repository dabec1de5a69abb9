#include "calc/compass/compass.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <span>
#include <string>

#include "base/number.h"
#include "base/units.h"
#include "data/sources.h"
#include "data/sources_power.h"

namespace thole {
namespace {

constexpr double kMicro = 1e6;           // uT to a T
constexpr double kWidest_m = 0.3;        // spacing looked at when split wires are brought together
constexpr double kLongestPitch_m = 0.6;  // kCommonPractice: longer ones are hardly a twist
constexpr double kStiff_ratio = 10.0;    // kCommonPractice: shortest pitch over the spacing
constexpr int kTries_count = 32;         // along spacing or pitch, before halving
constexpr int kHalvings_count = 40;
constexpr std::size_t kPhases_count = 16;  // of a twist, over half a turn

bool split(const CompassInput& in) { return !in.out.empty() || !in.back.empty(); }

// Cosine and sine of how far the boat leans.
struct Tilt {
  double c = 1.0;
  double s = 0.0;
};

// The level part of a field in a boat that leans by up to that toward the worst side; all of it when
// that lays it flat.
double leaning_T(FieldVector field, Tilt tilt) {
  const auto [c, s] = tilt;
  const double level_T = std::sqrt(field.x_T * field.x_T + field.y_T * field.y_T);
  const double upright_T = std::abs(field.z_T);
  return upright_T * c <= level_T * s ? std::sqrt(level_T * level_T + upright_T * upright_T)
                                      : level_T * c + upright_T * s;
}

// Whole millimetres, rounded to the safe side.
std::string at_most_mm(double length_m) { return fixed(std::floor(1000.0 * length_m + 1e-9), 0); }

double error_at_sensor_deg(const CompassInput& in) {
  return worst_error_deg(level_field_at_sensor_T(in), in.horizontal_T);
}

// The largest x from `least` up to `most` at which it and all less keep the limit.
template <class ErrorOf>
std::optional<double> largest(double least, double most, double limit_deg,
                              const ErrorOf& error_of) {
  if (!(error_of(least) <= limit_deg)) return std::nullopt;
  double good = least;
  for (int i = 1; i <= kTries_count && most > least; ++i) {
    double bad = least * std::pow(most / least, static_cast<double>(i) / kTries_count);
    if (i == kTries_count) bad = most;
    if (error_of(bad) <= limit_deg) {
      good = bad;
      continue;
    }
    for (int halving = 0; halving < kHalvings_count; ++halving) {
      const double middle = 0.5 * (good + bad);
      (error_of(middle) <= limit_deg ? good : bad) = middle;
    }
    break;
  }
  return good;
}

// The wires along one route at another spacing or twist.
CompassInput together(const CompassInput& in, FeederLay lay, double spacing_m, double pitch_m) {
  CompassInput changed = in;
  if (split(in)) changed.pair.route = in.out;
  changed.out.clear();
  changed.back.clear();
  changed.pair.lay = lay;
  changed.pair.spacing_m = spacing_m;
  changed.pair.pitch_m = pitch_m;
  return changed;
}

std::optional<double> spacing_within_m(const CompassInput& in) {
  const bool apart = split(in);
  const FeederLay lay = apart ? FeederLay::side_by_side : in.pair.lay;
  const double most_m = std::max(in.touching_m, apart ? kWidest_m : in.pair.spacing_m);
  return largest(in.touching_m, most_m, in.limit_deg, [&](double spacing_m) {
    return error_at_sensor_deg(together(in, lay, spacing_m, in.pair.pitch_m));
  });
}

std::optional<double> pitch_within_m(const CompassInput& in) {
  const double least_m = kStiff_ratio * in.touching_m;
  return largest(least_m, std::max(least_m, kLongestPitch_m), in.limit_deg, [&](double pitch_m) {
    return error_at_sensor_deg(together(in, FeederLay::twisted, in.touching_m, pitch_m));
  });
}

Issues issues_of(const CompassInput& in) {
  Issues issues;
  const auto refuse = [&](bool good, const char* field, const char* message) {
    if (!good) issues.push_back({Severity::error, field, message});
  };
  const bool both = in.out.empty() == in.back.empty();
  refuse(both, "back", "Give the way of both conductors, or of neither.");
  if (both) {
    refuse(
        !circuit_of(in).wires.empty(), "pair",
        "The feeder needs two places or more on its way, its conductors' spacing and, twisted, the "
        "length of a turn.");
  }
  refuse(std::isfinite(in.pair.current_A) && in.pair.current_A >= 0.0, "pair.current_A",
         "Current must be 0 A or more.");
  refuse(
      std::isfinite(in.sensor.x_m) && std::isfinite(in.sensor.y_m) && std::isfinite(in.sensor.z_m),
      "sensor", "The place of the heading sensor must be given.");
  refuse(
      std::isfinite(in.horizontal_T) && in.horizontal_T > 0.0, "horizontal_T",
      "The level part of the earth's field must be more than 0; there is none at a magnetic pole.");
  refuse(in.tilt_deg >= 0.0 && in.tilt_deg <= 90.0, "tilt_deg",
         "Tilt must be from 0 to 90 degrees.");
  refuse(in.limit_deg > 0.0 && in.limit_deg < 90.0, "limit_deg",
         "The heading error allowed must be more than 0 and less than 90 degrees.");
  refuse(std::isfinite(in.touching_m) && in.touching_m > 0.0, "touching_m",
         "The spacing of touching conductors must be more than 0 m.");
  return issues;
}

std::string remedy_of(const CompassResult& r) {
  if (r.spacing_m) {
    return "Keep plus and minus no more than " + at_most_mm(*r.spacing_m) +
           " mm apart, middle to middle, all along one way, or move the sensor.";
  }
  if (r.pitch_m) {
    return "Twist plus and minus, touching, a full turn in " + at_most_mm(*r.pitch_m) +
           " mm or less, or move the sensor.";
  }
  return "Move the sensor away from the feeder; neither closer wires nor a twist will do.";
}

void show(const CompassInput& in, CompassResult& r) {
  const double field_uT = kMicro * r.level_T;
  const double earth_uT = kMicro * in.horizontal_T;
  if (r.error_deg < 90.0) {
    tell([&] {
      r.trace.steps.push_back(
          {.id = "compass.error",
           .label = "Heading error at full thrust, worst heading",
           .symbol = "e",
           .formula = "atan(B / sqrt(B_h^2 - B^2)) * 180 / pi",
           .terms = {{"B", field_uT, "uT", "level part of the feeder's field at the sensor"},
                     {"B_h", earth_uT, "uT", "level part of the earth's field"},
                     {"pi", std::numbers::pi, "", "circle over its diameter"}},
           .value = r.error_deg,
           .unit = "deg",
           .source = kHeadingTriangle,
           .assumptions = {
               "The feeder's field is the sum over its straight pieces as routed.",
               "It comes and goes with thrust, so calibrating the sensor does not take it "
               "out."}});
    });
  }
  if (in.pair.lay == FeederLay::twisted && !split(in)) {
    tell([&] {
      r.trace.steps.push_back(
          {.id = "compass.twist_extra",
           .label = "Share by which the twist lengthens each conductor",
           .symbol = "x",
           .formula = "sqrt(1 + (pi * d / p)^2) - 1",
           .terms = {{"pi", std::numbers::pi, "", "circle over its diameter"},
                     {"d", in.pair.spacing_m, "m", "between the two conductors' middles"},
                     {"p", in.pair.pitch_m, "m", "length of a full turn"}},
           .value = twist_extra_frac(in.pair.spacing_m, in.pair.pitch_m),
           .unit = "frac",
           .source = kDefinition});
    });
  }
  Check check{.id = "compass.error",
              .label = "Heading error at full thrust",
              .actual = r.error_deg,
              .limit = in.limit_deg,
              .unit = "deg",
              .comparison = Comparison::at_most,
              .source = kCommonPractice};
  check.remedy = remedy_of(r);
  r.trace.checks.push_back(std::move(check));
}

}  // namespace

Circuit circuit_of(const CompassInput& in) {
  Circuit circuit;
  if (split(in)) {
    const auto good = [](std::span<const Place> line) {
      return line.size() > 1 && std::all_of(line.begin(), line.end(), [](Place place) {
               return std::isfinite(place.x_m) && std::isfinite(place.y_m) &&
                      std::isfinite(place.z_m);
             });
    };
    if (good(in.out) && good(in.back)) {
      circuit.wires.push_back(loop_wire(in.out, in.back, in.pair.current_A));
    }
    return circuit;
  }
  const auto add = [&](const PairInput& pair, std::vector<Wire>& wires) {
    Wire wire = pair_wire(pair);
    if (!wire.places.empty()) wires.push_back(std::move(wire));
  };
  add(in.pair, circuit.wires);
  if (in.pair.lay == FeederLay::twisted) {
    PairInput turned = in.pair;
    turned.phase_rad += 0.5 * std::numbers::pi;
    add(turned, circuit.turned);
  }
  return circuit;
}

Disturbance disturbance(const Circuit& circuit, Place at) {
  return {.straight = wire_field(circuit.wires, at), .turned = wire_field(circuit.turned, at)};
}

double level_field_T(const Disturbance& d, double tilt_deg) {
  const Tilt tilt{std::cos(rad_from_deg(tilt_deg)), std::sin(rad_from_deg(tilt_deg))};
  if (d.turned.x_T == 0.0 && d.turned.y_T == 0.0 && d.turned.z_T == 0.0) return leaning_T(d.straight, tilt);
  const double step_c = std::cos(std::numbers::pi / kPhases_count);
  const double step_s = std::sin(std::numbers::pi / kPhases_count);
  std::array<double, kPhases_count> squares{};
  double c = 1.0;
  double s = 0.0;
  std::size_t best = 0;
  for (std::size_t i = 0; i < squares.size(); ++i) {
    const double level_T = leaning_T({.x_T = c * d.straight.x_T + s * d.turned.x_T,
                                      .y_T = c * d.straight.y_T + s * d.turned.y_T,
                                      .z_T = c * d.straight.z_T + s * d.turned.z_T},
                                     tilt);
    squares[i] = level_T * level_T;
    if (squares[i] > squares[best]) best = i;
    const double next_c = c * step_c - s * step_s;  // turned on: no sine to a phase
    s = s * step_c + c * step_s;
    c = next_c;
  }
  // The top of the parabola through the greatest and its neighbours; half a turn on all is as before.
  const double before = squares[(best + squares.size() - 1) % squares.size()];
  const double after = squares[(best + 1) % squares.size()];
  const double bend = 2.0 * squares[best] - before - after;
  const double lift = bend > 0.0 ? (after - before) * (after - before) / (8.0 * bend) : 0.0;
  return std::sqrt(squares[best] + lift);
}

double level_field_at_sensor_T(const CompassInput& in) {
  return level_field_T(disturbance(circuit_of(in), in.sensor), in.tilt_deg);
}

double heading_shift_deg(FieldVector field, double horizontal_T, double heading_deg) {
  // North lies to port of a bow that points east of it.
  const double heading_rad = rad_from_deg(heading_deg);
  const double ahead_T = horizontal_T * std::cos(heading_rad) + field.x_T;
  const double port_T = horizontal_T * std::sin(heading_rad) + field.y_T;
  return std::remainder(deg_from_rad(std::atan2(port_T, ahead_T)) - heading_deg, 360.0);
}

double twist_extra_frac(double spacing_m, double pitch_m) {
  const double turn = std::numbers::pi * spacing_m / pitch_m;
  return std::sqrt(1.0 + turn * turn) - 1.0;
}

CompassResult compass(const CompassInput& in) {
  CompassResult r{.issues = issues_of(in)};
  if (has_error(r.issues)) return r;
  const Disturbance here = disturbance(circuit_of(in), in.sensor);
  r.field = here.straight;
  r.level_T = level_field_T(here, in.tilt_deg);
  r.error_deg = worst_error_deg(r.level_T, in.horizontal_T);
  const double own_ratio = std::hypot(r.field.x_T, r.field.y_T) / in.horizontal_T;
  // Where the field stands square to the one that is shown; opposite to earth's when it is
  // stronger.
  const double from_north_rad = std::acos(-std::min(own_ratio, 1.0));
  const double worst_deg = deg_from_rad(std::atan2(r.field.y_T, r.field.x_T) - from_north_rad);
  r.worst_heading_deg = worst_deg < 0.0 ? worst_deg + 360.0 : worst_deg;
  if (r.worst_heading_deg < 0.0) r.worst_heading_deg += 360.0;
  for (int heading = 0; heading < 360; heading += 15) {
    r.by_heading.push_back(
        {static_cast<double>(heading), heading_shift_deg(r.field, in.horizontal_T, heading)});
  }
  r.spacing_m = spacing_within_m(in);
  r.pitch_m = pitch_within_m(in);
  show(in, r);
  return r;
}

}  // namespace thole
