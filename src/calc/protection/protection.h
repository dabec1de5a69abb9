#pragma once

// Whether the feeder's fuses and breakers protect it, proven by curves: every short circuit that
// the bank can feed clears before a conductor overheats, the motor starts and stalls without a
// trip, and of two devices in series the nearer one opens.

#include <string>
#include <string_view>
#include <vector>

#include "base/trace.h"
#include "calc/fault_range.h"
#include "calc/trip.h"

namespace thole {

struct ProtectionDevice {
  std::string label{};
  DeviceClass device_class = DeviceClass::bolt_fuse;
  double rating_A = 0.0;     // > 0
  double voltage_V = 0.0;    // highest direct voltage that it may interrupt
  double interrupt_A = 0.0;  // at that voltage
  double resistance_ohm = 0.0;
  int pole_count = 1;  // poles of the feeder that have it, or that it opens
};

// Two conductors, out and back.
struct ProtectedLead {
  std::string label{};      // "run", "tail"
  double area_mm2 = 0.0;    // > 0
  double ohm_per_m = 0.0;   // one conductor, 20 C
  double length_m = 0.0;    // one way
  double ampacity_A = 0.0;  // with its factors; > 0
  double insulation_C = 105.0;
  double air_C = 30.0;    // around it; < insulation_C
  double start_C = 30.0;  // of the copper before a fault, under load
  double end_C = 160.0;   // what its insulation stands briefly: PVC 160, cross-linked 250
  double most_A = 0.0;    // of a typed circuit: the strongest short circuit that flows through it
};

struct MotorDemand {
  double continuous_A = 0.0;  // full thrust, end of discharge
  double start_A = 0.0;
  double start_s = 0.0;
  double stall_A = 0.0;      // weed or a line in the propeller
  double stall_s = 0.0;      // until its controller gives up
  bool stops_itself = true;  // its own thermal cut-out or controller ends a lasting stall
};

// Short circuits at three places.
struct FaultRanges {
  FaultRange posts{};
  FaultRange stud{};
  FaultRange plug{};
};

// What a circuit that was typed piece by piece has in place of run and tail. Conductors and devices side by
// side count as what all of them are together.
struct TypedPaths {
  FaultRanges faults{};  // the stud is behind the last device
  BankEnd posts{};       // the strongest bank, seen at its posts: cold copper, half of the joints
  BankEnd plug{};        // the weakest, seen at the motor: hot copper, joints of twice their resistance
  std::vector<ProtectedLead> leads{};       // in the motor's way; none: nothing was typed
  std::vector<ProtectionDevice> devices{};  // likewise, from the bank outward
};

struct ProtectionInput {
  FaultBank bank{};
  double jumpers_ohm = 0.0;                 // all between blocks, 20 C
  double charge_V = 0.0;                    // highest
  std::vector<ProtectionDevice> devices{};  // from the bank outward
  ProtectedLead run{};                      // bank to stud
  ProtectedLead tail{};                     // stud to plug; length 0: the run ends in the plug
  MotorDemand motor{};
  bool floating = true;    // negative not tied to the boat
  double lug_ohm = 1e-4;   // each
  double plug_ohm = 5e-4;  // each pole
  DeviceAir air{};         // of the devices
  TypedPaths typed{};      // then `run` is the thinnest of its leads, and there is no tail
};

enum class FindingKind {
  device,      // there is one
  poles,       // in every pole that is not tied to the boat
  voltage,     // breaks the charge voltage
  interrupt,   // breaks the strongest short circuit
  reach,       // the weakest short circuit at the plug opens it
  overload,    // opens before an overload cooks run or tail slowly
  run_stands,  // the run outlives every short circuit
  tail_stands,
  continuous,    // holds full thrust
  start,         // rides through a start
  stall,         // ... and a stall
  locked_rotor,  // opens when the motor stays locked
  selective,     // the nearer of two opens, the farther stays closed
  electronics    // a lithium bank's own cut-off rides through a stall
};

std::string_view word(FindingKind kind);  // "reach", "run_stands" ...

struct Finding {
  FindingKind kind = FindingKind::device;
  Check check{};       // id "protection.<kind>", with its remedy
  double at_A = 0.0;   // the current at which it is nearest to its limit; 0: at none
};

struct ProtectionResult {
  FaultRanges faults{};
  std::vector<Finding> findings{};
  Verdict verdict = Verdict::not_evaluated;  // the worst of the findings
  double electronics_A = 0.0;                // above it a lithium bank cuts itself off; 0: never
  double selective_to_A = 0.0;               // with two devices: up to here the nearer one opens
  Trace trace{};  // of a design: each finding is a check, but for the device, which the feeder's stage asks for
};

const Finding* find(const ProtectionResult& result, FindingKind kind);

FaultRanges fault_ranges(const ProtectionInput& in);

// The soonest that any of the devices may open, and by when one of them surely has. The first
// `count` of them, counted from the bank.
OpeningBand opening_in_series(const std::vector<ProtectionDevice>& devices, std::size_t count,
                              double current_A, DeviceAir air);

// How long a lead stands a current before its copper reaches `end_C`; kMayNeverOpen_s when it never
// does, or not sooner. Copper alone takes up heat, and loses it as its ampacity says:
//   t = -tau ln(1 - (T_end - T_start) / (T_inf - T_start))
//   T_inf = T_air + g (T_ins - T_air) (I / I_z)^2, g the resistance at T_end over that at T_ins
//   tau = k^2 S^2 g (T_ins - T_air) / (I_z^2 (T_end - T_start))
// which is the adiabatic k^2 S^2 / I^2 of large currents, and never shorter. Sources: kAdiabatic,
// kCableHeating.
double lead_withstand_s(const ProtectedLead& lead, double current_A);

// Holds everything above against its limit. A lithium bank's own electronics get no credit.
//
// Opening times are straight lines between the bends of the curves, both scales logarithmic; the
// worst current of a range is looked for at its ends, at bends, where two devices' curves cross,
// and at steps between.
//
// Sources: IEC 60949 (kAdiabatic), 33 CFR 183.455 and ABYC E-11 as published, classes of
// data/device_curves.h. Left out: the arc's energy, inductance, a fault's own resistance (only
// bolted ones are held to trip). Precondition: ratings, areas, capacity > 0.
ProtectionResult protection(const ProtectionInput& in);

}  // namespace thole
