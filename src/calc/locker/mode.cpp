#include "calc/locker/mode.h"

#include <utility>

namespace thole {

Mode mode_of(const PackingInput& in, Posture posture, int tier_count) {
  const bool upright = posture == Posture::upright;
  Mode mode{.posture = posture, .tier_count = tier_count};
  mode.depth_m = upright ? in.block_width_m : in.block_height_m;
  mode.rise_m = upright ? in.block_height_m : in.block_width_m;
  mode.over_m = upright ? in.terminal_room_m : in.air_gap_m;
  mode.ahead_m = upright ? 0.0 : in.terminal_room_m;
  mode.pitch_m = mode.rise_m + mode.over_m + in.shelf_m;
  mode.height_m = (tier_count - 1) * mode.pitch_m + mode.rise_m + mode.over_m;
  mode.plan = {.long_m = in.block_length_m + in.air_gap_m,
               .short_m = mode.depth_m + mode.ahead_m + in.strap_room_m + in.air_gap_m,
               .length_m = in.locker_length_m - in.air_gap_m,
               .width_m = in.locker_width_m - in.air_gap_m};
  if (mode.plan.long_m < mode.plan.short_m) std::swap(mode.plan.long_m, mode.plan.short_m);
  return mode;
}

std::vector<Mode> modes_of(const PackingInput& in) {
  std::vector<Mode> modes{mode_of(in, Posture::upright, 1)};
  if (in.chemistry == Chemistry::flooded) return modes;  // acid runs out; caps must be reached
  if (in.side_allowed) modes.push_back(mode_of(in, Posture::on_side, 1));
  if (in.tiers_allowed) {
    modes.push_back(mode_of(in, Posture::upright, 2));
    if (in.side_allowed) modes.push_back(mode_of(in, Posture::on_side, 2));
  }
  return modes;
}

}  // namespace thole
