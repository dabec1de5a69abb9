#include <algorithm>
#include <cmath>
#include <numbers>

#include "base/units.h"
#include "calc/hold/hold_steps.h"
#include "calc/hold/loads.h"
#include "calc/hold/thruster.h"
#include "data/sea.h"
#include "data/sources.h"
#include "data/sources_hold.h"
#include "data/windage.h"

namespace thole {

void show_head_on(const HoldResult& r, Trace& trace) {
  show(trace, {.id = "hold.head_on",
               .label = "Wind, current and waves all from ahead",
               .symbol = "F_0",
               .formula = "F_wind + F_current + F_wave",
               .terms = {{"F_wind", r.wind_N, "N", "wind from ahead"},
                         {"F_current", r.current_N, "N", "current from ahead"},
                         {"F_wave", r.wave_N, "N", "waves from ahead"}},
               .value = r.thrust_head_on_N,
               .unit = "N",
               .source = kDefinition});
  show(trace, {.id = "hold.head_on_ship",
               .label = "With a ship's dynamic factor, for comparison",
               .symbol = "F_ship",
               .formula = "k * F_0",
               .terms = {{"k", kDynamic_factor, "", "dynamic factor of ships"},
                         {"F_0", r.thrust_head_on_N, "N", "all from ahead"}},
               .value = kDynamic_factor * r.thrust_head_on_N,
               .unit = "N",
               .source = kDnvDynamic,
               .assumptions = {"A light boat answers to a gust within its own length; the margin "
                               "below is larger for that reason."}});
}

void show_equilibrium(const HoldResult& r, const LoadParts& loads, double heading_rad,
                      Trace& trace) {
  show(trace,
       {.id = "hold.heading",
        .label = "Heading that the boat settles on, off the wind",
        .symbol = "psi_deg",
        .formula = "psi * 180 / 3.141592653589793",
        .terms = {{"psi", heading_rad, "rad", "where the moment about the thruster vanishes"}},
        .value = r.heading_deg,
        .unit = "deg",
        .source = kDefinition,
        .assumptions = {"Found by a scan of all headings for those that the boat comes back to; "
                        "where there are two, the one that takes more thrust."}});
  const double surge_N =
      show(trace, {.id = "hold.equilibrium_surge",
                   .label = "Load along the boat at that heading",
                   .symbol = "F_X",
                   .formula = "X_wind + X_wave + X_current",
                   .terms = {{"X_wind", loads.wind.surge_N, "N", "wind"},
                             {"X_wave", loads.wave.surge_N, "N", "waves"},
                             {"X_current", loads.current.surge_N, "N", "current"}},
                   .value = loads.total.surge_N,
                   .unit = "N",
                   .source = kDefinition});
  const double sway_N = show(trace, {.id = "hold.equilibrium_sway",
                                     .label = "Load across the boat at that heading",
                                     .symbol = "F_Y",
                                     .formula = "Y_wind + Y_wave + Y_current",
                                     .terms = {{"Y_wind", loads.wind.sway_N, "N", "wind"},
                                               {"Y_wave", loads.wave.sway_N, "N", "waves"},
                                               {"Y_current", loads.current.sway_N, "N", "current"}},
                                     .value = loads.total.sway_N,
                                     .unit = "N",
                                     .source = kDefinition});
  if (std::abs(sway_N) > kLeast_N) {
    show(trace, {.id = "hold.equilibrium_lever",
                 .label = "Where that load crosses the centreline: at the thruster",
                 .symbol = "x",
                 .formula = "(M_wind + M_wave + M_current) / F_Y",
                 .terms = {{"M_wind", loads.wind.yaw_Nm, "N m", "moment of the wind"},
                           {"M_wave", loads.wave.yaw_Nm, "N m", "moment of the waves"},
                           {"M_current", loads.current.yaw_Nm, "N m", "moment of the current"},
                           {"F_Y", sway_N, "N", "load across the boat"}},
                 .value = loads.total.yaw_Nm / sway_N,
                 .unit = "m",
                 .source = kDefinition,
                 .assumptions = {"Forward of midships."}});
  }
  show(trace,
       {.id = "hold.equilibrium",
        .label = "Thrust that holds it at that heading",
        .symbol = "F_psi",
        .formula = "sqrt(F_X^2 + F_Y^2)",
        .terms = {{"F_X", surge_N, "N", "along the boat"}, {"F_Y", sway_N, "N", "across it"}},
        .value = r.thrust_equilibrium_N,
        .unit = "N",
        .source = kDefinition});
}

void show_required(const HoldInput& in, const HoldResult& r, Trace& trace) {
  show(trace, {.id = "hold.mean",
               .label = "Mean load to size on",
               .symbol = "F",
               .formula = "max(F_0, F_psi)",
               .terms = {{"F_0", r.thrust_head_on_N, "N", "all from ahead"},
                         {"F_psi", r.thrust_equilibrium_N, "N", "at the heading it settles on"}},
               .value = r.thrust_mean_N,
               .unit = "N",
               .source = kProjectDecision});
  const double gust = show(trace, {.id = "hold.gust",
                                   .label = "Three-second gust over the mean wind at sea",
                                   .symbol = "G",
                                   .formula = "1 - 0.41 * 0.06 * (1 + 0.043 * U) * ln(3 / 3600)",
                                   .terms = {{"U", in.wind_mps, "m/s", "wind at 10 m"}},
                                   .value = gust_ratio(in.wind_mps, 10.0, 3.0),
                                   .unit = "",
                                   .source = kNpdWind});
  show(trace, {.id = "hold.gust_force",
               .label = "Force of that gust, to compare with the margin",
               .symbol = "k_G",
               .formula = "G^2",
               .terms = {{"G", gust, "", "gust over mean wind"}},
               .value = gust * gust,
               .unit = "",
               .source = kNpdWind});
  show(trace, {.id = "hold.required",
               .label = "Thrust needed, with margin",
               .symbol = "T_req",
               .formula = "F * k",
               .terms = {{"F", r.thrust_mean_N, "N", "mean load"},
                         {"k", r.margin_factor, "", "margin for gusts"}},
               .value = r.thrust_required_N,
               .unit = "N",
               .source = kProjectDecision});
}

void show_drift(const HoldInput& in, const Site& site, Trace& trace) {
  const double drag_ratio =
      site.hull.air_density_kg_per_m3 * kWindSway_factor * site.hull.wind.lateral_area_m2 /
      (site.hull.water_density_kg_per_m3 * site.hull.current.sway_factor * in.underwater_area_m2);
  show(trace,
       {.id = "hold.drift",
        .label = "Free drift beam-on, as a share of the wind",
        .symbol = "k",
        .formula = "1 / (1 + 1 / sqrt(rho_a * c_a * A_a * k_w / (rho_w * c_w * A_w * k_d)))",
        .terms = {{"rho_a", site.hull.air_density_kg_per_m3, "kg/m3", "density of the air"},
                  {"c_a", kWindSway_factor, "", "drag of the side in the wind"},
                  {"A_a", lateral_area_m2(in), "m2", "windage from the side"},
                  {"rho_w", site.hull.water_density_kg_per_m3, "kg/m3", "density of the water"},
                  {"c_w", cross_flow_of(in), "", "drag of the side under water"},
                  {"A_w", in.underwater_area_m2, "m2", "side area under water"},
                  windage_term(in),
                  drag_term(in)},
        .value = drift_frac(drag_ratio),
        .unit = "",
        .source = kLeewayDrift,
        .assumptions = {
            "For the sea trial: let the boat drift for five minutes, motor up, and "
            "compare; a faster drift means more windage than was put in.",
            "Measured at sea by the US Coast Guard: sport boat 6.5 %, sport fisher 5.6 %, "
            "skiffs about 3 %; sizing areas and drag drift faster than most."}});
}

void show_thrust(const HoldInput& in, const HoldResult& r, Trace& trace) {
  const MotorClass& motor = r.motor;
  double in_current_N = motor.thrust_N;
  if (motor.propeller_diameter_m > 0.0) {
    const Disc disc = disc_of(in, motor);
    in_current_N = show(
        trace,
        {.id = "hold.thrust_in_current",
         .label = "Static thrust, less what the current takes",
         .symbol = "T_V",
         .formula = "2 * rho_w * 3.141592653589793 / 4 * D^2 * w * (V + w)",
         .terms = {{"rho_w", disc.density_kg_per_m3, "kg/m3", "density of the water"},
                   {"D", disc.diameter_m, "m", "propeller diameter"},
                   {"w", induced_speed_mps(disc, motor.thrust_N, in.current_mps), "m/s",
                    "speed that the propeller adds to the water"},
                   {"V", in.current_mps, "m/s", "current"}},
         .value = thrust_in_current_of(in, motor),
         .unit = "N",
         .source = kMomentumTheory,
         .assumptions = {"The added speed is the one at which the power equals that of the claimed "
                         "static thrust in still water."}});
  }
  show(trace,
       {.id = "hold.effective",
        .label = "Thrust that reaches the boat",
        .symbol = "T_eff",
        .formula = "T_V * b_misc * b_race * b_depth * b_sag",
        .terms = {{"T_V", in_current_N, "N", "static thrust less what the current takes"},
                  {"b_misc", kMisc_factor, "", "general losses"},
                  {"b_race", kRace_factor, "", "race along the hull"},
                  {"b_depth", in.immersion_factor, "", "allowance: propeller near the surface"},
                  {"b_sag", in.sag_factor, "", "allowance: sagging voltage"}},
        .value = r.thrust_effective_N,
        .unit = "N",
        .source = kDnvThrustLoss,
        .assumptions = {"The race takes 0.05 and the two allowances are our own judgement; the "
                        "shaft and the feeder are held to them."}});
  show(trace, {.id = "hold.margin_actual",
               .label = "Thrust over mean load",
               .symbol = "k",
               .formula = "T_eff / max(1, F)",
               .terms = {{"T_eff", r.thrust_effective_N, "N", "thrust that reaches the boat"},
                         {"F", r.thrust_mean_N, "N", "mean load"}},
               .value = r.margin_actual_factor,
               .unit = "",
               .source = kDefinition});
}

void show_limit(const HoldResult& r, double load_there_N, Trace& trace) {
  const double allowed_N =
      show(trace, {.id = "hold.load_allowed",
                   .label = "Mean load that leaves the margin",
                   .symbol = "F_max",
                   .formula = "T_eff / k",
                   .terms = {{"T_eff", r.thrust_effective_N, "N", "thrust that reaches the boat"},
                             {"k", r.margin_factor, "", "margin for gusts"}},
                   .value = r.thrust_effective_N / r.margin_factor,
                   .unit = "N",
                   .source = kProjectDecision});
  show(trace, {.id = "hold.limiting_wind",
               .label = "Strongest wind it holds with margin",
               .symbol = "U_max",
               .formula = "min(U, U * sqrt(F_max / max(0.000001, F_U)))",
               .terms = {{"U", r.limiting_wind_mps, "m/s", "wind found by narrowing in"},
                         {"F_max", allowed_N, "N", "mean load that leaves the margin"},
                         {"F_U", std::min(load_there_N, allowed_N), "N", "mean load in that wind"}},
               .value = r.limiting_wind_mps,
               .unit = "m/s",
               .source = kDefinition,
               .assumptions = {
                   "With the sea that this wind raises over the same fetch; the current stays.",
                   "0 means that the current alone takes more; 40 m/s is as far as it looks."}});
}

void show_energy(const HoldInput& in, const HoldResult& r, Trace& trace) {
  const MotorClass& motor = r.motor;
  const Term full{"P_full", motor.power_full_W, "W", "electrical, at full thrust"};
  const Term idle{"P_idle", motor.power_idle_W, "W", "electrical, at rest"};
  show(trace, {.id = "hold.power_mean",
               .label = "Mean power while holding",
               .symbol = "P_hold",
               .formula = "P_idle + (P_full - P_idle) * min(1, k * (F / T_eff)^1.5)",
               .terms = {idle,
                         full,
                         {"k", kGustPower_factor, "", "for gusts and yawing"},
                         {"F", std::min(r.thrust_mean_N, r.thrust_effective_N), "N",
                          "mean load, no more than the thrust"},
                         {"T_eff", std::max(kLeast_N, r.thrust_effective_N), "N",
                          "thrust that reaches the boat"}},
               .value = r.power_mean_W,
               .unit = "W",
               .source = kMomentumTheory,
               .assumptions = {"The factor for gusts is from simulated hours of holding."}});
  const double transit_W =
      show(trace, {.id = "hold.power_transit",
                   .label = "Power while creeping between spots",
                   .symbol = "P_creep",
                   .formula = "P_idle + (P_full - P_idle) * s^1.5",
                   .terms = {idle, full, {"s", in.transit_thrust_frac, "", "share of full thrust"}},
                   .value = power_at_W(motor, power_share_frac(in.transit_thrust_frac)),
                   .unit = "W",
                   .source = kMomentumTheory});
  show(trace, {.id = "hold.energy",
               .label = "Energy for the day",
               .symbol = "E",
               .formula = "P_hold * t_hold + P_creep * t_creep",
               .terms = {{"P_hold", r.power_mean_W, "W", "mean power while holding"},
                         {"t_hold", in.holding_h, "h", "hours holding"},
                         {"P_creep", transit_W, "W", "power while creeping"},
                         {"t_creep", in.transit_h, "h", "hours creeping"}},
               .value = r.energy_Wh,
               .unit = "Wh",
               .source = kDefinition});
}

}  // namespace thole
