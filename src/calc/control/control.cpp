#include "calc/control/control.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>
#include <utility>

#include "base/number.h"
#include "base/units.h"
#include "calc/heading.h"
#include "data/sources.h"
#include "data/sources_control.h"
#include "data/sources_power.h"

namespace thole {
namespace {

constexpr double kMicro = 1e6;             // uT to a T
constexpr double kTurn_deg = 5.0;          // kCommonPractice: a sensor's bias of 1 to 3 is usual
constexpr double kSky_deg = 30.0;          // kCommonPractice: half of the sky is left above it
constexpr double kWeakField_T = 6e-6;      // kWeakField
constexpr double kSwitchedBank_Ah = 100.0;  // kE11Switch
constexpr double kDay_h = 24.0;

void say(Trace& trace, std::string id, std::string text, const Source& source) {
  trace.cautions.push_back({std::move(id), std::move(text), source});
}

void open_question(Trace& trace, std::string field, std::string text, const Source& source) {
  trace.assumptions.push_back({std::move(field), std::move(text), source});
}

// --- heading sensor -----------------------------------------------------------------------------

void step_heading(const HeadingInput& in, double error_deg, Trace& trace) {
  const Term pi{"pi", std::numbers::pi, "", "circle over its diameter"};
  const Term field{"B", kMicro * in.field_T, "uT", "level part of the feeder's field at the sensor"};
  const Term earth{"B_h", kMicro * in.horizontal_T, "uT", "level part of the earth's field"};
  const bool shows = in.field_T < in.horizontal_T;
  Step step{.id = "control.heading",
            .label = "Heading error at full thrust, worst heading",
            .symbol = "e",
            .formula = shows ? "atan(B / sqrt(B_h^2 - B^2)) * 180 / pi" : "180 * min(B / B_h, 1)",
            .terms = {field, earth},
            .value = error_deg,
            .unit = "deg",
            .source = kHeadingTriangle,
            .assumptions = {"The feeder's field is the sum over its straight pieces as routed; "
                            "the boat leans to the worst side.",
                            "The worst heading has asin(B / B_h); with the field square to north it "
                            "would be atan(B / B_h), a little less."}};
  if (shows) step.terms.push_back(pi);
  if (!shows) step.assumptions.push_back("The feeder's field is the stronger: no heading is shown.");
  tell([&] {
    trace.steps.push_back(std::move(step));
  });
}

void tell_earth(const HeadingInput& in, Trace& trace) {
  if (in.earth_assumed) {
    open_question(trace, "control.latitude_deg",
                  "Level part of the earth's field 20 uT, as in the middle latitudes; 27 in the "
                  "tropics, 15 in the far north. Give your place, a whole degree will do.",
                  kProjectDecision);
  } else {
    open_question(trace, "control.year",
                  in.year_outside ? "That year lies outside IGRF-14, which holds from 2025 to 2030: the "
                                    "field is taken at its nearest end."
                                  : "The earth's field by IGRF-14, which holds from 2025 to 2030.",
                  in.earth_source);
  }
  if (in.horizontal_T < kWeakField_T) {
    say(trace, "control.weak_field",
        "So near a magnetic pole the earth's field stands nearly upright: do not rely on a magnetic "
        "heading here; use a heading from two satellite receivers.",
        kWeakField);
  }
}

void heading_sensor(const HeadingInput& in, ControlResult& r) {
  r.heading_error_deg = worst_error_deg(in.field_T, in.horizontal_T);
  r.sensor_gap_m = in.gap_m;
  step_heading(in, r.heading_error_deg, r.trace);
  tell_earth(in, r.trace);
  r.trace.checks.push_back({.id = "control.heading",
                            .label = "Heading error at full thrust",
                            .actual = r.heading_error_deg,
                            .limit = in.limit_deg,
                            .unit = "deg",
                            .source = kCommonPractice,
                            .remedy = "Lay plus and minus touching or twisted, or move the sensor away "
                                      "from them: an error that comes with thrust makes the boat hunt.",
                            .changes = in.changes});
  say(r.trace, "control.heading_test",
      "Prove it before handing over: tied up, note the heading at no, half and full thrust; it may "
      "move by " + fixed(in.limit_deg, 1) + " degrees.",
      kCommonPractice);
  say(r.trace, "control.magnets",
      "Keep the heading sensor a metre from engine, steel, loudspeakers, magnets and the windlass, and "
      "off the motor's head, which turns. Fix it level, then swing it with the motor at rest.",
      kCommonPractice);
}

// A heading read too great by b turns the push by b: across it pushes sin(b), along it cos(b).
void alignment(const ControlInput& in, ControlResult& r) {
  if (!in.heading.turn_deg) {
    open_question(r.trace, "control.sensor_turn_deg",
                  "How far the sensor is turned off the keel line is not measured yet.", kCommonPractice);
    return;
  }
  const double turn_deg = *in.heading.turn_deg;
  r.side_push_N = in.thrust_N * std::abs(std::sin(rad_from_deg(turn_deg)));
  tell([&] {
    r.trace.steps.push_back({.id = "control.side_push",
                             .label = "Push across the load, from a sensor turned off the keel line",
                             .symbol = "T_s",
                             .formula = "max(T * sin(b), -T * sin(b))",
                             .terms = {{"T", in.thrust_N, "N", "mean load that is held"},
                                       {"b", rad_from_deg(turn_deg), "rad", "turned off the keel line"}},
                             .value = r.side_push_N,
                             .unit = "N",
                             .source = kDefinition,
                             .assumptions = {"The set-up was not told of the turn. From 20 to 30 degrees on "
                                             "the boat goes round in circles (common practice)."}});
  });
  r.trace.checks.push_back({.id = "control.alignment",
                            .label = "Sensor off the keel line",
                            .actual = std::abs(turn_deg),
                            .limit = kTurn_deg,
                            .unit = "deg",
                            .source = kCommonPractice,
                            .remedy = "Line the sensor up with the keel, or tell the set-up its angle: the motor "
                                      "pushes off by as much.",
                            .changes = {{.field = "control.sensor_turn_deg",
                                         .value = 0.0,
                                         .label = "Line the sensor up with the keel"}}});
}

// --- receiver and remote ------------------------------------------------------------------------

Change raised(double z_m) { return {.field = "control.receiver_z_m", .value = z_m, .label = "Raise the receiver"}; }

// Corners of the outline, and what of it lies right over the receiver: use(distance along the boat, height).
template <class Use>
void look_at(const ReceiverInput& in, Use&& use) {
  constexpr double kOverhead_m = 0.01;
  for (std::size_t i = 0; i < in.boat.size(); ++i) {
    const OutlinePoint& one = in.boat[i];
    const OutlinePoint& next = in.boat[i + 1 == in.boat.size() ? 0 : i + 1];
    const double behind_m = in.x_m - one.along_m;
    use(std::max(std::abs(behind_m), kOverhead_m), one.up_m);
    if (behind_m * (in.x_m - next.along_m) < 0.0)
      use(kOverhead_m, one.up_m + (next.up_m - one.up_m) * behind_m / (next.along_m - one.along_m));
  }
}

// Up to where the boat herself hides the sky, along the boat alone.
double hidden_deg(const ReceiverInput& in, Trace& trace) {
  double up_m = 0.0;
  double away_m = 1.0;
  look_at(in, [&](double here_m, double height_m) {
    if ((height_m - in.z_m) * away_m <= up_m * here_m) return;
    up_m = height_m - in.z_m;
    away_m = here_m;
  });
  const double elevation_deg = deg_from_rad(std::atan(up_m / away_m));
  tell([&] {
    trace.steps.push_back({.id = "control.sky_hidden",
                           .label = "Elevation of the boat's outline, seen from the receiver",
                           .symbol = "m",
                           .formula = "atan(h / d) * 180 / pi",
                           .terms = {{"h", up_m, "m", "her highest to the eye, over the receiver"},
                                     {"d", away_m, "m", "from the receiver along the boat"},
                                     {"pi", std::numbers::pi, "", "circle over its diameter"}},
                           .value = elevation_deg,
                           .unit = "deg",
                           .source = kDefinition,
                           .assumptions = {"As wide as the boat, the safe side; people not counted."}});
  });
  return elevation_deg;
}

// Height at which no point of the outline stands over the limit.
double clear_height_m(const ReceiverInput& in) {
  double z_m = in.z_m;
  look_at(in, [&](double here_m, double height_m) {
    z_m = std::max(z_m, height_m - here_m * std::tan(rad_from_deg(kSky_deg)));
  });
  return 0.01 * std::ceil(100.0 * z_m);
}

void receiver(const ControlInput& in, ControlResult& r) {
  const double swing_cm = 100.0 * std::abs(in.receiver.z_m) * std::sin(rad_from_deg(in.heading.tilt_deg));
  say(r.trace, "control.receiver",
      "Fix the position receiver rigidly at the bow under open sky: it is its own place that is held. "
      "There it swings " + fixed(swing_cm, 0) + " cm to each side when she rolls " +
          fixed(in.heading.tilt_deg, 0) +
          " degrees. Keep it a metre from VHF aerials, out of a radar's beam, half a metre from the feeder.",
      kCommonPractice);
  const bool seen = in.receiver.placed && !in.receiver.boat.empty();
  if (in.receiver.placed) {
    r.trace.checks.push_back({.id = "control.receiver_gap",
                              .label = "Receiver clear of the feeder",
                              .actual = in.receiver.gap_m,
                              .limit = kReceiverGap_m,
                              .unit = "m",
                              .comparison = Comparison::at_least,
                              .source = kCommonPractice,
                              .remedy = "Half a metre between the receiver and the feeder.",
                              .changes = {raised(in.receiver.off_feeder_m)}});
  }
  if (!in.sky_clear_deg && !seen) {
    open_question(r.trace, "control.receiver_clear_deg",
                  "What hides the sky from the receiver is not measured yet.", kCommonPractice);
    return;
  }
  const double clear_deg = in.sky_clear_deg ? *in.sky_clear_deg : hidden_deg(in.receiver, r.trace);
  const double rad = rad_from_deg(clear_deg);
  r.sky_frac = 1.0 - std::sin(rad);
  tell([&] {
    r.trace.steps.push_back({.id = "control.sky",
                             .label = "Share of the sky above the worst obstacle",
                             .symbol = "s",
                             .formula = "1 - sin(m)",
                             .terms = {{"m", rad, "rad", "elevation up to which something hides the sky"}},
                             .value = r.sky_frac,
                             .unit = "frac",
                             .source = kDefinition,
                             .assumptions = {"As if it stood that high all round, the safe side. Receivers leave "
                                             "out the lowest 5 to 15 degrees anyhow; fewer satellites make the "
                                             "fix wander, and the boat with it (common practice)."}});
  });
  r.trace.checks.push_back({.id = "control.sky",
                            .label = "Sky clear above",
                            .actual = clear_deg,
                            .limit = kSky_deg,
                            .unit = "deg",
                            .source = kCommonPractice,
                            .remedy = "Raise the receiver, or move it forward of hardtop and people: half of the sky "
                                      "is hidden at 30 degrees."});
  if (!in.sky_clear_deg) r.trace.checks.back().changes.push_back(raised(clear_height_m(in.receiver)));
}

void remote(const ControlInput& in, Trace& trace) {
  if (!in.remote) {
    open_question(trace, "control.remote", "How the remote gets its power is not said yet.", kCommonPractice);
    return;
  }
  if (*in.remote == RemotePower::wired) {
    say(trace, "control.remote",
        "A wired remote: lead its cable clear of the feeder, with a drip loop, and ask whether it carries "
        "the bank's minus.",
        kCommonPractice);
    return;
  }
  const bool cells = *in.remote == RemotePower::cells;
  say(trace, "control.remote",
      cells ? "Keep a spare set of cells for the remote aboard, dry; a motor without its remote holds on, or "
              "must be stopped at its own switch: know which."
            : "Charge the remote with the bank, every night, and carry its lead; know how to stop the motor "
              "when it is flat.",
      kCommonPractice);
  if (!in.remote_h) {
    open_question(trace, "control.remote_h", "How long the remote runs is not known yet: its papers say.",
                  kCommonPractice);
    return;
  }
  trace.checks.push_back({.id = "control.remote",
                          .label = "Remote outlasts the day",
                          .actual = *in.remote_h,
                          .limit = in.hours_on_h,
                          .unit = "h",
                          .comparison = Comparison::at_least,
                          .source = kCommonPractice,
                          .remedy = "Carry a spare remote or spare cells, charge it under way, or use a wired one.",
                          .changes = {{.field = "control.remote",
                                       .value = static_cast<double>(RemotePower::wired),
                                       .label = "Use a remote on a cable"}}});
}

// --- switch -------------------------------------------------------------------------------------

void check_switch_rating(const ControlInput& in, Trace& trace) {
  if (in.main_switch == MainSwitch::none) return;
  if (!in.switch_rated_A) {
    open_question(trace, "control.switch_rated_A",
                  "Choose a switch for " + fixed(std::ceil(in.current_A), 0) +
                      " A or more, continuous, and for the bank's charge voltage.",
                  kCommonPractice);
    return;
  }
  trace.checks.push_back({.id = "control.switch",
                          .label = "Switch carries the motor",
                          .actual = *in.switch_rated_A,
                          .limit = in.current_A,
                          .unit = "A",
                          .comparison = Comparison::at_least,
                          .source = kCommonPractice,
                          .remedy = "A switch whose continuous rating is at least the motor's current at full thrust.",
                          .changes = {{.field = "control.switch_rated_A",
                                       .clear = true,
                                       .label = "Fit a larger switch"}}});
}

void main_switch(const ControlInput& in, ControlResult& r) {
  Trace& trace = r.trace;
  check_switch_rating(in, trace);
  if (in.main_switch == MainSwitch::none && !in.breaker) {
    trace.checks.push_back({.id = "control.no_switch",
                            .label = "Bank without a switch",
                            .actual = in.bank_Ah,
                            .limit = kSwitchedBank_Ah,
                            .unit = "Ah",
                            .source = kE11Switch,
                            .remedy = "Fit a switch within reach of the bank, or a breaker that is marked as one.",
                            .changes = {{.field = "control.main_switch",
                                         .value = static_cast<double>(MainSwitch::own),
                                         .label = "A switch of its own by the bank"}}});
  }
  if (in.main_switch == MainSwitch::house) {
    say(trace, "control.house_switch",
        "Give the motor's bank its own switch where its voltage is not the boat's: no position of a common "
        "one may join 24 to 48 V to a 12 V bus.",
        kCommonPractice);
  }
  say(trace, "control.switch",
      std::string("Connect on the bank's side of the switch, each with its own fuse: bilge pump, alarm, memories, "
                  "the charger. Never open it under load; lock it open to work. ") +
          (in.link.floating ? "The bank floats, so the switch opens both poles. " : "") +
          "Local codes and a licensed electrician have the last word.",
      kE11Switch);
  say(trace, "control.charter",
      "On charter, an emergency switch must be in reach: ask the inspector.", kCharterSwitch);
  say(trace, "control.charter_cable",
      "On charter, lead cable so that it spares radio reception and compass: ask the inspector.",
      kCharterCompass);
  if (in.always_on_W) {
    r.standing_Wh = *in.always_on_W * kDay_h;
    tell([&] {
      trace.steps.push_back({.id = "control.standing",
                             .label = "Taken in a day by what is always on",
                             .symbol = "E_s",
                             .formula = "P * t",
                             .terms = {{"P", *in.always_on_W, "W", "always on"}, {"t", kDay_h, "h", "a day"}},
                             .value = r.standing_Wh,
                             .unit = "Wh",
                             .source = kDefinition,
                             .assumptions = {"Not counted in the bank's day: lead it from the boat's own battery."}});
    });
  }
}

}  // namespace

ControlResult control(const ControlInput& in) {
  ControlResult r;
  heading_sensor(in.heading, r);
  alignment(in, r);
  receiver(in, r);
  remote(in, r.trace);
  r.link = data_link(in.link, r.trace);
  main_switch(in, r);
  return r;
}

}  // namespace thole
