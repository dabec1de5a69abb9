#pragma once

// What a boat held at its bow can stand, for every angle between wind and current; how it lies
// there; and the loads behind it. Not part of evaluate(): it takes some milliseconds.

#include <vector>

#include "base/trace.h"
#include "calc/hold/capability.h"
#include "calc/hold/equilibrium.h"
#include "calc/hold/hold.h"
#include "calc/hold/load_table.h"

namespace thole {

// With the current from `angle_deg` clockwise off the wind.
struct RoseRow {
  double angle_deg = 0.0;
  std::vector<Balance> balances{};    // every one, in the given wind and current
  double heading_deg = 0.0;           // of the stable one that takes most thrust, off the wind
  double azimuth_deg = 0.0;           // of its thrust, clockwise off the bow
  double thrust_N = 0.0;              // and that thrust
  double limiting_wind_mps = 0.0;     // with the given current and the asked margin
  double likely_wind_mps = 0.0;       // the same under Blendermann's wind
  double limiting_current_mps = 0.0;  // with the given wind and the asked margin
};

// The load bow-on, and how far off it may be.
struct LoadBand {
  double low_N = 0.0;
  double sizing_N = 0.0;
  double likely_N = 0.0;  // Blendermann's wind in place of the standard's
  double high_N = 0.0;
};

struct RoseResult {
  double thrust_effective_N = 0.0;
  double margin_factor = 0.0;
  std::vector<RoseRow> rows{};      // 0 to 355 degrees in steps of 5
  std::vector<Balance> balances{};  // at the angle of the job
  std::vector<LoadRow> loads{};     // in the given weather, with the factor of ships on the sum
  LoadBand band{};
  int capability_number = 0;       // by the ocean's sea states, the boat lying as it does
  int capability_here_number = 0;  // with the waves that this fetch raises
  std::string notation{};          // by the letter of the standard
  Trace trace{};
};

// A limit is the first wind, or current, at which the load times the margin outdoes the thrust:
// every weaker one is held as well, DNV-ST-0111 [2.4]. Winds are tried in steps of 2 m/s up to 40,
// currents in steps of 0.2 m/s up to 4, the last step narrowed in to 0.02 and 0.005 m/s. 0: the
// current alone, or the wind alone, takes more.
// Left out: what the second paragraph of hold.h says. Precondition: the ranges of job/fields.cpp.
RoseResult rose(const HoldInput& in, const MotorClass& motor);

inline constexpr double kRoseHighestCurrent_mps = 4.0;  // searches stop here
inline constexpr int kRoseRowCount = 72;

}  // namespace thole
