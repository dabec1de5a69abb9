#pragma once

// The feeder of a design as a circuit: every block, jumper, conductor and joint by itself, as hot as its
// own load makes it. The usual one, or the one that was typed piece by piece (data/circuit_line.h).

#include <optional>
#include <string>
#include <vector>

#include "calc/design.h"
#include "calc/warm_network.h"
#include "data/circuit_line.h"

namespace thole {

enum class CircuitMoment {
  full_thrust,  // the bank new, warm and charged
  at_rest,      // likewise, the motor's electronics alone
  end_of_day    // full thrust, the bank old, cold, at the end of the allowed discharge
};

struct CircuitAsked {
  CircuitMoment moment = CircuitMoment::end_of_day;
  std::optional<MotorLaw> law{};  // otherwise the job's
};

// One that may open: where, and as the catalogue has it, with the milliohms that were typed.
struct CircuitDevice {
  std::size_t branch = 0;
  ProtectiveDevice device{};
};

struct FeederCircuit {
  Network network{};                    // resistances at the temperatures below
  std::vector<PieceKind> kinds{};       // by branch
  std::vector<BranchCopper> copper{};   // by branch
  std::vector<std::size_t> pieces{};    // by branch of a typed circuit: place in its text; none: kUsualBank
  std::vector<CircuitDevice> devices{};  // typed ones but for switches, in the order of the text
  std::vector<double> temperature_C{};  // by branch; 0 where there is no copper
  NetworkSolution solution{};           // its message, too, when a typed piece cannot be found
  bool typed = false;
  bool rests = false;  // temperatures and currents agree
  int pass_count = 0;
};

inline constexpr std::size_t kUsualBank = static_cast<std::size_t>(-1);

// Node 0 is the bank's negative post, node 1 the positive one; strings run side by side, load 0 is the
// motor. Blocks of the usual bank are alike: each has its share of the bank's open-circuit volts and
// resistance. Devices that a typed circuit names are looked up in the catalogue. Precondition: a bank
// and a feeder were found.
FeederCircuit feeder_circuit(const Design& design, const Catalogue& catalogue, const CircuitAsked& asked = {});

// The typed circuit as it was read, its copper at 20 C and its temperatures not yet found: the message of the
// solution says when a piece cannot be found. Precondition: a bank and a feeder were found.
FeederCircuit typed_circuit(const Design& design, const Catalogue& catalogue, const CircuitRead& read,
                            CircuitMoment moment, MotorLaw law);

// Finds temperatures and currents of a circuit.
void settle_circuit(FeederCircuit& circuit);

// What all jumpers between blocks resist, as hot as their load makes them; strings side by side.
double jumpers_ohm(const Design& design);

}  // namespace thole
