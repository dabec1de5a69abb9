#pragma once

// Any direct-current circuit of blocks, conductors and loads, solved by nodal analysis: volts at each
// node, amperes and watts in each branch.
//
// Source: Kirchhoff's and Ohm's laws (kCircuitLaws). Loads see the circuit through its open-circuit
// volts and its matrix of resistances (Thevenin), V = V_oc - R I; a load of constant power is met by
// Newton's method from the side of high volts, where a controller works. Left out: inductance, and what
// changes with time.

#include <string>
#include <vector>

namespace thole {

// From node to node. A block lifts `to` above `from` by its open-circuit volts. A conductor without
// length makes its two nodes one; a block must have a resistance.
struct NetworkBranch {
  std::string label{};
  int from = 0;
  int to = 0;
  double open_circuit_V = 0.0;  // 0: a conductor, a joint, a device
  double resistance_ohm = 0.0;  // >= 0
};

// From its positive node to its negative one; the trade's three laws, added together: constant power,
// constant current, and a resistance (0: none).
struct NetworkLoad {
  std::string label{};
  int positive = 0;
  int negative = 0;
  double power_W = 0.0;         // >= 0
  double current_A = 0.0;       // >= 0
  double resistance_ohm = 0.0;  // >= 0
};

// Node 0 is what volts are counted from.
struct Network {
  std::vector<std::string> nodes{};  // labels; at most kMostNodes
  std::vector<NetworkBranch> branches{};
  std::vector<NetworkLoad> loads{};
};
inline constexpr std::size_t kMostNodes = 600;

struct NetworkSolution {
  bool solved = false;
  std::string message{};  // what is wrong, and with which part; empty when solved
  std::vector<double> node_V{};
  std::vector<double> branch_A{};  // from `from` to `to`
  std::vector<double> branch_W{};  // lost in its resistance
  std::vector<double> load_V{};
  std::vector<double> load_A{};
  double source_W = 0.0;  // given by all blocks' open-circuit volts
  // Of the first load: the most that the circuit can give it, and the branch that limits it most.
  double limit_W = 0.0;
  int limiting_branch = -1;
};

// Errors, each a sentence in `message`: a node that no branch reaches, a value that is negative, no
// number or beyond all conductors, a block without resistance, a load that no volts reach, that would
// be driven below 0 V, or that asks for more than there is. A loop of conductors without resistance is
// one node.
NetworkSolution solve_network(const Network& network);

// Of a solved circuit, what loses most first.
std::vector<std::size_t> branches_by_loss(const NetworkSolution& solution);

// The same circuit as a deck for ngspice: an operating point, volts of every node and amperes of every
// branch printed. Node k is "n<k>", branch k has the ammeter "vb<k>".
std::string spice_deck(const Network& network);

}  // namespace thole
