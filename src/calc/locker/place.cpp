#include "calc/locker/place.h"

#include <algorithm>
#include <cmath>

#include "base/units.h"
#include "data/sources.h"
#include "data/sources_battery.h"

namespace thole {
namespace {

constexpr double kFuelPart_m = 12.0 * kMetrePerInch;  // kFuelPartUs; ISO says 300 mm
constexpr double kOpenAir_m = 2.0 * kMetrePerFoot;    // kOpenAirUs
constexpr double kGasTable_C = 40.0;                  // kVenting: the gas table holds to here
constexpr double kMetrePerMillimetre = 0.001;

}  // namespace

ChargeWindow charge_window(Chemistry chemistry) {
  switch (chemistry) {
    case Chemistry::flooded:
    case Chemistry::agm:
      return {-10.0, 50.0};
    case Chemistry::gel:
      return {-10.0, 45.0};
    case Chemistry::lifepo4:
      return {5.0, 45.0};  // 0 C by most labels; 5 leaves a margin for the sensor
  }
  return {5.0, 45.0};
}

Trace place(const PlaceInput& in) {
  Trace trace{};
  const bool lead = is_lead(in.chemistry);
  trace.checks.push_back({.id = "locker.tank",
                          .label = "Tank, filter or fuel fitting straight above or below",
                          .actual = !in.tank_over_or_under  ? kNotKnown_m
                                    : *in.tank_over_or_under ? 1.0
                                                             : 0.0,
                          .limit = 0.0,
                          .source = kTankUs,
                          .remedy = "Move the bank, or the fuel part, out of line."});
  if (!in.metal_fuel_part_shielded) {
    trace.checks.push_back({.id = "locker.fuel_part",
                            .label = "Bare metal fuel part above the posts",
                            .actual = in.metal_fuel_part_m,
                            .limit = kFuelPart_m,
                            .unit = "m",
                            .comparison = Comparison::at_least,
                            .source = kFuelPartUs,
                            .remedy = "Shield it with something that does not conduct."});
  }
  if (in.petrol && !in.spark_parts_protected) {
    trace.checks.push_back({.id = "locker.petrol_air",
                            .label = "Open air between parts that spark and petrol",
                            .actual = in.spark_from_petrol_m,
                            .limit = kOpenAir_m,
                            .unit = "m",
                            .comparison = Comparison::at_least,
                            .source = kOpenAirUs,
                            .remedy = "Use ignition-protected parts, or set a bulkhead between."});
  }
  if (lead && in.spark_clearance_mm > 0.0) {
    trace.checks.push_back({.id = "locker.spark",
                            .label = "Nearest spark or glow to a block's vent",
                            .actual = in.spark_from_vent_m,
                            .limit = kMetrePerMillimetre * in.spark_clearance_mm,
                            .unit = "m",
                            .comparison = Comparison::at_least,
                            .source = kVenting,
                            .remedy = "Move the part that sparks, or set a partition between."});
  }
  trace.checks.push_back(
      {.id = "locker.bilge",
       .label = "Blocks under bilge water",
       .actual = std::isnan(in.above_bilge_m) ? in.above_bilge_m : std::max(0.0, -in.above_bilge_m),
       .limit = 0.0,
       .unit = "m",
       .source = kTrayUs,
       .remedy = "Raise the blocks above the highest bilge water."});
  const ChargeWindow window = charge_window(in.chemistry);
  trace.checks.push_back({.id = "locker.cold",
                          .label = "Degrees too cold to charge",
                          .actual = std::isnan(in.coldest_C)
                                        ? in.coldest_C
                                        : std::max(0.0, window.low_C - in.coldest_C),
                          .limit = 0.0,
                          .unit = "K",
                          .source = kCommonPractice,
                          .remedy = "Warm the space before charging, or charge later in the day."});
  trace.checks.push_back(
      {.id = "locker.heat",
       .label = "Warmest that the blocks are charged",
       .actual = in.hottest_C,
       .limit = lead ? std::min(window.high_C, kGasTable_C) : window.high_C,
       .unit = "C",
       .source = lead ? kVenting : kCommonPractice,
       .remedy = lead ? "Keep it from the engine and the sun: above 40 °C more gas comes off "
                        "than the openings are made for."
                      : "Keep it from the engine and the sun."});
  if (lead) {
    trace.cautions.push_back(
        {"locker.tray", "Line the tray with something that acid does not eat.", kTrayUs});
    trace.cautions.push_back(
        {"locker.hydrogen",
         "Hydrogen gathers under the lid while charging and explodes at a spark: vent it outboard, "
         "as the charging page says, and air the locker before working in it.",
         kHydrogenOut});
  }
  if (in.petrol) {
    trace.cautions.push_back(
        {"locker.petrol",
         "Petrol aboard: air the space and make sure that there are no vapours before a cable is "
         "joined or a tool is used.",
         kOpenAirUs});
  }
  trace.cautions.push_back(
      {"locker.posts", "Cover the posts: no metal may fall across them.", kPostsUs});
  return trace;
}

}  // namespace thole
