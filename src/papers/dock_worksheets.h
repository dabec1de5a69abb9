#pragma once

// The tests at the dock on paper: lines to fill in by hand, filled where the job knows the reading.

#include "calc/design.h"
#include "io/markup.h"
#include "io/measure.h"

namespace thole {

void write_dock_worksheets(const Design& design, const Catalogue& catalogue, System system, Markup& out);

}  // namespace thole
