#include "calc/charge/charge.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>
#include <utility>

#include "base/number.h"
#include "calc/charge/refill.h"
#include "calc/charge/taper.h"
#include "calc/charge/venting.h"
#include "calc/charge/ways.h"
#include "calc/ranking.h"
#include "data/batteries.h"
#include "data/sources.h"
#include "data/sources_battery.h"

namespace thole {
namespace {

constexpr double kColdCharge_C = 5.0;  // kCommonPractice: lithium electronics block below 0 to 5 C
constexpr double kVoltsMatch_frac = 0.12;  // kCommonPractice: a "12 V" output charges 12 to 12.8 V

// The bank, as the charger sees it.
struct Load {
  int block_count = 0;
  int cells_per_block = 0;
  double capacity_Ah = 0.0;  // of a block
  double cell_V = 0.0;       // absorption, at the block's temperature
  double charge_V = 0.0;     // of a block
};

struct Figures {
  const ChargerModel* charger = nullptr;
  int charger_count = 0;
  double switch_frac = 0.0;
  double tail_A = 0.0;
  TaperResult taper{};
  double shore_A = 0.0;
};

Load load_of(const ChargeInput& in) {
  const ChemistryFacts& facts = facts_of(in.chemistry);
  Load load{.block_count = in.series_count * in.parallel_count,
            .cells_per_block = cell_count(in.chemistry, in.block_nominal_V),
            .capacity_Ah = in.block_capacity_Ah};
  load.cell_V =
      compensated_V(facts.absorption_cell_V, facts.absorption_slope_V_per_K, in.temperature_C);
  load.charge_V = load.cell_V * load.cells_per_block;
  return load;
}

Figures figures_of(const ChargeInput& in, const Load& load, const ChargerModel& charger) {
  Figures f{.charger = &charger};
  f.charger_count = (load.block_count + charger.outputs - 1) / charger.outputs;
  const TaperInput course =
      refill_course(in.chemistry, load.capacity_Ah, in.depth_used_frac, charger.output_A);
  f.switch_frac = course.switch_frac;
  f.tail_A = course.tail_A;
  f.taper = taper(course);
  f.shore_A = mains_A({.output_count = load.block_count,
                       .charge_V = load.charge_V,
                       .output_A = charger.output_A,
                       .efficiency_frac = charger.efficiency_frac,
                       .power_factor = charger.power_factor,
                       .shore_V = in.shore_V});
  return f;
}

// The checks on a charger, in the order in which they are shown.
enum Demand { kTime, kShoreCurrent, kBulkCurrent, kIsolated, kOutputVoltage, kProfile, kDemands };

// Demands and limits alone, without words, for the search.
std::array<Check, kDemands> demands_of(const ChargeInput& in, const Load& load, const Figures& f) {
  std::array<Check, kDemands> demands{};
  const auto at_most = [&](Demand which, double actual, double limit) {
    demands[which].actual = actual;
    demands[which].limit = limit;
  };
  const ChargerModel& charger = *f.charger;
  at_most(kTime, f.taper.time_h, in.available_h);
  at_most(kShoreCurrent, f.shore_A, shore_spare_A(in));
  at_most(kBulkCurrent, charger.output_A, facts_of(in.chemistry).bulk_max_frac * load.capacity_Ah);
  at_most(kIsolated, std::max(0, load.block_count - f.charger_count * charger.outputs), 0.0);
  at_most(kOutputVoltage, std::abs(charger.block_V - in.block_nominal_V),
          kVoltsMatch_frac * in.block_nominal_V);
  at_most(kProfile, is_lead(in.chemistry) || charger.lithium_profile ? 0.0 : 1.0, 0.0);
  return demands;
}

// The charger that ranks first; null when none is on offer.
Figures choose(const ChargeInput& in, const Load& load) {
  Figures best{};
  Rank best_rank{};
  for (const ChargerModel& charger : in.chargers) {
    if (charger.outputs < 1 ||
        !(charger.output_A > 0.0 && charger.efficiency_frac > 0.0 && charger.power_factor > 0.0)) {
      continue;
    }
    const Figures f = figures_of(in, load, charger);
    const Rank rank{shortfall_ratio(demands_of(in, load, f)),
                    f.charger_count * charger.outputs * charger.output_A,
                    f.charger_count * charger.price};
    if (best.charger == nullptr || rank < best_rank) {
      best = f;
      best_rank = rank;
    }
  }
  return best;
}

// --- The arithmetic, for the reader -------------------------------------------------------------

void write_volts(const ChargeInput& in, const Load& load, Trace& trace) {
  const ChemistryFacts& facts = facts_of(in.chemistry);
  trace.steps.push_back(
      {.id = "charge.voltage",
       .label = "Absorption volts of a block",
       .symbol = "V",
       .formula = "n * (V_25 + c * (T - 25))",
       .terms = {{"n", static_cast<double>(load.cells_per_block), "", "cells in a block"},
                 {"V_25", facts.absorption_cell_V, "V", "each cell, 25 °C"},
                 {"c", facts.absorption_slope_V_per_K, "V/K",
                  "compensation for temperature, each cell"},
                 {"T", in.temperature_C, "C", "temperature of the bank"}},
       .value = load.charge_V,
       .unit = "V",
       .source = is_lead(in.chemistry) ? kCompensation : kCommonPractice,
       .assumptions = {
           "The upper end of the chemistry's usual window; the maker's label overrides it."}});
}

void write_time(const ChargeInput& in, const Load& load, const Figures& f, Trace& trace) {
  const ChemistryFacts& facts = facts_of(in.chemistry);
  const Term capacity{"C", load.capacity_Ah, "Ah", "capacity of a block"};
  const Term depth{"D", in.depth_used_frac, "", "share that the day took out"};
  const Term change{"s_w", f.switch_frac, "", "charge at which absorption begins"};
  const Term bulk{"I_b", f.charger->output_A, "A", "current into a block"};
  trace.steps.push_back(
      {.id = "charge.bulk_time",
       .label = "Hours at full current",
       .symbol = "t_b",
       .formula = "max(0, s_w - (1 - D)) * C / (e_b * I_b)",
       .terms = {change,
                 depth,
                 capacity,
                 bulk,
                 {"e_b", facts.bulk_efficiency_frac, "", "amp-hours stored over put in"}},
       .value = f.taper.bulk_h,
       .unit = "h",
       .source = kCommonPractice,
       .assumptions = {"Absorption begins the sooner, the larger the charger."}});
  trace.steps.push_back(
      {.id = "charge.absorption_charge",
       .label = "Charge put in during absorption",
       .symbol = "Q_a",
       .formula = "(1 - max(s_w, 1 - D)) * C / e_a",
       .terms = {change,
                 depth,
                 capacity,
                 {"e_a", facts.absorption_efficiency_frac, "", "amp-hours stored over put in"}},
       .value = f.taper.absorption_Ah,
       .unit = "Ah",
       .source = kCommonPractice});
  trace.steps.push_back(
      {.id = "charge.absorption_time",
       .label = "Hours of absorption",
       .symbol = "t_a",
       .formula = "max(t_min, Q_a * ln(I_b / I_t) / (I_b - I_t))",
       .terms = {{"Q_a", f.taper.absorption_Ah, "Ah", "charge put in during absorption"},
                 bulk,
                 {"I_t", f.tail_A, "A", "current that ends absorption"},
                 {"t_min", facts.absorption_min_h, "h", "least time that fills it"}},
       .value = f.taper.absorption_h,
       .unit = "h",
       .source = kCommonPractice,
       .assumptions = {"The current dies away exponentially."}});
  trace.steps.push_back({.id = "charge.time",
                         .label = "Hours to refill",
                         .symbol = "t",
                         .formula = "t_b + t_a",
                         .terms = {{"t_b", f.taper.bulk_h, "h", "hours at full current"},
                                   {"t_a", f.taper.absorption_h, "h", "hours of absorption"}},
                         .value = f.taper.time_h,
                         .unit = "h",
                         .source = kDefinition});
}

void write_mains(const ChargeInput& in, const Load& load, const Figures& f, Trace& trace) {
  const Term blocks{"n", static_cast<double>(load.block_count), "", "blocks charged at once"};
  const Term current{"I", f.charger->output_A, "A", "current into a block"};
  trace.steps.push_back(
      {.id = "charge.shore_current",
       .label = "Current from shore",
       .symbol = "I_ac",
       .formula = "n * V * I / (e * pf * V_ac)",
       .terms = {blocks,
                 current,
                 {"V", load.charge_V, "V", "absorption volts of a block"},
                 {"e", f.charger->efficiency_frac, "", "efficiency of the charger"},
                 {"pf", f.charger->power_factor, "", "power factor of the charger"},
                 {"V_ac", in.shore_V, "V", "shore supply"}},
       .value = f.shore_A,
       .unit = "A",
       .source = kDefinition});
  const double power_W = load.block_count * in.block_nominal_V * f.charger->output_A;
  trace.steps.push_back(
      {.id = "charge.class_power",
       .label = "Charging power by class",
       .symbol = "P",
       .formula = "n * V_nom * I",
       .terms = {blocks, {"V_nom", in.block_nominal_V, "V", "nominal volts of a block"}, current},
       .value = power_W,
       .unit = "W",
       .source = kChargerClass,
       .assumptions = {
           "A " + std::string(word(charger_class(power_W))) +
           " set: the rule binds commercial craft and grades well for others. A large set wants "
           "its own ventilated locker; none belongs in a cupboard."}});
}

void append(const Trace& from, Trace& trace) {
  trace.steps.insert(trace.steps.end(), from.steps.begin(), from.steps.end());
  trace.checks.insert(trace.checks.end(), from.checks.begin(), from.checks.end());
  trace.assumptions.insert(trace.assumptions.end(), from.assumptions.begin(),
                           from.assumptions.end());
}

void take_venting(const ChargeInput& in, ChargeResult& result) {
  result.venting = vent_plan(vent_plan_input(in, result));
  if (result.venting.demands.empty()) return;
  const VentDemand& boost = result.venting.demands[static_cast<std::size_t>(VentCase::boost)];
  const VentDemand& failed = result.venting.demands[static_cast<std::size_t>(VentCase::failed)];
  result.ventilation_m3_per_h = boost.flow_m3_per_h;
  result.vent_area_cm2 = boost.opening_cm2;
  result.spark_clearance_mm = boost.spark_mm;
  result.minutes_to_limit_min = failed.closed_min;
  append(result.venting.trace, result.trace);
}

// A converter that takes more than its alternator has burns it: a check of the design. How much it
// fills is told where it is asked.
void hold_against_alternator(const ChargeInput& in, ChargeResult& result) {
  if (!(in.converter_A > 0.0)) return;
  const Trace way = dc_dc(dc_dc_input(in, result)).trace;
  result.trace.steps.insert(result.trace.steps.end(), way.steps.begin(), way.steps.end());
  for (const Check& check : way.checks) {
    if (check.id == kAlternatorCheck) result.trace.checks.push_back(check);
  }
}

// --- The checks, for the reader -----------------------------------------------------------------

std::vector<Change> ways_out(const ChargeInput& in, bool lithium) {
  std::vector<Change> ways;
  if (in.chargers.size() == 1) {
    ways.push_back(
        {.field = "charge.charger", .clear = true, .label = "Let Thole choose the charger"});
  }
  ways.push_back(
      {.field = "charge.output_A", .clear = true, .label = "Take the charger's own current"});
  if (lithium && is_lead(in.chemistry)) {
    ways.push_back({.field = "bank.chemistry",
                    .value = static_cast<double>(Chemistry::lifepo4),
                    .label = "Use lithium iron phosphate"});
  }
  return ways;
}

void write_charger_checks(const ChargeInput& in, const Load& load, const Figures& f, Trace& trace) {
  std::array<Check, kDemands> checks = demands_of(in, load, f);
  const auto say = [&](Demand which, std::string id, std::string label, std::string_view unit,
                       const Source& source, std::string remedy, bool lithium_helps = false) {
    Check& check = checks[which];
    check.id = std::move(id);
    check.label = std::move(label);
    check.unit = unit;
    check.source = source;
    check.remedy = std::move(remedy);
    check.changes = ways_out(in, lithium_helps);
  };
  say(kTime, "charge.time", "Refilled before the next day", "h", kDefinition,
      "Fit a larger charger or allow more hours on shore; a lead-acid bank that is never filled "
      "soon "
      "fails.",
      true);
  say(kShoreCurrent, "charge.shore_current", "Current from shore", "A", kShoreLoad,
      "Fit a smaller charger, or one with power-factor correction, or use a stronger shore outlet.",
      true);
  say(kBulkCurrent, "charge.bulk_current", "Charging current of a block", "A", kCommonPractice,
      "Fit a charger with less current into each block, or larger blocks.", true);
  say(kIsolated, "charge.isolated", "Blocks without their own output", "", kCommonPractice,
      "Fit chargers with as many isolated outputs as there are blocks.");
  say(kOutputVoltage, "charge.output_voltage", "Charger and block volts differ", "V",
      kCommonPractice, "Fit a charger made for the block's nominal volts.");
  say(kProfile, "charge.profile", "Lithium on a lead-acid charger", "", kCommonPractice,
      "Fit a charger with a lithium profile: a lead-acid one overcharges in the cold and pulses.");
  for (Check& check : checks) trace.checks.push_back(std::move(check));
}

void write_cold_check(const ChargeInput& in, Trace& trace) {
  if (is_lead(in.chemistry)) return;
  trace.checks.push_back(
      {.id = "charge.cold",
       .label = "Degrees too cold to charge",
       .actual = std::max(0.0, kColdCharge_C - in.temperature_C),
       .limit = 0.0,
       .unit = "K",
       .source = kCommonPractice,
       .remedy =
           "Fit blocks with their own heater, warm the locker before charging, or use lead-acid.",
       .changes = {{.field = "bank.chemistry",
                    .value = static_cast<double>(Chemistry::agm),
                    .label = "Use AGM lead-acid"}}});
}

// --- What to beware of --------------------------------------------------------------------------

// Of the locker's air the gravest goes with the verdict; the others stand beside its plan.
void write_cautions(const ChargeInput& in, const VentPlanResult& venting, Trace& trace) {
  const auto warn = [&](std::string id, std::string text, const Source& source) {
    trace.cautions.push_back({std::move(id), std::move(text), source});
  };
  warn("charge.shore_power",
       "Leave the shore-power side to a licensed electrician, to the local code: earth, a "
       "residual-current "
       "device (" +
           significant(1e3 * kShoreTrip_A, 2) + " mA, within " + significant(1e3 * kShoreTrip_s, 3) +
           " ms) at the inlet, and a galvanic isolator.",
       kShoreResidual);
  if (in.series_count > 1) {
    warn("charge.common_negative",
         "Never use a charger whose outputs share a negative on a series string: it shorts blocks.",
         kDefinition);
  }
  warn("charge.fuse",
       "Fuse each charger lead at its battery post: the battery can feed a fault in it.",
       kCommonPractice);
  warn("charge.motor_off", "Switch the motor off at its protective device before charging.",
       kCommonPractice);
  if (in.petrol) {
    warn("charge.ignition",
         "Keep charger, switches and fans out of petrol spaces unless they are ignition protected.",
         kChargerIgnition);
  }
  if (!venting.trace.cautions.empty()) trace.cautions.push_back(venting.trace.cautions.front());
  if (is_lead(in.chemistry)) {
    warn("charge.fan", "Use no ordinary computer fan in a battery vent: it can light the hydrogen.",
         kChargerIgnition);
  } else {
    warn("charge.alternator",
         "Never join lithium straight to an alternator: when its electronics open, the "
         "alternator's volts "
         "leap. Use a converter made for it.",
         kCommonPractice);
  }
}

ChargeResult nothing_fits(bool bank_known) {
  ChargeResult result{};
  result.trace.checks.push_back(
      {.id = "charge.charger",
       .label = "Chargers on offer",
       .actual = 0.0,
       .limit = 1.0,
       .comparison = Comparison::at_least,
       .source = kDefinition,
       .remedy = bank_known ? "Add chargers to the catalogue, or name another one."
                            : "Choose a bank first: without blocks nothing can be charged.",
       .changes = {
           {.field = "charge.charger", .clear = true, .label = "Let Thole choose the charger"}}});
  return result;
}

}  // namespace

ChargeResult charge(const ChargeInput& in) {
  if (in.series_count < 1 || in.parallel_count < 1 || !(in.block_capacity_Ah > 0.0)) {
    return nothing_fits(false);
  }
  const Load load = load_of(in);
  const Figures f = choose(in, load);
  if (f.charger == nullptr) return nothing_fits(true);
  ChargeResult result{.found = true,
                      .charger = *f.charger,
                      .charger_count = f.charger_count,
                      .output_A = f.charger->output_A,
                      .time_h = f.taper.time_h,
                      .shore_A = f.shore_A,
                      .charge_V = load.charge_V};
  tell([&] {
    write_volts(in, load, result.trace);
    write_time(in, load, f, result.trace);
    write_mains(in, load, f, result.trace);
  });
  write_charger_checks(in, load, f, result.trace);
  write_cold_check(in, result.trace);
  take_venting(in, result);
  hold_against_alternator(in, result);
  write_cautions(in, result.venting, result.trace);
  return result;
}

}  // namespace thole
