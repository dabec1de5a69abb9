#include "calc/bank/day_run.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "calc/block_volts.h"
#include "calc/bank/capacity.h"
#include "calc/bank/kinetic.h"
#include "calc/circuit.h"
#include "data/batteries.h"

namespace thole {
namespace {

constexpr double kSeconds_per_h = 3600.0;
constexpr double kLeadFloor_cell_V = 1.75;     // SAE J537, end point of a discharge
constexpr double kLithiumFloor_cell_V = 2.5;   // kCommonPractice: the electronics open
constexpr double kLeastResistance_ohm = 1e-9;  // keeps the circuit solvable

struct Wells {
  KineticModel model{};
  KineticState state{};
  double label_Ah = 0.0;  // what its charge is counted by: cold, aged, its own share
  double resistance_ohm = 0.0;
};

// The kinetic model over a step of one length, with its exponentials taken once.
struct Stride {
  double rate_frac_per_h = 0.0;
  double time_h = 0.0;
  double e = 0.0;
  double g = 0.0;

  Stride(double rate, double step_h)
      : rate_frac_per_h(rate),
        time_h(step_h),
        e(std::exp(-rate * step_h)),
        g(rate * step_h + std::expm1(-rate * step_h)) {}

  KineticState after(const Wells& wells, double current_A) const {
    const double k = rate_frac_per_h;
    const double c = wells.model.available_frac;
    const double q0_Ah = wells.state.available_Ah + wells.state.bound_Ah;
    const double available_Ah = wells.state.available_Ah * e +
                                (q0_Ah * k * c - current_A) * (1.0 - e) / k - current_A * c * g / k;
    // The rest of what is left: so that no charge is made or lost by rounding.
    return {available_Ah, q0_Ah - current_A * time_h - available_Ah};
  }
};

double charge_of(const Wells& wells) {
  const double drawn_Ah = wells.model.capacity_Ah - wells.state.available_Ah - wells.state.bound_Ah;
  return std::clamp(1.0 - drawn_Ah / wells.label_Ah, 0.0, 1.0);
}

Wells wells_of(const BankRunInput& in, const BlockCondition& condition) {
  const BatteryBlock& block = in.block;
  const double capacity_frac =
      condition.capacity_frac /
      (temperature_factor(block.chemistry, in.temperature_C) * in.age_factor);
  Wells wells{
      .model = kinetic_model(block.chemistry, {block.capacity_Ah, block.rated_hours_h},
                             block.reserve_capacity_min),
      .label_Ah = block.capacity_Ah * capacity_frac,
      .resistance_ohm = charged_ohm(block) * condition.resistance_factor *
                        resistance_growth(block.chemistry, in.temperature_C, in.age_factor)};
  wells.model.capacity_Ah *= capacity_frac;
  wells.state = full_state(wells.model);
  // What is missing in the morning is missing from both wells: they have had the night to level.
  const double left_frac =
      1.0 - (1.0 - condition.charge_frac) * wells.label_Ah / wells.model.capacity_Ah;
  wells.state.available_Ah *= left_frac;
  wells.state.bound_Ah *= left_frac;
  return wells;
}

// Volts and resistance of the string at its present charge.
struct StringNow {
  std::vector<double> charge_frac{};
  std::vector<double> rest_V{};
  std::vector<double> ohm{};
  double sum_V = 0.0;
  double sum_ohm = 0.0;

  explicit StringNow(std::size_t count) : charge_frac(count), rest_V(count), ohm(count) {}

  void read(const std::vector<Wells>& blocks, Chemistry chemistry, double twelves_count) {
    sum_V = 0.0;
    sum_ohm = 0.0;
    for (std::size_t i = 0; i < blocks.size(); ++i) {
      charge_frac[i] = charge_of(blocks[i]);
      rest_V[i] = twelves_count * thole::rest_V(chemistry, charge_frac[i]);
      ohm[i] = blocks[i].resistance_ohm * rest_ratio(chemistry, charge_frac[i]);
      sum_V += rest_V[i];
      sum_ohm += ohm[i];
    }
  }
};

}  // namespace

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

BankRunResult run_bank(const BankRunInput& in, const std::vector<PowerStep>& steps,
                       double moment_s) {
  BankRunResult result;
  const Chemistry chemistry = in.block.chemistry;
  const double twelves_count = named_V(chemistry, in.block.nominal_V) / 12.0;
  const double floor_V = (is_lead(chemistry) ? kLeadFloor_cell_V : kLithiumFloor_cell_V) *
                         cell_count(chemistry, in.block.nominal_V);
  const double strings = in.parallel_count;
  std::vector<Wells> blocks;
  for (const BlockCondition& condition : in.conditions) blocks.push_back(wells_of(in, condition));
  if (blocks.empty() || in.parallel_count < 1) return result;

  StringNow now(blocks.size());
  Stride stride(blocks.front().model.rate_frac_per_h, 1.0 / kSeconds_per_h);
  result.lowest_plug_V =
      twelves_count * thole::rest_V(chemistry, 1.0) * static_cast<double>(blocks.size());
  double time_s = 0.0;
  double next_moment_s = 0.0;
  double before_s = 0.0;
  double before_Ah = 0.0;
  double before_Wh = 0.0;
  double stretch_V = result.lowest_plug_V;
  BankMoment moment;

  const auto cut = [&](CutOff why, std::size_t block) {
    result.cut_off = why;
    result.cut_off_block = block;
  };
  const auto note = [&](BankMoment at) {
    const double stretch_h = (time_s - before_s) / kSeconds_per_h;
    at.mean_W = stretch_h > 0.0 ? (result.load_Wh - before_Wh) / stretch_h : at.power_W;
    at.mean_A = stretch_h > 0.0 ? (result.charge_Ah - before_Ah) / stretch_h : at.current_A;
    at.lowest_plug_V = std::min(stretch_V, at.plug_V);
    result.moments.push_back(std::move(at));
    before_s = time_s;
    before_Ah = result.charge_Ah;
    before_Wh = result.load_Wh;
    stretch_V = at.plug_V;
  };
  for (const PowerStep& step : steps) {
    now.read(blocks, chemistry, twelves_count);
    const double bank_ohm = now.sum_ohm / strings;
    const OperatingPoint point = constant_power(
        now.sum_V, std::max(bank_ohm + in.feeder_ohm, kLeastResistance_ohm), step.power_W);
    const double current_A = point.current_A;
    const double string_A = current_A / strings;
    result.lowest_plug_V = std::min(result.lowest_plug_V, point.load_V);
    stretch_V = std::min(stretch_V, point.load_V);
    moment = {.time_h = time_s / kSeconds_per_h,
              .power_W = step.power_W,
              .current_A = current_A,
              .bank_V = now.sum_V - current_A * bank_ohm,
              .plug_V = point.load_V,
              .charge_frac = *std::min_element(now.charge_frac.begin(), now.charge_frac.end())};
    if (!point.solvable) {
      cut(CutOff::no_such_power, 0);
    } else if (!is_lead(chemistry) && in.block.continuous_A > 0.0 &&
               string_A > in.block.continuous_A) {
      cut(CutOff::current_limit, 0);
    } else if (point.load_V < in.minimum_V) {
      cut(CutOff::motor_minimum, 0);
    }
    const double step_h = step.time_s / kSeconds_per_h;
    if (stride.time_h != step_h) stride = Stride(stride.rate_frac_per_h, step_h);
    for (std::size_t i = 0; i < blocks.size() && result.cut_off == CutOff::none; ++i) {
      if (now.rest_V[i] - string_A * now.ohm[i] < floor_V) cut(CutOff::block_floor, i);
      if (stride.after(blocks[i], string_A).available_Ah < 0.0) cut(CutOff::block_empty, i);
    }
    const bool ends = result.cut_off != CutOff::none;
    if (ends || time_s >= next_moment_s) {
      for (std::size_t i = 0; i < blocks.size(); ++i) {
        moment.block_V.push_back(now.rest_V[i] - string_A * now.ohm[i]);
      }
      moment.block_charge_frac = now.charge_frac;
      note(moment);
      next_moment_s += moment_s;
    }
    if (ends) break;
    for (Wells& wells : blocks) wells.state = stride.after(wells, string_A);
    time_s += step.time_s;
    result.charge_Ah += current_A * step_h;
    result.load_Wh += step.power_W * step_h;
    result.feeder_loss_Wh += current_A * current_A * in.feeder_ohm * step_h;
    result.block_loss_Wh += current_A * current_A * bank_ohm * step_h;
    result.rest_Wh += now.sum_V * current_A * step_h;
  }
  result.cut_off_h = time_s / kSeconds_per_h;
  if (result.cut_off == CutOff::none) {  // the evening, at rest
    now.read(blocks, chemistry, twelves_count);
    note({.time_h = result.cut_off_h,
          .bank_V = now.sum_V,
          .plug_V = now.sum_V,
          .charge_frac = *std::min_element(now.charge_frac.begin(), now.charge_frac.end()),
          .block_V = now.rest_V,
          .block_charge_frac = now.charge_frac});
  }
  return result;
}

}  // namespace thole
