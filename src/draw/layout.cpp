#include "draw/layout.h"

#include <algorithm>
#include <cmath>

namespace thole {

double height_for(const Drawing& drawing, double width) {
  constexpr double kLowest = 0.34;
  constexpr double kTallest = 0.8;
  constexpr double kChart = 0.5;  // what is not to scale can have any shape
  if (!drawing.to_scale) return kChart * width;
  const double span_x = std::max(drawing.high.x - drawing.low.x, 1e-9);
  const double span_y = std::max(drawing.high.y - drawing.low.y, 1e-9);
  const double height = (width - 2.0 * kDrawingPad) * span_y / span_x + 2.0 * kDrawingPad;
  return std::clamp(height, kLowest * width, kTallest * width);
}

Frame::Frame(const Drawing& drawing, Size size, double pad) : low_(drawing.low) {
  const double span_x = std::max(drawing.high.x - drawing.low.x, 1e-9);
  const double span_y = std::max(drawing.high.y - drawing.low.y, 1e-9);
  scale_x_ = std::max(size.width - 2.0 * pad, 1.0) / span_x;
  scale_y_ = std::max(size.height - 2.0 * pad, 1.0) / span_y;
  if (drawing.to_scale) scale_x_ = scale_y_ = std::min(scale_x_, scale_y_);
  left_ = 0.5 * (size.width - span_x * scale_x_);
  bottom_ = size.height - 0.5 * (size.height - span_y * scale_y_);
}

Point Frame::at(Point point) const {
  return {left_ + (point.x - low_.x) * scale_x_, bottom_ - (point.y - low_.y) * scale_y_};
}

std::vector<Point> Frame::at(const std::vector<Point>& points) const {
  std::vector<Point> out;
  out.reserve(points.size());
  for (const Point& point : points) out.push_back(at(point));
  return out;
}

// Where x + y = u crosses an edge, the outline is entered or left.
std::vector<Stroke> hatch(std::span<const Point> outline) {
  std::vector<Stroke> strokes;
  if (outline.size() < 3) return strokes;
  double low = outline[0].x + outline[0].y;
  double high = low;
  for (const Point& point : outline) {
    low = std::min(low, point.x + point.y);
    high = std::max(high, point.x + point.y);
  }
  std::vector<double> crossings;  // x; y is u - x
  for (double u = kHatchSpacing * std::ceil(low / kHatchSpacing); u < high; u += kHatchSpacing) {
    crossings.clear();
    for (std::size_t i = 0; i < outline.size(); ++i) {
      const Point a = outline[i];
      const Point b = outline[(i + 1) % outline.size()];
      const double ua = a.x + a.y - u;
      const double ub = b.x + b.y - u;
      if ((ua < 0.0) != (ub < 0.0)) crossings.push_back(a.x + (b.x - a.x) * ua / (ua - ub));
    }
    std::sort(crossings.begin(), crossings.end());
    for (std::size_t i = 0; i + 1 < crossings.size(); i += 2) {
      const double from = crossings[i];
      const double to = crossings[i + 1];
      strokes.push_back({.a = {from, u - from}, .b = {to, u - to}});
    }
  }
  return strokes;
}

ArrowLayout lay_arrow(Point a, Point b) {
  const double length = std::hypot(b.x - a.x, b.y - a.y);
  if (length < 1.0) return {};
  const Point along{(b.x - a.x) / length, (b.y - a.y) / length};
  const double head = std::min(kArrowHead, length);
  const double half = 0.45 * head;
  const Point neck{b.x - along.x * head, b.y - along.y * head};
  return {.shaft = {a, neck},
          .head = {b, Point{neck.x - along.y * half, neck.y + along.x * half},
                   Point{neck.x + along.y * half, neck.y - along.x * half}},
          .drawn = true};
}

DimensionLayout lay_dimension(Point a, Point b, Size text) {
  const double length = std::hypot(b.x - a.x, b.y - a.y);
  const bool upright = std::abs(b.y - a.y) > std::abs(b.x - a.x);
  const double gap = upright ? text.height : text.width + 8.0;
  DimensionLayout out;
  out.figure = {0.5 * (a.x + b.x), 0.5 * (a.y + b.y)};
  if (length > gap) {  // the line leaves room for its figure
    const double share = 0.5 * (1.0 - gap / length);
    const Point step{(b.x - a.x) * share, (b.y - a.y) * share};
    out.lines = {{.a = a, .b = {a.x + step.x, a.y + step.y}},
                 {.a = {b.x - step.x, b.y - step.y}, .b = b}};
  } else {  // too short: it carries its figure over its upper end
    out.lines = {{.a = a, .b = b}};
    out.figure.y = std::min(a.y, b.y) - 0.8 * text.height;
  }
  for (std::size_t i = 0; i < 2; ++i) {
    const Point end = i == 0 ? a : b;
    out.ticks[i] = {.a = {end.x - kTick, end.y + kTick}, .b = {end.x + kTick, end.y - kTick}};
  }
  return out;
}

}  // namespace thole
