#pragma once

// What an owner misses: blocks that do not belong together, how many years the cycles come to. The
// line at 50 V and the scopes of the lithium standards are cautions of bank(), the cut-off switch
// that strong thrust asks for is one of hold().

#include <span>
#include <vector>

#include "base/trace.h"
#include "data/parts.h"

namespace thole {

// A block that is or will be in the boat.
struct FittedBlock {
  Chemistry chemistry = Chemistry::agm;
  double nominal_V = 12.0;
  double capacity_Ah = 0.0;
  double age_years_count = 0.0;  // since it was made
  int string = 0;                // which string of the bank
};

// What is wrong with this set, worst first; empty when nothing is. Chemistries, volts and
// capacities in the bank, ages apart by more than a year, strings of unequal count. Common
// practice.
std::vector<Caution> mixed_blocks(std::span<const FittedBlock> blocks);

// Years that the cycles last, when the boat goes out on so many days in each; no more than the
// calendar leaves. Common practice: flooded 6, sealed 8, lithium 12 years in the calendar.
// 0 for a boat that never goes out or cycles that are not a positive number.
struct Lifetime {
  double cycling_years_count = 0.0;   // by cycles alone
  double calendar_years_count = 0.0;  // by time alone
  double years_count = 0.0;           // the lesser
  bool calendar_governs = false;
};
Lifetime lifetime(Chemistry chemistry, double cycles_count, double days_per_year_count);

}  // namespace thole
