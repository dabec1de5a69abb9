#pragma once

// The feeder: which cable, tail and protective device carry the motor's current from bank to bow,
// and what volts arrive.

#include <optional>
#include <string>
#include <vector>

#include "base/trace.h"
#include "calc/fault_range.h"
#include "data/parts.h"

namespace thole {

// A place to put a meter's probe; volts against the bank's negative post, full thrust, end of
// discharge.
struct FeederNode {
  std::string id{};  // "bank_positive", "device_positive", "bow_positive", "motor_positive" ...
  std::string label{};
  double voltage_V = 0.0;
  double distance_m = 0.0;  // from the bank along the cable
  bool positive = true;
};

// One cable of a circuit that was typed piece by piece, and what flows in it.
struct CircuitCable {
  std::string label{};      // "4 AWG 5 m"
  std::string conductor{};  // "4 AWG"
  double length_m = 0.0;
  std::optional<double> ambient_C{};  // its own, if it has one
  std::optional<int> bundled_count{};
  double current_A = 0.0;
  std::size_t branch = 0;  // of the circuit
};

// Such a circuit at full thrust and the end of discharge, solved. It stands in for run, tail and jumpers.
struct SolvedCircuit {
  std::vector<CircuitCable> cables{};  // one or more
  std::vector<FeederNode> nodes{};     // along the current, those with a name
  double current_A = 0.0;              // the motor's
  double plus_V = 0.0;                 // lost from the bank's plus to the motor
  double minus_V = 0.0;                // ... and from the motor to the bank's minus
  double bank_V = 0.0;                 // at its posts
  double motor_full_V = 0.0;
  double limit_W = 0.0;  // most that the motor can be given
  double loss_W = 0.0;
  double joint_W = 0.0;         // in the worst lug or plug
  std::string most_lost{};      // the piece that loses most
  std::string limiting{};       // the piece that bounds the power most; "": none
  std::string worst_joint{};    // "": it has none
  int device_count = 0;         // of the device on offer, in the motor's way
  double device_A = 0.0;        // through it; more than the motor's where other loads hang behind it
};

struct FeederInput {
  double nominal_V = 0.0;            // of the bank; 0: there is no bank
  double open_circuit_full_V = 0.0;  // charged
  double open_circuit_end_V = 0.0;   // end of the allowed discharge
  double resistance_full_ohm = 0.0;  // bank without jumpers: new, warm, charged
  double resistance_end_ohm = 0.0;   // aged, cold, end of the allowed discharge
  double charge_V = 0.0;             // highest
  BankEnd strongest{};               // as a short circuit sees the bank at its best ...
  BankEnd weakest{};                 // ... and at its worst, both without jumpers
  int series_count = 1;
  int parallel_count = 1;
  double power_full_W = 0.0;         // at the motor, full thrust
  double motor_minimum_V = 0.0;      // at its plug
  double assumed_sag_factor = 0.95;  // share of thrust that the hold stage counted on
  double run_m = 0.0;                // one way, bank to the stud at the bow; > 0
  double tail_m = 0.0;               // one way, stud to plug; 0: the run ends in the plug
  double jumper_m = 0.0;             // each, between blocks
  double allowed_drop_frac = 0.03;   // of nominal volts
  double ambient_C = 30.0;
  double coldest_C = 25.0;  // of the devices
  bool engine_space = false;
  int bundled_count = 2;           // loaded conductors together, the motor's pair included
  double device_distance_m = 0.0;  // along the conductor, battery post to device
  bool sheathed = true;            // up to the device
  bool floating = true;            // negative not tied to the boat
  bool petrol = true;
  double lug_ohm = 1e-4;             // each lug with its stud
  double plug_ohm = 5e-4;            // each pole of the plug
  double pair_spacing_m = 0.02;      // between the two conductors' middles; > 0
  double horizontal_T = 20e-6;       // level part of the earth's field; > 0
  double heading_limit_deg = 2.0;    // heading error allowed; > 0, < 90
  std::vector<CableOffer> cables{};  // to choose from; one when it is given
  std::vector<CableOffer> tail_cables{};
  std::vector<ProtectiveDevice> devices{};
  std::optional<SolvedCircuit> circuit{};  // then one cable and one tail are on offer, and its device if it has one
};

// What lies between two neighbouring nodes (the motor excepted), joints included.
struct FeederSegment {
  std::string id{};  // "protection_positive", "run_positive", "tail_positive", "tail_negative" ...
  std::string label{};
  std::string conductor{};
  double length_m = 0.0;
  double resistance_ohm = 0.0;  // at temperature_C
  double drop_V = 0.0;
  double loss_W = 0.0;
  double temperature_C = 0.0;
};

// One of a typed circuit's cables, judged.
struct CarriedCable {
  CircuitCable cable{};
  double ampacity_A = 0.0;  // with its factors
  double temperature_C = 0.0;
  double ambient_C = 0.0;
};

struct FeederResult {
  bool found =
      false;  // cable, tail and device could be chosen; whether they serve is for the checks
  CableOffer cable{};
  CableOffer tail_cable{};  // empty id: no tail
  std::string conductor{};  // "4 AWG"
  std::string tail_conductor{};
  ProtectiveDevice device{};
  int device_count = 0;
  double current_A = 0.0;          // full thrust, end of discharge
  double current_nominal_A = 0.0;  // full thrust, nominal volts at the motor
  double drop_V = 0.0;             // cable, joints and device, out and back, without the bank
  double drop_frac = 0.0;          // of nominal volts
  double motor_V = 0.0;            // full thrust, end of discharge
  double motor_full_V = 0.0;       // full thrust, charged
  double loss_W = 0.0;
  double conductor_C = 0.0;       // of the run
  double tail_conductor_C = 0.0;  // 0: no tail
  double run_ampacity_A = 0.0;   // with its factors
  double tail_ampacity_A = 0.0;  // 0: no tail
  double jumpers_ohm = 0.0;      // all between blocks, 20 C
  double device_min_A = 0.0;
  double device_max_A = 0.0;
  double cable_m = 0.0;                   // of single conductor: out, back and jumpers
  double tail_cable_m = 0.0;              // of single conductor: out and back
  int lug_count = 0;                      // jumpers included
  std::vector<FeederNode> nodes{};        // along the current, positive post to negative post
  std::vector<FeederSegment> segments{};  // likewise
  std::vector<CarriedCable> carried{};    // of a typed circuit, the one that is nearest to its limit first
  Trace trace{};
};

// Between blocks in series, and from string to string at both poles.
constexpr int jumper_count(int series_count, int parallel_count) {
  const int strings = parallel_count > 1 ? parallel_count : 1;
  return ((series_count > 1 ? series_count : 1) - 1) * strings + 2 * (strings - 1);
}

// Chooses the run and tail of least copper, and the smallest device, that serve together: ampacity
// with its factors, allowed drop, a rating between the motor's current and the conductors', a device
// that breaks the strongest short circuit and clears every one before a conductor overheats (whether
// it truly does is for calc/protection). When nothing serves, what comes closest; the
// checks say where it falls short. Jumpers are of the run's cable.
//
// bank (E, R_b, jumpers) - lug - device - lug - run - stud - tail - plug - motor, and back alike; a
// bank that floats has a device in the negative too. Tinned copper at the temperature of its own
// load; a motor of constant power, at full thrust at the end of the allowed discharge.
//
// Sources: 33 CFR 183.425-455, ABYC E-11 and ISO 10133 as published, IEC 60949, circuit laws. Left
// out: battery switches, inductance, the electronics' own cut-off inside lithium blocks.
// Precondition: values in the ranges of job/fields.cpp.
FeederResult feeder(const FeederInput& in);

}  // namespace thole
