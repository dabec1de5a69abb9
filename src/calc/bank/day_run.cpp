#include "calc/bank/day_run.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "calc/bank/capacity.h"
#include "calc/circuit.h"
#include "data/batteries.h"

namespace thole {
namespace {

constexpr double kSeconds_per_h = 3600.0;
constexpr double kLeastResistance_ohm = 1e-9;  // keeps the circuit solvable
constexpr double kFull_frac = 1.0 - 1e-9;      // rounding aside

}  // namespace

RunString alike_string(const BatteryBlock& block, std::size_t series_count, int count,
                       double age_factor) {
  return {std::vector<RunBlock>(series_count, RunBlock{.block = block, .age_factor = age_factor}),
          count};
}

std::string_view word(CutOff cut_off) {
  switch (cut_off) {
    case CutOff::none:
      return "nothing cuts off";
    case CutOff::block_empty:
      return "a block is empty";
    case CutOff::block_floor:
      return "a block is below its lowest volts";
    case CutOff::motor_minimum:
      return "too few volts at the motor's plug";
    case CutOff::current_limit:
      return "more current than a lithium block's electronics allow";
    case CutOff::no_such_power:
      return "more power than bank and feeder can carry";
  }
  return "";
}

BankRun::Block::Block(const RunBlock& from, double temperature_C)
    : model(kinetic_model(from.block.chemistry, {from.block.capacity_Ah, from.block.rated_hours_h},
                          from.block.reserve_capacity_min)),
      curve(from.block.chemistry),
      twelves_count(named_V(from.block.chemistry, from.block.nominal_V) / 12.0),
      floor_V(facts_of(from.block.chemistry).floor_cell_V *
              cell_count(from.block.chemistry, from.block.nominal_V)),
      continuous_A(from.block.continuous_A),
      lead(is_lead(from.block.chemistry)) {
  const double capacity_frac =
      from.condition.capacity_frac /
      (temperature_factor(from.block.chemistry, temperature_C) * from.age_factor);
  label_Ah = from.block.capacity_Ah * capacity_frac;
  charged_ohm = thole::charged_ohm(from.block) * from.condition.resistance_factor *
                resistance_growth(from.block.chemistry, temperature_C, from.age_factor);
  model.capacity_Ah *= capacity_frac;
  state = full_state(model);
  // What is missing in the morning is missing from both wells: they have had the night to level.
  const double left_frac =
      1.0 - (1.0 - from.condition.charge_frac) * label_Ah / model.capacity_Ah;
  state.available_Ah *= left_frac;
  state.bound_Ah *= left_frac;
}

void BankRun::Block::read() {
  const double drawn_Ah = model.capacity_Ah - state.available_Ah - state.bound_Ah;
  charge_frac = std::clamp(1.0 - drawn_Ah / label_Ah, 0.0, 1.0);
  curve.to(charge_frac);
  rest_V = twelves_count * curve.rest_V();
  ohm = charged_ohm * curve.rest_ratio();
}

// The well that charge comes into first holds no more.
bool BankRun::Block::full() const {
  return state.available_Ah >= kFull_frac * model.available_frac * model.capacity_Ah;
}

KineticState BankRun::Stride::after(const KineticModel& model, const KineticState& state,
                                    double current_A) const {
  const double k = rate_frac_per_h;
  const double c = model.available_frac;
  const double e = stays_ratio;
  const double g = levels_ratio;
  const double q0_Ah = state.available_Ah + state.bound_Ah;
  const double available_Ah = state.available_Ah * e +
                              (q0_Ah * k * c - current_A) * (1.0 - e) / k - current_A * c * g / k;
  // The rest of what is left: so that no charge is made or lost by rounding.
  return {available_Ah, q0_Ah - current_A * time_h - available_Ah};
}

BankRun::BankRun(const BankRunInput& in, double moment_s)
    : feeder_ohm_(in.feeder_ohm),
      minimum_V_(in.minimum_V),
      temperature_C_(in.temperature_C),
      moment_s_(moment_s) {
  for (const RunString& from : in.strings) {
    if (from.blocks.empty() || from.count < 1) continue;
    String string{.first = blocks_.size(), .count = static_cast<double>(from.count)};
    for (const RunBlock& block : from.blocks) {
      blocks_.emplace_back(block, in.temperature_C);
      const Block& added = blocks_.back();
      const double rate = added.model.rate_frac_per_h;
      if (std::none_of(strides_.begin(), strides_.end(),
                       [&](const Stride& it) { return it.rate_frac_per_h == rate; })) {
        strides_.push_back({.rate_frac_per_h = rate});
      }
      if (!added.lead && added.continuous_A > 0.0 &&
          (string.limit_A == 0.0 || added.continuous_A < string.limit_A)) {
        string.limit_A = added.continuous_A;
      }
    }
    string.end = blocks_.size();
    strings_.push_back(string);
  }
  if (strings_.empty()) return;
  read();
  result_.lowest_plug_V = solve(0.0).plug_V;
  stretch_V_ = result_.lowest_plug_V;
  stretch_bank_V_ = result_.lowest_plug_V;
}

// Volts and resistance of all strings at their present charge.
void BankRun::read() {
  for (String& string : strings_) {
    string.sum_V = 0.0;
    string.sum_ohm = 0.0;
    for (std::size_t i = string.first; i < string.end; ++i) {
      blocks_[i].read();
      string.sum_V += blocks_[i].rest_V;
      string.sum_ohm += blocks_[i].ohm;
    }
    string.sum_ohm = std::max(string.sum_ohm, kLeastResistance_ohm);
  }
}

void BankRun::set_strides(double step_h) {
  for (Stride& stride : strides_) {
    if (stride.time_h == step_h) continue;
    const double kt = stride.rate_frac_per_h * step_h;
    stride.time_h = step_h;
    stride.stays_ratio = std::exp(-kt);
    stride.levels_ratio = kt + std::expm1(-kt);
  }
}

const BankRun::Stride& BankRun::stride_of(const Block& block) const {
  std::size_t i = 0;
  while (i + 1 < strides_.size() && strides_[i].rate_frac_per_h != block.model.rate_frac_per_h) ++i;
  return strides_[i];
}

bool BankRun::may_charge(const String& string) const {
  return std::none_of(blocks_.begin() + static_cast<std::ptrdiff_t>(string.first),
                      blocks_.begin() + static_cast<std::ptrdiff_t>(string.end),
                      [&](const Block& block) {
                        return block.full() || (!block.lead && temperature_C_ < kNoCharge_C);
                      });
}

// The load shared by the strings that take part.
BankRun::Circuit BankRun::shared(double power_W) {
  double sum_per_ohm = 0.0;
  double sum_A = 0.0;  // into a short circuit
  for (const String& string : strings_) {
    if (string.open || string.idle) continue;
    sum_per_ohm += string.count / string.sum_ohm;
    sum_A += string.count * string.sum_V / string.sum_ohm;
  }
  const OperatingPoint point =
      constant_power(sum_A / sum_per_ohm, 1.0 / sum_per_ohm + feeder_ohm_, power_W);
  const Circuit circuit{point.current_A, point.load_V + point.current_A * feeder_ohm_, point.load_V,
                        point.solvable};
  for (String& string : strings_) {
    const bool takes_part = !string.open && !string.idle;
    string.current_A = takes_part ? (string.sum_V - circuit.bank_V) / string.sum_ohm : 0.0;
  }
  return circuit;
}

// ... of which those stand idle that would be charged and may not be.
BankRun::Circuit BankRun::solve(double power_W) {
  for (String& string : strings_) string.idle = false;
  for (;;) {
    const Circuit circuit = shared(power_W);
    bool again = false;
    if (strings_.size() > 1) {
      for (String& string : strings_) {
        constexpr double kLeast_A = 1e-9;
        if (string.current_A > -kLeast_A || may_charge(string)) continue;
        string.idle = true;
        again = true;
      }
    }
    if (!again) return circuit;
  }
}

void BankRun::overload(String& string, double step_s) const {
  if (!(string.limit_A > 0.0)) return;
  string.over_s = string.current_A > string.limit_A
                      ? string.over_s + step_s
                      : std::max(0.0, string.over_s - step_s / kBurstRest_factor);
}

// What a string cannot do in this step, and which of its blocks.
CutOff BankRun::why_open(String& string, std::size_t& block) {
  CutOff why = CutOff::none;
  block = 0;
  for (std::size_t i = string.first; i < string.end; ++i) {
    Block& at = blocks_[i];
    at.next = stride_of(at).after(at.model, at.state, string.current_A);
    if (why != CutOff::none) continue;
    if (at.next.available_Ah < 0.0) {
      why = CutOff::block_empty;
    } else if (at.under_V(string.current_A) < at.floor_V) {
      why = CutOff::block_floor;
    } else {
      continue;
    }
    block = i - string.first;
  }
  const bool over = string.current_A > string.limit_A;
  if (string.limit_A > 0.0 && over &&
      (string.current_A > kBurst_factor * string.limit_A || string.over_s > kBurst_s)) {
    why = CutOff::current_limit;
    block = 0;
    while (blocks_[string.first + block].lead ||
           blocks_[string.first + block].continuous_A != string.limit_A) {
      ++block;  // there is one: the limit is its own
    }
  }
  return why;
}

void BankRun::cut(CutOff why, BlockPlace place) {
  result_.cut_off = why;
  result_.cut_off_block = place;
}

// Electronics that open leave the load to the other strings, whose turn it may be next; a lead-acid
// block that is driven backwards ends the run, and so does the last string.
void BankRun::open_what_must(Circuit& circuit, const PowerStep& step) {
  const double now_h = time_s_ / kSeconds_per_h;
  for (;;) {
    if (!circuit.solvable) return cut(CutOff::no_such_power);
    if (circuit.plug_V < minimum_V_) return cut(CutOff::motor_minimum);
    std::vector<StringOpening> opened;
    for (std::size_t s = 0; s < strings_.size(); ++s) {
      String& string = strings_[s];
      if (string.open) continue;
      BlockPlace place{s, 0};
      const CutOff why = why_open(string, place.block);
      if (why == CutOff::none) continue;
      if (blocks_[string.first + place.block].lead) return cut(why, place);
      string.open = true;
      opened.push_back({now_h, place, why});
    }
    if (opened.empty()) return;
    if (std::all_of(strings_.begin(), strings_.end(), [](const String& it) { return it.open; })) {
      return cut(opened.front().why, opened.front().place);
    }
    result_.openings.insert(result_.openings.end(), opened.begin(), opened.end());
    circuit = solve(step.power_W);
  }
}

void BankRun::note(double power_W, const Circuit& circuit, BankRunResult& into) const {
  BankMoment at{.time_h = time_s_ / kSeconds_per_h,
                .power_W = power_W,
                .current_A = circuit.current_A,
                .bank_V = circuit.bank_V,
                .plug_V = circuit.plug_V,
                .charge_frac = 1.0,
                .lowest_plug_V = std::min(stretch_V_, circuit.plug_V),
                .lowest_bank_V = std::min(stretch_bank_V_, circuit.bank_V)};
  const double stretch_h = (time_s_ - before_s_) / kSeconds_per_h;
  at.mean_W = stretch_h > 0.0 ? (result_.load_Wh - before_Wh_) / stretch_h : power_W;
  at.mean_A = stretch_h > 0.0 ? (result_.charge_Ah - before_Ah_) / stretch_h : circuit.current_A;
  for (const String& string : strings_) {
    at.string_A.push_back(string.current_A);
    for (std::size_t i = string.first; i < string.end; ++i) {
      at.block_V.push_back(blocks_[i].under_V(string.current_A));
      at.block_charge_frac.push_back(blocks_[i].charge_frac);
      at.charge_frac = std::min(at.charge_frac, blocks_[i].charge_frac);
    }
  }
  into.moments.push_back(std::move(at));
}

bool BankRun::take(const PowerStep& step) {
  if (!runs()) return false;
  read();
  const double step_h = step.time_s / kSeconds_per_h;
  set_strides(step_h);
  Circuit circuit = solve(step.power_W);
  for (String& string : strings_) overload(string, step.time_s);
  open_what_must(circuit, step);
  result_.lowest_plug_V = std::min(result_.lowest_plug_V, circuit.plug_V);
  stretch_V_ = std::min(stretch_V_, circuit.plug_V);
  stretch_bank_V_ = std::min(stretch_bank_V_, circuit.bank_V);
  const bool ends = result_.cut_off != CutOff::none;
  if (ends || time_s_ >= next_moment_s_) {
    note(step.power_W, circuit, result_);
    next_moment_s_ += moment_s_;
    before_s_ = time_s_;
    before_Ah_ = result_.charge_Ah;
    before_Wh_ = result_.load_Wh;
    stretch_V_ = circuit.plug_V;
    stretch_bank_V_ = circuit.bank_V;
  }
  result_.cut_off_h = time_s_ / kSeconds_per_h;
  if (ends) return false;
  bool over = false;
  for (const String& string : strings_) {
    over = over || (string.limit_A > 0.0 && string.current_A > string.limit_A);
    for (std::size_t i = string.first; i < string.end; ++i) {
      Block& at = blocks_[i];
      at.state = string.open ? stride_of(at).after(at.model, at.state, 0.0) : at.next;
    }
    result_.block_loss_Wh +=
        string.count * string.current_A * string.current_A * string.sum_ohm * step_h;
    result_.rest_Wh += string.count * string.sum_V * string.current_A * step_h;
    result_.crossed_Ah += string.count * std::max(0.0, -string.current_A) * step_h;
  }
  time_s_ += step.time_s;
  result_.cut_off_h = time_s_ / kSeconds_per_h;
  result_.charge_Ah += circuit.current_A * step_h;
  result_.load_Wh += step.power_W * step_h;
  result_.feeder_loss_Wh += circuit.current_A * circuit.current_A * feeder_ohm_ * step_h;
  if (over) result_.over_limit_s += step.time_s;
  return true;
}

bool BankRun::take(std::span<const PowerStep> steps) {
  for (const PowerStep& step : steps) {
    if (!take(step)) return false;
  }
  return runs();
}

BankRunResult BankRun::result() const {
  if (!runs()) return result_;
  BankRun evening = *this;
  evening.read();
  const Circuit at_rest = evening.solve(0.0);
  evening.note(0.0, at_rest, evening.result_);
  return evening.result_;
}

BankRunResult run_bank(const BankRunInput& in, const std::vector<PowerStep>& steps,
                       double moment_s) {
  BankRun run(in, moment_s);
  run.take(steps);
  return run.result();
}

}  // namespace thole
