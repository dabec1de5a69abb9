#pragma once

// From a drawing's own units to the sheet's: x to the right, y down, in reading units (px at 96 to
// the inch). What every painter of a Drawing must agree on stands here: scale, hatching, heads of
// arrows, and where the figure of a dimension line goes.

#include <array>
#include <span>
#include <vector>

#include "draw/drawing.h"

namespace thole {

inline constexpr double kDrawingPad = 12.0;     // free along the edge of the sheet
inline constexpr double kHatchSpacing = 7.0;    // along x, of 45 degree lines
inline constexpr double kArrowHead = 10.0;      // length
inline constexpr double kSmallestRadius = 1.5;  // so that a dot can be seen
inline constexpr double kTick = 4.0;            // half the height of a dimension's tick

struct Size {
  double width = 0.0;
  double height = 0.0;
};

// The height that a drawing asks for at this width: its own shape when it is to scale.
double height_for(const Drawing& drawing, double width);

class Frame {
 public:
  Frame(const Drawing& drawing, Size size, double pad = kDrawingPad);
  Point at(Point point) const;
  double length(double units) const { return units * scale_x_; }
  std::vector<Point> at(const std::vector<Point>& points) const;

 private:
  Point low_{};
  double scale_x_ = 1.0;
  double scale_y_ = 1.0;
  double left_ = 0.0;
  double bottom_ = 0.0;
};

struct Stroke {
  Point a{};
  Point b{};
};

// 45 degree lines inside the outline.
std::vector<Stroke> hatch(std::span<const Point> outline);

struct ArrowLayout {
  Stroke shaft{};
  std::array<Point, 3> head{};  // tip first
  bool drawn = false;           // false: too short to point anywhere
};
ArrowLayout lay_arrow(Point a, Point b);

struct DimensionLayout {
  std::vector<Stroke> lines{};  // broken for the figure when there is room
  std::array<Stroke, 2> ticks{};
  Point figure{};  // middle of the text
};
DimensionLayout lay_dimension(Point a, Point b, Size text);

}  // namespace thole
