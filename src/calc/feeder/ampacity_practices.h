#pragma once

// What one conductor may carry by each of three practices, its factors side by side.

#include <string>
#include <string_view>
#include <vector>

#include "base/trace.h"
#include "data/conductors.h"

namespace thole {

struct CablePlace {
  double insulation_C = 105.0;  // temperature rating
  double ambient_C = 30.0;      // air round it outside an engine space
  bool engine_space = false;
  int bundled_count = 2;   // conductors loaded together
  double nominal_V = 0.0;  // of the bank
};

struct AmpacityFactor {
  std::string_view label{};
  double factor = 1.0;
  std::string_view why{};
  SourceRef source{};
};

struct AmpacityPractice {
  std::string_view id{};  // "cfr", "e11", "iso"
  std::string_view label{};
  std::string_view table{};  // whose sizes: AWG, SAE gauges, metric
  std::string conductor{};   // the size that was read there; empty: it has none so thin
  bool own_size = true;      // false: of the size with no less resistance, for the table lists no such one
  double table_A = 0.0;
  std::vector<AmpacityFactor> factors{};
  double ampacity_A = 0.0;
  SourceRef source{};
};

// 33 CFR 183.425, American small-craft practice (ABYC E-11 as published) and the international one (ISO
// 10133 as published). AWG sizes are never read as metric ones: where a practice's table does not list
// the conductor, the thickest of its own sizes that resists no less stands for it, and is named.
std::vector<AmpacityPractice> ampacity_practices(const Conductor& conductor, const CablePlace& place);

}  // namespace thole
