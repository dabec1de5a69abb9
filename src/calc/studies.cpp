#include "calc/studies.h"

#include <cmath>

namespace thole {
namespace {

constexpr double kForecastHeight_m = 10.0;

double or_else(const Given<double>& value, double fallback) {
  return value.known() ? value.value : fallback;
}

Given<double> thousandths(double value) {
  return {std::round(1000.0 * value) / 1000.0, Origin::given};
}

}  // namespace

HoldRunInput hold_run_input(const Design& design) {
  const Job& job = design.job;
  HoldRunInput in = run_input(hold_input(design), design.hold,
                              job.water.exposure.value == Exposure::sheltered);
  in.tolerance_m = job.hold.tolerance_m.value;
  in.tolerance_frac = job.hold.tolerance_frac.value;
  in.gust.law = job.hold.gusts.value;
  return in;
}

CalibrateInput trial_input(const Design& design) {
  const Hold& hold = design.job.hold;
  CalibrateInput in{.boat = hold_input(design), .motor = design.hold.motor};
  if (!hold.trial_wind_mps.known()) return in;
  const double height_m = or_else(hold.trial_wind_height_m, kForecastHeight_m);
  const double current_mps = or_else(hold.trial_current_mps, 0.0);
  const double current_angle_deg = or_else(hold.trial_current_angle_deg, 0.0);
  if (hold.drift_min.known() && hold.drift_mps.known()) {
    in.drifts.push_back({.time_min = hold.drift_min.value,
                         .drift_mps = hold.drift_mps.value,
                         .drift_angle_deg = or_else(hold.drift_angle_deg, 0.0),
                         .wind_mps = hold.trial_wind_mps.value,
                         .wind_height_m = height_m,
                         .current_mps = current_mps,
                         .current_angle_deg = current_angle_deg});
  }
  if (hold.held_thrust_frac.known()) {
    HeldReading held{.thrust_frac = hold.held_thrust_frac.value,
                     .wind_mps = hold.trial_wind_mps.value,
                     .wind_height_m = height_m,
                     .current_mps = current_mps,
                     .current_angle_deg = current_angle_deg};
    if (hold.trial_wave_m.known()) held.wave_height_m = hold.trial_wave_m.value;
    in.holds.push_back(held);
  }
  return in;
}

Job with_trial_factors(Job job, const CalibrateResult& trial) {
  job.hold.windage_factor = thousandths(trial.windage.value_factor);
  job.hold.drag_factor = thousandths(trial.drag.value_factor);
  return job;
}

}  // namespace thole
