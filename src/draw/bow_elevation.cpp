#include "draw/bow_elevation.h"

#include <algorithm>
#include <cmath>

#include "base/number.h"
#include "base/order.h"
#include "calc/chosen_plate.h"
#include "calc/plate/outline.h"
#include "draw/sketch.h"
#include "io/figures.h"

namespace thole {
namespace {

constexpr double kColumn_m = 0.5;   // from one column of dimensions to the next
constexpr double kTextOff_m = 0.13;    // of a level, at the width of a phone
constexpr double kLeastMotion_m = 0.02;
constexpr double kBoltsFromStem_m = 0.06;

using Elevation = BowElevation;

void add_bow(Drawing& drawing, const Design& design, const Elevation& e, double beyond_m) {
  const Boat& boat = design.job.boat;
  const double rake = std::clamp(boat.length_m.value - boat.waterline_length_m.value, 0.15, 1.5);
  const double left = e.left_m - beyond_m;
  Shape hull{.closed = true, .line = line_for(boat.bow_height_m.origin), .fill = Fill::hull};
  hull.points = {{left, e.bow_m}, {0.0, e.bow_m}, {-0.45 * rake, 0.5 * e.bow_m}, {-rake, 0.0}, {-rake - 0.35, -0.6 * boat.draft_m.value},
                 {-rake - 1.1, -boat.draft_m.value}, {left, -boat.draft_m.value}};
  drawing.shapes.push_back(std::move(hull));
}

// Plate with its bolts through deck and backing.
void add_plate(Drawing& drawing, const Design& design, const Elevation& e) {
  const Mount& mount = design.job.mount;
  const double thick = e.plate_m;
  const double front = e.plate_front_m;
  const double back = front - e.plate_length_m;
  add_box(drawing, {back, e.bow_m}, {front, e.bow_m + thick}, Line::outline, Fill::hull, true);
  const double deck = 1e-3 * (mount.deck_thickness_mm.value + mount.core_thickness_mm.value + mount.backing_thickness_mm.value) + 0.02;
  for (const double aft_m : e.bolts_m) {
    const double x = e.front_bolts_m - aft_m;
    add_polyline(drawing, {{x, e.bow_m + thick + 0.012}, {x, e.bow_m - deck}}, Line::outline);
    add_polyline(drawing, {{x - 0.02, e.bow_m - deck}, {x + 0.02, e.bow_m - deck}}, Line::outline);
  }
}

void add_stowed(Drawing& drawing, const Design& design, const Elevation& e) {
  const ForedeckStudy& study = e.study;
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

void add_lowered(Drawing& drawing, const Elevation& e) {
  const double tube = 0.5 * e.study.room_input.motor.tube_m;
  const double x = e.pivot_m;
  add_box(drawing, {x - tube, -e.depth_m}, {x + tube, e.bow_m + e.collar_m}, Line::outline, Fill::paper);
  add_box(drawing, {x - 0.07, e.bow_m}, {x + 0.07, e.bow_m + e.collar_m}, Line::outline, Fill::hull);
  add_box(drawing, {x - kHeadRadius_m, e.bow_m + e.collar_m}, {x + kHeadRadius_m, e.bow_m + e.collar_m + kHeadLength_m}, Line::outline, Fill::paper);
  add_box(drawing, {x - 0.5 * kPodLength_m, -e.depth_m - kPodRadius_m}, {x + 0.5 * kPodLength_m, -e.depth_m + kPodRadius_m}, Line::outline, Fill::paper);
  add_polyline(drawing, {{x - kPropellerOff_m, -e.depth_m - e.radius_m}, {x - kPropellerOff_m, -e.depth_m + e.radius_m}}, Line::accent);
  add_polyline(drawing, {{x - 0.35, -e.depth_m}, {x + 0.6, -e.depth_m}}, Line::centre);
}

void add_levels(Drawing& drawing, const Elevation& e, double right_m, double beyond_m) {
  const double left_m = e.left_m - beyond_m;
  add_polyline(drawing, {{left_m, 0.0}, {right_m, 0.0}}, Line::thin);
  if (e.motion_m < kLeastMotion_m) return;
  for (const double level : {e.motion_m, -e.motion_m}) add_polyline(drawing, {{left_m, level}, {right_m, level}}, Line::hidden);
}

void add_dimensions(Drawing& drawing, const Design& design, const Elevation& e, double first, System system) {
  const ForedeckStudy& study = e.study;
  if (e.motion_m >= kLeastMotion_m)
    add_label(drawing, {e.left_m + 0.06, e.motion_m + kTextOff_m}, "waves \u00b1" + length_text(e.motion_m, system), Align::left);
  const double deepest = e.depth_m + e.radius_m;
  const double top = e.bow_m + e.collar_m;
  add_dimension(drawing, {first, -e.depth_m}, {first, top}, length_text(design.shaft.length_m, system));
  add_dimension(drawing, {first + kColumn_m, 0.0}, {first + kColumn_m, e.bow_m}, length_text(e.bow_m, system));
  add_dimension(drawing, {first + kColumn_m, -deepest}, {first + kColumn_m, 0.0}, length_text(deepest, system));
  if (study.room.problem.empty()) {
    const double over = e.stowed_over_m + 0.14;
    const double end = -study.room.stowed_end_m;
    add_dimension(drawing, {end, over}, {end + study.room.stowed_m, over}, length_text(study.room.stowed_m, system));
    add_label(drawing, {end, over + 0.14}, "stowed, dashed", Align::left);
  }
}

// Length of the plate and where its bolts stand: as it is made, or by the fields where that is not known.
void measure_plate(const Design& design, BowElevation& e) {
  const Mount& mount = design.job.mount;
  std::vector<double> x_m;
  double front_m = 0.0;
  const std::optional<ChosenPlate> plate = chosen_plate(design);
  const PlateContour outer = plate ? rounded(plate->shape.outline) : PlateContour();
  if (!outer.empty()) {
    const PlateBox box = bounds(outer);
    front_m = box.high.x_m;
    e.plate_length_m = front_m - box.low.x_m;
    for (const PlateHole& bolt : plate->shape.bolts) x_m.push_back(bolt.at.x_m);
  } else {
    e.plate_length_m = 1e-3 * mount.plate_length_mm.value;
    for (int row = 0; row < mount.bolt_rows.value; ++row) x_m.push_back(-1e-3 * mount.bolt_pitch_mm.value * row);
    if (!x_m.empty()) front_m = 0.5 * (e.plate_length_m + x_m.back());  // the rows amid the plate
  }
  e.plate_front_m = std::max(e.pivot_m - 0.04, -0.5 * e.plate_length_m);
  if (x_m.empty()) return;
  x_m = sorted(std::move(x_m), [](double a, double b) { return a > b; });
  const double ahead_m = front_m - x_m.front();  // of the front bolts, which stand on the deck
  e.plate_front_m = std::min(e.plate_front_m, ahead_m - kBoltsFromStem_m);
  e.front_bolts_m = e.plate_front_m - ahead_m;
  for (const double x : x_m)
    if (const double aft_m = x_m.front() - x; e.bolts_m.empty() || aft_m - e.bolts_m.back() > 1e-6) e.bolts_m.push_back(aft_m);
}

}  // namespace

BowElevation measure_bow(const Design& design) {
  BowElevation e{.study = foredeck_study(design),
                 .bow_m = design.job.boat.bow_height_m.value,
                 .pivot_m = -design.job.foredeck.mount_x_m.value,
                 .depth_m = design.shaft.propeller_depth_m,
                 .radius_m = 0.5 * design.hold.motor.propeller_diameter_m,
                 .collar_m = design.job.shaft.collar_m.value,
                 .motion_m = design.shaft.relative_motion_m,
                 .plate_m = std::max(1e-3 * design.mount.plate_thickness_mm, 0.012)};
  const RoomResult& room = e.study.room;
  e.left_m = -std::max(room.problem.empty() ? room.stowed_end_m : 1.2, 1.2) - 0.2;
  e.deepest_m = std::max({e.depth_m + e.radius_m, design.job.boat.draft_m.value, e.motion_m});
  measure_plate(design, e);
  e.lowered_over_m = e.bow_m + e.collar_m + kHeadLength_m;
  e.stowed_over_m = room.problem.empty() ? e.bow_m + lying_height_m(e.study.room_input.motor) + e.radius_m : e.lowered_over_m;
  return e;
}

void add_bow_view(Drawing& drawing, const Design& design, const BowElevation& bow, double right_m, double beyond_m) {
  add_bow(drawing, design, bow, beyond_m);
  add_plate(drawing, design, bow);
  add_stowed(drawing, design, bow);
  add_lowered(drawing, bow);
  add_levels(drawing, bow, right_m, beyond_m);
}

Drawing bow_elevation(const Design& design, System system) {
  constexpr double kBeyond_m = 1.0;  // of the sheet
  const BowElevation e = measure_bow(design);
  Drawing drawing{.title = "The bow from the side, motor stowed and down"};
  const double first = std::max(e.pivot_m, 0.0) + 0.55;
  drawing.low = {e.left_m, -e.deepest_m - 0.25};
  drawing.high = {first + kColumn_m + 0.35, e.bow_m + std::max(e.collar_m + kHeadLength_m, 0.5 + 2.0 * e.radius_m) + 0.25};
  add_water(drawing);
  add_bow_view(drawing, design, e, std::max(e.pivot_m, 0.0) + 0.3, kBeyond_m);
  add_dimensions(drawing, design, e, first, system);
  drawing.description = "Bow " + length_text(e.bow_m, system) + " above calm water, shaft " + length_text(design.shaft.length_m, system) +
                        ", lowest blade tip " + length_text(e.depth_m + e.radius_m, system) + " down. The surface rises and falls by " +
                        length_text(e.motion_m, system) + " against the bow. Stowed, the motor is " +
                        length_text(e.study.room.stowed_m, system) + " long. " +
                        (design.job.foredeck.mount_x_m.given() ? "" : "Where the mount stands is estimated.");
  return drawing;
}

}  // namespace thole
