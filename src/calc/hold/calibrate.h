#pragma once

// What a trial at sea tells of this very hull: how much more or less the wind and the current load
// it than computed. Two kinds of readings, as many of each as there are:
//
//   drift   the boat adrift, bow motor up: k/(1-k) = (wind drag / water drag)^(1/2) gives the ratio
//           of the two loads (k: drift through the water as a share of the wind over the water);
//   held    the boat held, thrust read off: the sum of the loads of wind, current and waves.
//
// A drift alone cannot tell more windage from less drag, a held reading alone not wind from waves.
// What the readings leave open stays near what is computed: a weighted least-squares fit over the
// logarithms of five factors (wind, current, waves, drift law, thrust read off), each held to 1 by
// what is thought of it beforehand. The band is that fit's: two standard deviations either side.
//
// Source of the drift law: Allen 2005. Of the widths: docs/decisions.md. Range: 0.25 to 4.

#include <optional>
#include <string>
#include <vector>

#include "base/issue.h"
#include "base/trace.h"
#include "calc/hold/hold.h"
#include "data/parts.h"

namespace thole {

// Angles in the frame of the wind: a current angle says where the current comes from, clockwise
// from where the wind comes from; a drift angle where the boat goes, clockwise from straight
// downwind.
struct DriftReading {
  double time_min = 5.0;   // adrift
  double drift_mps = 0.0;  // mean speed over the ground
  double drift_angle_deg = 0.0;
  double wind_mps = 0.0;        // mean
  double wind_height_m = 10.0;  // where the wind was read, or forecast for
  double current_mps = 0.0;
  double current_angle_deg = 0.0;
};

struct HeldReading {
  double thrust_frac = 0.0;  // mean of what the motor shows, as a share of full thrust
  double wind_mps = 0.0;
  double wind_height_m = 10.0;
  double current_mps = 0.0;
  double current_angle_deg = 0.0;
  std::optional<double> wave_height_m{};  // significant; empty: by the fetch of the boat's input
};

struct CalibrateInput {
  HoldInput boat{};  // as designed; its own factors are not used
  MotorClass motor{};
  std::vector<DriftReading> drifts{};
  std::vector<HeldReading> holds{};
};

struct Band {
  double value_factor = 1.0;
  double low_factor = 1.0;
  double high_factor = 1.0;
};

// A reading beside what is computed for it: the drift through the water as a share of the wind, or
// the share of full thrust.
struct ReadingFit {
  std::string label{};  // "Drift 1", "Held 2"
  double measured_frac = 0.0;
  double computed_frac = 0.0;    // before the trial
  double calibrated_frac = 0.0;  // with the factors
  double cross_frac = 0.0;       // drift across the wind, clockwise positive; 0 when held
  double off_ratio = 0.0;        // how far off that still is, in standard deviations of the reading
};

struct CalibrateResult {
  bool fitted = false;  // false: no reading was of use, all factors are 1
  Band windage{};
  Band drag{};
  Band windage_over_drag{};
  std::vector<ReadingFit> readings{};  // those that were of use
  Issues issues{};                     // readings that were not, and why; `field` is "drift 1"
  Trace trace{};
};

// Precondition: the ranges of job/fields.cpp for the boat; readings may be anything.
CalibrateResult calibrate(const CalibrateInput& in);

// Wind at 10 m of one that was read lower down, over open water. Source: ISO 19901-1 (NPD).
double wind_at_ten_metres_mps(double wind_mps, double height_m);

}  // namespace thole
