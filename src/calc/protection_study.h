#pragma once

// The design's own bank, cables and devices held against each other by curves: what the design's
// verdict rests on, and what only annoys.

#include "calc/design.h"

namespace thole {

struct ProtectionStudy {
  ProtectionInput input{};
  ProtectionResult result{};
};

// Precondition: a bank and a feeder were found.
ProtectionStudy protection_study(const Design& design);

}  // namespace thole
