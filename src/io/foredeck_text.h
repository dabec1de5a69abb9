#pragma once

// The foredeck, the shaft's length and what a snag does, as text for a person; JSON for a program.

#include <string>

#include "calc/foredeck_study.h"
#include "calc/length_study.h"
#include "calc/snag_study.h"
#include "io/measure.h"

namespace thole {

std::string foredeck_text(const ForedeckStudy& study, System system);
std::string shaft_length_text(const LengthStudy& study, System system);
std::string snag_text(const SnagStudy& study, System system);

// All three as one object, SI.
std::string write_foredeck(const ForedeckStudy& deck, const LengthStudy& length, const SnagStudy& snag);

}  // namespace thole
