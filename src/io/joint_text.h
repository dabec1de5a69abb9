#pragma once

// Metals and bedding of the mount's joint in words, for screen and paper.

#include <string>

#include "calc/joint_metals.h"
#include "data/galvanic.h"
#include "io/measure.h"

namespace thole {

std::string pair_name(const MetalPair& pair);                 // "Bolts on the plate: 316 passive, aluminium alloys"
std::string pair_said(const MetalPair& pair, System system);  // "1.00 V, limit 0.15 V: kept apart"

std::string potential_said(const MetalPotential& metal);      // "-0.76 to -1.00 V"

}  // namespace thole
