#include "calc/bank/bank.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <string>
#include <utility>

#include "base/number.h"
#include "base/units.h"
#include "calc/block_volts.h"
#include "calc/bank/capacity.h"
#include "calc/bank/kinetic.h"
#include "calc/bank/thresholds.h"
#include "calc/circuit.h"
#include "calc/ranking.h"
#include "data/batteries.h"
#include "data/sources.h"
#include "data/sources_battery.h"

namespace thole {
namespace {

constexpr int kMostStrings_count = 4;         // kProjectDecision: more are hard to keep alike
constexpr int kMostSeries_count = 8;          // as in job/fields.cpp
constexpr double kLeastPower_W = 1.0;         // a receiver that listens; keeps hours finite
constexpr double kLongest_h = 10000.0;        // "for ever"
constexpr double kBurst_h = 1.0 / 6.0;        // kProjectDecision: time to get clear of danger
constexpr double kElectronicsUse_frac = 0.8;  // kCommonPractice: of the limit of a lithium block
constexpr double kLeadRate_frac = 1.0;        // kPeukert: no capacity is known beyond 1 C
constexpr double kNameTolerance_frac = 0.1;   // kCommonPractice: "12 V" covers 12 to 12.8
constexpr double kLithiumCold_C = -20.0;   // kCommonPractice: electronics stop discharge there
constexpr double kFlatGravity_ratio = 1.120;  // kRestFlooded
constexpr double kFullGravity_ratio = 1.265;
constexpr double kLeastDepth_frac = 0.02;    // below it no cycle life is known

// A part of the day at a steady current.
struct Leg {
  double time_h = 0.0;
  double current_A = 0.0;
};

// Everything that one combination of block, series and parallel comes to. Terms such as "mean",
// "full" and "peak": the mean load at half of the allowed depth; full thrust at half of it; full
// thrust at the end of it.
struct Figures {
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
  std::array<Leg, 3> legs{};  // out, hold, home
  KineticModel model{};       // aged and cold
  KineticState evening{};
  double burst_A = 0.0;
  double cell_charge_V = 0.0;
  double charge_V = 0.0;
  double cold_limit_C = 0.0;
};

// Two ratings on one label say more than the chemistry does.
bool reserve_tells_exponent(const BatteryBlock& block) {
  const double label_A = block.capacity_Ah / block.rated_hours_h;
  return is_lead(block.chemistry) && block.reserve_capacity_min > 0.0 &&
         label_A < 0.5 * kReserveCurrent_A;
}

double exponent_of(const BankInput& in, const BatteryBlock& block) {
  if (in.peukert_exponent >= 1.0) return in.peukert_exponent;
  if (!reserve_tells_exponent(block)) return facts_of(block.chemistry).peukert_exponent;
  const double exponent =
      peukert_exponent({block.capacity_Ah / block.rated_hours_h, block.rated_hours_h},
                       reserve_discharge(block.reserve_capacity_min));
  return std::clamp(exponent, 1.0, 1.6);
}

// Creeping takes what the day's energy leaves over from holding; half of it before, half after.
std::array<Leg, 3> legs_of(const BankInput& in, const Figures& f) {
  const double hold_h = std::min(in.holding_h, in.hours_on_h);
  const double creep_h = in.hours_on_h - hold_h;
  const double hold_Ah = creep_h > 0.0 ? std::min(f.used_Ah, f.mean.current_A * hold_h) : f.used_Ah;
  const Leg creep{0.5 * creep_h, creep_h > 0.0 ? (f.used_Ah - hold_Ah) / creep_h : 0.0};
  return {creep, Leg{hold_h, hold_h > 0.0 ? hold_Ah / hold_h : 0.0}, creep};
}

Figures figures_of(const BankInput& in, const BatteryBlock& block, int series_count,
                   int parallel_count) {
  const Chemistry kind = block.chemistry;
  const ChemistryFacts& facts = facts_of(kind);
  const double series = series_count;
  const double parallel = parallel_count;
  Figures f{.block = &block, .series_count = series_count, .parallel_count = parallel_count};
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
  for (const Leg& leg : f.legs) f.evening = after(f.model, f.evening, leg.current_A, leg.time_h);
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

// The checks, in the order in which they are shown.
enum Demand {
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

double peak_limit_A(const Figures& f) {
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
double series_limit_count(const Figures& f) {
  if (f.block->series_max > 0) return f.block->series_max;
  return is_lead(f.block->chemistry) ? kMostSeries_count : 1.0;
}

// Where a block's discharge ends.
double floor_V(const BatteryBlock& block) {
  return facts_of(block.chemistry).floor_cell_V * cell_count(block.chemistry, block.nominal_V);
}

// Demands and limits alone, without words: the search asks for them often.
std::array<Check, kDemands> demands_of(const BankInput& in, const Figures& f) {
  std::array<Check, kDemands> demands{};
  const auto at_most = [&](Demand which, double actual, double limit) {
    demands[which].actual = actual;
    demands[which].limit = limit;
  };
  const auto at_least = [&](Demand which, double actual, double limit) {
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

int series_for(const BankInput& in, const BatteryBlock& block) {
  if (in.series_count > 0) return in.series_count;
  const double ratio = in.motor_nominal_V / named_V(block.chemistry, block.nominal_V);
  return std::clamp(static_cast<int>(std::lround(ratio)), 1, kMostSeries_count);
}

// The combination that ranks first; its block is null when nothing is on offer.
Figures choose(const BankInput& in) {
  Figures best{};
  Rank best_rank{};
  const int first = in.parallel_count > 0 ? in.parallel_count : 1;
  const int last = in.parallel_count > 0 ? in.parallel_count : kMostStrings_count;
  for (std::size_t i = 0; i < in.blocks.size(); ++i) {
    const BatteryBlock& block = in.blocks[i];
    if (!(block.capacity_Ah > 0.0 && block.rated_hours_h > 0.0 && block.nominal_V > 0.0)) continue;
    const int series = series_for(in, block);
    for (int parallel = first; parallel <= last; ++parallel) {
      if (i < in.room_counts.size() && series * parallel > in.room_counts[i]) break;
      const Figures f = figures_of(in, block, series, parallel);
      const double blocks = series * parallel;
      const Rank rank{shortfall_ratio(demands_of(in, f)), blocks * block.mass_kg,
                      blocks * block.price};
      if (best.block == nullptr || rank < best_rank) {
        best = f;
        best_rank = rank;
      }
    }
  }
  return best;
}

// --- The arithmetic, for the reader -------------------------------------------------------------

constexpr std::string_view kBetweenFormula = "n * (V_a + (V_b - V_a) * (s - s_a) / (s_b - s_a))";
constexpr std::string_view kPowerFormula = "(V0 - sqrt(max(0, V0^2 - 4 * R * P))) / (2 * R)";

Step rest_step(std::string id, std::string label, const Figures& f, double charge_frac,
               double value_V) {
  const auto [low, high] = rest_between(f.block->chemistry, charge_frac);
  return {.id = std::move(id),
          .label = std::move(label),
          .symbol = "V0",
          .formula = kBetweenFormula,
          .terms = {{"n", f.twelves_count, "", "12 V blocks that the string comes to"},
                    {"s", charge_frac, "", "charge left, share of full"},
                    {"s_a", low.charge_frac, "", "charge in the table's row below"},
                    {"s_b", high.charge_frac, "", "charge in the table's row above"},
                    {"V_a", low.open_circuit_V, "V", "volts at rest in the row below"},
                    {"V_b", high.open_circuit_V, "V", "volts at rest in the row above"}},
          .value = value_V,
          .unit = "V",
          .source = rest_source(f.block->chemistry),
          .assumptions = {"At rest for hours, 25 °C."}};
}

Step resistance_step(std::string id, std::string label, const BankInput& in, const Figures& f,
                     double charge_frac, double value_ohm) {
  const Chemistry kind = f.block->chemistry;
  return {
      .id = std::move(id),
      .label = std::move(label),
      .symbol = "R",
      .formula = "R_new * r * (1 + max(0, 25 - T) / T_2) * (1 + a * (f_age - 1))",
      .terms = {{"R_new", f.full_ohm, "ohm", "bank new, warm and charged"},
                {"r", rest_ratio(kind, charge_frac), "", "at this charge, over the charged bank's"},
                {"T", in.temperature_C, "C", "temperature of the bank"},
                {"T_2", double_K(kind), "K", "degrees below 25 that double the resistance"},
                {"f_age", in.age_factor, "", "ageing allowance"},
                {"a", kAgedResistance_factor, "",
                 "resistance grows so many times as capacity falls"}},
      .value = value_ohm,
      .unit = "ohm",
      .source = kCommonPractice,
      .assumptions = {"The course over charge is that of an open data set for a sealed lead-acid "
                      "module, or flat for lithium.",
                      "The growth with age is our own judgement."}};
}

Step power_step(std::string id, std::string label, std::string_view symbol, double power_W,
                const BankInput& in, double value_W) {
  return {.id = std::move(id),
          .label = std::move(label),
          .symbol = symbol,
          .formula = "P_motor / (1 - d)",
          .terms = {{"P_motor", power_W, "W", "at the motor"},
                    {"d", in.feeder_drop_frac, "", "share that the feeder may lose"}},
          .value = value_W,
          .unit = "W",
          .source = kDefinition};
}

Step current_step(std::string id, std::string label, double open_V, double resistance_ohm,
                  double power_W, const OperatingPoint& point) {
  Step step{
      .id = std::move(id),
      .label = std::move(label),
      .symbol = "I",
      .formula = kPowerFormula,
      .terms = {{"V0", open_V, "V", "volts at rest"},
                {"R", resistance_ohm, "ohm", "resistance of the bank"},
                {"P", power_W, "W", "power at the bank's posts"}},
      .value = point.current_A,
      .unit = "A",
      .source = kDefinition,
      .assumptions = {"The motor's controller draws constant power: more amps as the volts sag."}};
  if (!point.solvable) {
    step.assumptions.push_back(
        "The bank cannot give this power at all; the current is the one at the most it can give.");
  }
  return step;
}

Step terminal_step(std::string id, std::string label, double open_V, double resistance_ohm,
                   const OperatingPoint& point) {
  return {.id = std::move(id),
          .label = std::move(label),
          .symbol = "V",
          .formula = "V0 - R * I",
          .terms = {{"V0", open_V, "V", "volts at rest"},
                    {"R", resistance_ohm, "ohm", "resistance of the bank"},
                    {"I", point.current_A, "A", "current"}},
          .value = point.load_V,
          .unit = "V",
          .source = kDefinition};
}

Step load_step(std::string id, std::string label, const Figures& f, double current_A,
               double value_Ah) {
  return {.id = std::move(id),
          .label = std::move(label),
          .symbol = "Q",
          .formula = "C * min(1, (C / (I * H))^(k - 1))",
          .terms = {{"C", f.label.capacity_Ah, "Ah", "capacity by the label"},
                    {"H", f.label.rated_hours_h, "h", "hours that the label rates it over"},
                    {"I", current_A, "A", "current"},
                    {"k", f.exponent, "", "Peukert exponent"}},
          .value = value_Ah,
          .unit = "Ah",
          .source = kPeukert,
          .assumptions = {"New and at 25 °C; never taken for more than the label says."}};
}

Step exponent_step(const BankInput& in, const Figures& f) {
  const BatteryBlock& block = *f.block;
  Step step{.id = "bank.exponent",
            .label = "Peukert exponent",
            .symbol = "k",
            .formula = "k_0",
            .terms = {{"k_0", f.exponent, "", "how much capacity shrinks at high current"}},
            .value = f.exponent,
            .source = facts_of(block.chemistry).peukert_source};
  if (in.peukert_exponent >= 1.0) {
    step.source = kDefinition;
    step.assumptions = {"As given."};
  } else if (reserve_tells_exponent(block)) {
    step.formula = "max(1, min(1.6, ln(H / (t_rc / 60)) / ln(I_rc * H / C)))";
    step.terms = {{"H", block.rated_hours_h, "h", "hours that the label rates it over"},
                  {"C", block.capacity_Ah, "Ah", "capacity of a block over those hours"},
                  {"t_rc", block.reserve_capacity_min, "min", "reserve capacity on the label"},
                  {"I_rc", kReserveCurrent_A, "A", "current of the reserve capacity"}};
    step.source = kReserveCapacity;
    step.assumptions = {"From the two ratings on the label."};
  } else {
    step.assumptions = {
        "Of the chemistry, within its published range; two ratings on the label would "
        "be better."};
  }
  return step;
}

Step cold_step(const BankInput& in, const Figures& f) {
  const auto [low, high] = cold_between(f.block->chemistry, in.temperature_C);
  Step step{.id = "bank.temperature_factor",
            .label = "Larger because of the cold",
            .symbol = "f_T",
            .formula = "f_a + (f_b - f_a) * (T - T_a) / (T_b - T_a)",
            .terms = {{"T", in.temperature_C, "C", "temperature of the bank"},
                      {"T_a", low.temperature_C, "C", "temperature in the table's row below"},
                      {"T_b", high.temperature_C, "C", "temperature in the table's row above"},
                      {"f_a", low.factor, "", "factor in the row below"},
                      {"f_b", high.factor, "", "factor in the row above"}},
            .value = f.cold_factor,
            .source = cold_source(f.block->chemistry, in.temperature_C)};
  if (in.temperature_C < low.temperature_C || in.temperature_C > high.temperature_C) {
    step.assumptions = {"Beyond the end of the table: its last line goes on."};
  }
  return step;
}

void write_volts(const BankInput& in, const Figures& f, Trace& trace) {
  const double series = f.series_count;
  const double parallel = f.parallel_count;
  trace.steps.push_back(
      rest_step("bank.open_circuit_full", "Volts at rest, full", f, 1.0, f.open_full_V));
  trace.steps.push_back(rest_step("bank.open_circuit_middle",
                                  "Volts at rest, half of a day's depth", f, f.middle_frac,
                                  f.open_middle_V));
  trace.steps.push_back(rest_step("bank.open_circuit_end",
                                  "Volts at rest, end of the allowed discharge", f, f.end_frac,
                                  f.open_end_V));
  Step full{.id = "bank.resistance_full",
            .label = "Resistance of the bank, new and charged",
            .symbol = "R_new",
            .formula = "R_b * s / p",
            .terms = {{"R_b", f.block_ohm, "ohm", "resistance of a block"},
                      {"s", series, "", "blocks in series"},
                      {"p", parallel, "", "strings in parallel"}},
            .value = f.full_ohm,
            .unit = "ohm",
            .source = kDefinition,
            .assumptions = {"Jumpers are counted with the feeder."}};
  if (!(f.block->resistance_ohm > 0.0)) {
    full.source = kCommonPractice;
    full.assumptions.push_back("The block's own resistance is typical of its kind and capacity.");
  }
  trace.steps.push_back(std::move(full));
  trace.steps.push_back(resistance_step("bank.resistance_middle",
                                        "Resistance, half of a day's depth", in, f, f.middle_frac,
                                        f.middle_ohm));
  trace.steps.push_back(resistance_step("bank.resistance_end",
                                        "Resistance, end of the allowed discharge", in, f,
                                        f.end_frac, f.end_ohm));
  trace.steps.push_back(
      {.id = "bank.charge_voltage",
       .label = "Highest volts on charge",
       .symbol = "V_ch",
       .formula = "n * (V_25 + c * (T - 25))",
       .terms = {{"n", series * cell_count(f.block->chemistry, f.block->nominal_V), "",
                  "cells in series"},
                 {"V_25", facts_of(f.block->chemistry).absorption_cell_V, "V",
                  "absorption, each cell, 25 °C"},
                 {"c", facts_of(f.block->chemistry).absorption_slope_V_per_K, "V/K",
                  "compensation for temperature, each cell"},
                 {"T", in.temperature_C, "C", "temperature of the bank"}},
       .value = f.charge_V,
       .unit = "V",
       .source = is_lead(f.block->chemistry) ? kCompensation : kCommonPractice,
       .assumptions = {
           "The upper end of the chemistry's usual window; the maker's label overrides it."}});
}

void write_energy(const BankInput& in, const Figures& f, Trace& trace) {
  trace.steps.push_back(exponent_step(in, f));
  trace.steps.push_back(cold_step(in, f));
  trace.steps.push_back(power_step("bank.power_mean", "Mean power at the bank", "P",
                                   std::max(in.mean_power_W, kLeastPower_W), in, f.mean_W));
  trace.steps.push_back(current_step("bank.mean_current", "Mean current", f.open_middle_V,
                                     f.middle_ohm, f.mean_W, f.mean));
  trace.steps.push_back(terminal_step("bank.mean_voltage", "Volts under the mean load",
                                      f.open_middle_V, f.middle_ohm, f.mean));
  trace.steps.push_back({.id = "bank.used",
                         .label = "Charge that the day takes",
                         .symbol = "Q_day",
                         .formula = "E / (1 - d) / V",
                         .terms = {{"E", in.energy_Wh, "Wh", "energy of the day at the motor"},
                                   {"d", in.feeder_drop_frac, "", "share that the feeder may lose"},
                                   {"V", f.mean.load_V, "V", "volts under the mean load"}},
                         .value = f.used_Ah,
                         .unit = "Ah",
                         .source = kDefinition});
  trace.steps.push_back(
      {.id = "bank.needed",
       .label = "Charge needed, allowances included",
       .symbol = "Q_need",
       .formula = "Q_day * f_T * f_age * f_margin / DoD",
       .terms = {{"Q_day", f.used_Ah, "Ah", "charge that the day takes"},
                 {"f_T", f.cold_factor, "", "larger because of the cold"},
                 {"f_age", in.age_factor, "", "ageing allowance"},
                 {"f_margin", in.margin_factor, "", "design margin"},
                 {"DoD", in.depth_of_discharge_frac, "", "share that a day may use"}},
       .value = f.needed_Ah,
       .unit = "Ah",
       .source = kIeee485Sizing,
       .assumptions = {"At the mean current, not yet by the label."}});
  trace.steps.push_back(
      {.id = "bank.capacity_required",
       .label = "Capacity needed, by the label",
       .symbol = "C_need",
       .formula = "max(Q_need, (Q_need * (I * H)^(k - 1))^(1 / k))",
       .terms = {{"Q_need", f.needed_Ah, "Ah", "charge needed at the mean current"},
                 {"I", f.mean.current_A, "A", "mean current"},
                 {"H", f.label.rated_hours_h, "h", "hours that the label rates it over"},
                 {"k", f.exponent, "", "Peukert exponent"}},
       .value = f.required_Ah,
       .unit = "Ah",
       .source = kPeukert});
  trace.steps.push_back(
      {.id = "bank.capacity",
       .label = "Capacity installed, by the label",
       .symbol = "C",
       .formula = "p * C_b",
       .terms = {{"p", static_cast<double>(f.parallel_count), "", "strings in parallel"},
                 {"C_b", f.block->capacity_Ah, "Ah", "capacity of a block"}},
       .value = f.label.capacity_Ah,
       .unit = "Ah",
       .source = kDefinition});
  trace.steps.push_back({.id = "bank.energy",
                         .label = "Energy installed, by the label",
                         .symbol = "E_bank",
                         .formula = "V_nom * C",
                         .terms = {{"V_nom", f.nominal_V, "V", "nominal volts of the bank"},
                                   {"C", f.label.capacity_Ah, "Ah", "capacity installed"}},
                         .value = f.nominal_V * f.label.capacity_Ah,
                         .unit = "Wh",
                         .source = kDefinition});
}

void write_endurance(const BankInput& in, const Figures& f, const BankResult& result,
                     Trace& trace) {
  trace.steps.push_back(load_step("bank.load_capacity", "Capacity at the mean current", f,
                                  f.mean.current_A, f.load_Ah));
  const Term cold{"f_T", f.cold_factor, "", "larger because of the cold"};
  const Term age{"f_age", in.age_factor, "", "ageing allowance"};
  const Term depth{"DoD", in.depth_of_discharge_frac, "", "share that a day may use"};
  const Source allowances = kIeee485Sizing;
  trace.steps.push_back({.id = "bank.usable",
                         .label = "Usable energy at the mean load",
                         .symbol = "E_use",
                         .formula = "Q * DoD / (f_T * f_age) * V",
                         .terms = {{"Q", f.load_Ah, "Ah", "capacity at the mean current"},
                                   depth,
                                   cold,
                                   age,
                                   {"V", f.mean.load_V, "V", "volts under the mean load"}},
                         .value = result.usable_Wh,
                         .unit = "Wh",
                         .source = allowances});
  trace.steps.push_back(
      {.id = "bank.endurance",
       .label = "Hours at the mean load",
       .symbol = "t",
       .formula = "E_use / (V * I)",
       .terms = {{"E_use", result.usable_Wh, "Wh", "usable energy"},
                 {"V", f.mean.load_V, "V", "volts under the mean load"},
                 {"I", f.mean.current_A, "A", "mean current"}},
       .value = result.endurance_h,
       .unit = "h",
       .source = kDefinition,
       .assumptions = {"Cold, aged, to the allowed depth; the design margin is kept back."}});
  const double flat_h = kinetic_hours_h(f.model, f.mean.current_A, kLongest_h);
  trace.steps.push_back(
      {.id = "bank.flat_current",
       .label = "Current that empties it in that time",
       .symbol = "I_flat",
       .formula = "q * k * c / (1 - exp(-k * t) + c * (k * t - 1 + exp(-k * t)))",
       .terms = {{"q", f.model.capacity_Ah, "Ah", "both wells of the kinetic model, cold and aged"},
                 {"c", f.model.available_frac, "", "share of the first well"},
                 {"k", f.model.rate_frac_per_h, "1/h", "how fast the wells level out"},
                 {"t", flat_h, "h", "hours to flat at the mean load"}},
       .value = capacity_over_Ah(f.model, flat_h) / flat_h,
       .unit = "A",
       .source = kKinetic,
       .assumptions = {
           "Hours to flat found by halving the interval until this is the mean current.",
           "Wells from open data for AGM, or from the label's reserve capacity; typical "
           "for lithium."}});
  trace.steps.push_back(power_step("bank.power_full", "Full power at the bank", "P_full",
                                   std::max(in.full_power_W, kLeastPower_W), in, f.full_W));
  trace.steps.push_back(current_step("bank.full_current", "Current at full thrust", f.open_middle_V,
                                     f.middle_ohm, f.full_W, f.full));
  trace.steps.push_back(load_step("bank.full_capacity", "Capacity at full thrust", f,
                                  f.full.current_A, f.load_full_Ah));
  trace.steps.push_back({.id = "bank.endurance_full",
                         .label = "Hours at full thrust",
                         .symbol = "t_full",
                         .formula = "Q * DoD / (f_T * f_age) / I",
                         .terms = {{"Q", f.load_full_Ah, "Ah", "capacity at full thrust"},
                                   depth,
                                   cold,
                                   age,
                                   {"I", f.full.current_A, "A", "current at full thrust"}},
                         .value = result.endurance_full_h,
                         .unit = "h",
                         .source = allowances});
  trace.steps.push_back({.id = "bank.depth_used",
                         .label = "Depth that the day uses",
                         .symbol = "D",
                         .formula = "min(1, Q_day / C)",
                         .terms = {{"Q_day", f.used_Ah, "Ah", "charge that the day takes"},
                                   {"C", f.label.capacity_Ah, "Ah", "capacity installed"}},
                         .value = f.depth_used_frac,
                         .source = kDefinition});
  const ChemistryFacts& facts = facts_of(f.block->chemistry);
  trace.steps.push_back(
      {.id = "bank.cycles",
       .label = "Such days until 80 % is left",
       .symbol = "N",
       .formula = "N_1 / max(D, D_0)^m",
       .terms = {{"N_1", facts.cycles_at_full_count, "", "days when each empties it"},
                 {"D", f.depth_used_frac, "", "depth that the day uses"},
                 {"D_0", kLeastDepth_frac, "", "least depth for which this is used"},
                 {"m", facts.cycles_exponent, "", "how much shallow use prolongs life"}},
       .value = result.cycles_count,
       .source = facts.cycles_source,
       .assumptions = {
           "The maker's own curve is better; years, heat and being left flat count too."}});
  trace.steps.push_back(
      {.id = "bank.years",
       .label = "Years until 80 % is left",
       .symbol = "Y",
       .formula = "min(N / n, Y_0)",
       .terms = {{"N", result.cycles_count, "", "such days until 80 % is left"},
                 {"n", in.days_out_count, "", "days out in a year"},
                 {"Y_0", facts.calendar_years_count, "", "years by the calendar, used or not"}},
       .value = result.years_count,
       .source = kCalendarYears,
       .assumptions = {"Each day out is a day like the one planned. Heat and being left flat take "
                       "years off: the maker's figures go before these."}});
}

void write_peak(const Figures& f, Trace& trace) {
  trace.steps.push_back(current_step("bank.peak_current",
                                     "Full thrust, end of the allowed discharge", f.open_end_V,
                                     f.end_ohm, f.full_W, f.peak));
  trace.steps.push_back(terminal_step("bank.terminal_end", "Volts at the posts then", f.open_end_V,
                                      f.end_ohm, f.peak));
  trace.steps.push_back(
      {.id = "bank.last_burst",
       .label = "Current held ten minutes, day's end",
       .symbol = "I_10",
       .formula = "max(0, (k * q_1 * exp(-k * t) + q_0 * k * c * (1 - exp(-k * t))) / "
                  "(1 - exp(-k * t) + c * (k * t - 1 + exp(-k * t))))",
       .terms = {{"q_1", f.evening.available_Ah, "Ah", "left in the first well"},
                 {"q_0", f.evening.available_Ah + f.evening.bound_Ah, "Ah", "left in both"},
                 {"c", f.model.available_frac, "", "share of the first well"},
                 {"k", f.model.rate_frac_per_h, "1/h", "how fast the wells level out"},
                 {"t", kBurst_h, "h", "ten minutes"}},
       .value = f.burst_A,
       .unit = "A",
       .source = kKinetic,
       .assumptions = {
           "The wells after creeping out, holding and creeping home, cold and aged.",
           "Wells from open data for AGM, or from the label's reserve capacity; typical "
           "for lithium."}});
}

void write_mass(const Figures& f, const BankResult& result, Trace& trace) {
  trace.steps.push_back(
      {.id = "bank.mass",
       .label = "Weight of the bank",
       .symbol = "m_bank",
       .formula = "s * p * m",
       .terms = {{"s", static_cast<double>(f.series_count), "", "blocks in series"},
                 {"p", static_cast<double>(f.parallel_count), "", "strings in parallel"},
                 {"m", f.block->mass_kg, "kg", "weight of a block"}},
       .value = result.mass_kg,
       .unit = "kg",
       .source = kDefinition});
}

// --- The checks, for the reader -----------------------------------------------------------------

struct Choices {
  Change block{.field = "bank.block", .clear = true, .label = "Let Thole choose the block"};
  Change own_block{
      .field = "bank.capacity_Ah", .clear = true, .label = "Choose a block from stock"};
  Change fitted{
      .field = "bank.fitted", .clear = true, .label = "Fit new blocks, all alike"};
  Change series{
      .field = "bank.series_count", .clear = true, .label = "Let Thole choose the series"};
  Change parallel{
      .field = "bank.parallel_count", .clear = true, .label = "Let Thole choose the strings"};
  Change lithium{.field = "bank.chemistry",
                 .value = static_cast<double>(Chemistry::lifepo4),
                 .label = "Use lithium iron phosphate"};
  Change lead{.field = "bank.chemistry",
              .value = static_cast<double>(Chemistry::agm),
              .label = "Use AGM lead-acid"};
};

// What the user has fixed and Thole could choose; after it the other kind of chemistry.
std::vector<Change> ways_out(const BankInput& in, const Figures& f, bool other_chemistry) {
  const Choices choices;
  std::vector<Change> ways;
  if (!in.fitted.empty()) ways.push_back(choices.fitted);
  if (in.blocks.size() == 1) {
    ways.push_back(choices.block);
    if (f.block->id == "own") ways.push_back(choices.own_block);
  }
  if (in.series_count > 0) ways.push_back(choices.series);
  if (in.parallel_count > 0) ways.push_back(choices.parallel);
  if (other_chemistry) ways.push_back(is_lead(f.block->chemistry) ? choices.lithium : choices.lead);
  return ways;
}

void write_checks(const BankInput& in, const Figures& f, Trace& trace) {
  std::array<Check, kDemands> checks = demands_of(in, f);
  const bool lead = is_lead(f.block->chemistry);
  const std::vector<Change> any = ways_out(in, f, true);
  const auto say = [&](Demand which, std::string id, std::string label, std::string_view unit,
                       const Source& source, std::string remedy, std::vector<Change> changes) {
    Check& check = checks[which];
    check.id = std::move(id);
    check.label = std::move(label);
    check.unit = unit;
    check.source = source;
    check.remedy = std::move(remedy);
    check.changes = std::move(changes);
  };
  say(kEnergy, "bank.energy", "Capacity lasts the day", "Ah", kDefinition,
      "Fit larger blocks or another string, or plan fewer hours.", any);
  say(kLastBurst, "bank.last_burst", "Full thrust at day's end", "A", kProjectDecision,
      "Fit more capacity, so that the bank can still drive ten minutes at full thrust when the day "
      "is done.",
      any);
  say(kPeak, "bank.peak", "Peak current of the blocks", "A", lead ? kPeukert : kCommonPractice,
      lead ? "Fit larger blocks or another string: beyond one hour's rate no one knows what they "
             "give."
           : "Fit blocks with a higher continuous limit, or another string; read the limit off the "
             "label "
             "when it is not known. A block that switches off takes all thrust with it.",
      ways_out(in, f, !lead));
  say(kSag, "bank.sag", "Volts under full thrust", "V", kDefinition,
      "Fit blocks of lower resistance, another string, or allow less depth of discharge.", any);
  say(kVoltage, "bank.voltage", "Bank and motor volts differ", "V", kCommonPractice,
      "Put as many blocks in series as the motor's nominal volts ask for.", ways_out(in, f, false));
  say(kChargeVoltage, "bank.charge_voltage", "Volts on charge at the motor", "V", kDefinition,
      "Switch the motor off at its protective device while charging, after asking its maker, or "
      "use a "
      "chemistry that charges at fewer volts.",
      any);
  say(kSeries, "bank.series", "Blocks beyond the string's limit", "",
      f.block->series_max > 0 ? kDefinition : kCommonPractice,
      "Use one block made for the motor's full voltage, or blocks whose maker allows this many in "
      "series "
      "in writing.",
      any);
  say(kTemperature, "bank.temperature", "Degrees below its cold limit", "K",
      lead ? kFreezing : kCommonPractice,
      lead ? "Keep the bank charged or warm: a discharged block freezes and bursts."
           : "Warm the locker, or keep the boat out of such cold: the electronics stop the "
             "discharge.",
      lead ? std::vector<Change>{} : any);
  say(kDisconnect, "bank.disconnect", "Volts of a block under full thrust", "V", kCommonPractice,
      "Fit blocks of lower resistance, another string, or allow less depth of discharge: below 2.5 V "
      "a cell the electronics open and take all thrust away.",
      ways_out(in, f, false));
  for (Check& check : checks) {
    if (lead && check.id == "bank.disconnect") continue;
    trace.checks.push_back(std::move(check));
  }
}

// --- What to beware of --------------------------------------------------------------------------

void write_cautions(const BankInput& in, const Figures& f, Trace& trace) {
  trace.cautions = mixed_blocks(in.fitted_blocks);
  const auto warn = [&](std::string id, std::string text, const Source& source) {
    trace.cautions.push_back({std::move(id), std::move(text), source});
  };
  const bool lithium = !is_lead(f.block->chemistry);
  if (f.series_count > 1) {
    warn("bank.tap",
         "Never tap part of the string for other loads: it unbalances the blocks and ruins them.",
         kCommonPractice);
  }
  if (f.series_count * f.parallel_count > 1) {
    warn("bank.mix",
         "Use blocks of one maker, model and age, and never mix chemistries; replace the whole "
         "string when "
         "one block of it fails after a year.",
         kCommonPractice);
  }
  if (f.parallel_count > 1) {
    warn("bank.parallel",
         "Fuse each string, and take plus from one end of the bank and minus from the other, so "
         "that the "
         "strings share.",
         kCommonPractice);
  }
  warn("bank.tools",
       "Cover the posts and take off rings before working: a dropped spanner carries thousands of "
       "amps. Have "
       "the connections made by someone competent, to the local code.",
       kCommonPractice);
  if (is_lead(f.block->chemistry)) {
    warn("bank.acid",
         "Wear eye protection and keep water at hand: lead-acid blocks hold sulphuric acid.",
         kCommonPractice);
  } else {
    warn("bank.cold_charge",
         "Never charge lithium blocks below 0 °C: it ruins them unseen and they may burn later.",
         kCommonPractice);
    warn("bank.fire",
         "Follow the maker's instructions to the letter, keep the space vented and away from "
         "berths: a failed "
         "lithium cell gives off gas that burns and poisons, and cannot be put out by smothering.",
         kIsoLithium);
    warn("bank.cut_off",
         "Expect the electronics to switch off without warning and take all thrust away; keep "
         "another way "
         "to hold or drive the boat, and an alarm that sounds first.",
         kAbycLithium);
    if (f.nominal_V * f.label.capacity_Ah >= 500.0) {
      warn("bank.lithium_scope",
           "Ask the builder or a surveyor whether ABYC E-13 or ISO 23625 binds this boat: the bank "
           "is larger "
           "than the 500 to 600 Wh at which they begin.",
           kIsoLithium);
    }
    warn("bank.gauge",
         "Fit a counter of amp-hours: between 40 and 90 % the volts of lithium say nothing.",
         kCommonPractice);
  }
  if (f.nominal_V > 50.0 || f.charge_V > 50.0) {
    warn("bank.over_50",
         "Treat the bank as more than 50 V: it is " + fixed(f.nominal_V, 1) + " V by name and " +
             fixed(f.charge_V, 1) + " V on charge, " +
             (f.nominal_V > 50.0 ? "beyond" : "on charge beyond") +
             " the range that small-craft rules for direct current are written for.",
         kLowVoltageScope);
  }
  if (lithium && f.series_count > 1) {
    warn("bank.balance",
         "Bring all blocks to the same voltage, within 20 mV, before linking them; nothing "
         "balances one "
         "block against another.",
         kCommonPractice);
  }
}

void write_assumptions(const BankInput& in, const Figures& f, Trace& trace) {
  trace.assumptions.push_back(
      {"",
       "A day's mean current counts for charge, full thrust for volts and "
       "amps: bursts are short against the hours in which the wells level out.",
       kKinetic});
  if (!in.fitted.empty()) {
    trace.assumptions.push_back(
        {"bank.fitted",
         "The figures and checks of this page take every block for the weakest of those in the boat; "
         "the day, hour by hour, takes each for itself.",
         kProjectDecision});
  }
  if (f.parallel_count > 1) {
    trace.assumptions.push_back(
        {"bank.parallel_count", "The strings share the current evenly.", kCommonPractice});
  }
}

// The label's energy, less what has gone to the motor and the feeder.
std::vector<DayPoint> day_of(const Figures& f, double installed_Wh) {
  constexpr int kPerLeg_count = 8;
  std::vector<DayPoint> day{{0.0, installed_Wh}};
  for (const Leg& leg : f.legs) {
    if (!(leg.time_h > 0.0)) continue;
    const DayPoint start = day.back();
    for (int i = 1; i <= kPerLeg_count; ++i) {
      const double time_h = leg.time_h * i / kPerLeg_count;
      day.push_back({start.time_h + time_h,
                     std::max(0.0, start.left_Wh - leg.current_A * f.mean.load_V * time_h)});
    }
  }
  return day;
}

BankResult nothing_on_offer() {
  BankResult result{};
  const Choices choices;
  result.trace.checks.push_back(
      {.id = "bank.block",
       .label = "Blocks on offer",
       .actual = 0.0,
       .limit = 1.0,
       .comparison = Comparison::at_least,
       .source = kDefinition,
       .remedy = "Ask for another chemistry or block voltage, or add blocks to the "
                 "catalogue.",
       .changes = {{.field = "bank.chemistry", .clear = true, .label = "Any chemistry"},
                   {.field = "bank.block_V", .clear = true, .label = "Any block voltage"},
                   choices.lithium,
                   choices.lead}});
  return result;
}

}  // namespace

BankResult bank(const BankInput& in) {
  const Figures f = choose(in);
  if (f.block == nullptr) return nothing_on_offer();
  BankResult result{.found = true,
                    .block = *f.block,
                    .series_count = f.series_count,
                    .parallel_count = f.parallel_count,
                    .block_count = f.series_count * f.parallel_count,
                    .nominal_V = f.nominal_V,
                    .capacity_Ah = f.label.capacity_Ah,
                    .capacity_required_Ah = f.required_Ah,
                    .energy_Wh = f.nominal_V * f.label.capacity_Ah,
                    .usable_Wh = f.usable_Ah * f.mean.load_V,
                    .endurance_h = f.usable_Ah / f.mean.current_A,
                    .endurance_full_h = f.load_full_Ah * in.depth_of_discharge_frac /
                                        (f.cold_factor * in.age_factor) / f.full.current_A,
                    .mean_A = f.mean.current_A,
                    .peak_A = f.peak.current_A,
                    .used_Ah = f.used_Ah,
                    .depth_used_frac = f.depth_used_frac,
                    .open_circuit_full_V = f.open_full_V,
                    .open_circuit_end_V = f.open_end_V,
                    .resistance_full_ohm = f.full_ohm,
                    .resistance_end_ohm = f.end_ohm,
                    .terminal_end_V = f.peak.load_V,
                    .charge_V = f.charge_V};
  result.mass_kg = result.block_count * f.block->mass_kg;
  result.cycles_count =
      cycle_life_count(f.block->chemistry, std::max(f.depth_used_frac, kLeastDepth_frac));
  result.years_count =
      lifetime(f.block->chemistry, result.cycles_count, in.days_out_count).years_count;
  result.strings = in.fitted;
  if (in.fitted.empty()) {
    result.strings = {alike_string(*f.block, static_cast<std::size_t>(f.series_count),
                                   f.parallel_count, in.age_factor)};
  }
  result.day = day_of(f, result.energy_Wh);
  result.ways_out = ways_out(in, f, true);
  write_energy(in, f, result.trace);
  write_volts(in, f, result.trace);
  write_endurance(in, f, result, result.trace);
  write_peak(f, result.trace);
  write_mass(f, result, result.trace);
  write_checks(in, f, result.trace);
  write_cautions(in, f, result.trace);
  write_assumptions(in, f, result.trace);
  return result;
}

}  // namespace thole
