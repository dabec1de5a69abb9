#include "calc/bank/kinetic.h"

#include <cmath>

#include "data/batteries.h"

namespace thole {
namespace {

// Rate and share of an open data set for AGM blocks, rated over 20, 10 and 1 h; kKineticData.
// Lithium: common practice, nearly everything is at hand.
constexpr double kLeadRate_frac_per_h = 0.784;
constexpr double kLeadShare_frac = 0.4474;
constexpr double kLithiumRate_frac_per_h = 2.0;
constexpr double kLithiumShare_frac = 0.98;

// The whole of both wells, from what comes out over the rated hours.
double whole_Ah(const Rating& rating, double share_frac, double rate_frac_per_h) {
  const double kt = rate_frac_per_h * rating.rated_hours_h;
  return rating.capacity_Ah * ((1.0 - std::exp(-kt)) * (1.0 - share_frac) + kt * share_frac) /
         (kt * share_frac);
}

}  // namespace

KineticState full_state(const KineticModel& model) {
  return {model.available_frac * model.capacity_Ah,
          (1.0 - model.available_frac) * model.capacity_Ah};
}

KineticState after(const KineticModel& model, const KineticState& state, double current_A,
                   double time_h) {
  const double k = model.rate_frac_per_h;
  const double c = model.available_frac;
  const double q0 = state.available_Ah + state.bound_Ah;
  const double e = std::exp(-k * time_h);
  const double g = k * time_h - 1.0 + e;
  return {state.available_Ah * e + (q0 * k * c - current_A) * (1.0 - e) / k - current_A * c * g / k,
          state.bound_Ah * e + q0 * (1.0 - c) * (1.0 - e) - current_A * (1.0 - c) * g / k};
}

double held_current_A(const KineticModel& model, const KineticState& state, double time_h) {
  const double k = model.rate_frac_per_h;
  const double c = model.available_frac;
  const double q0 = state.available_Ah + state.bound_Ah;
  const double e = std::exp(-k * time_h);
  return (k * state.available_Ah * e + q0 * k * c * (1.0 - e)) /
         (1.0 - e + c * (k * time_h - 1.0 + e));
}

double capacity_over_Ah(const KineticModel& model, double time_h) {
  return held_current_A(model, full_state(model), time_h) * time_h;
}

double kinetic_hours_h(const KineticModel& model, double current_A, double longest_h) {
  double held_h = 0.0;
  double empty_h = longest_h;
  for (int i = 0; i < 60; ++i) {
    const double middle_h = 0.5 * (held_h + empty_h);
    (capacity_over_Ah(model, middle_h) >= current_A * middle_h ? held_h : empty_h) = middle_h;
  }
  return 0.5 * (held_h + empty_h);
}

double available_share(const Rating& a, const Rating& b, double rate_frac_per_h) {
  const double k = rate_frac_per_h;
  const double t1 = a.rated_hours_h;
  const double t2 = b.rated_hours_h;
  const double f = a.capacity_Ah / b.capacity_Ah;
  const double x = f * (1.0 - std::exp(-k * t1)) * t2 - (1.0 - std::exp(-k * t2)) * t1;
  return x / (x - k * f * t1 * t2 + k * t1 * t2);
}

KineticModel fit(const Rating& slow, const Rating& middle, const Rating& fast) {
  const auto disagreement = [&](double k) {
    return available_share(fast, slow, k) - available_share(fast, middle, k);
  };
  constexpr double kStep_frac_per_h = 0.001;
  double low = kStep_frac_per_h;
  double high = low;
  while (high < 5.0) {
    high = low + kStep_frac_per_h;
    if (disagreement(low) * disagreement(high) <= 0.0) break;
    low = high;
  }
  for (int i = 0; i < 60; ++i) {
    const double centre = 0.5 * (low + high);
    (disagreement(low) * disagreement(centre) <= 0.0 ? high : low) = centre;
  }
  const double rate_frac_per_h = 0.5 * (low + high);
  const double share_frac = available_share(fast, slow, rate_frac_per_h);
  return {whole_Ah(slow, share_frac, rate_frac_per_h), share_frac, rate_frac_per_h};
}

KineticModel kinetic_model(Chemistry chemistry, const Rating& rating, double reserve_capacity_min) {
  const double rate_frac_per_h =
      is_lead(chemistry) ? kLeadRate_frac_per_h : kLithiumRate_frac_per_h;
  double share_frac = is_lead(chemistry) ? kLeadShare_frac : kLithiumShare_frac;
  const Discharge reserve = reserve_discharge(reserve_capacity_min);
  const double reserve_Ah = reserve.current_A * reserve.time_h;
  // A reserve capacity beyond the label's own, or as slow as it, says nothing about the wells.
  if (is_lead(chemistry) && reserve_Ah > 0.0 && reserve_Ah < rating.capacity_Ah &&
      reserve.time_h < rating.rated_hours_h) {
    const double from_reserve_frac =
        available_share({reserve_Ah, reserve.time_h}, rating, rate_frac_per_h);
    if (from_reserve_frac > 0.1 && from_reserve_frac < 1.0) share_frac = from_reserve_frac;
  }
  return {whole_Ah(rating, share_frac, rate_frac_per_h), share_frac, rate_frac_per_h};
}

}  // namespace thole
