#pragma once

// The earth's magnetic field where the boat lies.

#include <optional>

#include "base/issue.h"
#include "base/trace.h"

namespace thole {

struct EarthFieldInput {
  double latitude_deg = 0.0;   // geodetic, north positive; -90 .. 90
  double longitude_deg = 0.0;  // east positive; -180 .. 360
  double altitude_m = 0.0;     // over the ellipsoid; -1000 .. 600000
  double year = 2025.0;        // with its decimals; kIgrfFrom_year .. kIgrfUntil_year
};

struct EarthField {
  double north_T = 0.0;
  double east_T = 0.0;
  double down_T = 0.0;
  double horizontal_T = 0.0;
  double total_T = 0.0;
  double declination_deg = 0.0;  // of magnetic from true north, east positive
  double inclination_deg = 0.0;  // dip, down positive
};

struct EarthFieldResult {
  std::optional<EarthField> field{};  // empty when there is an issue
  SourceRef source{};                    // of a year after the first: the forecast, not confirmed
  Issues issues{};                    // of this input, by the names of its members
};

//   V = a sum (a/r)^(n+1) (g cos(m L) + h sin(m L)) P(n,m)(cos t),   B = -grad V
//
// Source: kIgrf14, its yearly change kIgrf14Forecast, the ellipsoid kWgs84. Rocks
// below, iron aboard and magnetic storms come on top. At a pole of the earth north, east and the
// declination are along the meridian of the given longitude.
EarthFieldResult earth_field(const EarthFieldInput& in);

}  // namespace thole
