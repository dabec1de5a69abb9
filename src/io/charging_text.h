#pragma once

// Every way to charge the bank, as text for a person; JSON for a program.

#include <string>

#include "calc/charging_study.h"
#include "io/measure.h"

namespace thole {

std::string charging_text(const ChargingStudy& study, System system);
std::string write_charging(const ChargingStudy& study);  // SI

// "Full at 6.5 h, 5.5 h before she leaves": what screen and text say of each way.
std::string night_said(const ChargingStudy& study, System system);
std::string engine_said(const ChargingStudy& study, System system);
std::string sun_said(const ChargingStudy& study, System system);

// "bulk to 14.4 V, absorption at 14.4 V, then float at 13.4 V"
std::string stages_said(const ChargingNight& night, System system);

std::string_view word(VentCase of);  // "float", "boost", "failed charger"

}  // namespace thole
