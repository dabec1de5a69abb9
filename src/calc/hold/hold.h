#pragma once

// Can this boat be held by one steerable motor at its bow, in this wind, sea and current; by which
// motor; and what does a day of it cost in energy?

#include <optional>
#include <vector>

#include "base/trace.h"
#include "data/parts.h"

namespace thole {

struct HoldInput {
  // The boat; lengths along it are from midships, forward positive.
  double length_m = 7.0;
  double waterline_length_m = 6.1;
  double waterline_beam_m = 2.2;
  double draft_m = 0.4;
  double displacement_kg = 1800.0;
  double deadrise_deg = 18.0;
  double frontal_area_m2 = 3.5;  // above water
  double lateral_area_m2 = 8.0;  // above water
  double lateral_centroid_m = 0.2;
  double underwater_area_m2 = 2.3;  // side area
  double underwater_centroid_m = -0.3;
  double bow_angle_rad = 0.45;  // half angle of the waterline at the bow
  double thruster_forward_m = 3.4;
  bool legs_down = true;  // drives in the water while it holds
  int leg_count = 1;
  double leg_propeller_m = 0.36;   // diameter
  bool propellers_free = false;    // of those legs: out of gear, turning with the current
  int standing_forward_count = 0;  // people at the bow, over and above the windage
  bool flat_front = false;         // of a house: the wind it likely meets, see likely_hull()
  double windage_factor = 1.0;     // loads of this hull over those computed, from a trial at sea
  double drag_factor = 1.0;

  // The water.
  double wind_mps = 0.0;             // ten-minute mean at 10 m height
  bool wind_at_boat_height = false;  // true: reduce it to the height of the boat
  double fetch_m = 5000.0;           // > 0
  double depth_m = 5.0;              // > 0
  double current_mps = 0.0;
  double current_angle_deg = 0.0;         // between where wind and current come from
  std::optional<double> wave_height_m{};  // significant; empty: by fetch
  std::optional<double> wave_period_s{};  // peak; empty or 0: by fetch
  bool salt = true;
  double air_C = 15.0;

  // What is asked for.
  double margin_factor = 1.6;  // effective thrust over mean load, see margin_factor()
  double holding_h = 4.0;      // in a day
  double transit_h = 0.5;      // in a day, creeping on the bow motor alone
  double transit_thrust_frac = 0.5;

  // Allowances that later stages hold themselves to.
  double immersion_factor = 0.97;  // thrust left as the propeller nears the surface in waves
  double sag_factor = 0.95;        // thrust left as the voltage sags

  std::vector<MotorClass> motors{};  // to choose from, in any order; may be empty

  bool operator==(const HoldInput&) const = default;
};

// What can be held when the current comes from `angle_deg` off the wind, and how the boat then
// lies.
struct RosePoint {
  double angle_deg = 0.0;
  double heading_deg = 0.0;        // off the wind, toward the current positive; at the given wind
  double thrust_N = 0.0;           // to hold there at the given wind
  double limiting_wind_mps = 0.0;  // strongest wind held with the asked margin
};

struct HoldResult {
  double wave_height_m = 0.0;
  double wave_period_s = 0.0;
  double wind_N = 0.0;  // from ahead, as are the next two
  double current_N = 0.0;
  double wave_N = 0.0;
  double thrust_head_on_N = 0.0;  // all three from ahead
  double heading_deg = 0.0;       // where it settles, off the wind, toward the current positive
  double thrust_equilibrium_N = 0.0;
  double thrust_mean_N = 0.0;       // the larger of the two: the load to size on
  double margin_factor = 0.0;       // asked for
  double thrust_required_N = 0.0;   // mean load times margin, as effective thrust
  bool motor_found = false;         // false only when there was none to choose from
  MotorClass motor{};               // lightest that suffices; else the strongest
  double thrust_effective_N = 0.0;  // what is left of its static thrust
  double margin_actual_factor = 0.0;
  double limiting_wind_mps = 0.0;  // with the asked margin; at 10 m height
  double power_full_W = 0.0;
  double power_mean_W = 0.0;      // while it holds in the given wind
  double energy_Wh = 0.0;         // of a day
  double holding_h = 0.0;         // in that day
  double hours_on_h = 0.0;        // holding and creeping
  double day_rms_A = 0.0;         // current that heats as much as the day's
  double day_peak_A = 0.0;        // most at any moment, at the nominal voltage
  std::vector<RosePoint> rose{};  // 0 to 180 degrees in steps of 15
  Trace trace{};
};

// Mean loads by DNV-ST-0111 (2021) level 1, [3.5] to [3.7], the surge load of the current by
// components where that is more (UFC 4-159-03, Eqs 15-23); the heading at which the moment about
// the thruster vanishes and comes back; bollard thrust less its losses by momentum theory and
// [3.9]. Range: displacement and planing monohulls of 5 to 13 m. Left out: turning and surging in
// gusts (the margin and the gust factor on power cover them), swell from other than the wind's
// direction, breaking waves. Precondition: the ranges of job/fields.cpp.
HoldResult hold(const HoldInput& in);

// Effective thrust over mean load that keeps the watch circle small (docs/decisions.md). `gusty`:
// land close to windward. `loose`: the boat may fall back in gusts.
double margin_factor(bool gusty, bool loose);

}  // namespace thole
