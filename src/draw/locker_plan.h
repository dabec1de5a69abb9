#pragma once

// The battery locker to scale: from the side, and below it from above.

#include "calc/locker/packing.h"
#include "draw/drawing.h"
#include "io/measure.h"

namespace thole {

// Blocks numbered in the order of wiring, plus posts filled, jumpers in colour, straps across each
// block, gaps as they are. Nothing fits: the locker with what is missing. `straps_per_block_count`
// as restrain() gives it; 0 draws none. Precondition: the result of pack(in).
Drawing locker_plan_picture(const PackingInput& in, const PackingResult& result,
                            int straps_per_block_count, System system);

}  // namespace thole
