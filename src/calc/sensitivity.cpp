#include "calc/sensitivity.h"

#include <algorithm>
#include <cmath>

#include "job/fields.h"
#include "job/uncertainty.h"

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
    if (field.access.get_text == nullptr) {
      give(field, field.access.get(design.job), kept);
    } else if (field.access.get_text(design.job) != kOwnPart) {
      field.access.set_text(kept, field.access.get_text(design.job));
      field.access.set_origin(kept, Origin::given);
    }
  }
  return kept;
}

SensitivityResult sensitivity(const Job& given, const Catalogue& catalogue,
                              const SensitivityInput& in) {
  SensitivityResult result;
  const Output* output = find_output(in.output);
  if (output == nullptr || output->number == nullptr) return result;
  result.known_output = true;
  const Design design = Evaluation(given, catalogue).design();
  const Job kept = with_choices_kept(given, design);
  result.answer = output->number(design);

  double squares_down = 0.0;
  double squares_up = 0.0;
  for (const Uncertainty& uncertainty : all_uncertainties()) {
    const Field* field = find_field(uncertainty.field);
    if (field == nullptr || field->access.get == nullptr) continue;
    const Origin origin = field->access.origin(design.job);
    if (origin == Origin::absent) continue;
    const double value = field->access.get(design.job);
    const ValueRange range = likely_range(uncertainty, value, origin);
    if (!(range.low < range.high)) continue;
    Job job = kept;
    const auto answer_at = [&](double other) {
      give(*field, other, job);
      return answer_of(job, catalogue, *output);
    };
    // A value that is typed in may change how others are estimated (a wave height brings its own
    // period): only what its change of size does counts.
    const double shift = result.answer - answer_at(value);
    Swing swing{.field = std::string(uncertainty.field),
                .origin = origin,
                .value = value,
                .low = range.low,
                .high = range.high,
                .at_low = answer_at(range.low) + shift,
                .at_high = answer_at(range.high) + shift,
                .why = uncertainty.why,
                .source = uncertainty.source};
    const double least = std::min({swing.at_low, swing.at_high, result.answer});
    const double most = std::max({swing.at_low, swing.at_high, result.answer});
    swing.width = most - least;
    if (!(swing.width > kLeastMove_frac * std::abs(result.answer))) continue;
    squares_down += (result.answer - least) * (result.answer - least);
    squares_up += (most - result.answer) * (most - result.answer);
    result.swings.push_back(std::move(swing));
  }
  result.low = result.answer - std::sqrt(squares_down);
  result.high = result.answer + std::sqrt(squares_up);
  std::stable_sort(result.swings.begin(), result.swings.end(),
                   [](const Swing& a, const Swing& b) { return a.width > b.width; });
  return result;
}

}  // namespace thole
