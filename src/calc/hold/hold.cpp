#include "calc/hold/hold.h"

#include <algorithm>
#include <cmath>

#include "base/units.h"
#include "calc/hold/equilibrium.h"
#include "calc/hold/hold_steps.h"
#include "calc/hold/loads.h"
#include "calc/hold/root.h"
#include "calc/hold/site.h"
#include "calc/hold/thruster.h"

namespace thole {
namespace {

// Margins: simulated hours of holding, docs/decisions.md.
constexpr double kMarginFirm_factor = 1.6;
constexpr double kMarginGusty_factor = 2.0;
constexpr double kRoseStep_deg = 15.0;

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

  assume_weather(in, r.trace);
  tell([&] {
    show_wind(in, site, r.wind_N, r.trace);
    show_current(in, site, r.current_N, r.trace);
    show_waves(in, site, r.wave_N, r.trace);
    show_head_on(r, r.trace);
    show_equilibrium(r, settled, heading_rad, r.trace);
    show_required(in, r, r.trace);
    show_drift(in, site, r.trace);
  });

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
    tell([&] {
      show_thrust(in, r, r.trace);
      show_limit(r, load_at_limit_N, r.trace);
      show_energy(in, r, r.trace);
    });
  }
  check_margin(in, r, r.trace);
  if (r.motor_found) check_plausible(in, r, r.trace);
  add_cautions(in, r, r.trace);
  add_range_notes(in, r, r.trace);
  return r;
}

}  // namespace thole
