#include "calc/feeder_circuit.h"

#include <algorithm>
#include <string>
#include <utility>

namespace thole {
namespace {

class Builder {
 public:
  int node(std::string label) {
    circuit_.network.nodes.push_back(std::move(label));
    return static_cast<int>(circuit_.network.nodes.size()) - 1;
  }
  void branch(std::string label, int from, int to, double open_circuit_V, double resistance_ohm,
              double temperature_C = 0.0) {
    circuit_.network.branches.push_back({std::move(label), from, to, open_circuit_V, resistance_ohm});
    circuit_.temperature_C.push_back(temperature_C);
  }
  void load(NetworkLoad load) { circuit_.network.loads.push_back(std::move(load)); }
  FeederCircuit take() { return std::move(circuit_); }

 private:
  FeederCircuit circuit_{};
};

std::string numbered(std::string_view what, int string, int block, int string_count) {
  std::string label = std::string(what) + " " + std::to_string(block + 1);
  if (string_count > 1) label += " of string " + std::to_string(string + 1);
  return label;
}

void add_bank(const Design& design, int negative, int positive, Builder& builder) {
  const BankResult& bank = design.bank;
  const int series = std::max(bank.series_count, 1);
  const int parallel = std::max(bank.parallel_count, 1);
  const double block_V = bank.open_circuit_end_V / series;
  const double block_ohm = bank.resistance_end_ohm * parallel / series;
  const double joint_ohm = series > 1 ? jumpers_ohm(design) * parallel / (series - 1) : 0.0;
  for (int string = 0; string < parallel; ++string) {
    int from = negative;
    for (int block = 0; block < series; ++block) {
      const bool last = block + 1 == series;
      const std::string label = numbered("Block", string, block, parallel);
      const int to = last ? positive : builder.node(label + " +");
      builder.branch(label, from, to, block_V, block_ohm);
      from = to;
      if (last) break;
      from = builder.node(numbered("Block", string, block + 1, parallel) + " \u2212");
      builder.branch(numbered("Jumper", string, block, parallel), to, from, 0.0, joint_ohm);
    }
  }
}

}  // namespace

double jumpers_ohm(const Design& design) {
  const FeederResult& feeder = design.feeder;
  if (feeder.nodes.empty() || !(feeder.current_A > 0.0)) return 0.0;
  const double lost_V = design.bank.open_circuit_end_V - feeder.nodes.front().voltage_V;
  return std::max(0.0, lost_V / feeder.current_A - design.bank.resistance_end_ohm);
}

FeederCircuit feeder_circuit(const Design& design, MotorLaw law) {
  const FeederResult& feeder = design.feeder;
  Builder builder;
  const int negative = builder.node("Bank \u2212");
  const int positive = builder.node("Bank +");
  add_bank(design, negative, positive, builder);

  // Along the current: down the positive side to the motor, back up the negative one.
  const double power_W = design.hold.motor.power_full_W;
  const double nominal_V = std::max(1.0, design.bank.nominal_V);
  NetworkLoad motor{.label = "Motor"};
  if (law == MotorLaw::power) motor.power_W = power_W;
  if (law == MotorLaw::current) motor.current_A = power_W / nominal_V;
  if (law == MotorLaw::resistance) motor.resistance_ohm = nominal_V * nominal_V / std::max(1.0, power_W);
  int here = positive;
  std::size_t segment = 0;
  for (std::size_t i = 1; i < feeder.nodes.size(); ++i) {
    const FeederNode& node = feeder.nodes[i];
    const bool last = i + 1 == feeder.nodes.size();
    const int next = last ? negative : builder.node(node.label);
    if (feeder.nodes[i - 1].positive && !node.positive) {
      motor.positive = here;
      motor.negative = next;
      builder.load(motor);
    } else {
      const FeederSegment& between = feeder.segments[segment++];
      builder.branch(between.label, here, next, 0.0, between.resistance_ohm, between.temperature_C);
    }
    here = next;
  }
  return builder.take();
}

}  // namespace thole
