#include "job/fields.h"

#include <array>
#include <cmath>

#include "base/number.h"

namespace thole {
namespace {

// The member that a field stands for, as function pointers that keep its type to themselves.
template <auto SectionPtr, auto MemberPtr>
auto& member(Job& job) {
  return (job.*SectionPtr).*MemberPtr;
}

template <auto SectionPtr, auto MemberPtr>
constexpr Access value_access() {
  return {
      .get = [](const Job& job) { return static_cast<double>(((job.*SectionPtr).*MemberPtr).value); },
      .set =
          [](Job& job, double value) {
            auto& target = member<SectionPtr, MemberPtr>(job).value;
            target = static_cast<std::remove_reference_t<decltype(target)>>(value);
          },
      .origin = [](const Job& job) { return ((job.*SectionPtr).*MemberPtr).origin; },
      .set_origin = [](Job& job, Origin o) { member<SectionPtr, MemberPtr>(job).origin = o; },
  };
}

template <auto SectionPtr, auto MemberPtr>
constexpr Access text_access() {
  return {
      .get_text = [](const Job& job) -> const std::string& {
        return ((job.*SectionPtr).*MemberPtr).value;
      },
      .set_text =
          [](Job& job, std::string_view text) {
            member<SectionPtr, MemberPtr>(job).value = std::string(text);
          },
      .origin = [](const Job& job) { return ((job.*SectionPtr).*MemberPtr).origin; },
      .set_origin = [](Job& job, Origin o) { member<SectionPtr, MemberPtr>(job).origin = o; },
  };
}

constexpr Access title_access() {
  return {
      .get_text = [](const Job& job) -> const std::string& { return job.title.value; },
      .set_text = [](Job& job, std::string_view text) { job.title.value = std::string(text); },
      .origin = [](const Job& job) { return job.title.origin; },
      .set_origin = [](Job& job, Origin o) { job.title.origin = o; },
  };
}

// Key and member cannot differ.
#define THOLE_VALUE(Type, section, name) #section, #name, value_access<&Job::section, &Type::name>()
#define THOLE_TEXT(Type, section, name) #section, #name, text_access<&Job::section, &Type::name>()

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
                     std::string_view label, std::string_view help, int most_bytes) {
  return {key_number, section, key, Kind::text, access, label, help, 0.0, double(most_bytes)};
}
constexpr Field number(int key_number, std::string_view section, std::string_view key, Access access,
                       std::string_view label, std::string_view help, double min, double max,
                       double quantum, double step) {
  return {key_number, section, key, Kind::number, access, label, help, min, max, quantum, step};
}
constexpr Field count(int key_number, std::string_view section, std::string_view key, Access access,
                      std::string_view label, std::string_view help, int min, int max) {
  return {key_number, section, key, Kind::count, access, label, help, double(min), double(max), 1.0, 1.0};
}
constexpr Field toggle(int key_number, std::string_view section, std::string_view key, Access access,
                       std::string_view label, std::string_view help) {
  return {key_number, section, key, Kind::toggle, access, label, help, 0.0, 1.0, 1.0, 1.0};
}
constexpr Field choice(int key_number, std::string_view section, std::string_view key, Access access,
                       std::string_view label, std::string_view help,
                       std::span<const Option> options) {
  return {key_number, section, key,  Kind::choice, access, label, help, 0.0,
          static_cast<double>(options.size()) - 1.0, 1.0, 1.0, options};
}
constexpr Field catalogue_id(int key_number, std::string_view section, std::string_view key,
                             Access access, std::string_view label, std::string_view help,
                             std::string_view list) {
  return {key_number, section, key, Kind::catalogue_id, access, label, help, 0.0, 0.0, 0.0, 0.0, {}, list};
}

constexpr int kMostViewBytes = 480;
constexpr int kMostCircuitBytes = 960;

// clang-format off
constexpr std::array kFields{
    // the job itself
    Field{1, "", "title", Kind::text, title_access(), "Name of this job", "For your own list; leave customers' names out of links."},
    // boat
    catalogue_id(10, THOLE_TEXT(Boat, boat, type),
        "Boat type",
        "Fills the rest of the page until you measure.", "boats"),
    number(11, THOLE_VALUE(Boat, boat, length_m),
        "Length overall",
        "Stem to transom, without pulpit or platform.", 4.0, 15.0, 0.01, 0.1),
    number(12, THOLE_VALUE(Boat, boat, displacement_kg),
        "Loaded weight",
        "Boat, engine, fuel, gear and people as usually out.", 250.0, 15000.0, 1.0, 50.0),
    number(13, THOLE_VALUE(Boat, boat, bow_height_m),
        "Bow height",
        "Deck at the mount above calm water, loaded.", 0.2, 3.0, 0.005, 0.05),
    choice(14, THOLE_VALUE(Boat, boat, layout),
        "Deck layout",
        "What stands in the wind.", kLayoutOptions),
    number(15, THOLE_VALUE(Boat, boat, beam_m),
        "Beam",
        "Widest, overall.", 1.2, 5.0, 0.01, 0.05),
    number(16, THOLE_VALUE(Boat, boat, waterline_length_m),
        "Waterline length",
        "At rest, loaded.", 3.0, 14.5, 0.01, 0.1),
    number(17, THOLE_VALUE(Boat, boat, waterline_beam_m),
        "Waterline beam",
        "At rest, loaded.", 1.0, 4.8, 0.01, 0.05),
    number(18, THOLE_VALUE(Boat, boat, draft_m),
        "Hull draft",
        "Without engine and propeller.", 0.1, 1.5, 0.01, 0.05),
    number(19, THOLE_VALUE(Boat, boat, deadrise_deg),
        "Deadrise",
        "At four tenths of the waterline from aft; 0 is flat.", 0.0, 30.0, 0.5, 1.0),
    number(20, THOLE_VALUE(Boat, boat, cruise_speed_mps),
        "Fastest run with the motor stowed",
        "As you really drive it to the spot.", 0.0, 26.0, 0.01, 0.514444),
    count(21, THOLE_VALUE(Boat, boat, crew_count),
        "People aboard",
        "As usually out.", 1, 12),
    count(22, THOLE_VALUE(Boat, boat, outboard_count),
        "Outboards or drives",
        "Legs in the water at the stern.", 0, 4),
    choice(23, THOLE_VALUE(Boat, boat, leg),
        "Legs while holding",
        "Tilted clear, left down in gear, or down with propellers that turn freely.", kLegOptions),
    number(24, THOLE_VALUE(Boat, boat, leg_propeller_m),
        "Main propeller diameter",
        "Of each leg.", 0.15, 0.6, 0.005, 0.01),
    number(25, THOLE_VALUE(Boat, boat, frontal_area_m2),
        "Windage from ahead",
        "All that shows above water, from ahead.", 0.5, 30.0, 0.05, 0.1),
    number(26, THOLE_VALUE(Boat, boat, lateral_area_m2),
        "Windage from the side",
        "All that shows above water, from the side.", 1.0, 60.0, 0.1, 0.5),
    number(27, THOLE_VALUE(Boat, boat, lateral_centroid_m),
        "Centre of the side windage",
        "Forward of midships; aft is negative.", -4.0, 4.0, 0.01, 0.1),
    number(28, THOLE_VALUE(Boat, boat, underwater_area_m2),
        "Side area under water",
        "Hull, skeg and legs that are down.", 0.4, 20.0, 0.05, 0.1),
    number(29, THOLE_VALUE(Boat, boat, underwater_centroid_m),
        "Centre of the side area under water",
        "Forward of midships; aft is negative.", -4.0, 4.0, 0.01, 0.1),
    number(30, THOLE_VALUE(Boat, boat, bow_angle_deg),
        "Half angle of the waterline at the bow",
        "From stem to a quarter of the beam.", 8.0, 60.0, 0.5, 1.0),
    toggle(31, THOLE_VALUE(Boat, boat, petrol),
        "Petrol engine or tank below deck",
        "Decides where sparks may be."),
    choice(32, THOLE_VALUE(Boat, boat, deck),
        "Foredeck make-up",
        "What the bolts go through.", kDeckOptions),
    text(33, THOLE_TEXT(Boat, boat, side_view),
        "Side above water, drawn",
        "Outline as points forward of the transom and up, in metres: 0,0 0,0.8 6.5,1.3 6.2,0. Or "
        "parts, length x height * fill @ centre: 6.5x0.8@3.2 1.8x1.1*0.25@2.6.", kMostViewBytes),
    text(34, THOLE_TEXT(Boat, boat, front_view),
        "Front above water, drawn",
        "Outline as points across and up, in metres, or parts: 2.4x1.1 1.2x0.9*0.25.", kMostViewBytes),
    choice(35, THOLE_VALUE(Boat, boat, canvas),
        "Canvas and curtains",
        "Bimini, curtains or enclosure while holding, where the layout has them.", kCanvasOptions),
    count(36, THOLE_VALUE(Boat, boat, standing_forward_count),
        "People standing at the bow",
        "While it holds; they show to the wind far forward.", 0, 6),
    // water
    catalogue_id(40, THOLE_TEXT(Water, water, place),
        "Water",
        "Fills this page until you know better.", "waters"),
    choice(41, THOLE_VALUE(Water, water, exposure),
        "Where you hold",
        "Land close to windward makes gusts; open water makes waves.", kExposureOptions),
    number(42, THOLE_VALUE(Water, water, wind_mps),
        "Wind to hold in",
        "Ten-minute mean at 10 m height, as forecast.", 0.0, 35.0, 0.01, 0.514444),
    choice(43, THOLE_VALUE(Water, water, wind_height),
        "Which wind acts on the boat",
        "At 10 m: on the safe side. At the boat's height: likelier.", kWindHeightOptions),
    number(44, THOLE_VALUE(Water, water, fetch_m),
        "Open water upwind",
        "Distance over which the wind raises waves.", 50.0, 200000.0, 10.0, 500.0),
    number(45, THOLE_VALUE(Water, water, depth_m),
        "Depth",
        "Where you hold.", 0.5, 200.0, 0.1, 0.5),
    number(46, THOLE_VALUE(Water, water, current_mps),
        "Current",
        "Tide or river, at the surface.", 0.0, 4.0, 0.01, 0.1),
    number(47, THOLE_VALUE(Water, water, current_angle_deg),
        "Angle between wind and current",
        "0: both from the same side. 180: wind against current.", 0.0, 180.0, 1.0, 15.0),
    number(48, THOLE_VALUE(Water, water, wave_height_m),
        "Significant wave height",
        "Leave out to estimate it from wind, fetch and depth.", 0.0, 4.0, 0.01, 0.1),
    number(49, THOLE_VALUE(Water, water, wave_period_s),
        "Wave period",
        "Peak period of the waves.", 0.5, 15.0, 0.05, 0.1),
    choice(50, THOLE_VALUE(Water, water, salinity),
        "Water",
        "Salt or fresh.", kSalinityOptions),
    number(51, THOLE_VALUE(Water, water, air_C),
        "Air temperature",
        "Cold air pushes harder.", -20.0, 45.0, 0.5, 1.0),
    // hold
    choice(60, THOLE_VALUE(Hold, hold, firmness),
        "How firmly",
        "Firm keeps the spot in gusts; loose lets it swing back.", kFirmnessOptions),
    catalogue_id(61, THOLE_TEXT(Hold, hold, motor),
        "Motor class",
        "Leave out and the smallest that holds is chosen.", "motors"),
    number(62, THOLE_VALUE(Hold, hold, thrust_N),
        "Static thrust",
        "As claimed by its maker, at the post.", 50.0, 2500.0, 1.0, 10.0),
    number(63, THOLE_VALUE(Hold, hold, nominal_V),
        "Motor voltage",
        "Of the bank that it is made for.", 12.0, 60.0, 0.1, 12.0),
    number(64, THOLE_VALUE(Hold, hold, minimum_V),
        "Lowest voltage at the motor",
        "At full thrust, by its maker.", 8.0, 60.0, 0.1, 0.5),
    number(65, THOLE_VALUE(Hold, hold, maximum_V),
        "Highest voltage at the motor",
        "On charge, by its maker.", 12.0, 80.0, 0.1, 0.5),
    number(66, THOLE_VALUE(Hold, hold, power_full_W),
        "Electrical power at full thrust",
        "At the plug.", 100.0, 12000.0, 1.0, 50.0),
    number(67, THOLE_VALUE(Hold, hold, power_idle_W),
        "Electrical power at rest",
        "Receiver, heading sensor and steering.", 0.0, 300.0, 0.5, 1.0),
    number(68, THOLE_VALUE(Hold, hold, propeller_diameter_m),
        "Propeller diameter",
        "Of the bow motor.", 0.12, 0.6, 0.001, 0.01),
    number(69, THOLE_VALUE(Hold, hold, motor_mass_kg),
        "Weight of motor and shaft",
        "Without the plate.", 5.0, 120.0, 0.1, 1.0),
    number(70, THOLE_VALUE(Hold, hold, holding_h),
        "Hours holding in a day",
        "In the wind given above.", 0.0, 24.0, 0.1, 0.5),
    number(71, THOLE_VALUE(Hold, hold, transit_h),
        "Hours creeping between spots",
        "On the bow motor alone.", 0.0, 24.0, 0.1, 0.25),
    number(72, THOLE_VALUE(Hold, hold, transit_thrust_frac),
        "Thrust while creeping",
        "Share of full thrust.", 0.0, 1.0, 0.01, 0.05),
    number(73, THOLE_VALUE(Hold, hold, windage_factor),
        "Wind load after a trial at sea",
        "Times what is computed; 1 without a trial.", 0.25, 4.0, 0.001, 0.05),
    number(74, THOLE_VALUE(Hold, hold, drag_factor),
        "Current load after a trial at sea",
        "Times what is computed; 1 without a trial.", 0.25, 4.0, 0.001, 0.05),
    // shaft
    number(80, THOLE_VALUE(Shaft, shaft, length_m),
        "Shaft length",
        "Collar top to propeller axis; leave out to choose from stock.", 0.5, 4.0, 0.005, 0.1),
    number(81, THOLE_VALUE(Shaft, shaft, thruster_forward_m),
        "Shaft forward of midships",
        "Where it enters the water.", 0.0, 8.0, 0.01, 0.1),
    number(82, THOLE_VALUE(Shaft, shaft, collar_m),
        "Collar above the deck",
        "Top of the collar above the deck at the mount.", 0.0, 0.6, 0.005, 0.01),
    number(83, THOLE_VALUE(Shaft, shaft, trim_allowance_m),
        "Bow rise between loaded and light",
        "As fuel and people come and go.", 0.0, 0.4, 0.005, 0.01),
    number(84, THOLE_VALUE(Shaft, shaft, immersion_ratio),
        "Depth of the propeller in calm water",
        "Axis depth over propeller diameter.", 0.5, 4.0, 0.05, 0.1),
    number(85, THOLE_VALUE(Shaft, shaft, tube_outer_mm),
        "Shaft tube, outside",
        "Diameter.", 15.0, 80.0, 0.1, 1.0),
    number(86, THOLE_VALUE(Shaft, shaft, tube_wall_mm),
        "Shaft tube, wall",
        "Thickness.", 1.0, 15.0, 0.1, 0.5),
    number(87, THOLE_VALUE(Shaft, shaft, tube_yield_MPa),
        "Shaft tube, strength",
        "Yield of a metal, flexural strength of a composite.", 80.0, 1500.0, 1.0, 10.0),
    number(88, THOLE_VALUE(Shaft, shaft, tube_modulus_GPa),
        "Shaft tube, stiffness",
        "Modulus of elasticity.", 5.0, 250.0, 0.5, 5.0),
    // bank
    catalogue_id(100, THOLE_TEXT(Bank, bank, block),
        "Battery block",
        "Leave out and one that lasts is chosen.", "blocks"),
    choice(101, THOLE_VALUE(Bank, bank, chemistry),
        "Chemistry",
        "Narrows the choice of blocks.", kChemistryOptions),
    number(102, THOLE_VALUE(Bank, bank, block_V),
        "Nominal volts of a block",
        "As labelled.", 6.0, 60.0, 0.1, 6.0),
    number(103, THOLE_VALUE(Bank, bank, capacity_Ah),
        "Capacity of a block",
        "At its rated hours, 25 °C.", 5.0, 600.0, 0.5, 5.0),
    number(104, THOLE_VALUE(Bank, bank, rated_hours_h),
        "Rated hours",
        "The time the label's capacity is given for, mostly 20.", 1.0, 100.0, 0.5, 1.0),
    number(105, THOLE_VALUE(Bank, bank, peukert_exponent),
        "Peukert exponent",
        "How much capacity shrinks at high current.", 1.0, 1.6, 0.005, 0.01),
    number(106, THOLE_VALUE(Bank, bank, resistance_ohm),
        "Internal resistance of a block",
        "Charged, 25 °C.", 0.0002, 0.1, 5e-05, 0.0005),
    number(107, THOLE_VALUE(Bank, bank, block_mass_kg),
        "Weight of a block",
        "As labelled or weighed.", 1.0, 120.0, 0.1, 0.5),
    number(108, THOLE_VALUE(Bank, bank, continuous_A),
        "Discharge limit of a block",
        "Of its electronics; 0 when it has none.", 0.0, 1000.0, 1.0, 10.0),
    count(109, THOLE_VALUE(Bank, bank, series_count),
        "Blocks in series",
        "They add their volts.", 1, 8),
    count(110, THOLE_VALUE(Bank, bank, parallel_count),
        "Strings in parallel",
        "They add their hours.", 1, 6),
    number(111, THOLE_VALUE(Bank, bank, depth_of_discharge_frac),
        "Depth of discharge",
        "How much of the bank a day may use.", 0.1, 1.0, 0.01, 0.05),
    number(112, THOLE_VALUE(Bank, bank, age_factor),
        "Ageing allowance",
        "1.25 sizes for a bank at the end of its life.", 1.0, 2.0, 0.01, 0.05),
    number(113, THOLE_VALUE(Bank, bank, margin_factor),
        "Design margin",
        "For growth and less than ideal days.", 1.0, 2.0, 0.01, 0.05),
    number(114, THOLE_VALUE(Bank, bank, temperature_C),
        "Temperature of the bank",
        "On the coldest day it must serve.", -20.0, 45.0, 0.5, 1.0),
    // feeder
    number(130, THOLE_VALUE(Feeder, feeder, run_m),
        "Cable run",
        "One way along the cable, bank to the stud at the bow.", 0.2, 30.0, 0.01, 0.1),
    number(131, THOLE_VALUE(Feeder, feeder, tail_m),
        "Tail",
        "One way, from the stud to the motor's plug; 0 for none.", 0.0, 5.0, 0.01, 0.1),
    number(132, THOLE_VALUE(Feeder, feeder, jumper_m),
        "Jumper between blocks",
        "Each.", 0.05, 5.0, 0.01, 0.05),
    catalogue_id(133, THOLE_TEXT(Feeder, feeder, conductor),
        "Cable",
        "Leave out and the lightest that serves is chosen.", "cables"),
    catalogue_id(134, THOLE_TEXT(Feeder, feeder, tail_conductor),
        "Tail cable",
        "What the plug takes.", "cables"),
    catalogue_id(135, THOLE_TEXT(Feeder, feeder, device),
        "Protective device",
        "Breaker or fuse near the bank.", "devices"),
    number(136, THOLE_VALUE(Feeder, feeder, allowed_drop_frac),
        "Allowed drop",
        "Share of nominal voltage lost in the feeder at full thrust.", 0.005, 0.2, 0.001, 0.005),
    number(137, THOLE_VALUE(Feeder, feeder, ambient_C),
        "Warmest air round the cable",
        "Sun-heated lockers reach 45 °C.", 0.0, 70.0, 0.5, 5.0),
    toggle(138, THOLE_VALUE(Feeder, feeder, engine_space),
        "Runs through an engine space",
        "Counts as 50 °C."),
    count(139, THOLE_VALUE(Feeder, feeder, bundled_count),
        "Loaded conductors bundled together",
        "The motor's own pair is 2.", 2, 30),
    number(140, THOLE_VALUE(Feeder, feeder, device_distance_m),
        "Battery post to device",
        "Along the conductor.", 0.0, 5.0, 0.01, 0.05),
    toggle(141, THOLE_VALUE(Feeder, feeder, sheathed),
        "Sheathed up to the device",
        "In conduit or a second sleeve."),
    toggle(142, THOLE_VALUE(Feeder, feeder, floating),
        "Negative not tied to the boat",
        "The usual case for a separate series bank."),
    number(143, THOLE_VALUE(Feeder, feeder, lug_ohm),
        "Resistance of a lug and stud",
        "Each, new and clean.", 1e-05, 0.01, 1e-05, 5e-05),
    number(144, THOLE_VALUE(Feeder, feeder, plug_ohm),
        "Resistance of a plug contact",
        "Each pole.", 0.0001, 0.05, 5e-05, 0.0001),
    // charge
    catalogue_id(160, THOLE_TEXT(Charge, charge, charger),
        "Charger",
        "Leave out and one that refills in time is chosen.", "chargers"),
    number(161, THOLE_VALUE(Charge, charge, output_A),
        "Charging current of a block",
        "Each output.", 1.0, 100.0, 0.5, 1.0),
    number(162, THOLE_VALUE(Charge, charge, efficiency_frac),
        "Charger efficiency",
        "Direct current out over mains power in.", 0.5, 1.0, 0.01, 0.01),
    number(163, THOLE_VALUE(Charge, charge, power_factor),
        "Charger power factor",
        "0.65 without correction.", 0.4, 1.0, 0.01, 0.01),
    number(164, THOLE_VALUE(Charge, charge, shore_V),
        "Shore supply",
        "Volts.", 100.0, 250.0, 1.0, 10.0),
    number(165, THOLE_VALUE(Charge, charge, shore_limit_A),
        "Shore current available",
        "Continuous, for this charger.", 1.0, 63.0, 0.5, 1.0),
    number(166, THOLE_VALUE(Charge, charge, available_h),
        "Hours on shore power",
        "Between two days out.", 1.0, 72.0, 0.5, 1.0),
    number(167, THOLE_VALUE(Charge, charge, locker_volume_m3),
        "Free volume of the battery locker",
        "With the blocks in.", 0.02, 5.0, 0.01, 0.05),
    number(168, THOLE_VALUE(Charge, charge, vent_area_cm2),
        "Vent opening, each",
        "One low, one high.", 0.0, 2000.0, 0.5, 5.0),
    // mount
    number(180, THOLE_VALUE(Mount, mount, plate_length_mm),
        "Plate length",
        "Fore and aft.", 150.0, 1200.0, 1.0, 10.0),
    number(181, THOLE_VALUE(Mount, mount, plate_width_mm),
        "Plate width",
        "Athwart.", 80.0, 600.0, 1.0, 10.0),
    catalogue_id(182, THOLE_TEXT(Mount, mount, plate),
        "Plate stock",
        "Leave out and the thinnest that serves is chosen.", "plates"),
    number(183, THOLE_VALUE(Mount, mount, overhang_mm),
        "Overhang of the stowed motor",
        "Front bolt row to its centre of mass.", 0.0, 1000.0, 1.0, 10.0),
    count(184, THOLE_VALUE(Mount, mount, bolt_rows),
        "Bolt rows",
        "Each of two bolts.", 2, 6),
    number(185, THOLE_VALUE(Mount, mount, bolt_pitch_mm),
        "Bolt pitch",
        "Fore and aft, row to row.", 30.0, 400.0, 1.0, 5.0),
    number(186, THOLE_VALUE(Mount, mount, bolt_gauge_mm),
        "Bolt gauge",
        "Athwart, across a row.", 40.0, 500.0, 1.0, 5.0),
    catalogue_id(187, THOLE_TEXT(Mount, mount, bolt),
        "Bolt",
        "Leave out and the smallest that serves is chosen.", "bolts"),
    choice(188, THOLE_VALUE(Mount, mount, head),
        "Bolt heads",
        "Countersunk heads need a thicker plate.", kHeadOptions),
    number(189, THOLE_VALUE(Mount, mount, deck_thickness_mm),
        "Deck skin",
        "Outer skin of a cored deck, or the whole of a single skin.", 1.0, 40.0, 0.1, 0.5),
    number(190, THOLE_VALUE(Mount, mount, core_thickness_mm),
        "Core",
        "0 for a single skin.", 0.0, 60.0, 0.5, 1.0),
    number(191, THOLE_VALUE(Mount, mount, backing_side_mm),
        "Backing plate",
        "Side of the square under each bolt.", 15.0, 300.0, 1.0, 5.0),
    number(192, THOLE_VALUE(Mount, mount, backing_thickness_mm),
        "Backing plate thickness",
        "", 1.0, 30.0, 0.1, 0.5),
    toggle(193, THOLE_VALUE(Mount, mount, chocked),
        "Outer chock under the stowed motor",
        "Carries its outer end."),
    number(194, THOLE_VALUE(Mount, mount, run_wave_m),
        "Sea it is run in, stowed",
        "Significant wave height at that speed.", 0.0, 3.0, 0.01, 0.1),
    // trim
    number(210, THOLE_VALUE(Trim, trim, bank_x_m),
        "Bank forward of the transom",
        "Centre of the blocks.", 0.0, 14.0, 0.01, 0.1),
    number(211, THOLE_VALUE(Trim, trim, bank_y_m),
        "Bank to starboard",
        "Off the centreline; port is negative.", -2.5, 2.5, 0.01, 0.05),
    number(212, THOLE_VALUE(Trim, trim, motor_x_m),
        "Motor forward of the transom",
        "Centre of mass, stowed.", 0.0, 15.0, 0.01, 0.1),
    number(213, THOLE_VALUE(Trim, trim, motor_y_m),
        "Motor to starboard",
        "Off the centreline; port is negative.", -2.5, 2.5, 0.01, 0.05),
    number(214, THOLE_VALUE(Trim, trim, waterplane_ratio),
        "Waterplane coefficient",
        "Waterplane area over length times beam.", 0.667, 1.0, 0.005, 0.01),
    number(215, THOLE_VALUE(Trim, trim, gm_m),
        "Metacentric height",
        "From a roll test when you have one.", 0.1, 4.0, 0.01, 0.05),
    number(216, THOLE_VALUE(Trim, trim, initial_trim_deg),
        "Trim before the work",
        "Bow down is positive.", -4.0, 4.0, 0.05, 0.1),
    // hold in time, and the trial at sea
    number(230, THOLE_VALUE(Hold, hold, tolerance_m),
        "Near enough",
        "How far from the spot the bow may be.", 0.5, 100.0, 0.1, 1.0),
    number(231, THOLE_VALUE(Hold, hold, tolerance_frac),
        "For how much of the time",
        "Share of the time within that distance.", 0.5, 0.99, 0.01, 0.01),
    choice(232, THOLE_VALUE(Hold, hold, gusts),
        "Gusts by",
        "Whose law says how the wind varies; NPD is the offshore standard's.", kGustOptions),
    number(233, THOLE_VALUE(Hold, hold, drift_min),
        "Minutes adrift",
        "Motor up, engine out of gear; five or more tell most.", 1.0, 120.0, 0.1, 1.0),
    number(234, THOLE_VALUE(Hold, hold, drift_mps),
        "Drift over the ground",
        "Mean speed by the receiver: distance over time.", 0.0, 5.0, 0.005, 0.05),
    number(235, THOLE_VALUE(Hold, hold, drift_angle_deg),
        "Drift off downwind",
        "Where the boat goes, clockwise from straight downwind.", -180.0, 180.0, 1.0, 5.0),
    number(236, THOLE_VALUE(Hold, hold, held_thrust_frac),
        "Thrust shown while holding",
        "Mean over the same minutes, as a share of full thrust.", 0.01, 1.0, 0.01, 0.05),
    number(237, THOLE_VALUE(Hold, hold, trial_wind_mps),
        "Wind in the trial",
        "Mean over the same minutes.", 2.0, 35.0, 0.05, 0.5),
    number(238, THOLE_VALUE(Hold, hold, trial_wind_height_m),
        "Height of that reading",
        "Above the water; 10 m for a forecast or a weather station.", 0.5, 30.0, 0.1, 0.5),
    number(239, THOLE_VALUE(Hold, hold, trial_current_mps),
        "Current in the trial",
        "Slack water makes the best trial.", 0.0, 4.0, 0.01, 0.1),
    number(240, THOLE_VALUE(Hold, hold, trial_current_angle_deg),
        "Current off the wind in the trial",
        "Where it comes from, clockwise from where the wind does.", -180.0, 180.0, 1.0, 5.0),
    number(241, THOLE_VALUE(Hold, hold, trial_wave_m),
        "Waves in the trial",
        "Significant height; leave out and the fetch tells.", 0.0, 3.0, 0.01, 0.05),
    text(243, THOLE_TEXT(Hold, hold, day),
        "The day in stretches",
        "Hours at a wind, or at a share of thrust between spots: 2h@8kn 1h@12kn 0.5h@50%.", kMostViewBytes),
    // unlike blocks, a circuit of its own
    text(244, THOLE_TEXT(Bank, bank, fitted),
        "Blocks one by one",
        "In the order of wiring: 100Ah 2y, 100Ah 2y, 80Ah 5y. Where known: agm, 12V, 5mohm, 90%; / between strings.", kMostViewBytes),
    count(245, THOLE_VALUE(Bank, bank, days_out_count),
        "Days out in a year",
        "Says whether cycles or time end the bank.", 1, 365),
    text(250, THOLE_TEXT(Feeder, feeder, network),
        "The circuit, piece by piece",
        "Only where it is not the usual one: lug device 5m:4AWG [bow] plug motor plug [back] 5m:4AWG lug; [bow] load:30W [back].", kMostCircuitBytes),
    choice(251, THOLE_VALUE(Feeder, feeder, motor_law),
        "The motor keeps, as volts fall",
        "A controller keeps its power; a plain motor is nearly a resistance.", kMotorLawOptions),
    // locker
    number(260, THOLE_VALUE(Locker, locker, length_m),
        "Locker length",
        "Inner and clear, its longest side in plan.", 0.1, 3.0, 0.001, 0.01),
    number(261, THOLE_VALUE(Locker, locker, width_m),
        "Locker width",
        "Inner and clear, across its length.", 0.1, 3.0, 0.001, 0.01),
    number(262, THOLE_VALUE(Locker, locker, height_m),
        "Locker height",
        "Inner and clear, under lid and stiffeners.", 0.1, 2.0, 0.001, 0.01),
    choice(263, THOLE_VALUE(Locker, locker, access),
        "Opens by",
        "The way that the blocks go in.", kLockerAccessOptions),
    number(264, THOLE_VALUE(Locker, locker, opening_length_m),
        "Opening, length",
        "Along the locker; of a door, its width.", 0.1, 3.0, 0.001, 0.01),
    number(265, THOLE_VALUE(Locker, locker, opening_width_m),
        "Opening, width",
        "Across it; of a door, its height.", 0.1, 3.0, 0.001, 0.01),
    toggle(266, THOLE_VALUE(Locker, locker, side_allowed),
        "Blocks may lie on their sides",
        "Only if their maker says so; never flooded ones."),
    toggle(267, THOLE_VALUE(Locker, locker, tiers_allowed),
        "A second tier is allowed",
        "On a shelf of its own; never flooded ones."),
    toggle(268, THOLE_VALUE(Locker, locker, tank_over_or_under),
        "Fuel tank, filter or fitting straight above or below",
        "33 CFR 183.420 keeps them apart."),
    number(269, THOLE_VALUE(Locker, locker, metal_fuel_part_m),
        "Lowest metal fuel part above the blocks",
        "From the tops of the blocks.", 0.0, 3.0, 0.005, 0.05),
    toggle(270, THOLE_VALUE(Locker, locker, metal_fuel_part_shielded),
        "Shielded from them",
        "By something that does not conduct."),
    number(271, THOLE_VALUE(Locker, locker, spark_from_petrol_m),
        "Charger, switch or fan to fuel parts",
        "Through open air.", 0.0, 10.0, 0.005, 0.05),
    toggle(272, THOLE_VALUE(Locker, locker, spark_parts_protected),
        "Those are ignition protected",
        "Or stand behind a bulkhead."),
    number(273, THOLE_VALUE(Locker, locker, spark_from_vent_m),
        "Nearest spark to a block's vent",
        "Switch, relay, charger or a glow, in sight.", 0.0, 10.0, 0.005, 0.05),
    number(274, THOLE_VALUE(Locker, locker, above_bilge_m),
        "Blocks above the bilge water",
        "Their bottom over the highest it gets.", 0.0, 2.0, 0.005, 0.05),
    number(275, THOLE_VALUE(Locker, locker, coldest_C),
        "Coldest in the locker while charging",
        "", -30.0, 40.0, 0.5, 1.0),
    number(276, THOLE_VALUE(Locker, locker, hottest_C),
        "Hottest in the locker",
        "In the sun, lid closed.", 0.0, 80.0, 0.5, 1.0),
    number(277, THOLE_VALUE(Locker, locker, strap_rated_N),
        "A strap is rated",
        "Its working load by the label.", 100.0, 50000.0, 10.0, 100.0),
    count(278, THOLE_VALUE(Locker, locker, strap_count),
        "Straps over a block",
        "Leave out and as many as needed are counted.", 1, 6),
    // charging by other ways, the air of the locker
    number(290, THOLE_VALUE(Charge, charge, outlet_A),
        "Breaker of the shore outlet",
        "By its label.", 6.0, 63.0, 0.5, 1.0),
    number(291, THOLE_VALUE(Charge, charge, other_loads_A),
        "Other loads on that outlet",
        "All night.", 0.0, 63.0, 0.1, 1.0),
    number(292, THOLE_VALUE(Charge, charge, converter_A),
        "Converter from the engine's side",
        "Amperes into the bank; 0 for none.", 0.0, 200.0, 0.5, 5.0),
    number(293, THOLE_VALUE(Charge, charge, alternator_A),
        "Alternator",
        "Amperes by its label.", 5.0, 500.0, 1.0, 5.0),
    number(294, THOLE_VALUE(Charge, charge, engine_loads_A),
        "Engine and instruments draw",
        "While it runs.", 0.0, 200.0, 0.5, 1.0),
    number(295, THOLE_VALUE(Charge, charge, engine_h),
        "Hours under engine",
        "In a day out.", 0.0, 24.0, 0.1, 0.5),
    number(296, THOLE_VALUE(Charge, charge, panel_W),
        "Solar panel",
        "Watts by its label; 0 for none.", 0.0, 2000.0, 1.0, 10.0),
    number(297, THOLE_VALUE(Charge, charge, full_sun_h),
        "Hours of full sun in a day",
        "Its energy over 1000 W/m².", 0.0, 12.0, 0.1, 0.5),
    number(298, THOLE_VALUE(Charge, charge, standing_W),
        "Drawn from the bank at rest",
        "Receiver, alarm, display left on.", 0.0, 200.0, 0.1, 0.5),
    number(299, THOLE_VALUE(Charge, charge, fan_m3_per_h),
        "Fan in the locker's duct",
        "0 for none.", 0.0, 500.0, 1.0, 5.0),
    toggle(300, THOLE_VALUE(Charge, charge, fan_with_charger),
        "The charger cannot run without the fan",
        "An interlock."),
    toggle(301, THOLE_VALUE(Charge, charge, fan_protected),
        "The fan is ignition protected",
        "And blows; it does not draw gas through its motor."),
    toggle(302, THOLE_VALUE(Charge, charge, charger_stops_itself),
        "The charger stops itself",
        "At over-voltage, or after a set time."),
    toggle(303, THOLE_VALUE(Charge, charge, recombining_caps),
        "Recombining caps",
        "Plugs that turn the gas back into water."),
    toggle(304, THOLE_VALUE(Charge, charge, vents_opposite),
        "Openings on opposite sides",
        "One low, one high."),
    number(305, THOLE_VALUE(Charge, charge, vents_apart_m),
        "Openings apart",
        "When both are on one side.", 0.0, 5.0, 0.01, 0.1),
    // control and sensors
    number(310, THOLE_VALUE(Control, control, latitude_deg),
        "Latitude",
        "North is positive; a whole degree will do.", -90.0, 90.0, 0.01, 1.0),
    number(311, THOLE_VALUE(Control, control, longitude_deg),
        "Longitude",
        "East is positive.", -180.0, 180.0, 0.01, 1.0),
    count(312, THOLE_VALUE(Control, control, year),
        "Year",
        "The earth's field drifts.", 1900, 2035),
    number(313, THOLE_VALUE(Control, control, sensor_x_m),
        "Heading sensor forward of the transom",
        "As fixed to the boat, not to the motor's head.", -1.0, 16.0, 0.01, 0.1),
    number(314, THOLE_VALUE(Control, control, sensor_y_m),
        "Heading sensor to starboard",
        "Off the centreline; port is negative.", -3.0, 3.0, 0.01, 0.05),
    number(315, THOLE_VALUE(Control, control, sensor_z_m),
        "Heading sensor above the water",
        "At rest.", -1.0, 8.0, 0.01, 0.05),
    number(316, THOLE_VALUE(Control, control, feeder_y_m),
        "Feeder to starboard",
        "Along most of its run; port is negative.", -2.5, 2.5, 0.01, 0.05),
    number(317, THOLE_VALUE(Control, control, feeder_z_m),
        "Feeder above the water",
        "At rest.", -1.0, 4.0, 0.01, 0.05),
    choice(318, THOLE_VALUE(Control, control, feeder_lay),
        "The pair lies",
        "A twist cancels its field.", kFeederLayOptions),
    number(319, THOLE_VALUE(Control, control, spacing_mm),
        "Conductors apart",
        "Middle to middle.", 4.0, 1000.0, 0.5, 1.0),
    number(320, THOLE_VALUE(Control, control, pitch_mm),
        "A full turn of the twist",
        "Half the distance to the sensor, or less.", 20.0, 2000.0, 5.0, 10.0),
    number(321, THOLE_VALUE(Control, control, heading_limit_deg),
        "Heading error allowed",
        "At full thrust.", 0.2, 20.0, 0.1, 0.5),
    number(322, THOLE_VALUE(Control, control, tilt_deg),
        "Boat rolls and pitches up to",
        "A sensor that leans feels the upright field as well.", 0.0, 45.0, 1.0, 5.0),
    number(323, THOLE_VALUE(Control, control, sensor_turn_deg),
        "Sensor turned off the keel line",
        "Clockwise, and not told to the set-up: the motor pushes off by it.", -180.0, 180.0, 0.5, 1.0),
    number(324, THOLE_VALUE(Control, control, receiver_clear_deg),
        "Sky clear above",
        "Angle over the horizon that the worst obstacle hides.", 0.0, 90.0, 1.0, 5.0),
    choice(325, THOLE_VALUE(Control, control, link),
        "Data link to the plotter",
        "None, the open marine network (NMEA 2000), or Ethernet.", kDataLinkOptions),
    number(326, THOLE_VALUE(Control, control, backbone_m),
        "Cable, end to end",
        "Backbone between its terminators, or the Ethernet cable.", 0.0, 400.0, 0.1, 1.0),
    number(327, THOLE_VALUE(Control, control, longest_drop_m),
        "Longest drop",
        "From the backbone to a device.", 0.0, 50.0, 0.1, 0.5),
    number(328, THOLE_VALUE(Control, control, drops_m),
        "All drops together",
        "Their lengths summed.", 0.0, 400.0, 0.1, 1.0),
    count(329, THOLE_VALUE(Control, control, node_count),
        "Devices on it",
        "The motor's own included.", 1, 60),
    count(330, THOLE_VALUE(Control, control, load_units_count),
        "Load numbers together",
        "Each device's label says; 1 is 50 mA.", 1, 300),
    count(331, THOLE_VALUE(Control, control, terminator_count),
        "Terminators",
        "Two, one at each end.", 0, 6),
    choice(332, THOLE_VALUE(Control, control, network_feed),
        "The backbone is fed",
        "Where its power tap sits.", kNetworkFeedOptions),
    number(333, THOLE_VALUE(Control, control, network_fuse_A),
        "Fuse of its power tap",
        "0 for none.", 0.0, 30.0, 0.5, 1.0),
    toggle(334, THOLE_VALUE(Control, control, drip_loops),
        "Drip loops before each plug",
        "Water runs off before it reaches the joint."),
    toggle(335, THOLE_VALUE(Control, control, negative_in_data_cable),
        "A data cable ties two negatives",
        "Its screen or its minus joins the motor's bank and the boat's own."),
    choice(336, THOLE_VALUE(Control, control, remote),
        "The remote",
        "What it runs on.", kRemoteOptions),
    number(337, THOLE_VALUE(Control, control, remote_h),
        "The remote runs",
        "On one charge or set of cells.", 1.0, 2000.0, 1.0, 5.0),
    choice(338, THOLE_VALUE(Control, control, main_switch),
        "The motor's bank is switched by",
        "Not counting the breaker.", kMainSwitchOptions),
    number(339, THOLE_VALUE(Control, control, switch_rated_A),
        "That switch carries",
        "Continuous, by its label.", 10.0, 1000.0, 5.0, 10.0),
    number(340, THOLE_VALUE(Control, control, always_on_W),
        "Always on",
        "Bilge pump, alarm, charger's standby: what must not hang on the switch.", 0.0, 200.0, 0.1, 1.0),
    // the plate as it is made, and a flex test
    text(350, THOLE_TEXT(Mount, mount, outline),
        "Outline, measured",
        "Where it is no rectangle: mm forward of the aft edge / half width there, from aft: 0/110 300/90 450/60.", kMostViewBytes),
    number(351, THOLE_VALUE(Mount, mount, corner_mm),
        "Corner radius",
        "", 0.0, 200.0, 0.5, 5.0),
    number(352, THOLE_VALUE(Mount, mount, front_width_mm),
        "Plate width in front",
        "Narrower than behind makes it a trapezoid.", 40.0, 600.0, 1.0, 10.0),
    text(353, THOLE_TEXT(Mount, mount, bolt_places),
        "Bolts, each in its place",
        "Where they stand on no even grid: mm forward, mm to port, starboard negative: 50,70 50,-70 170,70.", kMostViewBytes),
    text(354, THOLE_TEXT(Mount, mount, cutouts),
        "Cut-outs",
        "Cleats, cables, a hatch's corner: length x width @ mm forward,port; one figure is a round one: 60x40@200,0 50@300,40.", kMostViewBytes),
    count(355, THOLE_VALUE(Mount, mount, stiffener_count),
        "Stiffeners",
        "Flat bars on edge, fore and aft.", 0, 4),
    number(356, THOLE_VALUE(Mount, mount, stiffener_height_mm),
        "Stiffener height",
        "", 5.0, 120.0, 1.0, 5.0),
    number(357, THOLE_VALUE(Mount, mount, stiffener_thickness_mm),
        "Stiffener thickness",
        "", 2.0, 25.0, 0.5, 1.0),
    number(358, THOLE_VALUE(Mount, mount, test_mass_kg),
        "Hung on in the flex test",
        "A known weight, a can of water.", 1.0, 200.0, 0.1, 1.0),
    number(359, THOLE_VALUE(Mount, mount, test_arm_mm),
        "Forward of the front bolts",
        "Where it hangs and the sag is read.", 0.0, 1500.0, 1.0, 10.0),
    number(360, THOLE_VALUE(Mount, mount, test_sag_mm),
        "Sag measured",
        "With the weight less without.", 0.05, 100.0, 0.05, 0.1),
    number(361, THOLE_VALUE(Mount, mount, deck_factor),
        "Deck stiffness, times what is computed",
        "From a flex test.", 0.02, 20.0, 0.01, 0.1),
    toggle(362, THOLE_VALUE(Mount, mount, trailered),
        "Goes on a trailer with the motor on",
        "The road shakes it as well."),
    toggle(363, THOLE_VALUE(Mount, mount, isolated),
        "Stainless kept off the aluminium",
        "Sleeves, washers and compound."),
    number(364, THOLE_VALUE(Mount, mount, finish_mm),
        "Paint or film, each side",
        "Thickness built up; it creeps under a bolt.", 0.0, 2.0, 0.01, 0.05),
    // foredeck
    number(380, THOLE_VALUE(Foredeck, foredeck, length_m),
        "Clear deck aft of the stem",
        "To the first thing that does not move.", 0.3, 6.0, 0.01, 0.05),
    number(381, THOLE_VALUE(Foredeck, foredeck, width_m),
        "Deck width at the mount",
        "", 0.2, 4.0, 0.01, 0.05),
    text(382, THOLE_TEXT(Foredeck, foredeck, items),
        "What stands on it",
        "What@aft,starboard:length x width x height in m, blanks between: roller@0.1,0:0.4x0.12x0.15 cleat@0.8,-0.45:0.2x0.06x0.08. "
        "Also hatch, lid, windlass, pulpit, post, seat, other.", kMostViewBytes),
    number(383, THOLE_VALUE(Foredeck, foredeck, mount_x_m),
        "Mount aft of the stem",
        "Its pivot; forward of the stem is negative.", -1.0, 4.0, 0.01, 0.05),
    number(384, THOLE_VALUE(Foredeck, foredeck, mount_y_m),
        "Mount to starboard",
        "Off the centreline; port is negative.", -1.5, 1.5, 0.01, 0.05),
    number(385, THOLE_VALUE(Foredeck, foredeck, stow_angle_deg),
        "Stowed shaft off straight aft",
        "To starboard; port is negative.", -90.0, 90.0, 1.0, 5.0),
    number(386, THOLE_VALUE(Foredeck, foredeck, light_x_m),
        "Bow light aft of the stem",
        "", -0.5, 4.0, 0.01, 0.05),
    number(387, THOLE_VALUE(Foredeck, foredeck, light_y_m),
        "Bow light to starboard",
        "Of separate sidelights, the one nearer the mount.", -2.0, 2.0, 0.01, 0.05),
    number(388, THOLE_VALUE(Foredeck, foredeck, light_z_m),
        "Bow light above the deck",
        "Its lens.", 0.0, 2.0, 0.01, 0.05),
    number(389, THOLE_VALUE(Foredeck, foredeck, rail_height_m),
        "Rail or pulpit above the deck",
        "0 for none.", 0.0, 1.5, 0.01, 0.05),
    number(390, THOLE_VALUE(Foredeck, foredeck, rail_inset_m),
        "Rail inboard of the edge",
        "", 0.0, 0.6, 0.01, 0.01),
    number(391, THOLE_VALUE(Foredeck, foredeck, reach_m),
        "From where you kneel to the motor",
        "Straight, at the deck.", 0.0, 4.0, 0.01, 0.05),
    toggle(392, THOLE_VALUE(Foredeck, foredeck, tied),
        "Tied down as well at speed",
        "A strap over the stowed motor, besides its latch."),
    // tests at the dock, and what the boat may carry
    number(400, THOLE_VALUE(Trim, trim, roll_period_s),
        "Roll period",
        "Side to side and back; time ten, take a tenth.", 0.4, 15.0, 0.01, 0.1),
    number(401, THOLE_VALUE(Trim, trim, incline_mass_kg),
        "Inclining: weight moved",
        "A known weight, moved straight across.", 2.0, 800.0, 0.5, 5.0),
    number(402, THOLE_VALUE(Trim, trim, incline_shift_m),
        "Moved by",
        "Athwart.", 0.1, 5.0, 0.01, 0.1),
    number(403, THOLE_VALUE(Trim, trim, pendulum_m),
        "Pendulum length",
        "Plumb line, from its nail to the ruler.", 0.2, 4.0, 0.005, 0.1),
    number(404, THOLE_VALUE(Trim, trim, pendulum_shift_mm),
        "Plumb line went across by",
        "", 1.0, 800.0, 0.5, 1.0),
    number(405, THOLE_VALUE(Trim, trim, immersion_mass_kg),
        "Known weight put amidships",
        "People count.", 5.0, 2000.0, 1.0, 10.0),
    number(406, THOLE_VALUE(Trim, trim, immersion_mm),
        "She sank by",
        "Mean of bow and stern.", 1.0, 400.0, 0.5, 1.0),
    count(407, THOLE_VALUE(Trim, trim, capacity_persons_count),
        "Persons on the capacity plate",
        "", 1, 40),
    number(408, THOLE_VALUE(Trim, trim, capacity_mass_kg),
        "Weight on the capacity plate",
        "Persons, motor and gear, as it says.", 50.0, 8000.0, 1.0, 10.0),
    number(409, THOLE_VALUE(Trim, trim, bank_z_m),
        "Bank above the water",
        "Centre of the blocks; below is negative.", -1.5, 3.0, 0.01, 0.05),
    number(410, THOLE_VALUE(Trim, trim, motor_z_m),
        "Stowed motor above the water",
        "Its centre of mass.", 0.0, 5.0, 0.01, 0.05),
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

void clear(const Field& field, Job& job) {
  if (field.access.set_text != nullptr) {
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
  if (field->access.set_text != nullptr) {
    field->access.set_text(job, change.text);
  } else {
    field->access.set(job, change.value);
  }
  field->access.set_origin(job, Origin::given);
}

}  // namespace thole
