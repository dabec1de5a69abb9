#pragma once

// The plate's outline and everything that is cut or drilled, as the maker sees it from above.

#include <cmath>
#include <vector>

namespace thole {

// x forward from the aft edge's middle, y to port.
struct PlatePoint {
  double x_m = 0.0;
  double y_m = 0.0;
};
inline double square_m2(PlatePoint a, PlatePoint b) {
  return (a.x_m - b.x_m) * (a.x_m - b.x_m) + (a.y_m - b.y_m) * (a.y_m - b.y_m);
}
inline double distance_m(PlatePoint a, PlatePoint b) { return std::sqrt(square_m2(a, b)); }

// Of an outline, counter-clockwise.
struct PlateCorner {
  PlatePoint at{};
  double radius_m = 0.0;
};

struct PlateHole {
  PlatePoint at{};
  double diameter_m = 0.0;
  double countersink_m = 0.0;  // outer diameter; 0: none
};

struct PlateShape {
  std::vector<PlateCorner> outline{};
  std::vector<std::vector<PlateCorner>> cut_outs{};  // each closed, either way round
  std::vector<PlateHole> bolts{};
  double thickness_m = 0.0;
};

}  // namespace thole
