#include "calc/foredeck_study.h"

#include <algorithm>
#include <cmath>

#include "base/number.h"
#include "data/deck_items.h"

namespace thole {
namespace {

constexpr double kUnknownTube_m = 0.040;  // stands in for a tube that nobody measured
constexpr double kAgree_m = 0.10;         // two places of one shaft

// Measured in whole: place of the mount and the deck's width with what stands on it, or a rail.
bool mount_measured(const Foredeck& deck) { return deck.mount_x_m.given() && deck.mount_y_m.given(); }

RoomInput room_input(const Design& design) {
  const Foredeck& deck = design.job.foredeck;
  const MotorClass& motor = design.hold.motor;
  RoomInput in{.motor = {.length_m = design.shaft.length_m,
                         .tube_m = motor.tube_outer_mm > 0.0 ? 1e-3 * motor.tube_outer_mm : kUnknownTube_m,
                         .propeller_diameter_m = motor.propeller_diameter_m,
                         .collar_m = design.job.shaft.collar_m.value},
               .stance = {.pivot_aft_m = deck.mount_x_m.value,
                          .pivot_starboard_m = deck.mount_y_m.value,
                          .stow_angle_deg = deck.stow_angle_deg.value},
               .deck_length_m = deck.length_m.known() ? deck.length_m.value : 0.0,
               .deck_width_m = deck.width_m.value,
               .mount_measured = mount_measured(deck),
               .rail_height_m = deck.rail_height_m.known() ? deck.rail_height_m.value : 0.0,
               .rail_inset_m = deck.rail_inset_m.known() ? deck.rail_inset_m.value : 0.0};
  if (deck.items.known()) in.items = read_deck_items(deck.items.value).items;
  return in;
}

StowInput stow_input(const Design& design, const RoomInput& room, double axis_below_m) {
  const Foredeck& deck = design.job.foredeck;
  return {.motor_mass_kg = design.hold.motor.mass_kg,
          .reach_measured = deck.reach_m.given(),
          .reach_m = deck.reach_m.value,
          .hand_height_m = room.motor.length_m > 0.0 ? lying_height_m(room.motor) : 0.0,
          .travel_m = std::max(axis_below_m, 0.0),
          .slam_N = design.mount.slam_N,
          .tied_known = deck.tied.known(),
          .tied = deck.tied.value};
}

// Where the shaft stands is said on two pages.
void compare_places(const Design& design, ForedeckStudy& study) {
  const Job& job = design.job;
  if (!job.foredeck.mount_x_m.given() || !job.shaft.thruster_forward_m.given()) return;
  const double shaft_x_m = 0.5 * job.boat.waterline_length_m.value + job.shaft.thruster_forward_m.value;
  const double mount_x_m = job.boat.length_m.value - job.foredeck.mount_x_m.value;
  if (std::abs(shaft_x_m - mount_x_m) <= kAgree_m) return;
  study.notes.push_back("The mount's place and \"shaft forward of midships\" differ by " +
                        fixed(1000.0 * std::abs(shaft_x_m - mount_x_m), 0) + " mm: measure both again, they are one shaft.");
}

}  // namespace

std::vector<const Check*> ForedeckStudy::checks() const {
  std::vector<const Check*> all;
  for (const Trace* trace : {&room.trace, &light.trace, &stowing.trace}) {
    for (const Check& check : trace->checks) all.push_back(&check);
  }
  return all;
}

ForedeckStudy foredeck_study(const Design& design) {
  const Foredeck& deck = design.job.foredeck;
  ForedeckStudy study{.room_input = room_input(design)};
  study.axis_below_m = study.room_input.motor.length_m - study.room_input.motor.collar_m;
  study.room = foredeck_room(study.room_input);
  const bool light = deck.light_x_m.given() && deck.light_z_m.given();
  study.light_input = {.measured = light && study.room_input.mount_measured && study.room.problem.empty(),
                       .light = {deck.light_x_m.value, deck.light_y_m.value, deck.light_z_m.value}};
  if (study.room.problem.empty()) {
    study.light_input.stowed = tilted_motor(study.room_input.motor, study.room_input.stance, 0.0);
    study.light_input.deployed = deployed_motor(study.room_input.motor, study.room_input.stance, study.axis_below_m);
  }
  study.light = bow_light(study.light_input);
  study.stowing = stow(stow_input(design, study.room_input, study.axis_below_m));
  compare_places(design, study);
  return study;
}

}  // namespace thole
