#include <algorithm>

#include "data/batteries.h"
#include "data/sources.h"
#include "data/sources_battery.h"
#include "job/estimate.h"

namespace thole {

void estimate_bank(Job& job, Trace& trace) {
  Bank& bank = job.bank;
  // A named block tells its own chemistry, once the catalogue is open.
  if (!bank.block.known()) {
    assume(trace, bank.chemistry, Chemistry::agm, "bank.chemistry",
           "Sealed lead-acid is found at every chandler's and asks the least of the installer.",
           kCommonPractice);
  }
  const Chemistry chemistry = bank.chemistry.known() ? bank.chemistry.value : Chemistry::agm;
  assume(trace, bank.depth_of_discharge_frac, facts_of(chemistry).depth_design_frac,
         "bank.depth_of_discharge_frac",
         is_lead(chemistry)
             ? "Half of it, as for lead-acid, so that it lasts some hundreds of days."
             : "Four fifths of a lithium bank.",
         kCommonPractice);
  assume(trace, bank.age_factor, 1.25, "bank.age_factor",
         "Still enough when 80 % of the capacity is left.", kIeee485Sizing);
  assume(trace, bank.margin_factor, 1.10, "bank.margin_factor",
         "For growth and less than ideal days.", kIeee485Sizing);
  assume(trace, bank.days_out_count, 40, "bank.days_out_count",
         "A day at each weekend of the season, and some more.", kCommonPractice);
  constexpr double kColdMorning_C = 10.0;  // kProjectDecision
  const bool air_told = job.water.air_C.known() && job.water.air_C.origin != Origin::estimated;
  assume(trace, bank.temperature_C,
         air_told ? std::clamp(job.water.air_C.value, -20.0, 45.0) : kColdMorning_C,
         "bank.temperature_C",
         air_told ? "The bank is as cold as the air." : "A cold morning in the season.",
         kProjectDecision);
}

}  // namespace thole
