// Boat, water, shaft and trim: the pictures in side view.

#include <algorithm>
#include <cmath>

#include "base/number.h"
#include "draw/pictures.h"
#include "draw/sketch.h"

namespace thole {
namespace {

constexpr double kPi = 3.14159265358979323846;

void frame_boat(Drawing& drawing, const Boat& boat) {
  const double length = boat.length_m.value;
  const double tall = std::max(boat.bow_height_m.value + 1.2, 0.34 * length);
  drawing.low = {-0.06 * length, -std::max(0.14 * length, boat.draft_m.value + 0.35)};
  drawing.high = {1.12 * length, tall};
}

// Shaft from the collar down, propeller at its end.
void add_motor(Drawing& drawing, double x, double collar_y, double axis_y, double radius) {
  add_polyline(drawing, {{x, collar_y + 0.12}, {x, axis_y}}, Line::accent);
  add_box(drawing, {x - 0.08, collar_y}, {x + 0.08, collar_y + 0.14}, Line::outline, Fill::hull);
  drawing.shapes.push_back({.points = {{x - 0.22, axis_y},
                                       {x - 0.14, axis_y + 0.06},
                                       {x + 0.2, axis_y + 0.06},
                                       {x + 0.26, axis_y},
                                       {x + 0.2, axis_y - 0.06},
                                       {x - 0.14, axis_y - 0.06}},
                            .closed = true,
                            .line = Line::outline,
                            .fill = Fill::hull});
  add_polyline(drawing, {{x - 0.22, axis_y - radius}, {x - 0.22, axis_y + radius}}, Line::accent);
}

}  // namespace

Drawing boat_picture(const Design& design, System system) {
  const Boat& boat = design.job.boat;
  const double length = boat.length_m.value;
  const double bow = boat.bow_height_m.value;
  Drawing drawing{.title = "The boat from the side"};
  frame_boat(drawing, boat);
  add_water(drawing);
  add_hull(drawing, boat, 0.0, 0.0, line_for(boat.length_m.origin));
  const double motor_x =
      0.5 * boat.waterline_length_m.value + design.job.shaft.thruster_forward_m.value;
  add_motor(drawing, std::max(motor_x, boat.waterline_length_m.value), bow,
            -design.shaft.propeller_depth_m, 0.5 * design.hold.motor.propeller_diameter_m);
  add_dimension(drawing, {0.0, drawing.low.y + 0.12}, {length, drawing.low.y + 0.12},
                length_text(length, system));
  add_dimension(drawing, {1.07 * length, 0.0}, {1.07 * length, bow}, length_text(bow, system));
  add_label(drawing, {0.3 * length, 0.25 * bow},
            show(boat.displacement_kg.value, "kg", system).text(), Align::centre, TextRole::strong);
  drawing.description = "Length " + length_text(length, system) + ", bow " +
                        length_text(bow, system) + " above water, loaded weight " +
                        show(boat.displacement_kg.value, "kg", system).text() +
                        ". What is estimated is dotted.";
  return drawing;
}

Drawing water_picture(const Design& design, System system) {
  const Boat& boat = design.job.boat;
  const Water& water = design.job.water;
  const double length = boat.length_m.value;
  const double wave_m = design.hold.wave_height_m;
  const double period_s = design.hold.wave_period_s;
  const double wavelength_m =
      std::max(9.81 * period_s * period_s / (2.0 * kPi), 0.5);  // deep water
  const double depth_m = std::min(water.depth_m.value, 0.5 * length);
  Drawing drawing{.title = "Wind, waves and current where it holds"};
  drawing.low = {-0.25 * length, -depth_m - 0.4};
  drawing.high = {1.75 * length, 0.5 * length};
  const double margin = length;
  Shape sea{.closed = true, .line = Line::thin, .fill = Fill::water};
  sea.points.push_back({drawing.low.x - margin, drawing.low.y - margin});
  sea.points.push_back({drawing.high.x + margin, drawing.low.y - margin});
  const int count = 160;
  for (int i = count; i >= 0; --i) {
    const double x =
        drawing.low.x - margin + (drawing.high.x - drawing.low.x + 2.0 * margin) * i / count;
    sea.points.push_back({x, 0.5 * wave_m * std::cos(2.0 * kPi * (x - length) / wavelength_m)});
  }
  drawing.shapes.push_back(std::move(sea));
  add_hull(drawing, boat);
  const double high = drawing.high.y;
  drawing.arrows.push_back({{1.7 * length, 0.72 * high}, {1.2 * length, 0.72 * high}});
  add_label(drawing, {1.45 * length, 0.72 * high + 0.09 * length},
            "wind " + show(water.wind_mps.value, "mps", system).text(), Align::centre,
            TextRole::strong);
  const bool against = water.current_angle_deg.value > 90.0;
  const double from = against ? 1.2 : 1.7;
  if (water.current_mps.value > 0.0) {
    drawing.arrows.push_back({{from * length, -0.55 * depth_m},
                              {(2.9 - from) * length, -0.55 * depth_m},
                              Line::outline});
  }
  add_label(drawing, {1.45 * length, -0.55 * depth_m - 0.09 * length},
            "current " + show(water.current_mps.value, "mps", system).text());
  add_dimension(drawing, {1.12 * length, -0.5 * wave_m}, {1.12 * length, 0.5 * wave_m},
                length_text(wave_m, system));
  const double bed = -depth_m - 0.2;
  add_polyline(drawing, {{drawing.low.x - margin, bed}, {drawing.high.x + margin, bed}},
               Line::hidden);
  add_label(drawing, {-0.2 * length, bed + 0.09 * length},
            length_text(water.depth_m.value, system) + " deep", Align::left);
  drawing.description = "Wind " + show(water.wind_mps.value, "mps", system).text() + ", waves " +
                        length_text(wave_m, system) + " every " + fixed(period_s, 1) +
                        " s, current " + show(water.current_mps.value, "mps", system).text() +
                        " at " + fixed(water.current_angle_deg.value, 0) +
                        " degrees to the wind, water " + length_text(water.depth_m.value, system) +
                        " deep.";
  return drawing;
}

Drawing shaft_picture(const Design& design, System system) {
  const Boat& boat = design.job.boat;
  const double bow = boat.bow_height_m.value;
  const double depth = design.shaft.propeller_depth_m;
  const double radius = 0.5 * design.hold.motor.propeller_diameter_m;
  const double motion = design.shaft.relative_motion_m;
  const double waterline = boat.waterline_length_m.value;
  const double x = waterline + 0.35;
  Drawing drawing{.title = "The bow with the motor down"};
  const double low = -std::max(depth + radius + 0.25, 0.9);
  const double high = bow + 0.45;
  drawing.low = {x - 0.75 * (high - low), low};
  drawing.high = {x + 0.85 * (high - low), high};
  add_water(drawing);
  add_hull(drawing, boat, 0.0, 0.0, line_for(boat.bow_height_m.origin));
  add_polyline(drawing, {{x - 0.6, -motion}, {x + 1.4, -motion}}, Line::hidden);
  add_label(drawing, {x + 0.5, -motion - 0.1}, "surface in a trough", Align::left);
  const double collar = bow + design.job.shaft.collar_m.value;
  add_motor(drawing, x, collar, -depth, radius);
  const double right = drawing.high.x - 0.12;
  add_dimension(drawing, {right, 0.0}, {right, bow}, length_text(bow, system));
  add_dimension(drawing, {right, -depth}, {right, 0.0}, length_text(depth, system));
  const double left = x + 0.42;
  add_dimension(drawing, {left, -depth}, {left, collar},
                length_text(design.shaft.length_m, system));
  drawing.description = "Bow " + length_text(bow, system) + " above water, shaft " +
                        length_text(design.shaft.length_m, system) + ", propeller " +
                        length_text(depth, system) + " down; the sea uncovers " +
                        length_text(motion, system) + " of it.";
  return drawing;
}

Drawing trim_picture(const Design& design, System system) {
  const Boat& boat = design.job.boat;
  const TrimResult& trim = design.trim;
  const double length = boat.length_m.value;
  Drawing drawing{.title = "Afloat before and after"};
  frame_boat(drawing, boat);
  add_water(drawing);
  add_hull(drawing, boat, 0.0, 0.0, Line::estimated, false);
  add_hull(drawing, boat, trim.bow_sinkage_m, trim.stern_sinkage_m);
  const double bank_x = design.job.trim.bank_x_m.value;
  add_box(drawing, {bank_x - 0.3, 0.05}, {bank_x + 0.3, 0.3}, Line::outline, Fill::accent);
  add_label(drawing, {bank_x + 0.5, 0.18}, show(design.bank.mass_kg, "kg", system).text(),
            Align::left, TextRole::strong);
  const double motor_x = design.job.trim.motor_x_m.value;
  add_box(drawing, {motor_x - 0.35, boat.bow_height_m.value + 0.02},
          {motor_x + 0.35, boat.bow_height_m.value + 0.2}, Line::outline, Fill::accent);
  add_label(drawing, {motor_x - 0.1, boat.bow_height_m.value + 0.2 + 0.045 * length},
            show(design.hold.motor.mass_kg, "kg", system).text(), Align::centre, TextRole::strong);
  const auto moved = [&](double sinkage_m) {
    return show(1000.0 * std::abs(sinkage_m), "mm", system).text() +
           (sinkage_m < 0.0 ? " up" : " down");
  };
  add_label(drawing, {0.02 * length, drawing.low.y + 0.25}, "stern " + moved(trim.stern_sinkage_m),
            Align::left);
  add_label(drawing, {1.1 * length, drawing.low.y + 0.25}, "bow " + moved(trim.bow_sinkage_m),
            Align::right);
  drawing.description = "Bow " + moved(trim.bow_sinkage_m) + ", stern " +
                        moved(trim.stern_sinkage_m) + ", trim " + fixed(trim.trim_deg, 2) +
                        " degrees by the bow, heel " + fixed(trim.heel_deg, 2) + " degrees.";
  return drawing;
}

}  // namespace thole
