#pragma once

// The plate of a finished design as it is made: its shape, cut-outs, bolts and stiffeners, as the job gives them.

#include <optional>
#include <vector>

#include "calc/design.h"
#include "calc/plate/plate.h"
#include "data/alloys.h"
#include "data/bolts.h"

namespace thole {

// The plate that the mount stage chose, in the shape and with the bolts that the job gives it.
struct ChosenPlate {
  MountInput mount{};
  PlateShape shape{};
  std::vector<PlateBar> bars{};
  double deck_factor = 1.0;   // stiffness of bolts and bedding, from a flex test
  double panel_factor = 1.0;  // of the deck's panel, likewise
  const Alloy* alloy = nullptr;
  const BoltSize* bolt = nullptr;
};
// Nothing when the alloy or the bolt is not among the tables' rows.
std::optional<ChosenPlate> chosen_plate(const Design& design);
inline constexpr const char* kNoPlate =
    "There is no plate of a known alloy, or no bolt of a known size, in this catalogue.";

// What stands in the way of cutting it, by the job's fields: "mount.outline", "mount.bolt_places", ...
Issues shape_issues(const ChosenPlate& plate, const Design& design);

}  // namespace thole
