#include "calc/mount/mount_parts.h"

#include <numbers>

#include "base/number.h"
#include "base/order.h"
#include "base/units.h"
#include "calc/mount/bolt_group.h"
#include "calc/mount/plate_rules.h"
#include "data/sources.h"
#include "data/sources_mount.h"

namespace thole::mounting {
namespace {

constexpr double kCountersinkDepth_frac = 2.0 / 3.0;
constexpr double kEdge_factor = 2.0;     // hole diameters, EN 1993-1-8 Table 3.3
constexpr double kSpacing_factor = 3.0;  // bolt diameters
constexpr double kLaminateSpacing_factor = 4.0;  // recalled, as the next
constexpr double kDeckEdge_factor = 3.0;
constexpr double kFarEdge_factor = 4.0;  // 4 t + 40 mm, EN 1993-1-8 Table 3.3
constexpr double kFarEdge_mm = 40.0;
constexpr double kBedded_mm = 150.0;  // common practice
constexpr double kSealed_factor = 14.0;  // of the plate's thickness, EN 1993-1-8 Table 3.3
constexpr double kSealed_mm = 200.0;
constexpr int kDirectionStep_deg = 5;
constexpr int kRowLimit = 6;

struct WorstBolt {
  double value_N = 0.0;
  double angle_rad = 0.0;
  BoltPoint at{};
};

// `at`: the shaft, from the pattern's middle.
void add_thrust_steps(const MountInput& in, const BoltPattern& pattern, const LoadPoint& at,
                      const WorstBolt& tension, const WorstBolt& shear, Trace& trace) {
  const GroupMoments sum = group_moments(pattern.bolts);
  const char* const every_side =
      "The worst of thrusts from every side in steps of 5 degrees, and of all bolts.";
  tell([&] {
    trace.steps.push_back(
        {.id = "mount.bolt_tension_thrust",
         .label = "Tension in the worst bolt at full thrust",
         .symbol = "N_T",
         .formula = "1000 * T * h * (sin(theta) * y / I_y + cos(theta) * x / I_x)",
         .terms = {{"T", in.thrust_N, "N", "full thrust"},
                   {"h", in.thrust_lever_m, "m", "propeller axis below the plate"},
                   {"theta", tension.angle_rad, "rad", "direction of the thrust, from ahead"},
                   {"x", tension.at.x_mm, "mm", "worst bolt forward of the pattern's middle"},
                   {"y", tension.at.y_mm, "mm", "worst bolt to port of it"},
                   {"I_x", sum.x_mm2, "mm2", "sum of x squared over the bolts"},
                   {"I_y", sum.y_mm2, "mm2", "sum of y squared over the bolts"}},
         .value = tension.value_N,
         .unit = "N",
         .source = kBoltGroup,
         .assumptions = {every_side, "Preloaded bolts share by the elastic method."}});
    trace.steps.push_back(
        {.id = "mount.bolt_shear",
         .label = "Shear in the worst bolt at full thrust",
         .symbol = "V_T",
         .formula =
             "T * sqrt((cos(theta) / n - x_0 * sin(theta) * y / J)^2 + (sin(theta) / n + x_0 * "
             "sin(theta) * x / J)^2)",
         .terms = {{"T", in.thrust_N, "N", "full thrust"},
                   {"theta", shear.angle_rad, "rad", "direction of the thrust, from ahead"},
                   {"n", double(pattern.bolts.size()), "", "bolts"},
                   {"x_0", at.x_mm, "mm", "shaft forward of the pattern's middle"},
                   {"x", shear.at.x_mm, "mm", "worst bolt forward of the pattern's middle"},
                   {"y", shear.at.y_mm, "mm", "worst bolt to port of it"},
                   {"J", sum.polar_mm2, "mm2", "sum of x and y squared over the bolts"}},
         .value = shear.value_N,
         .unit = "N",
         .source = kBoltGroup,
         .assumptions = {every_side, "The shaft stands as far ahead as the stowed motor's weight."}});
    // Bolts moved about are no mirror image, and the shaft not amid them.
    if (in.bolt_places.empty()) return;
    Step& pulled = *(trace.steps.end() - 2);
    pulled.formula = "1000 * T * h * (x * (cos(theta) * I_y - sin(theta) * I_xy) + y * (sin(theta) * I_x - cos(theta) * "
                     "I_xy)) / (I_x * I_y - I_xy^2)";
    pulled.terms.push_back({"I_xy", sum.xy_mm2, "mm2", "sum of x times y over the bolts"});
    Step& sheared = trace.steps.back();
    sheared.formula = "T * sqrt((cos(theta) / n - m * y / J)^2 + (sin(theta) / n + m * x / J)^2)";
    sheared.terms[3] = {"m", at.x_mm * std::sin(shear.angle_rad) - at.y_mm * std::cos(shear.angle_rad), "mm",
                        "the shaft's lever about the pattern's middle, to this thrust"};
  });
}

// One more row, with the plate to carry it.
void add_row_changes(const MountInput& in, std::vector<Change>& changes) {
  if (!in.bolt_places.empty() || in.outlined) return;
  const double length_mm =
      round_up((in.plate_length_mm + in.bolt_pitch_mm) / (1.0 - kAftMargin_frac), 10.0);
  if (in.bolt_rows >= kRowLimit || length_mm > kLengthLimit_mm) return;
  changes.push_back(set_field("mount.bolt_rows", in.bolt_rows + 1.0, "Add a row of bolts"));
  changes.push_back(set_field("mount.plate_length_mm", length_mm, "Lengthen the plate"));
}

// Force that breaks the thread, or pulls a countersunk head through.
double add_breaking_force(const MountInput& in, BoltCase& bolt) {
  const bool metric = bolt.size->series == ThreadSeries::metric;
  const double head_factor = bolt_head_factor(in.countersunk);
  const double breaking_N = head_factor * tensile_N(*bolt.size, *bolt.grade);
  tell([&] {
    bolt.trace.steps.push_back(
        {.id = "mount.bolt_breaking",
         .label = "Force that breaks one bolt",
         .symbol = "F_u",
         .formula = "c * sigma_u * pi / 4 * (d - e * P)^2",
         .terms = {{"c", head_factor, "", "1 for hexagon heads, 0.7 for countersunk"},
                   {"sigma_u", bolt.grade->tensile_MPa, "MPa", "strength of the grade"},
                   {"pi", std::numbers::pi, "", "circle constant"},
                   {"d", bolt.size->diameter_mm, "mm", "bolt"},
                   {"e", metric ? 0.9382 : 0.9743, "", "depth of the thread, in pitches"},
                   {"P", bolt.size->thread_pitch_mm, "mm", "thread pitch"}},
         .value = breaking_N,
         .unit = "N",
         .source = metric ? kIso898StressArea : kAsmeB11StressArea});
  });
  return breaking_N;
}

void add_strength_checks(const MountInput& in, const BoltLoads& loads, BoltCase& bolt) {
  const double breaking_N = bolt.breaking_N = add_breaking_force(in, bolt);
  std::vector<Change> slam_changes = bolt_changes(in);
  if (!in.chocked) {
    slam_changes.push_back(set_field("mount.chocked", 1.0, "Chock the motor's outer end"));
  }
  bolt.trace.checks.push_back(
      {.id = "mount.bolt_tension",
       .label = "Front bolts in a slam",
       .actual = loads.slam_tension_N,
       .limit = kSlamBolt_frac * breaking_N,
       .unit = "N",
       .source = kProjectDecision,
       .remedy =
           "Take larger bolts, rest the stowed motor on a chock, or set the front row farther "
           "from the edge of the deck.",
       .changes = std::move(slam_changes)});
  std::vector<Change> thrust_changes = bolt_changes(in);
  add_row_changes(in, thrust_changes);
  const std::string thrust_remedy = "Take larger bolts, add a row, or set the rows farther apart.";
  const double pried_N = loads.pried_N();
  tell([&] {
    bolt.trace.steps.push_back({.id = "mount.bolt_pried",
                                .label = "Tension in the worst bolt at full thrust, prying allowed for",
                                .symbol = "N_P",
                                .formula = "q * N_T",
                                .terms = {{"q", kPrying_factor, "", "allowance for a plate that bends"},
                                          {"N_T", loads.thrust_tension_N, "N", "by the elastic group"}},
                                .value = pried_N,
                                .unit = "N",
                                .source = kProjectDecision});
  });
  bolt.trace.checks.push_back({.id = "mount.bolt_working",
                               .label = "Bolt tension at full thrust, with prying",
                               .actual = pried_N,
                               .limit = kThrustBolt_frac * breaking_N,
                               .unit = "N",
                               .source = kProjectDecision,
                               .remedy = thrust_remedy,
                               .changes = thrust_changes});
  if (in.fold_moment_Nm > 0.0 && in.thrust_lever_m > 0.0 && in.thrust_N > 0.0) {
    const double folding_N = kSnagOver_factor * pried_N * in.fold_moment_Nm / (in.thrust_N * in.thrust_lever_m);
    tell([&] {
      bolt.trace.steps.push_back({.id = "mount.bolt_folding",
                                  .label = "Tension to stand in the worst bolt, so that the shaft folds first",
                                  .symbol = "N_F",
                                  .formula = "c * N_P * M_F / (T * h)",
                                  .terms = {{"c", kSnagOver_factor, "", "so much more than folds the shaft"},
                                            {"N_P", pried_N, "N", "at full thrust"},
                                            {"M_F", in.fold_moment_Nm, "Nm", "moment at which the tube is lost"},
                                            {"T", in.thrust_N, "N", "full thrust"},
                                            {"h", in.thrust_lever_m, "m", "propeller axis below the plate"}},
                                  .value = folding_N,
                                  .unit = "N",
                                  .source = kSnag});
    });
    bolt.trace.checks.push_back({.id = "mount.bolt_folding",
                                 .label = "Bolts outlast the shaft in a snag",
                                 .actual = folding_N,
                                 .limit = std::min(yield_N(*bolt.size, *bolt.grade), breaking_N),  // a sunk head pulls through
                                 .unit = "N",
                                 .source = kSnag,
                                 .remedy = thrust_remedy,
                                 .changes = thrust_changes});
  }
  const double shear_limit_N = shear_resistance_N(*bolt.size, *bolt.grade);
  const double tension_limit_N = tension_resistance_N(*bolt.size, *bolt.grade, in.countersunk);
  const double use =
      kBoltLoad_factor * loads.shear_N / shear_limit_N +
      kBoltLoad_factor * pried_N / (kTensionInShear_factor * tension_limit_N);
  tell([&] {
    bolt.trace.steps.push_back(
        {.id = "mount.bolt_interaction",
         .label = "Shear and tension together at full thrust",
         .symbol = "u",
         .formula = "g * V_T / F_v + g * N_P / (1.4 * F_t)",
         .terms = {{"g", kBoltLoad_factor, "", "load factor"},
                   {"V_T", loads.shear_N, "N", "shear in the worst bolt"},
                   {"N_P", pried_N, "N", "tension in the worst bolt"},
                   {"F_v", shear_limit_N, "N", "resistance in shear, thread in the plane"},
                   {"F_t", tension_limit_N, "N", "resistance in tension"}},
         .value = use,
         .unit = "",
         .source = kEn1993Bolts,
         .assumptions = {"The worst bolt in tension is taken to be the worst in shear."}});
  });
  bolt.trace.checks.push_back({.id = "mount.bolt_interaction",
                               .label = "Bolts in shear and tension",
                               .actual = use,
                               .limit = 1.0,
                               .unit = "",
                               .source = kEn1993Bolts,
                               .remedy = thrust_remedy,
                               .changes = std::move(thrust_changes)});
}

void add_edge_checks(const MountInput& in, const Layout& layout, BoltCase& bolt) {
  const double needed_mm = kEdge_factor * bolt.size->hole_mm;
  const double span_mm = layout.pattern.span_mm();
  const double length_mm = round_up(std::max((span_mm + needed_mm) / (1.0 - kAftMargin_frac),
                                             span_mm + needed_mm + kAftMarginLeast_mm),
                                    10.0);
  const double width_mm = round_up(2.0 * (layout.pattern.half_mm + needed_mm), 10.0);
  const bool in_rows = in.bolt_places.empty();
  const bool cut_to_length = in_rows && !in.outlined;
  std::vector<Change> changes = bolt_changes(in);
  if (cut_to_length && layout.front_margin_mm < needed_mm && length_mm <= kLengthLimit_mm) {
    changes.push_back(set_field("mount.plate_length_mm", length_mm, "Lengthen the plate"));
  }
  if (!in_rows) changes.push_back(clear_field("mount.bolt_places", "Bolts in rows"));
  if (!in.outlined && layout.side_margin_mm < needed_mm && width_mm <= kWidthLimit_mm) {
    changes.push_back(set_field("mount.plate_width_mm", width_mm, "Widen the plate"));
  }
  bolt.trace.checks.push_back(
      {.id = "mount.edge",
       .label = "Bolts from the plate's edge",
       .actual = layout.edge_mm,
       .limit = needed_mm,
       .unit = "mm",
       .comparison = Comparison::at_least,
       .source = kEn1993Edges,
       .remedy = "Take a longer or wider plate, or draw the bolts closer together.",
       .changes = std::move(changes)});
  bolt.trace.checks.push_back({.id = "mount.bolt_spacing",
                               .label = "Bolts from one another",
                               .actual = layout.pattern.nearest_mm,
                               .limit = (in.deck == DeckKind::aluminium ? kSpacing_factor : kLaminateSpacing_factor) *
                                        bolt.size->diameter_mm,
                               .unit = "mm",
                               .comparison = Comparison::at_least,
                               .source = in.deck == DeckKind::aluminium ? SourceRef(kBoltSpacing) : SourceRef(kLaminateEdges),
                               .remedy = "Set the bolts farther apart.",
                               .changes = bolt_changes(in)});
  bolt.trace.checks.push_back({.id = "mount.deck_edge",
                               .label = "Front bolts from the deck's edge",
                               .actual = layout.deck_ahead_mm,
                               .limit = in.deck == DeckKind::aluminium ? kEdge_factor * bolt.size->hole_mm
                                                                       : kDeckEdge_factor * bolt.size->diameter_mm,
                               .unit = "mm",
                               .comparison = Comparison::at_least,
                               .source = in.deck == DeckKind::aluminium ? SourceRef(kEn1993Edges) : SourceRef(kLaminateEdges),
                               .remedy = "Lengthen the plate, so that its front bolts stand farther back from the deck's edge.",
                               .changes = [&] {
                                 std::vector<Change> farther = bolt_changes(in);
                                 if (cut_to_length && length_mm <= kLengthLimit_mm && length_mm > in.plate_length_mm)
                                   farther.push_back(set_field("mount.plate_length_mm", length_mm, "Lengthen the plate"));
                                 return farther;
                               }()});
}

void add_countersink_check(const MountInput& in, double thickness_mm, BoltCase& bolt) {
  if (!in.countersunk || !(thickness_mm > 0.0)) return;
  std::vector<Change> changes = bolt_changes(in);
  if (in.plates.size() == 1)
    changes.push_back(clear_field("mount.plate", "Let Thole choose the plate"));
  changes.push_back(set_field("mount.head", 0.0, "Use hexagon heads"));
  bolt.trace.checks.push_back(
      {.id = "mount.countersink",
       .label = "Depth of the countersinks",
       .actual = bolt.size->countersunk_head_mm,
       .limit = kCountersinkDepth_frac * thickness_mm,
       .unit = "mm",
       .source = kCountersinkDepth,
       .remedy = "Use hexagon heads, a thicker plate, or smaller bolts and more of them.",
       .changes = std::move(changes)});
}

}  // namespace

BoltLoads bolt_loads(const MountInput& in, const Layout& layout, const Slam& slam, Trace& trace) {
  const std::vector<BoltPoint>& bolts = layout.pattern.bolts;
  const LoadPoint shaft{.x_mm = layout.pattern.front_mm() + layout.reach_mm,
                        .y_mm = -layout.pattern.middle.y_mm,
                        .z_mm = -1000.0 * in.thrust_lever_m};
  WorstBolt tension{};
  WorstBolt shear{};
  // Thrusts from either side load the group alike: of equals the first stands, or else the last bit
  // of a sine would decide, and another machine name another bolt.
  const auto worse = [](double value_N, const WorstBolt& worst) {
    constexpr double kTie_ratio = 1.0 + 1e-9;
    return value_N > worst.value_N * kTie_ratio;
  };
  for (int angle_deg = 0; angle_deg < 360; angle_deg += kDirectionStep_deg) {
    const double angle_rad = rad_from_deg(angle_deg);
    const GroupLoad load =
        moved_to_centroid({.force_x_N = in.thrust_N * std::cos(angle_rad),
                           .force_y_N = in.thrust_N * std::sin(angle_rad)},
                          shaft);
    const std::vector<BoltForce> forces = elastic_forces(bolts, load);
    for (std::size_t i = 0; i < bolts.size(); ++i) {
      const BoltForce& force = forces[i];
      if (worse(force.tension_N, tension)) tension = {force.tension_N, angle_rad, bolts[i]};
      if (worse(force.shear_N, shear)) shear = {force.shear_N, angle_rad, bolts[i]};
    }
  }
  add_thrust_steps(in, layout.pattern, shaft, tension, shear, trace);

  BoltLoads loads{.thrust_tension_N = tension.value_N, .shear_N = shear.value_N};
  loads.slam_tension_N = prying_tension_N(slam.moment_Nm, layout.deck_ahead_mm, layout.pattern.front_count);
  tell([&] {
    trace.steps.push_back(
        {.id = "mount.bolt_tension_slam",
         .label = "Tension in a front bolt in a slam",
         .symbol = "N_S",
         .formula = "1000 * M_s / (n_f * a)",
         .terms = {{"M_s", slam.moment_Nm, "Nm", "bending over the edge of the deck"},
                   {"n_f", double(layout.pattern.front_count), "", "bolts in the front row"},
                   {"a", layout.deck_ahead_mm, "mm", "front row to the edge of the deck"}},
         .value = loads.slam_tension_N,
         .unit = "N",
         .source = kProjectDecision,
         .assumptions = {"Thin plates pry: the front row alone holds the plate down over the edge of "
                         "the deck. Thicker plates share more with the rows behind."}});
    trace.steps.push_back({.id = "mount.bolt_tension",
                           .label = "Tension in the worst bolt",
                           .symbol = "N",
                           .formula = "max(N_T, N_S)",
                           .terms = {{"N_T", loads.thrust_tension_N, "N", "at full thrust"},
                                     {"N_S", loads.slam_tension_N, "N", "in a slam"}},
                           .value = loads.tension_N(),
                           .unit = "N",
                           .source = kDefinition});
  });
  return loads;
}

// Between neighbours the bedding must not open, whatever the bolt.
void add_bolt_reach(const MountInput& in, const Layout& layout, double thickness_mm, Trace& trace) {
  const double limit_mm = std::max(kBedded_mm, std::min(kSealed_factor * thickness_mm, kSealed_mm));
  std::vector<Change> changes;
  if (in.bolt_places.empty() && layout.pattern.farthest_mm > limit_mm)
    changes.push_back(set_field("mount.bolt_pitch_mm", 5.0 * std::floor(limit_mm / 5.0), "Draw the rows closer together"));
  trace.checks.push_back({.id = "mount.bolt_reach",
                          .label = "Each bolt near enough to the next for tight bedding",
                          .actual = layout.pattern.farthest_mm,
                          .limit = limit_mm,
                          .unit = "mm",
                          .source = kSealedPitch,
                          .remedy = "Set the bolts closer together, or add a row.",
                          .changes = std::move(changes)});
  // Nor beyond the last of them, aft and to the sides; ahead the plate leaves the deck, and water runs off.
  const double beyond_mm = std::max(layout.aft_margin_mm, layout.side_margin_mm);
  const double most_mm = kFarEdge_factor * thickness_mm + kFarEdge_mm;
  if (thickness_mm > 0.0 && beyond_mm > most_mm)
    trace.cautions.push_back({.id = "mount.far_edge",
                              .text = std::string("The plate reaches ") + fixed(beyond_mm, 0) + " mm beyond its bolts " +
                                      (layout.aft_margin_mm > layout.side_margin_mm ? "aft" : "to the side") + ", and only " + fixed(most_mm, 0) +
                                      " mm of it keep tight by themselves: water creeps under the rest. Set the bolts nearer to that edge, or bed it "
                                      "and look at it each season.",
                              .source = kEn1993FarEdge});
}

std::vector<Change> bolt_changes(const MountInput& in) {
  if (in.bolts.size() != 1) return {};
  return {clear_field("mount.bolt", "Let Thole choose the bolts")};
}

// Smallest first, the cheapest of equals. `thickness_mm` of the plate, 0 when there is none.
std::optional<BoltCase> choose_bolt(const MountInput& in, const Layout& layout,
                                    const BoltLoads& loads, const Alloy* alloy,
                                    double thickness_mm) {
  const auto area_mm2 = [](const BoltOffer& offer) {
    const BoltSize* size = find_bolt_size(offer.size);
    return size != nullptr ? stress_area_mm2(*size) : 0.0;
  };
  const std::vector<BoltOffer> offers = sorted(in.bolts, [&](const BoltOffer& a, const BoltOffer& b) {
    if (area_mm2(a) != area_mm2(b)) return area_mm2(a) < area_mm2(b);
    return a.price_each < b.price_each;
  });
  return first_that_serves<BoltCase>(offers,
                                     [&](const BoltOffer& offer) -> std::optional<BoltCase> {
                                       BoltCase bolt{.offer = offer,
                                                     .size = find_bolt_size(offer.size),
                                                     .grade = find_bolt_grade(offer.grade)};
                                       if (bolt.size == nullptr || bolt.grade == nullptr)
                                         return std::nullopt;
                                       add_strength_checks(in, loads, bolt);
                                       add_edge_checks(in, layout, bolt);
                                       add_countersink_check(in, thickness_mm, bolt);
                                       add_bearing(in, layout, loads, alloy, thickness_mm, bolt);
                                       return bolt;
                                     });
}

}  // namespace thole::mounting
