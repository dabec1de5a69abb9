#pragma once

// Where the bank lives: whether it goes into the locker, what is near it, what holds it down. Asked at
// every change, so without the shortest jumpers: those are pack()'s.

#include <vector>

#include "base/trace.h"
#include "calc/locker/fit.h"
#include "calc/locker/place.h"
#include "calc/locker/restraint.h"

namespace thole {

// How the boat moves where the bank stands.
struct LockerMotion {
  double speed_mps = 0.0;           // fastest run
  double waterline_length_m = 0.0;  // > 0
  double bank_x_m = 0.0;            // forward of the transom
  double cg_g = 0.0;   // acceleration at the centre of gravity, 1/100 highest; 0: not known
  double bow_g = 0.0;  // likewise at the bow
};

struct LockerInput {
  bool measured = false;           // length, width and height are known
  PackingInput packing{};          // without them only its blocks count
  PlaceInput place{};
  RestraintInput restraint{};      // how it slams is worked out from `motion`
  LockerMotion motion{};
  std::vector<Change> ways_out{};  // what would choose other blocks
};

struct LockerResult {
  bool measured = false;
  bool fits = false;          // false as well when not measured
  double restraint_N = 0.0;   // upward on each block, by the rule that asks most
  int strap_count = 0;        // over each block
  double strap_need_N = 0.0;  // rating of each strap
  double wall_m = 0.0;        // of the tray
  Trace trace{};              // no check that is open: what was not measured neither passes nor fails
};

// The boat planes from V = 5 sqrt(L_WL) knots on (ISO 12215-5). Between the centre of gravity, four
// tenths of the waterline from aft, and the bow the acceleration grows in a straight line; forward of
// three quarters it is a bow locker. Project decision, both.
RestraintInput restraint_of(const LockerInput& in, Trace& trace);

// Sources: those of fit(), place() and restrain().
LockerResult locker(const LockerInput& in);

}  // namespace thole
