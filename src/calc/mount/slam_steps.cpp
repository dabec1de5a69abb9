#include "calc/mount/mount_parts.h"

#include "base/units.h"
#include "calc/mount/load_cases.h"
#include "calc/mount/plate.h"
#include "data/sources.h"
#include "data/sources_mount.h"

namespace thole::mounting {
namespace {

constexpr double kLeastAcceleration_g = 1.0;  // DNV HSLC 2011 B201
constexpr double kBowRatioLeast_ratio = 1.5;  // this and the next: project decisions
constexpr double kBowRatioMost_ratio = 2.0;

}  // namespace

PlaningHull hull_of(const MountInput& in) {
  return {.waterline_length_m = in.waterline_length_m,
          .chine_beam_m = in.chine_beam_m,
          .deadrise_deg = in.deadrise_deg,
          .displacement_kg = in.displacement_kg,
          .speed_mps = in.run_speed_mps};
}

// 1/100 highest acceleration at the centre of gravity, with its steps.
double cg_acceleration_g(const PlaningHull& hull, Trace& trace) {
  const CgAcceleration n = cg_acceleration(hull);
  const double speed_kn = design_speed_kn(hull);
  const bool planing = speed_kn >= 5.0 * std::sqrt(hull.waterline_length_m);
  tell([&] {
    trace.steps.push_back(
        {.id = "mount.cg_acceleration_first",
         .label = "Acceleration at the centre of gravity, first formula",
         .symbol = "n_1",
         .formula = "0.32 * (L / (10 * B) + 0.084) * (50 - beta) * V^2 * B^2 / m",
         .terms = {{"L", hull.waterline_length_m, "m", "waterline length"},
                   {"B", hull.chine_beam_m, "m", "beam at the chine"},
                   {"beta", effective_deadrise_deg(hull), "deg", "deadrise, taken as 10 to 30"},
                   {"V", speed_kn, "kn", "fastest run, at least 2.36 sqrt(L) and at most 50"},
                   {"m", hull.displacement_kg, "kg", "loaded weight"}},
         .value = n.first_g,
         .unit = "g",
         .source = kIso12215Acceleration,
         .assumptions = planing ? std::vector<std::string>{"Average of the 1/100 highest."}
                                : std::vector<std::string>{
                                      "The formula is for planing craft; this boat is slower, and "
                                      "the least value of the next step may govern."}});
    trace.steps.push_back({.id = "mount.cg_acceleration_second",
                           .label = "Acceleration at the centre of gravity, second formula",
                           .symbol = "n_2",
                           .formula = "0.5 * V / m^0.17",
                           .terms = {{"V", speed_kn, "kn", "fastest run"},
                                     {"m", hull.displacement_kg, "kg", "loaded weight"}},
                           .value = n.second_g,
                           .unit = "g",
                           .source = kIso12215Acceleration});
  });
  const double used_g = std::max(n.used_g, kLeastAcceleration_g);
  const bool first_alone = n.first_g <= 3.0;
  tell([&] {
    trace.steps.push_back(
        {.id = "mount.cg_acceleration",
         .label = "Acceleration at the centre of gravity",
         .symbol = "n_cg",
         .formula = first_alone ? "max(n_1, n_min)" : "max(min(min(n_1, n_2), 7), n_min)",
         .terms = {{"n_1", n.first_g, "g", "first formula"},
                   {"n_2", n.second_g, "g", "second formula"},
                   {"n_min", kLeastAcceleration_g, "g", "least design value"}},
         .value = used_g,
         .unit = "g",
         .source = used_g > n.used_g ? kDnvHslcMinimum : kIso12215Acceleration,
         .assumptions = {first_alone ? "The first formula stands alone up to 3 g."
                                     : "Above 3 g the smaller of both, at most 7 g."}});
  });
  return used_g;
}

double bow_acceleration_g(const PlaningHull& hull, double cg_g, Trace& trace) {
  const double speed_kn = design_speed_kn(hull);
  const double ratio = std::clamp(bow_ratio(hull.waterline_length_m, hull.chine_beam_m, speed_kn),
                                  kBowRatioLeast_ratio, kBowRatioMost_ratio);
  tell([&] {
    trace.steps.push_back(
        {.id = "mount.bow_acceleration",
         .label = "Acceleration at the bow",
         .symbol = "n_bow",
         .formula = "n_cg * min(max(r_min, 1 + 3.8 * (L / B - 2.25) * sqrt(L / 0.3048) / V), r_max)",
         .terms = {{"n_cg", cg_g, "g", "at the centre of gravity"},
                   {"L", hull.waterline_length_m, "m", "waterline length"},
                   {"B", hull.chine_beam_m, "m", "beam at the chine"},
                   {"V", speed_kn, "kn", "fastest run"},
                   {"r_min", kBowRatioLeast_ratio, "", "least ratio, our own judgement"},
                   {"r_max", kBowRatioMost_ratio, "", "largest ratio, our own judgement"}},
         .value = cg_g * ratio,
         .unit = "g",
         .source = kSavitskyBrown1976,
         .assumptions = {"Small fast boats lie outside the measured range, so the ratio is kept "
                         "between 1.5 and 2."}});
  });
  return cg_g * ratio;
}

double motor_acceleration_g(const MountInput& in, double cg_g, double bow_g, Trace& trace) {
  const double motor_g = acceleration_at_g(cg_g, bow_g, std::max(in.motor_x_m, in.centre_x_m), in.centre_x_m, in.waterline_length_m);
  tell([&] {
    trace.steps.push_back({.id = "mount.motor_acceleration",
                           .label = "Acceleration where the stowed motor lies",
                           .symbol = "n_x",
                           .formula = "n_cg + (n_bow - n_cg) * (max(x, x_cg) - x_cg) / (L - x_cg)",
                           .terms = {{"n_cg", cg_g, "g", "at the centre of gravity"},
                                     {"n_bow", bow_g, "g", "at the bow"},
                                     {"x", in.motor_x_m, "m", "stowed motor forward of the transom"},
                                     {"x_cg", in.centre_x_m, "m", "centre of gravity, taken where she trims about"},
                                     {"L", in.waterline_length_m, "m", "waterline length"}},
                           .value = motor_g,
                           .unit = "g",
                           .source = kRigidBody,
                           .assumptions = {"Heave and pitch go in a straight line along the boat, and on beyond the stem."}});
  });
  return motor_g;
}

// Speed in the sea that the boat is run in at which slams reach the design value.
double speed_limit_mps(const MountInput& in, double cg_g, Trace& trace) {
  const PlaningHull hull = hull_of(in);
  const double limit_mps = speed_in_sea_mps(hull, in.run_wave_m, cg_g);
  tell([&] {
    trace.steps.push_back(
        {.id = "mount.speed_limit",
         .label = "Slow to this in that sea, motor stowed",
         .symbol = "V_s",
         .formula = "k * sqrt(1650 * n_cg * (m / 1000) / ((H / B + 0.084) * (50 - beta) * B^2))",
         .terms = {{"k", mps_from_kn(1.0), "mps", "one knot"},
                   {"n_cg", cg_g, "g", "design value at the centre of gravity"},
                   {"m", in.displacement_kg, "kg", "loaded weight"},
                   {"H", in.run_wave_m, "m", "significant height of the sea it is run in"},
                   {"B", in.chine_beam_m, "m", "beam at the chine"},
                   {"beta", effective_deadrise_deg(hull), "deg", "deadrise, taken as 10 to 30"}},
         .value = limit_mps,
         .unit = "mps",
         .source = kDnvHslcSpeed,
         .assumptions = {"1/100 highest acceleration on a straight course into the sea; a skipper "
                         "who feels his way goes faster between the waves."}});
  });
  return limit_mps;
}

// The stowed motor's push on the plate, amplified by `factor`, and its moment over the deck's edge.
Slam slam_on_plate(const MountInput& in, const Layout& layout, double motor_g, double factor,
                   Trace& trace) {
  Slam slam{};
  slam.force_N = in.motor_mass_kg * kGravity_mps2 * (1.0 + motor_g * std::max(factor, 1.0));
  tell([&] {
    trace.steps.push_back(
        {.id = "mount.slam",
         .label = "Stowed motor on the plate in a slam",
         .symbol = "F",
         .formula = "m * g * (1 + n_x * max(D, 1))",
         .terms = {{"m", in.motor_mass_kg, "kg", "motor with its mount"},
                   {"g", kGravity_mps2, "mps2", "gravity"},
                   {"n_x", motor_g, "g", "acceleration where the motor lies"},
                   {"D", factor, "", "amplification by the springing plate"}},
         .value = slam.force_N,
         .unit = "N",
         .source = kProjectDecision,
         .assumptions = {"A plate too soft to follow the pulse is not credited for it."}});
  });
  const MomentShares shares = moment_shares(in.chocked);
  slam.moment_Nm = std::max(
      slam.force_N *
          (shares.moment_factor * layout.reach_mm - shares.reaction_factor * layout.deck_ahead_mm) /
          1000.0,
      0.0);
  tell([&] {
    trace.steps.push_back(
        {.id = "mount.slam_moment",
         .label = "Bending over the edge of the deck in a slam",
         .symbol = "M_s",
         .formula = "max(F * (c_M * L - c_R * a) / 1000, 0)",
         .terms = {{"F", slam.force_N, "N", "stowed motor in a slam"},
                   {"L", layout.reach_mm, "mm", "front row to the motor's centre of mass"},
                   {"a", layout.deck_ahead_mm, "mm", "front row to the edge of the deck"},
                   {"c_M", shares.moment_factor, "", "share of the moment that the bolts hold"},
                   {"c_R", shares.reaction_factor, "", "share of the force that the bolts hold"}},
         .value = slam.moment_Nm,
         .unit = "Nm",
         .source = kBeamTheory,
         .assumptions = {in.chocked ? "Held at the front row, on a chock at twice the overhang."
                                    : "Nothing carries the motor's outer end."}});
  });
  return slam;
}

}  // namespace thole::mounting
