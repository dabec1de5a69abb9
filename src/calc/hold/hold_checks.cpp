#include <algorithm>
#include <cmath>
#include <limits>
#include <string>
#include <utility>
#include <vector>

#include "base/number.h"
#include "calc/hold/hold_steps.h"
#include "calc/hold/thruster.h"
#include "data/sources.h"
#include "data/sources_hold.h"

namespace thole {
namespace {

constexpr double kChain_factor = 0.8;      // common practice: battery to propeller shaft
constexpr double kMeritLimit_frac = 0.55;  // project decision: electrical power to thrust
constexpr double kOffWaves_deg = 60.0;     // project decision: from here the sea comes abeam
constexpr double kCutOffThrust_N = 512.0;  // 46 U.S.C. 4312: 115 lbf
constexpr double kCutOffLength_m = 7.92;   // 46 U.S.C. 4312: 26 ft

constexpr double kLegTilted_count = 0.0;  // positions among the options of the fields
constexpr double kLoosely_count = 1.0;

}  // namespace

void check_margin(const HoldInput& in, const HoldResult& r, Trace& trace) {
  std::vector<Change> changes{
      {.field = "hold.motor", .clear = true, .label = "Let Thole choose the motor"},
      {.field = "hold.thrust_N", .clear = true, .label = "Forget the typed thrust"},
      {.field = "hold.nominal_V", .clear = true, .label = "Take any motor voltage"}};
  if (in.legs_down && in.leg_count > 0) {
    changes.push_back(
        {.field = "boat.leg", .value = kLegTilted_count, .label = "Tilt the legs clear"});
  }
  if (r.margin_factor > kMarginLoose_factor) {
    changes.push_back({.field = "hold.firmness",
                       .value = kLoosely_count,
                       .label = "Hold loosely, falling back in gusts"});
  }
  trace.checks.push_back(
      {.id = "hold.margin",
       .label = "Thrust holds with margin",
       .actual = r.thrust_effective_N,
       .limit = std::max(kLeast_N, r.thrust_required_N),
       .unit = "N",
       .comparison = Comparison::at_least,
       .source = kProjectDecision,
       .remedy = in.motors.empty() ? "Offer at least one motor in the catalogue."
                                   : "Take a stronger motor, tilt the legs clear, cut windage, "
                                     "or agree with the owner to hold loosely.",
       .changes = std::move(changes)});
}

void check_plausible(const HoldInput& in, const HoldResult& r, Trace& trace) {
  const MotorClass& motor = r.motor;
  const bool known = motor.propeller_diameter_m > 0.0 && motor.power_full_W > 0.0;
  double limit_N = std::numeric_limits<double>::quiet_NaN();
  if (known) {
    const Disc disc = disc_of(in, motor);
    const std::vector<Term> terms{
        {"rho_w", disc.density_kg_per_m3, "kg/m3", "density of the water"},
        {"D", motor.propeller_diameter_m, "m", "propeller diameter"},
        {"P", motor.power_full_W, "W", "electrical, at full thrust"}};
    limit_N = ideal_thrust_N(disc, motor.power_full_W);
    tell([&] {
      show(trace, {.id = "hold.thrust_ideal",
                             .label = "Most thrust that this power and propeller could make",
                             .symbol = "T_ideal",
                             .formula = "(2 * rho_w * 3.141592653589793 / 4 * D^2 * P^2)^(1 / 3)",
                             .terms = terms,
                             .value = limit_N,
                             .unit = "N",
                             .source = kMomentumTheory,
                             .assumptions = {"Without any loss in motor, controller and blades."}});
      show(trace,
           {.id = "hold.thrust_ship",
            .label = "Thrust of a ship's open propeller of that size and power",
            .symbol = "T_ship",
            .formula = "800 * (D * 0.93 * e * P / 1000)^(2 / 3)",
            .terms = {{"D", motor.propeller_diameter_m, "m", "propeller diameter"},
                      {"e", kChain_factor, "", "share of the power that reaches the motor's shaft"},
                      {"P", motor.power_full_W, "W", "electrical, at full thrust"}},
            .value = nominal_thrust_N(
                {.propeller_factor = kOpenPropeller_factor,
                 .diameter_m = motor.propeller_diameter_m,
                 .power_W = kAzimuthMechanical_factor * kChain_factor * motor.power_full_W}),
            .unit = "N",
            .source = kDnvThrust,
            .assumptions = {"For comparison with the claim; 0.8 for motor and controller is common "
                            "practice."}});
    });
    const double merit_limit_N = limit_N * std::pow(kMeritLimit_frac, 2.0 / 3.0);
    if (motor.thrust_N <= limit_N && motor.thrust_N > merit_limit_N) {
      trace.cautions.push_back(
          {"hold.claim",
           "Ask the maker for a measured pull: the claimed thrust takes " +
               fixed(100.0 * merit_frac(disc, motor.thrust_N, motor.power_full_W), 0) +
               " % of the electrical power as pure push, and good small drives reach about 55 %.",
           kProjectDecision});
    }
  }
  trace.checks.push_back(
      {.id = "hold.plausible",
       .label = "Claimed thrust is physically possible",
       .actual = known ? motor.thrust_N : std::numeric_limits<double>::quiet_NaN(),
       .limit = limit_N,
       .unit = "N",
       .comparison = Comparison::at_most,
       .source = kMomentumTheory,
       .remedy = "Check static thrust, full power and propeller diameter of the motor against its "
                 "papers.",
       .changes = {{.field = "hold.thrust_N", .clear = true, .label = "Forget the typed thrust"},
                   {.field = "hold.power_full_W", .clear = true, .label = "Forget the typed power"},
                   {.field = "hold.propeller_diameter_m",
                    .clear = true,
                    .label = "Forget the typed propeller"}}});
}

void add_cautions(const HoldInput& in, const HoldResult& r, Trace& trace) {
  trace.cautions.push_back(
      {"hold.propeller",
       "Stop the motor before anyone swims or works near the bow; hold well clear "
       "of structures, lines and divers. The propeller starts by itself.",
       kCommonPractice});
  trace.cautions.push_back(
      {"hold.not_an_anchor",
       "Carry an anchor ready to drop and keep a watch as local rules ask; do not "
       "rely on the motor in breaking water or close to a lee shore.",
       kCommonPractice});
  if (std::abs(r.heading_deg) > kOffWaves_deg && r.wave_height_m > 0.1) {
    trace.cautions.push_back(
        {"hold.lies_off_waves",
         "Expect the boat to lie " + fixed(std::abs(r.heading_deg), 0) +
             " degrees off the waves: it rolls, and water may come over the side "
             "or the transom.",
         kProjectDecision});
  }
  if (r.margin_factor <= kMarginLoose_factor) {
    trace.cautions.push_back(
        {"hold.loose",
         "Leave room downwind: with this margin the boat falls back a length or "
         "more in gusts before it returns.",
         kProjectDecision});
  }
  if (r.motor_found && r.motor.thrust_N >= kCutOffThrust_N && in.length_m < kCutOffLength_m) {
    trace.cautions.push_back(
        {"hold.cut_off_switch",
         "Record whether an engine cut-off switch is due: in the United States "
         "115 lbf of static thrust on a boat under 26 ft calls for one. Ask the "
         "authority in charge.",
         kUsc4312});
  }
}

void add_range_notes(const HoldInput& in, const HoldResult& r, Trace& trace) {
  const auto note = [&](bool applies, const char* field, const char* text) {
    if (applies) trace.assumptions.push_back({field, text, kProjectDecision});
  };
  note(in.length_m < 5.0 || in.length_m > 13.0, "boat.length_m",
       "The boat is outside 5 to 13 m, for which the estimates were made.");
  note(in.waterline_length_m > in.length_m, "boat.waterline_length_m",
       "The waterline is longer than the boat: measure both again.");
  note(in.depth_m <= in.draft_m, "water.depth_m",
       "The water is no deeper than the boat's draft: it would lie aground.");
  note(in.wind_mps > 17.1, "water.wind_mps",
       "Above a near gale gusts, spray and breaking seas outdo these mean loads.");
  note(r.wave_height_m > 0.15 * in.length_m, "water.wave_height_m",
       "Waves this high for the boat break the assumption of small motions.");
  note(in.current_mps > 2.0, "water.current_mps",
       "In currents this strong eddies turn the boat about; the heading is a mean.");
}

}  // namespace thole
