#include "io/circuit_text.h"

#include <algorithm>
#include <nlohmann/json.hpp>

#include "base/number.h"
#include "io/table_text.h"

namespace thole {
namespace {

using Json = nlohmann::ordered_json;

std::string source_text(const Source& source) {
  return std::string(source.title) + (source.confirmed ? "" : " (not confirmed)");
}

std::string methods_text(const CableStudy& cable) {
  if (cable.methods.empty()) return {};
  TextTable table{.rows = {{"", "V", "%", "°C", "rests on"}}, .right = {false, true, true, true, false}};
  for (const DropMethod& method : cable.methods) {
    table.rows.push_back({std::string(method.label), fixed(method.drop_V, 3),
                          fixed(100.0 * method.drop_V / cable.nominal_V, 2), fixed(method.temperature_C, 1),
                          std::string(method.table)});
  }
  return "\nSame cable, six answers: " + cable.conductor + ", " + fixed(cable.loop_m, 1) + " m out and back, " +
         fixed(cable.current_A, 1) + " A\n" + table_text(table);
}

std::string practices_text(const CableStudy& cable) {
  if (cable.practices.empty()) return {};
  TextTable table{.rows = {{"", "", ""}}, .right = {false, true, false}};
  for (const AmpacityPractice& practice : cable.practices) {
    table.rows.push_back({std::string(practice.label), fixed(practice.ampacity_A, 1) + " A", std::string(practice.table)});
    table.rows.push_back({"  " + (practice.conductor.empty() ? std::string("no size so thin") : practice.conductor),
                          fixed(practice.table_A, 0) + " A",
                          practice.own_size ? source_text(practice.source) : "the size there that resists no less; " + source_text(practice.source)});
    for (const AmpacityFactor& factor : practice.factors) {
      table.rows.push_back({"  " + std::string(factor.label), "x " + fixed(factor.factor, 2), std::string(factor.why)});
    }
  }
  table.rows.erase(table.rows.begin());
  return "\nWhat it may carry, by three practices\n" + table_text(table);
}

Json methods_json(const CableStudy& cable) {
  Json list = Json::array();
  for (const DropMethod& method : cable.methods) {
    list.push_back({{"id", method.id},
                    {"label", method.label},
                    {"table", method.table},
                    {"temperature_C", method.temperature_C},
                    {"ohm_per_m", method.ohm_per_m},
                    {"drop_V", method.drop_V},
                    {"source", method.source->id}});
  }
  return list;
}

Json practices_json(const CableStudy& cable) {
  Json list = Json::array();
  for (const AmpacityPractice& practice : cable.practices) {
    Json factors = Json::array();
    for (const AmpacityFactor& factor : practice.factors) {
      factors.push_back({{"label", factor.label},
                         {"factor", factor.factor},
                         {"why", factor.why},
                         {"source", factor.source->id}});
    }
    list.push_back({{"id", practice.id},
                    {"label", practice.label},
                    {"table", practice.table},
                    {"conductor", practice.conductor},
                    {"own_size", practice.own_size},
                    {"table_A", practice.table_A},
                    {"factors", factors},
                    {"ampacity_A", practice.ampacity_A},
                    {"source", practice.source->id}});
  }
  return list;
}

}  // namespace

std::string circuit_text(const FeederCircuit& circuit, const CableStudy& cable) {
  const Network& network = circuit.network;
  const NetworkSolution& solution = circuit.solution;
  if (!solution.solved) return "Not solved: " + solution.message + "\n";
  std::string text = circuit.typed ? "The circuit as it was typed\n" : "The usual circuit\n";
  for (std::size_t k = 0; k < network.loads.size(); ++k) {
    text += network.loads[k].label + ": " + fixed(solution.load_V[k], 2) + " V, " +
            fixed(solution.load_A[k], 1) + " A, " +
            fixed(solution.load_V[k] * solution.load_A[k], 0) + " W";
    if (k == 0) text += " of " + fixed(solution.limit_W, 0) + " W that the circuit can give";
    text += "\n";
  }
  TextTable parts{.rows = {{"", "A", "V lost", "W lost", "°C"}}, .right = {false, true, true, true, true}};
  for (const std::size_t k : branches_by_loss(solution)) {
    const NetworkBranch& branch = network.branches[k];
    const double current_A = solution.branch_A[k];
    const double temperature_C = circuit.temperature_C[k];
    parts.rows.push_back({branch.label, fixed(current_A, 1), fixed(current_A * branch.resistance_ohm, 3),
                          fixed(solution.branch_W[k], 2),
                          temperature_C != 0.0 ? fixed(temperature_C, 0) : std::string()});
  }
  TextTable nodes{.rows = {{"", "V"}}, .right = {false, true}};
  for (std::size_t k = 0; k < network.nodes.size(); ++k) {
    nodes.rows.push_back({network.nodes[k], fixed(solution.node_V[k], 3)});
  }
  return text + "\nWhat loses most first\n" + table_text(parts) +
         "\nVolts against the bank's negative post\n" + table_text(nodes) + methods_text(cable) + practices_text(cable);
}

std::string write_circuit(const FeederCircuit& circuit, const CableStudy& cable) {
  const Network& network = circuit.network;
  const NetworkSolution& solution = circuit.solution;
  Json out = {{"solved", solution.solved}, {"message", solution.message}, {"typed", circuit.typed}};
  if (!solution.solved) return out.dump(2) + "\n";
  for (std::size_t k = 0; k < network.loads.size(); ++k) {
    out["loads"].push_back({{"label", network.loads[k].label},
                            {"load_V", solution.load_V[k]},
                            {"load_A", solution.load_A[k]}});
  }
  out["limit_W"] = solution.limit_W;
  for (const std::size_t k : branches_by_loss(solution)) {
    const NetworkBranch& branch = network.branches[k];
    Json piece = {{"label", branch.label},
                  {"from", network.nodes[static_cast<std::size_t>(branch.from)]},
                  {"to", network.nodes[static_cast<std::size_t>(branch.to)]},
                  {"resistance_ohm", branch.resistance_ohm},
                  {"current_A", solution.branch_A[k]},
                  {"loss_W", solution.branch_W[k]}};
    if (circuit.temperature_C[k] != 0.0) piece["temperature_C"] = circuit.temperature_C[k];
    out["branches"].push_back(std::move(piece));
  }
  for (std::size_t k = 0; k < network.nodes.size(); ++k) {
    out["nodes"].push_back({{"label", network.nodes[k]}, {"node_V", solution.node_V[k]}});
  }
  out["drop_methods"] = methods_json(cable);
  out["ampacity_practices"] = practices_json(cable);
  return out.dump(2) + "\n";
}

}  // namespace thole
