#pragma once

// A known weight hung on the plate: the sag measured against the one computed tells how stiff the deck is.

#include <string>
#include <vector>

#include "calc/plate_study.h"

namespace thole {

enum class FlexVerdict {
  not_measured,
  unsolved,      // `says` tells why
  found,         // the factors explain the sag
  plate_softer,  // sags more than on the softest deck: the plate, or a loose bolt, gives
  plate_stiffer, // sags less than on a rigid deck: thicker or more bolts than told, or misread
};

struct FlexTest {
  FlexVerdict verdict = FlexVerdict::not_measured;
  double measured_mm = 0.0;
  double computed_mm = 0.0;  // with the deck as computed
  double present_mm = 0.0;   // with the factor the job has
  double rigid_mm = 0.0;     // with the stiffest deck and joint that are looked at; the panel as read, when it was
  double deck_factor = 1.0;   // when found: of bolts and bedding
  double panel_factor = 1.0;  // and of the deck's panel
  double panel_mm = 0.0;      // of the measured sag, by the panel with its factor
  bool told_apart = false;    // the deck's own sag was measured too
  std::string says{};         // sentences
  std::vector<Change> changes{};  // to take the factor
};

// The range of mount.deck_factor and mount.panel_factor.
inline constexpr double kLeastDeck_factor = 0.02;
inline constexpr double kMostDeck_factor = 20.0;

// Sag at mount.test_arm_mm forward of the front bolts under mount.test_mass_kg, positive down; beyond the
// plate's end the weight hangs on a stiff arm. NaN when it cannot be worked out, why in `problem`.
struct FlexSag {
  double total_mm = 0.0;
  double panel_mm = 0.0;   // of it, by the deck's panel
  double middle_mm = 0.0;  // the panel's own, amid the bolts
};
FlexSag flex_sag(const Design& design, double deck_factor, double panel_factor, std::string& problem);

// One factor for all when only the sag was measured; with the deck's own sag (mount.test_deck_mm) the panel's from
// that, and what is left of the sag is bolts, bedding and core. By bisection on its logarithm, as the sag falls
// with it; to a thousandth.
FlexTest flex_test(const Design& design);

}  // namespace thole
