#pragma once

// How a boat moves on the water plane under wind, waves, current and one thruster at its bow.
//
// Frames. On the water: origin at the spot, x to where the wind comes from, y to the left of one
// who faces it. In the boat: x forward, y to port, midships. Turning is positive counter-clockwise
// in both, so that heading_rad here = minus the clockwise headings elsewhere.

#include <vector>

#include "calc/hold/equilibrium.h"
#include "calc/hold/loads.h"

namespace thole {

// --- what a boat weighs when it moves the water with it
// -----------------------------------------------------------

struct InertiaInput {
  double displacement_kg = 0.0;
  double length_m = 0.0;
  double waterline_length_m = 0.0;
  double water_density_kg_per_m3 = 1026.0;
};

// Masses with the water that comes along: ahead m + 2.7 rho vol^(5/3)/L^2 (Soeding 1982), sideways
// 1.7 m, turning 1.6 m (0.25 L)^2. The last two are our own judgement between a flat plate (0.94 m)
// and Clarke 1983 (0.61 m) for a 7.6 m boat; Clarke's formula for turning is out of its range at
// boats three times as long as wide.
struct Inertia {
  double surge_kg = 0.0;
  double sway_kg = 0.0;
  double yaw_kg_m2 = 0.0;
};
Inertia inertia(const InertiaInput& in);

inline constexpr double kSwayMass_ratio = 1.7;
inline constexpr double kYawMass_ratio = 1.6;
inline constexpr double kGyration_ratio = 0.25;  // of the length

// Mass that a push across the boat at `forward_m` of midships finds: 1/(1/m22 + x^2/I66). At the
// bow it is a third of the boat's own, for the boat turns out of the way.
double bow_mass_kg(const Inertia& mass, double forward_m);

// --- drag of water across a boat that may turn
// ---------------------------------------------------------

// Side of a boat under water, as deep at each place as makes its area and centroid those given.
struct CrossFlowShape {
  double length_m = 0.0;
  double area_m2 = 0.0;
  double centroid_m = 0.0;  // forward of midships; counts up to a sixth of the length
  double drag_factor = 0.6;
  double water_density_kg_per_m3 = 1026.0;
};

// -rho/2 C times the integral of |v + x r| (v + x r) depth(x) over the length, and of x times that
// (surge_N is 0). Exact: depth is a straight line over the length, so the integral is a polynomial
// on either side of where the water stands still. Source: strip theory, Faltinsen 1990, Fossen
// 2021.
Load cross_flow(const CrossFlowShape& shape, double sway_mps, double yaw_rad_per_s);

// --- the boat
// ---------------------------------------------------------------------------------

// Areas of a load at all directions, read off a table: the same loads as in loads.h, to 5e-6 of the
// largest, without a sine. Rows are even along the edge of a square about the bow, so that the
// place in the table takes one division; what changes at a right angle does so at a row.
class DirectionTable {
 public:
  static constexpr int kCount = 1440;

  template <class Areas>
  explicit DirectionTable(Areas areas_at) {
    for (int i = 0; i <= kCount; ++i) rows_.push_back(areas_at(row_rad(i)));
  }

  // Along `ahead` times its cosine, `starboard` times its sine; any length but none.
  DragAreas at(double ahead, double starboard) const;

 private:
  static double row_rad(int row);

  std::vector<DragAreas> rows_{};
};

struct Craft {
  HeldHull hull{};
  Inertia mass{};
};

// Place and heading on the water; speeds through the water, in the boat.
struct Motion {
  double x_m = 0.0;
  double y_m = 0.0;
  double heading_rad = 0.0;
  double surge_mps = 0.0;
  double sway_mps = 0.0;
  double yaw_rad_per_s = 0.0;
};

// What acts at a moment.
struct Surroundings {
  double wind_mps = 0.0;         // along the mean direction
  double wind_across_mps = 0.0;  // to the left
  double wave_push_ratio = 1.0;  // of the moment over the mean
  double current_x_mps = 0.0;    // where the water goes, on the water
  double current_y_mps = 0.0;
  double thrust_ahead_N = 0.0;  // in the boat
  double thrust_port_N = 0.0;
};

// Of each load: what it does per second to the energy of motion through the water.
struct LoadPower {
  double wind_W = 0.0;
  double wave_W = 0.0;
  double water_W = 0.0;
  double thruster_W = 0.0;
};

struct MotionRate {
  Motion change{};  // per second
  LoadPower power{};
};

// Equations of motion in three degrees of freedom in a steady current (Fossen 2021, with speeds
// through the water): m11 u' = X + m22 v r, m22 v' = Y - m11 u r, I66 r' = N - (m22 - m11) u v. The
// last term is the moment of Munk, which turns a boat across its way.
//
//   wind   DNV-ST-0111 [3.5] on the wind as the moving boat feels it
//   waves  [3.7] times the push of the moment
//   water  ahead rho/2 A u^2 with the area of the mean loads, across by cross_flow(), and a linear
//          part m11/60 s, m22/40 s, I66/15 s (our own judgement; it alone damps the last
//          centimetres)
//
// Left out: heave, roll, pitch; forces of first order in the waves, which move a boat to and fro
// faster than any thruster answers.
class Manoeuvre {
 public:
  Manoeuvre(const Craft& craft, const Sea& sea);
  MotionRate rate(const Motion& motion, const Surroundings& now) const;

  // A fourth-order step (Runge and Kutta's) from `motion`, with what acts at its start, middle and
  // end. `work_J` grows by the work of each load, integrated in the same step.
  struct Work {
    double wind_J = 0.0;
    double wave_J = 0.0;
    double water_J = 0.0;
    double thruster_J = 0.0;
  };
  Motion step(const Motion& motion, const Surroundings& start, const Surroundings& middle,
              const Surroundings& end, double step_s, Work& work) const;

  double energy_J(const Motion& motion) const;  // of motion through the water

  // Fastest rate at which drag could stop the boat within these speeds, 1/s: what a step must
  // resolve.
  double stiffness_Hz(double speed_mps, double yaw_rad_per_s) const;

  const Craft& craft() const { return craft_; }

 private:
  Craft craft_{};
  CrossFlowShape side_{};
  DirectionTable wind_;
  DirectionTable wave_;
  double wave_surge_Pa_ = 0.0;
  double wave_sway_Pa_ = 0.0;
};

}  // namespace thole
