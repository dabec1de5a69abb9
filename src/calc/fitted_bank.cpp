#include "calc/fitted_bank.h"

#include <algorithm>
#include <utility>

#include "calc/bank/capacity.h"
#include "data/batteries.h"

namespace thole {
namespace {

// A block whose age is not said is taken to be as old as the first that says so.
void count_unsaid_as_alike(const FittedRead& read, std::vector<FittedBlock>& blocks) {
  std::vector<const SaidBlock*> said;
  for (const std::vector<SaidBlock>& string : read.strings) {
    for (const SaidBlock& block : string) said.push_back(&block);
  }
  const auto told = std::find_if(said.begin(), said.end(), [](const SaidBlock* block) {
    return block->age_years_count.has_value();
  });
  if (told == said.end()) return;
  for (std::size_t i = 0; i < blocks.size(); ++i) {
    blocks[i].age_years_count = said[i]->age_years_count.value_or(*(*told)->age_years_count);
  }
}

}  // namespace

BatteryBlock block_as_said(const SaidBlock& said, const BatteryBlock& base) {
  BatteryBlock block = base;
  block.id = "own";
  block.label = "As fitted";
  block.chemistry = said.chemistry.value_or(base.chemistry);
  const bool other_kind = block.chemistry != base.chemistry;
  if (other_kind) {
    const double cells = cell_count(block.chemistry, base.nominal_V);
    block.nominal_V = is_lead(block.chemistry) ? 2.0 * cells : 3.2 * cells;
    block.continuous_A = 0.0;
    block.series_max = 0;
  }
  block.nominal_V = said.nominal_V.value_or(block.nominal_V);
  block.capacity_Ah = said.capacity_Ah;
  const bool as_label = !other_kind && block.capacity_Ah == base.capacity_Ah &&
                        block.nominal_V == base.nominal_V;
  if (!as_label) {
    block.reserve_capacity_min = 0.0;  // belongs to the other label
    const double size_ratio = base.capacity_Ah > 0.0 ? block.capacity_Ah / base.capacity_Ah : 1.0;
    const double volts_ratio = base.nominal_V > 0.0 ? block.nominal_V / base.nominal_V : 1.0;
    block.resistance_ohm = other_kind ? 0.0 : base.resistance_ohm * volts_ratio / size_ratio;
    block.mass_kg *= size_ratio * volts_ratio;
  }
  block.resistance_ohm = said.resistance_ohm.value_or(block.resistance_ohm);
  return block;
}

double left_Ah(const RunBlock& block) { return block.block.capacity_Ah * block.condition.capacity_frac / block.age_factor; }

std::string name_of(BlockPlace place, std::size_t strings_count) {
  std::string name = "block " + std::to_string(place.block + 1);
  if (strings_count > 1) name += " of string " + std::to_string(place.string + 1);
  return name;
}

FittedBank fitted_bank(std::string_view text, const BatteryBlock& base, double age_factor,
                       int series_count, double motor_V) {
  FittedBank bank;
  const FittedRead read = read_fitted(text);
  if (!read.message.empty()) return bank;
  for (const std::vector<SaidBlock>& said_string :
       strings_of(read, series_count, motor_V, base.nominal_V)) {
    RunString string;
    for (const SaidBlock& said : said_string) {
      RunBlock block{.block = block_as_said(said, base), .age_factor = age_factor};
      if (said.age_years_count) {
        block.age_factor = age_factor_after(block.block.chemistry, *said.age_years_count);
      }
      block.condition.charge_frac = said.charge_frac.value_or(1.0);
      bank.blocks.push_back({.chemistry = block.block.chemistry,
                             .nominal_V = block.block.nominal_V,
                             .capacity_Ah = block.block.capacity_Ah,
                             .age_years_count = said.age_years_count.value_or(0.0),
                             .string = static_cast<int>(bank.strings.size())});
      string.blocks.push_back(std::move(block));
    }
    bank.strings.push_back(std::move(string));
  }
  count_unsaid_as_alike(read, bank.blocks);
  for (std::size_t s = 0; s < bank.strings.size(); ++s) {
    for (std::size_t i = 0; i < bank.strings[s].blocks.size(); ++i) {
      if (left_Ah(bank.strings[s].blocks[i]) < left_Ah(bank.weakest_block())) bank.weakest = {s, i};
    }
  }
  return bank;
}

}  // namespace thole
