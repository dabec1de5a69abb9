#pragma once

// The feeder as a solved circuit, as text: what loses most first, for a person; JSON for a program.

#include <string>

#include "calc/feeder_circuit.h"

namespace thole {

std::string circuit_text(const FeederCircuit& circuit, const NetworkSolution& solution);
std::string write_circuit(const FeederCircuit& circuit, const NetworkSolution& solution);  // SI

}  // namespace thole
