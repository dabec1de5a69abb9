#pragma once

// What the feeder at full thrust does to a heading sensor or compass, as routed.

#include <optional>
#include <vector>

#include "base/issue.h"
#include "base/trace.h"
#include "calc/compass/wire_field.h"
#include "calc/heading.h"

namespace thole {

struct CompassInput {
  PairInput pair{};  // with the current at full thrust
  // Where plus and minus go different ways, each from bank to motor; both or neither. Then only the
  // current of the pair counts, and its spacing and lay as what they are changed for.
  std::vector<Place> out{};
  std::vector<Place> back{};
  Place sensor{};
  double horizontal_T = 0.0;  // level part of the earth's field; > 0
  double tilt_deg = 0.0;      // the boat may pitch and roll by so much, any way; 0 .. 90
  double limit_deg = 2.0;     // heading error allowed; > 0, < 90
  double touching_m = 0.012;  // spacing of conductors that touch: over their insulation
};

// The circuit as wires, made once for many places. A twist's start is left to chance, so it comes
// with a second one, turned by a quarter.
struct Circuit {
  std::vector<Wire> wires{};
  std::vector<Wire> turned{};
};
Circuit circuit_of(const CompassInput& in);

// At a place, for a twist that starts at any angle p: straight cos(p) + turned sin(p).
struct Disturbance {
  FieldVector straight{};
  FieldVector turned{};
};
Disturbance disturbance(const Circuit& circuit, Place at);

// The largest level part for any start of the twist and any tilt up to `tilt_deg`. A sensor that
// corrects for tilt, or hangs level, feels no upright field; a boat that leans brings it down.
double level_field_T(const Disturbance& disturbance, double tilt_deg);

// That field at the input's own sensor. 0 where the circuit is impossible.
double level_field_at_sensor_T(const CompassInput& in);

// Shown minus magnetic heading for one field fixed to the boat, level; -180 .. 180. Headings
// clockwise from magnetic north. Its largest is worst_error_deg of calc/heading.h. Precondition:
// horizontal_T > 0.
double heading_shift_deg(FieldVector field, double horizontal_T, double heading_deg);

// Share by which a twist lengthens each conductor: sqrt(1 + (pi d / p)^2) - 1.
double twist_extra_frac(double spacing_m, double pitch_m);

struct HeadingShift {
  double heading_deg = 0.0;
  double shift_deg = 0.0;
};

struct CompassResult {
  FieldVector field{};             // at the sensor, boat level; a twist's at its given phase
  double level_T = 0.0;            // level_field_T there
  double error_deg = 0.0;          // worst_error_deg of that
  double worst_heading_deg = 0.0;  // of `field`, where the shift is largest and to the right
  std::vector<HeadingShift> by_heading{};  // of `field`, from 0 to 345 by 15 degrees
  // Largest spacing, from touching up to as given, at which it and all closer ones keep the limit;
  // empty: not even when they touch. For split wires: of a pair all along `out`, up to 0.3 m.
  std::optional<double> spacing_m{};
  // Longest pitch of touching wires, from 10 times their spacing to 0.6 m, at which it and all
  // shorter ones keep the limit; empty: none does.
  std::optional<double> pitch_m{};
  Issues issues{};  // of this input; then nothing else is filled in
  Trace trace{};
};

// Steps and one check, `compass.error`. Left out: steel and magnets near the sensor, and what its
// calibration takes out; the feeder's field comes and goes with thrust, so no calibration takes
// that.
CompassResult compass(const CompassInput& in);

}  // namespace thole
