#pragma once

// What the work leaves of the capacity plate (33 CFR 183 subpart C, and plates like it): persons and
// weight. The plate counted one battery; whatever else comes aboard is taken from the people.

#include "calc/trim/trim.h"

namespace thole {

// Adds steps, checks and cautions to the result, of which the weights are already counted.
void count_persons(const TrimInput& in, TrimResult& r);

// Lighter blocks, where they are of lead.
void propose_lithium(const TrimInput& in, Check& check);

}  // namespace thole
