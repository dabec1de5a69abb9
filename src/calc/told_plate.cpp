#include "calc/told_plate.h"

#include <algorithm>
#include <cmath>

#include "calc/mount/plate_rules.h"
#include "calc/plate/outline.h"
#include "data/plate_lines.h"

namespace thole {
namespace {

constexpr double kCorner_m = 0.020;  // project decision

PlateCorner corner_at(double x_mm, double y_mm, double radius_m) {
  return {.at = {x_mm / 1000.0, y_mm / 1000.0}, .radius_m = radius_m};
}

std::vector<PlateCorner> outline_of(const Mount& job) {
  const double length_m = job.plate_length_mm.value / 1000.0;
  const double width_m = job.plate_width_mm.value / 1000.0;
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

std::vector<BoltPlace> placed_bolts(const Mount& job) {
  return job.bolt_places.known() ? read_bolt_places(job.bolt_places.value).items : std::vector<BoltPlace>();
}

std::vector<PlateHole> bolts_of(const Mount& job, double length_mm) {
  std::vector<PlateHole> bolts;
  for (const BoltPlace& at : placed_bolts(job)) bolts.push_back({.at = {at.forward_mm / 1000.0, at.port_mm / 1000.0}});
  if (!bolts.empty()) return bolts;
  const double aft_m = aft_margin_mm(length_mm) / 1000.0;
  for (int row = 0; row < job.bolt_rows.value; ++row)
    for (const double side : {1.0, -1.0})
      bolts.push_back({.at = {aft_m + row * job.bolt_pitch_mm.value / 1000.0, side * 0.5 * job.bolt_gauge_mm.value / 1000.0}});
  return bolts;
}

}  // namespace

PlateShape told_shape(const Mount& job) {
  PlateShape shape{.outline = outline_of(job)};
  if (job.cutouts.known())
    for (const CutOut& cut : read_cut_outs(job.cutouts.value).items) shape.cut_outs.push_back(cut_out_corners(cut));
  const PlateContour outer = job.outline.known() ? rounded(shape.outline) : PlateContour();
  shape.bolts = bolts_of(job, outer.empty() ? job.plate_length_mm.value : 1000.0 * bounds(outer).high.x_m);
  return shape;
}

bool bolts_are_placed(const Mount& job) { return !placed_bolts(job).empty(); }

void take_shape(const Mount& job, MountInput& in) {
  const bool placed = bolts_are_placed(job);
  if (!placed && !job.outline.known() && !job.front_width_mm.known() && !job.cutouts.known()) return;
  const PlateShape shape = told_shape(job);
  const PlateCut cut = cut_of(shape);
  if (cut.outer.empty()) return;
  if (job.outline.known()) {
    const PlateBox box = bounds(cut.outer);
    in.plate_length_mm = 1000.0 * box.high.x_m;
    in.plate_width_mm = 1000.0 * (box.high.y_m - box.low.y_m);
    in.outlined = true;
  }
  double nearest_m = 1.0;
  for (const PlateHole& bolt : shape.bolts) {
    // A bolt off the plate counts as on its edge: what is wrong with it is said where the shape is judged.
    nearest_m = std::min(nearest_m, on_plate(cut, bolt.at) ? distance_to_edge_m(cut, bolt.at) : 0.0);
    if (placed) in.bolt_places.push_back({1000.0 * bolt.at.x_m, 1000.0 * bolt.at.y_m});
  }
  in.bolt_edge_mm = std::max(1000.0 * nearest_m, 0.1);
}

double area_ahead_m2(const Mount& job, double x_m) {
  constexpr int kPlaces = 50;
  const PlateCut cut = cut_of(told_shape(job));
  if (cut.outer.empty()) return 0.0;
  const PlateBox box = bounds(cut.outer);
  if (!(box.high.x_m > x_m)) return 0.0;
  int on_it = 0;
  for (int i = 0; i < kPlaces; ++i)
    for (int k = 0; k < kPlaces; ++k)
      on_it += on_plate(cut, {x_m + (box.high.x_m - x_m) * (i + 0.5) / kPlaces,
                              box.low.y_m + (box.high.y_m - box.low.y_m) * (k + 0.5) / kPlaces});
  return (box.high.x_m - x_m) * (box.high.y_m - box.low.y_m) * on_it / (kPlaces * kPlaces);
}

}  // namespace thole
