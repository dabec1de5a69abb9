#pragma once

// How much current a short circuit may draw: from a bank new, charged and warm down to one old,
// flat and cold, at its posts, at the stud at the bow and at the motor's plug.

#include "data/parts.h"

namespace thole {

struct FaultBank {
  BatteryBlock block{};
  int series_count = 1;
  int parallel_count = 1;
  double age_factor = 1.25;       // ageing allowance at the end of its life
  double cold_C = 0.0;            // coldest that the boat is used in
  double flat_charge_frac = 0.0;  // left in it at the worst
};

// A bank at rest, as a short circuit sees it; without jumpers.
struct BankEnd {
  double open_circuit_V = 0.0;
  double resistance_ohm = 0.0;
};

// New, charged, 25 C or warmer, at the low end of its kind. Lithium: its bare cells and their
// links, for the first milliseconds belong to them and the electronics fail closed.
BankEnd strongest(const FaultBank& bank);

// Old, cold and flat, at the high end of its kind; lithium with its electronics.
BankEnd weakest(const FaultBank& bank);

// Current above which a lithium bank's own electronics open within some seconds; 0: it has none.
double electronics_A(const FaultBank& bank);

// What lies between posts and fault, out and back.
struct FaultPath {
  double copper_ohm = 0.0;  // at 20 C
  double joints_ohm = 0.0;  // lugs, devices, plug: typical
  double hot_C = 20.0;      // of the copper, at the worst
};

struct FaultRange {
  double least_A = 0.0;
  double most_A = 0.0;
};

// Least: the weakest bank through hot copper and joints of twice the typical resistance. Most: the
// strongest through copper at 20 C and joints of half of it.
//   I = E / (R_bank + R_copper + R_joints)
// Sources: handbook values of the trade (kCommonPractice), kLithiumCell, kCopperTemperature. Left
// out: inductance, which only slows the rise.
FaultRange fault_range(const FaultBank& bank, const FaultPath& path);

}  // namespace thole
