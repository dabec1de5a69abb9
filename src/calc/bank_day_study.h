#pragma once

// The bank's day for a page: hour by hour, hours against wind, what one weak block costs, and what
// an installer must know of it. In slices.

#include <memory>
#include <string>
#include <vector>

#include "calc/power_day.h"

namespace thole {

inline constexpr double kWeakBlock_frac = 0.8;  // IEEE 485: the end of a block's life
inline constexpr int kRuntimeWinds = 9;

struct BankDay {
  bool possible = false;  // a motor, a bank, and a day of some length
  bool unlike = false;    // the blocks are not all alike
  BankRunInput bank{};    // as it was run
  PowerDay day{};
  double hours_h = 0.0;  // until something cuts off, after the day at its mean power
  // With every block as the best of them; when all are alike: with one of them weak instead.
  PowerDay other{};
  double other_h = 0.0;
  BlockPlace weakest{};  // by capacity left
  std::vector<WindRuntime> winds{};
  double day_wind_mps = 0.0;       // strongest of the day
  double limiting_wind_mps = 0.0;  // beyond it the motor no longer holds with its margin
  double minimum_V = 0.0;          // at the plug
  double maximum_V = 0.0;          // of the charged bank at rest
  Trace trace{};                   // checks, cautions and what is assumed
};

// What the weak block takes from the hours; never less than none.
double weak_cost_h(const BankDay& day);

// Why it ends, and which block where one is to blame: "block 2 of string 1 is empty ...".
std::string end_of(const BankRunResult& run, std::size_t strings_count);

// Checks and cautions of a day that was run.
Trace bank_day_trace(const Design& design, const BankDay& day);

// What is asked; the bank, the day and the winds of the design, unless altered.
struct BankDayInput {
  BankRunInput bank{};
  bool unlike = false;
  DayInput day{};
  std::vector<double> winds_mps{};
  double moment_s = 0.0;  // of the curves; 0: as many as can be told apart
};
BankDayInput bank_day_input(const Design& design);

class BankDayStudy {
 public:
  BankDayStudy(const Design& design, const BankDayInput& in);

  // A slice of some milliseconds; false when all is known.
  bool step();
  double done_frac() const;
  const BankDay& result() const { return result_; }

 private:
  void finish();

  Design design_;
  BankDay result_{};
  std::unique_ptr<PowerDayRun> day_{};
  std::unique_ptr<PowerDayRun> other_{};
  std::vector<double> winds_mps_{};
  std::size_t slice_count_ = 1;
  bool done_ = false;
};

// All of it at once.
BankDay bank_day(const Design& design, const BankDayInput& in);

}  // namespace thole
