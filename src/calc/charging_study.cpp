#include "calc/charging_study.h"

#include <algorithm>
#include <cmath>

#include "calc/charge/refill.h"
#include "calc/charge/taper.h"
#include "data/batteries.h"

namespace thole {
namespace {

constexpr int kPoints_count = 96;
constexpr double kBeyond_ratio = 1.1;  // of the picture past leaving or full
constexpr double kTrial_A = 1.0;       // any current tells what the alternator has to spare

ChargingNight night_of(const ChargeInput& in, const ChargeResult& charge, const ShoreResult& shore) {
  const ChemistryFacts& facts = facts_of(in.chemistry);
  const int cells = cell_count(in.chemistry, in.block_nominal_V);
  const double float_V = float_cell_V(in.chemistry);
  ChargingNight night{.leaves_h = in.available_h,
                      .charge_at_leaving_frac = shore.left_frac,
                      .absorption_V = charge.charge_V,
                      .absorption_25_V = facts.absorption_cell_V * cells,
                      .temperature_C = in.temperature_C};
  if (float_V > 0.0) {
    night.float_V =
        cells * compensated_V(float_V, facts.absorption_slope_V_per_K, in.temperature_C);
  }
  const TaperInput course =
      refill_course(in.chemistry, in.block_capacity_Ah, in.depth_used_frac, shore.output_A);
  if (in.depth_used_frac > 0.0) {
    const TaperResult whole = taper(course);
    night.bulk_h = whole.bulk_h;
    night.full_h = whole.time_h;
  }
  const double end_h = kBeyond_ratio * std::max(night.leaves_h, night.full_h);
  for (int i = 0; i <= kPoints_count; ++i) {
    const double time_h = end_h * i / kPoints_count;
    night.points.push_back(
        {.time_h = time_h,
         .current_A = refill_current_A(course, time_h),
         .charge_frac = 1.0 - in.depth_used_frac + stored_Ah(course, time_h) / in.block_capacity_Ah});
  }
  return night;
}

// The converter that there is, or the largest that the alternator feeds, in halves of an ampere.
double converter_A(const ChargeInput& in, const ChargeResult& charge) {
  if (in.converter_A > 0.0) return in.converter_A;
  DcDcInput trial = dc_dc_input(in, charge);
  trial.output_A = kTrial_A;
  const DcDcResult asked = dc_dc(trial);
  if (!(asked.input_A > 0.0)) return 0.0;
  return std::floor(2.0 * kTrial_A * asked.spare_A / asked.input_A) / 2.0;
}

}  // namespace

ChargingStudy charging_study(const Design& design) {
  ChargingStudy study;
  if (!design.bank.found || !design.charge.found) {
    study.problem = design.bank.found ? "No charger on offer serves this bank."
                                      : "Choose a bank first: there is nothing to charge.";
    return study;
  }
  const ChargeResult& charge = design.charge;
  study.input = charge_input(design);
  study.shore = shore(shore_input(study.input, charge));
  if (study.shore.problem.empty()) study.night = night_of(study.input, charge, study.shore);
  study.converter = study.input.converter_A > 0.0;
  study.converter_A = converter_A(study.input, charge);
  DcDcInput engine = dc_dc_input(study.input, charge);
  engine.output_A = study.converter_A;
  if (study.converter_A > 0.0) {
    study.engine = dc_dc(engine);
  } else {
    study.engine.problem = "The alternator has nothing to spare for the bank.";
  }
  study.panel = study.input.panel_W > 0.0;
  study.sun = solar(solar_input(study.input));
  // What is not fitted can be asked about, and fails nothing.
  if (!study.converter) study.engine.trace.checks.clear();
  if (!study.panel) study.sun.trace.checks.clear();
  study.vents = vent_plan_input(study.input, charge);
  study.venting = charge.venting;
  return study;
}

}  // namespace thole
