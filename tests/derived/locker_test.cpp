// The packing search against enumerations that share nothing with it: every place on a grid of
// whole centimetres (sides and lockers are whole ones, so that none is missed), and every wiring.

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <vector>

#include "calc/locker/packing.h"
#include "support.h"

using namespace thole;

namespace {

struct Rect {
  int x = 0, y = 0, dx = 0, dy = 0;
};

bool clear_of(const Rect& a, const Rect& b) {
  return a.x + a.dx <= b.x || b.x + b.dx <= a.x || a.y + a.dy <= b.y || b.y + b.dy <= a.y;
}

bool grid_holds(std::vector<Rect>& placed, int count, int a, int b, int length, int width,
                int from) {
  if (count == 0) return true;
  for (int at = from; at < length * width; ++at) {
    const int x = at / width;
    const int y = at % width;
    for (const bool turned : {false, true}) {
      const Rect rect{x, y, turned ? b : a, turned ? a : b};
      if (rect.x + rect.dx > length || rect.y + rect.dy > width) continue;
      bool fits = true;
      for (const Rect& other : placed) fits = fits && clear_of(rect, other);
      if (!fits) continue;
      placed.push_back(rect);
      if (grid_holds(placed, count - 1, a, b, length, width, at + 1)) return true;
      placed.pop_back();
      if (a == b) break;
    }
  }
  return false;
}

// Gaps are zero, so that a case is its own floor.
PackingInput bare(int a_cm, int b_cm, int length_cm, int width_cm, int count) {
  return {.locker_length_m = 0.01 * length_cm,
          .locker_width_m = 0.01 * width_cm,
          .locker_height_m = 1.0,
          .opening_length_m = 1.0,
          .opening_width_m = 1.0,
          .block_length_m = 0.01 * a_cm,
          .block_width_m = 0.01 * b_cm,
          .block_height_m = 0.2,
          .series_count = count,
          .air_gap_m = 0.0,
          .strap_room_m = 0.0};
}

struct Post {
  double x_m = 0.0, y_m = 0.0;
};
std::array<Post, 2> posts_of(const Rect& rect, int a) {
  const double inset_m = std::min(0.035, 0.25 * 0.01 * a);
  const double x_m = 0.01 * rect.x, y_m = 0.01 * rect.y;
  const double dx_m = 0.01 * rect.dx, dy_m = 0.01 * rect.dy;
  if (rect.dx == a)
    return {{{x_m + inset_m, y_m + dy_m / 2}, {x_m + dx_m - inset_m, y_m + dy_m / 2}}};
  return {{{x_m + dx_m / 2, y_m + inset_m}, {x_m + dx_m / 2, y_m + dy_m - inset_m}}};
}
double jumper_m(const Post& a, const Post& b) {
  return std::abs(a.x_m - b.x_m) + std::abs(a.y_m - b.y_m) + 0.08;
}

// Every place at sums of the two sides, which on a grid of small sides is nearly all of it.
std::vector<Rect> places(int a, int b, int length, int width) {
  std::vector<bool> sum(static_cast<std::size_t>(length + width + a + b), false);
  for (int at = 0; at < static_cast<int>(sum.size()); ++at) {
    const auto reached = [&](int before) {
      return before >= 0 && sum[static_cast<std::size_t>(before)];
    };
    sum[static_cast<std::size_t>(at)] = at == 0 || reached(at - a) || reached(at - b);
  }
  std::vector<Rect> rects;
  for (int x = 0; x < length; ++x) {
    for (int y = 0; y < width; ++y) {
      if (!sum[static_cast<std::size_t>(x)] || !sum[static_cast<std::size_t>(y)]) continue;
      for (const bool turned : {false, true}) {
        const Rect rect{x, y, turned ? b : a, turned ? a : b};
        if (rect.x + rect.dx <= length && rect.y + rect.dy <= width) rects.push_back(rect);
      }
    }
  }
  return rects;
}

// The shortest wiring over all of them: of one string, or of two joined into a ring.
double grid_jumpers_m(int a, int b, int length, int width, int count, bool ring) {
  const std::vector<Rect> rects = places(a, b, length, width);
  double best_m = std::numeric_limits<double>::infinity();
  std::vector<Rect> placed;
  Post first{};
  const auto go = [&](const auto& self, double so_far_m, const Post& end) -> void {
    if (static_cast<int>(placed.size()) == count) {
      best_m = std::min(best_m, so_far_m + (ring ? jumper_m(end, first) : 0.0));
      return;
    }
    for (const Rect& rect : rects) {
      bool fits = true;
      for (const Rect& other : placed) fits = fits && clear_of(rect, other);
      if (!fits) continue;
      const auto posts = posts_of(rect, a);
      for (const std::size_t e : {0U, 1U}) {
        if (placed.empty()) first = posts[e];
        const double sum_m = placed.empty() ? 0.0 : so_far_m + jumper_m(end, posts[e]);
        if (sum_m >= best_m) continue;
        placed.push_back(rect);
        self(self, sum_m, posts[1 - e]);
        placed.pop_back();
      }
    }
  };
  go(go, 0.0, {});
  return best_m;
}

}  // namespace

TEST_CASE("a bank goes in exactly when some placing on the grid does") {
  int held = 0, asked = 0;
  for (const auto& [a, b] :
       {std::array{3, 2}, std::array{5, 2}, std::array{4, 3}, std::array{3, 3}}) {
    for (int length = 3; length <= 10; ++length) {
      for (int width = 2; width <= 8; ++width) {
        for (int count = 1; count <= 8; ++count) {
          if (count * a * b > length * width) continue;  // no search is needed to say no
          std::vector<Rect> placed;
          const bool truth = grid_holds(placed, count, a, b, length, width, 0);
          const PackingResult result = pack(bare(a, b, length, width, count));
          const double sides_m[] = {static_cast<double>(a), static_cast<double>(b)};
          CAPTURE(sides_m[0]);
          CAPTURE(sides_m[1]);
          CAPTURE(length);
          CAPTURE(width);
          CAPTURE(count);
          CHECK(result.exact);
          CHECK(result.fits == truth);
          ++asked;
          held += truth ? 1 : 0;
        }
      }
    }
  }
  CHECK(held > 200);
  CHECK(asked - held > 50);
}

TEST_CASE("no placing on the raster has shorter jumpers") {
  struct Row {
    int a, b, length, width, series, parallel;
  };
  const Row rows[] = {{3, 2, 6, 4, 2, 1},     {3, 2, 6, 4, 3, 1},     {3, 2, 5, 5, 3, 1},
                      {3, 2, 7, 3, 3, 1},     {4, 3, 8, 6, 3, 1},     {5, 2, 7, 5, 3, 1},
                      {33, 17, 70, 52, 3, 1}, {33, 17, 70, 52, 4, 1}, {33, 17, 51, 51, 4, 1},
                      {26, 18, 55, 45, 4, 1}, {3, 2, 6, 4, 1, 2},     {3, 2, 6, 4, 2, 2},
                      {3, 2, 5, 5, 2, 2},     {5, 2, 7, 6, 2, 2},     {33, 17, 70, 52, 1, 2},
                      {33, 17, 70, 52, 2, 2}, {33, 17, 51, 51, 2, 2}, {33, 17, 68, 33, 2, 2},
                      {33, 17, 34, 66, 2, 2}, {26, 18, 55, 45, 2, 2}, {20, 17, 75, 40, 2, 2}};
  for (const Row& row : rows) {
    CAPTURE(row.a);
    CAPTURE(row.length);
    CAPTURE(row.width);
    CAPTURE(row.series);
    CAPTURE(row.parallel);
    PackingInput in = bare(row.a, row.b, row.length, row.width, row.series);
    in.parallel_count = row.parallel;
    const PackingResult result = pack(in);
    REQUIRE(result.fits);
    CHECK(result.arrangements[0].proved);
    CHECK(result.arrangements[0].jumpers_m ==
          rel(grid_jumpers_m(row.a, row.b, row.length, row.width, row.series * row.parallel,
                             row.parallel == 2),
              1e-9));
  }
}
