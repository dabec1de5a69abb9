#include "draw/elevation_sheet.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <span>
#include <utility>
#include <vector>

#include "calc/chosen_plate.h"
#include "base/number.h"
#include "draw/plate_strokes.h"
#include "draw/sketch.h"
#include "draw/title_block.h"
#include "io/figures.h"

namespace thole {
namespace {

constexpr double kStrip_mm = 44.0;  // notes and title block
constexpr double kTitle_mm = 120.0;
constexpr double kRound_mm = 6.0;
constexpr double kColumn_mm = 16.0;  // from one upright measure to the next
constexpr double kWords_mm = 20.0;   // after the last of them
constexpr double kRow_mm = 9.0;
constexpr double kGap_mm = 1.5;  // of extension lines
constexpr double kAhead_m = 0.3;  // levels run on ahead of the shaft
constexpr double kBeyond_m = 2.0;
constexpr double kCentre_mm = 2.0;  // mark of a centre of mass
constexpr int kColumns = 3;
constexpr int kRows = 2;

// Of ISO 5455, and some between as boats are drawn; an inch to a foot, three quarters, a half ... (common
// practice).
constexpr std::array kMetricScales{1, 2, 5, 10, 15, 20, 25, 30, 40, 50, 75, 100, 200};
constexpr std::array kInchScales{1, 2, 4, 8, 12, 16, 24, 32, 48, 64, 96, 128};

struct SheetSize {
  std::string_view name{};
  Point size{};
  Point low{};  // of the frame
  Point high{};
};

SheetSize size_of(Paper paper) {
  if (paper == Paper::a4) return {"A4", {297.0, 210.0}, {20.0, 10.0}, {287.0, 200.0}};  // ISO 5457, room to file
  return {"Letter", {279.4, 215.9}, {12.7, 12.7}, {266.7, 203.2}};
}

// What lies to one side of x = `limit`; `keep` 1: the greater. Open lines end there. The corners that the
// cut makes follow one another.
std::vector<Point> cut_at(const std::vector<Point>& points, bool closed, double limit, double keep) {
  std::vector<Point> out;
  const std::size_t sides = points.size() - (closed ? 0 : 1);
  const auto inside = [&](Point p) { return keep * (p.x - limit) >= 0.0; };
  for (std::size_t i = 0; i < points.size(); ++i) {
    const Point a = points[i];
    if (inside(a)) out.push_back(a);
    if (i >= sides) continue;
    const Point b = points[(i + 1) % points.size()];
    if (inside(a) == inside(b)) continue;
    out.push_back({limit, a.y + (b.y - a.y) * (limit - a.x) / (b.x - a.x)});
  }
  return out;
}

class Sheet {
 public:
  Sheet(const Design& design, const ElevationSheet& in)
      : design_(design), in_(in), size_(size_of(in.paper)), bow_(measure_bow(design)) {
    right_m_ = std::max(bow_.pivot_m, 0.0) + kAhead_m;
    const bool stowed = bow_.study.room.problem.empty();
    top_m_ = std::max(bow_.lowered_over_m, stowed ? bow_.stowed_over_m : 0.0);
    if (stowed) right_m_ = std::max(right_m_, bow_.pivot_m + kPodAhead_m + bow_.radius_m);
    right_m_ = std::max(right_m_, centre_m());
    choose_scale();
  }

  int scale() const { return scale_; }

  Drawing draw() {
    drawing_.title = "Bow elevation: " + in_.name;
    drawing_.high = size_.size;
    view();
    add_box(drawing_, size_.low, size_.high, Line::outline, Fill::none);
    upright();
    level();
    words();
    add_line(drawing_, {size_.low.x, strip_top_mm()}, {size_.high.x, strip_top_mm()}, Line::outline);
    notes();
    title_block();
    describe();
    return std::move(drawing_);
  }

 private:
  bool metric() const { return in_.system == System::metric; }
  double strip_top_mm() const { return size_.low.y + kStrip_mm; }
  double centre_m() const { return bow_.front_bolts_m + 1e-3 * design_.job.mount.overhang_mm.value; }
  bool stowed() const { return bow_.study.room.problem.empty(); }

  Point at(double x_m, double y_m) const {
    return {origin_.x + 1000.0 * x_m / scale_, origin_.y + 1000.0 * y_m / scale_};
  }
  std::string measure(double length_m) const {
    return metric() ? fixed(1000.0 * length_m, 0) : length_text(length_m, in_.system);
  }

  void choose_scale() {
    const double wide_m = right_m_ - bow_.left_m;
    const double high_m = top_m_ + bow_.deepest_m;
    const double room_x_mm = size_.high.x - size_.low.x - kRound_mm - kColumns * kColumn_mm - kWords_mm;
    const double room_y_mm = size_.high.y - strip_top_mm() - 3.0 * kRound_mm - kRows * kRow_mm;
    for (const int scale : metric() ? std::span<const int>(kMetricScales) : std::span<const int>(kInchScales)) {
      scale_ = scale;
      if (1000.0 * wide_m <= room_x_mm * scale && 1000.0 * high_m <= room_y_mm * scale) break;
    }
    const double free_x_mm = room_x_mm - 1000.0 * wide_m / scale_;
    const double free_y_mm = room_y_mm - 1000.0 * high_m / scale_;
    origin_ = {size_.low.x + kRound_mm + 0.5 * free_x_mm - 1000.0 * bow_.left_m / scale_,
               strip_top_mm() + kRound_mm + 0.5 * free_y_mm + 1000.0 * bow_.deepest_m / scale_};
  }

  // The picture's strokes, on paper and cut off aft.
  void view() {
    Drawing picture{.low = {bow_.left_m, -bow_.deepest_m - 0.25}};
    add_bow_view(picture, design_, bow_, right_m_, kBeyond_m);
    const double left_mm = at(bow_.left_m, 0.0).x;
    const double right_mm = at(right_m_, 0.0).x;
    for (Shape& shape : picture.shapes) {
      for (Point& p : shape.points) p = at(p.x, p.y);
      const bool cut = shape.closed && shape.fill == Fill::hull &&
                       std::any_of(shape.points.begin(), shape.points.end(), [&](Point p) { return p.x < left_mm; });
      shape.points = cut_at(cut_at(shape.points, shape.closed, left_mm, 1.0), shape.closed, right_mm, -1.0);
      if (shape.points.size() < 2) continue;
      if (!cut) {
        drawing_.shapes.push_back(std::move(shape));
        continue;
      }
      open_at(left_mm, shape);
    }
    for (Circle& circle : picture.circles) {
      circle.centre = at(circle.centre.x, circle.centre.y);
      circle.radius *= 1000.0 / scale_;
      drawing_.circles.push_back(circle);
    }
  }

  // The hull goes on aft: filled, but with no line where the sheet cuts it.
  void open_at(double left_mm, const Shape& shape) {
    drawing_.shapes.push_back({.points = shape.points, .closed = true, .line = Line::none, .fill = shape.fill});
    std::vector<Point> line = shape.points;
    for (std::size_t i = 0; i < line.size(); ++i) {
      if (line[i].x > left_mm || line[(i + 1) % line.size()].x > left_mm) continue;
      std::rotate(line.begin(), line.begin() + static_cast<std::ptrdiff_t>((i + 1) % line.size()), line.end());
      break;
    }
    drawing_.shapes.push_back({.points = std::move(line), .line = shape.line});
  }

  // --- measures

  double column_mm(int index) const { return at(right_m_, 0.0).x + 0.5 * kColumn_mm + kColumn_mm * index; }

  void upright() {
    const double tip_m = bow_.depth_m + bow_.radius_m;
    const auto span = [&](int column, double low_m, double high_m) {
      const double x_mm = column_mm(column);
      add_dimension(drawing_, {x_mm, at(0.0, low_m).y}, {x_mm, at(0.0, high_m).y}, measure(high_m - low_m));
    };
    const auto extend = [&](double from_m, double y_m, int column) {
      const Point from = at(from_m, y_m);
      add_line(drawing_, {from.x + kGap_mm, from.y}, {column_mm(column) + kGap_mm, from.y}, Line::thin);
    };
    span(0, bow_.bow_m + bow_.collar_m - design_.shaft.length_m, bow_.bow_m + bow_.collar_m);
    span(1, 0.0, bow_.bow_m);
    span(1, -bow_.depth_m, 0.0);
    span(2, -tip_m, 0.0);
    const double ahead_m = bow_.pivot_m + kHeadRadius_m;
    extend(ahead_m, bow_.bow_m + bow_.collar_m, 0);
    extend(std::max(ahead_m, 0.0), bow_.bow_m, 1);
    extend(right_m_, 0.0, 2);
    extend(bow_.pivot_m + kPodLength_m, -bow_.depth_m, 1);
    extend(bow_.pivot_m, -tip_m, 2);
  }

  void level() {
    double y_mm = at(0.0, top_m_).y + kRow_mm;
    const auto span = [&](double from_m, double from_y_m, double to_m, double to_y_m) {
      for (const auto& [x_m, y_m] : {std::pair{from_m, from_y_m}, std::pair{to_m, to_y_m}}) {
        const Point foot = at(x_m, y_m);
        add_line(drawing_, {foot.x, foot.y + kGap_mm}, {foot.x, y_mm + kGap_mm}, Line::thin);
      }
      add_dimension(drawing_, {at(from_m, 0.0).x, y_mm}, {at(to_m, 0.0).x, y_mm}, measure(to_m - from_m));
      y_mm += kRow_mm;
    };
    const double deck_m = bow_.bow_m + bow_.plate_m;
    const double centre_m = this->centre_m();
    const double lies_m = stowed() ? bow_.bow_m + lying_height_m(bow_.study.room_input.motor) : deck_m;
    const Point mass = at(centre_m, lies_m);
    drawing_.circles.push_back({.centre = mass, .radius = kCentre_mm, .line = Line::thin});
    add_centre_mark(drawing_, mass, kCentre_mm, 1.0);
    span(bow_.front_bolts_m, deck_m, centre_m, lies_m + kCentre_mm * 1e-3 * scale_);
    if (!stowed()) return;
    const double end_m = -bow_.study.room.stowed_end_m;
    span(end_m, lies_m, end_m + bow_.study.room.stowed_m, lies_m + bow_.radius_m);
  }

  // --- words

  std::string thickness() const {
    const double thick_mm = design_.mount.plate_thickness_mm;
    return metric() ? trimmed(fixed(thick_mm, 2)) + " mm" : show(thick_mm, "mm", in_.system).text();
  }

  void words() {
    const double left_mm = at(bow_.left_m, 0.0).x + 2.0;
    add_label(drawing_, {column_mm(kColumns - 1) + 3.5, at(0.0, 0.0).y}, "calm water", Align::left);
    const double motion_mm = 1000.0 * bow_.motion_m / scale_;
    if (motion_mm > 1.0) {
      add_label(drawing_, {left_mm, at(0.0, bow_.motion_m).y + 3.0}, "waves ±" + measure(bow_.motion_m), Align::left);
    }
    const Point plate = at(bow_.plate_front_m - 0.8 * bow_.plate_length_m, bow_.bow_m + 0.5 * bow_.plate_m);
    const Point below{plate.x - 6.0, at(0.0, bow_.bow_m).y - 11.0};
    add_line(drawing_, plate, below, Line::thin);
    add_label(drawing_, {below.x - 1.0, below.y - 2.0}, "plate t " + thickness(), Align::right);
    add_label(drawing_, {size_.high.x - 26.0, size_.high.y - 5.0}, "FORWARD", Align::right, TextRole::strong);
    drawing_.arrows.push_back({{size_.high.x - 24.0, size_.high.y - 5.0}, {size_.high.x - 5.0, size_.high.y - 5.0}, Line::outline});
  }

  void notes() {
    const Mount& mount = design_.job.mount;
    std::vector<std::string> all{metric() ? "Millimetres." : "Feet and inches."};
    all.front() += " Figures hold, not lines.";
    const std::optional<ChosenPlate> chosen = chosen_plate(design_);
    const std::size_t bolt_count = chosen ? chosen->shape.bolts.size() : 0;
    std::string plate = "Plate " + thickness();
    if (!design_.mount.plate.alloy.empty()) plate += " " + design_.mount.plate.alloy;
    if (!design_.mount.bolt.size.empty()) {
      plate += ", " + std::to_string(bolt_count) + " bolts " + design_.mount.bolt.size;
    }
    all.push_back(plate + ". Not a strong point.");
    all.push_back(stowed() ? "Dashed: stowed. Cross: its centre of mass, from the front bolts." : bow_.study.room.problem);
    std::string guessed;
    const auto guess = [&](bool measured, std::string_view what) {
      if (!measured) guessed += (guessed.empty() ? "" : ", ") + std::string(what);
    };
    guess(design_.job.boat.bow_height_m.given(), "bow height");
    guess(design_.job.foredeck.mount_x_m.given(), "the mount's place");
    guess(mount.overhang_mm.given(), "the centre of mass");
    if (!guessed.empty()) all.insert(all.begin(), "Estimated, to be measured first: " + guessed + ".");  // never left out
    const double left_mm = size_.low.x + 3.0;
    const double wide_mm = size_.high.x - kTitle_mm - left_mm - 2.0;
    double y_mm = strip_top_mm() - 4.0;
    for (std::size_t i = 0; i < all.size(); ++i) {
      for (std::string& line : wrapped(std::to_string(i + 1) + " " + all[i], wide_mm)) {
        if (y_mm < size_.low.y + 2.0) return;
        add_label(drawing_, {left_mm, y_mm}, fitted(std::move(line), wide_mm), Align::left);
        y_mm -= 5.0;
      }
    }
  }

  void title_block() {
    const auto or_dash = [](const std::string& text) { return text.empty() ? std::string("-") : text; };
    const MotorClass& motor = design_.hold.motor;
    add_title_block(drawing_, {size_.high.x - kTitle_mm, size_.low.y}, {size_.high.x, strip_top_mm()},
                    {{{"Bow elevation", 0.5, TextRole::strong}, {"No: -", 0.25}, {"Rev: -", 0.25}},
                     {{or_dash(in_.name)}},
                     {{"Motor: " + or_dash(motor.label.empty() ? motor.id : motor.label), 0.6},
                      {"Shaft: " + measure(design_.shaft.length_m), 0.4}},
                     {{"Scale 1:" + std::to_string(scale_), 0.3}, {"Date: " + or_dash(in_.date), 0.35},
                      {std::string(size_.name) + ", 1 of 1", 0.35}},
                     {{metric() ? "ISO 128, ISO 129-1" : "ASME Y14.3, Y14.5"}}});
  }

  void describe() {
    drawing_.description = "The bow from starboard at 1:" + std::to_string(scale_) + ", motor stowed and down: deck " +
                           measure(bow_.bow_m) + " above calm water, shaft " + measure(design_.shaft.length_m) +
                           ", propeller axis " + measure(bow_.depth_m) + " below it, overhang " +
                           measure(1e-3 * design_.job.mount.overhang_mm.value) + (metric() ? ", in millimetres." : ".");
  }

  const Design& design_;
  const ElevationSheet& in_;
  SheetSize size_;
  BowElevation bow_;
  Drawing drawing_{};
  double right_m_ = 0.0;
  double top_m_ = 0.0;
  int scale_ = 1;
  Point origin_{};  // of the paper, where stem and calm water meet
};

}  // namespace

int elevation_scale(const Design& design, const ElevationSheet& sheet) { return Sheet(design, sheet).scale(); }

Drawing elevation_drawing(const Design& design, const ElevationSheet& sheet) { return Sheet(design, sheet).draw(); }

}  // namespace thole
