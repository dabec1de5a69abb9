#include "calc/chosen_plate.h"

#include <algorithm>
#include <cmath>

#include "calc/mount/plate_rules.h"
#include "calc/plate/outline.h"
#include "data/plate_lines.h"

namespace thole {
namespace {

// Project decisions.
constexpr double kCorner_m = 0.020;
constexpr double kBarHeight_ratio = 4.0;  // of the plate's thickness, where nobody gave a height
constexpr double kBarFromEdge_m = 0.015;
constexpr double kBarFromEnd_m = 0.010;
constexpr double kEffective_frac = 0.25;  // of a bar's length goes with it as plate; shear lag, recalled

PlateCorner corner_at(double x_mm, double y_mm, double radius_m) {
  return {.at = {x_mm / 1000.0, y_mm / 1000.0}, .radius_m = radius_m};
}

std::vector<PlateCorner> outline_of(const Mount& job, const MountInput& in) {
  const double length_m = in.plate_length_mm / 1000.0;
  const double width_m = in.plate_width_mm / 1000.0;
  const double usual_m = std::min(kCorner_m, 0.1 * std::min(2.0 * length_m, width_m));
  const double radius_m = job.corner_mm.known() ? job.corner_mm.value / 1000.0 : usual_m;
  if (job.outline.known()) {
    BowPlate bow{.radius_m = radius_m};
    for (const OutlineStation& at : read_outline(job.outline.value).items)
      bow.offsets.push_back({at.forward_mm / 1000.0, at.half_width_mm / 1000.0});
    if (std::vector<PlateCorner> outline = bow_outline(bow).outline; !outline.empty()) return outline;
  }
  const double fore_m = job.front_width_mm.known() ? job.front_width_mm.value / 1000.0 : width_m;
  return trapezoid_outline(length_m, width_m, fore_m, radius_m);
}

std::vector<PlateCorner> cut_out_corners(const CutOut& cut) {
  const double radius_m = cut.round ? 0.5 * cut.length_mm / 1000.0 : 0.1 * std::min(cut.length_mm, cut.width_mm) / 1000.0;
  const double x_mm = cut.middle.forward_mm;
  const double y_mm = cut.middle.port_mm;
  const double l_mm = 0.5 * cut.length_mm;
  const double w_mm = 0.5 * cut.width_mm;
  return {corner_at(x_mm - l_mm, y_mm - w_mm, radius_m), corner_at(x_mm + l_mm, y_mm - w_mm, radius_m),
          corner_at(x_mm + l_mm, y_mm + w_mm, radius_m), corner_at(x_mm - l_mm, y_mm + w_mm, radius_m)};
}

std::vector<PlatePoint> bolt_places(const Mount& job, const MountInput& in) {
  std::vector<PlatePoint> places;
  if (job.bolt_places.known()) {
    for (const BoltPlace& at : read_bolt_places(job.bolt_places.value).items)
      places.push_back({at.forward_mm / 1000.0, at.port_mm / 1000.0});
    if (!places.empty()) return places;
  }
  const double aft_m = aft_margin_mm(in.plate_length_mm) / 1000.0;
  for (int row = 0; row < in.bolt_rows; ++row)
    for (const double side : {1.0, -1.0})
      places.push_back({aft_m + row * in.bolt_pitch_mm / 1000.0, side * 0.5 * in.bolt_gauge_mm / 1000.0});
  return places;
}

// Evenly across the narrower end, one in the middle.
std::vector<PlateBar> bars_of(const Mount& job, const PlateShape& shape) {
  std::vector<PlateBar> bars;
  const int count = job.stiffener_count.known() ? job.stiffener_count.value : 0;
  if (count <= 0) return bars;
  const PlateContour outer = rounded(shape.outline);
  if (outer.empty()) return bars;
  const PlateBox box = bounds(outer);
  const double length_m = box.high.x_m - box.low.x_m - 2.0 * kBarFromEnd_m;
  double half_m = box.high.y_m;
  constexpr double kJustInside_m = 1e-4;
  while (half_m > 0.01 && (!encloses(outer, {box.high.x_m - kBarFromEnd_m, half_m - kJustInside_m}) ||
                           !encloses(outer, {box.low.x_m + kBarFromEnd_m, half_m - kJustInside_m})))
    half_m -= 0.002;
  const double reach_m = half_m - kBarFromEdge_m;
  const double height_m = job.stiffener_height_mm.known() ? job.stiffener_height_mm.value / 1000.0 : kBarHeight_ratio * shape.thickness_m;
  const double thickness_m = job.stiffener_thickness_mm.known() ? job.stiffener_thickness_mm.value / 1000.0 : shape.thickness_m;
  const double spacing_m = count > 1 ? 2.0 * reach_m / (count - 1) : 2.0 * half_m;
  for (int k = 0; k < count; ++k)
    bars.push_back({.y_m = count > 1 ? -reach_m + k * spacing_m : 0.0,
                    .from_x_m = box.low.x_m + kBarFromEnd_m,
                    .to_x_m = box.high.x_m - kBarFromEnd_m,
                    .height_m = height_m,
                    .thickness_m = thickness_m,
                    .effective_width_m = std::min(spacing_m, kEffective_frac * length_m)});
  return bars;
}

}  // namespace

std::optional<ChosenPlate> chosen_plate(const Design& design) {
  ChosenPlate plate{.mount = mount_input(design)};
  MountInput& in = plate.mount;
  plate.alloy = in.plates.empty() ? nullptr : find_alloy(in.plates.front().alloy);
  plate.bolt = in.bolts.empty() ? nullptr : find_bolt_size(in.bolts.front().size);
  if (plate.alloy == nullptr || plate.bolt == nullptr) return std::nullopt;
  const Mount& job = design.job.mount;
  plate.shape = {.outline = outline_of(job, in), .thickness_m = in.plates.front().thickness_mm / 1000.0};
  if (job.cutouts.known())
    for (const CutOut& cut : read_cut_outs(job.cutouts.value).items) plate.shape.cut_outs.push_back(cut_out_corners(cut));
  for (const PlatePoint& at : bolt_places(job, in))
    plate.shape.bolts.push_back({.at = at,
                                 .diameter_m = plate.bolt->hole_mm / 1000.0,
                                 .countersink_m = in.countersunk ? plate.bolt->countersunk_across_mm / 1000.0 : 0.0});
  if (job.outline.known()) {
    const PlateBox box = bounds(rounded(plate.shape.outline));
    in.plate_length_mm = 1000.0 * box.high.x_m;
    in.plate_width_mm = 1000.0 * (box.high.y_m - box.low.y_m);
  }
  plate.bars = bars_of(job, plate.shape);
  if (job.deck_factor.known()) plate.deck_factor = job.deck_factor.value;
  return plate;
}

Issues shape_issues(const ChosenPlate& plate, const Design& design) {
  const Mount& job = design.job.mount;
  Issues issues = plate_issues(plate.shape);
  for (Issue& issue : issues) {
    if (issue.field.rfind("plate.outline", 0) == 0) issue.field = job.outline.known() ? "mount.outline" : "mount.corner_mm";
    if (issue.field.rfind("plate.cut_outs", 0) == 0) issue.field = "mount.cutouts";
    if (issue.field.rfind("plate.bolts", 0) == 0) issue.field = job.bolt_places.known() ? "mount.bolt_places" : "mount.bolt_rows";
    if (issue.field == "plate.thickness_m") issue.field = "mount.plate";
  }
  return issues;
}

}  // namespace thole
