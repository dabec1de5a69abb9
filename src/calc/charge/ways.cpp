#include "calc/charge/ways.h"

#include <algorithm>

#include "data/batteries.h"

namespace thole {

double shore_spare_A(const ChargeInput& in) {
  return in.outlet_A > 0.0 ? outlet_spare_A(in.outlet_A, in.other_loads_A, in.shore_limit_A)
                           : in.shore_limit_A;
}

ShoreInput shore_input(const ChargeInput& in, const ChargeResult& result) {
  return {.chemistry = in.chemistry,
          .block_capacity_Ah = in.block_capacity_Ah,
          .block_charge_V = result.charge_V,
          .block_count = in.series_count * in.parallel_count,
          .depth_frac = in.depth_used_frac,
          .charger_A = result.output_A,
          .efficiency_frac = result.charger.efficiency_frac,
          .power_factor = result.charger.power_factor,
          .shore_V = in.shore_V,
          .outlet_A = in.outlet_A,
          .other_loads_A = in.other_loads_A,
          .limit_A = in.shore_limit_A,
          .night_h = in.available_h};
}

VentPlanInput vent_plan_input(const ChargeInput& in, const ChargeResult& result) {
  const bool cut = in.vent_area_cm2 >= 0.0;  // this way round, NaN means "not given" too
  const double opening_cm2 = cut ? in.vent_area_cm2 : 0.0;
  return {.chemistry = in.chemistry,
          .block_capacity_Ah = in.block_capacity_Ah,
          .cells_per_block = cell_count(in.chemistry, in.block_nominal_V),
          .block_count = in.series_count * in.parallel_count,
          .charger_A = result.output_A,
          .recombining_caps = in.recombining_caps,
          .free_volume_m3 = in.locker_volume_m3,
          .cut_to_size = !cut,
          .low_opening_cm2 = opening_cm2,
          .high_opening_cm2 = opening_cm2,
          .opposite_sides = in.vents_opposite,
          .openings_apart_m = in.vents_apart_m,
          .fan_m3_per_h = in.fan_m3_per_h,
          .fan_with_charger = in.fan_with_charger,
          .fan_protected = in.fan_protected,
          .charger_stops_itself = in.charger_stops_itself};
}

DcDcInput dc_dc_input(const ChargeInput& in, const ChargeResult& result) {
  return {.chemistry = in.chemistry,
          .capacity_Ah = in.block_capacity_Ah * in.parallel_count,
          .depth_frac = in.depth_used_frac,
          .charge_V = result.charge_V * in.series_count,
          .output_A = in.converter_A,
          .alternator_A = in.alternator_A,
          .own_loads_A = in.engine_loads_A,
          .running_h = in.engine_h};
}

SolarInput solar_input(const ChargeInput& in) {
  return {.chemistry = in.chemistry,
          .bank_Wh = in.block_capacity_Ah * in.block_nominal_V * in.series_count * in.parallel_count,
          .panel_W = in.panel_W,
          .full_sun_h = in.full_sun_h,
          .standing_W = in.standing_W,
          .missing_frac = std::clamp(in.depth_used_frac, 0.0, 1.0)};
}

}  // namespace thole
