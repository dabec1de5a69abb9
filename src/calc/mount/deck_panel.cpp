#include "calc/mount/deck_panel.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "data/alloys.h"
#include "data/laminates.h"

namespace thole {
namespace {

constexpr int kWaves = 80;  // a patch of a tenth of the panel leaves less than a thousandth beyond
constexpr double kLaminatePoisson_ratio = 0.3;

// Of the sines that stand on a side, by their number: squared at a patch so far from the middle, averaged over it.
std::array<double, kWaves + 1> squares(double side_m, double off_m, double patch_m) {
  std::array<double, kWaves + 1> values{};
  for (int m = 1; m <= kWaves; ++m) {
    const double wave = m * std::numbers::pi / side_m;
    const double half = 0.5 * wave * patch_m;
    const double mean = half > 0.0 ? std::sin(half) / half : 1.0;
    const double at = std::sin(wave * (0.5 * side_m + off_m)) * mean;
    values[static_cast<std::size_t>(m)] = at * at;
  }
  return values;
}

}  // namespace

DeckSection deck_section(DeckKind kind, double skin_mm, double core_mm) {
  const Alloy* alloy = kind == DeckKind::aluminium ? find_alloy("5083-O") : nullptr;
  const double modulus_Pa = alloy != nullptr ? alloy->modulus_GPa * 1e9 : laminate(kDeckGlass_frac).modulus_MPa * 1e6;
  const double poisson_ratio = alloy != nullptr ? alloy->poisson_ratio : kLaminatePoisson_ratio;
  const double skin_m = skin_mm / 1000.0;
  const double core_m = core_mm / 1000.0;
  const double plane_Pa = modulus_Pa / (1.0 - poisson_ratio * poisson_ratio);
  const Core core = deck_core(kind);
  if (!(core.modulus_MPa > 0.0)) return {.rigidity_Nm = plane_Pa * skin_m * skin_m * skin_m / 12.0};
  // Skins laid on one another without a core.
  if (!(core_m > 0.0)) return {.rigidity_Nm = plane_Pa * 8.0 * skin_m * skin_m * skin_m / 12.0};
  const double apart_m = core_m + skin_m;
  return {.rigidity_Nm = 0.5 * plane_Pa * skin_m * apart_m * apart_m,
          .shear_N_per_m = core.shear_modulus_MPa * 1e6 * apart_m * apart_m / core_m};
}

PanelStiffness panel_stiffness(const DeckPanel& panel, double long_m, double wide_m) {
  const double a_m = panel.length_m;
  const double b_m = panel.width_m;
  const auto along = squares(a_m, 0.5 * long_m, panel.patch_m);
  const auto across = squares(b_m, 0.5 * wide_m, panel.patch_m);
  // Loads of 1 N, pushing alike, or two against two fore and aft: by symmetry odd waves carry the one, even ones
  // the other.
  double sink_m = 0.0;
  double tilt_m = 0.0;
  for (int m = 1; m <= kWaves; ++m) {
    for (int n = 1; n <= kWaves; n += 2) {
      const double kappa = std::numbers::pi * std::numbers::pi * (m * m / (a_m * a_m) + n * n / (b_m * b_m));
      double gives = 1.0 / (panel.section.rigidity_Nm * kappa * kappa);
      if (panel.section.shear_N_per_m > 0.0) gives += 1.0 / (panel.section.shear_N_per_m * kappa);
      (m % 2 == 1 ? sink_m : tilt_m) +=
          16.0 / (a_m * b_m) * along[static_cast<std::size_t>(m)] * across[static_cast<std::size_t>(n)] * gives;
    }
  }
  return {.sink_N_per_m = 4.0 / sink_m, .tilt_Nm_per_rad = long_m * long_m / tilt_m};
}

}  // namespace thole
