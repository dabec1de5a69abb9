#pragma once

// How well the values of a job are known. One table, for whoever asks which of them moves an answer
// most. A value typed in counts as measured with usual care; one that was estimated, or that a boat
// type stands for, is known as well as the estimate.

#include <span>
#include <string_view>

#include "base/trace.h"
#include "job/job.h"

namespace thole {

enum class Spread { share, amount };  // of the value itself, or in the field's own unit

// Nineteen of twenty true values lie between value less `low` and value plus `high`; as shares,
// between value times (1 - low) and value times (1 + high).
struct Likely {
  double low = 0.0;
  double high = 0.0;
};

struct Uncertainty {
  std::string_view field{};  // path
  Spread spread = Spread::share;
  Likely measured{};
  Likely estimated{};
  SourceRef source{};
  std::string_view why{};  // one line
};

std::span<const Uncertainty> all_uncertainties();
const Uncertainty* find_uncertainty(std::string_view field);  // null: counts as exact

struct ValueRange {
  double low = 0.0;
  double high = 0.0;
};

// Within the field's allowed range. A value that Thole chose from the catalogue counts as measured:
// it is on the part's papers.
ValueRange likely_range(const Uncertainty& uncertainty, double value, Origin origin);

}  // namespace thole
