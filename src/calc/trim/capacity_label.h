#pragma once

// What the capacity label of a United States boat under 20 ft already counts.
// Source: 33 CFR 183.41 (persons) and 183.75 as amended 2018 (battery). Outboard boats; the
// builder's label is never edited, only read.

#include <cmath>

#include "base/units.h"

namespace thole {

inline constexpr double kLabelLengthLimit_m = m_from_ft(20.0);  // 33 CFR 183 subparts B and C
inline constexpr double kLabelPerson_kg = kg_from_lb(141.0);    // 33 CFR 183.41
inline constexpr double kLabelPersonsOffset_kg = kg_from_lb(32.0);

// Persons for a persons capacity by weight, to the nearest whole number.
inline int label_persons(double capacity_kg) {
  const double persons = (capacity_kg + kLabelPersonsOffset_kg) / kLabelPerson_kg;
  return static_cast<int>(std::lround(persons));
}

// The one battery that the label allows for, by power of the main engine.
struct BatteryAllowance {
  double dry_kg = 0.0;
  double submerged_kg = 0.0;
};
constexpr BatteryAllowance label_battery(double engine_hp) {
  if (engine_hp < 7.0) return {};
  if (engine_hp < 11.0) return {kg_from_lb(20.0), kg_from_lb(11.0)};
  return {kg_from_lb(45.0), kg_from_lb(25.0)};
}

}  // namespace thole
