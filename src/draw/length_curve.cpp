#include "draw/length_curve.h"

#include <algorithm>
#include <cmath>

#include "base/number.h"
#include "draw/sketch.h"
#include "io/figures.h"

namespace thole {
namespace {

constexpr double kSame_m = 1e-6;
constexpr double kDot_ratio = 0.011;
constexpr double kName_frac = 0.625;

std::string percent(double share_frac) { return fixed(100.0 * share_frac, share_frac > 0.0 && share_frac < 0.01 ? 1 : 0) + " %"; }

void add_grid(Drawing& drawing, double left, double right) {
  for (const double share : {0.0, 0.25, 0.5, 0.75, 1.0}) {
    add_polyline(drawing, {{left, share}, {right, share}}, Line::thin);
    add_label(drawing, {left - 0.02 * (right - left), share}, fixed(100.0 * share, 0) + " %", Align::right);
  }
}

// Where a falling curve passes this height, or its end.
Point fallen_to(const std::vector<Point>& curve, double y) {
  for (const Point& point : curve) {
    if (point.y <= y) return {point.x, y};
  }
  return curve.back();
}

// What is sold, its length under the axis, every other one lower so that they keep apart.
void add_sold(Drawing& drawing, const LengthStudy& study, double span, System system) {
  int row = 0;
  for (const LengthPoint& point : study.sold) {
    const bool chosen = std::abs(point.length_m - study.chosen.length_m) < kSame_m;
    add_polyline(drawing, {{point.length_m, 0.0}, {point.length_m, -0.03}}, Line::outline);
    drawing.circles.push_back({.centre = {point.length_m, point.kept_frac},
                               .radius = kDot_ratio * span,
                               .line = Line::outline,
                               .fill = chosen ? Fill::strong : Fill::paper});
    add_label(drawing, {point.length_m, row % 2 == 0 ? -0.1 : -0.21}, length_text(point.length_m, system), Align::centre,
              chosen ? TextRole::strong : TextRole::note);
    ++row;
  }
}

}  // namespace

Drawing length_curve_picture(const LengthStudy& study, System system) {
  Drawing drawing{.title = "Thrust against shaft length", .to_scale = false};
  const double left = study.curve.front().length_m;
  const double right = study.curve.back().length_m;
  const double span = right - left;
  drawing.low = {left - 0.16 * span, -0.29};
  drawing.high = {right + 0.03 * span, 1.2};
  add_grid(drawing, left, right);
  std::vector<Point> kept;
  std::vector<Point> airing;
  for (const LengthPoint& point : study.curve) {
    kept.push_back({point.length_m, point.kept_frac});
    airing.push_back({point.length_m, point.ventilating_frac});
  }
  add_polyline(drawing, {{study.needed_m, 0.0}, {study.needed_m, kName_frac - 0.07}}, Line::hidden);  // broken for a name
  add_polyline(drawing, {{study.needed_m, kName_frac + 0.07}, {study.needed_m, 1.08}}, Line::hidden);
  const bool right_half = study.needed_m > left + 0.5 * span;
  add_label(drawing, {study.needed_m + (right_half ? 0.01 : -0.01) * span, 1.12}, "needed " + length_text(study.needed_m, system),
            right_half ? Align::right : Align::left);
  add_polyline(drawing, airing, Line::outline);
  add_polyline(drawing, kept, Line::accent);
  add_label(drawing, {right, kept.back().y - 0.09}, "thrust kept", Align::right, TextRole::strong);
  // Between two lines of the grid, on the side where there is room.
  const Point named = fallen_to(airing, airing.front().y > kName_frac ? kName_frac : 0.6 * airing.front().y);
  const bool falls_left = named.x < left + 0.5 * span;
  add_label(drawing, {named.x + (falls_left ? 0.02 : -0.02) * span, named.y}, "time drawing air", falls_left ? Align::left : Align::right,
            TextRole::strong);
  add_polyline(drawing, {{study.chosen.length_m, 0.0}, {study.chosen.length_m, study.chosen.kept_frac}}, Line::thin);
  add_sold(drawing, study, span, system);
  drawing.circles.push_back({.centre = {study.chosen.length_m, study.chosen.kept_frac}, .radius = kDot_ratio * span, .fill = Fill::strong});
  drawing.description = "Thrust kept in the waves against shaft length. Chosen: " + length_text(study.chosen.length_m, system) + " keeps " +
                        percent(study.chosen.kept_frac) + ", drawing air " + percent(study.chosen.ventilating_frac) +
                        " of the time; needed: " + length_text(study.needed_m, system) + ". Sold:";
  for (const LengthPoint& point : study.sold) {
    drawing.description += " " + length_text(point.length_m, system) + " keeps " + percent(point.kept_frac) + ", drawing air " +
                           percent(point.ventilating_frac) + ";";
  }
  drawing.description.back() = '.';
  return drawing;
}

Drawing tube_bend_picture(const LengthStudy& study, System system) {
  Drawing drawing{.title = "The shaft as it bends at full thrust", .to_scale = false};
  const BendPoint& end = study.bend.back();
  const double length = end.below_m;
  const double deep = std::max(end.deflection_mm, 1e-6);
  drawing.low = {-0.12 * length, -1.62};
  drawing.high = {1.08 * length, 0.85};
  add_box(drawing, {-0.1 * length, -0.22}, {0.0, 0.22}, Line::outline, Fill::hull, true);
  add_polyline(drawing, {{0.0, 0.0}, {length, 0.0}}, Line::hidden);
  std::vector<Point> line;
  for (const BendPoint& at : study.bend) line.push_back({at.below_m, -at.deflection_mm / deep});
  add_polyline(drawing, line, Line::accent);
  add_label(drawing, {-0.1 * length, 0.5}, "lower bearing", Align::left);
  add_label(drawing, {1.06 * length, 0.5}, "propeller", Align::right);
  add_dimension(drawing, {0.0, 0.26}, {length, 0.26}, length_text(length, system));
  const std::size_t last = study.bend.size() - 1;
  for (const std::size_t i : {last / 3, 2 * last / 3, last}) {
    const BendPoint& at = study.bend[i];
    const Point foot{at.below_m, -at.deflection_mm / deep};
    drawing.circles.push_back({.centre = foot, .radius = kDot_ratio * length, .fill = Fill::strong});
    const Align align = i == last ? Align::right : Align::centre;
    const double x = i == last ? 1.06 * length : foot.x;
    add_label(drawing, {x, -1.24}, show(at.deflection_mm, "mm", system).text(), align, i == last ? TextRole::strong : TextRole::note);
    add_label(drawing, {x, -1.48}, fixed(at.slope_deg, 1) + "°", align);
  }
  drawing.description = "Bent by full thrust the shaft's end moves " + show(end.deflection_mm, "mm", system).text() + " and tilts by " +
                        fixed(end.slope_deg, 1) + "°; stress at the lower bearing " + show(study.bend.front().stress_MPa, "MPa", system).text() +
                        " of " + show(study.limit_MPa, "MPa", system).text() + ". The bend is drawn larger than it is.";
  return drawing;
}

}  // namespace thole
