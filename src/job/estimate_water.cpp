#include <algorithm>
#include <cmath>

#include "base/units.h"
#include "data/sea.h"
#include "data/sources.h"
#include "data/sources_hold.h"
#include "job/estimate.h"

namespace thole {
namespace {

constexpr double kUsualWind_kn = 15.0;

struct Surroundings {
  double fetch_m = 0.0;
  double depth_m = 0.0;
};

Surroundings surroundings(Exposure exposure) {
  switch (exposure) {
    case Exposure::sheltered:
      return {.fetch_m = 1000.0, .depth_m = 3.0};
    case Exposure::bay:
      return {.fetch_m = 5000.0, .depth_m = 6.0};
    case Exposure::open:
      return {.fetch_m = 20000.0, .depth_m = 20.0};
  }
  return {.fetch_m = 5000.0, .depth_m = 6.0};
}

void assume_weather(Water& water, Trace& trace) {
  assume(trace, water.exposure, Exposure::bay, "water.exposure", "A bay or estuary.",
         kProjectDecision);
  const Surroundings around = surroundings(water.exposure.value);
  assume(trace, water.wind_mps, mps_from_kn(kUsualWind_kn), "water.wind_mps",
         "15 kn of wind, in which few go on working from a small boat.", kProjectDecision);
  assume(trace, water.wind_height, WindHeight::ten_metres, "water.wind_height",
         "The wind at 10 m acts unreduced, which is on the safe side.", kDnvWind);
  assume(trace, water.fetch_m, around.fetch_m, "water.fetch_m",
         "Open water upwind: sheltered 1 km, bay 5 km, open water 20 km.", kProjectDecision);
  assume(trace, water.depth_m, around.depth_m, "water.depth_m",
         "Depth: sheltered 3 m, bay 6 m, open water 20 m.", kProjectDecision);
  assume(trace, water.current_mps, 0.25, "water.current_mps", "Half a knot of current.",
         kProjectDecision);
  assume(trace, water.current_angle_deg, 0.0, "water.current_angle_deg",
         "Wind and current come from the same side.", kProjectDecision);
  assume(trace, water.salinity, Salinity::salt, "water.salinity", "Salt water.", kProjectDecision);
  assume(trace, water.air_C, 15.0, "water.air_C",
         "Air at 15 degrees, as in the standard atmosphere.", kIdealGas);
}

Term gravity_term() { return {"g", kGravity_mps2, "m/s2", "gravity"}; }

std::vector<Term> sea_terms(const Water& water) {
  return {{"U_A", adjusted_wind_mps(water.wind_mps.value), "m/s",
           "wind stress factor, 0.71 times the wind to the 1.23"},
          gravity_term(),
          {"X", water.fetch_m.value, "m", "open water upwind"},
          {"d", water.depth_m.value, "m", "depth of the water"}};
}

}  // namespace

void estimate_water(Job& job, Trace& trace) {
  Water& water = job.water;
  assume_weather(water, trace);
  const Sea sea = spm_sea(water.wind_mps.value, water.fetch_m.value, water.depth_m.value);
  const bool height_given = water.wave_height_m.known();
  estimate(trace, water.wave_height_m, "water.wave_height_m", [&] {
    return Step{
        .label = "Wave height that the wind raises",
        .symbol = "H",
        .formula =
            "min(4, U_A^2 / g * 0.283 * tanh(0.53 * (g * d / U_A^2)^0.75) * "
            "tanh(0.00565 * sqrt(g * X / U_A^2) / tanh(0.53 * (g * d / U_A^2)^0.75)))",
        .terms = sea_terms(water),
        .value = std::min(4.0, sea.height_m),
        .unit = "m",
        .source = kSpmSea,
        .assumptions = {"The wind has blown long enough: an hour or two over a few kilometres. "
                        "Other authors differ by about a fifth."}};
  });
  estimate(trace, water.wave_period_s, "water.wave_period_s", [&] {
    if (height_given) {
      return Step{
          .label = "Wave period from the height given",
          .symbol = "T_p",
          .formula = "min(15, max(0.5, sqrt(2 * 3.141592653589793 * H / (s * g))))",
          .terms = {{"H", water.wave_height_m.value, "m", "significant wave height"},
                    {"s", kSeaSteepness_ratio, "", "usual height over length of a wind sea"},
                    gravity_term()},
          .value = std::clamp(steep_period_s(water.wave_height_m.value), 0.5, 15.0),
          .unit = "s",
          .source = kProjectDecision};
    }
    return Step{.label = "Wave period that the wind raises",
                .symbol = "T_p",
                .formula =
                    "min(15, max(0.5, U_A / g * 7.54 * tanh(0.833 * (g * d / U_A^2)^0.375) * "
                    "tanh(0.0379 * (g * X / U_A^2)^(1 / 3) / tanh(0.833 * (g * d / "
                    "U_A^2)^0.375))))",
                .terms = sea_terms(water),
                .value = std::clamp(sea.period_s, 0.5, 15.0),
                .unit = "s",
                .source = kSpmSea};
  });
}

}  // namespace thole
