#include "calc/mount/plate.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "base/units.h"

namespace thole {

double plate_rigidity_Nm(double modulus_GPa, double thickness_mm, double poisson_ratio) {
  const double thickness_m = thickness_mm / 1000.0;
  return modulus_GPa * 1e9 * thickness_m * thickness_m * thickness_m /
         (12.0 * (1.0 - poisson_ratio * poisson_ratio));
}

double effective_width_mm(const PlateStrip& strip) {
  return std::min(strip.width_mm, 1.5 * strip.reach_mm);
}

double second_moment_mm4(const PlateStrip& strip) {
  return effective_width_mm(strip) * std::pow(strip.thickness_mm, 3) / 12.0;
}

double strip_stiffness_N_per_mm(const PlateStrip& strip) {
  const double rigidity_N_mm2 = 1000.0 * strip.modulus_GPa * second_moment_mm4(strip);
  return strip.propped ? 768.0 * rigidity_N_mm2 / (7.0 * std::pow(2.0 * strip.reach_mm, 3))
                       : 3.0 * rigidity_N_mm2 / std::pow(strip.reach_mm, 3);
}

// Fixed at one end, propped at the other, load P in the middle of the span 2 L: fixed moment
// 3 P (2 L)/16, fixed reaction 11 P/16.
MomentShares moment_shares(bool propped) {
  return propped ? MomentShares{.moment_factor = 3.0 / 8.0, .reaction_factor = 11.0 / 16.0}
                 : MomentShares{};
}

double natural_frequency_Hz(double stiffness_N_per_mm, double mass_kg) {
  return std::sqrt(1000.0 * stiffness_N_per_mm / mass_kg) / (2.0 * std::numbers::pi);
}

double frequency_from_sag_Hz(double sag_mm) {
  return std::sqrt(kGravity_mps2 / (sag_mm / 1000.0)) / (2.0 * std::numbers::pi);
}

double bending_stress_MPa(double moment_Nm, double width_mm, double thickness_mm) {
  return 6.0 * 1000.0 * moment_Nm / (width_mm * thickness_mm * thickness_mm);
}

}  // namespace thole
