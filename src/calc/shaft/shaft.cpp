#include "calc/shaft/shaft.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include "base/units.h"
#include "calc/shaft/immersion.h"
#include "calc/shaft/motion.h"
#include "calc/shaft/tube.h"
#include "data/sources.h"
#include "data/sources_float.h"

namespace thole {
namespace {

constexpr double kPi = std::numbers::pi;

// The surface is taken to fall two standard deviations: one trough in seven goes lower.
constexpr double kMotion_factor = 2.0;  // project decision
// Below this the propeller draws air when it pulls at the post, whatever the sea.
constexpr double kLeastImmersion_ratio = 1.0;  // project decision, on the tests of Koushan 2006

// Shares of the tube's strength that full thrust may use. The motor limits its own thrust, so a
// metal may come near to yield (ISO 12215-5:2008 Table 8 has 0.9 for plating); a composite keeps
// the half that ISO 12215-5:2008 Tables 7 and 18 ask for. Project decision.
constexpr double kMetalShare_frac = 0.9;
constexpr double kCompositeShare_frac = 0.5;

constexpr double kLeastArm_m = 0.05;      // a tube ends below its mount
constexpr double kPodWithWater_kg = 8.0;  // pod and the water that moves with it; project decision
constexpr double kLockIn_factor = 5.0;    // speed over frequency times diameter (recalled)
constexpr double kLockInFrom_frac = 4.0 / 5.0;  // of the worst speed: U / (f d) from 4 to 8 (recalled)
constexpr double kLockInTo_frac = 8.0 / 5.0;

double radius_m(const ShaftInput& in) { return 0.5 * in.propeller_diameter_m; }
double period_s(const ShaftInput& in) { return std::max(in.wave_period_s, kShortestWave_s); }
double arm_m(const ShaftInput& in, const ShaftResult& r) {
  return std::max(r.length_m - in.collar_m, kLeastArm_m);
}

void find_motion(const ShaftInput& in, ShaftResult& r) {
  const FloatingHull hull{.waterline_length_m = in.waterline_length_m,
                          .waterline_beam_m = in.waterline_beam_m,
                          .draft_m = in.draft_m};
  const double x_m = in.thruster_forward_m;
  const double wavelength_m = deep_wavelength_m(period_s(in));
  const BoxResponse box =
      box_response(wavelength_m / in.waterline_length_m, x_m / in.waterline_length_m);
  const BowResponse peak = bow_response(hull, x_m, period_s(in));
  const double box_fall_m = 0.5 * box.relative_ratio * in.wave_height_m;
  r.relative_sigma_m = relative_motion_sigma_m(hull, x_m, in.wave_height_m, period_s(in));
  r.relative_motion_m = std::max(kMotion_factor * r.relative_sigma_m, box_fall_m);

  std::vector<Step>& steps = r.trace.steps;
  tell([&] {
    steps.push_back({.id = "shaft.wavelength",
                     .label = "Length of the waves",
                     .symbol = "lambda",
                     .formula = "g * T^2 / (2 * pi)",
                     .terms = {{"g", kGravity_mps2, "mps2", "gravity"},
                               {"T", period_s(in), "s", "peak period of the waves"},
                               {"pi", kPi, "", "circle constant"}},
                     .value = wavelength_m,
                     .unit = "m",
                     .source = kAiryWave,
                     .assumptions = {"Deep water. The worst wave is as long as the waterline."}});
  });
  const double u = kPi * in.waterline_length_m / wavelength_m;
  tell([&] {
    steps.push_back({.id = "shaft.box_motion",
                     .label = "Fall of the water at the bow in a regular wave",
                     .symbol = "a_box",
                     .formula =
                         "H / 2 * sqrt((cos(2 * u * x / L) - sin(u) / u)^2 + (sin(2 * u * x / L) "
                         "- 6 * (sin(u) / u^2 - cos(u) / u) * x / L)^2)",
                     .terms = {{"H", in.wave_height_m, "m", "significant wave height"},
                               {"u", u, "", "half the waterline in wave radians: pi L / wavelength"},
                               {"x", x_m, "m", "shaft forward of midships"},
                               {"L", in.waterline_length_m, "m", "waterline length"}},
                     .value = box_fall_m,
                     .unit = "m",
                     .source = kProjectDecision,
                     .assumptions = {"A box that follows a head wave, without dynamics."}});
    steps.push_back({.id = "shaft.response",
                     .label = "Water against the bow at the peak of the sea, per metre of wave",
                     .symbol = "r",
                     .formula = "sqrt((h - cos(k * x))^2 + (sin(k * x) - x * p)^2)",
                     .terms = {{"h", peak.heave_ratio, "", "heave per metre of wave, closed form"},
                               {"p", peak.pitch_rad_per_m, "rad_per_m", "pitch per metre of wave"},
                               {"k", 2.0 * kPi / wavelength_m, "rad_per_m", "wave number"},
                               {"x", x_m, "m", "shaft forward of midships"}},
                     .value = peak.relative_ratio,
                     .unit = "",
                     .source = kJensen2004,
                     .assumptions = {"Head sea, no way on; made for ships, so +/- 30 % here."}});
  });
  if (r.relative_sigma_m > 0.0) {
    tell([&] {
      steps.push_back(
          {.id = "shaft.relative_sigma",
           .label = "Standard deviation of the water against the bow",
           .symbol = "sigma",
           .formula = "H / 4 * q",
           .terms = {{"H", in.wave_height_m, "m", "significant wave height"},
                     {"q", 4.0 * r.relative_sigma_m / in.wave_height_m, "",
                      "response averaged over the frequencies of the sea"}},
           .value = r.relative_sigma_m,
           .unit = "m",
           .source = kJensen2004,
           .assumptions = {"A JONSWAP sea, peak enhancement 3.3, summed from half to five "
                           "times the peak frequency."}});
    });
  }
  tell([&] {
    steps.push_back(
        {.id = "shaft.relative_motion",
         .label = "Fall of the water at the bow to allow for",
         .symbol = "a_rel",
         .formula = "max(c * sigma, a_box)",
         .terms = {{"c", kMotion_factor, "", "standard deviations allowed for"},
                   {"sigma", r.relative_sigma_m, "m", "in the irregular sea"},
                   {"a_box", box_fall_m, "m", "in a regular wave"}},
         .value = r.relative_motion_m,
         .unit = "m",
         .source = kProjectDecision,
         .assumptions = {"The larger of two estimates; wakes of other boats count too."}});
  });
}

void find_required(const ShaftInput& in, ShaftResult& r) {
  const double trough_m =
      std::max(in.immersion_ratio * in.propeller_diameter_m + r.relative_motion_m,
               radius_m(in) + kMotion_factor * r.relative_sigma_m);
  r.depth_required_m = trough_m + in.trim_allowance_m;
  r.length_required_m = in.bow_height_m + in.collar_m + r.depth_required_m;
  tell([&] {
    r.trace.steps.push_back(
        {.id = "shaft.depth_required",
         .label = "Depth of the propeller's axis in calm water, needed",
         .symbol = "h_req",
         .formula = "max(i * D + a_rel, D / 2 + c * sigma) + a_trim",
         .terms = {{"i", in.immersion_ratio, "", "axis depth over diameter"},
                   {"D", in.propeller_diameter_m, "m", "propeller diameter"},
                   {"a_rel", r.relative_motion_m, "m", "fall of the water at the bow"},
                   {"c", kMotion_factor, "", "standard deviations by which the tips stay covered"},
                   {"sigma", r.relative_sigma_m, "m", "standard deviation of the water"},
                   {"a_trim", in.trim_allowance_m, "m", "rise of the bow from loaded to light"}},
         .value = r.depth_required_m,
         .unit = "m",
         .source = kProjectDecision});
    r.trace.steps.push_back(
        {.id = "shaft.length_required",
         .label = "Shaft length needed, collar top to propeller axis",
         .symbol = "L_req",
         .formula = "h_bow + c + h_req",
         .terms = {{"h_bow", in.bow_height_m, "m", "deck above calm water"},
                   {"c", in.collar_m, "m", "top of the collar above the deck"},
                   {"h_req", r.depth_required_m, "m", "depth of the axis needed"}},
         .value = r.length_required_m,
         .unit = "m",
         .source = kDefinition});
  });
}

// The largest immersion ratio with which the longest length on offer would reach, in steps of 0.05.
double reachable_ratio(const ShaftInput& in, const ShaftResult& r) {
  const double spare_m = r.length_required_m - in.immersion_ratio * in.propeller_diameter_m;
  const double ratio = (r.length_m - spare_m) / in.propeller_diameter_m;
  return std::floor(20.0 * ratio + 1e-9) / 20.0;
}

Check length_check(const ShaftInput& in, const ShaftResult& r, double offered_m) {
  Check check{.id = "shaft.length",
              .label = "Shaft reaches deep enough",
              .actual = offered_m,
              .limit = r.length_required_m,
              .unit = "m",
              .comparison = Comparison::at_least,
              .source = kProjectDecision,
              .remedy =
                  "Take a longer shaft, mount the motor lower, or let its propeller run "
                  "shallower in calm water."};
  if (r.length_found) return check;
  if (in.length_m > 0.0) {
    check.changes.push_back(
        {.field = "shaft.length_m", .clear = true, .label = "Let Thole choose the length"});
  }
  const double ratio = reachable_ratio(in, r);
  if (offered_m > 0.0 && ratio >= kLeastImmersion_ratio && ratio < in.immersion_ratio) {
    check.changes.push_back({.field = "shaft.immersion_ratio",
                             .value = ratio,
                             .label = "Let the propeller run shallower"});
  }
  return check;
}

void choose_length(const ShaftInput& in, ShaftResult& r) {
  const double next_m = next_length_up_m(in.stock_lengths_m, r.length_required_m);
  const double longest_m =
      in.stock_lengths_m.empty()
          ? 0.0
          : *std::max_element(in.stock_lengths_m.begin(), in.stock_lengths_m.end());
  const double offered_m = in.length_m > 0.0 ? in.length_m : (next_m > 0.0 ? next_m : longest_m);
  r.length_found = offered_m > 0.0 && offered_m >= r.length_required_m;
  // With nothing to choose from, the length needed stands in, so that the later stages make sense.
  r.length_m = offered_m > 0.0 ? offered_m : r.length_required_m;
  r.margin_m = r.length_m - r.length_required_m;
  r.propeller_depth_m = r.length_m - in.collar_m - in.bow_height_m;
  r.draft_deployed_m = r.propeller_depth_m + radius_m(in);
  if (offered_m <= 0.0) {
    r.trace.assumptions.push_back({"shaft.length_m",
                                   "No shaft is on offer: the length needed stands in for one.",
                                   kProjectDecision});
  }

  tell([&] {
    r.trace.steps.push_back({.id = "shaft.propeller_depth",
                             .label = "Depth of the propeller's axis in calm water",
                             .symbol = "h",
                             .formula = "L - c - h_bow",
                             .terms = {{"L", r.length_m, "m", "shaft length, collar to axis"},
                                       {"c", in.collar_m, "m", "top of the collar above the deck"},
                                       {"h_bow", in.bow_height_m, "m", "deck above calm water"}},
                             .value = r.propeller_depth_m,
                             .unit = "m",
                             .source = kDefinition});
    r.trace.steps.push_back({.id = "shaft.margin",
                             .label = "Shaft length to spare",
                             .symbol = "m",
                             .formula = "L - L_req",
                             .terms = {{"L", r.length_m, "m", "shaft length"},
                                       {"L_req", r.length_required_m, "m", "shaft length needed"}},
                             .value = r.margin_m,
                             .unit = "m",
                             .source = kDefinition});
    r.trace.steps.push_back({.id = "shaft.draft_deployed",
                             .label = "Depth that the boat needs with the motor down",
                             .symbol = "d",
                             .formula = "h + D / 2",
                             .terms = {{"h", r.propeller_depth_m, "m", "depth of the axis"},
                                       {"D", in.propeller_diameter_m, "m", "propeller diameter"}},
                             .value = r.draft_deployed_m,
                             .unit = "m",
                             .source = kDefinition});
  });
  r.trace.checks.push_back(length_check(in, r, offered_m));
}

void find_immersion(const ShaftInput& in, ShaftResult& r) {
  const double light_m = r.propeller_depth_m - in.trim_allowance_m;
  const double still_factor = immersion_factor(light_m, radius_m(in));
  r.immersion_factor = mean_immersion_factor(light_m, radius_m(in), r.relative_sigma_m);
  r.emergence_frac = emergence_frac(light_m, radius_m(in), r.relative_sigma_m);

  std::vector<Step>& steps = r.trace.steps;
  tell([&] {
    steps.push_back({.id = "shaft.immersion_still",
                     .label = "Thrust left by the surface above, calm water and light boat",
                     .symbol = "b",
                     .formula = "max(1 - c * max(1 - e * (h - a_trim) / R, 0)^n, 0)",
                     .terms = {{"h", r.propeller_depth_m, "m", "depth of the axis"},
                               {"a_trim", in.trim_allowance_m, "m", "rise of the bow when light"},
                               {"R", radius_m(in), "m", "propeller radius"},
                               {"c", kMinsaasLoss_factor, "", "loss with the axis at the surface"},
                               {"e", kMinsaasDepth_factor, "", "depth that ends the loss, inverted"},
                               {"n", kMinsaasLoss_exponent, "", "shape of the curve"}},
                     .value = still_factor,
                     .unit = "",
                     .source = kMinsaas1983});
    steps.push_back({.id = "shaft.immersion_factor",
                     .label = "Thrust left by the surface above, mean in waves",
                     .symbol = "b_mean",
                     .formula = "b - l",
                     .terms = {{"b", still_factor, "", "in calm water"},
                               {"l", still_factor - r.immersion_factor, "",
                                "lost by the motion, averaged over a normal distribution of depth"}},
                     .value = r.immersion_factor,
                     .unit = "",
                     .source = kMinsaas1983,
                     .assumptions = {"Air drawn down at the post comes on top; the depth rule of 1.5 "
                                     "diameters stands against it."}});
  });
  if (r.relative_sigma_m > 0.0) {
    const double cover = (light_m - radius_m(in)) / r.relative_sigma_m;
    tell([&] {
      steps.push_back(
          {.id = "shaft.cover",
           .label = "Water over the blade tips, in standard deviations of the motion",
           .symbol = "t",
           .formula = "(h - a_trim - R) / sigma",
           .terms = {{"h", r.propeller_depth_m, "m", "depth of the axis"},
                     {"a_trim", in.trim_allowance_m, "m", "rise of the bow when light"},
                     {"R", radius_m(in), "m", "propeller radius"},
                     {"sigma", r.relative_sigma_m, "m", "standard deviation of the water"}},
           .value = cover,
           .unit = "",
           .source = kProjectDecision});
      steps.push_back({.id = "shaft.emergence",
                       .label = "Share of time in which a blade tip shows",
                       .symbol = "p",
                       .formula = "1 - s",
                       .terms = {{"s", 1.0 - r.emergence_frac, "",
                                  "share of a normal distribution below that many deviations"}},
                       .value = 1.0 - (1.0 - r.emergence_frac),
                       .unit = "",
                       .source = kProjectDecision});
    });
  }
  Check check{.id = "shaft.immersion",
              .label = "Thrust left near the surface",
              .actual = r.immersion_factor,
              .limit = in.assumed_immersion_factor,
              .unit = "",
              .comparison = Comparison::at_least,
              .source = kProjectDecision,
              .remedy =
                  "Take a longer shaft: the propeller comes too near the surface for the thrust "
                  "that the hold counts on."};
  if (check.verdict() == Verdict::fail && in.length_m > 0.0) {
    check.changes.push_back(
        {.field = "shaft.length_m", .clear = true, .label = "Let Thole choose the length"});
  }
  r.trace.checks.push_back(std::move(check));
}

void bend_tube(const ShaftInput& in, ShaftResult& r) {
  Check check{.id = "shaft.tube",
              .label = "Shaft tube bears full thrust",
              .actual = std::numeric_limits<double>::quiet_NaN(),
              .limit = 0.0,
              .unit = "MPa",
              .comparison = Comparison::at_most,
              .source = kProjectDecision,
              .remedy =
                  "Take a motor with a stouter tube, a shorter shaft, or limit its thrust in "
                  "its settings."};
  const bool known = in.tube_outer_mm > 0.0 && in.tube_wall_mm > 0.0 && in.tube_yield_MPa > 0.0 &&
                     in.tube_modulus_GPa > 0.0;
  if (!known) {
    check.remedy =
        "Measure the shaft tube's diameter and wall, and ask its maker for its strength "
        "and stiffness.";
    r.trace.checks.push_back(std::move(check));
    return;
  }
  const TubeSection section = tube_section(in.tube_outer_mm, in.tube_wall_mm);
  const double arm = arm_m(in, r);
  const Cantilever beam = bend(section, in.tube_modulus_GPa, arm, in.thrust_N);
  const bool composite = is_composite(in.tube_modulus_GPa);
  const double share_frac = composite ? kCompositeShare_frac : kMetalShare_frac;
  r.tube_stress_MPa = beam.stress_MPa;
  r.tube_deflection_mm = beam.deflection_mm;
  r.tube_slope_deg = deg_from_rad(beam.slope_rad);
  check.actual = r.tube_stress_MPa;
  check.limit = share_frac * in.tube_yield_MPa;

  const Term thrust{"T", in.thrust_N, "N", "static thrust"};
  const Term length{"L", arm, "m", "lower bearing at the deck to propeller axis"};
  const Term modulus{"E", in.tube_modulus_GPa, "GPa", "modulus of the tube"};
  const Term inertia{"I", section.inertia_mm4, "mm4", "second moment of the section"};
  const double swing_Hz = std::sqrt(beam.stiffness_N_per_m / kPodWithWater_kg) / (2.0 * kPi);
  const double hum_mps = kLockIn_factor * 0.001 * section.outer_mm * swing_Hz;
  if (in.current_mps > kLockInFrom_frac * hum_mps && in.current_mps < kLockInTo_frac * hum_mps)
    r.trace.cautions.push_back({.id = "shaft.hum",
                                .text = "In this current eddies keep time with the lowered shaft: it hums, whips and wears. Look at tube and clamp often.",
                                .source = kVortexShedding});
  std::vector<Step>& steps = r.trace.steps;
  tell([&] {
    steps.push_back({.id = "shaft.tube_section",
                     .label = "Second moment of the tube's section",
                     .symbol = "I",
                     .formula = "pi * (D^4 - d^4) / 64",
                     .terms = {{"pi", kPi, "", "circle constant"},
                               {"D", section.outer_mm, "mm", "outside diameter"},
                               {"d", section.inner_mm, "mm", "inside diameter"}},
                     .value = section.inertia_mm4,
                     .unit = "mm4",
                     .source = kTubeBending});
    steps.push_back(
        {.id = "shaft.tube_stress",
         .label = "Stress in the tube at full thrust",
         .symbol = "sigma",
         .formula = "1000 * T * L * D / (2 * I)",
         .terms = {thrust, length, {"D", section.outer_mm, "mm", "outside diameter"}, inertia},
         .value = r.tube_stress_MPa,
         .unit = "MPa",
         .source = kTubeBending,
         .assumptions = {"Clamped at the deck; steering torque and wear left out."}});
    steps.push_back(
        {.id = "shaft.tube_limit",
         .label = "Stress that the tube may carry",
         .symbol = "sigma_max",
         .formula = "f * S",
         .terms = {{"f", share_frac, "", composite ? "share for a composite" : "share for a metal"},
                   {"S", in.tube_yield_MPa, "MPa", composite ? "flexural strength" : "yield"}},
         .value = check.limit,
         .unit = "MPa",
         .source = kProjectDecision,
         .assumptions = {composite ? "Below 60 GPa the tube is taken for a composite."
                                   : "From 60 GPa on the tube is taken for a metal."}});
    steps.push_back(
        {.id = "shaft.tube_deflection",
         .label = "Bend of the tube at the propeller, full thrust",
         .symbol = "w",
         .formula = "1000000 * T * L^3 / (3 * E * I)",
         .terms = {thrust, length, modulus, inertia},
         .value = r.tube_deflection_mm,
         .unit = "mm",
         .source = kTubeBending,
         .assumptions = {"Small-deflection theory: beyond 10 degrees of slope too large."}});
    steps.push_back({.id = "shaft.tube_slope",
                     .label = "Tilt of the thrust by the bend",
                     .symbol = "a",
                     .formula = "1000 * T * L^2 / (2 * E * I) * 180 / pi",
                     .terms = {thrust, length, modulus, inertia, {"pi", kPi, "", "circle constant"}},
                     .value = r.tube_slope_deg,
                     .unit = "deg",
                     .source = kTubeBending});
    steps.push_back({.id = "shaft.swing",
                     .label = "How fast the lowered shaft swings by itself",
                     .symbol = "f",
                     .formula = "sqrt(k / m) / (2 * pi)",
                     .terms = {{"k", beam.stiffness_N_per_m, "N_per_m", "stiffness, 3 E I / L^3"},
                               {"m", kPodWithWater_kg, "kg", "pod and the water that moves with it"},
                               {"pi", kPi, "", "circle constant"}},
                     .value = swing_Hz,
                     .unit = "Hz",
                     .source = kTubeBending,
                     .assumptions = {"The propeller shakes it in step when it turns so often, or when so many of its blades pass, in a second: "
                                     "pass through there, do not hold there."}});
    steps.push_back({.id = "shaft.hum_speed",
                     .label = "Current in which the shaft hums worst",
                     .symbol = "U",
                     .formula = "n * d * f",
                     .terms = {{"n", kLockIn_factor, "", "speed over frequency times diameter"},
                               {"d", 0.001 * section.outer_mm, "m", "outside diameter"},
                               {"f", swing_Hz, "Hz", "how fast the shaft swings by itself"}},
                     .value = hum_mps,
                     .unit = "mps",
                     .source = kVortexShedding,
                     .assumptions = {"A humming, whipping shaft in such a tide is to be expected; it "
                                     "also wears the tube."}});
  });
  r.trace.checks.push_back(std::move(check));
}

void drag_stem(const ShaftInput& in, ShaftResult& r) {
  const double stem_m = in.tube_outer_mm > 0.0 ? 0.001 * in.tube_outer_mm : kUnknownStem_m;
  const double immersed_m = std::max(r.propeller_depth_m, 0.0);
  const double drag = drag_per_speed_squared(stem_m, immersed_m);
  r.speed_limit_deployed_mps = std::sqrt(std::max(in.thrust_N, 0.0) / drag);
  r.wave_drag_N = stem_push(stem_m, immersed_m, in.wave_height_m, period_s(in), 0.0).drag_N;

  const Term density{"rho", kStemWater_kg_per_m3, "kg_per_m3", "density of sea water"};
  const Term drag_factor{"Cd", kStemDrag_factor, "", "drag coefficient of a round tube"};
  const Term stem{"d", stem_m, "m", "tube diameter"};
  const Term depth{"z", immersed_m, "m", "tube under water"};
  tell([&] {
    r.trace.steps.push_back(
        {.id = "shaft.speed_limit_deployed",
         .label = "Speed at which drag equals the motor's thrust, motor down",
         .symbol = "V",
         .formula = "sqrt(2 * T / (rho * (Cd * d * z + Cp * A)))",
         .terms = {{"T", std::max(in.thrust_N, 0.0), "N", "static thrust"},
                   density,
                   drag_factor,
                   stem,
                   depth,
                   {"Cp", kPodDrag_factor, "", "drag coefficient of the pod (our own judgement)"},
                   {"A", kPodFrontal_m2, "m2", "pod from ahead (our own judgement)"}},
         .value = r.speed_limit_deployed_mps,
         .unit = "mps",
         .source = kStemDrag});
    r.trace.steps.push_back(
        {.id = "shaft.wave_drag",
         .label = "Drag of the waves on the tube",
         .symbol = "F",
         .formula = "rho / 2 * Cd * d * (pi * H / T)^2 * (1 - exp(-2 * k * z)) / (2 * k)",
         .terms = {density,
                   drag_factor,
                   stem,
                   depth,
                   {"pi", kPi, "", "circle constant"},
                   {"H", in.wave_height_m, "m", "significant wave height"},
                   {"T", period_s(in), "s", "peak period"},
                   {"k", 2.0 * kPi / deep_wavelength_m(period_s(in)), "rad_per_m", "wave number"}},
         .value = r.wave_drag_N,
         .unit = "N",
         .source = kStemDrag,
         .assumptions = {
             "Shown because it is small: current and the boat's own speed load the tube."}});
  });
}

void warn(Trace& trace) {
  trace.cautions.push_back(
      {.id = "shaft.deployed_speed",
       .text = "Lift the motor before you run: never go faster than the limit shown with the motor "
               "down. Beyond it the water pushes harder than the motor ever does. Its maker's own "
               "limit goes first.",
       .source = kStemDrag});
  trace.cautions.push_back({.id = "shaft.shoal",
                            .text =
                                "Lift the motor in shoal water: it reaches deeper than the hull, "
                                "and its mount is not made for a grounding.",
                            .source = kProjectDecision});
  trace.cautions.push_back(
      {.id = "shaft.cut",
       .text =
           "Do not cut or splice a shaft unless its maker says how: cables run inside it, and its "
           "strength is at the mount. Measure collar to axis on the boat, loaded and light, "
           "before you order.",
       .source = kCommonPractice});
  trace.cautions.push_back({.id = "shaft.clearance",
                            .text =
                                "Turn the motor through its full circle by hand before first use: "
                                "keep a sixth of the propeller's diameter clear of stem and hull.",
                            .source = kCommonPractice});
}

}  // namespace

double next_length_up_m(const std::vector<double>& lengths_m, double needed_m) {
  double best_m = 0.0;
  for (const double length_m : lengths_m) {
    if (length_m >= needed_m && (best_m <= 0.0 || length_m < best_m)) best_m = length_m;
  }
  return best_m;
}

ShaftResult shaft(const ShaftInput& in) {
  ShaftResult result;
  find_motion(in, result);
  find_required(in, result);
  choose_length(in, result);
  find_immersion(in, result);
  bend_tube(in, result);
  drag_stem(in, result);
  warn(result.trace);
  return result;
}

}  // namespace thole
