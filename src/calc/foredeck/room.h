#pragma once

// Whether the motor finds room on the foredeck: lying stowed, and on its way up from there.
//
// Distances in space between the bars of envelope.h and boxes on the deck, rails and, in plan, the deck's
// edge: exact for those shapes, to 0.1 mm. The rail runs along both sides from 0.3 m aft of the stem on
// and is open ahead; what closes it is given as an item ("pulpit"). The deck's edge is a parabola through
// the stem and the width at the mount: our own judgement, to be replaced by a look at the boat.

#include <string>
#include <vector>

#include "base/trace.h"
#include "calc/foredeck/envelope.h"
#include "data/deck_items.h"

namespace thole {

inline constexpr double kRoomLeast_m = 0.030;  // between the motor and what it must not touch; project decision
inline constexpr int kRaiseStep_deg = 5;

struct RoomInput {
  MotorSizes motor{};
  Stance stance{};
  double deck_length_m = 0.0;  // clear, aft of the stem; 0: not measured
  double deck_width_m = 0.0;   // at the mount; > 0
  bool mount_measured = false;
  std::vector<DeckItem> items{};
  double rail_height_m = 0.0;  // 0: none
  double rail_inset_m = 0.0;   // inboard of the deck's edge
};

// The nearest that one obstacle comes to the motor.
struct Clearance {
  std::string label{};         // "cleat 2", "rail, port"
  int item = -1;               // of the input; -1: a rail
  double distance_m = 0.0;     // negative: they would be in one place
  std::string_view part{};     // of the motor
  double raised_deg = 0.0;     // at which it comes so near
  Place3 on_motor{};           // the nearest point of the bar's line
  Place3 on_obstacle{};
};

struct RoomResult {
  std::string problem{};  // a sentence where it cannot be worked out
  std::vector<Clearance> stowed{};    // nearest first
  std::vector<Clearance> swinging{};  // nearest first, over all of the way from lying to upright
  std::vector<Clearance> opening{};   // of what must open above: nearest first
  double stowed_end_m = 0.0;          // its aftmost point, aft of the stem
  double stowed_m = 0.0;              // length
  double outside_m = 0.0;             // pivot outside the deck's edge; negative: inside
  Trace trace{};
};

RoomResult foredeck_room(const RoomInput& in);

// Half of the deck's width so far aft of the stem; 0 ahead of it.
double half_deck_m(const RoomInput& in, double aft_m);

// The rail of one side, from ahead aft; empty without one. `side`: 1 to starboard, -1 to port.
std::vector<Place3> rail_line(const RoomInput& in, double side);

}  // namespace thole
