#pragma once

// Who stows it, and what holds it then.

#include "base/trace.h"

namespace thole {

inline constexpr double kLiftLoad_kg = 23.0;   // NIOSH: of a lift under the best conditions
inline constexpr double kReachMost_m = 0.63;   // NIOSH: farther out nobody lifts without losing balance
inline constexpr double kMovingMass_frac = 0.7;  // of motor, shaft and mount; common practice
inline constexpr double kRebound_frac = 0.25;  // of the slam, upward; as for the plate
inline constexpr double kHolder_factor = 2.0;  // strength over load; project decision

// Weight that nearly all healthy people may lift, one lift in five minutes, no twist, good grip:
//   23 kg * min(25/H, 1) * (1 - 0.003 |V - 75|) * min(0.82 + 4.5/D, 1)     H, V, D in cm
// Source: revised NIOSH lifting equation, 1991. Made for people who stand on firm ground and lift with both
// hands: a deck at sea is worse. 0 beyond 63 cm of reach or 175 cm of height or travel.
double lift_limit_kg(double reach_m, double hand_height_m, double travel_m);

struct StowInput {
  double motor_mass_kg = 0.0;
  bool reach_measured = false;
  double reach_m = 0.0;        // from where one kneels to the motor
  double hand_height_m = 0.0;  // where it lies, above the deck
  double travel_m = 0.0;       // that it is drawn up
  double slam_N = 0.0;         // of the stowed motor, downward
  bool tied_known = false;
  bool tied = false;           // a strap besides the latch
};

struct StowResult {
  double moving_mass_kg = 0.0;
  double lift_N = 0.0;
  double lift_limit_kg = 0.0;
  double rebound_N = 0.0;
  double holder_N = 0.0;  // that latch or strap must each be rated for
  int holders_needed_count = 1;
  Trace trace{};
};

StowResult stow(const StowInput& in);

}  // namespace thole
