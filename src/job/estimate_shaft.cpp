#include <algorithm>

#include "data/sources.h"
#include "job/estimate.h"

namespace thole {
namespace {

// Where the shaft stands over the waterline: the project's three reference boats have 0.55 to 0.57.
constexpr double kThrusterForward_ratio = 0.56;  // project decision
constexpr double kThrusterForwardLimit_m = 8.0;  // of the field

constexpr double kCollar_m = 0.15;        // common practice
constexpr double kTrimRange_rad = 0.013;  // 0.75 degrees as fuel and people go; project decision
constexpr double kTrimAllowanceLimit_m = 0.4;  // of the field
constexpr double kImmersion_ratio = 1.5;       // project decision, see calc/shaft/immersion.h

}  // namespace

// The tube comes with the motor; the length is chosen from what the motor is sold with.
void estimate_shaft(Job& job, Trace& trace) {
  Shaft& shaft = job.shaft;
  const double length_m = job.boat.waterline_length_m.value;
  estimate(trace, shaft.thruster_forward_m, "shaft.thruster_forward_m", [&] {
    return Step{.label = "Shaft forward of midships",
                .symbol = "x_T",
                .formula = "min(c * L, m)",
                .terms = {{"c", kThrusterForward_ratio, "", "share of the waterline length"},
                          {"L", length_m, "m", "waterline length"},
                          {"m", kThrusterForwardLimit_m, "m", "longest allowed"}},
                .value = std::min(kThrusterForward_ratio * length_m, kThrusterForwardLimit_m),
                .unit = "m",
                .source = kProjectDecision};
  });
  assume(trace, shaft.collar_m, kCollar_m, "shaft.collar_m",
         "The collar's top stands 150 mm above the deck: room for the steering head.",
         kCommonPractice);
  const double arm_m = shaft.thruster_forward_m.value;
  estimate(trace, shaft.trim_allowance_m, "shaft.trim_allowance_m", [&] {
    return Step{.label = "Bow rise between loaded and light",
                .symbol = "a_trim",
                .formula = "min(x_T * a, m)",
                .terms = {{"x_T", arm_m, "m", "shaft forward of midships"},
                          {"a", kTrimRange_rad, "rad", "change of trim, 0.75 degrees"},
                          {"m", kTrimAllowanceLimit_m, "m", "largest allowed"}},
                .value = std::min(arm_m * kTrimRange_rad, kTrimAllowanceLimit_m),
                .unit = "m",
                .source = kProjectDecision};
  });
  assume(trace, shaft.immersion_ratio, kImmersion_ratio, "shaft.immersion_ratio",
         "The propeller's axis lies one and a half diameters below the surface, in a trough too: "
         "pulling at the post it draws air from above that.",
         kProjectDecision);
}

}  // namespace thole
