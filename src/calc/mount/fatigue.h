#pragma once

// Screening against fatigue: ranges of stress that a detail stands so many times. Ranges in MPa.

#include <string_view>

namespace thole {

// Range = factor N^(-1/m), plates of aluminium by the Aluminum Design Manual's categories (recalled;
// they give back its remembered limits), steel by EN 1993-1-9 (recalled).
struct FatigueDetail {
  std::string_view name{};
  double range_MPa = 0.0;   // at `cycles_count`
  double cycles_count = 1.0;
  double slope_exponent = 1.0;  // m
};
FatigueDetail aluminium_plain();        // category A
FatigueDetail aluminium_bolt_holes();   // category B: low mean stress
FatigueDetail aluminium_poor_holes();   // category D: high mean stress
FatigueDetail aluminium_welds();        // category E
FatigueDetail steel_plain();            // EN 1993-1-9, 160
FatigueDetail steel_bolt_holes();       // EN 1993-1-9, 90
FatigueDetail bolt_thread();            // EN 1993-1-9, 50: rolled thread in tension

// Stress at the edge of a hole over that of the plate without it, bent one way: 3 for a hole that is small beside
// the thickness, 1.79 for a wide one. Roark, Table 17.1, out-of-plane bending of a wide plate.
// Precondition: thickness_mm > 0.
double hole_in_bending_factor(double hole_mm, double thickness_mm);

double range_MPa(const FatigueDetail& detail, double cycles_count);

// The steady range that does the same harm as peaks spread exponentially about this mean:
// mean (m!)^(1/m). Slams of planing boats are close to that (Fridsma 1971).
double same_harm_factor(double slope_exponent);

inline constexpr double kLife_year = 10.0;  // that the mount is meant for; project decision

// Slams in that life: one a second, 50 hours a year.
double slams_in_life();

// Swings of the thrust in that life: one in ten seconds of holding, 300 hours a year.
double swings_in_life();

// Their steady range that does the same harm, over the stress of full thrust. Thrust swings about half of
// full, spread exponentially, the highest hundredth from nothing to full on average, all of them 0.18 of full; once in an hour it turns from full
// one way to full the other, whose range is `reversal_factor` times that stress: 2 in a plate that is bent
// both ways, 1 in a thread that is only pulled. Harm adds up (Miner). Project decision.
double swing_factor(double slope_exponent, double reversal_factor);

// Until both steady ranges together, each as often as above, use the detail up (Miner); infinite when nothing swings.
double life_years(const FatigueDetail& detail, double thrust_range_MPa, double slam_range_MPa);

}  // namespace thole
