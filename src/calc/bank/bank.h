#pragma once

// The bank: which blocks, how many, how long they last, what their volts do.

#include <vector>

#include "base/trace.h"
#include "calc/bank/run_blocks.h"
#include "calc/bank/thresholds.h"
#include "data/parts.h"

namespace thole {

struct BankInput {
  double motor_nominal_V = 0.0;        // > 0
  double motor_minimum_V = 0.0;        // at its plug, at full thrust
  double motor_maximum_V = 0.0;        // highest charge voltage it accepts
  double energy_Wh = 0.0;              // of the day, at the motor
  double holding_h = 0.0;              // of the day
  double hours_on_h = 0.0;             // the motor runs in the day, holding included
  double mean_power_W = 0.0;           // over the hours that it runs
  double full_power_W = 0.0;           // at full thrust
  std::vector<BatteryBlock> blocks{};  // to choose from; one when it is given
  std::vector<int> room_counts{};      // of each of them, how many there is room for; empty: any
  int series_count = 0;                // 0: choose
  int parallel_count = 0;              // 0: choose
  double peukert_exponent = 0.0;       // 0: from the label, else by chemistry
  double depth_of_discharge_frac = 0.5;
  double age_factor = 1.25;     // >= 1
  double margin_factor = 1.10;  // >= 1
  double temperature_C = 10.0;
  double feeder_drop_frac = 0.03;  // share of the bank's volts that the feeder may lose
  double days_out_count = 40.0;    // in a year
  // The blocks in the boat where they were named one by one; `blocks` is then the weakest of them.
  std::vector<RunString> fitted{};
  std::vector<FittedBlock> fitted_blocks{};
};

// What is left over the day.
struct DayPoint {
  double time_h = 0.0;
  double left_Wh = 0.0;
};

struct BankResult {
  bool found = false;  // a block could be chosen; whether it serves is for the checks to say
  BatteryBlock block{};
  int series_count = 0;
  int parallel_count = 0;
  int block_count = 0;
  double nominal_V = 0.0;
  double capacity_Ah = 0.0;           // installed, by the label
  double capacity_required_Ah = 0.0;  // on the same terms
  double energy_Wh = 0.0;             // by the label
  double usable_Wh = 0.0;             // at the mean load, cold, aged, to the allowed depth
  double endurance_h = 0.0;           // at the mean load
  double endurance_full_h = 0.0;      // at full thrust
  double mean_A = 0.0;
  double peak_A = 0.0;           // full thrust at the end of the allowed discharge
  double used_Ah = 0.0;          // over the day
  double depth_used_frac = 0.0;  // of the label's capacity
  double open_circuit_full_V = 0.0;
  double open_circuit_end_V = 0.0;   // at the allowed depth
  double resistance_full_ohm = 0.0;  // new, warm, charged; jumpers not included
  double resistance_end_ohm = 0.0;   // aged, cold, at the allowed depth
  double terminal_end_V = 0.0;       // at peak_A
  double charge_V = 0.0;             // highest, at the bank's temperature
  double mass_kg = 0.0;
  double cycles_count = 0.0;  // days like this one until 80 % of the capacity is left
  double years_count = 0.0;   // those days at so many a year, or the calendar's years when fewer
  std::vector<RunString> strings{};  // block by block: as named, else all alike
  std::vector<DayPoint> day{};
  std::vector<Change> ways_out{};  // what was fixed and Thole could choose; the other chemistry
  Trace trace{};
};

// Chooses the lightest bank that passes every check (equal mass: the cheaper), from blocks that are
// offered, in series as the motor's volts ask and up to four strings; when none passes, the one
// that comes closest, and its checks say where it falls short. With nothing on offer `found` is
// false.
//
//   C_need = E_day / V * f_T * f_age * f_margin / DoD, brought to the label's hours by Peukert's
//   law
//
// Sources: IEEE 485 (method, temperature factors, ageing), Peukert's law with rated hours, the
// kinetic battery model for full thrust at the end of the day; open data for volts and resistance.
// Left out: self-discharge, spread between blocks, the heat that a load makes.
// Precondition: values in the ranges of job/fields.cpp; blocks of the chemistry asked for.
BankResult bank(const BankInput& in);

}  // namespace thole
