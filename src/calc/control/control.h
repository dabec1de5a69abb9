#pragma once

// What tells the motor where to stay: heading sensor, position receiver, remote, data link, and the
// switch by the bank.

#include <optional>
#include <string_view>
#include <vector>

#include "base/trace.h"
#include "calc/control/data_link.h"
#include "data/control_kinds.h"
#include "data/windage.h"

namespace thole {

// At full thrust, as the feeder is led past the heading sensor; worked out by the compass.
struct HeadingInput {
  double field_T = 0.0;       // level part of the feeder's, at the sensor
  double horizontal_T = 0.0;  // of the earth's; > 0
  SourceRef earth_source{};
  bool earth_assumed = true;   // nobody said where
  bool year_outside = false;   // of the model of the earth's field
  double limit_deg = 2.0;
  double gap_m = 0.0;          // sensor to the pair
  double tilt_deg = 0.0;
  std::optional<double> turn_deg{};  // off the keel line, untold to the set-up
  std::vector<Change> changes{};     // any of which keeps the limit
};

inline constexpr double kReceiverGap_m = 0.5;  // kCommonPractice: receiver to feeder

// The position receiver, or its aerial.
struct ReceiverInput {
  bool placed = false;  // somebody said where
  double x_m = 0.0;     // forward of the transom
  double z_m = 0.0;     // above the water
  double gap_m = 0.0;   // to the feeder
  double off_feeder_m = 0.0;  // above the water: high enough for kReceiverGap_m, where it is nearer
  std::vector<OutlinePoint> boat{};  // her outline from the side; empty: not drawn
};

struct ControlInput {
  HeadingInput heading{};
  double thrust_N = 0.0;       // mean, to hold
  double hours_on_h = 0.0;     // of a day
  double bank_Ah = 0.0;
  bool breaker = true;         // the feeder's device is one, not a fuse
  double current_A = 0.0;      // full thrust, end of discharge
  std::optional<double> sky_clear_deg{};
  ReceiverInput receiver{};
  std::optional<RemotePower> remote{};
  std::optional<double> remote_h{};
  DataLinkInput link{};
  MainSwitch main_switch = MainSwitch::own;
  std::optional<double> switch_rated_A{};
  std::optional<double> always_on_W{};
};

struct ControlResult {
  double heading_error_deg = 0.0;  // at full thrust, worst heading; 180: it shows none
  double sensor_gap_m = 0.0;
  double side_push_N = 0.0;        // of a sensor turned off the keel line, while it holds
  double sky_frac = 0.0;           // left above the worst obstacle; 0: not told
  double standing_Wh = 0.0;        // of a day, from what is always on
  DataLinkResult link{};
  Trace trace{};
};

// Checks only what was told; what was not stands among the assumptions. Sources: kHeadingTriangle,
// kNetworkLimits, ABYC E-11 as published, and common practice, which says so. Left out: steel,
// magnets and loudspeakers near the sensor, radio interference, the remote's range.
ControlResult control(const ControlInput& in);

}  // namespace thole
