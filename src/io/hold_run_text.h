#pragma once

// What an hour of holding came to, as text: for a person, for a program, for a spreadsheet.

#include <string>
#include <vector>

#include "calc/hold/simulate.h"
#include "io/measure.h"

namespace thole {

struct HoldReport {
  HoldRunInput input{};
  HoldRun run{};
  RequiredMargin required{};
  double mean_load_N = 0.0;
  double margin_factor = 0.0;  // thrust over mean load, as it is
};

std::string hold_report_text(const HoldReport& report, System system);
std::string write_hold_report(const HoldReport& report);  // JSON, SI

// One line to a point, the first of them names with units; SI.
std::string track_csv(const std::vector<TrackPoint>& track);

}  // namespace thole
