#pragma once

// What else is printed about the wind on a boat: other authors' forces, gusts on land's lee,
// tables for anchors and for stability. They stand beside the sizing loads of
// loads.h, to judge them by; nothing is sized on them.

namespace thole {

// --- Isherwood 1972: regression over models of merchant ships (length over beam 5 to 9). A boat
// three times as long as wide lies outside; a cross-check only.

struct IsherwoodInput {
  double length_m = 0.0;  // overall
  double beam_m = 0.0;
  double frontal_area_m2 = 0.0;
  double lateral_area_m2 = 0.0;
  double superstructure_m2 = 0.0;  // its part of the lateral area
  double perimeter_m = 0.0;        // of the side's outline, without the waterline
  double bow_to_centroid_m = 0.0;  // of the lateral area
  int mast_count = 0;              // groups of masts
};
// Signs of loads.h: surge along the boat, sway to the lee of a wind from starboard.
struct WindFactors {
  double surge_factor = 0.0;  // over pressure and frontal area
  double sway_factor = 0.0;   // over pressure and lateral area
  double yaw_factor = 0.0;    // over pressure, lateral area and length
};
// Linear between the angles of the table, 0 to 180 degrees off the bow, every 10.
WindFactors isherwood(const IsherwoodInput& in, double from_rad);

// --- gusts

// Wind averaged over t seconds over that of an hour, on land and near it:
// 1.277 + 0.296 tanh(0.9 log10(45/t)), 1 < t <= 3600; 1.5334 - 0.15 log10 t up to ten hours.
// Source: Coastal Engineering Manual II-2. Beyond that range as at its ends.
double land_gust_ratio(double averaging_s);

// --- tables for other ends

// Heeling moment of the wind in the stability check of ISO 12217-1 [6.3.2]:
// 0.3 A (A/L + T) v^2, N m. With the lever (A/L + T)/2 it stands for a drag of the side of
// 0.3 * 4/rho, 0.98 in air of 1.225 kg/m3.
struct HeelingInput {
  double lateral_area_m2 = 0.0;
  double waterline_length_m = 0.0;
  double draft_m = 0.0;
  double wind_mps = 0.0;
};
double heeling_moment_Nm(const HeelingInput& in);
double heeling_side_factor(double air_density_kg_per_m3);

// Load of a "lunch hook" anchor in 15 kn of wind, ABYC H-40 (7/03) Table 1 as reproduced: by length
// overall, 20 to 40 ft, linear between and constant beyond. It holds a boat that sheers beam-on and
// surges in waves: about five times the steady load bow-on. For strength, never for thrust.
double anchor_load_N(double length_m);

}  // namespace thole
