// Made by tools/make_types.mjs from docs/formats: not written by hand.
// Units are the endings of the names: length_m is in metres, thrust_N in newtons, drop_frac a share of one.

/** Job: what is known of one boat, its water and its bow motor. Every value may be left out; Thole then estimates or chooses it. */
export interface Job {
  "$schema"?: string;
  schema?: 1;
  /** Boat. */
  boat?: {
    /** Boat type. Fills the rest of the page until you measure. */
    type?: string;
    /** Length overall. Stem to transom, without pulpit or platform. 4 to 15. */
    length_m?: number;
    /** Loaded weight. Boat, engine, fuel, gear and people as usually out. 250 to 15000. */
    displacement_kg?: number;
    /** Bow height. Deck at the mount above calm water, loaded. 0.2 to 3. */
    bow_height_m?: number;
    /** Deck layout. What stands in the wind. */
    layout?: "open_skiff" | "bay_console" | "centre_console" | "t_top" | "enclosed_t_top" | "dual_console" | "walkaround" | "pilothouse" | "express" | "flybridge" | "pontoon";
    /** Beam. Widest, overall. 1.2 to 5. */
    beam_m?: number;
    /** Waterline length. At rest, loaded. 3 to 14.5. */
    waterline_length_m?: number;
    /** Waterline beam. At rest, loaded. 1 to 4.8. */
    waterline_beam_m?: number;
    /** Hull draft. Without engine and propeller. 0.1 to 1.5. */
    draft_m?: number;
    /** Deadrise. At four tenths of the waterline from aft; 0 is flat. 0 to 30. */
    deadrise_deg?: number;
    /** Fastest run with the motor stowed. As you really drive it to the spot. 0 to 26. */
    cruise_speed_mps?: number;
    /** People aboard. As usually out. 1 to 12. */
    crew_count?: number;
    /** Outboards or drives. Legs in the water at the stern. 0 to 4. */
    outboard_count?: number;
    /** Legs while holding. Tilted clear, left down in gear, or down with propellers that turn freely. */
    leg?: "tilted" | "down" | "down_free";
    /** Main propeller diameter. Of each leg. 0.15 to 0.6. */
    leg_propeller_m?: number;
    /** Windage from ahead. All that shows above water, from ahead. 0.5 to 30. */
    frontal_area_m2?: number;
    /** Windage from the side. All that shows above water, from the side. 1 to 60. */
    lateral_area_m2?: number;
    /** Centre of the side windage. Forward of midships; aft is negative. -4 to 4. */
    lateral_centroid_m?: number;
    /** Side area under water. Hull, skeg and legs that are down. 0.4 to 20. */
    underwater_area_m2?: number;
    /** Centre of the side area under water. Forward of midships; aft is negative. -4 to 4. */
    underwater_centroid_m?: number;
    /** Half angle of the waterline at the bow. From stem to a quarter of the beam. 8 to 60. */
    bow_angle_deg?: number;
    /** Petrol engine or tank below deck. Decides where sparks may be. */
    petrol?: boolean;
    /** Foredeck make-up. What the bolts go through. */
    deck?: "single_skin" | "cored_balsa" | "cored_foam" | "aluminium";
    /** Side above water, drawn. Outline as points forward of the transom and up, in metres: 0,0 0,0.8 6.5,1.3 6.2,0. Or parts, length x height * fill @ centre: 6.5x0.8@3.2 1.8x1.1*0.25@2.6. */
    side_view?: string;
    /** Front above water, drawn. Outline as points across and up, in metres, or parts: 2.4x1.1 1.2x0.9*0.25. */
    front_view?: string;
    /** Canvas and curtains. Bimini, curtains or enclosure while holding, where the layout has them. */
    canvas?: "usual" | "folded" | "up";
    /** People standing at the bow. While it holds; they show to the wind far forward. 0 to 6. */
    standing_forward_count?: number;
  };
  /** Water. */
  water?: {
    /** Water. Fills this page until you know better. */
    place?: string;
    /** Where you hold. Land close to windward makes gusts; open water makes waves. */
    exposure?: "sheltered" | "bay" | "open";
    /** Wind to hold in. Ten-minute mean at 10 m height, as forecast. 0 to 35. */
    wind_mps?: number;
    /** Which wind acts on the boat. At 10 m: on the safe side. At the boat's height: likelier. */
    wind_height?: "ten_metres" | "at_boat";
    /** Open water upwind. Distance over which the wind raises waves. 50 to 200000. */
    fetch_m?: number;
    /** Depth. Where you hold. 0.5 to 200. */
    depth_m?: number;
    /** Current. Tide or river, at the surface. 0 to 4. */
    current_mps?: number;
    /** Angle between wind and current. 0: both from the same side. 180: wind against current. 0 to 180. */
    current_angle_deg?: number;
    /** Significant wave height. Leave out to estimate it from wind, fetch and depth. 0 to 4. */
    wave_height_m?: number;
    /** Wave period. Peak period of the waves. 0.5 to 15. */
    wave_period_s?: number;
    /** Water. Salt or fresh. */
    salinity?: "salt" | "fresh";
    /** Air temperature. Cold air pushes harder. -20 to 45. */
    air_C?: number;
  };
  /** Hold. */
  hold?: {
    /** How firmly. Firm keeps the spot in gusts; loose lets it swing back. */
    firmness?: "firm" | "loose";
    /** Motor class. Leave out and the smallest that holds is chosen. */
    motor?: string;
    /** Static thrust. As claimed by its maker, at the post. 50 to 2500. */
    thrust_N?: number;
    /** Motor voltage. Of the bank that it is made for. 12 to 60. */
    nominal_V?: number;
    /** Lowest voltage at the motor. At full thrust, by its maker. 8 to 60. */
    minimum_V?: number;
    /** Highest voltage at the motor. On charge, by its maker. 12 to 80. */
    maximum_V?: number;
    /** Electrical power at full thrust. At the plug. 100 to 12000. */
    power_full_W?: number;
    /** Electrical power at rest. Receiver, heading sensor and steering. 0 to 300. */
    power_idle_W?: number;
    /** Propeller diameter. Of the bow motor. 0.12 to 0.6. */
    propeller_diameter_m?: number;
    /** Weight of motor and shaft. Without the plate. 5 to 120. */
    motor_mass_kg?: number;
    /** Hours holding in a day. In the wind given above. 0 to 24. */
    holding_h?: number;
    /** Hours creeping between spots. On the bow motor alone. 0 to 24. */
    transit_h?: number;
    /** Thrust while creeping. Share of full thrust. 0 to 1. */
    transit_thrust_frac?: number;
    /** Wind load after a trial at sea. Times what is computed; 1 without a trial. 0.25 to 4. */
    windage_factor?: number;
    /** Current load after a trial at sea. Times what is computed; 1 without a trial. 0.25 to 4. */
    drag_factor?: number;
    /** Near enough. How far from the spot the bow may be. 0.5 to 100. */
    tolerance_m?: number;
    /** For how much of the time. Share of the time within that distance. 0.5 to 0.99. */
    tolerance_frac?: number;
    /** Gusts by. Whose law says how the wind varies; NPD is the offshore standard's. */
    gusts?: "npd" | "davenport" | "harris" | "ochi_shin";
    /** Minutes adrift. Motor up, engine out of gear; five or more tell most. 1 to 120. */
    drift_min?: number;
    /** Drift over the ground. Mean speed by the receiver: distance over time. 0 to 5. */
    drift_mps?: number;
    /** Drift off downwind. Where the boat goes, clockwise from straight downwind. -180 to 180. */
    drift_angle_deg?: number;
    /** Thrust shown while holding. Mean over the same minutes, as a share of full thrust. 0.01 to 1. */
    held_thrust_frac?: number;
    /** Wind in the trial. Mean over the same minutes. 2 to 35. */
    trial_wind_mps?: number;
    /** Height of that reading. Above the water; 10 m for a forecast or a weather station. 0.5 to 30. */
    trial_wind_height_m?: number;
    /** Current in the trial. Slack water makes the best trial. 0 to 4. */
    trial_current_mps?: number;
    /** Current off the wind in the trial. Where it comes from, clockwise from where the wind does. -180 to 180. */
    trial_current_angle_deg?: number;
    /** Waves in the trial. Significant height; leave out and the fetch tells. 0 to 3. */
    trial_wave_m?: number;
    /** The day in stretches. Hours at a wind, or at a share of thrust between spots: 2h@8kn 1h@12kn 0.5h@50%. */
    day?: string;
  };
  /** Shaft. */
  shaft?: {
    /** Shaft length. Collar top to propeller axis; leave out to choose from stock. 0.5 to 4. */
    length_m?: number;
    /** Shaft forward of midships. Where it enters the water. 0 to 8. */
    thruster_forward_m?: number;
    /** Collar above the deck. Top of the collar above the deck at the mount. 0 to 0.6. */
    collar_m?: number;
    /** Bow rise between loaded and light. As fuel and people come and go. 0 to 0.4. */
    trim_allowance_m?: number;
    /** Depth of the propeller in calm water. Axis depth over propeller diameter. 0.5 to 4. */
    immersion_ratio?: number;
    /** Shaft tube, outside. Diameter. 15 to 80. */
    tube_outer_mm?: number;
    /** Shaft tube, wall. Thickness. 1 to 15. */
    tube_wall_mm?: number;
    /** Shaft tube, strength. Yield of a metal, flexural strength of a composite. 80 to 1500. */
    tube_yield_MPa?: number;
    /** Shaft tube, stiffness. Modulus of elasticity. 5 to 250. */
    tube_modulus_GPa?: number;
  };
  /** Bank. */
  bank?: {
    /** Battery block. Leave out and one that lasts is chosen. */
    block?: string;
    /** Chemistry. Narrows the choice of blocks. */
    chemistry?: "flooded" | "agm" | "gel" | "lifepo4";
    /** Nominal volts of a block. As labelled. 6 to 60. */
    block_V?: number;
    /** Capacity of a block. At its rated hours, 25 °C. 5 to 600. */
    capacity_Ah?: number;
    /** Rated hours. The time the label's capacity is given for, mostly 20. 1 to 100. */
    rated_hours_h?: number;
    /** Peukert exponent. How much capacity shrinks at high current. 1 to 1.6. */
    peukert_exponent?: number;
    /** Internal resistance of a block. Charged, 25 °C. 0.0002 to 0.1. */
    resistance_ohm?: number;
    /** Weight of a block. As labelled or weighed. 1 to 120. */
    block_mass_kg?: number;
    /** Discharge limit of a block. Of its electronics; 0 when it has none. 0 to 1000. */
    continuous_A?: number;
    /** Blocks in series. They add their volts. 1 to 8. */
    series_count?: number;
    /** Strings in parallel. They add their hours. 1 to 6. */
    parallel_count?: number;
    /** Depth of discharge. How much of the bank a day may use. 0.1 to 1. */
    depth_of_discharge_frac?: number;
    /** Ageing allowance. 1.25 sizes for a bank at the end of its life. 1 to 2. */
    age_factor?: number;
    /** Design margin. For growth and less than ideal days. 1 to 2. */
    margin_factor?: number;
    /** Temperature of the bank. On the coldest day it must serve. -20 to 45. */
    temperature_C?: number;
    /** Blocks one by one. In the order of wiring: 100Ah 2y, 100Ah 2y, 80Ah 5y. Where known: agm, 12V, 5mohm, 90%; / between strings. */
    fitted?: string;
    /** Days out in a year. Says whether cycles or time end the bank. 1 to 365. */
    days_out_count?: number;
  };
  /** Feeder. */
  feeder?: {
    /** Cable run. One way along the cable, bank to the stud at the bow. 0.2 to 30. */
    run_m?: number;
    /** Tail. One way, from the stud to the motor's plug; 0 for none. 0 to 5. */
    tail_m?: number;
    /** Jumper between blocks. Each. 0.05 to 5. */
    jumper_m?: number;
    /** Cable. Leave out and the lightest that serves is chosen. */
    conductor?: string;
    /** Tail cable. What the plug takes. */
    tail_conductor?: string;
    /** Protective device. Breaker or fuse near the bank. */
    device?: string;
    /** Allowed drop. Share of nominal voltage lost in the feeder at full thrust. 0.005 to 0.2. */
    allowed_drop_frac?: number;
    /** Warmest air round the cable. Sun-heated lockers reach 45 °C. 0 to 70. */
    ambient_C?: number;
    /** Runs through an engine space. Counts as 50 °C. */
    engine_space?: boolean;
    /** Loaded conductors bundled together. The motor's own pair is 2. 2 to 30. */
    bundled_count?: number;
    /** Battery post to device. Along the conductor. 0 to 5. */
    device_distance_m?: number;
    /** Sheathed up to the device. In conduit or a second sleeve. */
    sheathed?: boolean;
    /** Negative not tied to the boat. The usual case for a separate series bank. */
    floating?: boolean;
    /** Resistance of a lug and stud. Each, new and clean. 0.00001 to 0.01. */
    lug_ohm?: number;
    /** Resistance of a plug contact. Each pole. 0.0001 to 0.05. */
    plug_ohm?: number;
    /** The circuit, piece by piece. Only where it is not the usual one: lug device 5m:4AWG [bow] plug motor plug [back] 5m:4AWG lug; [bow] load:30W [back]. */
    network?: string;
    /** The motor keeps, as volts fall. A controller keeps its power; a plain motor is nearly a resistance. */
    motor_law?: "power" | "current" | "resistance";
  };
  /** Charging. */
  charge?: {
    /** Charger. Leave out and one that refills in time is chosen. */
    charger?: string;
    /** Charging current of a block. Each output. 1 to 100. */
    output_A?: number;
    /** Charger efficiency. Direct current out over mains power in. 0.5 to 1. */
    efficiency_frac?: number;
    /** Charger power factor. 0.65 without correction. 0.4 to 1. */
    power_factor?: number;
    /** Shore supply. Volts. 100 to 250. */
    shore_V?: number;
    /** Shore current available. Continuous, for this charger. 1 to 63. */
    shore_limit_A?: number;
    /** Hours on shore power. Between two days out. 1 to 72. */
    available_h?: number;
    /** Free volume of the battery locker. With the blocks in. 0.02 to 5. */
    locker_volume_m3?: number;
    /** Vent opening, each. One low, one high. 0 to 2000. */
    vent_area_cm2?: number;
    /** Breaker of the shore outlet. By its label. 6 to 63. */
    outlet_A?: number;
    /** Other loads on that outlet. All night. 0 to 63. */
    other_loads_A?: number;
    /** Converter from the engine's side. Amperes into the bank; 0 for none. 0 to 200. */
    converter_A?: number;
    /** Alternator. Amperes by its label. 5 to 500. */
    alternator_A?: number;
    /** Engine and instruments draw. While it runs. 0 to 200. */
    engine_loads_A?: number;
    /** Hours under engine. In a day out. 0 to 24. */
    engine_h?: number;
    /** Solar panel. Watts by its label; 0 for none. 0 to 2000. */
    panel_W?: number;
    /** Hours of full sun in a day. Its energy over 1000 W/m². 0 to 12. */
    full_sun_h?: number;
    /** Drawn from the bank at rest. Receiver, alarm, display left on. 0 to 200. */
    standing_W?: number;
    /** Fan in the locker's duct. 0 for none. 0 to 500. */
    fan_m3_per_h?: number;
    /** The charger cannot run without the fan. An interlock. */
    fan_with_charger?: boolean;
    /** The fan is ignition protected. And blows; it does not draw gas through its motor. */
    fan_protected?: boolean;
    /** The charger stops itself. At over-voltage, or after a set time. */
    charger_stops_itself?: boolean;
    /** Recombining caps. Plugs that turn the gas back into water. */
    recombining_caps?: boolean;
    /** Openings on opposite sides. One low, one high. */
    vents_opposite?: boolean;
    /** Openings apart. When both are on one side. 0 to 5. */
    vents_apart_m?: number;
  };
  /** Mount. */
  mount?: {
    /** Plate length. Fore and aft. 150 to 1200. */
    plate_length_mm?: number;
    /** Plate width. Athwart. 80 to 600. */
    plate_width_mm?: number;
    /** Plate stock. Leave out and the thinnest that serves is chosen. */
    plate?: string;
    /** Overhang of the stowed motor. Front bolt row to its centre of mass. 0 to 1000. */
    overhang_mm?: number;
    /** Bolt rows. Each of two bolts. 2 to 6. */
    bolt_rows?: number;
    /** Bolt pitch. Fore and aft, row to row. 30 to 400. */
    bolt_pitch_mm?: number;
    /** Bolt gauge. Athwart, across a row. 40 to 500. */
    bolt_gauge_mm?: number;
    /** Bolt. Leave out and the smallest that serves is chosen. */
    bolt?: string;
    /** Bolt heads. Countersunk heads need a thicker plate. */
    head?: "hexagon" | "countersunk";
    /** Deck skin. Outer skin of a cored deck, or the whole of a single skin. 1 to 40. */
    deck_thickness_mm?: number;
    /** Core. 0 for a single skin. 0 to 60. */
    core_thickness_mm?: number;
    /** Backing plate. Side of the square under each bolt. 15 to 300. */
    backing_side_mm?: number;
    /** Backing plate thickness. Two thirds of the bolt in glass, a third in aluminium. 1 to 30. */
    backing_thickness_mm?: number;
    /** Outer chock under the stowed motor. Carries its outer end. */
    chocked?: boolean;
    /** Sea it is run in, stowed. Significant wave height at that speed. 0 to 3. */
    run_wave_m?: number;
    /** Outline, measured. Where it is no rectangle: mm forward of the aft edge / half width there, from aft: 0/110 300/90 450/60. */
    outline?: string;
    /** Corner radius. Of the outline's corners; cut-outs have their own. 0 to 200. */
    corner_mm?: number;
    /** Plate width in front. Narrower than behind makes it a trapezoid. 40 to 600. */
    front_width_mm?: number;
    /** Bolts, each in its place. Where they stand on no even grid: mm forward, mm to port, starboard negative: 50,70 50,-70 170,70. */
    bolt_places?: string;
    /** Cut-outs. Cleats, cables, a hatch's corner: length x width @ mm forward,port; one figure is a round one: 60x40@200,0 50@300,40. */
    cutouts?: string;
    /** Stiffeners. Flat bars on edge, fore and aft. 0 to 4. */
    stiffener_count?: number;
    /** Stiffener height. On edge, above the plate; four plate thicknesses are usual. 5 to 120. */
    stiffener_height_mm?: number;
    /** Stiffener thickness. Of each bar; as the plate is the usual. 2 to 25. */
    stiffener_thickness_mm?: number;
    /** Hung on in the flex test. A known weight, a can of water. 1 to 200. */
    test_mass_kg?: number;
    /** Forward of the front bolts. Where it hangs and the sag is read. 0 to 1500. */
    test_arm_mm?: number;
    /** Sag measured. With the weight less without. 0.05 to 100. */
    test_sag_mm?: number;
    /** Bolts and bedding, times what is computed. From a flex test. 0.02 to 20. */
    deck_factor?: number;
    /** Goes on a trailer with the motor on. The road shakes it as well. */
    trailered?: boolean;
    /** Stainless kept off the aluminium. Sleeves, washers and compound. */
    isolated?: boolean;
    /** Paint or film, each side. Thickness built up; it creeps under a bolt. 0 to 2. */
    finish_mm?: number;
    /** Finish. What protects the plate: drilled and countersunk before it goes on. */
    finish?: "bare" | "anodised" | "powder" | "paint";
    /** Core plugged round the bolts. Cleared round each bolt, filled with thickened epoxy, drilled again. */
    core_plugged?: boolean;
    /** Deck free fore and aft. From one bulkhead or beam to the next: the panel that the mount stands on. 100 to 1500. */
    deck_span_mm?: number;
    /** The deck's own sag. Against a straight edge across it, amid the bolts, with the weight less without. 0 to 50. */
    test_deck_mm?: number;
    /** Deck's panel, times what is computed. From a flex test with the deck's own sag. 0.02 to 20. */
    panel_factor?: number;
    /** Deck free athwart. From hull side, stringer or beam to the other, under the mount. 100 to 1500. */
    deck_breadth_mm?: number;
  };
  /** Trim. */
  trim?: {
    /** Bank forward of the transom. Centre of the blocks. 0 to 14. */
    bank_x_m?: number;
    /** Bank to starboard. Off the centreline; port is negative. -2.5 to 2.5. */
    bank_y_m?: number;
    /** Motor forward of the transom. Centre of mass, stowed. 0 to 15. */
    motor_x_m?: number;
    /** Motor to starboard. Off the centreline; port is negative. -2.5 to 2.5. */
    motor_y_m?: number;
    /** Waterplane coefficient. Waterplane area over length times beam. 0.667 to 1. */
    waterplane_ratio?: number;
    /** Metacentric height. From a roll test when you have one. 0.1 to 4. */
    gm_m?: number;
    /** Trim before the work. Bow down is positive. -4 to 4. */
    initial_trim_deg?: number;
    /** Roll period. Side to side and back; time ten, take a tenth. 0.4 to 15. */
    roll_period_s?: number;
    /** Inclining: weight moved. A known weight, moved straight across. 2 to 800. */
    incline_mass_kg?: number;
    /** Moved by. Athwart. 0.1 to 5. */
    incline_shift_m?: number;
    /** Pendulum length. Plumb line, from its nail to the ruler. 0.2 to 4. */
    pendulum_m?: number;
    /** Plumb line went across by. On the ruler, from before the shift to after. 1 to 800. */
    pendulum_shift_mm?: number;
    /** Known weight put amidships. People count. 5 to 2000. */
    immersion_mass_kg?: number;
    /** She sank by. Mean of bow and stern. 1 to 400. */
    immersion_mm?: number;
    /** Persons on the capacity plate. The number on the builder's plate. 1 to 40. */
    capacity_persons_count?: number;
    /** Weight on the capacity plate. Persons, motor and gear, as it says. 50 to 8000. */
    capacity_mass_kg?: number;
    /** Bank above the water. Centre of the blocks; below is negative. -1.5 to 3. */
    bank_z_m?: number;
    /** Stowed motor above the water. Its centre of mass. 0 to 5. */
    motor_z_m?: number;
  };
  /** Locker. */
  locker?: {
    /** Locker length. Inner and clear, its longest side in plan. 0.1 to 3. */
    length_m?: number;
    /** Locker width. Inner and clear, across its length. 0.1 to 3. */
    width_m?: number;
    /** Locker height. Inner and clear, under lid and stiffeners. 0.1 to 2. */
    height_m?: number;
    /** Opens by. The way that the blocks go in. */
    access?: "lid" | "door";
    /** Opening, length. Along the locker; of a door, its width. 0.1 to 3. */
    opening_length_m?: number;
    /** Opening, width. Across it; of a door, its height. 0.1 to 3. */
    opening_width_m?: number;
    /** Blocks may lie on their sides. Only if their maker says so; never flooded ones. */
    side_allowed?: boolean;
    /** A second tier is allowed. On a shelf of its own; never flooded ones. */
    tiers_allowed?: boolean;
    /** Fuel tank, filter or fitting straight above or below. 33 CFR 183.420 keeps them apart. */
    tank_over_or_under?: boolean;
    /** Lowest metal fuel part above the blocks. From the tops of the blocks. 0 to 3. */
    metal_fuel_part_m?: number;
    /** Shielded from them. By something that does not conduct. */
    metal_fuel_part_shielded?: boolean;
    /** Charger, switch or fan to fuel parts. Through open air. 0 to 10. */
    spark_from_petrol_m?: number;
    /** Those are ignition protected. Or stand behind a bulkhead. */
    spark_parts_protected?: boolean;
    /** Nearest spark to a block's vent. Switch, relay, charger or a glow, in sight. 0 to 10. */
    spark_from_vent_m?: number;
    /** Blocks above the bilge water. Their bottom over the highest it gets. 0 to 2. */
    above_bilge_m?: number;
    /** Coldest in the locker while charging. Lithium must not be charged below freezing. -30 to 40. */
    coldest_C?: number;
    /** Hottest in the locker. In the sun, lid closed. 0 to 80. */
    hottest_C?: number;
    /** A strap is rated. Its working load by the label. 100 to 50000. */
    strap_rated_N?: number;
    /** Straps over a block. Leave out and as many as needed are counted. 1 to 6. */
    strap_count?: number;
  };
  /** Control and sensors. */
  control?: {
    /** Latitude. North is positive; a whole degree will do. -90 to 90. */
    latitude_deg?: number;
    /** Longitude. East is positive. -180 to 180. */
    longitude_deg?: number;
    /** Year. The earth's field drifts. 1900 to 2035. */
    year?: number;
    /** Heading sensor forward of the transom. As fixed to the boat, not to the motor's head. -1 to 16. */
    sensor_x_m?: number;
    /** Heading sensor to starboard. Off the centreline; port is negative. -3 to 3. */
    sensor_y_m?: number;
    /** Heading sensor above the water. At rest. -1 to 8. */
    sensor_z_m?: number;
    /** Feeder to starboard. Along most of its run; port is negative. -2.5 to 2.5. */
    feeder_y_m?: number;
    /** Feeder above the water. At rest. -1 to 4. */
    feeder_z_m?: number;
    /** The pair lies. A twist cancels its field. */
    feeder_lay?: "side_by_side" | "one_above_other" | "twisted";
    /** Conductors apart. Middle to middle. 4 to 1000. */
    spacing_mm?: number;
    /** A full turn of the twist. Half the distance to the sensor, or less. 20 to 2000. */
    pitch_mm?: number;
    /** Heading error allowed. At full thrust. 0.2 to 20. */
    heading_limit_deg?: number;
    /** Boat rolls and pitches up to. A sensor that leans feels the upright field as well. 0 to 45. */
    tilt_deg?: number;
    /** Sensor turned off the keel line. Clockwise, and not told to the set-up: the motor pushes off by it. -180 to 180. */
    sensor_turn_deg?: number;
    /** Sky clear above. Angle over the horizon that the worst obstacle hides. 0 to 90. */
    receiver_clear_deg?: number;
    /** Data link to the plotter. None, the open marine network (NMEA 2000), or Ethernet. */
    link?: "none" | "marine_network" | "ethernet";
    /** Cable, end to end. Backbone between its terminators, or the Ethernet cable. 0 to 400. */
    backbone_m?: number;
    /** Longest drop. From the backbone to a device. 0 to 50. */
    longest_drop_m?: number;
    /** All drops together. Their lengths summed. 0 to 400. */
    drops_m?: number;
    /** Devices on it. The motor's own included. 1 to 60. */
    node_count?: number;
    /** Load numbers together. Each device's label says; 1 is 50 mA. 1 to 300. */
    load_units_count?: number;
    /** Terminators. Two, one at each end. 0 to 6. */
    terminator_count?: number;
    /** The backbone is fed. Where its power tap sits. */
    network_feed?: "end" | "middle";
    /** Fuse of its power tap. 0 for none. 0 to 30. */
    network_fuse_A?: number;
    /** Drip loops before each plug. Water runs off before it reaches the joint. */
    drip_loops?: boolean;
    /** A data cable ties two negatives. Its screen or its minus joins the motor's bank and the boat's own. */
    negative_in_data_cable?: boolean;
    /** The remote. What it runs on. */
    remote?: "cells" | "charged" | "wired";
    /** The remote runs. On one charge or set of cells. 1 to 2000. */
    remote_h?: number;
    /** The motor's bank is switched by. Not counting the breaker. */
    main_switch?: "none" | "house" | "own";
    /** That switch carries. Continuous, by its label. 10 to 1000. */
    switch_rated_A?: number;
    /** Always on. Bilge pump, alarm, charger's standby: what must not hang on the switch. 0 to 200. */
    always_on_W?: number;
    /** Receiver forward of the transom. Of the position receiver, or of its aerial: the place that is held. -1 to 16. */
    receiver_x_m?: number;
    /** Receiver to starboard. Off the centreline; port is negative. -3 to 3. */
    receiver_y_m?: number;
    /** Receiver above the water. At rest. -1 to 8. */
    receiver_z_m?: number;
    /** Backbone cable. Left open: the lightest that serves. */
    backbone_cable?: "light" | "mid" | "heavy";
  };
  /** Foredeck. */
  foredeck?: {
    /** Clear deck aft of the stem. To the first thing that does not move. 0.3 to 6. */
    length_m?: number;
    /** Deck width at the mount. Edge to edge, abreast of the mount. 0.2 to 4. */
    width_m?: number;
    /** What stands on it. What@aft,starboard:length x width x height in m, blanks between: roller@0.1,0:0.4x0.12x0.15 cleat@0.8,-0.45:0.2x0.06x0.08. Also hatch, lid, windlass, pulpit, post, seat, other. */
    items?: string;
    /** Mount aft of the stem. Its pivot; forward of the stem is negative. -1 to 4. */
    mount_x_m?: number;
    /** Mount to starboard. Off the centreline; port is negative. -1.5 to 1.5. */
    mount_y_m?: number;
    /** Stowed shaft off straight aft. To starboard; port is negative. -90 to 90. */
    stow_angle_deg?: number;
    /** Bow light aft of the stem. Its middle, along the deck. -0.5 to 4. */
    light_x_m?: number;
    /** Bow light to starboard. Of separate sidelights, the one nearer the mount. -2 to 2. */
    light_y_m?: number;
    /** Bow light above the deck. Its lens. 0 to 2. */
    light_z_m?: number;
    /** Rail or pulpit above the deck. 0 for none. 0 to 1.5. */
    rail_height_m?: number;
    /** Rail inboard of the edge. From the deck's edge to the rail's foot. 0 to 0.6. */
    rail_inset_m?: number;
    /** From where you kneel to the motor. Straight, at the deck. 0 to 4. */
    reach_m?: number;
    /** Tied down as well at speed. A strap over the stowed motor, besides its latch. */
    tied?: boolean;
  };
  /** Name of this job. For your own list; leave customers' names out of links. */
  title?: string;
}

/** Catalogue: what a shop sells, in its currency without tax. */
export interface Catalogue {
  "$schema"?: string;
  schema: 1;
  shop?: {
    /** Three letters, ISO 4217. */
    currency?: string;
    /** Price of an hour, without tax. 0 to 1000. */
    labour_per_h?: number;
    /** Allowance on cable and plate. 0 to 1. */
    scrap_frac?: number;
  };
  /** Motor classes. */
  motors?: {
    /** Lower case, digits and hyphens; jobs name it. */
    id: string;
    /** As it is shown. */
    label: string;
    /** Static thrust, as claimed. 50 to 2500. */
    thrust_N: number;
    /** Of the bank that it is made for. 12 to 60. */
    nominal_V: number;
    /** At its plug, at full thrust. 8 to 60. */
    minimum_V: number;
    /** Highest charge voltage that it accepts. 12 to 80. */
    maximum_V: number;
    /** Electrical, at full thrust. 100 to 12000. */
    power_full_W: number;
    /** Electrical, at no thrust. 0 to 300. */
    power_idle_W?: number;
    /** 0.12 to 0.6. */
    propeller_diameter_m: number;
    /** With its mount and the shortest shaft. 5 to 120. */
    mass_kg: number;
    /** Shaft tube, outside diameter. 15 to 80. */
    tube_outer_mm: number;
    /** Shaft tube, wall. 1 to 15. */
    tube_wall_mm: number;
    /** Yield of a metal, flexural strength of a composite. 80 to 1500. */
    tube_yield_MPa: number;
    /** Modulus of elasticity. 5 to 250. */
    tube_modulus_GPa: number;
    /** Front bolt row to the centre of mass, stowed. 0 to 1. */
    stowed_overhang_m?: number;
    /** Collar top to propeller axis, ascending. */
    shaft_lengths_m: number[];
    /** Without tax. 0 to 100000. */
    price?: number;
    /** For each length above the shortest. 0 to 100000. */
    price_per_shaft_step?: number;
    /** Working days. 0 to 365. */
    lead_days?: number;
  }[];
  /** Batteries as they stand on the shelf. */
  blocks?: Array<{
    /** Lower case, digits and hyphens; jobs name it. */
    id: string;
    /** As it is shown. */
    label: string;
    chemistry?: "flooded" | "agm" | "gel" | "lifepo4";
    /** 6 to 60. */
    nominal_V?: number;
    /** At the rated hours, 25 °C. 5 to 600. */
    capacity_Ah: number;
    /** 1 to 100. */
    rated_hours_h?: number;
    /** 25 A to 10.5 V; 0 when not on the label. 0 to 1000. */
    reserve_capacity_min?: number;
    /** Charged, 25 °C. 0.0002 to 0.1. */
    resistance_ohm: number;
    /** 1 to 120. */
    mass_kg: number;
    /** 50 to 1000. */
    length_mm: number;
    /** 50 to 1000. */
    width_mm: number;
    /** With its posts. 50 to 1000. */
    height_mm: number;
    /** Limit of its electronics; 0 when it has none. 0 to 1000. */
    continuous_A?: number;
    /** Blocks in one string that its maker allows; 0 when not stated. 0 to 8. */
    series_max?: number;
    /** Without tax. 0 to 100000. */
    price?: number;
    /** Working days. 0 to 365. */
    lead_days?: number;
  }>;
  /** Boat cable. */
  cables?: {
    /** Lower case, digits and hyphens; jobs name it. */
    id: string;
    /** Trade size: "4 AWG", "25 mm2". */
    conductor: string;
    /** Temperature rating of the insulation. 60 to 200. */
    insulation_C?: number;
    /** One conductor, insulated. 0.005 to 5. */
    mass_kg_per_m: number;
    /** One conductor, without tax. 0 to 1000. */
    price_per_m?: number;
  }[];
  /** Breakers and fuses. */
  devices?: Array<{
    /** Lower case, digits and hyphens; jobs name it. */
    id: string;
    /** As it is shown. */
    label: string;
    kind?: "breaker" | "fuse";
    /** 1 to 1000. */
    rating_A: number;
    /** Highest direct voltage that it may interrupt. 12 to 1000. */
    voltage_V: number;
    /** At that voltage. 100 to 200000. */
    interrupt_A: number;
    /** 0.000001 to 0.05. */
    resistance_ohm: number;
    /** May stand where petrol vapour can be. */
    ignition_protected?: boolean;
    /** 1 to 4. */
    poles?: number;
    /** Without tax. 0 to 100000. */
    price?: number;
    /** How soon it opens, by class; left out: a bolt-down fuse, a breaker of medium delay. */
    curve?: "blade-fuse" | "bolt-fuse" | "class-t-fuse" | "thermal-breaker" | "breaker-instant" | "breaker-short" | "breaker-medium" | "breaker-long";
  }>;
  /** Mains chargers with isolated outputs. */
  chargers?: {
    /** Lower case, digits and hyphens; jobs name it. */
    id: string;
    /** As it is shown. */
    label: string;
    /** Isolated, one to a block. 1 to 8. */
    outputs?: number;
    /** Each. 1 to 200. */
    output_A: number;
    /** Nominal volts of the block that an output charges. 6 to 60. */
    block_V?: number;
    /** Has a profile for lithium iron phosphate. */
    lithium_profile?: boolean;
    /** 0.5 to 1. */
    efficiency_frac?: number;
    /** 0.4 to 1. */
    power_factor?: number;
    /** 0.1 to 60. */
    mass_kg: number;
    /** Without tax. 0 to 100000. */
    price?: number;
  }[];
  /** Plate for the mount. */
  plates?: {
    /** Lower case, digits and hyphens; jobs name it. */
    id: string;
    /** As it is shown. */
    label: string;
    /** With its temper: "5083-H116". */
    alloy: string;
    /** 2 to 40. */
    thickness_mm: number;
    /** Without tax. 0 to 100000. */
    price_per_m2?: number;
  }[];
  /** Bolts with nut and washers. */
  bolts?: {
    /** Lower case, digits and hyphens; jobs name it. */
    id: string;
    /** Thread: "M8", "3/8-16". */
    size: string;
    /** Head mark: "A4-70", "F593G". */
    grade: string;
    /** With nut and washers, without tax. 0 to 1000. */
    price_each?: number;
  }[];
  /** Small parts that scale with the job. */
  sundries?: Array<{
    /** Lower case, digits and hyphens. */
    id: string;
    /** As it is shown. */
    label: string;
    /** What it is counted by. */
    per?: "job" | "block" | "bolt" | "metre" | "joint" | "network" | "network_metre" | "network_device" | "ethernet_metre" | "remote_cells" | "plug" | "stud_block" | "battery_switch";
    /** For each of those. 0 to 1000. */
    count?: number;
    /** Each. 0 to 100. */
    mass_kg?: number;
    /** Each, without tax. 0 to 100000. */
    price?: number;
  }>;
  /** Work that scales with the job. */
  tasks?: Array<{
    /** Lower case, digits and hyphens. */
    id: string;
    /** As it is shown. */
    label: string;
    /** What it is counted by. */
    per?: "job" | "block" | "bolt" | "metre" | "joint" | "network" | "network_metre" | "network_device" | "ethernet_metre" | "remote_cells" | "plug" | "stud_block" | "battery_switch";
    /** Hours for each of those. 0 to 100. */
    labour_h?: number;
  }>;
}

/** Design: what evaluate says of a job. */
export interface Design {
  schema: 1;
  engine_edition: number;
  title: string;
  verdict: "fits" | "fits with changes" | "does not fit" | "not evaluated";
  /** Id of the check that governs. */
  governing: string;
  /** What makes it fit; tried. */
  changes: Change[];
  /** Whether the plate by finite elements, snag and foredeck have a say in that. */
  proven: boolean;
  boat: {
    /** Windage from ahead. */
    frontal_area_m2: number | null;
    /** Windage from the side. */
    lateral_area_m2: number | null;
  };
  water: {
    /** Significant wave height. */
    wave_height_m: number | null;
    /** Wave period. */
    wave_period_s: number | null;
  };
  hold: {
    /** Thrust needed, with margin. */
    thrust_required_N: number | null;
    /** Mean load to size on. */
    thrust_mean_N: number | null;
    /** Mean load, bow-on. */
    thrust_head_on_N: number | null;
    /** Mean load as it settles. */
    thrust_equilibrium_N: number | null;
    /** Wind, bow-on. */
    wind_N: number | null;
    /** Current, bow-on. */
    current_N: number | null;
    /** Waves, bow-on. */
    wave_N: number | null;
    /** Settles off the wind by. */
    heading_deg: number | null;
    /** Margin asked for. */
    margin_factor: number | null;
    /** Motor. */
    motor: string;
    /** Thrust left for holding. */
    thrust_effective_N: number | null;
    /** Margin there is. */
    margin_actual_factor: number | null;
    /** Strongest wind held. */
    limiting_wind_mps: number | null;
    /** Significant wave height. */
    wave_height_m: number | null;
    /** Wave period. */
    wave_period_s: number | null;
    /** Power at full thrust. */
    power_full_W: number | null;
    /** Mean power while holding. */
    power_mean_W: number | null;
    /** Energy of the day. */
    energy_Wh: number | null;
    /** Current that heats as much as the day. */
    day_rms_A: number | null;
    /** Most current at any moment. */
    day_peak_A: number | null;
  };
  shaft: {
    /** Shaft needed. */
    length_required_m: number | null;
    /** Shaft. */
    length_m: number | null;
    /** To spare. */
    margin_m: number | null;
    /** Propeller below calm water. */
    propeller_depth_m: number | null;
    /** Surface falls in the waves. */
    relative_motion_m: number | null;
    /** Share of thrust left in the waves. */
    immersion_factor: number | null;
    /** Time with the tip showing. */
    emergence_frac: number | null;
    /** Stress in the tube. */
    tube_stress_MPa: number | null;
    /** Bend of the tube. */
    tube_deflection_mm: number | null;
    /** Never faster with the motor down. */
    speed_limit_deployed_mps: number | null;
  };
  bank: {
    /** Block. */
    block: string;
    /** Blocks. */
    block_count: number | null;
    /** In series. */
    series_count: number | null;
    /** Strings in parallel. */
    parallel_count: number | null;
    /** Nominal voltage. */
    nominal_V: number | null;
    /** Capacity needed, by the label. */
    capacity_required_Ah: number | null;
    /** Capacity there is. */
    capacity_Ah: number | null;
    /** Energy by the label. */
    energy_Wh: number | null;
    /** Usable, cold and aged. */
    usable_Wh: number | null;
    /** Hours it lasts at the mean load. */
    endurance_h: number | null;
    /** Hours at full thrust. */
    endurance_full_h: number | null;
    /** Current at full thrust, end of day. */
    peak_A: number | null;
    /** Weight of the bank. */
    mass_kg: number | null;
    /** Each block held down against. */
    restraint_N: number | null;
    /** Days like this until 80 % is left. */
    cycles_count: number | null;
    /** Years until 80 % is left. */
    years_count: number | null;
  };
  feeder: {
    /** Cable. */
    conductor: string;
    /** Tail. */
    tail_conductor: string;
    /** Protective device. */
    device: string;
    /** Current at full thrust, end of day. */
    current_A: number | null;
    /** Lost in the feeder. */
    drop_frac: number | null;
    /** Lost in the feeder, volts. */
    drop_V: number | null;
    /** Volts at the motor, end of day. */
    motor_V: number | null;
    /** Heat along the feeder. */
    loss_W: number | null;
    /** Temperature of the cable. */
    conductor_C: number | null;
    /** Fault current at the bank. */
    fault_near_A: number | null;
    /** Fault current at the plug. */
    fault_far_A: number | null;
  };
  charge: {
    /** Charger. */
    charger: string;
    /** Chargers. */
    charger_count: number | null;
    /** Into each block. */
    output_A: number | null;
    /** Full again in. */
    time_h: number | null;
    /** Current from shore. */
    shore_A: number | null;
    /** Air through the locker. */
    ventilation_m3_per_h?: number | null;
    /** Each opening at least. */
    vent_area_cm2?: number | null;
    /** No sparks within. */
    spark_clearance_mm?: number | null;
    /** Closed locker, failed charger: danger in. */
    minutes_to_limit_min?: number | null;
  };
  locker?: {
    /** Straps over each block. */
    strap_count?: number | null;
    /** Each strap rated at least. */
    strap_need_N?: number | null;
    /** Tray's wall at least. */
    wall_m?: number | null;
  };
  mount: {
    /** Plate. */
    plate_thickness_mm: number | null;
    /** Plate stock. */
    plate: string;
    /** Weight of the plate. */
    plate_mass_kg: number | null;
    /** Bolts. */
    bolt: string;
    /** How many. */
    bolt_count: number | null;
    /** Slam of the stowed motor. */
    slam_N: number | null;
    /** Stress in a slam. */
    plate_stress_MPa: number | null;
    /** Sag at rest. */
    sag_mm: number | null;
    /** Shakes at. */
    frequency_Hz: number | null;
    /** Pull on the worst bolt. */
    bolt_tension_N: number | null;
    /** Shear on the worst bolt. */
    bolt_shear_N: number | null;
    /** Tighten to. */
    bolt_torque_Nm: number | null;
    /** Speed limit, stowed, in that sea. */
    speed_limit_mps: number | null;
  };
  trim: {
    /** Weight added. */
    added_kg: number | null;
    /** Bow goes down. */
    bow_sinkage_m: number | null;
    /** Stern goes down. */
    stern_sinkage_m: number | null;
    /** Trim, bow down. */
    trim_deg: number | null;
    /** Heel to starboard. */
    heel_deg: number | null;
    /** Metacentric height after. */
    gm_after_m: number | null;
    /** Bow height left. */
    bow_freeboard_m: number | null;
  };
  control: {
    /** Heading error at full thrust. */
    heading_error_deg: number | null;
    /** Heading sensor to the feeder. */
    sensor_gap_m: number | null;
    /** Data cable. */
    network_cable?: string;
    /** Network current. */
    network_current_A?: number | null;
    /** Network volts lost. */
    network_drop_V?: number | null;
  };
  parts: {
    /** Parts, without tax. */
    parts_price: number | null;
    /** Hours of work. */
    labour_h: number | null;
    /** Work. */
    labour_price: number | null;
    /** All told, without tax. */
    total_price: number | null;
    /** Weight of all parts. */
    mass_kg: number | null;
    /** Working days until all is here. */
    lead_days: number | null;
    lines: PartLine[];
    tasks: TaskLine[];
  };
  job: {
    /** Name of this job. */
    title?: {
      value: string;
      origin: "given" | "preset" | "estimated" | "chosen";
    };
    boat?: {
      /** Boat type. */
      type?: {
        value: string;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Length overall. */
      length_m?: {
        /** 4 to 15. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Loaded weight. */
      displacement_kg?: {
        /** 250 to 15000. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Bow height. */
      bow_height_m?: {
        /** 0.2 to 3. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Deck layout. */
      layout?: {
        value: "open_skiff" | "bay_console" | "centre_console" | "t_top" | "enclosed_t_top" | "dual_console" | "walkaround" | "pilothouse" | "express" | "flybridge" | "pontoon";
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Beam. */
      beam_m?: {
        /** 1.2 to 5. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Waterline length. */
      waterline_length_m?: {
        /** 3 to 14.5. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Waterline beam. */
      waterline_beam_m?: {
        /** 1 to 4.8. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Hull draft. */
      draft_m?: {
        /** 0.1 to 1.5. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Deadrise. */
      deadrise_deg?: {
        /** 0 to 30. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Fastest run with the motor stowed. */
      cruise_speed_mps?: {
        /** 0 to 26. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** People aboard. */
      crew_count?: {
        /** 1 to 12. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Outboards or drives. */
      outboard_count?: {
        /** 0 to 4. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Legs while holding. */
      leg?: {
        value: "tilted" | "down" | "down_free";
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Main propeller diameter. */
      leg_propeller_m?: {
        /** 0.15 to 0.6. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Windage from ahead. */
      frontal_area_m2?: {
        /** 0.5 to 30. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Windage from the side. */
      lateral_area_m2?: {
        /** 1 to 60. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Centre of the side windage. */
      lateral_centroid_m?: {
        /** -4 to 4. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Side area under water. */
      underwater_area_m2?: {
        /** 0.4 to 20. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Centre of the side area under water. */
      underwater_centroid_m?: {
        /** -4 to 4. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Half angle of the waterline at the bow. */
      bow_angle_deg?: {
        /** 8 to 60. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Petrol engine or tank below deck. */
      petrol?: {
        value: boolean;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Foredeck make-up. */
      deck?: {
        value: "single_skin" | "cored_balsa" | "cored_foam" | "aluminium";
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Side above water, drawn. */
      side_view?: {
        value: string;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Front above water, drawn. */
      front_view?: {
        value: string;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Canvas and curtains. */
      canvas?: {
        value: "usual" | "folded" | "up";
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** People standing at the bow. */
      standing_forward_count?: {
        /** 0 to 6. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
    };
    water?: {
      /** Water. */
      place?: {
        value: string;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Where you hold. */
      exposure?: {
        value: "sheltered" | "bay" | "open";
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Wind to hold in. */
      wind_mps?: {
        /** 0 to 35. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Which wind acts on the boat. */
      wind_height?: {
        value: "ten_metres" | "at_boat";
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Open water upwind. */
      fetch_m?: {
        /** 50 to 200000. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Depth. */
      depth_m?: {
        /** 0.5 to 200. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Current. */
      current_mps?: {
        /** 0 to 4. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Angle between wind and current. */
      current_angle_deg?: {
        /** 0 to 180. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Significant wave height. */
      wave_height_m?: {
        /** 0 to 4. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Wave period. */
      wave_period_s?: {
        /** 0.5 to 15. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Water. */
      salinity?: {
        value: "salt" | "fresh";
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Air temperature. */
      air_C?: {
        /** -20 to 45. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
    };
    hold?: {
      /** How firmly. */
      firmness?: {
        value: "firm" | "loose";
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Motor class. */
      motor?: {
        value: string;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Static thrust. */
      thrust_N?: {
        /** 50 to 2500. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Motor voltage. */
      nominal_V?: {
        /** 12 to 60. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Lowest voltage at the motor. */
      minimum_V?: {
        /** 8 to 60. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Highest voltage at the motor. */
      maximum_V?: {
        /** 12 to 80. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Electrical power at full thrust. */
      power_full_W?: {
        /** 100 to 12000. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Electrical power at rest. */
      power_idle_W?: {
        /** 0 to 300. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Propeller diameter. */
      propeller_diameter_m?: {
        /** 0.12 to 0.6. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Weight of motor and shaft. */
      motor_mass_kg?: {
        /** 5 to 120. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Hours holding in a day. */
      holding_h?: {
        /** 0 to 24. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Hours creeping between spots. */
      transit_h?: {
        /** 0 to 24. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Thrust while creeping. */
      transit_thrust_frac?: {
        /** 0 to 1. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Wind load after a trial at sea. */
      windage_factor?: {
        /** 0.25 to 4. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Current load after a trial at sea. */
      drag_factor?: {
        /** 0.25 to 4. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Near enough. */
      tolerance_m?: {
        /** 0.5 to 100. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** For how much of the time. */
      tolerance_frac?: {
        /** 0.5 to 0.99. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Gusts by. */
      gusts?: {
        value: "npd" | "davenport" | "harris" | "ochi_shin";
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Minutes adrift. */
      drift_min?: {
        /** 1 to 120. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Drift over the ground. */
      drift_mps?: {
        /** 0 to 5. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Drift off downwind. */
      drift_angle_deg?: {
        /** -180 to 180. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Thrust shown while holding. */
      held_thrust_frac?: {
        /** 0.01 to 1. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Wind in the trial. */
      trial_wind_mps?: {
        /** 2 to 35. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Height of that reading. */
      trial_wind_height_m?: {
        /** 0.5 to 30. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Current in the trial. */
      trial_current_mps?: {
        /** 0 to 4. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Current off the wind in the trial. */
      trial_current_angle_deg?: {
        /** -180 to 180. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Waves in the trial. */
      trial_wave_m?: {
        /** 0 to 3. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** The day in stretches. */
      day?: {
        value: string;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
    };
    shaft?: {
      /** Shaft length. */
      length_m?: {
        /** 0.5 to 4. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Shaft forward of midships. */
      thruster_forward_m?: {
        /** 0 to 8. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Collar above the deck. */
      collar_m?: {
        /** 0 to 0.6. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Bow rise between loaded and light. */
      trim_allowance_m?: {
        /** 0 to 0.4. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Depth of the propeller in calm water. */
      immersion_ratio?: {
        /** 0.5 to 4. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Shaft tube, outside. */
      tube_outer_mm?: {
        /** 15 to 80. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Shaft tube, wall. */
      tube_wall_mm?: {
        /** 1 to 15. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Shaft tube, strength. */
      tube_yield_MPa?: {
        /** 80 to 1500. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Shaft tube, stiffness. */
      tube_modulus_GPa?: {
        /** 5 to 250. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
    };
    bank?: {
      /** Battery block. */
      block?: {
        value: string;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Chemistry. */
      chemistry?: {
        value: "flooded" | "agm" | "gel" | "lifepo4";
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Nominal volts of a block. */
      block_V?: {
        /** 6 to 60. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Capacity of a block. */
      capacity_Ah?: {
        /** 5 to 600. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Rated hours. */
      rated_hours_h?: {
        /** 1 to 100. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Peukert exponent. */
      peukert_exponent?: {
        /** 1 to 1.6. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Internal resistance of a block. */
      resistance_ohm?: {
        /** 0.0002 to 0.1. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Weight of a block. */
      block_mass_kg?: {
        /** 1 to 120. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Discharge limit of a block. */
      continuous_A?: {
        /** 0 to 1000. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Blocks in series. */
      series_count?: {
        /** 1 to 8. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Strings in parallel. */
      parallel_count?: {
        /** 1 to 6. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Depth of discharge. */
      depth_of_discharge_frac?: {
        /** 0.1 to 1. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Ageing allowance. */
      age_factor?: {
        /** 1 to 2. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Design margin. */
      margin_factor?: {
        /** 1 to 2. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Temperature of the bank. */
      temperature_C?: {
        /** -20 to 45. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Blocks one by one. */
      fitted?: {
        value: string;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Days out in a year. */
      days_out_count?: {
        /** 1 to 365. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
    };
    feeder?: {
      /** Cable run. */
      run_m?: {
        /** 0.2 to 30. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Tail. */
      tail_m?: {
        /** 0 to 5. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Jumper between blocks. */
      jumper_m?: {
        /** 0.05 to 5. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Cable. */
      conductor?: {
        value: string;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Tail cable. */
      tail_conductor?: {
        value: string;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Protective device. */
      device?: {
        value: string;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Allowed drop. */
      allowed_drop_frac?: {
        /** 0.005 to 0.2. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Warmest air round the cable. */
      ambient_C?: {
        /** 0 to 70. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Runs through an engine space. */
      engine_space?: {
        value: boolean;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Loaded conductors bundled together. */
      bundled_count?: {
        /** 2 to 30. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Battery post to device. */
      device_distance_m?: {
        /** 0 to 5. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Sheathed up to the device. */
      sheathed?: {
        value: boolean;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Negative not tied to the boat. */
      floating?: {
        value: boolean;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Resistance of a lug and stud. */
      lug_ohm?: {
        /** 0.00001 to 0.01. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Resistance of a plug contact. */
      plug_ohm?: {
        /** 0.0001 to 0.05. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** The circuit, piece by piece. */
      network?: {
        value: string;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** The motor keeps, as volts fall. */
      motor_law?: {
        value: "power" | "current" | "resistance";
        origin: "given" | "preset" | "estimated" | "chosen";
      };
    };
    charge?: {
      /** Charger. */
      charger?: {
        value: string;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Charging current of a block. */
      output_A?: {
        /** 1 to 100. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Charger efficiency. */
      efficiency_frac?: {
        /** 0.5 to 1. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Charger power factor. */
      power_factor?: {
        /** 0.4 to 1. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Shore supply. */
      shore_V?: {
        /** 100 to 250. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Shore current available. */
      shore_limit_A?: {
        /** 1 to 63. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Hours on shore power. */
      available_h?: {
        /** 1 to 72. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Free volume of the battery locker. */
      locker_volume_m3?: {
        /** 0.02 to 5. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Vent opening, each. */
      vent_area_cm2?: {
        /** 0 to 2000. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Breaker of the shore outlet. */
      outlet_A?: {
        /** 6 to 63. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Other loads on that outlet. */
      other_loads_A?: {
        /** 0 to 63. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Converter from the engine's side. */
      converter_A?: {
        /** 0 to 200. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Alternator. */
      alternator_A?: {
        /** 5 to 500. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Engine and instruments draw. */
      engine_loads_A?: {
        /** 0 to 200. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Hours under engine. */
      engine_h?: {
        /** 0 to 24. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Solar panel. */
      panel_W?: {
        /** 0 to 2000. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Hours of full sun in a day. */
      full_sun_h?: {
        /** 0 to 12. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Drawn from the bank at rest. */
      standing_W?: {
        /** 0 to 200. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Fan in the locker's duct. */
      fan_m3_per_h?: {
        /** 0 to 500. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** The charger cannot run without the fan. */
      fan_with_charger?: {
        value: boolean;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** The fan is ignition protected. */
      fan_protected?: {
        value: boolean;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** The charger stops itself. */
      charger_stops_itself?: {
        value: boolean;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Recombining caps. */
      recombining_caps?: {
        value: boolean;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Openings on opposite sides. */
      vents_opposite?: {
        value: boolean;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Openings apart. */
      vents_apart_m?: {
        /** 0 to 5. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
    };
    mount?: {
      /** Plate length. */
      plate_length_mm?: {
        /** 150 to 1200. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Plate width. */
      plate_width_mm?: {
        /** 80 to 600. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Plate stock. */
      plate?: {
        value: string;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Overhang of the stowed motor. */
      overhang_mm?: {
        /** 0 to 1000. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Bolt rows. */
      bolt_rows?: {
        /** 2 to 6. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Bolt pitch. */
      bolt_pitch_mm?: {
        /** 30 to 400. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Bolt gauge. */
      bolt_gauge_mm?: {
        /** 40 to 500. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Bolt. */
      bolt?: {
        value: string;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Bolt heads. */
      head?: {
        value: "hexagon" | "countersunk";
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Deck skin. */
      deck_thickness_mm?: {
        /** 1 to 40. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Core. */
      core_thickness_mm?: {
        /** 0 to 60. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Backing plate. */
      backing_side_mm?: {
        /** 15 to 300. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Backing plate thickness. */
      backing_thickness_mm?: {
        /** 1 to 30. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Outer chock under the stowed motor. */
      chocked?: {
        value: boolean;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Sea it is run in, stowed. */
      run_wave_m?: {
        /** 0 to 3. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Outline, measured. */
      outline?: {
        value: string;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Corner radius. */
      corner_mm?: {
        /** 0 to 200. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Plate width in front. */
      front_width_mm?: {
        /** 40 to 600. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Bolts, each in its place. */
      bolt_places?: {
        value: string;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Cut-outs. */
      cutouts?: {
        value: string;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Stiffeners. */
      stiffener_count?: {
        /** 0 to 4. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Stiffener height. */
      stiffener_height_mm?: {
        /** 5 to 120. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Stiffener thickness. */
      stiffener_thickness_mm?: {
        /** 2 to 25. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Hung on in the flex test. */
      test_mass_kg?: {
        /** 1 to 200. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Forward of the front bolts. */
      test_arm_mm?: {
        /** 0 to 1500. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Sag measured. */
      test_sag_mm?: {
        /** 0.05 to 100. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Bolts and bedding, times what is computed. */
      deck_factor?: {
        /** 0.02 to 20. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Goes on a trailer with the motor on. */
      trailered?: {
        value: boolean;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Stainless kept off the aluminium. */
      isolated?: {
        value: boolean;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Paint or film, each side. */
      finish_mm?: {
        /** 0 to 2. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Finish. */
      finish?: {
        value: "bare" | "anodised" | "powder" | "paint";
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Core plugged round the bolts. */
      core_plugged?: {
        value: boolean;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Deck free fore and aft. */
      deck_span_mm?: {
        /** 100 to 1500. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** The deck's own sag. */
      test_deck_mm?: {
        /** 0 to 50. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Deck's panel, times what is computed. */
      panel_factor?: {
        /** 0.02 to 20. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Deck free athwart. */
      deck_breadth_mm?: {
        /** 100 to 1500. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
    };
    trim?: {
      /** Bank forward of the transom. */
      bank_x_m?: {
        /** 0 to 14. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Bank to starboard. */
      bank_y_m?: {
        /** -2.5 to 2.5. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Motor forward of the transom. */
      motor_x_m?: {
        /** 0 to 15. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Motor to starboard. */
      motor_y_m?: {
        /** -2.5 to 2.5. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Waterplane coefficient. */
      waterplane_ratio?: {
        /** 0.667 to 1. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Metacentric height. */
      gm_m?: {
        /** 0.1 to 4. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Trim before the work. */
      initial_trim_deg?: {
        /** -4 to 4. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Roll period. */
      roll_period_s?: {
        /** 0.4 to 15. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Inclining: weight moved. */
      incline_mass_kg?: {
        /** 2 to 800. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Moved by. */
      incline_shift_m?: {
        /** 0.1 to 5. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Pendulum length. */
      pendulum_m?: {
        /** 0.2 to 4. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Plumb line went across by. */
      pendulum_shift_mm?: {
        /** 1 to 800. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Known weight put amidships. */
      immersion_mass_kg?: {
        /** 5 to 2000. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** She sank by. */
      immersion_mm?: {
        /** 1 to 400. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Persons on the capacity plate. */
      capacity_persons_count?: {
        /** 1 to 40. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Weight on the capacity plate. */
      capacity_mass_kg?: {
        /** 50 to 8000. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Bank above the water. */
      bank_z_m?: {
        /** -1.5 to 3. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Stowed motor above the water. */
      motor_z_m?: {
        /** 0 to 5. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
    };
    locker?: {
      /** Locker length. */
      length_m?: {
        /** 0.1 to 3. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Locker width. */
      width_m?: {
        /** 0.1 to 3. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Locker height. */
      height_m?: {
        /** 0.1 to 2. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Opens by. */
      access?: {
        value: "lid" | "door";
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Opening, length. */
      opening_length_m?: {
        /** 0.1 to 3. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Opening, width. */
      opening_width_m?: {
        /** 0.1 to 3. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Blocks may lie on their sides. */
      side_allowed?: {
        value: boolean;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** A second tier is allowed. */
      tiers_allowed?: {
        value: boolean;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Fuel tank, filter or fitting straight above or below. */
      tank_over_or_under?: {
        value: boolean;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Lowest metal fuel part above the blocks. */
      metal_fuel_part_m?: {
        /** 0 to 3. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Shielded from them. */
      metal_fuel_part_shielded?: {
        value: boolean;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Charger, switch or fan to fuel parts. */
      spark_from_petrol_m?: {
        /** 0 to 10. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Those are ignition protected. */
      spark_parts_protected?: {
        value: boolean;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Nearest spark to a block's vent. */
      spark_from_vent_m?: {
        /** 0 to 10. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Blocks above the bilge water. */
      above_bilge_m?: {
        /** 0 to 2. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Coldest in the locker while charging. */
      coldest_C?: {
        /** -30 to 40. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Hottest in the locker. */
      hottest_C?: {
        /** 0 to 80. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** A strap is rated. */
      strap_rated_N?: {
        /** 100 to 50000. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Straps over a block. */
      strap_count?: {
        /** 1 to 6. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
    };
    control?: {
      /** Latitude. */
      latitude_deg?: {
        /** -90 to 90. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Longitude. */
      longitude_deg?: {
        /** -180 to 180. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Year. */
      year?: {
        /** 1900 to 2035. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Heading sensor forward of the transom. */
      sensor_x_m?: {
        /** -1 to 16. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Heading sensor to starboard. */
      sensor_y_m?: {
        /** -3 to 3. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Heading sensor above the water. */
      sensor_z_m?: {
        /** -1 to 8. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Feeder to starboard. */
      feeder_y_m?: {
        /** -2.5 to 2.5. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Feeder above the water. */
      feeder_z_m?: {
        /** -1 to 4. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** The pair lies. */
      feeder_lay?: {
        value: "side_by_side" | "one_above_other" | "twisted";
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Conductors apart. */
      spacing_mm?: {
        /** 4 to 1000. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** A full turn of the twist. */
      pitch_mm?: {
        /** 20 to 2000. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Heading error allowed. */
      heading_limit_deg?: {
        /** 0.2 to 20. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Boat rolls and pitches up to. */
      tilt_deg?: {
        /** 0 to 45. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Sensor turned off the keel line. */
      sensor_turn_deg?: {
        /** -180 to 180. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Sky clear above. */
      receiver_clear_deg?: {
        /** 0 to 90. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Data link to the plotter. */
      link?: {
        value: "none" | "marine_network" | "ethernet";
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Cable, end to end. */
      backbone_m?: {
        /** 0 to 400. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Longest drop. */
      longest_drop_m?: {
        /** 0 to 50. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** All drops together. */
      drops_m?: {
        /** 0 to 400. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Devices on it. */
      node_count?: {
        /** 1 to 60. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Load numbers together. */
      load_units_count?: {
        /** 1 to 300. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Terminators. */
      terminator_count?: {
        /** 0 to 6. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** The backbone is fed. */
      network_feed?: {
        value: "end" | "middle";
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Fuse of its power tap. */
      network_fuse_A?: {
        /** 0 to 30. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Drip loops before each plug. */
      drip_loops?: {
        value: boolean;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** A data cable ties two negatives. */
      negative_in_data_cable?: {
        value: boolean;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** The remote. */
      remote?: {
        value: "cells" | "charged" | "wired";
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** The remote runs. */
      remote_h?: {
        /** 1 to 2000. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** The motor's bank is switched by. */
      main_switch?: {
        value: "none" | "house" | "own";
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** That switch carries. */
      switch_rated_A?: {
        /** 10 to 1000. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Always on. */
      always_on_W?: {
        /** 0 to 200. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Receiver forward of the transom. */
      receiver_x_m?: {
        /** -1 to 16. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Receiver to starboard. */
      receiver_y_m?: {
        /** -3 to 3. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Receiver above the water. */
      receiver_z_m?: {
        /** -1 to 8. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Backbone cable. */
      backbone_cable?: {
        value: "light" | "mid" | "heavy";
        origin: "given" | "preset" | "estimated" | "chosen";
      };
    };
    foredeck?: {
      /** Clear deck aft of the stem. */
      length_m?: {
        /** 0.3 to 6. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Deck width at the mount. */
      width_m?: {
        /** 0.2 to 4. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** What stands on it. */
      items?: {
        value: string;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Mount aft of the stem. */
      mount_x_m?: {
        /** -1 to 4. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Mount to starboard. */
      mount_y_m?: {
        /** -1.5 to 1.5. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Stowed shaft off straight aft. */
      stow_angle_deg?: {
        /** -90 to 90. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Bow light aft of the stem. */
      light_x_m?: {
        /** -0.5 to 4. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Bow light to starboard. */
      light_y_m?: {
        /** -2 to 2. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Bow light above the deck. */
      light_z_m?: {
        /** 0 to 2. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Rail or pulpit above the deck. */
      rail_height_m?: {
        /** 0 to 1.5. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Rail inboard of the edge. */
      rail_inset_m?: {
        /** 0 to 0.6. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** From where you kneel to the motor. */
      reach_m?: {
        /** 0 to 4. */
        value: number;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
      /** Tied down as well at speed. */
      tied?: {
        value: boolean;
        origin: "given" | "preset" | "estimated" | "chosen";
      };
    };
  };
  checks: Check[];
  steps: Step[];
  cautions: Caution[];
  assumptions: Assumption[];
  issues: Issue[];
}

export interface Source {
  id: string;
  title: string;
  /** Clause, table or page. */
  locator: string;
  confirmed: boolean;
}

/** What to set, or to clear so that Thole chooses it. */
export interface Change {
  /** Path of the job's field. */
  field: string;
  label: string;
  clear?: true;
  value?: number | string | null;
}

export interface Check {
  id: string;
  label: string;
  verdict: "passes" | "close" | "fails" | "not evaluated";
  /** 1 at the limit. */
  utilisation: number | null;
  actual: number | null;
  limit: number | null;
  unit: string;
  comparison: "at most" | "at least";
  /** Of the limit. */
  source: Source;
  remedy: string;
  changes: Change[];
}

export interface Term {
  symbol: string;
  value: number | null;
  unit: string;
  meaning: string;
}

export interface Step {
  id: string;
  label: string;
  symbol: string;
  formula: string;
  terms: Term[];
  value: number | null;
  unit: string;
  source: Source;
  assumptions: string[];
}

export interface Caution {
  id: string;
  text: string;
  source: Source;
}

export interface Assumption {
  field: string;
  text: string;
  source: Source;
}

export interface Issue {
  severity: "note" | "warning" | "error";
  /** Path; empty: the whole document. */
  field: string;
  message: string;
}

export interface PartLine {
  id: string;
  label: string;
  detail: string;
  quantity: number | null;
  /** Empty: pieces. */
  unit: string;
  mass_kg: number | null;
  unit_price: number | null;
  price: number | null;
  lead_days: number;
}

export interface TaskLine {
  id: string;
  label: string;
  labour_h: number | null;
}

/** What could not be read, with the path of each value and what would be right. */
export class TholeError extends Error {
  readonly issues: Issue[];
}

export interface Engine {
  readonly version: { edition: number; schema: number };
  /** The design for a job, with the built-in catalogue or a shop's own. Throws a TholeError. */
  evaluate(job: Job | string, catalogue?: Catalogue | string): Design;
  /** The job as what follows the '#' of the wizard's address: "job=...". Throws a TholeError. */
  link(job: Job | string): string;
  /** The job in a link, whole address or the part after '#'. Throws a TholeError. */
  unlink(link: string): Job;
  /** JSON Schema (2020-12). */
  schema(kind: "job" | "catalogue" | "preset" | "design"): Promise<object>;
}

/** source: address or bytes of the WebAssembly file, where it does not lie beside the module. */
export function loadEngine(source?: string | URL | BufferSource | WebAssembly.Module): Promise<Engine>;
