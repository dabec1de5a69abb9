#include "draw/plate_drawing.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <span>
#include <string_view>
#include <utility>

#include "base/number.h"
#include "base/units.h"
#include "calc/plate/outline.h"
#include "calc/plate_made.h"
#include "draw/plate_strokes.h"
#include "draw/sketch.h"
#include "draw/title_block.h"

namespace thole {
namespace {

constexpr double kRow_mm = 6.0;          // of a table
constexpr double kLeastView_mm = 100.0;  // height kept for the views, however long the tables
constexpr double kTitle_mm = 130.0;
constexpr double kExtension_mm = 1.5;   // gap and overrun of extension lines
constexpr double kRoundDims_mm = 36.0;  // left and right of the plan
constexpr double kOverall_mm = 20.0;    // dimension lines under the plan
constexpr double kDatum_mm = 10.0;

struct SheetSize {
  std::string_view name{};
  Point size{};
  Point low{};  // of the frame
  Point high{};
  std::span<const int> scales{};  // 1 to ...
};

constexpr std::array kIsoScales{1, 2, 5, 10, 20, 50, 100};  // ISO 5455
constexpr std::array kInchScales{1, 2, 4, 8, 16, 32, 64};

SheetSize size_of(Drafting drafting) {
  if (drafting == Drafting::iso) {  // ISO 5457: 20 mm to the left for filing
    return {"A3", {420.0, 297.0}, {20.0, 10.0}, {410.0, 287.0}, kIsoScales};
  }
  return {"B", {431.8, 279.4}, {12.7, 12.7}, {419.1, 266.7}, kInchScales};
}

class Sheet {
 public:
  explicit Sheet(const PlateSheet& in)
      : in_(in),
        size_(size_of(in.drafting)),
        cut_(cut_of(in.shape)),
        datum_x_m_(datum_x_m(in.shape)) {}

  Drawing draw() {
    drawing_.title = in_.part.empty() ? own("Mount plate") : in_.part;
    drawing_.high = size_.size;
    add_box(drawing_, size_.low, size_.high, Line::outline, Fill::none);
    if (cut_.outer.empty()) {
      add_label(drawing_, middle(), own("No outline to draw"), Align::centre, TextRole::strong);
      drawing_.description = "There is no outline to draw.";
      return std::move(drawing_);
    }
    box_ = bounds(cut_.outer);
    collect_rows();
    place_views();
    plan();
    side_view();
    dimensions();
    tables();
    notes();
    title_block();
    describe();
    return std::move(drawing_);
  }

 private:
  bool iso() const { return in_.drafting == Drafting::iso; }
  Point middle() const {
    return {0.5 * (size_.low.x + size_.high.x), 0.5 * (size_.low.y + size_.high.y)};
  }

  // The sheet's own words: capitals by ASME Y14.2. What was typed stays as it is, for units' sake.
  std::string own(std::string text) const {
    if (iso()) return text;
    for (char& c : text) {
      if (c >= 'a' && c <= 'z') c = static_cast<char>(c - 'a' + 'A');
    }
    return text;
  }

  // Millimetres to a hundredth; inches to a thousandth, without a zero before the point (ASME
  // Y14.5).
  std::string measure(double length_m) const {
    if (iso()) return trimmed(fixed(1000.0 * length_m, 2));
    std::string text = fixed(in_from_m(length_m), 3);
    if (text.starts_with("0.")) text.erase(0, 1);
    if (text.starts_with("-0.")) text.erase(1, 1);
    return text;
  }

  // --- tables -----------------------------------------------------------------------------------

  struct Row {
    std::vector<std::string> cells{};
  };

  std::string kind_of(const PlateHole& hole) const {
    if (!(hole.countersink_m > 0.0)) return "THRU";
    return "CSK " + trimmed(fixed(in_.countersink_deg, 1)) + "° × Ø" + measure(hole.countersink_m);
  }

  void add_corners(const std::vector<PlateCorner>& given, const std::string& prefix) {
    const std::vector<PlateCorner> corners = cut_corners(given);
    for (std::size_t i = 0; i < corners.size(); ++i) {
      const PlateCorner& each = corners[i];
      corners_.push_back({{prefix + std::to_string(i + 1), measure(each.at.x_m - datum_x_m_),
                           measure(each.at.y_m), measure(each.radius_m)}});
    }
  }

  static std::string cut_out_name(std::size_t i) {
    return i < 20 ? std::string(1, static_cast<char>('D' + static_cast<int>(i)))
                  : "D" + std::to_string(i);
  }

  void collect_rows() {
    for (std::size_t i = 0; i < in_.shape.bolts.size(); ++i) {
      const PlateHole& hole = in_.shape.bolts[i];
      holes_.push_back({{std::to_string(i + 1), measure(hole.at.x_m - datum_x_m_),
                         measure(hole.at.y_m), measure(hole.diameter_m), kind_of(hole)}});
    }
    add_corners(in_.shape.outline, "C");
    for (std::size_t i = 0; i < in_.shape.cut_outs.size(); ++i) {
      add_corners(in_.shape.cut_outs[i], cut_out_name(i));
    }
    const double room_mm = size_.high.y - size_.low.y - kLeastView_mm;
    const auto most = static_cast<std::size_t>(room_mm / kRow_mm) - 3;
    for (auto* rows : {&holes_, &corners_}) {
      if (rows->size() <= most) continue;
      const std::size_t left = rows->size() - most + 1;
      rows->resize(most - 1);
      rows->push_back({{"+", std::to_string(left), own("in the"), own("file")}});
    }
    const std::size_t longest = std::max({holes_.size(), corners_.size(), std::size_t{in_.bars.empty() ? 8u : 10u}});
    strip_mm_ = kRow_mm * (static_cast<double>(longest) + 2.5);
  }

  void table(double left_mm, std::string_view title, std::span<const double> widths_mm,
             const Row& head, const std::vector<Row>& rows) {
    const double top_mm = size_.low.y + strip_mm_;
    double wide_mm = 0.0;
    for (const double each : widths_mm) wide_mm += each;
    add_label(drawing_, {left_mm + 2.0, top_mm - 0.5 * kRow_mm}, own(std::string(title)),
              Align::left, TextRole::strong);
    const auto line_at = [&](std::size_t row) {
      return top_mm - kRow_mm * (static_cast<double>(row) + 1.0);
    };
    const auto write = [&](std::size_t row, const Row& cells) {
      double x_mm = left_mm;
      for (std::size_t k = 0; k < cells.cells.size() && k < widths_mm.size(); ++k) {
        const bool words = k == 0 || k == 4;
        add_label(drawing_,
                  {words ? x_mm + 2.0 : x_mm + widths_mm[k] - 2.0, line_at(row) - 0.5 * kRow_mm},
                  cells.cells[k], words ? Align::left : Align::right);
        x_mm += widths_mm[k];
      }
    };
    write(0, head);
    for (std::size_t i = 0; i < rows.size(); ++i) write(i + 1, rows[i]);
    const std::size_t count = rows.size() + 1;
    for (std::size_t i = 0; i <= count; ++i) {
      add_line(drawing_, {left_mm, line_at(i)}, {left_mm + wide_mm, line_at(i)}, Line::thin);
    }
    double x_mm = left_mm;
    for (const double each : widths_mm) {
      x_mm += each;
      add_line(drawing_, {x_mm, line_at(0)}, {x_mm, line_at(count)}, Line::thin);
    }
  }

  static constexpr std::array kHoleColumns_mm{9.0, 21.0, 21.0, 18.0, 43.0};
  static constexpr std::array kCornerColumns_mm{11.0, 21.0, 21.0, 17.0};
  static double sum_mm(std::span<const double> widths_mm) {
    double sum = 0.0;
    for (const double each : widths_mm) sum += each;
    return sum;
  }

  void tables() {
    const double top_mm = size_.low.y + strip_mm_;
    add_line(drawing_, {size_.low.x, top_mm}, {size_.high.x, top_mm}, Line::outline);
    table(size_.low.x, "Holes, from datums A and B", kHoleColumns_mm,
          {{own("No"), "X", "Y", "Ø", own("Type")}}, holes_);
    table(size_.low.x + sum_mm(kHoleColumns_mm), "Sharp corners", kCornerColumns_mm,
          {{own("No"), "X", "Y", "R"}}, corners_);
  }

  // --- views ------------------------------------------------------------------------------------

  void place_views() {
    const double long_m = box_.high.x_m - box_.low.x_m;
    const double wide_m = box_.high.y_m - box_.low.y_m;
    const double thick_m = std::max(in_.shape.thickness_m, 0.0) + bar_height_m();
    const double room_x_mm = size_.high.x - size_.low.x - 2.0 * kRoundDims_mm;
    const double room_y_mm = size_.high.y - size_.low.y - strip_mm_;
    // From the bottom: dimensions, plan and side view in the order of the projection, words.
    constexpr double kUnder_mm = 28.0;
    constexpr double kBetween_mm = 16.0;
    constexpr double kOver_mm = 20.0;
    for (const int scale : size_.scales) {
      scale_ = scale;
      paper_.mm_per_m = 1000.0 / scale;
      if (paper_.length_mm(long_m) <= room_x_mm &&
          paper_.length_mm(wide_m + thick_m) + kUnder_mm + kBetween_mm + kOver_mm <= room_y_mm) {
        break;
      }
    }
    const double bottom_mm = size_.low.y + strip_mm_;
    const double plan_mm = paper_.length_mm(wide_m);
    const double side_mm = paper_.length_mm(thick_m);
    const double free_mm =
        0.5 * std::max(room_y_mm - plan_mm - side_mm - kUnder_mm - kBetween_mm - kOver_mm, 0.0);
    const double left_mm = 0.5 * (size_.low.x + size_.high.x - paper_.length_mm(long_m));
    // First angle puts the view from starboard above the plan, third angle below it.
    const double plan_low_mm =
        bottom_mm + free_mm + (iso() ? kUnder_mm : kUnder_mm + kBetween_mm + side_mm);
    side_low_mm_ = iso() ? plan_low_mm + plan_mm + kBetween_mm : plan_low_mm - kUnder_mm - side_mm;
    paper_.origin = {left_mm - paper_.length_mm(box_.low.x_m),
                     plan_low_mm - paper_.length_mm(box_.low.y_m)};
    low_ = paper_.at(box_.low);
    high_ = paper_.at(box_.high);
  }

  void plan() {
    drawing_.shapes.push_back({.points = on_paper(cut_.outer, paper_), .closed = true});
    for (std::size_t i = 0; i < cut_.cut_outs.size(); ++i) {
      if (cut_.cut_outs[i].empty()) continue;
      drawing_.shapes.push_back({.points = on_paper(cut_.cut_outs[i], paper_), .closed = true});
      const PlateBox box = bounds(cut_.cut_outs[i]);
      const Point at =
          paper_.at({0.5 * (box.low.x_m + box.high.x_m), 0.5 * (box.low.y_m + box.high.y_m)});
      // Clear of the centre line; over a cut-out that is too low for it.
      const double half_mm = paper_.length_mm(0.5 * (box.high.y_m - box.low.y_m));
      add_label(drawing_, {at.x, at.y + (half_mm < 6.0 ? half_mm + 3.0 : 3.5)}, cut_out_name(i));
    }
    bars();
    const double axis_mm = paper_.at({}).y;
    add_line(drawing_, {low_.x - 6.0, axis_mm}, {high_.x + 6.0, axis_mm}, Line::centre);
    datum_mark({low_.x - 9.0, axis_mm}, "A");
    for (std::size_t i = 0; i < in_.shape.bolts.size(); ++i) {
      const PlateHole& hole = in_.shape.bolts[i];
      const Point at = paper_.at(hole.at);
      const double radius_mm = paper_.length_mm(0.5 * hole.diameter_m);
      const double head_mm = std::max(paper_.length_mm(0.5 * hole.countersink_m), radius_mm);
      drawing_.circles.push_back({.centre = at, .radius = radius_mm});
      if (hole.countersink_m > 0.0) drawing_.circles.push_back({.centre = at, .radius = head_mm});
      add_centre_mark(drawing_, at, head_mm, 2.0);
      Point name{at.x + head_mm + 1.0, at.y + head_mm + 2.5};
      if (over_a_bar(name)) name.y = at.y - head_mm - 2.5;
      add_label(drawing_, name, std::to_string(i + 1), Align::left, TextRole::strong);
    }
    corner_labels();
    // Over the side view, or over the mark of datum B.
    const double words_mm =
        iso() ? side_low_mm_ + paper_.length_mm(in_.shape.thickness_m + bar_height_m()) + 11.0 : high_.y + 15.0;
    add_label(drawing_, {size_.low.x + 6.0, words_mm}, own("MOTOR SIDE UP: plan seen from above"),
              Align::left, TextRole::strong);
    drawing_.arrows.push_back({{high_.x - 24.0, words_mm}, {high_.x, words_mm}, Line::outline});
    add_label(drawing_, {high_.x - 26.0, words_mm}, "FORWARD", Align::right, TextRole::strong);
  }

  double bar_height_m() const { return in_.bars.empty() ? 0.0 : in_.bars.front().height_m; }

  static std::string bar_name(std::size_t i) { return "S" + std::to_string(i + 1); }

  bool over_a_bar(Point at) const {
    return std::any_of(in_.bars.begin(), in_.bars.end(), [&](const PlateBar& bar) {
      const Point low = paper_.at({bar.from_x_m, bar.y_m - 0.5 * bar.thickness_m});
      const Point high = paper_.at({bar.to_x_m, bar.y_m + 0.5 * bar.thickness_m});
      return at.x + 4.0 > low.x && at.x < high.x && at.y + 2.0 > low.y && at.y - 2.0 < high.y;
    });
  }

  void bars() {
    for (std::size_t i = 0; i < in_.bars.size(); ++i) {
      const PlateBar& bar = in_.bars[i];
      const Point low = paper_.at({bar.from_x_m, bar.y_m - 0.5 * bar.thickness_m});
      const Point high = paper_.at({bar.to_x_m, bar.y_m + 0.5 * bar.thickness_m});
      add_box(drawing_, low, high, Line::outline, Fill::none);
      // Inside, where no outline comes near.
      const double name_mm = bar.y_m > 0.0 ? low.y - 3.0 : high.y + 3.0;
      add_label(drawing_, {low.x + 0.25 * (high.x - low.x), name_mm}, bar_name(i));
    }
  }

  // Outside of each corner, away from the middle of the plate.
  void corner_labels() {
    const Point heart{0.5 * (low_.x + high_.x), 0.5 * (low_.y + high_.y)};
    const std::vector<PlateCorner> corners = cut_corners(in_.shape.outline);
    for (std::size_t i = 0; i < corners.size(); ++i) {
      const Point at = paper_.at(corners[i].at);
      const double off_mm = std::max(std::hypot(at.x - heart.x, at.y - heart.y), 1e-6);
      add_label(
          drawing_,
          {at.x + 5.0 * (at.x - heart.x) / off_mm, at.y + 4.0 * (at.y >= heart.y ? 1.0 : -1.0)},
          "C" + std::to_string(i + 1));
    }
  }

  void datum_mark(Point at, const std::string& letter) {
    add_box(drawing_, {at.x - 3.0, at.y - 3.0}, {at.x + 3.0, at.y + 3.0}, Line::thin, Fill::paper);
    add_label(drawing_, at, letter, Align::centre, TextRole::strong);
  }

  // From starboard, holes hidden; rows that lie behind one another are drawn once.
  void side_view() {
    const double thick_mm = paper_.length_mm(std::max(in_.shape.thickness_m, 0.0));
    const double top_mm = side_low_mm_ + thick_mm;
    add_box(drawing_, {low_.x, side_low_mm_}, {high_.x, top_mm}, Line::outline, Fill::none);
    std::vector<PlateHole> seen;
    for (const PlateHole& hole : in_.shape.bolts) {
      const bool again = std::any_of(seen.begin(), seen.end(), [&](const PlateHole& other) {
        return std::abs(other.at.x_m - hole.at.x_m) < kSamePlace_m &&
               other.diameter_m == hole.diameter_m && other.countersink_m == hole.countersink_m;
      });
      if (again) continue;
      seen.push_back(hole);
      const double x_mm = paper_.at(hole.at).x;
      const double radius_mm = paper_.length_mm(0.5 * hole.diameter_m);
      const double head_mm = std::max(paper_.length_mm(0.5 * hole.countersink_m), radius_mm);
      const double slope =
          std::tan(0.5 * rad_from_deg(std::clamp(in_.countersink_deg, 30.0, 150.0)));
      const double deep_mm = std::min((head_mm - radius_mm) / slope, thick_mm);
      for (const double side : {-1.0, 1.0}) {
        drawing_.shapes.push_back({.points = {{x_mm + side * radius_mm, side_low_mm_},
                                              {x_mm + side * radius_mm, top_mm - deep_mm},
                                              {x_mm + side * (head_mm), top_mm}},
                                   .line = Line::hidden});
      }
      add_line(drawing_, {x_mm, side_low_mm_ - 2.0}, {x_mm, top_mm + 2.0}, Line::thin);
    }
    side_bars(top_mm);
    const double x_mm = high_.x + 8.0;
    for (const double y_mm : {side_low_mm_, top_mm}) {
      add_line(drawing_, {high_.x + kExtension_mm, y_mm}, {x_mm + kExtension_mm, y_mm}, Line::thin);
    }
    drawing_.arrows.push_back({{x_mm, side_low_mm_ - 6.0}, {x_mm, side_low_mm_}, Line::thin});
    drawing_.arrows.push_back({{x_mm, top_mm + 6.0}, {x_mm, top_mm}, Line::thin});
    add_label(drawing_, {x_mm + 3.0, 0.5 * (side_low_mm_ + top_mm)},
              own("t ") + measure(in_.shape.thickness_m), Align::left);
  }

  // One behind the other: the nearest is seen.
  void side_bars(double top_mm) {
    if (in_.bars.empty()) return;
    const PlateBar& bar = in_.bars.front();
    const double from_mm = paper_.at({bar.from_x_m, 0.0}).x;
    const double high_mm = top_mm + paper_.length_mm(bar.height_m);
    add_box(drawing_, {from_mm, top_mm}, {paper_.at({bar.to_x_m, 0.0}).x, high_mm}, Line::outline, Fill::none);
    const double x_mm = low_.x - 8.0;
    for (const auto& [y_mm, edge_mm] : {std::pair{top_mm, low_.x}, std::pair{high_mm, from_mm}}) {
      add_line(drawing_, {edge_mm - kExtension_mm, y_mm}, {x_mm - kExtension_mm, y_mm}, Line::thin);
    }
    drawing_.arrows.push_back({{x_mm, top_mm - 6.0}, {x_mm, top_mm}, Line::thin});
    drawing_.arrows.push_back({{x_mm, high_mm + 6.0}, {x_mm, high_mm}, Line::thin});
    add_label(drawing_, {x_mm - 3.0, 0.5 * (top_mm + high_mm)}, own("h ") + measure(bar.height_m), Align::right);
  }

  // --- dimensions -------------------------------------------------------------------------------

  void along(double from_mm, double to_mm, double line_mm, double from_edge_mm, double to_edge_mm,
             double length_m) {
    add_dimension(drawing_, {from_mm, line_mm}, {to_mm, line_mm}, measure(length_m));
    add_line(drawing_, {from_mm, from_edge_mm - kExtension_mm}, {from_mm, line_mm - kExtension_mm},
             Line::thin);
    add_line(drawing_, {to_mm, to_edge_mm - kExtension_mm}, {to_mm, line_mm - kExtension_mm},
             Line::thin);
  }

  // Width between the sharp corners at one end; none when the end is a point or an arc.
  void across(bool fore) {
    const double end_m = fore ? box_.high.x_m : box_.low.x_m;
    double low_m = 1e9;
    double high_m = -1e9;
    for (const PlateCorner& each : in_.shape.outline) {
      if (std::abs(each.at.x_m - end_m) > kSamePlace_m) continue;
      low_m = std::min(low_m, each.at.y_m);
      high_m = std::max(high_m, each.at.y_m);
    }
    if (high_m - low_m < kSamePlace_m) return;
    const double edge_mm = fore ? high_.x : low_.x;
    const double way = fore ? 1.0 : -1.0;
    const double line_mm = edge_mm + (fore ? 18.0 : 24.0) * way;
    const Point a = paper_.at({end_m, low_m});
    const Point b = paper_.at({end_m, high_m});
    for (const Point& each : {a, b}) {
      add_line(drawing_, {edge_mm + kExtension_mm * way, each.y},
               {line_mm + kExtension_mm * way, each.y}, Line::thin);
    }
    add_dimension(drawing_, {line_mm, a.y}, {line_mm, b.y}, measure(high_m - low_m));
  }

  void dimensions() {
    along(low_.x, high_.x, low_.y - kOverall_mm, low_.y, low_.y, box_.high.x_m - box_.low.x_m);
    across(false);
    across(true);
    if (in_.shape.bolts.empty()) return;
    const double row_mm = paper_.at({datum_x_m_, 0.0}).x;
    add_line(drawing_, {row_mm, low_.y - 2.0}, {row_mm, high_.y + 4.0}, Line::centre);
    datum_mark({row_mm, high_.y + 7.0}, "B");
    if (datum_x_m_ - box_.low.x_m > kSamePlace_m) {
      along(low_.x, row_mm, low_.y - kDatum_mm, low_.y, low_.y, datum_x_m_ - box_.low.x_m);
    }
  }

  // --- words ------------------------------------------------------------------------------------

  double notes_left_mm() const {
    return size_.low.x + sum_mm(kHoleColumns_mm) + sum_mm(kCornerColumns_mm);
  }

  std::string bar_words() const {
    const PlateBar& bar = in_.bars.front();
    std::string words = bar_name(0);
    if (in_.bars.size() > 1) words += " to " + bar_name(in_.bars.size() - 1);
    words += ": flat " + measure(bar.height_m) + " × " + measure(bar.thickness_m) + ", " +
             measure(bar.to_x_m - bar.from_x_m) + " long, on edge, motor side; Y ";
    for (std::size_t i = 0; i < in_.bars.size(); ++i) words += (i > 0 ? ", " : "") + measure(in_.bars[i].y_m);
    return words + "; to X " + measure(bar.to_x_m - datum_x_m_) + ".";
  }

  void notes() {
    const double left_mm = notes_left_mm() + 3.0;
    const double wide_mm = size_.high.x - kTitle_mm - left_mm - 2.0;
    std::vector<std::string> all;
    const Issues issues = plate_issues(in_.shape);
    for (const Issue& issue : issues) {
      if (issue.severity == Severity::error) {
        all.push_back(own("NOT TO BE CUT: " + issue.message));
        break;
      }
    }
    for (std::string& each : bars_amiss(in_.shape, in_.bars)) all.push_back(own(std::move(each)));
    if (iso()) {
      all.push_back("Millimetres. General tolerance ISO 2768-m, holes ±0.5.");
      all.push_back("Break all edges 0.5-1 mm.");
    } else {
      all.push_back(own("Inches. Tolerance ±.02, holes ±.02."));
      all.push_back(own("Break all edges .02-.04."));
    }
    const bool sunk = std::any_of(in_.shape.bolts.begin(), in_.shape.bolts.end(),
                                  [](const PlateHole& hole) { return hole.countersink_m > 0.0; });
    if (sunk) all.push_back(own("Countersinks on the motor's side."));
    if (!in_.bars.empty()) all.push_back(own(bar_words()));
    all.push_back(own("Not a strong point, not a tow point."));
    for (const std::string& each : in_.notes) all.push_back(each);
    double y_mm = size_.low.y + strip_mm_ - 0.5 * kRow_mm;
    add_label(drawing_, {left_mm, y_mm}, own("Notes"), Align::left, TextRole::strong);
    std::vector<std::string> lines;
    for (std::size_t i = 0; i < all.size(); ++i) {
      for (std::string& each : wrapped(std::to_string(i + 1) + " " + all[i], wide_mm)) {
        lines.push_back(fitted(std::move(each), wide_mm));
      }
    }
    for (const std::string& each : lines) {
      y_mm -= 5.5;
      if (y_mm < size_.low.y + 3.0) {
        drawing_.labels.back().text = own("… more notes with the order");
        break;
      }
      add_label(drawing_, {left_mm, y_mm}, each, Align::left);
    }
    add_line(drawing_, {notes_left_mm(), size_.low.y}, {notes_left_mm(), size_.low.y + strip_mm_},
             Line::thin);
  }

  // The frustum seen from the side, and from its small end: that view lies on the right in first
  // angle, on the left in third (ISO 5456-2, ASME Y14.3).
  void projection_symbol(Point middle) {
    const double cone_mm = iso() ? middle.x - 6.0 : middle.x + 6.0;
    const double eye_mm = iso() ? middle.x + 6.0 : middle.x - 6.0;
    drawing_.shapes.push_back({.points = {{cone_mm - 4.0, middle.y - 1.5},
                                          {cone_mm + 4.0, middle.y - 3.0},
                                          {cone_mm + 4.0, middle.y + 3.0},
                                          {cone_mm - 4.0, middle.y + 1.5}},
                               .closed = true,
                               .line = Line::thin});
    for (const double radius : {1.5, 3.0}) {
      drawing_.circles.push_back(
          {.centre = {eye_mm, middle.y}, .radius = radius, .line = Line::thin});
    }
    add_line(drawing_, {cone_mm - 5.0, middle.y}, {cone_mm + 5.0, middle.y}, Line::centre);
    add_centre_mark(drawing_, {eye_mm, middle.y}, 3.0, 1.0);
  }

  std::string mass_words() const {
    if (!(in_.density_kg_per_m3 > 0.0)) return own("Mass: -");
    const auto weight = [&](double mass) {
      return iso() ? significant(mass, 3) + " kg" : significant(lb_from_kg(mass), 3) + " lb";
    };
    const double plate = mass_kg(in_.shape, in_.density_kg_per_m3);
    if (in_.bars.empty()) return own("Mass: ") + weight(plate);
    return own("Mass: ") + weight(plate + bars_mass_kg(in_.bars, in_.density_kg_per_m3)) + own(" with bars");
  }

  void title_block() {
    const double left_mm = size_.high.x - kTitle_mm;
    const double top_mm = size_.low.y + strip_mm_;
    const auto or_dash = [](const std::string& text) { return text.empty() ? std::string("-") : text; };
    const std::vector<std::vector<TitleCell>> rows{
        {{drawing_.title, 0.5, TextRole::strong}, {own("No: ") + or_dash(in_.number), 0.3}, {own("Rev: ") + or_dash(in_.revision), 0.2}},
        {{own("Material: ") + or_dash(in_.material)}},
        {{own("Finish: ") + or_dash(in_.finish)}},
        {{own("Thickness: ") + measure(in_.shape.thickness_m) + (iso() ? " mm" : " in"), 0.5}, {mass_words(), 0.5}},
        {{own("Scale 1:") + std::to_string(scale_), 0.3}, {own("Date: ") + or_dash(in_.date), 0.4}, {std::string(size_.name) + own(", 1 of 1"), 0.3}},
        {{iso() ? "ISO 128, ISO 129-1, first angle" : "ASME Y14.3, Y14.5, THIRD ANGLE", 0.7}, {"", 0.3}}};
    add_title_block(drawing_, {left_mm, size_.low.y}, {size_.high.x, top_mm}, rows);
    const double last_mm = size_.low.y + 0.5 * strip_mm_ / static_cast<double>(rows.size());
    projection_symbol({left_mm + 0.85 * kTitle_mm, last_mm});
  }

  void describe() {
    const std::string unit = iso() ? " mm" : " in";
    std::string& text = drawing_.description;
    text = "Plate of " + measure(box_.high.x_m - box_.low.x_m) + " by " +
           measure(box_.high.y_m - box_.low.y_m) + unit + ", " + measure(in_.shape.thickness_m) +
           unit + " thick, with " + std::to_string(in_.shape.bolts.size()) + " holes and " +
           std::to_string(in_.shape.cut_outs.size()) +
           " cut-outs, " + (in_.bars.empty() ? "" : std::to_string(in_.bars.size()) + " stiffeners on top, ") +
           "drawn at 1:" + std::to_string(scale_) +
           " with the motor's side up and forward to the right.";
  }

  const PlateSheet& in_;
  SheetSize size_;
  PlateCut cut_;
  double datum_x_m_ = 0.0;
  PlateBox box_{};
  Drawing drawing_{};
  OnPaper paper_{};
  int scale_ = 1;
  std::vector<Row> holes_{};
  std::vector<Row> corners_{};
  double strip_mm_ = 0.0;  // height of the tables, notes and title block
  double side_low_mm_ = 0.0;
  Point low_{};  // of the plan
  Point high_{};
};

}  // namespace

double datum_x_m(const PlateShape& shape) {
  if (shape.bolts.empty()) {
    const PlateContour outer = rounded(shape.outline);
    return outer.empty() ? 0.0 : bounds(outer).low.x_m;
  }
  double foremost_m = shape.bolts.front().at.x_m;
  for (const PlateHole& hole : shape.bolts) foremost_m = std::max(foremost_m, hole.at.x_m);
  return foremost_m;
}

Drawing plate_drawing(const PlateSheet& sheet) { return Sheet(sheet).draw(); }

}  // namespace thole
