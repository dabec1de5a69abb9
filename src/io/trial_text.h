#pragma once

// A trial at sea as text: readings typed on one line, and what they came to.

#include <optional>
#include <string>
#include <string_view>

#include "calc/hold/calibrate.h"
#include "io/measure.h"

namespace thole {

// "minutes=5, speed=0.9 kn, wind=12 kn", and where they are known off, height, current and from.
// Empty, and a sentence in `message`, when it cannot be read.
std::optional<DriftReading> read_drift(std::string_view text, System system, std::string& message);

// "thrust=45, wind=12 kn" (percent of full), and height, current, from and waves.
std::optional<HeldReading> read_held(std::string_view text, System system, std::string& message);

std::string trial_text(const CalibrateResult& trial);
std::string write_trial(const CalibrateResult& trial);  // JSON

}  // namespace thole
