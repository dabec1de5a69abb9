#include "io/circuit_text.h"

#include <algorithm>
#include <nlohmann/json.hpp>
#include <numeric>

#include "base/number.h"
#include "io/table_text.h"

namespace thole {
namespace {

using Json = nlohmann::ordered_json;

std::vector<std::size_t> by_loss(const NetworkSolution& solution) {
  std::vector<std::size_t> order(solution.branch_W.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    return solution.branch_W[a] > solution.branch_W[b];
  });
  return order;
}

}  // namespace

std::string circuit_text(const FeederCircuit& circuit, const NetworkSolution& solution) {
  const Network& network = circuit.network;
  if (!solution.solved) return "Not solved: " + solution.message + "\n";
  std::string text;
  for (std::size_t k = 0; k < network.loads.size(); ++k) {
    text += network.loads[k].label + ": " + fixed(solution.load_V[k], 2) + " V, " +
            fixed(solution.load_A[k], 1) + " A, " +
            fixed(solution.load_V[k] * solution.load_A[k], 0) + " W of " +
            fixed(solution.limit_W, 0) + " W that the circuit can give\n";
  }
  TextTable parts{.rows = {{"", "A", "V lost", "W lost", "°C"}}, .right = {false, true, true, true, true}};
  for (const std::size_t k : by_loss(solution)) {
    const NetworkBranch& branch = network.branches[k];
    const double current_A = solution.branch_A[k];
    const double temperature_C = circuit.temperature_C[k];
    parts.rows.push_back({branch.label, fixed(current_A, 1), fixed(current_A * branch.resistance_ohm, 3),
                          fixed(solution.branch_W[k], 2),
                          temperature_C > 0.0 ? fixed(temperature_C, 0) : std::string()});
  }
  TextTable nodes{.rows = {{"", "V"}}, .right = {false, true}};
  for (std::size_t k = 0; k < network.nodes.size(); ++k) {
    nodes.rows.push_back({network.nodes[k], fixed(solution.node_V[k], 3)});
  }
  return text + "\nWhat loses most first\n" + table_text(parts) +
         "\nVolts against the bank's negative post\n" + table_text(nodes);
}

std::string write_circuit(const FeederCircuit& circuit, const NetworkSolution& solution) {
  const Network& network = circuit.network;
  Json out = {{"solved", solution.solved}, {"message", solution.message}};
  if (!solution.solved) return out.dump(2) + "\n";
  for (std::size_t k = 0; k < network.loads.size(); ++k) {
    out["loads"].push_back({{"label", network.loads[k].label},
                            {"load_V", solution.load_V[k]},
                            {"load_A", solution.load_A[k]}});
  }
  out["limit_W"] = solution.limit_W;
  for (const std::size_t k : by_loss(solution)) {
    const NetworkBranch& branch = network.branches[k];
    out["branches"].push_back({{"label", branch.label},
                               {"from", network.nodes[static_cast<std::size_t>(branch.from)]},
                               {"to", network.nodes[static_cast<std::size_t>(branch.to)]},
                               {"resistance_ohm", branch.resistance_ohm},
                               {"current_A", solution.branch_A[k]},
                               {"loss_W", solution.branch_W[k]}});
  }
  for (std::size_t k = 0; k < network.nodes.size(); ++k) {
    out["nodes"].push_back({{"label", network.nodes[k]}, {"node_V", solution.node_V[k]}});
  }
  return out.dump(2) + "\n";
}

}  // namespace thole
