#pragma once

// Every way to charge the design's bank, in full: tonight on shore hour by hour, the engine, the
// sun, and the locker's air meanwhile. The charge stage's own figures are among them, from the same
// functions.

#include <string>
#include <vector>

#include "calc/charge/ways.h"
#include "calc/design.h"

namespace thole {

struct NightPoint {
  double time_h = 0.0;
  double current_A = 0.0;    // into each block
  double charge_frac = 0.0;  // of a block
};

// A block on charge tonight, on what the outlet spares.
struct ChargingNight {
  std::vector<NightPoint> points{};  // from plugging in to the end of the picture, evenly
  double bulk_h = 0.0;               // absorption begins
  double full_h = 0.0;               // absorption ends
  double leaves_h = 0.0;
  double charge_at_leaving_frac = 0.0;
  double absorption_V = 0.0;  // of a block, at its temperature
  double absorption_25_V = 0.0;
  double float_V = 0.0;  // likewise; 0: it rests
  double temperature_C = 0.0;
};

struct ChargingStudy {
  std::string problem{};  // a sentence; empty when there is a bank and a charger
  ChargeInput input{};
  ShoreResult shore{};
  ChargingNight night{};  // no points: shore.problem says why
  bool converter = false;  // there is one; else `engine` is the largest that the alternator feeds
  double converter_A = 0.0;
  DcDcResult engine{};
  bool panel = false;
  SolarResult sun{};
  VentPlanInput vents{};
  VentPlanResult venting{};  // the charge stage's own
};

// Of a finished design; without a bank or charger `problem` says so.
ChargingStudy charging_study(const Design& design);

}  // namespace thole
