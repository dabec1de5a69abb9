// Circuits of every shape, as decks for another program to solve, and as solved here: network_test.py.
//
// usage: thole_network_cases count          how many there are
//        thole_network_cases deck|solve K   the deck; volts of nodes 1.. and amperes of branches
//        thole_network_cases time           microseconds for the usual feeder, processor time

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <string_view>

#include "calc/feeder_circuit.h"
#include "io/presets.h"

namespace {

using namespace thole;

NetworkBranch block(int from, int to, double open_V, double ohm) { return {"block", from, to, open_V, ohm}; }
NetworkBranch lead(int from, int to, double ohm) { return {"lead", from, to, 0.0, ohm}; }
NetworkLoad taking(std::string label, int positive, int negative, MotorLaw law, double amount) {
  NetworkLoad load{.label = std::move(label), .positive = positive, .negative = negative};
  (law == MotorLaw::power ? load.power_W : law == MotorLaw::current ? load.current_A : load.resistance_ohm) = amount;
  return load;
}
std::vector<std::string> nodes(int count) { return std::vector<std::string>(static_cast<std::size_t>(count), "node"); }

// Three blocks in series, the middle one weak.
Network string_of(MotorLaw law, double amount) {
  return {nodes(6),
          {block(0, 1, 12.6, 0.008), block(1, 2, 11.7, 0.031), block(2, 3, 12.6, 0.008), lead(3, 4, 0.011),
           lead(5, 0, 0.0105)},
          {taking("motor", 4, 5, law, amount)}};
}

// Two unlike strings side by side, each with a jumper.
Network parallel_strings() {
  return {nodes(7),
          {block(0, 1, 12.8, 0.009), lead(1, 2, 0.0004), block(2, 3, 12.7, 0.012), block(0, 4, 12.1, 0.02),
           lead(4, 5, 0.0005), block(5, 3, 12.0, 0.025), lead(3, 6, 0.014)},
          {taking("motor", 6, 0, MotorLaw::power, 1100.0)}};
}

// A ring of leads, a second load on the way, another law for each.
Network ring() {
  return {nodes(6),
          {block(0, 1, 25.4, 0.015), lead(1, 2, 0.006), lead(2, 3, 0.007), lead(1, 3, 0.02), lead(3, 4, 0.004),
           lead(5, 0, 0.009), lead(4, 5, 900.0)},
          {taking("motor", 4, 5, MotorLaw::power, 1400.0),
           taking("plotter", 2, 0, MotorLaw::current, 3.2),
           taking("lamp", 3, 5, MotorLaw::resistance, 18.0)}};
}

// A lead of no length between two others.
Network with_wire() {
  return {nodes(5),
          {block(0, 1, 37.9, 0.03), lead(1, 2, 0.01), lead(2, 3, 0.0), lead(3, 4, 0.012)},
          {taking("motor", 4, 0, MotorLaw::power, 1500.0)}};
}

// Ten kilometres of cable, one after the other.
Network long_line() {
  Network line{nodes(52), {block(0, 1, 48.0, 0.02)}, {}};
  for (int k = 1; k < 51; ++k) line.branches.push_back(lead(k, k + 1, 0.2));
  line.loads.push_back(taking("motor", 51, 0, MotorLaw::power, 30.0));
  return line;
}

// Two hundred blocks, fifty strings of four, all a little unlike.
Network many_blocks() {
  Network bank{nodes(3), {lead(1, 2, 0.001)}, {taking("motor", 2, 0, MotorLaw::power, 4000.0)}};
  for (int string = 0; string < 50; ++string) {
    int from = 0;
    for (int k = 0; k < 4; ++k) {
      const bool last = k == 3;
      if (!last) bank.nodes.push_back("node");
      const int to = last ? 1 : static_cast<int>(bank.nodes.size()) - 1;
      bank.branches.push_back(block(from, to, 12.5 + 0.01 * ((7 * string + 3 * k) % 11), 0.01 + 0.001 * (string % 5)));
      from = to;
    }
  }
  return bank;
}

// Typed piece by piece, its copper warm: unlike strings side by side, a ring, conductors side by side, a
// tapped stud, blocks of every state, two hundred of them.
constexpr std::string_view kTyped[] = {
    "lug device 5m:4AWG stud 1m:6AWG plug motor plug 1m:6AWG 5m:4AWG lug",
    "lug device 5m:4AWG [bow] 1m:6AWG plug motor plug 1m:6AWG [back] 5m:4AWG lug; [bow] lug load:30W [back]",
    "lug device 5m:4AWG motor 5m:4AWG lug; [-] block jumper block [+]; [-] block:12.4V:14mohm jumper block:80%:90Ah [+]",
    "lug:0.2mohm device [d] 5m:4AWG [bow] 1m:6AWG:45C motor 1m:6AWG [b] 5m:4AWG lug; [d] 7m:6AWG [e] 1m:6AWG [bow]; "
    "[b] 5m:2AWG lug; [e] load:2A [-]; [e] load:12ohm [b]",
    "lug device [a] 5m:8AWG:4wires [bow] plug motor plug [b] 5m:4AWG lug; 3x [a] 5m:10AWG:4wires [bow]",
    "lug device 5m:25mm2:50C motor 5m:25mm2 lug; 50x [-] block:x4:6.3V [+]",
    "lug device 20ft:1/0AWG motor 20ft:1/0AWG; [-] block jumper [m] block [+]; [-] block:60% [m]; [m] block:90% [+]"};

void add_typed(std::vector<Network>& all) {
  Design design = evaluate(ready_jobs().front().job, default_catalogue());
  for (const std::string_view text : kTyped) {
    design.job.feeder.network = {std::string(text), Origin::given};
    for (const MotorLaw law : {MotorLaw::power, MotorLaw::current, MotorLaw::resistance}) {
      const FeederCircuit circuit = feeder_circuit(design, default_catalogue(), {.law = law});
      if (!circuit.typed || !circuit.solution.solved) {
        std::fprintf(stderr, "not solved: %s\n", circuit.solution.message.c_str());
        std::exit(1);
      }
      all.push_back(circuit.network);
    }
  }
}

std::vector<Network> circuits() {
  std::vector<Network> all{string_of(MotorLaw::power, 1200.0), string_of(MotorLaw::current, 42.0),
                           string_of(MotorLaw::resistance, 0.9), parallel_strings(), ring(), with_wire(),
                           long_line(), many_blocks()};
  for (const ReadyJob& ready : ready_jobs()) {
    const Design design = evaluate(ready.job, default_catalogue());
    for (const MotorLaw law : {MotorLaw::power, MotorLaw::current, MotorLaw::resistance}) {
      all.push_back(feeder_circuit(design, default_catalogue(), {.law = law}).network);
    }
  }
  add_typed(all);
  return all;
}

void print_time() {
  const Network usual = circuits()[8];
  double best_us = 1e9;
  double sum_V = 0.0;
  for (int run = 0; run < 20; ++run) {
    const std::clock_t from = std::clock();
    for (int k = 0; k < 1000; ++k) sum_V += solve_network(usual).load_V.front();
    best_us = std::min(best_us, 1e3 * static_cast<double>(std::clock() - from) / CLOCKS_PER_SEC);
  }
  std::printf("%.3f %zu\n", best_us, sum_V > 0.0 ? usual.nodes.size() : 0);
}

}  // namespace

int main(int argc, char** argv) {
  const std::string_view what = argc > 1 ? argv[1] : "";
  if (what == "time") {
    print_time();
    return 0;
  }
  const std::vector<Network> all = circuits();
  if (what == "count") {
    std::printf("%zu\n", all.size());
    return 0;
  }
  const auto which = static_cast<std::size_t>(argc > 2 ? std::atoi(argv[2]) : 0);
  if (which >= all.size()) return 2;
  if (what == "deck") {
    std::fputs(spice_deck(all[which]).c_str(), stdout);
    return 0;
  }
  const NetworkSolution solution = solve_network(all[which]);
  if (!solution.solved) {
    std::fprintf(stderr, "%s\n", solution.message.c_str());
    return 1;
  }
  for (std::size_t k = 1; k < solution.node_V.size(); ++k) std::printf("%.17g\n", solution.node_V[k]);
  for (const double current_A : solution.branch_A) std::printf("%.17g\n", current_A);
  return 0;
}
