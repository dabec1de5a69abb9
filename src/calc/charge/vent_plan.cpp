#include "calc/charge/vent_plan.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "calc/charge/venting.h"
#include "data/sources.h"
#include "data/sources_battery.h"

namespace thole {
namespace {

constexpr double kSafety_factor = 5.0;      // kVenting: in the gassing current, not in the gas
constexpr double kRecombined_factor = 0.5;  // kVenting: recombining plugs
constexpr double kApart_m = 2.0;            // kVentSpacing
constexpr int kMostCells_count = 2000;

struct Ask {
  VentCase of = VentCase::floating;
  double gassing_A = 0.0;
  double true_A = 0.0;  // that makes gas
};

double caps_factor(const VentPlanInput& in) {
  return in.recombining_caps ? kRecombined_factor : 1.0;
}

std::array<Ask, 3> asks_of(const VentPlanInput& in) {
  const Gassing gassing = gassing_of(in.chemistry);
  const double float_A = caps_factor(in) * gassing.float_A_per_Ah * in.block_capacity_Ah;
  const double boost_A = caps_factor(in) *
                         std::max(gassing.boost_A_per_Ah, gassing.traction_A_per_Ah) *
                         in.block_capacity_Ah;
  return {{{VentCase::floating, float_A, float_A / kSafety_factor},
           {VentCase::boost, boost_A, boost_A / kSafety_factor},
           {VentCase::failed, in.charger_A, in.charger_A}}};
}

int cells_of(const VentPlanInput& in) { return in.block_count * in.cells_per_block; }

std::string no_sense(const VentPlanInput& in) {
  const auto fine = [](double value) { return value >= 0.0 && std::isfinite(value); };
  if (!(in.block_capacity_Ah > 0.0 && std::isfinite(in.block_capacity_Ah)) || in.block_count < 1 ||
      in.cells_per_block < 1 || in.block_count > kMostCells_count ||
      in.cells_per_block > kMostCells_count) {
    return "There is no bank to vent.";
  }
  if (!(in.charger_A > 0.0 && std::isfinite(in.charger_A))) {
    return "The charger needs its amps into each block.";
  }
  if (!(in.free_volume_m3 > 0.0 && std::isfinite(in.free_volume_m3))) {
    return "The locker needs its free volume.";
  }
  if (!(in.temperature_C > -60.0 && in.temperature_C < 100.0)) {
    return "The locker's temperature lies between -60 and 100 °C.";
  }
  if (!fine(in.low_opening_cm2) || !fine(in.high_opening_cm2) || !fine(in.fan_m3_per_h)) {
    return "Openings and fan are zero or more.";
  }
  return "";
}

VentDemand demand_of(const VentPlanInput& in, const Ask& ask) {
  VentDemand demand{.of = ask.of, .gassing_A = ask.gassing_A};
  demand.flow_m3_per_h = ventilation_m3_per_h(cells_of(in), ask.gassing_A);
  demand.opening_cm2 = vent_area_cm2(demand.flow_m3_per_h);
  demand.round_hole_mm = round_hole_mm(demand.opening_cm2);
  demand.spark_mm = spark_clearance_mm(ask.gassing_A, in.cells_per_block);
  demand.closed_min =
      minutes_to_limit_min(in.free_volume_m3, cells_of(in), ask.true_A, in.temperature_C);
  return demand;
}

Term all_cells(const VentPlanInput& in) {
  return {"n", static_cast<double>(cells_of(in)), "", "cells, all strings"};
}

void write_boost(const VentPlanInput& in, const VentDemand& boost, Trace& trace) {
  const Gassing gassing = gassing_of(in.chemistry);
  const Term gas{"I_g", boost.gassing_A, "A", "gassing current of a cell"};
  tell([&] {
    trace.steps.push_back(
        {.id = "charge.gassing",
         .label = "Gassing current of a cell",
         .symbol = "I_g",
         .formula = "f * max(i_2, i_3) * C",
         .terms = {{"f", caps_factor(in), "", "half with recombining caps"},
                   {"i_2", gassing.boost_A_per_Ah, "A/Ah", "part 2, boost charge"},
                   {"i_3", gassing.traction_A_per_Ah, "A/Ah", "part 3, traction, 2.4 V a cell"},
                   {"C", in.block_capacity_Ah, "Ah", "capacity of a block"}},
         .value = boost.gassing_A,
         .unit = "A",
         .source = kVentingTraction,
         .assumptions = {"Charged daily at boost, so boost and not float counts.",
                         "The label's capacity stands for the ten-hour one, which is smaller."}});
    trace.steps.push_back(
        {.id = "charge.ventilation",
         .label = "Air through the locker",
         .symbol = "Q",
         .formula = "0.05 * n * I_g",
         .terms = {all_cells(in), gas},
         .value = boost.flow_m3_per_h,
         .unit = "m3/h",
         .source = kVenting,
         .assumptions = {"0.05 m3/h is 24 times the hydrogen of 0.42 L an amp-hour, times 5."}});
    trace.steps.push_back(
        {.id = "charge.vent_area",
         .label = "Opening low and opening high, each",
         .symbol = "A",
         .formula = "28 * Q",
         .terms = {{"Q", boost.flow_m3_per_h, "m3/h", "air through the locker"}},
         .value = boost.opening_cm2,
         .unit = "cm2",
         .source = kVenting,
         .assumptions = {"Natural draught of 0.1 m/s; openings on opposite sides or 2 m apart, the "
                         "high one leading out of the boat."}});
    trace.steps.push_back(
        {.id = "charge.spark_clearance",
         .label = "No spark nearer to a vent than",
         .symbol = "d",
         .formula = "28.8 * (1000 * I_g * N)^(1 / 3)",
         .terms = {gas, {"N", static_cast<double>(in.cells_per_block), "", "cells on one outlet"}},
         .value = boost.spark_mm,
         .unit = "mm",
         .source = kMonoblocVent,
         .assumptions = {"All cells of a block let off at one outlet. Where it cannot be kept, a "
                         "partition."}});
  });
}

void write_failed(const VentPlanInput& in, const VentDemand& failed, Trace& trace) {
  const Term current{"I", in.charger_A, "A", "current into full blocks"};
  tell([&] {
    trace.steps.push_back(
        {.id = "charge.failed_ventilation",
         .label = "Air if a charger fails high",
         .symbol = "Q_fail",
         .formula = "0.05 * n * I",
         .terms = {all_cells(in), current},
         .value = failed.flow_m3_per_h,
         .unit = "m3/h",
         .source = kVenting,
         .assumptions = {"Shown for comparison: no natural draught gives it. The charger must switch "
                         "itself off."}});
  });
  const double gas_L_per_h = cells_of(in) * in.charger_A * hydrogen_L_per_Ah(in.temperature_C);
  tell([&] {
    trace.steps.push_back({.id = "charge.hydrogen",
                           .label = "Hydrogen if a charger fails high",
                           .symbol = "H",
                           .formula = "n * I * 22.414 / (2 * 26.801) * (T + 273.15) / 273.15",
                           .terms = {all_cells(in),
                                     current,
                                     {"T", in.temperature_C, "C", "temperature of the gas"}},
                           .value = gas_L_per_h,
                           .unit = "L/h",
                           .source = kFaraday});
    trace.steps.push_back(
        {.id = "charge.minutes_to_limit",
         .label = "Closed locker: minutes to 4 %",
         .symbol = "t_4",
         .formula = "60 * 0.04 * 1000 * V / H",
         .terms = {{"V", in.free_volume_m3, "m3", "free volume of the locker"},
                   {"H", gas_L_per_h, "L/h", "hydrogen if a charger fails high"}},
         .value = failed.closed_min,
         .unit = "min",
         .source = kVenting,
         .assumptions = {
             "No vent at all, blocks full: what a blocked vent and a failed charger do."}});
  });
}

Change set_true(std::string field, std::string label) {
  return {.field = std::move(field), .value = 1.0, .label = std::move(label)};
}

void write_openings(const VentPlanInput& in, VentPlanResult& result) {
  Trace& trace = result.trace;
  const auto opening = [&](std::string id, std::string label, double area_cm2) {
    trace.checks.push_back({.id = std::move(id),
                            .label = std::move(label),
                            .actual = area_cm2,
                            .limit = result.opening_cm2,
                            .unit = "cm2",
                            .comparison = Comparison::at_least,
                            .source = kVenting,
                            .remedy = "Cut it larger, the high one to the open air, lead the air "
                                      "with a fan made for it, or use blocks that gas less.",
                            .changes = {{.field = "charge.vent_area_cm2",
                                         .clear = true,
                                         .label = "Cut the openings to the size needed"}}});
  };
  if (in.cut_to_size) {
    trace.assumptions.push_back(
        {"charge.vent_area_cm2", "The openings are cut to the size needed.", kVenting});
  } else if (in.low_opening_cm2 == in.high_opening_cm2) {
    opening("charge.vent_area", "Vent opening, low and high", in.low_opening_cm2);
  } else {
    opening("charge.vent_low", "Opening low, for air in", in.low_opening_cm2);
    opening("charge.vent_high", "Opening high, for gas out of the boat", in.high_opening_cm2);
  }
  if (!in.opposite_sides) {
    trace.checks.push_back(
        {.id = "charge.vent_apart",
         .label = "Openings on one side, how far apart",
         .actual = in.openings_apart_m,
         .limit = kApart_m,
         .unit = "m",
         .comparison = Comparison::at_least,
         .source = kVentSpacing,
         .remedy = "Put the two openings on opposite sides; or measure how far apart they are.",
         .changes = {set_true("charge.vents_opposite", "Put the openings on opposite sides")}});
  }
}

void write_fan(const VentPlanInput& in, VentPlanResult& result) {
  Trace& trace = result.trace;
  std::vector<Change> stronger;
  if (!in.charger_stops_itself) {
    stronger.push_back(
        set_true("charge.charger_stops_itself", "Use a charger that stops itself"));
  }
  stronger.push_back({.field = "charge.fan_m3_per_h",
                      .value = std::ceil(1.12 * result.fan_m3_per_h),
                      .label = "Fit a stronger fan"});
  trace.checks.push_back({.id = "charge.fan_flow",
                          .label = "Air that the fan moves",
                          .actual = in.fan_m3_per_h,
                          .limit = result.fan_m3_per_h,
                          .unit = "m3/h",
                          .comparison = Comparison::at_least,
                          .source = kVenting,
                          .remedy = "Fit a stronger fan, or a charger that stops itself when its "
                                    "volts run high.",
                          .changes = std::move(stronger)});
  const auto must = [&](std::string id, std::string label, bool done, const Source& source,
                        std::string remedy, Change change) {
    trace.checks.push_back({.id = std::move(id),
                            .label = std::move(label),
                            .actual = done ? 0.0 : 1.0,
                            .limit = 0.0,
                            .source = source,
                            .remedy = std::move(remedy),
                            .changes = {std::move(change)}});
  };
  must("charge.fan_interlock", "Charger can run without the fan", in.fan_with_charger, kBatteryFan,
       "Wire the charger through a switch that the fan's own flow of air closes.",
       set_true("charge.fan_with_charger", "Let the fan's flow of air switch the charger"));
  must("charge.fan_ignition", "Fan could light the gas", in.fan_protected, kChargerIgnition,
       "Fit an ignition-protected fan, or blow fresh air in low instead of sucking gas out.",
       set_true("charge.fan_protected", "Fit an ignition-protected fan"));
}

void write_lead_cautions(const VentPlanInput& in, Trace& trace) {
  trace.cautions.push_back({"charge.hydrogen",
                            "Charge with the locker open to the air and no flame or spark near: "
                            "lead hydrogen out of the boat at the top. Low openings, made for "
                            "petrol vapour, do not let it out.",
                            kHydrogenOut});
  if (!in.charger_stops_itself) {
    trace.cautions.push_back({"charge.vent_charger_stops",
                              "Use a charger that stops itself when its volts run high: full "
                              "blocks turn its whole current into gas.",
                              kVenting});
  }
  if (in.chemistry == Chemistry::flooded) {
    trace.cautions.push_back({"charge.vent_equalise",
                              "Equalise with the locker open and someone there: it gasses as a "
                              "failed charger does.",
                              kCommonPractice});
  }
}

void write_lithium_cautions(Trace& trace) {
  const auto warn = [&](std::string id, std::string text, const Source& source) {
    trace.cautions.push_back({std::move(id), std::move(text), source});
  };
  warn("charge.cell_gas",
       "Give the space a high opening to the open air, clear of people: hydrogen rules do not "
       "apply, but a failed cell vents gas that burns and poisons.",
       kIsoLithium);
  warn("charge.cell_alarm", "Put a smoke and temperature alarm in the space.", kIsoLithium);
  warn("charge.cell_envelope",
       "Keep the block's limits of volts, amps and temperature with the boat, and set charger and "
       "motor inside them.",
       kAbycLithium);
  warn("charge.cell_record", "Write down why the space is safe: the standard asks for it.",
       kIsoLithium);
}

}  // namespace

double round_hole_mm(double area_cm2) {
  return area_cm2 > 0.0 ? 10.0 * std::sqrt(4.0 * area_cm2 / std::numbers::pi) : 0.0;
}

VentPlanResult vent_plan(const VentPlanInput& in) {
  VentPlanResult result{};
  result.problem = no_sense(in);
  if (!result.problem.empty()) return result;
  if (!is_lead(in.chemistry)) {
    write_lithium_cautions(result.trace);
    return result;
  }
  for (const Ask& ask : asks_of(in)) result.demands.push_back(demand_of(in, ask));
  const VentDemand& boost = result.demands[1];
  const VentDemand& failed = result.demands[2];
  write_boost(in, boost, result.trace);
  write_failed(in, failed, result.trace);
  result.opening_cm2 = boost.opening_cm2;
  result.spark_mm = boost.spark_mm;
  result.fan_m3_per_h = in.charger_stops_itself
                            ? boost.flow_m3_per_h
                            : std::max(boost.flow_m3_per_h, failed.flow_m3_per_h);
  result.by_fan = in.fan_m3_per_h > 0.0;
  if (result.by_fan) {
    write_fan(in, result);
  } else {
    write_openings(in, result);
  }
  write_lead_cautions(in, result.trace);
  return result;
}

}  // namespace thole
