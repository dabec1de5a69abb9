#include "calc/design.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>
#include <utility>

#include "base/order.h"
#include "base/units.h"
#include "calc/fault.h"
#include "calc/compass_study.h"
#include "calc/fitted_bank.h"
#include "calc/plate_made.h"
#include "calc/shaft/tube.h"
#include "calc/told_plate.h"
#include "calc/trim/hydrostatics.h"
#include "calc/hold/day.h"
#include "data/conductors.h"
#include "data/day_plan.h"
#include "data/device_curves.h"
#include "data/sources.h"
#include "data/windage.h"
#include "job/complete.h"
#include "job/fields.h"

namespace thole {
namespace {

// The hold stage sizes on these shares of the bollard thrust; the shaft and the feeder stage check
// that what they arrive at is no worse. Project decision, docs/decisions.md.
constexpr double kImmersionAllowance_factor = 0.97;
constexpr double kSagAllowance_factor = 0.95;
constexpr double kBoltMass_kg = 0.08;  // with nut and washers, M8 to M10: common practice

template <class T>
void choose(Given<T>& target, T value) {
  if (!target.known()) target = {std::move(value), Origin::chosen};
}
void choose(Given<std::string>& target, const std::string& id) {
  if (!target.known() && !id.empty()) target = {id, Origin::chosen};
}

// What was named, or everything that the shop sells.
template <class Item>
std::vector<Item> offered(const std::vector<Item>& list, const Given<std::string>& id) {
  const Item* named = id.known() ? find_item(list, id.value) : nullptr;
  return named != nullptr ? std::vector<Item>{*named} : list;
}

template <class T>
void override_with(T& target, const Given<T>& own) {
  if (own.known()) target = own.value;
}

// The motors to choose from. A motor that is described but not in the catalogue borrows what was
// not said from the class nearest in thrust.
std::vector<MotorClass> motors_for(const Job& job, const Catalogue& catalogue) {
  const Hold& hold = job.hold;
  std::vector<MotorClass> motors = offered(catalogue.motors, hold.motor);
  if (hold.thrust_N.known() && !hold.motor.known() && !motors.empty()) {
    const auto distance = [&](const MotorClass& motor) {
      return std::abs(motor.thrust_N - hold.thrust_N.value);
    };
    MotorClass own =
        *std::min_element(motors.begin(), motors.end(),
                          [&](const auto& a, const auto& b) { return distance(a) < distance(b); });
    own.id = "own";
    own.label = "Your own motor";
    motors = {own};
  }
  if (hold.nominal_V.known() && !hold.motor.known()) {
    std::vector<MotorClass> fitting;
    for (const MotorClass& motor : motors) {
      if (std::abs(motor.nominal_V - hold.nominal_V.value) < 3.0) fitting.push_back(motor);
    }
    if (!fitting.empty()) motors = fitting;
  }
  for (MotorClass& motor : motors) {
    override_with(motor.thrust_N, hold.thrust_N);
    override_with(motor.nominal_V, hold.nominal_V);
    override_with(motor.minimum_V, hold.minimum_V);
    override_with(motor.maximum_V, hold.maximum_V);
    override_with(motor.power_full_W, hold.power_full_W);
    override_with(motor.power_idle_W, hold.power_idle_W);
    override_with(motor.propeller_diameter_m, hold.propeller_diameter_m);
    override_with(motor.mass_kg, hold.motor_mass_kg);
    override_with(motor.tube_outer_mm, job.shaft.tube_outer_mm);
    override_with(motor.tube_wall_mm, job.shaft.tube_wall_mm);
    override_with(motor.tube_yield_MPa, job.shaft.tube_yield_MPa);
    override_with(motor.tube_modulus_GPa, job.shaft.tube_modulus_GPa);
  }
  return motors;
}

// The blocks to choose from: of the chemistry asked for; a described block borrows what was not
// said from the one nearest in capacity.
std::vector<BatteryBlock> blocks_for(const Job& job, const Catalogue& catalogue) {
  const Bank& bank = job.bank;
  std::vector<BatteryBlock> blocks = offered(catalogue.blocks, bank.block);
  if (!bank.block.known()) {
    std::erase_if(blocks, [&](const BatteryBlock& block) {
      const bool other_kind = bank.chemistry.known() && block.chemistry != bank.chemistry.value;
      const bool other_volts =
          bank.block_V.known() && std::abs(block.nominal_V - bank.block_V.value) > 1.0;
      return other_kind || other_volts;
    });
    if (bank.capacity_Ah.known() && !blocks.empty()) {
      BatteryBlock own = *std::min_element(
          blocks.begin(), blocks.end(), [&](const BatteryBlock& a, const BatteryBlock& b) {
            return std::abs(a.capacity_Ah - bank.capacity_Ah.value) <
                   std::abs(b.capacity_Ah - bank.capacity_Ah.value);
          });
      own.id = "own";
      own.label = "Your own block";
      own.reserve_capacity_min = 0.0;  // belongs to the other block's label
      own.mass_kg *= bank.capacity_Ah.value / own.capacity_Ah;
      own.resistance_ohm *= own.capacity_Ah / bank.capacity_Ah.value;
      blocks = {own};
    }
  }
  for (BatteryBlock& block : blocks) {
    override_with(block.nominal_V, bank.block_V);
    override_with(block.capacity_Ah, bank.capacity_Ah);
    override_with(block.rated_hours_h, bank.rated_hours_h);
    override_with(block.resistance_ohm, bank.resistance_ohm);
    override_with(block.mass_kg, bank.block_mass_kg);
    override_with(block.continuous_A, bank.continuous_A);
  }
  return blocks;
}

// The blocks that are in the boat, if they were named one by one. What their text does not say is as
// the block on offer has it that is nearest in capacity.
FittedBank fitted_in(const Job& job, const std::vector<BatteryBlock>& offered_blocks,
                     double motor_V) {
  const Bank& bank = job.bank;
  const FittedRead read = read_fitted(bank.fitted.value);
  if (!bank.fitted.known() || !read.message.empty() || offered_blocks.empty()) return {};
  const double first_Ah = read.strings.front().front().capacity_Ah;
  const BatteryBlock& base = *std::min_element(
      offered_blocks.begin(), offered_blocks.end(), [&](const auto& a, const auto& b) {
        return std::abs(a.capacity_Ah - first_Ah) < std::abs(b.capacity_Ah - first_Ah);
      });
  return fitted_bank(bank.fitted.value, base, bank.age_factor.value, bank.series_count.value, motor_V);
}

double mean_mass_kg(const std::vector<RunString>& strings) {
  double sum_kg = 0.0;
  double blocks = 0.0;
  for (const RunString& string : strings) {
    for (const RunBlock& block : string.blocks) {
      sum_kg += block.block.mass_kg;
      blocks += 1.0;
    }
  }
  return blocks > 0.0 ? sum_kg / blocks : 0.0;
}

std::vector<ChargerModel> chargers_for(const Job& job, const Catalogue& catalogue) {
  std::vector<ChargerModel> chargers = offered(catalogue.chargers, job.charge.charger);
  for (ChargerModel& charger : chargers) {
    override_with(charger.output_A, job.charge.output_A);
    override_with(charger.efficiency_frac, job.charge.efficiency_frac);
    override_with(charger.power_factor, job.charge.power_factor);
  }
  return chargers;
}

HoldInput hold_input(const Job& job, std::vector<MotorClass> motors) {
  const Boat& boat = job.boat;
  const Water& water = job.water;
  return {
      .length_m = boat.length_m.value,
      .waterline_length_m = boat.waterline_length_m.value,
      .waterline_beam_m = boat.waterline_beam_m.value,
      .draft_m = boat.draft_m.value,
      .displacement_kg = boat.displacement_kg.value,
      .deadrise_deg = boat.deadrise_deg.value,
      .frontal_area_m2 = boat.frontal_area_m2.value,
      .lateral_area_m2 = boat.lateral_area_m2.value,
      .lateral_centroid_m = boat.lateral_centroid_m.value,
      .underwater_area_m2 = boat.underwater_area_m2.value,
      .underwater_centroid_m = boat.underwater_centroid_m.value,
      .bow_angle_rad = rad_from_deg(boat.bow_angle_deg.value),
      .thruster_forward_m = job.shaft.thruster_forward_m.value,
      .legs_down = boat.leg.value != Leg::tilted,
      .leg_count = boat.outboard_count.value,
      .leg_propeller_m = boat.leg_propeller_m.value,
      .propellers_free = boat.leg.value == Leg::down_free,
      .standing_forward_count = boat.standing_forward_count.value,
      .flat_front = boat.layout.value == Layout::pilothouse ||
                    boat.layout.value == Layout::flybridge,
      .windage_factor = job.hold.windage_factor.value,
      .drag_factor = job.hold.drag_factor.value,
      .wind_mps = water.wind_mps.value,
      .wind_at_boat_height = water.wind_height.value == WindHeight::at_boat,
      .fetch_m = water.fetch_m.value,
      .depth_m = water.depth_m.value,
      .current_mps = water.current_mps.value,
      .current_angle_deg = water.current_angle_deg.value,
      .wave_height_m = water.wave_height_m.value,
      .wave_period_s = water.wave_period_s.value,
      .salt = water.salinity.value == Salinity::salt,
      .air_C = water.air_C.value,
      .margin_factor = margin_factor(water.exposure.value == Exposure::sheltered,
                                     job.hold.firmness.value == Firmness::loose),
      .holding_h = job.hold.holding_h.value,
      .transit_h = job.hold.transit_h.value,
      .transit_thrust_frac = job.hold.transit_thrust_frac.value,
      .immersion_factor = kImmersionAllowance_factor,
      .sag_factor = kSagAllowance_factor,
      .motors = std::move(motors),
  };
}

// Where the stowed motor's weight lies is the motor's own figure, unless it was measured.
void place_stowed_motor(const MotorClass& motor, Job& job, Trace& trace) {
  constexpr double kUsualOverhang_mm = 350.0;  // common practice
  if (job.mount.overhang_mm.known()) return;
  const bool told = motor.stowed_overhang_m > 0.0;
  job.mount.overhang_mm = {told ? 1000.0 * motor.stowed_overhang_m : kUsualOverhang_mm,
                           told ? Origin::chosen : Origin::estimated};
  trace.assumptions.push_back(
      {"mount.overhang_mm",
       "The stowed motor's centre of mass lies where its class has it ahead of the front bolts. "
       "Measure yours: nothing else on that page matters as much.",
       kCommonPractice});
}

// A motor that holds the boat but whose shaft ends short of solid water is no answer when another
// one reaches.
std::vector<MotorClass> motors_that_reach(std::vector<MotorClass> motors,
                                          const ShaftResult& shaft) {
  std::erase_if(motors, [&](const MotorClass& motor) {
    return next_length_up_m(motor.shaft_lengths_m, shaft.length_required_m) <= 0.0;
  });
  return motors;
}

void record_motor(const MotorClass& motor, Job& job) {
  Hold& hold = job.hold;
  choose(hold.motor, motor.id);
  choose(hold.thrust_N, motor.thrust_N);
  choose(hold.nominal_V, motor.nominal_V);
  choose(hold.minimum_V, motor.minimum_V);
  choose(hold.maximum_V, motor.maximum_V);
  choose(hold.power_full_W, motor.power_full_W);
  choose(hold.power_idle_W, motor.power_idle_W);
  choose(hold.propeller_diameter_m, motor.propeller_diameter_m);
  choose(hold.motor_mass_kg, motor.mass_kg);
  choose(job.shaft.tube_outer_mm, motor.tube_outer_mm);
  choose(job.shaft.tube_wall_mm, motor.tube_wall_mm);
  choose(job.shaft.tube_yield_MPa, motor.tube_yield_MPa);
  choose(job.shaft.tube_modulus_GPa, motor.tube_modulus_GPa);
}

ShaftInput shaft_input(const Job& job, const HoldResult& hold) {
  return {
      .bow_height_m = job.boat.bow_height_m.value,
      .collar_m = job.shaft.collar_m.value,
      .propeller_diameter_m = hold.motor.propeller_diameter_m,
      .immersion_ratio = job.shaft.immersion_ratio.value,
      .wave_height_m = hold.wave_height_m,
      .wave_period_s = hold.wave_period_s,
      .waterline_length_m = job.boat.waterline_length_m.value,
      .waterline_beam_m = job.boat.waterline_beam_m.value,
      .draft_m = job.boat.draft_m.value,
      .thruster_forward_m = job.shaft.thruster_forward_m.value,
      .trim_allowance_m = job.shaft.trim_allowance_m.value,
      .stock_lengths_m = hold.motor.shaft_lengths_m,
      .length_m = job.shaft.length_m.given() ? job.shaft.length_m.value : 0.0,
      .thrust_N = hold.motor.thrust_N,
      .tube_outer_mm = hold.motor.tube_outer_mm,
      .tube_wall_mm = hold.motor.tube_wall_mm,
      .tube_yield_MPa = hold.motor.tube_yield_MPa,
      .tube_modulus_GPa = hold.motor.tube_modulus_GPa,
      .current_mps = job.water.current_mps.value,
      .assumed_immersion_factor = kImmersionAllowance_factor,
  };
}

BankInput bank_input(const Job& job, std::vector<BatteryBlock> blocks, const HoldResult& hold) {
  const Bank& bank = job.bank;
  BankInput in{
      .motor_nominal_V = hold.motor.nominal_V,
      .motor_minimum_V = hold.motor.minimum_V,
      .motor_maximum_V = hold.motor.maximum_V,
      .energy_Wh = hold.energy_Wh,
      .holding_h = hold.holding_h,
      .hours_on_h = hold.hours_on_h,
      .mean_power_W = hold.hours_on_h > 0.0 ? hold.energy_Wh / hold.hours_on_h : 0.0,
      .full_power_W = hold.motor.power_full_W,
      .blocks = std::move(blocks),
      .series_count = bank.series_count.value,
      .parallel_count = bank.parallel_count.value,
      .peukert_exponent = bank.peukert_exponent.value,
      .depth_of_discharge_frac = bank.depth_of_discharge_frac.value,
      .age_factor = bank.age_factor.value,
      .margin_factor = bank.margin_factor.value,
      .temperature_C = bank.temperature_C.value,
      .feeder_drop_frac = job.feeder.allowed_drop_frac.value,
      .days_out_count = static_cast<double>(bank.days_out_count.value),
  };
  const FittedBank fitted = fitted_in(job, in.blocks, hold.motor.nominal_V);
  if (!fitted.found()) return in;
  const RunBlock& weakest = fitted.weakest_block();
  BatteryBlock block = weakest.block;
  block.label = "As fitted, the weakest";
  block.mass_kg = mean_mass_kg(fitted.strings);  // the whole bank's weight is then right
  in.blocks = {std::move(block)};
  in.series_count = static_cast<int>(fitted.strings.front().blocks.size());
  in.parallel_count = static_cast<int>(fitted.strings.size());
  in.age_factor = std::max(in.age_factor, weakest.age_factor);
  in.fitted = fitted.strings;
  in.fitted_blocks = fitted.blocks;
  return in;
}

// The locker with these blocks in it.
PackingInput packing_input(const Job& job, const BatteryBlock& block, int series_count,
                           int parallel_count) {
  const Locker& locker = job.locker;
  return {
      .chemistry = block.chemistry,
      .locker_length_m = locker.length_m.value,
      .locker_width_m = locker.width_m.value,
      .locker_height_m = locker.height_m.value,
      .by_door = locker.access.value == LockerAccess::door,
      .opening_length_m = locker.opening_length_m.value,
      .opening_width_m = locker.opening_width_m.value,
      .block_length_m = 0.001 * block.length_mm,
      .block_width_m = 0.001 * block.width_mm,
      .block_height_m = 0.001 * block.height_mm,
      .series_count = series_count,
      .parallel_count = parallel_count,
      .side_allowed = locker.side_allowed.value,
      .tiers_allowed = locker.tiers_allowed.value,
  };
}

bool measured(const Locker& locker) {
  return locker.length_m.known() && locker.width_m.known() && locker.height_m.known();
}

bool goes_in(const Job& job, const BankResult& bank) {
  const FitResult held =
      fit(packing_input(job, bank.block, bank.series_count, bank.parallel_count));
  return held.fits || !held.exact;
}

// A bank that lasts the day but does not go into the locker is no answer when another does both.
BankResult bank_with_room(const Job& job, const BankInput& in) {
  BankResult first = bank(in);
  if (!first.found || !measured(job.locker) || goes_in(job, first)) return first;
  BankInput roomy = in;
  for (const BatteryBlock& block : in.blocks) {
    bool exact = true;
    roomy.room_counts.push_back(capacity_count(packing_input(job, block, 1, 1), exact));
  }
  BankResult second = bank(roomy);
  const bool serves = second.found && std::none_of(second.trace.checks.begin(),
                                                   second.trace.checks.end(), [](const Check& check) {
                                                     return check.verdict() == Verdict::fail;
                                                   });
  return serves ? second : first;
}

void record_bank(const BankResult& result, Job& job) {
  Bank& bank = job.bank;
  const BatteryBlock& block = result.block;
  choose(bank.block, block.id);
  choose(bank.chemistry, block.chemistry);
  choose(bank.block_V, block.nominal_V);
  choose(bank.capacity_Ah, block.capacity_Ah);
  choose(bank.rated_hours_h, block.rated_hours_h);
  choose(bank.resistance_ohm, block.resistance_ohm);
  choose(bank.block_mass_kg, block.mass_kg);
  choose(bank.continuous_A, block.continuous_A);
  choose(bank.series_count, result.series_count);
  choose(bank.parallel_count, result.parallel_count);
}

// As a short circuit sees it.
FaultBank fault_bank(const Job& job, const BankResult& bank) {
  return {.block = bank.block,
          .series_count = bank.series_count,
          .parallel_count = bank.parallel_count,
          .age_factor = job.bank.age_factor.value,
          .cold_C = job.bank.temperature_C.value,
          .flat_charge_frac = std::clamp(1.0 - job.bank.depth_of_discharge_frac.value, 0.0, 1.0)};
}

FeederInput feeder_input(const Job& job, const Catalogue& catalogue, const HoldResult& hold,
                         const BankResult& bank) {
  const Feeder& feeder = job.feeder;
  return {
      .nominal_V = bank.nominal_V,
      .open_circuit_full_V = bank.open_circuit_full_V,
      .open_circuit_end_V = bank.open_circuit_end_V,
      .resistance_full_ohm = bank.resistance_full_ohm,
      .resistance_end_ohm = bank.resistance_end_ohm,
      .charge_V = bank.charge_V,
      .strongest = bank.found ? strongest(fault_bank(job, bank)) : BankEnd{},
      .weakest = bank.found ? weakest(fault_bank(job, bank)) : BankEnd{},
      .series_count = bank.series_count,
      .parallel_count = bank.parallel_count,
      .power_full_W = hold.motor.power_full_W,
      .motor_minimum_V = hold.motor.minimum_V,
      .assumed_sag_factor = kSagAllowance_factor,
      .run_m = feeder.run_m.value,
      .tail_m = feeder.tail_m.value,
      .jumper_m = feeder.jumper_m.value,
      .allowed_drop_frac = feeder.allowed_drop_frac.value,
      .ambient_C = feeder.ambient_C.value,
      .coldest_C = job.bank.temperature_C.value,
      .engine_space = feeder.engine_space.value,
      .bundled_count = feeder.bundled_count.value,
      .device_distance_m = feeder.device_distance_m.value,
      .sheathed = feeder.sheathed.value,
      .floating = feeder.floating.value,
      .petrol = job.boat.petrol.value,
      .lug_ohm = feeder.lug_ohm.value,
      .plug_ohm = feeder.plug_ohm.value,
      .pair_spacing_m = 1e-3 * job.control.spacing_mm.value,
      .horizontal_T = earth_here(job.control).horizontal_T,
      .heading_limit_deg = job.control.heading_limit_deg.value,
      .cables = offered(catalogue.cables, feeder.conductor),
      .tail_cables = offered(catalogue.cables, feeder.tail_conductor),
      .devices = offered(catalogue.devices, feeder.device),
  };
}

void record_feeder(const FeederResult& result, Job& job) {
  choose(job.feeder.conductor, result.cable.id);
  if (job.feeder.tail_m.value > 0.0) choose(job.feeder.tail_conductor, result.tail_cable.id);
  choose(job.feeder.device, result.device.id);
}

// Brushed motors draw two to four times their current for less than a second (common practice); one
// with electronics less.
constexpr double kStart_ratio = 3.0;
constexpr double kStart_s = 0.5;
constexpr double kStall_s = 1.0;

ProtectedLead lead(std::string label, std::string_view conductor, const CableOffer& cable,
                   double length_m, double ampacity_A, double air_C, double conductor_C) {
  const Conductor* row = find_conductor(conductor);
  if (row == nullptr) return {};
  return {.label = std::move(label),
          .area_mm2 = row->area_mm2,
          .ohm_per_m = row->tinned_ohm_per_m,
          .length_m = length_m,
          .ampacity_A = ampacity_A,
          .insulation_C = cable.insulation_C,
          .air_C = std::min(air_C, cable.insulation_C - 1.0),
          .start_C = std::max(conductor_C, air_C),
          .end_C = kPvcFault_C};
}

ProtectionInput protection_input(const Job& job, const BankResult& bank,
                                 const FeederResult& feeder, const TypedPaths& typed) {
  ProtectionInput in;
  in.bank = fault_bank(job, bank);
  in.jumpers_ohm = feeder.jumpers_ohm;
  in.charge_V = bank.charge_V;
  if (!feeder.device.id.empty()) {
    in.devices = {{.label = feeder.device.label,
                   .device_class = class_of(feeder.device),
                   .rating_A = feeder.device.rating_A,
                   .voltage_V = feeder.device.voltage_V,
                   .interrupt_A = feeder.device.interrupt_A,
                   .resistance_ohm = feeder.device.resistance_ohm,
                   .pole_count = std::max(feeder.device.poles, feeder.device_count)}};
  }
  const double air_C = job.feeder.ambient_C.value;
  in.run = lead("run", feeder.conductor, feeder.cable, job.feeder.run_m.value,
                feeder.run_ampacity_A, air_C, feeder.conductor_C);
  if (job.feeder.tail_m.value > 0.0 && !feeder.tail_conductor.empty()) {
    in.tail = lead("tail", feeder.tail_conductor, feeder.tail_cable, job.feeder.tail_m.value,
                   feeder.tail_ampacity_A, air_C, feeder.tail_conductor_C);
  }
  if (!typed.leads.empty()) {
    in.typed = typed;
    in.devices = typed.devices;
    in.tail = {};
    in.run = *std::min_element(typed.leads.begin(), typed.leads.end(),
                               [](const auto& a, const auto& b) { return a.area_mm2 < b.area_mm2; });
  }
  in.motor = {.continuous_A = feeder.current_A,
              .start_A = kStart_ratio * feeder.current_nominal_A,
              .start_s = kStart_s,
              .stall_A = kStart_ratio * feeder.current_nominal_A,
              .stall_s = kStall_s};
  in.floating = job.feeder.floating.value;
  in.lug_ohm = job.feeder.lug_ohm.value;
  in.plug_ohm = job.feeder.plug_ohm.value;
  in.air = device_air(job.bank.temperature_C.value, air_C);
  return in;
}

// Its verdict is told with the feeder's, of which it is a part.
void protect(Design& design) {
  if (!design.bank.found || !design.feeder.found) return;
  design.protection = protection(protection_input(design));
  Trace& told = design.feeder.trace;
  const Trace& trace = design.protection.trace;
  told.steps.insert(told.steps.end(), trace.steps.begin(), trace.steps.end());
  told.checks.insert(told.checks.end(), trace.checks.begin(), trace.checks.end());
  told.cautions.insert(told.cautions.end(), trace.cautions.begin(), trace.cautions.end());
}

ChargeInput charge_input(const Job& job, const Catalogue& catalogue, const BankResult& bank) {
  const Charge& charge = job.charge;
  const bool cut = charge.vent_area_cm2.known() && charge.vent_area_cm2.origin != Origin::chosen;
  return {
      .chemistry = bank.block.chemistry,
      .block_capacity_Ah = bank.block.capacity_Ah,
      .block_nominal_V = bank.block.nominal_V,
      .series_count = bank.series_count,
      .parallel_count = bank.parallel_count,
      .depth_used_frac = bank.depth_used_frac,
      .chargers = chargers_for(job, catalogue),
      .shore_V = charge.shore_V.value,
      .shore_limit_A = charge.shore_limit_A.value,
      .outlet_A = charge.outlet_A.value,
      .other_loads_A = charge.other_loads_A.value,
      .available_h = charge.available_h.value,
      .locker_volume_m3 = charge.locker_volume_m3.value,
      .vent_area_cm2 = cut ? charge.vent_area_cm2.value : -1.0,
      .temperature_C = job.bank.temperature_C.value,
      .petrol = job.boat.petrol.value,
      .vents_opposite = charge.vents_opposite.value,
      .vents_apart_m = charge.vents_apart_m.known() ? charge.vents_apart_m.value
                                                    : std::numeric_limits<double>::quiet_NaN(),
      .fan_m3_per_h = charge.fan_m3_per_h.value,
      .fan_with_charger = charge.fan_with_charger.value,
      .fan_protected = charge.fan_protected.value,
      .charger_stops_itself = charge.charger_stops_itself.value,
      .recombining_caps = charge.recombining_caps.value,
      .converter_A = charge.converter_A.value,
      .alternator_A = charge.alternator_A.value,
      .engine_loads_A = charge.engine_loads_A.value,
      .engine_h = charge.engine_h.value,
      .panel_W = charge.panel_W.value,
      .full_sun_h = charge.full_sun_h.value,
      .standing_W = charge.standing_W.value,
  };
}

void record_charge(const ChargeResult& result, Job& job) {
  choose(job.charge.charger, result.charger.id);
  choose(job.charge.output_A, result.output_A);
  choose(job.charge.efficiency_frac, result.charger.efficiency_frac);
  choose(job.charge.power_factor, result.charger.power_factor);
  choose(job.charge.vent_area_cm2, result.vent_area_cm2);
}

// What was not measured is not known to the stage either.
double or_not_known(const Given<double>& measure) {
  return measure.known() ? measure.value : kNotKnown_m;
}

LockerInput locker_input(const Job& job, const BankResult& bank, const ChargeResult& charge,
                         const MountResult& mount) {
  const Locker& locker = job.locker;
  LockerInput in{
      .measured = measured(locker),
      .packing = packing_input(job, bank.block, bank.series_count, bank.parallel_count),
      .place = {.chemistry = bank.block.chemistry,
                .petrol = job.boat.petrol.value,
                .metal_fuel_part_m = or_not_known(locker.metal_fuel_part_m),
                .metal_fuel_part_shielded = locker.metal_fuel_part_shielded.value,
                .spark_from_petrol_m = or_not_known(locker.spark_from_petrol_m),
                .spark_parts_protected = locker.spark_parts_protected.value,
                .spark_from_vent_m = or_not_known(locker.spark_from_vent_m),
                .spark_clearance_mm = charge.spark_clearance_mm,
                .above_bilge_m = or_not_known(locker.above_bilge_m),
                .coldest_C = or_not_known(locker.coldest_C),
                .hottest_C = or_not_known(locker.hottest_C)},
      .restraint = {.block_mass_kg = bank.found ? bank.block.mass_kg : 0.0,
                    .block_height_m = 0.001 * bank.block.height_mm,
                    .block_count = bank.block_count,
                    .strap_rated_N = locker.strap_rated_N.value,
                    .strap_count = locker.strap_count.value},
      .motion = {.speed_mps = job.boat.cruise_speed_mps.value,
                 .waterline_length_m = job.boat.waterline_length_m.value,
                 .bank_x_m = job.trim.bank_x_m.value,
                 .cg_g = mount.cg_acceleration_factor,
                 .bow_g = mount.bow_acceleration_factor},
      .ways_out = bank.ways_out,
  };
  if (locker.tank_over_or_under.known()) {
    in.place.tank_over_or_under = locker.tank_over_or_under.value;
  }
  return in;
}

MountInput mount_input(const Job& job, const Catalogue& catalogue, const HoldResult& hold,
                       const ShaftResult& shaft) {
  const Mount& mount = job.mount;
  const Boat& boat = job.boat;
  MountInput in{
      .thrust_N = hold.motor.thrust_N,
      .thrust_lever_m = std::max(boat.bow_height_m.value + shaft.propeller_depth_m, 0.0),
      .motor_mass_kg = hold.motor.mass_kg,
      .overhang_mm = mount.overhang_mm.value,
      .chocked = mount.chocked.value,
      .plate_length_mm = mount.plate_length_mm.value,
      .plate_width_mm = mount.plate_width_mm.value,
      .plates = offered(catalogue.plates, mount.plate),
      .bolt_rows = mount.bolt_rows.value,
      .bolt_pitch_mm = mount.bolt_pitch_mm.value,
      .bolt_gauge_mm = mount.bolt_gauge_mm.value,
      .bolts = offered(catalogue.bolts, mount.bolt),
      .countersunk = mount.head.value == Head::countersunk,
      .deck = boat.deck.value,
      .deck_thickness_mm = mount.deck_thickness_mm.value,
      .core_thickness_mm = mount.core_thickness_mm.value,
      .backing_side_mm = mount.backing_side_mm.value,
      .backing_thickness_mm = mount.backing_thickness_mm.value,
      .trailered = mount.trailered.value,
      .isolated = mount.isolated.value,
      .finish = mount.finish.value,
      .finish_mm = mount.finish_mm.value,
      .core_plugged = mount.core_plugged.value,
      .run_speed_mps = boat.cruise_speed_mps.value,
      .run_wave_m = mount.run_wave_m.value,
      .displacement_kg = boat.displacement_kg.value,
      .waterline_length_m = boat.waterline_length_m.value,
      .chine_beam_m = boat.waterline_beam_m.value,
      .deadrise_deg = boat.deadrise_deg.value,
      .motor_x_m = job.trim.motor_x_m.value,
      .centre_x_m = transom_waterplane(job.trim.waterplane_ratio.value).flotation_ratio * boat.waterline_length_m.value,
  };
  const MotorClass& motor = hold.motor;
  if (motor.tube_outer_mm > 0.0 && motor.tube_wall_mm > 0.0 && motor.tube_yield_MPa > 0.0 && motor.tube_modulus_GPa > 0.0)
    in.fold_moment_Nm = tube_last_moment_Nm(tube_section(motor.tube_outer_mm, motor.tube_wall_mm), motor.tube_yield_MPa,
                                            is_composite(motor.tube_modulus_GPa));
  take_shape(mount, in);
  return in;
}

void record_mount(const MountResult& result, Job& job) {
  choose(job.mount.plate, result.plate.id);
  choose(job.mount.bolt, result.bolt.id);
}

FeederParts feeder_parts(const Job& job, const FeederResult& feeder) {
  // Total length of single conductor: out and back.
  return {.cables = {{feeder.cable, feeder.cable_m}, {feeder.tail_cable, job.feeder.tail_m.value > 0.0 ? feeder.tail_cable_m : 0.0}},
          .devices = {{feeder.device, feeder.device_count}},
          .way_m = job.feeder.run_m.value + job.feeder.tail_m.value,
          .joint_count = feeder.lug_count};
}

TrimInput trim_input(const Job& job, const HoldResult& hold, const BankResult& bank,
                     const FeederParts& feeder, const ChargeResult& charge,
                     const PlateMade& plate) {
  const Boat& boat = job.boat;
  const Trim& trim = job.trim;
  double cable_kg = 0.0;
  for (const CableUse& use : feeder.cables) {
    cable_kg += use.length_m * use.cable.mass_kg_per_m;
  }
  const double bank_x = trim.bank_x_m.value;
  const double motor_x = trim.motor_x_m.value;
  const double bank_z = trim.bank_z_m.value;
  const double motor_z = trim.motor_z_m.value;
  return {
      .length_m = boat.length_m.value,
      .waterline_length_m = boat.waterline_length_m.value,
      .waterline_beam_m = boat.waterline_beam_m.value,
      .displacement_kg = boat.displacement_kg.value,
      .waterplane_ratio = trim.waterplane_ratio.value,
      .salt = job.water.salinity.value == Salinity::salt,
      .gm_m = trim.gm_m.value,
      .initial_trim_deg = trim.initial_trim_deg.value,
      .bow_height_m = boat.bow_height_m.value,
      .crew_count = boat.crew_count.value,
      .plate_persons_count = trim.capacity_persons_count.value,
      .plate_mass_kg = trim.capacity_mass_kg.value,
      .items =
          {
              {.label = "Motor and plate",
               .mass_kg = hold.motor.mass_kg + plate.mass_kg(),
               .x_m = motor_x,
               .y_m = trim.motor_y_m.value,
               .z_m = motor_z,
               .y_field = "trim.motor_y_m"},
              {.label = "Bank",
               .mass_kg = bank.mass_kg,
               .x_m = bank_x,
               .y_m = trim.bank_y_m.value,
               .z_m = bank_z,
               .x_field = "trim.bank_x_m",
               .y_field = "trim.bank_y_m",
               .lead_bank = is_lead(bank.block.chemistry),
               .holding_h = job.hold.holding_h.value},
              {.label = "Charger",
               .mass_kg = charge.charger.mass_kg * charge.charger_count,
               .x_m = bank_x,
               .z_m = bank_z},
              {.label = "Cable",
               .mass_kg = cable_kg,
               .x_m = 0.5 * (bank_x + motor_x),
               .z_m = 0.5 * (bank_z + motor_z)},
          },
  };
}

template <class T>
std::optional<T> told(const Given<T>& value) {
  return value.known() ? std::optional<T>(value.value) : std::nullopt;
}

HeadingInput heading_input(const Job& job, const CompassInput& compass, const EarthHere& earth) {
  const Control& control = job.control;
  return {
      .field_T = level_field_at_sensor_T(compass),
      .horizontal_T = earth.horizontal_T,
      .earth_source = earth.source,
      .earth_assumed = earth.assumed,
      .year_outside = earth.year_outside,
      .limit_deg = control.heading_limit_deg.value,
      .gap_m = sensor_gap_m(compass),
      .tilt_deg = control.tilt_deg.value,
      .turn_deg = told(control.sensor_turn_deg),
      .changes = heading_changes(job, compass),
  };
}

ReceiverInput receiver_input(const Job& job, CompassInput compass) {
  const Control& control = job.control;
  compass.sensor = {control.receiver_x_m.value, -control.receiver_y_m.value, control.receiver_z_m.value};
  const auto told_place = [](const Given<double>& along) { return along.origin == Origin::given; };
  return {.placed = told_place(control.receiver_x_m) || told_place(control.receiver_y_m) || told_place(control.receiver_z_m),
          .x_m = control.receiver_x_m.value,
          .z_m = control.receiver_z_m.value,
          .gap_m = sensor_gap_m(compass),
          .off_feeder_m = height_off_feeder_m(compass, kReceiverGap_m),
          .boat = read_view(job.boat.side_view.value).points};
}

DataLinkInput data_link_input(const Job& job) {
  const Control& control = job.control;
  return {
      .kind = control.link.value,
      .cable_m = control.backbone_m.value,
      .longest_drop_m = control.longest_drop_m.value,
      .drops_m = control.drops_m.value,
      .device_count = control.node_count.value,
      .load_units_count = control.load_units_count.value,
      .feed = control.network_feed.value,
      .backbone = told(control.backbone_cable),
      .terminator_count = told(control.terminator_count),
      .fuse_A = told(control.network_fuse_A),
      .drip_loops = told(control.drip_loops),
      .ties_negatives = told(control.negative_in_data_cable),
      .floating = job.feeder.floating.value,
  };
}

ControlInput control_input(const Job& job, const HoldResult& hold, const BankResult& bank,
                           const FeederResult& feeder) {
  const Control& control = job.control;
  const EarthHere earth = earth_here(control);
  const CompassInput compass = compass_input(job, feeder.current_A, earth);
  return {
      .heading = heading_input(job, compass, earth),
      .thrust_N = hold.thrust_mean_N,
      .hours_on_h = hold.hours_on_h,
      .bank_Ah = bank.capacity_Ah,
      .breaker = feeder.device.kind == DeviceKind::breaker,
      .current_A = feeder.current_A,
      .sky_clear_deg = told(control.receiver_clear_deg),
      .receiver = receiver_input(job, compass),
      .remote = told(control.remote),
      .remote_h = told(control.remote_h),
      .link = data_link_input(job),
      .main_switch = control.main_switch.value,
      .switch_rated_A = told(control.switch_rated_A),
      .always_on_W = told(control.always_on_W),
  };
}

bool shaped(const Mount& mount) {
  return mount.outline.known() || mount.bolt_places.known() || mount.front_width_mm.known() || mount.cutouts.known() || mount.corner_mm.known() ||
         (mount.stiffener_count.known() && mount.stiffener_count.value > 0);
}

// A plate of a shape of its own as it is made, the plain rectangle else.
PlateMade plate_of(Design& design, const Beyond& beyond) {
  const Mount& mount = design.job.mount;
  if (shaped(mount)) {
    if (beyond.plate != nullptr) return beyond.plate(design);
    design.issues.push_back({Severity::warning, "mount.plate", "The plate counts as a rectangle here."});
  }
  return rectangular_plate(design);
}

PartsInput parts_input(const Catalogue& catalogue, const Design& design, FeederParts feeder, const PlateMade& plate) {
  const Job& job = design.job;
  const Control& control = job.control;
  const bool network = control.link.value == DataLink::marine_network;
  const bool ethernet = control.link.value == DataLink::ethernet;
  return {
      .motor = design.hold.motor,
      .shaft_length_m = design.shaft.length_m,
      .block = design.bank.block,
      .block_count = design.bank.block_count,
      .feeder = std::move(feeder),
      .chargers = {{design.charge.charger, design.charge.charger_count}},
      .plate = design.mount.plate,
      .plate_area_m2 = plate.blank_m2,
      .plate_net_m2 = plate.net_m2,
      .plate_mass_kg = plate.plate_kg,
      .stiffeners = {.count = plate.bar_count,
                     .length_m = plate.bar_length_m,
                     .height_mm = plate.bar_height_mm,
                     .thickness_mm = plate.bar_thickness_mm,
                     .mass_kg = plate.bar_kg},
      .bolt = design.mount.bolt,
      .bolt_count = plate.bolt_count,
      .bolt_mass_kg = kBoltMass_kg,
      .network_m = network ? control.backbone_m.value : 0.0,
      .network_device_count = control.node_count.value,
      .ethernet_m = ethernet ? control.backbone_m.value : 0.0,
      .remote_cells = control.remote.known() && control.remote.value == RemotePower::cells,
      .sundries = catalogue.sundries,
      .tasks = catalogue.tasks,
      .shop = catalogue.shop,
  };
}

// The day's draw: by its hours, or stretch by stretch where the job plans it so.
void plan_day(const Job& job, const HoldInput& in, HoldResult& hold) {
  hold.holding_h = job.hold.holding_h.value;
  hold.hours_on_h = hold.holding_h + job.hold.transit_h.value;
  if (!hold.motor_found) return;
  const bool planned = job.hold.day.known();
  const MotorClass& motor = hold.motor;
  const DayResult day =
      day_draw({.power_full_W = motor.power_full_W,
                .power_idle_W = motor.power_idle_W,
                .supply_V = std::max(1.0, motor.nominal_V),
                .segments = planned ? segments_of(read_day_plan(job.hold.day.value), in, motor)
                                    : planned_day(in, motor)});
  hold.day_rms_A = day.day.rms_A;
  hold.day_peak_A = day.day.peak_A;
  if (!planned) return;
  hold.holding_h = 0.0;
  for (const PlannedStretch& stretch : read_day_plan(job.hold.day.value).stretches) {
    if (!stretch.creeping) hold.holding_h += stretch.duration_h;
  }
  hold.hours_on_h = day.day.duration_h;
  hold.energy_Wh = day.day.energy_Wh;
  std::erase_if(hold.trace.steps, [](const Step& step) { return step.id == "hold.energy"; });
  hold.trace.steps.insert(hold.trace.steps.end(), day.trace.steps.begin(), day.trace.steps.end());
  tell([&] {
    hold.trace.steps.push_back({.id = "hold.energy",
                                .label = "Energy for the day, as planned",
                                .symbol = "E",
                                .formula = "P_day * t_day",
                                .terms = {{"P_day", day.day.mean_W, "W", "mean power of the stretches"},
                                          {"t_day", day.day.duration_h, "h", "all of the day's hours"}},
                                .value = hold.energy_Wh,
                                .unit = "Wh",
                                .source = kDefinition});
  });
}

// Holds worked out in this evaluation. Of the changes that are tried one after the other most leave
// boat, water and motor alone, and the same question has the same answer.
class Holds {
 public:
  HoldResult of(HoldInput input) {
    for (const Known& known : known_) {
      if (known.input == input) return known.result;
    }
    HoldResult result = hold(input);
    known_.push_back({std::move(input), result});
    return result;
  }

 private:
  struct Known {
    HoldInput input{};
    HoldResult result{};
  };
  std::vector<Known> known_{};
};

// All stages, without the verdict.
Design run_stages(const Job& given, const Catalogue& catalogue, const Beyond& beyond, Holds& holds) {
  Completed completed = complete(given, catalogue);
  Design design{.job = std::move(completed.job),
                .estimates = std::move(completed.trace),
                .issues = std::move(completed.issues)};
  Job& job = design.job;
  const std::vector<MotorClass> motors = motors_for(job, catalogue);
  design.hold = holds.of(hold_input(job, motors));
  design.shaft = shaft(shaft_input(job, design.hold));
  const std::vector<MotorClass> reaching = motors_that_reach(motors, design.shaft);
  if (!design.shaft.length_found && !reaching.empty()) {
    design.hold = holds.of(hold_input(job, reaching));
    design.shaft = shaft(shaft_input(job, design.hold));
  }
  record_motor(design.hold.motor, job);
  place_stowed_motor(design.hold.motor, job, design.estimates);
  choose(job.shaft.length_m, design.shaft.length_m);
  plan_day(job, hold_input(job, {design.hold.motor}), design.hold);
  design.bank = bank_with_room(job, bank_input(job, blocks_for(job, catalogue), design.hold));
  record_bank(design.bank, job);
  FeederInput wiring = feeder_input(job, catalogue, design.hold, design.bank);
  design.feeder = feeder(wiring);
  FeederParts pieces = feeder_parts(job, design.feeder);
  if (beyond.typed_circuit != nullptr) {
    beyond.typed_circuit(std::move(wiring), catalogue, design, pieces);
  } else if (job.feeder.network.known()) {
    design.issues.push_back({Severity::warning, "feeder.network", "The feeder is the fields' own here."});
  }
  record_feeder(design.feeder, job);
  protect(design);
  design.charge = charge(charge_input(job, catalogue, design.bank));
  record_charge(design.charge, job);
  design.mount = mount(mount_input(job, catalogue, design.hold, design.shaft));
  record_mount(design.mount, job);
  design.locker = locker(locker_input(job, design.bank, design.charge, design.mount));
  const PlateMade plate = plate_of(design, beyond);
  design.trim =
      trim(trim_input(job, design.hold, design.bank, pieces, design.charge, plate));
  design.control = control(control_input(job, design.hold, design.bank, design.feeder));
  design.parts = parts(parts_input(catalogue, design, std::move(pieces), plate));
  return design;
}

bool passes(const Design& design) {
  for (const Check* check : design.checks_by_seriousness()) {
    const Verdict verdict = check->verdict();
    if (verdict == Verdict::fail || verdict == Verdict::not_evaluated) return false;
  }
  return true;
}

// A change helps only where it alters the job: to forget what was never given does nothing.
bool alters(const Change& change, const Job& given) {
  const Field* field = find_field(change.field);
  if (field == nullptr) return false;
  Job changed = given;
  apply(change, changed);
  return !same_value(*field, changed, given);
}

// Of two values for one field, the one that goes farther from what it was in `start`.
bool goes_farther(const Change& change, const Change& tried, const Job& start) {
  const Field* field = find_field(change.field);
  if (field == nullptr || field->kind != Kind::number || change.clear || tried.clear) return false;
  return (change.value - tried.value) * (tried.value - field->access.get(start)) > 0.0;
}

// The change of this field in a list; null: none.
template <class List>
auto* change_of(List& list, std::string_view field) {
  const auto found = std::find_if(list.begin(), list.end(), [&](const Change& change) { return change.field == field; });
  return found == list.end() ? nullptr : &*found;
}

// The first change that each open check proposes and that is not among `tried` yet, or not so far. `start`: the job,
// completed, before any change.
std::vector<Change> proposals(const Design& design, const Job& given, const Job& start, const Job& job,
                              const std::vector<Change>& tried) {
  std::vector<Change> fresh;
  for (const Check* check : design.checks_by_seriousness()) {
    const Verdict verdict = check->verdict();
    if (verdict != Verdict::fail && verdict != Verdict::not_evaluated) break;
    for (const Change& change : check->changes) {
      if (!alters(change, job) || !alters(change, given)) continue;
      const Change* const before = change_of(tried, change.field);
      if (before != nullptr && !goes_farther(change, *before, start)) continue;
      Change* const other = change_of(fresh, change.field);
      if (other == nullptr) fresh.push_back(change);
      if (other != nullptr && goes_farther(change, *other, start)) *other = change;
      break;
    }
  }
  return fresh;
}

Job with_changes(const Job& given, const std::vector<Change>& changes) {
  Job job = given;
  for (const Change& change : changes) apply(change, job);
  return job;
}

}  // namespace

std::string_view word(Fit fit) {
  switch (fit) {
    case Fit::fits:
      return "fits";
    case Fit::fits_with_changes:
      return "fits with changes";
    case Fit::does_not_fit:
      return "does not fit";
    case Fit::not_evaluated:
      return "not evaluated";
  }
  return "not evaluated";
}

std::array<const Trace*, 11> Design::traces() const {
  return {&estimates,    &hold.trace,  &shaft.trace, &bank.trace,    &feeder.trace, &charge.trace,
          &locker.trace, &mount.trace, &trim.trace,  &control.trace, &parts.trace};
}

std::vector<const Check*> Design::checks_by_seriousness() const {
  std::vector<const Check*> checks;
  for (const Trace* trace : traces()) {
    for (const Check& check : trace->checks) checks.push_back(&check);
  }
  return sorted(std::move(checks),
                [](const Check* a, const Check* b) { return more_serious(*a, *b); });
}

const Check* Design::find_check(std::string_view id) const {
  for (const Trace* trace : traces()) {
    for (const Check& check : trace->checks) {
      if (check.id == id) return &check;
    }
  }
  return nullptr;
}

const Step* Design::find_step(std::string_view id) const {
  for (const Trace* trace : traces()) {
    for (const Step& step : trace->steps) {
      if (step.id == id) return &step;
    }
  }
  return nullptr;
}

// Applies what the failing checks propose, round by round, until everything passes or nothing new
// is proposed; then drops each change that turns out not to be needed.
struct Evaluation::Search {
  static constexpr int kRounds = 4;

  Search(const Job& job, const Catalogue& shelf) : given(job), catalogue(shelf) {}

  enum class Step { goes_on, found, in_vain };

  Step step() {
    const Untold untold;
    if (!passing) return add();
    return kept < changes.size() && changes.size() > 1 ? drop() : Step::found;
  }

  // The proof is asked of what passes without it.
  Design tried(const std::vector<Change>& with) {
    Design design = run_stages(with_changes(given, with), catalogue, beyond, holds);
    if (beyond.proof != nullptr && passes(design)) beyond.proof(design, catalogue);
    return design;
  }

  // Starts anew from these changes, which do not do; each of them is known to be needed.
  void look(std::vector<Change> from, const Design& failing) {
    changes = std::move(from);
    kept = changes.size();
    fresh = proposals(failing, given, start, with_changes(given, changes), changes);
    round = 0;
    passing = false;
  }

  Step add() {
    if (round == kRounds || fresh.empty()) return Step::in_vain;
    ++round;
    for (Change& change : fresh) take(std::move(change));
    const Design next = tried(changes);
    passing = passes(next);
    if (!passing) fresh = proposals(next, given, start, with_changes(given, changes), changes);
    return Step::goes_on;
  }

  // In the place of one that went less far.
  void take(Change change) {
    if (Change* const before = change_of(changes, change.field)) {
      *before = std::move(change);
    } else {
      changes.push_back(std::move(change));
    }
  }

  Step drop() {
    std::vector<Change> fewer = changes;
    fewer.erase(fewer.begin() + static_cast<std::ptrdiff_t>(kept));
    if (passes(tried(fewer))) {
      changes = std::move(fewer);
    } else {
      ++kept;
    }
    return Step::goes_on;
  }

  Job given{};
  Job start{};  // completed
  const Catalogue& catalogue;
  Beyond beyond{};  // without the proof until that is asked
  Holds holds{};
  std::vector<Change> fresh{};
  std::vector<Change> changes{};
  int round = 0;
  bool passing = false;
  bool resting = false;  // until the proof is asked
  std::size_t kept = 0;  // so many of the changes are known to be needed
};

Evaluation::Evaluation(const Job& job, const Catalogue& catalogue, const Outcome& before,
                       Telling telling, Beyond beyond)
    : beyond_(beyond), telling_(telling) {
  auto search = std::make_unique<Search>(job, catalogue);
  search->beyond = beyond;
  search->beyond.proof = nullptr;
  {
    const Untold untold(telling == Telling::no_steps);
    design_ = run_stages(job, catalogue, beyond, search->holds);
    search->start = design_.job;
  }
  if (design_.checks_by_seriousness().empty()) return;
  judge();
  search_ = std::move(search);
  if (design_.outcome.fit == Fit::fits) {
    rest();
    return;
  }
  search_->look({}, design_);
  if (search_->fresh.empty()) {
    rest();
  } else if (before.fit == Fit::fits_with_changes) {
    design_.outcome.fit = before.fit;
    design_.outcome.changes = before.changes;
  }
}

Evaluation::~Evaluation() = default;
Evaluation::Evaluation(Evaluation&&) noexcept = default;
Evaluation& Evaluation::operator=(Evaluation&&) noexcept = default;

// The verdict of a job that does not pass as it is.
void Evaluation::conclude(std::vector<Change> changes) {
  Outcome& outcome = design_.outcome;
  const Check* governing = design_.find_check(outcome.governing);
  const bool fails = governing != nullptr && governing->verdict() == Verdict::fail;
  outcome.fit = !changes.empty() ? Fit::fits_with_changes
                : fails          ? Fit::does_not_fit
                                 : Fit::not_evaluated;
  outcome.changes = std::move(changes);
}

// The verdict of the job as it is.
void Evaluation::judge() {
  design_.outcome.governing = design_.checks_by_seriousness().front()->id;
  if (passes(design_)) {
    design_.outcome.fit = Fit::fits;
  } else {
    conclude({});
  }
}

bool Evaluation::searching() const { return search_ != nullptr; }
bool Evaluation::proving() const { return search_ != nullptr && (search_->resting || design_.outcome.proven); }

// Nothing more to try; whether the proof is still to be asked.
bool Evaluation::rest() {
  search_->resting = beyond_.proof != nullptr;
  if (!search_->resting) search_.reset();
  return search_ != nullptr;
}

// The proof's word on the design, and on the changes that were found without it. Whether that makes a new
// search.
bool Evaluation::take_proof() {
  search_->resting = false;
  search_->beyond = std::exchange(beyond_, {});
  const Outcome before = std::exchange(design_.outcome, {.proven = true});
  {
    const Untold untold(telling_ == Telling::no_steps);
    search_->beyond.proof(design_, search_->catalogue);
  }
  judge();
  const bool spoilt = before.fit == Fit::fits && design_.outcome.fit != Fit::fits;
  if (!spoilt && before.changes.empty()) return rest();
  const Untold untold;
  const Design mended = spoilt ? design_ : search_->tried(before.changes);
  if (passes(mended)) {
    conclude(before.changes);
    return rest();
  }
  search_->look(before.changes, mended);
  return !search_->fresh.empty() || rest();
}

bool Evaluation::step() {
  if (!search_) return false;
  if (search_->resting) return take_proof();
  const Search::Step step = search_->step();
  if (step == Search::Step::goes_on) return true;
  conclude(step == Search::Step::found ? std::move(search_->changes) : std::vector<Change>{});
  return rest();
}

MountInput mount_input(const Design& design) {
  Catalogue chosen;
  if (design.mount.plate_found || !design.mount.plate.id.empty()) chosen.plates = {design.mount.plate};
  if (design.mount.bolt_found || !design.mount.bolt.id.empty()) chosen.bolts = {design.mount.bolt};
  return mount_input(design.job, chosen, design.hold, design.shaft);
}

LockerInput locker_input(const Design& design) {
  return locker_input(design.job, design.bank, design.charge, design.mount);
}

BankInput bank_input(const Design& design, std::vector<BatteryBlock> blocks) {
  Job open = design.job;
  open.bank.series_count = {};
  open.bank.parallel_count = {};
  if (!open.bank.peukert_exponent.given()) open.bank.peukert_exponent = {};
  return bank_input(open, std::move(blocks), design.hold);
}

ChargeInput charge_input(const Design& design) {
  Catalogue chosen;
  if (design.charge.found) chosen.chargers = {design.charge.charger};
  return charge_input(design.job, chosen, design.bank);
}

ProtectionInput protection_input(const Design& design) {
  return protection_input(design.job, design.bank, design.feeder, design.typed);
}

HoldInput hold_input(const Design& design) {
  std::vector<MotorClass> motors;
  if (design.hold.motor_found) motors.push_back(design.hold.motor);
  return hold_input(design.job, std::move(motors));
}

}  // namespace thole
