#include "calc/network/network.h"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <numeric>
#include <utility>

#include "base/number.h"
#include "base/order.h"

namespace thole {
namespace {

constexpr int kMostSteps = 60;
constexpr double kTolerance = 1e-13;
// Beyond these the matrix says more of rounding than of the circuit.
constexpr double kLeastResistance_ohm = 1e-9;
constexpr double kMostResistance_ohm = 1e9;
constexpr double kMostVolts_V = 1e6;

using Values = std::vector<double>;

std::size_t at(int index) { return static_cast<std::size_t>(index); }

// A symmetric positive definite matrix by rows, each from its first entry to the diagonal: a feeder is
// nearly a chain, and rows are short. Cholesky's factor keeps to the same entries.
class Conductances {
 public:
  // `first`: of each row the column of its first entry.
  explicit Conductances(std::vector<std::size_t> first) : first_(std::move(first)) {
    for (std::size_t row = 0; row < first_.size(); ++row) {
      start_.push_back(values_.size() - first_[row]);  // wraps around and back
      values_.resize(values_.size() + row + 1 - first_[row]);
    }
  }
  std::size_t size() const { return first_.size(); }
  double& operator()(std::size_t row, std::size_t column) { return values_[start_[row] + column]; }
  double operator()(std::size_t row, std::size_t column) const { return values_[start_[row] + column]; }

  void factor() {
    Conductances& l = *this;
    for (std::size_t i = 0; i < size(); ++i) {
      for (std::size_t j = first_[i]; j <= i; ++j) {
        double left = l(i, j);
        for (std::size_t k = std::max(first_[i], first_[j]); k < j; ++k) left -= l(i, k) * l(j, k);
        l(i, j) = j < i ? left / l(j, j) : std::sqrt(left);
      }
    }
  }
  Values solved(Values b) const {
    const Conductances& l = *this;
    for (std::size_t i = 0; i < size(); ++i) {
      for (std::size_t k = first_[i]; k < i; ++k) b[i] -= l(i, k) * b[k];
      b[i] /= l(i, i);
    }
    for (std::size_t i = size(); i-- > 0;) {
      b[i] /= l(i, i);
      for (std::size_t k = first_[i]; k < i; ++k) b[k] -= l(i, k) * b[i];
    }
    return b;
  }

 private:
  std::vector<std::size_t> first_;
  std::vector<std::size_t> start_{};
  Values values_{};
};

// Solves a x = b by elimination; empty when `a` is singular or no number. Rows of `a` one after the other.
Values eliminated(Values a, Values b) {
  const std::size_t n = b.size();
  for (std::size_t i = 0; i < n; ++i) {
    std::size_t pivot = i;
    for (std::size_t row = i; row < n; ++row) {
      if (std::abs(a[row * n + i]) > std::abs(a[pivot * n + i])) pivot = row;
    }
    if (!(std::abs(a[pivot * n + i]) > 0.0)) return {};
    for (std::size_t k = 0; k < n; ++k) std::swap(a[i * n + k], a[pivot * n + k]);
    std::swap(b[i], b[pivot]);
    for (std::size_t row = i + 1; row < n; ++row) {
      const double by = a[row * n + i] / a[i * n + i];
      for (std::size_t k = i; k < n; ++k) a[row * n + k] -= by * a[i * n + k];
      b[row] -= by * b[i];
    }
  }
  for (std::size_t i = n; i-- > 0;) {
    for (std::size_t k = i + 1; k < n; ++k) b[i] -= a[i * n + k] * b[k];
    b[i] /= a[i * n + i];
    if (!std::isfinite(b[i])) return {};
  }
  return b;
}

double largest(const Values& values) {
  double most = 0.0;
  for (const double value : values) most = std::max(most, std::abs(value));
  return most;
}

// Which nodes are one because a conductor without resistance joins them.
class Joined {
 public:
  explicit Joined(std::size_t count) : root_(count) { std::iota(root_.begin(), root_.end(), 0); }
  int root(int node) const {
    while (root_[at(node)] != node) node = root_[at(node)];
    return node;
  }
  void join(int a, int b) {
    // Node 0 stays a root.
    const int one = root(a);
    const int other = root(b);
    root_[at(std::max(one, other))] = std::min(one, other);
  }

 private:
  std::vector<int> root_;
};

bool is_wire(const NetworkBranch& branch) {
  return branch.resistance_ohm == 0.0 && branch.open_circuit_V == 0.0;
}

std::string quoted(const std::string& label) { return "\"" + label + "\""; }

bool within(const Network& network, int node) {
  return node >= 0 && at(node) < network.nodes.size();
}

std::string wrong_with(const Network& network) {
  if (network.nodes.size() < 2) return "A circuit has two nodes or more.";
  if (network.nodes.size() > kMostNodes) return "More than 600 nodes are not worked out.";
  for (const NetworkBranch& branch : network.branches) {
    const std::string said = quoted(branch.label) + ": ";
    if (!within(network, branch.from) || !within(network, branch.to)) {
      return said + "leads to a node that is not there.";
    }
    if (branch.resistance_ohm != 0.0 && !(branch.resistance_ohm >= kLeastResistance_ohm &&
                                          branch.resistance_ohm <= kMostResistance_ohm)) {
      return said + "a resistance is 0 ohm, or from 1e-9 to 1e9 ohm.";
    }
    if (!(std::abs(branch.open_circuit_V) <= kMostVolts_V)) {
      return said + "open-circuit volts are 1e6 V at most.";
    }
    if (branch.open_circuit_V != 0.0 && branch.resistance_ohm == 0.0) {
      return said + "a block has a resistance above 0 ohm.";
    }
  }
  for (const NetworkLoad& load : network.loads) {
    const std::string said = quoted(load.label) + ": ";
    if (!within(network, load.positive) || !within(network, load.negative)) {
      return said + "hangs on a node that is not there.";
    }
    for (const double demand : {load.power_W, load.current_A, load.resistance_ohm}) {
      if (!(demand >= 0.0) || !std::isfinite(demand)) return said + "its demand is 0 or more.";
    }
  }
  return {};
}

// The circuit without its loads.
class Solver {
 public:
  explicit Solver(const Network& network)
      : network_(network), joined_(network.nodes.size()), unknown_(network.nodes.size(), -1) {
    for (const NetworkBranch& branch : network.branches) {
      if (is_wire(branch)) joined_.join(branch.from, branch.to);
    }
  }

  // Empty, or which node hangs in the air.
  std::string factor() {
    std::string open = unreached_node();
    if (!open.empty()) return quoted(open) + " is connected to nothing: the circuit is open there.";
    int count = 0;
    for (std::size_t node = 0; node < network_.nodes.size(); ++node) {
      const int own = static_cast<int>(node);
      if (joined_.root(own) == own && own != joined_.root(0)) unknown_[node] = count++;
    }
    std::vector<std::size_t> first(at(count));
    std::iota(first.begin(), first.end(), std::size_t{0});
    each_resistance([&](int a, int b, double) {
      if (a >= 0 && b >= 0) first[at(std::max(a, b))] = std::min(first[at(std::max(a, b))], at(std::min(a, b)));
    });
    conductance_ = Conductances(std::move(first));
    each_resistance([&](int a, int b, double g) {
      if (a == b) return;
      if (a >= 0) conductance_(at(a), at(a)) += g;
      if (b >= 0) conductance_(at(b), at(b)) += g;
      if (a >= 0 && b >= 0) conductance_(at(std::max(a, b)), at(std::min(a, b))) -= g;
    });
    conductance_.factor();
    return {};
  }

  // Volts of every node for currents that blocks and loads put in.
  Values sources() const {
    Values in(conductance_.size());
    for (const NetworkBranch& branch : network_.branches) {
      if (branch.open_circuit_V == 0.0) continue;
      inject(in, branch.to, branch.open_circuit_V / branch.resistance_ohm);
      inject(in, branch.from, -branch.open_circuit_V / branch.resistance_ohm);
    }
    return in;
  }
  void inject(Values& in, int node, double current_A) const {
    const int k = place(node);
    if (k >= 0) in[at(k)] += current_A;
  }
  Values volts(Values in) const { return conductance_.solved(std::move(in)); }
  // ... for 1 A that leaves at one node and comes in at another.
  Values volts_of_ampere(int in_node, int out_node) const {
    Values unit(conductance_.size());
    inject(unit, in_node, 1.0);
    inject(unit, out_node, -1.0);
    return volts(std::move(unit));
  }
  double volts_at(const Values& volts, int node) const {
    const int k = place(node);
    return k >= 0 ? volts[at(k)] : 0.0;
  }
  double across(const Values& volts, const NetworkLoad& load) const {
    return volts_at(volts, load.positive) - volts_at(volts, load.negative);
  }

 private:
  int place(int node) const { return unknown_[at(joined_.root(node))]; }

  template <class Take>
  void each_resistance(const Take& take) const {
    for (const NetworkBranch& branch : network_.branches) {
      if (branch.resistance_ohm != 0.0) take(place(branch.from), place(branch.to), 1.0 / branch.resistance_ohm);
    }
  }

  std::string unreached_node() const {
    Joined reached = joined_;
    for (const NetworkBranch& branch : network_.branches) reached.join(branch.from, branch.to);
    for (std::size_t node = 0; node < network_.nodes.size(); ++node) {
      if (reached.root(static_cast<int>(node)) != reached.root(0)) return network_.nodes[node];
    }
    return {};
  }

  const Network& network_;
  Joined joined_;
  std::vector<int> unknown_;  // place among the unknowns, by root node
  Conductances conductance_{{}};
};

// How the current of a load follows its volts, and how steeply.
struct Answer {
  double current_A = 0.0;
  double slope_A_per_V = 0.0;
};
Answer answer_of(const NetworkLoad& load, double across_V) {
  Answer answer{.current_A = load.current_A};
  if (load.power_W > 0.0) {
    answer.current_A += load.power_W / across_V;
    answer.slope_A_per_V -= load.power_W / (across_V * across_V);
  }
  if (load.resistance_ohm > 0.0) {
    answer.current_A += across_V / load.resistance_ohm;
    answer.slope_A_per_V += 1.0 / load.resistance_ohm;
  }
  return answer;
}

bool takes(const NetworkLoad& load) {
  return load.power_W > 0.0 || load.current_A > 0.0 || load.resistance_ohm > 0.0;
}

// Volts across the loads: V = V_oc - R I(V), from V_oc down; `seen_ohm` by rows. Empty when there is no
// such point.
Values meet(const std::vector<NetworkLoad>& loads, const Values& open_V, const Values& seen_ohm) {
  const std::size_t count = loads.size();
  const double scale_V = 1.0 + largest(open_V);
  Values across_V = open_V;
  const auto all_fed = [&] {
    for (std::size_t k = 0; k < count; ++k) {
      if (takes(loads[k]) && !(across_V[k] > 0.0)) return false;
    }
    return true;
  };
  for (int step = 0; step < kMostSteps; ++step) {
    if (!all_fed()) return {};
    Values off = across_V;
    Values jacobian(count * count);
    for (std::size_t row = 0; row < count; ++row) off[row] -= open_V[row];
    for (std::size_t k = 0; k < count; ++k) {
      const Answer answer = answer_of(loads[k], across_V[k]);
      for (std::size_t row = 0; row < count; ++row) {
        off[row] += seen_ohm[row * count + k] * answer.current_A;
        jacobian[row * count + k] = (row == k ? 1.0 : 0.0) + seen_ohm[row * count + k] * answer.slope_A_per_V;
      }
    }
    const double off_V = largest(off);
    const Values move = eliminated(std::move(jacobian), std::move(off));
    if (move.empty()) return {};
    for (std::size_t k = 0; k < count; ++k) across_V[k] -= move[k];
    if (largest(move) > kTolerance * scale_V) continue;
    // A load takes; one that is driven below 0 V would give.
    return off_V <= 1e-9 * scale_V && all_fed() ? across_V : Values{};
  }
  return {};
}

std::string number(double value) {
  char text[40];
  std::snprintf(text, sizeof text, "%.17g", value);
  return text;
}

// Currents through the conductors without resistance cannot be told apart in a loop: each gets what
// balances its end nearest the end of the chain. Leaves of the forest of wires, one after the other.
void share_wires(const Network& network, NetworkSolution& s) {
  std::vector<double> excess_A(network.nodes.size(), 0.0);  // flows in, and must flow on by wires
  std::vector<std::vector<std::size_t>> wires(network.nodes.size());
  Joined forest(network.nodes.size());
  for (std::size_t k = 0; k < network.branches.size(); ++k) {
    const NetworkBranch& branch = network.branches[k];
    if (!is_wire(branch)) {
      excess_A[at(branch.to)] += s.branch_A[k];
      excess_A[at(branch.from)] -= s.branch_A[k];
    } else if (forest.root(branch.from) != forest.root(branch.to)) {
      forest.join(branch.from, branch.to);
      wires[at(branch.from)].push_back(k);
      wires[at(branch.to)].push_back(k);
    }
  }
  for (std::size_t k = 0; k < network.loads.size(); ++k) {
    excess_A[at(network.loads[k].positive)] -= s.load_A[k];
    excess_A[at(network.loads[k].negative)] += s.load_A[k];
  }
  std::vector<int> leaves;
  for (std::size_t node = 0; node < wires.size(); ++node) {
    if (wires[node].size() == 1) leaves.push_back(static_cast<int>(node));
  }
  while (!leaves.empty()) {
    const int leaf = leaves.back();
    leaves.pop_back();
    if (wires[at(leaf)].size() != 1) continue;
    const std::size_t k = wires[at(leaf)].front();
    const NetworkBranch& wire = network.branches[k];
    const int other = wire.from == leaf ? wire.to : wire.from;
    const double away_A = excess_A[at(leaf)];
    s.branch_A[k] = wire.from == leaf ? away_A : -away_A;
    excess_A[at(other)] += away_A;
    excess_A[at(leaf)] = 0.0;
    wires[at(leaf)].clear();
    std::erase(wires[at(other)], k);
    if (wires[at(other)].size() == 1) leaves.push_back(other);
  }
}

// Why no point was met, with the part at fault.
std::string unmet(const Network& network, const Values& open_V, const Values& seen_ohm, const NetworkSolution& s) {
  for (std::size_t k = 0; k < network.loads.size(); ++k) {
    if (takes(network.loads[k]) && !(open_V[k] > 0.0)) {
      return quoted(network.loads[k].label) + ": no volts reach it, or its poles are changed over.";
    }
  }
  const NetworkLoad& first = network.loads.front();
  std::string message = quoted(first.label);
  if (network.loads.size() > 1) {
    message = "The loads together ask for more than there is; " + quoted(first.label) + " alone";
  }
  // A load of current alone is bounded by the current into a short circuit, not by matched power.
  const bool by_current = first.current_A > 0.0 && first.power_W == 0.0;
  message += " can be given " + (by_current ? significant(open_V[0] / seen_ohm[0], 3) + " A"
                                            : significant(s.limit_W, 3) + " W") + " at most";
  if (s.limiting_branch >= 0) {
    message += "; " + quoted(network.branches[at(s.limiting_branch)].label) + " limits it most";
  }
  return message + ".";
}

void find_limit(const Network& network, const Solver& solver, double open_V, double seen_ohm, NetworkSolution& s) {
  if (!(seen_ohm > 0.0)) return;
  s.limit_W = open_V * open_V / (4.0 * seen_ohm);
  const Values volts = solver.volts_of_ampere(network.loads.front().negative, network.loads.front().positive);
  double most_ohm = -1.0;
  for (std::size_t k = 0; k < network.branches.size(); ++k) {
    const NetworkBranch& branch = network.branches[k];
    if (branch.resistance_ohm == 0.0) continue;
    const double drop = solver.volts_at(volts, branch.from) - solver.volts_at(volts, branch.to);
    const double share_ohm = drop * drop / branch.resistance_ohm;
    if (share_ohm > most_ohm) {
      most_ohm = share_ohm;
      s.limiting_branch = static_cast<int>(k);
    }
  }
}

}  // namespace

NetworkSolution solve_network(const Network& network) {
  NetworkSolution s;
  s.message = wrong_with(network);
  if (!s.message.empty()) return s;
  Solver solver(network);
  s.message = solver.factor();
  if (!s.message.empty()) return s;

  const std::size_t count = network.loads.size();
  Values in = solver.sources();
  if (count > 0) {
    const Values open = solver.volts(in);
    Values open_V;
    Values seen_ohm(count * count);
    for (std::size_t k = 0; k < count; ++k) {
      const NetworkLoad& load = network.loads[k];
      open_V.push_back(solver.across(open, load));
      const Values lifted = solver.volts_of_ampere(load.positive, load.negative);
      for (std::size_t row = 0; row < count; ++row) {
        seen_ohm[row * count + k] = solver.across(lifted, network.loads[row]);
      }
    }
    find_limit(network, solver, open_V[0], seen_ohm[0], s);
    s.load_V = meet(network.loads, open_V, seen_ohm);
    if (s.load_V.empty()) {
      s.message = unmet(network, open_V, seen_ohm, s);
      return s;
    }
    for (std::size_t k = 0; k < count; ++k) {
      const NetworkLoad& load = network.loads[k];
      const double current_A = answer_of(load, s.load_V[k]).current_A;
      s.load_A.push_back(current_A);
      solver.inject(in, load.positive, -current_A);
      solver.inject(in, load.negative, current_A);
    }
  }
  const Values volts = solver.volts(std::move(in));
  for (std::size_t node = 0; node < network.nodes.size(); ++node) {
    s.node_V.push_back(solver.volts_at(volts, static_cast<int>(node)));
  }
  for (const NetworkBranch& branch : network.branches) {
    const double fall_V = s.node_V[at(branch.from)] - s.node_V[at(branch.to)] + branch.open_circuit_V;
    const double current_A = branch.resistance_ohm == 0.0 ? 0.0 : fall_V / branch.resistance_ohm;
    s.branch_A.push_back(current_A);
    s.branch_W.push_back(current_A * current_A * branch.resistance_ohm);
    s.source_W += branch.open_circuit_V * current_A;
  }
  share_wires(network, s);
  s.solved = true;
  return s;
}

std::vector<std::size_t> branches_by_loss(const NetworkSolution& solution) {
  std::vector<std::size_t> order(solution.branch_W.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  order = sorted(std::move(order), [&](std::size_t a, std::size_t b) {
    return solution.branch_W[a] > solution.branch_W[b];
  });
  return order;
}

std::string spice_deck(const Network& network) {
  std::string deck = "* operating point\n";
  const auto node = [](int index) { return index == 0 ? std::string("0") : "n" + std::to_string(index); };
  for (std::size_t k = 0; k < network.branches.size(); ++k) {
    const NetworkBranch& branch = network.branches[k];
    const std::string id = std::to_string(k);
    // An ammeter of no volts, or the block's own; then the resistance.
    const std::string inner = branch.resistance_ohm > 0.0 ? "m" + id : node(branch.to);
    deck += "vb" + id + " " + node(branch.from) + " " + inner + " " + number(-branch.open_circuit_V) + "\n";
    if (branch.resistance_ohm > 0.0) {
      deck += "rb" + id + " " + inner + " " + node(branch.to) + " " + number(branch.resistance_ohm) + "\n";
    }
  }
  for (std::size_t k = 0; k < network.loads.size(); ++k) {
    const NetworkLoad& load = network.loads[k];
    const std::string id = std::to_string(k);
    const std::string ends = node(load.positive) + " " + node(load.negative) + " ";
    const std::string across = "v(" + node(load.positive) +
                               (load.negative == 0 ? "" : "," + node(load.negative)) + ")";
    if (load.power_W > 0.0) deck += "bl" + id + " " + ends + "i=" + number(load.power_W) + "/" + across + "\n";
    if (load.current_A > 0.0) deck += "il" + id + " " + ends + number(load.current_A) + "\n";
    if (load.resistance_ohm > 0.0) deck += "rl" + id + " " + ends + number(load.resistance_ohm) + "\n";
  }
  deck += ".options reltol=1e-9 abstol=1e-12 vntol=1e-10 gmin=1e-18\n";
  // Two operating points meet a demand of constant power: from no load down is where a controller works.
  Network unloaded = network;
  unloaded.loads.clear();
  const NetworkSolution open = solve_network(unloaded);
  for (std::size_t k = 1; k < open.node_V.size(); ++k) {
    deck += ".nodeset v(n" + std::to_string(k) + ")=" + number(open.node_V[k]) + "\n";
  }
  deck += ".control\nset numdgt=15\nop\n";
  for (std::size_t k = 1; k < network.nodes.size(); ++k) {
    deck += "print v(n" + std::to_string(k) + ")\n";
  }
  for (std::size_t k = 0; k < network.branches.size(); ++k) {
    deck += "print i(vb" + std::to_string(k) + ")\n";
  }
  deck += "quit\n.endc\n.end\n";
  return deck;
}

}  // namespace thole
