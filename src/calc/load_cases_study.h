#pragma once

// The mount's load cases of a finished design, with the two speed limits that come from them.

#include "calc/design.h"
#include "calc/mount/load_cases.h"

namespace thole {

struct LoadsStudy {
  bool known = false;       // false: no motor to work it out for
  LoadCasesInput input{};
  LoadCases loads{};
  double bolt_breaking_N = 0.0;          // of the chosen bolt, with its head
  double stowed_limit_mps = 0.0;         // in the sea that the job names
  double stowed_wave_m = 0.0;
  double deployed_limit_mps = 0.0;       // motor down
};

LoadsStudy load_cases_study(const Design& design);

// How much tension a bolt may have in a case of this grade, of the force that breaks it.
double bolt_share(LoadGrade grade);

// Of the cases of this grade that are in range, the one with the largest overturning moment; null without any.
const LoadCase* worst_case(const LoadCases& loads, LoadGrade grade);

}  // namespace thole
