#pragma once

// What gives first when the lowered shaft is caught: tube, plate, bolts or deck.
//
// Every part is asked for the push at the propeller, from the side (of twelve) that is worst for it, that makes it
// give: the tube its plastic moment (a composite breaks at its elastic one); the rest by the plate's
// elements, which answer in proportion: the plate its yield, the worst bolt the yield of its thread
// (tension with prying, and shear, von Mises), the deck the shear of its skin round the backing and
// crushing, under the backing or under the plate. Tube and mount see the same lever, so where along the
// shaft it is caught changes the push but hardly the order. Rule: bolts and deck stand 1.2 times what the
// tube does, but for dents under the plate.

#include <string>
#include <vector>

#include "calc/design.h"
#include "calc/plate_study.h"

namespace thole {

enum class SnagPart { tube, plate, bolts, skin, core, deck };

struct SnagStrength {
  SnagPart part = SnagPart::tube;
  std::string label{};   // "Shaft tube bends"
  double force_N = 0.0;  // at the propeller
};

struct SnagStudy {
  double over_ratio = 0.0;  // what bolts and deck hold over what the tube does
  std::string problem{};
  double lever_m = 0.0;               // propeller axis under the deck
  std::vector<SnagStrength> order{};  // weakest first
  double backing_mm = 0.0;            // side of it that carries
  double tube_N = 0.0;
  double tube_moment_Nm = 0.0;
  bool composite = false;
  double stiffness_N_per_m = 0.0;     // of the tube, pushed at its end
  double speed_mps = 0.0;             // of the boat drifting on, whose energy bends the tube that far
  Trace trace{};
};

SnagStudy snag_study(const Design& design, const PlateStudy& plate);
SnagStudy snag_study(const Design& design);  // with a plate_study of its own

// Largest force of a mass that runs with its tip into something unmoving: v sqrt(m k).
double snag_force_N(double mass_kg, double speed_mps, double stiffness_N_per_m);

}  // namespace thole
