#pragma once

// Strokes that drawing and drill template share: true arcs as fine chords, holes with their centre
// marks.

#include <vector>

#include "calc/plate/outline.h"
#include "draw/drawing.h"

namespace thole {

// From the plate's metres to millimetres of paper, forward to the right.
struct OnPaper {
  Point origin{};  // of the paper, where the plate's (x, y) = (0, 0) lies
  double mm_per_m = 1000.0;
  Point at(PlatePoint p) const {
    return {origin.x + mm_per_m * p.x_m, origin.y + mm_per_m * p.y_m};
  }
  double length_mm(double length_m) const { return mm_per_m * length_m; }
};

// No chord leaves its arc by more than a hundredth of a millimetre of paper.
std::vector<Point> on_paper(const PlateContour& contour, const OnPaper& paper);

void add_line(Drawing& drawing, Point a, Point b, Line line);
// A cross over a hole, `beyond_mm` past its edge.
void add_centre_mark(Drawing& drawing, Point centre, double radius_mm, double beyond_mm);

}  // namespace thole
