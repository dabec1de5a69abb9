#include "draw/blend.h"

#include <algorithm>

namespace thole {
namespace {

double between(double from, double to, double share) { return from + (to - from) * share; }

Point between(Point from, Point to, double share) {
  return {between(from.x, to.x, share), between(from.y, to.y, share)};
}

// Strokes may differ: what was estimated is drawn solid once it is given.
bool same(const Shape& a, const Shape& b) {
  return a.points.size() == b.points.size() && a.closed == b.closed && a.fill == b.fill &&
         a.hatched == b.hatched;
}
bool same(const Circle& a, const Circle& b) { return a.fill == b.fill; }
bool same(const Arrow&, const Arrow&) { return true; }
bool same(const Dimension&, const Dimension&) { return true; }
bool same(const Label& a, const Label& b) { return a.align == b.align && a.role == b.role; }
bool same(const Handle& a, const Handle& b) { return a.field == b.field; }

template <class Part>
bool same(const std::vector<Part>& a, const std::vector<Part>& b) {
  return std::equal(a.begin(), a.end(), b.begin(), b.end(),
                    [](const Part& x, const Part& y) { return same(x, y); });
}

}  // namespace

bool can_blend(const Drawing& from, const Drawing& to) {
  return from.title == to.title && from.to_scale == to.to_scale && same(from.shapes, to.shapes) &&
         same(from.circles, to.circles) && same(from.arrows, to.arrows) &&
         same(from.dimensions, to.dimensions) && same(from.labels, to.labels) &&
         same(from.handles, to.handles);
}

Drawing blend(const Drawing& from, const Drawing& to, double share) {
  if (share >= 1.0 || !can_blend(from, to)) return to;
  Drawing out = to;
  const auto move = [share](Point start, Point& end) { end = between(start, end, share); };
  move(from.low, out.low);
  move(from.high, out.high);
  for (std::size_t i = 0; i < out.shapes.size(); ++i) {
    for (std::size_t k = 0; k < out.shapes[i].points.size(); ++k) {
      move(from.shapes[i].points[k], out.shapes[i].points[k]);
    }
  }
  for (std::size_t i = 0; i < out.circles.size(); ++i) {
    move(from.circles[i].centre, out.circles[i].centre);
    out.circles[i].radius = between(from.circles[i].radius, out.circles[i].radius, share);
  }
  for (std::size_t i = 0; i < out.arrows.size(); ++i) {
    move(from.arrows[i].a, out.arrows[i].a);
    move(from.arrows[i].b, out.arrows[i].b);
  }
  for (std::size_t i = 0; i < out.dimensions.size(); ++i) {
    move(from.dimensions[i].a, out.dimensions[i].a);
    move(from.dimensions[i].b, out.dimensions[i].b);
  }
  for (std::size_t i = 0; i < out.labels.size(); ++i) move(from.labels[i].at, out.labels[i].at);
  for (std::size_t i = 0; i < out.handles.size(); ++i) move(from.handles[i].at, out.handles[i].at);
  return out;
}

}  // namespace thole
