#pragma once

// The boat of a HoldInput where it is to be held: what its hull shows to wind, water and sea, what
// the weather does at any strength of the wind, and what a motor has left to push with. Whoever
// asks something of a hold (the stage, the rose, the time domain) asks it of the same boat.
//
// Precondition of all: the ranges of job/fields.cpp.

#include "calc/hold/equilibrium.h"
#include "calc/hold/hold.h"
#include "calc/hold/loads.h"
#include "calc/hold/thruster.h"
#include "data/sea.h"

namespace thole {

double hull_volume_m3(const HoldInput& in);  // displaced
Prism prism_of(const HoldInput& in);
double wetted_area_m2(const HoldInput& in);  // the larger of V-hull and round hull
CurrentParts current_parts_of(const HoldInput& in);
double current_surge_area_m2(const HoldInput& in);  // as sized on, in this current
double deep_cross_flow_of(const HoldInput& in);
double cross_flow_of(const HoldInput& in);  // drag of the side area, at this depth
HeldHull held_hull(const HoldInput& in);    // with the factors of a trial at sea

// The same boat under the wind that it likely meets instead of the one it is sized on:
// Blendermann's speed boat, or his fishing vessel where a house has a flat front.
HeldHull likely_hull(const HoldInput& in);

// Windage with the people who stand at the bow; before any correction from a trial at sea.
double frontal_area_m2(const HoldInput& in);
double lateral_area_m2(const HoldInput& in);
double lateral_centroid_m(const HoldInput& in);

inline constexpr double kForwardPlace_ratio = 0.35;  // project decision: of the waterline's length

// The sea: what was given, and what the wind raises where nothing was.
Sea given_sea(const HoldInput& in);

// The sea at other winds than the given one. What the fetch accounts for grows with the wind, as
// the equations say; what was given beyond that is swell and stays.
class SeaByWind {
 public:
  explicit SeaByWind(const HoldInput& in);
  Sea given() const { return given_; }
  Sea at(double wind_mps) const;

 private:
  double fetch_m_;
  double depth_m_;
  Sea given_;
  double height_ratio_ = 1.0;
  double period_ratio_ = 1.0;
  double swell_m2_ = 0.0;
};

double profile_height_m(const HoldInput& in);  // mean height of the boat's side, at least 1 m
double wind_on_boat_mps(const HoldInput& in, double wind_mps);

// The input must outlive the site.
struct Site {
  const HoldInput& in;
  HeldHull hull{};
  SeaByWind sea;

  explicit Site(const HoldInput& input) : in(input), hull(held_hull(input)), sea(input) {}

  Weather weather(double wind_mps, const Sea& waves, double current_from_rad) const;
  Weather given_weather(double current_from_rad) const;
  Weather weather_in(double wind_mps, double current_from_rad) const;
};

// Thrust against wind, sea and current all from ahead.
double head_on_N(const Site& site, const Weather& weather);

Disc disc_of(const HoldInput& in, const MotorClass& motor);
double thrust_in_current_of(const HoldInput& in, const MotorClass& motor);
double effective_thrust_N(const HoldInput& in, const MotorClass& motor);  // after all losses

inline constexpr double kMisc_factor = 0.9;       // DNV-ST-0111 [3.9.3]
inline constexpr double kRace_factor = 0.95;      // project decision: the race rubs along the hull
inline constexpr double kDynamic_factor = 1.25;   // DNV-ST-0111 [3.2.2]
inline constexpr double kHighestWind_mps = 40.0;  // searches for a limit stop here

// What gusts and yawing make of the load at rest, as means over the time: simulated hours of
// holding, docs/decisions.md.
inline constexpr double kGustThrust_factor = 1.125;
inline constexpr double kGustPower_factor = 1.25;

}  // namespace thole
