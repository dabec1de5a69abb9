#include "calc/charge/refill.h"

#include <algorithm>
#include <cmath>

#include "data/batteries.h"

namespace thole {
namespace {

constexpr double kTailOfBulk_frac = 0.5;  // kProjectDecision: keeps a small charger's taper finite

}  // namespace

TaperInput refill_course(Chemistry chemistry, double capacity_Ah, double depth_frac,
                         double bulk_A) {
  const ChemistryFacts& facts = facts_of(chemistry);
  return {.capacity_Ah = capacity_Ah,
          .depth_frac = depth_frac,
          .bulk_A = bulk_A,
          .tail_A = std::min(facts.tail_frac * capacity_Ah, kTailOfBulk_frac * bulk_A),
          .switch_frac = switch_charge_frac(chemistry, bulk_A / capacity_Ah),
          .bulk_efficiency_frac = facts.bulk_efficiency_frac,
          .absorption_efficiency_frac = facts.absorption_efficiency_frac,
          .absorption_min_h = facts.absorption_min_h};
}

double refill_current_A(const TaperInput& course, double time_h) {
  const TaperResult whole = taper(course);
  if (!(course.depth_frac > 0.0) || time_h > whole.time_h) return 0.0;
  if (time_h <= whole.bulk_h) return course.bulk_A;
  const double decay_h = whole.absorption_Ah / (course.bulk_A - course.tail_A);
  return decay_h > 0.0 ? course.bulk_A * std::exp(-(time_h - whole.bulk_h) / decay_h) : 0.0;
}

double float_cell_V(Chemistry chemistry) {
  switch (chemistry) {
    case Chemistry::flooded:
      return 2.23;
    case Chemistry::agm:
    case Chemistry::gel:
      return 2.27;
    case Chemistry::lifepo4:
      break;
  }
  return 0.0;
}

double stored_Ah(const TaperInput& course, double time_h) {
  const double missing_Ah = course.depth_frac * course.capacity_Ah;
  if (!(time_h > 0.0)) return 0.0;
  const TaperResult whole = taper(course);
  const double bulk_Ah = course.bulk_efficiency_frac * course.bulk_A;
  if (time_h <= whole.bulk_h) return std::min(missing_Ah, bulk_Ah * time_h);
  const double decay_h = whole.absorption_Ah / (course.bulk_A - course.tail_A);
  const double taken_Ah =
      decay_h > 0.0 ? decay_h * course.bulk_A * (1.0 - std::exp(-(time_h - whole.bulk_h) / decay_h))
                    : 0.0;
  return std::min(missing_Ah,
                  bulk_Ah * whole.bulk_h + course.absorption_efficiency_frac * taken_Ah);
}

bool sound_refill(double capacity_Ah, double depth_frac, double bulk_A) {
  return capacity_Ah > 0.0 && std::isfinite(capacity_Ah) && depth_frac >= 0.0 &&
         depth_frac <= 1.0 && bulk_A > 0.0 && std::isfinite(bulk_A);
}

}  // namespace thole
