// Days of unlike blocks under bursts, for another program to repeat: bank_test.py.
//
// usage: thole_bank_cases CASE     lines of time, current, bank volts, current of each string, charge
//                                  of each block; then "open" and "end" lines
//        CASE: pair      two blocks in series
//              string    four blocks in series, of other sizes, ages and charge
//              parallel  two strings, one of them flat in the morning: charge crosses over at rest
//              lithium   two lithium strings, the smaller opens when a block of it is empty, the other
//                        then under the bursts
//        thole_bank_cases time     milliseconds of processor time for 24 h of 1 s steps: two blocks
//                                  in series; two unlike strings of three

#include <cstdio>
#include <ctime>
#include <string_view>

#include "calc/bank/day_run.h"

namespace {

using namespace thole;

RunBlock agm(double capacity_Ah, double resistance_ohm, BlockCondition condition = {},
             double age_factor = 1.0) {
  return {.block = {.chemistry = Chemistry::agm,
                    .nominal_V = 12.0,
                    .capacity_Ah = capacity_Ah,
                    .rated_hours_h = 20.0,
                    .resistance_ohm = resistance_ohm},
          .age_factor = age_factor,
          .condition = condition};
}

RunBlock lithium(double capacity_Ah, double continuous_A, double charge_frac) {
  return {.block = {.chemistry = Chemistry::lifepo4,
                    .nominal_V = 12.8,
                    .capacity_Ah = capacity_Ah,
                    .rated_hours_h = 20.0,
                    .resistance_ohm = 0.005,
                    .continuous_A = continuous_A},
          .condition = {.charge_frac = charge_frac}};
}

BankRunInput pair() {
  return {.strings = {{.blocks = {agm(100.0, 0.004),
                                  agm(100.0, 0.004,
                                      {.capacity_frac = 0.8, .charge_frac = 0.9,
                                       .resistance_factor = 1.5})}}},
          .feeder_ohm = 0.006};
}

BankRunInput unlike_string() {
  return {.strings = {{.blocks = {agm(105.0, 0.0038), agm(105.0, 0.0038, {}, 1.1),
                                  agm(80.0, 0.005, {.charge_frac = 0.95}, 1.25),
                                  agm(120.0, 0.0035, {.resistance_factor = 2.0})}}},
          .feeder_ohm = 0.009};
}

BankRunInput parallel() {
  return {.strings = {{.blocks = {agm(100.0, 0.004), agm(90.0, 0.0045, {}, 1.1)}},
                      {.blocks = {agm(70.0, 0.006, {.charge_frac = 0.6}),
                                  agm(75.0, 0.0055, {.charge_frac = 0.65})}}},
          .feeder_ohm = 0.006};
}

BankRunInput lithium_strings() {
  return {.strings = {{.blocks = {lithium(100.0, 40.0, 0.9), lithium(100.0, 40.0, 1.0)}},
                      {.blocks = {lithium(50.0, 40.0, 1.0), lithium(60.0, 45.0, 1.0)}}},
          .feeder_ohm = 0.006};
}

// 12 s in a minute at `burst_W`, else `rest_W`.
std::vector<PowerStep> day(int hours, double burst_W, double rest_W) {
  std::vector<PowerStep> steps;
  for (int i = 0; i < hours * 3600; ++i) steps.push_back({i % 60 < 12 ? burst_W : rest_W, 1.0});
  return steps;
}

struct Case {
  std::string_view name{};
  BankRunInput (*bank)() = nullptr;
  double burst_W = 0.0;
  double rest_W = 0.0;
};
constexpr Case kCases[] = {{"pair", pair, 900.0, 60.0},
                           {"string", unlike_string, 1800.0, 120.0},
                           {"parallel", parallel, 1200.0, 0.0},
                           {"lithium", lithium_strings, 1100.0, 400.0}};

void print(const Case& it) {
  const BankRunResult run = run_bank(it.bank(), day(12, it.burst_W, it.rest_W), 600.0);
  for (const BankMoment& at : run.moments) {
    std::printf("%.17g %.17g %.17g", at.time_h, at.current_A, at.bank_V);
    for (const double value : at.string_A) std::printf(" %.17g", value);
    for (const double value : at.block_charge_frac) std::printf(" %.17g", value);
    std::printf("\n");
  }
  for (const StringOpening& at : run.openings) {
    std::printf("open %.17g %d\n", at.time_h, static_cast<int>(at.place.string));
  }
  std::printf("balance %.17g %.17g\n", run.rest_Wh,
              run.load_Wh + run.feeder_loss_Wh + run.block_loss_Wh);
  std::printf("end %.17g %d %d\n", run.cut_off_h, static_cast<int>(run.cut_off_block.string),
              static_cast<int>(run.cut_off_block.block));
}

void print_time(const BankRunInput& bank) {
  const std::vector<PowerStep> steps = day(24, 60.0, 20.0);
  const std::clock_t start = std::clock();
  constexpr int kRuns_count = 5;
  double sum = 0.0;
  for (int i = 0; i < kRuns_count; ++i) sum += run_bank(bank, steps, 3600.0).charge_Ah;
  std::printf("%.6f %.6f\n",
              1e3 * static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC / kRuns_count,
              sum / kRuns_count);
}

BankRunInput six_unlike() {
  return {.strings = {{.blocks = {agm(105.0, 0.0038), agm(105.0, 0.0038, {}, 1.1), agm(100.0, 0.004)}},
                      {.blocks = {agm(80.0, 0.005), agm(80.0, 0.005), agm(90.0, 0.0045, {}, 1.2)}}},
          .feeder_ohm = 0.006};
}

}  // namespace

int main(int count, char** words) {
  const std::string_view what = count > 1 ? words[1] : "";
  if (what == "time") {
    print_time(pair());
    print_time(six_unlike());
    return 0;
  }
  for (const Case& it : kCases) {
    if (it.name != what) continue;
    print(it);
    return 0;
  }
  return 2;
}
