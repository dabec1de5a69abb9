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
  std::string_view id{};
  std::string_view label{};
  double gassing_A = 0.0;
  double true_A = 0.0;  // that makes gas
};

std::array<Ask, 3> asks_of(const VentPlanInput& in) {
  const Gassing gassing = gassing_of(in.chemistry);
  const double caps_factor = in.recombining_caps ? kRecombined_factor : 1.0;
  const double float_A = caps_factor * gassing.float_A_per_Ah * in.block_capacity_Ah;
  const double boost_A = caps_factor * std::max(gassing.boost_A_per_Ah, gassing.traction_A_per_Ah) *
                         in.block_capacity_Ah;
  return {{{VentCase::floating, "float", "float charge", float_A, float_A / kSafety_factor},
           {VentCase::boost, "boost", "boost charge", boost_A, boost_A / kSafety_factor},
           {VentCase::failed, "failed", "a charger that fails high", in.charger_A, in.charger_A}}};
}

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

void write_demand(const VentPlanInput& in, const Ask& ask, VentPlanResult& result) {
  const int cell_count = in.block_count * in.cells_per_block;
  VentDemand demand{.of = ask.of, .gassing_A = ask.gassing_A};
  demand.flow_m3_per_h = ventilation_m3_per_h(cell_count, ask.gassing_A);
  demand.opening_cm2 = vent_area_cm2(demand.flow_m3_per_h);
  demand.round_hole_mm = round_hole_mm(demand.opening_cm2);
  demand.spark_mm = spark_clearance_mm(ask.gassing_A, in.cells_per_block);
  demand.closed_min =
      minutes_to_limit_min(in.free_volume_m3, cell_count, ask.true_A, in.temperature_C);
  const Term cells{"n", static_cast<double>(cell_count), "", "cells, all strings"};
  result.trace.steps.push_back(
      {.id = "charge.vent_flow_" + std::string(ask.id),
       .label = "Air for " + std::string(ask.label),
       .symbol = "Q",
       .formula = "0.05 * n * I_g",
       .terms = {cells, {"I_g", ask.gassing_A, "A", "gassing current of a cell"}},
       .value = demand.flow_m3_per_h,
       .unit = "m3/h",
       .source = kVenting});
  result.trace.steps.push_back(
      {.id = "charge.vent_closed_" + std::string(ask.id),
       .label = "Closed locker to 4 %, " + std::string(ask.label),
       .symbol = "t_4",
       .formula = "60 * 0.04 * 1000 * V / (n * I * 22.414 / (2 * 26.801) * (T + 273.15) / 273.15)",
       .terms = {{"V", in.free_volume_m3, "m3", "free volume of the locker"},
                 cells,
                 {"I", ask.true_A, "A", "current that makes gas in a cell"},
                 {"T", in.temperature_C, "C", "temperature of the gas"}},
       .value = demand.closed_min,
       .unit = "min",
       .source = kFaraday});
  result.demands.push_back(demand);
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
                            .remedy = "Cut it larger, or lead the air with a fan made for it."});
  };
  opening("charge.vent_low", "Opening low, for air in", in.low_opening_cm2);
  opening("charge.vent_high", "Opening high, for gas out of the boat", in.high_opening_cm2);
  if (!in.opposite_sides) {
    trace.checks.push_back({.id = "charge.vent_apart",
                            .label = "Openings on one side, how far apart",
                            .actual = in.openings_apart_m,
                            .limit = kApart_m,
                            .unit = "m",
                            .comparison = Comparison::at_least,
                            .source = kVentSpacing,
                            .remedy = "Put the two openings on opposite sides."});
  }
}

void write_fan(const VentPlanInput& in, VentPlanResult& result) {
  Trace& trace = result.trace;
  trace.checks.push_back({.id = "charge.fan_flow",
                          .label = "Air that the fan moves",
                          .actual = in.fan_m3_per_h,
                          .limit = result.fan_m3_per_h,
                          .unit = "m3/h",
                          .comparison = Comparison::at_least,
                          .source = kVenting,
                          .remedy = "Fit a stronger fan, or a charger that stops itself when its "
                                    "volts run high."});
  const auto must = [&](std::string id, std::string label, bool done, const Source& source,
                        std::string remedy) {
    trace.checks.push_back({.id = std::move(id),
                            .label = std::move(label),
                            .actual = done ? 0.0 : 1.0,
                            .limit = 0.0,
                            .source = source,
                            .remedy = std::move(remedy)});
  };
  must("charge.fan_interlock", "Charger can run without the fan", in.fan_with_charger, kBatteryFan,
       "Wire the charger through a switch that the fan's own flow of air closes.");
  must("charge.fan_ignition", "Fan could light the gas", in.fan_protected, kChargerIgnition,
       "Fit an ignition-protected fan, or blow fresh air in low instead of sucking gas out.");
}

void write_lead_cautions(const VentPlanInput& in, Trace& trace) {
  trace.cautions.push_back({"charge.vent_never_down",
                            "Lead hydrogen out at the top. Openings made for petrol vapour are "
                            "low and do not let it out.",
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
  for (const Ask& ask : asks_of(in)) write_demand(in, ask, result);
  const VentDemand& boost = result.demands[1];
  const VentDemand& failed = result.demands[2];
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
