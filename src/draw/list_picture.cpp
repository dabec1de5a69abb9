#include "draw/list_picture.h"

#include <algorithm>
#include <cmath>

#include "base/number.h"
#include "base/units.h"
#include "draw/sketch.h"

namespace thole {
namespace {

constexpr double kEnlarged = 5.0;
constexpr double kMostDrawn_deg = 30.0;

// Turned about the middle of the waterline, starboard down.
Point turned(Point at, double heel_deg) {
  const double sine = std::sin(rad_from_deg(heel_deg));
  const double cosine = std::cos(rad_from_deg(heel_deg));
  return {at.x * cosine + at.y * sine, at.y * cosine - at.x * sine};
}

void add_section(Drawing& drawing, const Boat& boat, double heel_deg, Line line, Fill fill) {
  const double half_deck = 0.5 * boat.beam_m.value;
  const double half_water = 0.5 * boat.waterline_beam_m.value;
  const double sheer = 0.7 * boat.bow_height_m.value;
  const double draft = boat.draft_m.value;
  const double rise = std::min(half_water * std::tan(rad_from_deg(boat.deadrise_deg.value)), 0.9 * draft);
  const Point side[] = {{0.0, -draft}, {half_water, rise - draft}, {half_deck, sheer}};
  Shape hull{.closed = true, .line = line, .fill = fill};
  for (const Point& at : side) hull.points.push_back(turned(at, heel_deg));
  hull.points.push_back(turned({-half_deck, sheer}, heel_deg));
  hull.points.push_back(turned({-half_water, rise - draft}, heel_deg));
  drawing.shapes.push_back(std::move(hull));
}

void add_weight(Drawing& drawing, Point at, double half, double heel_deg, Fill fill) {
  Shape box{.closed = true, .line = Line::outline, .fill = fill};
  for (const Point& corner : {Point{-half, -half}, Point{half, -half}, Point{half, half}, Point{-half, half}}) {
    box.points.push_back(turned({at.x + corner.x, at.y + corner.y}, heel_deg));
  }
  drawing.shapes.push_back(std::move(box));
}

}  // namespace

Drawing list_picture(const Design& design, System system) {
  const Boat& boat = design.job.boat;
  const Trim& trim = design.job.trim;
  const double beam = boat.beam_m.value;
  const double heel_deg = design.trim.heel_deg;
  const double drawn_deg = std::clamp(kEnlarged * heel_deg, -kMostDrawn_deg, kMostDrawn_deg);
  const double top = std::max(trim.motor_z_m.value, boat.bow_height_m.value) + 0.12 * beam;
  const double wide = std::max({0.85 * beam, std::abs(trim.bank_y_m.value) + 0.2, std::abs(trim.motor_y_m.value) + 0.2});
  Drawing drawing{.title = "The list, from astern"};
  drawing.low = {-wide, -std::max(boat.draft_m.value + 0.1 * beam, 0.2 * beam + boat.draft_m.value)};
  drawing.high = {wide, top + 0.18 * beam};
  add_water(drawing);
  add_section(drawing, boat, 0.0, Line::hidden, Fill::none);
  add_section(drawing, boat, drawn_deg, line_for(boat.beam_m.origin), Fill::hull);
  add_section(drawing, boat, 0.0, Line::hidden, Fill::none);
  add_weight(drawing, {trim.bank_y_m.value, trim.bank_z_m.value}, 0.06 * beam, drawn_deg, Fill::paper);
  add_weight(drawing, {trim.motor_y_m.value, trim.motor_z_m.value}, 0.04 * beam, drawn_deg, Fill::accent);
  add_label(drawing, {drawing.low.x, drawing.high.y - 0.03 * beam}, "list × " + fixed(kEnlarged, 0), Align::left);
  add_label(drawing, {drawing.high.x, drawing.high.y - 0.03 * beam}, "starboard →", Align::right);
  const std::string list = std::abs(heel_deg) < 0.005
                               ? std::string("No list")
                               : "List " + fixed(std::abs(heel_deg), 2) + (heel_deg > 0.0 ? "° to starboard" : "° to port");
  add_label(drawing, {0.0, drawing.low.y + 0.05 * beam}, list, Align::centre, TextRole::strong);
  drawing.description = list + ", drawn " + fixed(kEnlarged, 0) + " times as large. The bank of " +
                        mass_text(design.bank.mass_kg, system) + " stands " + length_text(trim.bank_z_m.value, system) +
                        " above the water, the stowed motor " + length_text(trim.motor_z_m.value, system) +
                        ". Dashed is before.";
  return drawing;
}

}  // namespace thole
