#include "calc/chosen_plate.h"

#include <algorithm>
#include <cmath>

#include "calc/plate/outline.h"
#include "calc/told_plate.h"

namespace thole {
namespace {

// Project decisions.
constexpr double kBarHeight_ratio = 4.0;  // of the plate's thickness, where nobody gave a height
constexpr double kBarFromEdge_m = 0.015;
constexpr double kBarFromEnd_m = 0.010;
constexpr double kEffective_frac = 0.25;  // of a bar's length goes with it as plate; shear lag, recalled

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
  plate.shape = told_shape(job);
  plate.shape.thickness_m = in.plates.front().thickness_mm / 1000.0;
  for (PlateHole& bolt : plate.shape.bolts) {
    bolt.diameter_m = plate.bolt->hole_mm / 1000.0;
    if (in.countersunk) bolt.countersink_m = plate.bolt->countersunk_across_mm / 1000.0;
  }
  plate.bars = bars_of(job, plate.shape);
  if (job.deck_factor.known()) plate.deck_factor = job.deck_factor.value;
  if (job.panel_factor.known()) plate.panel_factor = job.panel_factor.value;
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
