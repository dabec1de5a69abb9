#pragma once

// The magnetic field of a feeder as it is routed: straight pieces of wire, out and back, beside
// each other at any spacing or twisted.

#include <span>
#include <vector>

#include "data/control_kinds.h"

namespace thole {

// In the boat: x forward from the transom, y to port, z up.
struct Place {
  double x_m = 0.0;
  double y_m = 0.0;
  double z_m = 0.0;
};

struct FieldVector {
  double x_T = 0.0;
  double y_T = 0.0;
  double z_T = 0.0;
};

// A current through straight pieces, from the first place to the last.
struct Wire {
  std::vector<Place> places{};
  double current_A = 0.0;
};

//   B = mu0 I / (4 pi) (L x r1) 2 (r1 + r2) / (r1 r2 ((r1 + r2)^2 - L^2)), for each piece of the
//   length L whose ends lie r1 and r2 away
//
// Source: kBiotSavartSegment, mu0 = 4 pi 1e-7 T m/A; this form of it loses no figures off the ends.
// Only a closed run of wire has the field of a real circuit; open ends are the caller's business.
// Inside a conductor of the given radius the field falls linearly to its axis, so that no place
// gives infinity.
FieldVector wire_field(std::span<const Wire> wires, Place at, double conductor_radius_m = 0.005);

struct PairInput {
  std::vector<Place> route{};  // middle of the pair, bank to motor; two places or more
  double spacing_m = 0.012;    // between the conductors' middles; > 0
  FeederLay lay = FeederLay::side_by_side;
  double pitch_m = 0.0;    // of a twist, along the route for a full turn; > 0
  double phase_rad = 0.0;  // of a twist, at the bank
  double current_A = 0.0;
};

// The pair as one closed run: out to the motor, across, back to the bank, across. A twist's wires
// are drawn with kPieces_count pieces to a turn. Empty when the input is none of the above.
Wire pair_wire(const PairInput& in);
inline constexpr int kPieces_count = 12;

// The same for a plus and a minus that go different ways; each from bank to motor.
Wire loop_wire(std::span<const Place> out, std::span<const Place> back, double current_A);

}  // namespace thole
