#pragma once

// The bow from the side with the motor stowed and lowered: deck, plate and bolts, shaft, propeller,
// waterline, crest and trough, with their dimensions.

#include <vector>

#include "calc/foredeck_study.h"
#include "draw/drawing.h"
#include "io/measure.h"

namespace thole {

// What is drawn, in metres: x forward of the stem, y above the calm waterline.
struct BowElevation {
  ForedeckStudy study{};
  double bow_m = 0.0;     // deck
  double pivot_m = 0.0;   // forward of the stem
  double depth_m = 0.0;   // propeller axis under the water
  double radius_m = 0.0;  // of the propeller
  double collar_m = 0.0;  // above the deck
  double motion_m = 0.0;  // of the surface against the bow, up and down
  double left_m = 0.0;    // as far aft as anything shows
  double plate_front_m = 0.0;
  double plate_length_m = 0.0;  // fore and aft, as the job shapes it
  double plate_m = 0.0;         // as thick as it is drawn
  double front_bolts_m = 0.0;
  std::vector<double> bolts_m{};  // each place along the boat once, aft of the front bolts
  double deepest_m = 0.0;
  double stowed_over_m = 0.0;  // top of the stowed motor
  double lowered_over_m = 0.0;
};
BowElevation measure_bow(const Design& design);

// Bow, plate, motor twice, levels: everything but measures and words. `beyond_m`: what hull and levels
// run on aft of left_m.
void add_bow_view(Drawing& drawing, const Design& design, const BowElevation& bow, double right_m, double beyond_m);

Drawing bow_elevation(const Design& design, System system);

}  // namespace thole
