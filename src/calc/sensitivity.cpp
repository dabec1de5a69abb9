#include "calc/sensitivity.h"

#include <algorithm>
#include <cmath>

#include "base/order.h"
#include "job/fields.h"

namespace thole {
namespace {

constexpr std::string_view kOwnPart = "own";  // described by the job, not in the catalogue
constexpr double kLeastMove_frac = 1e-6;

// The stages alone: a verdict is not asked for.
double answer_of(const Job& job, const Catalogue& catalogue, const Output& output) {
  return output.number(Evaluation(job, catalogue).design());
}

void give(const Field& field, double value, Job& job) {
  field.access.set(job, value);
  field.access.set_origin(job, Origin::given);
}

}  // namespace

Job with_choices_kept(const Job& given, const Design& design) {
  Job kept = given;
  for (const Field& field : all_fields()) {
    if (field.access.origin(design.job) != Origin::chosen) continue;
    if (!field.access.is_text()) {
      give(field, field.access.get(design.job), kept);
    } else if (field.access.get_text(design.job) != kOwnPart) {
      field.access.set_text(kept, field.access.get_text(design.job));
      field.access.set_origin(kept, Origin::given);
    }
  }
  return kept;
}

SensitivityStudy::SensitivityStudy(const Job& given, const Catalogue& catalogue,
                                   const SensitivityInput& in)
    : catalogue_(&catalogue) {
  const Output* output = find_output(in.output);
  if (output == nullptr || output->number == nullptr) return;
  output_ = output;
  result_.known_output = true;
  const Design design = Evaluation(given, catalogue).design();
  full_ = design.job;
  kept_ = with_choices_kept(given, design);
  result_.answer = output->number(design);
}

bool SensitivityStudy::step() {
  const std::span<const Uncertainty> all = all_uncertainties();
  if (output_ == nullptr || next_ >= all.size()) return false;
  try_value(all[next_++]);
  if (next_ < all.size()) return true;
  conclude();
  return false;
}

double SensitivityStudy::done_frac() const {
  return static_cast<double>(next_) / static_cast<double>(all_uncertainties().size());
}

void SensitivityStudy::try_value(const Uncertainty& uncertainty) {
  const Field* field = find_field(uncertainty.field);
  if (field == nullptr || field->access.is_text()) return;
  const Origin origin = field->access.origin(full_);
  if (origin == Origin::absent) return;
  const double value = field->access.get(full_);
  const ValueRange range = likely_range(uncertainty, value, origin);
  if (!(range.low < range.high)) return;
  Job job = kept_;
  const auto answer_at = [&](double other) {
    give(*field, other, job);
    return answer_of(job, *catalogue_, *output_);
  };
  // A value that is typed in may change how others are estimated (a wave height brings its own
  // period): only what its change of size does counts.
  const double answer = result_.answer;
  const double shift = answer - answer_at(value);
  Swing swing{.field = std::string(uncertainty.field),
              .origin = origin,
              .value = value,
              .low = range.low,
              .high = range.high,
              .at_low = answer_at(range.low) + shift,
              .at_high = answer_at(range.high) + shift,
              .why = uncertainty.why,
              .source = uncertainty.source};
  const auto [least, most] = std::minmax({swing.at_low, swing.at_high, answer});
  swing.width = most - least;
  if (swing.width > kLeastMove_frac * std::abs(answer)) result_.swings.push_back(std::move(swing));
}

void SensitivityStudy::conclude() {
  const double answer = result_.answer;
  double squares_down = 0.0;
  double squares_up = 0.0;
  for (const Swing& swing : result_.swings) {
    const auto [least, most] = std::minmax({swing.at_low, swing.at_high, answer});
    squares_down += (answer - least) * (answer - least);
    squares_up += (most - answer) * (most - answer);
  }
  result_.low = answer - std::sqrt(squares_down);
  result_.high = answer + std::sqrt(squares_up);
  result_.swings = sorted(std::move(result_.swings), [](const Swing& a, const Swing& b) { return a.width > b.width; });
}

SensitivityResult sensitivity(const Job& given, const Catalogue& catalogue,
                              const SensitivityInput& in) {
  SensitivityStudy study(given, catalogue, in);
  while (study.step()) {
  }
  return study.result();
}

}  // namespace thole
