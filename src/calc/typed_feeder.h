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
// `parts` become what the feeder is made of: each cable by its size, jumpers of the run's, each device by its id and
// a pole to a piece, typed lugs and one for each end of a cable that has neither lug nor plug nor goes on in the same
// size; plugs, stud blocks and battery switches by two pieces each, of the last two at least one as every job has.
// A metre of way is one of two conductors. A size that the catalogue does not have is an issue.
//
// Does nothing without a typed circuit, a bank or a feeder. One that gives no answer (a device that is not in
// the catalogue, a motor that no volts reach) is an issue of feeder.network, and the feeder stays as the fields
// have it. Source: kCircuitLaws. Left out: cables in no way of the motor's, which carry less than a fifth of
// its current, and their devices.
void take_typed_circuit(FeederInput in, const Catalogue& catalogue, Design& design, FeederParts& parts);

}  // namespace thole
