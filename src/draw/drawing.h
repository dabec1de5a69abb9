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
  bool operator==(const Point&) const = default;
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
  bool operator==(const Shape&) const = default;
};

struct Circle {
  Point centre{};
  double radius = 0.0;
  Line line = Line::outline;
  Fill fill = Fill::none;
  bool operator==(const Circle&) const = default;
};

struct Label {
  Point at{};
  std::string text{};
  Align align = Align::centre;
  TextRole role = TextRole::note;
  bool operator==(const Label&) const = default;
};

// A dimension line from a to b with ticks at its ends and its figure in the middle.
struct Dimension {
  Point a{};
  Point b{};
  std::string text{};
  bool operator==(const Dimension&) const = default;
};

// An arrow from a to b.
struct Arrow {
  Point a{};
  Point b{};
  Line line = Line::accent;
  bool operator==(const Arrow&) const = default;
};

// What may be dragged: a field of the job that follows the finger.
struct Handle {
  Point at{};
  std::string field{};     // its path: "boat.bow_height_m"
  double dx_factor = 0.0;  // the field's units per unit of the drawing to the right
  double dy_factor = 0.0;  // ... and upward
  // Instead: the field is an angle in degrees, clockwise from straight up, and turns about the
  // pivot. The left half mirrors the right.
  bool turns = false;
  Point pivot{};
  bool operator==(const Handle&) const = default;
};

// What the field becomes, from `value`, when the handle is moved by (dx, dy) in the drawing's
// units.
double moved_value(const Handle& handle, double value, double dx, double dy);

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
  std::vector<Handle> handles{};
  bool operator==(const Drawing&) const = default;
};

}  // namespace thole
