#include "data/sources.h"
#include "data/sources_battery.h"
#include "job/estimate.h"

namespace thole {

void estimate_charge(Job& job, Trace& trace) {
  Charge& charge = job.charge;
  assume(trace, charge.shore_V, 120.0, "charge.shore_V",
         "The lower of the usual supplies asks for the most amps.", kCommonPractice);
  assume(trace, charge.shore_limit_A, 12.0, "charge.shore_limit_A",
         "80 % of a 15 A outlet, for a load that lasts hours.", kShoreLoad);
  assume(trace, charge.available_h, 12.0, "charge.available_h", "From evening to morning.",
         kCommonPractice);
  assume(trace, charge.locker_volume_m3, 0.15, "charge.locker_volume_m3",
         "A small locker: the smaller, the sooner hydrogen gathers.", kProjectDecision);
}

}  // namespace thole
