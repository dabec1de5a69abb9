#pragma once

// The plate cut into triangles: nodes on its edge, on every bolt, along the edge of the deck, and on a
// lattice between. A shape that is its own mirror image gets a mesh that is, too.
//
// Own code: the mesh generators that a package brings are too large for a page or under a licence that
// forbids it. Method: Delaunay triangles by Bowyer's and Watson's insertion (Computer J. 24, 1981),
// those outside of the outline taken away.

#include <array>
#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "calc/plate/shape.h"

namespace thole {

struct PlateMesh {
  std::vector<PlatePoint> nodes{};
  std::vector<std::array<int, 3>> triangles{};  // counter-clockwise
  std::vector<int> bolt_nodes{};                // by bolt
};

struct MeshWish {
  double size_m = 0.0;        // length of a triangle's side; 0: for some 570 nodes
  double deck_edge_m = 0.0;   // x of the deck's edge; a row of nodes lies along it when it crosses the plate
  double bolt_ring_m = 0.0;   // radius of the washer, and of the six nodes round each bolt; 0: none
  std::vector<PlatePoint> fixed{};  // more places that need a node
};
inline constexpr std::size_t kMostMeshNodes = 6000;

// Nothing, and why in `problem`, when the outline has no area, crosses itself or is too fine for the
// size; when a bolt lies off the plate; when thickness is not positive.
std::optional<PlateMesh> mesh_plate(const PlateShape& shape, const MeshWish& wish, std::string& problem);

}  // namespace thole
