#include "calc/bank/capacity.h"

#include <algorithm>
#include <cmath>

#include "data/batteries.h"

namespace thole {
namespace {

constexpr double kLeastCurrent_A = 1e-6;  // keeps "no load" finite

// Current that empties the rating in its rated hours.
double rated_A(const Rating& rating) { return rating.capacity_Ah / rating.rated_hours_h; }

}  // namespace

double peukert_hours_h(const Rating& rating, double exponent, double current_A) {
  const double current = std::max(current_A, kLeastCurrent_A);
  return rating.rated_hours_h * std::pow(rated_A(rating) / current, exponent);
}

double capacity_at_Ah(const Rating& rating, double exponent, double current_A) {
  const double current = std::max(current_A, kLeastCurrent_A);
  return rating.capacity_Ah * std::min(1.0, std::pow(rated_A(rating) / current, exponent - 1.0));
}

double label_for_Ah(double needed_Ah, double rated_hours_h, double exponent, double current_A) {
  const double rated_Ah = current_A * rated_hours_h;
  const double label_Ah = std::pow(needed_Ah * std::pow(rated_Ah, exponent - 1.0), 1.0 / exponent);
  return std::max(needed_Ah, label_Ah);
}

double peukert_exponent(const Discharge& a, const Discharge& b) {
  const double currents = std::log(a.current_A / b.current_A);
  const double times = std::log(b.time_h / a.time_h);
  return std::abs(currents) < 1e-9 ? 1.0 : times / currents;
}

Discharge reserve_discharge(double reserve_capacity_min) {
  return {kReserveCurrent_A, reserve_capacity_min / 60.0};
}

double temperature_factor(Chemistry chemistry, double temperature_C) {
  const auto [low, high] = cold_between(chemistry, temperature_C);
  return low.factor + (high.factor - low.factor) * (temperature_C - low.temperature_C) /
                          (high.temperature_C - low.temperature_C);
}

double temperature_factor_fit(double temperature_C) {
  // Source: kTemperatureFit.
  const double x = temperature_C / 100.0;
  return ((-2.8117 * x + 4.1916) * x - 2.4941) * x + 1.405;
}

double cycle_life_count(Chemistry chemistry, double depth_frac) {
  const ChemistryFacts& facts = facts_of(chemistry);
  return facts.cycles_at_full_count / std::pow(depth_frac, facts.cycles_exponent);
}

double age_factor_after(Chemistry chemistry, double age_years_count) {
  constexpr double kLost_frac = 0.2;
  constexpr double kLeast_frac = 0.2;
  const double ends_frac = age_years_count / facts_of(chemistry).calendar_years_count;
  return 1.0 / std::max(kLeast_frac, 1.0 - kLost_frac * std::max(0.0, ends_frac));
}

double rms_current_A(double peak_A, double base_A, double duty_frac) {
  return std::sqrt(duty_frac * peak_A * peak_A + (1.0 - duty_frac) * base_A * base_A);
}

}  // namespace thole
