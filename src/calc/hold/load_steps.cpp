#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>
#include <vector>

#include "base/number.h"
#include "base/units.h"
#include "calc/hold/hold_steps.h"
#include "calc/hold/loads.h"
#include "calc/hold/thruster.h"
#include "data/sea.h"
#include "data/sources.h"
#include "data/sources_hold.h"
#include "data/windage.h"

namespace thole {
namespace {

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

}  // namespace

void assume_weather(const HoldInput& in, Trace& trace) {
  if (!in.wind_at_boat_height) {
    trace.assumptions.push_back(
        {"water.wind_height",
         "The wind at 10 m acts on the boat unreduced, which is on the safe "
         "side: at the boat's height its force is about two thirds.",
         kDnvWind});
  }
  trace.assumptions.push_back(
      {"water.wave_height_m", "The sea comes from where the wind does.", kProjectDecision});
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
}

}  // namespace thole
