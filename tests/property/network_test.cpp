// Circuits: what must hold for every one of them, and what cannot be solved.

#include <doctest/doctest.h>

#include <cmath>
#include <numeric>
#include <random>
#include <string>
#include <utility>

#include "calc/feeder_circuit.h"
#include "io/presets.h"
#include "support.h"

using namespace thole;

namespace {

double sum(const std::vector<double>& values) {
  return std::accumulate(values.begin(), values.end(), 0.0);
}

NetworkLoad taking(std::string label, int positive, int negative, MotorLaw law, double amount) {
  NetworkLoad load{.label = std::move(label), .positive = positive, .negative = negative};
  (law == MotorLaw::power ? load.power_W : law == MotorLaw::current ? load.current_A : load.resistance_ohm) = amount;
  return load;
}

// A ladder of random leads over one bank.
Network random_ladder(unsigned seed) {
  std::mt19937 chance(seed);
  const auto ohm = [&] { return 0.001 + 0.02 * static_cast<double>(chance() % 1000) / 1000.0; };
  Network network{{"0", "1"}, {{"bank", 0, 1, 25.0, ohm()}}, {}};
  for (int k = 2; k < 12; ++k) {
    network.nodes.push_back(std::to_string(k));
    network.branches.push_back({"lead " + std::to_string(k), k - 1, k, 0.0, ohm()});
    if (k % 3 == 0) network.branches.push_back({"link", k, static_cast<int>(chance() % 2), 0.0, 40.0});
  }
  network.loads.push_back(taking("motor", 11, 0, MotorLaw::power, 300.0));
  network.loads.push_back(taking("lamp", 6, 0, MotorLaw::resistance, 12.0));
  return network;
}

std::string refusal(const Network& network) {
  const NetworkSolution solution = solve_network(network);
  CHECK_FALSE(solution.solved);
  CHECK(solution.message.ends_with("."));
  return solution.message;
}

Network line(double lead_ohm, MotorLaw law, double amount) {
  return {{"0", "post", "plug"},
          {{"bank", 0, 1, 24.0, 0.02}, {"run", 1, 2, 0.0, lead_ohm}},
          {taking("motor", 2, 0, law, amount)}};
}

}  // namespace

TEST_SUITE("property") {
  TEST_CASE("network: what the blocks give is what the loads take and the branches lose") {
    for (unsigned seed = 1; seed <= 200; ++seed) {
      const NetworkSolution s = solve_network(random_ladder(seed));
      CAPTURE(seed);
      REQUIRE(s.solved);
      double taken_W = 0.0;
      for (std::size_t k = 0; k < s.load_V.size(); ++k) taken_W += s.load_V[k] * s.load_A[k];
      CHECK(s.source_W == rel(taken_W + sum(s.branch_W), 1e-9));
    }
  }

  TEST_CASE("network: at every node as much flows in as out") {
    for (unsigned seed = 1; seed <= 50; ++seed) {
      const Network network = random_ladder(seed);
      const NetworkSolution s = solve_network(network);
      std::vector<double> in_A(network.nodes.size(), 0.0);
      for (std::size_t k = 0; k < network.branches.size(); ++k) {
        in_A[static_cast<std::size_t>(network.branches[k].to)] += s.branch_A[k];
        in_A[static_cast<std::size_t>(network.branches[k].from)] -= s.branch_A[k];
      }
      for (std::size_t k = 0; k < network.loads.size(); ++k) {
        in_A[static_cast<std::size_t>(network.loads[k].positive)] -= s.load_A[k];
        in_A[static_cast<std::size_t>(network.loads[k].negative)] += s.load_A[k];
      }
      for (const double left_A : in_A) CHECK(std::abs(left_A) < 1e-9);
    }
  }

  TEST_CASE("network: half the length, half the drop at the same current") {
    const auto drop_V = [](double ohm) {
      const NetworkSolution s = solve_network(line(ohm, MotorLaw::current, 40.0));
      return s.node_V[1] - s.node_V[2];
    };
    CHECK(drop_V(0.02) == rel(2.0 * drop_V(0.01), 1e-12));
  }

  TEST_CASE("network: a block more in parallel never lowers a node") {
    for (double power_W = 0.0; power_W <= 1400.0; power_W += 200.0) {
      Network one = line(0.03, MotorLaw::power, power_W);
      Network two = one;
      two.branches.push_back({"bank 2", 0, 1, 24.0, 0.05});
      const NetworkSolution a = solve_network(one);
      const NetworkSolution b = solve_network(two);
      for (std::size_t k = 0; k < a.node_V.size(); ++k) CHECK(b.node_V[k] >= a.node_V[k] - 1e-12);
    }
  }

  TEST_CASE("network: the motor of constant power is met on the side of high volts, by the closed formula") {
    for (const double power_W : {1.0, 500.0, 1500.0, 2870.0}) {
      const NetworkSolution s = solve_network(line(0.03, MotorLaw::power, power_W));
      REQUIRE(s.solved);
      const double expected_V = 0.5 * (24.0 + std::sqrt(24.0 * 24.0 - 4.0 * 0.05 * power_W));
      CHECK(s.load_V.front() == rel(expected_V, 1e-9));
      CHECK(s.limit_W == rel(24.0 * 24.0 / (4.0 * 0.05), 1e-12));
    }
  }

  TEST_CASE("network: what cannot be solved says which part") {
    CHECK(refusal(line(0.03, MotorLaw::power, 2881.0)).find("\"run\" limits it most") != std::string::npos);
    CHECK(refusal(line(0.001, MotorLaw::power, 9000.0)).find("\"bank\" limits it most") != std::string::npos);
    Network open = line(0.03, MotorLaw::power, 500.0);
    open.branches.pop_back();
    CHECK(refusal(open).find("\"plug\" is connected to nothing") != std::string::npos);
    Network wrong = line(-1.0, MotorLaw::power, 500.0);
    CHECK(refusal(wrong).find("\"run\": a resistance") != std::string::npos);
    wrong = line(std::nan(""), MotorLaw::power, 500.0);
    refusal(wrong);
    wrong = line(0.03, MotorLaw::power, -5.0);
    CHECK(refusal(wrong).find("\"motor\"") != std::string::npos);
    wrong = line(0.03, MotorLaw::power, 500.0);
    wrong.branches.front().resistance_ohm = 0.0;
    CHECK(refusal(wrong).find("a block has a resistance") != std::string::npos);
    wrong = line(0.03, MotorLaw::power, 500.0);
    wrong.branches.back().to = 7;
    CHECK(refusal(wrong).find("not there") != std::string::npos);
    refusal({});
    Network huge = line(0.03, MotorLaw::power, 500.0);
    huge.nodes.resize(kMostNodes + 1);
    CHECK(refusal(huge).find("600") != std::string::npos);
  }

  TEST_CASE("network: no load is driven below 0 V, and who is at fault is said") {
    // 24 V over 0.05 ohm: 480 A into a short circuit.
    const NetworkSolution just = solve_network(line(0.03, MotorLaw::current, 479.0));
    REQUIRE(just.solved);
    CHECK(just.load_V.front() == rel(0.05, 1e-9));
    CHECK(refusal(line(0.03, MotorLaw::current, 481.0)).find("480 A at most") != std::string::npos);

    Network reversed = line(0.03, MotorLaw::power, 500.0);
    std::swap(reversed.loads.front().positive, reversed.loads.front().negative);
    CHECK(refusal(reversed).find("poles are changed over") != std::string::npos);

    Network two = line(0.03, MotorLaw::power, 1000.0);
    two.loads.push_back(taking("windlass", 1, 0, MotorLaw::power, 9000.0));
    CHECK(refusal(two).find("The loads together") != std::string::npos);

    for (const double ohm : {1e-320, 1e-300, 1e300}) {
      Network odd = line(ohm, MotorLaw::power, 500.0);
      CHECK(refusal(odd).find("\"run\": a resistance") != std::string::npos);
      odd.loads.clear();
      CHECK(refusal(odd).find("\"run\": a resistance") != std::string::npos);
    }
    Network lightning = line(0.03, MotorLaw::power, 500.0);
    lightning.branches.front().open_circuit_V = 1e308;
    CHECK(refusal(lightning).find("\"bank\": open-circuit volts") != std::string::npos);
  }

  TEST_CASE("network: a lead of no length is one node, a run of ten kilometres is solved or refused") {
    const NetworkSolution none = solve_network(line(0.0, MotorLaw::power, 500.0));
    REQUIRE(none.solved);
    CHECK(none.node_V[1] == none.node_V[2]);
    CHECK(none.branch_A[1] == rel(none.load_A.front(), 1e-9));
    refusal(line(10.0, MotorLaw::power, 500.0));
    const NetworkSolution trickle = solve_network(line(10.0, MotorLaw::power, 5.0));
    REQUIRE(trickle.solved);
    CHECK(std::isfinite(trickle.load_V.front()));
  }

  TEST_CASE("network: the feeder of every ready-made job has the volts that its stage found") {
    for (const ReadyJob& ready : ready_jobs()) {
      CAPTURE(ready.id);
      const Design design = evaluate(ready.job, default_catalogue());
      const FeederCircuit circuit = feeder_circuit(design, default_catalogue());
      const NetworkSolution s = solve_network(circuit.network);
      REQUIRE(s.solved);
      // The stage has jumpers as hot as the whole current makes them, the circuit by their strings' own.
      const double tolerance = design.bank.parallel_count > 1 ? 1e-4 : 1e-7;
      CHECK(s.load_A.front() == rel(design.feeder.current_A, tolerance));
      CHECK(s.load_V.front() == rel(design.feeder.motor_V, tolerance));
      CHECK(circuit.network.branches.size() >=
            design.feeder.segments.size() + static_cast<std::size_t>(design.bank.block_count));
    }
  }
}
