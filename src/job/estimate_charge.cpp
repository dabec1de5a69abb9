#include <algorithm>
#include <array>

#include "data/sources.h"
#include "data/sources_battery.h"
#include "job/estimate.h"

namespace thole {
namespace {

constexpr double kHighShore_V = 180.0;     // between the two families of supplies
constexpr double kContinuous_frac = 0.8;   // kShoreLoad
constexpr double kAirInLocker_frac = 0.5;  // kProjectDecision: a locker that blocks fill well
constexpr double kLeastAir_m3 = 0.02;      // as in job/fields.cpp
constexpr double kMostAir_m3 = 5.0;
constexpr double kAlternator_A = 60.0;     // kCommonPractice: of a mid-size outboard
constexpr double kEngineLoads_A = 15.0;    // kCommonPractice: ignition, pumps, plotter
constexpr std::array kBreakers_A{15.0, 16.0, 20.0, 25.0, 30.0, 32.0, 50.0, 63.0};

// The usual outlet, or the smallest breaker that gives what is counted on.
double outlet_A(const Charge& charge) {
  const double usual_A = charge.shore_V.value >= kHighShore_V ? 16.0 : 15.0;
  if (!charge.shore_limit_A.known()) return usual_A;
  const double wanted_A = (charge.shore_limit_A.value + charge.other_loads_A.value) / kContinuous_frac;
  for (const double breaker_A : kBreakers_A) {
    if (breaker_A >= usual_A && breaker_A >= wanted_A) return breaker_A;
  }
  return kBreakers_A.back();
}

// Of a given breaker, or of the usual outlet.
Step shore_limit(const Charge& charge) {
  return {.label = "What the outlet gives the charger for hours",
          .symbol = "I_s",
          .formula = "max(1, 0.8 * I_o - I_x)",
          .terms = {{"I_o", charge.outlet_A.value, "A", "the outlet's breaker"},
                    {"I_x", charge.other_loads_A.value, "A", "other loads on it"}},
          .value = std::max(1.0, kContinuous_frac * charge.outlet_A.value - charge.other_loads_A.value),
          .unit = "A",
          .source = kShoreLoad};
}

// Of a measured locker, whatever blocks go into it.
Step free_volume(const Locker& locker) {
  return {.label = "Air in the locker, with the blocks in",
          .symbol = "V",
          .formula = "min(5, max(0.02, f * l * w * h))",
          .terms = {{"f", kAirInLocker_frac, "", "share that the blocks leave"},
                    {"l", locker.length_m.value, "m", "length inside"},
                    {"w", locker.width_m.value, "m", "width inside"},
                    {"h", locker.height_m.value, "m", "height inside"}},
          .value = std::clamp(kAirInLocker_frac * locker.length_m.value * locker.width_m.value * locker.height_m.value,
                              kLeastAir_m3, kMostAir_m3),
          .unit = "m3",
          .source = kProjectDecision};
}

}  // namespace

void estimate_charge(Job& job, Trace& trace) {
  Charge& charge = job.charge;
  assume(trace, charge.shore_V, 120.0, "charge.shore_V",
         "The lower of the usual supplies asks for the most amps.", kCommonPractice);
  assume(trace, charge.other_loads_A, 0.0, "charge.other_loads_A",
         "Nothing else hangs on the charger's outlet at night.", kProjectDecision);
  assume(trace, charge.outlet_A, outlet_A(charge), "charge.outlet_A",
         "15 A at 120 V, 16 A at 230 V, or what the current counted on needs.", kCommonPractice);
  estimate(trace, charge.shore_limit_A, "charge.shore_limit_A",
           [&] { return shore_limit(charge); });
  assume(trace, charge.available_h, 12.0, "charge.available_h", "From evening to morning.",
         kCommonPractice);
  const Locker& locker = job.locker;
  if (locker.length_m.known() && locker.width_m.known() && locker.height_m.known()) {
    estimate(trace, charge.locker_volume_m3, "charge.locker_volume_m3", [&] { return free_volume(locker); });
  } else {
    assume(trace, charge.locker_volume_m3, 0.15, "charge.locker_volume_m3",
           "A small locker: the smaller, the sooner hydrogen gathers.", kProjectDecision);
  }
  assume(trace, charge.vents_opposite, true, "charge.vents_opposite",
         "One opening low, the other high and opposite.", kVentSpacing);
  assume(trace, charge.fan_m3_per_h, 0.0, "charge.fan_m3_per_h", "No fan: natural draught.",
         kProjectDecision);
  assume(trace, charge.fan_with_charger, false, "charge.fan_with_charger",
         "A fan has no interlock until somebody has seen it.", kProjectDecision);
  assume(trace, charge.fan_protected, false, "charge.fan_protected",
         "A fan may spark until its label says otherwise.", kProjectDecision);
  assume(trace, charge.charger_stops_itself, false, "charge.charger_stops_itself",
         "A charger is not counted on to stop itself until its manual says so.", kProjectDecision);
  assume(trace, charge.recombining_caps, false, "charge.recombining_caps", "Ordinary plugs.",
         kCommonPractice);
  assume(trace, charge.converter_A, 0.0, "charge.converter_A",
         "No converter between engine and bank.", kProjectDecision);
  assume(trace, charge.alternator_A, kAlternator_A, "charge.alternator_A",
         "Of a mid-size outboard: read yours.", kCommonPractice);
  assume(trace, charge.engine_loads_A, kEngineLoads_A, "charge.engine_loads_A",
         "Ignition, pumps and plotter.", kCommonPractice);
  assume(trace, charge.engine_h, 2.0, "charge.engine_h", "An hour out and an hour home.",
         kCommonPractice);
  assume(trace, charge.panel_W, 0.0, "charge.panel_W", "No panel.", kProjectDecision);
  assume(trace, charge.full_sun_h, 4.0, "charge.full_sun_h",
         "A summer day of the middle latitudes, some cloud.", kCommonPractice);
  assume(trace, charge.standing_W, 2.0, "charge.standing_W", "A receiver and a battery monitor.",
         kCommonPractice);
}

}  // namespace thole
