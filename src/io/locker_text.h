#pragma once

// The bank in its locker, as text: for a person; JSON for a program. And how its parts are said, the
// same on screen.

#include <string>
#include <vector>

#include "calc/locker_study.h"
#include "io/measure.h"

namespace thole {

std::string locker_text(const LockerStudy& study, const Design& design, System system);
std::string write_locker(const LockerStudy& study, const Design& design);  // SI

std::string arrangement_name(const Arrangement& arrangement);  // "On their sides, two tiers"
std::string jumper_name(const Jumper& jumper);                 // "1 to 2, plus to minus"

// "ISO 10133: counts", "33 CFR 183.420, may give 25 mm".
std::string rule_name(const RestraintRule& rule, const RestraintResult& result, System system);
std::string rule_figures(const RestraintRule& rule, System system);  // "530 N each way"

struct RestraintLine {
  std::string step{};  // id of the step behind it
  std::string label{};
  std::string value{};
};
std::vector<RestraintLine> restraint_lines(const LockerStudy& study, System system);

// What the plan takes for granted, and what looks wrong in the measures.
std::vector<std::string> locker_remarks(const LockerStudy& study, const Design& design, System system);

}  // namespace thole
