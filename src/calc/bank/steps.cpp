#include "calc/bank/steps.h"

#include <algorithm>
#include <string>
#include <string_view>
#include <utility>

#include "calc/block_volts.h"
#include "data/batteries.h"
#include "data/sources.h"
#include "data/sources_battery.h"

namespace thole {
namespace {

constexpr double kLongest_h = 10000.0;  // "for ever"

constexpr std::string_view kBetweenFormula = "n * (V_a + (V_b - V_a) * (s - s_a) / (s_b - s_a))";
constexpr std::string_view kPowerFormula = "(V0 - sqrt(max(0, V0^2 - 4 * R * P))) / (2 * R)";

Step rest_step(std::string id, std::string label, const BankFigures& f, double charge_frac,
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

Step resistance_step(std::string id, std::string label, const BankInput& in, const BankFigures& f,
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

Step load_step(std::string id, std::string label, const BankFigures& f, double current_A,
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

Step exponent_step(const BankInput& in, const BankFigures& f) {
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

Step cold_step(const BankInput& in, const BankFigures& f) {
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

void write_volts(const BankInput& in, const BankFigures& f, Trace& trace) {
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

void write_energy(const BankInput& in, const BankFigures& f, Trace& trace) {
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

void write_endurance(const BankInput& in, const BankFigures& f, const BankResult& result,
                     Trace& trace) {
  trace.steps.push_back(load_step("bank.load_capacity", "Capacity at the mean current", f,
                                  f.mean.current_A, f.load_Ah));
  const Term cold{"f_T", f.cold_factor, "", "larger because of the cold"};
  const Term age{"f_age", in.age_factor, "", "ageing allowance"};
  const Term depth{"DoD", in.depth_of_discharge_frac, "", "share that a day may use"};
  const Source& allowances = kIeee485Sizing;
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

void write_peak(const BankFigures& f, Trace& trace) {
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

void write_mass(const BankFigures& f, const BankResult& result, Trace& trace) {
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

}  // namespace

void write_bank_steps(const BankInput& in, const BankFigures& f, const BankResult& result,
                      Trace& trace) {
  write_energy(in, f, trace);
  write_volts(in, f, trace);
  write_endurance(in, f, result, trace);
  write_peak(f, trace);
  write_mass(f, result, trace);
}

}  // namespace thole
