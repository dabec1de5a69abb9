#include "draw/plate_strokes.h"

namespace thole {

std::vector<Point> on_paper(const PlateContour& contour, const OnPaper& paper) {
  constexpr double kSagitta_mm = 0.01;
  std::vector<Point> points;
  for (const PlatePoint& p : chorded(contour, kSagitta_mm / paper.mm_per_m)) {
    points.push_back(paper.at(p));
  }
  return points;
}

void add_line(Drawing& drawing, Point a, Point b, Line line) {
  drawing.shapes.push_back({.points = {a, b}, .line = line});
}

void add_centre_mark(Drawing& drawing, Point centre, double radius_mm, double beyond_mm) {
  const double arm_mm = radius_mm + beyond_mm;
  add_line(drawing, {centre.x - arm_mm, centre.y}, {centre.x + arm_mm, centre.y}, Line::thin);
  add_line(drawing, {centre.x, centre.y - arm_mm}, {centre.x, centre.y + arm_mm}, Line::thin);
}

}  // namespace thole
