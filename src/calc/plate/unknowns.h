#pragma once

// Where the unknowns of a plate stand in the rows of its matrices. A plate that is its own mirror
// image has two sets of rows that nothing ties: how it moves evenly, then how oddly. Both are half
// as many, and a load that bends it evenly asks nothing of the odd ones.

#include <array>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <vector>

#include "calc/plate/banded.h"
#include "calc/plate/mesh.h"

namespace thole {

// The image of each node and triangle of a mesh across y = 0.
struct MeshImages {
  std::vector<std::size_t> node{};
  std::vector<std::size_t> triangle{};
};
std::optional<MeshImages> mesh_images(const PlateMesh& mesh);  // nothing: one has no image

// An unknown is the sum of what stands in two rows, each with its sign; 0: there is one row, or
// none.
struct Place {
  std::size_t row = 0;
  double sign_factor = 0.0;
};
using Places = std::array<Place, 2>;  // of even motion, or all there is; of odd motion

// By node deflection w, dw/dy, -dw/dx, in an order that keeps the bands narrow.
class Unknowns {
 public:
  Unknowns() = default;
  // `more_ties`: nodes that share more than a triangle. No images: one set of rows.
  Unknowns(const PlateMesh& mesh, const std::optional<MeshImages>& images,
           const std::vector<std::array<int, 2>>& more_ties);

  const Places& of(int node, std::size_t which) const { return places_[3 * static_cast<std::size_t>(node) + which]; }
  bool in_halves() const { return even_rows_ < rows_; }
  std::size_t rows() const { return rows_; }
  std::size_t even_rows() const { return even_rows_; }

  Banded matrix() const { return Banded(first_); }  // all zero
  // What ties two unknowns, both ways; or holds one, the same object twice.
  void add(Banded& matrix, const Places& a, const Places& b, double value) const;
  // Rows that no unknown has.
  void close(Banded& matrix) const;

 private:
  std::vector<Places> places_{};
  std::vector<std::size_t> first_{};
  std::size_t even_rows_ = 0;
  std::size_t rows_ = 0;
};

}  // namespace thole
