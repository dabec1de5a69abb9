#include "draw/drill_template.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numbers>
#include <optional>
#include <utility>

#include "base/number.h"
#include "base/units.h"
#include "calc/plate/outline.h"
#include "draw/plate_strokes.h"
#include "draw/sketch.h"

namespace thole {
namespace {

constexpr double kStrip_mm = 30.0;  // under each window: bars, number, words
constexpr double kRound_mm = 12.0;  // white round the plate, for centre lines to run out
constexpr double kMark_mm = 5.0;    // half a mark's cross
constexpr double kMarkShares[]{0.15, 0.85};

struct Window {
  Point low{};
  Point high{};
  bool holds(Point p) const {
    return p.x >= low.x && p.x <= high.x && p.y >= low.y && p.y <= high.y;
  }
};

// What of a line lies in the window (Liang and Barsky's clipping).
std::optional<std::pair<Point, Point>> clipped(const Window& window, Point a, Point b) {
  double from = 0.0;
  double to = 1.0;
  const double dx = b.x - a.x;
  const double dy = b.y - a.y;
  const double ways[4] = {-dx, dx, -dy, dy};
  const double rooms[4] = {a.x - window.low.x, window.high.x - a.x, a.y - window.low.y,
                           window.high.y - a.y};
  for (std::size_t i = 0; i < 4; ++i) {
    if (ways[i] == 0.0) {
      if (rooms[i] < 0.0) return std::nullopt;
      continue;
    }
    const double share = rooms[i] / ways[i];
    if (ways[i] < 0.0) {
      from = std::max(from, share);
    } else {
      to = std::min(to, share);
    }
  }
  if (from >= to) return std::nullopt;
  return std::pair{Point{a.x + from * dx, a.y + from * dy}, Point{a.x + to * dx, a.y + to * dy}};
}

struct PageSize {
  double short_mm = 0.0;
  double long_mm = 0.0;
};
PageSize size_of(Paper paper) {
  return paper == Paper::a4 ? PageSize{210.0, 297.0}
                            : PageSize{215.9, 279.4};  // ISO 216, ASME Y14.1
}

int count_for(double length_mm, double window_mm) {
  return std::max(
      1, static_cast<int>(std::ceil(
             (length_mm - kTemplateOverlap_mm) / (window_mm - kTemplateOverlap_mm) - 1e-9)));
}

class Page {
 public:
  Page(const DrillTemplate& wanted, const TemplateTiling& tiling, const PlateCut& cut, int column,
       int row)
      : wanted_(wanted), tiling_(tiling), cut_(cut), column_(column), row_(row) {
    window_.low = {kTemplateMargin_mm, kTemplateMargin_mm + kStrip_mm};
    window_.high = {window_.low.x + tiling.window_width_mm,
                    window_.low.y + tiling.window_height_mm};
    const PlateBox box = bounds(cut.outer);
    const double step_x_mm = tiling.window_width_mm - kTemplateOverlap_mm;
    const double step_y_mm = tiling.window_height_mm - kTemplateOverlap_mm;
    paper_.origin = {
        window_.low.x - tiling.first_x_mm - step_x_mm * column - paper_.length_mm(box.low.x_m),
        window_.low.y - tiling.first_y_mm - step_y_mm * row - paper_.length_mm(box.low.y_m)};
    axis_from_ = paper_.at({box.low.x_m, 0.0});
    axis_to_ = paper_.at({box.high.x_m, 0.0});
  }

  Drawing draw() {
    const int page = number(column_, row_);
    const int pages = tiling_.columns * tiling_.rows;
    page_words_ = "Page " + std::to_string(page) + " of " + std::to_string(pages);
    drawing_.title = "Drill template, " + page_words_;
    drawing_.description = "The plate at true size with the motor's side up, column " +
                           std::to_string(column_ + 1) + " of " + std::to_string(tiling_.columns) +
                           ", row " + std::to_string(row_ + 1) + " of " +
                           std::to_string(tiling_.rows) + ".";
    drawing_.high = {tiling_.page_width_mm, tiling_.page_height_mm};
    add_box(drawing_, window_.low, window_.high, Line::thin, Fill::none);
    closed(on_paper(cut_.outer, paper_), Line::outline);
    for (const PlateContour& each : cut_.cut_outs) {
      if (!each.empty()) closed(on_paper(each, paper_), Line::outline);
    }
    line({axis_from_.x - kRound_mm, axis_from_.y}, {axis_to_.x + kRound_mm, axis_to_.y},
         Line::centre);
    for (std::size_t i = 0; i < wanted_.shape.bolts.size(); ++i) hole(i);
    joins();
    bars();
    words();
    return std::move(drawing_);
  }

 private:
  int number(int column, int row) const { return row * tiling_.columns + column + 1; }

  void line(Point a, Point b, Line kind) {
    if (const auto seen = clipped(window_, a, b))
      add_line(drawing_, seen->first, seen->second, kind);
  }
  void closed(const std::vector<Point>& points, Line kind) {
    // One stroke as long as it stays in the window.
    std::vector<Point> run;
    const auto finish = [&] {
      if (run.size() > 1) drawing_.shapes.push_back({.points = run, .line = kind});
      run.clear();
    };
    for (std::size_t i = 0; i < points.size(); ++i) {
      const auto seen = clipped(window_, points[i], points[(i + 1) % points.size()]);
      if (!seen) {
        finish();
        continue;
      }
      if (run.empty() || !(run.back() == seen->first)) {
        finish();
        run.push_back(seen->first);
      }
      run.push_back(seen->second);
    }
    finish();
  }

  void circle(Point centre, double radius_mm, Line kind) {
    const Window inner{{window_.low.x + radius_mm, window_.low.y + radius_mm},
                       {window_.high.x - radius_mm, window_.high.y - radius_mm}};
    if (inner.holds(centre)) {
      drawing_.circles.push_back({.centre = centre, .radius = radius_mm, .line = kind});
      return;
    }
    constexpr int kSides = 180;
    std::vector<Point> points;
    for (int i = 0; i < kSides; ++i) {
      const double angle_rad = 2.0 * std::numbers::pi * i / kSides;
      points.push_back(
          {centre.x + radius_mm * std::cos(angle_rad), centre.y + radius_mm * std::sin(angle_rad)});
    }
    closed(points, kind);
  }

  void hole(std::size_t i) {
    const PlateHole& hole = wanted_.shape.bolts[i];
    const Point at = paper_.at(hole.at);
    const double radius_mm = paper_.length_mm(0.5 * hole.diameter_m);
    const double head_mm = std::max(radius_mm, paper_.length_mm(0.5 * hole.countersink_m));
    circle(at, radius_mm, Line::outline);
    if (hole.countersink_m > 0.0) circle(at, head_mm, Line::thin);
    const double arm_mm = head_mm + 4.0;
    line({at.x - arm_mm, at.y}, {at.x + arm_mm, at.y}, Line::thin);
    line({at.x, at.y - arm_mm}, {at.x, at.y + arm_mm}, Line::thin);
    if (!window_.holds(at)) return;
    std::string text = std::to_string(i + 1) + ": Ø" + trimmed(fixed(1000.0 * hole.diameter_m, 2));
    if (hole.countersink_m > 0.0) {
      text += ", CSK " + trimmed(fixed(wanted_.countersink_deg, 1)) + "° × Ø" +
              trimmed(fixed(1000.0 * hole.countersink_m, 2));
    }
    const bool left = at.x > 0.5 * (window_.low.x + window_.high.x);
    add_label(drawing_, {at.x + (left ? -1.0 : 1.0) * (head_mm + 2.0), at.y + head_mm + 3.0}, text,
              left ? Align::right : Align::left);
  }

  // --- where pages join -------------------------------------------------------------------------

  void mark(Point at) {
    add_centre_mark(drawing_, at, 0.0, kMark_mm);
    drawing_.circles.push_back({.centre = at, .radius = 2.5, .line = Line::thin});
  }

  // Along the middle of the strip that both pages show; the marks lie at the same places of the
  // plate on either page.
  void join(int column, int row) {
    const bool beside = column != column_;
    const bool after = beside ? column > column_ : row > row_;
    const double half_mm = 0.5 * kTemplateOverlap_mm;
    const double off_mm =
        after ? (beside ? tiling_.window_width_mm : tiling_.window_height_mm) - half_mm : half_mm;
    const auto place = [&](double share) {
      return beside
                 ? Point{window_.low.x + off_mm, window_.low.y + share * tiling_.window_height_mm}
                 : Point{window_.low.x + share * tiling_.window_width_mm, window_.low.y + off_mm};
    };
    add_line(drawing_, place(0.0), place(1.0), Line::hidden);
    for (const double share : kMarkShares) mark(place(share));
    const int here = number(column_, row_);
    const int there = number(column, row);
    const Point at = place(0.25);
    add_label(
        drawing_,
        {beside ? at.x + (after ? -9.0 : 9.0) : at.x, beside ? at.y : at.y + (after ? -4.0 : 4.0)},
        std::to_string(std::min(here, there)) + "|" + std::to_string(std::max(here, there)));
  }

  void joins() {
    if (column_ > 0) join(column_ - 1, row_);
    if (column_ + 1 < tiling_.columns) join(column_ + 1, row_);
    if (row_ > 0) join(column_, row_ - 1);
    if (row_ + 1 < tiling_.rows) join(column_, row_ + 1);
  }

  // --- under the window -------------------------------------------------------------------------

  // `part_count` parts, every one with a tick.
  void bar(double y_mm, double length_mm, int part_count, const std::string& text) {
    const double left_mm = kTemplateMargin_mm;
    add_line(drawing_, {left_mm, y_mm}, {left_mm + length_mm, y_mm}, Line::outline);
    for (int i = 0; i <= part_count; ++i) {
      const double x_mm = left_mm + length_mm * i / part_count;
      const bool end = i == 0 || i == part_count;
      add_line(drawing_, {x_mm, y_mm}, {x_mm, y_mm + (end ? 4.0 : 2.0)}, Line::thin);
    }
    add_label(drawing_, {left_mm + 0.5 * length_mm, y_mm + 5.0}, text, Align::centre,
              TextRole::strong);
  }

  void bars() {
    bar(kTemplateMargin_mm + 15.0, 100.0, 10, "100.0 mm");
    bar(kTemplateMargin_mm + 2.0, 4.0 * 1000.0 * kMetrePerInch, 8, "4.000 in");
  }

  void words() {
    const double left_mm = kTemplateMargin_mm + 108.0;
    double y_mm = kTemplateMargin_mm + 25.0;
    const auto write = [&](std::string text, TextRole role = TextRole::note) {
      add_label(drawing_, {left_mm, y_mm}, std::move(text), Align::left, role);
      y_mm -= 6.0;
    };
    std::string name = wanted_.name.substr(0, 24);
    while (!name.empty() && (static_cast<unsigned char>(name.back()) & 0x80u) != 0) name.pop_back();
    write(page_words_ + (name.empty() ? "" : ", " + name), TextRole::strong);
    write("MOTOR SIDE UP, seen from above", TextRole::strong);
    write("Print at 100 %. Measure both");
    write("bars before drilling.");
    drawing_.arrows.push_back({{left_mm, y_mm + 1.0}, {left_mm + 20.0, y_mm + 1.0}, Line::outline});
    add_label(drawing_, {left_mm + 22.0, y_mm + 1.0}, "FORWARD", Align::left, TextRole::strong);
  }

  const DrillTemplate& wanted_;
  const TemplateTiling& tiling_;
  const PlateCut& cut_;
  int column_ = 0;
  int row_ = 0;
  Window window_{};
  OnPaper paper_{};
  Point axis_from_{};
  Point axis_to_{};
  std::string page_words_{};
  Drawing drawing_{};
};

}  // namespace

TemplateTiling tile_template(const DrillTemplate& wanted) {
  const PlateContour outer = rounded(wanted.shape.outline);
  if (outer.empty()) return {};
  const PlateBox box = bounds(outer);
  const double long_mm = 1000.0 * (box.high.x_m - box.low.x_m) + 2.0 * kRound_mm;
  const double wide_mm = 1000.0 * (box.high.y_m - box.low.y_m) + 2.0 * kRound_mm;
  if (long_mm > 1e5 || wide_mm > 1e5) return {};  // before the counts below overflow
  const PageSize page = size_of(wanted.paper);
  TemplateTiling best;
  for (const bool across : {true, false}) {
    TemplateTiling tiling;
    tiling.page_width_mm = across ? page.long_mm : page.short_mm;
    tiling.page_height_mm = across ? page.short_mm : page.long_mm;
    tiling.window_width_mm = tiling.page_width_mm - 2.0 * kTemplateMargin_mm;
    tiling.window_height_mm = tiling.page_height_mm - 2.0 * kTemplateMargin_mm - kStrip_mm;
    tiling.columns = count_for(long_mm, tiling.window_width_mm);
    tiling.rows = count_for(wide_mm, tiling.window_height_mm);
    // Centred on all the paper there is.
    const auto whole = [](int count, double window_mm) {
      return count * (window_mm - kTemplateOverlap_mm) + kTemplateOverlap_mm;
    };
    tiling.first_x_mm =
        -kRound_mm - 0.5 * (whole(tiling.columns, tiling.window_width_mm) - long_mm);
    tiling.first_y_mm = -kRound_mm - 0.5 * (whole(tiling.rows, tiling.window_height_mm) - wide_mm);
    if (best.columns == 0 || tiling.columns * tiling.rows < best.columns * best.rows) best = tiling;
  }
  return best.columns * best.rows > kMostTemplatePages ? TemplateTiling{} : best;
}

std::vector<Drawing> drill_template(const DrillTemplate& wanted) {
  const TemplateTiling tiling = tile_template(wanted);
  const PlateCut cut = cut_of(wanted.shape);
  std::vector<Drawing> pages;
  for (int row = 0; row < tiling.rows; ++row) {
    for (int column = 0; column < tiling.columns; ++column) {
      pages.push_back(Page(wanted, tiling, cut, column, row).draw());
    }
  }
  return pages;
}

}  // namespace thole
