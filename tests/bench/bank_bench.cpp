// How long a day of the bank takes, 24 h at 1 s steps: three blocks in series, and two unlike strings of
// three. The quickest of a few runs in processor time, beside the limit that it is meant to keep.
//
// usage: thole_bank_bench LIMIT_ms

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <ctime>

#include "calc/bank/day_run.h"

namespace {

using namespace thole;

constexpr int kRuns = 7;

BatteryBlock block(double capacity_Ah) {
  return {.capacity_Ah = capacity_Ah, .resistance_ohm = 0.4 / capacity_Ah};
}

double day_ms(const BankRunInput& bank) {
  std::vector<PowerStep> steps;
  for (int i = 0; i < 24 * 3600; ++i) steps.push_back({i % 60 < 12 ? 90.0 : 30.0, 1.0});
  double best_ms = 1e9;
  for (int run = 0; run < kRuns; ++run) {
    const std::clock_t from = std::clock();
    const BankRunResult result = run_bank(bank, steps, 3600.0);
    best_ms = std::min(best_ms, 1e3 * static_cast<double>(std::clock() - from) / CLOCKS_PER_SEC);
    if (!(result.cut_off_h > 23.9)) return -1.0;  // it did not run the day
  }
  return best_ms;
}

}  // namespace

int main(int argc, char** argv) {
  const double limit_ms = argc > 1 ? std::atof(argv[1]) : 20.0;
  const BankRunInput alike{.strings = {alike_string(block(100.0), 3, 1, 1.0)}, .feeder_ohm = 0.006};
  BankRunInput unlike = alike;
  unlike.strings[0].blocks[1].age_factor = 1.2;
  unlike.strings.push_back(alike_string(block(80.0), 3, 1, 1.1));
  unlike.strings[1].blocks[2].condition.charge_frac = 0.9;
  std::printf("day of the bank at 1 s: %.1f ms, two unlike strings of three %.1f ms, limit %.0f ms\n",
              day_ms(alike), day_ms(unlike), limit_ms);
  return 0;
}
