#pragma once

// A feeder that was typed piece by piece, in place of run, tail and device in the checks of a design.

#include "calc/design.h"

namespace thole {

// Solves the circuit at full thrust and the end of the allowed discharge, a motor of constant power, and asks
// the feeder's stage again with it; then its short circuits, bolted, from node to node: the strongest bank
// through copper at 20 C and half of the joints' resistance, the weakest through hot copper and twice of it.
// The bank's jumpers count as copper. A short circuit in a cable is held to lie between its end nearer to the
// bank and the node of the other pole that is as far from the bank in volts. Where the motor asks for more than
// there is, the figures are those of the most that it can be given.
//
// Does nothing without a typed circuit, a bank or a feeder. One that gives no answer (a device that is not in
// the catalogue, a motor that no volts reach) is an issue of feeder.network, and the feeder stays as the fields
// have it. Source: kCircuitLaws. Left out: cables in no way of the motor's, which carry less than a fifth of
// its current, and their devices.
void take_typed_circuit(FeederInput in, const Catalogue& catalogue, Design& design);

}  // namespace thole
