#pragma once

// Which stock makes the plate: each by the finite elements, in all load cases.

#include <string>
#include <vector>

#include "calc/plate_study.h"

namespace thole {

// One stock and how it fares; each use is 1 at its limit.
struct PlateTrial {
  PlateStock stock{};
  std::string problem{};       // not worked out, and why
  double strength_factor = 0.0;  // stress over what may be, the worst case
  double bolts_factor = 0.0;     // the worst bolt
  double sag_factor = 0.0;       // at rest, over a hundredth of the overhang
  double frequency_Hz = 0.0;
  bool shakes = false;         // with the idling engine
  double mass_kg = 0.0;
  bool serves = false;
};

// In slices: a stock to each call, thin ones first. Stocks of an alloy that is not known are left out.
class PlateChooser {
 public:
  PlateChooser(Design design, std::vector<PlateStock> stocks);
  bool advance();  // false: all are done
  double done_frac() const;
  const std::vector<PlateTrial>& trials() const { return trials_; }
  // The lightest that serves; -1: none does.
  int choice() const;

 private:
  Design design_;
  std::vector<PlateStock> stocks_;
  std::vector<PlateTrial> trials_{};
};

PlateTrial try_plate(Design design, const PlateStock& stock);
// What helps when none does, for this job: sentences.
std::vector<std::string> remedies_without_plate(const Design& design);
std::vector<Change> changes_without_plate(const Design& design);

}  // namespace thole
