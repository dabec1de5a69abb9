#pragma once

// The battery locker to scale: from the side, and below it from above.

#include <cstddef>

#include "calc/design.h"
#include "calc/locker/packing.h"
#include "draw/drawing.h"
#include "io/measure.h"

namespace thole {

// Blocks numbered in the order of wiring, plus posts filled, jumpers in colour, straps across each
// block, gaps as they are. Nothing fits: the locker with what is missing. `straps_per_block_count`
// as restrain() gives it; 0 draws none. `shown`: which of the arrangements. Precondition: the result of
// pack(in).
Drawing locker_plan_picture(const PackingInput& in, const PackingResult& result,
                            int straps_per_block_count, System system, std::size_t shown = 0);

// The design's own bank in its locker; packs it, a tenth of a second at most to an arrangement.
Drawing locker_picture(const Design& design, System system);

}  // namespace thole
