#pragma once

// The load cases side by side: a bar for each, as long as its overturning moment on the bolts.

#include "calc/load_cases_study.h"
#include "draw/drawing.h"
#include "io/measure.h"

namespace thole {

// Of the thrusts the worst stands for all; what was not worked out has no bar. A full run with the
// motor left down is left out: it would dwarf the rest. A unit upward is a row: two lines of text.
Drawing load_bars_picture(const LoadsStudy& study, System system);

}  // namespace thole
