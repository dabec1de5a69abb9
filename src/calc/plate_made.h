#pragma once

// The plate as it is made: what is cut, what is welded on, what both weigh.

#include <string>
#include <vector>

#include "calc/chosen_plate.h"

namespace thole {

double bars_mass_kg(const std::vector<PlateBar>& bars, double density_kg_per_m3);

// A sentence for each bar that stands over a hole, a cut-out or the plate's edge. Empty: none does.
std::vector<std::string> bars_amiss(const PlateShape& shape, const std::vector<PlateBar>& bars);

struct PlateMade {
  double blank_m2 = 0.0;  // the rectangle that it is cut from
  double net_m2 = 0.0;    // less corners, cut-outs and holes
  double plate_kg = 0.0;
  int bolt_count = 0;
  int bar_count = 0;
  double bar_length_m = 0.0;  // each
  double bar_height_mm = 0.0;
  double bar_thickness_mm = 0.0;
  double bar_kg = 0.0;  // each
  double mass_kg() const { return plate_kg + bar_count * bar_kg; }
};
PlateMade plate_made(const ChosenPlate& plate);
inline PlateMade rectangular_plate(const Design& design) {
  const Mount& mount = design.job.mount;
  return {.blank_m2 = 1e-6 * mount.plate_length_mm.value * mount.plate_width_mm.value, .plate_kg = design.mount.plate_mass_kg,
          .bolt_count = design.mount.bolt_count};
}
// The plate of a design as the job shapes it: from here on the design's plate weighs that, stiffeners
// included, and its step says so. Of an alloy or with bolts that no table knows, or of a shape that leaves no
// metal, the rectangle.
PlateMade take_made_plate(Design& design);

}  // namespace thole
