#include "calc/proof.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>

#include "base/number.h"
#include "base/order.h"
#include "calc/foredeck_study.h"
#include "calc/mount/deck.h"
#include "calc/mount/fatigue.h"
#include "calc/mount/plate_rules.h"
#include "calc/plate_study.h"
#include "calc/snag_study.h"
#include "data/sources.h"
#include "data/sources_mount.h"

namespace thole {
namespace {

constexpr int kStiffeners = 2;
constexpr double kBackingStep_mm = 10.0;
constexpr double kLeastSpan_mm = 100.0;  // of the fields, as the next two
constexpr double kMostBacking_mm = 300.0;
constexpr double kThickestBacking_mm = 30.0;

// The thinnest stock whose stress, falling with the square of the thickness, keeps its own limit.
std::optional<Change> thicker_plate(const Check& check, const PlateStock& now, const Catalogue& catalogue) {
  const Alloy* alloy = find_alloy(now.alloy);
  if (alloy == nullptr) return std::nullopt;
  const bool fatigue = check.id.starts_with("plate.fatigue");
  const auto limit_MPa = [&](const Alloy& of) {
    if (fatigue) return range_MPa(is_stainless(of) ? steel_bolt_holes() : aluminium_bolt_holes(), slams_in_life());
    return check.id == "plate.stress_thrust" ? working_stress_MPa(of) : extreme_stress_MPa(of);
  };
  const std::vector<PlateStock> stocks = sorted(catalogue.plates, [](const PlateStock& a, const PlateStock& b) {
    return a.thickness_mm != b.thickness_mm ? a.thickness_mm < b.thickness_mm : a.price_per_m2 < b.price_per_m2;
  });
  for (const PlateStock& stock : stocks) {
    const Alloy* other = find_alloy(stock.alloy);
    if (other == nullptr || stock.id == now.id || !(stock.thickness_mm > 0.0)) continue;
    const double thinner = now.thickness_mm / stock.thickness_mm;
    const double use = check.utilisation() * thinner * thinner * limit_MPa(*alloy) / limit_MPa(*other);
    if (use <= 1.0) return Change{.field = "mount.plate", .text = stock.id, .label = "Take " + stock.label};
  }
  return std::nullopt;
}

// The smallest that breaks, and yields, at so much more than the one there is.
std::optional<Change> larger_bolt(double ratio, const Design& design, const Catalogue& catalogue) {
  const double needed_N = ratio * design.mount.bolt_breaking_N;
  const BoltSize* size_now = find_bolt_size(design.mount.bolt.size);
  const BoltGrade* grade_now = find_bolt_grade(design.mount.bolt.grade);
  if (size_now == nullptr || grade_now == nullptr) return std::nullopt;
  const double needed_yield_N = ratio * yield_N(*size_now, *grade_now);
  const double head_factor = bolt_head_factor(design.job.mount.head.value == Head::countersunk);
  const BoltOffer* best = nullptr;
  double best_N = std::numeric_limits<double>::infinity();
  for (const BoltOffer& offer : catalogue.bolts) {
    const BoltSize* size = find_bolt_size(offer.size);
    const BoltGrade* grade = find_bolt_grade(offer.grade);
    if (size == nullptr || grade == nullptr) continue;
    const double breaks_N = head_factor * tensile_N(*size, *grade);
    if (breaks_N >= needed_N && yield_N(*size, *grade) >= needed_yield_N && breaks_N < best_N) best = &offer, best_N = breaks_N;
  }
  if (best == nullptr) return std::nullopt;
  return Change{.field = "mount.bolt", .text = best->id, .label = "Take bolts " + best->size + " of " + best->grade};
}

// Backing so many times as wide as what carries now, and thick enough to carry so far.
void widen_backing(double ratio, double now_mm, const Design& design, std::vector<Change>& changes) {
  const BoltSize* size = find_bolt_size(design.mount.bolt.size);
  if (!(ratio > 1.0) || size == nullptr) return;
  const Mount& job = design.job.mount;
  const double side_mm = kBackingStep_mm * std::ceil(ratio * now_mm / kBackingStep_mm);
  const double thickness_mm = std::ceil(backing_thickness_mm(side_mm, size->washer_mm));
  if (side_mm > std::min(kMostBacking_mm, pattern_of(mount_input(design)).room_mm) || thickness_mm > kThickestBacking_mm) return;
  if (side_mm > job.backing_side_mm.value)
    changes.push_back({.field = "mount.backing_side_mm", .value = side_mm, .label = "Backing of " + trimmed(fixed(side_mm, 0)) + " mm"});
  if (thickness_mm > job.backing_thickness_mm.value)
    changes.push_back({.field = "mount.backing_thickness_mm", .value = thickness_mm, .label = "Backing " + trimmed(fixed(thickness_mm, 0)) + " mm thick"});
}

// A beam amid the panel leaves half of its shorter side; only where the panel gives more than the plate does.
void set_beam(const PlateStudy& study, const Design& design, std::vector<Change>& changes) {
  const Mount& job = design.job.mount;
  const bool athwart = job.deck_span_mm.value <= job.deck_breadth_mm.value;
  const double span_mm = 10.0 * std::round(0.05 * (athwart ? job.deck_span_mm : job.deck_breadth_mm).value);
  if (!(study.panel_Hz < study.solution.frequencies_Hz.front()) || span_mm < kLeastSpan_mm) return;
  changes.push_back({.field = athwart ? "mount.deck_span_mm" : "mount.deck_breadth_mm",
                     .value = span_mm,
                     .label = athwart ? "Set a beam under the deck" : "Set a stringer under the deck"});
}

std::vector<Change> changes_for(const Check& check, const PlateStudy& study, const Design& design, const Catalogue& catalogue) {
  std::vector<Change> changes;
  if (check.verdict() != Verdict::fail) return changes;
  const Mount& job = design.job.mount;
  if (check.id == "plate.bolt_pull" || check.id == "plate.deck_pressure") {
    if (check.id == "plate.bolt_pull") widen_backing(check.utilisation(), design.mount.backing_side_mm, design, changes);
    return changes;
  }
  const bool lowered = check.id == "plate.stress_thrust" || check.id == "plate.bolt_thrust" || check.id == "plate.bolt_snag" ||
                       check.id == "plate.bolt_together" || check.id == "plate.fatigue_thrust";
  if (!lowered && !job.chocked.value)
    changes.push_back({.field = "mount.chocked", .value = 1.0, .label = "Chock the motor's outer end"});
  if (check.id == "plate.frequency" || check.id == "plate.encounter" || check.id == "plate.sag") set_beam(study, design, changes);
  std::optional<Change> stronger;
  if (check.id.starts_with("plate.stress") || check.id.starts_with("plate.fatigue")) stronger = thicker_plate(check, design.mount.plate, catalogue);
  if (check.id.starts_with("plate.bolt")) stronger = larger_bolt(check.utilisation(), design, catalogue);
  if (stronger) changes.push_back(std::move(*stronger));
  if (!job.stiffener_count.known() || job.stiffener_count.value < kStiffeners)
    changes.push_back({.field = "mount.stiffener_count", .value = 1.0 * kStiffeners, .label = "Set two stiffeners"});
  return changes;
}

// What would bring deck and bolts over the shaft: a larger bolt, or backing as wide and thick as it takes.
std::vector<Change> changes_for_snag(const Check& check, const SnagStudy& study, const Design& design, const Catalogue& catalogue) {
  std::vector<Change> changes;
  double wider_ratio = 1.0;
  for (const SnagStrength& each : study.order) {
    const double lacks_ratio = check.limit / each.force_N;
    if (!(lacks_ratio > 1.0)) continue;
    if (each.part == SnagPart::skin) wider_ratio = std::max(wider_ratio, lacks_ratio);
    if (each.part == SnagPart::core) wider_ratio = std::max(wider_ratio, std::sqrt(lacks_ratio));
    if (each.part != SnagPart::bolts) continue;
    if (std::optional<Change> larger = larger_bolt(lacks_ratio, design, catalogue)) changes.push_back(std::move(*larger));
  }
  widen_backing(wider_ratio, study.backing_mm, design, changes);
  return changes;
}

void add_steps(const Trace& from, Trace& to) {
  tell([&] { to.steps.insert(to.steps.end(), from.steps.begin(), from.steps.end()); });
}

bool is_mounted(const Design& design) { return design.hold.motor_found && !design.mount.plate.id.empty() && !design.mount.bolt.id.empty(); }

void prove_plate(Design& design, PlateStudy& study, const Catalogue& catalogue) {
  if (!is_mounted(design)) return;
  std::vector<Check>& checks = design.mount.trace.checks;
  if (!study.solution.solved) {
    checks.push_back({.id = "plate.solved",
                      .label = "Plate by elements",
                      .actual = std::numeric_limits<double>::quiet_NaN(),
                      .unit = "",
                      .source = kWinklerDeck,
                      .remedy = study.solution.problem});
    return;
  }
  add_steps(study.trace, design.mount.trace);
  for (Caution& caution : study.cautions) design.mount.trace.cautions.push_back(std::move(caution));
  for (Check& check : study.checks) {
    check.changes = changes_for(check, study, design, catalogue);
    checks.push_back(std::move(check));
  }
}

}  // namespace

bool counts(const Check& check) { return check.verdict() != Verdict::not_evaluated && check.id != "snag.plate"; }

void prove(Design& design, const Catalogue& catalogue) {
  PlateStudy plate;
  if (is_mounted(design)) plate = plate_study(design);
  SnagStudy snag = snag_study(design, plate);
  prove_plate(design, plate, catalogue);
  std::vector<Check>& checks = design.shaft.trace.checks;
  add_steps(snag.trace, design.shaft.trace);
  for (Check& check : snag.trace.checks) {
    if (!counts(check)) continue;
    if (check.verdict() == Verdict::fail) check.changes = changes_for_snag(check, snag, design, catalogue);
    checks.push_back(std::move(check));
  }
  const ForedeckStudy foredeck = foredeck_study(design);
  for (const Check* check : foredeck.checks())
    if (counts(*check)) checks.push_back(*check);
}

Design proven(const Job& job, const Catalogue& catalogue) {
  Evaluation evaluation(job, catalogue, {}, Telling::every_step, kAll);
  while (evaluation.step()) {
  }
  return evaluation.design();
}

}  // namespace thole
