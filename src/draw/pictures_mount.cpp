// The plate in plan.

#include <algorithm>
#include <optional>

#include "base/number.h"
#include "calc/mount/plate_rules.h"
#include "calc/plate_study.h"
#include "draw/pictures.h"
#include "draw/plate_drawing.h"
#include "draw/plate_strokes.h"
#include "draw/sketch.h"

namespace thole {
namespace {

constexpr double kBolt_mm = 11.0;

bool is_shaped(const Mount& mount) {
  return mount.outline.known() || mount.corner_mm.known() || mount.front_width_mm.known() || mount.cutouts.known() ||
         mount.bolt_places.known() || (mount.stiffener_count.known() && mount.stiffener_count.value > 0);
}

// The plate as it is made, where that is more than a rectangle with an even grid of bolts.
std::optional<ChosenPlate> shaped_plate(const Design& design) {
  return is_shaped(design.job.mount) ? chosen_plate(design) : std::nullopt;
}

void add_bolt(Drawing& drawing, Point at) {
  drawing.circles.push_back({.centre = at, .radius = kBolt_mm, .line = Line::outline, .fill = Fill::paper});
}

void add_shape(Drawing& drawing, const ChosenPlate& plate) {
  const OnPaper millimetres{};
  const PlateCut cut = cut_of(plate.shape);
  drawing.shapes.push_back({.points = on_paper(cut.outer, millimetres), .closed = true, .fill = Fill::hull, .hatched = true});
  for (const PlateContour& each : cut.cut_outs) {
    drawing.shapes.push_back({.points = on_paper(each, millimetres), .closed = true, .fill = Fill::paper});
  }
  for (const PlateBar& bar : plate.bars) {
    add_box(drawing, millimetres.at({bar.from_x_m, bar.y_m - 0.5 * bar.thickness_m}),
            millimetres.at({bar.to_x_m, bar.y_m + 0.5 * bar.thickness_m}), Line::outline, Fill::paper);
  }
}

}  // namespace

// Plan, forward to the right: plate, bolts, and the stowed motor's weight on its overhang.
Drawing mount_picture(const Design& design, System system) {
  const Mount& mount = design.job.mount;
  const std::optional<ChosenPlate> shaped = shaped_plate(design);
  const double length = shaped ? shaped->mount.plate_length_mm : mount.plate_length_mm.value;
  const double width = shaped ? shaped->mount.plate_width_mm : mount.plate_width_mm.value;
  const double pitch = mount.bolt_pitch_mm.value;
  const double gauge = mount.bolt_gauge_mm.value;
  const int rows = mount.bolt_rows.value;
  const double overhang = mount.overhang_mm.value;
  const double aft = aft_margin_mm(length);
  const double front_row = shaped ? 1000.0 * datum_x_m(shaped->shape) : aft + pitch * (rows - 1);
  const double weight_x = front_row + overhang;
  const double half = 0.5 * std::max(width, gauge + 40.0);
  Drawing drawing{.title = "The plate from above"};
  drawing.low = {-0.3 * length, -half - 80.0};
  drawing.high = {std::max(length, weight_x) + 0.16 * length, half + 80.0};
  if (shaped) {
    add_shape(drawing, *shaped);
  } else {
    add_box(drawing, {0.0, -0.5 * width}, {length, 0.5 * width},
            line_for(mount.plate_length_mm.origin), Fill::hull, true);
  }
  add_polyline(drawing, {{0.0, 0.0}, {drawing.high.x, 0.0}}, Line::centre);
  if (shaped) {
    for (const PlateHole& bolt : shaped->shape.bolts) add_bolt(drawing, {1000.0 * bolt.at.x_m, 1000.0 * bolt.at.y_m});
  } else {
    for (int row = 0; row < rows; ++row) {
      for (const double side : {-1.0, 1.0}) add_bolt(drawing, {aft + pitch * row, 0.5 * side * gauge});
    }
  }
  drawing.circles.push_back(
      {.centre = {weight_x, 0.0}, .radius = 34.0, .line = Line::outline, .fill = Fill::paper});
  const auto mm = [&](double value) { return show(value, "mm", system).text(); };
  const std::string mass = show(design.hold.motor.mass_kg, "kg", system).text();
  add_label(drawing, {weight_x, -64.0}, mass, Align::centre, TextRole::strong);
  add_dimension(drawing, {front_row, half + 40.0}, {weight_x, half + 40.0}, mm(overhang));
  add_dimension(drawing, {0.0, -half - 40.0}, {length, -half - 40.0}, mm(length));
  add_dimension(drawing, {-0.19 * length, -0.5 * width}, {-0.19 * length, 0.5 * width}, mm(width));
  add_label(drawing, {drawing.high.x, -half - 40.0}, "bow →", Align::right);
  // Any bolt would do: the first row's upper one for the pair's distance, the second row's lower
  // one for the rows'.
  add_handle(drawing, {weight_x, 0.0}, "mount.overhang_mm", 1.0, 0.0);
  const bool on_grid = !shaped || !mount.bolt_places.known();
  if (on_grid) add_handle(drawing, {aft, 0.5 * gauge}, "mount.bolt_gauge_mm", 0.0, 2.0);
  if (on_grid && rows > 1) {
    const double last = rows - 1.0;
    add_handle(drawing, {front_row, -0.5 * gauge}, "mount.bolt_pitch_mm", 1.0 / last, 0.0);
  }
  drawing.description = "Plate " + mm(length) + " long, " + mm(width) + " wide, " +
                        mm(design.mount.plate_thickness_mm) + " thick; " +
                        (on_grid ? std::to_string(2 * rows) + " bolts in pairs " + mm(gauge) + " apart, rows " + mm(pitch) + " apart"
                                 : std::to_string(shaped ? shaped->shape.bolts.size() : 0) + " bolts, each in its place") +
                        (shaped && !shaped->bars.empty() ? ", " + std::to_string(shaped->bars.size()) + " stiffeners" : "") +
                        ". The stowed motor's weight of " +
                        mass + " lies " + mm(overhang) + " ahead of the front row and sags " +
                        mm(design.mount.sag_mm) + " at rest.";
  return drawing;
}

}  // namespace thole
