#include "calc/locker/packing.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <optional>
#include <utility>

#include "base/order.h"
#include "calc/locker/floor.h"
#include "calc/locker/mode.h"
#include "data/sources.h"

namespace thole {
namespace {

constexpr double kPostInset_m = 0.035;  // kProjectDecision: post to the end of the case
constexpr double kBend_m = 0.040;       // kProjectDecision: at each end of a jumper
constexpr long kSimpleTries_count = 100'000;  // for the wiring of one packing

// A block in one of the places that the raster has.
struct Candidate {
  Foot foot{};
  int tier = 0;
  Spot low{};
  Spot size{};
  std::array<Spot, 2> posts{};
};

Candidate candidate_of(const PackingInput& in, const Mode& mode, const Foot& foot, int tier,
                       bool faces_low) {
  // Which way the case's own length runs: the long side of the floor it needs may be its depth.
  const double depth_floor_m = mode.depth_m + mode.ahead_m + in.strap_room_m + in.air_gap_m;
  const bool swapped = in.block_length_m + in.air_gap_m < depth_floor_m;
  const bool across = foot.turned != swapped;
  const double inset_m = std::min(kPostInset_m, 0.25 * in.block_length_m);
  const double before_m = 0.5 * in.strap_room_m + (faces_low ? mode.ahead_m : 0.0);
  const double post_depth_m = mode.posture == Posture::upright ? 0.5 * mode.depth_m
                              : faces_low                      ? 0.0
                                                               : mode.depth_m;
  Candidate c{.foot = foot, .tier = tier};
  const double z_m = tier * mode.pitch_m;
  // (u along the case's length, v across it) to the locker's axes.
  const auto spot = [&](double u_m, double v_m, double up_m) {
    return across ? Spot{in.air_gap_m + foot.x_m + v_m, in.air_gap_m + foot.y_m + u_m, z_m + up_m}
                  : Spot{in.air_gap_m + foot.x_m + u_m, in.air_gap_m + foot.y_m + v_m, z_m + up_m};
  };
  c.low = spot(0.0, before_m, 0.0);
  c.size = across ? Spot{mode.depth_m, in.block_length_m, mode.rise_m}
                  : Spot{in.block_length_m, mode.depth_m, mode.rise_m};
  const double post_up_m = mode.posture == Posture::upright ? mode.rise_m : 0.5 * mode.rise_m;
  c.posts[0] = spot(inset_m, before_m + post_depth_m, post_up_m);
  c.posts[1] = spot(in.block_length_m - inset_m, before_m + post_depth_m, post_up_m);
  return c;
}

double cable_m(const Spot& a, const Spot& b) {
  return std::abs(a.x_m - b.x_m) + std::abs(a.y_m - b.y_m) + std::abs(a.z_m - b.z_m) +
         2.0 * kBend_m;
}

// Floors under the length of a jumper, by how much the wiring turns between the two blocks: each is
// gone through from post to post, along x or y, one way or the other.
struct Floors {
  double jumper_m = 0.0;        // any
  double quarter_turn_m = 0.0;  // more for each quarter of a turn
  double span_m = 0.0;          // post to post on one block
};

Floors floors_of(const PackingInput& in, const Mode& mode) {
  const double inset_m = std::min(kPostInset_m, 0.25 * in.block_length_m);
  const bool upright = mode.posture == Posture::upright;
  // From a post to the edge of its block's floor, the way that its top, or its narrow side, looks.
  const double aside_m = (upright ? 0.5 * mode.depth_m : mode.ahead_m) + 0.5 * in.strap_room_m;
  const double tier_m =
      mode.tier_count > 1 ? mode.pitch_m : std::numeric_limits<double>::infinity();
  const double ahead_m = std::min({2.0 * inset_m, 2.0 * aside_m, tier_m - in.air_gap_m});
  const double quarter_m = std::min(inset_m + aside_m, tier_m - in.air_gap_m);
  const double back_m = std::min({2.0 * aside_m, in.block_length_m, tier_m - in.air_gap_m});
  return {.jumper_m = 2.0 * kBend_m + in.air_gap_m + ahead_m,
          .quarter_turn_m = std::max(0.0, std::min(quarter_m - ahead_m, 0.5 * (back_m - ahead_m))),
          .span_m = in.block_length_m - 2.0 * inset_m};
}

// Quarters of a turn between two of the four ways 0, 1, 2, 3.
int turn_count(int from, int to) {
  const int steps = std::abs(from - to);
  return std::min(steps, 4 - steps);
}

// Puts the blocks down in the order of wiring. A step is a candidate and which of its posts the
// wiring comes in by. Odd strings are wired from plus to minus, so that one string ends beside the
// like pole of the next.
class WiringSearch {
 public:
  struct Step {
    int candidate = 0;
    int entry = 0;
  };

  WiringSearch(const PackingInput& in, const Mode& mode, int lower_count)
      : series_count_(in.series_count),
        count_(in.series_count * in.parallel_count),
        links_count_(count_ - 1 + in.parallel_count - 1),
        ring_(in.parallel_count == 2),
        floors_(floors_of(in, mode)),
        room_count_{lower_count, count_ - lower_count} {}

  // Improves on what earlier runs found. False when the tries ran out.
  bool run(const std::vector<Candidate>& candidates, long tries_limit_count) {
    tries_limit_count_ = tries_limit_count;
    candidates_ = &candidates;
    steps_.clear();
    tries_count_ = 0;
    tier_count_ = {0, 0};
    step({});
    return tries_count_ < tries_limit_count_;
  }
  bool found() const { return !best_.empty(); }
  double best_m() const { return best_m_; }
  const std::vector<Candidate>& best() const { return best_; }
  const std::vector<int>& best_entries() const { return best_entries_; }

 private:
  // How far a wiring has come.
  struct Progress {
    double sum_m = 0.0;
    int joined_count = 0;
    int turned_count = 0;  // quarters of a turn so far
    int ways = 0;          // bit by bit, the ways that blocks have been gone through
    int first_way = 0;
    int way = 0;
  };

  struct Child {
    double added_m = 0.0;
    Progress progress{};
    Step step{};
  };

  const Candidate& at(const Step& step) const {
    return (*candidates_)[static_cast<std::size_t>(step.candidate)];
  }
  const Spot& entry(const Step& step) const {
    return at(step).posts[static_cast<std::size_t>(step.entry)];
  }
  const Spot& exit(const Step& step) const {
    return at(step).posts[static_cast<std::size_t>(1 - step.entry)];
  }
  int way_of(const Step& step) const {
    const Spot& in = entry(step);
    const Spot& out = exit(step);
    const bool along_x = std::abs(out.x_m - in.x_m) > std::abs(out.y_m - in.y_m);
    if (along_x) return out.x_m > in.x_m ? 0 : 2;
    return out.y_m > in.y_m ? 1 : 3;
  }

  // No completion can be shorter than this. Two strings are one ring: either it goes through some
  // block the opposite way to another, and then turns four quarters in all and back to its first
  // way; or its jumpers alone bring it back over what the blocks span.
  double floor_m(const Progress& now) const {
    const double plain_m = now.sum_m + (links_count_ - now.joined_count) * floors_.jumper_m;
    if (!ring_) return plain_m;
    const int turns_count =
        now.joined_count == links_count_
            ? 0
            : std::max(turn_count(now.way, now.first_way), 4 - now.turned_count);
    const double turning_m = plain_m + turns_count * floors_.quarter_turn_m;
    const bool opposite = (now.ways & 5) == 5 || (now.ways & 10) == 10;
    if (opposite) return turning_m;
    return std::min(turning_m,
                    std::max(plain_m, links_count_ * 2.0 * kBend_m + count_ * floors_.span_m));
  }
  bool hopeless(const Progress& now) const { return floor_m(now) >= best_m_ - kSlack_m; }

  // The same wiring read backwards, or from its other string, costs the same: it is looked at from
  // one of its ends alone.
  bool told_otherwise(const Step& next, int k) const {
    if (k == 0) return false;
    const bool an_end =
        k == count_ - 1 || (ring_ && (k == series_count_ || k == series_count_ - 1));
    return an_end && next.candidate < steps_.front().candidate;
  }

  void step(const Progress& now) {
    const int k = static_cast<int>(steps_.size());
    if (k == count_) {
      best_m_ = now.sum_m;
      best_.clear();
      best_entries_.clear();
      for (const Step& taken : steps_) {
        best_.push_back(at(taken));
        best_entries_.push_back(taken.entry);
      }
      return;
    }
    std::vector<Child> children;
    for (int i = 0; i < static_cast<int>(candidates_->size()); ++i) {
      for (int e = 0; e < 2; ++e) {
        if (++tries_count_ >= tries_limit_count_) return;
        const std::optional<Child> child = joined(now, {i, e}, k);
        if (child) children.push_back(*child);
      }
    }
    children = sorted(std::move(children), [](const Child& a, const Child& b) {
      return a.added_m < b.added_m - kSlack_m;
    });
    for (const Child& child : children) {
      if (tries_count_ >= tries_limit_count_) return;
      if (hopeless(child.progress)) continue;
      const auto tier = static_cast<std::size_t>(at(child.step).tier);
      steps_.push_back(child.step);
      ++tier_count_[tier];
      step(child.progress);
      --tier_count_[tier];
      steps_.pop_back();
    }
  }

  // What the k-th step adds; nothing when there is no room for it or no hope in it.
  std::optional<Child> joined(const Progress& now, const Step& next, int k) const {
    const Candidate& c = at(next);
    const auto tier = static_cast<std::size_t>(c.tier);
    if (tier_count_[tier] >= room_count_[tier] || told_otherwise(next, k)) return std::nullopt;
    Child child{.progress = now, .step = next};
    Progress& then = child.progress;
    then.way = way_of(next);
    then.ways |= 1 << then.way;
    if (k == 0) {
      then.first_way = then.way;
    } else {
      child.added_m = cable_m(exit(steps_.back()), entry(next));
      ++then.joined_count;
      then.turned_count += turn_count(now.way, then.way);
    }
    const int string = k / series_count_;
    if (string > 0 && k % series_count_ == series_count_ - 1) {
      const Step& first = steps_[static_cast<std::size_t>((string - 1) * series_count_)];
      child.added_m += cable_m(entry(first), exit(next));
      ++then.joined_count;
    }
    then.sum_m += child.added_m;
    if (hopeless(then)) return std::nullopt;
    for (const Step& taken : steps_) {
      if (at(taken).tier == c.tier && !apart(at(taken).foot, c.foot)) return std::nullopt;
    }
    return child;
  }

  int series_count_;
  int count_;
  int links_count_;
  bool ring_;  // two strings, joined at both ends
  Floors floors_;
  std::array<int, 2> room_count_;
  std::array<int, 2> tier_count_{};
  const std::vector<Candidate>* candidates_ = nullptr;
  std::vector<Step> steps_{};
  std::vector<Candidate> best_{};
  std::vector<int> best_entries_{};
  double best_m_ = std::numeric_limits<double>::infinity();
  long tries_count_ = 0;
  long tries_limit_count_ = 0;
};

// Every place on the raster, nearest to the low corner first.
std::vector<Candidate> all_candidates(const PackingInput& in, const Mode& mode, int count) {
  // More floor than a single row or column of them can use is of no use.
  FloorPlan plan = mode.plan;
  plan.length_m = std::min(plan.length_m, count * plan.long_m);
  plan.width_m = std::min(plan.width_m, count * plan.long_m);
  std::vector<Candidate> candidates;
  for (int tier = 0; tier < mode.tier_count; ++tier) {
    for (const bool turned : {false, true}) {
      const double dx_m = turned ? plan.short_m : plan.long_m;
      const double dy_m = turned ? plan.long_m : plan.short_m;
      for (const double x_m : raster(plan, 2 * count, plan.length_m - dx_m)) {
        for (const double y_m : raster(plan, 2 * count, plan.width_m - dy_m)) {
          const Foot foot{x_m, y_m, dx_m, dy_m, turned};
          candidates.push_back(candidate_of(in, mode, foot, tier, false));
          if (mode.posture == Posture::on_side) {
            candidates.push_back(candidate_of(in, mode, foot, tier, true));
          }
        }
      }
    }
  }
  candidates = sorted(std::move(candidates), [](const Candidate& a, const Candidate& b) {
                     if (a.tier != b.tier) return a.tier < b.tier;
                     return a.foot.x_m + a.foot.y_m < b.foot.x_m + b.foot.y_m - kSlack_m;
                   });
  return candidates;
}

Spot mirrored(const Spot& spot, double length_m) {
  return {length_m - spot.x_m, spot.y_m, spot.z_m};
}

Arrangement written(const PackingInput& in, const Mode& mode, const WiringSearch& search,
                    bool proved) {
  Arrangement arrangement{.posture = mode.posture,
                          .tier_count = mode.tier_count,
                          .height_m = mode.height_m,
                          .proved = proved};
  const int count = in.series_count * in.parallel_count;
  std::vector<std::array<Spot, 2>> ends;  // entry and exit of each
  for (int i = 0; i < count; ++i) {
    const Candidate& c = search.best()[static_cast<std::size_t>(i)];
    const auto e = static_cast<std::size_t>(search.best_entries()[static_cast<std::size_t>(i)]);
    Spot entry = c.posts[e];
    Spot exit = c.posts[1 - e];
    PlacedBlock block{.low = c.low, .size = c.size};
    if (in.push_to_high_end) {
      block.low.x_m = in.locker_length_m - c.low.x_m - c.size.x_m;
      entry = mirrored(entry, in.locker_length_m);
      exit = mirrored(exit, in.locker_length_m);
    }
    const bool from_minus = i / in.series_count % 2 == 0;
    block.minus = from_minus ? entry : exit;
    block.plus = from_minus ? exit : entry;
    arrangement.blocks.push_back(block);
    ends.push_back({entry, exit});
  }
  const auto join = [&](int from, int to, const Spot& a, const Spot& b, bool links) {
    arrangement.jumpers.push_back({from, to, a, b, links, cable_m(a, b)});
    arrangement.jumpers_m += arrangement.jumpers.back().length_m;
  };
  for (int i = 1; i < count; ++i) {
    const auto at = static_cast<std::size_t>(i);
    join(i - 1, i, ends[at - 1][1], ends[at][0], i % in.series_count == 0);
  }
  for (int string = 1; string < in.parallel_count; ++string) {
    const int first = (string - 1) * in.series_count;
    const int last = (string + 1) * in.series_count - 1;
    join(first, last, ends[static_cast<std::size_t>(first)][0],
         ends[static_cast<std::size_t>(last)][1], true);
  }
  return arrangement;
}

// So many in columns of equal length, all turned alike; empty when they do not go in.
std::vector<Foot> grid(const FloorPlan& plan, int count, int columns, bool turned) {
  const double dx_m = turned ? plan.short_m : plan.long_m;
  const double dy_m = turned ? plan.long_m : plan.short_m;
  const int rows = (count + columns - 1) / columns;
  std::vector<Foot> feet;
  if (columns * dx_m > plan.length_m + kSlack_m || rows * dy_m > plan.width_m + kSlack_m) {
    return feet;
  }
  for (int i = 0; i < count; ++i) {
    feet.push_back({i / rows * dx_m, i % rows * dy_m, dx_m, dy_m, turned});
  }
  return feet;
}

std::optional<Arrangement> arranged(const PackingInput& in, const Mode& mode, bool& exact) {
  const int count = in.series_count * in.parallel_count;
  if (mode.height_m > in.locker_height_m + kSlack_m) return std::nullopt;
  const int lower_count = held_count(mode.plan, count, exact);
  const int upper_count = count - lower_count;
  if (upper_count > (mode.tier_count - 1) * lower_count) return std::nullopt;
  if (mode.tier_count == 2 && upper_count == 0) return std::nullopt;  // one tier does
  WiringSearch search(in, mode, lower_count);
  // Good wirings of simple packings first: what they cost cuts the search over all places short.
  const auto try_feet = [&](const std::vector<Foot>& lower, const std::vector<Foot>& upper) {
    std::vector<Candidate> candidates;
    for (const Foot& foot : lower) candidates.push_back(candidate_of(in, mode, foot, 0, false));
    for (const Foot& foot : upper) candidates.push_back(candidate_of(in, mode, foot, 1, false));
    search.run(candidates, kSimpleTries_count);
  };
  try_feet(plan_holds(mode.plan, lower_count).feet, plan_holds(mode.plan, upper_count).feet);
  if (!search.found()) return std::nullopt;
  for (const bool turned : {false, true}) {
    for (int columns = 1; columns <= lower_count; ++columns) {
      const std::vector<Foot> lower = grid(mode.plan, lower_count, columns, turned);
      if (lower.empty()) continue;
      try_feet(lower, {lower.begin(), lower.begin() + upper_count});
    }
  }
  const bool proved = search.run(all_candidates(in, mode, count), kMostTries_count);
  return written(in, mode, search, proved);
}

// --- For the reader -----------------------------------------------------------------------------

void write_trace(const PackingInput& in, PackingResult& result) {
  Trace& trace = result.trace;
  trace.checks.push_back(fit_check(in, result));
  if (result.arrangements.empty()) return;
  trace.assumptions.push_back(
      {"", "Posts stand on the middle line of the case's top, 35 mm from its ends.",
       kProjectDecision});
  const Arrangement& best = result.arrangements.front();
  const Mode mode = mode_of(in, best.posture, best.tier_count);
  trace.steps.push_back({.id = "locker.height",
                         .label = "Height that the blocks take",
                         .symbol = "H",
                         .formula = "(n - 1) * (h + r + s) + h + r",
                         .terms = {{"n", static_cast<double>(best.tier_count), "", "tiers"},
                                   {"h", mode.rise_m, "m", "height of a block as it lies"},
                                   {"r", mode.over_m, "m", "room over it"},
                                   {"s", in.shelf_m, "m", "shelf under the second tier"}},
                         .value = best.height_m,
                         .unit = "m",
                         .source = kCommonPractice});
  double run_m = 0.0;
  for (const Jumper& jumper : best.jumpers) run_m += jumper.length_m - 2.0 * kBend_m;
  trace.steps.push_back(
      {.id = "locker.jumpers",
       .label = "Jumpers between the blocks, together",
       .symbol = "L_j",
       .formula = "d + 2 * j * b",
       .terms = {{"d", run_m, "m", "post to post, square along the cases"},
                 {"j", static_cast<double>(best.jumpers.size()), "", "jumpers"},
                 {"b", kBend_m, "m", "bend at either end"}},
       .value = best.jumpers_m,
       .unit = "m",
       .source = kProjectDecision,
       .assumptions = {best.proved
                           ? "No shorter jumpers exist for blocks that lie this way."
                           : "The search stopped at its bound; shorter jumpers may exist."}});
  trace.checks.push_back({.id = "locker.height",
                          .label = "Height for the blocks and their lugs",
                          .actual = best.height_m,
                          .limit = in.locker_height_m,
                          .unit = "m",
                          .source = kCommonPractice,
                          .remedy = "Fit lower blocks, or raise the lid."});
}

}  // namespace

PackingResult pack(const PackingInput& in) {
  PackingResult result{};
  static_cast<FitResult&>(result) = fit(in);
  if (result.fits) {
    for (const Mode& mode : modes_of(in)) {
      std::optional<Arrangement> arrangement = arranged(in, mode, result.exact);
      if (arrangement) result.arrangements.push_back(std::move(*arrangement));
    }
  }
  result.arrangements = sorted(std::move(result.arrangements), [](const Arrangement& a, const Arrangement& b) {
                     if (std::abs(a.jumpers_m - b.jumpers_m) > kSlack_m) {
                       return a.jumpers_m < b.jumpers_m;
                     }
                     return a.height_m < b.height_m - kSlack_m;
                   });
  result.capacity_count = capacity_count(in, result.exact);
  write_trace(in, result);
  return result;
}

}  // namespace thole
