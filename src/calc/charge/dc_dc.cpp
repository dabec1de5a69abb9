#include "calc/charge/dc_dc.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "base/number.h"
#include "calc/charge/refill.h"
#include "data/sources.h"
#include "data/sources_battery.h"

namespace thole {
namespace {

bool positive(double value) { return value > 0.0 && std::isfinite(value); }
bool share(double value_frac) { return value_frac > 0.0 && value_frac <= 1.0; }

void write_currents(const DcDcInput& in, DcDcResult& result) {
  std::vector<Step>& steps = result.trace.steps;
  const Term out_V{"V_o", in.charge_V, "V", "bank on charge"};
  const Term loss{"e", in.efficiency_frac, "", "efficiency of the converter"};
  const Term in_V{"V_i", in.alternator_V, "V", "alternator, running"};
  steps.push_back(
      {.id = "charge.dc_dc_input",
       .label = "Drawn from the alternator at full output",
       .symbol = "I_in",
       .formula = "V_o * I_o / (e * V_i)",
       .terms = {out_V, {"I_o", in.output_A, "A", "converter, into the bank"}, loss, in_V},
       .value = result.input_A,
       .unit = "A",
       .source = kDefinition});
  steps.push_back({.id = "charge.dc_dc_spare",
                   .label = "Spare current of the alternator",
                   .symbol = "I_s",
                   .formula = "max(0, f * I_a - I_own)",
                   .terms = {{"f", in.hot_frac, "", "of its label, hot and at idle"},
                             {"I_a", in.alternator_A, "A", "alternator, by its label"},
                             {"I_own", in.own_loads_A, "A", "the boat's own loads"}},
                   .value = result.spare_A,
                   .unit = "A",
                   .source = kCommonPractice});
  steps.push_back({.id = "charge.dc_dc_output",
                   .label = "Into the bank within that share",
                   .symbol = "I_b",
                   .formula = "min(I_o, I_s * e * V_i / V_o)",
                   .terms = {{"I_o", in.output_A, "A", "converter, into the bank"},
                             {"I_s", result.spare_A, "A", "spare current of the alternator"},
                             loss,
                             in_V,
                             out_V},
                   .value = result.output_A,
                   .unit = "A",
                   .source = kDefinition});
}

void check_alternator(DcDcResult& result) {
  std::vector<Change> changes;
  const double fits_A = std::floor(2.0 * result.output_A) / 2.0;  // a field's quantum
  if (fits_A > 0.0) {
    changes.push_back({.field = "charge.converter_A",
                       .value = fits_A,
                       .label = "Turn the converter down to " + trimmed(fixed(fits_A, 1)) + " A"});
  }
  changes.push_back(
      {.field = "charge.converter_A", .value = 0.0, .label = "Leave the converter out"});
  result.trace.checks.push_back(
      {.id = std::string(kAlternatorCheck),
       .label = "Converter's draw on the alternator",
       .actual = result.input_A,
       .limit = result.spare_A,
       .unit = "A",
       .source = kCommonPractice,
       .remedy = "Turn the converter down, fit a smaller one, or a larger alternator: hot and slow "
                 "it gives half of its label.",
       .changes = std::move(changes)});
}

void write_checks(const DcDcInput& in, DcDcResult& result) {
  Trace& trace = result.trace;
  trace.checks.push_back({.id = "charge.dc_dc_running",
                          .label = "Hours of running to full",
                          .actual = result.full_h,
                          .limit = in.running_h,
                          .unit = "h",
                          .source = kDefinition,
                          .remedy = "Count on shore power for the rest: the engine does not run "
                                    "long enough to fill the bank."});
  trace.cautions.push_back(
      {"charge.dc_dc_switch",
       "Let the converter start only when the engine runs: it would empty the start battery.",
       kCommonPractice});
  trace.cautions.push_back(
      {"charge.dc_dc_fuse", "Fuse the converter's leads at both batteries.", kCommonPractice});
  if (!is_lead(in.chemistry)) {
    trace.cautions.push_back({"charge.dc_dc_cold",
                              "Use a converter that stops below the block's charging temperature.",
                              kCommonPractice});
  }
}

}  // namespace

DcDcResult dc_dc(const DcDcInput& in) {
  DcDcResult result{};
  if (!sound_refill(in.capacity_Ah, in.depth_frac, in.output_A) || !positive(in.charge_V)) {
    result.problem = "The bank and the converter need their amp-hours, volts and amps.";
  } else if (!positive(in.alternator_V) || !positive(in.alternator_A) || !share(in.hot_frac) ||
             !share(in.efficiency_frac) ||
             !(in.own_loads_A >= 0.0 && std::isfinite(in.own_loads_A)) ||
             !(in.running_h >= 0.0 && std::isfinite(in.running_h))) {
    result.problem = "The alternator needs its amps, its volts and the hours that it runs.";
  }
  if (!result.problem.empty()) return result;
  result.input_A = in.charge_V * in.output_A / (in.efficiency_frac * in.alternator_V);
  result.share_frac = result.input_A / in.alternator_A;
  result.spare_A = std::max(0.0, in.hot_frac * in.alternator_A - in.own_loads_A);
  result.output_A =
      std::min(in.output_A, result.spare_A * in.efficiency_frac * in.alternator_V / in.charge_V);
  result.left_frac = 1.0 - in.depth_frac;
  write_currents(in, result);
  check_alternator(result);
  if (!(result.output_A > 0.0)) {
    result.problem = "The alternator has nothing to spare for the bank.";
    return result;
  }
  if (in.depth_frac > 0.0) {
    const TaperInput course =
        refill_course(in.chemistry, in.capacity_Ah, in.depth_frac, result.output_A);
    result.full_h = taper(course).time_h;
    result.stored_Ah = stored_Ah(course, in.running_h);
    result.left_frac += result.stored_Ah / in.capacity_Ah;
  }
  write_checks(in, result);
  return result;
}

}  // namespace thole
