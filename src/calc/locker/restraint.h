#pragma once

// What must hold a block down, by each rule, and the straps for it.

#include <string>
#include <vector>

#include "base/trace.h"

namespace thole {

struct RestraintInput {
  double block_mass_kg = 0.0;   // > 0
  double block_height_m = 0.0;  // of the case as it lies; > 0
  int block_count = 1;
  bool planes = true;          // slams against the sea at speed
  bool at_bow = false;         // in a bow locker, not near the middle
  double slam_known_g = 0.0;   // upward at the locker, computed or measured; 0: not known
  double strap_rated_N = 0.0;  // of one strap; 0: not known
  int strap_count = 0;         // over one block; 0: as many as needed
};

// The same block by one rule. A rule without a fore-and-aft figure of its own takes the same each
// way.
struct RestraintRule {
  std::string id{};
  std::string label{};
  double vertical_N = 0.0;  // up; down too
  double fore_aft_N = 0.0;
  double side_N = 0.0;
  double moves_m = 0.0;  // it may give by so much under the load; 0: not said
  SourceRef source{};
};

struct RestraintResult {
  std::vector<RestraintRule> rules{};
  double vertical_N = 0.0;  // the largest
  double fore_aft_N = 0.0;
  double side_N = 0.0;
  std::string governs{};      // id of the rule that gives the largest upward load
  int strap_count = 2;        // over each block
  double strap_need_N = 0.0;  // rating of each strap
  double wall_m = 0.0;        // height of the tray's wall or cleat
  Trace trace{};
};

//   US: min(400 N, 2 m g);  ISO: 2 m g;  slam: n m g with n = 4 up, 3 along, 2 across (planing),
//   6, 3, 3 (its bow locker), n at least what is known of this boat
//   straps: F <= 0.5 R n, at least two
//
// Sources: 33 CFR 183.420(a); ISO 10133:2012 clause 5; slam factors, straps and walls common
// practice. Left out: the strap's angle, loads on a trailer, which may be larger.
// Nothing is said of a block without a positive mass and height: `rules` is empty.
RestraintResult restrain(const RestraintInput& in);

}  // namespace thole
