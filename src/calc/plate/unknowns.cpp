#include "calc/plate/unknowns.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "base/order.h"

namespace thole {
namespace {

constexpr double kSkew_ratio = 0.5;  // of the lines along which nodes are counted
constexpr double kSamePlace_m = 1e-9;
constexpr std::size_t kOfANode = 3;  // unknowns
constexpr std::size_t kAcross = 1;   // of these dw/dy, whose sign a mirror turns

// Nodes in order along the longer side of what is solved, the plate or half of it.
std::vector<std::size_t> in_order(const std::vector<PlatePoint>& nodes, bool halved) {
  PlatePoint low = nodes.front(), high = low;
  for (const PlatePoint& p : nodes) {
    low = {std::min(low.x_m, p.x_m), std::min(low.y_m, p.y_m)};
    high = {std::max(high.x_m, p.x_m), std::max(high.y_m, p.y_m)};
  }
  const bool long_in_x = high.x_m - low.x_m > (halved ? 0.5 : 1.0) * (high.y_m - low.y_m);
  const auto along_m = [&](const PlatePoint& p) {
    return long_in_x ? p.x_m + kSkew_ratio * p.y_m : p.y_m + kSkew_ratio * p.x_m;
  };
  return places_in_order(nodes.size(),
                         [&](std::size_t a, std::size_t b) { return along_m(nodes[a]) < along_m(nodes[b]); });
}

std::size_t in_full_bands(std::size_t rows) { return (rows + kAbreast - 1) / kAbreast * kAbreast; }

}  // namespace

std::optional<MeshImages> mesh_images(const PlateMesh& mesh) {
  const auto find_each = [](const auto& keys, const auto& wanted, std::vector<std::size_t>& found) {
    const std::vector<std::size_t> order =
        places_in_order(keys.size(), [&](std::size_t a, std::size_t b) { return keys[a] < keys[b]; });
    for (const auto& want : wanted) {
      const auto at = std::partition_point(order.begin(), order.end(), [&](std::size_t j) { return keys[j] < want; });
      if (at == order.end() || keys[*at] != want) return false;
      found.push_back(*at);
    }
    return true;
  };
  MeshImages images;
  std::vector<std::array<long long, 2>> at, across;
  for (const PlatePoint& p : mesh.nodes) {
    at.push_back({std::llround(p.x_m / kSamePlace_m), std::llround(p.y_m / kSamePlace_m)});
    across.push_back({at.back()[0], -at.back()[1]});
  }
  if (!find_each(at, across, images.node)) return std::nullopt;
  using Corners = std::array<std::size_t, 3>;
  std::vector<Corners> corners, image;
  for (const std::array<int, 3>& triangle : mesh.triangles) {
    Corners here{}, there{};
    for (std::size_t k = 0; k < 3; ++k) {
      here[k] = static_cast<std::size_t>(triangle[k]);
      there[k] = images.node[here[k]];
    }
    for (Corners* each : {&here, &there}) {
      if ((*each)[1] < (*each)[0]) std::swap((*each)[0], (*each)[1]);
      if ((*each)[2] < (*each)[1]) std::swap((*each)[1], (*each)[2]);
      if ((*each)[1] < (*each)[0]) std::swap((*each)[0], (*each)[1]);
    }
    corners.push_back(here);
    image.push_back(there);
  }
  if (!find_each(corners, image, images.triangle)) return std::nullopt;
  return images;
}

Unknowns::Unknowns(const PlateMesh& mesh, const std::optional<MeshImages>& images,
                   const std::vector<std::array<int, 2>>& more_ties) {
  const std::vector<std::size_t> order = in_order(mesh.nodes, images.has_value());
  // A node and its image have one place; in the order of the node that comes first.
  constexpr std::size_t kNone = SIZE_MAX;
  std::vector<std::size_t> place(order.size(), kNone);
  std::vector<double> side(order.size(), 1.0);  // 0: on the mirror
  std::size_t count = 0;
  for (const std::size_t node : order) {
    if (place[node] != kNone) continue;
    place[node] = count++;
    if (!images) continue;
    const std::size_t image = images->node[node];
    place[image] = place[node];
    side[node] = image == node ? 0.0 : 1.0;
    if (image != node) side[image] = -1.0;
  }
  even_rows_ = in_full_bands(kOfANode * count);
  rows_ = images ? 2 * even_rows_ : even_rows_;
  for (std::size_t node = 0; node < order.size(); ++node)
    for (std::size_t which = 0; which < kOfANode; ++which) {
      const std::size_t row = kOfANode * place[node] + which;
      // One of both motions is the same on both sides, the other the opposite and nothing in the
      // middle.
      const Place same{row, 1.0}, opposite{row, side[node]};
      Places at{which == kAcross ? opposite : same, which == kAcross ? same : opposite};
      at[1].row += even_rows_;
      if (!images) at = {same, Place{}};
      places_.push_back(at);
    }
  for (std::size_t i = 0; i < rows_ / kAbreast; ++i) first_.push_back(i);
  const std::size_t half_bands = even_rows_ / kAbreast;
  const auto tie = [&](int a, int b) {
    const std::size_t i = kOfANode * place[static_cast<std::size_t>(a)] / kAbreast;
    const std::size_t j = kOfANode * place[static_cast<std::size_t>(b)] / kAbreast;
    for (std::size_t from = 0; from < rows_ / kAbreast; from += half_bands)
      first_[from + std::max(i, j)] = std::min(first_[from + std::max(i, j)], from + std::min(i, j));
  };
  for (const auto& [a, b, c] : mesh.triangles) tie(a, b), tie(b, c), tie(c, a);
  for (const auto& [a, b] : more_ties) tie(a, b);
}

void Unknowns::add(Banded& matrix, const Places& a, const Places& b, double value) const {
  for (std::size_t half = 0; half < a.size(); ++half) {
    const double share = a[half].sign_factor * b[half].sign_factor * value;
    if (share == 0.0) continue;
    matrix.add(a[half].row, b[half].row, share);
    if (&a != &b) matrix.add(b[half].row, a[half].row, share);
  }
}

void Unknowns::close(Banded& matrix) const {
  for (std::size_t row = 0; row < rows_; ++row)
    if (matrix.at(row, row) == 0.0) matrix.add(row, row, 1.0);
}

}  // namespace thole
