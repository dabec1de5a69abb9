#pragma once

// The plate's edge as it is cut: straight lines and true arcs. Exact: nothing is chorded here.

#include <vector>

#include "base/issue.h"
#include "calc/plate/shape.h"

namespace thole {

// From corner to corner. An arc has a radius and turns by `turn_rad`, positive counter-clockwise.
struct PlateEdge {
  PlatePoint from{};
  PlatePoint to{};
  PlatePoint centre{};    // of an arc
  double radius_m = 0.0;  // 0: a line
  double turn_rad = 0.0;
  bool is_arc() const { return radius_m > 0.0; }
};

// Closed: each edge begins, to the last bit, where the one before it ends.
using PlateContour = std::vector<PlateEdge>;

// Nearer than this is the same place: the tolerance for closing a contour that cutters ask for.
inline constexpr double kSamePlace_m = 1e-6;

// The corners as they are cut: those in the same place count once, and radii that are too large
// shrink, for no more than half of the shorter side goes to a corner. Empty for fewer than three.
std::vector<PlateCorner> cut_corners(const std::vector<PlateCorner>& corners);

// Corners rounded by arcs that touch both sides. Empty for fewer than three.
PlateContour rounded(const std::vector<PlateCorner>& corners);

// tan(turn / 4): 0 for a line, 1 for half a circle, tan(pi/8) for a quarter.
double bulge(const PlateEdge& edge);
// r = c (1 + b^2) / (4 b), c the chord, of an arc with bulge b > 0.
double radius_from_bulge_m(double chord_m, double bulge_ratio);

double length_m(const PlateEdge& edge);
double perimeter_m(const PlateContour& contour);
// Shoelace plus r^2 (turn - sin turn) / 2 for each arc. Positive: counter-clockwise.
double area_m2(const PlateContour& contour);

struct PlateBox {
  PlatePoint low{};
  PlatePoint high{};
};
PlateBox bounds(const PlateContour& contour);  // of arcs, too; precondition: not empty

// No two edges meet but neighbours, and these only in their corner.
bool is_simple(const PlateContour& contour);
bool meet(const PlateContour& a, const PlateContour& b);
// Which side of the very edge a point on it counts to is not said.
bool encloses(const PlateContour& contour, PlatePoint point);
double distance_to_edge_m(const PlateContour& contour, PlatePoint point);

// Each arc as chords that leave it by no more than `sagitta_m`. For pictures.
std::vector<PlatePoint> chorded(const PlateContour& contour, double sagitta_m);

// Edges of the whole plate, cut-outs included, holes not.
struct PlateCut {
  PlateContour outer{};
  std::vector<PlateContour> cut_outs{};
};
PlateCut cut_of(const PlateShape& shape);

// Inside of the outline and outside of every cut-out; and the nearest of all their edges.
bool on_plate(const PlateCut& cut, PlatePoint point);
double distance_to_edge_m(const PlateCut& cut, PlatePoint point);

double net_area_m2(const PlateShape& shape);  // less cut-outs and bolt holes
// Area times thickness: what countersinks take away is left in.
double mass_kg(const PlateShape& shape, double density_kg_per_m3);

// What stands in the way of cutting this plate. Errors: no corners, no area, an outline or cut-out
// that crosses itself, cut-outs that leave the plate or meet; no thickness; bolts off the plate, in
// a cut-out or over one another; and below the least distances: 1.2 holes to an edge and 2.4 holes
// between bolts (EN 1993-1-8, Table 3.3), one thickness of metal between holes (common practice).
// Warnings: less than 2.0 holes to an edge, which full bearing needs. Notes: radii that shrink.
// Fields are "plate.outline", "plate.cut_outs[0]", "plate.bolts[3]", "plate.thickness_m".
Issues plate_issues(const PlateShape& shape);
inline constexpr double kLeastEdge_ratio = 1.2;  // of the hole's diameter
inline constexpr double kFullEdge_ratio = 2.0;
inline constexpr double kLeastPitch_ratio = 2.4;

// --- shapes to begin with
// ---------------------------------------------------------------------------

// Aft edge at x = 0, mirrored about the centreline.
std::vector<PlateCorner> rectangle_outline(double length_m, double width_m, double radius_m);
std::vector<PlateCorner> trapezoid_outline(double length_m, double aft_width_m, double fore_width_m,
                                           double radius_m);

struct BowOffset {
  double x_m = 0.0;
  double half_breadth_m = 0.0;
};

struct BowPlate {
  std::vector<BowOffset> offsets{};  // of the deck's edge, from aft forward
  double margin_m = 0.0;             // kept clear between plate and deck's edge, square to the edge
  double radius_m = 0.0;             // of the corners
};

struct BowOutline {
  std::vector<PlateCorner> outline{};  // empty with an error
  Issues issues{};
};

// A plate that follows the bow from the first offset to the last, or to where its sides come
// together; x counted from the first offset.
BowOutline bow_outline(const BowPlate& bow);

}  // namespace thole
