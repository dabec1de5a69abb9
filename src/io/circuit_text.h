#pragma once

// The feeder as a solved circuit, as text: what loses most first, for a person; JSON for a program. With
// it the same cable by every method in use.

#include <string>

#include "calc/cable_study.h"
#include "calc/feeder_circuit.h"

namespace thole {

std::string circuit_text(const FeederCircuit& circuit, const CableStudy& cable);
std::string write_circuit(const FeederCircuit& circuit, const CableStudy& cable);  // SI

}  // namespace thole
