#pragma once

// Which bank: what each combination of blocks comes to, and the one that ranks first. Of this stage
// alone.

#include <array>

#include "calc/bank/bank.h"
#include "calc/bank/capacity.h"
#include "calc/bank/kinetic.h"
#include "calc/circuit.h"

namespace thole {

inline constexpr double kLeastPower_W = 1.0;   // a receiver that listens; keeps hours finite
inline constexpr double kBurst_h = 1.0 / 6.0;  // kProjectDecision: time to get clear of danger

// A part of the day at a steady current.
struct DayLeg {
  double time_h = 0.0;
  double current_A = 0.0;
};

// Everything that one combination of block, series and parallel comes to. Terms such as "mean",
// "full" and "peak": the mean load at half of the allowed depth; full thrust at half of it; full
// thrust at the end of it.
struct BankFigures {
  const BatteryBlock* block = nullptr;
  int series_count = 0;
  int parallel_count = 0;
  double named_V = 0.0;
  double nominal_V = 0.0;
  double twelves_count = 0.0;  // 12 V blocks that the string comes to
  Rating label{};              // of the bank
  double exponent = 1.0;
  double cold_factor = 1.0;
  double middle_frac = 0.0;  // charge left at half of the allowed depth
  double end_frac = 0.0;     // at the whole of it
  double open_full_V = 0.0;
  double open_middle_V = 0.0;
  double open_end_V = 0.0;
  double block_ohm = 0.0;
  double full_ohm = 0.0;
  double middle_ohm = 0.0;
  double end_ohm = 0.0;
  double mean_W = 0.0;  // at the bank's posts, as are the next two
  double full_W = 0.0;
  double day_Wh = 0.0;
  OperatingPoint mean{};
  OperatingPoint full{};
  OperatingPoint peak{};
  double used_Ah = 0.0;
  double needed_Ah = 0.0;
  double required_Ah = 0.0;
  double load_Ah = 0.0;
  double load_full_Ah = 0.0;
  double usable_Ah = 0.0;
  double depth_used_frac = 0.0;
  std::array<DayLeg, 3> legs{};  // out, hold, home
  KineticModel model{};       // aged and cold
  KineticState evening{};
  double burst_A = 0.0;
  double cell_charge_V = 0.0;
  double charge_V = 0.0;
  double cold_limit_C = 0.0;
};

// The checks, in the order in which they are shown.
enum BankDemand {
  kEnergy,
  kLastBurst,
  kPeak,
  kSag,
  kVoltage,
  kChargeVoltage,
  kSeries,
  kTemperature,
  kDisconnect,
  kDemands
};

// Demands and limits alone, without words: the search asks for them often.
std::array<Check, kDemands> bank_demands(const BankInput& in, const BankFigures& f);

// Two ratings on one label say more than the chemistry does.
bool reserve_tells_exponent(const BatteryBlock& block);

// The combination that ranks first; its block is null when nothing is on offer.
BankFigures choose_bank(const BankInput& in);

}  // namespace thole
