#pragma once

// Which input moves an answer most, and by how much: each value that is not known exactly is set to
// either end of its likely range, the whole design is worked out anew, the answers are ranked.

#include <string>
#include <vector>

#include "calc/design.h"
#include "calc/outputs.h"
#include "job/job.h"
#include "job/uncertainty.h"

namespace thole {

struct Swing {
  std::string field{};  // path
  Origin origin = Origin::absent;
  double value = 0.0;  // in the field's own unit, as are the next two
  double low = 0.0;
  double high = 0.0;
  double at_low = 0.0;  // the answer, in the output's own unit, as is the next
  double at_high = 0.0;
  double width = 0.0;      // from the least to the most of the answers, the design's own included
  std::string_view why{};  // why it is not known better
  SourceRef source{};         // of how well it is known
};

struct SensitivityInput {
  std::string_view output = "hold.margin_actual_factor";  // path of a number; see calc/outputs.h
};

struct SensitivityResult {
  bool known_output = false;  // false: there is no number of that name, and nothing else is filled
  double answer = 0.0;        // of the design as it is
  double low = 0.0;           // all taken together: roots of the sums of squares to either side
  double high = 0.0;
  std::vector<Swing> swings{};  // widest first; those that move nothing are left out
};

// Parts that were chosen from the catalogue stay as they are: the question is what the design that
// was settled on is worth. Values that were estimated from another follow it when it moves.
// Left out: errors that hang together (the sums count each value as off by itself), and choices,
// which are known.
SensitivityResult sensitivity(const Job& given, const Catalogue& catalogue,
                              const SensitivityInput& in);

// sensitivity() in slices, a value of the job at a time. The catalogue must outlive it.
class SensitivityStudy {
 public:
  SensitivityStudy(const Job& given, const Catalogue& catalogue, const SensitivityInput& in);
  bool step();  // false when it is over, and result() what sensitivity() gives
  double done_frac() const;
  const SensitivityResult& result() const { return result_; }

 private:
  void try_value(const Uncertainty& uncertainty);
  void conclude();

  const Catalogue* catalogue_ = nullptr;
  const Output* output_ = nullptr;  // null: nothing is studied
  Job full_{};
  Job kept_{};
  std::size_t next_ = 0;
  SensitivityResult result_{};
};

// The job with everything that Thole chose set down as given.
Job with_choices_kept(const Job& given, const Design& design);

}  // namespace thole
