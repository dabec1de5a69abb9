#pragma once

// What a longer shaft buys and what it costs: thrust kept and time ventilating against its length, and how
// the chosen tube bends along its length at full thrust.

#include <string>
#include <vector>

#include "calc/design.h"

namespace thole {

// Less than so many diameters under the surface the axis lies where a propeller at the post draws air, as in
// the shaft stage: project decision, on the tests of Koushan 2006.
inline constexpr double kVentilates_ratio = 1.0;

struct LengthPoint {
  double length_m = 0.0;
  double kept_frac = 0.0;         // of full thrust, mean in the waves, light trim
  double ventilating_frac = 0.0;  // of the time: axis less than a diameter down, where it draws air at the post
  double tip_frac = 0.0;          // of the time an upper blade tip shows
  double stress_MPa = 0.0;        // in the tube at full thrust; 0 where the tube is not known
  double deflection_mm = 0.0;
  double slope_deg = 0.0;
};

// At a place along the tube.
struct BendPoint {
  double below_m = 0.0;  // under the lower bearing
  double moment_Nm = 0.0;
  double stress_MPa = 0.0;
  double deflection_mm = 0.0;
  double slope_deg = 0.0;
};

struct LengthStudy {
  std::string problem{};             // a sentence where there is no motor
  std::vector<LengthPoint> curve{};  // ascending
  std::vector<LengthPoint> sold{};   // what the motor is sold with, ascending
  LengthPoint chosen{};
  double needed_m = 0.0;
  double deepest_m = 0.0;            // of the lowest blade tip at the chosen length
  std::vector<BendPoint> bend{};     // from the bearing down; empty: the tube is not known
  double limit_MPa = 0.0;            // of the design's check of the tube
  std::vector<std::string> advice{}; // on cutting to length
};

LengthStudy length_study(const Design& design);

// w(x) = T x^2 (3 L - x) / (6 E I), slope T x (2 L - x) / (2 E I), moment T (L - x): a cantilever pushed
// at its end. Source: elementary beam theory. Precondition: a real tube, 0 <= x <= L.
BendPoint bend_at(double outer_mm, double wall_mm, double modulus_GPa, double arm_m, double thrust_N, double below_m);

}  // namespace thole
