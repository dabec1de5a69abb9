#include "io/power_day_text.h"

#include <array>
#include <cmath>
#include <nlohmann/json.hpp>

#include "base/number.h"
#include "calc/fitted_bank.h"
#include "data/batteries.h"
#include "io/day_text.h"
#include "io/named_measures.h"
#include "io/table_text.h"

namespace thole {
namespace {

using Json = nlohmann::ordered_json;

Json number(double value) { return std::isfinite(value) ? Json(value) : Json(nullptr); }

Json numbers(const std::vector<double>& values) {
  Json out = Json::array();
  for (const double value : values) out.push_back(number(value));
  return out;
}

// What the boat does up to this moment.
std::string doing(const PowerDay& day, double time_h) {
  double end_h = 0.0;
  for (const DaySegment& segment : day.segments) {
    end_h += segment.duration_h;
    if (time_h <= end_h + 1e-9 && segment.duration_h > 0.0) return segment.label;
  }
  return day.segments.empty() ? std::string() : day.segments.back().label;
}

std::string hours(double time_h, CutOff until, System system) {
  return (until == CutOff::none ? "more than " : "") + show(time_h, "h", system).text();
}

}  // namespace

std::optional<BlockCondition> read_weak_block(std::string_view text, System system,
                                              std::string& message) {
  BlockCondition block;
  std::array measures{NamedMeasure{"capacity", "frac", false, &block.capacity_frac},
                      NamedMeasure{"charge", "frac", false, &block.charge_frac}};
  message = read_named_measures(text, measures, system);
  if (!message.empty()) return std::nullopt;
  if (!(block.capacity_frac >= 0.05 && block.capacity_frac <= 1.0)) {
    message = "The capacity of the weak block is 5 to 100 % of its fellows'.";
  } else if (!(block.charge_frac >= 0.0 && block.charge_frac <= 1.0)) {
    message = "The charge of the weak block in the morning is 0 to 100 %.";
  }
  if (!message.empty()) return std::nullopt;
  return block;
}

namespace {

// "string 1: 100 Ah 2 years old ..." is what was typed; here is what counts: label, capacity that is
// left, resistance, and the charge in the evening.
std::string blocks_text(const BankDay& day, System system) {
  TextTable table{.rows = {{"block", "kind", "label", "left of it", "charge at the end"}},
                  .right = {false, false, true, true, true}};
  std::size_t i = 0;
  for (std::size_t s = 0; s < day.bank.strings.size(); ++s) {
    for (std::size_t b = 0; b < day.bank.strings[s].blocks.size(); ++b) {
      const RunBlock& block = day.bank.strings[s].blocks[b];
      table.rows.push_back(
          {name_of({s, b}, day.bank.strings.size()),
           std::string(facts_of(block.block.chemistry).label),
           show(block.block.capacity_Ah, "Ah", system).text(),
           show(left_Ah(block), "Ah", system).text(),
           show(day.day.run.moments.back().block_charge_frac[i++], "frac", system).text()});
    }
  }
  return "The blocks in the order of wiring; left of it: by age, at 25 °C\n\n" + table_text(table) + "\n";
}

// What ends the day, how long it lasts, what a weak block costs.
std::string verdict_text(const BankDay& at, System system) {
  const PowerDay& day = at.day;
  const std::size_t strings = at.bank.strings.size();
  std::string text;
  if (day.run.cut_off != CutOff::none) {
    text = "Cuts off after " + show(day.run.cut_off_h, "h", system).text() + " of " +
           show(day.asked_h, "h", system).text() + ": " + end_of(day.run, strings) + ".\n";
  } else {
    text = "Lasts the day. Left at its mean power: " + hours(day.left_h, day.left_until, system);
    if (day.left_until != CutOff::none) text += ", until " + end_of(day.after, strings);
    text += ".\n";
  }
  const std::string cost = show(weak_cost_h(at), "h", system).text();
  text += at.unlike ? "With every block as the best of them it would last " +
                          show(at.other_h, "h", system).text() + ": the weak ones cost " + cost + ".\n"
                    : "One block with 80 % of its fellows' capacity would cost " + cost + ".\n";
  return text;
}

}  // namespace

std::string power_day_text(const BankDay& at, const Design& design, System system) {
  if (!at.possible || at.day.run.moments.empty()) {
    return "There is no bank, or nothing is asked of it.\n";
  }
  const PowerDay& day = at.day;
  TextTable table{
      .rows = {{"at", "doing", "mean", "mean", "bank", "lowest at plug", "charge left"}},
      .right = {true, false, true, true, true, true, true}};
  for (const BankMoment& moment : day.run.moments) {
    table.rows.push_back(
        {show(moment.time_h, "h", system).text(), doing(day, moment.time_h),
         show(moment.mean_W, "W", system).text(), show(moment.mean_A, "A", system).text(),
         show(moment.bank_V, "V", system).text(), show(moment.lowest_plug_V, "V", system).text(),
         show(moment.charge_frac, "frac", system).text()});
  }
  std::string text =
      "The bank, hour by hour: means and lowest volts since the row before; charge "
      "of the weakest block\n\n" +
      table_text(table) + "\n" + verdict_text(at, system);
  if (design.charge.found) {
    text += "The charger refills the day that the job plans in " +
            show(design.charge.time_h, "h", system).text() + ".\n";
  }
  text += "Years until 80 % is left: " + fixed(design.bank.years_count, 1) + ", at " +
          std::to_string(design.job.bank.days_out_count.value) +
          " such days a year, no more than the calendar leaves (common practice, not confirmed).\n";
  if (at.unlike) text += "\n" + blocks_text(at, system);
  for (const Caution& caution : at.trace.cautions) text += "\n" + caution.text + "\n";
  if (at.winds.empty()) return text;
  TextTable winds{.rows = {{"wind", "", "lasts", "until"}}, .right = {true, false, true, false}};
  for (const WindRuntime& wind : at.winds) {
    winds.rows.push_back({show(wind.wind_mps, "mps", system).text(),
                          wind.held ? "held" : "beyond the margin",
                          hours(wind.time_h, wind.cut_off, system),
                          wind.cut_off == CutOff::none ? "" : std::string(word(wind.cut_off))});
  }
  text += "\n" + table_text(winds) +
          "\nBeyond the margin: more wind than this motor holds with the margin that the job asks.\n"
          "Kinetic battery model (Manwell and McGowan 1993) at constant temperature; the day in "
          "steps of 1 s, winds in steps of 10 s.\nVolts at rest and resistance are of one kind of "
          "block each: your own differ.\n";
  for (const Assumption& assumption : at.trace.assumptions) text += assumption.text + "\n";
  return text;
}

std::string write_power_day(const DayResult& draw, const BankDay& at, const Design& design) {
  const BankRunResult& run = at.day.run;
  Json moments = Json::array();
  for (const BankMoment& moment : run.moments) {
    moments.push_back({{"time_h", number(moment.time_h)},
                       {"doing", doing(at.day, moment.time_h)},
                       {"mean_W", number(moment.mean_W)},
                       {"mean_A", number(moment.mean_A)},
                       {"bank_V", number(moment.bank_V)},
                       {"lowest_plug_V", number(moment.lowest_plug_V)},
                       {"charge_frac", number(moment.charge_frac)},
                       {"string_A", numbers(moment.string_A)},
                       {"block_V", numbers(moment.block_V)},
                       {"block_charge_frac", numbers(moment.block_charge_frac)}});
  }
  Json winds = Json::array();
  for (const WindRuntime& wind : at.winds) {
    winds.push_back({{"wind_mps", number(wind.wind_mps)},
                     {"held", wind.held},
                     {"time_h", number(wind.time_h)},
                     {"cut_off", word(wind.cut_off)}});
  }
  Json out = Json::parse(write_day(draw));
  out["bank"] = {{"cuts_off", run.cut_off != CutOff::none},
                 {"cut_off", end_of(run, at.bank.strings.size())},
                 {"cut_off_h", number(run.cut_off_h)},
                 {"left_h", number(at.day.left_h)},
                 {"hours_h", number(at.hours_h)},
                 {"weak_block_costs_h", number(weak_cost_h(at))},
                 {"refill_h", design.charge.found ? number(design.charge.time_h) : Json(nullptr)},
                 {"years_count", number(design.bank.years_count)},
                 {"charge_Ah", number(run.charge_Ah)},
                 {"load_Wh", number(run.load_Wh)},
                 {"feeder_loss_Wh", number(run.feeder_loss_Wh)},
                 {"block_loss_Wh", number(run.block_loss_Wh)},
                 {"moments", std::move(moments)},
                 {"runtime_by_wind", std::move(winds)}};
  return out.dump(2) + "\n";
}

}  // namespace thole
