#include "draw/compass_plan.h"

#include <algorithm>
#include <cmath>
#include <string>
#include <utility>
#include <vector>

#include "base/number.h"
#include "calc/compass/contours.h"
#include "draw/sketch.h"

namespace thole {
namespace {

constexpr double kLeast_m = 0.5;  // keeps a sheet for an impossible boat drawable

std::string degrees(double angle_deg) {
  if (angle_deg < 0.05) return "less than 0.1°";
  return trimmed(fixed(angle_deg, angle_deg < 9.95 ? 1 : 0)) + "°";
}

// In whole millimetres, rounded to the safe side.
std::string at_most(double length_m, System system) {
  return show(std::floor(1000.0 * length_m + 1e-9), "mm", system).text();
}

std::vector<double> levels_deg(double limit_deg) {
  std::vector<double> levels{1.0, 2.0, 5.0, 10.0};
  if (std::find(levels.begin(), levels.end(), limit_deg) == levels.end()) {
    levels.push_back(limit_deg);
    std::sort(levels.begin(), levels.end());
  }
  return levels;
}

std::vector<Point> from_above(const std::vector<Place>& places) {
  std::vector<Point> points;
  for (const Place& place : places) points.push_back({place.x_m, place.y_m});
  return points;
}

// Plus and minus as they lie, or the middle of a twist.
std::vector<std::vector<Point>> feeder_lines(const CompassInput& in) {
  if (!in.out.empty()) return {from_above(in.out), from_above(in.back)};
  if (in.pair.lay == FeederLay::side_by_side) {
    std::vector<Point> loop = from_above(pair_wire(in.pair).places);
    return {std::move(loop)};
  }
  return {from_above(in.pair.route)};
}

// Of all lines the point nearest to this place.
const PlanPoint* nearest_point(const std::vector<PlanLine>& lines, Point place) {
  const PlanPoint* best = nullptr;
  const auto off_m = [&](const PlanPoint& p) { return std::hypot(p.x_m - place.x, p.y_m - place.y); };
  for (const PlanLine& line : lines) {
    for (const PlanPoint& point : line) {
      if (best == nullptr || off_m(point) < off_m(*best)) best = &point;
    }
  }
  return best;
}

// 1 to port, -1 to starboard: where the feeder does not run.
double clear_side(const CompassInput& in) {
  const std::vector<Place>& way = in.out.empty() ? in.pair.route : in.out;
  return way[way.size() / 2].y_m > 0.0 ? -1.0 : 1.0;
}

// Draws the lines and gives their names: they lie in one another, mostly round the motor, so the names
// stand in a row beside the boat, each with a line to its own.
std::vector<Label> add_contours(Drawing& drawing, const CompassInput& in, const PlanArea& area) {
  const ErrorGrid grid = error_grid(in, area);
  const std::vector<double> levels = levels_deg(in.limit_deg);
  const double length_m = (area.high.x_m - area.low.x_m) / 1.2;
  const std::vector<Place>& way = in.out.empty() ? in.pair.route : in.out;
  std::vector<Label> names;
  for (std::size_t i = 0; i < levels.size(); ++i) {
    const std::vector<PlanLine> lines = iso_lines(grid, levels[i]);
    const bool limit = levels[i] == in.limit_deg;
    for (const PlanLine& line : lines) {
      std::vector<Point> points;
      for (const PlanPoint& point : line) points.push_back({point.x_m, point.y_m});
      add_polyline(drawing, std::move(points), limit ? Line::accent : Line::thin);
    }
    const double before = static_cast<double>(levels.size() - 1 - i);
    const Point foot{way.back().x_m + (0.03 - 0.08 * before) * length_m, clear_side(in) * 0.21 * length_m};
    if (const PlanPoint* at = nearest_point(lines, foot)) {
      add_polyline(drawing, {{at->x_m, at->y_m}, {foot.x, 0.9 * foot.y}}, Line::thin);
      names.push_back({foot, degrees(levels[i]), Align::centre, limit ? TextRole::strong : TextRole::note});
    }
  }
  return names;
}

std::string description(const CompassInput& in, const CompassResult& r, System system) {
  std::string text = "At the heading sensor the feeder's " + fixed(in.pair.current_A, 0) +
                     " A turn the heading by " + (r.error_deg < 0.05 ? "" : "up to ") +
                     degrees(r.error_deg) + "; " + degrees(in.limit_deg) +
                     " is the limit (line in colour), at the sensor's height. ";
  if (r.error_deg >= 90.0) {
    text =
        "At the heading sensor the feeder's field is stronger than the earth's: it shows no "
        "heading "
        "at full thrust. ";
  }
  if (r.error_deg <= in.limit_deg) return text + "It may stay where it is.";
  if (r.spacing_m) {
    return text + "Plus and minus no more than " + at_most(*r.spacing_m, system) +
           " apart, middle to middle, keep the limit.";
  }
  if (r.pitch_m) {
    return text + "Twisted, a full turn in " + at_most(*r.pitch_m, system) +
           " or less, they keep the limit.";
  }
  return text + "Neither closer wires nor a twist keeps the limit there.";
}

}  // namespace

Drawing compass_plan_picture(const CompassInput& in, const CompassResult& result,
                             double boat_length_m, System system) {
  Drawing drawing{.title = "Heading error at full thrust, from above"};
  const double length_m = std::max(boat_length_m, kLeast_m);
  PlanArea area{.low = {-0.08 * length_m, -0.26 * length_m},
                .high = {1.12 * length_m, 0.26 * length_m},
                .z_m = in.sensor.z_m,
                .columns_count = 97,
                .rows_count = 49};
  drawing.low = {area.low.x_m, area.low.y_m};
  drawing.high = {area.high.x_m, area.high.y_m};
  add_boat_from_above(drawing, length_m, 90.0, {0.5 * length_m, 0.0});
  if (has_error(result.issues)) {
    add_label(drawing, {0.5 * length_m, 0.0}, "not evaluated", Align::centre, TextRole::strong);
    drawing.description = result.issues.front().message;
    return drawing;
  }
  const std::vector<Label> levels = add_contours(drawing, in, area);
  for (std::vector<Point>& line : feeder_lines(in)) {
    add_polyline(drawing, std::move(line), Line::outline);
  }
  const std::vector<Place>& way = in.out.empty() ? in.pair.route : in.out;
  const double mark_m = 0.018 * length_m;
  const Point bank{way.front().x_m, way.front().y_m};
  const Point motor{way.back().x_m, way.back().y_m};
  add_box(drawing, {bank.x - mark_m, bank.y - mark_m}, {bank.x + mark_m, bank.y + mark_m},
          Line::outline, Fill::strong);
  drawing.circles.push_back(
      {.centre = motor, .radius = mark_m, .line = Line::outline, .fill = Fill::paper});
  const Point sensor{in.sensor.x_m, in.sensor.y_m};
  const bool good = result.error_deg <= in.limit_deg;
  drawing.circles.push_back({.centre = sensor,
                             .radius = 0.8 * mark_m,
                             .line = Line::outline,
                             .fill = good ? Fill::accent : Fill::warning});
  const bool port = std::abs(sensor.y) > mark_m ? sensor.y > 0.0 : clear_side(in) > 0.0;
  add_label(drawing, {sensor.x, sensor.y + (port ? 2.8 : -2.8) * mark_m},
            "sensor " + (result.error_deg < 90.0 ? degrees(result.error_deg) : "shows no heading"),
            Align::centre, TextRole::strong);
  add_label(drawing, {bank.x - 1.8 * mark_m, bank.y}, "bank", Align::right);
  const Point motor_name{length_m, -clear_side(in) * 0.21 * length_m};
  add_polyline(drawing, {{motor.x, motor.y + (motor_name.y > motor.y ? mark_m : -mark_m)}, {motor_name.x, 0.9 * motor_name.y}}, Line::thin);
  add_label(drawing, motor_name, "motor");
  // Last, for where texts collide the later one moves.
  drawing.labels.insert(drawing.labels.end(), levels.begin(), levels.end());
  drawing.description = description(in, result, system);
  return drawing;
}

}  // namespace thole
