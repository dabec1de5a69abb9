#pragma once

// Blocks of one size on a floor, each turned either way: whether so many go in, searched in full.

#include <optional>
#include <vector>

namespace thole {

inline constexpr double kSlack_m = 1e-7;  // a fit to the last bit is a fit
inline constexpr long kMostTries_count = 1'000'000;  // a tenth of a second

// Floor that a block needs, gaps included, and the floor there is.
struct FloorPlan {
  double long_m = 0.0;
  double short_m = 0.0;
  double length_m = 0.0;
  double width_m = 0.0;
};

struct Foot {
  double x_m = 0.0;
  double y_m = 0.0;
  double dx_m = 0.0;
  double dy_m = 0.0;
  bool turned = false;  // its long side lies across
};

bool apart(const Foot& a, const Foot& b);

// Sums of so many long and short sides as fit, rising: where the edge of a block can stand.
std::vector<double> raster(const FloorPlan& plan, int terms_count, double most_m);

struct PlanAnswer {
  bool holds = false;
  bool exact = true;  // false: the tries ran out before an answer
  std::vector<Foot> feet{};
};

// What goes in at all goes in pushed to the low corner, where each block touches one before it or a
// wall; those places are searched in full. Up to eight blocks take a microsecond or a few, now and
// then a hundred.
PlanAnswer plan_holds(const FloorPlan& plan, int count, long most_tries_count = kMostTries_count);

// How many of `count` the plan holds; `exact` turns false where the tries ran out.
int held_count(const FloorPlan& plan, int count, bool& exact, long most_tries_count = kMostTries_count);

// The least length that holds them at this width; none when no length does.
std::optional<double> least_length_m(FloorPlan plan, int count, bool& exact,
                                     long most_tries_count = kMostTries_count);

}  // namespace thole
