#include "calc/block_volts.h"

#include <algorithm>

#include "data/batteries.h"

namespace thole {
namespace {

constexpr double kLeadDouble_K = 43.0;  // kCommonPractice: half the resistance at 25 C as at -18 C
constexpr double kLithiumDouble_K = 25.0;  // kCommonPractice: twice the resistance at 0 C

double at_charge(Chemistry chemistry, double RestRow::*value, double charge_frac) {
  const Between<RestRow> rows = rest_between(chemistry, charge_frac);
  return rows.low.*value + (rows.high.*value - rows.low.*value) *
                               (charge_frac - rows.low.charge_frac) /
                               (rows.high.charge_frac - rows.low.charge_frac);
}

}  // namespace

double rest_V(Chemistry chemistry, double charge_frac) {
  return at_charge(chemistry, &RestRow::open_circuit_V, charge_frac);
}

double rest_ratio(Chemistry chemistry, double charge_frac) {
  return at_charge(chemistry, &RestRow::resistance_ratio, charge_frac);
}

void RestCursor::to(double charge_frac) {
  while (low_ > 0 && charge_frac <= rows_[low_].charge_frac) --low_;
  while (low_ + 2 < rows_.size() && charge_frac > rows_[low_ + 1].charge_frac) ++low_;
  const RestRow& low = rows_[low_];
  const RestRow& high = rows_[low_ + 1];
  const double share = (charge_frac - low.charge_frac) / (high.charge_frac - low.charge_frac);
  rest_V_ = low.open_circuit_V + (high.open_circuit_V - low.open_circuit_V) * share;
  rest_ratio_ = low.resistance_ratio + (high.resistance_ratio - low.resistance_ratio) * share;
}

double double_K(Chemistry chemistry) {
  return is_lead(chemistry) ? kLeadDouble_K : kLithiumDouble_K;
}

double resistance_growth(Chemistry chemistry, double temperature_C, double age_factor) {
  return (1.0 + std::max(0.0, 25.0 - temperature_C) / double_K(chemistry)) *
         (1.0 + kAgedResistance_factor * (age_factor - 1.0));
}

double charged_ohm(const BatteryBlock& block) {
  if (block.resistance_ohm > 0.0) return block.resistance_ohm;
  return facts_of(block.chemistry).resistance_ohm_Ah / block.capacity_Ah *
         named_V(block.chemistry, block.nominal_V) / 12.0;
}

}  // namespace thole
