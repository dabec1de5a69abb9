#include "calc/fault.h"

#include <algorithm>
#include <cmath>

namespace thole {
namespace {

constexpr double kCopperFault_factor = 226.0;  // kAdiabatic
constexpr double kCopperFault_K = 234.5;       // kAdiabatic
constexpr double kManyAmperes_A = 10000.0;     // kE11Interrupt: from here on ...
constexpr double kHighInterrupt_A = 20000.0;   // ... the class for large banks

}  // namespace

double fault_A(double open_circuit_V, double resistance_ohm) {
  return open_circuit_V / resistance_ohm;
}

double interrupt_needed_A(double near_A) {
  return near_A > kManyAmperes_A ? kHighInterrupt_A : near_A;
}

double adiabatic_factor(double start_C, double end_C) {
  const double rise = std::log((end_C + kCopperFault_K) / (start_C + kCopperFault_K));
  return kCopperFault_factor * std::sqrt(std::max(rise, 0.0));
}

double withstand_s(double k_factor, double area_mm2, double current_A) {
  const double root_s = k_factor * area_mm2 / current_A;
  return root_s * root_s;
}

}  // namespace thole
