#include "draw/svg.h"

#include <algorithm>
#include <span>
#include <string_view>
#include <vector>

#include "base/number.h"
#include "draw/apart.h"
#include "draw/layout.h"
#include "io/markup.h"

namespace thole {
namespace {

constexpr double kTextSize = 14.0;
constexpr double kTextLine = 20.0;
constexpr double kBaseline = 0.36;  // of the size, below the middle of a figure
constexpr double kMillimetrePerPx = 25.4 / 96.0;

constexpr std::string_view kStyle =
    ".drawing path,.drawing circle{fill:none;stroke:none}"
    ".drawing .line-outline{stroke:var(--ink,#000);stroke-width:2}"
    ".drawing .line-thin{stroke:var(--line,#777);stroke-width:1}"
    ".drawing .line-hidden{stroke:var(--ink,#000);stroke-width:1;stroke-dasharray:6 4}"
    ".drawing .line-centre{stroke:var(--muted,#333);stroke-width:1;stroke-dasharray:12 3 2 3}"
    ".drawing .line-estimated{stroke:var(--muted,#333);stroke-width:1.5;stroke-dasharray:2 3}"
    ".drawing .line-accent{stroke:var(--accent,#000);stroke-width:2}"
    ".drawing .fill-water{fill:var(--water,#e4edf1)}"
    ".drawing .fill-hull{fill:var(--hull,#eee)}"
    ".drawing .fill-paper{fill:var(--paper,#fff)}"
    ".drawing .fill-accent,.drawing .tip-accent{fill:var(--accent,#000)}"
    ".drawing .fill-strong,.drawing .tip-outline,.drawing .tip-hidden{fill:var(--ink,#000)}"
    ".drawing .fill-warning{fill:var(--fails,#000)}"
    ".drawing .tip-thin{fill:var(--line,#777)}"
    ".drawing .tip-centre,.drawing .tip-estimated{fill:var(--muted,#333)}"
    ".drawing .hatch{stroke:var(--line,#777);stroke-width:1}"
    ".drawing .dimension{stroke:var(--muted,#333);stroke-width:1}"
    ".drawing .tick{stroke:var(--muted,#333);stroke-width:1.5}"
    ".drawing text{font:14px/1 system-ui,sans-serif;font-variant-numeric:tabular-nums;"
    "fill:var(--muted,#333)}"
    ".drawing .strong{font-weight:600;fill:var(--ink,#000)}";

std::string_view name_of(Line line) {
  switch (line) {
    case Line::none:
      return "none";
    case Line::outline:
      return "outline";
    case Line::thin:
      return "thin";
    case Line::hidden:
      return "hidden";
    case Line::centre:
      return "centre";
    case Line::estimated:
      return "estimated";
    case Line::accent:
      return "accent";
  }
  return "none";
}

std::string_view name_of(Fill fill) {
  switch (fill) {
    case Fill::none:
      return "none";
    case Fill::water:
      return "water";
    case Fill::hull:
      return "hull";
    case Fill::paper:
      return "paper";
    case Fill::accent:
      return "accent";
    case Fill::strong:
      return "strong";
    case Fill::warning:
      return "warning";
  }
  return "none";
}

// Class of an outline: what does not show is not said.
std::string classes(Line line, Fill fill) {
  const bool both = line != Line::none && fill != Fill::none;
  return joined({line == Line::none ? "" : "line-", line == Line::none ? "" : name_of(line),
                 both ? " " : "", fill == Fill::none ? "" : "fill-",
                 fill == Fill::none ? "" : name_of(fill)});
}

std::string number(double value) { return trimmed(fixed(value, 1)); }
std::string pair(Point point) { return joined({number(point.x), " ", number(point.y)}); }

// Width of a text in the style's type, by kinds of letters: nobody measures type here.
double text_width(std::string_view text, TextRole role) {
  double ems = 0.0;
  for (const char c : text) {
    const auto byte = static_cast<unsigned char>(c);
    if ((byte & 0xC0u) == 0x80u) continue;  // goes on with the character before it
    const bool narrow = std::string_view(" .,:;'!|iljtf()[]").find(c) != std::string_view::npos;
    const bool wide = std::string_view("mwMW%@").find(c) != std::string_view::npos;
    ems += narrow ? 0.31 : wide ? 0.88 : c >= 'A' && c <= 'Z' ? 0.68 : 0.58;
  }
  return ems * kTextSize * (role == TextRole::strong ? 1.06 : 1.0);
}

std::string path(std::string_view shown_class, std::string_view data) {
  return joined({"<path class=\"", shown_class, "\" d=\"", data, "\"/>"});
}

std::string outline(const std::vector<Point>& points, bool closed) {
  std::string data;
  for (const Point& point : points) {
    data += data.empty() ? 'M' : 'L';
    data += pair(point);
  }
  if (closed) data += 'Z';
  return data;
}

std::string strokes(std::span<const Stroke> list) {
  std::string data;
  for (const Stroke& stroke : list) data += joined({"M", pair(stroke.a), "L", pair(stroke.b)});
  return data;
}

class Writer {
 public:
  Writer(const Drawing& drawing, Size size) : size_(size), frame_(drawing, size) {}

  std::string shape(const Shape& shape) const {
    if (shape.points.size() < 2) return {};
    const std::vector<Point> points = frame_.at(shape.points);
    const std::string data = outline(points, shape.closed);
    if (!shape.hatched) return visible(shape.line, shape.fill, data);
    return joined({visible(Line::none, shape.fill, data), path("hatch", strokes(hatch(points))),
                   visible(shape.line, Fill::none, data)});
  }

  std::string circle(const Circle& circle) const {
    const std::string shown = classes(circle.line, circle.fill);
    if (shown.empty()) return {};
    const Point centre = frame_.at(circle.centre);
    const double radius = std::max(frame_.length(circle.radius), kSmallestRadius);
    return joined({"<circle class=\"", shown, "\" cx=\"", number(centre.x), "\" cy=\"",
                   number(centre.y), "\" r=\"", number(radius), "\"/>"});
  }

  std::string arrow(const Arrow& arrow) const {
    const ArrowLayout laid = lay_arrow(frame_.at(arrow.a), frame_.at(arrow.b));
    if (!laid.drawn || arrow.line == Line::none) return {};
    const std::string_view role = name_of(arrow.line);
    return joined(
        {path(joined({"line-", role}), strokes({&laid.shaft, 1})),
         path(joined({"tip-", role}), outline({laid.head.begin(), laid.head.end()}, true))});
  }

  // The line alone; its figure is laid out with the other texts.
  std::string dimension(const Dimension& dimension) const {
    const DimensionLayout laid = layout(dimension);
    return path("dimension", strokes(laid.lines)) + path("tick", strokes(laid.ticks));
  }

  std::string texts(const Drawing& drawing) const {
    std::vector<TextBox> boxes;
    for (const Dimension& each : drawing.dimensions) {
      boxes.push_back({layout(each).figure, text_size(each.text, TextRole::note)});
    }
    for (const Label& each : drawing.labels) {
      const Size size = text_size(each.text, each.role);
      Point centre = frame_.at(each.at);
      if (each.align == Align::left) centre.x += 0.5 * size.width;
      if (each.align == Align::right) centre.x -= 0.5 * size.width;
      boxes.push_back({centre, size});
    }
    keep_apart(boxes, size_);
    std::string out;
    std::size_t next = 0;
    for (const Dimension& each : drawing.dimensions) {
      out += text("figure", boxes[next++], Align::centre, each.text);
    }
    for (const Label& each : drawing.labels) {
      out += text(each.role == TextRole::strong ? "strong" : "note", boxes[next++], each.align,
                  each.text);
    }
    return out;
  }

 private:
  static std::string visible(Line line, Fill fill, std::string_view data) {
    const std::string shown = classes(line, fill);
    return shown.empty() ? std::string() : path(shown, data);
  }

  static Size text_size(std::string_view text, TextRole role) {
    return {text_width(text, role), kTextLine};
  }

  DimensionLayout layout(const Dimension& dimension) const {
    return lay_dimension(frame_.at(dimension.a), frame_.at(dimension.b),
                         text_size(dimension.text, TextRole::note));
  }

  // Held at the side that it is aligned to, for its width is only guessed.
  static std::string text(std::string_view shown_class, const TextBox& box, Align align,
                          std::string_view text) {
    const double half = 0.5 * box.size.width;
    const double x = box.centre.x + (align == Align::left    ? -half
                                     : align == Align::right ? half
                                                             : 0.0);
    const std::string_view anchor = align == Align::left    ? "start"
                                    : align == Align::right ? "end"
                                                            : "middle";
    return joined({"<text class=\"", shown_class, "\" x=\"", number(x), "\" y=\"",
                   number(box.centre.y + kBaseline * kTextSize), "\" text-anchor=\"", anchor, "\">",
                   escaped(text), "</text>"});
  }

  Size size_{};
  Frame frame_;
};

}  // namespace

std::string write_svg(const Drawing& drawing, const SvgStyle& style) {
  Size size{std::max(style.width_px, 100.0), style.height_px};
  if (size.height <= 0.0) size.height = height_for(drawing, size.width);
  const auto length = [&style](double px) {
    return style.file ? fixed(px * kMillimetrePerPx, 1) + "mm" : number(px);
  };
  std::string out =
      joined({"<svg class=\"drawing\" role=\"img\"",
              style.file ? " xmlns=\"http://www.w3.org/2000/svg\"" : "", " viewBox=\"0 0 ",
              number(size.width), " ", number(size.height), "\" width=\"", length(size.width),
              "\" height=\"", length(size.height), "\"><title>", escaped(drawing.title),
              "</title><desc>", escaped(drawing.description), "</desc>"});
  if (style.file) out += joined({"<style>", kStyle, "</style>"});
  const Writer writer(drawing, size);
  for (const Shape& shape : drawing.shapes) out += writer.shape(shape);
  for (const Circle& circle : drawing.circles) out += writer.circle(circle);
  for (const Arrow& arrow : drawing.arrows) out += writer.arrow(arrow);
  for (const Dimension& dimension : drawing.dimensions) out += writer.dimension(dimension);
  out += writer.texts(drawing);
  out += "</svg>\n";
  return out;
}

std::string write_svg(const Qr& qr, std::string_view name, double width_px) {
  if (qr.side == 0) return {};
  const std::string whole = std::to_string(qr.side + 2 * kQrQuiet);
  std::string dark;
  for (int y = 0; y < qr.side; ++y) {
    for (int x = 0; x < qr.side; ++x) {
      if (!qr.at(x, y) || qr.at(x - 1, y)) continue;
      int run = 1;  // dark modules side by side are one bar
      while (qr.at(x + run, y)) ++run;
      dark += joined({"M", std::to_string(x + kQrQuiet), " ", std::to_string(y + kQrQuiet), "h",
                      std::to_string(run), "v1h-", std::to_string(run), "z"});
    }
  }
  const std::string width = number(width_px);
  return joined({"<svg class=\"qr\" role=\"img\" viewBox=\"0 0 ", whole, " ", whole, "\" width=\"",
                 width, "\" height=\"", width, "\" shape-rendering=\"crispEdges\"><title>",
                 escaped(name), "</title><path fill=\"#fff\" d=\"M0 0h", whole, "v", whole,
                 "H0z\"/><path fill=\"#000\" d=\"", dark, "\"/></svg>\n"});
}

std::string_view svg_style() { return kStyle; }

}  // namespace thole
