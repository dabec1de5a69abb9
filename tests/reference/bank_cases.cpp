// A day of two unlike blocks in series under bursts, for another program to repeat: bank_test.py.
//
// usage: thole_bank_cases run    lines of time, current, bank volts, charge of either block
//        thole_bank_cases time   milliseconds of processor time for 24 h of 1 s steps

#include <cstdio>
#include <ctime>
#include <string_view>

#include "calc/bank/day_run.h"

namespace {

using namespace thole;

BankRunInput bank() {
  return {.block = {.chemistry = Chemistry::agm,
                    .nominal_V = 12.0,
                    .capacity_Ah = 100.0,
                    .rated_hours_h = 20.0,
                    .resistance_ohm = 0.004},
          .conditions = {{}, {.capacity_frac = 0.8, .charge_frac = 0.9, .resistance_factor = 1.5}},
          .feeder_ohm = 0.006};
}

// 12 s in a minute at `burst_W`, else `rest_W`.
std::vector<PowerStep> day(int hours, double burst_W, double rest_W) {
  std::vector<PowerStep> steps;
  for (int i = 0; i < hours * 3600; ++i) steps.push_back({i % 60 < 12 ? burst_W : rest_W, 1.0});
  return steps;
}

}  // namespace

int main(int count, char** words) {
  const std::string_view what = count > 1 ? words[1] : "run";
  if (what == "time") {
    const std::vector<PowerStep> steps = day(24, 60.0, 20.0);
    const std::clock_t start = std::clock();
    constexpr int kRuns_count = 5;
    double sum = 0.0;
    for (int i = 0; i < kRuns_count; ++i) sum += run_bank(bank(), steps, 3600.0).charge_Ah;
    std::printf("%.6f %.6f\n",
                1e3 * static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC / kRuns_count,
                sum / kRuns_count);
    return 0;
  }
  const BankRunResult run = run_bank(bank(), day(12, 900.0, 60.0), 600.0);
  for (const BankMoment& at : run.moments) {
    std::printf("%.17g %.17g %.17g %.17g %.17g\n", at.time_h, at.current_A, at.bank_V,
                at.block_charge_frac[0], at.block_charge_frac[1]);
  }
  std::printf("end %.17g %d\n", run.cut_off_h, static_cast<int>(run.cut_off_block));
  return 0;
}
