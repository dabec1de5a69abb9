// The plate in plan.

#include <algorithm>

#include "base/number.h"
#include "calc/mount/plate_rules.h"
#include "draw/pictures.h"
#include "draw/sketch.h"

namespace thole {

// Plan, forward to the right: plate, bolts, and the stowed motor's weight on its overhang.
Drawing mount_picture(const Design& design, System system) {
  const Mount& mount = design.job.mount;
  const double length = mount.plate_length_mm.value;
  const double width = mount.plate_width_mm.value;
  const double pitch = mount.bolt_pitch_mm.value;
  const double gauge = mount.bolt_gauge_mm.value;
  const int rows = mount.bolt_rows.value;
  const double overhang = mount.overhang_mm.value;
  const double aft = aft_margin_mm(length);
  const double front_row = aft + pitch * (rows - 1);
  const double weight_x = front_row + overhang;
  const double half = 0.5 * std::max(width, gauge + 40.0);
  Drawing drawing{.title = "The plate from above"};
  drawing.low = {-0.3 * length, -half - 80.0};
  drawing.high = {std::max(length, weight_x) + 0.16 * length, half + 80.0};
  add_box(drawing, {0.0, -0.5 * width}, {length, 0.5 * width},
          line_for(mount.plate_length_mm.origin), Fill::hull, true);
  add_polyline(drawing, {{0.0, 0.0}, {drawing.high.x, 0.0}}, Line::centre);
  for (int row = 0; row < rows; ++row) {
    for (const double side : {-1.0, 1.0}) {
      drawing.circles.push_back({.centre = {aft + pitch * row, 0.5 * side * gauge},
                                 .radius = 11.0,
                                 .line = Line::outline,
                                 .fill = Fill::paper});
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
  add_handle(drawing, {aft, 0.5 * gauge}, "mount.bolt_gauge_mm", 0.0, 2.0);
  if (rows > 1) {
    const double last = rows - 1.0;
    add_handle(drawing, {front_row, -0.5 * gauge}, "mount.bolt_pitch_mm", 1.0 / last, 0.0);
  }
  drawing.description = "Plate " + mm(length) + " long, " + mm(width) + " wide, " +
                        mm(design.mount.plate_thickness_mm) + " thick; " +
                        std::to_string(2 * rows) + " bolts in pairs " + mm(gauge) +
                        " apart, rows " + mm(pitch) + " apart. The stowed motor's weight of " +
                        mass + " lies " + mm(overhang) + " ahead of the front row and sags " +
                        mm(design.mount.sag_mm) + " at rest.";
  return drawing;
}

}  // namespace thole
