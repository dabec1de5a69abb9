#pragma once

// A known weight hung on the plate: the sag measured against the one computed tells how stiff the deck is.

#include <string>
#include <vector>

#include "calc/plate_study.h"

namespace thole {

enum class FlexVerdict {
  not_measured,
  unsolved,      // `says` tells why
  found,         // deck_factor explains the sag
  plate_softer,  // sags more than on the softest deck: the plate, or a loose bolt, gives
  plate_stiffer, // sags less than on a rigid deck: thicker or more bolts than told, or misread
};

struct FlexTest {
  FlexVerdict verdict = FlexVerdict::not_measured;
  double measured_mm = 0.0;
  double computed_mm = 0.0;  // with the deck as computed
  double present_mm = 0.0;   // with the factor the job has
  double rigid_mm = 0.0;     // on the stiffest deck that is looked at
  double deck_factor = 1.0;  // when found
  std::string says{};        // a sentence
  std::vector<Change> changes{};  // to take the factor
};

// The range of mount.deck_factor.
inline constexpr double kLeastDeck_factor = 0.02;
inline constexpr double kMostDeck_factor = 20.0;

// Sag at mount.test_arm_mm forward of the front bolts under mount.test_mass_kg, positive down; beyond the
// plate's end the weight hangs on a stiff arm. NaN when it cannot be worked out, why in `problem`.
double flex_sag_mm(const Design& design, double deck_factor, std::string& problem);

// The factor by bisection on its logarithm, as the sag falls with it; to a thousandth.
FlexTest flex_test(const Design& design);

}  // namespace thole
