#pragma once

// Mean loads of wind, current and waves on a boat that lies still.
//
// Frame of DNV-ST-0111 [2.8.2]: x forward, y to port, origin amidships; yaw positive
// counter-clockwise (bow to port). `from_rad`: where the wind, current or sea comes from, clockwise
// from the bow; 0 is head-on, pi/2 from starboard.
//
// A load is a pressure times areas that depend on direction alone, so that a search over headings
// computes the areas once.

namespace thole {

struct Load {
  double surge_N = 0.0;
  double sway_N = 0.0;
  double yaw_Nm = 0.0;
};

// What pushes sideways and turns: all that a search for the heading needs.
struct SideAreas {
  double sway_m2 = 0.0;
  double yaw_m3 = 0.0;  // sway area times its lever
};

struct DragAreas {
  double surge_m2 = 0.0;
  SideAreas side{};
};

double air_density_kg_per_m3(double air_C);  // ideal gas, 101 325 Pa
double water_density_kg_per_m3(bool salt);   // DNV-ST-0111 [3.6]; fresh: ITTC 7.5-02-01-03
double water_viscosity_m2_per_s(bool salt);  // kinematic, 15 C; ITTC 7.5-02-01-03
double dynamic_pressure_Pa(double density_kg_per_m3, double speed_mps);

// Wind speed at a height over that at 10 m: 1 + C ln(z/10), C = 0.0573 (1 + 0.15 U)^(1/2).
// Source: ISO 19901-1 (NPD). Range: open sea, height_m >= 1; U is an hourly mean, and a ten-minute
// mean put in its place changes the ratio by less than 0.01.
double wind_profile_ratio(double wind_mps, double height_m);

// Mean over `averaging_s` at the worst, over the hourly mean: 1 - 0.41 I ln(t/3600),
// I = 0.06 (1 + 0.043 U)(z/10)^-0.22. Source: ISO 19901-1 (NPD). Range: 0 < t <= 3600 s.
double gust_ratio(double wind_mps, double height_m, double averaging_s);

// Drift of a boat beam-on, as a share of the wind: k/(1-k) = (wind drag / water drag)^(1/2).
// `drag_ratio` = rho_a C_a A_a / (rho_w C_w A_w). Source: Allen 2005. For commissioning: a measured
// drift tells the true ratio of the side areas.
double drift_frac(double drag_ratio);

// --- wind: DNV-ST-0111 level 1 [3.5]
// --------------------------------------------------------------

inline constexpr double kWindSurge_factor = 0.7;
inline constexpr double kWindSway_factor = 0.9;

// A kind of vessel in Blendermann's table: drag of its side, bow and stern, and how much more a
// wind on the quarter finds. Blendermann 1994, Table 1.
struct WindKind {
  double side_factor = 0.0;
  double bow_factor = 0.0;
  double stern_factor = 0.0;
  double quarter_factor = 0.0;
  bool operator==(const WindKind&) const = default;
};
inline constexpr WindKind kSpeedBoatWind{0.90, 0.55, 0.60, 0.60};
inline constexpr WindKind kFishingVesselWind{0.95, 0.70, 0.70, 0.40};
inline constexpr WindKind kTenderWind{0.85, 0.55, 0.55, 0.65};

// What a boat is sized on, and what it likely meets.
enum class WindLaw { ship_standard, blendermann };

// Standard, [3.5]:   X = -0.7 q A_F cos d,  Y = 0.9 q A_L sin d,
//                    lever = x_L + 0.3 (1 - 2 dir/pi) L
// Blendermann, Eqs 13-16:  X = -q C_l A_F cos d/D,  Y = q C_t A_L sin d/D,
//                    lever = x_L - 0.18 (dir - pi/2) LOA,
//                    D = 1 - k/2 (1 - C_l A_F/(C_t A_L)) sin^2 2d; C_l is the bow's or the stern's
// Both are made for ships; on small craft the standard's is on the safe side.
struct WindShape {
  double frontal_area_m2 = 0.0;
  double lateral_area_m2 = 0.0;
  double lateral_centroid_m = 0.0;
  double waterline_length_m = 0.0;
  WindLaw law = WindLaw::ship_standard;
  double length_m = 0.0;  // overall, for Blendermann
  WindKind kind{};        // for Blendermann
};
DragAreas wind_areas(const WindShape& shape, double from_rad);
SideAreas wind_side(const WindShape& shape, double from_rad);

// --- current: DNV-ST-0111 level 1 [3.6]
// -----------------------------------------------------------

inline constexpr double kCurrentSurge_factor = 0.07;
inline constexpr double kCurrentSway_factor = 0.6;

struct CurrentShape {
  double surge_area_m2 = 0.0;       // drag area from ahead: 0.07 B T, or the parts below if more
  double underwater_area_m2 = 0.0;  // side area
  double underwater_centroid_m = 0.0;
  double waterline_length_m = 0.0;
  double sway_factor = kCurrentSway_factor;  // drag of the side area
};
DragAreas current_areas(const CurrentShape& shape, double from_rad);
SideAreas current_side(const CurrentShape& shape, double from_rad);

// Drag of the side area in water `draft_to_depth_ratio` shallow: C0 + (3.2 - C0) (T/d)^2.
// Source: UFC 4-159-03, Eqs 11-13. Ratios above 1 count as 1.
double cross_flow_factor(double deep_water_factor, double draft_to_depth_ratio);

// C0 = 0.22 chi^(1/2), chi = L^2 A_m/(B V). Source: UFC 4-159-03, Eq 12.
struct DeepCrossFlowInput {
  double waterline_length_m = 0.0;
  double waterline_beam_m = 0.0;
  double midship_area_m2 = 0.0;
  double volume_m3 = 0.0;
};
double deep_cross_flow_factor(const DeepCrossFlowInput& in);

// Drag of a section across the flow by its beam over twice its draft, in deep water: what strip
// theory takes for each strip. Source: Hoerner's curve as read by Leite et al. 1998, linear between
// its points, constant beyond.
double section_cross_flow_factor(double beam_to_twice_draft_ratio);

// ITTC-57 friction line. Below Re 1e4 the value there, so that still water is no division by zero.
double friction_factor(double reynolds_count);

// A V-bottomed prism afloat at rest: geometry. `deadrise_rad` may be 0.
struct PrismInput {
  double volume_m3 = 0.0;
  double beam_m = 0.0;    // at the chine
  double length_m = 0.0;  // wetted
  double deadrise_rad = 0.0;
};
struct Prism {
  double draft_m = 0.0;
  double wetted_area_m2 = 0.0;
  bool chine_wet = false;
};
Prism floating_prism(const PrismInput& in);

// S = 1.7 L T + V/T. Source: UFC 4-159-03, Eq 18 (Denny-Mumford). Too little for beamy V-hulls.
double round_hull_wetted_area_m2(double waterline_length_m, double draft_m, double volume_m3);

// S = 2.6 (V L)^(1/2). Source: Taylor, round bottoms; beside the other it tells how little the form
// matters, until the form is a V.
double taylor_wetted_area_m2(double waterline_length_m, double volume_m3);

// Drag from ahead, part by part: blunt form 0.1 B T (Eq 16), friction on the wetted skin (Eqs
// 17-20, with 0.0004 for roughness), and for each leg that is down its strut and its locked
// propeller (Eqs 21-22 on the expanded blade area, half the disc). Source: UFC 4-159-03, Eqs 15-23;
// strut: Hoerner, recalled. Ship formulas for [3.6] have no transom and no legs: a planing hull
// drags two to three times as much.
struct CurrentPartsInput {
  double density_kg_per_m3 = 0.0;
  double viscosity_m2_per_s = 0.0;
  double current_mps = 0.0;
  double waterline_length_m = 0.0;
  double waterline_beam_m = 0.0;
  double draft_m = 0.0;
  double wetted_area_m2 = 0.0;
  int leg_count = 0;             // legs in the water
  double leg_propeller_m = 0.0;  // diameter
  bool propellers_free = false;  // out of gear, turning with the current
};
struct CurrentParts {
  double reynolds_count = 0.0;
  double form_N = 0.0;
  double friction_N = 0.0;
  double leg_N = 0.0;        // all legs
  double propeller_N = 0.0;  // all legs
  double total_N = 0.0;
  double area_m2 = 0.0;  // drag area: total over dynamic pressure; right in still water too
};
CurrentParts current_parts(const CurrentPartsInput& in);

inline constexpr double kForm_factor = 0.1;          // UFC 4-159-03, Eq 16
inline constexpr double kRoughness_factor = 0.0004;  // ITTC, recalled
inline constexpr double kLegDrag_factor = 0.30;      // Hoerner, recalled: the high end of 0.15-0.30
inline constexpr double kLegThickness_m = 0.08;      // project decision: a common gear case
inline constexpr double kLegDepth_m = 0.55;          // project decision
inline constexpr double kFreePropeller_factor = 0.5;  // of a locked one; tank tests, recalled
inline constexpr double kBladeArea_ratio = 0.5;       // project decision: between 0.45 and 0.60

// --- waves: DNV-ST-0111 level 1 [3.7]
// -------------------------------------------------------------

struct WaveShape {
  double waterline_beam_m = 0.0;
  double waterline_length_m = 0.0;
  double underwater_length_m = 0.0;
  double underwater_middle_m = 0.0;    // of that length
  double bow_angle_rad = 0.0;          // > 0
  double aft_waterplane_ratio = 0.95;  // aft half of the waterplane over its rectangle
};
// For the pressure rho g Hs^2/2, before the factors for period.
DragAreas wave_areas(const WaveShape& shape, double from_rad);
SideAreas wave_side(const WaveShape& shape, double from_rad);

double wave_pressure_Pa(double density_kg_per_m3, double height_m);
double wave_bow_factor(double bow_angle_rad);    // h1 in head seas: 0.8 angle^0.45
double wave_heading_factor(double from_rad);     // h2: 0.05 + 0.95 atan(1.45 (dir - 1.75))
double wave_period_factor(double period_ratio);  // f: 1 below 1, T'^-3 exp(1 - T'^-3) above
double surge_period_ratio(double peak_period_s, double waterline_length_m);  // Tz/(0.9 L^0.33)
double sway_period_ratio(double peak_period_s, double waterline_beam_m);     // Tz/(0.75 B^0.5)

// Force on a wall that turns all waves back: rho g Hs^2/16 per length; no boat meets more in short
// waves. Source: Maruo 1960, for irregular seas.
double full_reflection_N_per_m(double density_kg_per_m3, double height_m);

// The mean drift of small craft is known no better than this, either way: project decision.
inline constexpr double kWaveUncertainty_factor = 2.0;

inline constexpr double kWaveDrift_factor = 0.09;
inline constexpr double kPeakToZeroCrossing_ratio = 1.4049;  // Tp/Tz, [3.3.3]

}  // namespace thole
