#include "calc/hold/calibrate.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <limits>
#include <numbers>
#include <utility>

#include "base/units.h"
#include "calc/hold/site.h"
#include "data/sources.h"
#include "data/sources_hold.h"

namespace thole {
namespace {

// --- what is thought of it beforehand, and how well it can be read: docs/decisions.md
// -------------

// The logarithms that are sought.
enum Unknown : std::size_t { windage, drag, wave, drift_law, thrust, kUnknowns };
using Vector = std::array<double, kUnknowns>;
using Matrix = std::array<Vector, kUnknowns>;

// Standard deviations before the trial. Wind within a third, current within a half, waves within a
// factor of two either way; how the boat lies while it drifts; what of its full thrust a motor
// gives to a hull.
constexpr Vector kBefore{0.20, 0.35, 0.35, 0.20, 0.10};

constexpr double kWindReading_frac = 0.10;  // standard deviations of the readings
constexpr double kLeastWindReading_mps = 0.3;
constexpr double kCurrentReading_mps = 0.05;
constexpr double kCurrentAngleReading_deg = 10.0;
constexpr double kPositionReading_m = 3.0;    // of each of two fixes
constexpr double kThrustReading_frac = 0.03;  // of full thrust

constexpr double kLeastWind_mps = 2.0;  // below, the wind is no steady push
constexpr double kMostWind_mps = 35.0;
constexpr double kMostCurrent_mps = 4.0;
constexpr double kLeastLeeway_frac = 0.003;
constexpr double kMostLeeway_frac = 0.30;
constexpr double kLeastThrust_frac = 0.03;
constexpr double kMostThrust_frac = 0.97;  // above, the load may be anything from there up
constexpr double kLargest_factor = 4.0;    // the range of the fields

// --- the readings
// ---------------------------------------------------------------------------------

struct Flow {
  double downwind_mps = 0.0;
  double across_mps = 0.0;  // clockwise positive
};

Flow along(double speed_mps, double clockwise_deg) {
  const double angle_rad = rad_from_deg(clockwise_deg);
  return {.downwind_mps = speed_mps * std::cos(angle_rad),
          .across_mps = speed_mps * std::sin(angle_rad)};
}

HoldInput boat_in(const CalibrateInput& in, const DriftReading& reading) {
  HoldInput boat = in.boat;
  boat.wind_mps = wind_at_ten_metres_mps(reading.wind_mps, reading.wind_height_m);
  boat.windage_factor = 1.0;
  boat.drag_factor = 1.0;
  return boat;
}

// Drift through the water as a share of the wind over the water: along it and across it.
struct Leeway {
  double along_frac = 0.0;
  double across_frac = 0.0;
};
Leeway leeway(const CalibrateInput& in, const DriftReading& reading) {
  const HoldInput boat = boat_in(in, reading);
  const Flow drift = along(reading.drift_mps, reading.drift_angle_deg);
  // A current that comes from where the wind does sets downwind.
  const Flow current = along(reading.current_mps, reading.current_angle_deg);
  const Flow wind{.downwind_mps = wind_on_boat_mps(boat, boat.wind_mps) - current.downwind_mps,
                  .across_mps = -current.across_mps};
  const Flow through{.downwind_mps = drift.downwind_mps - current.downwind_mps,
                     .across_mps = drift.across_mps - current.across_mps};
  const double square = wind.downwind_mps * wind.downwind_mps + wind.across_mps * wind.across_mps;
  if (!(square > 0.0)) return {};
  return {.along_frac =
              (through.downwind_mps * wind.downwind_mps + through.across_mps * wind.across_mps) /
              square,
          .across_frac =
              (through.across_mps * wind.downwind_mps - through.downwind_mps * wind.across_mps) /
              square};
}

// Drag of the side in the wind over that under water, as computed.
double side_drag_ratio(const HoldInput& boat) {
  const HeldHull hull = held_hull(boat);
  return hull.air_density_kg_per_m3 * kWindSway_factor * hull.wind.lateral_area_m2 /
         (hull.water_density_kg_per_m3 * hull.current.sway_factor *
          hull.current.underwater_area_m2);
}

double drag_ratio_of_drift(double leeway_frac) {
  const double odds = leeway_frac / (1.0 - leeway_frac);
  return odds * odds;
}

// Share of full thrust that the motor shows on average, with the factors whose logarithms are
// given.
double thrust_share(const CalibrateInput& in, const HeldReading& reading, const Vector& x) {
  HoldInput boat = in.boat;
  boat.wind_mps = wind_at_ten_metres_mps(reading.wind_mps, reading.wind_height_m);
  boat.current_mps = reading.current_mps;
  boat.current_angle_deg = reading.current_angle_deg;
  boat.wave_height_m = reading.wave_height_m;
  boat.wave_period_s = {};
  boat.windage_factor = std::exp(x[windage]);
  boat.drag_factor = std::exp(x[drag]);
  const Site site(boat);
  const double current_from_rad = rad_from_deg(boat.current_angle_deg);
  Weather weather = site.given_weather(current_from_rad);
  weather.sea.height_m *= std::exp(0.5 * x[wave]);  // the push goes with the height squared
  const double load_N =
      worst_heading(site.hull, vane_table(site.hull, current_from_rad), weather).thrust_N;
  // No allowances: at part load the voltage hardly sags, and the trial is made in a moderate sea.
  const double full_N = thrust_in_current_of(boat, in.motor) * kMisc_factor * kRace_factor;
  return kGustThrust_factor * load_N / (full_N * std::exp(x[thrust]));
}

// --- what can be used of them
// ---------------------------------------------------------------------

bool within(double value, double low, double high) { return value >= low && value <= high; }

// In words, what is wrong with a reading's wind and current; empty when nothing is.
template <class Reading>
std::string weather_message(const Reading& reading) {
  if (!within(reading.wind_height_m, 1.0, 30.0)) {
    return "The height at which the wind was read must be between 1 and 30 m.";
  }
  const double wind_mps = wind_at_ten_metres_mps(reading.wind_mps, reading.wind_height_m);
  if (!within(wind_mps, kLeastWind_mps, kMostWind_mps)) {
    return "The wind must be between 2 and 35 m/s: in less it is no steady push.";
  }
  if (!within(reading.current_mps, 0.0, kMostCurrent_mps)) {
    return "The current must be between 0 and 4 m/s.";
  }
  if (!within(reading.current_angle_deg, -360.0, 360.0)) {
    return "The angle between wind and current must be between -360 and 360 degrees.";
  }
  return {};
}

std::string message_of(const CalibrateInput& in, const DriftReading& reading) {
  if (std::string text = weather_message(reading); !text.empty()) return text;
  if (!within(reading.time_min, 1.0, 120.0)) {
    return "Let it drift for 1 to 120 minutes; five are enough.";
  }
  if (!within(reading.drift_mps, 0.0, 6.0)) {
    return "The drift over the ground must be between 0 and 6 m/s.";
  }
  if (!within(reading.drift_angle_deg, -360.0, 360.0)) {
    return "The angle between drift and wind must be between -360 and 360 degrees.";
  }
  const double share_frac = leeway(in, reading).along_frac;
  if (!(share_frac >= kLeastLeeway_frac)) {
    return "With this current the boat did not drift downwind at all: measure the current again.";
  }
  if (share_frac > kMostLeeway_frac) {
    return "With this current the boat drifted at more than 0.3 of the wind: measure the current "
           "again.";
  }
  return {};
}

std::string message_of(const CalibrateInput& in, const HeldReading& reading) {
  if (std::string text = weather_message(reading); !text.empty()) return text;
  if (!(in.motor.thrust_N > 0.0)) return "There is no motor to compare the thrust with.";
  if (reading.wave_height_m && !within(*reading.wave_height_m, 0.0, 4.0)) {
    return "The wave height must be between 0 and 4 m.";
  }
  if (!within(reading.thrust_frac, kLeastThrust_frac, kMostThrust_frac)) {
    return "The thrust must be between 0.03 and 0.97 of full: at full thrust the load may be any "
           "that is larger.";
  }
  const double computed_frac = thrust_share(in, reading, {});
  if (!(computed_frac > 0.0 && std::isfinite(computed_frac))) {
    return "Nothing is computed to push the boat in this weather.";
  }
  return {};
}

// --- the fit
// --------------------------------------------------------------------------------------

struct Observation {
  bool held = false;
  std::size_t index = 0;   // among its kind
  double measured = 0.0;   // logarithm of the side drag ratio, or of the share of full thrust
  double deviation = 0.0;  // of that, from the readings alone
};

double model(const CalibrateInput& in, const Observation& one, const Vector& x) {
  if (one.held) return std::log(thrust_share(in, in.holds[one.index], x));
  return std::log(side_drag_ratio(boat_in(in, in.drifts[one.index]))) + x[windage] - x[drag] +
         x[drift_law];
}

double square(double value) { return value * value; }

// Half the difference of what the reading says with one of its values off to either side.
template <class Reading, class Function>
double effect(const Reading& reading, double Reading::*value, double off, Function f) {
  Reading more = reading;
  Reading less = reading;
  more.*value += off;
  less.*value = std::max(less.*value - off, value == &Reading::current_angle_deg ? -1e9 : 0.0);
  const double difference = 0.5 * (f(more) - f(less));
  return std::isfinite(difference) ? difference : 1.0;
}

double wind_off_mps(double wind_mps) {
  return std::max(kLeastWindReading_mps, kWindReading_frac * wind_mps);
}

Observation observed(const CalibrateInput& in, std::size_t index, const DriftReading& reading) {
  const auto log_ratio = [&](const DriftReading& r) {
    const double share_frac =
        std::clamp(leeway(in, r).along_frac, 0.5 * kLeastLeeway_frac, 2.0 * kMostLeeway_frac);
    return std::log(drag_ratio_of_drift(share_frac));
  };
  const double drift_off_mps = std::numbers::sqrt2 * kPositionReading_m / (60.0 * reading.time_min);
  const double variance =
      square(effect(reading, &DriftReading::drift_mps, drift_off_mps, log_ratio)) +
      square(effect(reading, &DriftReading::wind_mps, wind_off_mps(reading.wind_mps), log_ratio)) +
      square(effect(reading, &DriftReading::current_mps, kCurrentReading_mps, log_ratio)) +
      square(
          effect(reading, &DriftReading::current_angle_deg, kCurrentAngleReading_deg, log_ratio));
  return {.held = false,
          .index = index,
          .measured = log_ratio(reading),
          .deviation = std::sqrt(variance)};
}

Observation observed(const CalibrateInput& in, std::size_t index, const HeldReading& reading) {
  const auto log_share = [&](const HeldReading& r) { return std::log(thrust_share(in, r, {})); };
  const double variance =
      square(kThrustReading_frac / reading.thrust_frac) +
      square(effect(reading, &HeldReading::wind_mps, wind_off_mps(reading.wind_mps), log_share)) +
      square(effect(reading, &HeldReading::current_mps, kCurrentReading_mps, log_share)) +
      square(effect(reading, &HeldReading::current_angle_deg, kCurrentAngleReading_deg, log_share));
  return {.held = true,
          .index = index,
          .measured = std::log(reading.thrust_frac),
          .deviation = std::sqrt(variance)};
}

Vector slopes(const CalibrateInput& in, const Observation& one, const Vector& x) {
  constexpr double kStep = 1e-4;
  Vector slope{};
  for (std::size_t i = 0; i < kUnknowns; ++i) {
    Vector more = x;
    Vector less = x;
    more[i] += kStep;
    less[i] -= kStep;
    slope[i] = (model(in, one, more) - model(in, one, less)) / (2.0 * kStep);
  }
  return slope;
}

// Inverse of a symmetric positive matrix, by Gauss and Jordan: no pivot can vanish.
Matrix inverse(Matrix a) {
  Matrix b{};
  for (std::size_t i = 0; i < kUnknowns; ++i) b[i][i] = 1.0;
  for (std::size_t i = 0; i < kUnknowns; ++i) {
    const double pivot = a[i][i];
    for (std::size_t k = 0; k < kUnknowns; ++k) {
      a[i][k] /= pivot;
      b[i][k] /= pivot;
    }
    for (std::size_t j = 0; j < kUnknowns; ++j) {
      if (j == i) continue;
      const double share = a[j][i];
      for (std::size_t k = 0; k < kUnknowns; ++k) {
        a[j][k] -= share * a[i][k];
        b[j][k] -= share * b[i][k];
      }
    }
  }
  return b;
}

double misfit(const CalibrateInput& in, const std::vector<Observation>& all, const Vector& x) {
  double sum = 0.0;
  for (std::size_t i = 0; i < kUnknowns; ++i) sum += square(x[i] / kBefore[i]);
  for (const Observation& one : all) {
    sum += square((one.measured - model(in, one, x)) / one.deviation);
  }
  return sum;
}

struct Fit {
  Vector x{};
  Matrix covariance{};
};

// Gauss and Newton; a step that does not help is halved.
Fit fit(const CalibrateInput& in, const std::vector<Observation>& all) {
  constexpr int kSteps = 25;
  Fit found;
  double best = misfit(in, all, found.x);
  for (int step = 0; step < kSteps; ++step) {
    Matrix normal{};
    Vector pull{};
    for (std::size_t i = 0; i < kUnknowns; ++i) {
      normal[i][i] = 1.0 / square(kBefore[i]);
      pull[i] = -found.x[i] / square(kBefore[i]);
    }
    for (const Observation& one : all) {
      const Vector slope = slopes(in, one, found.x);
      const double weight = 1.0 / square(one.deviation);
      const double rest = one.measured - model(in, one, found.x);
      for (std::size_t i = 0; i < kUnknowns; ++i) {
        pull[i] += weight * slope[i] * rest;
        for (std::size_t j = 0; j < kUnknowns; ++j) normal[i][j] += weight * slope[i] * slope[j];
      }
    }
    found.covariance = inverse(normal);
    Vector change{};
    for (std::size_t i = 0; i < kUnknowns; ++i) {
      for (std::size_t j = 0; j < kUnknowns; ++j) change[i] += found.covariance[i][j] * pull[j];
    }
    bool better = false;
    for (double share = 1.0; share > 1e-3 && !better; share *= 0.5) {
      Vector next = found.x;
      for (std::size_t i = 0; i < kUnknowns; ++i) next[i] += share * change[i];
      const double there = misfit(in, all, next);
      better = there < best - 1e-12;
      if (better) {
        found.x = next;
        best = there;
      }
    }
    if (!better) break;
  }
  return found;
}

// --- the result
// -----------------------------------------------------------------------------------

Band band_of(double logarithm, double deviation) {
  const auto factor = [](double value) {
    return std::clamp(std::exp(value), 1.0 / kLargest_factor, kLargest_factor);
  };
  return {.value_factor = factor(logarithm),
          .low_factor = factor(logarithm - 2.0 * deviation),
          .high_factor = factor(logarithm + 2.0 * deviation)};
}

ReadingFit shown(const CalibrateInput& in, const Observation& one, const Fit& found) {
  // What the design will be worked out with: the two factors, and nothing else.
  const Vector used{found.x[windage], found.x[drag], 0.0, 0.0, 0.0};
  // How far off it may still be: the reading, and what belongs to neither factor.
  const Vector slope = slopes(in, one, found.x);
  double variance = square(one.deviation);
  for (const Unknown other : {wave, drift_law, thrust}) {
    variance += square(slope[other] * kBefore[other]);
  }
  const auto as_frac = [&](double logarithm) {
    return one.held ? std::exp(logarithm) : drift_frac(std::exp(logarithm));
  };
  return {.label = (one.held ? "Held " : "Drift ") + std::to_string(one.index + 1),
          .measured_frac = as_frac(one.measured),
          .computed_frac = as_frac(model(in, one, {})),
          .calibrated_frac = as_frac(model(in, one, used)),
          .cross_frac = one.held ? 0.0 : leeway(in, in.drifts[one.index]).across_frac,
          .off_ratio = (one.measured - model(in, one, used)) / std::sqrt(variance)};
}

void show_factor(const Band& band, double logarithm, double deviation, const std::string& id,
                 const std::string& label, Trace& trace) {
  const auto bound = [&](const char* suffix, const char* words, std::string_view formula,
                         double value) {
    trace.steps.push_back(
        {.id = id + suffix,
         .label = label + words,
         .symbol = "k",
         .formula = formula,
         .terms = {{"a", logarithm, "", "logarithm that the fit found"},
                   {"s", deviation, "", "standard deviation of that logarithm"}},
         .value = value,
         .unit = "",
         .source = kProjectDecision,
         .assumptions = {"Found by weighted least squares over the logarithms of five factors, "
                         "each held to 1 by what is thought of it beforehand."}});
  };
  bound("", "", "min(4, max(0.25, exp(a + 0 * s)))", band.value_factor);
  bound(".low", ", at least", "min(4, max(0.25, exp(a - 2 * s)))", band.low_factor);
  bound(".high", ", at most", "min(4, max(0.25, exp(a + 2 * s)))", band.high_factor);
}

void check_readings(const CalibrateResult& r, Trace& trace) {
  double worst_ratio = 0.0;
  double cross_ratio = 0.0;
  bool drifted = false;
  for (const ReadingFit& one : r.readings) {
    worst_ratio = std::max(worst_ratio, std::abs(one.off_ratio));
    if (one.label.starts_with("Held")) continue;
    drifted = true;
    cross_ratio = std::max(cross_ratio, std::abs(one.cross_frac) / one.measured_frac);
  }
  trace.checks.push_back({.id = "calibrate.agreement",
                          .label = "Readings agree with each other",
                          .actual = worst_ratio,
                          .limit = 2.0,
                          .unit = "",
                          .comparison = Comparison::at_most,
                          .source = kProjectDecision,
                          .remedy = "Repeat the reading that is furthest off in steadier wind, and "
                                    "measure the current beside it."});
  if (!drifted) return;
  trace.checks.push_back({.id = "calibrate.across",
                          .label = "Drift is mostly downwind",
                          .actual = cross_ratio,
                          .limit = 0.75,
                          .unit = "",
                          .comparison = Comparison::at_most,
                          .source = kLeewayTable,
                          .remedy = "Measure the current again, with a drogue or at slack water: "
                                    "boats slide off across the wind by a third of their drift, "
                                    "seldom by more than a half."});
}

template <class Reading>
void gather(const CalibrateInput& in, const std::vector<Reading>& readings, const char* kind,
            std::vector<Observation>& all, Issues& issues) {
  for (std::size_t i = 0; i < readings.size(); ++i) {
    std::string message = message_of(in, readings[i]);
    if (message.empty()) {
      all.push_back(observed(in, i, readings[i]));
    } else {
      issues.push_back(
          {Severity::warning, kind + (" " + std::to_string(i + 1)), std::move(message)});
    }
  }
}

}  // namespace

double wind_at_ten_metres_mps(double wind_mps, double height_m) {
  if (!(wind_mps > 0.0) || !(height_m > 0.0)) return std::max(0.0, wind_mps);
  double at_ten_mps = wind_mps;
  for (int i = 0; i < 40; ++i) {
    // In hurricanes the profile would turn negative; it is not made for them.
    at_ten_mps = wind_mps / std::max(0.3, wind_profile_ratio(at_ten_mps, height_m));
  }
  return at_ten_mps;
}

CalibrateResult calibrate(const CalibrateInput& in) {
  CalibrateResult r;
  std::vector<Observation> all;
  gather(in, in.drifts, "drift", all, r.issues);
  gather(in, in.holds, "held", all, r.issues);
  if (all.empty()) return r;
  r.fitted = true;
  const Fit found = fit(in, all);
  const auto deviation = [&](Unknown i) { return std::sqrt(found.covariance[i][i]); };
  const double ratio_deviation =
      std::sqrt(found.covariance[windage][windage] + found.covariance[drag][drag] -
                2.0 * found.covariance[windage][drag]);
  const double ratio = found.x[windage] - found.x[drag];
  r.windage = band_of(found.x[windage], deviation(windage));
  r.drag = band_of(found.x[drag], deviation(drag));
  r.windage_over_drag = band_of(ratio, ratio_deviation);
  for (const Observation& one : all) r.readings.push_back(shown(in, one, found));
  show_factor(r.windage, found.x[windage], deviation(windage), "calibrate.windage",
              "Wind load over what is computed", r.trace);
  show_factor(r.drag, found.x[drag], deviation(drag), "calibrate.drag",
              "Current load over what is computed", r.trace);
  show_factor(r.windage_over_drag, ratio, ratio_deviation, "calibrate.ratio", "Ratio of the two",
              r.trace);
  check_readings(r, r.trace);
  r.trace.cautions.push_back(
      {"calibrate.adrift",
       "Make the trial with sea room to leeward, a watch kept and the engine ready; lift the "
       "motor before you drift.",
       kCommonPractice});
  return r;
}

}  // namespace thole
