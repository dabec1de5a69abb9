#pragma once

// What can be bought: the rows of the catalogue. Plain data; prices are in the catalogue's currency
// without tax, lead times in working days.

#include <optional>
#include <string>
#include <vector>

namespace thole {

enum class Chemistry { flooded, agm, gel, lifepo4 };

// True for the three lead-acid kinds.
constexpr bool is_lead(Chemistry chemistry) { return chemistry != Chemistry::lifepo4; }

// A steerable electric motor for the bow, with its shaft in the lengths that it is sold in.
struct MotorClass {
  std::string id{};
  std::string label{};
  double thrust_N = 0.0;      // static (bollard), as claimed
  double nominal_V = 0.0;     // of the bank it is made for
  double minimum_V = 0.0;     // at its plug, at full thrust
  double maximum_V = 0.0;     // highest charge voltage it accepts
  double power_full_W = 0.0;  // electrical, at full thrust
  double power_idle_W = 0.0;  // receiver, heading sensor, steering, at no thrust
  double propeller_diameter_m = 0.0;
  double mass_kg = 0.0;               // with its mount and the shortest shaft
  double tube_outer_mm = 0.0;         // shaft tube
  double tube_wall_mm = 0.0;
  double tube_yield_MPa = 0.0;        // of a composite: its flexural strength
  double tube_modulus_GPa = 0.0;
  double stowed_overhang_m = 0.0;     // front bolt row to the centre of mass when it lies stowed
  std::vector<double> shaft_lengths_m{};  // collar top to propeller axis, ascending
  double price = 0.0;
  double price_per_shaft_step = 0.0;  // for each length above the shortest
  int lead_days = 0;

  bool operator==(const MotorClass&) const = default;
};

// One battery as it stands on the shelf.
struct BatteryBlock {
  std::string id{};
  std::string label{};
  Chemistry chemistry = Chemistry::agm;
  double nominal_V = 12.0;
  double capacity_Ah = 0.0;     // at the rated hours, 25 C
  double rated_hours_h = 20.0;
  double reserve_capacity_min = 0.0;  // 25 A to 10.5 V; 0 = not on the label
  double resistance_ohm = 0.0;  // charged, 25 C
  double mass_kg = 0.0;
  double length_mm = 0.0;
  double width_mm = 0.0;
  double height_mm = 0.0;
  double continuous_A = 0.0;    // electronic limit of a lithium block; 0 = none
  int series_max = 0;           // blocks in one string that its maker allows; 0 = no limit stated
  double price = 0.0;
  int lead_days = 0;
};

// Boat cable by the metre; `conductor` names a row of data/conductors.h.
struct CableOffer {
  std::string id{};
  std::string conductor{};      // "4 AWG", "25 mm2"
  double insulation_C = 105.0;  // temperature rating of the insulation
  double mass_kg_per_m = 0.0;   // one conductor, insulated
  double price_per_m = 0.0;     // one conductor
};

enum class DeviceKind { breaker, fuse };

// How soon it opens at which multiple of its rating: the curves are in data/device_curves.h.
enum class DeviceClass {
  blade_fuse,       // ISO 8820-3
  bolt_fuse,        // ISO 8820-4 to -6 strips and studs; terminal fuses and ANL for want of better
  fast_fuse,        // UL 248-15, Class T
  thermal_breaker,  // surface breakers, SAE J1625
  magnetic_instant,
  magnetic_short,
  magnetic_medium,
  magnetic_long  // hydraulic-magnetic, by delay
};

// A breaker or fuse.
struct ProtectiveDevice {
  std::string id{};
  std::string label{};
  DeviceKind kind = DeviceKind::breaker;
  double rating_A = 0.0;
  double voltage_V = 0.0;           // highest direct voltage it may interrupt
  double interrupt_A = 0.0;         // at voltage_V
  double resistance_ohm = 0.0;
  bool ignition_protected = false;
  int poles = 1;
  double price = 0.0;
  std::optional<DeviceClass> curve{};  // none: the usual one of its kind
};

// A mains charger with isolated outputs, one to a block.
struct ChargerModel {
  std::string id{};
  std::string label{};
  int outputs = 1;
  double output_A = 0.0;       // each
  double block_V = 12.0;       // nominal volts of the block that an output charges
  bool lithium_profile = false;
  double efficiency_frac = 0.85;
  double power_factor = 0.65;
  double mass_kg = 0.0;
  double price = 0.0;
};

// Plate by the square metre; `alloy` names a row of data/alloys.h.
struct PlateStock {
  std::string id{};
  std::string label{};
  std::string alloy{};         // "5083-H116"
  double thickness_mm = 0.0;
  double price_per_m2 = 0.0;
};

// Bolt with nut and washers; `size` names a row of data/bolts.h.
struct BoltOffer {
  std::string id{};
  std::string size{};          // "M8", "3/8-16"
  std::string grade{};         // "A4-70", "F593G"
  double price_each = 0.0;
};

// Small parts and work that scale with the job.
// Of the feeder: plugs, battery switches and stud blocks, each of two poles.
// Of the data link: one (network) or each metre of its backbone and device on it; each metre of
// Ethernet cable. None where the job has no such link.
enum class Per {
  job, block, bolt, metre, joint, network, network_metre, network_device, ethernet_metre, remote_cells,
  plug, stud_block, battery_switch
};
struct Sundry {
  std::string id{};
  std::string label{};
  Per per = Per::job;
  double count = 1.0;          // per unit of `per`
  double mass_kg = 0.0;        // each
  double price = 0.0;          // each
};
struct Task {
  std::string id{};
  std::string label{};
  Per per = Per::job;
  double labour_h = 0.0;       // hours per unit of `per`
};

struct ShopRates {
  std::string currency = "EUR";
  double labour_per_h = 0.0;   // price of an hour
  double scrap_frac = 0.0;     // allowance on cable and plate
};

}  // namespace thole
