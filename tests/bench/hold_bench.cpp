// How long an hour of holding takes at 20 steps a second: for each ready-made job the quickest of a
// few runs in processor time, then the slowest of the jobs, beside the limit that it is meant to
// keep.
//
// usage: thole_hold_bench LIMIT_ms

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <ctime>

#include "calc/design.h"
#include "calc/hold/simulate.h"
#include "io/presets.h"

namespace {

constexpr int kRuns = 5;

double hour_ms(const thole::HoldRunInput& input) {
  double best_ms = 1e9;
  for (int run = 0; run < kRuns; ++run) {
    const std::clock_t from = std::clock();
    thole::simulate_hold(input);
    best_ms = std::min(best_ms, 1e3 * static_cast<double>(std::clock() - from) / CLOCKS_PER_SEC);
  }
  return best_ms;
}

}  // namespace

int main(int argc, char** argv) {
  const double limit_ms = argc > 1 ? std::atof(argv[1]) : 60.0;
  double slowest_ms = 0.0;
  for (const thole::ReadyJob& ready : thole::ready_jobs()) {
    const thole::Design design = thole::evaluate(ready.job, thole::default_catalogue());
    thole::HoldRunInput input = thole::run_input(thole::hold_input(design), design.hold, false);
    input.settle_s = 0.0;
    const double took_ms = hour_ms(input);
    slowest_ms = std::max(slowest_ms, took_ms);
    std::printf("  %-32s %.1f ms\n", ready.id.c_str(), took_ms);
  }
  std::printf("hour of holding: slowest %.1f ms, limit %.0f ms\n", slowest_ms, limit_ms);
  return 0;
}
