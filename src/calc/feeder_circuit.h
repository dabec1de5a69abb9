#pragma once

// The feeder of a design as a circuit: every block, jumper, conductor and joint by itself, the motor at
// full thrust at the end of the allowed discharge.

#include "calc/design.h"
#include "calc/network/network.h"

namespace thole {

struct FeederCircuit {
  Network network{};
  std::vector<double> temperature_C{};  // by branch; 0 where none is worked out
};

// Node 0 is the bank's negative post; strings run side by side. Blocks are alike: each has its share of
// the bank's open-circuit volts and resistance. Precondition: a bank and a feeder were found.
FeederCircuit feeder_circuit(const Design& design, MotorLaw law = MotorLaw::power);

// What all jumpers between blocks resist, as hot as their load makes them; strings side by side.
double jumpers_ohm(const Design& design);

}  // namespace thole
