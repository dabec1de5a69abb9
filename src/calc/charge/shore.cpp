#include "calc/charge/shore.h"

#include <algorithm>
#include <cmath>

#include "base/number.h"
#include "calc/charge/refill.h"
#include "data/sources.h"
#include "data/sources_battery.h"

namespace thole {
namespace {

constexpr double kContinuous_frac = 0.8;  // kShoreLoad
constexpr int kMostBlocks_count = 64;     // more are no bank of these boats

bool positive(double value) { return value > 0.0 && std::isfinite(value); }
bool not_negative(double value) { return value >= 0.0 && std::isfinite(value); }
bool share(double value_frac) { return value_frac > 0.0 && value_frac <= 1.0; }

std::string amps(double value_A) { return trimmed(fixed(value_A, 1)) + " A"; }

void write_cautions(const ShoreInput& in, Trace& trace) {
  const auto warn = [&](std::string id, std::string text, const Source& source) {
    trace.cautions.push_back({std::move(id), std::move(text), source});
  };
  warn("charge.shore_inlet",
       "Inlet, cord, isolator and every plug between must carry " + amps(in.outlet_A) +
           ", the outlet's breaker, and no more than " + amps(kContinuous_frac * in.outlet_A) +
           " of it for hours.",
       kShoreLoad);
  warn("charge.shore_residual",
       "Have a residual-current device of 30 mA at the inlet and test it before each season.",
       kCommonPractice);
  warn("charge.shore_isolator",
       "Fit a galvanic isolator rated for at least " + amps(in.outlet_A) +
           ", or an isolating transformer: shore earth eats the underwater metal.",
       kCommonPractice);
  warn("charge.shore_cord",
       "Use a marine cord, uncoiled, plugs out of the water and cool to the hand after an hour.",
       kCommonPractice);
}

}  // namespace

double outlet_spare_A(double outlet_A, double other_loads_A, double limit_A) {
  return std::min(limit_A, std::max(0.0, kContinuous_frac * outlet_A - other_loads_A));
}

ShoreResult shore(const ShoreInput& in) {
  ShoreResult result{};
  if (in.block_count < 1 || in.block_count > kMostBlocks_count ||
      !sound_refill(in.block_capacity_Ah, in.depth_frac, in.charger_A) ||
      !positive(in.block_charge_V)) {
    result.problem = "The bank and the charger need their blocks, amp-hours, volts and amps.";
  } else if (!share(in.efficiency_frac) || !share(in.power_factor) || !positive(in.shore_V) ||
             !positive(in.outlet_A) || !not_negative(in.other_loads_A) ||
             !not_negative(in.night_h) || !(in.limit_A > 0.0)) {
    result.problem = "The outlet needs its volts, its amps and the hours of the night.";
  }
  if (!result.problem.empty()) return result;
  const MainsInput wanted{.output_count = in.block_count,
                          .charge_V = in.block_charge_V,
                          .output_A = in.charger_A,
                          .efficiency_frac = in.efficiency_frac,
                          .power_factor = in.power_factor,
                          .shore_V = in.shore_V};
  const double wanted_A = mains_A(wanted);
  result.spare_A = outlet_spare_A(in.outlet_A, in.other_loads_A, in.limit_A);
  result.output_A = in.charger_A * std::min(1.0, result.spare_A / wanted_A);
  result.shore_A = std::min(wanted_A, result.spare_A);
  result.left_frac = 1.0 - in.depth_frac;
  Trace& trace = result.trace;
  const Term outlet{"I_o", in.outlet_A, "A", "the outlet's breaker"};
  const double most_A = std::isfinite(in.limit_A) ? in.limit_A : in.outlet_A;
  tell([&] {
    trace.steps.push_back({.id = "charge.shore_spare",
                           .label = "Current that the outlet can spare for hours",
                           .symbol = "I_s",
                           .formula = "min(I_m, max(0, 0.8 * I_o - I_x))",
                           .terms = {{"I_m", most_A, "A", "that the charger may take"},
                                     outlet,
                                     {"I_x", in.other_loads_A, "A", "other loads on it"}},
                           .value = result.spare_A,
                           .unit = "A",
                           .source = kShoreLoad});
    trace.steps.push_back(
        {.id = "charge.shore_output",
         .label = "Into each block on that current",
         .symbol = "I_b",
         .formula = "min(I_c, I_s * e * pf * V_ac / (n * V))",
         .terms = {{"I_c", in.charger_A, "A", "charger, into each block"},
                   {"I_s", result.spare_A, "A", "that the outlet can spare"},
                   {"e", in.efficiency_frac, "", "efficiency of the charger"},
                   {"pf", in.power_factor, "", "power factor of the charger"},
                   {"V_ac", in.shore_V, "V", "shore supply"},
                   {"n", static_cast<double>(in.block_count), "", "blocks charged at once"},
                   {"V", in.block_charge_V, "V", "a block on charge"}},
         .value = result.output_A,
         .unit = "A",
         .source = kDefinition});
  });
  trace.checks.push_back({.id = "charge.shore_current",
                          .label = "Current from shore",
                          .actual = wanted_A,
                          .limit = result.spare_A,
                          .unit = "A",
                          .source = kShoreLoad,
                          .remedy = "Turn the charger down, switch other loads off, or use a "
                                    "stronger outlet."});
  if (!(result.output_A > 0.0)) {
    result.problem = "The other loads leave the charger nothing of this outlet.";
    write_cautions(in, trace);
    return result;
  }
  if (in.depth_frac > 0.0) {
    const TaperInput course =
        refill_course(in.chemistry, in.block_capacity_Ah, in.depth_frac, result.output_A);
    result.full_h = taper(course).time_h;
    result.left_frac += stored_Ah(course, in.night_h) / in.block_capacity_Ah;
  }
  result.full_tonight = result.full_h <= in.night_h;
  trace.checks.push_back({.id = "charge.tonight",
                          .label = "Full before the boat leaves",
                          .actual = result.full_h,
                          .limit = in.night_h,
                          .unit = "h",
                          .source = kDefinition,
                          .remedy = "Leave later, use a stronger outlet, or plan the day with what "
                                    "is in the bank."});
  write_cautions(in, trace);
  return result;
}

}  // namespace thole
