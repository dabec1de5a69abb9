// What is true of any outline: the exact measures agree with fine chords and with dice, mirror
// images and turned plates measure the same, and what cannot be cut is said.

#include "calc/plate/outline.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <random>

#include "plate_shapes.h"
#include "support.h"

using namespace thole;
using namespace thole::test;

namespace {

// A star-shaped outline: simple by construction.
std::vector<PlateCorner> random_outline(std::mt19937& dice) {
  std::uniform_real_distribution<double> share(0.0, 1.0);
  const int count = 3 + static_cast<int>(7.0 * share(dice));
  std::vector<PlateCorner> corners;
  for (int i = 0; i < count; ++i) {
    const double angle_rad = 2.0 * std::numbers::pi * (i + 0.6 * share(dice)) / count;
    const double out_m = 0.1 + 0.2 * share(dice);
    corners.push_back({.at = {out_m * std::cos(angle_rad), out_m * std::sin(angle_rad)},
                       .radius_m = share(dice) < 0.2 ? 0.0 : 0.2 * share(dice) * share(dice)});
  }
  return corners;
}

double shoelace_m2(const std::vector<PlatePoint>& points) {
  double twice_m2 = 0.0;
  for (std::size_t i = 0; i < points.size(); ++i) {
    const PlatePoint& a = points[i];
    const PlatePoint& b = points[(i + 1) % points.size()];
    twice_m2 += a.x_m * b.y_m - b.x_m * a.y_m;
  }
  return 0.5 * twice_m2;
}

bool says(const Issues& issues, const std::string& field, const std::string& part,
          Severity severity = Severity::error) {
  return std::any_of(issues.begin(), issues.end(), [&](const Issue& each) {
    return each.field == field && each.severity == severity &&
           each.message.find(part) != std::string::npos;
  });
}

}  // namespace

TEST_SUITE("property") {
  TEST_CASE("edges join, arcs touch their sides, and exact measures agree with fine chords") {
    std::mt19937 dice(7);
    for (int round = 0; round < 300; ++round) {
      CAPTURE(round);
      const PlateContour contour = rounded(random_outline(dice));
      REQUIRE(contour.size() >= 3);
      CHECK(is_simple(contour));
      double turned_rad = 0.0;
      for (std::size_t i = 0; i < contour.size(); ++i) {
        const PlateEdge& edge = contour[i];
        const PlateEdge& next = contour[(i + 1) % contour.size()];
        CHECK(edge.to.x_m == next.from.x_m);
        CHECK(edge.to.y_m == next.from.y_m);
        CHECK(length_m(edge) > 0.5 * kSamePlace_m);
        if (!edge.is_arc()) continue;
        turned_rad += edge.turn_rad;
        for (const PlatePoint& end : {edge.from, edge.to}) {
          CHECK(std::hypot(end.x_m - edge.centre.x_m, end.y_m - edge.centre.y_m) ==
                rel(edge.radius_m, 1e-9));
        }
        if (!next.is_arc()) {  // square to the radius where they meet
          const double off = (next.to.x_m - next.from.x_m) * (edge.to.x_m - edge.centre.x_m) +
                             (next.to.y_m - next.from.y_m) * (edge.to.y_m - edge.centre.y_m);
          CHECK(std::abs(off) < 1e-9 * edge.radius_m * length_m(next) + 1e-15);
        }
      }
      if (std::all_of(contour.begin(), contour.end(),
                      [](const PlateEdge& e) { return e.is_arc(); })) {
        CHECK(turned_rad == rel(2.0 * std::numbers::pi, 1e-9));
      }
      const std::vector<PlatePoint> points = chorded(contour, 1e-7);
      CHECK(area_m2(contour) == rel(shoelace_m2(points), 1e-5));
      double around_m = 0.0;
      PlateBox box{points[0], points[0]};
      for (std::size_t i = 0; i < points.size(); ++i) {
        const PlatePoint& a = points[i];
        const PlatePoint& b = points[(i + 1) % points.size()];
        around_m += std::hypot(b.x_m - a.x_m, b.y_m - a.y_m);
        box.low = {std::min(box.low.x_m, a.x_m), std::min(box.low.y_m, a.y_m)};
        box.high = {std::max(box.high.x_m, a.x_m), std::max(box.high.y_m, a.y_m)};
      }
      CHECK(perimeter_m(contour) == rel(around_m, 1e-5));
      const PlateBox exact = bounds(contour);
      CHECK(near(exact.low.x_m, box.low.x_m, 2e-7));
      CHECK(near(exact.low.y_m, box.low.y_m, 2e-7));
      CHECK(near(exact.high.x_m, box.high.x_m, 2e-7));
      CHECK(near(exact.high.y_m, box.high.y_m, 2e-7));
    }
  }

  TEST_CASE("inside and distance agree with fine chords at random places") {
    std::mt19937 dice(11);
    std::uniform_real_distribution<double> place(-0.32, 0.32);
    int in = 0;
    for (int round = 0; round < 60; ++round) {
      const PlateContour contour = rounded(random_outline(dice));
      const std::vector<PlatePoint> points = chorded(contour, 1e-6);
      std::vector<PlateCorner> corners;
      for (const PlatePoint& p : points) corners.push_back({.at = p});
      const PlateContour fine = rounded(corners);
      for (int i = 0; i < 40; ++i) {
        const PlatePoint p{place(dice), place(dice)};
        CHECK(near(distance_to_edge_m(contour, p), distance_to_edge_m(fine, p), 3e-6));
        if (distance_to_edge_m(contour, p) < 3e-6) continue;
        CHECK(encloses(contour, p) == encloses(fine, p));
        in += encloses(contour, p) ? 1 : 0;
      }
    }
    CHECK(in > 300);
  }

  TEST_CASE("turned and moved, a plate measures the same; mirrored, its area changes sign") {
    std::mt19937 dice(13);
    std::uniform_real_distribution<double> share(0.0, 1.0);
    for (int round = 0; round < 100; ++round) {
      const std::vector<PlateCorner> corners = random_outline(dice);
      const double angle_rad = 6.0 * share(dice);
      std::vector<PlateCorner> turned = corners;
      std::vector<PlateCorner> mirrored = corners;
      for (std::size_t i = 0; i < corners.size(); ++i) {
        const PlatePoint p = corners[i].at;
        turned[i].at = {3.0 + p.x_m * std::cos(angle_rad) - p.y_m * std::sin(angle_rad),
                        -1.0 + p.x_m * std::sin(angle_rad) + p.y_m * std::cos(angle_rad)};
        mirrored[i].at.y_m = -p.y_m;
      }
      CHECK(area_m2(rounded(turned)) == rel(area_m2(rounded(corners)), 1e-9));
      CHECK(perimeter_m(rounded(turned)) == rel(perimeter_m(rounded(corners)), 1e-9));
      CHECK(area_m2(rounded(mirrored)) == rel(-area_m2(rounded(corners)), 1e-9));
    }
  }

  TEST_CASE("a radius takes no more of a side than half: a square becomes a circle") {
    const PlateContour round = rounded(rectangle_outline(0.3, 0.3, 1.0));
    CHECK(round.size() == 4);
    CHECK(area_m2(round) == rel(std::numbers::pi * 0.15 * 0.15, 1e-12));
    CHECK(perimeter_m(round) == rel(2.0 * std::numbers::pi * 0.15, 1e-12));
    CHECK(is_simple(round));
    CHECK(distance_to_edge_m(round, {0.15, 0.0}) == rel(0.15, 1e-12));
    CHECK(cut_corners(rectangle_outline(0.3, 0.3, 1.0))[2].radius_m == rel(0.15, 1e-12));
    CHECK(cut_corners(rectangle_outline(0.3, 0.3, 0.1))[2].radius_m == rel(0.1, 1e-12));
    CHECK(
        says(plate_issues(round_plate()), "plate.outline", "shrinks to 150.0 mm", Severity::note));
  }

  TEST_CASE("figures of eight, spikes, doubled sides and touching corners are not simple") {
    const auto simple = [](std::vector<PlatePoint> points, double radius_m) {
      std::vector<PlateCorner> corners;
      for (const PlatePoint& p : points) corners.push_back({.at = p, .radius_m = radius_m});
      return is_simple(rounded(corners));
    };
    for (const double radius_m : {0.0, 0.01}) {
      CAPTURE(radius_m);
      CHECK(simple({{0, 0}, {0.3, 0}, {0.3, 0.2}, {0, 0.2}}, radius_m));
      CHECK_FALSE(simple({{0, 0}, {0.3, 0.2}, {0.3, 0}, {0, 0.2}}, radius_m));
      CHECK_FALSE(
          simple({{0, 0}, {0.3, 0}, {0.3, 0.2}, {0.3, 0.1}, {0.3, 0.2}, {0, 0.2}}, radius_m));
      CHECK_FALSE(simple({{0, 0}, {0.3, 0}, {0.1, 0}, {0.1, 0.2}}, radius_m));
    }
    CHECK_FALSE(simple({{0, 0}, {0.3, 0}, {0.3, 0.2}, {0.15, 0.0}, {0, 0.2}}, 0.0));
    // A notch deeper than the plate crosses its edge; rounded, it no longer reaches that far.
    CHECK_FALSE(simple({{0, 0}, {0.3, 0}, {0.3, 0.2}, {0.15, -0.001}, {0, 0.2}}, 0.0));
    CHECK(simple({{0, 0}, {0.3, 0}, {0.3, 0.2}, {0.15, -0.001}, {0, 0.2}}, 0.02));
    CHECK_FALSE(simple({{0, 0}, {0.3, 0}}, 0.0));
    CHECK_FALSE(simple({}, 0.0));
  }

  TEST_CASE("the ready shapes have nothing in their way") {
    for (const auto& plate : plates_to_cut()) {
      CAPTURE(plate.first);
      CHECK_FALSE(has_error(plate_issues(plate.second)));
    }
    CHECK(plate_issues(slotted_plate()).empty());
  }

  TEST_CASE("what stands in the way of cutting is said at its place") {
    CHECK(says(plate_issues({.thickness_m = 0.01}), "plate.outline", "three corners"));
    PlateShape shape = slotted_plate();
    shape.thickness_m = 0.0;
    CHECK(says(plate_issues(shape), "plate.thickness_m", "no thickness"));
    shape.thickness_m = std::nan("");
    CHECK(says(plate_issues(shape), "plate.thickness_m", "no thickness"));

    shape = slotted_plate();
    std::swap(shape.outline[0], shape.outline[1]);
    CHECK(says(plate_issues(shape), "plate.outline", "crosses"));
    shape = slotted_plate();
    shape.outline[0].at.x_m = std::nan("");
    CHECK(says(plate_issues(shape), "plate.outline", "three corners"));
    shape = slotted_plate();
    std::reverse(shape.outline.begin(), shape.outline.end());
    CHECK(says(plate_issues(shape), "plate.outline", "clockwise"));

    shape = slotted_plate();
    shape.bolts[1].at = {0.35, 0.0};  // in the slot
    CHECK(says(plate_issues(shape), "plate.bolts[1]", "off the plate"));
    shape.bolts[1].at = {0.05, 0.2};
    CHECK(says(plate_issues(shape), "plate.bolts[1]", "off the plate"));
    shape.bolts[1].at = {0.05, 0.065};
    CHECK(says(plate_issues(shape), "plate.bolts[1]", "overlaps bolt hole 1"));
    shape.bolts[1].diameter_m = -1.0;
    CHECK(says(plate_issues(shape), "plate.bolts[1]", "no diameter"));

    shape = slotted_plate();
    shape.cut_outs.push_back(rectangle_outline(0.6, 0.02, 0.0));
    CHECK(says(plate_issues(shape), "plate.cut_outs[1]", "inside of the outline"));
    shape.cut_outs[1] = {{{0.33, -0.005}}, {{0.36, -0.005}}, {{0.36, 0.005}}};
    CHECK(says(plate_issues(shape), "plate.cut_outs[1]", "meets cut-out 1"));
  }

  // EN 1993-1-8, Table 3.3: 1.2 holes least, 2.0 for full bearing; 2.4 holes between bolts.
  TEST_CASE("distances on, just under and just over each limit") {
    const auto at_edge = [](double off_m) {
      PlateShape shape = slotted_plate();
      shape.bolts[0].at = {off_m, 0.0};
      shape.bolts.resize(1);
      return plate_issues(shape);
    };
    CHECK(says(at_edge(0.0108 - 1e-5), "plate.bolts[0]", "10.8 mm is needed"));
    CHECK_FALSE(has_error(at_edge(0.0108)));
    CHECK(says(at_edge(0.0108 + 1e-5), "plate.bolts[0]", "full bearing", Severity::warning));
    CHECK(says(at_edge(0.018 - 1e-5), "plate.bolts[0]", "full bearing", Severity::warning));
    CHECK(at_edge(0.018).empty());

    const auto apart = [](double apart_m, double thickness_m) {
      PlateShape shape = slotted_plate();
      shape.thickness_m = thickness_m;
      shape.bolts.resize(2);
      shape.bolts[0].at = {0.1, 0.0};
      shape.bolts[1].at = {0.1 + apart_m, 0.0};
      return plate_issues(shape);
    };
    CHECK(says(apart(0.0216 - 1e-5, 0.008), "plate.bolts[1]", "21.6 mm is needed"));
    CHECK(apart(0.0216, 0.008).empty());
    CHECK(
        says(apart(0.024 - 1e-5, 0.015), "plate.bolts[1]", "24.0 mm is needed"));  // one thickness
    CHECK(apart(0.024, 0.015).empty());
  }

  TEST_CASE("a plate for a bow keeps its margin, square to the deck's edge") {
    std::mt19937 dice(17);
    std::uniform_real_distribution<double> share(0.0, 1.0);
    int made = 0;
    for (int round = 0; round < 200; ++round) {
      BowPlate bow{.margin_m = 0.06 * share(dice), .radius_m = 0.0};
      double half_m = 0.25 + 0.2 * share(dice);
      double x_m = 3.0;
      double slope = 0.05;
      for (int i = 0; i < 5; ++i) {  // fuller aft, finer forward
        if (half_m < 0.0) {          // the stem: where the side comes to the centre line
          bow.offsets.push_back({x_m + half_m / slope, 0.0});
          break;
        }
        bow.offsets.push_back({x_m, half_m});
        const double step_m = 0.12 + 0.1 * share(dice);
        slope += 0.3 * share(dice);
        x_m += step_m;
        half_m -= slope * step_m;
      }
      const BowOutline out = bow_outline(bow);
      if (has_error(out.issues)) continue;
      ++made;
      const PlateContour contour = rounded(out.outline);
      CHECK(area_m2(contour) > 0.0);
      CHECK(near(bounds(contour).low.x_m, 0.0, 1e-12));
      double least_m = 1.0;
      for (const PlateCorner& corner : out.outline) {
        CHECK(corner.at.x_m + 3.0 <= bow.offsets.back().x_m + 1e-9);
        for (std::size_t i = 0; i + 1 < bow.offsets.size(); ++i) {
          const BowOffset a = bow.offsets[i];
          const BowOffset b = bow.offsets[i + 1];
          const double along_m = std::hypot(b.x_m - a.x_m, b.half_breadth_m - a.half_breadth_m);
          // From the line of the deck's edge, which is bent outward: no nearer than from the edge
          // itself.
          const double off_m =
              ((b.x_m - a.x_m) * (a.half_breadth_m - std::abs(corner.at.y_m)) +
               (corner.at.x_m + 3.0 - a.x_m) * (b.half_breadth_m - a.half_breadth_m)) /
              along_m;
          CHECK(off_m >= bow.margin_m - 1e-9);
          least_m = std::min(least_m, off_m);
        }
      }
      CHECK(least_m == doctest::Approx(bow.margin_m).epsilon(1e-6));
    }
    CHECK(made > 100);
  }

  TEST_CASE("a bow without a plate says why") {
    CHECK(has_error(bow_outline({}).issues));
    CHECK(has_error(bow_outline({.offsets = {{0, 0.2}, {0, 0.1}}}).issues));
    CHECK(has_error(bow_outline({.offsets = {{0, 0.2}, {0.2, -0.1}}}).issues));
    CHECK(has_error(bow_outline({.offsets = {{0, 0.2}, {0.2, 0.1}}, .margin_m = 0.3}).issues));
    CHECK(has_error(bow_outline({.offsets = {{0, 0.2}, {0.2, 0.1}}, .margin_m = -0.1}).issues));
    CHECK(has_error(bow_outline({.offsets = {{0, std::nan("")}, {0.2, 0.1}}}).issues));
    // A straight bow without margin is the trapezoid itself.
    const BowOutline plain =
        bow_outline({.offsets = {{1.0, 0.12}, {1.55, 0.07}}, .radius_m = 0.03});
    CHECK(area_m2(rounded(plain.outline)) ==
          rel(area_m2(rounded(trapezoid_outline(0.55, 0.24, 0.14, 0.03))), 1e-12));
    // Sides that come together end in a point.
    CHECK(bow_outline({.offsets = {{0, 0.2}, {0.4, 0.0}}, .margin_m = 0.02}).outline.size() == 3);
  }
}
