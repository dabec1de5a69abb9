#pragma once

// Plate metals: the rows that PlateStock::alloy names. Minimum values of each source; where sources
// differ on welded strength, the lower.

#include <string_view>

#include "base/trace.h"

namespace thole {

struct Alloy {
  std::string_view name{};  // "5083-H116"
  double tensile_MPa = 0.0;
  double yield_MPa = 0.0;         // 0.2 % proof
  double welded_yield_MPa = 0.0;  // within some 30 mm of a weld
  double modulus_GPa = 0.0;
  double poisson_ratio = 0.0;
  double density_kg_per_m3 = 0.0;
  SourceRef source{};
};

// Stainless steel, not aluminium.
inline bool is_stainless(const Alloy& alloy) { return alloy.modulus_GPa > 150.0; }

// Null when no alloy has this name.
const Alloy* find_alloy(std::string_view name);

}  // namespace thole
