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
#include "calc/ranking.h"
#include "data/batteries.h"
#include "data/sources.h"
#include "data/sources_battery.h"

namespace thole {
namespace {

constexpr double kColdCharge_C = 5.0;  // kCommonPractice: lithium electronics block below 0 to 5 C
constexpr double kVoltsMatch_frac = 0.12;  // kCommonPractice: a "12 V" output charges 12 to 12.8 V
constexpr double kGas_C = 20.0;            // temperature of the hydrogen

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
  at_most(kShoreCurrent, f.shore_A, in.shore_limit_A);
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

// Gassing current of a cell on daily boost charge: the larger of the two parts of the standard.
double gassing_A(const ChargeInput& in, const Load& load) {
  const Gassing gassing = gassing_of(in.chemistry);
  return std::max(gassing.boost_A_per_Ah, gassing.traction_A_per_Ah) * load.capacity_Ah;
}

void write_venting(const ChargeInput& in, const Load& load, ChargeResult& result) {
  if (!is_lead(in.chemistry)) return;
  std::vector<Step>& steps = result.trace.steps;
  const Gassing gassing = gassing_of(in.chemistry);
  const double gas_A = gassing_A(in, load);
  const int cell_total_count = load.block_count * load.cells_per_block;
  const double cells = cell_total_count;
  const double output_A = result.output_A;
  result.ventilation_m3_per_h = ventilation_m3_per_h(cell_total_count, gas_A);
  result.vent_area_cm2 = vent_area_cm2(result.ventilation_m3_per_h);
  result.spark_clearance_mm = spark_clearance_mm(gas_A, load.cells_per_block);

  const Term all_cells{"n", cells, "", "cells, all strings"};
  steps.push_back(
      {.id = "charge.gassing",
       .label = "Gassing current of a cell",
       .symbol = "I_g",
       .formula = "max(i_2, i_3) * C",
       .terms = {{"i_2", gassing.boost_A_per_Ah, "A/Ah", "part 2, boost charge"},
                 {"i_3", gassing.traction_A_per_Ah, "A/Ah", "part 3, traction, 2.4 V a cell"},
                 {"C", load.capacity_Ah, "Ah", "capacity of a block"}},
       .value = gas_A,
       .unit = "A",
       .source = kVentingTraction,
       .assumptions = {"Charged daily at boost, so boost and not float counts.",
                       "The label's capacity stands for the ten-hour one, which is smaller."}});
  steps.push_back(
      {.id = "charge.ventilation",
       .label = "Air through the locker",
       .symbol = "Q",
       .formula = "0.05 * n * I_g",
       .terms = {all_cells, {"I_g", gas_A, "A", "gassing current of a cell"}},
       .value = result.ventilation_m3_per_h,
       .unit = "m3/h",
       .source = kVenting,
       .assumptions = {"0.05 m3/h is 24 times the hydrogen of 0.42 L an amp-hour, times 5."}});
  steps.push_back(
      {.id = "charge.vent_area",
       .label = "Opening low and opening high, each",
       .symbol = "A",
       .formula = "28 * Q",
       .terms = {{"Q", result.ventilation_m3_per_h, "m3/h", "air through the locker"}},
       .value = result.vent_area_cm2,
       .unit = "cm2",
       .source = kVenting,
       .assumptions = {"Natural draught of 0.1 m/s; openings on opposite sides or 2 m apart, the "
                       "high one leading out of the boat."}});
  steps.push_back(
      {.id = "charge.spark_clearance",
       .label = "No spark nearer to a vent than",
       .symbol = "d",
       .formula = "28.8 * (1000 * I_g * N)^(1 / 3)",
       .terms = {{"I_g", gas_A, "A", "gassing current of a cell"},
                 {"N", static_cast<double>(load.cells_per_block), "", "cells on one outlet"}},
       .value = result.spark_clearance_mm,
       .unit = "mm",
       .source = kMonoblocVent,
       .assumptions = {"All cells of a block let off at one outlet. Where it cannot be kept, a "
                       "partition."}});
  steps.push_back(
      {.id = "charge.failed_ventilation",
       .label = "Air if a charger fails high",
       .symbol = "Q_fail",
       .formula = "0.05 * n * I",
       .terms = {all_cells, {"I", output_A, "A", "current into a block"}},
       .value = ventilation_m3_per_h(cell_total_count, output_A),
       .unit = "m3/h",
       .source = kVenting,
       .assumptions = {"Shown for comparison: no natural draught gives it. The charger must switch "
                       "itself off."}});
  const double gas_L_per_h = cells * output_A * hydrogen_L_per_Ah(kGas_C);
  result.minutes_to_limit_min =
      minutes_to_limit_min(in.locker_volume_m3, cell_total_count, output_A, kGas_C);
  steps.push_back({.id = "charge.hydrogen",
                   .label = "Hydrogen if a charger fails high",
                   .symbol = "H",
                   .formula = "n * I * 22.414 / (2 * 26.801) * (T + 273.15) / 273.15",
                   .terms = {all_cells,
                             {"I", output_A, "A", "current into full blocks"},
                             {"T", kGas_C, "C", "temperature of the gas"}},
                   .value = gas_L_per_h,
                   .unit = "L/h",
                   .source = kFaraday});
  steps.push_back(
      {.id = "charge.minutes_to_limit",
       .label = "Closed locker: minutes to 4 %",
       .symbol = "t_4",
       .formula = "60 * 0.04 * 1000 * V / H",
       .terms = {{"V", in.locker_volume_m3, "m3", "free volume of the locker"},
                 {"H", gas_L_per_h, "L/h", "hydrogen if a charger fails high"}},
       .value = result.minutes_to_limit_min,
       .unit = "min",
       .source = kVenting,
       .assumptions = {
           "No vent at all, blocks full: what a blocked vent and a failed charger do."}});
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

void write_locker_checks(const ChargeInput& in, const ChargeResult& result, Trace& trace) {
  if (!is_lead(in.chemistry)) {
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
    return;
  }
  if (in.vent_area_cm2 >= 0.0) {  // this way round, NaN means "not given" too
    trace.checks.push_back({.id = "charge.vent_area",
                            .label = "Vent opening, low and high",
                            .actual = in.vent_area_cm2,
                            .limit = result.vent_area_cm2,
                            .unit = "cm2",
                            .comparison = Comparison::at_least,
                            .source = kVenting,
                            .remedy =
                                "Cut both openings larger, the high one to the open air, or use "
                                "blocks that gas less.",
                            .changes = {{.field = "charge.vent_area_cm2",
                                         .clear = true,
                                         .label = "Cut the openings to the size needed"}}});
  } else {
    trace.assumptions.push_back(
        {"charge.vent_area_cm2", "The openings are cut to the size needed.", kVenting});
  }
}

// --- What to beware of --------------------------------------------------------------------------

void write_cautions(const ChargeInput& in, Trace& trace) {
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
  if (is_lead(in.chemistry)) {
    warn("charge.hydrogen",
         "Charge with the locker open to the air and no flame or spark near: hydrogen rises, so "
         "let it out at "
         "the top and out of the boat.",
         kHydrogenOut);
    warn("charge.fan", "Use no ordinary computer fan in a battery vent: it can light the hydrogen.",
         kChargerIgnition);
  } else {
    warn("charge.cell_gas",
         "Give the space a high opening to the open air: hydrogen rules do not apply, but a failed "
         "cell vents "
         "gas.",
         kIsoLithium);
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
  write_volts(in, load, result.trace);
  write_time(in, load, f, result.trace);
  write_mains(in, load, f, result.trace);
  write_venting(in, load, result);
  write_charger_checks(in, load, f, result.trace);
  write_locker_checks(in, result, result.trace);
  write_cautions(in, result.trace);
  return result;
}

}  // namespace thole
