#include "draw/bow_elevation.h"

#include <algorithm>
#include <cmath>

#include "base/number.h"
#include "draw/sketch.h"
#include "io/figures.h"

namespace thole {
namespace {

constexpr double kColumn_m = 0.5;   // from one column of dimensions to the next
constexpr double kTextOff_m = 0.13;    // of a level, at the width of a phone
constexpr double kLeastMotion_m = 0.02;

// x forward of the stem, y above the calm waterline.
struct Elevation {
  double bow_m = 0.0;     // deck
  double pivot_m = 0.0;   // forward of the stem
  double depth_m = 0.0;   // propeller axis under the water
  double radius_m = 0.0;  // of the propeller
  double collar_m = 0.0;  // above the deck
  double motion_m = 0.0;
  double left_m = 0.0;
};

void add_bow(Drawing& drawing, const Design& design, const Elevation& e) {
  const Boat& boat = design.job.boat;
  const double rake = std::clamp(boat.length_m.value - boat.waterline_length_m.value, 0.15, 1.5);
  const double left = e.left_m - 1.0;  // beyond the sheet
  Shape hull{.closed = true, .line = line_for(boat.bow_height_m.origin), .fill = Fill::hull};
  hull.points = {{left, e.bow_m}, {0.0, e.bow_m}, {-0.45 * rake, 0.5 * e.bow_m}, {-rake, 0.0}, {-rake - 0.35, -0.6 * boat.draft_m.value},
                 {-rake - 1.1, -boat.draft_m.value}, {left, -boat.draft_m.value}};
  drawing.shapes.push_back(std::move(hull));
}

// Plate with its bolts through deck and backing.
void add_plate(Drawing& drawing, const Design& design, const Elevation& e) {
  const Mount& mount = design.job.mount;
  const double thick = std::max(1e-3 * design.mount.plate_thickness_mm, 0.012);
  const double front = std::max(e.pivot_m - 0.04, -0.5 * 1e-3 * mount.plate_length_mm.value);
  const double back = front - 1e-3 * mount.plate_length_mm.value;
  add_box(drawing, {back, e.bow_m}, {front, e.bow_m + thick}, Line::outline, Fill::hull, true);
  const double deck = 1e-3 * (mount.deck_thickness_mm.value + mount.core_thickness_mm.value + mount.backing_thickness_mm.value) + 0.02;
  const double span = 1e-3 * mount.bolt_pitch_mm.value * (mount.bolt_rows.value - 1);
  const double first = std::min(0.5 * (back + front) + 0.5 * span, -0.06);  // on the deck
  for (int row = 0; row < mount.bolt_rows.value; ++row) {
    const double x = first - 1e-3 * mount.bolt_pitch_mm.value * row;
    add_polyline(drawing, {{x, e.bow_m + thick + 0.012}, {x, e.bow_m - deck}}, Line::outline);
    add_polyline(drawing, {{x - 0.02, e.bow_m - deck}, {x + 0.02, e.bow_m - deck}}, Line::outline);
  }
}

void add_stowed(Drawing& drawing, const Design& design, const ForedeckStudy& study, const Elevation& e) {
  if (!study.room.problem.empty()) return;
  const double x0 = e.pivot_m + design.job.foredeck.mount_x_m.value;  // zero, but for what the sheet cuts
  for (const Bar& bar : tilted_motor(study.room_input.motor, study.room_input.stance, 0.0)) {
    if (bar.part == "propeller") continue;
    const double r = bar.radius_m;
    const double low = std::min(-bar.a.aft_m, -bar.b.aft_m) + x0;
    const double high = std::max(-bar.a.aft_m, -bar.b.aft_m) + x0;
    const double ends = bar.part == "shaft" ? 0.0 : r;
    add_box(drawing, {low - ends, e.bow_m + bar.a.up_m - r}, {high + ends, e.bow_m + bar.a.up_m + r}, Line::hidden, Fill::none);
  }
  const double axis = e.pivot_m + kPodAhead_m;
  drawing.circles.push_back({.centre = {axis, e.bow_m + lying_height_m(study.room_input.motor)}, .radius = e.radius_m, .line = Line::hidden});
}

void add_lowered(Drawing& drawing, const ForedeckStudy& study, const Elevation& e) {
  const double tube = 0.5 * study.room_input.motor.tube_m;
  const double x = e.pivot_m;
  add_box(drawing, {x - tube, -e.depth_m}, {x + tube, e.bow_m + e.collar_m}, Line::outline, Fill::paper);
  add_box(drawing, {x - 0.07, e.bow_m}, {x + 0.07, e.bow_m + e.collar_m}, Line::outline, Fill::hull);
  add_box(drawing, {x - kHeadRadius_m, e.bow_m + e.collar_m}, {x + kHeadRadius_m, e.bow_m + e.collar_m + kHeadLength_m}, Line::outline, Fill::paper);
  add_box(drawing, {x - 0.5 * kPodLength_m, -e.depth_m - kPodRadius_m}, {x + 0.5 * kPodLength_m, -e.depth_m + kPodRadius_m}, Line::outline, Fill::paper);
  add_polyline(drawing, {{x - kPropellerOff_m, -e.depth_m - e.radius_m}, {x - kPropellerOff_m, -e.depth_m + e.radius_m}}, Line::accent);
  add_polyline(drawing, {{x - 0.35, -e.depth_m}, {x + 0.6, -e.depth_m}}, Line::centre);
}

void add_levels(Drawing& drawing, const Elevation& e, double right, System system) {
  add_polyline(drawing, {{e.left_m - 1.0, 0.0}, {right, 0.0}}, Line::thin);
  if (e.motion_m < kLeastMotion_m) return;
  for (const double level : {e.motion_m, -e.motion_m}) add_polyline(drawing, {{e.left_m - 1.0, level}, {right, level}}, Line::hidden);
  add_label(drawing, {e.left_m + 0.06, e.motion_m + kTextOff_m}, "waves \u00b1" + length_text(e.motion_m, system), Align::left);
}

void add_dimensions(Drawing& drawing, const Design& design, const ForedeckStudy& study, const Elevation& e, double first, System system) {
  const double deepest = e.depth_m + e.radius_m;
  const double top = e.bow_m + e.collar_m;
  add_dimension(drawing, {first, -e.depth_m}, {first, top}, length_text(design.shaft.length_m, system));
  add_dimension(drawing, {first + kColumn_m, 0.0}, {first + kColumn_m, e.bow_m}, length_text(e.bow_m, system));
  add_dimension(drawing, {first + kColumn_m, -deepest}, {first + kColumn_m, 0.0}, length_text(deepest, system));
  if (study.room.problem.empty()) {
    const double over = e.bow_m + lying_height_m(study.room_input.motor) + e.radius_m + 0.14;
    const double end = -study.room.stowed_end_m;
    add_dimension(drawing, {end, over}, {end + study.room.stowed_m, over}, length_text(study.room.stowed_m, system));
    add_label(drawing, {end, over + 0.14}, "stowed, dashed", Align::left);
  }
}

}  // namespace

Drawing bow_elevation(const Design& design, System system) {
  const ForedeckStudy study = foredeck_study(design);
  Elevation e{.bow_m = design.job.boat.bow_height_m.value,
              .pivot_m = -design.job.foredeck.mount_x_m.value,
              .depth_m = design.shaft.propeller_depth_m,
              .radius_m = 0.5 * design.hold.motor.propeller_diameter_m,
              .collar_m = design.job.shaft.collar_m.value,
              .motion_m = design.shaft.relative_motion_m};
  Drawing drawing{.title = "The bow from the side, motor stowed and down"};
  const double first = std::max(e.pivot_m, 0.0) + 0.55;
  const double end = study.room.problem.empty() ? study.room.stowed_end_m : 1.2;
  e.left_m = -std::max(end, 1.2) - 0.2;
  const double deepest = std::max({e.depth_m + e.radius_m, design.job.boat.draft_m.value, e.motion_m});
  drawing.low = {e.left_m, -deepest - 0.25};
  drawing.high = {first + kColumn_m + 0.35, e.bow_m + std::max(e.collar_m + kHeadLength_m, 0.5 + 2.0 * e.radius_m) + 0.25};
  add_water(drawing);
  add_bow(drawing, design, e);
  add_plate(drawing, design, e);
  add_stowed(drawing, design, study, e);
  add_lowered(drawing, study, e);
  add_levels(drawing, e, std::max(e.pivot_m, 0.0) + 0.3, system);
  add_dimensions(drawing, design, study, e, first, system);
  drawing.description = "Bow " + length_text(e.bow_m, system) + " above calm water, shaft " + length_text(design.shaft.length_m, system) +
                        ", lowest blade tip " + length_text(e.depth_m + e.radius_m, system) + " down. The surface rises and falls by " +
                        length_text(e.motion_m, system) + " against the bow. Stowed, the motor is " +
                        length_text(study.room.stowed_m, system) + " long. " +
                        (design.job.foredeck.mount_x_m.given() ? "" : "Where the mount stands is estimated.");
  return drawing;
}

}  // namespace thole
