#include "calc/locker/locker.h"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <utility>

#include "base/units.h"
#include "data/sources.h"
#include "data/sources_mount.h"

namespace thole {
namespace {

constexpr double kPlaning_ratio = 5.0;  // knots over the root of metres, kIso12215Acceleration
constexpr double kCentre_ratio = 0.4;   // kProjectDecision: centre of gravity, of the waterline from aft
constexpr double kBowLocker_ratio = 0.75;  // kProjectDecision

// In g, where the bank stands.
double acceleration_there(const LockerMotion& motion, Trace& trace) {
  if (!(motion.cg_g > 0.0 && motion.bow_g > 0.0 && motion.waterline_length_m > 0.0)) return 0.0;
  const double length_m = motion.waterline_length_m;
  const double share = std::clamp((motion.bank_x_m - kCentre_ratio * length_m) /
                                      ((1.0 - kCentre_ratio) * length_m),
                                  0.0, 1.0);
  const double there_g = motion.cg_g + (motion.bow_g - motion.cg_g) * share;
  tell([&] {
    trace.steps.push_back(
        {.id = "locker.acceleration",
         .label = "Acceleration where the bank stands",
         .symbol = "n_x",
         .formula = "n_cg + (n_bow - n_cg) * min(1, max(0, (x - c * L) / ((1 - c) * L)))",
         .terms = {{"n_cg", motion.cg_g, "g", "at the centre of gravity"},
                   {"n_bow", motion.bow_g, "g", "at the bow"},
                   {"x", motion.bank_x_m, "m", "bank forward of the transom"},
                   {"c", kCentre_ratio, "", "centre of gravity, share of the waterline from aft"},
                   {"L", length_m, "m", "waterline length"}},
         .value = there_g,
         .unit = "g",
         .source = kProjectDecision,
         .assumptions = {"A straight line between the two, which are those of the mount page."}});
  });
  return there_g;
}

void append(Trace& to, Trace from) {
  const auto all = [](auto& list, auto& more) {
    list.insert(list.end(), std::make_move_iterator(more.begin()),
                std::make_move_iterator(more.end()));
  };
  all(to.steps, from.steps);
  all(to.checks, from.checks);
  all(to.cautions, from.cautions);
  all(to.assumptions, from.assumptions);
}

}  // namespace

RestraintInput restraint_of(const LockerInput& in, Trace& trace) {
  const LockerMotion& motion = in.motion;
  RestraintInput restraint = in.restraint;
  const double least_kn = kPlaning_ratio * std::sqrt(std::max(0.0, motion.waterline_length_m));
  restraint.planes = kn_from_mps(motion.speed_mps) >= least_kn;
  restraint.at_bow = motion.bank_x_m > kBowLocker_ratio * motion.waterline_length_m;
  restraint.slam_known_g = acceleration_there(motion, trace);
  return restraint;
}

LockerResult locker(const LockerInput& in) {
  LockerResult result{.measured = in.measured};
  RestraintResult restraint = restrain(restraint_of(in, result.trace));
  if (restraint.rules.empty()) return {};  // there is no block
  result.restraint_N = restraint.vertical_N;
  result.strap_count = restraint.strap_count;
  result.strap_need_N = restraint.strap_need_N;
  result.wall_m = restraint.wall_m;
  append(result.trace, std::move(restraint.trace));
  append(result.trace, place(in.place));
  if (in.measured) {
    const FitResult held = fit(in.packing);
    result.fits = held.fits;
    Check check = fit_check(in.packing, held);
    if (!held.fits) check.changes = in.ways_out;
    result.trace.checks.push_back(std::move(check));
  }
  std::erase_if(result.trace.checks, [](const Check& check) {
    return check.verdict() == Verdict::not_evaluated;
  });
  return result;
}

}  // namespace thole
