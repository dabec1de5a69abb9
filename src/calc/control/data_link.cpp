#include "calc/control/data_link.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <string>
#include <utility>
#include <vector>

#include "data/sources.h"
#include "data/sources_control.h"

namespace thole {
namespace {

constexpr double kOutAndBack_A = 2.0 * kLoadNumber_A;  // of a load number, both conductors

struct Leg {
  double distance_m = 0.0;  // tap to the farthest device
  double loads_count = 0.0;
};

Leg heavier_leg(const DataLinkInput& in) {
  const double share = in.feed == NetworkFeed::middle ? 0.5 : 1.0;
  return {share * in.cable_m + in.longest_drop_m, std::ceil(share * in.load_units_count)};
}

bool serves(const NetworkCable& cable, const DataLinkInput& in, const Leg& leg) {
  return in.cable_m <= cable.longest_m && kLoadNumber_A * leg.loads_count <= cable.rated_A &&
         network_drop_V(cable.ohm_per_m, leg.distance_m, leg.loads_count) <= kNetworkDrop_V;
}

// The lightest that serves, else the heaviest.
const NetworkCable& lightest_cable(const DataLinkInput& in, const Leg& leg) {
  for (const NetworkCable& cable : network_cables()) {
    if (serves(cable, in, leg)) return cable;
  }
  return network_cables().back();
}

// What a given cable fails may be mended by a heavier one.
void mend(Check check, const NetworkCable& cable, const DataLinkInput& in, const Leg& leg, Trace& trace) {
  const NetworkCable& other = lightest_cable(in, leg);
  if (in.backbone && &other != &cable && serves(other, in, leg)) {
    check.remedy = std::string(other.label) + " cable serves. " + check.remedy;
    check.changes.insert(check.changes.begin(),
                         Change{.field = "control.backbone_cable", .value = double(&other - network_cables().data()), .label = "Lay heavier cable"});
  }
  trace.checks.push_back(std::move(check));
}

Check at_most(const char* id, const char* label, double actual, double limit, std::string_view unit,
              const Source& source, std::string remedy) {
  return {.id = id,
          .label = label,
          .actual = actual,
          .limit = limit,
          .unit = unit,
          .source = source,
          .remedy = std::move(remedy)};
}

void show_power(const DataLinkInput& in, const Leg& leg, const NetworkCable& cable,
                DataLinkResult& r, Trace& trace) {
  r.current_A = kLoadNumber_A * in.load_units_count;
  r.leg_A = kLoadNumber_A * leg.loads_count;
  r.drop_V = network_drop_V(cable.ohm_per_m, leg.distance_m, leg.loads_count);
  tell([&] {
    trace.steps.push_back({.id = "control.network_current",
                           .label = "Current of all devices on the network",
                           .symbol = "I_n",
                           .formula = "a * N",
                           .terms = {{"a", kLoadNumber_A, "A", "of one load number"},
                                     {"N", static_cast<double>(in.load_units_count), "", "load numbers together"}},
                           .value = r.current_A,
                           .unit = "A",
                           .source = kNetworkLimits});
  });
  Step drop{.id = "control.network_drop",
            .label = "Volts lost to the farthest device",
            .symbol = "V_n",
            .formula = "f * r * D * N_s",
            .terms = {{"f", kOutAndBack_A, "A", "of one load number, out and back"},
                      {"r", cable.ohm_per_m, "ohm/m", "one conductor of the cable's power pair"},
                      {"D", leg.distance_m, "m", "from the tap to the farthest device, its drop too"},
                      {"N_s", leg.loads_count, "", "load numbers on that side"}},
            .value = r.drop_V,
            .unit = "V",
            .source = kNetworkDrop,
            .assumptions = {"All devices at the far end, the safe side."}};
  if (!cable.resistance_source->confirmed) {
    drop.assumptions.push_back("This cable's resistance is not confirmed.");
  }
  if (in.feed == NetworkFeed::middle) {
    drop.assumptions.push_back("Fed in the middle: half of the cable and of the loads to a side.");
  }
  tell([&] {
    trace.steps.push_back(std::move(drop));
  });
}

void check_power(const DataLinkInput& in, const Leg& leg, const NetworkCable& cable, const DataLinkResult& r,
                 Trace& trace) {
  std::vector<Change> middle;
  if (in.feed == NetworkFeed::end) {
    middle.push_back({.field = "control.network_feed",
                      .value = static_cast<double>(NetworkFeed::middle),
                      .label = "Feed the backbone near its middle"});
  }
  Check drop = at_most("control.network_drop", "Volts lost on the network", r.drop_V, kNetworkDrop_V,
                       "V", kNetworkDrop,
                       "Feed the backbone near its middle, shorten it, or give it a second, isolated supply.");
  drop.changes = middle;
  mend(std::move(drop), cable, in, leg, trace);
  Check current = at_most("control.network_current", "Current in a leg of the backbone", r.leg_A,
                          cable.rated_A, "A", kNetworkCable,
                          "Feed the backbone near its middle, or feed large devices by themselves.");
  current.changes = std::move(middle);
  mend(std::move(current), cable, in, leg, trace);
}

// The parts of a yes or no are counted: none is allowed.
void check_ends(const DataLinkInput& in, Trace& trace) {
  if (!in.terminator_count) {
    trace.assumptions.push_back({"control.terminator_count",
                                 "Nobody has counted the terminators yet: there must be two, one at "
                                 "each end of the backbone (60 ohm between the data wires, power off).",
                                 kNetworkLimits});
    return;
  }
  Check ends = at_most("control.terminators", "Terminators missing or too many",
                       std::abs(*in.terminator_count - kTerminator_count), 0.0, "", kNetworkLimits,
                       "Two terminators, one at each end of the backbone, none elsewhere.");
  ends.changes = {{.field = "control.terminator_count",
                   .value = kTerminator_count,
                   .label = "Fit exactly two terminators"}};
  trace.checks.push_back(std::move(ends));
}

void check_fuse(const DataLinkInput& in, const NetworkCable& cable, const DataLinkResult& r,
                Trace& trace) {
  if (!in.fuse_A) {
    trace.assumptions.push_back({"control.network_fuse_A",
                                 "The fuse of the network's power tap is not known yet.",
                                 kNetworkLimits});
    return;
  }
  const Change right{.field = "control.network_fuse_A",
                     .value = std::max(3.0, std::ceil(r.current_A)),
                     .label = "Fuse the power tap for the cable"};
  trace.checks.push_back({.id = "control.network_fuse",
                          .label = "Fuse of the power tap carries the devices",
                          .actual = *in.fuse_A,
                          .limit = r.current_A,
                          .unit = "A",
                          .comparison = Comparison::at_least,
                          .source = kNetworkLimits,
                          .remedy = "Fuse the power tap where it leaves its source; none at all is a fire "
                                    "hazard, and too small a one opens.",
                          .changes = {right}});
  Check protects = at_most("control.network_fuse_most", "Fuse of the power tap protects the cable",
                           *in.fuse_A, (in.feed == NetworkFeed::middle ? 2.0 : 1.0) * cable.rated_A, "A",
                           kNetworkCable, "A fuse no larger than the cable carries.");
  protects.changes = {right};
  trace.checks.push_back(std::move(protects));
}

void check_negatives(const DataLinkInput& in, Trace& trace) {
  if (!in.floating) return;
  if (in.ties_negatives) {
    Check ties = at_most("control.negatives", "Data cables that tie the two negatives",
                         *in.ties_negatives ? 1.0 : 0.0, 0.0, "", kIsolatedNegative,
                         "Isolate the link, or take its minus and its screen off at the motor: else a fault "
                         "of the motor's bank returns through a wire that no fuse protects.");
    ties.changes = {{.field = "control.negative_in_data_cable", .value = 0.0, .label = "Isolate the data cable"}};
    trace.checks.push_back(std::move(ties));
    return;
  }
  trace.cautions.push_back({"control.negatives",
                            "Ask of every data cable to the motor: does it carry minus or a screen to the "
                            "boat's own negative? The motor's bank floats; a second tie is a path without a fuse.",
                            kIsolatedNegative});
}

void warn_of_water(const DataLinkInput& in, Trace& trace) {
  if (in.drip_loops.value_or(false)) return;
  trace.cautions.push_back({"control.drip_loops",
                            "Hang a drip loop in each cable before its plug, and point plugs down: water "
                            "follows a cable into the joint.",
                            kCommonPractice});
}

void network(const DataLinkInput& in, DataLinkResult& r, Trace& trace) {
  const Leg leg = heavier_leg(in);
  const NetworkCable& cable = in.backbone ? network_cables()[std::size_t(*in.backbone)] : lightest_cable(in, leg);
  r.cable = std::string(cable.label);
  show_power(in, leg, cable, r, trace);
  mend(at_most("control.backbone", "Backbone, end to end", in.cable_m, cable.longest_m, "m", cable.length_source,
               "Shorten the backbone, or join two networks by a bridge."),
       cable, in, leg, trace);
  trace.checks.push_back(at_most("control.drop", "Longest drop", in.longest_drop_m, kLongestDrop_m, "m",
                                 kNetworkLimits, "Lead the backbone nearer to that device."));
  trace.checks.push_back(at_most("control.drops", "All drops together", in.drops_m, kAllDrops_m, "m",
                                 kNetworkLimits, "Lead the backbone nearer to the devices."));
  trace.checks.push_back(at_most("control.devices", "Devices on the network", in.device_count,
                                 kNetworkDevice_count, "", kNetworkLimits, "Join two networks by a bridge."));
  check_power(in, leg, cable, r, trace);
  check_ends(in, trace);
  check_fuse(in, cable, r, trace);
  trace.cautions.push_back({"control.network",
                            "One line with drops, no ring and no star; one power tap on its own fuse, from "
                            "the boat's own 12 V and never from the motor's bank or one block of it; the "
                            "screen to ground at the tap alone.",
                            kNetworkLimits});
}

void ethernet(const DataLinkInput& in, DataLinkResult& r, Trace& trace) {
  r.cable = "Ethernet";
  trace.checks.push_back(at_most("control.ethernet", "Ethernet cable, plug to plug", in.cable_m, kEthernet_m,
                                 "m", kEthernetLength, "Shorten it, or set a switch between."));
  trace.cautions.push_back({"control.ethernet",
                            "Bend it no sharper than four times its thickness (eight while it is pulled), keep "
                            "it a hand's breadth from the feeder and cross that square, and seal both plugs.",
                            kCommonPractice});
}

}  // namespace

double network_drop_V(double ohm_per_m, double distance_m, double load_units_count) {
  return kOutAndBack_A * ohm_per_m * distance_m * load_units_count;
}

DataLinkResult data_link(const DataLinkInput& in, Trace& trace) {
  DataLinkResult r;
  if (in.kind == DataLink::none) {
    if (in.ties_negatives) check_negatives(in, trace);  // the remote's cable may do so, too
    return r;
  }
  if (in.kind == DataLink::marine_network) network(in, r, trace);
  if (in.kind == DataLink::ethernet) ethernet(in, r, trace);
  check_negatives(in, trace);
  warn_of_water(in, trace);
  return r;
}

}  // namespace thole
