#include "calc/bank/thresholds.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "base/number.h"
#include "data/batteries.h"
#include "data/sources.h"
#include "data/sources_battery.h"

namespace thole {
namespace {

constexpr double kAlike_years = 1.0;  // kCommonPractice
constexpr double kAlike_frac = 0.02;  // kCommonPractice: labels of one model agree

struct Span {
  double low = 0.0;
  double high = 0.0;
};

Span span_of(std::span<const FittedBlock> blocks, double FittedBlock::*member) {
  const auto [low, high] =
      std::minmax_element(blocks.begin(), blocks.end(),
                          [&](const auto& a, const auto& b) { return a.*member < b.*member; });
  return {(*low).*member, (*high).*member};
}

}  // namespace

std::vector<Caution> mixed_blocks(std::span<const FittedBlock> blocks) {
  std::vector<Caution> found;
  if (blocks.size() < 2) return found;
  const auto warn = [&](std::string id, std::string text) {
    found.push_back({std::move(id), std::move(text), kCommonPractice});
  };
  const auto other_kind = std::find_if(blocks.begin(), blocks.end(), [&](const FittedBlock& block) {
    return block.chemistry != blocks.front().chemistry;
  });
  if (other_kind != blocks.end()) {
    warn("bank.mixed_chemistry",
         "Never put " + std::string(facts_of(blocks.front().chemistry).label) + " and " +
             std::string(facts_of(other_kind->chemistry).label) +
             " in one bank: each needs another charge, and the weaker is ruined.");
  }
  const Span volts = span_of(blocks, &FittedBlock::nominal_V);
  if (volts.high > volts.low * (1.0 + kAlike_frac)) {
    warn("bank.mixed_volts", "Use blocks of one nominal voltage: these are " +
                                 trimmed(fixed(volts.low, 1)) + " and " +
                                 trimmed(fixed(volts.high, 1)) + " V.");
  }
  const Span charge = span_of(blocks, &FittedBlock::capacity_Ah);
  if (charge.high > charge.low * (1.0 + kAlike_frac)) {
    warn("bank.mixed_capacity", "Use blocks of one capacity: the smallest, " +
                                    trimmed(fixed(charge.low, 1)) +
                                    " Ah, is empty first and is then driven backwards.");
  }
  const Span age = span_of(blocks, &FittedBlock::age_years_count);
  if (age.high - age.low > kAlike_years) {
    warn("bank.mixed_age", "Replace all blocks together: these are up to " +
                               trimmed(fixed(age.high - age.low, 1)) +
                               " years apart, and the old ones drag the new ones down.");
  }
  std::map<int, int> count_of;
  for (const FittedBlock& block : blocks) ++count_of[block.string];
  const auto unequal = std::any_of(count_of.begin(), count_of.end(), [&](const auto& string) {
    return string.second != count_of.begin()->second;
  });
  if (unequal) {
    warn("bank.unequal_strings",
         "Give each string as many blocks: the longer one would charge the shorter without end.");
  }
  return found;
}

Lifetime lifetime(Chemistry chemistry, double cycles_count, double days_per_year_count) {
  if (!(cycles_count > 0.0 && std::isfinite(cycles_count) && days_per_year_count > 0.0 &&
        std::isfinite(days_per_year_count))) {
    return {};
  }
  Lifetime life{.cycling_years_count = cycles_count / days_per_year_count,
                .calendar_years_count = facts_of(chemistry).calendar_years_count};
  life.calendar_governs = life.calendar_years_count < life.cycling_years_count;
  life.years_count = std::min(life.cycling_years_count, life.calendar_years_count);
  return life;
}

}  // namespace thole
