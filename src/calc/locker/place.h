#pragma once

// What stands near the bank, and how warm it gets there.

#include <limits>
#include <optional>

#include "base/trace.h"
#include "data/parts.h"

namespace thole {

inline constexpr double kNotKnown_m = std::numeric_limits<double>::quiet_NaN();

// NaN or empty: not measured yet. Such a check stays open; it never passes.
struct PlaceInput {
  Chemistry chemistry = Chemistry::agm;
  bool petrol = true;                        // aboard
  std::optional<bool> tank_over_or_under{};  // tank, filter or fuel fitting straight above or below
  double metal_fuel_part_m = kNotKnown_m;    // lowest metal fuel part above the blocks' tops
  bool metal_fuel_part_shielded = false;     // by something that does not conduct
  double spark_from_petrol_m = kNotKnown_m;  // charger, switch, fan to fuel parts, through open air
  bool spark_parts_protected = false;        // ignition protected, or behind a bulkhead
  double spark_from_vent_m = kNotKnown_m;    // nearest spark or glow to a block's vent, in sight
  double spark_clearance_mm = 0.0;           // that the gas asks for; 0: none
  double above_bilge_m = kNotKnown_m;        // bottom of the blocks over the highest bilge water
  double coldest_C = std::numeric_limits<double>::quiet_NaN();  // of the space while charging
  double hottest_C = std::numeric_limits<double>::quiet_NaN();
};

// Temperatures at which the blocks may be charged. Common practice; the label overrides it.
struct ChargeWindow {
  double low_C = 0.0;
  double high_C = 0.0;
};
ChargeWindow charge_window(Chemistry chemistry);

// Checks and cautions alone. Sources: 33 CFR 183.420(c), (d) and 183.410; ISO 10133:2012 clause 5
// (300 mm); 46 CFR 183.350; IEC/EN 62485-2 for clearance and 40 C.
Trace place(const PlaceInput& in);

}  // namespace thole
