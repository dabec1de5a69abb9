#include "calc/locker_study.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "base/number.h"
#include "base/order.h"
#include "data/sources.h"

namespace thole {
namespace {

constexpr std::size_t kMostOptions_count = 3;
constexpr double kQuantum_m = 0.01;  // of feeder.jumper_m

bool passes(const BankResult& bank) {
  return std::none_of(bank.trace.checks.begin(), bank.trace.checks.end(), [](const Check& check) {
    return check.verdict() == Verdict::fail || check.verdict() == Verdict::not_evaluated;
  });
}

// A described block is its owner's own: nothing on the shelf stands for it.
std::vector<LockerOption> options_of(const Design& design, const Catalogue& catalogue,
                                     const PackingInput& room) {
  std::vector<LockerOption> options;
  for (const BatteryBlock& block : catalogue.blocks) {
    if (block.id == design.bank.block.id) continue;
    PackingInput with = room;
    with.chemistry = block.chemistry;
    with.block_length_m = 0.001 * block.length_mm;
    with.block_width_m = 0.001 * block.width_mm;
    with.block_height_m = 0.001 * block.height_mm;
    bool exact = true;
    BankInput asked = bank_input(design, {block});
    asked.room_counts = {capacity_count(with, exact)};
    const BankResult other = bank(asked);
    if (!other.found || !passes(other)) continue;
    options.push_back({.block = block,
                       .series_count = other.series_count,
                       .parallel_count = other.parallel_count,
                       .mass_kg = other.mass_kg,
                       .change = {.field = "bank.block",
                                  .text = block.id,
                                  .label = "Use " + std::to_string(other.block_count) + " of " +
                                           block.label}});
  }
  options = sorted(std::move(options), [](const LockerOption& a, const LockerOption& b) {
    return a.mass_kg < b.mass_kg;
  });
  if (options.size() > kMostOptions_count) options.resize(kMostOptions_count);
  return options;
}

double mean_m(double sum_m, int count) { return count > 0 ? sum_m / count : 0.0; }

}  // namespace

LockerStudy locker_study(const Design& design, const Catalogue& catalogue) {
  LockerStudy study{.input = locker_input(design)};
  Trace motion{};
  study.restraint = restrain(restraint_of(study.input, motion));
  study.restraint.trace.steps.insert(study.restraint.trace.steps.begin(), motion.steps.begin(),
                                     motion.steps.end());
  study.place = place(study.input.place);
  if (!study.input.measured) return study;
  study.packing = pack(study.input.packing);
  if (!study.packing.fits) study.options = options_of(design, catalogue, study.input.packing);
  return study;
}

double jumper_each_m(const Arrangement& arrangement) {
  double series_m = 0.0;
  int series_count = 0;
  for (const Jumper& jumper : arrangement.jumpers) {
    if (jumper.links_strings) continue;
    series_m += jumper.length_m;
    ++series_count;
  }
  const double each_m =
      std::max(mean_m(series_m, series_count),
               mean_m(arrangement.jumpers_m, static_cast<int>(arrangement.jumpers.size())));
  return std::ceil(each_m / kQuantum_m - 1e-9) * kQuantum_m;
}

Check jumper_check(const Arrangement& arrangement, double counted_on_m) {
  const double each_m = jumper_each_m(arrangement);
  Check check{.id = "locker.jumper_each",
              .label = "Jumpers longer than the feeder counts on, each",
              .actual = std::max(0.0, each_m - counted_on_m),
              .limit = 0.0,
              .unit = "m",
              .source = kDefinition,
              .remedy = "Count on jumpers of " + fixed(1000.0 * each_m, 0) +
                        " mm, or let the blocks lie so that theirs are shorter."};
  check.changes = {{.field = "feeder.jumper_m", .value = each_m, .label = "Count on such jumpers"}};
  return check;
}

}  // namespace thole
