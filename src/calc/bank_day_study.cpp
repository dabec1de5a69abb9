#include "calc/bank_day_study.h"

#include <algorithm>
#include <cmath>

#include "base/number.h"
#include "calc/fitted_bank.h"
#include "data/batteries.h"
#include "data/day_plan.h"
#include "data/sources.h"
#include "data/sources_battery.h"

namespace thole {
namespace {

constexpr double kBlockStepsPerSlice = 60000.0;  // some milliseconds
constexpr double kPoints = 240.0;                // of the curves, at most
constexpr double kLeastWind_mps = 1.0;

// The blocks all like the best of them, or, when they are alike, the first of them weak.
BankRunInput other_bank(const BankRunInput& bank, bool unlike) {
  BankRunInput other = bank;
  if (!unlike) {
    RunString& string = other.strings.front();
    RunString weak = string;
    weak.count = 1;
    weak.blocks.front().condition.capacity_frac = kWeakBlock_frac;
    if (--string.count == 0) other.strings.clear();
    other.strings.insert(other.strings.begin(), std::move(weak));
    return other;
  }
  const RunBlock* best = &bank.strings.front().blocks.front();
  for (const RunString& string : bank.strings) {
    for (const RunBlock& block : string.blocks) {
      if (left_Ah(block) > left_Ah(*best)) best = &block;
    }
  }
  RunBlock sound = *best;
  sound.condition.capacity_frac = 1.0;  // of a bank of one block that was called weak
  for (RunString& string : other.strings) std::fill(string.blocks.begin(), string.blocks.end(), sound);
  return other;
}

BlockPlace weakest_of(const BankRunInput& bank) {
  BlockPlace weakest;
  for (std::size_t s = 0; s < bank.strings.size(); ++s) {
    for (std::size_t i = 0; i < bank.strings[s].blocks.size(); ++i) {
      if (left_Ah(bank.strings[s].blocks[i]) <
          left_Ah(bank.strings[weakest.string].blocks[weakest.block])) {
        weakest = {s, i};
      }
    }
  }
  return weakest;
}

double strongest_wind_mps(const Job& job) {
  if (!job.hold.day.known()) return job.water.wind_mps.value;
  double strongest_mps = 0.0;
  for (const PlannedStretch& stretch : read_day_plan(job.hold.day.value).stretches) {
    if (!stretch.creeping) strongest_mps = std::max(strongest_mps, stretch.wind_mps);
  }
  return strongest_mps;
}

// From a light air to beyond what the motor holds and the day has.
std::vector<double> winds_to_try(double day_mps, double limiting_mps) {
  const double most_mps =
      std::clamp(1.15 * std::max(day_mps, limiting_mps), 5.0, kMostPlannedWind_mps);
  std::vector<double> winds_mps;
  for (int i = 0; i < kRuntimeWinds; ++i) {
    winds_mps.push_back(kLeastWind_mps +
                        (most_mps - kLeastWind_mps) * i / (kRuntimeWinds - 1));
  }
  return winds_mps;
}

std::size_t blocks_in(const BankRunInput& bank) {
  std::size_t blocks = 0;
  for (const RunString& string : bank.strings) blocks += string.blocks.size();
  return blocks;
}

bool any_lithium(const std::vector<RunString>& strings) {
  return std::any_of(strings.begin(), strings.end(), [](const RunString& string) {
    return std::any_of(string.blocks.begin(), string.blocks.end(),
                       [](const RunBlock& at) { return !is_lead(at.block.chemistry); });
  });
}

}  // namespace

double weak_cost_h(const BankDay& day) {
  return std::max(0.0, day.unlike ? day.other_h - day.hours_h : day.hours_h - day.other_h);
}

std::string end_of(const BankRunResult& run, std::size_t strings_count) {
  const std::string block = name_of(run.cut_off_block, strings_count);
  switch (run.cut_off) {
    case CutOff::block_empty:
      return block + " is empty, and its fellows would drive it backwards";
    case CutOff::block_floor:
      return block + " is below its lowest volts";
    case CutOff::current_limit:
      return "the electronics of " + block + " open: more current than they allow";
    case CutOff::none:
    case CutOff::motor_minimum:
    case CutOff::no_such_power:
      break;
  }
  return std::string(word(run.cut_off));
}

Trace bank_day_trace(const Design& design, const BankDay& day) {
  Trace trace;
  const BankRunResult& run = day.day.run;
  trace.checks.push_back(
      {.id = "bank_day.lasts",
       .label = "The bank lasts the day, second by second",
       .actual = day.hours_h,
       .limit = day.day.asked_h,
       .unit = "h",
       .comparison = Comparison::at_least,
       .source = kKinetic,
       .remedy = day.unlike ? "Replace the weakest block, better all of them, or plan fewer hours."
                            : "Fit larger blocks or another string, or plan fewer hours."});
  const auto warn = [&](std::string id, std::string text, const Source& source) {
    trace.cautions.push_back({std::move(id), std::move(text), source});
  };
  const bool lithium = any_lithium(design.bank.strings);
  if (run.cut_off == CutOff::block_empty && !lithium) {
    warn("bank_day.reversal",
         "Stop before that: nothing switches a lead-acid block off, and one that is driven backwards is "
         "ruined and gives off hydrogen.",
         kCommonPractice);
  }
  for (const StringOpening& opening : run.openings) {
    warn("bank_day.string_opens",
         "Expect string " + std::to_string(opening.place.string + 1) + " to switch itself off after " +
             fixed(opening.time_h, 1) + " h (" + std::string(word(opening.why)) +
             "): the others then carry all of the load.",
         kCommonPractice);
  }
  if (run.over_limit_s > 0.0) {
    warn("bank_day.over_limit",
         "Stay below the continuous limit of the lithium blocks: this day is over it for " +
             fixed(run.over_limit_s / 60.0, 1) +
             " min in all. Their electronics may open sooner than is assumed here; the maker's figures "
             "count.",
         kElectronicsBurst);
  }
  const double coldest_C = design.job.locker.coldest_C.known() ? design.job.locker.coldest_C.value
                                                               : design.job.bank.temperature_C.value;
  if (lithium && coldest_C < kNoCharge_C) {
    warn("bank_day.too_cold",
         "Warm the bank before it is charged: at " + fixed(coldest_C, 0) +
             " °C lithium blocks take no charge, from a charger or from another string.",
         kCommonPractice);
  }
  if (run.crossed_Ah > 0.5) {
    warn("bank_day.crossed",
         "Charge the strings apart before joining them: " + fixed(run.crossed_Ah, 1) +
             " Ah run from one into the other in this day, and more at the moment of joining.",
         kCommonPractice);
  }
  trace.assumptions.push_back(
      {"", "Down to the cut-off: deeper than the depth that the job allows.", kDefinition});
  if (lithium) {
    trace.assumptions.push_back(
        {"bank.continuous_A",
         "Electronics carry twice their continuous limit for ten seconds, then want a hundred seconds "
         "below it. Labels differ.",
         kElectronicsBurst});
  }
  if (design.job.bank.fitted.known()) {
    trace.assumptions.push_back(
        {"bank.fitted",
         "A block's age takes a fifth of its capacity by the end of its years in the calendar (flooded 6, "
         "sealed 8, lithium 12) and adds twice that to its resistance. A measured block says 0y.",
         kCalendarYears});
  }
  return trace;
}

BankDayInput bank_day_input(const Design& design) {
  BankDayInput in{.bank = bank_run_input(design), .unlike = design.job.bank.fitted.known()};
  if (!design.hold.motor_found) return in;
  in.day = day_input(design);
  in.winds_mps = winds_to_try(strongest_wind_mps(design.job), design.hold.limiting_wind_mps);
  return in;
}

BankDayStudy::BankDayStudy(const Design& design, const BankDayInput& in)
    : design_(design), winds_mps_(in.winds_mps) {
  result_.unlike = in.unlike;
  result_.bank = in.bank;
  double asked_h = 0.0;
  for (const DaySegment& segment : in.day.segments) asked_h += segment.duration_h;
  result_.possible = design_.hold.motor_found && !in.bank.strings.empty() && asked_h > 0.0;
  done_ = !result_.possible;
  if (done_) return;
  result_.weakest = weakest_of(in.bank);
  result_.minimum_V = in.bank.minimum_V;
  result_.day_wind_mps = strongest_wind_mps(design_.job);
  result_.limiting_wind_mps = design_.hold.limiting_wind_mps;
  const double moment_s =
      in.moment_s > 0.0 ? in.moment_s : std::max(60.0, 3600.0 * asked_h / kPoints);
  day_ = std::make_unique<PowerDayRun>(in.bank, in.day, moment_s);
  other_ = std::make_unique<PowerDayRun>(other_bank(in.bank, in.unlike), in.day, 3600.0 * asked_h);
  slice_count_ = static_cast<std::size_t>(
      std::max(1000.0, kBlockStepsPerSlice / static_cast<double>(blocks_in(in.bank))));
}

bool BankDayStudy::step() {
  if (done_) return false;
  if (day_->advance(slice_count_) || other_->advance(slice_count_)) return true;
  if (result_.winds.size() < winds_mps_.size()) {
    result_.winds.push_back(runtime_in(design_, result_.bank, winds_mps_[result_.winds.size()]));
    return true;
  }
  finish();
  return false;
}

void BankDayStudy::finish() {
  done_ = true;
  result_.day = day_->result();
  result_.hours_h = hours_until_cut(result_.day);
  result_.other = other_->result();
  result_.other_h = hours_until_cut(result_.other);
  if (!result_.day.run.moments.empty()) result_.maximum_V = result_.day.run.moments.front().bank_V;
  for (const BankMoment& at : result_.day.run.moments) {
    result_.maximum_V = std::max(result_.maximum_V, at.bank_V);
  }
  result_.trace = bank_day_trace(design_, result_);
}

double BankDayStudy::done_frac() const {
  if (done_) return 1.0;
  const double winds = static_cast<double>(result_.winds.size()) /
                       static_cast<double>(std::max<std::size_t>(1, winds_mps_.size()));
  return (day_->done_frac() + other_->done_frac() + winds) / 3.0;
}

BankDay bank_day(const Design& design, const BankDayInput& in) {
  BankDayStudy study(design, in);
  while (study.step()) {
  }
  return study.result();
}

}  // namespace thole
