#include "draw/sketch.h"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <numbers>
#include <utility>

#include "base/units.h"

namespace thole {
namespace {

// Share of the length where deck houses stand, and their height over the sheer, by layout: for the
// eye only; windage comes from the areas.
struct House {
  double from = 0.0;
  double to = 0.0;
  double height_m = 0.0;
  double top_from = 0.0;  // a roof on legs; equal ends: none
  double top_to = 0.0;
  double top_m = 0.0;
};

House house(Layout layout) {
  switch (layout) {
    case Layout::open_skiff:
      return {0, 0, 0, 0, 0, 0};
    case Layout::bay_console:
      return {0.40, 0.50, 0.75, 0, 0, 0};
    case Layout::centre_console:
      return {0.40, 0.52, 0.95, 0, 0, 0};
    case Layout::t_top:
      return {0.40, 0.52, 0.95, 0.32, 0.58, 1.75};
    case Layout::enclosed_t_top:
      return {0.36, 0.56, 1.75, 0.32, 0.58, 1.8};
    case Layout::dual_console:
      return {0.45, 0.56, 0.7, 0, 0, 0};
    case Layout::walkaround:
      return {0.46, 0.74, 0.75, 0.36, 0.56, 1.6};
    case Layout::pilothouse:
      return {0.42, 0.70, 1.7, 0.38, 0.72, 1.75};
    case Layout::express:
      return {0.38, 0.76, 0.9, 0.34, 0.60, 1.7};
    case Layout::flybridge:
      return {0.30, 0.72, 1.6, 0.28, 0.60, 2.4};
    case Layout::pontoon:
      return {0.08, 0.92, 0.7, 0.20, 0.60, 1.7};
  }
  return {};
}

}  // namespace

Line line_for(Origin origin) {
  return origin == Origin::given || origin == Origin::chosen ? Line::outline : Line::estimated;
}

void add_polyline(Drawing& drawing, std::vector<Point> points, Line line) {
  drawing.shapes.push_back({.points = std::move(points), .line = line});
}

void add_box(Drawing& drawing, Point low, Point high, Line line, Fill fill, bool hatched) {
  drawing.shapes.push_back({.points = {low, {high.x, low.y}, high, {low.x, high.y}},
                            .closed = true,
                            .line = line,
                            .fill = fill,
                            .hatched = hatched});
}

void add_label(Drawing& drawing, Point at, std::string text, Align align, TextRole role) {
  drawing.labels.push_back({at, std::move(text), align, role});
}

void add_dimension(Drawing& drawing, Point a, Point b, std::string text) {
  drawing.dimensions.push_back({a, b, std::move(text)});
}

void add_handle(Drawing& drawing, Point at, std::string field, double dx_factor, double dy_factor) {
  drawing.handles.push_back(
      {.at = at, .field = std::move(field), .dx_factor = dx_factor, .dy_factor = dy_factor});
}

void add_person(Drawing& drawing, Point feet, double height_m) {
  constexpr double kOutline[][2] = {{-0.12, 0.46}, {-0.13, 0.79}, {-0.09, 0.84}, {0.09, 0.84},
                                    {0.13, 0.79},  {0.12, 0.46},  {0.085, 0.46}, {0.08, 0.0},
                                    {0.015, 0.0},  {0.0, 0.43},   {-0.015, 0.0}, {-0.08, 0.0},
                                    {-0.085, 0.46}};
  Shape body{.closed = true, .line = Line::thin, .fill = Fill::paper};
  for (const auto& point : kOutline) {
    body.points.push_back({feet.x + height_m * point[0], feet.y + height_m * point[1]});
  }
  drawing.shapes.push_back(std::move(body));
  Shape head{.closed = true, .line = Line::thin, .fill = Fill::paper};
  constexpr int kSides = 16;
  for (int i = 0; i < kSides; ++i) {
    const double angle = 2.0 * std::numbers::pi * i / kSides;
    head.points.push_back({feet.x + 0.075 * height_m * std::sin(angle),
                           feet.y + height_m * (0.925 + 0.075 * std::cos(angle))});
  }
  drawing.shapes.push_back(std::move(head));
}

std::string length_text(double length_m, System system) {
  return show(length_m, "m", system).text();
}

std::string speed_text(double speed_mps, System system) {
  return show(speed_mps, "mps", system).text();
}

std::string mass_text(double mass_kg, System system) { return show(mass_kg, "kg", system).text(); }

void add_boat_from_above(Drawing& drawing, double length, double heading_deg, Point middle) {
  // Half of the outline from stem to transom, in lengths: forward, and to the side.
  constexpr double kSide[][2] = {{0.5, 0.0},  {0.44, 0.05},  {0.34, 0.1}, {0.2, 0.145},
                                 {0.0, 0.17}, {-0.25, 0.17}, {-0.5, 0.14}};
  const double sine = std::sin(rad_from_deg(heading_deg));
  const double cosine = std::cos(rad_from_deg(heading_deg));
  const auto at = [&](double forward, double right) {
    return Point{middle.x + length * (forward * sine + right * cosine),
                 middle.y + length * (forward * cosine - right * sine)};
  };
  Shape hull{.closed = true, .line = Line::outline, .fill = Fill::hull};
  for (const auto& point : kSide) hull.points.push_back(at(point[0], point[1]));
  for (std::size_t i = std::size(kSide); i-- > 1;) {
    hull.points.push_back(at(kSide[i][0], -kSide[i][1]));
  }
  drawing.shapes.push_back(std::move(hull));
}

void add_water(Drawing& drawing, double surface_m) {
  // Far enough out that a sheet held still while the boat shrinks is full of water yet.
  const double margin = 3.0 * (drawing.high.x - drawing.low.x);
  const Point low{drawing.low.x - margin, drawing.low.y - margin};
  const Point high{drawing.high.x + margin, surface_m};
  add_box(drawing, low, high, Line::none, Fill::water);
  add_polyline(drawing, {{low.x, surface_m}, high}, Line::thin);
}

void add_hull(Drawing& drawing, const Boat& boat, double bow_down_m, double stern_down_m, Line line,
              bool filled) {
  const double length = boat.length_m.value;
  const double bow = boat.bow_height_m.value;
  const double draft = boat.draft_m.value;
  const double waterline = boat.waterline_length_m.value;
  const double stern = 0.62 * bow;
  // The boat rests on its trimmed waterline: each station sinks by its share of bow and stern.
  const auto at = [&](double x, double y) {
    return Point{x, y - (stern_down_m + (bow_down_m - stern_down_m) * x / waterline)};
  };
  std::vector<Point> hull{at(0.0, stern), at(0.01 * length, -0.85 * draft),
                          at(0.3 * waterline, -draft), at(0.68 * waterline, -draft)};
  for (int i = 1; i <= 12; ++i) {  // the forefoot rises to the stem
    const double t = i / 12.0;
    hull.push_back(at(0.68 * waterline + 0.32 * waterline * std::sin(0.5 * t * std::numbers::pi),
                      -draft * (1.0 - t * t)));
  }
  for (int i = 1; i <= 10; ++i) {
    const double t = i / 10.0;
    hull.push_back(at(waterline + (length - waterline) * t * t, bow * t));
  }
  for (int i = 1; i < 8; ++i) {  // sheer
    const double t = i / 8.0;
    hull.push_back(at(length * (1.0 - t), stern + (bow - stern) * (1.0 - t) * (1.0 - t)));
  }
  const House deck = house(boat.layout.value);
  const auto sheer = [&](double share) { return stern + (bow - stern) * share * share; };
  if (deck.to > deck.from) {
    const double rake = std::min(0.05, 0.3 * (deck.to - deck.from)) * length;
    // From the sheer (height 0) to the roof (height 1), the front raked.
    const auto aft = [&](double height) {
      return at(deck.from * length, sheer(deck.from) + height * deck.height_m);
    };
    const auto fore = [&](double height) {
      const double foot = sheer(deck.to);
      const double roof = sheer(deck.from) + deck.height_m;
      return at(deck.to * length - height * rake, foot + height * (roof - foot));
    };
    const Fill fill = filled ? Fill::paper : Fill::none;
    drawing.shapes.push_back({.points = {aft(0.0), aft(1.0), fore(1.0), fore(0.0)},
                              .closed = true,
                              .line = Line::thin,
                              .fill = fill});
    constexpr double kRoom_m = 1.2;  // high enough to look out of
    if (deck.height_m > kRoom_m) {
      add_polyline(drawing, {aft(0.58), fore(0.58)}, Line::thin);
      add_polyline(drawing, {aft(0.9), fore(0.9)}, Line::thin);
    }
  }
  if (deck.top_to > deck.top_from) {
    const double base = sheer(deck.top_from);
    add_polyline(drawing,
                 {at(deck.top_from * length, base + deck.top_m),
                  at(deck.top_to * length, base + deck.top_m)},
                 Line::outline);
    for (const double leg : {deck.top_from + 0.06, deck.top_to - 0.04}) {
      add_polyline(drawing, {at(leg * length, sheer(leg)), at(leg * length, base + deck.top_m)},
                   Line::thin);
    }
  }
  drawing.shapes.push_back({.points = std::move(hull),
                            .closed = true,
                            .line = line,
                            .fill = filled ? Fill::hull : Fill::none});
}

}  // namespace thole
