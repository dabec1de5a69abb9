// How long an hour of holding takes at 20 steps a second: for each ready-made job the quickest of a
// few runs in processor time, then the slowest of the jobs, beside the limit that it is meant to
// keep; and the same for the rose, 72 angles.
//
// usage: thole_hold_bench LIMIT_ms ROSE_LIMIT_ms

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <ctime>

#include "calc/design.h"
#include "calc/hold/rose.h"
#include "calc/studies.h"
#include "io/presets.h"

namespace {

constexpr int kRuns = 5;

template <class Work>
double quickest_ms(Work work) {
  double best_ms = 1e9;
  for (int run = 0; run < kRuns; ++run) {
    const std::clock_t from = std::clock();
    work();
    best_ms = std::min(best_ms, 1e3 * static_cast<double>(std::clock() - from) / CLOCKS_PER_SEC);
  }
  return best_ms;
}

}  // namespace

int main(int argc, char** argv) {
  const double limit_ms = argc > 1 ? std::atof(argv[1]) : 60.0;
  const double rose_limit_ms = argc > 2 ? std::atof(argv[2]) : 10.0;
  double slowest_ms = 0.0;
  double slowest_rose_ms = 0.0;
  for (const thole::ReadyJob& ready : thole::ready_jobs()) {
    const thole::Design design = thole::evaluate(ready.job, thole::default_catalogue());
    thole::HoldRunInput input = thole::hold_run_input(design);
    input.settle_s = 0.0;
    const double hour_ms = quickest_ms([&] { thole::simulate_hold(input); });
    const double rose_ms =
        quickest_ms([&] { thole::rose(thole::hold_input(design), design.hold.motor); });
    slowest_ms = std::max(slowest_ms, hour_ms);
    slowest_rose_ms = std::max(slowest_rose_ms, rose_ms);
    std::printf("  %-32s %.1f ms, rose %.1f ms\n", ready.id.c_str(), hour_ms, rose_ms);
  }
  std::printf("hour of holding: slowest %.1f ms, limit %.0f ms; rose: slowest %.1f ms, limit %.0f ms\n",
              slowest_ms, limit_ms, slowest_rose_ms, rose_limit_ms);
  return 0;
}
