#include "calc/locker/floor.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <utility>

#include "base/order.h"

namespace thole {
namespace {

// Looks for a place for each of `count` blocks, in the order of x, then y.
class PlanSearch {
 public:
  PlanSearch(const FloorPlan& plan, int count, long most_tries_count)
      : plan_(plan),
        count_(count),
        most_tries_count_(most_tries_count),
        rows_(raster(plan, count - 1, plan.width_m - plan.short_m)) {}

  bool run() { return place(0.0); }
  bool stopped() const { return tries_count_ >= most_tries_count_; }
  const std::vector<Foot>& feet() const { return feet_; }

 private:
  // Floor at and beyond x that nothing stands on yet.
  double free_m2(double x_m) const {
    double used_m2 = 0.0;
    for (const Foot& foot : feet_) {
      used_m2 += std::clamp(foot.x_m + foot.dx_m - x_m, 0.0, foot.dx_m) * foot.dy_m;
    }
    return (plan_.length_m - x_m) * plan_.width_m - used_m2;
  }

  bool touches_left(const Foot& foot) const {
    if (foot.x_m <= kSlack_m) return true;
    return std::any_of(feet_.begin(), feet_.end(), [&](const Foot& other) {
      return std::abs(other.x_m + other.dx_m - foot.x_m) <= kSlack_m &&
             other.y_m < foot.y_m + foot.dy_m - kSlack_m &&
             foot.y_m < other.y_m + other.dy_m - kSlack_m;
    });
  }

  bool place(double from_x_m) {
    const int left_count = count_ - static_cast<int>(feet_.size());
    if (left_count == 0) return true;
    std::vector<double> columns{0.0};
    for (const Foot& foot : feet_) columns.insert(std::upper_bound(columns.begin(), columns.end(), foot.x_m + foot.dx_m), foot.x_m + foot.dx_m);
    double last_m = -1.0;
    for (const double x_m : columns) {
      if (x_m < from_x_m - kSlack_m || x_m - last_m < kSlack_m) continue;
      last_m = x_m;
      if (free_m2(x_m) + kSlack_m < left_count * plan_.long_m * plan_.short_m) return false;
      for (const double y_m : rows_) {
        if (!feet_.empty() && std::abs(feet_.back().x_m - x_m) <= kSlack_m &&
            y_m <= feet_.back().y_m) {
          continue;
        }
        for (const bool turned : {false, true}) {
          if (++tries_count_ >= most_tries_count_) return false;
          const Foot foot{x_m, y_m, turned ? plan_.short_m : plan_.long_m,
                          turned ? plan_.long_m : plan_.short_m, turned};
          if (x_m + foot.dx_m > plan_.length_m + kSlack_m ||
              y_m + foot.dy_m > plan_.width_m + kSlack_m || !touches_left(foot) ||
              !std::all_of(feet_.begin(), feet_.end(),
                           [&](const Foot& other) { return apart(foot, other); })) {
            continue;
          }
          feet_.push_back(foot);
          if (place(x_m)) return true;
          feet_.pop_back();
        }
      }
    }
    return false;
  }

  FloorPlan plan_;
  int count_;
  long most_tries_count_;
  std::vector<double> rows_;
  std::vector<Foot> feet_{};
  long tries_count_ = 0;
};

}  // namespace

bool apart(const Foot& a, const Foot& b) {
  return a.x_m + a.dx_m <= b.x_m + kSlack_m || b.x_m + b.dx_m <= a.x_m + kSlack_m ||
         a.y_m + a.dy_m <= b.y_m + kSlack_m || b.y_m + b.dy_m <= a.y_m + kSlack_m;
}

std::vector<double> raster(const FloorPlan& plan, int terms_count, double most_m) {
  std::vector<double> places;
  for (int i = 0; i <= terms_count; ++i) {
    for (int j = 0; i + j <= terms_count; ++j) {
      const double place_m = i * plan.long_m + j * plan.short_m;
      if (place_m <= most_m + kSlack_m) places.push_back(place_m);
    }
  }
  places = sorted(std::move(places), std::less<>());
  const auto same = [](double a_m, double b_m) { return b_m - a_m < kSlack_m; };
  places.erase(std::unique(places.begin(), places.end(), same), places.end());
  return places;
}

PlanAnswer plan_holds(const FloorPlan& plan, int count, long most_tries_count) {
  if (count <= 0) return {.holds = true};
  if (std::min(plan.length_m, plan.width_m) + kSlack_m < plan.short_m) return {};
  PlanSearch search(plan, count, most_tries_count);
  const bool holds = search.run();
  return {holds, holds || !search.stopped(), search.feet()};
}

int held_count(const FloorPlan& plan, int count, bool& exact, long most_tries_count) {
  for (int n = count; n > 0; --n) {
    const PlanAnswer answer = plan_holds(plan, n, most_tries_count);
    exact = exact && answer.exact;
    if (answer.holds) return n;
  }
  return 0;
}

std::optional<double> least_length_m(FloorPlan plan, int count, bool& exact,
                                     long most_tries_count) {
  if (plan.width_m + kSlack_m < plan.short_m) return std::nullopt;
  const std::vector<double> lengths = raster(plan, count, count * plan.long_m);
  const auto first = std::partition_point(lengths.begin(), lengths.end(), [&](double length_m) {
    plan.length_m = length_m;
    const PlanAnswer answer = plan_holds(plan, count, most_tries_count);
    exact = exact && answer.exact;
    return !answer.holds;
  });
  if (first == lengths.end()) return std::nullopt;
  return *first;
}

}  // namespace thole
