#include <algorithm>

#include "data/sources.h"
#include "job/estimate.h"

namespace thole {
namespace {

constexpr double kMountAhead_m = 0.15;       // common practice
constexpr double kWidthOverBeam_ratio = 0.5;  // 0.6 m aft of the stem; project decision
constexpr double kWidthLimit_m = 4.0;        // of the field

}  // namespace

// What stands on the deck, the bow light, the reach and the strap are for a rule and an eye on board: they
// stay blank, and their checks open.
void estimate_foredeck(Job& job, Trace& trace) {
  Foredeck& deck = job.foredeck;
  assume(trace, deck.mount_x_m, -kMountAhead_m, "foredeck.mount_x_m",
         "The mount overhangs the stem so that the shaft goes down 150 mm ahead of it.", kCommonPractice);
  assume(trace, deck.mount_y_m, 0.0, "foredeck.mount_y_m", "The mount stands on the centreline.", kCommonPractice);
  assume(trace, deck.stow_angle_deg, 0.0, "foredeck.stow_angle_deg", "The stowed shaft lies straight aft.", kCommonPractice);
  estimate(trace, deck.width_m, "foredeck.width_m", [&] {
    return Step{.label = "Deck width at the mount",
                .symbol = "w",
                .formula = "min(c * B, m)",
                .terms = {{"c", kWidthOverBeam_ratio, "", "share of the beam, near the stem"},
                          {"B", job.boat.beam_m.value, "m", "beam"},
                          {"m", kWidthLimit_m, "m", "widest allowed"}},
                .value = std::min(kWidthOverBeam_ratio * job.boat.beam_m.value, kWidthLimit_m),
                .unit = "m",
                .source = kProjectDecision};
  });
}

}  // namespace thole
