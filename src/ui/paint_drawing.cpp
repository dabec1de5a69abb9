#include "ui/paint_drawing.h"

#include <algorithm>
#include <cmath>

namespace thole::ui {
namespace {

constexpr float kPad = 12.0f;

// From the drawing's units to the sheet.
class Frame {
 public:
  Frame(const Drawing& drawing, const Rect& rect) : low_(drawing.low) {
    const auto span_x = static_cast<float>(std::max(drawing.high.x - drawing.low.x, 1e-9));
    const auto span_y = static_cast<float>(std::max(drawing.high.y - drawing.low.y, 1e-9));
    scale_x_ = (rect.width - 2.0f * kPad) / span_x;
    scale_y_ = (rect.height - 2.0f * kPad) / span_y;
    if (drawing.to_scale) scale_x_ = scale_y_ = std::min(scale_x_, scale_y_);
    left_ = rect.x + 0.5f * (rect.width - span_x * scale_x_);
    bottom_ = rect.y + rect.height - 0.5f * (rect.height - span_y * scale_y_);
  }

  ImVec2 at(Point point) const {
    return {left_ + static_cast<float>(point.x - low_.x) * scale_x_,
            bottom_ - static_cast<float>(point.y - low_.y) * scale_y_};
  }
  float length(double units) const { return static_cast<float>(units) * scale_x_; }

 private:
  Point low_;
  float scale_x_ = 1.0f;
  float scale_y_ = 1.0f;
  float left_ = 0.0f;
  float bottom_ = 0.0f;
};

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

// 45 degree lines inside the outline: where x + y = u crosses an edge, the outline is entered or
// left.
void hatch(Sheet& sheet, const std::vector<ImVec2>& points) {
  constexpr float kSpacing = 7.0f;
  float low = points[0].x + points[0].y;
  float high = low;
  for (const ImVec2& point : points) {
    low = std::min(low, point.x + point.y);
    high = std::max(high, point.x + point.y);
  }
  std::vector<ImVec2> crossings;
  for (float u = std::ceil(low / kSpacing) * kSpacing; u < high; u += kSpacing) {
    crossings.clear();
    for (std::size_t i = 0; i < points.size(); ++i) {
      const ImVec2 a = points[i];
      const ImVec2 b = points[(i + 1) % points.size()];
      const float ua = a.x + a.y - u;
      const float ub = b.x + b.y - u;
      if ((ua < 0.0f) == (ub < 0.0f)) continue;
      const float t = ua / (ua - ub);
      crossings.push_back({a.x + (b.x - a.x) * t, a.y + (b.y - a.y) * t});
    }
    std::sort(crossings.begin(), crossings.end(),
              [](const ImVec2& a, const ImVec2& b) { return a.x < b.x; });
    for (std::size_t i = 0; i + 1 < crossings.size(); i += 2) {
      sheet.path(&crossings[i], 2, sheet.palette().line, 1.0f, false);
    }
  }
}

void paint_shape(Sheet& sheet, const Frame& frame, const Shape& shape) {
  if (shape.points.empty()) return;
  std::vector<ImVec2> points;
  points.reserve(shape.points.size());
  for (const Point& point : shape.points) points.push_back(frame.at(point));
  if (shape.fill != Fill::none && points.size() > 2) {
    sheet.area(points.data(), static_cast<int>(points.size()),
               fill_colour(sheet.palette(), shape.fill));
  }
  if (shape.hatched && points.size() > 2) hatch(sheet, points);
  stroke(sheet, points, shape.closed, shape.line);
}

void paint_circle(Sheet& sheet, const Frame& frame, const Circle& circle) {
  const ImVec2 centre = frame.at(circle.centre);
  const float radius = std::max(frame.length(circle.radius), 1.5f);
  if (circle.fill != Fill::none) {
    sheet.disc(centre.x, centre.y, radius, fill_colour(sheet.palette(), circle.fill));
  }
  if (circle.line != Line::none) {
    const Pen with = pen(sheet.palette(), circle.line);
    sheet.ring(centre.x, centre.y, radius, with.rgb, with.thickness);
  }
}

void paint_arrow(Sheet& sheet, const Frame& frame, const Arrow& arrow) {
  const ImVec2 a = frame.at(arrow.a);
  const ImVec2 b = frame.at(arrow.b);
  const float length = std::hypot(b.x - a.x, b.y - a.y);
  if (length < 1.0f) return;
  const Pen with = pen(sheet.palette(), arrow.line);
  const ImVec2 along{(b.x - a.x) / length, (b.y - a.y) / length};
  const float head = std::min(10.0f, length);
  const ImVec2 neck{b.x - along.x * head, b.y - along.y * head};
  const ImVec2 shaft[] = {a, neck};
  sheet.path(shaft, 2, with.rgb, with.thickness, false);
  const ImVec2 tip[] = {b,
                        {neck.x - along.y * 0.45f * head, neck.y + along.x * 0.45f * head},
                        {neck.x + along.y * 0.45f * head, neck.y - along.x * 0.45f * head}};
  sheet.area(tip, 3, with.rgb);
}

void paint_figure(Sheet& sheet, ImVec2 at, Align align, const Type& type, std::uint32_t rgb,
                  const std::string& text) {
  const float width = sheet.text_width(type, text);
  const float height = sheet.scaled(type.line);
  float left = at.x;
  if (align == Align::centre) left -= 0.5f * width;
  if (align == Align::right) left -= width;
  const float top = at.y - 0.5f * height;
  sheet.text_at(left, top, type, rgb, text);
}

void paint_dimension(Sheet& sheet, const Frame& frame, const Dimension& dimension) {
  const ImVec2 a = frame.at(dimension.a);
  const ImVec2 b = frame.at(dimension.b);
  const std::uint32_t rgb = sheet.palette().muted;
  const float length = std::hypot(b.x - a.x, b.y - a.y);
  const bool upright = std::abs(b.y - a.y) > std::abs(b.x - a.x);
  const float gap =
      upright ? sheet.scaled(kNote.line) : sheet.text_width(kNote, dimension.text) + 8.0f;
  if (length > gap) {  // the line leaves room for its figure
    const float share = 0.5f * (1.0f - gap / length);
    const ImVec2 step{(b.x - a.x) * share, (b.y - a.y) * share};
    const ImVec2 first[] = {a, {a.x + step.x, a.y + step.y}};
    const ImVec2 second[] = {{b.x - step.x, b.y - step.y}, b};
    sheet.path(first, 2, rgb, 1.0f, false);
    sheet.path(second, 2, rgb, 1.0f, false);
  }
  const ImVec2 line[] = {a, b};
  for (const ImVec2& end : line) {
    const ImVec2 tick[] = {{end.x - 4.0f, end.y + 4.0f}, {end.x + 4.0f, end.y - 4.0f}};
    sheet.path(tick, 2, rgb, 1.5f, false);
  }
  // A dimension too short for its figure carries it over its upper end.
  const ImVec2 middle{0.5f * (a.x + b.x), 0.5f * (a.y + b.y)};
  const ImVec2 over{middle.x, std::min(a.y, b.y) - 0.8f * sheet.scaled(kNote.line)};
  paint_figure(sheet, length > gap ? middle : over, Align::centre, kNote, rgb, dimension.text);
}

}  // namespace

void paint_drawing(Sheet& sheet, const Drawing& drawing, const Rect& rect) {
  sheet.clip(rect);
  const Frame frame(drawing, rect);
  for (const Shape& shape : drawing.shapes) paint_shape(sheet, frame, shape);
  for (const Circle& circle : drawing.circles) paint_circle(sheet, frame, circle);
  for (const Arrow& arrow : drawing.arrows) paint_arrow(sheet, frame, arrow);
  for (const Dimension& dimension : drawing.dimensions) paint_dimension(sheet, frame, dimension);
  for (const Label& label : drawing.labels) {
    const bool strong = label.role == TextRole::strong;
    paint_figure(sheet, frame.at(label.at), label.align, strong ? kNoteStrong : kNote,
                 strong ? sheet.palette().ink : sheet.palette().muted, label.text);
  }
  sheet.unclip();
}

}  // namespace thole::ui
