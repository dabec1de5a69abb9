#include "calc/mount/slam.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "base/units.h"

namespace thole {
namespace {

// Half-sine base pulse on an oscillator with 5 % damping, peak absolute response over peak
// acceleration, by the number of its cycles in the pulse (computed by Runge-Kutta integration).
struct ShockRow {
  double cycles_count = 0.0;
  double factor = 0.0;
};
constexpr std::array kShockSpectrum{
    ShockRow{0.0, 0.0},   ShockRow{0.1, 0.369},  ShockRow{0.2, 0.718}, ShockRow{0.3, 1.026},
    ShockRow{0.4, 1.279}, ShockRow{0.5, 1.463},  ShockRow{0.6, 1.574}, ShockRow{0.8, 1.651},
    ShockRow{1.0, 1.624}, ShockRow{1.25, 1.532}, ShockRow{1.5, 1.421}, ShockRow{2.0, 1.212},
    ShockRow{2.5, 1.043}, ShockRow{3.0, 1.102},  ShockRow{4.0, 1.072}, ShockRow{5.0, 1.043},
};

// DNV HSLC 2011 B204; recalled, and within 0.1 % of Savitsky and Brown at 4 deg of trim times 1 +
// ln 100.
constexpr double kItem204_factor = 1650.0;

// (H/B + 0.084) (50 - beta) B^2 / Delta: what multiplies V^2 in item 204. Delta in tonnes.
double item_204_slope(const PlaningHull& hull, double wave_m) {
  const double beam_m = hull.chine_beam_m;
  return (wave_m / beam_m + 0.084) * (50.0 - effective_deadrise_deg(hull)) * beam_m * beam_m /
         (hull.displacement_kg / 1000.0);
}

double speed_length_ratio(double speed_kn, double length_m) {
  return speed_kn / std::sqrt(ft_from_m(length_m));
}

}  // namespace

double effective_deadrise_deg(const PlaningHull& hull) {
  return std::clamp(hull.deadrise_deg, 10.0, 30.0);
}

double design_speed_kn(const PlaningHull& hull) {
  const double least_kn = 2.36 * std::sqrt(hull.waterline_length_m);
  return std::min(std::max(kn_from_mps(hull.speed_mps), least_kn), 50.0);
}

CgAcceleration cg_acceleration(const PlaningHull& hull) {
  const double V = design_speed_kn(hull);
  const double B = hull.chine_beam_m;
  const double m = hull.displacement_kg;
  CgAcceleration n{};
  n.first_g = 0.32 * (hull.waterline_length_m / (10.0 * B) + 0.084) *
              (50.0 - effective_deadrise_deg(hull)) * V * V * B * B / m;
  n.second_g = 0.5 * V / std::pow(m, 0.17);
  n.used_g = n.first_g <= 3.0 ? n.first_g : std::min({n.first_g, n.second_g, 7.0});
  return n;
}

double bow_ratio(double length_m, double beam_m, double speed_kn) {
  return 1.0 + 3.8 * (length_m / beam_m - 2.25) / speed_length_ratio(speed_kn, length_m);
}

Impact average_impact(const ImpactInput& in) {
  const double b = in.beam_m;
  const double load_factor =
      in.weight_N / (in.water_density_kg_per_m3 * in.gravity_mps2 * b * b * b);
  const double speed = speed_length_ratio(in.speed_kn, in.length_m);
  const double cg_g = 0.0104 * (in.wave_m / b + 0.084) * (in.trim_deg / 4.0) *
                      (5.0 / 3.0 - in.deadrise_deg / 30.0) * speed * speed * (in.length_m / b) /
                      load_factor;
  return {.cg_g = cg_g, .bow_g = cg_g * bow_ratio(in.length_m, b, in.speed_kn)};
}

double highest_one_in_factor(double one_in_count) { return 1.0 + std::log(one_in_count); }

double acceleration_in_sea_g(const PlaningHull& hull, double wave_m) {
  const double V = kn_from_mps(hull.speed_mps);  // (V/sqrt(L))^2 L is V^2
  return item_204_slope(hull, wave_m) * V * V / kItem204_factor;
}

double speed_in_sea_mps(const PlaningHull& hull, double wave_m, double acceleration_g) {
  return mps_from_kn(std::sqrt(kItem204_factor * acceleration_g / item_204_slope(hull, wave_m)));
}

Amplification amplification(double frequency_Hz, double pulse_s) {
  const double cycles_count =
      std::clamp(frequency_Hz * pulse_s, 0.0, kShockSpectrum.back().cycles_count);
  const auto upper =
      std::find_if(kShockSpectrum.begin() + 1, kShockSpectrum.end() - 1,
                   [&](const ShockRow& row) { return row.cycles_count >= cycles_count; });
  const auto lower = upper - 1;
  const double share =
      (cycles_count - lower->cycles_count) / (upper->cycles_count - lower->cycles_count);
  return {.cycles_count = cycles_count,
          .lower_count = lower->cycles_count,
          .upper_count = upper->cycles_count,
          .lower_factor = lower->factor,
          .upper_factor = upper->factor,
          .factor = lower->factor + (upper->factor - lower->factor) * share};
}

}  // namespace thole
