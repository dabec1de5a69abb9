#pragma once

// Which input moves an answer most, as bars about the answer, the widest on top.

#include "calc/sensitivity.h"
#include "draw/drawing.h"
#include "io/measure.h"

namespace thole {

inline constexpr std::size_t kTornadoRows = 8;

// At most that many bars. Precondition: something moves the answer.
Drawing tornado_picture(const SensitivityResult& result, const Output& output, System system);

}  // namespace thole
