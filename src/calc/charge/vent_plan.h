#pragma once

// The locker's air, case by case: float, boost, a charger that fails; openings, a fan, sparks.

#include <limits>
#include <string>
#include <vector>

#include "base/trace.h"
#include "data/parts.h"

namespace thole {

struct VentPlanInput {
  Chemistry chemistry = Chemistry::agm;
  double block_capacity_Ah = 0.0;  // > 0
  int cells_per_block = 6;
  int block_count = 0;
  double charger_A = 0.0;         // into each block
  bool recombining_caps = false;  // plugs that turn the gas back into water
  double free_volume_m3 = 0.0;    // of the locker, with the blocks in
  double temperature_C = 20.0;    // of the gas
  bool cut_to_size = false;       // openings not cut yet: as large as they must be
  double low_opening_cm2 = 0.0;   // 0: none
  double high_opening_cm2 = 0.0;  // 0: none
  bool opposite_sides = true;     // the two openings
  double openings_apart_m = std::numeric_limits<double>::quiet_NaN();  // when on one side
  double fan_m3_per_h = 0.0;          // in place, blowing into its duct; 0: none
  bool fan_with_charger = false;      // the charger cannot run without it
  bool fan_protected = false;         // ignition protected
  bool charger_stops_itself = false;  // at over-voltage or after a time
};

enum class VentCase { floating, boost, failed };

struct VentDemand {
  VentCase of = VentCase::floating;
  double gassing_A = 0.0;  // of a cell, as the rule counts it
  double flow_m3_per_h = 0.0;
  double opening_cm2 = 0.0;    // each of two
  double round_hole_mm = 0.0;  // the same area as one hole
  double spark_mm = 0.0;       // from a block's vent
  double closed_min = 0.0;     // until a closed locker holds 4 %
};

struct VentPlanResult {
  std::vector<VentDemand> demands{};  // float, boost, failed; empty: no hydrogen
  double opening_cm2 = 0.0;           // required of each: boost
  double fan_m3_per_h = 0.0;  // required of a fan: failed charger, or boost if it stops itself
  double spark_mm = 0.0;
  bool by_fan = false;  // natural draught is not counted
  std::string problem{};
  Trace trace{};
};

// Diameter of one hole of this area.
double round_hole_mm(double area_cm2);

// Sources: IEC/EN 62485-2 (float and boost gassing, opening, clearance; failed charger: its whole
// current), its part 3 where it asks more; Faraday for the minutes, where gas counts as it is and
// not as the rule enlarges it. Distance of the openings recalled. Fan: 33 CFR 183.410 and UK BSS
// part 4. Natural openings are made for boost and a fan for the failure, which no opening serves.
// Lithium: no hydrogen; cautions instead.
VentPlanResult vent_plan(const VentPlanInput& in);

}  // namespace thole
