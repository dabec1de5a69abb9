#include "ui/paint_drawing.h"

#include <algorithm>
#include <cmath>

#include "draw/apart.h"

namespace thole::ui {
namespace {

// Figures grow with the text of the page, but a drawing keeps its size: beyond this they would lie
// over what they measure. Larger still they are on the page, in words and in the fields.
constexpr float kLargestFigures = 1.4f;
Type figure_type(const Sheet& sheet, Type type) {
  const float scale = sheet.view().text_scale;
  const float share = scale > kLargestFigures ? kLargestFigures / scale : 1.0f;
  type.size *= share;
  type.line *= share;
  return type;
}

Size size_of(const Rect& rect) {
  return {static_cast<double>(rect.width), static_cast<double>(rect.height)};
}

std::uint32_t fill_colour(const Palette& palette, Fill fill) {
  switch (fill) {
    case Fill::water:
      return palette.water;
    case Fill::hull:
      return palette.hull;
    case Fill::accent:
      return palette.accent;
    case Fill::strong:
      return palette.ink;
    case Fill::warning:
      return palette.fails;
    case Fill::paper:
    case Fill::none:
      return palette.paper;
  }
  return palette.paper;
}

struct Pen {
  std::uint32_t rgb = 0;
  float thickness = 1.0f;
  std::vector<float> dashes{};  // on, off, on, off; empty is solid
};

Pen pen(const Palette& palette, Line line) {
  switch (line) {
    case Line::none:
      return {palette.paper, 0.0f, {}};
    case Line::outline:
      return {palette.ink, 2.0f, {}};
    case Line::thin:
      return {palette.line, 1.0f, {}};
    case Line::hidden:
      return {palette.ink, 1.0f, {6.0f, 4.0f}};
    case Line::centre:
      return {palette.muted, 1.0f, {12.0f, 3.0f, 2.0f, 3.0f}};
    case Line::estimated:
      return {palette.muted, 1.5f, {2.0f, 3.0f}};
    case Line::accent:
      return {palette.accent, 2.0f, {}};
  }
  return {palette.ink, 1.0f, {}};
}

void dashed(Sheet& sheet, const std::vector<ImVec2>& points, bool closed, const Pen& pen) {
  std::size_t index = 0;
  float left = pen.dashes.front();
  const std::size_t count = points.size();
  for (std::size_t i = 0; i + 1 < count + (closed ? 1 : 0); ++i) {
    ImVec2 from = points[i];
    const ImVec2 to = points[(i + 1) % count];
    float length = std::hypot(to.x - from.x, to.y - from.y);
    while (length > 1e-3f) {
      const float part = std::min(left, length);
      const ImVec2 next{from.x + (to.x - from.x) * part / length,
                        from.y + (to.y - from.y) * part / length};
      if (index % 2 == 0) {
        const ImVec2 dash[] = {from, next};
        sheet.path(dash, 2, pen.rgb, pen.thickness, false);
      }
      from = next;
      length -= part;
      left -= part;
      if (left <= 1e-3f) {
        index = (index + 1) % pen.dashes.size();
        left = pen.dashes[index];
      }
    }
  }
}

void stroke(Sheet& sheet, const std::vector<ImVec2>& points, bool closed, Line line) {
  if (line == Line::none || points.size() < 2) return;
  const Pen with = pen(sheet.palette(), line);
  if (with.dashes.empty()) {
    sheet.path(points.data(), static_cast<int>(points.size()), with.rgb, with.thickness, closed);
  } else {
    dashed(sheet, points, closed, with);
  }
}

// One drawing, laid out into its rectangle.
class Painter {
 public:
  Painter(Sheet& sheet, const Drawing& drawing, const Rect& rect)
      : sheet_(sheet), rect_(rect), frame_(drawing, size_of(rect)) {}

  void shape(const Shape& shape) {
    if (shape.points.empty()) return;
    const std::vector<Point> outline = frame_.at(shape.points);
    std::vector<ImVec2> points;
    points.reserve(outline.size());
    for (const Point& point : outline) points.push_back(on_sheet(point));
    if (shape.fill != Fill::none && points.size() > 2) {
      sheet_.area(points.data(), static_cast<int>(points.size()),
                  fill_colour(sheet_.palette(), shape.fill));
    }
    if (shape.hatched) {
      for (const Stroke& line : hatch(outline)) this->line(line, sheet_.palette().line, 1.0f);
    }
    stroke(sheet_, points, shape.closed, shape.line);
  }

  void circle(const Circle& circle) {
    const ImVec2 centre = on_sheet(frame_.at(circle.centre));
    const auto radius = static_cast<float>(std::max(frame_.length(circle.radius), kSmallestRadius));
    if (circle.fill != Fill::none) {
      sheet_.disc(centre.x, centre.y, radius, fill_colour(sheet_.palette(), circle.fill));
    }
    if (circle.line == Line::none) return;
    const Pen with = pen(sheet_.palette(), circle.line);
    sheet_.ring(centre.x, centre.y, radius, with.rgb, with.thickness);
  }

  void arrow(const Arrow& arrow) {
    const ArrowLayout layout = lay_arrow(frame_.at(arrow.a), frame_.at(arrow.b));
    if (!layout.drawn) return;
    const Pen with = pen(sheet_.palette(), arrow.line);
    line(layout.shaft, with.rgb, with.thickness);
    const ImVec2 head[] = {on_sheet(layout.head[0]), on_sheet(layout.head[1]),
                           on_sheet(layout.head[2])};
    sheet_.area(head, 3, with.rgb);
  }

  // The line alone; its figure is laid out with the other texts.
  void dimension(const Dimension& dimension) {
    const DimensionLayout layout =
        lay_dimension(frame_.at(dimension.a), frame_.at(dimension.b),
                      text_size(figure_type(sheet_, kNote), dimension.text));
    for (const Stroke& part : layout.lines) line(part, sheet_.palette().muted, 1.0f);
    for (const Stroke& tick : layout.ticks) line(tick, sheet_.palette().muted, 1.5f);
  }

 private:
  ImVec2 on_sheet(Point point) const {
    return {rect_.x + static_cast<float>(point.x), rect_.y + static_cast<float>(point.y)};
  }
  Size text_size(const Type& type, const std::string& text) const {
    return {static_cast<double>(sheet_.text_width(type, text)),
            static_cast<double>(sheet_.scaled(type.line))};
  }
  void line(const Stroke& stroke, std::uint32_t rgb, float thickness) {
    const ImVec2 ends[] = {on_sheet(stroke.a), on_sheet(stroke.b)};
    sheet_.path(ends, 2, rgb, thickness, false);
  }

  Sheet& sheet_;
  Rect rect_;
  Frame frame_;
};

}  // namespace

std::vector<Figure> lay_figures(const Sheet& sheet, const Drawing& drawing, const Rect& rect) {
  const Frame frame(drawing, size_of(rect));
  std::vector<Figure> figures;
  std::vector<TextBox> boxes;
  const auto add = [&](const std::string& text, const Type& type, std::uint32_t rgb, Align align,
                       auto place) {
    const Size size{static_cast<double>(sheet.text_width(type, text)),
                    static_cast<double>(sheet.scaled(type.line))};
    Point centre = place(size);
    if (align == Align::left) centre.x += 0.5 * size.width;
    if (align == Align::right) centre.x -= 0.5 * size.width;
    boxes.push_back({centre, size});
    figures.push_back({.type = type, .rgb = rgb, .text = text});
  };
  const Palette& palette = sheet.palette();
  for (const Dimension& dimension : drawing.dimensions) {
    add(dimension.text, figure_type(sheet, kNote), palette.muted, Align::centre, [&](Size size) {
      return lay_dimension(frame.at(dimension.a), frame.at(dimension.b), size).figure;
    });
  }
  for (const Label& label : drawing.labels) {
    const bool strong = label.role == TextRole::strong;
    add(label.text, figure_type(sheet, strong ? kNoteStrong : kNote),
        strong ? palette.ink : palette.muted, label.align,
        [&](Size) { return frame.at(label.at); });
  }
  keep_apart(boxes, size_of(rect));
  for (std::size_t i = 0; i < boxes.size(); ++i) {
    const TextBox& box = boxes[i];
    figures[i].rect = {rect.x + static_cast<float>(box.centre.x - 0.5 * box.size.width),
                       rect.y + static_cast<float>(box.centre.y - 0.5 * box.size.height),
                       static_cast<float>(box.size.width), static_cast<float>(box.size.height)};
  }
  return figures;
}

void paint_drawing(Sheet& sheet, const Drawing& drawing, const Rect& rect) {
  sheet.clip(rect);
  Painter painter(sheet, drawing, rect);
  for (const Shape& shape : drawing.shapes) painter.shape(shape);
  for (const Circle& circle : drawing.circles) painter.circle(circle);
  for (const Arrow& arrow : drawing.arrows) painter.arrow(arrow);
  for (const Dimension& dimension : drawing.dimensions) painter.dimension(dimension);
  for (const Figure& figure : lay_figures(sheet, drawing, rect)) {
    sheet.text_at(figure.rect.x, figure.rect.y, figure.type, figure.rgb, figure.text);
  }
  sheet.unclip();
}

void paint_handle(Sheet& sheet, ImVec2 at, bool active) {
  constexpr float kDot = 6.0f;
  const Palette& palette = sheet.palette();
  sheet.disc(at.x, at.y, kDot + (active ? 6.0f : 3.0f), palette.paper);
  if (active) sheet.ring(at.x, at.y, kDot + 5.0f, palette.accent, 1.5f);
  sheet.disc(at.x, at.y, kDot, palette.accent);
}

}  // namespace thole::ui
