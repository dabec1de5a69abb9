#pragma once

// Where a boat held by one thruster at its bow comes to lie. It cannot choose its heading: it turns
// like a vane about the thruster until the moment of wind, waves and current about it vanishes.

#include <array>
#include <vector>

#include "calc/hold/loads.h"
#include "data/sea.h"

namespace thole {

struct HeldHull {
  WindShape wind{};
  CurrentShape current{};
  WaveShape wave{};
  double thruster_forward_m = 0.0;  // of midships
  double air_density_kg_per_m3 = 1.226;
  double water_density_kg_per_m3 = 1026.0;
};

// Angles from where the wind comes from, clockwise. The sea comes with the wind.
struct Weather {
  double wind_mps = 0.0;  // as it acts on the boat
  Sea sea{};
  double current_mps = 0.0;
  double current_from_rad = 0.0;
};

struct LoadParts {
  Load wind{};
  Load current{};
  Load wave{};
  Load total{};
};
LoadParts loads_at(const HeldHull& hull, const Weather& weather, double heading_rad);

struct Equilibrium {
  double heading_rad = 0.0;  // of the bow, -pi to pi
  double thrust_N = 0.0;     // that holds it there
};

// Moments about the thruster per unit of pressure, at headings all around: what does not change
// with the strength of the weather. Headings lie at odd multiples of half a step, so that the
// symmetric answers (0, 180 degrees) fall between two of them.
inline constexpr int kHeadingCount = 180;
using Moments_m3 = std::array<double, kHeadingCount>;
struct VaneTable {
  Moments_m3 wind{};
  Moments_m3 wave{};
  Moments_m3 current{};  // for the direction that the table was made for
};
VaneTable vane_table(const HeldHull& hull, double current_from_rad);

// The same hull with the current from elsewhere.
void turn_current(VaneTable& table, const HeldHull& hull, double current_from_rad);

// Every heading that the boat comes back to when pushed off it. With x forward and y to port the
// moment about the thruster is M = M_Z - x_T F_Y; stable where it grows with a clockwise heading.
// Found by a scan in steps of 2 degrees, refined to about 1e-9 rad. Empty in still air and water.
// Precondition: the table was made for this hull and this direction of the current.
std::vector<Equilibrium> stable_headings(const HeldHull& hull, const VaneTable& table,
                                         const Weather& weather);

// A heading at which the moments about the thruster balance, whether or not the boat stays there.
struct Balance {
  double heading_rad = 0.0;  // of the bow, -pi to pi
  double thrust_N = 0.0;
  double azimuth_rad = 0.0;  // of the thrust, clockwise off the bow
  bool stable = false;       // pushed off it, the boat comes back
};

// All of them, in ascending order: stable and unstable take turns around the compass, so that there
// are as many of one as of the other. Empty in still air and water.
std::vector<Balance> balances(const HeldHull& hull, const VaneTable& table, const Weather& weather);

// Of the stable ones, the one that takes the most thrust; of two alike, the one on the starboard
// side. Heading 0 and no thrust in still air and water.
Equilibrium worst_heading(const HeldHull& hull, const VaneTable& table, const Weather& weather);

}  // namespace thole
