#pragma once

// The design's bank in its locker: how it lies with the shortest jumpers, what is near it, what holds
// it down; and which other blocks would go in when it does not.

#include <vector>

#include "calc/design.h"
#include "calc/locker/packing.h"
#include "job/catalogue.h"

namespace thole {

// Another bank that passes the bank's checks and goes into the locker.
struct LockerOption {
  BatteryBlock block{};
  int series_count = 0;
  int parallel_count = 0;
  double mass_kg = 0.0;
  Change change{};  // names the block
};

struct LockerStudy {
  LockerInput input{};
  PackingResult packing{};  // of nothing when the locker was not measured
  RestraintResult restraint{};
  Trace place{};                        // open checks as well
  std::vector<LockerOption> options{};  // lightest first; empty when the bank fits
};

// Up to a tenth of a second to an arrangement. Precondition: a bank was found.
LockerStudy locker_study(const Design& design, const Catalogue& catalogue);

// What to count on for each jumper, so that neither the cable nor the resistance of the string is less
// than the arrangement has: the larger mean, of all or of those in series. Metres; 0 without jumpers.
double jumper_each_m(const Arrangement& arrangement);

// Holds it against what the feeder counts on (feeder.jumper_m), with the change that mends it.
Check jumper_check(const Arrangement& arrangement, double counted_on_m);

}  // namespace thole
