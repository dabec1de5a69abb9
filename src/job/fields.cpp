#include "job/fields.h"

#include <array>
#include <cmath>

#include "base/number.h"

namespace thole {
namespace {

template <class T>
constexpr ValueType kValue{
    .get = [](const void* at) { return static_cast<double>(static_cast<const Given<T>*>(at)->value); },
    .set = [](void* at, double value) { static_cast<Given<T>*>(at)->value = static_cast<T>(value); },
    .origin = [](void* at) -> Origin& { return static_cast<Given<T>*>(at)->origin; }};
template <>
constexpr ValueType kValue<std::string>{
    .get_text = [](const void* at) -> const std::string& {
      return static_cast<const Given<std::string>*>(at)->value;
    },
    .set_text = [](void* at,
                   std::string_view text) { static_cast<Given<std::string>*>(at)->value = text; },
    .origin = [](void* at) -> Origin& { return static_cast<Given<std::string>*>(at)->origin; }};

template <auto SectionPtr, auto MemberPtr>
void* place_in(Job& job) {
  return &((job.*SectionPtr).*MemberPtr);
}
template <auto SectionPtr, auto MemberPtr>
constexpr Access access_to() {
  using Member = std::remove_reference_t<decltype((std::declval<Job&>().*SectionPtr).*MemberPtr)>;
  return {&place_in<SectionPtr, MemberPtr>, &kValue<decltype(Member::value)>};
}
constexpr Access title_access() {
  return {[](Job& job) -> void* { return &job.title; }, &kValue<std::string>};
}

// Key and member cannot differ.
#define THOLE_VALUE(Type, section, name) #section, #name, access_to<&Job::section, &Type::name>()
#define THOLE_TEXT(Type, section, name) #section, #name, access_to<&Job::section, &Type::name>()

constexpr std::array kLayoutOptions{
    Option{"open_skiff", "Open skiff"},
    Option{"bay_console", "Bay boat, low console"},
    Option{"centre_console", "Centre console"},
    Option{"t_top", "Centre console, T-top"},
    Option{"enclosed_t_top", "T-top with enclosure"},
    Option{"dual_console", "Dual console or bowrider"},
    Option{"walkaround", "Cuddy or walkaround"},
    Option{"pilothouse", "Pilothouse"},
    Option{"express", "Express with hardtop"},
    Option{"flybridge", "Flybridge"},
    Option{"pontoon", "Pontoon"},
};
constexpr std::array kLegOptions{
    Option{"tilted", "Tilted clear"},
    Option{"down", "Left down"},
    Option{"down_free", "Down, out of gear"},
};
constexpr std::array kCanvasOptions{
    Option{"usual", "As usual"},
    Option{"folded", "Folded away"},
    Option{"up", "Up"},
};
constexpr std::array kDeckOptions{
    Option{"single_skin", "Solid laminate"},
    Option{"cored_balsa", "Balsa core"},
    Option{"cored_foam", "Foam core"},
    Option{"aluminium", "Aluminium"},
};
constexpr std::array kExposureOptions{
    Option{"sheltered", "Sheltered, gusty"},
    Option{"bay", "Bay or estuary"},
    Option{"open", "Open water"},
};
constexpr std::array kWindHeightOptions{
    Option{"ten_metres", "At 10 m (safe side)"},
    Option{"at_boat", "At the boat's height"},
};
constexpr std::array kSalinityOptions{
    Option{"salt", "Salt"},
    Option{"fresh", "Fresh"},
};
constexpr std::array kFirmnessOptions{
    Option{"firm", "Firm"},
    Option{"loose", "Loose"},
};
constexpr std::array kChemistryOptions{
    Option{"flooded", "Lead-acid, flooded"},
    Option{"agm", "Lead-acid, AGM"},
    Option{"gel", "Lead-acid, gel"},
    Option{"lifepo4", "Lithium iron phosphate"},
};
constexpr std::array kGustOptions{
    Option{"npd", "NPD"},
    Option{"davenport", "Davenport"},
    Option{"harris", "Harris"},
    Option{"ochi_shin", "Ochi-Shin"},
};
constexpr std::array kFinishOptions{
    Option{"bare", "Bare"},
    Option{"anodised", "Anodised"},
    Option{"powder", "Powder coat"},
    Option{"paint", "Paint"},
};
constexpr std::array kHeadOptions{
    Option{"hexagon", "Hexagon"},
    Option{"countersunk", "Countersunk"},
};

constexpr std::array kMotorLawOptions{
    Option{"power", "Its power"},
    Option{"current", "Its current"},
    Option{"resistance", "Its resistance"},
};
constexpr std::array kLockerAccessOptions{
    Option{"lid", "A lid above"},
    Option{"door", "A door in a wall"},
};
constexpr std::array kFeederLayOptions{
    Option{"side_by_side", "Side by side"},
    Option{"one_above_other", "One above the other"},
    Option{"twisted", "Twisted"},
};
constexpr std::array kDataLinkOptions{
    Option{"none", "None"},
    Option{"marine_network", "Marine network, five wires"},
    Option{"ethernet", "Ethernet"},
};
constexpr std::array kBackboneOptions{
    Option{"light", "Light (micro)"},
    Option{"mid", "Mid"},
    Option{"heavy", "Heavy (mini)"},
};
constexpr std::array kNetworkFeedOptions{
    Option{"end", "At one end"},
    Option{"middle", "Near the middle"},
};
constexpr std::array kRemoteOptions{
    Option{"cells", "Cells to change"},
    Option{"charged", "Charged aboard"},
    Option{"wired", "On a cable"},
};
constexpr std::array kMainSwitchOptions{
    Option{"none", "None"},
    Option{"house", "The boat's main switch"},
    Option{"own", "Its own, by the bank"},
};

constexpr Field text(int key_number, std::string_view section, std::string_view key, Access access,
                     std::string_view label, int most_bytes) {
  return {key_number, section, key, Kind::text, access, label, 0.0, double(most_bytes)};
}
constexpr Field number(int key_number, std::string_view section, std::string_view key, Access access,
                       std::string_view label, double min, double max,
                       double quantum, double step) {
  return {key_number, section, key, Kind::number, access, label, min, max, quantum, step};
}
constexpr Field count(int key_number, std::string_view section, std::string_view key, Access access,
                      std::string_view label, int min, int max) {
  return {key_number, section, key, Kind::count, access, label, double(min), double(max), 1.0, 1.0};
}
constexpr Field toggle(int key_number, std::string_view section, std::string_view key, Access access,
                       std::string_view label) {
  return {key_number, section, key, Kind::toggle, access, label, 0.0, 1.0, 1.0, 1.0};
}
constexpr Field choice(int key_number, std::string_view section, std::string_view key, Access access,
                       std::string_view label,
                       std::span<const Option> options) {
  return {key_number, section, key,  Kind::choice, access, label, 0.0,
          static_cast<double>(options.size()) - 1.0, 1.0, 1.0, options};
}
constexpr Field catalogue_id(int key_number, std::string_view section, std::string_view key,
                             Access access, std::string_view label,
                             std::string_view list) {
  return {key_number, section, key, Kind::catalogue_id, access, label, 0.0, 0.0, 0.0, 0.0, {}, list};
}

constexpr int kMostViewBytes = 480;
constexpr int kMostCircuitBytes = 960;

// clang-format off
constexpr std::array kFields{
    // the job itself
    Field{1, "", "title", Kind::text, title_access(), "Name of this job"},
    // boat
    catalogue_id(10, THOLE_TEXT(Boat, boat, type),
        "Boat type", "boats"),
    number(11, THOLE_VALUE(Boat, boat, length_m),
        "Length overall", 4.0, 15.0, 0.01, 0.1),
    number(12, THOLE_VALUE(Boat, boat, displacement_kg),
        "Loaded weight", 250.0, 15000.0, 1.0, 50.0),
    number(13, THOLE_VALUE(Boat, boat, bow_height_m),
        "Bow height", 0.2, 3.0, 0.005, 0.05),
    choice(14, THOLE_VALUE(Boat, boat, layout),
        "Deck layout", kLayoutOptions),
    number(15, THOLE_VALUE(Boat, boat, beam_m),
        "Beam", 1.2, 5.0, 0.01, 0.05),
    number(16, THOLE_VALUE(Boat, boat, waterline_length_m),
        "Waterline length", 3.0, 14.5, 0.01, 0.1),
    number(17, THOLE_VALUE(Boat, boat, waterline_beam_m),
        "Waterline beam", 1.0, 4.8, 0.01, 0.05),
    number(18, THOLE_VALUE(Boat, boat, draft_m),
        "Hull draft", 0.1, 1.5, 0.01, 0.05),
    number(19, THOLE_VALUE(Boat, boat, deadrise_deg),
        "Deadrise", 0.0, 30.0, 0.5, 1.0),
    number(20, THOLE_VALUE(Boat, boat, cruise_speed_mps),
        "Fastest run with the motor stowed", 0.0, 26.0, 0.01, 0.514444),
    count(21, THOLE_VALUE(Boat, boat, crew_count),
        "People aboard", 1, 12),
    count(22, THOLE_VALUE(Boat, boat, outboard_count),
        "Outboards or drives", 0, 4),
    choice(23, THOLE_VALUE(Boat, boat, leg),
        "Legs while holding", kLegOptions),
    number(24, THOLE_VALUE(Boat, boat, leg_propeller_m),
        "Main propeller diameter", 0.15, 0.6, 0.005, 0.01),
    number(25, THOLE_VALUE(Boat, boat, frontal_area_m2),
        "Windage from ahead", 0.5, 30.0, 0.05, 0.1),
    number(26, THOLE_VALUE(Boat, boat, lateral_area_m2),
        "Windage from the side", 1.0, 60.0, 0.1, 0.5),
    number(27, THOLE_VALUE(Boat, boat, lateral_centroid_m),
        "Centre of the side windage", -4.0, 4.0, 0.01, 0.1),
    number(28, THOLE_VALUE(Boat, boat, underwater_area_m2),
        "Side area under water", 0.4, 20.0, 0.05, 0.1),
    number(29, THOLE_VALUE(Boat, boat, underwater_centroid_m),
        "Centre of the side area under water", -4.0, 4.0, 0.01, 0.1),
    number(30, THOLE_VALUE(Boat, boat, bow_angle_deg),
        "Half angle of the waterline at the bow", 8.0, 60.0, 0.5, 1.0),
    toggle(31, THOLE_VALUE(Boat, boat, petrol),
        "Petrol engine or tank below deck"),
    choice(32, THOLE_VALUE(Boat, boat, deck),
        "Foredeck make-up", kDeckOptions),
    text(33, THOLE_TEXT(Boat, boat, side_view),
        "Side above water, drawn", kMostViewBytes),
    text(34, THOLE_TEXT(Boat, boat, front_view),
        "Front above water, drawn", kMostViewBytes),
    choice(35, THOLE_VALUE(Boat, boat, canvas),
        "Canvas and curtains", kCanvasOptions),
    count(36, THOLE_VALUE(Boat, boat, standing_forward_count),
        "People standing at the bow", 0, 6),
    // water
    catalogue_id(40, THOLE_TEXT(Water, water, place),
        "Water", "waters"),
    choice(41, THOLE_VALUE(Water, water, exposure),
        "Where you hold", kExposureOptions),
    number(42, THOLE_VALUE(Water, water, wind_mps),
        "Wind to hold in", 0.0, 35.0, 0.01, 0.514444),
    choice(43, THOLE_VALUE(Water, water, wind_height),
        "Which wind acts on the boat", kWindHeightOptions),
    number(44, THOLE_VALUE(Water, water, fetch_m),
        "Open water upwind", 50.0, 200000.0, 10.0, 500.0),
    number(45, THOLE_VALUE(Water, water, depth_m),
        "Depth", 0.5, 200.0, 0.1, 0.5),
    number(46, THOLE_VALUE(Water, water, current_mps),
        "Current", 0.0, 4.0, 0.01, 0.1),
    number(47, THOLE_VALUE(Water, water, current_angle_deg),
        "Angle between wind and current", 0.0, 180.0, 1.0, 15.0),
    number(48, THOLE_VALUE(Water, water, wave_height_m),
        "Significant wave height", 0.0, 4.0, 0.01, 0.1),
    number(49, THOLE_VALUE(Water, water, wave_period_s),
        "Wave period", 0.5, 15.0, 0.05, 0.1),
    choice(50, THOLE_VALUE(Water, water, salinity),
        "Water", kSalinityOptions),
    number(51, THOLE_VALUE(Water, water, air_C),
        "Air temperature", -20.0, 45.0, 0.5, 1.0),
    // hold
    choice(60, THOLE_VALUE(Hold, hold, firmness),
        "How firmly", kFirmnessOptions),
    catalogue_id(61, THOLE_TEXT(Hold, hold, motor),
        "Motor class", "motors"),
    number(62, THOLE_VALUE(Hold, hold, thrust_N),
        "Static thrust", 50.0, 2500.0, 1.0, 10.0),
    number(63, THOLE_VALUE(Hold, hold, nominal_V),
        "Motor voltage", 12.0, 60.0, 0.1, 12.0),
    number(64, THOLE_VALUE(Hold, hold, minimum_V),
        "Lowest voltage at the motor", 8.0, 60.0, 0.1, 0.5),
    number(65, THOLE_VALUE(Hold, hold, maximum_V),
        "Highest voltage at the motor", 12.0, 80.0, 0.1, 0.5),
    number(66, THOLE_VALUE(Hold, hold, power_full_W),
        "Electrical power at full thrust", 100.0, 12000.0, 1.0, 50.0),
    number(67, THOLE_VALUE(Hold, hold, power_idle_W),
        "Electrical power at rest", 0.0, 300.0, 0.5, 1.0),
    number(68, THOLE_VALUE(Hold, hold, propeller_diameter_m),
        "Propeller diameter", 0.12, 0.6, 0.001, 0.01),
    number(69, THOLE_VALUE(Hold, hold, motor_mass_kg),
        "Weight of motor and shaft", 5.0, 120.0, 0.1, 1.0),
    number(70, THOLE_VALUE(Hold, hold, holding_h),
        "Hours holding in a day", 0.0, 24.0, 0.1, 0.5),
    number(71, THOLE_VALUE(Hold, hold, transit_h),
        "Hours creeping between spots", 0.0, 24.0, 0.1, 0.25),
    number(72, THOLE_VALUE(Hold, hold, transit_thrust_frac),
        "Thrust while creeping", 0.0, 1.0, 0.01, 0.05),
    number(73, THOLE_VALUE(Hold, hold, windage_factor),
        "Wind load after a trial at sea", 0.25, 4.0, 0.001, 0.05),
    number(74, THOLE_VALUE(Hold, hold, drag_factor),
        "Current load after a trial at sea", 0.25, 4.0, 0.001, 0.05),
    // shaft
    number(80, THOLE_VALUE(Shaft, shaft, length_m),
        "Shaft length", 0.5, 4.0, 0.005, 0.1),
    number(81, THOLE_VALUE(Shaft, shaft, thruster_forward_m),
        "Shaft forward of midships", 0.0, 8.0, 0.01, 0.1),
    number(82, THOLE_VALUE(Shaft, shaft, collar_m),
        "Collar above the deck", 0.0, 0.6, 0.005, 0.01),
    number(83, THOLE_VALUE(Shaft, shaft, trim_allowance_m),
        "Bow rise between loaded and light", 0.0, 0.4, 0.005, 0.01),
    number(84, THOLE_VALUE(Shaft, shaft, immersion_ratio),
        "Depth of the propeller in calm water", 0.5, 4.0, 0.05, 0.1),
    number(85, THOLE_VALUE(Shaft, shaft, tube_outer_mm),
        "Shaft tube, outside", 15.0, 80.0, 0.1, 1.0),
    number(86, THOLE_VALUE(Shaft, shaft, tube_wall_mm),
        "Shaft tube, wall", 1.0, 15.0, 0.1, 0.5),
    number(87, THOLE_VALUE(Shaft, shaft, tube_yield_MPa),
        "Shaft tube, strength", 80.0, 1500.0, 1.0, 10.0),
    number(88, THOLE_VALUE(Shaft, shaft, tube_modulus_GPa),
        "Shaft tube, stiffness", 5.0, 250.0, 0.5, 5.0),
    // bank
    catalogue_id(100, THOLE_TEXT(Bank, bank, block),
        "Battery block", "blocks"),
    choice(101, THOLE_VALUE(Bank, bank, chemistry),
        "Chemistry", kChemistryOptions),
    number(102, THOLE_VALUE(Bank, bank, block_V),
        "Nominal volts of a block", 6.0, 60.0, 0.1, 6.0),
    number(103, THOLE_VALUE(Bank, bank, capacity_Ah),
        "Capacity of a block", 5.0, 600.0, 0.5, 5.0),
    number(104, THOLE_VALUE(Bank, bank, rated_hours_h),
        "Rated hours", 1.0, 100.0, 0.5, 1.0),
    number(105, THOLE_VALUE(Bank, bank, peukert_exponent),
        "Peukert exponent", 1.0, 1.6, 0.005, 0.01),
    number(106, THOLE_VALUE(Bank, bank, resistance_ohm),
        "Internal resistance of a block", 0.0002, 0.1, 5e-05, 0.0005),
    number(107, THOLE_VALUE(Bank, bank, block_mass_kg),
        "Weight of a block", 1.0, 120.0, 0.1, 0.5),
    number(108, THOLE_VALUE(Bank, bank, continuous_A),
        "Discharge limit of a block", 0.0, 1000.0, 1.0, 10.0),
    count(109, THOLE_VALUE(Bank, bank, series_count),
        "Blocks in series", 1, 8),
    count(110, THOLE_VALUE(Bank, bank, parallel_count),
        "Strings in parallel", 1, 6),
    number(111, THOLE_VALUE(Bank, bank, depth_of_discharge_frac),
        "Depth of discharge", 0.1, 1.0, 0.01, 0.05),
    number(112, THOLE_VALUE(Bank, bank, age_factor),
        "Ageing allowance", 1.0, 2.0, 0.01, 0.05),
    number(113, THOLE_VALUE(Bank, bank, margin_factor),
        "Design margin", 1.0, 2.0, 0.01, 0.05),
    number(114, THOLE_VALUE(Bank, bank, temperature_C),
        "Temperature of the bank", -20.0, 45.0, 0.5, 1.0),
    // feeder
    number(130, THOLE_VALUE(Feeder, feeder, run_m),
        "Cable run", 0.2, 30.0, 0.01, 0.1),
    number(131, THOLE_VALUE(Feeder, feeder, tail_m),
        "Tail", 0.0, 5.0, 0.01, 0.1),
    number(132, THOLE_VALUE(Feeder, feeder, jumper_m),
        "Jumper between blocks", 0.05, 5.0, 0.01, 0.05),
    catalogue_id(133, THOLE_TEXT(Feeder, feeder, conductor),
        "Cable", "cables"),
    catalogue_id(134, THOLE_TEXT(Feeder, feeder, tail_conductor),
        "Tail cable", "cables"),
    catalogue_id(135, THOLE_TEXT(Feeder, feeder, device),
        "Protective device", "devices"),
    number(136, THOLE_VALUE(Feeder, feeder, allowed_drop_frac),
        "Allowed drop", 0.005, 0.2, 0.001, 0.005),
    number(137, THOLE_VALUE(Feeder, feeder, ambient_C),
        "Warmest air round the cable", 0.0, 70.0, 0.5, 5.0),
    toggle(138, THOLE_VALUE(Feeder, feeder, engine_space),
        "Runs through an engine space"),
    count(139, THOLE_VALUE(Feeder, feeder, bundled_count),
        "Loaded conductors bundled together", 2, 30),
    number(140, THOLE_VALUE(Feeder, feeder, device_distance_m),
        "Battery post to device", 0.0, 5.0, 0.01, 0.05),
    toggle(141, THOLE_VALUE(Feeder, feeder, sheathed),
        "Sheathed up to the device"),
    toggle(142, THOLE_VALUE(Feeder, feeder, floating),
        "Negative not tied to the boat"),
    number(143, THOLE_VALUE(Feeder, feeder, lug_ohm),
        "Resistance of a lug and stud", 1e-05, 0.01, 1e-05, 5e-05),
    number(144, THOLE_VALUE(Feeder, feeder, plug_ohm),
        "Resistance of a plug contact", 0.0001, 0.05, 5e-05, 0.0001),
    // charge
    catalogue_id(160, THOLE_TEXT(Charge, charge, charger),
        "Charger", "chargers"),
    number(161, THOLE_VALUE(Charge, charge, output_A),
        "Charging current of a block", 1.0, 100.0, 0.5, 1.0),
    number(162, THOLE_VALUE(Charge, charge, efficiency_frac),
        "Charger efficiency", 0.5, 1.0, 0.01, 0.01),
    number(163, THOLE_VALUE(Charge, charge, power_factor),
        "Charger power factor", 0.4, 1.0, 0.01, 0.01),
    number(164, THOLE_VALUE(Charge, charge, shore_V),
        "Shore supply", 100.0, 250.0, 1.0, 10.0),
    number(165, THOLE_VALUE(Charge, charge, shore_limit_A),
        "Shore current available", 1.0, 63.0, 0.5, 1.0),
    number(166, THOLE_VALUE(Charge, charge, available_h),
        "Hours on shore power", 1.0, 72.0, 0.5, 1.0),
    number(167, THOLE_VALUE(Charge, charge, locker_volume_m3),
        "Free volume of the battery locker", 0.02, 5.0, 0.01, 0.05),
    number(168, THOLE_VALUE(Charge, charge, vent_area_cm2),
        "Vent opening, each", 0.0, 2000.0, 0.5, 5.0),
    // mount
    number(180, THOLE_VALUE(Mount, mount, plate_length_mm),
        "Plate length", 150.0, 1200.0, 1.0, 10.0),
    number(181, THOLE_VALUE(Mount, mount, plate_width_mm),
        "Plate width", 80.0, 600.0, 1.0, 10.0),
    catalogue_id(182, THOLE_TEXT(Mount, mount, plate),
        "Plate stock", "plates"),
    number(183, THOLE_VALUE(Mount, mount, overhang_mm),
        "Overhang of the stowed motor", 0.0, 1000.0, 1.0, 10.0),
    count(184, THOLE_VALUE(Mount, mount, bolt_rows),
        "Bolt rows", 2, 6),
    number(185, THOLE_VALUE(Mount, mount, bolt_pitch_mm),
        "Bolt pitch", 30.0, 400.0, 1.0, 5.0),
    number(186, THOLE_VALUE(Mount, mount, bolt_gauge_mm),
        "Bolt gauge", 40.0, 500.0, 1.0, 5.0),
    catalogue_id(187, THOLE_TEXT(Mount, mount, bolt),
        "Bolt", "bolts"),
    choice(188, THOLE_VALUE(Mount, mount, head),
        "Bolt heads", kHeadOptions),
    number(189, THOLE_VALUE(Mount, mount, deck_thickness_mm),
        "Deck skin", 1.0, 40.0, 0.1, 0.5),
    number(190, THOLE_VALUE(Mount, mount, core_thickness_mm),
        "Core", 0.0, 60.0, 0.5, 1.0),
    number(191, THOLE_VALUE(Mount, mount, backing_side_mm),
        "Backing plate", 15.0, 300.0, 1.0, 5.0),
    number(192, THOLE_VALUE(Mount, mount, backing_thickness_mm),
        "Backing plate thickness", 1.0, 30.0, 0.1, 0.5),
    toggle(193, THOLE_VALUE(Mount, mount, chocked),
        "Outer chock under the stowed motor"),
    number(194, THOLE_VALUE(Mount, mount, run_wave_m),
        "Sea it is run in, stowed", 0.0, 3.0, 0.01, 0.1),
    // trim
    number(210, THOLE_VALUE(Trim, trim, bank_x_m),
        "Bank forward of the transom", 0.0, 14.0, 0.01, 0.1),
    number(211, THOLE_VALUE(Trim, trim, bank_y_m),
        "Bank to starboard", -2.5, 2.5, 0.01, 0.05),
    number(212, THOLE_VALUE(Trim, trim, motor_x_m),
        "Motor forward of the transom", 0.0, 15.0, 0.01, 0.1),
    number(213, THOLE_VALUE(Trim, trim, motor_y_m),
        "Motor to starboard", -2.5, 2.5, 0.01, 0.05),
    number(214, THOLE_VALUE(Trim, trim, waterplane_ratio),
        "Waterplane coefficient", 0.667, 1.0, 0.005, 0.01),
    number(215, THOLE_VALUE(Trim, trim, gm_m),
        "Metacentric height", 0.1, 4.0, 0.01, 0.05),
    number(216, THOLE_VALUE(Trim, trim, initial_trim_deg),
        "Trim before the work", -4.0, 4.0, 0.05, 0.1),
    // hold in time, and the trial at sea
    number(230, THOLE_VALUE(Hold, hold, tolerance_m),
        "Near enough", 0.5, 100.0, 0.1, 1.0),
    number(231, THOLE_VALUE(Hold, hold, tolerance_frac),
        "For how much of the time", 0.5, 0.99, 0.01, 0.01),
    choice(232, THOLE_VALUE(Hold, hold, gusts),
        "Gusts by", kGustOptions),
    number(233, THOLE_VALUE(Hold, hold, drift_min),
        "Minutes adrift", 1.0, 120.0, 0.1, 1.0),
    number(234, THOLE_VALUE(Hold, hold, drift_mps),
        "Drift over the ground", 0.0, 5.0, 0.005, 0.05),
    number(235, THOLE_VALUE(Hold, hold, drift_angle_deg),
        "Drift off downwind", -180.0, 180.0, 1.0, 5.0),
    number(236, THOLE_VALUE(Hold, hold, held_thrust_frac),
        "Thrust shown while holding", 0.01, 1.0, 0.01, 0.05),
    number(237, THOLE_VALUE(Hold, hold, trial_wind_mps),
        "Wind in the trial", 2.0, 35.0, 0.05, 0.5),
    number(238, THOLE_VALUE(Hold, hold, trial_wind_height_m),
        "Height of that reading", 0.5, 30.0, 0.1, 0.5),
    number(239, THOLE_VALUE(Hold, hold, trial_current_mps),
        "Current in the trial", 0.0, 4.0, 0.01, 0.1),
    number(240, THOLE_VALUE(Hold, hold, trial_current_angle_deg),
        "Current off the wind in the trial", -180.0, 180.0, 1.0, 5.0),
    number(241, THOLE_VALUE(Hold, hold, trial_wave_m),
        "Waves in the trial", 0.0, 3.0, 0.01, 0.05),
    text(243, THOLE_TEXT(Hold, hold, day),
        "The day in stretches", kMostViewBytes),
    // unlike blocks, a circuit of its own
    text(244, THOLE_TEXT(Bank, bank, fitted),
        "Blocks one by one", kMostViewBytes),
    count(245, THOLE_VALUE(Bank, bank, days_out_count),
        "Days out in a year", 1, 365),
    text(250, THOLE_TEXT(Feeder, feeder, network),
        "The circuit, piece by piece", kMostCircuitBytes),
    choice(251, THOLE_VALUE(Feeder, feeder, motor_law),
        "The motor keeps, as volts fall", kMotorLawOptions),
    // locker
    number(260, THOLE_VALUE(Locker, locker, length_m),
        "Locker length", 0.1, 3.0, 0.001, 0.01),
    number(261, THOLE_VALUE(Locker, locker, width_m),
        "Locker width", 0.1, 3.0, 0.001, 0.01),
    number(262, THOLE_VALUE(Locker, locker, height_m),
        "Locker height", 0.1, 2.0, 0.001, 0.01),
    choice(263, THOLE_VALUE(Locker, locker, access),
        "Opens by", kLockerAccessOptions),
    number(264, THOLE_VALUE(Locker, locker, opening_length_m),
        "Opening, length", 0.1, 3.0, 0.001, 0.01),
    number(265, THOLE_VALUE(Locker, locker, opening_width_m),
        "Opening, width", 0.1, 3.0, 0.001, 0.01),
    toggle(266, THOLE_VALUE(Locker, locker, side_allowed),
        "Blocks may lie on their sides"),
    toggle(267, THOLE_VALUE(Locker, locker, tiers_allowed),
        "A second tier is allowed"),
    toggle(268, THOLE_VALUE(Locker, locker, tank_over_or_under),
        "Fuel tank, filter or fitting straight above or below"),
    number(269, THOLE_VALUE(Locker, locker, metal_fuel_part_m),
        "Lowest metal fuel part above the blocks", 0.0, 3.0, 0.005, 0.05),
    toggle(270, THOLE_VALUE(Locker, locker, metal_fuel_part_shielded),
        "Shielded from them"),
    number(271, THOLE_VALUE(Locker, locker, spark_from_petrol_m),
        "Charger, switch or fan to fuel parts", 0.0, 10.0, 0.005, 0.05),
    toggle(272, THOLE_VALUE(Locker, locker, spark_parts_protected),
        "Those are ignition protected"),
    number(273, THOLE_VALUE(Locker, locker, spark_from_vent_m),
        "Nearest spark to a block's vent", 0.0, 10.0, 0.005, 0.05),
    number(274, THOLE_VALUE(Locker, locker, above_bilge_m),
        "Blocks above the bilge water", 0.0, 2.0, 0.005, 0.05),
    number(275, THOLE_VALUE(Locker, locker, coldest_C),
        "Coldest in the locker while charging", -30.0, 40.0, 0.5, 1.0),
    number(276, THOLE_VALUE(Locker, locker, hottest_C),
        "Hottest in the locker", 0.0, 80.0, 0.5, 1.0),
    number(277, THOLE_VALUE(Locker, locker, strap_rated_N),
        "A strap is rated", 100.0, 50000.0, 10.0, 100.0),
    count(278, THOLE_VALUE(Locker, locker, strap_count),
        "Straps over a block", 1, 6),
    // charging by other ways, the air of the locker
    number(290, THOLE_VALUE(Charge, charge, outlet_A),
        "Breaker of the shore outlet", 6.0, 63.0, 0.5, 1.0),
    number(291, THOLE_VALUE(Charge, charge, other_loads_A),
        "Other loads on that outlet", 0.0, 63.0, 0.1, 1.0),
    number(292, THOLE_VALUE(Charge, charge, converter_A),
        "Converter from the engine's side", 0.0, 200.0, 0.5, 5.0),
    number(293, THOLE_VALUE(Charge, charge, alternator_A),
        "Alternator", 5.0, 500.0, 1.0, 5.0),
    number(294, THOLE_VALUE(Charge, charge, engine_loads_A),
        "Engine and instruments draw", 0.0, 200.0, 0.5, 1.0),
    number(295, THOLE_VALUE(Charge, charge, engine_h),
        "Hours under engine", 0.0, 24.0, 0.1, 0.5),
    number(296, THOLE_VALUE(Charge, charge, panel_W),
        "Solar panel", 0.0, 2000.0, 1.0, 10.0),
    number(297, THOLE_VALUE(Charge, charge, full_sun_h),
        "Hours of full sun in a day", 0.0, 12.0, 0.1, 0.5),
    number(298, THOLE_VALUE(Charge, charge, standing_W),
        "Drawn from the bank at rest", 0.0, 200.0, 0.1, 0.5),
    number(299, THOLE_VALUE(Charge, charge, fan_m3_per_h),
        "Fan in the locker's duct", 0.0, 500.0, 1.0, 5.0),
    toggle(300, THOLE_VALUE(Charge, charge, fan_with_charger),
        "The charger cannot run without the fan"),
    toggle(301, THOLE_VALUE(Charge, charge, fan_protected),
        "The fan is ignition protected"),
    toggle(302, THOLE_VALUE(Charge, charge, charger_stops_itself),
        "The charger stops itself"),
    toggle(303, THOLE_VALUE(Charge, charge, recombining_caps),
        "Recombining caps"),
    toggle(304, THOLE_VALUE(Charge, charge, vents_opposite),
        "Openings on opposite sides"),
    number(305, THOLE_VALUE(Charge, charge, vents_apart_m),
        "Openings apart", 0.0, 5.0, 0.01, 0.1),
    // control and sensors
    number(310, THOLE_VALUE(Control, control, latitude_deg),
        "Latitude", -90.0, 90.0, 0.01, 1.0),
    number(311, THOLE_VALUE(Control, control, longitude_deg),
        "Longitude", -180.0, 180.0, 0.01, 1.0),
    count(312, THOLE_VALUE(Control, control, year),
        "Year", 1900, 2035),
    number(313, THOLE_VALUE(Control, control, sensor_x_m),
        "Heading sensor forward of the transom", -1.0, 16.0, 0.01, 0.1),
    number(314, THOLE_VALUE(Control, control, sensor_y_m),
        "Heading sensor to starboard", -3.0, 3.0, 0.01, 0.05),
    number(315, THOLE_VALUE(Control, control, sensor_z_m),
        "Heading sensor above the water", -1.0, 8.0, 0.01, 0.05),
    number(316, THOLE_VALUE(Control, control, feeder_y_m),
        "Feeder to starboard", -2.5, 2.5, 0.01, 0.05),
    number(317, THOLE_VALUE(Control, control, feeder_z_m),
        "Feeder above the water", -1.0, 4.0, 0.01, 0.05),
    choice(318, THOLE_VALUE(Control, control, feeder_lay),
        "The pair lies", kFeederLayOptions),
    number(319, THOLE_VALUE(Control, control, spacing_mm),
        "Conductors apart", 4.0, 1000.0, 0.5, 1.0),
    number(320, THOLE_VALUE(Control, control, pitch_mm),
        "A full turn of the twist", 20.0, 2000.0, 5.0, 10.0),
    number(321, THOLE_VALUE(Control, control, heading_limit_deg),
        "Heading error allowed", 0.2, 20.0, 0.1, 0.5),
    number(322, THOLE_VALUE(Control, control, tilt_deg),
        "Boat rolls and pitches up to", 0.0, 45.0, 1.0, 5.0),
    number(323, THOLE_VALUE(Control, control, sensor_turn_deg),
        "Sensor turned off the keel line", -180.0, 180.0, 0.5, 1.0),
    number(324, THOLE_VALUE(Control, control, receiver_clear_deg),
        "Sky clear above", 0.0, 90.0, 1.0, 5.0),
    choice(325, THOLE_VALUE(Control, control, link),
        "Data link to the plotter", kDataLinkOptions),
    number(326, THOLE_VALUE(Control, control, backbone_m),
        "Cable, end to end", 0.0, 400.0, 0.1, 1.0),
    number(327, THOLE_VALUE(Control, control, longest_drop_m),
        "Longest drop", 0.0, 50.0, 0.1, 0.5),
    number(328, THOLE_VALUE(Control, control, drops_m),
        "All drops together", 0.0, 400.0, 0.1, 1.0),
    count(329, THOLE_VALUE(Control, control, node_count),
        "Devices on it", 1, 60),
    count(330, THOLE_VALUE(Control, control, load_units_count),
        "Load numbers together", 1, 300),
    count(331, THOLE_VALUE(Control, control, terminator_count),
        "Terminators", 0, 6),
    choice(332, THOLE_VALUE(Control, control, network_feed),
        "The backbone is fed", kNetworkFeedOptions),
    number(333, THOLE_VALUE(Control, control, network_fuse_A),
        "Fuse of its power tap", 0.0, 30.0, 0.5, 1.0),
    toggle(334, THOLE_VALUE(Control, control, drip_loops),
        "Drip loops before each plug"),
    toggle(335, THOLE_VALUE(Control, control, negative_in_data_cable),
        "A data cable ties two negatives"),
    choice(336, THOLE_VALUE(Control, control, remote),
        "The remote", kRemoteOptions),
    number(337, THOLE_VALUE(Control, control, remote_h),
        "The remote runs", 1.0, 2000.0, 1.0, 5.0),
    choice(338, THOLE_VALUE(Control, control, main_switch),
        "The motor's bank is switched by", kMainSwitchOptions),
    number(339, THOLE_VALUE(Control, control, switch_rated_A),
        "That switch carries", 10.0, 1000.0, 5.0, 10.0),
    number(340, THOLE_VALUE(Control, control, always_on_W),
        "Always on", 0.0, 200.0, 0.1, 1.0),
    number(341, THOLE_VALUE(Control, control, receiver_x_m),
        "Receiver forward of the transom", -1.0, 16.0, 0.01, 0.1),
    number(342, THOLE_VALUE(Control, control, receiver_y_m),
        "Receiver to starboard", -3.0, 3.0, 0.01, 0.05),
    number(343, THOLE_VALUE(Control, control, receiver_z_m),
        "Receiver above the water", -1.0, 8.0, 0.01, 0.05),
    choice(344, THOLE_VALUE(Control, control, backbone_cable),
        "Backbone cable", kBackboneOptions),
    // the plate as it is made, and a flex test
    text(350, THOLE_TEXT(Mount, mount, outline),
        "Outline, measured", kMostViewBytes),
    number(351, THOLE_VALUE(Mount, mount, corner_mm),
        "Corner radius", 0.0, 200.0, 0.5, 5.0),
    number(352, THOLE_VALUE(Mount, mount, front_width_mm),
        "Plate width in front", 40.0, 600.0, 1.0, 10.0),
    text(353, THOLE_TEXT(Mount, mount, bolt_places),
        "Bolts, each in its place", kMostViewBytes),
    text(354, THOLE_TEXT(Mount, mount, cutouts),
        "Cut-outs", kMostViewBytes),
    count(355, THOLE_VALUE(Mount, mount, stiffener_count),
        "Stiffeners", 0, 4),
    number(356, THOLE_VALUE(Mount, mount, stiffener_height_mm),
        "Stiffener height", 5.0, 120.0, 1.0, 5.0),
    number(357, THOLE_VALUE(Mount, mount, stiffener_thickness_mm),
        "Stiffener thickness", 2.0, 25.0, 0.5, 1.0),
    number(358, THOLE_VALUE(Mount, mount, test_mass_kg),
        "Hung on in the flex test", 1.0, 200.0, 0.1, 1.0),
    number(359, THOLE_VALUE(Mount, mount, test_arm_mm),
        "Forward of the front bolts", 0.0, 1500.0, 1.0, 10.0),
    number(360, THOLE_VALUE(Mount, mount, test_sag_mm),
        "Sag measured", 0.05, 100.0, 0.05, 0.1),
    number(361, THOLE_VALUE(Mount, mount, deck_factor),
        "Bolts and bedding, times what is computed", 0.02, 20.0, 0.01, 0.1),
    toggle(362, THOLE_VALUE(Mount, mount, trailered),
        "Goes on a trailer with the motor on"),
    toggle(363, THOLE_VALUE(Mount, mount, isolated),
        "Stainless kept off the aluminium"),
    number(364, THOLE_VALUE(Mount, mount, finish_mm),
        "Paint or film, each side", 0.0, 2.0, 0.01, 0.05),
    choice(365, THOLE_VALUE(Mount, mount, finish),
        "Finish", kFinishOptions),
    toggle(366, THOLE_VALUE(Mount, mount, core_plugged),
        "Core plugged round the bolts"),
    number(367, THOLE_VALUE(Mount, mount, deck_span_mm),
        "Deck free fore and aft", 100.0, 1500.0, 5.0, 10.0),
    number(368, THOLE_VALUE(Mount, mount, test_deck_mm),
        "The deck's own sag", 0.0, 50.0, 0.01, 0.1),
    number(369, THOLE_VALUE(Mount, mount, panel_factor),
        "Deck's panel, times what is computed", 0.02, 20.0, 0.01, 0.1),
    number(370, THOLE_VALUE(Mount, mount, deck_breadth_mm),
        "Deck free athwart", 100.0, 1500.0, 5.0, 10.0),
    // foredeck
    number(380, THOLE_VALUE(Foredeck, foredeck, length_m),
        "Clear deck aft of the stem", 0.3, 6.0, 0.01, 0.05),
    number(381, THOLE_VALUE(Foredeck, foredeck, width_m),
        "Deck width at the mount", 0.2, 4.0, 0.01, 0.05),
    text(382, THOLE_TEXT(Foredeck, foredeck, items),
        "What stands on it", kMostViewBytes),
    number(383, THOLE_VALUE(Foredeck, foredeck, mount_x_m),
        "Mount aft of the stem", -1.0, 4.0, 0.01, 0.05),
    number(384, THOLE_VALUE(Foredeck, foredeck, mount_y_m),
        "Mount to starboard", -1.5, 1.5, 0.01, 0.05),
    number(385, THOLE_VALUE(Foredeck, foredeck, stow_angle_deg),
        "Stowed shaft off straight aft", -90.0, 90.0, 1.0, 5.0),
    number(386, THOLE_VALUE(Foredeck, foredeck, light_x_m),
        "Bow light aft of the stem", -0.5, 4.0, 0.01, 0.05),
    number(387, THOLE_VALUE(Foredeck, foredeck, light_y_m),
        "Bow light to starboard", -2.0, 2.0, 0.01, 0.05),
    number(388, THOLE_VALUE(Foredeck, foredeck, light_z_m),
        "Bow light above the deck", 0.0, 2.0, 0.01, 0.05),
    number(389, THOLE_VALUE(Foredeck, foredeck, rail_height_m),
        "Rail or pulpit above the deck", 0.0, 1.5, 0.01, 0.05),
    number(390, THOLE_VALUE(Foredeck, foredeck, rail_inset_m),
        "Rail inboard of the edge", 0.0, 0.6, 0.01, 0.01),
    number(391, THOLE_VALUE(Foredeck, foredeck, reach_m),
        "From where you kneel to the motor", 0.0, 4.0, 0.01, 0.05),
    toggle(392, THOLE_VALUE(Foredeck, foredeck, tied),
        "Tied down as well at speed"),
    // tests at the dock, and what the boat may carry
    number(400, THOLE_VALUE(Trim, trim, roll_period_s),
        "Roll period", 0.4, 15.0, 0.01, 0.1),
    number(401, THOLE_VALUE(Trim, trim, incline_mass_kg),
        "Inclining: weight moved", 2.0, 800.0, 0.5, 5.0),
    number(402, THOLE_VALUE(Trim, trim, incline_shift_m),
        "Moved by", 0.1, 5.0, 0.01, 0.1),
    number(403, THOLE_VALUE(Trim, trim, pendulum_m),
        "Pendulum length", 0.2, 4.0, 0.005, 0.1),
    number(404, THOLE_VALUE(Trim, trim, pendulum_shift_mm),
        "Plumb line went across by", 1.0, 800.0, 0.5, 1.0),
    number(405, THOLE_VALUE(Trim, trim, immersion_mass_kg),
        "Known weight put amidships", 5.0, 2000.0, 1.0, 10.0),
    number(406, THOLE_VALUE(Trim, trim, immersion_mm),
        "She sank by", 1.0, 400.0, 0.5, 1.0),
    count(407, THOLE_VALUE(Trim, trim, capacity_persons_count),
        "Persons on the capacity plate", 1, 40),
    number(408, THOLE_VALUE(Trim, trim, capacity_mass_kg),
        "Weight on the capacity plate", 50.0, 8000.0, 1.0, 10.0),
    number(409, THOLE_VALUE(Trim, trim, bank_z_m),
        "Bank above the water", -1.5, 3.0, 0.01, 0.05),
    number(410, THOLE_VALUE(Trim, trim, motor_z_m),
        "Stowed motor above the water", 0.0, 5.0, 0.01, 0.05),
};
// clang-format on

#undef THOLE_VALUE
#undef THOLE_TEXT

constexpr std::array kSections{
    Section{"boat", "Boat"},     Section{"water", "Water"},   Section{"hold", "Hold"},
    Section{"shaft", "Shaft"},   Section{"bank", "Bank"},     Section{"feeder", "Feeder"},
    Section{"charge", "Charging"}, Section{"mount", "Mount"}, Section{"trim", "Trim"},
    Section{"locker", "Locker"}, Section{"control", "Control and sensors"}, Section{"foredeck", "Foredeck"},
};

constexpr bool numbers_ascend() {
  for (std::size_t i = 1; i < kFields.size(); ++i) {
    if (kFields[i - 1].number >= kFields[i].number) return false;
  }
  return true;
}
static_assert(numbers_ascend(), "link keys are unique and ascend");

}  // namespace

std::string Field::path() const {
  std::string text(section);
  if (!text.empty()) text += '.';
  return text += key;
}

std::string_view Field::unit() const {
  return kind == Kind::number ? unit_of(key) : std::string_view{};
}

std::span<const Field> all_fields() { return kFields; }
std::span<const Section> all_sections() { return kSections; }

const Field* find_field(std::string_view path) {
  const std::size_t dot = path.find('.');
  const std::string_view section = dot == path.npos ? std::string_view{} : path.substr(0, dot);
  const std::string_view key = dot == path.npos ? path : path.substr(dot + 1);
  for (const Field& field : kFields) {
    if (field.section == section && field.key == key) return &field;
  }
  return nullptr;
}

const Field* find_field(int number) {
  for (const Field& field : kFields) {
    if (field.number == number) return &field;
  }
  return nullptr;
}

std::string_view unit_of(std::string_view name) {
  if (const std::size_t per = name.rfind("_per_"); per != name.npos) {  // "flow_m3_per_h"
    const std::string_view top = unit_of(name.substr(0, per));
    return top.empty() ? top : name.substr(per - top.size());
  }
  const std::size_t bar = name.rfind('_');
  if (bar == name.npos) return {};
  const std::string_view suffix = name.substr(bar + 1);
  for (const std::string_view known :
       {"m", "mm", "m2", "mm2", "cm2", "m3", "kg", "N", "Nm", "MPa", "GPa", "A", "Ah", "V", "W",
        "Wh", "ohm", "s", "h", "min", "C", "K", "deg", "rad", "mps", "Hz"}) {
    if (suffix == known) return suffix;
  }
  return {};  // frac, factor, ratio, exponent, count and the like are pure numbers
}

std::string range_message(const Field& field, double value) {
  if (value >= field.min && value <= field.max) return {};
  const auto shown = [](double number) {
    std::string text = fixed(number, 4);
    text.erase(text.find_last_not_of('0') + 1);
    if (text.back() == '.') text.pop_back();
    return text;
  };
  std::string text(field.label);
  text += " must be between " + shown(field.min) + " and " + shown(field.max);
  if (!field.unit().empty()) text += " " + std::string(field.unit());
  return text += ".";
}

std::string plain_text(const Field& field, const Job& job) {
  switch (field.kind) {
    case Kind::text:
    case Kind::catalogue_id: return field.access.get_text(job);
    case Kind::toggle: return field.access.get(job) != 0.0 ? "yes" : "no";
    case Kind::choice: {
      const auto index = static_cast<std::size_t>(field.access.get(job));
      return index < field.options.size() ? std::string(field.options[index].label) : "";
    }
    case Kind::count: return fixed(field.access.get(job), 0);
    case Kind::number: return significant(field.access.get(job), 6);
  }
  return {};
}

bool same_value(const Field& field, const Job& a, const Job& b) {
  if (field.access.origin(a) != field.access.origin(b)) return false;
  return field.access.is_text() ? field.access.get_text(a) == field.access.get_text(b)
                                : field.access.get(a) == field.access.get(b);
}

void clear(const Field& field, Job& job) {
  if (field.access.is_text()) {
    field.access.set_text(job, "");
  } else {
    field.access.set(job, 0.0);
  }
  field.access.set_origin(job, Origin::absent);
}

void apply(const Change& change, Job& job) {
  const Field* field = find_field(change.field);
  if (field == nullptr) return;
  if (change.clear) {
    clear(*field, job);
    return;
  }
  if (field->access.is_text()) {
    field->access.set_text(job, change.text);
  } else {
    field->access.set(job, change.value);
  }
  field->access.set_origin(job, Origin::given);
}

}  // namespace thole
