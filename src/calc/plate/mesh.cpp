#include "calc/plate/mesh.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include "calc/plate/outline.h"


namespace thole {
namespace {

using Polygon = std::vector<PlatePoint>;

constexpr double kDefaultNodes = 610.0;
constexpr double kNearest_ratio = 0.62;  // of the size: nearer, and a lattice node is left out
constexpr int kMostHalvings = 3;
constexpr double kSagitta_m = 1e-3;  // by which a chord may leave its arc

double cross_m2(PlatePoint a, PlatePoint b, PlatePoint c) {
  return (b.x_m - a.x_m) * (c.y_m - a.y_m) - (b.y_m - a.y_m) * (c.x_m - a.x_m);
}

double distance_to_side_m(PlatePoint p, PlatePoint a, PlatePoint b) {
  const double x = b.x_m - a.x_m;
  const double y = b.y_m - a.y_m;
  const double along =
      std::clamp(((p.x_m - a.x_m) * x + (p.y_m - a.y_m) * y) / (x * x + y * y), 0.0, 1.0);
  return distance_m(p, {a.x_m + along * x, a.y_m + along * y});
}

// Sides cut into equal parts no longer than size_m; the same from either end, so that mirrored shapes
// are cut alike.
Polygon resampled(const Polygon& polygon, double size_m) {
  Polygon points;
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    const PlatePoint a = polygon[i];
    const PlatePoint b = polygon[(i + 1) % polygon.size()];
    const int parts = std::max(1, static_cast<int>(std::ceil(distance_m(a, b) / size_m - 1e-9)));
    for (int part = 0; part < parts; ++part) {
      const double share = static_cast<double>(part) / parts;
      points.push_back({a.x_m + share * (b.x_m - a.x_m), a.y_m + share * (b.y_m - a.y_m)});
    }
  }
  return points;
}

// --- Delaunay ------------------------------------------------------------------------------------
class Delaunay {
 public:
  Delaunay(const std::vector<PlatePoint>& points, double scale_m) {
    points_ = points;
    for (const PlatePoint& p : points) lift_.push_back(lift(p, scale_m));
    double low_x = 1e300, high_x = -1e300, low_y = 1e300, high_y = -1e300;
    for (const PlatePoint& p : points) {
      low_x = std::min(low_x, p.x_m), high_x = std::max(high_x, p.x_m);
      low_y = std::min(low_y, p.y_m), high_y = std::max(high_y, p.y_m);
    }
    const double reach_m = 40.0 * std::max(high_x - low_x, high_y - low_y);
    const double middle_x = 0.5 * (low_x + high_x);
    const double middle_y = 0.5 * (low_y + high_y);
    first_outer_ = static_cast<int>(points.size());
    for (const PlatePoint& p : {PlatePoint{middle_x - reach_m, middle_y - 0.6 * reach_m},
                                PlatePoint{middle_x + reach_m, middle_y - 0.6 * reach_m},
                                PlatePoint{middle_x, middle_y + 1.2 * reach_m}}) {
      points_.push_back(p);
      lift_.push_back(p.x_m * p.x_m + p.y_m * p.y_m);
    }
    faces_.push_back({{first_outer_, first_outer_ + 1, first_outer_ + 2}, {-1, -1, -1}, true});
    for (int node = 0; node < first_outer_; ++node) insert(node);
  }

  std::vector<std::array<int, 3>> triangles() const {
    std::vector<std::array<int, 3>> found;
    for (const Face& face : faces_) {
      if (face.alive && std::all_of(face.corners.begin(), face.corners.end(), [&](int c) { return c < first_outer_; }))
        found.push_back(face.corners);
    }
    return found;
  }

 private:
  struct Face {
    std::array<int, 3> corners{};
    std::array<int, 3> across{};  // face behind the side opposite to the corner; -1: none
    bool alive = false;
  };

  // Points of a lattice lie on common circles: a small even bump decides between the diagonals, for a
  // point as for its mirror image.
  static double lift(PlatePoint p, double scale_m) {
    const double bump =
        std::sin(7.1 * p.x_m / scale_m) + std::cos(5.3 * p.y_m / scale_m + 0.0) * 0.7;
    return p.x_m * p.x_m + p.y_m * p.y_m + 1e-7 * scale_m * scale_m * bump;
  }

  bool within(const Face& face, int node) const {
    const PlatePoint& p = points_[static_cast<std::size_t>(node)];
    double m[3][3];
    for (int i = 0; i < 3; ++i) {
      const auto corner = static_cast<std::size_t>(face.corners[static_cast<std::size_t>(i)]);
      const double x = points_[corner].x_m - p.x_m;
      const double y = points_[corner].y_m - p.y_m;
      m[i][0] = x;
      m[i][1] = y;
      // z - z_p - 2 (p . d), so that it stays small near p.
      m[i][2] = lift_[corner] - lift_[static_cast<std::size_t>(node)] - 2.0 * (p.x_m * x + p.y_m * y);
    }
    return m[0][0] * (m[1][1] * m[2][2] - m[1][2] * m[2][1]) -
               m[0][1] * (m[1][0] * m[2][2] - m[1][2] * m[2][0]) +
               m[0][2] * (m[1][0] * m[2][1] - m[1][1] * m[2][0]) >
           0.0;
  }

  int face_around(PlatePoint p) const {
    int at = last_[p.y_m < 0.0 ? 1 : 0];
    for (std::size_t step = 0; step < faces_.size() + 3; ++step) {
      const Face& face = faces_[static_cast<std::size_t>(at)];
      int next = -1;
      for (std::size_t i = 0; i < 3 && next < 0; ++i) {
        const PlatePoint& a = points_[static_cast<std::size_t>(face.corners[(i + 1) % 3])];
        const PlatePoint& b = points_[static_cast<std::size_t>(face.corners[(i + 2) % 3])];
        if (cross_m2(a, b, p) < 0.0) next = face.across[i];
      }
      if (next < 0) return at;
      at = next;
    }
    return at;
  }

  struct Rim {
    int from = 0;
    int to = 0;
    int outside = -1;
  };

  void insert(int node) {
    hole_.assign(1, face_around(points_[static_cast<std::size_t>(node)]));
    rim_.clear();
    faces_[static_cast<std::size_t>(hole_.front())].alive = false;
    for (std::size_t k = 0; k < hole_.size(); ++k) {
      const Face face = faces_[static_cast<std::size_t>(hole_[k])];
      for (std::size_t i = 0; i < 3; ++i) {
        const int beyond = face.across[i];
        if (beyond >= 0 && !faces_[static_cast<std::size_t>(beyond)].alive) continue;
        if (beyond >= 0 && within(faces_[static_cast<std::size_t>(beyond)], node)) {
          faces_[static_cast<std::size_t>(beyond)].alive = false;
          hole_.push_back(beyond);
        }
      }
    }
    for (const int at : hole_) {
      const Face& face = faces_[static_cast<std::size_t>(at)];
      for (std::size_t i = 0; i < 3; ++i) {
        const int beyond = face.across[i];
        if (beyond < 0 || faces_[static_cast<std::size_t>(beyond)].alive)
          rim_.push_back({face.corners[(i + 1) % 3], face.corners[(i + 2) % 3], beyond});
      }
    }
    fill(node);
  }

  // With faces from the node to the rim of its hole.
  void fill(int node) {
    made_.clear();
    for (std::size_t k = 0; k < rim_.size(); ++k) {
      int slot = 0;
      if (k < hole_.size()) {
        slot = hole_[k];
      } else {
        slot = static_cast<int>(faces_.size());
        faces_.emplace_back();
      }
      made_.push_back(slot);
      faces_[static_cast<std::size_t>(slot)] = {{node, rim_[k].from, rim_[k].to},
                                                {rim_[k].outside, -1, -1}, true};
      if (rim_[k].outside >= 0) {
        Face& beyond = faces_[static_cast<std::size_t>(rim_[k].outside)];
        for (std::size_t i = 0; i < 3; ++i) {
          if (beyond.corners[(i + 1) % 3] == rim_[k].to && beyond.corners[(i + 2) % 3] == rim_[k].from)
            beyond.across[i] = slot;
        }
      }
    }
    for (std::size_t a = 0; a < rim_.size(); ++a) {
      for (std::size_t b = 0; b < rim_.size(); ++b) {
        if (rim_[a].to != rim_[b].from) continue;
        faces_[static_cast<std::size_t>(made_[a])].across[1] = made_[b];
        faces_[static_cast<std::size_t>(made_[b])].across[2] = made_[a];
      }
    }
    last_[points_[static_cast<std::size_t>(node)].y_m < 0.0 ? 1 : 0] = made_.front();
  }

  std::vector<PlatePoint> points_{};
  std::vector<double> lift_{};
  std::vector<Face> faces_{};
  std::vector<int> hole_{};  // of the node that is set in: faces,
  std::vector<Rim> rim_{};   // what is round them,
  std::vector<int> made_{};  // and the faces in their place
  int first_outer_ = 0;
  std::array<int, 2> last_{};  // made on either side, where nodes come in pairs
};

// --- where the nodes lie -------------------------------------------------------------------------
struct Places {
  std::vector<PlatePoint> nodes{};
  std::vector<int> bolts{};
};

class Placing {
 public:
  Placing(const PlateCut& cut, double size_m) : cut_(cut), size_m_(size_m) {}

  void add_edges(const std::vector<Polygon>& edges) {
    for (const Polygon& edge : edges)
      for (const PlatePoint& p : resampled(edge, size_m_)) add(p);
  }
  int add(PlatePoint p) {
    for (std::size_t i = 0; i < nodes_.size(); ++i)
      if (distance_m(nodes_[i], p) < 1e-7) return static_cast<int>(i);
    nodes_.push_back(p);
    return static_cast<int>(nodes_.size()) - 1;
  }
  void add_if_free(PlatePoint p, double gap_m, double edge_m) {
    for (const PlatePoint& other : nodes_)
      if (square_m2(other, p) < gap_m * gap_m) return;
    if (!on_plate(cut_, p) || distance_to_edge_m(cut_, p) < edge_m) return;
    nodes_.push_back(p);
  }
  void add_row(double x_m, double low_y_m, double high_y_m) {
    const int half = static_cast<int>(std::ceil(std::max(-low_y_m, high_y_m) / size_m_));
    for (int k = 0; k <= half; ++k) {
      for (const double side : {1.0, -1.0}) {
        if (k == 0 && side < 0.0) continue;
        add_if_free({x_m, side * k * size_m_}, 0.5 * size_m_, 0.3 * size_m_);
      }
    }
  }
  void add_lattice(double low_x_m, double high_x_m, double low_y_m, double high_y_m) {
    // Rows along the boat, one on the middle line, so that no pair of mirrored rows shares it.
    const double row_m = size_m_ * 0.5 * std::numbers::sqrt3;
    const int rows = static_cast<int>(std::ceil(std::max(-low_y_m, high_y_m) / row_m));
    const int columns = static_cast<int>(std::ceil((high_x_m - low_x_m) / size_m_));
    for (int row = 0; row <= rows; ++row) {
      for (int column = 0; column <= columns; ++column) {
        const double x_m = low_x_m + (column + (row % 2 != 0 ? 0.5 : 0.0)) * size_m_;
        for (const double side : {1.0, -1.0}) {
          if (row == 0 && side < 0.0) continue;
          // Both of a pair or neither: they are measured against what stood before the pair.
          add_if_free({x_m, side * row * row_m}, kNearest_ratio * size_m_, 0.5 * size_m_);
        }
      }
    }
  }
  std::vector<PlatePoint> nodes() const { return nodes_; }

 private:
  const PlateCut& cut_;
  double size_m_;
  std::vector<PlatePoint> nodes_{};
};

std::string no_shape(const PlateShape& shape, const PlateCut& cut) {
  if (!(shape.thickness_m > 0.0)) return "The plate's thickness must be more than 0.";
  if (shape.outline.size() < 3) return "The outline needs at least three corners.";
  for (const PlateCorner& corner : shape.outline)
    if (!std::isfinite(corner.at.x_m) || !std::isfinite(corner.at.y_m))
      return "A corner of the outline is no number.";
  if (!is_simple(cut.outer)) return "The outline crosses itself: list its corners in order.";
  if (!(area_m2(cut.outer) > 1e-6))
    return "The outline has no area, or its corners run clockwise: list them counter-clockwise.";
  for (std::size_t i = 0; i < cut.cut_outs.size(); ++i) {
    const PlateContour& hole = cut.cut_outs[i];
    const std::string name = "Cut-out " + std::to_string(i + 1);
    if (hole.empty()) return name + " needs at least three corners.";
    if (!is_simple(hole)) return name + " crosses itself.";
    if (meet(cut.outer, hole) || !encloses(cut.outer, hole.front().from)) return name + " reaches off the plate.";
  }
  for (std::size_t i = 0; i < shape.bolts.size(); ++i)
    if (!on_plate(cut, shape.bolts[i].at)) return "Bolt " + std::to_string(i + 1) + " lies off the plate.";
  return {};
}

// A corner more where a wished node lies on a side.
void add_corner_on_side(Polygon& outline, PlatePoint p) {
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const PlatePoint a = outline[i];
    const PlatePoint b = outline[(i + 1) % outline.size()];
    if (distance_to_side_m(p, a, b) > 1e-6) continue;
    if (distance_m(p, a) > 1e-6 && distance_m(p, b) > 1e-6)
      outline.insert(outline.begin() + static_cast<std::ptrdiff_t>(i) + 1, p);
    return;
  }
}

double polygon_area_m2(const Polygon& polygon) {
  double twice_m2 = 0.0;
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    const PlatePoint& a = polygon[i];
    const PlatePoint& b = polygon[(i + 1) % polygon.size()];
    twice_m2 += a.x_m * b.y_m - b.x_m * a.y_m;
  }
  return 0.5 * twice_m2;
}

// Edges as chords: the outline first, then the cut-outs.
double whole_area_m2(const std::vector<Polygon>& edges) {
  double area_m2 = std::abs(polygon_area_m2(edges.front()));
  for (std::size_t i = 1; i < edges.size(); ++i) area_m2 -= std::abs(polygon_area_m2(edges[i]));
  return area_m2;
}

std::optional<PlateMesh> mesh_at(const PlateShape& shape, const MeshWish& wish, const PlateCut& cut,
                                 const std::vector<Polygon>& edges, double size_m) {
  double low_x = 1e300, high_x = -1e300, low_y = 1e300, high_y = -1e300;
  for (const PlatePoint& p : edges.front()) {
    low_x = std::min(low_x, p.x_m), high_x = std::max(high_x, p.x_m);
    low_y = std::min(low_y, p.y_m), high_y = std::max(high_y, p.y_m);
  }
  Placing placing(cut, size_m);
  placing.add_edges(edges);
  PlateMesh mesh;
  for (const PlateHole& bolt : shape.bolts) mesh.bolt_nodes.push_back(placing.add(bolt.at));
  for (const PlatePoint& p : wish.fixed)
    if (on_plate(cut, p)) placing.add(p);  // on a side it is a corner already
  if (wish.bolt_ring_m > 0.0) {
    for (const PlateHole& bolt : shape.bolts) {
      for (int k = 0; k < 6; ++k) {
        const double angle_rad = k * std::numbers::pi / 3.0;
        placing.add_if_free({bolt.at.x_m + wish.bolt_ring_m * std::cos(angle_rad),
                             bolt.at.y_m + wish.bolt_ring_m * std::sin(angle_rad)},
                            0.6 * wish.bolt_ring_m, 0.3 * wish.bolt_ring_m);
      }
    }
  }
  if (wish.deck_edge_m > low_x && wish.deck_edge_m < high_x)
    placing.add_row(wish.deck_edge_m, low_y, high_y);
  placing.add_lattice(low_x, high_x, low_y, high_y);
  mesh.nodes = placing.nodes();
  if (mesh.nodes.size() > kMostMeshNodes) return std::nullopt;

  double area_m2 = 0.0;
  for (const std::array<int, 3>& corners : Delaunay(mesh.nodes, size_m).triangles()) {
    const PlatePoint& a = mesh.nodes[static_cast<std::size_t>(corners[0])];
    const PlatePoint& b = mesh.nodes[static_cast<std::size_t>(corners[1])];
    const PlatePoint& c = mesh.nodes[static_cast<std::size_t>(corners[2])];
    const double twice_m2 = cross_m2(a, b, c);
    const PlatePoint middle{(a.x_m + b.x_m + c.x_m) / 3.0, (a.y_m + b.y_m + c.y_m) / 3.0};
    if (twice_m2 < 1e-7 * size_m * size_m || !on_plate(cut, middle)) continue;
    mesh.triangles.push_back(corners);
    area_m2 += 0.5 * twice_m2;
  }
  // Triangles that do not follow the edge give another area.
  const double wanted_m2 = whole_area_m2(edges);
  if (std::abs(area_m2 - wanted_m2) > 1e-6 * wanted_m2) return std::nullopt;
  return mesh;
}

}  // namespace

std::optional<PlateMesh> mesh_plate(const PlateShape& shape, const MeshWish& wish,
                                    std::string& problem) {
  const PlateCut cut = cut_of(shape);
  problem = no_shape(shape, cut);
  if (!problem.empty()) return std::nullopt;
  std::vector<Polygon> edges{chorded(cut.outer, kSagitta_m)};
  for (const PlateContour& hole : cut.cut_outs) edges.push_back(chorded(hole, kSagitta_m));
  for (const PlatePoint& p : wish.fixed)
    for (Polygon& edge : edges) add_corner_on_side(edge, p);
  double size_m = wish.size_m > 0.0 ? wish.size_m
                                    : std::sqrt(whole_area_m2(edges) /
                                                (kDefaultNodes * 0.5 * std::numbers::sqrt3 * 0.86));
  for (int halving = 0; halving <= kMostHalvings; ++halving, size_m *= 0.7) {
    if (std::optional<PlateMesh> mesh = mesh_at(shape, wish, cut, edges, size_m)) return mesh;
  }
  problem = "The outline is too fine to be cut into triangles: leave out details below a few millimetres.";
  return std::nullopt;
}

}  // namespace thole
