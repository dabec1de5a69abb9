#pragma once

// A day of the bank in steps: each block with its own wells, volts, resistance and cut-off, one
// current through all blocks of a string, strings that share by their own volts and resistance, a
// motor that takes what power it needs.

#include <cstddef>
#include <span>
#include <string_view>
#include <vector>

#include "calc/block_volts.h"
#include "calc/bank/kinetic.h"
#include "calc/bank/run_blocks.h"

namespace thole {

// So long at this power at the motor's plug.
struct PowerStep {
  double power_W = 0.0;  // >= 0
  double time_s = 1.0;   // > 0
};

struct BankRunInput {
  std::vector<RunString> strings{};  // in parallel; none, or one without blocks: nothing runs
  double temperature_C = 25.0;
  double feeder_ohm = 0.0;  // bank's posts to plug, out and back
  double minimum_V = 0.0;   // at the plug; below it the motor cuts off
};

enum class CutOff { none, block_empty, block_floor, motor_minimum, current_limit, no_such_power };
std::string_view word(CutOff cut_off);

// Electronics of a lithium block: over their continuous limit they carry up to twice of it for ten
// seconds, and want ten times as long below it before the next. kCommonPractice, labels differ.
inline constexpr double kBurst_factor = 2.0;
inline constexpr double kBurst_s = 10.0;
inline constexpr double kBurstRest_factor = 10.0;

// Lithium electronics let no charge in below this. kCommonPractice.
inline constexpr double kNoCharge_C = 0.0;

// A string whose electronics opened while others carried on.
struct StringOpening {
  double time_h = 0.0;
  BlockPlace place{};
  CutOff why = CutOff::none;
};

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
  double lowest_bank_V = 0.0;
  std::vector<double> string_A{};  // of each string alone, discharge positive
  std::vector<double> block_V{};   // string after string
  std::vector<double> block_charge_frac{};
};

struct BankRunResult {
  CutOff cut_off = CutOff::none;
  double cut_off_h = 0.0;     // when; the run's length when nothing cuts it off
  BlockPlace cut_off_block{};  // of block_empty, block_floor and current_limit
  std::vector<StringOpening> openings{};
  double charge_Ah = 0.0;  // drawn from the bank
  double load_Wh = 0.0;    // at the plug
  double feeder_loss_Wh = 0.0;
  double block_loss_Wh = 0.0;  // in the blocks' resistance
  double rest_Wh = 0.0;        // volts at rest times charge: load and losses add up to it
  double crossed_Ah = 0.0;     // that one string put into another
  double over_limit_s = 0.0;   // time with a lithium block over its continuous limit
  double lowest_plug_V = 0.0;
  std::vector<BankMoment> moments{};  // at the start of each stretch of `moment_s`, and the end
};

// A run in slices. The volts are those at the start of a step; within it the currents are steady.
//
//   E_s = sum of V_rest(q),  R_s = sum of R(q) in each string,
//   G = sum of 1/R_s,  E = (sum of E_s/R_s) / G,
//   V = (E + sqrt(E^2 - 4 P (1/G + R_f))) / 2,  I = P / V,  I_s = (E_s - (V + I R_f)) / R_s
//
// and for each block the kinetic battery model (kinetic.h) with I_s. A block's charge, for volts and
// resistance, is what is left of its label's capacity.
// What ends the run: a lead-acid block whose available well runs dry or which falls below 1.75 V a
// cell (its fellows would drive it backwards); the last string of lithium blocks whose electronics
// open (2.5 V a cell, a well run dry, too much current); the plug below what the motor needs; more
// power than the circuit can carry. A string opened by its electronics leaves the load to the
// others. A string takes no charge from another when one of its blocks is full, or is lithium and
// below 0 C: it then stands idle.
// Sources: Manwell and McGowan 1993; Ohm and Kirchhoff. Left out: the slow rise of volts after a
// burst apart from the wells' own, self-discharge, the heat that a load makes, charge lost as gas.
class BankRun {
 public:
  BankRun(const BankRunInput& in, double moment_s);

  // Takes the steps in their order; false once something has cut off, and from then on.
  bool take(std::span<const PowerStep> steps);

  bool runs() const { return !strings_.empty() && result_.cut_off == CutOff::none; }

  // What has been up to now; the evening at rest is its last moment.
  BankRunResult result() const;

 private:
  struct Block {
    KineticModel model{};
    KineticState state{};
    RestCursor curve;
    double label_Ah = 0.0;  // what its charge is counted by: cold, aged, its own share
    double charged_ohm = 0.0;
    double twelves_count = 1.0;
    double floor_V = 0.0;
    double continuous_A = 0.0;
    bool lead = true;
    double charge_frac = 0.0;  // now
    double rest_V = 0.0;
    double ohm = 0.0;
    KineticState next{};  // after the step, when nothing cuts off

    Block(const RunBlock& from, double temperature_C);
    void read();
    bool full() const;
    double under_V(double current_A) const { return rest_V - current_A * ohm; }
  };
  struct String {
    std::size_t first = 0;  // of its blocks
    std::size_t end = 0;
    double count = 1.0;
    bool open = false;   // for good
    bool idle = false;   // in this step
    double limit_A = 0.0;  // continuous, of its weakest electronics; 0: none
    double over_s = 0.0;   // how much of its burst is used up
    double sum_V = 0.0;
    double sum_ohm = 0.0;
    double current_A = 0.0;
  };
  // The kinetic model over a step of one length, with its exponentials taken once.
  struct Stride {
    double rate_frac_per_h = 0.0;
    double time_h = 0.0;
    double stays_ratio = 1.0;  // e^-kt
    double levels_ratio = 0.0;  // kt - 1 + e^-kt

    KineticState after(const KineticModel& model, const KineticState& state,
                       double current_A) const;
  };
  struct Circuit {
    double current_A = 0.0;
    double bank_V = 0.0;
    double plug_V = 0.0;
    bool solvable = true;
  };

  void read();
  void set_strides(double step_h);
  const Stride& stride_of(const Block& block) const;
  bool may_charge(const String& string) const;
  Circuit shared(double power_W);
  Circuit solve(double power_W);
  void overload(String& string, double step_s) const;
  CutOff why_open(String& string, std::size_t& block);
  void cut(CutOff why, BlockPlace place = {});
  void open_what_must(Circuit& circuit, const PowerStep& step);
  void note(double power_W, const Circuit& circuit, BankRunResult& into) const;
  bool take(const PowerStep& step);

  double feeder_ohm_ = 0.0;
  double minimum_V_ = 0.0;
  double temperature_C_ = 25.0;
  double moment_s_ = 3600.0;
  std::vector<Block> blocks_{};
  std::vector<String> strings_{};
  std::vector<Stride> strides_{};  // one to a rate
  BankRunResult result_{};
  double time_s_ = 0.0;
  double next_moment_s_ = 0.0;
  double before_s_ = 0.0;  // at the moment before, and what had gone by then
  double before_Ah_ = 0.0;
  double before_Wh_ = 0.0;
  double stretch_V_ = 0.0;  // lowest since the moment before, at the plug and at the posts
  double stretch_bank_V_ = 0.0;
};

// The steps in one go.
BankRunResult run_bank(const BankRunInput& in, const std::vector<PowerStep>& steps,
                       double moment_s);

}  // namespace thole
