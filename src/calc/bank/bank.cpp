#include "calc/bank/bank.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>
#include <string_view>
#include <utility>

#include "base/number.h"
#include "calc/bank/choice.h"
#include "calc/bank/steps.h"
#include "calc/bank/thresholds.h"
#include "data/batteries.h"
#include "data/sources.h"
#include "data/sources_battery.h"

namespace thole {
namespace {

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
std::vector<Change> ways_out(const BankInput& in, const BankFigures& f, bool other_chemistry) {
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

void write_checks(const BankInput& in, const BankFigures& f, Trace& trace) {
  std::array<Check, kDemands> checks = bank_demands(in, f);
  const bool lead = is_lead(f.block->chemistry);
  const std::vector<Change> any = ways_out(in, f, true);
  const auto say = [&](BankDemand which, std::string id, std::string label, std::string_view unit,
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

void write_cautions(const BankInput& in, const BankFigures& f, Trace& trace) {
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

void write_assumptions(const BankInput& in, const BankFigures& f, Trace& trace) {
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
std::vector<DayPoint> day_of(const BankFigures& f, double installed_Wh) {
  constexpr int kPerLeg_count = 8;
  std::vector<DayPoint> day{{0.0, installed_Wh}};
  for (const DayLeg& leg : f.legs) {
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
  const BankFigures f = choose_bank(in);
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
  tell([&] { write_bank_steps(in, f, result, result.trace); });
  write_checks(in, f, result.trace);
  write_cautions(in, f, result.trace);
  write_assumptions(in, f, result.trace);
  return result;
}

}  // namespace thole
