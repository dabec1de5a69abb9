#include "job/catalogue_fields.h"

#include <array>

namespace thole {
namespace {

constexpr double kMost_price = 100000.0;
constexpr int kMost_lead_days = 365;

// Key and member cannot differ.
#define THOLE_COLUMN(Row, name) #name, &Row::name

// clang-format off
const std::array kMotorColumns{
    Column<MotorClass>{THOLE_COLUMN(MotorClass, id), "Lower case, digits and hyphens; jobs name it."},
    Column<MotorClass>{THOLE_COLUMN(MotorClass, label), "As it is shown."},
    Column<MotorClass>{THOLE_COLUMN(MotorClass, thrust_N), "Static thrust, as claimed.", 50, 2500},
    Column<MotorClass>{THOLE_COLUMN(MotorClass, nominal_V), "Of the bank that it is made for.", 12, 60},
    Column<MotorClass>{THOLE_COLUMN(MotorClass, minimum_V), "At its plug, at full thrust.", 8, 60},
    Column<MotorClass>{THOLE_COLUMN(MotorClass, maximum_V), "Highest charge voltage that it accepts.", 12, 80},
    Column<MotorClass>{THOLE_COLUMN(MotorClass, power_full_W), "Electrical, at full thrust.", 100, 12000},
    Column<MotorClass>{THOLE_COLUMN(MotorClass, power_idle_W), "Electrical, at no thrust.", 0, 300},
    Column<MotorClass>{THOLE_COLUMN(MotorClass, propeller_diameter_m), "", 0.12, 0.6},
    Column<MotorClass>{THOLE_COLUMN(MotorClass, mass_kg), "With its mount and the shortest shaft.", 5, 120},
    Column<MotorClass>{THOLE_COLUMN(MotorClass, tube_outer_mm), "Shaft tube, outside diameter.", 15, 80},
    Column<MotorClass>{THOLE_COLUMN(MotorClass, tube_wall_mm), "Shaft tube, wall.", 1, 15},
    Column<MotorClass>{THOLE_COLUMN(MotorClass, tube_yield_MPa), "Yield of a metal, flexural strength of a composite.", 80, 1500},
    Column<MotorClass>{THOLE_COLUMN(MotorClass, tube_modulus_GPa), "Modulus of elasticity.", 5, 250},
    Column<MotorClass>{THOLE_COLUMN(MotorClass, stowed_overhang_m), "Front bolt row to the centre of mass, stowed.", 0, 1},
    Column<MotorClass>{THOLE_COLUMN(MotorClass, shaft_lengths_m), "Collar top to propeller axis, ascending.", 0.5, 4},
    Column<MotorClass>{THOLE_COLUMN(MotorClass, price), "Without tax.", 0, kMost_price},
    Column<MotorClass>{THOLE_COLUMN(MotorClass, price_per_shaft_step), "For each length above the shortest.", 0, kMost_price},
    Column<MotorClass>{THOLE_COLUMN(MotorClass, lead_days), "Working days.", 0, kMost_lead_days},
};
const std::array kBlockColumns{
    Column<BatteryBlock>{THOLE_COLUMN(BatteryBlock, id), "Lower case, digits and hyphens; jobs name it."},
    Column<BatteryBlock>{THOLE_COLUMN(BatteryBlock, label), "As it is shown."},
    Column<BatteryBlock>{THOLE_COLUMN(BatteryBlock, chemistry), ""},
    Column<BatteryBlock>{THOLE_COLUMN(BatteryBlock, nominal_V), "", 6, 60},
    Column<BatteryBlock>{THOLE_COLUMN(BatteryBlock, capacity_Ah), "At the rated hours, 25 °C.", 5, 600},
    Column<BatteryBlock>{THOLE_COLUMN(BatteryBlock, rated_hours_h), "", 1, 100},
    Column<BatteryBlock>{THOLE_COLUMN(BatteryBlock, reserve_capacity_min), "25 A to 10.5 V; 0 when not on the label.", 0, 1000},
    Column<BatteryBlock>{THOLE_COLUMN(BatteryBlock, resistance_ohm), "Charged, 25 °C.", 0.0002, 0.1},
    Column<BatteryBlock>{THOLE_COLUMN(BatteryBlock, mass_kg), "", 1, 120},
    Column<BatteryBlock>{THOLE_COLUMN(BatteryBlock, length_mm), "", 50, 1000},
    Column<BatteryBlock>{THOLE_COLUMN(BatteryBlock, width_mm), "", 50, 1000},
    Column<BatteryBlock>{THOLE_COLUMN(BatteryBlock, height_mm), "With its posts.", 50, 1000},
    Column<BatteryBlock>{THOLE_COLUMN(BatteryBlock, continuous_A), "Limit of its electronics; 0 when it has none.", 0, 1000},
    Column<BatteryBlock>{THOLE_COLUMN(BatteryBlock, series_max), "Blocks in one string that its maker allows; 0 when not stated.", 0, 8},
    Column<BatteryBlock>{THOLE_COLUMN(BatteryBlock, price), "Without tax.", 0, kMost_price},
    Column<BatteryBlock>{THOLE_COLUMN(BatteryBlock, lead_days), "Working days.", 0, kMost_lead_days},
};
const std::array kCableColumns{
    Column<CableOffer>{THOLE_COLUMN(CableOffer, id), "Lower case, digits and hyphens; jobs name it."},
    Column<CableOffer>{THOLE_COLUMN(CableOffer, conductor), "Trade size: \"4 AWG\", \"25 mm2\"."},
    Column<CableOffer>{THOLE_COLUMN(CableOffer, insulation_C), "Temperature rating of the insulation.", 60, 200},
    Column<CableOffer>{THOLE_COLUMN(CableOffer, mass_kg_per_m), "One conductor, insulated.", 0.005, 5},
    Column<CableOffer>{THOLE_COLUMN(CableOffer, price_per_m), "One conductor, without tax.", 0, 1000},
};
const std::array kDeviceColumns{
    Column<ProtectiveDevice>{THOLE_COLUMN(ProtectiveDevice, id), "Lower case, digits and hyphens; jobs name it."},
    Column<ProtectiveDevice>{THOLE_COLUMN(ProtectiveDevice, label), "As it is shown."},
    Column<ProtectiveDevice>{THOLE_COLUMN(ProtectiveDevice, kind), ""},
    Column<ProtectiveDevice>{THOLE_COLUMN(ProtectiveDevice, rating_A), "", 1, 1000},
    Column<ProtectiveDevice>{THOLE_COLUMN(ProtectiveDevice, voltage_V), "Highest direct voltage that it may interrupt.", 12, 1000},
    Column<ProtectiveDevice>{THOLE_COLUMN(ProtectiveDevice, interrupt_A), "At that voltage.", 100, 200000},
    Column<ProtectiveDevice>{THOLE_COLUMN(ProtectiveDevice, resistance_ohm), "", 0.000001, 0.05},
    Column<ProtectiveDevice>{THOLE_COLUMN(ProtectiveDevice, ignition_protected), "May stand where petrol vapour can be."},
    Column<ProtectiveDevice>{THOLE_COLUMN(ProtectiveDevice, poles), "", 1, 4},
    Column<ProtectiveDevice>{THOLE_COLUMN(ProtectiveDevice, price), "Without tax.", 0, kMost_price},
    Column<ProtectiveDevice>{THOLE_COLUMN(ProtectiveDevice, curve), "How soon it opens, by class; left out: a bolt-down fuse, a breaker of medium delay."},
};
const std::array kChargerColumns{
    Column<ChargerModel>{THOLE_COLUMN(ChargerModel, id), "Lower case, digits and hyphens; jobs name it."},
    Column<ChargerModel>{THOLE_COLUMN(ChargerModel, label), "As it is shown."},
    Column<ChargerModel>{THOLE_COLUMN(ChargerModel, outputs), "Isolated, one to a block.", 1, 8},
    Column<ChargerModel>{THOLE_COLUMN(ChargerModel, output_A), "Each.", 1, 200},
    Column<ChargerModel>{THOLE_COLUMN(ChargerModel, block_V), "Nominal volts of the block that an output charges.", 6, 60},
    Column<ChargerModel>{THOLE_COLUMN(ChargerModel, lithium_profile), "Has a profile for lithium iron phosphate."},
    Column<ChargerModel>{THOLE_COLUMN(ChargerModel, efficiency_frac), "", 0.5, 1},
    Column<ChargerModel>{THOLE_COLUMN(ChargerModel, power_factor), "", 0.4, 1},
    Column<ChargerModel>{THOLE_COLUMN(ChargerModel, mass_kg), "", 0.1, 60},
    Column<ChargerModel>{THOLE_COLUMN(ChargerModel, price), "Without tax.", 0, kMost_price},
};
const std::array kPlateColumns{
    Column<PlateStock>{THOLE_COLUMN(PlateStock, id), "Lower case, digits and hyphens; jobs name it."},
    Column<PlateStock>{THOLE_COLUMN(PlateStock, label), "As it is shown."},
    Column<PlateStock>{THOLE_COLUMN(PlateStock, alloy), "With its temper: \"5083-H116\"."},
    Column<PlateStock>{THOLE_COLUMN(PlateStock, thickness_mm), "", 2, 40},
    Column<PlateStock>{THOLE_COLUMN(PlateStock, price_per_m2), "Without tax.", 0, kMost_price},
};
const std::array kBoltColumns{
    Column<BoltOffer>{THOLE_COLUMN(BoltOffer, id), "Lower case, digits and hyphens; jobs name it."},
    Column<BoltOffer>{THOLE_COLUMN(BoltOffer, size), "Thread: \"M8\", \"3/8-16\"."},
    Column<BoltOffer>{THOLE_COLUMN(BoltOffer, grade), "Head mark: \"A4-70\", \"F593G\"."},
    Column<BoltOffer>{THOLE_COLUMN(BoltOffer, price_each), "With nut and washers, without tax.", 0, 1000},
};
const std::array kSundryColumns{
    Column<Sundry>{THOLE_COLUMN(Sundry, id), "Lower case, digits and hyphens."},
    Column<Sundry>{THOLE_COLUMN(Sundry, label), "As it is shown."},
    Column<Sundry>{THOLE_COLUMN(Sundry, per), "What it is counted by."},
    Column<Sundry>{THOLE_COLUMN(Sundry, count), "For each of those.", 0, 1000},
    Column<Sundry>{THOLE_COLUMN(Sundry, mass_kg), "Each.", 0, 100},
    Column<Sundry>{THOLE_COLUMN(Sundry, price), "Each, without tax.", 0, kMost_price},
};
const std::array kTaskColumns{
    Column<Task>{THOLE_COLUMN(Task, id), "Lower case, digits and hyphens."},
    Column<Task>{THOLE_COLUMN(Task, label), "As it is shown."},
    Column<Task>{THOLE_COLUMN(Task, per), "What it is counted by."},
    Column<Task>{THOLE_COLUMN(Task, labour_h), "Hours for each of those.", 0, 100},
};
const std::array kShopColumns{
    Column<ShopRates>{THOLE_COLUMN(ShopRates, currency), "Three letters, ISO 4217."},
    Column<ShopRates>{THOLE_COLUMN(ShopRates, labour_per_h), "Price of an hour, without tax.", 0, 1000},
    Column<ShopRates>{THOLE_COLUMN(ShopRates, scrap_frac), "Allowance on cable and plate.", 0, 1},
};
// clang-format on

#undef THOLE_COLUMN

constexpr std::array kDeviceKindOptions{Option{"breaker", "Breaker"}, Option{"fuse", "Fuse"}};
// In the order of DeviceClass.
constexpr std::array kDeviceClassOptions{
    Option{"blade-fuse", "Blade fuse"},           Option{"bolt-fuse", "Bolt-down fuse"},
    Option{"class-t-fuse", "Class T fuse"},       Option{"thermal-breaker", "Thermal breaker"},
    Option{"breaker-instant", "Breaker without delay"},
    Option{"breaker-short", "Breaker, short delay"},
    Option{"breaker-medium", "Breaker, medium delay"},
    Option{"breaker-long", "Breaker, long delay"}};
constexpr std::array kPerOptions{Option{"job", "Job"}, Option{"block", "Block"},
                                 Option{"bolt", "Bolt"}, Option{"metre", "Metre of feeder"},
                                 Option{"joint", "Joint"}, Option{"network", "Marine network"},
                                 Option{"network_metre", "Metre of its backbone"},
                                 Option{"network_device", "Device on it"},
                                 Option{"ethernet_metre", "Metre of Ethernet cable"}};

}  // namespace

// clang-format off
template <> std::span<const Column<MotorClass>> columns<MotorClass>() { return kMotorColumns; }
template <> std::span<const Column<BatteryBlock>> columns<BatteryBlock>() { return kBlockColumns; }
template <> std::span<const Column<CableOffer>> columns<CableOffer>() { return kCableColumns; }
template <> std::span<const Column<ProtectiveDevice>> columns<ProtectiveDevice>() { return kDeviceColumns; }
template <> std::span<const Column<ChargerModel>> columns<ChargerModel>() { return kChargerColumns; }
template <> std::span<const Column<PlateStock>> columns<PlateStock>() { return kPlateColumns; }
template <> std::span<const Column<BoltOffer>> columns<BoltOffer>() { return kBoltColumns; }
template <> std::span<const Column<Sundry>> columns<Sundry>() { return kSundryColumns; }
template <> std::span<const Column<Task>> columns<Task>() { return kTaskColumns; }
template <> std::span<const Column<ShopRates>> columns<ShopRates>() { return kShopColumns; }
// clang-format on

std::span<const Option> options_of(Chemistry) { return find_field("bank.chemistry")->options; }
std::span<const Option> options_of(DeviceKind) { return kDeviceKindOptions; }
std::span<const Option> options_of(DeviceClass) { return kDeviceClassOptions; }
std::span<const Option> options_of(Per) { return kPerOptions; }

}  // namespace thole
