#pragma once

// The feeder as a circuit: bank left, motor right, out above and back below. Every piece has a line of
// its own with its amperes, watts lost and degrees, every node its volts; strokes are as thick as their
// share of the loss, the worst piece stands out. Any circuit that solve_network() takes keeps its texts
// apart, for no two share a line.

#include "calc/feeder_circuit.h"
#include "draw/drawing.h"
#include "io/measure.h"

namespace thole {

// In px: from low to high is its size where text is 14 px. Wider sheets stretch it; no lower ones.
// Not solved: an empty sheet whose description says why.
Drawing circuit_plan_picture(const FeederCircuit& circuit, System system);

// "24.61 V", "55.0 A", "0.42 W", "46 °C", as short as a picture of many pieces needs.
struct PieceFigures {
  std::string amperes{};
  std::string watts{};
  std::string degrees{};  // empty: none is worked out
};
PieceFigures piece_figures(const FeederCircuit& circuit, std::size_t branch, System system);

}  // namespace thole
