#include "calc/plate_flex.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "base/number.h"
#include "base/units.h"
#include "calc/plate/outline.h"

namespace thole {
namespace {

constexpr double kHook_m = 0.02;      // a weight's hook or strap on the plate
constexpr double kFromEdge_m = 0.012;
constexpr int kHalvings = 9;          // of the logarithm's interval, before the secant's last step
constexpr double kCloseEnough_frac = 1e-3;

}  // namespace

FlexSag flex_sag(const Design& design, double deck_factor, double panel_factor, std::string& problem) {
  constexpr double kUnknown = std::numeric_limits<double>::quiet_NaN();
  constexpr FlexSag kNone{kUnknown, kUnknown, kUnknown};
  std::optional<ChosenPlate> chosen = chosen_plate(design);
  if (!chosen) {
    problem = kNoPlate;
    return kNone;
  }
  chosen->deck_factor = deck_factor;
  chosen->panel_factor = panel_factor;
  Trace unused;
  PlateBasis basis = plate_basis(*chosen, design, unused);
  const Mount& job = design.job.mount;
  const double wanted_m = basis.front_row_m + job.test_arm_mm.value / 1000.0;
  const double end_m = bounds(rounded(basis.model.shape.outline)).high.x_m - kFromEdge_m - 0.5 * kHook_m;
  const double at_m = std::min(wanted_m, end_m);
  const double force_N = -job.test_mass_kg.value * kGravity_mps2;
  // While the bolts' clamp lasts the joint gives both ways alike.
  basis.model.support.bolts_both_ways = basis.model.support.deck_both_ways = true;
  basis.model.cases = {{"Flex test",
                        {{.foot = {.middle = {at_m, 0.0}, .length_m = kHook_m, .width_m = kHook_m},
                          .force_N = force_N,
                          .pitch_Nm = force_N * (wanted_m - at_m)}}}};
  PlateSolution solution = solve_plate(basis.model);
  // What pulls at all of the joint, bolts and deck, against one bolt's clamp: the safe side.
  double pull_N = 0.0;
  if (solution.solved) pull_N = solution.cases.front().deck_pull_N;
  if (solution.solved)
    for (const double bolt_N : solution.cases.front().bolt_N) pull_N += std::max(bolt_N, 0.0);
  if (pull_N > design.mount.clamp_left_N) {
    basis.model.support.bolts_both_ways = basis.model.support.deck_both_ways = false;
    solution = solve_plate(basis.model);
  }
  problem = solution.problem;
  if (!solution.solved) return kNone;
  const std::vector<PlateLoad>& loads = basis.model.cases.front().loads;
  FlexSag sag{.panel_mm = -1000.0 * basis.panel.rise_m(loads, wanted_m), .middle_mm = -1000.0 * basis.panel.rise_m(loads, basis.panel.middle_m)};
  sag.total_mm = sag.panel_mm - 1000.0 * (solution.cases.front().foot_sag_m + (wanted_m - at_m) * solution.cases.front().foot_pitch_rad);
  return sag;
}

namespace {

double in_range(double factor) { return std::clamp(std::round(100.0 * factor) / 100.0, kLeastDeck_factor, kMostDeck_factor); }

std::string times(double factor) { return fixed(factor, 2) + " times as stiff as computed"; }

// Which of the two gives more than it should.
std::string told_apart(const FlexTest& test) {
  const std::string text = "The deck's panel is " + times(test.panel_factor) + "; bolts, bedding and core are " + times(in_range(test.deck_factor)) + ". ";
  if (std::min(test.panel_factor, test.deck_factor) >= 0.8) return text + "No joint gives more than it should.";
  if (test.panel_factor <= test.deck_factor) return text + "It is the deck itself that gives: a beam or a bulkhead under it helps, thicker plate does not.";
  return text + "It is the joint that gives: look at nuts, backing and a wet or crushed core before anything else.";
}

}  // namespace

FlexTest flex_test(const Design& design) {
  FlexTest test;
  const Mount& job = design.job.mount;
  if (!job.test_mass_kg.known() || !job.test_arm_mm.known() || !job.test_sag_mm.known()) {
    test.says = "Hang a known weight on, and give its mass, its arm and the sag it makes.";
    return test;
  }
  test.measured_mm = job.test_sag_mm.value;
  test.told_apart = job.test_deck_mm.known() && job.test_deck_mm.value > 0.0;
  const FlexSag computed = flex_sag(design, 1.0, 1.0, test.says);
  if (test.told_apart) test.panel_factor = in_range(computed.middle_mm / job.test_deck_mm.value);
  const auto with = [&](double factor) { return flex_sag(design, factor, test.told_apart ? test.panel_factor : factor, test.says); };
  test.computed_mm = computed.total_mm;
  const bool taken = job.deck_factor.known() || job.panel_factor.known();
  test.present_mm = taken ? flex_sag(design, job.deck_factor.known() ? job.deck_factor.value : 1.0,
                                     job.panel_factor.known() ? job.panel_factor.value : 1.0, test.says).total_mm
                          : test.computed_mm;
  test.rigid_mm = with(kMostDeck_factor).total_mm;
  const double softest_mm = with(kLeastDeck_factor).total_mm;
  if (!std::isfinite(test.computed_mm) || !std::isfinite(test.present_mm) || !std::isfinite(test.rigid_mm) || !std::isfinite(softest_mm)) {
    test.verdict = FlexVerdict::unsolved;
    return test;
  }
  if (test.measured_mm > softest_mm) {
    test.verdict = FlexVerdict::plate_softer;
    test.says = test.told_apart ? "With the deck's own sag as read no joint is so soft: a bolt is loose, the plate is thinner than told, or one of the readings is off."
                                : "No deck is so soft: a bolt is loose, a backing gives, or the plate is thinner than told. Look at those first.";
    return test;
  }
  if (test.measured_mm < test.rigid_mm) {
    test.verdict = FlexVerdict::plate_stiffer;
    test.says = test.told_apart ? "With the deck's own sag as read, and rigid bolts and bedding, it would sag more: one of the readings is off, or a chock carries."
                                : "Even on a rigid deck this plate would sag more: it is thicker than told, a chock carries, or the reading is off.";
    return test;
  }
  double low = std::log(kLeastDeck_factor);
  double high = std::log(kMostDeck_factor);
  double low_mm = softest_mm;
  double high_mm = test.rigid_mm;
  for (int k = 0; k < kHalvings && low_mm - high_mm > kCloseEnough_frac * test.measured_mm; ++k) {
    const double middle = 0.5 * (low + high);
    const double middle_mm = with(std::exp(middle)).total_mm;
    (middle_mm > test.measured_mm ? low : high) = middle;
    (middle_mm > test.measured_mm ? low_mm : high_mm) = middle_mm;
  }
  const double share = low_mm > high_mm ? (low_mm - test.measured_mm) / (low_mm - high_mm) : 0.5;
  test.deck_factor = std::exp(low + share * (high - low));
  if (!test.told_apart) test.panel_factor = test.deck_factor;
  test.panel_mm = flex_sag(design, test.deck_factor, test.panel_factor, test.says).panel_mm;
  test.verdict = FlexVerdict::found;
  test.says = test.told_apart ? told_apart(test) : "Deck and joint are " + times(in_range(test.deck_factor)) +
                                                       ". Which of the two gives, the deck's own sag would tell.";
  test.changes = {{.field = "mount.deck_factor", .value = in_range(test.deck_factor), .label = "Reckon with this deck"},
                  {.field = "mount.panel_factor", .value = in_range(test.panel_factor), .label = "Reckon with this panel"}};
  return test;
}

}  // namespace thole
