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

// Side view over plan on one sheet; x forward from the stem.
struct Views {
  double deck_y_m = 0.0;  // of the side view's deck in the sheet

  Point plan(const Place3& p) const { return {-p.aft_m, -p.starboard_m}; }
  Point side(const Place3& p) const { return {-p.aft_m, deck_y_m + p.up_m}; }
};

struct Extent {
  double aft_m = 0.0;
  double ahead_m = 0.0;
  double half_m = 0.0;
  double tall_m = 0.0;
};

Extent extent_of(const ForedeckStudy& study) {
  const RoomInput& in = study.room_input;
  Extent e{.aft_m = std::max({study.room.stowed_end_m, in.deck_length_m, 1.0}),
           .ahead_m = std::max(-in.stance.pivot_aft_m, 0.0) + 0.35,
           .half_m = std::max(half_deck_m(in, 2.0), std::abs(in.stance.pivot_starboard_m) + 0.3),
           .tall_m = in.motor.length_m + 0.35};
  for (const DeckItem& item : in.items) {
    e.aft_m = std::max(e.aft_m, item.aft_m + 0.5 * item.length_m);
    e.ahead_m = std::max(e.ahead_m, 0.5 * item.length_m - item.aft_m);
    e.half_m = std::max(e.half_m, std::abs(item.starboard_m) + 0.5 * item.width_m);
  }
  return e;
}

void add_deck(Drawing& drawing, const Views& views, const RoomInput& in, const Extent& extent, Line line) {
  Shape deck{.closed = true, .line = line, .fill = Fill::hull};
  for (int i = -kEdgePoints; i <= kEdgePoints; ++i) {
    const double aft = (extent.aft_m + 0.1) * i * i / (kEdgePoints * kEdgePoints);
    const double half = half_deck_m(in, aft);
    deck.points.push_back(views.plan({aft, i < 0 ? -half : half, 0.0}));
  }
  drawing.shapes.push_back(std::move(deck));
  add_polyline(drawing, {views.plan({-extent.ahead_m, 0.0, 0.0}), views.plan({extent.aft_m, 0.0, 0.0})}, Line::centre);
  // From the side: the deck and the stem's rake.
  const double under = 0.16;
  drawing.shapes.push_back({.points = {views.side({extent.aft_m + 0.1, 0.0, 0.0}), views.side({0.0, 0.0, 0.0}), views.side({0.12, 0.0, -under}),
                                       views.side({extent.aft_m + 0.1, 0.0, -under})},
                            .closed = true,
                            .line = line,
                            .fill = Fill::hull});
}

void add_rails(Drawing& drawing, const Views& views, const RoomInput& in) {
  for (const double side : {-1.0, 1.0}) {
    const std::vector<Place3> rail = rail_line(in, side);
    if (rail.empty()) return;
    std::vector<Point> plan;
    for (const Place3& p : rail) plan.push_back(views.plan(p));
    add_polyline(drawing, std::move(plan), Line::thin);
    if (side < 0.0) continue;
    Place3 foot = rail.front();
    foot.up_m = 0.0;
    add_polyline(drawing, {views.side(foot), views.side(rail.front()), views.side(rail.back())}, Line::thin);
  }
}

void add_items(Drawing& drawing, const Views& views, const RoomInput& in) {
  for (std::size_t i = 0; i < in.items.size(); ++i) {
    const DeckItem& item = in.items[i];
    const Place3 low{item.aft_m + 0.5 * item.length_m, item.starboard_m + 0.5 * item.width_m, 0.0};
    const Place3 high{item.aft_m - 0.5 * item.length_m, item.starboard_m - 0.5 * item.width_m, item.height_m};
    add_box(drawing, views.plan(low), views.plan(high), Line::outline, Fill::paper);
    add_box(drawing, views.side(low), views.side(high), Line::outline, Fill::paper);
    add_label(drawing, views.plan({item.aft_m, item.starboard_m, 0.0}), std::to_string(i + 1));
  }
}

// A bar as it is seen: its two sides, and its ends cut square.
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

void add_motor(Drawing& drawing, const Views& views, const std::vector<Bar>& bars, Line line) {
  for (const Bar& bar : bars) {
    if (bar.part == "propeller") {
      add_polyline(drawing, {views.plan(bar.a), views.plan(bar.b)}, Line::thin);
      add_polyline(drawing, {views.side(bar.a), views.side(bar.b)}, Line::thin);
    }
  }
  for (const Bar& bar : bars) {
    if (bar.part == "propeller") continue;
    const double ends = bar.part == "head" ? bar.radius_m : 0.0;
    const double length = std::max(std::hypot(std::hypot(bar.b.aft_m - bar.a.aft_m, bar.b.starboard_m - bar.a.starboard_m), bar.b.up_m - bar.a.up_m), 1e-9);
    const double t = ends / length;
    const auto along = [&](double s) {
      return Place3{bar.a.aft_m + s * (bar.b.aft_m - bar.a.aft_m), bar.a.starboard_m + s * (bar.b.starboard_m - bar.a.starboard_m),
                    bar.a.up_m + s * (bar.b.up_m - bar.a.up_m)};
    };
    add_bar(drawing, views.plan(along(-t)), views.plan(along(1.0 + t)), bar.radius_m, line, Fill::paper);
    add_bar(drawing, views.side(along(-t)), views.side(along(1.0 + t)), bar.radius_m, line, Fill::paper);
  }
}

// The head's way from lying to upright, from the side.
void add_arc(Drawing& drawing, const Views& views, const RoomInput& in) {
  std::vector<Point> arc;
  for (int i = 0; i <= kArcPoints; ++i) {
    const std::vector<Bar> bars = tilted_motor(in.motor, in.stance, 90.0 * i / kArcPoints);
    arc.push_back(views.side(bars[1].b));
  }
  add_polyline(drawing, arc, Line::hidden);
  const std::vector<Bar> upright = tilted_motor(in.motor, in.stance, 90.0);
  add_polyline(drawing, {views.side(upright[0].a), views.side(upright[1].b)}, Line::hidden);
}

Point on_arc(const Place3& light, double bearing_deg) {
  const double rad = rad_from_deg(bearing_deg);
  return {-light.aft_m + kLightRay_m * std::cos(rad), -light.starboard_m - kLightRay_m * std::sin(rad)};
}

void add_light(Drawing& drawing, const Views& views, const ForedeckStudy& study) {
  if (!study.light_input.measured) return;
  const Place3& light = study.light_input.light;
  const Point middle = views.plan(light);
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
  drawing.circles.push_back({.centre = views.side(light), .radius = 0.03, .fill = Fill::accent});
}

std::string gap_text(const Clearance& at, System system) {
  return show(1000.0 * std::max(at.distance_m, 0.0), "mm", system).text();
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
  for (std::size_t i = 0; i < study.room_input.items.size(); ++i) {
    text += std::to_string(i + 1) + " " + std::string(word(study.room_input.items[i].kind)) + ". ";
  }
  if (study.light_input.measured) {
    text += "Hidden of the sidelight: " + fixed(study.light.stowed.hidden_deg, 1) + "° by the stowed, " +
            fixed(study.light.deployed.hidden_deg, 1) + "° by the lowered motor. ";
  }
  return text + (study.room_input.mount_measured ? "" : "Dotted: not measured.");
}

}  // namespace

Drawing foredeck_plan(const ForedeckStudy& study, System system) {
  Drawing drawing{.title = "The foredeck from the side, and below from above"};
  const RoomInput& in = study.room_input;
  if (!study.room.problem.empty()) {
    add_label(drawing, {0.5, 0.5}, "not drawn", Align::centre, TextRole::strong);
    drawing.description = study.room.problem;
    return drawing;
  }
  const Extent extent = extent_of(study);
  const double ahead = study.light_input.measured ? std::max(extent.ahead_m, kLightRay_m - study.light_input.light.aft_m) : extent.ahead_m;
  Views views{.deck_y_m = extent.half_m + 0.42};
  drawing.low = {-extent.aft_m - 0.15, -extent.half_m - 0.42};
  drawing.high = {ahead + 0.12, views.deck_y_m + extent.tall_m + 0.12};
  const Line line = in.mount_measured ? Line::outline : Line::estimated;
  add_deck(drawing, views, in, extent, line);
  add_rails(drawing, views, in);
  add_items(drawing, views, in);
  add_light(drawing, views, study);
  add_arc(drawing, views, in);
  add_motor(drawing, views, tilted_motor(in.motor, in.stance, 0.0), line);
  const double foot = -extent.half_m - 0.2;
  add_dimension(drawing, {-study.room.stowed_end_m, foot}, {-study.room.stowed_end_m + study.room.stowed_m, foot},
                length_text(study.room.stowed_m, system));
  add_label(drawing, {drawing.low.x + 0.03, drawing.high.y - 0.12}, "head's way up, dashed", Align::left);
  if (!study.room.stowed.empty()) {
    const Clearance& near = study.room.stowed.front();
    add_label(drawing, {drawing.low.x + 0.03, drawing.high.y - 0.34}, near.label + ": " + gap_text(near, system), Align::left, TextRole::strong);
  }
  drawing.description = description(study, system);
  return drawing;
}

Drawing foredeck_picture(const Design& design, System system) { return foredeck_plan(foredeck_study(design), system); }

}  // namespace thole
