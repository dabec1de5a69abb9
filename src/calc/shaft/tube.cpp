#include "calc/shaft/tube.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "calc/shaft/motion.h"

namespace thole {
namespace {

constexpr double kPi = std::numbers::pi;

// Of exp(-k s) over the depth s, about the surface.
double first_moment_m2(double k, double depth_m) { return (1.0 - (1.0 + k * depth_m) * std::exp(-k * depth_m)) / (k * k); }

// Of what is highest as the crest passes and what is a quarter of a period from it.
double peak(double drag, double fall, double inertia) {
  const double slowest = std::max(2.0 * fall, inertia);
  return slowest > 0.0 ? drag + inertia * inertia / slowest : drag;
}

}  // namespace

TubeSection tube_section(double outer_mm, double wall_mm) {
  TubeSection section{.outer_mm = outer_mm, .inner_mm = std::max(outer_mm - 2.0 * wall_mm, 0.0)};
  const double d = section.inner_mm;
  const double outer3 = outer_mm * outer_mm * outer_mm;
  section.inertia_mm4 = kPi / 64.0 * (outer3 * outer_mm - d * d * d * d);
  section.modulus_mm3 = 2.0 * section.inertia_mm4 / outer_mm;
  section.plastic_modulus_mm3 = (outer3 - d * d * d) / 6.0;
  return section;
}

Cantilever bend(const TubeSection& section, double modulus_GPa, double arm_m, double force_N) {
  const double arm_mm = 1000.0 * arm_m;
  const double rigidity_Nmm2 = 1000.0 * modulus_GPa * section.inertia_mm4;  // MPa mm4
  Cantilever beam;
  beam.stress_MPa = force_N * arm_mm / section.modulus_mm3;
  beam.deflection_mm = force_N * arm_mm * arm_mm * arm_mm / (3.0 * rigidity_Nmm2);
  beam.slope_rad = force_N * arm_mm * arm_mm / (2.0 * rigidity_Nmm2);
  beam.stiffness_N_per_m = 1000.0 * 3.0 * rigidity_Nmm2 / (arm_mm * arm_mm * arm_mm);
  return beam;
}

double tube_last_moment_Nm(const TubeSection& section, double strength_MPa, bool composite) {
  return 1e-3 * strength_MPa * (composite ? section.modulus_mm3 : section.plastic_modulus_mm3);
}

double drag_per_speed_squared(double stem_m, double immersed_m) {
  return 0.5 * kStemWater_kg_per_m3 *
         (kStemDrag_factor * stem_m * immersed_m + kPodDrag_factor * kPodFrontal_m2);
}

StemPush stem_push(double stem_m, double immersed_m, double wave_height_m, double period_s, double current_mps) {
  const double k = 2.0 * kPi / deep_wavelength_m(period_s);
  StemPush push{.wave_number_rad_per_m = k,
                .crest_mps = kPi * wave_height_m / period_s,
                .crest_reach_m = (1.0 - std::exp(-k * immersed_m)) / k,
                .square_reach_m = (1.0 - std::exp(-2.0 * k * immersed_m)) / (2.0 * k)};
  const double drag = 0.5 * kStemWater_kg_per_m3 * kStemDrag_factor * stem_m;
  const double mixed = current_mps * push.crest_mps * push.crest_reach_m;
  const double squared = push.crest_mps * push.crest_mps * push.square_reach_m;
  push.drag_N = drag * (current_mps * current_mps * immersed_m + 2.0 * mixed + squared);
  push.fall_N = 2.0 * drag * (mixed + squared);
  push.inertia_N = kStemWater_kg_per_m3 * kStemInertia_factor * 0.25 * kPi * stem_m * stem_m * push.crest_mps *
                   (2.0 * kPi / period_s) * push.crest_reach_m;
  const double mixed_m2 = current_mps * push.crest_mps * first_moment_m2(k, immersed_m);
  const double squared_m2 = push.crest_mps * push.crest_mps * first_moment_m2(2.0 * k, immersed_m);
  push.drag_Nm = drag * (0.5 * current_mps * current_mps * immersed_m * immersed_m + 2.0 * mixed_m2 + squared_m2);
  push.fall_Nm = 2.0 * drag * (mixed_m2 + squared_m2);
  push.inertia_Nm = push.crest_reach_m > 0.0 ? push.inertia_N * first_moment_m2(k, immersed_m) / push.crest_reach_m : 0.0;
  return push;
}

double StemPush::peak_N() const { return peak(drag_N, fall_N, inertia_N); }
double StemPush::moment_Nm() const { return peak(drag_Nm, fall_Nm, inertia_Nm); }

}  // namespace thole
