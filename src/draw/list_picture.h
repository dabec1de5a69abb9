#pragma once

// The boat from astern, before and after: the list that the weights give her, and where they are.

#include "calc/design.h"
#include "draw/drawing.h"
#include "io/measure.h"

namespace thole {

// The list is enlarged; the description says by how much. Starboard is to the right.
Drawing list_picture(const Design& design, System system);

}  // namespace thole
