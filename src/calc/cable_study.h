#pragma once

// The run of a design by every method in use: its drop six ways, what it may carry three ways.

#include <string>
#include <vector>

#include "calc/design.h"
#include "calc/feeder/ampacity_practices.h"
#include "calc/feeder/drop_methods.h"

namespace thole {

struct CableStudy {
  std::string conductor{};  // of the run
  double loop_m = 0.0;      // out and back, without the tail
  double current_A = 0.0;   // full thrust, end of discharge
  double allowed_V = 0.0;   // of the whole feeder
  double nominal_V = 0.0;
  std::vector<DropMethod> methods{};
  std::vector<AmpacityPractice> practices{};
};

// Empty when there is no feeder.
CableStudy cable_study(const Design& design);

}  // namespace thole
