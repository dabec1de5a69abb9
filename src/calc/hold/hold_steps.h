#pragma once

// What the hold stage writes down: the arithmetic of its loads and its thrust, and what it judges
// by them. Every value comes from hold(); nothing here decides one.

#include <utility>

#include "base/trace.h"
#include "calc/hold/equilibrium.h"
#include "calc/hold/hold.h"
#include "calc/hold/site.h"

namespace thole {

inline constexpr double kLeast_N = 1.0;  // loads below this count as this when divided by

// Margin of a boat that may fall back in gusts: simulated hours of holding, docs/decisions.md.
inline constexpr double kMarginLoose_factor = 1.4;

inline double show(Trace& trace, Step step) {
  trace.steps.push_back(std::move(step));
  return trace.steps.back().value;
}

inline double power_at_W(const MotorClass& motor, double share_frac) {
  return motor.power_idle_W + (motor.power_full_W - motor.power_idle_W) * share_frac;
}

inline Term windage_term(const HoldInput& in) {
  return {"k_w", in.windage_factor, "", "wind load after a trial at sea; 1 without one"};
}
inline Term drag_term(const HoldInput& in) {
  return {"k_d", in.drag_factor, "", "current load after a trial at sea; 1 without one"};
}

// --- load_steps.cpp: each load from ahead

void assume_weather(const HoldInput& in, Trace& trace);
void show_wind(const HoldInput& in, const Site& site, double wind_N, Trace& trace);
void show_current(const HoldInput& in, const Site& site, double current_N, Trace& trace);
void show_waves(const HoldInput& in, const Site& site, double wave_N, Trace& trace);

// --- thrust_steps.cpp: what they come to, and what the motor has against it

void show_head_on(const HoldResult& r, Trace& trace);
void show_equilibrium(const HoldResult& r, const LoadParts& loads, double heading_rad,
                      Trace& trace);
void show_required(const HoldInput& in, const HoldResult& r, Trace& trace);
void show_drift(const HoldInput& in, const Site& site, Trace& trace);
void show_thrust(const HoldInput& in, const HoldResult& r, Trace& trace);
void show_limit(const HoldResult& r, double load_there_N, Trace& trace);
void show_energy(const HoldInput& in, const HoldResult& r, Trace& trace);

// --- hold_checks.cpp

void check_margin(const HoldInput& in, const HoldResult& r, Trace& trace);
void check_plausible(const HoldInput& in, const HoldResult& r, Trace& trace);
void add_cautions(const HoldInput& in, const HoldResult& r, Trace& trace);
void add_range_notes(const HoldInput& in, const HoldResult& r, Trace& trace);

}  // namespace thole
