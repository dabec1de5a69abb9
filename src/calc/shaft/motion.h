#pragma once

// How far the water at the bow moves against the bow, for a boat lying head to sea without way on.
//
// Two answers, because neither is exact for a boat shorter than the waves are long:
//   - Jensen, Mansour and Olsen 2004: closed-form heave and pitch of a box-like hull, averaged over
//   a
//     JONSWAP sea (gamma 3.3, Hasselmann et al. 1973). Meant for ships; +/- 30 % here.
//   - a box that follows a regular head wave without dynamics: shows the worst wave, which is as
//   long
//     as the waterline.
// Deep water (no effect of the sea bed), head sea, small amplitudes. Lengths in m, x forward of
// midships.

namespace thole {

struct FloatingHull {
  double waterline_length_m = 0.0;  // > 0
  double waterline_beam_m = 0.0;    // > 0
  double draft_m = 0.0;             // > 0
};

// Circular frequency at which a boat that runs head to sea meets waves, w + w^2 V / g, and how often a second.
// Deep water. Precondition: period_s > 0, speed_mps >= 0.
double encounter_rad_per_s(double period_s, double speed_mps);

// Amplitudes per metre of wave amplitude.
struct BowResponse {
  double heave_ratio = 0.0;
  double pitch_rad_per_m = 0.0;
  double relative_ratio = 0.0;  // water against hull at x
  double absolute_ratio = 0.0;  // hull against the horizon at x
};

// Source: Jensen, Mansour and Olsen 2004, zero speed, head sea. Precondition: period_s > 0.
BowResponse bow_response(const FloatingHull& hull, double x_m, double period_s);

// Standard deviation of the water against the hull at x in a JONSWAP sea. 0 without waves.
double relative_motion_sigma_m(const FloatingHull& hull, double x_m, double wave_height_m,
                               double peak_period_s);

// Per unit of wave amplitude, of a box that follows the wave:
//   heave = sin u / u,  pitch = 6 (sin u / u^2 - cos u / u),  u = pi L / wavelength
// where pitch is the angle times L over the amplitude.
struct BoxResponse {
  double heave_ratio = 0.0;
  double pitch_ratio = 0.0;
  double relative_ratio = 0.0;
};

// x_ratio: distance forward of midships over L. Precondition: wavelength_ratio = wavelength / L >
// 0.
BoxResponse box_response(double wavelength_ratio, double x_ratio);

// g T^2 / (2 pi), linear theory, deep water.
double deep_wavelength_m(double period_s);

}  // namespace thole
