#pragma once

// A picture as data: lines, fills and figures in the drawing's own units, y up. Screen, SVG and cut
// file are readers of it. Text and line widths are in reading units (roles), not to the scale of
// the drawing, so that a note stays legible on a phone.

#include <string>
#include <vector>

namespace thole {

struct Point {
  double x = 0.0;
  double y = 0.0;
};

enum class Line { none, outline, thin, hidden, centre, estimated, accent };
enum class Fill { none, water, hull, paper, accent, strong, warning };
enum class Align { left, centre, right };
enum class TextRole { note, strong };

struct Shape {
  std::vector<Point> points{};
  bool closed = false;
  Line line = Line::outline;
  Fill fill = Fill::none;
  bool hatched = false;
};

struct Circle {
  Point centre{};
  double radius = 0.0;
  Line line = Line::outline;
  Fill fill = Fill::none;
};

struct Label {
  Point at{};
  std::string text{};
  Align align = Align::centre;
  TextRole role = TextRole::note;
};

// A dimension line from a to b with ticks at its ends and its figure in the middle.
struct Dimension {
  Point a{};
  Point b{};
  std::string text{};
};

// An arrow from a to b.
struct Arrow {
  Point a{};
  Point b{};
  Line line = Line::accent;
};

struct Drawing {
  std::string title{};        // "Bow with the motor down"
  std::string description{};  // says in words what the picture shows
  Point low{};                // corner of the sheet
  Point high{1.0, 1.0};
  bool to_scale = true;  // the same scale along x and y
  std::vector<Shape> shapes{};
  std::vector<Circle> circles{};
  std::vector<Arrow> arrows{};
  std::vector<Dimension> dimensions{};
  std::vector<Label> labels{};
};

}  // namespace thole
