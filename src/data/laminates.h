#pragma once

// What a foredeck is made of: glass laminate and core by the formulas of ISO 12215-5:2008, Annexes
// C and D, and the least thickness by its Table 15. Mean default values; the standard multiplies
// them by 0.8 when nothing was tested, which the factors of the deck stage more than cover.

namespace thole {

enum class DeckKind { single_skin, cored_balsa, cored_foam, aluminium };

// E-glass in polyester, hand laid. Range: 0.25 <= glass_frac <= 0.6.
struct Laminate {
  double flexural_MPa = 0.0;
  double tensile_MPa = 0.0;
  double compressive_MPa = 0.0;
  double in_plane_shear_MPa = 0.0;
  double interlaminar_shear_MPa = 0.0;
  double modulus_MPa = 0.0;
  double thickness_mm_per_kg_per_m2 = 0.0;  // of dry glass
};
Laminate laminate(double glass_frac);  // glass content by mass

enum class CoreKind { balsa, cross_linked_pvc, linear_pvc, san };

struct Core {
  double shear_MPa = 0.0;
  double shear_modulus_MPa = 0.0;
  double compressive_MPa = 0.0;
  double modulus_MPa = 0.0;
};
// Range: balsa 90-220, cross-linked PVC 33-250, linear PVC 50-140, SAN 60-210 kg/m3; no value is
// less than 0 outside it.
Core core(CoreKind kind, double density_kg_per_m3);

// What a deck is taken to be made of: laminate of so much glass (project decision), balsa of 150 or
// cross-linked PVC of 80 kg/m3 (common practice).
inline constexpr double kDeckGlass_frac = 0.35;
Core deck_core(DeckKind kind);  // nothing where there is none

// Least deck thickness: laminate 1.45 + 0.14 L_WL, aluminium 1.35 + 0.06 L_WL.
double minimum_deck_mm(DeckKind kind, double waterline_length_m);

}  // namespace thole
