#pragma once

// The feeder as a circuit: one source behind its resistance, a series chain, one load of constant
// power (a motor behind its controller).
//
//   V = (E + sqrt(E^2 - 4 P R))/2,  I = P/V,  solvable while P <= E^2/(4 R)
//
// Source: Ohm and Kirchhoff (kCircuitLaws). Beyond the limit the controller collapses; then the
// point of greatest power is given (V = E/2) and `solvable` is false.

#include <vector>

namespace thole {

struct OperatingPoint {
  bool solvable = true;
  double limit_W = 0.0;  // E^2/(4 R)
  double load_V = 0.0;
  double current_A = 0.0;
};

// Precondition: open_circuit_V > 0, resistance_ohm > 0, power_W >= 0.
OperatingPoint constant_power(double open_circuit_V, double resistance_ohm, double power_W);

// The same chain at a known current.
OperatingPoint constant_current(double open_circuit_V, double resistance_ohm, double current_A);

// Volts behind each element of a chain that starts at `start_V`, in the chain's order.
std::vector<double> node_voltages_V(double start_V, double current_A,
                                    const std::vector<double>& elements_ohm);

}  // namespace thole
