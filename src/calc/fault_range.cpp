#include "calc/fault_range.h"

#include <algorithm>

#include "calc/block_volts.h"
#include "calc/fault.h"
#include "data/batteries.h"
#include "data/conductors.h"

namespace thole {
namespace {

// kCommonPractice: low and high ends of a kind's resistance over the middle that charged_ohm gives.
constexpr double kLeadLow_factor = 0.75;
constexpr double kLeadHigh_factor = 1.25;
constexpr double kLithiumHigh_factor = 2.5;  // with electronics, 4 to 15 milliohm at 100 Ah
constexpr double kCell_ohm_Ah =
    0.00015 * 105.0;                             // kLithiumCell: its low end; less in a larger cell
constexpr double kLink_ohm_Ah = 0.0001 * 100.0;  // kCommonPractice: of each cell
constexpr double kJointLow_factor = 0.5;         // kCommonPractice
constexpr double kJointHigh_factor = 2.0;        // kCommonPractice
constexpr double kSurge_ratio = 2.0;  // kCommonPractice: of the electronics' continuous current
constexpr double kShared_frac = 0.8;  // kCommonPractice: parallel blocks share unevenly

double in_bank(const FaultBank& bank, double block_ohm) {
  return block_ohm * std::max(bank.series_count, 1) / std::max(bank.parallel_count, 1);
}

double bank_V(const FaultBank& bank, double charge_frac) {
  const BatteryBlock& block = bank.block;
  return rest_V(block.chemistry, charge_frac) * named_V(block.chemistry, block.nominal_V) / 12.0 *
         std::max(bank.series_count, 1);
}

double path_ohm(const FaultPath& path, double copper_C, double joint_factor) {
  return resistance_at(path.copper_ohm, copper_C) + joint_factor * path.joints_ohm;
}

}  // namespace

BankEnd strongest(const FaultBank& bank) {
  const BatteryBlock& block = bank.block;
  const double block_ohm =
      is_lead(block.chemistry)
          ? kLeadLow_factor * charged_ohm(block)
          : std::min(charged_ohm(block), cell_count(block.chemistry, block.nominal_V) *
                                             (kCell_ohm_Ah + kLink_ohm_Ah) / block.capacity_Ah);
  return {.open_circuit_V = bank_V(bank, 1.0), .resistance_ohm = in_bank(bank, block_ohm)};
}

BankEnd weakest(const FaultBank& bank) {
  const BatteryBlock& block = bank.block;
  const double spread = is_lead(block.chemistry) ? kLeadHigh_factor : kLithiumHigh_factor;
  const double block_ohm = spread * charged_ohm(block) *
                           rest_ratio(block.chemistry, bank.flat_charge_frac) *
                           resistance_growth(block.chemistry, bank.cold_C, bank.age_factor);
  return {.open_circuit_V = bank_V(bank, bank.flat_charge_frac),
          .resistance_ohm = in_bank(bank, block_ohm)};
}

double electronics_A(const FaultBank& bank) {
  if (is_lead(bank.block.chemistry)) return 0.0;
  const double sharing = bank.parallel_count > 1 ? kShared_frac * bank.parallel_count : 1.0;
  return kSurge_ratio * bank.block.continuous_A * sharing;
}

FaultRange fault_range(const FaultBank& bank, const FaultPath& path) {
  const BankEnd low = weakest(bank);
  const BankEnd high = strongest(bank);
  return {.least_A = fault_A(low.open_circuit_V,
                             low.resistance_ohm + path_ohm(path, path.hot_C, kJointHigh_factor)),
          .most_A = fault_A(high.open_circuit_V,
                            high.resistance_ohm + path_ohm(path, 20.0, kJointLow_factor))};
}

}  // namespace thole
