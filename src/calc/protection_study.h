#pragma once

// The design's own bank, cables and devices held against each other by curves.

#include "calc/design.h"
#include "calc/protection/protection.h"

namespace thole {

struct ProtectionStudy {
  ProtectionInput input{};
  ProtectionResult result{};
};

// Precondition: a bank and a feeder were found.
ProtectionStudy protection_study(const Design& design);

}  // namespace thole
