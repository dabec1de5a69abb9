#include "calc/hold/equilibrium.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numbers>
#include <utility>

#include "base/order.h"
#include "calc/hold/root.h"

namespace thole {
namespace {

using std::numbers::pi;

constexpr double kStep_rad = 2.0 * pi / kHeadingCount;
constexpr double kTolerance_rad = 1e-4;  // before a last straight line between the ends

// The strength of the weather, apart from its directions.
struct Pressures {
  double wind_Pa = 0.0;
  double current_Pa = 0.0;
  double wave_surge_Pa = 0.0;
  double wave_sway_Pa = 0.0;
};

Pressures pressures(const HeldHull& hull, const Weather& weather) {
  const double wave_Pa = wave_pressure_Pa(hull.water_density_kg_per_m3, weather.sea.height_m);
  return {.wind_Pa = dynamic_pressure_Pa(hull.air_density_kg_per_m3, weather.wind_mps),
          .current_Pa = dynamic_pressure_Pa(hull.water_density_kg_per_m3, weather.current_mps),
          .wave_surge_Pa = wave_Pa * wave_period_factor(surge_period_ratio(
                                         weather.sea.period_s, hull.wave.waterline_length_m)),
          .wave_sway_Pa = wave_Pa * wave_period_factor(sway_period_ratio(
                                        weather.sea.period_s, hull.wave.waterline_beam_m))};
}

double about_thruster_m3(const SideAreas& areas, double thruster_forward_m) {
  return areas.yaw_m3 - thruster_forward_m * areas.sway_m2;
}

// Moment about the thruster.
double moment_Nm(const HeldHull& hull, const Pressures& p, double current_from_rad,
                 double heading_rad) {
  const double x_m = hull.thruster_forward_m;
  return p.wind_Pa * about_thruster_m3(wind_side(hull.wind, -heading_rad), x_m) +
         p.wave_sway_Pa * about_thruster_m3(wave_side(hull.wave, -heading_rad), x_m) +
         p.current_Pa *
             about_thruster_m3(current_side(hull.current, current_from_rad - heading_rad), x_m);
}

double heading_at(int index) { return -pi + (index + 0.5) * kStep_rad; }

template <class Side>
Moments_m3 moments_around(const HeldHull& hull, Side side_at_heading) {
  Moments_m3 moments{};
  for (int i = 0; i < kHeadingCount; ++i) {
    moments[static_cast<std::size_t>(i)] =
        about_thruster_m3(side_at_heading(heading_at(i)), hull.thruster_forward_m);
  }
  return moments;
}

Load times(const DragAreas& areas, double surge_Pa, double sway_Pa) {
  return {.surge_N = surge_Pa * areas.surge_m2,
          .sway_N = sway_Pa * areas.side.sway_m2,
          .yaw_Nm = sway_Pa * areas.side.yaw_m3};
}

LoadParts loads_under(const HeldHull& hull, const Pressures& p, double current_from_rad,
                      double heading_rad) {
  LoadParts parts{
      .wind = times(wind_areas(hull.wind, -heading_rad), p.wind_Pa, p.wind_Pa),
      .current = times(current_areas(hull.current, current_from_rad - heading_rad), p.current_Pa,
                       p.current_Pa),
      .wave = times(wave_areas(hull.wave, -heading_rad), p.wave_surge_Pa, p.wave_sway_Pa)};
  parts.total = {.surge_N = parts.wind.surge_N + parts.wave.surge_N + parts.current.surge_N,
                 .sway_N = parts.wind.sway_N + parts.wave.sway_N + parts.current.sway_N,
                 .yaw_Nm = parts.wind.yaw_Nm + parts.wave.yaw_Nm + parts.current.yaw_Nm};
  return parts;
}

// Calls `found` with the heading and the load there for each stable balance, and for the others too
// where `kAll`.
template <bool kAll, class Found>
void for_each_balance(const HeldHull& hull, const VaneTable& table, const Weather& weather,
                      Found found) {
  const Pressures p = pressures(hull, weather);
  std::array<double, kHeadingCount> around_Nm{};
  for (std::size_t i = 0; i < around_Nm.size(); ++i) {
    around_Nm[i] = p.wind_Pa * table.wind[i] + p.wave_sway_Pa * table.wave[i] +
                   p.current_Pa * table.current[i];
  }
  double here = around_Nm.back();
  for (int i = 0; i < kHeadingCount; ++i) {
    const double before = std::exchange(here, around_Nm[static_cast<std::size_t>(i)]);
    const bool rises = before <= 0.0 && here > 0.0;
    const bool falls = kAll && before > 0.0 && here <= 0.0;
    if (!rises && !falls) continue;
    const double sign = rises ? 1.0 : -1.0;  // a falling moment rises when seen from the other side
    const auto moment = [&](double psi) {
      return sign * moment_Nm(hull, p, weather.current_from_rad, psi);
    };
    const Bracket b = narrow(
        moment, Bracket<double>{heading_at(i - 1), sign * before, heading_at(i), sign * here},
        kTolerance_rad);
    const double drop_Nm = b.f_low - b.f_high;
    double psi = drop_Nm < 0.0 ? b.low + (b.high - b.low) * b.f_low / drop_Nm : b.low;
    const Load load = loads_under(hull, p, weather.current_from_rad, psi).total;
    if (psi < -pi) psi += 2.0 * pi;
    found(psi, load, rises);
  }
}

}  // namespace

LoadParts loads_at(const HeldHull& hull, const Weather& weather, double heading_rad) {
  return loads_under(hull, pressures(hull, weather), weather.current_from_rad, heading_rad);
}

VaneTable vane_table(const HeldHull& hull, double current_from_rad) {
  VaneTable table{
      .wind = moments_around(hull, [&](double psi) { return wind_side(hull.wind, -psi); }),
      .wave = moments_around(hull, [&](double psi) { return wave_side(hull.wave, -psi); })};
  turn_current(table, hull, current_from_rad);
  return table;
}

void turn_current(VaneTable& table, const HeldHull& hull, double current_from_rad) {
  table.current = moments_around(
      hull, [&](double psi) { return current_side(hull.current, current_from_rad - psi); });
}

std::vector<Equilibrium> stable_headings(const HeldHull& hull, const VaneTable& table,
                                         const Weather& weather) {
  std::vector<Equilibrium> found;
  for_each_balance<false>(hull, table, weather, [&](double psi, const Load& load, bool) {
    found.push_back({.heading_rad = psi, .thrust_N = std::hypot(load.surge_N, load.sway_N)});
  });
  return found;
}

std::vector<Balance> balances(const HeldHull& hull, const VaneTable& table,
                              const Weather& weather) {
  std::vector<Balance> found;
  for_each_balance<true>(hull, table, weather, [&](double psi, const Load& load, bool stable) {
    found.push_back({.heading_rad = psi,
                     .thrust_N = std::hypot(load.surge_N, load.sway_N),
                     .azimuth_rad = std::atan2(load.sway_N, -load.surge_N),
                     .stable = stable});
  });
  return sorted(std::move(found), [](const Balance& a, const Balance& b) { return a.heading_rad < b.heading_rad; });
}

Equilibrium worst_heading(const HeldHull& hull, const VaneTable& table, const Weather& weather) {
  constexpr double kAlike_ratio = 1.0 + 1e-6;
  Equilibrium worst{};
  for (const Equilibrium& one : stable_headings(hull, table, weather)) {
    const bool more = one.thrust_N > worst.thrust_N * kAlike_ratio;
    const bool alike = one.thrust_N * kAlike_ratio >= worst.thrust_N;
    if (more || (alike && one.heading_rad > worst.heading_rad)) worst = one;
  }
  return worst;
}

}  // namespace thole
