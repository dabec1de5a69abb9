#pragma once

// The overhanging plate as a strip of beam. Lengths in mm, so that N/mm2 is MPa.

namespace thole {

// Bending stiffness per width, D = E t^3 / (12 (1 - nu^2)).
double plate_rigidity_Nm(double modulus_GPa, double thickness_mm, double poisson_ratio);

struct PlateStrip {
  double modulus_GPa = 0.0;
  double width_mm = 0.0;
  double thickness_mm = 0.0;
  double reach_mm = 0.0;  // held end to load; > 0
  bool propped = false;   // rests on a second support at twice the reach
};

// Width that bends as a beam: a load in the middle of a wide plate does not reach its sides. At
// most 1.5 reaches; there the beam is 5 % too stiff against a finite plate, beyond it too soft, at
// one reach 1 % too soft.
double effective_width_mm(const PlateStrip& strip);

double second_moment_mm4(const PlateStrip& strip);

// Force per deflection under the load: 3 E I / L^3; propped 768 E I / (7 (2 L)^3).
double strip_stiffness_N_per_mm(const PlateStrip& strip);

// Shares of the load in the bending moment M(x) = F (c_M L - c_R x) at x from the held end towards
// the load: free end 1 and 1; propped, load at mid span, 3/8 and 11/16.
struct MomentShares {
  double moment_factor = 1.0;
  double reaction_factor = 1.0;
};
MomentShares moment_shares(bool propped);

// f = sqrt(k/m) / (2 pi).
double natural_frequency_Hz(double stiffness_N_per_mm, double mass_kg);

// From the sag under its own weight, f = sqrt(g/delta) / (2 pi).
double frequency_from_sag_Hz(double sag_mm);

// Sigma = 6 M / (b t^2).
double bending_stress_MPa(double moment_Nm, double width_mm, double thickness_mm);

}  // namespace thole
