// The plate in plan.

#include <algorithm>

#include "base/number.h"
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
  const double aft = std::max(0.12 * length, 30.0);
  const double front_row = aft + pitch * (rows - 1);
  const double weight_x = front_row + overhang;
  Drawing drawing{.title = "The plate from above"};
  drawing.low = {-0.24 * length, -0.5 * width - 70.0};
  drawing.high = {std::max(length, weight_x) + 0.14 * length, 0.5 * width + 70.0};
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
      {.centre = {weight_x, 0.0}, .radius = 14.0, .line = Line::none, .fill = Fill::accent});
  add_label(drawing, {weight_x, 34.0}, show(design.hold.motor.mass_kg, "kg", system).text(),
            Align::centre, TextRole::strong);
  const auto mm = [&](double value) { return show(value, "mm", system).text(); };
  add_dimension(drawing, {0.0, drawing.low.y + 14.0}, {length, drawing.low.y + 14.0}, mm(length));
  add_dimension(drawing, {front_row, 0.5 * width + 24.0}, {weight_x, 0.5 * width + 24.0},
                mm(overhang));
  add_dimension(drawing, {-0.12 * length, -0.5 * width}, {-0.12 * length, 0.5 * width}, mm(width));
  drawing.description = "Plate " + mm(length) + " by " + mm(width) + ", " +
                        mm(design.mount.plate_thickness_mm) + " thick, " +
                        std::to_string(2 * rows) + " bolts; the stowed motor's weight lies " +
                        mm(overhang) + " ahead of the front row and sags " +
                        fixed(design.mount.sag_mm, 1) + " mm at rest.";
  return drawing;
}

}  // namespace thole
