#include "calc/foredeck/room.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <numbers>

#include "base/number.h"
#include "base/order.h"
#include "data/sources.h"

namespace thole {
namespace {

constexpr double kWidthAtLeast_m = 0.6;     // aft of the stem; project decision, as the next four
constexpr double kWidestBeyond_ratio = 1.25;  // of the width at the mount
constexpr double kRailFrom_m = 0.3;
constexpr double kRailRadius_m = 0.0125;
constexpr double kDeckShown_m = 2.5;        // where its length is not known
constexpr double kTallest_m = 10.0;         // of the room over a lid
constexpr double kMountAheadMost_m = 0.8;
constexpr double kMountAsideMost_m = 0.4;   // outside the deck's edge
constexpr int kRailPieces = 8;
constexpr int kHalvings = 26;

struct Box {
  Place3 low{};
  Place3 high{};
};

double distance_m(const Place3& p, const Place3& q) {
  const double a = p.aft_m - q.aft_m;
  const double s = p.starboard_m - q.starboard_m;
  const double z = p.up_m - q.up_m;
  return std::sqrt(a * a + s * s + z * z);
}

Place3 nearest_point(const Box& box, const Place3& p) {
  return {std::clamp(p.aft_m, box.low.aft_m, box.high.aft_m), std::clamp(p.starboard_m, box.low.starboard_m, box.high.starboard_m),
          std::clamp(p.up_m, box.low.up_m, box.high.up_m)};
}

// An upright sheet over the line from a to b, from its lower to its upper height.
struct Sheet {
  Place3 a{};
  Place3 b{};
};

Place3 nearest_point(const Sheet& sheet, const Place3& p) {
  const double da = sheet.b.aft_m - sheet.a.aft_m;
  const double ds = sheet.b.starboard_m - sheet.a.starboard_m;
  const double length2 = std::max(da * da + ds * ds, 1e-12);
  const double t = std::clamp(((p.aft_m - sheet.a.aft_m) * da + (p.starboard_m - sheet.a.starboard_m) * ds) / length2, 0.0, 1.0);
  return {sheet.a.aft_m + t * da, sheet.a.starboard_m + t * ds, std::clamp(p.up_m, sheet.a.up_m, sheet.b.up_m)};
}

template <class Shape>
double distance_m(const Shape& shape, const Place3& p) {
  return distance_m(nearest_point(shape, p), p);
}

Place3 between(const Place3& p, const Place3& q, double t) {
  return {p.aft_m + t * (q.aft_m - p.aft_m), p.starboard_m + t * (q.starboard_m - p.starboard_m),
          p.up_m + t * (q.up_m - p.up_m)};
}

struct Nearest {
  double distance_m = 0.0;
  Place3 at{};
};

// The distance from a point to a convex shape is convex along a line: thirds close in on its least.
template <class Shape>
Nearest nearest(const Bar& bar, const Shape& shape) {
  double low = 0.0;
  double high = 1.0;
  for (int i = 0; i < kHalvings; ++i) {
    const double third = (high - low) / 3.0;
    if (distance_m(shape, between(bar.a, bar.b, low + third)) <= distance_m(shape, between(bar.a, bar.b, high - third))) {
      high -= third;
    } else {
      low += third;
    }
  }
  const Place3 at = between(bar.a, bar.b, 0.5 * (low + high));
  return {distance_m(shape, at) - bar.radius_m, at};
}

template <class Shape>
void come_near(const std::vector<Bar>& bars, const Shape& shape, double raised_deg, double thickness_m, Clearance& best) {
  for (const Bar& bar : bars) {
    const double least = distance_m(shape, between(bar.a, bar.b, 0.5)) - 0.5 * distance_m(bar.a, bar.b) - bar.radius_m - thickness_m;
    if (least >= best.distance_m) continue;  // no part of it comes nearer
    const Nearest found = nearest(bar, shape);
    const double distance = found.distance_m - thickness_m;
    if (distance >= best.distance_m) continue;
    best.distance_m = distance;
    best.part = bar.part;
    best.raised_deg = raised_deg;
    best.on_motor = found.at;
    best.on_obstacle = nearest_point(shape, found.at);
  }
}

Box box_of(const DeckItem& item, double height_m) {
  return {{item.aft_m - 0.5 * item.length_m, item.starboard_m - 0.5 * item.width_m, 0.0},
          {item.aft_m + 0.5 * item.length_m, item.starboard_m + 0.5 * item.width_m, height_m}};
}

std::string item_label(const RoomInput& in, std::size_t index) {
  const DeckItemKind kind = in.items[index].kind;
  int same = 0;
  int number = 0;
  for (std::size_t i = 0; i < in.items.size(); ++i) {
    if (in.items[i].kind != kind) continue;
    ++same;
    if (i <= index) ++number;
  }
  return std::string(word(kind)) + (same > 1 ? " " + std::to_string(number) : "");
}

Clearance unknown(std::string label, int item) {
  return {.label = std::move(label), .item = item, .distance_m = std::numeric_limits<double>::infinity()};
}

// Every obstacle against the motor in these stances.
std::vector<Clearance> clearances(const RoomInput& in, int to_deg) {
  std::vector<Clearance> all;
  for (std::size_t i = 0; i < in.items.size(); ++i) all.push_back(unknown(item_label(in, i), static_cast<int>(i)));
  const std::array<std::vector<Place3>, 2> rails{rail_line(in, -1.0), rail_line(in, 1.0)};
  if (!rails[0].empty()) {
    all.push_back(unknown("rail, port", -1));
    all.push_back(unknown("rail, starboard", -1));
  }
  for (int raised_deg = 0; raised_deg <= to_deg; raised_deg += kRaiseStep_deg) {
    const std::vector<Bar> bars = tilted_motor(in.motor, in.stance, raised_deg);
    for (std::size_t i = 0; i < in.items.size(); ++i) {
      come_near(bars, box_of(in.items[i], in.items[i].height_m), raised_deg, 0.0, all[i]);
    }
    for (std::size_t side = 0; side < 2 && !rails[side].empty(); ++side) {
      for (std::size_t k = 0; k + 1 < rails[side].size(); ++k) {
        Sheet sheet{rails[side][k], rails[side][k + 1]};
        sheet.a.up_m = 0.0;
        come_near(bars, sheet, raised_deg, kRailRadius_m, all[in.items.size() + side]);
      }
    }
  }
  all = sorted(std::move(all), [](const Clearance& a, const Clearance& b) { return a.distance_m < b.distance_m; });
  return all;
}

std::vector<Clearance> openings(const RoomInput& in) {
  std::vector<Clearance> all;
  const std::vector<Bar> bars = tilted_motor(in.motor, in.stance, 0.0);
  for (std::size_t i = 0; i < in.items.size(); ++i) {
    if (!opens(in.items[i].kind)) continue;
    all.push_back(unknown(item_label(in, i), static_cast<int>(i)));
    come_near(bars, box_of(in.items[i], kTallest_m), 0.0, 0.0, all.back());
  }
  all = sorted(std::move(all), [](const Clearance& a, const Clearance& b) { return a.distance_m < b.distance_m; });
  return all;
}

double outside_deck_m(const RoomInput& in) {
  const double aft = in.stance.pivot_aft_m;
  const double side = std::abs(in.stance.pivot_starboard_m);
  double distance = std::numeric_limits<double>::infinity();
  constexpr int kPieces = 60;
  const double to_m = std::max(2.0 * std::max(aft, kWidthAtLeast_m), 1.0);
  Place3 before{};
  for (int i = 1; i <= kPieces; ++i) {
    const double at = to_m * i * i / (kPieces * kPieces);
    const Place3 now{at, half_deck_m(in, at), 0.0};
    distance = std::min(distance, distance_m(Sheet{before, now}, Place3{aft, side, 0.0}));
    before = now;
  }
  const bool inside = aft > 0.0 && side < half_deck_m(in, aft);
  return inside ? -distance : distance;
}

std::string problem_of(const RoomInput& in) {
  if (!(in.motor.length_m > 0.0 && in.motor.propeller_diameter_m > 0.0 && in.motor.tube_m > 0.0)) {
    return "There is no motor with a shaft, tube and propeller of known size to find room for.";
  }
  if (!(in.deck_width_m > 0.0)) return "Deck width at the mount must be more than 0 m.";
  if (in.stance.pivot_aft_m < -kMountAheadMost_m) {
    return "The mount stands more than " + fixed(kMountAheadMost_m, 1) + " m ahead of the stem: its plate must still lie on the deck.";
  }
  if (in.deck_length_m > 0.0 && in.stance.pivot_aft_m > in.deck_length_m) {
    return "The mount stands aft of the clear deck: give the deck's clear length from the stem, or set the mount further forward.";
  }
  if (std::abs(in.stance.pivot_starboard_m) > half_deck_m(in, std::max(in.stance.pivot_aft_m, kWidthAtLeast_m)) + kMountAsideMost_m) {
    return "The mount stands beside the deck: it may overhang the edge by " + fixed(kMountAsideMost_m, 1) +
           " m at most. Hold its place against the deck's width at the mount.";
  }
  return {};
}

double open(bool measured, double value) { return measured ? value : std::numeric_limits<double>::quiet_NaN(); }

Check clearance_check(std::string id, std::string label, const std::vector<Clearance>& all, bool measured, std::string remedy) {
  const bool any = !all.empty();
  Check check{.id = std::move(id),
              .label = std::move(label),
              .actual = open(measured && any, any ? 1000.0 * all.front().distance_m : 0.0),
              .limit = 1000.0 * kRoomLeast_m,
              .unit = "mm",
              .comparison = Comparison::at_least,
              .source = kProjectDecision,
              .remedy = std::move(remedy)};
  if (!(measured && any)) {
    check.remedy = "Not measured yet: give the mount's place (aft of the stem, to starboard) and what stands on the deck round it.";
  } else {
    check.label += ": " + all.front().label;
  }
  return check;
}

void add_steps(const RoomInput& in, RoomResult& r) {
  const double blade = std::max(kPodRadius_m, 0.5 * in.motor.propeller_diameter_m);
  r.trace.steps.push_back({.id = "foredeck.stowed_length",
                           .label = "Length of the stowed motor",
                           .symbol = "L_s",
                           .formula = "L + l_h + b",
                           .terms = {{"L", in.motor.length_m, "m", "collar to propeller axis"},
                                     {"l_h", kHeadLength_m, "m", "head on top of it"},
                                     {"b", blade, "m", "blade or pod beyond the axis"}},
                           .value = r.stowed_m,
                           .unit = "m",
                           .source = kCommonPractice,
                           .assumptions = {"Head 250 mm long and 200 mm thick, pod 420 mm by 110 mm: usual proportions. Measure yours."}});
  r.trace.steps.push_back({.id = "foredeck.stowed_end",
                           .label = "Aft end of the stowed motor, aft of the stem",
                           .symbol = "x_e",
                           .formula = "x_m + (L + l_h - e) * cos(a * pi / 180)",
                           .terms = {{"x_m", in.stance.pivot_aft_m, "m", "pivot aft of the stem"},
                                     {"L", in.motor.length_m, "m", "collar to propeller axis"},
                                     {"l_h", kHeadLength_m, "m", "head"},
                                     {"e", kPodAhead_m, "m", "pod ahead of the pivot"},
                                     {"a", in.stance.stow_angle_deg, "deg", "stowed shaft off straight aft"},
                                     {"pi", std::numbers::pi, "", "circle constant"}},
                           .value = r.stowed_end_m,
                           .unit = "m",
                           .source = kDefinition});
}

void add_checks(const RoomInput& in, RoomResult& r) {
  const bool measured = in.mount_measured;
  r.trace.checks.push_back(clearance_check("foredeck.stowed_clearance", "Room round the stowed motor", r.stowed, measured,
                                           "Move the mount or turn the stowed shaft off straight aft until it lies clear of what is named."));
  r.trace.checks.push_back(clearance_check("foredeck.swing_clearance", "Room as it swings up", r.swinging, measured,
                                           "Its head and shaft come down from upright on their way to the deck: move the mount, or what is in the way."));
  if (!r.opening.empty()) {
    r.trace.checks.push_back(clearance_check("foredeck.lid_clearance", "Room to open with the motor stowed", r.opening, measured,
                                             "It opens only with the motor down: move the mount, or make sure that nothing needed in a hurry "
                                             "(anchor, fire extinguisher, way out) lies under it."));
  }
  const bool long_enough = in.deck_length_m > 0.0 && measured;
  r.trace.checks.push_back({.id = "foredeck.deck_length",
                            .label = "Stowed motor ends on the clear deck",
                            .actual = open(long_enough, r.stowed_end_m),
                            .limit = in.deck_length_m,
                            .unit = "m",
                            .source = kDefinition,
                            .remedy = long_enough ? "Turn the stowed shaft off straight aft, set the mount further forward, or take a shorter shaft if one still reaches."
                                                  : "Not measured yet: give the clear deck aft of the stem and the mount's place."});
  r.trace.checks.push_back({.id = "foredeck.outboard",
                            .label = "Lowered shaft stands outside the deck's edge",
                            .actual = open(measured, 1000.0 * r.outside_m),
                            .limit = 1000.0 * (0.5 * in.motor.tube_m + kRoomLeast_m),
                            .unit = "mm",
                            .comparison = Comparison::at_least,
                            .source = kProjectDecision,
                            .remedy = measured ? "Set the mount further forward or further out: the shaft goes straight down from its pivot."
                                               : "Not measured yet: give the mount's place (aft of the stem, to starboard)."});
}

}  // namespace

double half_deck_m(const RoomInput& in, double aft_m) {
  if (!(aft_m > 0.0)) return 0.0;
  const double at_m = std::max(in.stance.pivot_aft_m, kWidthAtLeast_m);
  return 0.5 * in.deck_width_m * std::min(std::sqrt(aft_m / at_m), kWidestBeyond_ratio);
}

std::vector<Place3> rail_line(const RoomInput& in, double side) {
  if (!(in.rail_height_m > 0.0)) return {};
  const double to_m = std::max(in.deck_length_m > 0.0 ? in.deck_length_m : kDeckShown_m, 2.0 * kRailFrom_m);
  std::vector<Place3> line;
  for (int i = 0; i <= kRailPieces; ++i) {
    const double aft = kRailFrom_m + (to_m - kRailFrom_m) * i / kRailPieces;
    line.push_back({aft, side * std::max(half_deck_m(in, aft) - in.rail_inset_m, 0.0), in.rail_height_m});
  }
  return line;
}

RoomResult foredeck_room(const RoomInput& in) {
  RoomResult result{.problem = problem_of(in)};
  if (!result.problem.empty()) return result;
  result.stowed_m = stowed_length_m(in.motor);
  const double angle = in.stance.stow_angle_deg * std::numbers::pi / 180.0;
  result.stowed_end_m = in.stance.pivot_aft_m + (in.motor.length_m + kHeadLength_m - kPodAhead_m) * std::cos(angle);
  result.stowed = clearances(in, 0);
  result.swinging = clearances(in, 90);
  result.opening = openings(in);
  result.outside_m = outside_deck_m(in);
  add_steps(in, result);
  add_checks(in, result);
  return result;
}

}  // namespace thole
