#pragma once

// The data link between motor and plotter held against its standard's limits.

#include <optional>
#include <string>

#include "base/trace.h"
#include "data/control_kinds.h"
#include "data/data_links.h"

namespace thole {

struct DataLinkInput {
  DataLink kind = DataLink::none;
  double cable_m = 0.0;  // backbone between its terminators, or the Ethernet cable
  double longest_drop_m = 0.0;
  double drops_m = 0.0;  // all together
  int device_count = 0;
  int load_units_count = 0;
  NetworkFeed feed = NetworkFeed::end;
  std::optional<Backbone> backbone{};  // empty: the lightest that serves
  // What only a look tells.
  std::optional<int> terminator_count{};
  std::optional<double> fuse_A{};  // 0: none
  std::optional<bool> drip_loops{};
  std::optional<bool> ties_negatives{};
  bool floating = true;  // the motor's bank: its negative is not tied to the boat
};

struct DataLinkResult {
  std::string cable{};    // as given, else the lightest backbone that serves: "Light (micro)"; empty: no such link
  double current_A = 0.0;  // of all devices
  double leg_A = 0.0;      // in the heavier leg of the backbone
  double drop_V = 0.0;     // to the farthest device
};

// Adds steps, checks and cautions to `trace`; nothing for no link. Fed near the middle, half of the
// cable and half of the load numbers (rounded up) are on a side.
DataLinkResult data_link(const DataLinkInput& in, Trace& trace);

// 0.1 x load numbers x metres x ohm per metre: 50 mA each, out and back, all at the far end.
// Source: kNetworkDrop.
double network_drop_V(double ohm_per_m, double distance_m, double load_units_count);

}  // namespace thole
