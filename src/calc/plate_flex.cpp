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

double flex_sag_mm(const Design& design, double deck_factor, std::string& problem) {
  std::optional<ChosenPlate> chosen = chosen_plate(design);
  if (!chosen) {
    problem = kNoPlate;
    return std::numeric_limits<double>::quiet_NaN();
  }
  chosen->deck_factor = deck_factor;
  Trace unused;
  PlateBasis basis = plate_basis(*chosen, design, unused);
  const Mount& job = design.job.mount;
  const double wanted_m = basis.front_row_m + job.test_arm_mm.value / 1000.0;
  const double end_m = bounds(rounded(basis.model.shape.outline)).high.x_m - kFromEdge_m - 0.5 * kHook_m;
  const double at_m = std::min(wanted_m, end_m);
  const double force_N = -job.test_mass_kg.value * kGravity_mps2;
  basis.model.cases = {{"Flex test",
                        {{.foot = {.middle = {at_m, 0.0}, .length_m = kHook_m, .width_m = kHook_m},
                          .force_N = force_N,
                          .pitch_Nm = force_N * (wanted_m - at_m)}}}};
  const PlateSolution solution = solve_plate(basis.model);
  problem = solution.problem;
  if (!solution.solved) return std::numeric_limits<double>::quiet_NaN();
  return -1000.0 * (solution.cases.front().foot_sag_m + (wanted_m - at_m) * solution.cases.front().foot_pitch_rad);
}

FlexTest flex_test(const Design& design) {
  FlexTest test;
  const Mount& job = design.job.mount;
  if (!job.test_mass_kg.known() || !job.test_arm_mm.known() || !job.test_sag_mm.known()) {
    test.says = "Hang a known weight on, and give its mass, its arm and the sag it makes.";
    return test;
  }
  test.measured_mm = job.test_sag_mm.value;
  const auto sag_mm = [&](double factor) { return flex_sag_mm(design, factor, test.says); };
  test.computed_mm = sag_mm(1.0);
  test.present_mm = job.deck_factor.known() ? sag_mm(job.deck_factor.value) : test.computed_mm;
  test.rigid_mm = sag_mm(kMostDeck_factor);
  const double softest_mm = sag_mm(kLeastDeck_factor);
  if (!std::isfinite(test.computed_mm) || !std::isfinite(test.present_mm) || !std::isfinite(test.rigid_mm) || !std::isfinite(softest_mm)) {
    test.verdict = FlexVerdict::unsolved;
    return test;
  }
  if (test.measured_mm > softest_mm) {
    test.verdict = FlexVerdict::plate_softer;
    test.says = "No deck is so soft: a bolt is loose, a backing gives, or the plate is thinner than told. Look at those first.";
    return test;
  }
  if (test.measured_mm < test.rigid_mm) {
    test.verdict = FlexVerdict::plate_stiffer;
    test.says = "Even on a rigid deck this plate would sag more: it is thicker than told, a chock carries, or the reading is off.";
    return test;
  }
  double low = std::log(kLeastDeck_factor);
  double high = std::log(kMostDeck_factor);
  double low_mm = softest_mm;
  double high_mm = test.rigid_mm;
  for (int k = 0; k < kHalvings && low_mm - high_mm > kCloseEnough_frac * test.measured_mm; ++k) {
    const double middle = 0.5 * (low + high);
    const double middle_mm = sag_mm(std::exp(middle));
    (middle_mm > test.measured_mm ? low : high) = middle;
    (middle_mm > test.measured_mm ? low_mm : high_mm) = middle_mm;
  }
  const double share = low_mm > high_mm ? (low_mm - test.measured_mm) / (low_mm - high_mm) : 0.5;
  test.deck_factor = std::exp(low + share * (high - low));
  test.verdict = FlexVerdict::found;
  const double rounded_factor = std::clamp(std::round(100.0 * test.deck_factor) / 100.0, kLeastDeck_factor, kMostDeck_factor);
  test.says = "The deck is " + fixed(rounded_factor, 2) + " times as stiff as computed.";
  test.changes = {{.field = "mount.deck_factor", .value = rounded_factor, .label = "Reckon with this deck"}};
  return test;
}

}  // namespace thole
