#include "calc/bank/choice.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "calc/block_volts.h"
#include "calc/ranking.h"
#include "data/batteries.h"

namespace thole {
namespace {

constexpr int kMostStrings_count = 4;         // kProjectDecision: more are hard to keep alike
constexpr int kMostSeries_count = 8;          // as in job/fields.cpp
constexpr double kElectronicsUse_frac = 0.8;  // kCommonPractice: of the limit of a lithium block
constexpr double kLeadRate_frac = 1.0;        // kPeukert: no capacity is known beyond 1 C
constexpr double kNameTolerance_frac = 0.1;   // kCommonPractice: "12 V" covers 12 to 12.8
constexpr double kLithiumCold_C = -20.0;      // kCommonPractice: electronics stop discharge there
constexpr double kFlatGravity_ratio = 1.120;  // kRestFlooded
constexpr double kFullGravity_ratio = 1.265;

double exponent_of(const BankInput& in, const BatteryBlock& block) {
  if (in.peukert_exponent >= 1.0) return in.peukert_exponent;
  if (!reserve_tells_exponent(block)) return facts_of(block.chemistry).peukert_exponent;
  const double exponent =
      peukert_exponent({block.capacity_Ah / block.rated_hours_h, block.rated_hours_h},
                       reserve_discharge(block.reserve_capacity_min));
  return std::clamp(exponent, 1.0, 1.6);
}

// Creeping takes what the day's energy leaves over from holding; half of it before, half after.
std::array<DayLeg, 3> legs_of(const BankInput& in, const BankFigures& f) {
  const double hold_h = std::min(in.holding_h, in.hours_on_h);
  const double creep_h = in.hours_on_h - hold_h;
  const double hold_Ah = creep_h > 0.0 ? std::min(f.used_Ah, f.mean.current_A * hold_h) : f.used_Ah;
  const DayLeg creep{0.5 * creep_h, creep_h > 0.0 ? (f.used_Ah - hold_Ah) / creep_h : 0.0};
  return {creep, DayLeg{hold_h, hold_h > 0.0 ? hold_Ah / hold_h : 0.0}, creep};
}

BankFigures figures_of(const BankInput& in, const BatteryBlock& block, int series_count,
                   int parallel_count) {
  const Chemistry kind = block.chemistry;
  const ChemistryFacts& facts = facts_of(kind);
  const double series = series_count;
  const double parallel = parallel_count;
  BankFigures f{.block = &block, .series_count = series_count, .parallel_count = parallel_count};
  f.named_V = series * named_V(kind, block.nominal_V);
  f.nominal_V = series * block.nominal_V;
  f.twelves_count = f.named_V / 12.0;
  f.label = {parallel * block.capacity_Ah, block.rated_hours_h};
  f.exponent = exponent_of(in, block);
  f.cold_factor = temperature_factor(kind, in.temperature_C);

  f.middle_frac = 1.0 - 0.5 * in.depth_of_discharge_frac;
  f.end_frac = 1.0 - in.depth_of_discharge_frac;
  f.open_full_V = f.twelves_count * rest_V(kind, 1.0);
  f.open_middle_V = f.twelves_count * rest_V(kind, f.middle_frac);
  f.open_end_V = f.twelves_count * rest_V(kind, f.end_frac);
  f.block_ohm = charged_ohm(block);
  f.full_ohm = f.block_ohm * series / parallel;
  const double growth = resistance_growth(kind, in.temperature_C, in.age_factor);
  f.middle_ohm = f.full_ohm * rest_ratio(kind, f.middle_frac) * growth;
  f.end_ohm = f.full_ohm * rest_ratio(kind, f.end_frac) * growth;

  const double arrives_frac = 1.0 - in.feeder_drop_frac;
  f.mean_W = std::max(in.mean_power_W, kLeastPower_W) / arrives_frac;
  f.full_W = std::max(in.full_power_W, kLeastPower_W) / arrives_frac;
  f.day_Wh = in.energy_Wh / arrives_frac;
  f.mean = constant_power(f.open_middle_V, f.middle_ohm, f.mean_W);
  f.full = constant_power(f.open_middle_V, f.middle_ohm, f.full_W);
  f.peak = constant_power(f.open_end_V, f.end_ohm, f.full_W);

  const double allowance_factor = f.cold_factor * in.age_factor;
  f.used_Ah = f.day_Wh / f.mean.load_V;
  f.needed_Ah = f.used_Ah * allowance_factor * in.margin_factor / in.depth_of_discharge_frac;
  f.required_Ah = label_for_Ah(f.needed_Ah, f.label.rated_hours_h, f.exponent, f.mean.current_A);
  f.load_Ah = capacity_at_Ah(f.label, f.exponent, f.mean.current_A);
  f.load_full_Ah = capacity_at_Ah(f.label, f.exponent, f.full.current_A);
  f.usable_Ah = f.load_Ah * in.depth_of_discharge_frac / allowance_factor;
  f.depth_used_frac = std::min(1.0, f.used_Ah / f.label.capacity_Ah);

  f.legs = legs_of(in, f);
  f.model =
      kinetic_model(kind, {block.capacity_Ah, block.rated_hours_h}, block.reserve_capacity_min);
  f.model.capacity_Ah *= parallel / allowance_factor;
  f.evening = full_state(f.model);
  for (const DayLeg& leg : f.legs) f.evening = after(f.model, f.evening, leg.current_A, leg.time_h);
  f.burst_A = std::max(0.0, held_current_A(f.model, f.evening, kBurst_h));

  f.cell_charge_V =
      facts.absorption_cell_V + facts.absorption_slope_V_per_K * (in.temperature_C - 25.0);
  f.charge_V = f.cell_charge_V * series * cell_count(kind, block.nominal_V);
  f.cold_limit_C =
      is_lead(kind)
          ? freezing_C(kFlatGravity_ratio + (kFullGravity_ratio - kFlatGravity_ratio) * f.end_frac)
          : kLithiumCold_C;
  return f;
}

double peak_limit_A(const BankFigures& f) {
  const BatteryBlock& block = *f.block;
  const double electronics_A = block.continuous_A > 0.0
                                   ? kElectronicsUse_frac * block.continuous_A * f.parallel_count
                                   : std::numeric_limits<double>::quiet_NaN();
  if (!is_lead(block.chemistry)) return electronics_A;
  const double rate_A = kLeadRate_frac * f.label.capacity_Ah;
  return block.continuous_A > 0.0 ? std::min(rate_A, electronics_A) : rate_A;
}

// Blocks that one string may have. Lead-acid has no electronics that the string's voltage could
// break; a lithium block whose maker allows no string is used alone.
double series_limit_count(const BankFigures& f) {
  if (f.block->series_max > 0) return f.block->series_max;
  return is_lead(f.block->chemistry) ? kMostSeries_count : 1.0;
}

// Where a block's discharge ends.
double floor_V(const BatteryBlock& block) {
  return facts_of(block.chemistry).floor_cell_V * cell_count(block.chemistry, block.nominal_V);
}

int series_for(const BankInput& in, const BatteryBlock& block) {
  if (in.series_count > 0) return in.series_count;
  const double ratio = in.motor_nominal_V / named_V(block.chemistry, block.nominal_V);
  return std::clamp(static_cast<int>(std::lround(ratio)), 1, kMostSeries_count);
}

}  // namespace

bool reserve_tells_exponent(const BatteryBlock& block) {
  const double label_A = block.capacity_Ah / block.rated_hours_h;
  return is_lead(block.chemistry) && block.reserve_capacity_min > 0.0 &&
         label_A < 0.5 * kReserveCurrent_A;
}

std::array<Check, kDemands> bank_demands(const BankInput& in, const BankFigures& f) {
  std::array<Check, kDemands> demands{};
  const auto at_most = [&](BankDemand which, double actual, double limit) {
    demands[which].actual = actual;
    demands[which].limit = limit;
  };
  const auto at_least = [&](BankDemand which, double actual, double limit) {
    at_most(which, actual, limit);
    demands[which].comparison = Comparison::at_least;
  };
  at_most(kEnergy, f.required_Ah, f.label.capacity_Ah);
  at_least(kLastBurst, f.burst_A, f.peak.current_A);
  at_most(kPeak, f.peak.current_A, peak_limit_A(f));
  at_least(kSag, f.peak.load_V, in.motor_minimum_V / (1.0 - in.feeder_drop_frac));
  at_most(kVoltage, std::abs(f.named_V - in.motor_nominal_V),
          kNameTolerance_frac * in.motor_nominal_V);
  at_most(kChargeVoltage, f.charge_V, in.motor_maximum_V);
  at_most(kSeries, std::max(0.0, f.series_count - series_limit_count(f)), 0.0);
  at_most(kTemperature, std::max(0.0, f.cold_limit_C - in.temperature_C), 0.0);
  // Lead-acid has nothing that disconnects.
  const bool lead = is_lead(f.block->chemistry);
  at_least(kDisconnect, f.peak.load_V / f.series_count, lead ? 0.0 : floor_V(*f.block));
  return demands;
}

BankFigures choose_bank(const BankInput& in) {
  BankFigures best{};
  Rank best_rank{};
  const int first = in.parallel_count > 0 ? in.parallel_count : 1;
  const int last = in.parallel_count > 0 ? in.parallel_count : kMostStrings_count;
  for (std::size_t i = 0; i < in.blocks.size(); ++i) {
    const BatteryBlock& block = in.blocks[i];
    if (!(block.capacity_Ah > 0.0 && block.rated_hours_h > 0.0 && block.nominal_V > 0.0)) continue;
    const int series = series_for(in, block);
    for (int parallel = first; parallel <= last; ++parallel) {
      if (i < in.room_counts.size() && series * parallel > in.room_counts[i]) break;
      const BankFigures f = figures_of(in, block, series, parallel);
      const double blocks = series * parallel;
      const Rank rank{shortfall_ratio(bank_demands(in, f)), blocks * block.mass_kg,
                      blocks * block.price};
      if (best.block == nullptr || rank < best_rank) {
        best = f;
        best_rank = rank;
      }
    }
  }
  return best;
}

}  // namespace thole
