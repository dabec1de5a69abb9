// Boat, water, shaft and trim: the pictures in side view.

#include <algorithm>
#include <cmath>
#include <numbers>

#include "base/number.h"
#include "base/units.h"
#include "draw/pictures.h"
#include "draw/sketch.h"

namespace thole {
namespace {

constexpr double kPerson_m = 1.75;

// Forward of the transom, where the shaft enters the water.
double shaft_x(const Job& job) {
  return 0.5 * job.boat.waterline_length_m.value + job.shaft.thruster_forward_m.value;
}

void frame_boat(Drawing& drawing, const Boat& boat) {
  const double length = boat.length_m.value;
  const double tall = std::max(boat.bow_height_m.value + kPerson_m, 0.32 * length);
  drawing.low = {-0.06 * length, -std::max(0.15 * length, boat.draft_m.value + 0.45)};
  drawing.high = {1.2 * length, tall};
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
  add_person(drawing, {0.17 * length, 0.3 * bow}, kPerson_m);
  add_hull(drawing, boat, 0.0, 0.0, line_for(boat.length_m.origin));
  add_motor(drawing, shaft_x(design.job), bow + design.job.shaft.collar_m.value,
            -design.shaft.propeller_depth_m, 0.5 * design.hold.motor.propeller_diameter_m);
  const double under = drawing.low.y + 0.05 * length;
  add_dimension(drawing, {0.0, under}, {length, under}, length_text(length, system));
  add_dimension(drawing, {1.11 * length, 0.0}, {1.11 * length, bow}, length_text(bow, system));
  add_label(drawing, {0.35 * length, 0.28 * bow}, mass_text(boat.displacement_kg.value, system),
            Align::centre, TextRole::strong);
  add_handle(drawing, {length, bow}, "boat.bow_height_m", 0.0, 1.0);
  add_handle(drawing, {length, under}, "boat.length_m", 1.0, 0.0);
  drawing.description =
      "Length " + length_text(length, system) + ", bow " + length_text(bow, system) +
      " above water, loaded weight " + mass_text(boat.displacement_kg.value, system) +
      ". The shaft hangs " + length_text(std::abs(shaft_x(design.job) - length), system) +
      (shaft_x(design.job) < length ? " behind" : " ahead of") + " the stem, its propeller " +
      length_text(design.shaft.propeller_depth_m, system) + " down. " +
      (boat.length_m.given() ? "The hull is drawn from your length."
                             : "The hull is dotted: its length is estimated.");
  return drawing;
}

Drawing water_picture(const Design& design, System system) {
  const Boat& boat = design.job.boat;
  const Water& water = design.job.water;
  const double length = boat.length_m.value;
  const double wave_m = design.hold.wave_height_m;
  const double wavelength_m = std::max(kGravity_mps2 * design.hold.wave_period_s *
                                           design.hold.wave_period_s / (2.0 * std::numbers::pi),
                                       0.5);  // deep water
  const double deepest_m = 0.45 * length;     // of the picture
  const bool shallow = water.depth_m.value <= deepest_m;
  const double bed = -std::min(water.depth_m.value, deepest_m);
  Drawing drawing{.title = "Wind, waves and current where it holds"};
  drawing.low = {-0.08 * length, std::min(bed, -0.3 * length) - 0.06 * length};
  drawing.high = {1.88 * length, std::max(0.52 * length, boat.bow_height_m.value + kPerson_m)};
  const double margin = length;
  Shape sea{.closed = true, .line = Line::none, .fill = Fill::water};
  std::vector<Point> surface;
  const int count = 160;
  for (int i = 0; i <= count; ++i) {
    const double x =
        drawing.low.x - margin + (drawing.high.x - drawing.low.x + 2.0 * margin) * i / count;
    surface.push_back(
        {x, 0.5 * wave_m * std::cos(2.0 * std::numbers::pi * (x - length) / wavelength_m)});
  }
  sea.points = surface;
  sea.points.push_back({surface.back().x, drawing.low.y - margin});
  sea.points.push_back({surface.front().x, drawing.low.y - margin});
  drawing.shapes.push_back(std::move(sea));
  add_polyline(drawing, std::move(surface),
               water.wave_height_m.given() ? Line::thin : Line::estimated);
  add_person(drawing, {0.17 * length, 0.3 * boat.bow_height_m.value}, kPerson_m);
  add_hull(drawing, boat, 0.0, 0.0, line_for(boat.length_m.origin));
  if (shallow) {  // deeper water has no bed in the picture
    add_polyline(drawing, {{drawing.low.x - margin, bed}, {drawing.high.x + margin, bed}},
                 line_for(water.depth_m.origin));
  }
  const std::string depth = length_text(water.depth_m.value, system);
  add_label(drawing, {-0.04 * length, drawing.low.y + 0.13 * length}, depth + " deep", Align::left);

  // Arrows as long as wind and current are strong, with a grip at the free end.
  const double root = 1.2 * length;
  const double middle = 1.5 * length;
  const auto add_flow = [&](double y, double speed_mps, double length_per_mps, bool toward_boat,
                            Line line, const char* field) {
    const double grip = root + std::min(0.1 + length_per_mps * speed_mps, 0.64) * length;
    const Point near{root, y};
    const Point far{grip, y};
    const Point tail = toward_boat ? far : near;
    drawing.arrows.push_back({tail, speed_mps > 0.0 ? (toward_boat ? near : far) : tail, line});
    add_handle(drawing, far, field, 1.0 / (length_per_mps * length), 0.0);
  };
  const double wind_y = 0.3 * length;
  const double wind_mps = water.wind_mps.value;
  add_flow(wind_y, wind_mps, 0.035, true, Line::accent, "water.wind_mps");
  add_label(drawing, {middle, wind_y + 0.11 * length}, "wind " + speed_text(wind_mps, system),
            Align::centre, TextRole::strong);
  add_label(drawing, {middle, 0.5 * wave_m + 0.08 * length},
            "waves " + length_text(wave_m, system));
  const double current_y = -0.12 * length;
  const double current_mps = water.current_mps.value;
  add_flow(current_y, current_mps, 0.25, water.current_angle_deg.value <= 90.0, Line::outline,
           "water.current_mps");
  add_label(drawing, {middle, current_y - 0.12 * length},
            "current " + speed_text(current_mps, system));
  drawing.description =
      "Wind " + speed_text(wind_mps, system) + ", waves " + length_text(wave_m, system) +
      " high every " + fixed(design.hold.wave_period_s, 1) + " s, water " + depth + " deep. " +
      (current_mps > 0.0 ? "Current " + speed_text(current_mps, system) + " at " +
                               fixed(water.current_angle_deg.value, 0) + "° to the wind."
                         : "No current: " + speed_text(0.0, system) + ".");
  return drawing;
}

Drawing shaft_picture(const Design& design, System system) {
  const Boat& boat = design.job.boat;
  const double bow = boat.bow_height_m.value;
  const double depth = design.shaft.propeller_depth_m;
  const double radius = 0.5 * design.hold.motor.propeller_diameter_m;
  const double motion = design.shaft.relative_motion_m;
  const double collar = bow + design.job.shaft.collar_m.value;
  const double x = shaft_x(design.job);
  // Two columns of dimensions stand clear of stem and shaft.
  const double first = std::max(boat.length_m.value, x) + 0.45;
  const double second = first + 0.85;
  Drawing drawing{.title = "The bow with the motor down"};
  const double low = -std::max(depth + radius, boat.draft_m.value) - 0.2;
  const double high = collar + 0.5;
  drawing.high = {second + 0.55, high};
  drawing.low = {std::min(drawing.high.x - 1.68 * (high - low), x - 0.7), low};
  add_water(drawing);
  add_hull(drawing, boat, 0.0, 0.0, line_for(boat.bow_height_m.origin));
  add_polyline(drawing, {{x - 0.35, -motion}, {first - 0.2, -motion}}, Line::hidden);
  const bool deep = motion > depth - 0.3;  // the word stays clear of the propeller
  add_label(drawing, {x + 0.14, -motion + (deep ? 0.15 : -0.15)}, "trough", Align::left);
  add_motor(drawing, x, collar, -depth, radius);
  add_dimension(drawing, {first, -depth}, {first, collar},
                length_text(design.shaft.length_m, system));
  add_dimension(drawing, {second, 0.0}, {second, bow}, length_text(bow, system));
  add_dimension(drawing, {second, -depth}, {second, 0.0}, length_text(depth, system));
  add_handle(drawing, {boat.length_m.value, bow}, "boat.bow_height_m", 0.0, 1.0);
  add_handle(drawing, {x, collar + 0.36}, "shaft.thruster_forward_m", 1.0, 0.0);
  add_handle(drawing, {first, -depth}, "shaft.length_m", 0.0, -1.0);
  drawing.description =
      "Bow " + length_text(bow, system) + " above water, shaft " +
      length_text(design.shaft.length_m, system) +
      (depth >= 0.0 ? ", propeller " + length_text(depth, system) + " down. "
                    : ", propeller in the air: " + length_text(depth, system) + " down. ") +
      "In a trough the surface falls by " + length_text(motion, system) + ". The shaft stands " +
      length_text(design.job.shaft.thruster_forward_m.value, system) + " forward of midships.";
  return drawing;
}

Drawing trim_picture(const Design& design, System system) {
  const Boat& boat = design.job.boat;
  const TrimResult& trim = design.trim;
  const double length = boat.length_m.value;
  // Centimetres on a boat of metres: enlarged, or nobody would see them.
  const double enlarged = length < 8.0 ? 5.0 : 10.0;
  const double deepest =
      boat.draft_m.value + enlarged * std::max({trim.bow_sinkage_m, trim.stern_sinkage_m, 0.0});
  Drawing drawing{.title = "Afloat before and after"};
  frame_boat(drawing, boat);
  drawing.low.y = -deepest - 0.22 * length;
  add_water(drawing);
  add_person(drawing, {0.17 * length, 0.3 * boat.bow_height_m.value}, kPerson_m);
  add_hull(drawing, boat, enlarged * trim.bow_sinkage_m, enlarged * trim.stern_sinkage_m);
  add_hull(drawing, boat, 0.0, 0.0, Line::hidden, false);
  const double bank_x = design.job.trim.bank_x_m.value;
  const double tall = 0.05 * length;
  // Aboard as she floats after: blocks and motor go down with her.
  const auto down = [&](double x) {
    return enlarged * (trim.stern_sinkage_m + (trim.bow_sinkage_m - trim.stern_sinkage_m) * x /
                                                  boat.waterline_length_m.value);
  };
  const double bank_y = design.job.trim.bank_z_m.value - down(bank_x);
  add_box(drawing, {bank_x - 0.06 * length, bank_y - 0.5 * tall},
          {bank_x + 0.06 * length, bank_y + 0.5 * tall}, Line::outline, Fill::paper);
  add_label(drawing, {bank_x, -deepest - 0.065 * length}, mass_text(design.bank.mass_kg, system),
            Align::centre, TextRole::strong);
  const double motor_x = design.job.trim.motor_x_m.value;
  const double deck = design.job.trim.motor_z_m.value - 0.11 - down(motor_x);
  add_box(drawing, {motor_x - 0.04 * length, deck + 0.02}, {motor_x + 0.04 * length, deck + 0.2},
          Line::outline, Fill::hull);
  add_label(drawing, {motor_x, deck + 0.2 + 0.055 * length},
            mass_text(design.hold.motor.mass_kg, system), Align::centre, TextRole::strong);
  const auto moved = [&](double sinkage_m) {
    return show(1000.0 * std::abs(sinkage_m), "mm", system).text() +
           (sinkage_m < 0.0 ? " up" : " down");
  };
  const double foot = drawing.low.y + 0.04 * length;
  add_label(drawing, {0.0, foot}, "stern " + moved(trim.stern_sinkage_m), Align::left);
  add_label(drawing, {1.12 * length, foot}, "bow " + moved(trim.bow_sinkage_m), Align::right);
  add_label(drawing, {drawing.low.x, drawing.high.y - 0.03 * length},
            "movement × " + fixed(enlarged, 0), Align::left);
  add_handle(drawing, {bank_x, bank_y}, "trim.bank_x_m", 1.0, 0.0);
  drawing.description =
      "Bow " + moved(trim.bow_sinkage_m) + ", stern " + moved(trim.stern_sinkage_m) + "; trim " +
      fixed(std::abs(trim.trim_deg), 2) +
      (trim.trim_deg < 0.0 ? "° by the stern" : "° by the bow") + ", heel " +
      fixed(trim.heel_deg, 2) + "°. The bank of " + mass_text(design.bank.mass_kg, system) +
      " stands " + length_text(bank_x, system) + " forward of the transom, the motor of " +
      mass_text(design.hold.motor.mass_kg, system) + " at " + length_text(motor_x, system) +
      ". The dashed hull is before; movement is drawn " + fixed(enlarged, 0) + " times as large.";
  return drawing;
}

}  // namespace thole
