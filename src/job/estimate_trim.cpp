#include <algorithm>

#include "data/sources.h"
#include "job/estimate.h"

namespace thole {
namespace {

constexpr double kBankForward_ratio = 0.45;  // at the console; project decision
constexpr double kMotorForward_ratio =
    1.02;  // lying on the foredeck, near the stem; project decision

// Waterplane coefficient over deadrise: from 0.88 when flat to 0.77 at 20 degrees. Custom has
// 0.85-0.92 for flat bottoms and 0.72-0.82 for deep and modified V.
constexpr double kFlatWaterplane_ratio = 0.88;
constexpr double kWaterplaneSlope_per_deg = 0.0055;
constexpr double kLeastWaterplane_ratio = 0.72;

// Metacentric height over waterline beam. Custom has 0.7-1.3 m for open boats of 5-10 m and 0.6-1.0
// m for boats with a house.
constexpr double kOpenGm_ratio = 0.42;
constexpr double kHouseGm_ratio = 0.27;
constexpr double kLeastGm_m = 0.1;  // of the field

constexpr double kMotorAboveDeck_m = 0.15;  // project decision, as the next
constexpr double kHalfBlock_m = 0.11;
constexpr double kLowestBank_m = -1.5;  // of the field

constexpr double kSternDown_deg = -0.5;  // custom: level to one degree by the stern

bool has_house(Layout layout) {
  return layout == Layout::pilothouse || layout == Layout::flybridge || layout == Layout::express;
}

}  // namespace

void estimate_trim(Job& job, Trace& trace) {
  Trim& trim = job.trim;
  const Boat& boat = job.boat;
  const Term length{"L", boat.waterline_length_m.value, "m", "waterline length"};
  estimate(trace, trim.bank_x_m, "trim.bank_x_m", [&] {
    return Step{.label = "Bank forward of the transom, at the console",
                .symbol = "x",
                .formula = "c * L",
                .terms = {{"c", kBankForward_ratio, "", "share of the waterline length"}, length},
                .value = kBankForward_ratio * length.value,
                .unit = "m",
                .source = kProjectDecision};
  });
  assume(trace, trim.bank_y_m, 0.0, "trim.bank_y_m", "The bank stands on the centreline.",
         kProjectDecision);
  estimate(trace, trim.motor_x_m, "trim.motor_x_m", [&] {
    return Step{.label = "Stowed motor forward of the transom",
                .symbol = "x",
                .formula = "c * L",
                .terms = {{"c", kMotorForward_ratio, "", "share of the waterline length"}, length},
                .value = kMotorForward_ratio * length.value,
                .unit = "m",
                .source = kProjectDecision};
  });
  assume(trace, trim.motor_y_m, 0.0, "trim.motor_y_m", "The motor lies on the centreline.",
         kProjectDecision);
  estimate(trace, trim.waterplane_ratio, "trim.waterplane_ratio", [&] {
    const double deadrise_deg = boat.deadrise_deg.value;
    return Step{.label = "Waterplane area over length times beam",
                .symbol = "C",
                .formula = "max(f - s * b, m)",
                .terms = {{"f", kFlatWaterplane_ratio, "", "of a flat bottom"},
                          {"s", kWaterplaneSlope_per_deg, "", "less for each degree"},
                          {"b", deadrise_deg, "deg", "deadrise"},
                          {"m", kLeastWaterplane_ratio, "", "of the deepest V"}},
                .value = std::max(kFlatWaterplane_ratio - kWaterplaneSlope_per_deg * deadrise_deg,
                                  kLeastWaterplane_ratio),
                .unit = "",
                .source = kCommonPractice};
  });
  estimate(trace, trim.gm_m, "trim.gm_m", [&] {
    const double ratio = has_house(boat.layout.value) ? kHouseGm_ratio : kOpenGm_ratio;
    const double beam_m = boat.waterline_beam_m.value;
    return Step{.label = "Metacentric height",
                .symbol = "GM",
                .formula = "max(c * B, m)",
                .terms = {{"c", ratio, "", "share of the waterline beam, by layout"},
                          {"B", beam_m, "m", "waterline beam"},
                          {"m", kLeastGm_m, "m", "smallest allowed"}},
                .value = std::max(ratio * beam_m, kLeastGm_m),
                .unit = "m",
                .source = kCommonPractice};
  });
  estimate(trace, trim.motor_z_m, "trim.motor_z_m", [&] {
    return Step{.label = "Stowed motor above the water",
                .symbol = "z",
                .formula = "h + c",
                .terms = {{"h", boat.bow_height_m.value, "m", "deck at the mount above the water"},
                          {"c", kMotorAboveDeck_m, "m", "its middle above the deck"}},
                .value = boat.bow_height_m.value + kMotorAboveDeck_m,
                .unit = "m",
                .source = kProjectDecision};
  });
  estimate(trace, trim.bank_z_m, "trim.bank_z_m", [&] {
    const Term half{"c", kHalfBlock_m, "m", "half of a block's height"};
    if (!job.locker.above_bilge_m.known()) {
      return Step{.label = "Bank above the water",
                  .symbol = "z",
                  .formula = "c",
                  .terms = {half},
                  .value = kHalfBlock_m,
                  .unit = "m",
                  .source = kProjectDecision,
                  .assumptions = {"The blocks stand on a sole at the waterline."}};
    }
    const double above_m = job.locker.above_bilge_m.value;
    const double draft_m = boat.draft_m.value;
    return Step{.label = "Bank above the water",
                .symbol = "z",
                .formula = "max(b - T + c, m)",
                .terms = {{"b", above_m, "m", "blocks above the bilge"},
                          {"T", draft_m, "m", "draft"},
                          half,
                          {"m", kLowestBank_m, "m", "lowest that the field allows"}},
                .value = std::max(above_m - draft_m + kHalfBlock_m, kLowestBank_m),
                .unit = "m",
                .source = kProjectDecision};
  });
  assume(trace, trim.initial_trim_deg, kSternDown_deg, "trim.initial_trim_deg",
         "Loaded, the boat lies half a degree by the stern.", kCommonPractice);
}

}  // namespace thole
