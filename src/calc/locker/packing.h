#pragma once

// Whether the bank goes into the locker, and how it lies there with the shortest jumpers.

#include <vector>

#include "base/trace.h"
#include "calc/locker/fit.h"

namespace thole {

// Metres from the locker's low corner: x along its length, y across, z up.
struct Spot {
  double x_m = 0.0;
  double y_m = 0.0;
  double z_m = 0.0;
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

struct PackingResult : FitResult {
  std::vector<Arrangement> arrangements{};  // one to a posture and number of tiers; best first
  int capacity_count = 0;                   // blocks that would fit, at most kMostPacked_count
  Trace trace{};
};

// As fit(); and of each posture and number of tiers that holds the bank, the shortest jumpers. Best is
// the least length of jumpers, then the least height.
//
// The jumpers are searched by branch and bound over all places whose corner is a sum of long and
// short sides; up to four blocks and most of six are proved. The search stops at a million tries, a
// tenth of a second; then `proved` is false. The same input gives the same answer everywhere.
//
// Jumpers run square along the cases, from posts on the middle line of the top, and have a bend at
// either end: 40 mm each. Strings are joined plus to plus and minus to minus.
// Sources: as fit(); bends and the place of the posts are a project decision.
PackingResult pack(const PackingInput& in);

}  // namespace thole
