#include "calc/dock_study.h"

#include <array>
#include <cmath>

#include "data/sources.h"
#include "data/sources_float.h"
#include "job/fields.h"
#include "job/uncertainty.h"

namespace thole {
namespace {

constexpr double kSaltWater_kg_per_m3 = 1025.0;
constexpr double kFreshWater_kg_per_m3 = 1000.0;

constexpr std::array<std::string_view, 1> kRollFields{"trim.roll_period_s"};
constexpr std::array<std::string_view, 4> kInclineFields{"trim.incline_mass_kg", "trim.incline_shift_m", "trim.pendulum_m", "trim.pendulum_shift_mm"};
constexpr std::array<std::string_view, 2> kImmersionFields{"trim.immersion_mass_kg", "trim.immersion_mm"};
constexpr std::array kWorksheets{
    DockWorksheet{.title = "Roll test",
                  .how = "Lines slack, tanks full or empty, nobody moving. Rock her by hand at the rail, let go, and time ten full "
              "rolls: side to side and back is one. A tenth of that is the period. Do it three times.",
                  .fields = kRollFields},
    DockWorksheet{.title = "Inclining test",
                  .how = "Hang a plumb line amidships, its bob in a bucket, a ruler across its foot. Have the weight already "
              "aboard, on the centreline; mark the foot. Move the weight straight across and mark again: three degrees "
              "is about 50 mm for a metre of line. Then the other side; take the mean.",
                  .fields = kInclineFields},
    DockWorksheet{.title = "Weight and sinkage",
                  .how = "In flat water measure from the rail down to the water at stem and transom, both sides. Put a known weight "
              "aboard where bow and stern sink alike, a little aft of midships, and measure again. The mean of the four "
              "differences is how far she sank.",
                  .fields = kImmersionFields},
};

// Half of the width of its likely range, over the value.
double spread_frac(std::string_view path, const Given<double>& value) {
  const Uncertainty* known = find_uncertainty(path);
  if (known == nullptr || !(value.value > 0.0)) return 0.0;
  const ValueRange range = likely_range(*known, value.value, value.origin);
  return 0.5 * (range.high - range.low) / value.value;
}

std::optional<Change> use(std::string_view path, double value, std::string label) {
  const Field* field = find_field(path);
  if (field == nullptr || !(value >= field->min && value <= field->max)) return std::nullopt;
  const double rounded = std::round(value / field->quantum) * field->quantum;
  return Change{.field = std::string(path), .value = rounded, .label = std::move(label)};
}

}  // namespace

std::optional<GmReading> roll_test_of(const Design& design) {
  const Trim& trim = design.job.trim;
  if (!trim.roll_period_s.known()) return std::nullopt;
  const Given<double>& beam = design.job.boat.beam_m;
  return roll_test({.beam_m = beam.value,
                    .period_s = trim.roll_period_s.value,
                    .beam_spread_frac = spread_frac("boat.beam_m", beam)});
}

std::optional<GmReading> inclining_test_of(const Design& design) {
  const Trim& trim = design.job.trim;
  if (!trim.incline_mass_kg.known() || !trim.incline_shift_m.known() || !trim.pendulum_m.known() ||
      !trim.pendulum_shift_mm.known()) {
    return std::nullopt;
  }
  const Given<double>& weight = design.job.boat.displacement_kg;
  return inclining_test({.mass_kg = trim.incline_mass_kg.value,
                         .shift_m = trim.incline_shift_m.value,
                         .pendulum_m = trim.pendulum_m.value,
                         .pendulum_shift_mm = trim.pendulum_shift_mm.value,
                         .displacement_kg = weight.value,
                         .displacement_spread_frac = spread_frac("boat.displacement_kg", weight)});
}

std::optional<ImmersionReading> immersion_test_of(const Design& design) {
  const Trim& trim = design.job.trim;
  const Boat& boat = design.job.boat;
  if (!trim.immersion_mass_kg.known() || !trim.immersion_mm.known()) return std::nullopt;
  return immersion_test(
      {.mass_kg = trim.immersion_mass_kg.value,
       .sinkage_mm = trim.immersion_mm.value,
       .waterline_length_m = boat.waterline_length_m.value,
       .waterline_beam_m = boat.waterline_beam_m.value,
       .density_kg_per_m3 = design.job.water.salinity.value == Salinity::salt ? kSaltWater_kg_per_m3
                                                                              : kFreshWater_kg_per_m3,
       .length_spread_frac = spread_frac("boat.waterline_length_m", boat.waterline_length_m),
       .beam_spread_frac = spread_frac("boat.waterline_beam_m", boat.waterline_beam_m)});
}

std::optional<Change> use_gm(const GmReading& reading) {
  return use("trim.gm_m", reading.gm_m, "Use this metacentric height");
}

std::optional<Change> use_waterplane(const ImmersionReading& reading) {
  return use("trim.waterplane_ratio", reading.waterplane_ratio, "Use this waterplane coefficient");
}

bool disagree(const GmReading& a, const GmReading& b) {
  return std::abs(a.gm_m - b.gm_m) > std::hypot(a.spread_m, b.spread_m);
}

std::span<const DockWorksheet> dock_worksheets() { return kWorksheets; }

Caution dock_caution() {
  return {.id = "trim.dock_tests",
          .text = "Test in calm water at a dock, lines slack but fast, vests on, everybody seated but the one who reads. "
                  "Stop when a gunwale or an opening comes near the water. These tests do not show that she is stable "
                  "enough: that is for a naval architect, and local rules.",
          .source = kInclineAngles};
}

}  // namespace thole
