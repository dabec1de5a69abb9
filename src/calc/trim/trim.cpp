#include "calc/trim/trim.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <numeric>

#include "base/number.h"
#include "base/units.h"
#include "calc/trim/capacity_count.h"
#include "calc/trim/hydrostatics.h"
#include "data/sources.h"
#include "data/sources_float.h"

namespace thole {
namespace {

constexpr double kSaltWater_kg_per_m3 = 1025.0;  // 64 lb/ft3
constexpr double kFreshWater_kg_per_m3 = 1000.0;

// Custom of the trade: beyond these the weights are moved or the job is refused. No standard sets
// them.
constexpr double kTrimLimit_frac = 0.01;      // added trim over waterline length
constexpr double kFreeboardLoss_frac = 0.10;  // of the bow height
constexpr double kListLimit_deg = 2.0;
constexpr double kMassLimit_frac = 0.05;   // of the displacement
constexpr double kBowDownLimit_deg = 0.5;  // after the work
constexpr double kLeastGm_m = 0.35;  // UK small commercial vessel code, recalled

// Below this no list is told from it: the check on GM fails long before.
constexpr double kListGm_m = 0.01;

// A proposed move aims inside the limit, so that the check then passes and is not merely close.
// Project decision, as are the bounds of where a bank may go.
constexpr double kAim_frac = 0.85;
constexpr double kFurthestAft_frac = 0.10;  // of the waterline length: room before the transom
constexpr double kFurthestOut_frac = 0.40;  // of the beam, to either side

// The sum of a list whose length the job decides; what is beyond the last symbol is lumped into it.
constexpr std::array<std::string_view, 6> kSymbols{"a", "b", "c", "d", "e", "f"};
constexpr std::array<std::string_view, 7> kSums{
    "0", "a", "a + b", "a + b + c", "a + b + c + d", "a + b + c + d + e", "a + b + c + d + e + f"};

double sum_of(const std::vector<double>& values) {
  return std::accumulate(values.begin(), values.end(), 0.0);
}

Step sum_step(Step step, const std::vector<double>& values, std::string_view meaning) {
  for (std::size_t i = 0; i < values.size(); ++i) {
    if (i < kSymbols.size()) {
      step.terms.push_back({kSymbols[i], values[i], step.unit, meaning});
    } else {
      step.terms.back().value += values[i];
    }
  }
  step.formula = kSums[step.terms.size()];
  return step;
}

struct Moments {
  double forward_kgm = 0.0;    // about the centre of flotation
  double starboard_kgm = 0.0;  // about the centreline
  double height_kgm = 0.0;     // above the water, of those whose height is known
  double height_kg = 0.0;      // these weights
};

void describe_hull(const TrimInput& in, double density_kg_per_m3, TrimResult& r) {
  const Hydrostatics water = hydrostatics(in.waterline_length_m, in.waterline_beam_m,
                                          in.waterplane_ratio, density_kg_per_m3);
  const WaterplaneShape shape = transom_waterplane(in.waterplane_ratio);
  r.immersion_kg_per_cm = water.immersion_kg_per_cm;
  r.moment_kgm_per_cm = water.moment_kgm_per_cm;
  r.flotation_x_m = water.flotation_x_m;

  const Term length{"L", in.waterline_length_m, "m", "waterline length"};
  const Term beam{"B", in.waterline_beam_m, "m", "waterline beam"};
  const Term density{"rho", density_kg_per_m3, "kg_per_m3", "density of the water"};
  const std::string family =
      "A waterplane with full beam aft that closes to a point at the stem; +/- 15 % on trim.";
  tell([&] {
    r.trace.steps.push_back(
        {.id = "trim.immersion",
         .label = "Weight that sinks the boat by a centimetre",
         .symbol = "T1",
         .formula = "rho * C * L * B / 100",
         .terms = {density, {"C", in.waterplane_ratio, "", "waterplane coefficient"}, length, beam},
         .value = r.immersion_kg_per_cm,
         .unit = "kg_per_cm",
         .source = kDerrett});
    r.trace.steps.push_back(
        {.id = "trim.flotation",
         .label = "Point about which the boat trims, forward of the transom",
         .symbol = "x_F",
         .formula = "f * L",
         .terms = {{"f", shape.flotation_ratio, "", "from the waterplane coefficient"}, length},
         .value = r.flotation_x_m,
         .unit = "m",
         .source = kProjectDecision,
         .assumptions = {family}});
    r.trace.steps.push_back(
        {.id = "trim.moment",
         .label = "Moment that trims the boat by a centimetre",
         .symbol = "M1",
         .formula = "rho * C_IL * B * L^2 / 100",
         .terms = {density,
                   {"C_IL", shape.longitudinal_inertia_ratio, "", "from the waterplane coefficient"},
                   beam,
                   length},
         .value = r.moment_kgm_per_cm,
         .unit = "kgm_per_cm",
         .source = kDerrett,
         .assumptions = {family}});
  });
}

Moments add_weights(const TrimInput& in, TrimResult& r) {
  std::vector<double> masses_kg;
  std::vector<double> forward_kgm;
  std::vector<double> starboard_kgm;
  for (const TrimItem& item : in.items) {
    masses_kg.push_back(item.mass_kg);
    forward_kgm.push_back(item.mass_kg * (item.x_m - r.flotation_x_m));
    starboard_kgm.push_back(item.mass_kg * item.y_m);
    tell([&] {
      r.trace.steps.push_back({.id = "trim.item_" + std::to_string(masses_kg.size()),
                               .label = item.label + ": moment about the point of trim",
                               .symbol = "M",
                               .formula = "w * (x - x_F)",
                               .terms = {{"w", item.mass_kg, "kg", "weight"},
                                         {"x", item.x_m, "m", "forward of the transom"},
                                         {"x_F", r.flotation_x_m, "m", "point of trim"}},
                               .value = forward_kgm.back(),
                               .unit = "kgm",
                               .source = kDerrett});
    });
  }
  Moments sum{.forward_kgm = sum_of(forward_kgm), .starboard_kgm = sum_of(starboard_kgm)};
  r.added_kg = sum_of(masses_kg);
  std::vector<double> height_kgm;
  for (const TrimItem& item : in.items) {
    if (!item.z_m) continue;
    height_kgm.push_back(item.mass_kg * *item.z_m);
    sum.height_kg += item.mass_kg;
  }
  sum.height_kgm = sum_of(height_kgm);
  tell([&] {
    std::vector<Step>& steps = r.trace.steps;
    steps.push_back(sum_step({.id = "trim.added_mass",
                              .label = "Weight that comes aboard",
                              .symbol = "W",
                              .value = r.added_kg,
                              .unit = "kg",
                              .source = kDefinition},
                             masses_kg, "weight of one item"));
    steps.push_back(sum_step({.id = "trim.forward_moment",
                              .label = "Moment of all the weights about the point of trim",
                              .symbol = "M",
                              .value = sum.forward_kgm,
                              .unit = "kgm",
                              .source = kDerrett},
                             forward_kgm, "moment of one item"));
    steps.push_back(sum_step({.id = "trim.sideways_moment",
                              .label = "Moment of all the weights about the centreline",
                              .symbol = "M_y",
                              .value = sum.starboard_kgm,
                              .unit = "kgm",
                              .source = kDerrett},
                             starboard_kgm, "weight of one item times its distance to starboard"));
    if (height_kgm.empty()) return;
    steps.push_back(sum_step({.id = "trim.height_moment",
                              .label = "Moment of all the weights above the water",
                              .symbol = "M_z",
                              .value = sum.height_kgm,
                              .unit = "kgm",
                              .source = kDerrett},
                             height_kgm, "weight of one item times its height"));
  });
  return sum;
}

// GM with the weights aboard; as it was where no height is known.
void raise_weights(const TrimInput& in, const Moments& sum, double sinkage_m, TrimResult& r) {
  r.gm_after_m = in.gm_m;
  if (!(sum.height_kg > 0.0)) return;
  r.gm_after_m =
      gm_with_weights_m(in.gm_m, in.displacement_kg, sum.height_kg, sum.height_kgm, sinkage_m);
  tell([&] {
    r.trace.steps.push_back(
        {.id = "trim.gm",
         .label = "Metacentric height with the weights aboard",
         .symbol = "GM_1",
         .formula = "(D * GM - M_z + W_z * s / 2) / (D + W_z)",
         .terms = {{"D", in.displacement_kg, "kg", "boat before the work"},
                   {"GM", in.gm_m, "m", "metacentric height before"},
                   {"M_z", sum.height_kgm, "kgm", "moment of the weights above the water"},
                   {"W_z", sum.height_kg, "kg", "weights whose height is known"},
                   {"s", sinkage_m, "m", "sinkage of the whole boat"}},
         .value = r.gm_after_m,
         .unit = "m",
         .source = kWeightsAndGm,
         .assumptions = {"Sides that stand upright where she sinks."}});
  });
}

void float_anew(const TrimInput& in, const Moments& sum, TrimResult& r) {
  const Settling settling = settle(in.waterline_length_m, r.flotation_x_m, r.immersion_kg_per_cm,
                                   r.moment_kgm_per_cm, r.added_kg, sum.forward_kgm);
  raise_weights(in, sum, settling.sinkage_m, r);
  r.bow_sinkage_m = settling.bow_sinkage_m;
  r.stern_sinkage_m = settling.stern_sinkage_m;
  r.trim_change_m = settling.trim_m;
  r.trim_change_deg = deg_from_rad(std::atan(settling.trim_m / in.waterline_length_m));
  r.trim_deg = in.initial_trim_deg + r.trim_change_deg;
  r.heel_deg = heel_deg(sum.starboard_kgm, in.displacement_kg + r.added_kg,
                        std::max(r.gm_after_m, kListGm_m));
  r.bow_freeboard_m = in.bow_height_m - r.bow_sinkage_m;
  r.freeboard_loss_frac = in.bow_height_m > 0.0 ? r.bow_sinkage_m / in.bow_height_m : 0.0;

  const Term length{"L", in.waterline_length_m, "m", "waterline length"};
  const Term flotation{"x_F", r.flotation_x_m, "m", "point of trim, from the transom"};
  const Term sinkage{"s", settling.sinkage_m, "m", "sinkage of the whole boat"};
  const Term change{"t", settling.trim_m, "m", "change of trim"};
  const Term pi{"pi", std::numbers::pi, "", "circle constant"};
  std::vector<Step>& steps = r.trace.steps;
  tell([&] {
    steps.push_back({.id = "trim.sinkage",
                     .label = "Sinkage of the whole boat",
                     .symbol = "s",
                     .formula = "W / T1 / 100",
                     .terms = {{"W", r.added_kg, "kg", "weight that comes aboard"},
                               {"T1", r.immersion_kg_per_cm, "kg_per_cm", "for one centimetre"}},
                     .value = settling.sinkage_m,
                     .unit = "m",
                     .source = kDerrett});
    steps.push_back({.id = "trim.trim_change",
                     .label = "Change of trim over the waterline, bow down",
                     .symbol = "t",
                     .formula = "M / M1 / 100",
                     .terms = {{"M", sum.forward_kgm, "kgm", "moment of all the weights"},
                               {"M1", r.moment_kgm_per_cm, "kgm_per_cm", "for one centimetre"}},
                     .value = settling.trim_m,
                     .unit = "m",
                     .source = kDerrett,
                     .assumptions = {"Afloat at rest, small angles."}});
    steps.push_back({.id = "trim.bow_sinkage",
                     .label = "The bow goes down by",
                     .symbol = "s_bow",
                     .formula = "s + t * (1 - x_F / L)",
                     .terms = {sinkage, change, flotation, length},
                     .value = r.bow_sinkage_m,
                     .unit = "m",
                     .source = kDerrett});
    steps.push_back({.id = "trim.stern_sinkage",
                     .label = "The stern goes down by",
                     .symbol = "s_stern",
                     .formula = "s - t * x_F / L",
                     .terms = {sinkage, change, flotation, length},
                     .value = r.stern_sinkage_m,
                     .unit = "m",
                     .source = kDerrett});
    steps.push_back(
        {.id = "trim.attitude",
         .label = "Trim after the work, bow down",
         .symbol = "a",
         .formula = "a0 + atan(t / L) * 180 / pi",
         .terms = {{"a0", in.initial_trim_deg, "deg", "trim before the work"}, change, length, pi},
         .value = r.trim_deg,
         .unit = "deg",
         .source = kDerrett});
    steps.push_back({.id = "trim.heel",
                     .label = "List from the weights, starboard down",
                     .symbol = "phi",
                     .formula = "atan(M_y / ((D + W) * max(GM_1, GM_min))) * 180 / pi",
                     .terms = {{"M_y", sum.starboard_kgm, "kgm", "moment about the centreline"},
                               {"D", in.displacement_kg, "kg", "boat before the work"},
                               {"W", r.added_kg, "kg", "weight that comes aboard"},
                               {"GM_1", r.gm_after_m, "m", "metacentric height with the weights aboard"},
                               {"GM_min", kListGm_m, "m", "least from which a list is told"},
                               pi},
                     .value = r.heel_deg,
                     .unit = "deg",
                     .source = kDerrett});
    steps.push_back({.id = "trim.bow_freeboard",
                     .label = "Bow height after the work",
                     .symbol = "F",
                     .formula = "h - s_bow",
                     .terms = {{"h", in.bow_height_m, "m", "bow height before"},
                               {"s_bow", r.bow_sinkage_m, "m", "the bow goes down by"}},
                     .value = r.bow_freeboard_m,
                     .unit = "m",
                     .source = kDefinition});
  });
}

// Where each weight that can stand elsewhere would take this much moment off the bow.
void propose_aft(const TrimInput& in, double excess_kgm, Check& check) {
  const double furthest_m = kFurthestAft_frac * in.waterline_length_m;
  for (const TrimItem& item : in.items) {
    if (item.x_field.empty() || !(item.mass_kg > 0.0)) continue;
    const double wanted_m = std::floor(10.0 * (item.x_m - excess_kgm / item.mass_kg)) / 10.0;
    const double x_m = std::max(wanted_m, furthest_m);
    if (x_m >= item.x_m) continue;
    check.changes.push_back(
        {.field = item.x_field, .value = x_m, .label = "Move aft: " + item.label});
  }
}

void propose_sideways(const TrimInput& in, double moment_kgm, Check& check) {
  const double furthest_m = kFurthestOut_frac * in.waterline_beam_m;
  for (const TrimItem& item : in.items) {
    if (item.y_field.empty() || !(item.mass_kg > 0.0)) continue;
    const double balanced_m = std::round(100.0 * (item.y_m - moment_kgm / item.mass_kg)) / 100.0;
    check.changes.push_back({.field = item.y_field,
                             .value = std::clamp(balanced_m, -furthest_m, furthest_m),
                             .label = "Balance across: " + item.label});
  }
}

// Where no choice of parts is left, the owner may want less: a bank's weight goes with its hours.
// Rounded down to half hours, and with a tenth to spare because blocks come whole.
void propose_fewer_hours(const TrimInput& in, double excess_kg, Check& check) {
  constexpr double kSpare_frac = 0.9;
  constexpr double kLeast_h = 1.0;
  for (const TrimItem& item : in.items) {
    if (!(item.holding_h > 0.0) || item.lead_bank || !(item.mass_kg > excess_kg)) continue;
    const double share = (item.mass_kg - excess_kg) / item.mass_kg;
    const double hours_h = std::floor(2.0 * kSpare_frac * share * item.holding_h) / 2.0;
    if (hours_h < kLeast_h) continue;
    check.changes.push_back(
        {.field = "hold.holding_h",
         .value = hours_h,
         .label = "Plan " + trimmed(fixed(hours_h, 1)) + " h of holding in a day"});
  }
}

void check_limits(const TrimInput& in, const Moments& sum, TrimResult& r) {
  const double kgm_per_m = 100.0 * r.moment_kgm_per_cm;
  const double length_m = in.waterline_length_m;

  Check added{.id = "trim.added",
              .label = "Trim that the weights add",
              .actual = 1000.0 * r.trim_change_m,
              .limit = 1000.0 * kTrimLimit_frac * length_m,
              .unit = "mm",
              .source = kCommonPractice,
              .remedy =
                  "Move the bank aft, or take lighter blocks; trim tabs do not cure trim at "
                  "rest."};
  if (added.verdict() == Verdict::fail) {
    const double aim_m = kAim_frac * kTrimLimit_frac * length_m;
    propose_aft(in, (r.trim_change_m - aim_m) * kgm_per_m, added);
    propose_lithium(in, added);
  }

  Check attitude{.id = "trim.attitude",
                 .label = "Bow down after the work",
                 .actual = r.trim_deg,
                 .limit = kBowDownLimit_deg,
                 .unit = "deg",
                 .source = kCommonPractice,
                 .remedy =
                     "Move the bank or other gear aft until the boat lies level or a little by "
                     "the stern."};
  if (attitude.verdict() == Verdict::fail) {
    const double excess_rad = rad_from_deg(r.trim_deg - kAim_frac * kBowDownLimit_deg);
    propose_aft(in, std::tan(excess_rad) * length_m * kgm_per_m, attitude);
  }

  Check freeboard{.id = "trim.bow_freeboard",
                  .label = "Bow height lost",
                  .actual = r.freeboard_loss_frac,
                  .limit = kFreeboardLoss_frac,
                  .unit = "",
                  .source = kCommonPractice,
                  .remedy =
                      "Move the bank aft or take lighter blocks: the bow sits too low for a "
                      "sea."};
  if (freeboard.verdict() == Verdict::fail) {
    const double excess_m = r.bow_sinkage_m - kAim_frac * kFreeboardLoss_frac * in.bow_height_m;
    propose_aft(in, excess_m / (1.0 - r.flotation_x_m / length_m) * kgm_per_m, freeboard);
    propose_lithium(in, freeboard);
  }

  Check list{.id = "trim.list",
             .label = "List from the weights",
             .actual = std::abs(r.heel_deg),
             .limit = kListLimit_deg,
             .unit = "deg",
             .source = kCommonPractice,
             .remedy =
                 "Set the bank on the other side of the centreline from the motor, or nearer to "
                 "it."};
  if (list.verdict() == Verdict::fail) propose_sideways(in, sum.starboard_kgm, list);

  Check mass{.id = "trim.mass",
             .label = "Weight added to the boat",
             .actual = r.added_kg,
             .limit = kMassLimit_frac * in.displacement_kg,
             .unit = "kg",
             .source = kCommonPractice,
             .remedy =
                 "Take lighter blocks or fewer of them, or leave other gear ashore; stay within "
                 "the builder's plate."};
  if (mass.verdict() == Verdict::fail) {
    propose_lithium(in, mass);
    propose_fewer_hours(in, mass.actual - mass.limit, mass);
  }

  Check gm{.id = "trim.gm",
           .label = "Metacentric height with the weights aboard",
           .actual = r.gm_after_m,
           .limit = kLeastGm_m,
           .unit = "m",
           .comparison = Comparison::at_least,
           .source = kLeastGm,
           .remedy =
               "Set the bank lower, or take lighter blocks; measure the metacentric height at the "
               "dock if it was only estimated, and ask a naval architect before going on."};
  if (gm.verdict() == Verdict::fail) propose_lithium(in, gm);

  for (Check* check : {&added, &attitude, &freeboard, &list, &mass, &gm}) {
    r.trace.checks.push_back(std::move(*check));
  }
}

// Each weight alone, on the boat as it floats with all of them.
void share_out(const TrimInput& in, TrimResult& r) {
  const double together_kg = in.displacement_kg + r.added_kg;
  const double sinkage_m = r.added_kg / r.immersion_kg_per_cm / 100.0;
  for (const TrimItem& item : in.items) {
    const Settling alone =
        settle(in.waterline_length_m, r.flotation_x_m, r.immersion_kg_per_cm, r.moment_kgm_per_cm,
               item.mass_kg, item.mass_kg * (item.x_m - r.flotation_x_m));
    TrimShare share{.label = item.label,
                    .mass_kg = item.mass_kg,
                    .bow_sinkage_m = alone.bow_sinkage_m,
                    .stern_sinkage_m = alone.stern_sinkage_m,
                    .trim_change_m = alone.trim_m};
    share.heel_deg =
        heel_deg(item.mass_kg * item.y_m, together_kg, std::max(r.gm_after_m, kListGm_m));
    if (item.z_m) {
      share.gm_change_m =
          -item.mass_kg * (*item.z_m - 0.5 * sinkage_m + in.gm_m) / together_kg;
    }
    r.shares.push_back(std::move(share));
  }
}

void warn(Trace& trace) {
  trace.cautions.push_back(
      {.id = "trim.openings",
       .text = "Check every scupper, drain and well at the bow against the new waterline: one that "
               "goes under fills the boat.",
       .source = kCommonPractice});
  trace.assumptions.push_back(
      {"trim.gm_m",
       "Only the list at rest is judged, not the boat's stability. Time a full roll from side to "
       "side and back to measure the metacentric height.",
       kRollTest});
}

}  // namespace

TrimResult trim(const TrimInput& in) {
  TrimResult result;
  describe_hull(in, in.salt ? kSaltWater_kg_per_m3 : kFreshWater_kg_per_m3, result);
  const Moments sum = add_weights(in, result);
  float_anew(in, sum, result);
  check_limits(in, sum, result);
  share_out(in, result);
  count_persons(in, result);
  warn(result.trace);
  return result;
}

}  // namespace thole
