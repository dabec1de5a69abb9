#include "calc/trim/dock_tests.h"

#include <cmath>
#include <numbers>

#include "base/units.h"
#include "calc/trim/hydrostatics.h"
#include "data/sources_float.h"

namespace thole {
namespace {

constexpr double kLeastGm_m = 0.1;  // of the field trim.gm_m, as the next
constexpr double kMostGm_m = 4.0;
constexpr double kLeastAngle_deg = 1.0;  // below it the ruler decides
constexpr double kMostAngle_deg = 7.0;   // beyond it sides are no walls; project decision
constexpr double kPoorSpread_frac = 0.4;
constexpr double kLeastWaterplane_ratio = 2.0 / 3.0;

void doubt_gm(GmReading& reading) {
  if (!(reading.gm_m >= kLeastGm_m && reading.gm_m <= kMostGm_m)) {
    reading.doubts.emplace_back(
        "No boat of this kind has such a metacentric height (0.1 to 4 m is looked for): read again.");
  }
  if (reading.spread_m > kPoorSpread_frac * reading.gm_m) {
    reading.doubts.emplace_back("The spread is wide: a larger weight or angle, or more rolls, would narrow it.");
  }
}

}  // namespace

double pendulum_deg(double pendulum_m, double pendulum_shift_mm) {
  return deg_from_rad(std::atan(0.001 * pendulum_shift_mm / pendulum_m));
}

GmReading roll_test(const RollTestInput& in) {
  GmReading reading{.gm_m = roll_test_gm_m(in.roll_factor, in.beam_m, in.period_s)};
  reading.trace.steps.push_back(
      {.id = "dock.roll_gm",
       .label = "Metacentric height from the roll",
       .symbol = "GM",
       .formula = "(f * B / T)^2",
       .terms = {{"f", in.roll_factor, "", "roll coefficient"},
                 {"B", in.beam_m, "m", "beam"},
                 {"T", in.period_s, "s", "side to side and back"}},
       .value = reading.gm_m,
       .unit = "m",
       .source = kRollTest,
       .assumptions = {"The coefficient was found on ships and fishing vessels (0.73 to 0.88); on "
                       "small planing boats it is extrapolated."}});
  const double factor_frac = in.roll_factor_spread_factor / in.roll_factor;
  const double period_frac = in.period_spread_s / in.period_s;
  const double share = 2.0 * std::sqrt(factor_frac * factor_frac + period_frac * period_frac +
                                       in.beam_spread_frac * in.beam_spread_frac);
  reading.spread_m = reading.gm_m * share;
  reading.trace.steps.push_back(
      {.id = "dock.roll_spread",
       .label = "Known to within, either way",
       .symbol = "dGM",
       .formula = "GM * 2 * sqrt((df / f)^2 + (dT / T)^2 + b^2)",
       .terms = {{"GM", reading.gm_m, "m", "from the roll"},
                 {"df", in.roll_factor_spread_factor, "", "of the coefficient"},
                 {"f", in.roll_factor, "", "coefficient"},
                 {"dT", in.period_spread_s, "s", "of the period, ten of them timed"},
                 {"T", in.period_s, "s", "period"},
                 {"b", in.beam_spread_frac, "", "share of the beam"}},
       .value = reading.spread_m,
       .unit = "m",
       .source = kDockReadings});
  doubt_gm(reading);
  return reading;
}

GmReading inclining_test(const InclineInput& in) {
  const double angle_deg = pendulum_deg(in.pendulum_m, in.pendulum_shift_mm);
  GmReading reading{.gm_m = inclining_gm_m(in.mass_kg, in.shift_m, in.displacement_kg, angle_deg)};
  reading.trace.steps.push_back(
      {.id = "dock.incline_angle",
       .label = "Heel that the plumb line shows",
       .symbol = "phi",
       .formula = "atan(s / 1000 / l) * 180 / pi",
       .terms = {{"s", in.pendulum_shift_mm, "mm", "its foot went across by"},
                 {"l", in.pendulum_m, "m", "plumb line"},
                 {"pi", std::numbers::pi, "", "circle constant"}},
       .value = angle_deg,
       .unit = "deg",
       .source = kInclining});
  reading.trace.steps.push_back(
      {.id = "dock.incline_gm",
       .label = "Metacentric height from the weight moved",
       .symbol = "GM",
       .formula = "w * d / (D * s / 1000 / l)",
       .terms = {{"w", in.mass_kg, "kg", "weight moved"},
                 {"d", in.shift_m, "m", "across by"},
                 {"D", in.displacement_kg, "kg", "the boat as she floats, all aboard"},
                 {"s", in.pendulum_shift_mm, "mm", "plumb line's foot went across by"},
                 {"l", in.pendulum_m, "m", "plumb line"}},
       .value = reading.gm_m,
       .unit = "m",
       .source = kInclining});
  const double shift_frac = in.shift_spread_m / in.shift_m;
  const double line_frac = in.pendulum_spread_m / in.pendulum_m;
  const double foot_frac = in.reading_spread_mm / in.pendulum_shift_mm;
  reading.spread_m =
      reading.gm_m * std::sqrt(in.displacement_spread_frac * in.displacement_spread_frac +
                               in.mass_spread_frac * in.mass_spread_frac + shift_frac * shift_frac +
                               line_frac * line_frac + foot_frac * foot_frac);
  reading.trace.steps.push_back(
      {.id = "dock.incline_spread",
       .label = "Known to within, either way",
       .symbol = "dGM",
       .formula = "GM * sqrt(u_D^2 + u_w^2 + (dd / d)^2 + (dl / l)^2 + (ds / s)^2)",
       .terms = {{"GM", reading.gm_m, "m", "from the weight moved"},
                 {"u_D", in.displacement_spread_frac, "", "share of the boat's weight"},
                 {"u_w", in.mass_spread_frac, "", "share of the weight moved"},
                 {"dd", in.shift_spread_m, "m", "of the distance"},
                 {"d", in.shift_m, "m", "distance"},
                 {"dl", in.pendulum_spread_m, "m", "of the plumb line"},
                 {"l", in.pendulum_m, "m", "plumb line"},
                 {"ds", in.reading_spread_mm, "mm", "of the foot, which swings"},
                 {"s", in.pendulum_shift_mm, "mm", "foot went across by"}},
       .value = reading.spread_m,
       .unit = "m",
       .source = kDockReadings});
  if (angle_deg < kLeastAngle_deg) {
    reading.doubts.emplace_back("She heeled less than one degree: move more weight, or move it farther.");
  }
  if (angle_deg > kMostAngle_deg) {
    reading.doubts.emplace_back("She heeled more than seven degrees: the rule is for small angles; move less weight.");
  }
  doubt_gm(reading);
  return reading;
}

ImmersionReading immersion_test(const ImmersionInput& in) {
  ImmersionReading reading{.immersion_kg_per_cm = 10.0 * in.mass_kg / in.sinkage_mm};
  reading.waterplane_ratio = 100.0 * reading.immersion_kg_per_cm /
                             (in.density_kg_per_m3 * in.waterline_length_m * in.waterline_beam_m);
  reading.trace.steps.push_back({.id = "dock.immersion",
                                 .label = "Weight that sinks her by a centimetre",
                                 .symbol = "T1",
                                 .formula = "10 * w / s",
                                 .terms = {{"w", in.mass_kg, "kg", "weight put amidships"},
                                           {"s", in.sinkage_mm, "mm", "she sank by"}},
                                 .value = reading.immersion_kg_per_cm,
                                 .unit = "kg_per_cm",
                                 .source = kDerrett});
  reading.trace.steps.push_back(
      {.id = "dock.waterplane",
       .label = "Waterplane coefficient from it",
       .symbol = "C",
       .formula = "100 * T1 / (rho * L * B)",
       .terms = {{"T1", reading.immersion_kg_per_cm, "kg_per_cm", "weight for a centimetre"},
                 {"rho", in.density_kg_per_m3, "kg_per_m3", "density of the water"},
                 {"L", in.waterline_length_m, "m", "waterline length"},
                 {"B", in.waterline_beam_m, "m", "waterline beam"}},
       .value = reading.waterplane_ratio,
       .unit = "",
       .source = kDerrett});
  const double read_frac = in.reading_spread_mm / in.sinkage_mm;
  const double own = in.mass_spread_frac * in.mass_spread_frac + read_frac * read_frac;
  reading.immersion_spread_kg_per_cm = reading.immersion_kg_per_cm * std::sqrt(own);
  reading.waterplane_spread_ratio =
      reading.waterplane_ratio * std::sqrt(own + in.length_spread_frac * in.length_spread_frac +
                                           in.beam_spread_frac * in.beam_spread_frac);
  reading.trace.steps.push_back(
      {.id = "dock.immersion_spread",
       .label = "Coefficient known to within, either way",
       .symbol = "dC",
       .formula = "C * sqrt(u_w^2 + (ds / s)^2 + u_L^2 + u_B^2)",
       .terms = {{"C", reading.waterplane_ratio, "", "coefficient"},
                 {"u_w", in.mass_spread_frac, "", "share of the weight"},
                 {"ds", in.reading_spread_mm, "mm", "of the mean sinkage, with ripples"},
                 {"s", in.sinkage_mm, "mm", "she sank by"},
                 {"u_L", in.length_spread_frac, "", "share of the waterline length"},
                 {"u_B", in.beam_spread_frac, "", "share of the waterline beam"}},
       .value = reading.waterplane_spread_ratio,
       .unit = "",
       .source = kDockReadings});
  if (!(reading.waterplane_ratio >= kLeastWaterplane_ratio && reading.waterplane_ratio <= 1.0)) {
    reading.doubts.emplace_back(
        "No waterplane is so full or so fine (0.67 to 1 is looked for): check waterline length and beam, and read "
        "bow and stern again.");
  }
  if (reading.waterplane_spread_ratio > 0.5 * kPoorSpread_frac * reading.waterplane_ratio) {
    reading.doubts.emplace_back("The spread is wide: more weight would narrow it.");
  }
  return reading;
}

}  // namespace thole
