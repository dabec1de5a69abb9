#pragma once

// The document: what is known of one job. Every value may be absent; `complete()` fills what is
// missing and says how. The tables in job/fields.h describe each field once for every reader.

#include <string>

#include "data/control_kinds.h"
#include "data/finishes.h"
#include "data/laminates.h"
#include "data/parts.h"
#include "data/sea.h"

namespace thole {

// Where a value came from. `chosen`: picked by Thole from what the catalogue sells.
enum class Origin { absent, given, preset, estimated, chosen };

template <class T>
struct Given {
  T value{};
  Origin origin = Origin::absent;

  bool known() const { return origin != Origin::absent; }
  bool given() const { return origin == Origin::given; }
  bool operator==(const Given&) const = default;
};

enum class Layout {
  open_skiff,
  bay_console,
  centre_console,
  t_top,
  enclosed_t_top,
  dual_console,
  walkaround,
  pilothouse,
  express,
  flybridge,
  pontoon
};
enum class Leg { tilted, down, down_free };
enum class Canvas { usual, folded, up };
enum class Exposure { sheltered, bay, open };
enum class Firmness { firm, loose };
enum class Salinity { salt, fresh };
enum class WindHeight { ten_metres, at_boat };
enum class Head { hexagon, countersunk };
enum class MotorLaw { power, current, resistance };  // what the motor keeps as its volts fall
enum class LockerAccess { lid, door };               // an opening above, or in a wall

struct Boat {
  Given<std::string> type{};  // id of a boat type in the catalogue
  Given<double> length_m{};
  Given<double> displacement_kg{};
  Given<double> bow_height_m{};
  Given<Layout> layout{};
  Given<double> beam_m{};
  Given<double> waterline_length_m{};
  Given<double> waterline_beam_m{};
  Given<double> draft_m{};
  Given<double> deadrise_deg{};
  Given<double> cruise_speed_mps{};
  Given<int> crew_count{};
  Given<int> outboard_count{};
  Given<Leg> leg{};
  Given<double> leg_propeller_m{};
  Given<double> frontal_area_m2{};
  Given<double> lateral_area_m2{};
  Given<double> lateral_centroid_m{};  // forward of midships
  Given<double> underwater_area_m2{};
  Given<double> underwater_centroid_m{};  // forward of midships
  Given<double> bow_angle_deg{};
  Given<bool> petrol{};
  Given<DeckKind> deck{};
  Given<std::string> side_view{};   // windage drawn or listed, see data/windage.h
  Given<std::string> front_view{};
  Given<Canvas> canvas{};
  Given<int> standing_forward_count{};
  bool operator==(const Boat&) const = default;
};

struct Water {
  Given<std::string> place{};  // id of a water in the catalogue
  Given<Exposure> exposure{};
  Given<double> wind_mps{};
  Given<WindHeight> wind_height{};
  Given<double> fetch_m{};
  Given<double> depth_m{};
  Given<double> current_mps{};
  Given<double> current_angle_deg{};  // between where wind and current come from
  Given<double> wave_height_m{};
  Given<double> wave_period_s{};
  Given<Salinity> salinity{};
  Given<double> air_C{};
  bool operator==(const Water&) const = default;
};

struct Hold {
  Given<Firmness> firmness{};
  Given<std::string> motor{};  // id in the catalogue
  Given<double> thrust_N{};
  Given<double> nominal_V{};
  Given<double> minimum_V{};
  Given<double> maximum_V{};
  Given<double> power_full_W{};
  Given<double> power_idle_W{};
  Given<double> propeller_diameter_m{};
  Given<double> motor_mass_kg{};
  Given<double> holding_h{};
  Given<double> transit_h{};
  Given<double> transit_thrust_frac{};
  Given<double> windage_factor{};  // times what is computed; from a trial at sea
  Given<double> drag_factor{};     // the same for the current
  Given<double> tolerance_m{};     // how near is near enough
  Given<double> tolerance_frac{};  // for how much of the time
  Given<GustLaw> gusts{};

  Given<std::string> day{};        // in stretches; see data/day_plan.h

  // A trial at sea, as read; see calc/studies.h. Angles are clockwise.
  Given<double> drift_min{};        // adrift, motor up
  Given<double> drift_mps{};        // over the ground
  Given<double> drift_angle_deg{};  // where to, off straight downwind
  Given<double> held_thrust_frac{};
  Given<double> trial_wind_mps{};
  Given<double> trial_wind_height_m{};  // where it was read
  Given<double> trial_current_mps{};
  Given<double> trial_current_angle_deg{};  // where it comes from, off where the wind does
  Given<double> trial_wave_m{};             // significant height
  bool operator==(const Hold&) const = default;
};

struct Shaft {
  Given<double> length_m{};
  Given<double> thruster_forward_m{};
  Given<double> collar_m{};
  Given<double> trim_allowance_m{};
  Given<double> immersion_ratio{};  // propeller axis depth over propeller diameter, still water
  Given<double> tube_outer_mm{};
  Given<double> tube_wall_mm{};
  Given<double> tube_yield_MPa{};
  Given<double> tube_modulus_GPa{};
  bool operator==(const Shaft&) const = default;
};

struct Bank {
  Given<std::string> block{};  // id in the catalogue
  Given<Chemistry> chemistry{};
  Given<double> block_V{};
  Given<double> capacity_Ah{};
  Given<double> rated_hours_h{};
  Given<double> peukert_exponent{};
  Given<double> resistance_ohm{};
  Given<double> block_mass_kg{};
  Given<double> continuous_A{};
  Given<int> series_count{};
  Given<int> parallel_count{};
  Given<double> depth_of_discharge_frac{};
  Given<double> age_factor{};
  Given<double> margin_factor{};
  Given<double> temperature_C{};
  Given<std::string> fitted{};  // the blocks one by one, where they differ
  Given<int> days_out_count{};  // in a year
  bool operator==(const Bank&) const = default;
};

struct Feeder {
  Given<double> run_m{};           // one way, bank to the stud at the bow
  Given<double> tail_m{};          // one way, stud to plug
  Given<double> jumper_m{};        // each, between blocks
  Given<std::string> conductor{};  // id of a cable in the catalogue
  Given<std::string> tail_conductor{};
  Given<std::string> device{};  // id in the catalogue
  Given<double> allowed_drop_frac{};
  Given<double> ambient_C{};
  Given<bool> engine_space{};
  Given<int> bundled_count{};
  Given<double> device_distance_m{};
  Given<bool> sheathed{};
  Given<bool> floating{};
  Given<double> lug_ohm{};
  Given<double> plug_ohm{};
  Given<std::string> network{};  // the circuit piece by piece, where it is not the usual one
  Given<MotorLaw> motor_law{};
  bool operator==(const Feeder&) const = default;
};

struct Charge {
  Given<std::string> charger{};  // id in the catalogue
  Given<double> output_A{};
  Given<double> efficiency_frac{};
  Given<double> power_factor{};
  Given<double> shore_V{};
  Given<double> shore_limit_A{};
  Given<double> available_h{};
  Given<double> locker_volume_m3{};
  Given<double> vent_area_cm2{};  // each of the low and the high opening
  Given<double> outlet_A{};       // the shore outlet's breaker
  Given<double> other_loads_A{};  // on the same outlet
  Given<double> converter_A{};    // from the engine's side, into the bank
  Given<double> alternator_A{};
  Given<double> engine_loads_A{};
  Given<double> engine_h{};  // running, in a day out
  Given<double> panel_W{};
  Given<double> full_sun_h{};
  Given<double> standing_W{};  // drawn from the bank at rest
  Given<double> fan_m3_per_h{};
  Given<bool> fan_with_charger{};
  Given<bool> fan_protected{};
  Given<bool> charger_stops_itself{};
  Given<bool> recombining_caps{};
  Given<bool> vents_opposite{};
  Given<double> vents_apart_m{};
  bool operator==(const Charge&) const = default;
};

struct Mount {
  Given<double> plate_length_mm{};
  Given<double> plate_width_mm{};
  Given<std::string> plate{};   // id of a plate stock in the catalogue
  Given<double> overhang_mm{};  // front bolt row to the stowed motor's centre of mass
  Given<int> bolt_rows{};
  Given<double> bolt_pitch_mm{};  // fore and aft
  Given<double> bolt_gauge_mm{};  // athwart
  Given<std::string> bolt{};      // id in the catalogue
  Given<Head> head{};
  Given<double> deck_thickness_mm{};  // outer skin, or the whole of a single skin
  Given<double> core_thickness_mm{};
  Given<double> backing_side_mm{};  // square backing under each bolt
  Given<double> backing_thickness_mm{};
  Given<bool> chocked{};
  Given<double> run_wave_m{};  // significant height of the sea it is run in, stowed
  Given<std::string> outline{};  // measured, where it is no rectangle
  Given<double> corner_mm{};     // radius
  Given<double> front_width_mm{};
  Given<std::string> bolt_places{};  // where they stand, when not on a grid
  Given<std::string> cutouts{};
  Given<int> stiffener_count{};
  Given<double> stiffener_height_mm{};
  Given<double> stiffener_thickness_mm{};
  Given<double> test_mass_kg{};  // a flex test: hung on
  Given<double> test_arm_mm{};   // forward of the front bolts
  Given<double> test_sag_mm{};   // measured there
  Given<double> deck_factor{};   // stiffness of the deck over what is computed
  Given<bool> trailered{};
  Given<bool> isolated{};     // stainless kept off aluminium
  Given<double> finish_mm{};  // paint or film, each side
  Given<Finish> finish{};
  Given<bool> core_plugged{};     // cleared and filled round each bolt
  Given<double> deck_span_mm{};   // free between what carries it, fore and aft
  Given<double> deck_breadth_mm{};  // the same athwart
  Given<double> test_deck_mm{};   // in the flex test: the deck's own sag amid the bolts
  Given<double> panel_factor{};   // stiffness of the deck's panel over what is computed
  bool operator==(const Mount&) const = default;
};

struct Trim {
  Given<double> bank_x_m{};  // forward of the transom
  Given<double> bank_y_m{};  // to starboard of the centreline
  Given<double> motor_x_m{};
  Given<double> motor_y_m{};
  Given<double> waterplane_ratio{};
  Given<double> gm_m{};
  Given<double> initial_trim_deg{};  // bow down positive, before the work
  Given<double> bank_z_m{};  // above the water, centre of the blocks
  Given<double> motor_z_m{};
  Given<double> roll_period_s{};  // tests at the dock, as read
  Given<double> incline_mass_kg{};
  Given<double> incline_shift_m{};
  Given<double> pendulum_m{};
  Given<double> pendulum_shift_mm{};
  Given<double> immersion_mass_kg{};
  Given<double> immersion_mm{};
  Given<int> capacity_persons_count{};
  Given<double> capacity_mass_kg{};
  bool operator==(const Trim&) const = default;
};

// Where the bank stands, and what stands near it. Inner, clear measures.
struct Locker {
  Given<double> length_m{};
  Given<double> width_m{};
  Given<double> height_m{};
  Given<LockerAccess> access{};
  Given<double> opening_length_m{};
  Given<double> opening_width_m{};
  Given<bool> side_allowed{};   // blocks may lie on their sides
  Given<bool> tiers_allowed{};  // one above the other
  Given<bool> tank_over_or_under{};
  Given<double> metal_fuel_part_m{};  // above the blocks' tops
  Given<bool> metal_fuel_part_shielded{};
  Given<double> spark_from_petrol_m{};
  Given<bool> spark_parts_protected{};
  Given<double> spark_from_vent_m{};
  Given<double> above_bilge_m{};
  Given<double> coldest_C{};
  Given<double> hottest_C{};
  Given<double> strap_rated_N{};
  Given<int> strap_count{};  // over a block
  bool operator==(const Locker&) const = default;
};

// What tells the motor where to stay: sensors, links, switches. Places: forward of the transom, to
// starboard, above the water.
struct Control {
  Given<double> latitude_deg{};
  Given<double> longitude_deg{};
  Given<int> year{};
  Given<double> sensor_x_m{};
  Given<double> sensor_y_m{};
  Given<double> sensor_z_m{};
  Given<double> feeder_y_m{};
  Given<double> feeder_z_m{};
  Given<FeederLay> feeder_lay{};
  Given<double> spacing_mm{};
  Given<double> pitch_mm{};  // of a twist
  Given<double> heading_limit_deg{};
  Given<double> tilt_deg{};
  Given<double> sensor_turn_deg{};      // off the keel line
  Given<double> receiver_x_m{};  // of the position receiver, or its aerial
  Given<double> receiver_y_m{};
  Given<double> receiver_z_m{};
  Given<double> receiver_clear_deg{};   // sky is clear above this elevation
  Given<DataLink> link{};
  Given<Backbone> backbone_cable{};
  Given<double> backbone_m{};
  Given<double> longest_drop_m{};
  Given<double> drops_m{};
  Given<int> node_count{};
  Given<int> load_units_count{};
  Given<int> terminator_count{};
  Given<NetworkFeed> network_feed{};
  Given<double> network_fuse_A{};
  Given<bool> drip_loops{};
  Given<bool> negative_in_data_cable{};
  Given<RemotePower> remote{};
  Given<double> remote_h{};  // on one charge or set of cells
  Given<MainSwitch> main_switch{};
  Given<double> switch_rated_A{};
  Given<double> always_on_W{};  // not behind the switch
  bool operator==(const Control&) const = default;
};

// The deck round the mount. Places: aft of the stem, to starboard, above the deck.
struct Foredeck {
  Given<double> length_m{};
  Given<double> width_m{};
  Given<std::string> items{};  // what stands on it
  Given<double> mount_x_m{};
  Given<double> mount_y_m{};
  Given<double> stow_angle_deg{};  // of the stowed shaft, off straight aft
  Given<double> light_x_m{};
  Given<double> light_y_m{};
  Given<double> light_z_m{};
  Given<double> rail_height_m{};
  Given<double> rail_inset_m{};
  Given<double> reach_m{};
  Given<bool> tied{};  // a second strap at speed
  bool operator==(const Foredeck&) const = default;
};

struct Job {
  Given<std::string> title{};
  Boat boat{};
  Water water{};
  Hold hold{};
  Shaft shaft{};
  Bank bank{};
  Feeder feeder{};
  Charge charge{};
  Mount mount{};
  Trim trim{};
  Locker locker{};
  Control control{};
  Foredeck foredeck{};
  bool operator==(const Job&) const = default;
};

}  // namespace thole
