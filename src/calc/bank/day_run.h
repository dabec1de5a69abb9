#pragma once

// A day of the bank in steps: each block of a string with its own wells, volts and resistance, one
// current through all of them, a motor that takes what power it needs.

#include <cstddef>
#include <string_view>
#include <vector>

#include "data/parts.h"

namespace thole {

// What sets one block of the string apart. A block as its label says: all ones.
struct BlockCondition {
  double capacity_frac = 1.0;      // of the aged, cold capacity of its fellows, > 0
  double charge_frac = 1.0;        // when the day starts, 0 .. 1
  double resistance_factor = 1.0;  // over its fellows' resistance, > 0
};

// So long at this power at the motor's plug.
struct PowerStep {
  double power_W = 0.0;  // >= 0
  double time_s = 1.0;   // > 0
};

struct BankRunInput {
  BatteryBlock block{};
  int parallel_count = 1;                    // strings, all alike; > 0
  std::vector<BlockCondition> conditions{};  // one to a block of the string, the positive end first
  double temperature_C = 25.0;
  double age_factor = 1.0;  // >= 1
  double feeder_ohm = 0.0;  // bank's posts to plug, out and back
  double minimum_V = 0.0;   // at the plug; below it the motor cuts off
};

enum class CutOff { none, block_empty, block_floor, motor_minimum, current_limit, no_such_power };
std::string_view word(CutOff cut_off);

// The bank as it stands at a moment, and what went since the moment before.
struct BankMoment {
  double time_h = 0.0;
  double power_W = 0.0;    // at the plug
  double current_A = 0.0;  // of the whole bank
  double bank_V = 0.0;     // at its posts
  double plug_V = 0.0;
  double charge_frac = 0.0;  // of the block that has least, by its own capacity
  double mean_W = 0.0;       // at the plug, since the moment before
  double mean_A = 0.0;
  double lowest_plug_V = 0.0;
  std::vector<double> block_V{};
  std::vector<double> block_charge_frac{};
};

struct BankRunResult {
  CutOff cut_off = CutOff::none;
  double cut_off_h = 0.0;         // when; the run's length when nothing cuts it off
  std::size_t cut_off_block = 0;  // from 0; of block_empty and block_floor
  double charge_Ah = 0.0;         // drawn from the bank
  double load_Wh = 0.0;           // at the plug
  double feeder_loss_Wh = 0.0;
  double block_loss_Wh = 0.0;  // in the blocks' resistance
  double rest_Wh = 0.0;        // volts at rest times charge: load and losses add up to it
  double lowest_plug_V = 0.0;
  std::vector<BankMoment> moments{};  // at the start of each stretch of `moment_s`, and the end
};

// Runs the steps in their order until they end or something cuts off. The volts are those at the
// start of a step; within it the current is steady.
//
//   E = sum of V_rest(q),  R = sum of R(q),  V = (E + sqrt(E^2 - 4 P (R + R_f))) / 2,  I = P / V
//
// and for each block the kinetic battery model (kinetic.h) with I over the count of strings. A
// block's charge, for volts and resistance, is what is left of its label's capacity.
// What cuts off: an available well that runs dry; a block below the floor of its kind (1.75 V to a
// lead-acid cell, 2.5 V to a lithium one); the plug below what the motor needs; a lithium block's
// current limit; more power than the circuit can carry.
// Left out: the slow rise of volts after a burst apart from the wells' own, self-discharge, the
// heat that a load makes, currents between unlike strings.
BankRunResult run_bank(const BankRunInput& in, const std::vector<PowerStep>& steps,
                       double moment_s);

}  // namespace thole
