// Hold, bank, feeder and charging: the pictures of force and energy.

#include <algorithm>
#include <cmath>

#include "base/number.h"
#include "base/units.h"
#include "draw/pictures.h"
#include "draw/sketch.h"

namespace thole {
namespace {

std::string volts(double value_V) { return fixed(value_V, 1) + " V"; }

}  // namespace

// Angle between wind and current round the sheet, 0 up; distance is the wind that can be held.
Drawing hold_picture(const Design& design, System system) {
  const HoldResult& hold = design.hold;
  const double wind_mps = design.job.water.wind_mps.value;
  double reach_mps = std::max(wind_mps, 2.0);
  for (const RosePoint& point : hold.rose) reach_mps = std::max(reach_mps, point.limiting_wind_mps);
  reach_mps *= 1.12;
  Drawing drawing{.title = "The wind that can be held, by its angle to the current"};
  drawing.low = {-1.75 * reach_mps, -1.12 * reach_mps};
  drawing.high = {1.75 * reach_mps, 1.12 * reach_mps};
  const auto at = [](double angle_deg, double mps) {
    return Point{mps * std::sin(angle_deg * kRadPerDeg), mps * std::cos(angle_deg * kRadPerDeg)};
  };
  const double ring_mps = mps_from_kn(10.0);
  for (double r = ring_mps; r < reach_mps; r += ring_mps) {
    drawing.circles.push_back({.centre = {0.0, 0.0}, .radius = r, .line = Line::thin});
    add_label(drawing, at(180.0, r - 0.1 * reach_mps), show(r, "mps", system).text());
  }
  Shape held{.closed = true, .line = Line::outline, .fill = Fill::water};
  for (const RosePoint& point : hold.rose)
    held.points.push_back(at(point.angle_deg, point.limiting_wind_mps));
  for (auto point = hold.rose.rbegin(); point != hold.rose.rend(); ++point) {
    if (point->angle_deg <= 0.0 || point->angle_deg >= 180.0) continue;
    held.points.push_back(at(-point->angle_deg, point->limiting_wind_mps));
  }
  drawing.shapes.push_back(std::move(held));
  drawing.circles.push_back({.centre = {0.0, 0.0}, .radius = wind_mps, .line = Line::accent});
  const double angle = design.job.water.current_angle_deg.value;
  drawing.circles.push_back({.centre = at(angle, wind_mps),
                             .radius = 0.03 * reach_mps,
                             .line = Line::none,
                             .fill = Fill::accent});
  add_label(drawing, {0.0, 1.06 * reach_mps}, "current with the wind", Align::centre);
  add_label(drawing, {0.0, -1.06 * reach_mps}, "against it", Align::centre);
  // Each line is named outside the rose, with a leader to it.
  const auto name = [&](const std::string& text, double angle_deg, double mps, double side) {
    const Point foot{1.25 * reach_mps, side * 0.94 * reach_mps};
    add_polyline(drawing, {at(angle_deg, mps), foot}, Line::thin);
    add_label(drawing, {1.72 * reach_mps, side * 1.03 * reach_mps}, text, Align::right,
              TextRole::strong);
  };
  name("asked: " + show(wind_mps, "mps", system).text(), 125.0, wind_mps, -1.0);
  for (const RosePoint& point : hold.rose) {
    if (point.angle_deg == 45.0) name("can be held", 45.0, point.limiting_wind_mps, 1.0);
  }
  drawing.description = "Holds up to " + show(hold.limiting_wind_mps, "mps", system).text() +
                        " as asked; the wind asked for is " + show(wind_mps, "mps", system).text() +
                        ". The bow then lies " + fixed(hold.heading_deg, 0) +
                        " degrees off the wind.";
  return drawing;
}

Drawing bank_picture(const Design& design, System) {
  const BankResult& bank = design.bank;
  Drawing drawing{.title = "Energy left in the bank over the day", .to_scale = false};
  double hours = 1.0;
  for (const DayPoint& point : bank.day) hours = std::max(hours, point.time_h);
  const double full_Wh = std::max(bank.energy_Wh, 1.0);
  drawing.low = {-0.14 * hours, -0.16 * full_Wh};
  drawing.high = {1.08 * hours, 1.12 * full_Wh};
  Shape left{.closed = true, .line = Line::none, .fill = Fill::water};
  left.points.push_back({0.0, 0.0});
  std::vector<Point> curve;
  for (const DayPoint& point : bank.day)
    curve.push_back({point.time_h, std::max(point.left_Wh, 0.0)});
  left.points.insert(left.points.end(), curve.begin(), curve.end());
  if (!curve.empty()) left.points.push_back({curve.back().x, 0.0});
  drawing.shapes.push_back(std::move(left));
  add_polyline(drawing, {{0.0, full_Wh}, {0.0, 0.0}, {hours, 0.0}}, Line::thin);
  if (curve.size() > 1) add_polyline(drawing, curve, Line::outline);
  const double floor_Wh = full_Wh - bank.usable_Wh;
  add_polyline(drawing, {{0.0, floor_Wh}, {hours, floor_Wh}}, Line::hidden);
  add_label(drawing, {0.02 * hours, floor_Wh - 0.07 * full_Wh}, "kept back", Align::left);
  add_label(drawing, {0.02 * hours, full_Wh * 1.04}, fixed(full_Wh / 1000.0, 2) + " kWh",
            Align::left, TextRole::strong);
  add_label(drawing, {hours, -0.08 * full_Wh}, fixed(hours, 1) + " h", Align::right);
  add_label(drawing, {0.0, -0.08 * full_Wh}, "0 h", Align::left);
  const double end_Wh = curve.empty() ? full_Wh : curve.back().y;
  drawing.description = fixed(full_Wh / 1000.0, 2) + " kWh by the label; the day leaves " +
                        fixed(end_Wh / 1000.0, 2) + " kWh, of which " +
                        fixed(floor_Wh / 1000.0, 2) + " kWh should stay.";
  return drawing;
}

Drawing feeder_picture(const Design& design, System system) {
  const FeederResult& feeder = design.feeder;
  Drawing drawing{.title = "Volts along the feeder at full thrust", .to_scale = false};
  drawing.low = {-0.12, -0.25};
  drawing.high = {1.12, 1.3};
  // The loop as built: bank on the left, motor on the right, plus above and minus below.
  const double bank_x = 0.0;
  const double motor_x = 1.0;
  const double plus_y = 0.85;
  const double minus_y = 0.2;
  add_polyline(drawing, {{bank_x, plus_y}, {motor_x, plus_y}}, Line::outline);
  add_polyline(drawing, {{bank_x, minus_y}, {motor_x, minus_y}}, Line::outline);
  add_polyline(drawing, {{bank_x, minus_y}, {bank_x, 0.45}}, Line::outline);
  add_polyline(drawing, {{bank_x, 0.6}, {bank_x, plus_y}}, Line::outline);
  add_polyline(drawing, {{bank_x - 0.05, 0.6}, {bank_x + 0.05, 0.6}}, Line::outline);
  add_polyline(drawing, {{bank_x - 0.025, 0.45}, {bank_x + 0.025, 0.45}}, Line::outline);
  add_polyline(drawing, {{motor_x, minus_y}, {motor_x, plus_y}}, Line::outline);
  drawing.circles.push_back(
      {.centre = {motor_x, 0.525}, .radius = 0.045, .line = Line::outline, .fill = Fill::hull});
  add_label(drawing, {motor_x, 0.525}, "M", Align::centre, TextRole::strong);
  std::vector<const FeederNode*> positive;
  std::vector<const FeederNode*> negative;
  for (const FeederNode& node : feeder.nodes)
    (node.positive ? positive : negative).push_back(&node);
  const auto lay = [&](const std::vector<const FeederNode*>& nodes, double y, bool above,
                       bool forward) {
    const auto count = static_cast<double>(nodes.size());
    for (std::size_t i = 0; i < nodes.size(); ++i) {
      const double share = count > 1.0 ? static_cast<double>(i) / (count - 1.0) : 0.5;
      const double x =
          forward ? bank_x + share * (motor_x - bank_x) : motor_x - share * (motor_x - bank_x);
      drawing.circles.push_back(
          {.centre = {x, y}, .radius = 0.008, .line = Line::none, .fill = Fill::accent});
      const double level = (i % 2 == 0 ? 0.09 : 0.2);
      add_label(drawing, {x, above ? y + level : y - level}, volts(nodes[i]->voltage_V));
    }
  };
  lay(positive, plus_y, true, true);
  lay(negative, minus_y, false, false);
  add_label(drawing, {0.5, 0.62},
            feeder.conductor + ", " + length_text(design.job.feeder.run_m.value, system),
            Align::centre, TextRole::strong);
  add_label(drawing, {0.5, 0.46},
            fixed(feeder.current_A, 0) + " A, " + fixed(100.0 * feeder.drop_frac, 1) + " % lost");
  std::string nodes;
  for (const FeederNode& node : feeder.nodes)
    nodes += node.label + " " + volts(node.voltage_V) + ", ";
  drawing.description = "At " + fixed(feeder.current_A, 0) + " A: " + nodes +
                        fixed(feeder.loss_W, 0) + " W lost on the way.";
  return drawing;
}

Drawing charge_picture(const Design& design, System system) {
  const ChargeResult& charge = design.charge;
  const int blocks = std::max(design.bank.block_count, 1);
  Drawing drawing{.title = "The battery locker on charge"};
  drawing.low = {0.0, 0.0};
  drawing.high = {16.0, 10.0};
  add_box(drawing, {3.0, 1.5}, {13.0, 8.5}, Line::outline, Fill::paper);
  const int shown = std::min(blocks, 6);
  const double wide = std::min(2.4, 8.6 / shown);
  const double start = 8.0 - 0.5 * wide * shown;
  for (int i = 0; i < shown; ++i) {
    const double x = start + wide * i;
    add_box(drawing, {x + 0.1, 1.6}, {x + wide - 0.1, 4.4}, Line::outline, Fill::hull);
    add_label(drawing, {x + 0.5 * wide, 3.0}, std::to_string(i + 1));
  }
  if (blocks > shown)
    add_label(drawing, {12.4, 4.8}, "+" + std::to_string(blocks - shown), Align::right);
  const bool vents = is_lead(design.bank.block.chemistry);
  if (vents) {
    drawing.arrows.push_back({{0.8, 2.4}, {3.6, 2.4}});
    drawing.arrows.push_back({{12.4, 7.8}, {15.4, 7.8}});
    const std::string opening = show(charge.vent_area_cm2, "cm2", system).text();
    add_label(drawing, {0.2, 3.4}, opening, Align::left, TextRole::strong);
    add_label(drawing, {15.8, 6.9}, opening, Align::right, TextRole::strong);
    add_label(drawing, {8.0, 7.6}, "hydrogen rises");
  }
  add_label(drawing, {8.0, 5.6},
            fixed(charge.output_A, 0) + " A into each, full in " + fixed(charge.time_h, 1) + " h",
            Align::centre, TextRole::strong);
  add_label(drawing, {8.0, 0.7}, fixed(charge.shore_A, 1) + " A from shore");
  drawing.description =
      std::to_string(blocks) + " blocks, " + fixed(charge.output_A, 0) + " A into each, full in " +
      fixed(charge.time_h, 1) + " hours" +
      (vents ? "; openings of " + show(charge.vent_area_cm2, "cm2", system).text() +
                   " low and high let the hydrogen out."
             : "; no hydrogen, but vent the space.");
  return drawing;
}

}  // namespace thole
