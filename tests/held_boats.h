#pragma once

// The handbook's invented 7.6 m centre console, R25, held for an hour as its section 5.4 has it.

#include "calc/hold/simulate.h"
#include "data/sea.h"

namespace thole::test {

inline constexpr double kFifteenKnots_mps = 7.7167;
inline constexpr double kTwentyKnots_mps = 10.289;
inline constexpr double kOneKnot_mps = 0.51444;

// Surge drag 0.1 B T + S C_F with the wetted V-hull, no leg; wind unreduced; a sea of 5 km of
// fetch.
inline HoldRunInput r25_held(double wind_mps, double thrust_N = 356.0) {
  HoldRunInput in;
  in.hull = {.wind = {.frontal_area_m2 = 4.0,
                      .lateral_area_m2 = 9.0,
                      .lateral_centroid_m = 0.3,
                      .waterline_length_m = 6.6},
             .current = {.surge_area_m2 = 0.1 * 2.3 * 0.45 + 13.8 * 0.0055,
                         .underwater_area_m2 = 2.8,
                         .underwater_centroid_m = -0.3,
                         .waterline_length_m = 6.6},
             .wave = {.waterline_beam_m = 2.3,
                      .waterline_length_m = 6.6,
                      .underwater_length_m = 6.6,
                      .bow_angle_rad = 0.44684},
             .thruster_forward_m = 3.7};
  in.displacement_kg = 2300.0;
  in.length_m = 7.6;
  in.motor.thrust_N = thrust_N;
  in.power = {.thrust_N = thrust_N, .power_full_W = 1236.0, .power_idle_W = 0.0, .nominal_V = 24.0};
  in.wind_mps = wind_mps;
  in.gust.wind_mps = wind_mps;
  in.sea = jonswap_sea(wind_mps, 5000.0);
  in.sensors.heading_bias_deg = 0.0;
  return in;
}

// Nothing that chance has a hand in: steady wind, no sea, sensors without error.
inline HoldRunInput without_chance(HoldRunInput in) {
  in.gust.strength_factor = 0.0;
  in.sea = {};
  in.sensors.drift_m = 0.0;
  in.sensors.jitter_m = 0.0;
  in.sensors.heading_bias_deg = 0.0;
  in.sensors.heading_jitter_deg = 0.0;
  return in;
}

}  // namespace thole::test
