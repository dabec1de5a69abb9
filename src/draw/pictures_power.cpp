// Hold, bank, feeder and charging: the pictures of force and energy.

#include <algorithm>
#include <cmath>

#include "base/number.h"
#include "base/units.h"
#include "draw/pictures.h"
#include "draw/sketch.h"
#include "io/figures.h"

namespace thole {
namespace {

std::string volts(double value_V) { return fixed(value_V, 1) + " V"; }

}  // namespace

// Wind from above, distance is its strength. The outline: the strongest that can be held while the
// current comes from that side; it is the same to left and right.
Drawing hold_picture(const Design& design, System system) {
  const HoldResult& hold = design.hold;
  const Water& water = design.job.water;
  const double wind_mps = water.wind_mps.value;
  const double held_mps = hold.limiting_wind_mps;
  double reach_mps = std::max({wind_mps, held_mps, 2.0});
  for (const RosePoint& point : hold.rose) reach_mps = std::max(reach_mps, point.limiting_wind_mps);
  const double rim = 1.22 * reach_mps;
  Drawing drawing{.title = "The wind that can be held, by the side the current comes from"};
  drawing.low = {-1.74 * rim, -1.04 * rim};
  drawing.high = {1.74 * rim, 1.04 * rim};
  const auto at = [](double angle_deg, double mps) {
    return Point{mps * std::sin(rad_from_deg(angle_deg)), mps * std::cos(rad_from_deg(angle_deg))};
  };
  // The strongest wind at an angle, between the computed ones.
  const auto held_at = [&](double angle_deg) {
    const auto next = std::find_if(hold.rose.begin(), hold.rose.end(), [&](const RosePoint& point) {
      return point.angle_deg >= angle_deg;
    });
    if (next == hold.rose.end()) return held_mps;
    if (next == hold.rose.begin()) return next->limiting_wind_mps;
    const RosePoint& before = *(next - 1);
    const double share = (angle_deg - before.angle_deg) / (next->angle_deg - before.angle_deg);
    return before.limiting_wind_mps + share * (next->limiting_wind_mps - before.limiting_wind_mps);
  };
  Shape outline{.closed = true, .line = Line::outline, .fill = Fill::water};
  for (int angle = -180; angle < 180; angle += 5) {
    outline.points.push_back(at(angle, held_at(std::abs(angle))));
  }
  drawing.shapes.push_back(std::move(outline));
  drawing.circles.push_back({.centre = {0.0, 0.0}, .radius = wind_mps, .line = Line::accent});
  add_boat_from_above(drawing, 0.5 * reach_mps, hold.heading_deg);
  const double tip = 0.42 * reach_mps;
  const double aside = -0.13 * rim;  // the wind's arrow leaves room for a current from ahead
  drawing.arrows.push_back({{aside, rim}, {aside, tip}});
  add_label(drawing, {aside - 0.07 * rim, 0.95 * rim}, "wind", Align::right);
  const double angle_deg = water.current_angle_deg.value;
  const bool flows = water.current_mps.value > 0.0;
  if (flows) drawing.arrows.push_back({at(angle_deg, rim), at(angle_deg, tip), Line::outline});
  const std::string current = "current " + speed_text(water.current_mps.value, system);
  add_label(drawing, {drawing.high.x, -0.94 * rim}, flows ? current : "no current", Align::right);
  // Both lines are named outside the rose, the outline by its figure for this very current.
  const auto name = [&](const std::string& text, Point on_line, double side, TextRole role) {
    add_polyline(drawing, {on_line, {-1.2 * rim, side * 0.83 * rim}}, Line::thin);
    add_label(drawing, {drawing.low.x, side * 0.94 * rim}, text, Align::left, role);
  };
  const double side = angle_deg <= 90.0 ? 1.0 : -1.0;
  const double beside_deg = std::clamp(angle_deg, 40.0, 140.0);
  name("holds " + speed_text(held_mps, system), at(-beside_deg, held_at(beside_deg)), side,
       TextRole::strong);
  name("asked " + speed_text(wind_mps, system), at(-90.0 - 45.0 * side, wind_mps), -side,
       TextRole::note);
  drawing.circles.push_back({.centre = at(angle_deg, held_mps),
                             .radius = 0.025 * rim,
                             .line = Line::none,
                             .fill = Fill::strong});
  add_handle(drawing, {-wind_mps, 0.0}, "water.wind_mps", -1.0, 0.0);
  if (flows) {
    drawing.handles.push_back({.at = at(angle_deg, rim),
                               .field = "water.current_angle_deg",
                               .turns = true,
                               .pivot = {0.0, 0.0}});
  }
  drawing.description =
      "Asked for is wind of " + speed_text(wind_mps, system) +
      (flows ? ", " + current + " at " + fixed(angle_deg, 0) + "° to it" : ", no current") +
      "; it holds up to " + speed_text(held_mps, system) + ". The bow lies " +
      fixed(hold.heading_deg, 0) + "° off the wind" +
      (hold.heading_deg >= 0.5 ? ", toward the current." : ".");
  return drawing;
}

Drawing bank_picture(const Design& design, System) {
  const BankResult& bank = design.bank;
  Drawing drawing{.title = "Energy left in the bank over the day", .to_scale = false};
  double hours = 0.0;
  for (const DayPoint& point : bank.day) hours = std::max(hours, point.time_h);
  const double span_h = std::max(hours, 0.1);
  const double full_Wh = std::max(bank.energy_Wh, 1.0);
  const double floor_Wh = full_Wh - bank.usable_Wh;
  std::vector<Point> curve;
  for (const DayPoint& point : bank.day)
    curve.push_back({point.time_h, std::max(point.left_Wh, 0.0)});
  if (curve.empty()) curve = {{0.0, full_Wh}, {span_h, full_Wh}};
  const double end_Wh = curve.back().y;
  drawing.low = {-0.05 * span_h, -0.14 * full_Wh};
  drawing.high = {1.05 * span_h, 1.16 * full_Wh};
  Shape left{.closed = true, .line = Line::none, .fill = Fill::water};
  left.points.push_back({0.0, 0.0});
  left.points.insert(left.points.end(), curve.begin(), curve.end());
  left.points.push_back({curve.back().x, 0.0});
  drawing.shapes.push_back(std::move(left));
  add_box(drawing, {0.0, 0.0}, {span_h, floor_Wh}, Line::none, Fill::hull);
  add_polyline(drawing, {{0.0, floor_Wh}, {span_h, floor_Wh}}, Line::hidden);
  add_polyline(drawing, {{0.0, full_Wh}, {0.0, 0.0}, {span_h, 0.0}}, Line::thin);
  add_polyline(drawing, {curve.back(), {curve.back().x, 1.02 * full_Wh}}, Line::thin);
  add_polyline(drawing, curve, Line::outline);
  drawing.circles.push_back(
      {.centre = curve.back(), .radius = 0.0, .line = Line::outline, .fill = Fill::strong});
  const auto kWh = [](double energy_Wh) { return fixed(energy_Wh / 1000.0, 2) + " kWh"; };
  add_label(drawing, {0.0, 1.1 * full_Wh}, kWh(full_Wh), Align::left, TextRole::strong);
  add_label(drawing, {span_h, 1.1 * full_Wh}, kWh(end_Wh) + " left", Align::right,
            TextRole::strong);
  add_label(drawing, {0.02 * span_h, 0.5 * floor_Wh}, "kept back " + kWh(floor_Wh), Align::left);
  add_label(drawing, {0.0, -0.08 * full_Wh}, "0 h", Align::left);
  add_label(drawing, {span_h, -0.08 * full_Wh}, fixed(hours, 1) + " h", Align::right);
  drawing.description = "Full, " + kWh(full_Wh) + " by the label; after " + fixed(hours, 1) +
                        " h of use " + kWh(end_Wh) + " left. " + kWh(floor_Wh) +
                        " should be kept back" +
                        (end_Wh < floor_Wh ? ": the day takes more than that allows." : ".");
  return drawing;
}

Drawing feeder_picture(const Design& design, System system) {
  const FeederResult& feeder = design.feeder;
  const Feeder& given = design.job.feeder;
  Drawing drawing{.title = "Volts along the feeder at full thrust", .to_scale = false};
  drawing.low = {-0.09, -0.2};
  drawing.high = {1.09, 1.25};
  // The loop as built: bank on the left, motor on the right, plus above and minus below. It grows
  // with the run, up to a quarter more than the boat is long.
  constexpr double kShortest = 0.58;
  const double longest_m = 1.25 * design.job.boat.length_m.value;
  const double stretch = (1.0 - kShortest) / longest_m;
  const double motor_x = kShortest + stretch * std::min(given.run_m.value, longest_m);
  const double plus_y = 0.85;
  const double minus_y = 0.2;
  const Line cable = line_for(given.run_m.origin);
  add_polyline(drawing, {{0.0, plus_y}, {motor_x, plus_y}}, cable);
  add_polyline(drawing, {{0.0, minus_y}, {motor_x, minus_y}}, cable);
  add_polyline(drawing, {{0.0, minus_y}, {0.0, 0.45}}, Line::outline);
  add_polyline(drawing, {{0.0, 0.6}, {0.0, plus_y}}, Line::outline);
  add_polyline(drawing, {{-0.05, 0.6}, {0.05, 0.6}}, Line::outline);
  add_polyline(drawing, {{-0.025, 0.45}, {0.025, 0.45}}, Line::outline);
  add_polyline(drawing, {{motor_x, minus_y}, {motor_x, plus_y}}, Line::outline);
  drawing.circles.push_back(
      {.centre = {motor_x, 0.525}, .radius = 0.045, .line = Line::outline, .fill = Fill::hull});
  add_label(drawing, {motor_x, 0.525}, "M", Align::centre, TextRole::strong);
  std::vector<const FeederNode*> positive;
  std::vector<const FeederNode*> negative;
  for (const FeederNode& node : feeder.nodes)
    (node.positive ? positive : negative).push_back(&node);
  // Neighbours stand on two levels, so that their figures have room.
  const auto lay = [&](const std::vector<const FeederNode*>& nodes, double y, double side,
                       bool forward) {
    const auto count = static_cast<double>(nodes.size());
    for (std::size_t i = 0; i < nodes.size(); ++i) {
      const double share = count > 1.0 ? static_cast<double>(i) / (count - 1.0) : 0.5;
      const double x = (forward ? share : 1.0 - share) * motor_x;
      drawing.circles.push_back(
          {.centre = {x, y}, .radius = 0.01, .line = Line::none, .fill = Fill::strong});
      const double level = i % 2 == 0 ? 0.11 : 0.24;
      add_label(drawing, {x, y + side * level}, volts(nodes[i]->voltage_V));
    }
  };
  lay(positive, plus_y, 1.0, true);
  lay(negative, minus_y, -1.0, false);
  const double middle = 0.5 * motor_x;
  const std::string run = length_text(given.run_m.value, system);
  const std::string conductor = shown_conductor(feeder.conductor);
  const std::string lost = fixed(100.0 * feeder.drop_frac, 1) + " % lost";
  add_label(drawing, {middle, 0.6}, conductor + ", " + run, Align::centre, TextRole::strong);
  add_label(drawing, {middle, 0.45}, fixed(feeder.current_A, 0) + " A, " + lost);
  add_handle(drawing, {motor_x, plus_y}, "feeder.run_m", 1.0 / stretch, 0.0);
  std::string nodes;
  for (const FeederNode& node : feeder.nodes)
    nodes += (nodes.empty() ? "" : ", ") + node.label + " " + volts(node.voltage_V);
  drawing.description = fixed(feeder.current_A, 0) + " A through " + run + " of " + conductor +
                        (given.run_m.given() ? "" : ", a run estimated") + ": " + lost + ", " +
                        fixed(feeder.loss_W, 0) + " W. Volts on the way: " + nodes + ".";
  return drawing;
}

Drawing charge_picture(const Design& design, System system) {
  const ChargeResult& charge = design.charge;
  const int blocks = std::max(design.bank.block_count, 1);
  Drawing drawing{.title = "The battery locker on charge"};
  drawing.high = {17.0, 10.4};
  add_box(drawing, {1.4, 1.7}, {15.6, 8.5}, Line::outline, Fill::paper);
  // Leads from above into each block.
  const int shown = std::min(blocks, 6);
  const double wide = std::min(2.2, 11.0 / shown);
  const double start = 8.5 - 0.5 * wide * shown;
  for (int i = 0; i < shown; ++i) {
    const double x = start + wide * i;
    add_box(drawing, {x + 0.1, 1.8}, {x + wide - 0.1, 4.4}, Line::outline, Fill::hull);
    for (const double post : {0.3, 0.7}) {
      add_box(drawing, {x + wide * post - 0.15, 4.4}, {x + wide * post + 0.15, 4.65}, Line::outline,
              Fill::hull);
    }
    add_label(drawing, {x + 0.5 * wide, 3.1}, std::to_string(i + 1));
  }
  if (blocks > shown)
    add_label(drawing, {15.3, 3.1}, "+" + std::to_string(blocks - shown), Align::right);
  const std::string into = fixed(charge.output_A, 0) + " A into each";
  const std::string full = "full in " + fixed(charge.time_h, 1) + " h";
  add_label(drawing, {8.5, 7.5}, into, Align::centre, TextRole::strong);
  add_label(drawing, {8.5, 6.1}, full, Align::centre, TextRole::strong);
  const std::string shore = fixed(charge.shore_A, 1) + " A from shore";
  add_label(drawing, {8.5, 0.7}, shore);
  const bool vents = is_lead(design.bank.block.chemistry);
  const std::string opening = show(charge.vent_area_cm2, "cm2", system).text();
  if (vents) {
    drawing.arrows.push_back({{0.1, 2.9}, {2.9, 2.9}});
    drawing.arrows.push_back({{14.1, 7.6}, {16.9, 7.6}});
    add_label(drawing, {8.5, 9.5}, "vents low and high, " + opening);
  }
  drawing.description = std::to_string(blocks) + (blocks == 1 ? " block, " : " blocks, ") + into +
                        ", " + full + "; " + shore + ". " +
                        (vents ? "Openings of " + opening +
                                     " each, low on one side and high on the other, let the "
                                     "hydrogen out."
                               : "No hydrogen comes off this bank.");
  return drawing;
}

}  // namespace thole
