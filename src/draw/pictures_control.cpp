// Control and sensors: what stands where in the boat, from above, and what joins it.

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include "base/number.h"
#include "calc/compass_study.h"
#include "draw/pictures.h"
#include "draw/sketch.h"
#include "io/measure.h"

namespace thole {
namespace {

constexpr double kHelm_ratio = 0.42;  // of the length; for the eye only, as the next
constexpr double kBackbone_ratio = 0.08;  // off the centreline, away from the feeder
constexpr int kDropsShown_count = 6;
constexpr double kApart_factor = 3.2;  // of two marks' middles, of half a mark

// Bow to the right. `side`: 1 where the feeder runs to starboard, which is down.
struct Plan {
  double length_m = 1.0;
  double side = 1.0;
  Point at(double forward_ratio, double away_ratio) const {
    return {forward_ratio * length_m, side * away_ratio * length_m};
  }
};

void add_mark(Drawing& drawing, Point at, double half_m, Fill fill) {
  add_box(drawing, {at.x - half_m, at.y - half_m}, {at.x + half_m, at.y + half_m}, Line::outline, fill);
}

// A name beside the boat, with a line to what it names.
void add_name(Drawing& drawing, const Plan& plan, Point from, double away_ratio, std::string text,
              TextRole role = TextRole::note) {
  const double foot = plan.side * away_ratio * plan.length_m;
  const double gap = 0.03 * plan.length_m * (foot > from.y ? 1.0 : -1.0);
  add_polyline(drawing, {from, {from.x, foot - gap}}, Line::thin);
  add_label(drawing, {from.x, foot}, std::move(text), Align::centre, role);
}

void add_backbone(Drawing& drawing, const Plan& plan, int device_count, const std::vector<Point>& ends) {
  const Point from = plan.at(kHelm_ratio - 0.06, kBackbone_ratio);
  const Point to = plan.at(0.86, kBackbone_ratio);
  add_polyline(drawing, {from, to}, Line::accent);
  for (const Point end : {from, to}) add_mark(drawing, end, 0.012 * plan.length_m, Fill::strong);
  for (const Point end : ends) {
    const double x = std::clamp(end.x, from.x + 0.03 * plan.length_m, to.x - 0.03 * plan.length_m);
    add_polyline(drawing, {{x, from.y}, {x, end.y}, end}, Line::accent);
  }
  const int more = std::min(device_count, kDropsShown_count) - static_cast<int>(ends.size());
  for (int i = 0; i < more; ++i) {
    const Point tee = plan.at(kHelm_ratio + 0.08 + 0.07 * i, kBackbone_ratio);
    const Point end{tee.x, tee.y + plan.side * 0.045 * plan.length_m};
    add_polyline(drawing, {tee, end}, Line::accent);
    drawing.circles.push_back({.centre = end, .radius = 0.008 * plan.length_m, .line = Line::accent, .fill = Fill::paper});
  }
}

std::string error_text(double error_deg) {
  return error_deg >= 90.0 ? "shows no heading" : trimmed(fixed(error_deg, 1)) + "°";
}

std::string link_text(const Design& design, System system) {
  const ControlResult& control = design.control;
  switch (design.job.control.link.value) {
    case DataLink::none:
      return "no data link";
    case DataLink::ethernet:
      return "Ethernet, " + length_text(design.job.control.backbone_m.value, system);
    case DataLink::marine_network:
      return "network, " + fixed(control.link.drop_V, 2) + " V lost";
  }
  return {};
}

}  // namespace

Drawing control_picture(const Design& design, System system) {
  const Control& control = design.job.control;
  const double length_m = std::max(design.job.boat.length_m.value, 0.5);
  const Plan plan{length_m, control.feeder_y_m.value >= 0.0 ? 1.0 : -1.0};
  Drawing drawing{.title = "Sensors and links from above"};
  drawing.low = {-0.08 * length_m, -0.34 * length_m};
  drawing.high = {1.14 * length_m, 0.34 * length_m};
  add_boat_from_above(drawing, length_m, 90.0, {0.5 * length_m, 0.0});

  std::vector<Point> way;
  for (const Place& place : feeder_route(design.job)) way.push_back({place.x_m, place.y_m});
  const Point bank = way.front();
  const Point motor = way.back();
  const Point sensor{control.sensor_x_m.value, -control.sensor_y_m.value};
  const double half_m = 0.016 * length_m;
  Point helm = plan.at(kHelm_ratio, 0.02);
  if (std::hypot(helm.x - bank.x, helm.y - bank.y) < kApart_factor * half_m) helm.y = bank.y + plan.side * kApart_factor * half_m;
  const Point receiver{control.receiver_x_m.value, -control.receiver_y_m.value};
  const Point feeder{0.7 * way[1].x + 0.3 * way[2].x, way[1].y};  // clear of the sensor
  add_polyline(drawing, way, line_for(control.feeder_y_m.origin));
  if (control.link.value == DataLink::marine_network) {
    add_backbone(drawing, plan, control.node_count.value, {helm, sensor, motor});
  } else if (control.link.value == DataLink::ethernet) {
    const Point corner = plan.at(kHelm_ratio, kBackbone_ratio);
    add_polyline(drawing, {helm, corner, {motor.x - 0.05 * length_m, corner.y}, motor}, Line::accent);
  }

  add_mark(drawing, bank, half_m, Fill::strong);
  add_mark(drawing, helm, half_m, Fill::paper);
  drawing.circles.push_back({.centre = motor, .radius = half_m, .line = Line::outline, .fill = Fill::paper});
  drawing.shapes.push_back({.points = {{receiver.x, receiver.y + half_m}, {receiver.x + half_m, receiver.y - half_m},
                                       {receiver.x - half_m, receiver.y - half_m}},
                            .closed = true,
                            .line = line_for(control.receiver_x_m.origin),
                            .fill = Fill::accent});
  const bool good = design.control.heading_error_deg <= control.heading_limit_deg.value;
  drawing.circles.push_back({.centre = sensor,
                             .radius = half_m,
                             .line = line_for(control.sensor_x_m.origin),
                             .fill = good ? Fill::accent : Fill::warning});
  const std::string error = error_text(design.control.heading_error_deg);
  add_name(drawing, plan, sensor, -0.3, "heading sensor " + error, TextRole::strong);
  add_name(drawing, plan, bank, -0.22, "bank");
  add_name(drawing, plan, helm, 0.22, "remote, helm");
  add_name(drawing, plan, receiver, 0.22, "receiver");
  const Point motor_name{1.09 * length_m, -plan.side * 0.07 * length_m};
  add_polyline(drawing, {{motor.x + half_m, motor.y}, {1.02 * length_m, motor_name.y}}, Line::thin);
  add_label(drawing, motor_name, "motor");
  add_label(drawing, {drawing.low.x, plan.side * 0.31 * length_m}, link_text(design, system), Align::left);
  add_handle(drawing, sensor, "control.sensor_x_m", 1.0, 0.0);
  add_handle(drawing, receiver, "control.receiver_x_m", 1.0, 0.0);
  add_handle(drawing, feeder, "control.feeder_y_m", 0.0, -1.0);
  drawing.description =
      "From above, bow to the right; the receiver is " + length_text(receiver.x, system) +
      " forward of the transom, the remote at the helm. The heading sensor stands " + length_text(sensor.x, system) + " forward of the transom, " + length_text(design.control.sensor_gap_m, system) +
      " from the feeder, which carries " + fixed(design.feeder.current_A, 0) + " A at full thrust and turns it by " +
      error + "; " + trimmed(fixed(control.heading_limit_deg.value, 1)) + "° is allowed. Data link: " +
      link_text(design, system) + ".";
  return drawing;
}

}  // namespace thole
