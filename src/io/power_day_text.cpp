#include "io/power_day_text.h"

#include <array>
#include <cmath>
#include <nlohmann/json.hpp>

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

// "a block is empty (block 2)"
std::string why(const BankRunResult& run) {
  std::string text(word(run.cut_off));
  if (run.cut_off == CutOff::block_empty || run.cut_off == CutOff::block_floor) {
    text += " (block " + std::to_string(run.cut_off_block + 1) + " of its string)";
  }
  return text;
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

std::string power_day_text(const PowerDay& day, const std::vector<WindRuntime>& runtimes,
                           double refill_h, System system) {
  const BankRunResult& run = day.run;
  if (run.moments.empty()) return "There is no bank, or nothing is asked of it.\n";
  TextTable table{
      .rows = {{"at", "doing", "mean", "mean", "bank", "lowest at plug", "charge left"}},
      .right = {true, false, true, true, true, true, true}};
  for (const BankMoment& at : run.moments) {
    table.rows.push_back({show(at.time_h, "h", system).text(), doing(day, at.time_h),
                          show(at.mean_W, "W", system).text(), show(at.mean_A, "A", system).text(),
                          show(at.bank_V, "V", system).text(),
                          show(at.lowest_plug_V, "V", system).text(),
                          show(at.charge_frac, "frac", system).text()});
  }
  std::string text =
      "The bank, hour by hour: means and lowest volts since the row before; charge "
      "of the weakest block\n\n" +
      table_text(table) + "\n";
  if (run.cut_off != CutOff::none) {
    text += "Cuts off after " + show(run.cut_off_h, "h", system).text() + " of " +
            show(day.asked_h, "h", system).text() + ": " + why(run) + ".\n";
  } else {
    text += "Lasts the day. Left at its mean power: " + hours(day.left_h, day.left_until, system) +
            ".\n";
  }
  if (refill_h >= 0.0) {
    text += "The charger refills the day that the job plans in " +
            show(refill_h, "h", system).text() + ".\n";
  }
  if (runtimes.empty()) return text;
  TextTable winds{.rows = {{"wind", "", "lasts", "until"}}, .right = {true, false, true, false}};
  for (const WindRuntime& at : runtimes) {
    winds.rows.push_back({show(at.wind_mps, "mps", system).text(),
                          at.held ? "held" : "beyond the margin",
                          hours(at.time_h, at.cut_off, system),
                          at.cut_off == CutOff::none ? "" : std::string(word(at.cut_off))});
  }
  return text + "\n" + table_text(winds) +
         "\nBeyond the margin: more wind than this motor holds with the margin that the job asks.\n"
         "Kinetic battery model (Manwell and McGowan 1993) at constant temperature; the day in "
         "steps of "
         "1 s, winds in steps of 10 s.\nVolts at rest and resistance are of one kind of block "
         "each: "
         "your own differ. Down to the cut-off: deeper than the depth that the job allows.\n";
}

std::string write_power_day(const DayResult& draw, const PowerDay& day,
                            const std::vector<WindRuntime>& runtimes, double refill_h) {
  const BankRunResult& run = day.run;
  Json moments = Json::array();
  for (const BankMoment& at : run.moments) {
    moments.push_back({{"time_h", number(at.time_h)},
                       {"doing", doing(day, at.time_h)},
                       {"mean_W", number(at.mean_W)},
                       {"mean_A", number(at.mean_A)},
                       {"bank_V", number(at.bank_V)},
                       {"lowest_plug_V", number(at.lowest_plug_V)},
                       {"charge_frac", number(at.charge_frac)},
                       {"block_V", numbers(at.block_V)},
                       {"block_charge_frac", numbers(at.block_charge_frac)}});
  }
  Json winds = Json::array();
  for (const WindRuntime& at : runtimes) {
    winds.push_back({{"wind_mps", number(at.wind_mps)},
                     {"held", at.held},
                     {"time_h", number(at.time_h)},
                     {"cut_off", word(at.cut_off)}});
  }
  Json out = Json::parse(write_day(draw));
  out["bank"] = {{"cuts_off", run.cut_off != CutOff::none},
                 {"cut_off", why(run)},
                 {"cut_off_h", number(run.cut_off_h)},
                 {"left_h", number(day.left_h)},
                 {"refill_h", refill_h >= 0.0 ? number(refill_h) : Json(nullptr)},
                 {"charge_Ah", number(run.charge_Ah)},
                 {"load_Wh", number(run.load_Wh)},
                 {"feeder_loss_Wh", number(run.feeder_loss_Wh)},
                 {"block_loss_Wh", number(run.block_loss_Wh)},
                 {"moments", std::move(moments)},
                 {"runtime_by_wind", std::move(winds)}};
  return out.dump(2) + "\n";
}

}  // namespace thole
