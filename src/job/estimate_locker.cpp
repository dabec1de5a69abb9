#include "data/sources.h"
#include "job/estimate.h"

namespace thole {

// Nothing is said of a locker that was not measured.
void estimate_locker(Job& job, Trace& trace) {
  Locker& locker = job.locker;
  if (!locker.length_m.known() || !locker.width_m.known() || !locker.height_m.known()) return;
  assume(trace, locker.access, LockerAccess::lid, "locker.access", "Most lockers open upward.",
         kCommonPractice);
  const bool door = locker.access.value == LockerAccess::door;
  assume(trace, locker.opening_length_m, locker.length_m.value, "locker.opening_length_m",
         door ? "The door is as wide as the locker is long." : "The whole top opens.",
         kProjectDecision);
  assume(trace, locker.opening_width_m, door ? locker.height_m.value : locker.width_m.value,
         "locker.opening_width_m",
         door ? "The door is as high as the locker." : "The whole top opens.", kProjectDecision);
  assume(trace, locker.side_allowed, false, "locker.side_allowed",
         "Blocks stand upright unless their maker allows otherwise in writing.", kCommonPractice);
  assume(trace, locker.tiers_allowed, false, "locker.tiers_allowed",
         "One tier: a second needs a shelf that carries it in a slam.", kCommonPractice);
}

}  // namespace thole
