#pragma once

// Charging: which mains charger refills the bank in time, what it draws, what the locker must vent.

#include <limits>
#include <vector>

#include "base/trace.h"
#include "calc/charge/vent_plan.h"
#include "data/parts.h"

namespace thole {

// kShoreResidual: of the residual-current device at the shore inlet, at most.
inline constexpr double kShoreTrip_A = 0.030;
inline constexpr double kShoreTrip_s = 0.100;

struct ChargeInput {
  Chemistry chemistry = Chemistry::agm;
  double block_capacity_Ah = 0.0;  // of one block
  double block_nominal_V = 12.0;   // of one block
  int series_count = 0;            // 0: there is no bank
  int parallel_count = 0;
  double depth_used_frac = 0.0;          // taken out over the day, of the label's capacity
  std::vector<ChargerModel> chargers{};  // to choose from; one when it is given
  double shore_V = 120.0;                // > 0
  double shore_limit_A = 12.0;           // continuous
  double outlet_A = 0.0;                 // the shore outlet's breaker; 0: not known
  double other_loads_A = 0.0;            // on the same outlet
  double available_h = 12.0;             // on shore power
  double locker_volume_m3 = 0.15;        // free, with the blocks in
  double vent_area_cm2 = -1.0;           // each opening; negative or NaN: made to the size required
  double temperature_C = 10.0;
  bool petrol = true;  // aboard
  bool vents_opposite = true;
  double vents_apart_m = std::numeric_limits<double>::quiet_NaN();  // when on one side
  double fan_m3_per_h = 0.0;                                        // 0: none
  bool fan_with_charger = false;
  bool fan_protected = false;
  bool charger_stops_itself = false;
  bool recombining_caps = false;
  double converter_A = 0.0;   // from the engine's side, into the bank; 0: none
  double alternator_A = 0.0;  // by its label
  double engine_loads_A = 0.0;
  double engine_h = 0.0;    // in a day out
  double panel_W = 0.0;     // 0: none
  double full_sun_h = 0.0;  // in a day
  double standing_W = 0.0;  // drawn from the bank at rest
};

struct ChargeResult {
  bool found = false;
  ChargerModel charger{};
  int charger_count = 0;
  double output_A = 0.0;  // into each block
  double time_h = 0.0;    // to refill what the day used
  double shore_A = 0.0;
  double charge_V = 0.0;              // of a block, at its temperature
  double ventilation_m3_per_h = 0.0;  // 0: no hydrogen
  double vent_area_cm2 = 0.0;         // required of each opening; 0: no hydrogen
  double spark_clearance_mm = 0.0;    // 0: no hydrogen
  double minutes_to_limit_min = 0.0;  // closed locker, failed charger; 0: no hydrogen
  VentPlanResult venting{};           // whole, of which the figures above are part
  Trace trace{};
};

// Chooses the smallest charger (by total output; equal: the cheaper) with an isolated output for
// each block that refills the day's use within the hours on shore, stays within the shore current
// and the chemistry's bulk current; when none does, the one that comes closest.
//
// Sources: IEC/EN 62485-2 and -3 (ventilation), 46 CFR 111.15-3 (class), 33 CFR 183.410 (ignition
// protection); charging figures are common practice. A converter
// from the engine's side, when there is one, is held against its alternator. Tonight, the engine
// and the sun in full: calc/charge/ways.h.
// Precondition: values in the ranges of job/fields.cpp.
ChargeResult charge(const ChargeInput& in);

}  // namespace thole
