#pragma once

// The shaft tube: a cantilever from the lower bearing of the mount, pushed at its end by the
// propeller, dragged through the water by current, waves and the boat's own speed.
// Source: elementary beam theory; Journee and Massie, Offshore Hydromechanics ch. 12 (drag). Small
// deflections, round tube without holes; steering torque and fatigue are left out.

namespace thole {

inline constexpr double kStemWater_kg_per_m3 = 1025.0;  // sea water: the safe side
inline constexpr double kStemDrag_factor = 1.2;         // Journee and Massie: smooth, Re < 2e5
inline constexpr double kUnknownStem_m = 0.040;          // stands in for a tube that nobody measured
inline constexpr double kShortestWave_s = 0.5;           // of a period that is asked
inline constexpr double kStemInertia_factor = 2.0;       // likewise
inline constexpr double kPodDrag_factor = 0.4;          // project decision: a faired pod
inline constexpr double kPodFrontal_m2 = 0.0095;        // project decision: 110 mm across

struct TubeSection {
  double outer_mm = 0.0;
  double inner_mm = 0.0;
  double inertia_mm4 = 0.0;          // pi (D^4 - d^4) / 64
  double modulus_mm3 = 0.0;          // elastic, 2 I / D
  double plastic_modulus_mm3 = 0.0;  // (D^3 - d^3) / 6
};

// A wall of half the diameter or more is a solid bar. Precondition: outer_mm > 0.
TubeSection tube_section(double outer_mm, double wall_mm);

struct Cantilever {
  double stress_MPa = 0.0;     // T L / Z
  double deflection_mm = 0.0;  // T L^3 / (3 E I)
  double slope_rad = 0.0;      // T L^2 / (2 E I)
  double stiffness_N_per_m = 0.0;
};

// Precondition: a real section, modulus_GPa > 0, arm_m > 0.
Cantilever bend(const TubeSection& section, double modulus_GPa, double arm_m, double force_N);

inline constexpr double kCompositeBelow_GPa = 60.0;  // no metal tube is as soft
inline bool is_composite(double modulus_GPa) { return modulus_GPa < kCompositeBelow_GPa; }

// Moment at which a tube is lost: (D^3 - d^3)/6 times yield of a metal, 2 I / D times the strength of a
// composite, which has no plastic reserve.
double tube_last_moment_Nm(const TubeSection& section, double strength_MPa, bool composite);

// Drag over speed squared of an upright stem and the pod at its end, N per (m/s)^2.
double drag_per_speed_squared(double stem_m, double immersed_m);

// Push of a regular wave and a current along it on a stem from the surface down, Morison's sum: their
// speeds are added before they are squared, and the water's inertia pushes hardest a quarter of a period
// from the crest.
struct StemPush {
  double wave_number_rad_per_m = 0.0;
  double crest_mps = 0.0;    // the wave's own speed at the surface, H w / 2
  double crest_reach_m = 0.0;    // (1 - exp(-k z)) / k
  double square_reach_m = 0.0;   // the same with 2 k
  double drag_N = 0.0;       // as the crest passes: rho/2 Cd d (U^2 z + 2 U a z_1 + a^2 z_2)
  double fall_N = 0.0;       // by which the drag curves down there: rho Cd d (U a z_1 + a^2 z_2)
  double inertia_N = 0.0;    // at its most: rho Cm pi d^2/4 a w z_1
  // Of both together: drag + inertia^2 / max(2 fall, inertia). Exact without current while inertia is at most twice
  // the drag, else too high.
  double peak_N() const;
  // The same three about the surface: depth comes into each reach.
  double drag_Nm = 0.0;
  double fall_Nm = 0.0;
  double inertia_Nm = 0.0;
  double moment_Nm() const;
};
// Precondition: period_s > 0, current_mps >= 0.
StemPush stem_push(double stem_m, double immersed_m, double wave_height_m, double period_s, double current_mps);

}  // namespace thole
