// How long evaluate() takes: for each ready-made job the quickest of several runs (what the machine
// did besides is not ours), then the median over the jobs, beside the limit that it is meant to
// keep.
//
// usage: thole_bench LIMIT_ms

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <vector>

#include "calc/design.h"
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
  return 0;
}
