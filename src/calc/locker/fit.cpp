#include "calc/locker/fit.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>
#include <utility>

#include "base/number.h"
#include "calc/locker/mode.h"
#include "data/sources.h"

namespace thole {
namespace {

constexpr double kLargest_m = 20.0;  // kProjectDecision: beyond it, not a locker of these boats

constexpr int kMostCounted_count = 1000;  // either way; beyond it, not a bank

int block_count(const PackingInput& in) { return in.series_count * in.parallel_count; }

struct Missing {
  std::vector<Shortfall> all_of{};
  std::vector<Shortfall> one_of{};
  double sum_m = 0.0;
};

void miss(std::vector<Shortfall>& list, Direction direction, double needed_m, double have_m) {
  if (needed_m > have_m + kSlack_m) list.push_back({direction, needed_m - have_m});
}

// Carried upright; through a lid it is lowered, through a door it is slid in.
std::vector<Shortfall> opening_misses(const PackingInput& in) {
  std::vector<Shortfall> best;
  double best_m = std::numeric_limits<double>::infinity();
  for (const bool turned : {false, true}) {
    const double along_m = turned ? in.block_width_m : in.block_length_m;
    const double other_m = in.by_door ? in.block_height_m
                           : turned                    ? in.block_length_m
                                                       : in.block_width_m;
    std::vector<Shortfall> list;
    miss(list, Direction::opening_length, along_m + in.air_gap_m, in.opening_length_m);
    miss(list, Direction::opening_width, other_m + in.air_gap_m, in.opening_width_m);
    double sum_m = 0.0;
    for (const Shortfall& shortfall : list) sum_m += shortfall.missing_m;
    if (sum_m < best_m) {
      best = std::move(list);
      best_m = sum_m;
    }
  }
  return best;
}

Missing missing_in(const PackingInput& in, const Mode& mode, bool& exact,
                   long most_tries_count) {
  const int count = block_count(in);
  const int lower_count = (count + mode.tier_count - 1) / mode.tier_count;
  Missing missing{};
  miss(missing.all_of, Direction::height, mode.height_m, in.locker_height_m);
  const FloorPlan& plan = mode.plan;
  const PlanAnswer answer = plan_holds(plan, lower_count, most_tries_count);
  exact = exact && answer.exact;
  if (!answer.holds) {
    const FloorPlan sideways{plan.long_m, plan.short_m, plan.width_m, plan.length_m};
    const auto least_m = [&](const FloorPlan& at) {
      return least_length_m(at, lower_count, exact, most_tries_count);
    };
    const std::optional<double> length_m = least_m(plan);
    const std::optional<double> width_m = least_m(sideways);
    if (length_m) miss(missing.one_of, Direction::length, *length_m, plan.length_m);
    if (width_m) miss(missing.one_of, Direction::width, *width_m, plan.width_m);
    if (!length_m && !width_m) {  // not even one goes in either way: make the width enough for one
      FloorPlan wider = plan;
      wider.width_m = plan.short_m;
      miss(missing.all_of, Direction::width, plan.short_m, plan.width_m);
      miss(missing.all_of, Direction::length,
           least_m(wider).value_or(lower_count * plan.long_m), plan.length_m);
    }
  }
  for (const Shortfall& shortfall : missing.all_of) missing.sum_m += shortfall.missing_m;
  double either_m = missing.one_of.empty() ? 0.0 : std::numeric_limits<double>::infinity();
  for (const Shortfall& shortfall : missing.one_of) {
    either_m = std::min(either_m, shortfall.missing_m);
  }
  missing.sum_m += either_m;
  return missing;
}

std::string sentence(const FitResult& result) {
  std::string text;
  for (const Shortfall& shortfall : result.all_of) {
    text += (text.empty() ? "" : " and ") + said(shortfall);
  }
  std::string choice;
  for (const Shortfall& shortfall : result.one_of) {
    choice += (choice.empty() ? "" : " or ") + said(shortfall);
  }
  if (!choice.empty()) text += (text.empty() ? "" : ", and ") + choice;
  if (text.empty()) return "The search reached its bound without an answer: try fewer blocks.";
  return "The bank does not go in: the locker is " + text + ".";
}

bool positive(double value_m) { return value_m > 0.0 && value_m <= kLargest_m; }
bool not_negative(double value_m) { return value_m >= 0.0 && value_m <= kLargest_m; }

std::string impossible(const PackingInput& in) {
  if (in.series_count < 1 || in.parallel_count < 1) return "There is no bank to put anywhere.";
  if (in.series_count > kMostCounted_count || in.parallel_count > kMostCounted_count) {
    return "No bank has so many blocks: look at those in series and the strings.";
  }
  if (!positive(in.block_length_m) || !positive(in.block_width_m) || !positive(in.block_height_m)) {
    return "The block needs a length, a width and a height.";
  }
  if (!positive(in.locker_length_m) || !positive(in.locker_width_m) ||
      !positive(in.locker_height_m)) {
    return "The locker needs a length, a width and a height.";
  }
  if (!positive(in.opening_length_m) || !positive(in.opening_width_m)) {
    return "The locker's opening needs a length and a width.";
  }
  if (!not_negative(in.air_gap_m) || !not_negative(in.strap_room_m) ||
      !not_negative(in.terminal_room_m) || !not_negative(in.shelf_m)) {
    return "Gaps and rooms are zero or more.";
  }
  return "";
}

bool high_enough(const PackingInput& in, const Mode& mode) {
  return mode.height_m <= in.locker_height_m + kSlack_m;
}

// What grows least, of all ways to lie. Where the tries run out it may be named larger than it is:
// enough all the same, and that the bank does not go in is proved before.
void name_what_is_missing(const PackingInput& in, const std::vector<Mode>& modes,
                          const std::vector<Shortfall>& opening, long most_tries_count,
                          FitResult& result) {
  Missing least{};
  least.sum_m = std::numeric_limits<double>::infinity();
  bool least_proved = true;
  for (const Mode& mode : modes) {
    Missing missing = missing_in(in, mode, least_proved, most_tries_count);
    if (missing.sum_m < least.sum_m) least = std::move(missing);
  }
  result.all_of = std::move(least.all_of);
  result.all_of.insert(result.all_of.end(), opening.begin(), opening.end());
  result.one_of = std::move(least.one_of);
  result.problem = sentence(result);
}

// More blocks than are searched for: the floor's area may rule them out, nothing rules them in.
FitResult fit_of_many(const PackingInput& in, const std::vector<Mode>& modes, bool can_enter) {
  const int count = block_count(in);
  FitResult result{};
  for (const Mode& mode : modes) {
    if (!can_enter || !high_enough(in, mode)) continue;
    const FloorPlan& plan = mode.plan;
    const double floor_m2 = std::max(0.0, plan.length_m) * std::max(0.0, plan.width_m);
    const double most_count = mode.tier_count * floor_m2 / (plan.long_m * plan.short_m) + kSlack_m;
    result.held_count =
        std::max(result.held_count, static_cast<int>(std::min<double>(count, most_count)));
  }
  if (result.held_count < count) {
    result.problem = "The bank does not go in: the locker has room for " +
                     std::to_string(result.held_count) + " of its " + std::to_string(count) +
                     " blocks at the very most.";
    return result;
  }
  result.held_count = 0;
  result.exact = false;
  result.problem = "One locker is searched for up to " + std::to_string(kMostPacked_count) +
                   " blocks: share the bank between lockers, or use fewer and larger blocks.";
  return result;
}

}  // namespace

FitResult fit(const PackingInput& in, long most_tries_count) {
  FitResult result{.problem = impossible(in)};
  if (!result.problem.empty()) {
    result.exact = false;
    return result;
  }
  const int count = block_count(in);
  const std::vector<Shortfall> opening = opening_misses(in);
  const std::vector<Mode> modes = modes_of(in);
  if (count > kMostPacked_count) return fit_of_many(in, modes, opening.empty());
  for (const Mode& mode : modes) {
    if (!opening.empty() || !high_enough(in, mode)) continue;
    const int held = mode.tier_count * held_count(mode.plan, count, result.exact, most_tries_count);
    result.held_count = std::max(result.held_count, std::min(count, held));
  }
  result.fits = result.held_count == count;
  if (!result.fits) name_what_is_missing(in, modes, opening, most_tries_count, result);
  return result;
}

int capacity_count(const PackingInput& in, bool& exact, long most_tries_count) {
  PackingInput one = in;
  one.series_count = one.parallel_count = 1;
  if (!impossible(one).empty() || !opening_misses(one).empty()) return 0;
  int most_count = 0;
  for (const Mode& mode : modes_of(one)) {
    if (!high_enough(one, mode)) continue;
    const int held = held_count(mode.plan, kMostPacked_count, exact, most_tries_count);
    most_count = std::max(most_count, std::min(kMostPacked_count, mode.tier_count * held));
  }
  return most_count;
}

Check fit_check(const PackingInput& in, const FitResult& result) {
  const bool known = result.fits || result.exact;
  std::string remedy = result.fits ? "Keep to blocks of this size." : result.problem;
  if (known && !result.fits) remedy += " Make it larger, or take smaller or fewer blocks.";
  return {.id = "locker.fit",
          .label = "Blocks that the locker does not hold",
          .actual = known ? static_cast<double>(block_count(in) - result.held_count)
                          : std::numeric_limits<double>::quiet_NaN(),
          .limit = 0.0,
          .source = kDefinition,
          .remedy = std::move(remedy)};
}

std::string said(const Shortfall& shortfall) {
  const std::string missing = fixed(std::ceil(1000.0 * shortfall.missing_m - 1e-3), 0) + " mm too ";
  switch (shortfall.direction) {
    case Direction::length:
      return missing + "short";
    case Direction::width:
      return missing + "narrow";
    case Direction::height:
      return missing + "low";
    case Direction::opening_length:
      return missing + "short in its opening";
    case Direction::opening_width:
      return missing + "narrow in its opening";
  }
  return missing + "small";
}

}  // namespace thole
