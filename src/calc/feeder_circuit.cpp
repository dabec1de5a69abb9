#include "calc/feeder_circuit.h"

#include <algorithm>
#include <string>
#include <utility>

#include "data/batteries.h"

namespace thole {
namespace {

constexpr double kTwelve_V = 12.0;  // the table of rest volts is of such a block

// --- what stands between two nodes ----------------------------------------------------------------

// One block at the moment asked for.
struct BlockState {
  double open_circuit_V = 0.0;
  double resistance_ohm = 0.0;
};

// The design's own bank, feeder and motor at one moment.
class Aboard {
 public:
  Aboard(const Design& design, CircuitMoment moment) : design_(design), moment_(moment) {}

  bool tired() const { return moment_ == CircuitMoment::end_of_day; }
  int series() const { return std::max(design_.bank.series_count, 1); }
  int parallel() const { return std::max(design_.bank.parallel_count, 1); }
  double lug_ohm() const { return design_.job.feeder.lug_ohm.value; }
  double plug_ohm() const { return design_.job.feeder.plug_ohm.value; }

  BlockState block() const {
    const BankResult& bank = design_.bank;
    const double open_V = tired() ? bank.open_circuit_end_V : bank.open_circuit_full_V;
    const double whole_ohm = tired() ? bank.resistance_end_ohm : bank.resistance_full_ohm;
    return {open_V / series(), whole_ohm * parallel() / series()};
  }

  // A block at its own state: volts and resistance by the chemistry's table, resistance by its size,
  // unless they were measured.
  BlockState block(const TypedPiece& piece) const {
    const BatteryBlock& usual = design_.bank.block;
    BlockState state = block();
    if (piece.charge_frac) {
      const double end_frac = std::clamp(1.0 - design_.job.bank.depth_of_discharge_frac.value, 0.0, 1.0);
      const double now_ratio = at_charge(end_frac, &RestRow::resistance_ratio);
      const double fresh_ratio = at_charge(1.0, &RestRow::resistance_ratio);
      state.open_circuit_V =
          at_charge(*piece.charge_frac, &RestRow::open_circuit_V) * named_V(usual.chemistry, usual.nominal_V) / kTwelve_V;
      state.resistance_ohm *= at_charge(*piece.charge_frac, &RestRow::resistance_ratio) / (tired() ? now_ratio : fresh_ratio);
    }
    if (piece.capacity_Ah) state.resistance_ohm *= usual.capacity_Ah / *piece.capacity_Ah;
    if (piece.open_circuit_V) state.open_circuit_V = *piece.open_circuit_V;
    if (piece.resistance_ohm) state.resistance_ohm = *piece.resistance_ohm;
    return state;
  }

  // One conductor. What the job says of heat holds where the piece says nothing.
  BranchCopper copper(std::string_view conductor, double length_m, bool in_run, const TypedPiece& own = {}) const {
    const Feeder& feeder = design_.job.feeder;
    const Conductor* row = find_conductor(conductor);
    if (row == nullptr || !(length_m > 0.0)) return {};
    const double insulation_C = in_run ? design_.feeder.cable.insulation_C : tail_insulation_C();
    const double asked_C = feeder.ambient_C.value;
    const double usual_C = in_run && feeder.engine_space.value ? std::max(asked_C, kEngineSpace_C) : asked_C;
    const int usual_count = in_run ? feeder.bundled_count.value : 2;
    return {.cold_ohm = length_m * row->tinned_ohm_per_m,
            .load = {.ampacity_A = ampacity_A(conductor, insulation_C) *
                                   bundling_factor(own.bundled_count.value_or(usual_count)),
                     .insulation_C = insulation_C,
                     .ambient_C = own.ambient_C.value_or(usual_C)}};
  }

  // Of the run's cable, with a lug at each end.
  BranchCopper jumper() const {
    BranchCopper copper = this->copper(design_.feeder.conductor, design_.job.feeder.jumper_m.value, true);
    copper.fixed_ohm = 2.0 * lug_ohm();
    return copper;
  }

  NetworkLoad motor(MotorLaw law, int positive, int negative) const {
    NetworkLoad motor{.label = "Motor", .positive = positive, .negative = negative};
    const double power_W = design_.hold.motor.power_full_W;
    const double nominal_V = std::max(1.0, design_.bank.nominal_V);
    if (moment_ == CircuitMoment::at_rest) {
      motor.power_W = design_.hold.motor.power_idle_W;
    } else if (law == MotorLaw::power) {
      motor.power_W = power_W;
    } else if (law == MotorLaw::current) {
      motor.current_A = power_W / nominal_V;
    } else {
      motor.resistance_ohm = nominal_V * nominal_V / std::max(1.0, power_W);
    }
    return motor;
  }

 private:
  double tail_insulation_C() const {
    const FeederResult& feeder = design_.feeder;
    return feeder.tail_conductor.empty() ? feeder.cable.insulation_C : feeder.tail_cable.insulation_C;
  }
  double at_charge(double charge_frac, double RestRow::*value) const {
    const auto [low, high] = rest_between(design_.bank.block.chemistry, charge_frac);
    const double share = (charge_frac - low.charge_frac) / (high.charge_frac - low.charge_frac);
    return low.*value + share * (high.*value - low.*value);
  }

  const Design& design_;
  CircuitMoment moment_;
};

// --- the circuit ----------------------------------------------------------------------------------

class Builder {
 public:
  int node(std::string label) {
    circuit_.network.nodes.push_back(std::move(label));
    return static_cast<int>(circuit_.network.nodes.size()) - 1;
  }
  void block(std::string label, int from, int to, const BlockState& state) {
    branch({std::move(label), from, to, state.open_circuit_V, state.resistance_ohm}, PieceKind::block, {});
  }
  void piece(std::string label, int from, int to, PieceKind kind, double fixed_ohm, BranchCopper copper = {}) {
    copper.fixed_ohm = fixed_ohm;
    branch({std::move(label), from, to, 0.0, fixed_ohm + copper.cold_ohm}, kind, copper);
  }
  void load(NetworkLoad load) { circuit_.network.loads.push_back(std::move(load)); }
  void device(const ProtectiveDevice& device, double resistance_ohm) {
    circuit_.devices.push_back({circuit_.network.branches.size(), device});
    circuit_.devices.back().device.resistance_ohm = resistance_ohm;
  }
  void comes_from(std::size_t piece) { piece_ = piece; }
  FeederCircuit take() { return std::move(circuit_); }

 private:
  void branch(NetworkBranch branch, PieceKind kind, const BranchCopper& copper) {
    circuit_.network.branches.push_back(std::move(branch));
    circuit_.kinds.push_back(kind);
    circuit_.copper.push_back(copper);
    circuit_.pieces.push_back(piece_);
  }

  FeederCircuit circuit_{};
  std::size_t piece_ = kUsualBank;
};

std::string numbered(std::string_view what, int string, int block, int string_count) {
  std::string label = std::string(what) + " " + std::to_string(block + 1);
  if (string_count > 1) label += " of string " + std::to_string(string + 1);
  return label;
}

void add_usual_bank(const Aboard& aboard, Builder& builder) {
  const int series = aboard.series();
  const int parallel = aboard.parallel();
  for (int string = 0; string < parallel; ++string) {
    int from = 0;
    for (int block = 0; block < series; ++block) {
      const bool last = block + 1 == series;
      const std::string label = numbered("Block", string, block, parallel);
      const int to = last ? 1 : builder.node(label + " +");
      builder.block(label, from, to, aboard.block());
      from = to;
      if (last) break;
      from = builder.node(numbered("Block", string, block + 1, parallel) + " \u2212");
      const BranchCopper jumper = aboard.jumper();
      builder.piece(numbered("Jumper", string, block, parallel), to, from, PieceKind::jumper, jumper.fixed_ohm, jumper);
    }
  }
}

// "Run, plug included +" is "Run +": a picture has no room for what else lies in a segment.
std::string short_label(const std::string& label) {
  const std::size_t comma = label.find(',');
  const std::size_t pole = label.rfind(' ');
  if (comma == label.npos || pole == label.npos) return label;
  return label.substr(0, comma) + label.substr(pole);
}

// Along the current: down the positive side to the motor, back up the negative one.
void add_usual_feeder(const Design& design, const Aboard& aboard, MotorLaw law, Builder& builder) {
  const FeederResult& feeder = design.feeder;
  int here = 1;
  std::size_t segment = 0;
  for (std::size_t i = 1; i < feeder.nodes.size(); ++i) {
    const FeederNode& node = feeder.nodes[i];
    const bool last = i + 1 == feeder.nodes.size();
    const int next = last ? 0 : builder.node(node.label);
    if (feeder.nodes[i - 1].positive && !node.positive) {
      builder.load(aboard.motor(law, here, next));
    } else {
      const FeederSegment& between = feeder.segments[segment++];
      const bool tail = between.id.starts_with("tail");
      const bool device = between.id.starts_with("protection");
      const BranchCopper copper = aboard.copper(between.conductor, between.length_m, !tail);
      const double copper_ohm = resistance_at(copper.cold_ohm, between.temperature_C);
      builder.piece(short_label(between.label), here, next, device ? PieceKind::device : PieceKind::cable,
                    std::max(0.0, between.resistance_ohm - copper_ohm), copper);
    }
    here = next;
  }
}

// Empty, or why a piece cannot be had.
std::string add_typed(const Design& design, const Catalogue& catalogue, const CircuitRead& read, const Aboard& aboard,
                      MotorLaw law, Builder& builder) {
  std::vector<NetworkLoad> others;
  for (std::size_t node = 2; node < read.nodes.size(); ++node) builder.node(read.nodes[node]);
  if (!read.has_blocks) add_usual_bank(aboard, builder);
  for (const TypedPiece& piece : read.pieces) {
    builder.comes_from(static_cast<std::size_t>(&piece - read.pieces.data()));
    const auto add = [&](double usual_ohm, const BranchCopper& copper = {}) {
      builder.piece(piece.label, piece.from, piece.to, piece.kind, piece.resistance_ohm.value_or(usual_ohm), copper);
    };
    switch (piece.kind) {
      case PieceKind::cable:
        add(0.0, aboard.copper(piece.conductor, piece.length_m, true, piece));
        break;
      case PieceKind::jumper:
        if (piece.resistance_ohm) {
          add(0.0);
        } else {
          add(aboard.jumper().fixed_ohm, aboard.jumper());
        }
        break;
      case PieceKind::lug:
        add(aboard.lug_ohm());
        break;
      case PieceKind::plug:
        add(aboard.plug_ohm());
        break;
      case PieceKind::device: {
        const ProtectiveDevice* device = &design.feeder.device;
        if (!piece.device.empty()) device = find_item(catalogue.devices, piece.device);
        if (device == nullptr) {
          return "\"" + piece.label + "\": \"" + piece.device + "\" is not in this catalogue; name another device, or its milliohms.";
        }
        if (!piece.label.starts_with("Switch")) {
          builder.device(*device, piece.resistance_ohm.value_or(device->resistance_ohm));
        }
        add(device->resistance_ohm);
        break;
      }
      case PieceKind::block:
        builder.block(piece.label, piece.from, piece.to, aboard.block(piece));
        break;
      case PieceKind::load:
        if (piece.motor) {
          builder.load(aboard.motor(law, piece.from, piece.to));
        } else {
          others.push_back({.label = piece.label,
                            .positive = piece.from,
                            .negative = piece.to,
                            .power_W = piece.power_W,
                            .current_A = piece.current_A,
                            .resistance_ohm = piece.resistance_ohm.value_or(0.0)});
        }
        break;
    }
  }
  for (NetworkLoad& load : others) builder.load(std::move(load));
  return {};
}

}  // namespace

double jumpers_ohm(const Design& design) {
  const FeederResult& feeder = design.feeder;
  if (feeder.nodes.empty() || !(feeder.current_A > 0.0)) return 0.0;
  const double lost_V = design.bank.open_circuit_end_V - feeder.nodes.front().voltage_V;
  return std::max(0.0, lost_V / feeder.current_A - design.bank.resistance_end_ohm);
}

FeederCircuit typed_circuit(const Design& design, const Catalogue& catalogue, const CircuitRead& read,
                            CircuitMoment moment, MotorLaw law) {
  Builder builder;
  builder.node("Bank \u2212");
  builder.node("Bank +");
  std::string missing = add_typed(design, catalogue, read, Aboard(design, moment), law, builder);
  FeederCircuit circuit = builder.take();
  circuit.typed = true;
  circuit.solution.message = std::move(missing);
  circuit.temperature_C.resize(circuit.network.branches.size());
  return circuit;
}

void settle_circuit(FeederCircuit& circuit) {
  WarmNetwork warm = warm_network(circuit.network, circuit.copper);
  circuit.temperature_C = std::move(warm.temperature_C);
  circuit.solution = std::move(warm.solution);
  circuit.rests = warm.rests;
  circuit.pass_count = warm.pass_count;
}

FeederCircuit feeder_circuit(const Design& design, const Catalogue& catalogue, const CircuitAsked& asked) {
  const Feeder& job = design.job.feeder;
  const MotorLaw law = asked.law.value_or(job.motor_law.value);
  if (job.network.known()) {
    const CircuitRead read = read_circuit(job.network.value);
    if (!read.pieces.empty()) {
      FeederCircuit circuit = typed_circuit(design, catalogue, read, asked.moment, law);
      if (circuit.solution.message.empty()) settle_circuit(circuit);
      return circuit;
    }
  }
  const Aboard aboard(design, asked.moment);
  Builder builder;
  builder.node("Bank \u2212");
  builder.node("Bank +");
  add_usual_bank(aboard, builder);
  add_usual_feeder(design, aboard, law, builder);
  FeederCircuit circuit = builder.take();
  settle_circuit(circuit);
  return circuit;
}

}  // namespace thole
