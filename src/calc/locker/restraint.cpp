#include "calc/locker/restraint.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "base/units.h"
#include "data/sources.h"
#include "data/sources_battery.h"

namespace thole {
namespace {

constexpr double kCap_N = 400.0;                  // 90 lbf as the rule rounds it, kRestraintUs
constexpr double kTwice_factor = 2.0;             // kRestraintUs, kRestraintIso
constexpr double kUsGives_m = 0.0254;             // kRestraintUs
constexpr double kIsoGives_m = 0.010;             // kRestraintIso
constexpr double kStrapUse_frac = 0.5;            // kCommonPractice: of a strap's rating
constexpr int kLeastStraps_count = 2;             // kCommonPractice
constexpr int kMostStraps_count = 8;              // more cannot lie side by side over one block
constexpr double kLeastWall_m = 0.050;            // kCommonPractice
constexpr double kWallOfHeight_frac = 1.0 / 3.0;  // kCommonPractice

// Times the weight.
struct SlamFactors {
  double vertical_factor = 0.0;
  double fore_aft_factor = 0.0;
  double side_factor = 0.0;
};

double known_g(const RestraintInput& in) {
  return std::isfinite(in.slam_known_g) ? std::max(0.0, in.slam_known_g) : 0.0;
}

SlamFactors slam_factors(const RestraintInput& in) {
  SlamFactors slam = in.at_bow ? SlamFactors{6.0, 3.0, 3.0} : SlamFactors{4.0, 3.0, 2.0};
  slam.vertical_factor = std::max(slam.vertical_factor, known_g(in));
  return slam;
}

Step force_step(std::string id, std::string label, double mass_kg, double factor, double value_N,
                const Source& source) {
  return {.id = std::move(id),
          .label = std::move(label),
          .symbol = "F",
          .formula = "n * m * g",
          .terms = {{"n", factor, "", "times its weight"},
                    {"m", mass_kg, "kg", "weight of a block"},
                    {"g", kGravity_mps2, "m/s2", "standard gravity"}},
          .value = value_N,
          .unit = "N",
          .source = source};
}

void write_rules(const RestraintInput& in, RestraintResult& result) {
  const double weight_N = in.block_mass_kg * kGravity_mps2;
  const double twice_N = kTwice_factor * weight_N;
  const double us_N = std::min(kCap_N, twice_N);
  std::vector<Step>& steps = result.trace.steps;
  Step us = force_step("locker.restraint_us", "Hold-down force, 33 CFR", in.block_mass_kg,
                       kTwice_factor, us_N, kRestraintUs);
  us.formula = "min(F_cap, n * m * g)";
  us.terms.push_back({"F_cap", kCap_N, "N", "90 lbf, as the rule rounds it"});
  tell([&] {
    steps.push_back(std::move(us));
  });
  result.rules.push_back({"us", "33 CFR 183.420", us_N, us_N, us_N, kUsGives_m, kRestraintUs});
  tell([&] {
    steps.push_back(force_step("locker.restraint_iso", "Hold-down force, ISO", in.block_mass_kg,
                               kTwice_factor, twice_N, kRestraintIso));
  });
  result.rules.push_back(
      {"iso", "ISO 10133", twice_N, twice_N, twice_N, kIsoGives_m, kRestraintIso});
  if (!in.planes && known_g(in) == 0.0) return;
  const SlamFactors slam =
      in.planes ? slam_factors(in) : SlamFactors{known_g(in), kTwice_factor, kTwice_factor};
  tell([&] {
    steps.push_back(force_step("locker.restraint_slam", "Hold-down force, slamming, up and down",
                               in.block_mass_kg, slam.vertical_factor,
                               slam.vertical_factor * weight_N, kCommonPractice));
    steps.push_back(force_step("locker.restraint_fore_aft", "Slamming, fore and aft",
                               in.block_mass_kg, slam.fore_aft_factor,
                               slam.fore_aft_factor * weight_N, kCommonPractice));
    steps.push_back(force_step("locker.restraint_side", "Slamming, to the side", in.block_mass_kg,
                               slam.side_factor, slam.side_factor * weight_N, kCommonPractice));
  });
  result.rules.push_back({"slam", in.at_bow ? "Slamming, bow locker" : "Slamming",
                          slam.vertical_factor * weight_N, slam.fore_aft_factor * weight_N,
                          slam.side_factor * weight_N, 0.0, kCommonPractice});
}

// The largest of the rules counts.
void take_largest(RestraintResult& result) {
  Step step{.id = "locker.restraint",
            .label = "Hold-down force of a block, the largest",
            .symbol = "F",
            .unit = "N"};
  for (const RestraintRule& rule : result.rules) {
    if (rule.vertical_N > result.vertical_N) {
      result.vertical_N = rule.vertical_N;
      result.governs = rule.id;
      step.source = rule.source;
    }
    result.fore_aft_N = std::max(result.fore_aft_N, rule.fore_aft_N);
    result.side_N = std::max(result.side_N, rule.side_N);
  }
  step.formula = result.rules.size() > 2 ? "max(F_us, F_iso, F_slam)" : "max(F_us, F_iso)";
  step.terms = {{"F_us", result.rules[0].vertical_N, "N", "33 CFR 183.420"},
                {"F_iso", result.rules[1].vertical_N, "N", "ISO 10133"}};
  if (result.rules.size() > 2) {
    step.terms.push_back({"F_slam", result.rules[2].vertical_N, "N", "slamming, up and down"});
  }
  step.value = result.vertical_N;
  tell([&] {
    result.trace.steps.push_back(std::move(step));
  });
}

void write_straps(const RestraintInput& in, RestraintResult& result) {
  const bool rated = in.strap_rated_N > 0.0 && std::isfinite(in.strap_rated_N);
  result.strap_count = kLeastStraps_count;
  if (in.strap_count > 0) {
    result.strap_count = in.strap_count;
  } else if (rated) {
    const double needed_count =
        std::ceil(result.vertical_N / (kStrapUse_frac * in.strap_rated_N) - 1e-9);
    result.strap_count =
        static_cast<int>(std::clamp(needed_count, static_cast<double>(kLeastStraps_count),
                                    static_cast<double>(kMostStraps_count)));
  }
  result.strap_need_N = result.vertical_N / (kStrapUse_frac * result.strap_count);
  result.wall_m = std::max(kLeastWall_m, kWallOfHeight_frac * in.block_height_m);
  Trace& trace = result.trace;
  tell([&] {
    trace.steps.push_back(
        {.id = "locker.strap",
         .label = "Rating that each strap needs",
         .symbol = "R",
         .formula = "F / (u * n)",
         .terms = {{"F", result.vertical_N, "N", "the largest upward load of a block"},
                   {"u", kStrapUse_frac, "", "share of its rating that a strap may carry"},
                   {"n", static_cast<double>(result.strap_count), "", "straps over a block"}},
         .value = result.strap_need_N,
         .unit = "N",
         .source = kCommonPractice});
    trace.steps.push_back({.id = "locker.wall",
                           .label = "Height of the tray's wall against sliding",
                           .symbol = "w",
                           .formula = "max(w_min, h / 3)",
                           .terms = {{"w_min", kLeastWall_m, "m", "the least"},
                                     {"h", in.block_height_m, "m", "height of the block"}},
                           .value = result.wall_m,
                           .unit = "m",
                           .source = kCommonPractice,
                           .assumptions = {"The greater of the two customs."}});
  });
  if (in.strap_count > 0) {
    trace.checks.push_back(
        {.id = "locker.strap_count",
         .label = "Straps missing over each block",
         .actual = static_cast<double>(std::max(0, kLeastStraps_count - result.strap_count)),
         .limit = 0.0,
         .source = kCommonPractice,
         .remedy = "Put two straps over each block: one lets it tip."});
  }
  if (rated) {
    trace.checks.push_back({.id = "locker.strap",
                            .label = "Rating of each strap",
                            .actual = in.strap_rated_N,
                            .limit = result.strap_need_N,
                            .unit = "N",
                            .comparison = Comparison::at_least,
                            .source = kCommonPractice,
                            .remedy = "Fit stronger straps, or more of them over each block."});
  }
}

}  // namespace

RestraintResult restrain(const RestraintInput& in) {
  RestraintResult result{};
  if (!(in.block_mass_kg > 0.0 && std::isfinite(in.block_mass_kg) && in.block_height_m > 0.0 &&
        std::isfinite(in.block_height_m))) {
    return result;
  }
  write_rules(in, result);
  take_largest(result);
  write_straps(in, result);
  result.trace.cautions.push_back({"locker.anchors",
                                   "Bolt the strap anchors through the structure; screws pull out.",
                                   kCommonPractice});
  result.trace.cautions.push_back(
      {"locker.drill",
       "Before you drill, look what is behind: tanks, hoses, cables, the hull itself. Never drill "
       "where petrol vapour may be.",
       kCommonPractice});
  result.trace.cautions.push_back(
      {"locker.give", "Try it with the load: a block may move 10 mm at most, in any direction.",
       kRestraintIso});
  if (in.planes) {
    result.trace.cautions.push_back(
        {"locker.trailer",
         "Look at the straps after each tow: a trailer can shake harder than the sea.",
         kCommonPractice});
  }
  return result;
}

}  // namespace thole
