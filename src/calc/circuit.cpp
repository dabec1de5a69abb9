#include "calc/circuit.h"

#include <algorithm>
#include <cmath>

namespace thole {

OperatingPoint constant_power(double open_circuit_V, double resistance_ohm, double power_W) {
  const double E = open_circuit_V;
  OperatingPoint point{.limit_W = E * E / (4.0 * resistance_ohm)};
  point.solvable = power_W <= point.limit_W;
  point.load_V = 0.5 * (E + std::sqrt(std::max(E * E - 4.0 * power_W * resistance_ohm, 0.0)));
  point.current_A = std::min(power_W, point.limit_W) / point.load_V;
  return point;
}

OperatingPoint constant_current(double open_circuit_V, double resistance_ohm, double current_A) {
  return {.limit_W = open_circuit_V * open_circuit_V / (4.0 * resistance_ohm),
          .load_V = open_circuit_V - current_A * resistance_ohm,
          .current_A = current_A};
}

std::vector<double> node_voltages_V(double start_V, double current_A,
                                    const std::vector<double>& elements_ohm) {
  std::vector<double> nodes;
  double volts_V = start_V;
  for (const double element_ohm : elements_ohm) {
    volts_V -= current_A * element_ohm;
    nodes.push_back(volts_V);
  }
  return nodes;
}

}  // namespace thole
