#include "calc/outputs.h"

#include <array>

namespace thole {
namespace {

// A number of a stage's result: path and member cannot differ.
#define THOLE_NUMBER(stage, key, label, step)                                           \
  Output {                                                                              \
    #stage, #key, label, step,                                                          \
        [](const Design& design) { return static_cast<double>(design.stage.key); }, nullptr \
  }
// A number that only lead-acid has: it gives off hydrogen.
#define THOLE_GAS(stage, key, label, step)                                                  \
  Output {                                                                                  \
    #stage, #key, label, step,                                                              \
        [](const Design& design) { return static_cast<double>(design.stage.key); }, nullptr, \
        [](const Design& design) { return is_lead(design.bank.block.chemistry); }           \
  }
// A number of the locker, once it was measured.
#define THOLE_LOCKER(key, label, step)                                                       \
  Output {                                                                                   \
    "locker", #key, label, step,                                                             \
        [](const Design& design) { return static_cast<double>(design.locker.key); }, nullptr, \
        [](const Design& design) { return design.locker.measured; }                          \
  }
// A text that a stage decided; `from` is where it stands in the stage's result.
#define THOLE_TEXT(stage, key, label, from)                                         \
  Output {                                                                          \
    #stage, #key, label, "", nullptr,                                               \
        [](const Design& design) { return std::string(design.stage.from); }         \
  }
// A number of the full job.
#define THOLE_JOB(stage, key, label)                                                \
  Output {                                                                          \
    #stage, #key, label, "estimate." #stage "." #key,                               \
        [](const Design& design) { return design.job.stage.key.value; }, nullptr    \
  }

// Of the data link, where there is one.
#define THOLE_LINK(key, label, step)                                                      \
  Output {                                                                               \
    "control", "network_" #key, label, step,                                             \
        [](const Design& design) { return design.control.link.key; }, nullptr,           \
        [](const Design& design) {                                                       \
          return design.job.control.link.value == DataLink::marine_network;              \
        }                                                                                \
  }

// clang-format off
constexpr std::array kOutputs{
    THOLE_JOB(boat, frontal_area_m2, "Windage from ahead"),
    THOLE_JOB(boat, lateral_area_m2, "Windage from the side"),
    THOLE_JOB(water, wave_height_m, "Significant wave height"),
    THOLE_JOB(water, wave_period_s, "Wave period"),

    THOLE_NUMBER(hold, thrust_required_N, "Thrust needed, with margin", "hold.required"),
    THOLE_NUMBER(hold, thrust_mean_N, "Mean load to size on", "hold.mean"),
    THOLE_NUMBER(hold, thrust_head_on_N, "Mean load, bow-on", "hold.head_on"),
    THOLE_NUMBER(hold, thrust_equilibrium_N, "Mean load as it settles", "hold.equilibrium"),
    THOLE_NUMBER(hold, wind_N, "Wind, bow-on", "hold.wind"),
    THOLE_NUMBER(hold, current_N, "Current, bow-on", "hold.current"),
    THOLE_NUMBER(hold, wave_N, "Waves, bow-on", "hold.wave"),
    THOLE_NUMBER(hold, heading_deg, "Settles off the wind by", "hold.equilibrium"),
    THOLE_NUMBER(hold, margin_factor, "Margin asked for", "hold.required"),
    THOLE_TEXT(hold, motor, "Motor", motor.label),
    THOLE_NUMBER(hold, thrust_effective_N, "Thrust left for holding", "hold.effective"),
    THOLE_NUMBER(hold, margin_actual_factor, "Margin there is", "hold.margin_actual"),
    THOLE_NUMBER(hold, limiting_wind_mps, "Strongest wind held", "hold.limiting_wind"),
    THOLE_NUMBER(hold, wave_height_m, "Significant wave height", ""),
    THOLE_NUMBER(hold, wave_period_s, "Wave period", ""),
    THOLE_NUMBER(hold, power_full_W, "Power at full thrust", ""),
    THOLE_NUMBER(hold, power_mean_W, "Mean power while holding", "hold.power_mean"),
    THOLE_NUMBER(hold, energy_Wh, "Energy of the day", "hold.energy"),
    THOLE_NUMBER(hold, day_rms_A, "Current that heats as much as the day", ""),
    THOLE_NUMBER(hold, day_peak_A, "Most current at any moment", ""),

    THOLE_NUMBER(shaft, length_required_m, "Shaft needed", "shaft.length_required"),
    THOLE_NUMBER(shaft, length_m, "Shaft", ""),
    THOLE_NUMBER(shaft, margin_m, "To spare", "shaft.margin"),
    THOLE_NUMBER(shaft, propeller_depth_m, "Propeller below calm water", "shaft.propeller_depth"),
    THOLE_NUMBER(shaft, relative_motion_m, "Surface falls in the waves", "shaft.relative_motion"),
    THOLE_NUMBER(shaft, immersion_factor, "Share of thrust left in the waves", "shaft.immersion_factor"),
    THOLE_NUMBER(shaft, emergence_frac, "Time with the tip showing", "shaft.emergence"),
    THOLE_NUMBER(shaft, tube_stress_MPa, "Stress in the tube", "shaft.tube_stress"),
    THOLE_NUMBER(shaft, tube_deflection_mm, "Bend of the tube", "shaft.tube_deflection"),
    THOLE_NUMBER(shaft, speed_limit_deployed_mps, "Never faster with the motor down", "shaft.speed_limit_deployed"),

    THOLE_TEXT(bank, block, "Block", block.label),
    THOLE_NUMBER(bank, block_count, "Blocks", ""),
    THOLE_NUMBER(bank, series_count, "In series", ""),
    THOLE_NUMBER(bank, parallel_count, "Strings in parallel", ""),
    THOLE_NUMBER(bank, nominal_V, "Nominal voltage", ""),
    THOLE_NUMBER(bank, capacity_required_Ah, "Capacity needed, by the label", "bank.capacity_required"),
    THOLE_NUMBER(bank, capacity_Ah, "Capacity there is", "bank.capacity"),
    THOLE_NUMBER(bank, energy_Wh, "Energy by the label", "bank.energy"),
    THOLE_NUMBER(bank, usable_Wh, "Usable, cold and aged", "bank.usable"),
    THOLE_NUMBER(bank, endurance_h, "Hours it lasts at the mean load", "bank.endurance"),
    THOLE_NUMBER(bank, endurance_full_h, "Hours at full thrust", "bank.endurance_full"),
    THOLE_NUMBER(bank, peak_A, "Current at full thrust, end of day", "bank.peak_current"),
    THOLE_NUMBER(bank, mass_kg, "Weight of the bank", "bank.mass"),
    Output{"bank", "restraint_N", "Each block held down against", "locker.restraint",
           [](const Design& design) { return design.locker.restraint_N; }, nullptr},
    THOLE_NUMBER(bank, cycles_count, "Days like this until 80 % is left", "bank.cycles"),
    THOLE_NUMBER(bank, years_count, "Years until 80 % is left", "bank.years"),

    THOLE_TEXT(feeder, conductor, "Cable", conductor),
    THOLE_TEXT(feeder, tail_conductor, "Tail", tail_conductor),
    THOLE_TEXT(feeder, device, "Protective device", device.label),
    THOLE_NUMBER(feeder, current_A, "Current at full thrust, end of day", "feeder.current_A"),
    THOLE_NUMBER(feeder, drop_frac, "Lost in the feeder", "feeder.drop_frac"),
    THOLE_NUMBER(feeder, drop_V, "Lost in the feeder, volts", "feeder.drop_V"),
    THOLE_NUMBER(feeder, motor_V, "Volts at the motor, end of day", "feeder.motor_V"),
    THOLE_NUMBER(feeder, loss_W, "Heat along the feeder", "feeder.loss_W"),
    THOLE_NUMBER(feeder, conductor_C, "Temperature of the cable", "feeder.run_temperature"),
    Output{"feeder", "fault_near_A", "Fault current at the bank", "protection.fault_near",
           [](const Design& design) { return design.protection.faults.posts.most_A; }, nullptr},
    Output{"feeder", "fault_far_A", "Fault current at the plug", "protection.fault_far",
           [](const Design& design) { return design.protection.faults.plug.least_A; }, nullptr},

    THOLE_TEXT(charge, charger, "Charger", charger.label),
    THOLE_NUMBER(charge, charger_count, "Chargers", ""),
    THOLE_NUMBER(charge, output_A, "Into each block", ""),
    THOLE_NUMBER(charge, time_h, "Full again in", "charge.time"),
    THOLE_NUMBER(charge, shore_A, "Current from shore", "charge.shore_current"),
    THOLE_GAS(charge, ventilation_m3_per_h, "Air through the locker", "charge.ventilation"),
    THOLE_GAS(charge, vent_area_cm2, "Each opening at least", "charge.vent_area"),
    THOLE_GAS(charge, spark_clearance_mm, "No sparks within", "charge.spark_clearance"),
    THOLE_GAS(charge, minutes_to_limit_min, "Closed locker, failed charger: danger in", "charge.minutes_to_limit"),

    THOLE_LOCKER(strap_count, "Straps over each block", ""),
    THOLE_LOCKER(strap_need_N, "Each strap rated at least", "locker.strap"),
    THOLE_LOCKER(wall_m, "Tray's wall at least", "locker.wall"),

    THOLE_NUMBER(mount, plate_thickness_mm, "Plate", ""),
    THOLE_TEXT(mount, plate, "Plate stock", plate.label),
    THOLE_NUMBER(mount, plate_mass_kg, "Weight of the plate", "mount.plate_mass"),
    THOLE_TEXT(mount, bolt, "Bolts", bolt.size),
    THOLE_NUMBER(mount, bolt_count, "How many", ""),
    THOLE_NUMBER(mount, slam_N, "Slam of the stowed motor", "mount.slam"),
    THOLE_NUMBER(mount, plate_stress_MPa, "Stress in a slam", "mount.plate_stress"),
    THOLE_NUMBER(mount, sag_mm, "Sag at rest", "mount.sag"),
    THOLE_NUMBER(mount, frequency_Hz, "Shakes at", "mount.frequency"),
    THOLE_NUMBER(mount, bolt_tension_N, "Pull on the worst bolt", "mount.bolt_tension"),
    THOLE_NUMBER(mount, bolt_shear_N, "Shear on the worst bolt", "mount.bolt_shear"),
    THOLE_NUMBER(mount, bolt_torque_Nm, "Tighten to", "mount.torque"),
    THOLE_NUMBER(mount, speed_limit_mps, "Speed limit, stowed, in that sea", "mount.speed_limit"),

    THOLE_NUMBER(trim, added_kg, "Weight added", "trim.added_mass"),
    THOLE_NUMBER(trim, bow_sinkage_m, "Bow goes down", "trim.bow_sinkage"),
    THOLE_NUMBER(trim, stern_sinkage_m, "Stern goes down", "trim.stern_sinkage"),
    THOLE_NUMBER(trim, trim_deg, "Trim, bow down", "trim.attitude"),
    THOLE_NUMBER(trim, heel_deg, "Heel to starboard", "trim.heel"),
    THOLE_NUMBER(trim, gm_after_m, "Metacentric height after", "trim.gm"),
    THOLE_NUMBER(trim, bow_freeboard_m, "Bow height left", ""),

    THOLE_NUMBER(control, heading_error_deg, "Heading error at full thrust", "control.heading"),
    THOLE_NUMBER(control, sensor_gap_m, "Heading sensor to the feeder", ""),
    Output{"control", "network_cable", "Data cable", "", nullptr,
           [](const Design& design) { return design.control.link.cable; },
           [](const Design& design) { return design.job.control.link.value != DataLink::none; }},
    THOLE_LINK(current_A, "Network current", "control.network_current"),
    THOLE_LINK(drop_V, "Network volts lost", "control.network_drop"),

    THOLE_NUMBER(parts, parts_price, "Parts, without tax", "parts.parts_price"),
    THOLE_NUMBER(parts, labour_h, "Hours of work", ""),
    THOLE_NUMBER(parts, labour_price, "Work", "parts.labour_price"),
    THOLE_NUMBER(parts, total_price, "All told, without tax", "parts.total_price"),
    THOLE_NUMBER(parts, mass_kg, "Weight of all parts", "parts.mass"),
    THOLE_NUMBER(parts, lead_days, "Working days until all is here", ""),
};
// clang-format on

#undef THOLE_NUMBER
#undef THOLE_GAS
#undef THOLE_LOCKER
#undef THOLE_LINK
#undef THOLE_TEXT
#undef THOLE_JOB

}  // namespace

std::string Output::path() const { return std::string(stage) + "." + std::string(key); }

std::span<const Output> all_outputs() { return kOutputs; }

const Output* find_output(std::string_view path) {
  const std::size_t dot = path.find('.');
  if (dot == path.npos) return nullptr;
  for (const Output& output : kOutputs) {
    if (output.stage == path.substr(0, dot) && output.key == path.substr(dot + 1)) return &output;
  }
  return nullptr;
}

}  // namespace thole
