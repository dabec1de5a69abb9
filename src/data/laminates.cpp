#include "data/laminates.h"

#include <algorithm>
#include <cmath>

namespace thole {

// Source: ISO 12215-5:2008, Annex C.
Laminate laminate(double glass_frac) {
  const double psi = glass_frac;
  return {.flexural_MPa = 502.0 * psi * psi + 107.0,
          .tensile_MPa = 800.0 * psi * psi - 80.0 * psi + 37.0,
          .compressive_MPa = 150.0 * psi + 72.0,
          .in_plane_shear_MPa = 80.0 * psi + 38.0,
          .interlaminar_shear_MPa = 22.5 - 17.5 * psi,
          .modulus_MPa = 38000.0 * psi - 5000.0,
          .thickness_mm_per_kg_per_m2 = (2.56 / psi - 1.36) / 3.072};
}

// Source: ISO 12215-5:2008, Annex D.
Core core(CoreKind kind, double density_kg_per_m3) {
  const double rho = density_kg_per_m3;
  Core core{};
  switch (kind) {
    case CoreKind::balsa:
      core = {0.0178 * rho - 0.34, 0.868 * rho - 1.43, 0.102 * rho - 5.0, 30.7 * rho - 1350.0};
      break;
    case CoreKind::cross_linked_pvc:
      core = {0.017 * rho - 0.29, 0.33 * rho - 1.0, 0.025 * rho - 0.69, 1.2 * rho - 18.0};
      break;
    case CoreKind::linear_pvc:
      core = {0.014 * rho - 0.33, 0.29 * rho - 5.3, 0.012 * rho - 0.24, 0.84 * rho - 19.0};
      break;
    case CoreKind::san:
      core = {0.017 * rho - 2e-5 * rho * rho - 0.613, 0.46 * rho - 20.0,
              6.7e-4 * std::pow(rho, 1.59), 0.024 * std::pow(rho, 1.75)};
      break;
  }
  return {std::max(core.shear_MPa, 0.0), std::max(core.shear_modulus_MPa, 0.0),
          std::max(core.compressive_MPa, 0.0), std::max(core.modulus_MPa, 0.0)};
}

Core deck_core(DeckKind kind) {
  if (kind == DeckKind::cored_balsa) return core(CoreKind::balsa, 150.0);
  return kind == DeckKind::cored_foam ? core(CoreKind::cross_linked_pvc, 80.0) : Core{};
}

// Source: ISO 12215-5:2008, Table 15.
double minimum_deck_mm(DeckKind kind, double waterline_length_m) {
  return kind == DeckKind::aluminium ? 1.35 + 0.06 * waterline_length_m
                                     : 1.45 + 0.14 * waterline_length_m;
}

}  // namespace thole
