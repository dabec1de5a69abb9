#pragma once

// Whether the bank goes into the locker at all, and what is missing when it does not.

#include <string>
#include <vector>

#include "base/trace.h"
#include "calc/locker/floor.h"
#include "data/parts.h"

namespace thole {

inline constexpr int kMostPacked_count = 8;  // blocks that the search takes

enum class Posture { upright, on_side };  // on its long side, posts to the side

struct PackingInput {
  Chemistry chemistry = Chemistry::agm;
  double locker_length_m = 0.0;  // inner, clear
  double locker_width_m = 0.0;
  double locker_height_m = 0.0;
  bool by_door = false;  // in a wall; else by a lid above
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

enum class Direction { length, width, height, opening_length, opening_width };

struct Shortfall {
  Direction direction = Direction::length;
  double missing_m = 0.0;
};

struct FitResult {
  bool fits = false;
  bool exact = true;   // false: the bound of the search was reached, and nothing is proved
  int held_count = 0;  // of the bank's blocks, in the arrangement that holds most
  // When none fits, of the posture that comes closest: what must grow, all of it; and of the plan,
  // either one of these.
  std::vector<Shortfall> all_of{};
  std::vector<Shortfall> one_of{};
  std::string problem{};  // a sentence; empty when the bank fits
};

// Every block alike, each turned either way in plan. A bank that fits at all fits pushed together to
// the low corner; those packings are searched in full, so `fits` and the shortfalls are exact unless
// `exact` says otherwise. More than kMostPacked_count blocks are only held against the floor's area.
// Sources: gaps and rooms common practice; the search is geometry. Left out: tapered lockers, one
// block upright and its neighbour lying, turning a block over inside the locker.
FitResult fit(const PackingInput& in, long most_tries_count = kMostTries_count);

// Blocks of this size that the locker takes, at most kMostPacked_count, whatever the bank has.
int capacity_count(const PackingInput& in, bool& exact, long most_tries_count = kMostTries_count);

// "locker.fit": not evaluated where nothing is proved.
Check fit_check(const PackingInput& in, const FitResult& result);

// "32 mm too short", said of what is missing.
std::string said(const Shortfall& shortfall);

}  // namespace thole
