#pragma once

#include "draw/drawing.h"

namespace thole {

// The picture on its way from one design to the next: every point at `share` (0 to 1) of its way,
// words, figures and strokes already those of `to`. There is a way only between drawings that are
// made of the same parts in the same order; otherwise the result is `to`.
bool can_blend(const Drawing& from, const Drawing& to);
Drawing blend(const Drawing& from, const Drawing& to, double share);

}  // namespace thole
