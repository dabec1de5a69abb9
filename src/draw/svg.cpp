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
constexpr int kScreenDecimals = 1;
constexpr int kPaperDecimals = 4;  // of px: nobody's ruler shows them

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

Size text_size(std::string_view text, TextRole role) { return {text_width(text, role), kTextLine}; }

class Writer {
 public:
  Writer(Markup& out, const Drawing& drawing, Size size, bool paper)
      : out_(out),
        drawing_(drawing),
        size_(size),
        frame_(drawing, size, paper ? 0.0 : kDrawingPad),
        decimals_(paper ? kPaperDecimals : kScreenDecimals) {}

  void write() {
    for (const Shape& each : drawing_.shapes) shape(each);
    for (const Circle& each : drawing_.circles) circle(each);
    for (const Arrow& each : drawing_.arrows) arrow(each);
    for (const Dimension& each : drawing_.dimensions) dimension(each);
    texts();
  }

 private:
  // --- pieces of paths --------------------------------------------------------------------------

  void open_path(std::string_view prefix, std::string_view name) {
    out_.raw("<path class=\"");
    out_.raw(prefix);
    out_.raw(name);
    out_.raw("\" d=\"");
  }
  void close_path() { out_.raw("\"/>"); }

  void point(std::string_view command, Point point) {
    out_.raw(command);
    out_.number(point.x, decimals_);
    out_.raw(" ");
    out_.number(point.y, decimals_);
  }
  void place(std::string_view name, double value) {
    out_.attribute(name, trimmed(fixed(value, decimals_)));
  }
  void outline(std::span<const Point> points, bool closed) {
    std::string_view command = "M";
    for (const Point& each : points) {
      point(command, each);
      command = "L";
    }
    if (closed) out_.raw("Z");
  }
  void strokes(std::span<const Stroke> list) {
    for (const Stroke& each : list) {
      point("M", each.a);
      point("L", each.b);
    }
  }

  // The class by its roles: what does not show is not said.
  void roles(std::string_view element, Line line, Fill fill) {
    out_.raw(element);
    out_.raw(" class=\"");
    if (line != Line::none) {
      out_.raw("line-");
      out_.raw(name_of(line));
    }
    if (line != Line::none && fill != Fill::none) out_.raw(" ");
    if (fill != Fill::none) {
      out_.raw("fill-");
      out_.raw(name_of(fill));
    }
    out_.raw("\"");
  }

  // --- what a drawing is made of ----------------------------------------------------------------

  void area(std::span<const Point> points, bool closed, Line line, Fill fill) {
    if (line == Line::none && fill == Fill::none) return;
    roles("<path", line, fill);
    out_.raw(" d=\"");
    outline(points, closed);
    close_path();
  }

  void shape(const Shape& shape) {
    if (shape.points.size() < 2) return;
    const std::vector<Point> points = frame_.at(shape.points);
    if (shape.hatched) {  // over the fill, under the outline
      area(points, shape.closed, Line::none, shape.fill);
      open_path("", "hatch");
      strokes(hatch(points));
      close_path();
    }
    area(points, shape.closed, shape.line, shape.hatched ? Fill::none : shape.fill);
  }

  void circle(const Circle& circle) {
    if (circle.line == Line::none && circle.fill == Fill::none) return;
    const Point centre = frame_.at(circle.centre);
    roles("<circle", circle.line, circle.fill);
    place("cx", centre.x);
    place("cy", centre.y);
    place("r", std::max(frame_.length(circle.radius), kSmallestRadius));
    out_.raw("/>");
  }

  void arrow(const Arrow& arrow) {
    const ArrowLayout laid = lay_arrow(frame_.at(arrow.a), frame_.at(arrow.b));
    if (!laid.drawn || arrow.line == Line::none) return;
    open_path("line-", name_of(arrow.line));
    strokes({&laid.shaft, 1});
    close_path();
    open_path("tip-", name_of(arrow.line));
    outline(laid.head, true);
    close_path();
  }

  DimensionLayout layout(const Dimension& dimension) const {
    return lay_dimension(frame_.at(dimension.a), frame_.at(dimension.b),
                         text_size(dimension.text, TextRole::note));
  }

  // The line alone; its figure is laid out with the other texts.
  void dimension(const Dimension& dimension) {
    const DimensionLayout laid = layout(dimension);
    open_path("", "dimension");
    strokes(laid.lines);
    close_path();
    open_path("", "tick");
    strokes(laid.ticks);
    close_path();
  }

  // --- text -------------------------------------------------------------------------------------

  void texts() {
    std::vector<TextBox> boxes;
    for (const Dimension& each : drawing_.dimensions) {
      boxes.push_back({layout(each).figure, text_size(each.text, TextRole::note)});
    }
    for (const Label& each : drawing_.labels) {
      const Size size = text_size(each.text, each.role);
      Point centre = frame_.at(each.at);
      centre.x += share_left(each.align) * size.width;
      boxes.push_back({centre, size});
    }
    keep_apart(boxes, size_);
    std::size_t next = 0;
    for (const Dimension& each : drawing_.dimensions) {
      text("figure", boxes[next++], Align::centre, each.text);
    }
    for (const Label& each : drawing_.labels) {
      text(each.role == TextRole::strong ? "strong" : "note", boxes[next++], each.align, each.text);
    }
  }

  // Of its width, how far its middle lies to the right of where the text is held.
  static double share_left(Align align) {
    return align == Align::left ? 0.5 : align == Align::right ? -0.5 : 0.0;
  }

  // Held at the side that it is aligned to, for its width is only guessed.
  void text(std::string_view name, const TextBox& box, Align align, std::string_view text) {
    out_.raw("<text");
    out_.attribute("class", name);
    out_.attribute("x", box.centre.x - share_left(align) * box.size.width);
    out_.attribute("y", box.centre.y + kBaseline * kTextSize);
    out_.attribute("text-anchor", align == Align::left    ? "start"
                                  : align == Align::right ? "end"
                                                          : "middle");
    out_.raw(">");
    out_.text(text);
    out_.raw("</text>");
  }

  Markup& out_;
  const Drawing& drawing_;
  Size size_{};
  Frame frame_;
  int decimals_ = kScreenDecimals;
};

// The style for a file: readers of cut shops know no custom properties, so each is replaced by what it
// falls back to.
std::string plain_style() {
  std::string out;
  std::string_view rest = kStyle;
  for (std::size_t at = rest.find("var("); at != rest.npos; at = rest.find("var(")) {
    const std::size_t comma = rest.find(',', at);
    const std::size_t end = rest.find(')', at);
    out += rest.substr(0, at);
    out += rest.substr(comma + 1, end - comma - 1);
    rest.remove_prefix(end + 1);
  }
  out += rest;
  return out;
}

void size_attribute(Markup& out, std::string_view name, double length_px, const SvgStyle& style) {
  if (!style.file && !style.paper) return out.attribute(name, length_px);
  const std::string length = fixed(length_px * kMillimetrePerPx, style.paper ? kPaperDecimals : 1);
  out.attribute(name, (style.paper ? trimmed(length) : length) + "mm");
}

void view_box(Markup& out, double width, double height, int decimals = kScreenDecimals) {
  out.raw(" viewBox=\"0 0 ");
  out.number(width, decimals);
  out.raw(" ");
  out.number(height, decimals);
  out.raw("\"");
}

}  // namespace

std::string write_svg(const Drawing& drawing, const SvgStyle& style) {
  Size size{std::max(style.width_px, 100.0), style.height_px};
  if (size.height <= 0.0) size.height = height_for(drawing, size.width);
  if (style.paper) {
    size = {(drawing.high.x - drawing.low.x) / kMillimetrePerPx,
            (drawing.high.y - drawing.low.y) / kMillimetrePerPx};
  }
  const bool file = style.file || style.paper;
  Markup out;
  out.raw("<svg class=\"drawing\" role=\"img\"");
  if (file) out.attribute("xmlns", "http://www.w3.org/2000/svg");
  view_box(out, size.width, size.height, style.paper ? kPaperDecimals : kScreenDecimals);
  size_attribute(out, "width", size.width, style);
  size_attribute(out, "height", size.height, style);
  out.raw(">");
  out.line("title", drawing.title);
  out.line("desc", drawing.description);
  if (file) {
    out.open("style");
    out.raw(plain_style());
    out.close("style");
  }
  Writer(out, drawing, size, style.paper).write();
  out.raw("</svg>\n");
  return out.take();
}

std::string write_svg(const Qr& qr, std::string_view name, double width_px) {
  if (qr.side == 0) return {};
  const double whole = qr.side + 2.0 * kQrQuiet;
  Markup out;
  out.raw("<svg class=\"qr\" role=\"img\" shape-rendering=\"crispEdges\"");
  view_box(out, whole, whole);
  out.attribute("width", width_px);
  out.attribute("height", width_px);
  out.raw(">");
  out.line("title", name);
  out.raw("<path fill=\"#fff\" d=\"M0 0h");
  out.number(whole);
  out.raw("v");
  out.number(whole);
  out.raw("H0z\"/><path fill=\"#000\" d=\"");
  for (int y = 0; y < qr.side; ++y) {
    for (int x = 0; x < qr.side; ++x) {
      if (!qr.at(x, y) || qr.at(x - 1, y)) continue;
      int run = 1;  // dark modules side by side are one bar
      while (qr.at(x + run, y)) ++run;
      out.raw("M");
      out.number(x + kQrQuiet);
      out.raw(" ");
      out.number(y + kQrQuiet);
      out.raw("h");
      out.number(run);
      out.raw("v1h-");
      out.number(run);
      out.raw("z");
    }
  }
  out.raw("\"/></svg>\n");
  return out.take();
}

std::string_view svg_style() { return kStyle; }

}  // namespace thole
