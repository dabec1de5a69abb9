#include "calc/hold/hold.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>
#include <utility>

#include "base/number.h"
#include "base/units.h"
#include "calc/hold/equilibrium.h"
#include "calc/hold/loads.h"
#include "calc/hold/root.h"
#include "calc/hold/site.h"
#include "calc/hold/thruster.h"
#include "data/sea.h"
#include "data/sources.h"
#include "data/sources_hold.h"
#include "data/windage.h"

namespace thole {
namespace {

// Margins and the surcharge for gusts: simulated hours of holding, docs/decisions.md.
constexpr double kMarginLoose_factor = 1.4;
constexpr double kMarginFirm_factor = 1.6;
constexpr double kMarginGusty_factor = 2.0;
constexpr double kChain_factor = 0.8;      // common practice: battery to propeller shaft
constexpr double kMeritLimit_frac = 0.55;  // project decision: electrical power to thrust
constexpr double kLeast_N = 1.0;           // loads below this count as this when divided by
constexpr double kRoseStep_deg = 15.0;
constexpr double kOffWaves_deg = 60.0;     // project decision: from here the sea comes abeam
constexpr double kCutOffThrust_N = 512.0;  // 46 U.S.C. 4312: 115 lbf
constexpr double kCutOffLength_m = 7.92;   // 46 U.S.C. 4312: 26 ft

double show(Trace& trace, Step step) {
  trace.steps.push_back(std::move(step));
  return trace.steps.back().value;
}

// Strongest wind at 10 m in which `load_N` of the wind does not exceed `allowed_N`; never more than
// kHighestWind_mps. Sought over the square of the wind, in which loads are nearly straight lines.
template <class Function>
double strongest_wind_mps(Function load_N, double allowed_N) {
  constexpr double kTolerance_m2_per_s2 = 0.05;  // 0.005 m/s at 5 m/s
  const auto excess_N = [&](double square_m2_per_s2) {
    return load_N(std::sqrt(square_m2_per_s2)) - allowed_N;
  };
  const double top_m2_per_s2 = kHighestWind_mps * kHighestWind_mps;
  const double at_none_N = excess_N(0.0);
  if (at_none_N > 0.0) return 0.0;
  const double at_top_N = excess_N(top_m2_per_s2);
  if (at_top_N <= 0.0) return kHighestWind_mps;
  const Bracket<double> found = narrow(
      excess_N, Bracket<double>{0.0, at_none_N, top_m2_per_s2, at_top_N}, kTolerance_m2_per_s2);
  return std::sqrt(found.low);
}

// --- the motor
// ------------------------------------------------------------------------------------

// The lightest that suffices, else the strongest; null when there is none.
const MotorClass* choose_motor(const HoldInput& in, double required_N) {
  const MotorClass* chosen = nullptr;
  bool suffices = false;
  for (const MotorClass& motor : in.motors) {
    const double thrust_N = effective_thrust_N(in, motor);
    const bool enough = thrust_N >= required_N;
    const bool better = chosen == nullptr || (enough && !suffices) ||
                        (enough && suffices && motor.mass_kg < chosen->mass_kg) ||
                        (!enough && !suffices && thrust_N > effective_thrust_N(in, *chosen));
    if (!better) continue;
    chosen = &motor;
    suffices = enough;
  }
  return chosen;
}

double power_at_W(const MotorClass& motor, double share_frac) {
  return motor.power_idle_W + (motor.power_full_W - motor.power_idle_W) * share_frac;
}

// --- the trace
// ------------------------------------------------------------------------------------

Term windage_term(const HoldInput& in) {
  return {"k_w", in.windage_factor, "", "wind load after a trial at sea; 1 without one"};
}
Term drag_term(const HoldInput& in) {
  return {"k_d", in.drag_factor, "", "current load after a trial at sea; 1 without one"};
}

// Windage from ahead; the people at the bow, when there are any, in sight.
double show_windage(const HoldInput& in, Trace& trace) {
  if (in.standing_forward_count <= 0) return in.frontal_area_m2;
  const Term people{"n", static_cast<double>(in.standing_forward_count), "", "people at the bow"};
  show(trace, {.id = "hold.lateral_area",
               .label = "Windage from the side, with those at the bow",
               .symbol = "A_L",
               .formula = "A + n * a",
               .terms = {{"A", in.lateral_area_m2, "m2", "of the boat"},
                         people,
                         {"a", kPersonSide_m2, "m2", "one person from the side"}},
               .value = lateral_area_m2(in),
               .unit = "m2",
               .source = kProjectDecision});
  show(trace, {.id = "hold.lateral_centroid",
               .label = "Its centre, with those at the bow",
               .symbol = "x_a",
               .formula = "(A * x + n * a * r * L) / (A + n * a)",
               .terms = {{"A", in.lateral_area_m2, "m2", "side of the boat"},
                         {"x", in.lateral_centroid_m, "m", "its centre, forward of midships"},
                         people,
                         {"a", kPersonSide_m2, "m2", "one person from the side"},
                         {"r", kForwardPlace_ratio, "", "where they stand, over L"},
                         {"L", in.waterline_length_m, "m", "waterline length"}},
               .value = lateral_centroid_m(in),
               .unit = "m",
               .source = kProjectDecision});
  return show(trace, {.id = "hold.frontal_area",
                      .label = "Windage from ahead, with those at the bow",
                      .symbol = "A_F",
                      .formula = "A + n * a",
                      .terms = {{"A", in.frontal_area_m2, "m2", "of the boat"},
                                people,
                                {"a", kPersonFront_m2, "m2", "one person from ahead"}},
                      .value = frontal_area_m2(in),
                      .unit = "m2",
                      .source = kProjectDecision});
}

void show_wind(const HoldInput& in, const Site& site, double wind_N, Trace& trace) {
  const double frontal_m2 = show_windage(in, trace);
  const double density = site.hull.air_density_kg_per_m3;
  show(trace, {.id = "hold.air_density",
               .label = "Density of the air",
               .symbol = "rho_a",
               .formula = "101325 / (287.05 * (t + 273.15))",
               .terms = {{"t", in.air_C, "C", "air temperature"}},
               .value = density,
               .unit = "kg/m3",
               .source = kIdealGas});
  if (in.wind_at_boat_height) {
    const double height_m = profile_height_m(in);
    const double ratio = show(
        trace, {.id = "hold.wind_profile",
                .label = "Wind at the boat's height over wind at 10 m",
                .symbol = "k_z",
                .formula = "1 + 0.0573 * sqrt(1 + 0.15 * U) * ln(z / 10)",
                .terms = {{"U", in.wind_mps, "m/s", "wind at 10 m"},
                          {"z", height_m, "m", "mean height of the boat's side, at least 1 m"}},
                .value = wind_profile_ratio(in.wind_mps, height_m),
                .unit = "",
                .source = kNpdWind});
    show(trace, {.id = "hold.wind_on_boat",
                 .label = "Wind that acts on the boat",
                 .symbol = "V",
                 .formula = "U * k_z",
                 .terms = {{"U", in.wind_mps, "m/s", "wind at 10 m"},
                           {"k_z", ratio, "", "share at the boat's height"}},
                 .value = wind_on_boat_mps(in, in.wind_mps),
                 .unit = "m/s",
                 .source = kNpdWind});
  } else {
    trace.assumptions.push_back(
        {"water.wind_height",
         "The wind at 10 m acts on the boat unreduced, which is on the safe "
         "side: at the boat's height its force is about two thirds.",
         kDnvWind});
  }
  show(trace,
       {.id = "hold.wind",
        .label = "Wind from ahead",
        .symbol = "F_wind",
        .formula = "0.5 * rho_a * V^2 * A_F * c * k_w",
        .terms = {{"rho_a", density, "kg/m3", "density of the air"},
                  {"V", wind_on_boat_mps(in, in.wind_mps), "m/s", "wind that acts on the boat"},
                  {"A_F", frontal_m2, "m2", "windage from ahead"},
                  {"c", kWindSurge_factor, "", "drag of a hull from ahead"},
                  windage_term(in)},
        .value = wind_N,
        .unit = "N",
        .source = kDnvWind});
}

double show_wetted_area(const HoldInput& in, Trace& trace) {
  const double density = water_density_kg_per_m3(in.salt);
  const Prism prism = prism_of(in);
  show(trace, {.id = "hold.hull_volume",
               .label = "Water that the hull displaces",
               .symbol = "vol",
               .formula = "m / rho_w",
               .terms = {{"m", in.displacement_kg, "kg", "loaded weight"},
                         {"rho_w", density, "kg/m3", "density of the water"}},
               .value = hull_volume_m3(in),
               .unit = "m3",
               .source = kDefinition});
  const std::vector<Term> terms{{"vol", hull_volume_m3(in), "m3", "displaced water"},
                                {"b", in.waterline_beam_m, "m", "waterline beam"},
                                {"L", in.waterline_length_m, "m", "waterline length"},
                                {"beta", rad_from_deg(in.deadrise_deg), "rad", "deadrise"}};
  show(trace,
       {.id = "hold.wetted_prism",
        .label = prism.chine_wet ? "Wetted skin of a V-hull, chines wet"
                                 : "Wetted skin of a V-hull, chines dry",
        .symbol = "S_V",
        .formula = prism.chine_wet ? "L * (b / cos(beta) + 2 * (vol / L - b^2 / 4 * tan(beta)) / b)"
                                   : "2 * L * sqrt(vol / L * tan(beta)) / sin(beta)",
        .terms = terms,
        .value = prism.wetted_area_m2,
        .unit = "m2",
        .source = kDefinition,
        .assumptions = {"The hull counts as a straight prism of its deadrise, as long and as "
                        "wide as its waterline."}});
  return show(trace, {.id = "hold.wetted_area",
                      .label = "Wetted skin",
                      .symbol = "S",
                      .formula = "max(S_V, 1.7 * L * T + vol / T)",
                      .terms = {{"S_V", prism.wetted_area_m2, "m2", "of a V-hull"},
                                {"L", in.waterline_length_m, "m", "waterline length"},
                                {"T", in.draft_m, "m", "hull draft"},
                                {"vol", hull_volume_m3(in), "m3", "displaced water"}},
                      .value = wetted_area_m2(in),
                      .unit = "m2",
                      .source = kUfcCurrent});
}

void show_current(const HoldInput& in, const Site& site, double current_N, Trace& trace) {
  const double wetted_m2 = show_wetted_area(in, trace);
  const CurrentParts parts = current_parts_of(in);
  const double density = site.hull.water_density_kg_per_m3;
  const Term rho{"rho_w", density, "kg/m3", "density of the water"};
  const Term speed{"V", in.current_mps, "m/s", "current"};
  const Term beam{"B", in.waterline_beam_m, "m", "waterline beam"};
  const Term draft{"T", in.draft_m, "m", "hull draft"};
  show(trace,
       {.id = "hold.reynolds",
        .label = "Reynolds number of the hull",
        .symbol = "Re",
        .formula = "V * L / nu",
        .terms = {speed,
                  {"L", in.waterline_length_m, "m", "waterline length"},
                  {"nu", water_viscosity_m2_per_s(in.salt), "m2/s", "viscosity of the water"}},
        .value = parts.reynolds_count,
        .unit = "",
        .source = kIttcWater});
  const double friction =
      show(trace, {.id = "hold.friction",
                   .label = "Friction of the skin",
                   .symbol = "C_F",
                   .formula = "0.075 / (log10(max(10000, Re)) - 2)^2",
                   .terms = {{"Re", parts.reynolds_count, "", "Reynolds number"}},
                   .value = friction_factor(parts.reynolds_count),
                   .unit = "",
                   .source = kIttc57});
  show(trace,
       {.id = "hold.current_form",
        .label = "Current from ahead on the blunt hull",
        .symbol = "F_form",
        .formula = "0.5 * rho_w * V^2 * B * T * c",
        .terms = {rho, speed, beam, draft, {"c", kForm_factor, "", "drag of the hull's form"}},
        .value = parts.form_N,
        .unit = "N",
        .source = kUfcCurrent});
  show(trace, {.id = "hold.current_friction",
               .label = "Current along the hull's skin",
               .symbol = "F_skin",
               .formula = "0.5 * rho_w * V^2 * S * (C_F + r)",
               .terms = {rho,
                         speed,
                         {"S", wetted_m2, "m2", "wetted skin"},
                         {"C_F", friction, "", "friction of a smooth skin"},
                         {"r", kRoughness_factor, "", "allowance for roughness"}},
               .value = parts.friction_N,
               .unit = "N",
               .source = kUfcCurrent,
               .assumptions = {"A clean bottom; growth can double the friction or more."}});
  if (in.legs_down && in.leg_count > 0) {
    const Term legs{"n", static_cast<double>(in.leg_count), "", "legs in the water"};
    show(trace,
         {.id = "hold.current_legs",
          .label = "Current on the legs",
          .symbol = "F_leg",
          .formula = "n * 0.5 * rho_w * V^2 * t * h * c",
          .terms = {legs,
                    rho,
                    speed,
                    {"t", kLegThickness_m, "m", "thickness of a leg"},
                    {"h", kLegDepth_m, "m", "depth of a leg below the hull"},
                    {"c", kLegDrag_factor, "", "drag of a streamlined strut at the surface"}},
          .value = parts.leg_N,
          .unit = "N",
          .source = kHoernerDrag});
    show(
        trace,
        {.id = "hold.current_propellers",
         .label = "Current on the main propellers",
         .symbol = "F_prop",
         .formula = "n * 0.5 * rho_w * V^2 * e * 3.141592653589793 / 4 * D^2 * k",
         .terms = {legs,
                   rho,
                   speed,
                   {"e", kBladeArea_ratio, "", "blade area over disc area"},
                   {"D", in.leg_propeller_m, "m", "main propeller diameter"},
                   {"k", in.propellers_free ? kFreePropeller_factor : 1.0, "",
                    "1 in gear, about half when they turn freely"}},
         .value = parts.propeller_N,
         .unit = "N",
         .source = in.propellers_free ? kFreePropeller : kUfcCurrent,
         .assumptions = {in.propellers_free
                             ? "Out of gear, so that the propellers turn with the current."
                             : "In gear, so that the propellers do not turn; free, they drag about "
                               "half as much."}});
  }
  const double parts_N =
      show(trace, {.id = "hold.current_parts",
                   .label = "Current from ahead, part by part",
                   .symbol = "F_parts",
                   .formula = "F_form + F_skin + F_leg + F_prop",
                   .terms = {{"F_form", parts.form_N, "N", "blunt hull"},
                             {"F_skin", parts.friction_N, "N", "skin"},
                             {"F_leg", parts.leg_N, "N", "legs in the water"},
                             {"F_prop", parts.propeller_N, "N", "their propellers"}},
                   .value = parts.total_N,
                   .unit = "N",
                   .source = kUfcCurrent});
  const double ship_N =
      show(trace, {.id = "hold.current_ship",
                   .label = "Current from ahead, ship formula",
                   .symbol = "F_ship",
                   .formula = "0.5 * rho_w * V^2 * B * T * c",
                   .terms = {rho,
                             speed,
                             beam,
                             draft,
                             {"c", kCurrentSurge_factor, "", "drag of a long hull without legs"}},
                   .value = dynamic_pressure_Pa(density, in.current_mps) * kCurrentSurge_factor *
                            in.waterline_beam_m * in.draft_m,
                   .unit = "N",
                   .source = kDnvCurrent});
  show(trace, {.id = "hold.current",
               .label = "Current from ahead",
               .symbol = "F_current",
               .formula = "k_d * max(F_parts, F_ship)",
               .terms = {drag_term(in),
                         {"F_parts", parts_N, "N", "part by part"},
                         {"F_ship", ship_N, "N", "ship formula"}},
               .value = current_N,
               .unit = "N",
               .source = kDefinition});
  show(trace, {.id = "hold.cross_flow",
               .label = "Drag of the side area in a cross current",
               .symbol = "C_Y",
               .formula = "max(c, C_0 + (3.2 - C_0) * min(1, T / d)^2)",
               .terms = {{"c", kCurrentSway_factor, "", "in deep water, by the ship standard"},
                         {"C_0", deep_cross_flow_of(in), "", "in deep water, for this hull"},
                         draft,
                         {"d", in.depth_m, "m", "depth of the water"}},
               .value = cross_flow_of(in),
               .unit = "",
               .source = kUfcCrossFlow,
               .assumptions = {"The midship section is 0.7 of beam times draft."}});
}

void show_waves(const HoldInput& in, const Site& site, double wave_N, Trace& trace) {
  const Sea sea = site.sea.given();
  const double period_ratio = surge_period_ratio(sea.period_s, in.waterline_length_m);
  const double bow =
      show(trace,
           {.id = "hold.wave_bow",
            .label = "How much sea the bow turns back",
            .symbol = "h_1",
            .formula = "0.8 * alpha^0.45",
            .terms = {{"alpha", in.bow_angle_rad, "rad", "half angle of the waterline at the bow"}},
            .value = wave_bow_factor(in.bow_angle_rad),
            .unit = "",
            .source = kDnvWaves});
  const double ratio =
      show(trace, {.id = "hold.wave_period_ratio",
                   .label = "Wave period over the boat's own",
                   .symbol = "T_r",
                   .formula = "T_p / 1.4049 / (0.9 * L^0.33)",
                   .terms = {{"T_p", sea.period_s, "s", "peak period"},
                             {"L", in.waterline_length_m, "m", "waterline length"}},
                   .value = period_ratio,
                   .unit = "",
                   .source = kDnvWaves});
  const double period =
      show(trace, {.id = "hold.wave_period_factor",
                   .label = "Share left as the boat rides the sea",
                   .symbol = "f",
                   .formula = "max(1, T_r)^-3 * exp(1 - max(1, T_r)^-3)",
                   .terms = {{"T_r", ratio, "", "wave period over the boat's own"}},
                   .value = wave_period_factor(period_ratio),
                   .unit = "",
                   .source = kDnvWaves});
  show(trace,
       {.id = "hold.wave",
        .label = "Waves from ahead",
        .symbol = "F_wave",
        .formula = "0.5 * rho_w * g * H^2 * B * c * h_1 * abs(0.05 + 0.95 * atan(1.45 * (0 - "
                   "1.75))) * f",
        .terms = {{"rho_w", site.hull.water_density_kg_per_m3, "kg/m3", "density of the water"},
                  {"g", kGravity_mps2, "m/s2", "gravity"},
                  {"H", sea.height_m, "m", "significant wave height"},
                  {"B", in.waterline_beam_m, "m", "waterline beam"},
                  {"c", kWaveDrift_factor, "", "wave drift, by the ship standard"},
                  {"h_1", bow, "", "how much the bow turns back"},
                  {"f", period, "", "share left as the boat rides the sea"}},
        .value = wave_N,
        .unit = "N",
        .source = kDnvWaves,
        .assumptions = {"Known within a factor of two either way for boats of this size."}});
  const double wind_mps = std::max(0.1, in.wind_mps);
  const std::vector<Term> fetch_terms{{"g", kGravity_mps2, "m/s2", "gravity"},
                                      {"U", wind_mps, "m/s", "wind at 10 m"},
                                      {"X", in.fetch_m, "m", "open water upwind"}};
  show(trace, {.id = "hold.wave_height_jonswap",
               .label = "Wave height by JONSWAP, for comparison",
               .symbol = "H_J",
               .formula = "4 * sqrt(0.00000016 * g * X / U^2 * U^4 / g^2)",
               .terms = fetch_terms,
               .value = jonswap_sea(in.wind_mps, in.fetch_m).height_m,
               .unit = "m",
               .source = kJonswapSea,
               .assumptions = {"Deep water."}});
  show(trace, {.id = "hold.wave_height_wilson",
               .label = "Wave height by Wilson, for comparison",
               .symbol = "H_W",
               .formula = "U^2 / g * 0.3 * (1 - (1 + 0.004 * sqrt(g * X / U^2))^-2)",
               .terms = fetch_terms,
               .value = wilson_sea(in.wind_mps, in.fetch_m).height_m,
               .unit = "m",
               .source = kWilsonSea,
               .assumptions = {"Deep water."}});
  trace.assumptions.push_back(
      {"water.wave_height_m", "The sea comes from where the wind does.", kProjectDecision});
}

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
        .assumptions = {"For the sea trial: let the boat drift for five minutes, motor up, and "
                        "compare; a faster drift means more windage than was put in."}});
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

// --- checks and cautions
// --------------------------------------------------------------------------

constexpr double kLegTilted_count = 0.0;  // positions among the options of the fields
constexpr double kLoosely_count = 1.0;

void check_margin(const HoldInput& in, const HoldResult& r, Trace& trace) {
  std::vector<Change> changes{
      {.field = "hold.motor", .clear = true, .label = "Let Thole choose the motor"},
      {.field = "hold.thrust_N", .clear = true, .label = "Forget the typed thrust"},
      {.field = "hold.nominal_V", .clear = true, .label = "Take any motor voltage"}};
  if (in.legs_down && in.leg_count > 0) {
    changes.push_back(
        {.field = "boat.leg", .value = kLegTilted_count, .label = "Tilt the legs clear"});
  }
  if (r.margin_factor > kMarginLoose_factor) {
    changes.push_back({.field = "hold.firmness",
                       .value = kLoosely_count,
                       .label = "Hold loosely, falling back in gusts"});
  }
  trace.checks.push_back(
      {.id = "hold.margin",
       .label = "Thrust holds with margin",
       .actual = r.thrust_effective_N,
       .limit = std::max(kLeast_N, r.thrust_required_N),
       .unit = "N",
       .comparison = Comparison::at_least,
       .source = kProjectDecision,
       .remedy = in.motors.empty() ? "Offer at least one motor in the catalogue."
                                   : "Take a stronger motor, tilt the legs clear, cut windage, "
                                     "or agree with the owner to hold loosely.",
       .changes = std::move(changes)});
}

void check_plausible(const HoldInput& in, const HoldResult& r, Trace& trace) {
  const MotorClass& motor = r.motor;
  const bool known = motor.propeller_diameter_m > 0.0 && motor.power_full_W > 0.0;
  double limit_N = std::numeric_limits<double>::quiet_NaN();
  if (known) {
    const Disc disc = disc_of(in, motor);
    const std::vector<Term> terms{
        {"rho_w", disc.density_kg_per_m3, "kg/m3", "density of the water"},
        {"D", motor.propeller_diameter_m, "m", "propeller diameter"},
        {"P", motor.power_full_W, "W", "electrical, at full thrust"}};
    limit_N = show(trace, {.id = "hold.thrust_ideal",
                           .label = "Most thrust that this power and propeller could make",
                           .symbol = "T_ideal",
                           .formula = "(2 * rho_w * 3.141592653589793 / 4 * D^2 * P^2)^(1 / 3)",
                           .terms = terms,
                           .value = ideal_thrust_N(disc, motor.power_full_W),
                           .unit = "N",
                           .source = kMomentumTheory,
                           .assumptions = {"Without any loss in motor, controller and blades."}});
    show(trace,
         {.id = "hold.thrust_ship",
          .label = "Thrust of a ship's open propeller of that size and power",
          .symbol = "T_ship",
          .formula = "800 * (D * 0.93 * e * P / 1000)^(2 / 3)",
          .terms = {{"D", motor.propeller_diameter_m, "m", "propeller diameter"},
                    {"e", kChain_factor, "", "share of the power that reaches the motor's shaft"},
                    {"P", motor.power_full_W, "W", "electrical, at full thrust"}},
          .value = nominal_thrust_N(
              {.propeller_factor = kOpenPropeller_factor,
               .diameter_m = motor.propeller_diameter_m,
               .power_W = kAzimuthMechanical_factor * kChain_factor * motor.power_full_W}),
          .unit = "N",
          .source = kDnvThrust,
          .assumptions = {"For comparison with the claim; 0.8 for motor and controller is common "
                          "practice."}});
    const double merit_limit_N = limit_N * std::pow(kMeritLimit_frac, 2.0 / 3.0);
    if (motor.thrust_N <= limit_N && motor.thrust_N > merit_limit_N) {
      trace.cautions.push_back(
          {"hold.claim",
           "Ask the maker for a measured pull: the claimed thrust takes " +
               fixed(100.0 * merit_frac(disc, motor.thrust_N, motor.power_full_W), 0) +
               " % of the electrical power as pure push, and good small drives reach about 55 %.",
           kProjectDecision});
    }
  }
  trace.checks.push_back(
      {.id = "hold.plausible",
       .label = "Claimed thrust is physically possible",
       .actual = known ? motor.thrust_N : std::numeric_limits<double>::quiet_NaN(),
       .limit = limit_N,
       .unit = "N",
       .comparison = Comparison::at_most,
       .source = kMomentumTheory,
       .remedy = "Check static thrust, full power and propeller diameter of the motor against its "
                 "papers.",
       .changes = {{.field = "hold.thrust_N", .clear = true, .label = "Forget the typed thrust"},
                   {.field = "hold.power_full_W", .clear = true, .label = "Forget the typed power"},
                   {.field = "hold.propeller_diameter_m",
                    .clear = true,
                    .label = "Forget the typed propeller"}}});
}

void add_cautions(const HoldInput& in, const HoldResult& r, Trace& trace) {
  trace.cautions.push_back(
      {"hold.propeller",
       "Stop the motor before anyone swims or works near the bow; hold well clear "
       "of structures, lines and divers. The propeller starts by itself.",
       kCommonPractice});
  trace.cautions.push_back(
      {"hold.not_an_anchor",
       "Carry an anchor ready to drop and keep a watch as local rules ask; do not "
       "rely on the motor in breaking water or close to a lee shore.",
       kCommonPractice});
  if (std::abs(r.heading_deg) > kOffWaves_deg && r.wave_height_m > 0.1) {
    trace.cautions.push_back(
        {"hold.lies_off_waves",
         "Expect the boat to lie " + fixed(std::abs(r.heading_deg), 0) +
             " degrees off the waves: it rolls, and water may come over the side "
             "or the transom.",
         kProjectDecision});
  }
  if (r.margin_factor <= kMarginLoose_factor) {
    trace.cautions.push_back(
        {"hold.loose",
         "Leave room downwind: with this margin the boat falls back a length or "
         "more in gusts before it returns.",
         kProjectDecision});
  }
  if (r.motor_found && r.motor.thrust_N >= kCutOffThrust_N && in.length_m < kCutOffLength_m) {
    trace.cautions.push_back(
        {"hold.cut_off_switch",
         "Record whether an engine cut-off switch is due: in the United States "
         "115 lbf of static thrust on a boat under 26 ft calls for one. Ask the "
         "authority in charge.",
         kUsc4312});
  }
}

void add_range_notes(const HoldInput& in, const HoldResult& r, Trace& trace) {
  const auto note = [&](bool applies, const char* field, const char* text) {
    if (applies) trace.assumptions.push_back({field, text, kProjectDecision});
  };
  note(in.length_m < 5.0 || in.length_m > 13.0, "boat.length_m",
       "The boat is outside 5 to 13 m, for which the estimates were made.");
  note(in.wind_mps > 17.1, "water.wind_mps",
       "Above a near gale gusts, spray and breaking seas outdo these mean loads.");
  note(r.wave_height_m > 0.15 * in.length_m, "water.wave_height_m",
       "Waves this high for the boat break the assumption of small motions.");
  note(in.current_mps > 2.0, "water.current_mps",
       "In currents this strong eddies turn the boat about; the heading is a mean.");
}

}  // namespace

double margin_factor(bool gusty, bool loose) {
  if (loose) return kMarginLoose_factor;
  return gusty ? kMarginGusty_factor : kMarginFirm_factor;
}

HoldResult hold(const HoldInput& in) {
  const Site site(in);
  HoldResult r{.wave_height_m = site.sea.given().height_m,
               .wave_period_s = site.sea.given().period_s,
               .margin_factor = in.margin_factor};

  const LoadParts ahead = loads_at(site.hull, site.given_weather(0.0), 0.0);
  r.wind_N = std::abs(ahead.wind.surge_N);
  r.current_N = std::abs(ahead.current.surge_N);
  r.wave_N = std::abs(ahead.wave.surge_N);
  r.thrust_head_on_N = r.wind_N + r.current_N + r.wave_N;

  const double current_from_rad = rad_from_deg(in.current_angle_deg);
  VaneTable table = vane_table(site.hull, current_from_rad);
  const Weather weather = site.given_weather(current_from_rad);
  double heading_rad = worst_heading(site.hull, table, weather).heading_rad;
  if (std::abs(heading_rad) < 1e-8) heading_rad = 0.0;
  const LoadParts settled = loads_at(site.hull, weather, heading_rad);
  r.heading_deg = deg_from_rad(heading_rad);
  r.thrust_equilibrium_N = std::hypot(settled.total.surge_N, settled.total.sway_N);
  r.thrust_mean_N = std::max(r.thrust_head_on_N, r.thrust_equilibrium_N);
  r.thrust_required_N = r.thrust_mean_N * r.margin_factor;

  show_wind(in, site, r.wind_N, r.trace);
  show_current(in, site, r.current_N, r.trace);
  show_waves(in, site, r.wave_N, r.trace);
  show_head_on(r, r.trace);
  show_equilibrium(r, settled, heading_rad, r.trace);
  show_required(in, r, r.trace);
  show_drift(in, site, r.trace);

  const MotorClass* motor = choose_motor(in, r.thrust_required_N);
  if (motor != nullptr) {
    r.motor_found = true;
    r.motor = *motor;
    r.thrust_effective_N = effective_thrust_N(in, r.motor);
    r.margin_actual_factor = r.thrust_effective_N / std::max(kLeast_N, r.thrust_mean_N);
  }
  const double allowed_N = r.thrust_effective_N / r.margin_factor;

  const auto turned_load_N = [&](double wind_mps, double from_rad) {
    return worst_heading(site.hull, table, site.weather_in(wind_mps, from_rad)).thrust_N;
  };
  const auto sizing_load_N = [&](double wind_mps) {
    return std::max(head_on_N(site, site.weather_in(wind_mps, 0.0)),
                    turned_load_N(wind_mps, current_from_rad));
  };
  r.limiting_wind_mps = strongest_wind_mps(sizing_load_N, allowed_N);
  const double load_at_limit_N = sizing_load_N(r.limiting_wind_mps);

  for (int i = 0; i * kRoseStep_deg <= 180.0; ++i) {
    const double angle_deg = i * kRoseStep_deg;
    const double from_rad = rad_from_deg(angle_deg);
    turn_current(table, site.hull, from_rad);
    const Equilibrium lies = worst_heading(site.hull, table, site.given_weather(from_rad));
    r.rose.push_back(
        {.angle_deg = angle_deg,
         .heading_deg = deg_from_rad(lies.heading_rad),
         .thrust_N = lies.thrust_N,
         .limiting_wind_mps = strongest_wind_mps(
             [&](double wind_mps) { return turned_load_N(wind_mps, from_rad); }, allowed_N)});
  }

  if (r.motor_found) {
    const double load_share_frac =
        std::min(r.thrust_mean_N, r.thrust_effective_N) / std::max(kLeast_N, r.thrust_effective_N);
    r.power_full_W = r.motor.power_full_W;
    r.power_mean_W =
        power_at_W(r.motor, std::min(1.0, kGustPower_factor * power_share_frac(load_share_frac)));
    r.energy_Wh = r.power_mean_W * in.holding_h +
                  power_at_W(r.motor, power_share_frac(in.transit_thrust_frac)) * in.transit_h;
    show_thrust(in, r, r.trace);
    show_limit(r, load_at_limit_N, r.trace);
    show_energy(in, r, r.trace);
  }
  check_margin(in, r, r.trace);
  if (r.motor_found) check_plausible(in, r, r.trace);
  add_cautions(in, r, r.trace);
  add_range_notes(in, r, r.trace);
  return r;
}

}  // namespace thole
