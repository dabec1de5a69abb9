#include "calc/typed_feeder.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "base/order.h"
#include "calc/fault.h"
#include "calc/feeder_circuit.h"

namespace thole {
namespace {

constexpr double kInWay_frac = 0.2;  // of the motor's current: four conductors side by side have a quarter
constexpr int kHalvings = 40;
constexpr double kJointLow_factor = 0.5;  // as calc/fault_range has them: kCommonPractice
constexpr double kJointHigh_factor = 2.0;

std::size_t at(int node) { return static_cast<std::size_t>(node); }

class Typed {
 public:
  Typed(const Design& design, const Catalogue& catalogue, const CircuitRead& read, const FeederInput& in)
      : design_(design), catalogue_(catalogue), read_(read), in_(in), circuit_(circuit_at(CircuitMoment::end_of_day)) {}

  // Empty, or why there is no answer.
  std::string solve() {
    if (!circuit_.solution.message.empty()) return circuit_.solution.message;
    settle_circuit(circuit_);
    std::string message = circuit_.solution.message;
    if (!message.empty()) give_most();
    const NetworkLoad& motor = circuit_.network.loads.front();
    if (!circuit_.solution.solved || motor.power_W <= 0.0) return message;
    plus_ = motor.positive;
    minus_ = motor.negative;
    middle_V_ = 0.5 * (volts(plus_) + volts(minus_));
    for (std::size_t k = 0; k < circuit_.kinds.size(); ++k) {
      if (circuit_.kinds[k] != PieceKind::block && circuit_.kinds[k] != PieceKind::jumper) continue;
      for (const int node : {circuit_.network.branches[k].from, circuit_.network.branches[k].to}) {
        if (node > 1) inside_.push_back(node);
      }
    }
    return {};
  }

  SolvedCircuit solved() const {
    const NetworkSolution& s = circuit_.solution;
    const auto& branches = circuit_.network.branches;
    SolvedCircuit out{.current_A = motor_A(),
                      .plus_V = volts(1) - volts(plus_),
                      .minus_V = volts(minus_) - volts(0),
                      .bank_V = volts(1) - volts(0),
                      .motor_full_V = motor_full_V(),
                      .limit_W = most_W_ > 0.0 ? most_W_ : s.limit_W};
    double most_W = -1.0;
    for (std::size_t k = 0; k < branches.size(); ++k) {
      const PieceKind kind = circuit_.kinds[k];
      if (kind == PieceKind::block || kind == PieceKind::jumper) continue;
      out.loss_W += s.branch_W[k];
      if (s.branch_W[k] > most_W) {
        most_W = s.branch_W[k];
        out.most_lost = branches[k].label;
      }
      if ((kind == PieceKind::lug || kind == PieceKind::plug) && s.branch_W[k] > out.joint_W) {
        out.joint_W = s.branch_W[k];
        out.worst_joint = branches[k].label;
      }
      if (kind != PieceKind::cable || !(current_A(k) > 0.0)) continue;
      const TypedPiece& piece = read_.pieces[circuit_.pieces[k]];
      if (piece.resistance_ohm) continue;
      out.cables.push_back(
          {piece.label, piece.conductor, piece.length_m, piece.ambient_C, piece.bundled_count, current_A(k), k});
    }
    if (s.limiting_branch >= 0) out.limiting = branches[at(s.limiting_branch)].label;
    for (std::size_t node = 0; node < s.node_V.size(); ++node) {
      const int own = static_cast<int>(node);
      const bool motors = own == plus_ || own == minus_;
      if (circuit_.network.nodes[node].starts_with("after ") && !motors) continue;
      out.nodes.push_back({.id = "circuit_" + std::to_string(node),
                           .label = motors ? (own == plus_ ? "Motor +" : "Motor \u2212") : circuit_.network.nodes[node],
                           .voltage_V = s.node_V[node],
                           .positive = on_plus(own)});
    }
    out.nodes = sorted(std::move(out.nodes),
                       [](const FeederNode& a, const FeederNode& b) { return a.voltage_V > b.voltage_V; });
    return out;
  }

  // Of cables up to the first device in the plus, as the motor's current shares out.
  double device_distance_m() const {
    double first_V = volts(1) - middle_V_;
    for (const CircuitDevice& device : circuit_.devices) {
      if (in_way(device.branch) && on_plus(near_end(device.branch)))
        first_V = std::min(first_V, away_V(near_end(device.branch)));
    }
    double length_m = 0.0;
    for (std::size_t k = 0; k < circuit_.kinds.size(); ++k) {
      if (circuit_.kinds[k] != PieceKind::cable || !in_way(k) || !on_plus(near_end(k))) continue;
      if (away_V(near_end(k)) < first_V) length_m += read_.pieces[circuit_.pieces[k]].length_m * share(k);
    }
    return length_m;
  }

  // The devices in the motor's way, from the bank outward, those side by side as one.
  struct InWay {
    ProtectiveDevice device{};
    int plus_count = 0;
    int minus_count = 0;
    double away_V = 0.0;
    int far_node = 0;
    double current_A = 0.0;  // those side by side together
  };
  std::vector<InWay> devices_in_way() const {
    std::vector<InWay> found;
    for (const CircuitDevice& typed : circuit_.devices) {
      const std::size_t k = typed.branch;
      if (!in_way(k)) continue;
      const NetworkBranch& branch = circuit_.network.branches[k];
      const int near_node = near_end(k);
      InWay one{.device = typed.device,
                .away_V = away_V(near_node),
                .far_node = near_node == branch.from ? branch.to : branch.from};
      one.device.rating_A /= share(k);
      one.current_A = current_A(k) / share(k);
      (on_plus(near_node) ? one.plus_count : one.minus_count) = 1;
      const auto known = std::find_if(found.begin(), found.end(), [&](const InWay& other) {
        const bool same_pole = (one.plus_count > 0 ? other.plus_count : other.minus_count) > 0;
        return other.device.id == one.device.id && (!same_pole || share(k) < 1.0 - kInWay_frac);
      });
      if (known == found.end()) {
        found.push_back(std::move(one));
        continue;
      }
      known->plus_count |= one.plus_count;
      known->minus_count |= one.minus_count;
      known->device.rating_A = std::min(known->device.rating_A, one.device.rating_A);
      known->current_A = std::max(known->current_A, one.current_A);
    }
    return sorted(std::move(found), [](const InWay& a, const InWay& b) { return a.away_V < b.away_V; });
  }

  TypedPaths paths(const FeederResult& feeder) const {
    const BankResult& bank = design_.bank;
    TypedPaths out;
    double hot_C = design_.job.feeder.ambient_C.value;
    for (const CarriedCable& carried : feeder.carried) {
      if (in_way(carried.cable.branch)) hot_C = std::max(hot_C, carried.temperature_C);
    }
    const Network weak = fault_network(CircuitMoment::end_of_day, in_.weakest,
                                       {bank.open_circuit_end_V, bank.resistance_end_ohm}, hot_C, kJointHigh_factor);
    const Network strong = fault_network(CircuitMoment::full_thrust, in_.strongest,
                                         {bank.open_circuit_full_V, bank.resistance_full_ohm}, 20.0, kJointLow_factor);
    const auto range = [&](int positive, int negative) {
      return FaultRange{.least_A = short_A(seen(weak, positive, negative)),
                        .most_A = short_A(seen(strong, positive, negative))};
    };
    out.posts = seen(strong, 1, 0);
    out.plug = seen(weak, plus_, minus_);
    out.faults = {.posts = range(1, 0), .stud = range(1, 0), .plug = range(plus_, minus_)};
    for (const InWay& each : devices_in_way()) {
      const ProtectiveDevice& device = each.device;
      out.devices.push_back({.label = device.label,
                             .device_class = class_of(device),
                             .rating_A = device.rating_A,
                             .voltage_V = device.voltage_V,
                             .interrupt_A = device.interrupt_A,
                             .resistance_ohm = device.resistance_ohm,
                             .pole_count = each.plus_count + each.minus_count});
      out.faults.stud = range_behind(each.far_node, range);
    }
    for (const CarriedCable& carried : feeder.carried) {
      const CircuitCable& cable = carried.cable;
      const Conductor* row = find_conductor(cable.conductor);
      if (row == nullptr || !in_way(cable.branch)) continue;
      const double whole = 1.0 / share(cable.branch);
      out.leads.push_back({.label = cable.label,
                           .area_mm2 = row->area_mm2 * whole,
                           .ohm_per_m = row->tinned_ohm_per_m / whole,
                           .length_m = cable.length_m,
                           .ampacity_A = carried.ampacity_A * whole,
                           .insulation_C = feeder.cable.insulation_C,
                           .air_C = std::min(carried.ambient_C, feeder.cable.insulation_C - 1.0),
                           .start_C = std::max(carried.temperature_C, carried.ambient_C),
                           .end_C = kPvcFault_C,
                           .most_A = range_behind(near_end(cable.branch), range).most_A});
    }
    return out;
  }

 private:
  FeederCircuit circuit_at(CircuitMoment moment) const {
    return typed_circuit(design_, catalogue_, read_, moment, MotorLaw::power);
  }
  double volts(int node) const { return circuit_.solution.node_V[at(node)]; }
  double current_A(std::size_t k) const { return std::abs(circuit_.solution.branch_A[k]); }
  double motor_A() const { return circuit_.solution.load_A.front(); }
  // Of the motor's current; where other loads hang behind it no more than all.
  double share(std::size_t k) const { return std::min(1.0, current_A(k) / motor_A()); }
  bool in_way(std::size_t k) const { return share(k) >= kInWay_frac; }
  bool on_plus(int node) const { return volts(node) > middle_V_; }
  // How far from its post, in volts.
  double away_V(int node) const { return on_plus(node) ? volts(1) - volts(node) : volts(node) - volts(0); }
  int near_end(std::size_t k) const {
    const NetworkBranch& branch = circuit_.network.branches[k];
    return away_V(branch.from) <= away_V(branch.to) ? branch.from : branch.to;
  }

  // The most that the motor can be given, and the circuit then, at the temperatures found so far.
  void give_most() {
    NetworkLoad& motor = circuit_.network.loads.front();
    double low_W = 0.0;
    double high_W = motor.power_W;
    for (int i = 0; i < kHalvings; ++i) {
      motor.power_W = 0.5 * (low_W + high_W);
      (solve_network(circuit_.network).solved ? low_W : high_W) = motor.power_W;
    }
    motor.power_W = most_W_ = low_W;
    circuit_.solution = solve_network(circuit_.network);
  }

  double motor_full_V() const {
    Network network = circuit_.network;
    const Network full = circuit_at(CircuitMoment::full_thrust).network;
    for (std::size_t k = 0; k < network.branches.size(); ++k) {
      if (circuit_.kinds[k] == PieceKind::block) network.branches[k] = full.branches[k];
    }
    network.loads = full.loads;
    const NetworkSolution solution = solve_network(network);
    return solution.solved ? solution.load_V.front() : circuit_.solution.load_V.front();
  }

  // The circuit without its loads, its blocks as a short circuit sees such a bank.
  Network fault_network(CircuitMoment moment, const BankEnd& end, const BankEnd& usual, double copper_C,
                        double joint_factor) const {
    const FeederCircuit circuit = circuit_at(moment);
    Network network = circuit.network;
    network.loads.clear();
    for (std::size_t k = 0; k < network.branches.size(); ++k) {
      NetworkBranch& branch = network.branches[k];
      const BranchCopper& copper = circuit.copper[k];
      if (circuit.kinds[k] == PieceKind::block) {
        branch.open_circuit_V *= end.open_circuit_V / usual.open_circuit_V;
        branch.resistance_ohm *= end.resistance_ohm / usual.resistance_ohm;
      } else if (circuit.kinds[k] == PieceKind::jumper) {
        branch.resistance_ohm = resistance_at(copper.cold_ohm + copper.fixed_ohm, copper_C);
      } else {
        branch.resistance_ohm = resistance_at(copper.cold_ohm, copper_C) + joint_factor * copper.fixed_ohm;
      }
    }
    return network;
  }

  // Open-circuit volts and resistance between two nodes: a load that takes nothing sees both.
  static BankEnd seen(Network network, int positive, int negative) {
    network.loads = {{.positive = positive, .negative = negative}};
    const NetworkSolution s = solve_network(network);
    if (!s.solved || !(s.limit_W > 0.0)) return {};
    const double open_V = s.load_V.front();
    return {.open_circuit_V = open_V, .resistance_ohm = 0.25 * open_V * open_V / s.limit_W};
  }
  static double short_A(const BankEnd& end) {
    return end.resistance_ohm > 0.0 ? fault_A(end.open_circuit_V, end.resistance_ohm) : 0.0;
  }

  template <class Range>
  FaultRange range_behind(int node, const Range& range) const {
    const bool plus = on_plus(node);
    int other = plus ? 0 : 1;
    for (int each = 0; at(each) < circuit_.network.nodes.size(); ++each) {
      if (on_plus(each) == plus || std::find(inside_.begin(), inside_.end(), each) != inside_.end()) continue;
      if (std::abs(away_V(each) - away_V(node)) < std::abs(away_V(other) - away_V(node))) other = each;
    }
    return plus ? range(node, other) : range(other, node);
  }

  const Design& design_;
  const Catalogue& catalogue_;
  const CircuitRead& read_;
  const FeederInput& in_;
  FeederCircuit circuit_;
  std::vector<int> inside_{};  // nodes inside the bank
  int plus_ = 1;
  int minus_ = 0;
  double middle_V_ = 0.0;
  double most_W_ = 0.0;
};

}  // namespace

// A field that the circuit stands for mends nothing.
static bool stands_for(std::string_view field) {
  return field == "feeder.conductor" || field == "feeder.tail_conductor" || field == "feeder.device" || field == "feeder.device_distance_m";
}

// As sold: by the cable that the fields have, else by the first of that conductor in the catalogue, of the same
// insulation if there is one.
static CableOffer cable_of(const std::string& conductor, const Catalogue& catalogue, const FeederResult& fields) {
  CableOffer found = fields.cable;
  if (found.conductor == conductor) return found;
  if (fields.tail_cable.conductor == conductor) return fields.tail_cable;
  found = {};
  for (const CableOffer& offer : catalogue.cables) {
    if (offer.conductor != conductor) continue;
    if (found.id.empty() || offer.insulation_C == fields.cable.insulation_C) found = offer;
    if (found.insulation_C == fields.cable.insulation_C) break;
  }
  return found;
}

static bool is_stud(const TypedPiece& piece) { return piece.kind == PieceKind::lug && piece.label.starts_with("Stud"); }
static bool is_lug(const TypedPiece& piece) { return piece.kind == PieceKind::lug && !is_stud(piece); }

// Ends of cables with neither lug nor plug beside them that do not go on in their own size: each gets a lug.
static int bare_ends(const CircuitRead& read) {
  struct Node {
    int bare_count = 0;
    int other_count = 0;
    std::string_view conductor{};  // of its first cable
    bool one_size = true;
  };
  std::vector<Node> nodes(read.nodes.size());
  for (const TypedPiece& piece : read.pieces) {
    for (const int end : {piece.from, piece.to}) {
      Node& node = nodes[at(end)];
      if (piece.kind != PieceKind::cable) {
        ++node.other_count;
        continue;
      }
      if (node.bare_count++ == 0) node.conductor = piece.conductor;
      node.one_size = node.one_size && node.conductor == piece.conductor;
    }
  }
  for (std::size_t k = 2; k < nodes.size(); ++k) {  // at the bank's posts no cable goes on
    Node& node = nodes[k];
    if (node.bare_count == 2 && node.other_count == 0 && node.one_size) node.bare_count = 0;
  }
  for (const TypedPiece& piece : read.pieces) {
    if (!is_lug(piece) && piece.kind != PieceKind::plug) continue;
    for (const int end : {piece.from, piece.to}) {
      if (nodes[at(end)].bare_count == 0) continue;
      --nodes[at(end)].bare_count;
      if (is_lug(piece)) break;  // a plug has a cable on either side
    }
  }
  int count = 0;
  for (const Node& node : nodes) count += node.bare_count;
  return count;
}

// What the typed pieces are bought as. A joint is a lug, typed or not, or one end of a jumper; jumpers are of the
// fields' cable and length, and the usual bank has its usual ones. A switch that names no device is none. Plugs,
// studs and switches go in pairs, one to a pole; a text without stud or switch says nothing of either.
static FeederParts parts_of(const CircuitRead& read, const FeederInput& in, const Catalogue& catalogue, Design& design) {
  FeederParts parts{.joint_count = bare_ends(read)};
  const FeederResult& fields = design.feeder;
  std::vector<std::string> missing;
  int jumpers = read.has_blocks ? 0 : jumper_count(in.series_count, in.parallel_count);
  double both_ways_m = 0.0;
  int plugs = 0;
  int studs = 0;
  int switches = 0;
  int blocks = 0;
  for (const TypedPiece& piece : read.pieces) {
    blocks += piece.kind == PieceKind::block;
    const bool plain_switch = piece.label.starts_with("Switch") && piece.device.empty();
    plugs += piece.kind == PieceKind::plug;
    studs += is_stud(piece);
    switches += plain_switch;
    if (is_lug(piece)) ++parts.joint_count;
    if (piece.kind == PieceKind::jumper) ++jumpers;
    if (piece.kind == PieceKind::cable) {
      const CableOffer cable = cable_of(piece.conductor, catalogue, fields);
      both_ways_m += piece.length_m;
      if (!cable.id.empty()) {
        parts.cables.push_back({cable, piece.length_m});
      } else if (std::find(missing.begin(), missing.end(), piece.conductor) == missing.end()) {
        missing.push_back(piece.conductor);
      }
    }
    if (piece.kind == PieceKind::device && !plain_switch) {
      const ProtectiveDevice* device = piece.device.empty() ? &fields.device : find_item(catalogue.devices, piece.device);
      if (device == nullptr) continue;  // measured milliohms, and nothing that a catalogue knows
      const auto same = std::find_if(parts.devices.begin(), parts.devices.end(),
                                     [&](const DeviceUse& use) { return use.device.id == device->id; });
      if (same == parts.devices.end()) {
        parts.devices.push_back({*device, 1});
      } else {
        ++same->count;
      }
    }
  }
  for (DeviceUse& use : parts.devices) use.count = (use.count + std::max(use.device.poles, 1) - 1) / std::max(use.device.poles, 1);
  parts.cables.push_back({fields.cable, jumpers * in.jumper_m});
  parts.joint_count += 2 * jumpers;
  parts.way_m = 0.5 * both_ways_m;
  parts.plug_count = (plugs + 1) / 2;
  parts.stud_block_count = std::max((studs + 1) / 2, 1);
  parts.switch_count = std::max((switches + 1) / 2, 1);
  if (read.has_blocks && blocks != design.bank.block_count) {
    design.issues.push_back({Severity::warning, "feeder.network",
                             std::to_string(blocks) + " blocks are typed, the bank has " + std::to_string(design.bank.block_count) +
                                 ": price, weight and room are for those of the bank."});
  }
  for (const std::string& conductor : missing) {
    design.issues.push_back({Severity::warning, "feeder.network",
                             "No cable of " + conductor + " is in this catalogue: price and weight go without it."});
  }
  return parts;
}

void take_typed_circuit(FeederInput in, const Catalogue& catalogue, Design& design, FeederParts& parts) {
  const Given<std::string>& text = design.job.feeder.network;
  if (!text.known() || !design.bank.found || !design.feeder.found) return;
  const CircuitRead read = read_circuit(text.value);
  if (read.pieces.empty()) return;
  Typed typed(design, catalogue, read, in);
  std::string message = typed.solve();
  if (message.empty()) {
    in.circuit = typed.solved();
    if (in.circuit->cables.empty()) message = "A cable is missing; write 5m:4AWG between the bank and the motor.";
  }
  if (!message.empty()) {
    design.issues.push_back(
        {Severity::warning, "feeder.network", std::move(message) + " The feeder is that of the other fields instead."});
    return;
  }
  parts = parts_of(read, in, catalogue, design);
  in.device_distance_m = typed.device_distance_m();
  in.cables = {design.feeder.cable};
  in.tail_cables = {design.feeder.tail_cable};
  in.devices.clear();
  const auto devices = typed.devices_in_way();
  const auto least = std::min_element(devices.begin(), devices.end(), [](const auto& a, const auto& b) {
    return a.device.rating_A < b.device.rating_A;
  });
  if (least != devices.end()) {
    in.devices = {least->device};
    const int poles = std::max(least->device.poles, 1);
    in.circuit->device_A = least->current_A;
    in.circuit->device_count = (least->plus_count + least->minus_count + poles - 1) / poles;
  }
  FeederResult result = feeder(in);
  for (Check& check : result.trace.checks) std::erase_if(check.changes, [](const Change& change) { return stands_for(change.field); });
  design.typed = typed.paths(result);
  design.feeder = std::move(result);
}

}  // namespace thole
