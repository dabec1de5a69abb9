#pragma once

#include <vector>

#include "base/trace.h"

namespace thole {

struct ShaftInput {
  double bow_height_m = 0.0;          // deck at the mount above calm water
  double collar_m = 0.0;              // top of the collar above the deck
  double propeller_diameter_m = 0.0;  // > 0
  double immersion_ratio = 1.5;       // axis depth over diameter, below the lowest surface
  double wave_height_m = 0.0;         // significant
  double wave_period_s = 0.0;         // peak
  double waterline_length_m = 0.0;
  double waterline_beam_m = 0.0;
  double draft_m = 0.0;
  double thruster_forward_m = 0.0;        // of midships
  double trim_allowance_m = 0.0;          // rise of the bow from loaded to light
  std::vector<double> stock_lengths_m{};  // any order; may be empty
  double length_m = 0.0;                  // given; 0 = choose from stock
  double thrust_N = 0.0;                  // static, full
  double tube_outer_mm = 0.0;             // 0 = not known
  double tube_wall_mm = 0.0;
  double tube_yield_MPa = 0.0;  // of a composite: its flexural strength
  double tube_modulus_GPa = 0.0;
  double current_mps = 0.0;     // that she holds in
  double assumed_immersion_factor = 0.97;  // what the hold stage counted on
};

struct ShaftResult {
  double length_required_m = 0.0;
  bool length_found = false;       // length_m reaches length_required_m
  double length_m = 0.0;           // chosen or given; the longest on offer when none reaches
  double margin_m = 0.0;           // length_m - length_required_m
  double propeller_depth_m = 0.0;  // axis, still water, loaded, at length_m; negative: in the air
  double depth_required_m = 0.0;
  double relative_motion_m = 0.0;  // the surface falls so far below its calm level at the bow
  double relative_sigma_m = 0.0;   // standard deviation of the water against the bow
  double immersion_factor = 0.0;   // mean share of thrust left, in the light trim
  double emergence_frac = 0.0;     // share of time in which the upper blade tip shows
  double draft_deployed_m = 0.0;   // lowest blade tip below calm water
  double tube_stress_MPa = 0.0;
  double tube_deflection_mm = 0.0;
  double tube_slope_deg = 0.0;
  double wave_drag_N = 0.0;  // on the tube
  double speed_limit_deployed_mps = 0.0;  // drag equals the motor's thrust
  Trace trace{};
};

// Which shaft reaches water from this bow, and whether its tube bears the thrust.
//
//   L = bow height + collar + i D + a_rel + a_trim, rounded up to what is sold
//   a_rel = the larger of 2 sigma (closed-form motion in a JONSWAP sea) and Cr Hs / 2 (regular
//   wave)
//
// Length runs from the top of the collar to the propeller's axis. Sources: motion.h, immersion.h,
// tube.h; the rule for depth is our own judgement on them (docs/decisions.md): i D with i = 1.5,
// and never less than R + 2 sigma. Head sea, deep water, no way on. Left out: wakes of other boats,
// steering torque, fatigue of the tube.
ShaftResult shaft(const ShaftInput& in);

// The smallest of `lengths_m` that is not below `needed_m`; 0 when none is.
double next_length_up_m(const std::vector<double>& lengths_m, double needed_m);

}  // namespace thole
