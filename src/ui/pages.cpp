#include "ui/pages.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "base/number.h"
#include "base/order.h"
#include "calc/outputs.h"
#include "io/figures.h"
#include "io/link.h"
#include "io/presets.h"
#include "io/qr.h"
#include "ui/studies.h"

namespace thole::ui {
namespace {

using Paths = std::span<const std::string_view>;

// clang-format off
constexpr std::array<std::string_view, 8> kBoatMain{"boat.type", "boat.length_m", "boat.displacement_kg", "boat.bow_height_m", "boat.layout", "boat.beam_m", "boat.cruise_speed_mps", "boat.deck"};
constexpr std::array<std::string_view, 8> kBoatUnderwater{"boat.waterline_length_m", "boat.waterline_beam_m", "boat.draft_m", "boat.deadrise_deg", "boat.underwater_area_m2", "boat.underwater_centroid_m", "boat.bow_angle_deg", "trim.waterplane_ratio"};
constexpr std::array<std::string_view, 7> kBoatWindage{"boat.canvas", "boat.standing_forward_count", "boat.frontal_area_m2", "boat.lateral_area_m2", "boat.lateral_centroid_m", "boat.side_view", "boat.front_view"};
constexpr std::array<std::string_view, 5> kBoatAboard{"boat.crew_count", "boat.outboard_count", "boat.leg", "boat.leg_propeller_m", "boat.petrol"};
constexpr std::array kBoatGroups{Group{"", kBoatMain}, Group{"Above water", kBoatWindage}, Group{"Under water", kBoatUnderwater}, Group{"Aboard", kBoatAboard}};

constexpr std::array<std::string_view, 3> kWaterMain{"water.place", "water.exposure", "water.wind_mps"};
constexpr std::array<std::string_view, 2> kWaterCurrent{"water.current_mps", "water.current_angle_deg"};
constexpr std::array<std::string_view, 4> kWaterWaves{"water.fetch_m", "water.depth_m", "water.wave_height_m", "water.wave_period_s"};
constexpr std::array<std::string_view, 3> kWaterAir{"water.wind_height", "water.salinity", "water.air_C"};
constexpr std::array kWaterGroups{Group{"", kWaterMain}, Group{"Current", kWaterCurrent}, Group{"Waves", kWaterWaves}, Group{"Air and water", kWaterAir}};

constexpr std::array<std::string_view, 3> kHoldMain{"hold.motor", "hold.firmness", "hold.holding_h"};
constexpr std::array<std::string_view, 8> kHoldMotor{"hold.thrust_N", "hold.nominal_V", "hold.minimum_V", "hold.maximum_V", "hold.power_full_W", "hold.power_idle_W", "hold.propeller_diameter_m", "hold.motor_mass_kg"};
constexpr std::array<std::string_view, 3> kHoldTransit{"hold.transit_h", "hold.transit_thrust_frac", "hold.day"};
constexpr std::array<std::string_view, 3> kHoldStill{"hold.tolerance_m", "hold.tolerance_frac", "hold.gusts"};
constexpr std::array<std::string_view, 11> kHoldTrial{"hold.trial_wind_mps", "hold.trial_wind_height_m", "hold.drift_min", "hold.drift_mps", "hold.drift_angle_deg", "hold.held_thrust_frac", "hold.trial_current_mps", "hold.trial_current_angle_deg", "hold.trial_wave_m", "hold.windage_factor", "hold.drag_factor"};
constexpr std::array kHoldGroups{Group{"", kHoldMain}, Group{"The day: creeping, stretches", kHoldTransit}, Group{"How still: an hour of it", kHoldStill, draw_watched_hour}, Group{"Limits from every side", {}, draw_limits}, Group{"What moves the answer most", {}, draw_ranked_inputs}, Group{"A trial at sea", kHoldTrial, draw_trial}, Group{"The motor's own figures", kHoldMotor}};

constexpr std::array<std::string_view, 3> kShaftMain{"boat.bow_height_m", "shaft.length_m", "shaft.immersion_ratio"};
constexpr std::array<std::string_view, 3> kShaftPlace{"shaft.collar_m", "shaft.thruster_forward_m", "shaft.trim_allowance_m"};
constexpr std::array<std::string_view, 4> kShaftTube{"shaft.tube_outer_mm", "shaft.tube_wall_mm", "shaft.tube_yield_MPa", "shaft.tube_modulus_GPa"};
constexpr std::array<std::string_view, 8> kForedeckRoom{"foredeck.length_m", "foredeck.width_m", "foredeck.mount_x_m", "foredeck.mount_y_m", "foredeck.stow_angle_deg", "foredeck.items", "foredeck.rail_height_m", "foredeck.rail_inset_m"};
constexpr std::array<std::string_view, 3> kForedeckLight{"foredeck.light_x_m", "foredeck.light_y_m", "foredeck.light_z_m"};
constexpr std::array<std::string_view, 2> kForedeckReach{"foredeck.reach_m", "foredeck.tied"};
constexpr std::array kShaftGroups{Group{"", kShaftMain}, Group{"Where it stands", kShaftPlace}, Group{"Thrust against length", {}, draw_length_curve}, Group{"The tube", kShaftTube, draw_tube_bend}, Group{"In a snag", {}, draw_snag}, Group{"Room on the foredeck", kForedeckRoom, draw_foredeck_room}, Group{"The bow light", kForedeckLight, draw_bow_light}, Group{"Stowing it", kForedeckReach, draw_stowing}, Group{"The bow from the side", {}, draw_bow_elevation}};

constexpr std::array<std::string_view, 5> kBankMain{"bank.chemistry", "bank.block", "bank.series_count", "bank.parallel_count", "bank.temperature_C"};
constexpr std::array<std::string_view, 3> kBankAllow{"bank.depth_of_discharge_frac", "bank.age_factor", "bank.margin_factor"};
constexpr std::array<std::string_view, 7> kBankBlock{"bank.block_V", "bank.capacity_Ah", "bank.rated_hours_h", "bank.peukert_exponent", "bank.resistance_ohm", "bank.block_mass_kg", "bank.continuous_A"};
constexpr std::array<std::string_view, 2> kBankFitted{"bank.fitted", "bank.days_out_count"};
constexpr std::array<std::string_view, 8> kLockerRoom{"locker.length_m", "locker.width_m", "locker.height_m", "locker.access", "locker.opening_length_m", "locker.opening_width_m", "locker.side_allowed", "locker.tiers_allowed"};
constexpr std::array<std::string_view, 9> kLockerNear{"locker.tank_over_or_under", "locker.metal_fuel_part_m", "locker.metal_fuel_part_shielded", "locker.spark_from_petrol_m", "locker.spark_parts_protected", "locker.spark_from_vent_m", "locker.above_bilge_m", "locker.coldest_C", "locker.hottest_C"};
constexpr std::array<std::string_view, 2> kLockerStraps{"locker.strap_rated_N", "locker.strap_count"};
constexpr std::array kBankGroups{Group{"", kBankMain}, Group{"How hard it may be used", kBankAllow}, Group{"The block's own figures", kBankBlock}, Group{"Blocks in the boat, and their years", kBankFitted}, Group{"The day, hour by hour", {}, draw_bank_day}, Group{"Into the locker", kLockerRoom, draw_locker_room}, Group{"Near the bank", kLockerNear, draw_near_bank}, Group{"Held down", kLockerStraps, draw_held_down}};

constexpr std::array<std::string_view, 5> kFeederMain{"feeder.run_m", "feeder.tail_m", "feeder.conductor", "feeder.tail_conductor", "feeder.device"};
constexpr std::array<std::string_view, 3> kFeederDevice{"feeder.device_distance_m", "feeder.sheathed", "feeder.floating"};
constexpr std::array<std::string_view, 4> kFeederHeat{"feeder.allowed_drop_frac", "feeder.ambient_C", "feeder.engine_space", "feeder.bundled_count"};
constexpr std::array<std::string_view, 3> kFeederJoints{"feeder.jumper_m", "feeder.lug_ohm", "feeder.plug_ohm"};
constexpr std::array<std::string_view, 2> kFeederCircuit{"feeder.motor_law", "feeder.network"};
constexpr std::array kFeederGroups{Group{"", kFeederMain}, Group{"Protection", kFeederDevice}, Group{"Heat and drop", kFeederHeat}, Group{"Jumpers and joints", kFeederJoints}, Group{"When it opens", {}, draw_opening_times}, Group{"The circuit, piece by piece", kFeederCircuit, draw_live_circuit}, Group{"Same cable, six answers", {}, draw_six_answers}};

constexpr std::array<std::string_view, 3> kChargeMain{"charge.charger", "charge.available_h", "charge.shore_limit_A"};
constexpr std::array<std::string_view, 4> kChargeOwn{"charge.output_A", "charge.shore_V", "charge.efficiency_frac", "charge.power_factor"};
constexpr std::array<std::string_view, 2> kChargeVent{"charge.locker_volume_m3", "charge.vent_area_cm2"};
constexpr std::array<std::string_view, 7> kChargeAir{"charge.vents_opposite", "charge.vents_apart_m", "charge.fan_m3_per_h", "charge.fan_with_charger", "charge.fan_protected", "charge.charger_stops_itself", "charge.recombining_caps"};
constexpr std::array<std::string_view, 2> kChargeTonight{"charge.outlet_A", "charge.other_loads_A"};
constexpr std::array<std::string_view, 4> kChargeEngine{"charge.converter_A", "charge.alternator_A", "charge.engine_loads_A", "charge.engine_h"};
constexpr std::array<std::string_view, 3> kChargeSun{"charge.panel_W", "charge.full_sun_h", "charge.standing_W"};
constexpr std::array kChargeGroups{Group{"", kChargeMain}, Group{"Venting", kChargeVent}, Group{"The charger's own figures", kChargeOwn}, Group{"Openings and fan", kChargeAir, draw_locker_air}, Group{"Tonight on shore", kChargeTonight, draw_tonight}, Group{"Under way, from the engine", kChargeEngine, draw_engine_way}, Group{"By the sun", kChargeSun, draw_sun_way}};

constexpr std::array<std::string_view, 4> kMountMain{"mount.plate", "mount.overhang_mm", "mount.chocked", "mount.run_wave_m"};
constexpr std::array<std::string_view, 2> kMountPlate{"mount.plate_length_mm", "mount.plate_width_mm"};
constexpr std::array<std::string_view, 5> kMountBolts{"mount.bolt", "mount.head", "mount.bolt_rows", "mount.bolt_pitch_mm", "mount.bolt_gauge_mm"};
constexpr std::array<std::string_view, 7> kMountDeck{"mount.deck_thickness_mm", "mount.core_thickness_mm", "mount.core_plugged", "mount.deck_span_mm", "mount.deck_breadth_mm", "mount.backing_side_mm", "mount.backing_thickness_mm"};
constexpr std::array<std::string_view, 5> kMountShape{"mount.corner_mm", "mount.front_width_mm", "mount.outline", "mount.cutouts", "mount.bolt_places"};
constexpr std::array<std::string_view, 3> kMountStiff{"mount.stiffener_count", "mount.stiffener_height_mm", "mount.stiffener_thickness_mm"};
constexpr std::array<std::string_view, 4> kMountFinish{"mount.isolated", "mount.finish", "mount.finish_mm", "mount.trailered"};
constexpr std::array<std::string_view, 6> kMountFlex{"mount.test_mass_kg", "mount.test_arm_mm", "mount.test_sag_mm", "mount.test_deck_mm", "mount.deck_factor", "mount.panel_factor"};
constexpr std::array kMountGroups{Group{"", kMountMain}, Group{"Plate", kMountPlate}, Group{"Shape", kMountShape}, Group{"Stiffeners", kMountStiff}, Group{"Bolts", kMountBolts}, Group{"Deck and backing", kMountDeck}, Group{"Metal on metal, road", kMountFinish, draw_joint_metals}, Group{"Loads", {}, draw_loads}, Group{"The plate under load", {}, draw_loaded_plate}, Group{"Which plate serves", {}, draw_plate_choice}, Group{"A flex test", kMountFlex, draw_flex_test}, Group{"Drawings to make it by", {}, draw_plate_papers}};

constexpr std::array<std::string_view, 4> kTrimMain{"trim.bank_x_m", "trim.bank_y_m", "trim.motor_x_m", "trim.motor_y_m"};
constexpr std::array<std::string_view, 3> kTrimBoat{"trim.initial_trim_deg", "trim.gm_m", "trim.waterplane_ratio"};
constexpr std::array<std::string_view, 2> kTrimHeights{"trim.bank_z_m", "trim.motor_z_m"};
constexpr std::array<std::string_view, 2> kTrimPlate{"trim.capacity_persons_count", "trim.capacity_mass_kg"};
constexpr std::array<std::string_view, 1> kTrimRoll{"trim.roll_period_s"};
constexpr std::array<std::string_view, 4> kTrimIncline{"trim.incline_mass_kg", "trim.incline_shift_m", "trim.pendulum_m", "trim.pendulum_shift_mm"};
constexpr std::array<std::string_view, 2> kTrimImmersion{"trim.immersion_mass_kg", "trim.immersion_mm"};
constexpr std::array kTrimGroups{Group{"", kTrimMain}, Group{"What each thing does", {}, draw_weight_shares}, Group{"The boat afloat", kTrimBoat}, Group{"Heights", kTrimHeights, draw_heights}, Group{"The capacity plate", kTrimPlate, draw_capacity_plate}, Group{"Roll test", kTrimRoll, draw_roll_test}, Group{"Inclining test", kTrimIncline, draw_inclining_test}, Group{"Weight and sinkage", kTrimImmersion, draw_immersion_test}};

constexpr std::array<std::string_view, 5> kControlMain{"control.remote", "control.remote_h", "control.receiver_clear_deg", "control.link", "control.main_switch"};
constexpr std::array<std::string_view, 6> kControlSensor{"control.sensor_x_m", "control.sensor_y_m", "control.sensor_z_m", "control.sensor_turn_deg", "control.heading_limit_deg", "control.tilt_deg"};
constexpr std::array<std::string_view, 3> kControlReceiver{"control.receiver_x_m", "control.receiver_y_m", "control.receiver_z_m"};
constexpr std::array<std::string_view, 5> kControlFeeder{"control.feeder_y_m", "control.feeder_z_m", "control.feeder_lay", "control.spacing_mm", "control.pitch_mm"};
constexpr std::array<std::string_view, 3> kControlEarth{"control.latitude_deg", "control.longitude_deg", "control.year"};
constexpr std::array<std::string_view, 11> kControlNetwork{"control.backbone_m", "control.backbone_cable", "control.longest_drop_m", "control.drops_m", "control.node_count", "control.load_units_count", "control.terminator_count", "control.network_feed", "control.network_fuse_A", "control.drip_loops", "control.negative_in_data_cable"};
constexpr std::array<std::string_view, 2> kControlSwitch{"control.switch_rated_A", "control.always_on_W"};
constexpr std::array kControlGroups{Group{"", kControlMain}, Group{"Heading sensor", kControlSensor, draw_heading_sensor}, Group{"Position receiver", kControlReceiver}, Group{"The feeder's way past it", kControlFeeder}, Group{"The earth's field here", kControlEarth}, Group{"Data link", kControlNetwork}, Group{"Switch, and what stays on", kControlSwitch}};

constexpr std::array<std::string_view, 1> kPackMain{"title"};
constexpr std::array kPackGroups{Group{"", kPackMain}};

constexpr std::array<std::string_view, 3> kThreeNumbers{"boat.length_m", "boat.displacement_kg", "boat.bow_height_m"};

constexpr std::array<std::string_view, 2> kBoatResults{"boat.frontal_area_m2", "boat.lateral_area_m2"};
constexpr std::array<std::string_view, 2> kWaterResults{"water.wave_height_m", "water.wave_period_s"};
constexpr std::array<std::string_view, 11> kHoldResults{"hold.wind_N", "hold.current_N", "hold.wave_N", "hold.thrust_mean_N", "hold.margin_factor", "hold.motor", "hold.thrust_effective_N", "hold.margin_actual_factor", "hold.heading_deg", "hold.limiting_wind_mps", "hold.power_mean_W"};
constexpr std::array<std::string_view, 6> kShaftResults{"shaft.length_m", "shaft.propeller_depth_m", "shaft.relative_motion_m", "shaft.immersion_factor", "shaft.tube_stress_MPa", "shaft.speed_limit_deployed_mps"};
constexpr std::array<std::string_view, 13> kBankResults{"bank.block", "bank.block_count", "bank.nominal_V", "bank.capacity_required_Ah", "bank.capacity_Ah", "bank.usable_Wh", "bank.endurance_h", "bank.endurance_full_h", "bank.peak_A", "hold.day_rms_A", "hold.energy_Wh", "bank.years_count", "bank.mass_kg"};
constexpr std::array<std::string_view, 9> kFeederResults{"feeder.conductor", "feeder.tail_conductor", "feeder.device", "feeder.current_A", "feeder.drop_V", "feeder.motor_V", "feeder.loss_W", "feeder.fault_near_A", "feeder.fault_far_A"};
constexpr std::array<std::string_view, 7> kChargeResults{"charge.charger", "charge.output_A", "charge.shore_A", "charge.ventilation_m3_per_h", "charge.vent_area_cm2", "charge.spark_clearance_mm", "charge.minutes_to_limit_min"};
constexpr std::array<std::string_view, 9> kMountResults{"mount.plate", "mount.bolt", "mount.bolt_count", "mount.slam_N", "mount.plate_stress_MPa", "mount.sag_mm", "mount.frequency_Hz", "mount.bolt_tension_N", "mount.bolt_torque_Nm"};
constexpr std::array<std::string_view, 4> kControlResults{"control.sensor_gap_m", "control.network_cable", "control.network_current_A", "control.network_drop_V"};
constexpr std::array<std::string_view, 6> kTrimResults{"trim.added_kg", "trim.stern_sinkage_m", "trim.trim_deg", "trim.heel_deg", "trim.bow_freeboard_m", "trim.gm_after_m"};
constexpr std::array<std::string_view, 4> kPackResults{"parts.parts_price", "parts.labour_h", "parts.mass_kg", "parts.lead_days"};
// clang-format on

Shown shown(const Context& ui, const Output& output) {
  return shown_output(output, ui.document.design(), ui.document.catalogue().shop.currency,
                      ui.state.system);
}

void draw_fields(Context& ui, Paths paths) {
  for (const std::string_view path : paths) {
    if (const Field* field = find_field(path)) field_control(ui, *field);
  }
}

void draw_results(Context& ui, Paths paths) {
  if (paths.empty()) return;
  const Within list(ui.sheet, Role::list, "Results");
  for (const std::string_view path : paths) {
    const Output* output = find_output(path);
    if (output == nullptr) continue;
    if (output->applies != nullptr && !output->applies(ui.document.design())) continue;
    const Within item(ui.sheet, Role::listitem);
    result_row(ui, path, label_of(*output), shown(ui, *output), step_of(*output));
  }
}

void draw_headline(Context& ui, std::string_view path) {
  const Output* output = find_output(path);
  if (output == nullptr) return;
  Sheet& sheet = ui.sheet;
  const Shown figures = shown(ui, *output);
  const float top = sheet.y;
  const float line = sheet.scaled(kHeadline.line);
  const std::string figure = sheet.fitted(kHeadline, figures.number, sheet.width - 60.0f);
  sheet.text_at(sheet.x, sheet.y, kHeadline, sheet.palette().ink, figure);
  sheet.text_at(sheet.x + sheet.text_width(kHeadline, figure) + 6.0f,
                sheet.y + line - sheet.scaled(kSection.line) - 4.0f, kSection,
                sheet.palette().muted, figures.unit);
  sheet.y += line;
  sheet.y +=
      sheet.paragraph(sheet.x, sheet.y, sheet.width, kNote, sheet.palette().muted, label_of(*output));
  sheet.record({.id = "headline",
                .role = Role::text,
                .name = std::string(label_of(*output)) + ": " + figures.text()},
               {sheet.x, top, sheet.width, sheet.y - top});
  sheet.y += kUnit;
}

void draw_checks(Context& ui, std::span<const Check* const> checks) {
  const Within list(ui.sheet, Role::list, "Checks");
  for (const Check* check : checks) {
    const Within item(ui.sheet, Role::listitem);
    check_row(ui, *check);
  }
}

void draw_trace(Context& ui, const Trace& trace) {
  for (const Caution& item : trace.cautions) caution(ui, item);
  if (!trace.checks.empty() && disclosure(ui, "checks." + ui.state.page, "Checks on this page")) {
    std::vector<const Check*> checks;
    for (const Check& check : trace.checks) checks.push_back(&check);
    checks = sorted(std::move(checks), [](const Check* a, const Check* b) { return more_serious(*a, *b); });
    draw_checks(ui, checks);
  }
  const bool worked_out = !trace.steps.empty() || !ui.document.told();
  if (worked_out && disclosure(ui, "steps." + ui.state.page, "Every step")) {
    for (const Step& step : trace.steps) step_note(ui, step);
  }
  if (!trace.assumptions.empty() &&
      disclosure(ui, "assumptions." + ui.state.page, "What is assumed")) {
    for (const Assumption& assumption : trace.assumptions) body(ui, assumption.text);
  }
}

void draw_estimates(Context& ui, std::string_view section) {
  const Trace& trace = ui.document.design().estimates;
  const std::string prefix = "estimate." + std::string(section) + ".";
  const bool any = std::any_of(trace.steps.begin(), trace.steps.end(),
                               [&](const Step& step) { return step.id.starts_with(prefix); });
  if (!any || !disclosure(ui, "estimates." + ui.state.page, "How the estimates were made")) return;
  for (const Step& step : trace.steps) {
    if (step.id.starts_with(prefix)) step_note(ui, step);
  }
  for (const Assumption& assumption : trace.assumptions) {
    if (assumption.field.starts_with(std::string(section) + ".")) body(ui, assumption.text);
  }
}

void draw_groups(Context& ui, std::span<const Group> groups) {
  for (const Group& group : groups) {
    if (!group.title.empty() &&
        !disclosure(ui, ui.state.page + "." + std::string(group.title), group.title)) {
      continue;
    }
    draw_fields(ui, group.fields);
    if (group.after != nullptr) group.after(ui);
  }
}

// The three strongest reasons, and what would make it fit.
void draw_answer(Context& ui) {
  const Design& design = ui.document.design();
  Sheet& sheet = ui.sheet;
  const float mark = sheet.scaled(34.0f);
  const float top = sheet.y;
  fit_mark(sheet, sheet.x, sheet.y + 3.0f, mark, design.outcome.fit);
  const std::string_view fit = fit_word(design.outcome.fit);
  sheet.y +=
      std::max(sheet.paragraph(sheet.x + mark + 12.0f, sheet.y, sheet.width - mark - 12.0f,
                               kHeadline, fit_colour(sheet.palette(), design.outcome.fit), fit),
               mark);
  sheet.record({.id = "answer", .role = Role::text, .name = std::string(fit)},
               {sheet.x, top, sheet.width, sheet.y - top});
  sheet.y += kUnit;
  const std::vector<const Check*> checks = design.checks_by_seriousness();
  heading(ui, 2, "The three strongest reasons");
  draw_checks(ui, std::span(checks).first(std::min<std::size_t>(3, checks.size())));
  if (!design.outcome.changes.empty()) {
    heading(ui, 2, "What would make it fit");
    note(ui, "Tried by Thole: with these changes every check passes. Each can be undone.");
    for (std::size_t i = 0; i < design.outcome.changes.size(); ++i) {
      const Change& change = design.outcome.changes[i];
      if (button(ui, "fit." + std::to_string(i), change.label)) ui.document.apply(change);
    }
  }
}

void draw_quick(Context& ui) {
  draw_fields(ui, std::array<std::string_view, 1>{"boat.type"});
  draw_fields(ui, kThreeNumbers);
  draw_fields(ui, std::array<std::string_view, 1>{"water.exposure"});
  wind_slider(ui, *find_field("water.wind_mps"));
}

void draw_ready_jobs(Context& ui) {
  if (!disclosure(ui, "ready", "Start from a ready-made job")) return;
  note(ui, "Invented boats and waters, to look round with. Undo brings yours back.");
  for (const ReadyJob& ready : ready_jobs()) {
    if (button(ui, "ready." + ready.id, ready.label)) {
      ui.document.replace(ready.job);
      ui.state.rejected.clear();
      ui.state.message = "Opened: " + ready.label;
    }
  }
}

void draw_part(Context& ui, const PartLine& line) {
  const Within item(ui.sheet, Role::listitem);
  const bool whole = line.unit.empty() || line.unit == "m";
  std::string label = fixed(line.quantity, whole ? 0 : 2);
  if (!line.unit.empty()) label += " " + unit_text(line.unit);
  label += " × " + shown_conductor(line.label);
  result_row(ui, "part." + line.id, label,
             {fixed(line.price, 0), ui.document.catalogue().shop.currency}, "");
}

void draw_parts(Context& ui) {
  const PartsResult& parts = ui.document.design().parts;
  ui.sheet.space(kFieldGap);
  heading(ui, 2, "Parts");
  note(ui, "Generic classes at invented prices until a shop's own catalogue is loaded.");
  {
    const Within list(ui.sheet, Role::list, "Parts");
    for (const PartLine& line : parts.lines) draw_part(ui, line);
  }
  ui.sheet.space(kFieldGap);
  heading(ui, 2, "Work");
  const Within list(ui.sheet, Role::list, "Work");
  for (const TaskLine& task : parts.tasks) {
    const Within item(ui.sheet, Role::listitem);
    const std::string times = task.count > 1.0 ? fixed(task.count, 0) + " × " : "";
    result_row(ui, "task." + task.id, times + task.label, {fixed(task.labour_h, 1), "h"}, "");
  }
}

const Trace* no_trace(const Design&) { return nullptr; }

constexpr std::array kPages{
    Page{.key = "quick",
         .title = "Quick check",
         .lead = "Three numbers, where you hold, and the wind: will it fit?",
         .picture = boat_picture,
         .trace = no_trace,
         .extra = draw_quick},
    Page{.key = "boat",
         .title = "Boat",
         .lead = "What the wind and the water take hold of.",
         .results = kBoatResults,
         .groups = kBoatGroups,
         .picture = boat_picture,
         .trace = no_trace},
    Page{.key = "water",
         .title = "Water",
         .lead = "The worst in which it should still hold.",
         .results = kWaterResults,
         .groups = kWaterGroups,
         .picture = water_picture,
         .trace = no_trace},
    Page{.key = "hold",
         .title = "Hold",
         .lead = "The thrust that keeps the bow over the spot.",
         .headline = "hold.thrust_required_N",
         .results = kHoldResults,
         .groups = kHoldGroups,
         .picture = hold_picture,
         .trace = [](const Design& d) { return &d.hold.trace; }},
    Page{.key = "shaft",
         .title = "Shaft",
         .lead = "From the deck to water that stays solid.",
         .headline = "shaft.length_required_m",
         .results = kShaftResults,
         .groups = kShaftGroups,
         .picture = shaft_picture,
         .trace = [](const Design& d) { return &d.shaft.trace; }},
    Page{.key = "bank",
         .title = "Bank",
         .lead = "Batteries that last the day, old and cold.",
         .headline = "bank.endurance_h",
         .results = kBankResults,
         .groups = kBankGroups,
         .picture = bank_picture,
         .trace = [](const Design& d) { return &d.bank.trace; }},
    Page{.key = "feeder",
         .title = "Feeder",
         .lead = "Cable and protection from bank to motor.",
         .headline = "feeder.drop_frac",
         .results = kFeederResults,
         .groups = kFeederGroups,
         .picture = feeder_picture,
         .trace = [](const Design& d) { return &d.feeder.trace; }},
    Page{.key = "charge",
         .title = "Charging",
         .lead = "Full again by morning, and vented.",
         .headline = "charge.time_h",
         .results = kChargeResults,
         .groups = kChargeGroups,
         .picture = charge_picture,
         .trace = [](const Design& d) { return &d.charge.trace; }},
    Page{.key = "mount",
         .title = "Mount",
         .lead = "A plate that does not flex, bolts that stay.",
         .headline = "mount.plate_thickness_mm",
         .results = kMountResults,
         .groups = kMountGroups,
         .picture = mount_picture,
         .trace = [](const Design& d) { return &d.mount.trace; }},
    Page{.key = "trim",
         .title = "Trim",
         .lead = "What the weight does to how she floats.",
         .headline = "trim.bow_sinkage_m",
         .results = kTrimResults,
         .groups = kTrimGroups,
         .picture = trim_picture,
         .under_picture = draw_bank_slider,
         .trace = [](const Design& d) { return &d.trim.trace; }},
    Page{.key = "control",
         .title = "Control and sensors",
         .lead = "What tells the motor where to stay.",
         .headline = "control.heading_error_deg",
         .results = kControlResults,
         .groups = kControlGroups,
         .picture = control_picture,
         .trace = [](const Design& d) { return &d.control.trace; }},
    Page{.key = "pack",
         .title = "Job pack",
         .lead = "Parts, work and the papers.",
         .headline = "parts.total_price",
         .results = kPackResults,
         .groups = kPackGroups,
         .picture = nullptr,
         .trace = [](const Design& d) { return &d.parts.trace; },
         .extra = draw_parts},
};

void draw_qr(Context& ui) {
  if (!disclosure(ui, "qr-code", "QR code")) return;
  Sheet& sheet = ui.sheet;
  const Qr qr = make_qr(ui.state.around.address + "#" + write_link(ui.document.given()));
  if (qr.side == 0) {
    note(ui, "This link is too long for a QR code: copy it instead.");
    return;
  }
  note(ui, "Another phone's camera opens this job from here.");
  // Dark on light by night as well: most readers want it so. Whole px to a module keep it sharp.
  const auto modules = static_cast<float>(qr.side + 2 * kQrQuiet);
  const float room = std::min(sheet.width, sheet.scaled(320.0f));
  const float module =
      std::max(std::floor(room / modules), 0.5f * std::floor(2.0f * room / modules));
  const float whole = module * modules;
  const Rect rect{sheet.x, sheet.y, whole, whole};
  sheet.box(rect, kDay.raised, kDay.raised);
  for (int y = 0; y < qr.side; ++y) {
    for (int x = 0; x < qr.side; ++x) {
      if (!qr.at(x, y)) continue;
      const int from = x;
      while (qr.at(x + 1, y)) ++x;
      sheet.box({rect.x + module * static_cast<float>(from + kQrQuiet),
                 rect.y + module * static_cast<float>(y + kQrQuiet),
                 module * static_cast<float>(x + 1 - from), module},
                kDay.ink, kDay.ink);
    }
  }
  sheet.record({.id = "qr", .role = Role::image, .name = "QR code of the link to this job"}, rect);
  sheet.y += whole + kFieldGap;
}

void draw_files(Context& ui) {
  if (!disclosure(ui, "files", "Files")) return;
  pair_of_buttons(ui, {"save-file", "Save the job", "save-file"},
                  {"open-file", "Open a job", "open-file"});
  note(ui, "A job file is plain text (JSON); its format is described with the program.");
}

void draw_kept(Context& ui) {
  const std::vector<std::string>& kept = ui.state.around.kept;
  if (kept.empty() || !disclosure(ui, "kept", "Earlier jobs on this device")) return;
  const Within list(ui.sheet, Role::list, "Earlier jobs");
  for (std::size_t i = 0; i < kept.size(); ++i) {
    const Within item(ui.sheet, Role::listitem);
    button(ui, "kept." + std::to_string(i), kept[i], Weight::plain, 0.0f, "open-kept");
  }
}

// Undo, units, link: what belongs to the job and not to a page.
void draw_job_tools(Context& ui) {
  Sheet& sheet = ui.sheet;
  const Surroundings& around = ui.state.around;
  sheet.space(kGroupGap - kUnit);
  heading(ui, 2, "This job");
  if (around.update_ready) {
    note(ui, "A newer Thole is ready. Your job stays as it is.");
    button(ui, "update", "Change to the newer one", Weight::plain, 0.0f, "update");
  }
  if (!around.contact_label.empty()) {
    button(ui, "ask-quote", around.contact_label, Weight::primary, 0.0f, "ask-quote");
  }
  const int turn = pair_of_buttons(ui, {"undo", "Undo", "", ui.document.can_undo()},
                                   {"redo", "Redo", "", ui.document.can_redo()});
  if (turn == 0) ui.document.undo();
  if (turn == 1) ui.document.redo();
  if (around.can_share) {
    pair_of_buttons(ui, {"share-link", "Share", "share-link", true, Weight::primary},
                    {"copy-link", "Copy link", "copy-link"});
  } else {
    button(ui, "copy-link", "Copy link", Weight::primary, 0.0f, "copy-link");
  }
  button(ui, "show-sheet", "Job sheet, to print", Weight::plain, 0.0f, "show-sheet");
  note(ui, "The link is the whole job. Nothing is sent to a server.");
  if (around.keeps_nothing) {
    note(ui,
         "This browser keeps nothing here: copy the link, or save the job, before you close it.");
  }
  draw_qr(ui);
  draw_files(ui);
  draw_kept(ui);
  sheet.space(kUnit);
  const int system = segments(ui, "units", "Units", {{"metric", "Metric"}, {"us", "US"}},
                              ui.state.system == System::metric ? 0 : 1);
  if (system >= 0) ui.state.system = system == 0 ? System::metric : System::us;
  sheet.space(kGroupGap);
}

void use(Sheet& sheet, const Rect& column) {
  sheet.x = column.x;
  sheet.width = column.width;
}

}  // namespace

std::span<const Page> all_pages() { return kPages; }

int page_index(std::string_view key) {
  for (std::size_t i = 0; i < kPages.size(); ++i) {
    if (kPages[i].key == key) return static_cast<int>(i);
  }
  return 0;
}

const Page& find_page(std::string_view key) {
  return kPages[static_cast<std::size_t>(page_index(key))];
}

std::vector<const Page*> shown_pages(const UiState& state) {
  std::vector<const Page*> pages;
  const std::vector<std::string>& chosen = state.around.pages;
  for (const Page& page : kPages) {
    if (chosen.empty() || std::find(chosen.begin(), chosen.end(), page.key) != chosen.end()) {
      pages.push_back(&page);
    }
  }
  return pages;
}

bool may_show(const UiState& state, std::string_view key) {
  const std::vector<const Page*> pages = shown_pages(state);
  const auto same = [&](const Page* page) { return page->key == key; };
  return key == kChecksPage || key == kContentsPage ||
         std::any_of(pages.begin(), pages.end(), same);
}

void draw_page(Context& ui, const Page& page, const Columns& columns) {
  Sheet& sheet = ui.sheet;
  const Design& design = ui.document.design();
  const float top = sheet.y;
  const bool quick = page.key == "quick";

  use(sheet, columns.picture);
  if (page.picture != nullptr) {
    const float height = columns.wide ? std::clamp(0.5f * columns.picture.width, 240.0f, 480.0f)
                                      : 0.62f * columns.picture.width;
    picture(ui, "picture", page.picture(design, ui.state.system), height);
    sheet.space(kUnit);
    if (page.under_picture != nullptr) page.under_picture(ui);
  }
  heading(ui, 1, page.title);
  body(ui, page.lead);
  sheet.space(kUnit);
  if (quick && columns.wide) draw_answer(ui);
  draw_headline(ui, page.headline);
  draw_results(ui, page.results);
  if (columns.wide) {
    sheet.space(kFieldGap);
    if (const Trace* trace = page.trace(design)) draw_trace(ui, *trace);
    draw_estimates(ui, page.key);
  }
  const float picture_bottom = sheet.y;

  use(sheet, columns.form);
  sheet.y = columns.wide ? top : sheet.y + kFieldGap;
  if (page.extra != nullptr) page.extra(ui);
  draw_groups(ui, page.groups);
  if (!columns.wide) {
    if (quick) {
      draw_answer(ui);
      sheet.space(kFieldGap);
    }
    if (const Trace* trace = page.trace(design)) draw_trace(ui, *trace);
    draw_estimates(ui, page.key);
  }
  if (quick) draw_ready_jobs(ui);
  draw_job_tools(ui);
  sheet.y = std::max(sheet.y, picture_bottom);
}

std::string page_value(const Context& ui, const Page& page) {
  const Output* output = find_output(page.headline);
  if (output == nullptr) return {};
  return shown(ui, *output).text();
}

void draw_checks(Context& ui) {
  heading(ui, 1, "All checks, worst first");
  note(ui, "Each bar shows how much of its limit is used; the mark is the limit.");
  draw_checks(ui, ui.document.design().checks_by_seriousness());
}

void draw_contents(Context& ui) {
  heading(ui, 1, "Pages");
  const Within list(ui.sheet, Role::list, "Pages");
  for (const Page* page : shown_pages(ui.state)) {
    const Within item(ui.sheet, Role::listitem);
    const std::string value = page_value(ui, *page);
    std::string label(page->title);
    if (!value.empty()) label += "   " + value;
    if (button(ui, "goto." + std::string(page->key), label, Weight::plain)) {
      ui.state.page = std::string(page->key);
    }
  }
}

}  // namespace thole::ui
