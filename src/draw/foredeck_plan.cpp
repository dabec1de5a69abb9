#include "draw/foredeck_plan.h"

#include <algorithm>
#include <cmath>

#include "base/number.h"
#include "base/units.h"
#include "draw/sketch.h"
#include "io/figures.h"

namespace thole {
namespace {

constexpr int kEdgePoints = 48;
constexpr int kArcPoints = 24;
constexpr double kLightRay_m = 0.55;
constexpr double kUnderDeck_m = 0.16;
constexpr double kNameOff_m = 0.08;

enum class View { above, side };

// On the sheet: x forward of the stem, y to port or above the deck.
Point seen(View view, const Place3& p) { return {-p.aft_m, view == View::above ? -p.starboard_m : p.up_m}; }

struct Extent {
  double aft_m = 0.0;
  double ahead_m = 0.0;
  double half_m = 0.0;
};

Extent extent_of(const ForedeckStudy& study) {
  const RoomInput& in = study.room_input;
  Extent e{.aft_m = std::max({study.room.stowed_end_m, in.deck_length_m, 1.0}),
           .ahead_m = std::max(-in.stance.pivot_aft_m, 0.0) + 0.35,
           .half_m = std::max(half_deck_m(in, 2.0), std::abs(in.stance.pivot_starboard_m) + 0.3)};
  for (const DeckItem& item : in.items) {
    e.aft_m = std::max(e.aft_m, item.aft_m + 0.5 * item.length_m);
    e.ahead_m = std::max(e.ahead_m, 0.5 * item.length_m - item.aft_m);
    e.half_m = std::max(e.half_m, std::abs(item.starboard_m) + 0.5 * item.width_m);
  }
  return e;
}

void add_deck(Drawing& drawing, const RoomInput& in, const Extent& extent, Line line) {
  Shape deck{.closed = true, .line = line, .fill = Fill::hull};
  for (int i = -kEdgePoints; i <= kEdgePoints; ++i) {
    const double aft = (extent.aft_m + 0.1) * i * i / (kEdgePoints * kEdgePoints);
    const double half = half_deck_m(in, aft);
    deck.points.push_back(seen(View::above, {aft, i < 0 ? -half : half, 0.0}));
  }
  drawing.shapes.push_back(std::move(deck));
  add_polyline(drawing, {{-extent.aft_m, 0.0}, {extent.ahead_m, 0.0}}, Line::centre);
}

// The deck from the side, with the stem's rake.
void add_deck_side(Drawing& drawing, const Extent& extent, Line line) {
  drawing.shapes.push_back({.points = {{-extent.aft_m - 0.1, 0.0}, {0.0, 0.0}, {-0.75 * kUnderDeck_m, -kUnderDeck_m}, {-extent.aft_m - 0.1, -kUnderDeck_m}},
                            .closed = true,
                            .line = line,
                            .fill = Fill::hull});
}

void add_rails(Drawing& drawing, const RoomInput& in, View view) {
  for (const double side : {-1.0, 1.0}) {
    const std::vector<Place3> rail = rail_line(in, side);
    if (rail.empty()) return;
    std::vector<Point> line;
    for (const Place3& p : rail) line.push_back(seen(view, p));
    if (view == View::side) line.insert(line.begin(), {line.front().x, 0.0});
    add_polyline(drawing, std::move(line), Line::thin);
    if (view == View::side) return;
  }
}

void add_items(Drawing& drawing, const RoomInput& in, View view) {
  for (const DeckItem& item : in.items) {
    const Place3 low{item.aft_m + 0.5 * item.length_m, item.starboard_m + 0.5 * item.width_m, 0.0};
    const Place3 high{item.aft_m - 0.5 * item.length_m, item.starboard_m - 0.5 * item.width_m, item.height_m};
    add_box(drawing, seen(view, low), seen(view, high), Line::outline, Fill::paper);
  }
}

// Beside each, away from the stowed shaft, or within it where it is large enough.
void add_item_names(Drawing& drawing, const RoomInput& in) {
  for (const DeckItem& item : in.items) {
    const bool inside = item.width_m >= 0.25 && item.length_m >= 0.3;
    const double shaft_m = in.stance.pivot_starboard_m + (item.aft_m - in.stance.pivot_aft_m) * std::tan(rad_from_deg(in.stance.stow_angle_deg));
    const double out = item.starboard_m >= shaft_m ? 1.0 : -1.0;
    const Point at = seen(View::above, {item.aft_m, inside ? item.starboard_m + out * 0.25 * item.width_m : item.starboard_m + out * (0.5 * item.width_m + kNameOff_m), 0.0});
    add_label(drawing, at, std::string(key(item.kind)));
  }
}

// A bar as it is seen, its ends cut square.
void add_bar(Drawing& drawing, Point a, Point b, double radius_m, Line line, Fill fill) {
  const double length = std::hypot(b.x - a.x, b.y - a.y);
  if (length < 1e-6) {
    drawing.circles.push_back({.centre = a, .radius = radius_m, .line = line, .fill = fill});
    return;
  }
  const double nx = -(b.y - a.y) / length * radius_m;
  const double ny = (b.x - a.x) / length * radius_m;
  drawing.shapes.push_back({.points = {{a.x + nx, a.y + ny}, {b.x + nx, b.y + ny}, {b.x - nx, b.y - ny}, {a.x - nx, a.y - ny}},
                            .closed = true,
                            .line = line,
                            .fill = fill});
}

// With the round ends of the head.
Bar squared(const Bar& bar) {
  if (bar.part != "head") return bar;
  const double length = std::max(std::hypot(std::hypot(bar.b.aft_m - bar.a.aft_m, bar.b.starboard_m - bar.a.starboard_m), bar.b.up_m - bar.a.up_m), 1e-9);
  const double t = bar.radius_m / length;
  const Place3 d{t * (bar.b.aft_m - bar.a.aft_m), t * (bar.b.starboard_m - bar.a.starboard_m), t * (bar.b.up_m - bar.a.up_m)};
  return {bar.part, {bar.a.aft_m - d.aft_m, bar.a.starboard_m - d.starboard_m, bar.a.up_m - d.up_m},
          {bar.b.aft_m + d.aft_m, bar.b.starboard_m + d.starboard_m, bar.b.up_m + d.up_m}, bar.radius_m};
}

// The propeller of the side view is a circle: it is seen along its axis.
void add_motor(Drawing& drawing, const RoomInput& in, const std::vector<Bar>& bars, View view, Line line) {
  bool propeller = false;
  for (const Bar& bar : bars) {
    if (bar.part != "propeller") continue;
    if (view == View::above) {
      add_polyline(drawing, {seen(view, bar.a), seen(view, bar.b)}, Line::thin);
    } else if (!propeller) {
      const Point a = seen(view, bar.a);
      const Point b = seen(view, bar.b);
      drawing.circles.push_back({.centre = {0.5 * (a.x + b.x), 0.5 * (a.y + b.y)}, .radius = 0.5 * in.motor.propeller_diameter_m, .line = Line::thin});
      propeller = true;
    }
  }
  for (const Bar& bar : bars) {
    if (bar.part == "propeller") continue;
    const Bar whole = squared(bar);
    add_bar(drawing, seen(view, whole.a), seen(view, whole.b), bar.radius_m, line, Fill::paper);
  }
}

// The head's way from lying to upright, from the side.
void add_arc(Drawing& drawing, const RoomInput& in) {
  std::vector<Point> arc;
  for (int i = 0; i <= kArcPoints; ++i) {
    arc.push_back(seen(View::side, squared(tilted_motor(in.motor, in.stance, 90.0 * i / kArcPoints)[1]).b));
  }
  const Point top = arc.back();
  add_polyline(drawing, std::move(arc), Line::hidden);
  add_polyline(drawing, {seen(View::side, tilted_motor(in.motor, in.stance, 90.0)[0].a), top}, Line::hidden);
}

Point on_arc(const Place3& light, double bearing_deg) {
  const double rad = rad_from_deg(bearing_deg);
  return {-light.aft_m + kLightRay_m * std::cos(rad), -light.starboard_m - kLightRay_m * std::sin(rad)};
}

void add_light(Drawing& drawing, const ForedeckStudy& study) {
  if (!study.light_input.measured) return;
  const Place3& light = study.light_input.light;
  const Point middle = seen(View::above, light);
  const Arc& arc = study.light.arc;
  std::vector<Point> rim;
  for (int i = 0; i <= 2 * kArcPoints; ++i) rim.push_back(on_arc(light, arc.from_deg + (arc.to_deg - arc.from_deg) * i / (2 * kArcPoints)));
  add_polyline(drawing, {rim.front(), middle, rim.back()}, Line::accent);
  add_polyline(drawing, std::move(rim), Line::accent);
  for (const Arc& hidden : study.light.stowed.full) {
    Shape wedge{.points = {middle}, .closed = true, .line = Line::thin, .fill = Fill::warning};
    for (int i = 0; i <= 6; ++i) wedge.points.push_back(on_arc(light, hidden.from_deg + (hidden.to_deg - hidden.from_deg) * i / 6.0));
    drawing.shapes.push_back(std::move(wedge));
  }
  drawing.circles.push_back({.centre = middle, .radius = 0.03, .fill = Fill::accent});
}

std::string gap_text(const Clearance& at, System system) {
  return at.distance_m > 0.0 ? show(1000.0 * at.distance_m, "mm", system).text() : "touches";
}

std::string description(const ForedeckStudy& study, System system) {
  const RoomResult& room = study.room;
  std::string text = "The stowed motor is " + length_text(room.stowed_m, system) + " long and ends " + length_text(room.stowed_end_m, system) +
                     " aft of the stem. ";
  if (!room.stowed.empty()) {
    text += "Nearest when stowed: " + room.stowed.front().label + ", " + gap_text(room.stowed.front(), system) + "; on its way up: " +
            room.swinging.front().label + ", " + gap_text(room.swinging.front(), system) + ". ";
  } else {
    text += "Nothing is said yet of what stands on the deck. ";
  }
  if (study.light_input.measured) {
    text += "Hidden of the sidelight: " + fixed(study.light.stowed.hidden_deg, 1) + "° by the stowed, " +
            fixed(study.light.deployed.hidden_deg, 1) + "° by the lowered motor. ";
  }
  return text + (study.room_input.mount_measured ? "" : "Dotted: not measured.");
}

void add_nearest(Drawing& drawing, const std::vector<Clearance>& all, View view, Point label, System system) {
  if (all.empty()) return;
  const Clearance& near = all.front();
  const Point a = seen(view, near.on_motor);
  const Point b = seen(view, near.on_obstacle);
  add_polyline(drawing, {a, b}, Line::accent);
  for (const Point& end : {a, b}) drawing.circles.push_back({.centre = end, .radius = 0.012, .line = Line::accent, .fill = Fill::accent});
  add_label(drawing, label, near.label + " " + gap_text(near, system), Align::left, TextRole::strong);
}

Drawing not_drawn(std::string title, const std::string& problem) {
  Drawing drawing{.title = std::move(title)};
  add_label(drawing, {0.5, 0.5}, "not drawn", Align::centre, TextRole::strong);
  drawing.description = problem;
  return drawing;
}

}  // namespace

Drawing foredeck_plan(const ForedeckStudy& study, System system) {
  const RoomInput& in = study.room_input;
  std::string title = "The foredeck from above";
  if (!study.room.problem.empty()) return not_drawn(std::move(title), study.room.problem);
  const Extent extent = extent_of(study);
  const double ahead = study.light_input.measured ? std::max(extent.ahead_m, kLightRay_m - study.light_input.light.aft_m) : extent.ahead_m;
  Drawing drawing{.title = std::move(title)};
  drawing.low = {-extent.aft_m - 0.15, -extent.half_m - 0.32};
  drawing.high = {ahead + 0.12, extent.half_m + 0.3};
  const Line line = in.mount_measured ? Line::outline : Line::estimated;
  add_deck(drawing, in, extent, line);
  add_rails(drawing, in, View::above);
  add_items(drawing, in, View::above);
  add_light(drawing, study);
  add_motor(drawing, in, tilted_motor(in.motor, in.stance, 0.0), View::above, line);
  add_item_names(drawing, in);
  add_nearest(drawing, study.room.stowed, View::above, {drawing.low.x + 0.03, extent.half_m + 0.18}, system);
  const double foot = -extent.half_m - 0.16;
  add_dimension(drawing, {-study.room.stowed_end_m, foot}, {-study.room.stowed_end_m + study.room.stowed_m, foot},
                length_text(study.room.stowed_m, system));
  drawing.description = description(study, system);
  return drawing;
}

Drawing foredeck_side(const ForedeckStudy& study, System system) {
  const RoomInput& in = study.room_input;
  std::string title = "The foredeck from the side, the motor on its way up";
  if (!study.room.problem.empty()) return not_drawn(std::move(title), study.room.problem);
  const Extent extent = extent_of(study);
  const double top = lying_height_m(in.motor) + in.motor.length_m + kHeadLength_m - kPodAhead_m;
  Drawing drawing{.title = std::move(title)};
  drawing.low = {-extent.aft_m - 0.15, -kUnderDeck_m - 0.05};
  drawing.high = {extent.ahead_m + 0.5, top + 0.36};
  const Line line = in.mount_measured ? Line::outline : Line::estimated;
  add_deck_side(drawing, extent, line);
  add_rails(drawing, in, View::side);
  add_items(drawing, in, View::side);
  add_arc(drawing, in);
  add_motor(drawing, in, tilted_motor(in.motor, in.stance, 0.0), View::side, line);
  add_nearest(drawing, study.room.swinging, View::side, {drawing.low.x + 0.03, top + 0.2}, system);
  if (study.light_input.measured) drawing.circles.push_back({.centre = seen(View::side, study.light_input.light), .radius = 0.03, .fill = Fill::accent});
  const double column = extent.ahead_m + 0.25;
  add_dimension(drawing, {column, 0.0}, {column, top}, length_text(top, system));
  drawing.description = "Raised to be lowered, the head sweeps the dashed arc, up to " + length_text(top, system) + " above the deck. " +
                        (study.room.swinging.empty() ? "Nothing is said yet of what stands on the deck."
                                                     : "Nearest on the way: " + study.room.swinging.front().label + ", " +
                                                           gap_text(study.room.swinging.front(), system) + ", with the shaft raised by " +
                                                           fixed(study.room.swinging.front().raised_deg, 0) + "°.");
  return drawing;
}

Drawing foredeck_picture(const Design& design, System system) { return foredeck_plan(foredeck_study(design), system); }

}  // namespace thole
