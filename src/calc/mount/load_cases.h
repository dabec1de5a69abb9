#pragma once

// Everything the mount must stand, in one place: each case with its force, where it acts, by how much
// it is multiplied, what it is judged by, its source and the range in which its formula holds.
// Axes as in bolt_group.h: x forward, y to port, z up, from the bolt group's centroid on the deck.

#include <string>
#include <string_view>
#include <vector>

#include "base/trace.h"
#include "calc/mount/bolt_group.h"
#include "calc/mount/slam.h"

namespace thole {

// A person stepping on it, and hanging on the stowed motor, whose middle lies so far above the deck.
inline constexpr double kPerson_N = 1500.0;
inline constexpr double kPersonFoot_mm = 100.0;  // square
inline constexpr double kHandhold_N = 1000.0;
inline constexpr double kMotorHeight_mm = 150.0;

// The road with the motor stowed, a pothole in g beside its weight: handbook; securing loads on lorries asks
// for 0.8 ahead and 0.5 aside.
inline constexpr double kRoadDown_g = 2.0;
inline constexpr double kRoadAlong_g = 1.0;
inline constexpr double kRoadAcross_g = 0.5;

// How many times its weight the stowed motor is thrown up after a slam: half of the acceleration where it
// lies, less its weight (project decision). `amplification_factor` counts as 1 at least.
double rebound_factor(double motor_g, double amplification_factor);

// Pressure under a flat plate that the sea comes up against: rho / 2 * 2 pi * v^2 with v = w a, a the water's
// rise against the bow that one wave in a thousand brings, when that reaches the plate; never less than a deck's
// 5 kN/m2. Precondition: period_s > 0.
struct Dive {
  double rise_m = 0.0;
  double speed_mps = 0.0;
  double pressure_Pa = 0.0;
  bool reaches = false;
};
Dive dive(double relative_sigma_m, double plate_height_m, double period_s, double water_kg_per_m3);

// By what a case is judged: working loads come over and over, extreme ones now and then; an ultimate
// one may bend what is cheap, and nothing else.
enum class LoadGrade { working, extreme, ultimate };
std::string_view word(LoadGrade grade);

struct LoadCase {
  std::string id{};     // "thrust.090", "slam"
  std::string label{};
  GroupLoad force{};    // before its factor, at `at`
  LoadPoint at{};
  double load_factor = 1.0;
  LoadGrade grade = LoadGrade::extreme;
  GroupLoad at_bolts{};    // times the factor, moved to the centroid
  double moment_Nm = 0.0;  // of that, overturning: about both axes of the deck
  double bolt_N = 0.0;     // most tension of a bolt by the elastic group, which knows no prying
  bool in_range = true;
  std::string range{};     // what it is good for, or why it is outside of that
  SourceRef source{};
};

// One formula's word on how hard she slams. 1/100 highest, in g above gravity.
struct SlamFormula {
  std::string_view label{};
  double cg_g = 0.0;
  double bow_g = 0.0;
  double motor_g = 0.0;  // where the stowed motor lies: bow and beyond on a straight line
  std::vector<std::string> outside{};  // one sentence for each bound that is not kept; empty: in range
  std::string_view range{};
  SourceRef source{};
};

// How fast she may go with the motor stowed, in one sea.
struct SeaSpeed {
  double wave_m = 0.0;  // significant
  double speed_mps = 0.0;
  double slam_N = 0.0;    // of the stowed motor at its fastest run in that sea
  bool in_range = true;   // false: slower than the formula is for
};

struct LoadCasesInput {
  double thrust_N = 0.0;
  double thrust_lever_m = 0.0;  // propeller axis below the plate
  double motor_mass_kg = 0.0;
  bool chocked = false;
  BoltPattern pattern{};
  double reach_mm = 0.0;          // front row to the stowed motor's centre of mass
  double plate_end_mm = 0.0;      // front row to the plate's fore end
  double overhang_m2 = 0.0;       // of the plate, beyond the edge of the deck
  double deck_ahead_mm = 0.0;     // front row to the edge of the deck
  double plate_height_m = 0.0;    // above the water
  double relative_sigma_m = 0.0;  // of the water against the bow, at anchor or holding
  double wave_period_s = 0.0;
  double water_kg_per_m3 = 1025.0;
  double slam_N = 0.0;            // of the stowed motor, as the mount is designed for
  double bow_g = 0.0;             // behind it, at the bow
  double motor_g = 0.0;           // and where the motor lies
  double amplification_factor = 1.0;
  PlaningHull hull{};
  double run_wave_m = 0.0;
  double motor_x_m = 0.0;   // forward of the transom, stowed
  double centre_x_m = 0.0;  // the boat's centre of gravity, likewise
  double design_cg_g = 0.0;
  bool trailered = false;
  double immersed_m = 0.0;            // of the shaft
  double stem_drag_N_s2_per_m2 = 0.0;  // drag over speed squared
  double deployed_drag_N = 0.0;        // of waves and current together, on shaft and pod
  double deployed_lever_m = 0.0;       // below the plate, where it acts
  double current_mps = 0.0;
  double deployed_limit_mps = 0.0;  // drag equals full thrust
  double shaft_arm_m = 0.0;         // lower bearing to propeller axis
  double shaft_N_per_m = 0.0;       // its stiffness at the propeller; 0: tube not known
  double shaft_plastic_Nm = 0.0;    // moment at which it folds; 0: tube not known
};

struct LoadCases {
  std::vector<LoadCase> cases{};
  std::vector<SlamFormula> formulas{};
  std::vector<SeaSpeed> seas{};
  Trace trace{};
};

// The cases, in this order: full thrust every 15 degrees; stowed slam and rebound; motor down with
// waves and current; forgotten down under way, at the limit and at full run; snag, from ahead and from
// the side; the sea against what overhangs of the plate; a person on it and hanging on the motor; the road, when she goes by trailer. On a chock only the bolts'
// share of what presses the motor down is counted; nothing holds it up but they.
//
// Sources stand with each case. Factors: 1.5 on drag, 1.2 on the shaft's folding; the others carry
// theirs in the load. Precondition: three bolts or more, not in
// one line.
LoadCases load_cases(const LoadCasesInput& in);

// Acceleration at x from those at the centre of gravity and the bow, a rigid body's straight line.
double acceleration_at_g(double cg_g, double bow_g, double x_m, double centre_x_m, double bow_x_m);

}  // namespace thole
