#include "job/uncertainty.h"

#include <algorithm>
#include <array>

#include "data/sources.h"
#include "job/fields.h"

namespace thole {
namespace {

constexpr Uncertainty share(std::string_view field, Likely measured, Likely estimated,
                            const Source& source, std::string_view why) {
  return {field, Spread::share, measured, estimated, source, why};
}
constexpr Uncertainty amount(std::string_view field, Likely measured, Likely estimated,
                             const Source& source, std::string_view why) {
  return {field, Spread::amount, measured, estimated, source, why};
}
constexpr Likely even(double width) { return {width, width}; }

constexpr const Source& kTape = kCommonPractice;  // what the usual care gives
constexpr const Source& kOwn = kProjectDecision;  // our own judgement, docs/decisions.md

// clang-format off
constexpr std::array kUncertainties{
    // boat
    share("boat.length_m", even(0.01), even(0.10), kOwn, "Brochures count pulpits and platforms in or out."),
    share("boat.displacement_kg", even(0.10), {0.25, 0.35}, kOwn, "Few boats are weighed as they go out."),
    amount("boat.bow_height_m", even(0.03), even(0.15), kTape, "By tape at the berth; by proportion when estimated."),
    share("boat.beam_m", even(0.01), even(0.08), kTape, "By tape; by proportion when estimated."),
    share("boat.waterline_length_m", even(0.02), even(0.06), kOwn, "The loaded waterline is not the marked one."),
    share("boat.waterline_beam_m", even(0.03), even(0.08), kOwn, "Measured under flare, or by proportion."),
    share("boat.draft_m", even(0.06), even(0.20), kOwn, "Brochures give the draft with the engine down."),
    amount("boat.deadrise_deg", even(1.0), even(4.0), kOwn, "It changes along the hull."),
    share("boat.cruise_speed_mps", even(0.05), even(0.20), kOwn, "As it is really driven."),
    amount("boat.crew_count", even(0.0), even(1.0), kOwn, "People come and go."),
    amount("boat.leg_propeller_m", even(0.01), even(0.04), kTape, "Stamped on the hub, or the usual size."),
    share("boat.frontal_area_m2", even(0.10), even(0.25), kOwn, "The same layout shows from a quarter less to a quarter more."),
    share("boat.lateral_area_m2", even(0.10), even(0.20), kOwn, "The same layout shows from a fifth less to a fifth more."),
    amount("boat.lateral_centroid_m", even(0.15), even(0.40), kOwn, "By cutting out the photograph, or by layout."),
    share("boat.underwater_area_m2", even(0.08), even(0.20), kOwn, "Skegs, strakes and legs count in."),
    amount("boat.underwater_centroid_m", even(0.15), even(0.40), kOwn, "It moves with trim and legs."),
    amount("boat.bow_angle_deg", even(3.0), even(8.0), kOwn, "By proportion, unless measured at the waterline."),
    // water
    share("water.wind_mps", even(0.10), even(0.20), kOwn, "Forecasts of the mean miss by a tenth and more."),
    share("water.fetch_m", even(0.10), even(0.50), kOwn, "From the chart, or by kind of water."),
    share("water.depth_m", even(0.15), even(0.50), kOwn, "Tide and soundings."),
    share("water.current_mps", even(0.15), {0.40, 0.30}, kOwn, "Tables give the stream, not the eddy you lie in."),
    amount("water.current_angle_deg", even(15.0), even(30.0), kOwn, "Wind and stream turn in their own time."),
    share("water.wave_height_m", {0.30, 0.42}, {0.35, 0.45}, kOwn, "What waves push is known within a factor of two, whatever their height."),
    share("water.wave_period_s", even(0.10), even(0.20), kOwn, "Fetch formulas differ by a fifth."),
    amount("water.air_C", even(5.0), even(10.0), kOwn, "Cold air pushes harder."),
    // hold
    share("hold.thrust_N", {0.10, 0.03}, {0.10, 0.03}, kOwn, "Claims are seldom short of the pull that is measured."),
    share("hold.power_full_W", {0.05, 0.10}, {0.05, 0.10}, kOwn, "At the plug, full thrust; papers round down."),
    share("hold.power_idle_W", even(0.30), even(0.50), kOwn, "Steering takes more in a chop."),
    share("hold.propeller_diameter_m", even(0.02), even(0.08), kTape, "By tape, or from its papers."),
    share("hold.motor_mass_kg", even(0.05), even(0.10), kTape, "With shaft and head, or without."),
    share("hold.holding_h", even(0.20), even(0.40), kOwn, "Days differ."),
    share("hold.transit_h", even(0.40), even(0.60), kOwn, "Days differ."),
    share("hold.transit_thrust_frac", even(0.20), even(0.30), kOwn, "It creeps faster with the wind astern."),
    share("hold.windage_factor", even(0.10), {0.30, 0.10}, kOwn, "The ship standard's drag is near the top of what is measured; a trial at sea narrows it."),
    share("hold.drag_factor", even(0.15), {0.50, 0.20}, kOwn, "Hull, legs and growth of small craft are hardly measured; a trial at sea narrows it."),
    // shaft
    amount("shaft.thruster_forward_m", even(0.05), even(0.20), kTape, "By tape, or by proportion."),
    amount("shaft.collar_m", even(0.01), even(0.03), kTape, "By tape."),
    amount("shaft.trim_allowance_m", even(0.02), even(0.05), kOwn, "Fuel, water and people."),
    share("shaft.tube_yield_MPa", even(0.10), even(0.20), kOwn, "From its papers, or by kind."),
    share("shaft.tube_modulus_GPa", even(0.05), even(0.15), kOwn, "From its papers, or by kind."),
    // bank
    share("bank.capacity_Ah", {0.10, 0.03}, {0.10, 0.05}, kOwn, "New blocks come a few per cent short and take cycles to form."),
    amount("bank.peukert_exponent", even(0.03), even(0.06), kOwn, "By kind of battery, unless two ratings are on the label."),
    share("bank.resistance_ohm", even(0.15), {0.25, 0.50}, kOwn, "It grows with age and cold."),
    share("bank.block_mass_kg", even(0.02), even(0.08), kTape, "From the label, or by kind."),
    amount("bank.temperature_C", even(3.0), even(8.0), kOwn, "Lockers lag behind the air."),
    // feeder
    share("feeder.run_m", even(0.05), even(0.25), kTape, "Cable goes round what a tape goes through."),
    amount("feeder.tail_m", even(0.05), even(0.20), kTape, "Slack for stowing."),
    amount("feeder.jumper_m", even(0.03), even(0.10), kTape, "As the blocks come to stand."),
    amount("feeder.ambient_C", even(5.0), even(10.0), kOwn, "Lockers heat in the sun."),
    amount("feeder.device_distance_m", even(0.03), even(0.10), kTape, "Where there is room for it."),
    share("feeder.lug_ohm", {0.30, 1.00}, {0.30, 1.00}, kOwn, "Crimps age; studs work loose."),
    share("feeder.plug_ohm", {0.30, 1.00}, {0.30, 1.00}, kOwn, "Contacts tarnish in salt air."),
    // charge
    amount("charge.efficiency_frac", even(0.02), even(0.04), kOwn, "From its papers, at full output."),
    amount("charge.power_factor", even(0.03), even(0.10), kOwn, "From its papers, or by kind."),
    share("charge.shore_V", even(0.05), even(0.10), kOwn, "Long pontoons drop it."),
    share("charge.locker_volume_m3", even(0.10), even(0.40), kTape, "With the blocks in."),
    // mount
    amount("mount.overhang_mm", even(20.0), even(80.0), kOwn, "Balance the motor on an edge to find it."),
    share("mount.deck_thickness_mm", even(0.10), even(0.25), kOwn, "Known for sure only where it is drilled."),
    share("mount.core_thickness_mm", even(0.10), even(0.30), kOwn, "Known for sure only where it is drilled."),
    share("mount.run_wave_m", even(0.20), even(0.35), kOwn, "Skippers slow down, or do not."),
    // trim
    amount("trim.bank_x_m", even(0.05), even(0.40), kTape, "By tape, or where banks usually stand."),
    amount("trim.bank_y_m", even(0.03), even(0.10), kTape, "By tape."),
    amount("trim.motor_x_m", even(0.05), even(0.20), kTape, "By tape."),
    amount("trim.motor_y_m", even(0.03), even(0.05), kTape, "By tape."),
    amount("trim.waterplane_ratio", even(0.02), even(0.05), kOwn, "By kind of hull."),
    share("trim.gm_m", even(0.10), {0.25, 0.30}, kOwn, "By proportion, unless a roll test was made."),
    amount("trim.initial_trim_deg", even(0.20), even(0.50), kOwn, "By level on the cabin sole, or taken as none."),
};
// clang-format on

}  // namespace

std::span<const Uncertainty> all_uncertainties() { return kUncertainties; }

const Uncertainty* find_uncertainty(std::string_view field) {
  for (const Uncertainty& one : kUncertainties) {
    if (one.field == field) return &one;
  }
  return nullptr;
}

ValueRange likely_range(const Uncertainty& uncertainty, double value, Origin origin) {
  const bool estimated = origin == Origin::estimated || origin == Origin::preset;
  const Likely& likely = estimated ? uncertainty.estimated : uncertainty.measured;
  ValueRange range{.low = value - likely.low, .high = value + likely.high};
  if (uncertainty.spread == Spread::share) {
    range = {.low = value * (1.0 - likely.low), .high = value * (1.0 + likely.high)};
  }
  const Field* field = find_field(uncertainty.field);
  if (field == nullptr) return range;
  return {.low = std::clamp(range.low, field->min, field->max),
          .high = std::clamp(range.high, field->min, field->max)};
}

}  // namespace thole
