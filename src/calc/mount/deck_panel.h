#pragma once

// The piece of deck that carries the mount, as a panel that bends and, where it has a core, shears as a
// whole: how far it sinks and how far it tilts.

#include "calc/mount/mount.h"

namespace thole {

// Per width: bending stiffness, and what a unit slope of shear takes; 0: a deck without a core does not shear.
struct DeckSection {
  double rigidity_Nm = 0.0;
  double shear_N_per_m = 0.0;
};
// Single skin and aluminium E t^3 / (12 (1 - nu^2)); two like skins on a core E t (c + t)^2 / (2 (1 - nu^2)),
// whose core shears by G (c + t)^2 / c. Laminate of 35 % glass, balsa of 150, foam of 80 kg/m3; aluminium 5083.
// Thicknesses in mm, the skin's > 0.
DeckSection deck_section(DeckKind kind, double skin_mm, double core_mm);

// A rectangular panel held down at all its edges, free to turn there; loads on like patches.
struct DeckPanel {
  double length_m = 0.0;  // fore and aft
  double width_m = 0.0;
  double patch_m = 0.0;   // side of the square patch under each load
  DeckSection section{};
};

// Four like loads at the corners of a rectangle about the panel's middle, so long fore and aft and so wide.
struct PanelStiffness {
  double sink_N_per_m = 0.0;      // of all together, over their sinking
  double tilt_Nm_per_rad = 0.0;   // of the couple they make fore and aft, over its tilt
};
// Navier's double series, bending and shear added. Sources: Timoshenko and Woinowsky-Krieger art. 33 (kDeckPanel);
// sandwich theory for the shear. Precondition: the patches lie inside of the
// panel, long_m > 0.
PanelStiffness panel_stiffness(const DeckPanel& panel, double long_m, double wide_m);

}  // namespace thole
