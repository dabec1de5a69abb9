#pragma once

// The room that a bow motor takes, as round bars with round ends: tube, head, pod, blades.
//
// Axes: a aft of the stem, s to starboard of the centreline, z above the deck. Metres.
//
// A motor of this kind is drawn up through its collar until the pod lies at the mount, then laid down
// about the pivot with its head aft. The pod then lies athwart, its propeller to either side (both are
// counted). Sizes are proportions of common practice where the catalogue has none: the pod 420 mm long
// and 110 mm thick, the propeller 230 mm off the shaft, the head 250 mm long and 200 mm thick.

#include <string_view>
#include <vector>

namespace thole {

struct Place3 {
  double aft_m = 0.0;
  double starboard_m = 0.0;
  double up_m = 0.0;
};

// All points within `radius_m` of the line from a to b.
struct Bar {
  std::string_view part{};  // "shaft", "head", "pod", "propeller"
  Place3 a{};
  Place3 b{};
  double radius_m = 0.0;
};

struct MotorSizes {
  double length_m = 0.0;              // collar to propeller axis; > 0
  double tube_m = 0.0;                // outside diameter; > 0
  double propeller_diameter_m = 0.0;  // > 0
  double collar_m = 0.0;              // top of the collar above the deck
};

inline constexpr double kPodLength_m = 0.42;     // project decision, as the next six
inline constexpr double kPodRadius_m = 0.055;
inline constexpr double kPropellerOff_m = 0.23;  // of the shaft's line
inline constexpr double kHeadLength_m = 0.25;
inline constexpr double kHeadRadius_m = 0.10;
inline constexpr double kPodAhead_m = 0.15;      // of the pivot, when stowed
inline constexpr double kBladeRadius_m = 0.01;

// Whether it lies along the deck, stands upright in the midst of being laid down, or is down.
struct Stance {
  double pivot_aft_m = 0.0;
  double pivot_starboard_m = 0.0;
  double stow_angle_deg = 0.0;  // of the stowed shaft off straight aft, to starboard
};

// Height of the tube's middle above the deck when it lies: the collar, or a blade's radius and 20 mm.
double lying_height_m(const MotorSizes& motor);

// Foremost to aftmost point of the stowed motor, along the shaft.
double stowed_length_m(const MotorSizes& motor);

// 0: stowed; 90: upright with the pod at its mount. Degrees that the shaft is raised about the pivot.
std::vector<Bar> tilted_motor(const MotorSizes& motor, const Stance& stance, double raised_deg);

// Shaft upright, propeller `axis_below_m` under the deck; the pod points ahead.
std::vector<Bar> deployed_motor(const MotorSizes& motor, const Stance& stance, double axis_below_m);

}  // namespace thole
