#pragma once

// What the mount holds its plate to, and where bolts stand on it: project decisions in one place.

#include <algorithm>

#include "data/alloys.h"

namespace thole {

inline constexpr double kSlamPulse_s = 0.15;  // 0.1 .. 0.25 s, recalled

// The aft row stands so far from the plate's aft edge.
inline constexpr double kAftMargin_frac = 0.12;  // of the plate's length
inline constexpr double kAftMarginLeast_mm = 30.0;
inline double aft_margin_mm(double plate_length_mm) {
  return std::max(kAftMargin_frac * plate_length_mm, kAftMarginLeast_mm);
}

// Share of the force that breaks a bolt: in a slam or under a person, at full thrust, when the shaft
// folds.
inline constexpr double kSlamBolt_frac = 0.4;
inline constexpr double kThrustBolt_frac = 0.25;
inline constexpr double kUltimateBolt_frac = 0.8;

// Bolts by EN 1990 and EN 1993-1-8 Table 3.4, recalled: the factor on loads, and how much of the tension counts
// beside shear.
inline constexpr double kBoltLoad_factor = 1.5;
inline constexpr double kTensionInShear_factor = 1.4;

// Of stainless steel, and what nut and bedding add to a grip (project decision).
inline constexpr double kBoltModulus_MPa = 193e3;
inline constexpr double kNutAndBedding_mm = 10.0;

// How much more than by the elastic group the worst bolt pulls at full thrust, because the plate bends and
// pries: finite elements without preload give 1.5 to 2.1 on the ready-made jobs.
inline constexpr double kPrying_factor = 2.2;

// The shaft is the fuse: so many times what folds it must bolts and deck stand.
inline constexpr double kSnagOver_factor = 1.2;

// Sag of the stowed motor at rest, of its overhang; and the band its frequency must keep out of: an
// engine's first order, idling at 600 to 900 rpm, with a fifth and a quarter to spare.
inline constexpr double kSagAtRest_frac = 1.0 / 100.0;
inline constexpr double kIdleLow_Hz = 10.0;
inline constexpr double kIdleHigh_Hz = 15.0;
inline constexpr double kBandLow_factor = 0.8;
inline constexpr double kBandHigh_factor = 1.25;

// The first order of an engine that runs, at 3500 to 6000 rpm (recalled).
inline constexpr double kCruiseLow_Hz = 3500.0 / 60.0;
inline constexpr double kCruiseHigh_Hz = 6000.0 / 60.0;

// Allowable stress: in a slam, under a person; and at full thrust, over and over.
inline double extreme_stress_MPa(const Alloy& alloy) {
  return std::min(0.7 * alloy.yield_MPa, 0.5 * alloy.tensile_MPa);
}
inline double working_stress_MPa(const Alloy& alloy) { return 0.4 * alloy.yield_MPa; }

}  // namespace thole
