#pragma once

// A short circuit: its current, what a device must be able to break, and how long copper stands it.

namespace thole {

// Prospective current of a bolted short circuit. Precondition: resistance_ohm > 0.
double fault_A(double open_circuit_V, double resistance_ohm);

// Interrupt rating that a bank of this short-circuit current asks of its main device: as much, or
// above 10 kA the class of 20 kA. Source: kE11Interrupt. More than 20 kA comes from strings side by
// side; then each wants its own fuse.
double interrupt_needed_A(double near_A);

inline constexpr double kPvcFault_C = 160.0;  // kAdiabatic: cross-linked insulation stands 250

// k of I^2 t <= k^2 S^2 for copper (A sqrt(s) / mm2) between two temperatures; 0 when there is no
// room between them. Source: kAdiabatic, t <= 5 s; longer times are on the safe side.
double adiabatic_factor(double start_C, double end_C);

// How long a conductor stands a fault before it reaches the end temperature that `k_factor` is for.
// Precondition: current_A > 0.
double withstand_s(double k_factor, double area_mm2, double current_A);

}  // namespace thole
