#include <algorithm>
#include <cmath>
#include <string>
#include <string_view>

#include "data/sources.h"
#include "job/estimate.h"

namespace thole {
namespace {

constexpr double kSensorAft_m = 1.5;  // of the motor; kCommonPractice: a metre off steel and magnets
constexpr double kReceiverAft_m = 0.6;  // likewise: half a metre off the feeder
constexpr double kFeederAside_ratio = 0.25;  // of the beam: under the side deck; kProjectDecision
constexpr double kFeederHigh_ratio = 0.25;   // of the bow height; kProjectDecision
constexpr double kDrop_m = 2.0;              // kCommonPractice
constexpr int kDevices_count = 3;  // motor, plotter, heading sensor; kProjectDecision
constexpr int kLoads_count = 2;    // of a device; kCommonPractice

// On the centreline, on deck, clear of the motor.
struct PlaceWords {
  std::string name{};
  std::string field{};  // without its direction
  std::string_view along{};
  std::string_view up{};
};
void estimate_place(const Job& job, Trace& trace, const PlaceWords& words, double aft_m, Given<double>& x_m,
                    Given<double>& y_m, Given<double>& z_m) {
  estimate(trace, x_m, words.field + "_x_m", [&] {
    const double motor_m = job.trim.motor_x_m.value;
    return Step{.label = words.name + " forward of the transom",
                .symbol = words.along,
                .formula = "max(x_m - a, 0)",
                .terms = {{"x_m", motor_m, "m", "motor forward of the transom"},
                          {"a", aft_m, "m", "aft of the motor, clear of it"}},
                .value = std::max(motor_m - aft_m, 0.0),
                .unit = "m",
                .source = kCommonPractice};
  });
  assume(trace, y_m, 0.0, words.field + "_y_m", words.name + " on the centreline.", kCommonPractice);
  estimate(trace, z_m, words.field + "_z_m", [&] {
    return Step{.label = words.name + " above the water, on deck",
                .symbol = words.up,
                .formula = "h",
                .terms = {{"h", job.boat.bow_height_m.value, "m", "bow height"}},
                .value = job.boat.bow_height_m.value,
                .unit = "m",
                .source = kProjectDecision};
  });
}

void estimate_sensors(Job& job, Trace& trace) {
  Control& control = job.control;
  estimate_place(job, trace, {"Heading sensor", "control.sensor", "x_s", "z_s"}, kSensorAft_m, control.sensor_x_m,
                 control.sensor_y_m, control.sensor_z_m);
  estimate_place(job, trace, {"Receiver", "control.receiver", "x_r", "z_r"}, kReceiverAft_m, control.receiver_x_m,
                 control.receiver_y_m, control.receiver_z_m);
  assume(trace, control.heading_limit_deg, 2.0, "control.heading_limit_deg",
         "Two degrees between no thrust and full thrust.", kCommonPractice);
  assume(trace, control.tilt_deg, 10.0, "control.tilt_deg",
         "She rolls and pitches ten degrees while she holds.", kCommonPractice);
}

void estimate_route(Job& job, Trace& trace) {
  Control& control = job.control;
  estimate(trace, control.feeder_y_m, "control.feeder_y_m", [&] {
    return Step{.label = "Feeder to starboard, under the side deck",
                .symbol = "y_f",
                .formula = "c * B",
                .terms = {{"c", kFeederAside_ratio, "", "share of the beam"},
                          {"B", job.boat.beam_m.value, "m", "beam"}},
                .value = kFeederAside_ratio * job.boat.beam_m.value,
                .unit = "m",
                .source = kProjectDecision};
  });
  estimate(trace, control.feeder_z_m, "control.feeder_z_m", [&] {
    return Step{.label = "Feeder above the water",
                .symbol = "z_f",
                .formula = "c * h",
                .terms = {{"c", kFeederHigh_ratio, "", "share of the bow height"},
                          {"h", job.boat.bow_height_m.value, "m", "bow height"}},
                .value = kFeederHigh_ratio * job.boat.bow_height_m.value,
                .unit = "m",
                .source = kProjectDecision};
  });
  assume(trace, control.feeder_lay, FeederLay::side_by_side, "control.feeder_lay",
         "Plus and minus lie side by side all the way.", kCommonPractice);
  assume(trace, control.spacing_mm, 20.0, "control.spacing_mm",
         "The two cables touch, with their sleeves.", kProjectDecision);
  assume(trace, control.pitch_mm, 150.0, "control.pitch_mm",
         "If twisted, a full turn in 150 mm.", kCommonPractice);
}

// Lengths and devices of the link, once there is one; what only a look tells (terminators, fuse,
// loops) stays open.
void estimate_link(Job& job, Trace& trace) {
  Control& control = job.control;
  assume(trace, control.link, DataLink::none, "control.link",
         "The motor has no data link to a plotter.", kProjectDecision);
  if (control.link.value == DataLink::none) return;
  estimate(trace, control.backbone_m, "control.backbone_m", [&] {
    return Step{.label = "Data cable from helm to bow",
                .symbol = "l_d",
                .formula = "LOA",
                .terms = {{"LOA", job.boat.length_m.value, "m", "length overall, for the way and its bends"}},
                .value = job.boat.length_m.value,
                .unit = "m",
                .source = kProjectDecision};
  });
  if (control.link.value != DataLink::marine_network) return;
  estimate(trace, control.longest_drop_m, "control.longest_drop_m", [&] {
    const auto way_m = [&](const Given<double>& y_m, const Given<double>& z_m) {
      return std::abs(y_m.value) + std::abs(z_m.value - control.feeder_z_m.value);
    };
    const double sensor_m = way_m(control.sensor_y_m, control.sensor_z_m);
    const double receiver_m = way_m(control.receiver_y_m, control.receiver_z_m);
    return Step{.label = "Longest drop, from a backbone on the centreline as high as the feeder",
                .symbol = "l",
                .formula = "max(l_0, max(l_s, l_r))",
                .terms = {{"l_0", kDrop_m, "m", "a usual drop"},
                          {"l_s", sensor_m, "m", "to the heading sensor, across and up"},
                          {"l_r", receiver_m, "m", "to the receiver, likewise"}},
                .value = std::max({kDrop_m, sensor_m, receiver_m}),
                .unit = "m",
                .source = kCommonPractice};
  });
  assume(trace, control.node_count, kDevices_count, "control.node_count",
         "Motor, plotter and heading sensor are on it.", kProjectDecision);
  estimate(trace, control.drops_m, "control.drops_m", [&] {
    const double devices = control.node_count.value;
    return Step{.label = "All drops together",
                .symbol = "s",
                .formula = "n * l",
                .terms = {{"n", devices, "", "devices"},
                          {"l", control.longest_drop_m.value, "m", "the longest drop"}},
                .value = devices * control.longest_drop_m.value,
                .unit = "m",
                .source = kDefinition};
  });
  assume(trace, control.load_units_count, kLoads_count * control.node_count.value,
         "control.load_units_count", "Each device has the load number 2 (100 mA).",
         kCommonPractice);
  assume(trace, control.network_feed, NetworkFeed::end, "control.network_feed",
         "The backbone is fed at one end, the safe side.", kProjectDecision);
}

}  // namespace

void estimate_control(Job& job, Trace& trace) {
  assume(trace, job.control.year, 2027, "control.year",
         "The earth's field as it will be in 2027; it drifts slowly.", kProjectDecision);
  estimate_sensors(job, trace);
  estimate_route(job, trace);
  estimate_link(job, trace);
  assume(trace, job.control.main_switch, MainSwitch::own, "control.main_switch",
         "A switch of its own by the bank, as in the parts list.", kCommonPractice);
}

}  // namespace thole
