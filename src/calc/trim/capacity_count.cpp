#include "calc/trim/capacity_count.h"

#include <algorithm>
#include <cmath>

#include "calc/trim/capacity_label.h"
#include "data/parts.h"
#include "data/sources.h"
#include "data/sources_float.h"

namespace thole {
namespace {

constexpr double kLargeEngine_hp = 100.0;  // any above 10.9: the label's largest battery allowance

bool bears_label(const TrimInput& in) {
  return in.length_m > 0.0 && in.length_m < kLabelLengthLimit_m;
}

// Taken from persons and weight: what comes aboard, less the one battery that the label counts.
double add_taken(const TrimInput& in, TrimResult& r) {
  const double allowance_kg = label_battery(kLargeEngine_hp).dry_kg;
  const double taken_kg = std::max(r.added_kg - allowance_kg, 0.0);
  r.persons_taken_count = taken_kg / kLabelPerson_kg;
  tell([&] {
    r.trace.steps.push_back(
        {.id = "trim.persons_taken",
         .label = "Taken from the persons on a capacity label",
         .symbol = "n",
         .formula = "max(W - b, 0) / p",
         .terms = {{"W", r.added_kg, "kg", "weight that comes aboard"},
                   {"b", allowance_kg, "kg", "the one battery that the label counts, 45 lb"},
                   {"p", kLabelPerson_kg, "kg", "one person on the label, 141 lb"}},
         .value = r.persons_taken_count,
         .unit = "",
         .source = kCfrBatteryAllowance,
         .assumptions = {bears_label(in)
                             ? "An outboard boat under 20 ft with an engine of 11 hp or more."
                             : "The plate counts one battery, as the federal one does on outboard "
                               "boats under 20 ft."}});
  });
  return taken_kg;
}

void check_persons(const TrimInput& in, TrimResult& r) {
  r.persons_left_count = in.plate_persons_count - r.persons_taken_count;
  tell([&] {
    r.trace.steps.push_back(
        {.id = "trim.persons_left",
         .label = "Persons left of the capacity plate",
         .symbol = "N_1",
         .formula = "N - n",
         .terms = {{"N", static_cast<double>(in.plate_persons_count), "", "persons on the plate"},
                   {"n", r.persons_taken_count, "", "taken by the work"}},
         .value = r.persons_left_count,
         .unit = "",
         .source = kCfrPersons,
         .assumptions = {"A part of a person is no person: count down."}});
  });
  Check check{.id = "trim.persons",
              .label = "People aboard, by the capacity plate",
              .actual = static_cast<double>(in.crew_count),
              .limit = r.persons_left_count,
              .unit = "",
              .source = kCfrPersons,
              .remedy =
                  "Take fewer people aboard, or lighter blocks: the plate counted one battery, and "
                  "the rest of the work weighs as much as people do."};
  if (check.verdict() == Verdict::fail) {
    propose_lithium(in, check);
    const double fewer = std::floor(r.persons_left_count);
    if (fewer >= 1.0) {
      check.changes.push_back(
          {.field = "boat.crew_count", .value = fewer, .label = "Go with fewer people"});
    }
  }
  r.trace.checks.push_back(std::move(check));
}

void check_weight(const TrimInput& in, double taken_kg, TrimResult& r) {
  r.plate_left_kg = in.plate_mass_kg - taken_kg;
  tell([&] {
    r.trace.steps.push_back({.id = "trim.plate_left",
                             .label = "Left of the plate's weight for people, engine and gear",
                             .symbol = "m_1",
                             .formula = "m - w",
                             .terms = {{"m", in.plate_mass_kg, "kg", "weight on the plate"},
                                       {"w", taken_kg, "kg", "taken by the work"}},
                             .value = r.plate_left_kg,
                             .unit = "kg",
                             .source = kCfrWeight});
  });
  Check check{.id = "trim.plate_mass",
              .label = "People alone, within what the plate's weight leaves",
              .actual = in.crew_count * kLabelPerson_kg,
              .limit = r.plate_left_kg,
              .unit = "kg",
              .source = kCfrWeight,
              .remedy =
                  "Take fewer people aboard, or lighter blocks. Engine, fuel and gear come out of "
                  "the same weight: weigh them too."};
  if (check.verdict() == Verdict::fail) propose_lithium(in, check);
  r.trace.checks.push_back(std::move(check));
}

}  // namespace

void propose_lithium(const TrimInput& in, Check& check) {
  for (const TrimItem& item : in.items) {
    if (!item.lead_bank) continue;
    check.changes.push_back(
        {.field = "bank.block", .clear = true, .label = "Let Thole choose the block"});
    check.changes.push_back({.field = "bank.chemistry",
                             .value = static_cast<double>(Chemistry::lifepo4),
                             .label = "Use lithium blocks"});
  }
}

void count_persons(const TrimInput& in, TrimResult& r) {
  const bool plate_read = in.plate_persons_count > 0 || in.plate_mass_kg > 0.0;
  if (!bears_label(in) && !plate_read) {
    r.trace.cautions.push_back(
        {.id = "trim.maximum_load",
         .text = "Hold the added weight against the maximum load on the builder's plate or in the "
                 "owner's manual, and never edit either.",
         .source = kCommonPractice});
    return;
  }
  const double taken_kg = add_taken(in, r);
  if (in.plate_persons_count > 0) check_persons(in, r);
  if (in.plate_mass_kg > 0.0) check_weight(in, taken_kg, r);
  r.trace.cautions.push_back(
      {.id = "trim.capacity_label",
       .text = "Count fewer persons than the capacity label says, as shown; never edit the label "
               "itself.",
       .source = kCfrPersons});
}

}  // namespace thole
