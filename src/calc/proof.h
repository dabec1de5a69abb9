#pragma once

// What is asked of a design once its stages rest, for it takes many times as long: the plate by finite
// elements under every load, what gives first in a snag, room, light and stowing on the foredeck.

#include "calc/design.h"
#include "calc/plate_made.h"
#include "calc/typed_feeder.h"

namespace thole {

// Whether a check of snag or foredeck counts in the verdict. One that waits for a measure does not, nor does a
// plate that bends before the shaft: it is a nuisance, a torn deck a leak.
bool counts(const Check& check);

// Adds the checks of the plate to the mount's, those of snag and foredeck to the shaft's.
void prove(Design& design, const Catalogue& catalogue);

inline constexpr Beyond kAll{.typed_circuit = take_typed_circuit, .plate = take_made_plate, .proof = prove};

// evaluate() with that in the verdict, and in what would make it fit.
Design proven(const Job& job, const Catalogue& catalogue);

}  // namespace thole
