#include "calc/foredeck/stow.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "base/units.h"
#include "data/sources.h"
#include "data/sources_foredeck.h"

namespace thole {
namespace {

constexpr double kNearest_m = 0.25;
constexpr double kKnuckle_m = 0.75;
constexpr double kHighest_m = 1.75;
constexpr double kVertical_per_m = 0.3;  // 0.003 per cm
constexpr double kTravel_m = 0.045;      // 4.5 cm
constexpr double kTravelShare_factor = 0.82;

double open(bool known, double value) { return known ? value : std::numeric_limits<double>::quiet_NaN(); }

void add_lift(const StowInput& in, StowResult& r) {
  r.moving_mass_kg = kMovingMass_frac * in.motor_mass_kg;
  r.lift_N = r.moving_mass_kg * kGravity_mps2;
  r.lift_limit_kg = in.reach_measured ? lift_limit_kg(in.reach_m, in.hand_height_m, in.travel_m) : 0.0;
  r.trace.steps.push_back({.id = "foredeck.lift",
                           .label = "Pull that draws the motor up by hand",
                           .symbol = "F",
                           .formula = "f * m * g",
                           .terms = {{"f", kMovingMass_frac, "", "share of the weight that moves"},
                                     {"m", in.motor_mass_kg, "kg", "motor, shaft and mount"},
                                     {"g", kGravity_mps2, "mps2", "gravity"}},
                           .value = r.lift_N,
                           .unit = "N",
                           .source = kCommonPractice,
                           .assumptions = {"Without gas spring or winch, and in air; the water carries a little of it at first."}});
  r.trace.checks.push_back({.id = "foredeck.reach",
                            .label = "Reach to the motor",
                            .actual = open(in.reach_measured, in.reach_m),
                            .limit = kReachMost_m,
                            .unit = "m",
                            .source = kNioshLifting,
                            .remedy = in.reach_measured ? "Make a place to kneel nearer to it, with something to hold on to, or raise it by a line led aft."
                                                        : "Not measured yet: measure from where you kneel to the motor."});
  r.trace.checks.push_back({.id = "foredeck.lift",
                            .label = "Weight to lift by hand",
                            .actual = open(in.reach_measured, r.moving_mass_kg),
                            .limit = r.lift_limit_kg,
                            .unit = "kg",
                            .source = kNioshLifting,
                            .remedy = in.reach_measured ? "Lift with two, use a line with a purchase, or take a mount with a spring or a winch."
                                                        : "Not measured yet: how much one may lift depends on the reach."});
}

void add_hold(const StowInput& in, StowResult& r) {
  const double weight_N = in.motor_mass_kg * kGravity_mps2;
  r.rebound_N = kRebound_frac * in.slam_N;
  r.holder_N = kHolder_factor * r.rebound_N;
  r.holders_needed_count = r.rebound_N > weight_N ? 2 : 1;
  r.trace.steps.push_back({.id = "foredeck.rebound",
                           .label = "Upward jump of the stowed motor after a slam",
                           .symbol = "F_u",
                           .formula = "q * F_s",
                           .terms = {{"q", kRebound_frac, "", "share of the slam"}, {"F_s", in.slam_N, "N", "slam, from the mount"}},
                           .value = r.rebound_N,
                           .unit = "N",
                           .source = kProjectDecision});
  r.trace.steps.push_back({.id = "foredeck.holder",
                           .label = "Working load that the latch, and the strap, must each be rated for",
                           .symbol = "F_h",
                           .formula = "n * F_u",
                           .terms = {{"n", kHolder_factor, "", "strength over load"}, {"F_u", r.rebound_N, "N", "upward jump"}},
                           .value = r.holder_N,
                           .unit = "N",
                           .source = kProjectDecision,
                           .assumptions = {"Each carries all of it: when one lets go the other still holds."}});
  r.trace.checks.push_back({.id = "foredeck.secured",
                            .label = "Holds on the stowed motor at speed",
                            .actual = open(in.tied_known, in.tied ? 2.0 : 1.0),
                            .limit = static_cast<double>(r.holders_needed_count),
                            .unit = "",
                            .comparison = Comparison::at_least,
                            .source = kProjectDecision,
                            .remedy = in.tied_known ? "The jump after a slam is more than the motor's weight: put a strap over it besides its latch before you run."
                                                    : "Not said yet: is there a strap besides the latch?"});
}

void warn(Trace& trace) {
  trace.cautions.push_back({.id = "foredeck.going_forward",
                            .text = "Going forward to stow it at sea is where people fall overboard: boat stopped and head to sea, lifejacket on, one "
                                    "hand for yourself, somebody at the helm. If that is not to be had, run home slowly with the motor down.",
                            .source = kCommonPractice});
  trace.cautions.push_back({.id = "foredeck.lifting",
                            .text = "Switch the motor off before you reach for it: a propeller that starts in the hand maims. Keep fingers out of "
                                    "latch and pivot, and lift with your legs.",
                            .source = kCommonPractice});
  trace.cautions.push_back({.id = "foredeck.drilling",
                            .text = "Before you drill, look from below: chain pipe, wiring, tanks and the anchor roller's backing lie there. On a "
                                    "cored deck seal every hole's edge.",
                            .source = kCommonPractice});
}

}  // namespace

double lift_limit_kg(double reach_m, double hand_height_m, double travel_m) {
  const bool possible = reach_m <= kReachMost_m && hand_height_m >= 0.0 && hand_height_m <= kHighest_m && travel_m <= kHighest_m;
  if (!possible) return 0.0;
  const double reach = std::min(kNearest_m / std::max(reach_m, kNearest_m), 1.0);
  const double height = 1.0 - kVertical_per_m * std::abs(hand_height_m - kKnuckle_m);
  const double travel = std::min(kTravelShare_factor + kTravel_m / std::max(travel_m, kNearest_m), 1.0);
  return kLiftLoad_kg * reach * height * travel;
}

StowResult stow(const StowInput& in) {
  StowResult result;
  add_lift(in, result);
  add_hold(in, result);
  warn(result.trace);
  return result;
}

}  // namespace thole
