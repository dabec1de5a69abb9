#include "draw/apart.h"

#include <algorithm>
#include <cmath>

namespace thole {
namespace {

constexpr double kEdge = 2.0;  // free between text and the edge of the sheet
constexpr double kSide = 6.0;  // free between texts on one line
// Of a line of text, what letters fill: lines may come closer than their height.
constexpr double kInk = 0.8;

double inside(double centre, double size, double room) {
  const double half = std::min(0.5 * size + kEdge, 0.5 * room);
  return std::clamp(centre, half, room - half);
}

// How far apart the centres must be from top to bottom.
double clearance(const TextBox& a, const TextBox& b) {
  return 0.5 * kInk * (a.size.height + b.size.height);
}

bool collide(const TextBox& a, const TextBox& b) {
  return std::abs(a.centre.x - b.centre.x) < 0.5 * (a.size.width + b.size.width) + kSide &&
         std::abs(a.centre.y - b.centre.y) < clearance(a, b) - 1e-6;
}

}  // namespace

void keep_apart(std::vector<TextBox>& boxes, Size sheet) {
  for (std::size_t i = 0; i < boxes.size(); ++i) {
    TextBox& box = boxes[i];
    box.centre.x = inside(box.centre.x, box.size.width, sheet.width);
    box.centre.y = inside(box.centre.y, kInk * box.size.height, sheet.height);
    const auto free_at = [&](double y) {
      const TextBox moved{{box.centre.x, y}, box.size};
      return y == inside(y, kInk * box.size.height, sheet.height) &&
             std::none_of(boxes.begin(), boxes.begin() + static_cast<std::ptrdiff_t>(i),
                          [&](const TextBox& other) { return collide(moved, other); });
    };
    if (free_at(box.centre.y)) continue;
    // Just clear of one of the others, above or below it, is where the nearest room is.
    double best = box.centre.y;
    bool found = false;
    for (std::size_t k = 0; k < i; ++k) {
      for (const double side : {-1.0, 1.0}) {
        const double y = boxes[k].centre.y + side * clearance(box, boxes[k]);
        const bool nearer = !found || std::abs(y - box.centre.y) < std::abs(best - box.centre.y);
        if (!nearer || !free_at(y)) continue;
        best = y;
        found = true;
      }
    }
    box.centre.y = best;
  }
}

}  // namespace thole
