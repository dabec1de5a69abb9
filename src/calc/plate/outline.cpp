#include "calc/plate/outline.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <limits>
#include <numbers>
#include <string>

#include "base/number.h"

namespace thole {
namespace {

constexpr double kStraight_rad = 1e-9;

PlatePoint operator-(PlatePoint a, PlatePoint b) { return {a.x_m - b.x_m, a.y_m - b.y_m}; }
PlatePoint operator+(PlatePoint a, PlatePoint b) { return {a.x_m + b.x_m, a.y_m + b.y_m}; }
PlatePoint operator*(double factor, PlatePoint a) { return {factor * a.x_m, factor * a.y_m}; }
double dot(PlatePoint a, PlatePoint b) { return a.x_m * b.x_m + a.y_m * b.y_m; }
double cross(PlatePoint a, PlatePoint b) { return a.x_m * b.y_m - a.y_m * b.x_m; }
double size_m(PlatePoint a) { return distance_m(a, {}); }
PlatePoint left_of(PlatePoint a) { return {-a.y_m, a.x_m}; }

bool finite(PlatePoint p) { return std::isfinite(p.x_m) && std::isfinite(p.y_m); }

PlatePoint on_circle(PlatePoint centre, double radius_m, double angle_rad) {
  return {centre.x_m + radius_m * std::cos(angle_rad), centre.y_m + radius_m * std::sin(angle_rad)};
}

double start_rad(const PlateEdge& arc) {
  return std::atan2(arc.from.y_m - arc.centre.y_m, arc.from.x_m - arc.centre.x_m);
}

// True when the direction of `p` from the centre lies within the arc, a little to spare.
bool within_turn(const PlateEdge& arc, PlatePoint p) {
  const double full_rad = 2.0 * std::numbers::pi;
  const double spare_rad = kSamePlace_m / arc.radius_m;
  double turned_rad = std::atan2(p.y_m - arc.centre.y_m, p.x_m - arc.centre.x_m) - start_rad(arc);
  if (arc.turn_rad < 0.0) turned_rad = -turned_rad;
  turned_rad = std::fmod(turned_rad, full_rad);
  if (turned_rad < 0.0) turned_rad += full_rad;
  return turned_rad <= std::abs(arc.turn_rad) + spare_rad || turned_rad >= full_rad - spare_rad;
}

double distance_to_line_m(PlatePoint a, PlatePoint b, PlatePoint p) {
  const PlatePoint along = b - a;
  const double share =
      std::clamp(dot(p - a, along) / std::max(dot(along, along), 1e-300), 0.0, 1.0);
  return distance_m(p, a + share * along);
}

double distance_m(const PlateEdge& edge, PlatePoint p) {
  if (!edge.is_arc()) return distance_to_line_m(edge.from, edge.to, p);
  double nearest_m = std::min(distance_m(edge.from, p), distance_m(edge.to, p));
  if (within_turn(edge, p)) {
    nearest_m = std::min(nearest_m, std::abs(distance_m(edge.centre, p) - edge.radius_m));
  }
  return nearest_m;
}

// --- where two edges meet
// ---------------------------------------------------------------------------

bool on_edge(const PlateEdge& edge, PlatePoint p) { return distance_m(edge, p) < kSamePlace_m; }

// Where the whole curves of both edges meet; touching counts. Parallel lines and circles about the
// same centre meet nowhere or everywhere: their ends decide.
std::vector<PlatePoint> crossings(const PlateEdge& a, const PlateEdge& b) {
  if (!a.is_arc() && !b.is_arc()) {
    const PlatePoint u = a.to - a.from;
    const PlatePoint v = b.to - b.from;
    const double turn_m2 = cross(u, v);
    if (std::abs(turn_m2) < 1e-12 * size_m(u) * size_m(v)) return {};
    return {a.from + (cross(b.from - a.from, v) / turn_m2) * u};
  }
  if (a.is_arc() && !b.is_arc()) return crossings(b, a);
  PlatePoint foot{};   // middle of the common chord
  PlatePoint along{};  // its direction, of length one
  double off_m = 0.0;  // of the foot from b's centre
  if (!a.is_arc()) {
    const double whole_m = size_m(a.to - a.from);
    along = (1.0 / whole_m) * (a.to - a.from);
    foot = a.from + dot(b.centre - a.from, along) * along;
    off_m = distance_m(foot, b.centre);
  } else {
    const PlatePoint between = a.centre - b.centre;
    const double apart_m = size_m(between);
    if (apart_m < 1e-9) return {};
    const double from_b_m =
        (apart_m * apart_m + b.radius_m * b.radius_m - a.radius_m * a.radius_m) / (2.0 * apart_m);
    foot = b.centre + (from_b_m / apart_m) * between;
    along = (1.0 / apart_m) * left_of(between);
    off_m = std::abs(from_b_m);
  }
  if (off_m > b.radius_m + 0.5 * kSamePlace_m) return {};
  const double half_m = std::sqrt(std::max(b.radius_m * b.radius_m - off_m * off_m, 0.0));
  return {foot + half_m * along, foot + -half_m * along};
}

// `corner`: a place where both may meet, for neighbours have it in common.
bool meet(const PlateEdge& a, const PlateEdge& b, const PlatePoint* corner) {
  const auto counts = [&](PlatePoint p) {
    return corner == nullptr || distance_m(p, *corner) > 4.0 * kSamePlace_m;
  };
  for (const PlatePoint& p : crossings(a, b)) {
    if (counts(p) && on_edge(a, p) && on_edge(b, p)) return true;
  }
  for (const PlatePoint& p : {a.from, a.to}) {
    if (counts(p) && on_edge(b, p)) return true;
  }
  for (const PlatePoint& p : {b.from, b.to}) {
    if (counts(p) && on_edge(a, p)) return true;
  }
  return false;
}

struct Sides {
  PlatePoint in{};  // from the corner before to this one
  PlatePoint out{};
  double turn_rad() const { return std::atan2(cross(in, out), dot(in, out)); }
};
Sides sides_at(const std::vector<PlateCorner>& corners, std::size_t i) {
  const std::size_t n = corners.size();
  const PlatePoint at = corners[i].at;
  return {at - corners[(i + n - 1) % n].at, corners[(i + 1) % n].at - at};
}

std::string millimetres(double value_m) { return fixed(1000.0 * value_m, 1) + " mm"; }

PlateCorner corner(double x_m, double y_m, double radius_m) {
  return {.at = {x_m, y_m}, .radius_m = radius_m};
}

}  // namespace

// --- corners
// ----------------------------------------------------------------------------------------

std::vector<PlateCorner> cut_corners(const std::vector<PlateCorner>& corners) {
  std::vector<PlateCorner> apart;
  for (const PlateCorner& each : corners) {
    if (!finite(each.at) || !std::isfinite(each.radius_m)) return {};
    if (apart.empty() || distance_m(apart.back().at, each.at) > kSamePlace_m) apart.push_back(each);
  }
  while (apart.size() > 1 && distance_m(apart.back().at, apart.front().at) <= kSamePlace_m) {
    apart.pop_back();
  }
  const std::size_t n = apart.size();
  if (n < 3) return {};
  for (std::size_t i = 0; i < n; ++i) {
    const Sides sides = sides_at(apart, i);
    const double turn_rad = std::abs(sides.turn_rad());
    const double most_m = 0.5 * std::min(size_m(sides.in), size_m(sides.out));
    const double tangent = std::tan(0.5 * turn_rad);
    const double cut_m = std::min(std::max(apart[i].radius_m, 0.0) * tangent, most_m);
    // A corner that goes straight on has nothing to round, one that turns back has no room.
    const bool turns = turn_rad > kStraight_rad && turn_rad < std::numbers::pi - kStraight_rad;
    apart[i].radius_m = turns && cut_m > kSamePlace_m ? cut_m / tangent : 0.0;
  }
  return apart;
}

PlateContour rounded(const std::vector<PlateCorner>& corners) {
  const std::vector<PlateCorner> cut = cut_corners(corners);
  const std::size_t n = cut.size();
  std::vector<PlateEdge> arcs;  // by corner; one without radius stands for the corner itself
  for (std::size_t i = 0; i < n; ++i) {
    const PlatePoint at = cut[i].at;
    PlateEdge arc{.from = at, .to = at, .radius_m = cut[i].radius_m};
    if (arc.is_arc()) {
      const Sides sides = sides_at(cut, i);
      arc.turn_rad = sides.turn_rad();
      const double cut_m = arc.radius_m * std::tan(0.5 * std::abs(arc.turn_rad));
      const PlatePoint along = (1.0 / size_m(sides.in)) * sides.in;
      arc.from = at - cut_m * along;
      arc.to = at + (cut_m / size_m(sides.out)) * sides.out;
      arc.centre = arc.from + std::copysign(arc.radius_m, arc.turn_rad) * left_of(along);
    }
    arcs.push_back(arc);
  }
  PlateContour contour;
  for (std::size_t i = 0; i < n; ++i) {
    const PlateEdge& next = arcs[(i + 1) % n];
    if (arcs[i].is_arc()) contour.push_back(arcs[i]);
    if (distance_m(arcs[i].to, next.from) > kSamePlace_m) {
      contour.push_back({.from = arcs[i].to, .to = next.from});
    }
  }
  // Two arcs that meet in the middle of a side do so to the last bit.
  for (std::size_t i = 0; i < contour.size(); ++i) {
    contour[(i + 1) % contour.size()].from = contour[i].to;
  }
  return contour;
}

double bulge(const PlateEdge& edge) { return edge.is_arc() ? std::tan(0.25 * edge.turn_rad) : 0.0; }

double radius_from_bulge_m(double chord_m, double bulge_ratio) {
  return chord_m * (1.0 + bulge_ratio * bulge_ratio) / (4.0 * bulge_ratio);
}

// --- measures
// ---------------------------------------------------------------------------------------

double length_m(const PlateEdge& edge) {
  return edge.is_arc() ? edge.radius_m * std::abs(edge.turn_rad) : distance_m(edge.from, edge.to);
}

double perimeter_m(const PlateContour& contour) {
  double sum_m = 0.0;
  for (const PlateEdge& edge : contour) sum_m += length_m(edge);
  return sum_m;
}

double area_m2(const PlateContour& contour) {
  double twice_m2 = 0.0;
  for (const PlateEdge& edge : contour) {
    twice_m2 += cross(edge.from - contour.front().from, edge.to - contour.front().from);
    if (edge.is_arc()) {
      twice_m2 += edge.radius_m * edge.radius_m * (edge.turn_rad - std::sin(edge.turn_rad));
    }
  }
  return 0.5 * twice_m2;
}

PlateBox bounds(const PlateContour& contour) {
  PlateBox box{contour.front().from, contour.front().from};
  const auto take = [&](PlatePoint p) {
    box.low = {std::min(box.low.x_m, p.x_m), std::min(box.low.y_m, p.y_m)};
    box.high = {std::max(box.high.x_m, p.x_m), std::max(box.high.y_m, p.y_m)};
  };
  for (const PlateEdge& edge : contour) {
    take(edge.to);
    if (!edge.is_arc()) continue;
    for (const PlatePoint way : {PlatePoint{1, 0}, {0, 1}, {-1, 0}, {0, -1}}) {
      const PlatePoint extreme = edge.centre + edge.radius_m * way;
      if (within_turn(edge, extreme)) take(extreme);
    }
  }
  return box;
}

bool is_simple(const PlateContour& contour) {
  const std::size_t n = contour.size();
  if (n < 3) return false;
  for (std::size_t i = 0; i < n; ++i) {
    for (std::size_t j = i + 1; j < n; ++j) {
      const PlatePoint* common = j == i + 1             ? &contour[j].from
                                 : i == 0 && j == n - 1 ? &contour[0].from
                                                        : nullptr;
      if (meet(contour[i], contour[j], common)) return false;
    }
  }
  return true;
}

bool meet(const PlateContour& a, const PlateContour& b) {
  for (const PlateEdge& one : a) {
    for (const PlateEdge& other : b) {
      if (meet(one, other, nullptr)) return true;
    }
  }
  return false;
}

// By the chords, turned over once for each piece between an arc and its chord that holds the point.
bool encloses(const PlateContour& contour, PlatePoint p) {
  bool in = false;
  for (const PlateEdge& edge : contour) {
    const PlatePoint a = edge.from;
    const PlatePoint b = edge.to;
    if ((a.y_m > p.y_m) != (b.y_m > p.y_m) &&
        p.x_m < a.x_m + (p.y_m - a.y_m) / (b.y_m - a.y_m) * (b.x_m - a.x_m)) {
      in = !in;
    }
    if (!edge.is_arc() || distance_m(edge.centre, p) >= edge.radius_m) continue;
    const double side = edge.turn_rad > 0.0 ? -1.0 : 1.0;  // the piece lies right of a left turn
    if (side * cross(b - a, p - a) > 0.0) in = !in;
  }
  return in;
}

double distance_to_edge_m(const PlateContour& contour, PlatePoint point) {
  double nearest_m = std::numeric_limits<double>::infinity();
  for (const PlateEdge& edge : contour) nearest_m = std::min(nearest_m, distance_m(edge, point));
  return nearest_m;
}

std::vector<PlatePoint> chorded(const PlateContour& contour, double sagitta_m) {
  constexpr int kMostChords = 4000;
  std::vector<PlatePoint> points;
  for (const PlateEdge& edge : contour) {
    points.push_back(edge.from);
    if (!edge.is_arc()) continue;
    const double share = std::clamp(sagitta_m / edge.radius_m, 1e-9, 0.5);
    const double step_rad = 2.0 * std::acos(1.0 - share);
    const int parts =
        std::clamp(static_cast<int>(std::ceil(std::abs(edge.turn_rad) / step_rad)), 1, kMostChords);
    for (int k = 1; k < parts; ++k) {
      points.push_back(
          on_circle(edge.centre, edge.radius_m, start_rad(edge) + edge.turn_rad * k / parts));
    }
  }
  return points;
}

PlateCut cut_of(const PlateShape& shape) {
  PlateCut cut{.outer = rounded(shape.outline)};
  for (const auto& each : shape.cut_outs) cut.cut_outs.push_back(rounded(each));
  return cut;
}

bool on_plate(const PlateCut& cut, PlatePoint point) {
  return encloses(cut.outer, point) &&
         std::none_of(cut.cut_outs.begin(), cut.cut_outs.end(),
                      [&](const PlateContour& each) { return encloses(each, point); });
}

double distance_to_edge_m(const PlateCut& cut, PlatePoint point) {
  double nearest_m = distance_to_edge_m(cut.outer, point);
  for (const PlateContour& each : cut.cut_outs) {
    nearest_m = std::min(nearest_m, distance_to_edge_m(each, point));
  }
  return nearest_m;
}

double net_area_m2(const PlateShape& shape) {
  const PlateCut cut = cut_of(shape);
  double left_m2 = std::abs(area_m2(cut.outer));
  for (const PlateContour& each : cut.cut_outs) left_m2 -= std::abs(area_m2(each));
  for (const PlateHole& hole : shape.bolts) {
    left_m2 -= 0.25 * std::numbers::pi * hole.diameter_m * hole.diameter_m;
  }
  return left_m2;
}

double mass_kg(const PlateShape& shape, double density_kg_per_m3) {
  return net_area_m2(shape) * shape.thickness_m * density_kg_per_m3;
}

// --- what stands in the way
// -------------------------------------------------------------------------

namespace {

class Inspection {
 public:
  explicit Inspection(const PlateShape& shape) : shape_(shape), cut_(cut_of(shape)) {}

  Issues run() {
    if (!(shape_.thickness_m > 0.0) || !std::isfinite(shape_.thickness_m)) {
      say("plate.thickness_m", "The plate has no thickness.");
    }
    radii(shape_.outline, "plate.outline", "The outline");
    if (contour_stands(cut_.outer, "plate.outline", "The outline")) {
      if (area_m2(cut_.outer) < 0.0) {
        say("plate.outline", "The outline's corners run clockwise; give them counter-clockwise.");
      }
      cut_outs();
      bolts();
    }
    return std::move(issues_);
  }

 private:
  void say(std::string field, std::string message, Severity severity = Severity::error) {
    issues_.push_back({severity, std::move(field), std::move(message)});
  }

  bool contour_stands(const PlateContour& contour, const std::string& field,
                      const std::string& what) {
    if (contour.empty()) {
      say(field, what + " needs at least three corners in different places.");
    } else if (!is_simple(contour)) {
      say(field, what + " crosses or touches itself.");
    } else if (std::abs(area_m2(contour)) < kSamePlace_m * kSamePlace_m) {
      say(field, what + " encloses no area.");
    } else {
      return true;
    }
    return false;
  }

  void radii(const std::vector<PlateCorner>& corners, const std::string& field,
             const std::string& what) {
    const std::vector<PlateCorner> cut = cut_corners(corners);
    if (cut.size() != corners.size()) return;  // then they cannot be told apart by their numbers
    for (std::size_t i = 0; i < cut.size(); ++i) {
      if (corners[i].radius_m - cut[i].radius_m < kSamePlace_m) continue;
      say(field,
          what + ": the radius of corner " + std::to_string(i + 1) + " shrinks to " +
              millimetres(cut[i].radius_m) + ", as much as its sides allow.",
          Severity::note);
    }
  }

  void cut_outs() {
    for (std::size_t i = 0; i < cut_.cut_outs.size(); ++i) {
      const PlateContour& each = cut_.cut_outs[i];
      const std::string field = "plate.cut_outs[" + std::to_string(i) + "]";
      const std::string name = "Cut-out " + std::to_string(i + 1);
      radii(shape_.cut_outs[i], field, name);
      if (!contour_stands(each, field, name)) continue;
      if (meet(each, cut_.outer) || !encloses(cut_.outer, each.front().from)) {
        say(field, name + " is not wholly inside of the outline.");
      }
      for (std::size_t j = 0; j < i; ++j) {
        const PlateContour& other = cut_.cut_outs[j];
        if (other.empty()) continue;
        if (meet(each, other) || encloses(other, each.front().from) ||
            encloses(each, other.front().from)) {
          say(field, name + " meets cut-out " + std::to_string(j + 1) + ".");
        }
      }
    }
  }

  void bolts() {
    for (std::size_t i = 0; i < shape_.bolts.size(); ++i) {
      const PlateHole& hole = shape_.bolts[i];
      const std::string field = "plate.bolts[" + std::to_string(i) + "]";
      const std::string name = "Bolt hole " + std::to_string(i + 1);
      if (!finite(hole.at) || !(hole.diameter_m > 0.0) || !std::isfinite(hole.diameter_m) ||
          !std::isfinite(hole.countersink_m)) {
        say(field, name + " has no place or no diameter.");
        continue;
      }
      if (hole.countersink_m > 0.0 && hole.countersink_m <= hole.diameter_m) {
        say(field, name + ": the countersink is not wider than the hole.");
      }
      place(hole, field, name);
      neighbours(i, field, name);
    }
  }

  void place(const PlateHole& hole, const std::string& field, const std::string& name) {
    if (!on_plate(cut_, hole.at)) return say(field, name + " is off the plate.");
    const double off_m = distance_to_edge_m(cut_, hole.at);
    const double least_m = std::max(kLeastEdge_ratio * hole.diameter_m, 0.5 * hole.countersink_m);
    const double full_m = kFullEdge_ratio * hole.diameter_m;
    const std::string found = name + " is " + millimetres(off_m) + " from an edge; ";
    // Half a micrometre for places that were typed to the limit.
    if (off_m < least_m - 0.5 * kSamePlace_m) {
      say(field, found + "at least " + millimetres(least_m) + " is needed.");
    } else if (off_m < full_m - 0.5 * kSamePlace_m) {
      say(field, found + "for full bearing it needs " + millimetres(full_m) + ".",
          Severity::warning);
    }
  }

  void neighbours(std::size_t i, const std::string& field, const std::string& name) {
    const PlateHole& hole = shape_.bolts[i];
    for (std::size_t j = 0; j < i; ++j) {
      const PlateHole& other = shape_.bolts[j];
      const double apart_m = distance_m(hole.at, other.at);
      const double widest_m = std::max(hole.diameter_m, other.diameter_m);
      const double holes_m = 0.5 * (hole.diameter_m + other.diameter_m);
      const double heads_m = 0.5 * (std::max(hole.diameter_m, hole.countersink_m) +
                                    std::max(other.diameter_m, other.countersink_m));
      const double least_m =
          std::max(kLeastPitch_ratio * widest_m, holes_m + std::max(shape_.thickness_m, 0.0));
      const std::string with = " bolt hole " + std::to_string(j + 1);
      if (apart_m < heads_m) {
        say(field, name + " overlaps" + with + ".");
      } else if (apart_m < least_m - 0.5 * kSamePlace_m) {
        say(field, name + " is " + millimetres(apart_m) + " from" + with + "; at least " +
                       millimetres(least_m) + " is needed.");
      }
    }
  }

  const PlateShape& shape_;
  PlateCut cut_;
  Issues issues_{};
};

}  // namespace

Issues plate_issues(const PlateShape& shape) { return Inspection(shape).run(); }

// --- shapes to begin with
// ---------------------------------------------------------------------------

std::vector<PlateCorner> rectangle_outline(double length_m, double width_m, double radius_m) {
  return trapezoid_outline(length_m, width_m, width_m, radius_m);
}

std::vector<PlateCorner> trapezoid_outline(double length_m, double aft_width_m, double fore_width_m,
                                           double radius_m) {
  return {corner(0.0, -0.5 * aft_width_m, radius_m),
          corner(length_m, -0.5 * fore_width_m, radius_m),
          corner(length_m, 0.5 * fore_width_m, radius_m), corner(0.0, 0.5 * aft_width_m, radius_m)};
}

namespace {

// The deck's edge on the port side, moved inward square to itself: in each bend along the bisector.
std::vector<PlatePoint> moved_in(const std::vector<BowOffset>& offsets, double margin_m) {
  const std::size_t n = offsets.size();
  const auto at = [&](std::size_t i) {
    return PlatePoint{offsets[i].x_m, offsets[i].half_breadth_m};
  };
  const auto way = [&](std::size_t i) {
    const PlatePoint along = at(i + 1) - at(i);
    return (1.0 / size_m(along)) * along;
  };
  std::vector<PlatePoint> inner;
  for (std::size_t i = 0; i < n; ++i) {
    if (i == 0 || i + 1 == n) {  // the ends stay at their x
      const PlatePoint along = way(i == 0 ? 0 : n - 2);
      inner.push_back(at(i) - PlatePoint{0.0, margin_m / along.x_m});
    } else {
      const PlatePoint sum = left_of(way(i - 1)) + left_of(way(i));
      inner.push_back(at(i) - (2.0 * margin_m / dot(sum, sum)) * sum);
    }
  }
  return inner;
}

}  // namespace

BowOutline bow_outline(const BowPlate& bow) {
  const auto failed = [](std::string message) {
    return BowOutline{.issues = {{Severity::error, "plate.outline", std::move(message)}}};
  };
  if (bow.offsets.size() < 2) return failed("The bow needs at least two offsets.");
  if (!(bow.margin_m >= 0.0) || !std::isfinite(bow.margin_m)) {
    return failed("The margin to the deck's edge must not be negative.");
  }
  for (std::size_t i = 0; i < bow.offsets.size(); ++i) {
    const BowOffset& each = bow.offsets[i];
    if (!std::isfinite(each.x_m) || !std::isfinite(each.half_breadth_m) ||
        each.half_breadth_m < 0.0) {
      return failed("Each offset of the bow needs a place and a half breadth.");
    }
    if (i > 0 && each.x_m - bow.offsets[i - 1].x_m < kSamePlace_m) {
      return failed("The offsets of the bow must go forward, each ahead of the one before.");
    }
  }
  std::vector<PlatePoint> side;  // to port, from aft forward
  for (const PlatePoint& p : moved_in(bow.offsets, bow.margin_m)) {
    if (!side.empty() && p.x_m <= side.back().x_m) {
      return failed("The offsets of the bow lie too close together for this margin.");
    }
    if (p.y_m < kSamePlace_m) {
      if (side.empty()) return failed("The bow is too narrow for a plate with this margin.");
      const PlatePoint last = side.back();
      const double share = last.y_m / (last.y_m - std::min(p.y_m, 0.0));
      side.push_back({last.x_m + share * (p.x_m - last.x_m), 0.0});
      break;
    }
    side.push_back(p);
  }
  const double aft_m = side.front().x_m;
  BowOutline out;
  for (const PlatePoint& p : side)
    out.outline.push_back(corner(p.x_m - aft_m, -p.y_m, bow.radius_m));
  for (std::size_t i = side.size(); i-- > 0;) {
    if (side[i].y_m > 0.0)
      out.outline.push_back(corner(side[i].x_m - aft_m, side[i].y_m, bow.radius_m));
  }
  const PlateContour contour = rounded(out.outline);
  if (!is_simple(contour))
    return failed("The offsets of the bow make an outline that crosses itself.");
  return out;
}

}  // namespace thole
