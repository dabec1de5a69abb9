#include "data/sources.h"
#include "data/sources_hold.h"
#include "job/estimate.h"

namespace thole {

void estimate_hold(Job& job, Trace& trace) {
  Hold& hold = job.hold;
  assume(trace, hold.firmness, Firmness::firm, "hold.firmness", "Firm: it keeps the spot in gusts.",
         kProjectDecision);
  assume(trace, hold.holding_h, 4.0, "hold.holding_h", "Four hours of holding in a day.",
         kProjectDecision);
  assume(trace, hold.transit_h, 0.5, "hold.transit_h",
         "Half an hour in a day of creeping from spot to spot.", kProjectDecision);
  assume(trace, hold.transit_thrust_frac, 0.5, "hold.transit_thrust_frac",
         "Half thrust while creeping.", kProjectDecision);
  assume(trace, hold.windage_factor, 1.0, "hold.windage_factor",
         "No trial at sea yet: the wind loads the boat as computed.", kProjectDecision);
  assume(trace, hold.drag_factor, 1.0, "hold.drag_factor",
         "No trial at sea yet: the current loads the boat as computed.", kProjectDecision);
  assume(trace, hold.tolerance_m, 5.0, "hold.tolerance_m", "Within five metres of the spot.",
         kProjectDecision);
  assume(trace, hold.tolerance_frac, 0.95, "hold.tolerance_frac", "For 95 % of the time.",
         kProjectDecision);
  assume(trace, hold.gusts, GustLaw::npd, "hold.gusts", "Gusts as over the open sea (NPD).",
         kNpdWind);
}

}  // namespace thole
