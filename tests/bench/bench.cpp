// How long evaluate() takes: for each ready-made job the quickest of several runs (what the machine
// did besides is not ours), then the median over the jobs, beside the limit that it is meant to
// keep.
//
// Then how long the feeder takes as a circuit: one solve, and with its copper warming to rest.
//
// usage: thole_bench LIMIT_ms

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <vector>

#include "calc/design.h"
#include "calc/feeder_circuit.h"
#include "io/presets.h"

namespace {

constexpr int kRuns = 15;

double evaluate_ms(const thole::Job& job, const thole::Catalogue& catalogue) {
  using Clock = std::chrono::steady_clock;
  double best_ms = 1e9;
  for (int run = 0; run < kRuns; ++run) {
    const Clock::time_point from = Clock::now();
    thole::evaluate(job, catalogue);
    const std::chrono::duration<double, std::milli> took = Clock::now() - from;
    best_ms = std::min(best_ms, took.count());
  }
  return best_ms;
}

// Microseconds of one call, the best of several runs of a thousand.
template <class Call>
double best_us(Call call) {
  using Clock = std::chrono::steady_clock;
  double best = 1e9;
  for (int run = 0; run < kRuns; ++run) {
    const Clock::time_point from = Clock::now();
    for (int k = 0; k < 1000; ++k) call();
    const std::chrono::duration<double, std::milli> took = Clock::now() - from;
    best = std::min(best, took.count());
  }
  return best;
}

void print_feeder(const thole::Catalogue& catalogue) {
  thole::Design design = thole::evaluate(thole::ready_jobs().front().job, catalogue);
  const thole::Network usual = thole::feeder_circuit(design, catalogue).network;
  std::printf("feeder: one solve, %zu nodes, %.1f us, limit 20.0 us\n", usual.nodes.size(),
              best_us([&] { thole::solve_network(usual); }));
  const thole::FeederCircuit circuit = thole::feeder_circuit(design, catalogue);
  std::printf("feeder: built, warmed to rest in %d passes, %.1f us\n", circuit.pass_count,
              best_us([&] { thole::feeder_circuit(design, catalogue); }));
  design.job.feeder.network = {
      "lug device 5m:4AWG [bow] 1m:6AWG plug motor plug 1m:6AWG [back] 5m:4AWG lug; [bow] load:30W [back]; "
      "[-] block jumper block:80% [+]; [-] block jumper block:90Ah [+]",
      thole::Origin::given};
  std::printf("feeder: typed, read and warmed, %.1f us\n",
              best_us([&] { thole::feeder_circuit(design, catalogue); }));
}

}  // namespace

int main(int argc, char** argv) {
  const double limit_ms = argc > 1 ? std::atof(argv[1]) : 1.0;
  const thole::Catalogue& catalogue = thole::default_catalogue();
  std::vector<double> times_ms;
  for (const thole::ReadyJob& ready : thole::ready_jobs()) {
    times_ms.push_back(evaluate_ms(ready.job, catalogue));
    std::printf("  %-32s %.3f ms\n", ready.id.c_str(), times_ms.back());
  }
  if (times_ms.empty()) return 1;
  std::sort(times_ms.begin(), times_ms.end());
  const double median_ms = times_ms[times_ms.size() / 2];
  std::printf("evaluate: median %.3f ms over %zu jobs, limit %.1f ms\n", median_ms, times_ms.size(),
              limit_ms);
  print_feeder(catalogue);
  return 0;
}
