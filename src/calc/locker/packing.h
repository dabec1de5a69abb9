#pragma once

// Whether the bank goes into the locker, and how it lies there with the shortest jumpers.

#include <string>
#include <vector>

#include "base/trace.h"
#include "data/parts.h"
#include "job/job.h"

namespace thole {

inline constexpr int kMostPacked_count = 8;  // blocks that the search takes

// Metres from the locker's low corner: x along its length, y across, z up.
struct Spot {
  double x_m = 0.0;
  double y_m = 0.0;
  double z_m = 0.0;
};

enum class Posture { upright, on_side };  // on its long side, posts to the side

struct PackingInput {
  Chemistry chemistry = Chemistry::agm;
  double locker_length_m = 0.0;  // inner, clear
  double locker_width_m = 0.0;
  double locker_height_m = 0.0;
  LockerAccess closure = LockerAccess::lid;
  double opening_length_m = 0.0;  // along the locker, or the door's width
  double opening_width_m = 0.0;   // across it, or the door's height
  double block_length_m = 0.0;    // of the case, over its posts
  double block_width_m = 0.0;
  double block_height_m = 0.0;
  int series_count = 1;
  int parallel_count = 1;
  double air_gap_m = 0.012;        // to each neighbour and wall; kCommonPractice
  double strap_room_m = 0.012;     // beside the block, both sides together
  double terminal_room_m = 0.040;  // over the posts, two lugs stacked; kCommonPractice
  double shelf_m = 0.020;          // thickness of the shelf that carries a second tier
  bool side_allowed = false;       // the maker lets the block lie; never asked of flooded ones
  bool tiers_allowed = false;      // one above the other; never asked of flooded ones
  bool push_to_high_end = false;   // packed against the far end of the length, not the near one
};

struct PlacedBlock {
  Spot low{};   // corner of the case
  Spot size{};  // of the case as it lies
  Spot minus{};
  Spot plus{};
};

struct Jumper {
  int from = 0;  // block, by its place in Arrangement::blocks
  int to = 0;
  Spot a{};
  Spot b{};
  bool links_strings = false;  // plus to plus or minus to minus, not plus to minus
  double length_m = 0.0;       // to cut, ends included
};

struct Arrangement {
  Posture posture = Posture::upright;
  int tier_count = 1;
  std::vector<PlacedBlock> blocks{};  // in the order of wiring, string by string
  std::vector<Jumper> jumpers{};
  double jumpers_m = 0.0;  // all of them
  double height_m = 0.0;   // with the room over the posts
  bool proved = false;     // no shorter jumpers exist in this posture and number of tiers
};

enum class Direction { length, width, height, opening_length, opening_width };

struct Shortfall {
  Direction direction = Direction::length;
  double missing_m = 0.0;
};

struct PackingResult {
  bool fits = false;
  std::vector<Arrangement> arrangements{};  // one to a posture and number of tiers; best first
  int capacity_count = 0;                   // blocks that would fit, at most kMostPacked_count
  bool exact = true;                        // false: the bound of the search was reached
  // When none fits, of the posture that comes closest: what must grow, all of it; and of the plan,
  // either one of these.
  std::vector<Shortfall> all_of{};
  std::vector<Shortfall> one_of{};
  std::string problem{};  // a sentence; empty when the bank fits
  Trace trace{};
};

// Every block alike, each turned either way in plan. Best is the least length of jumpers, then the
// least height.
//
// A bank that fits at all fits pushed together to the low corner, where each block touches one
// before it or a wall; those packings are searched in full, so `fits` and the shortfalls are exact.
// The jumpers are searched by branch and bound over all places whose corner is a sum of long and
// short sides; up to four blocks and most of six are proved. Both searches stop at a million tries,
// a tenth of a second; then `exact` or `proved` is false. The same input gives the same answer
// everywhere.
//
// Jumpers run square along the cases, from posts on the middle line of the top, and have a bend at
// either end: 40 mm each. Strings are joined plus to plus and minus to minus.
// Sources: gaps and rooms common practice; the search is geometry. Left out: tapered lockers, one
// block upright and its neighbour lying, turning a block over inside the locker.
PackingResult pack(const PackingInput& in);

// "32 mm too short", said of what is missing.
std::string said(const Shortfall& shortfall);

}  // namespace thole
