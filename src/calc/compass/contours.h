#pragma once

// Where in the boat a heading sensor errs by how much: a grid over its plan, and lines of equal
// error.

#include <cstddef>
#include <vector>

#include "calc/compass/compass.h"

namespace thole {

struct PlanPoint {
  double x_m = 0.0;  // forward
  double y_m = 0.0;  // to port
};
using PlanLine = std::vector<PlanPoint>;  // closed where the last point is the first

// A rectangle at one height.
struct PlanArea {
  PlanPoint low{};
  PlanPoint high{};
  double z_m = 0.0;
  int columns_count = 81;  // points along x; 2 or more
  int rows_count = 41;     // along y; 2 or more
};

struct ErrorGrid {
  PlanArea area{};
  std::vector<double> field_ratio{};  // disturbing over earth's level field, row by row along x

  PlanPoint point(int column, int row) const;
  double ratio(int column, int row) const;
  double error_deg(int column, int row) const;  // at the worst heading
};

// Of the input's circuit, tilt and earth's field; its sensor is not looked at. Empty ratios where
// the input or the area is impossible.
ErrorGrid error_grid(const CompassInput& in, const PlanArea& area);

// Lines on which the error is `error_deg`, 0 < error_deg < 90: marching squares on the logarithm of
// the ratio, for the field falls by powers of the distance. Each line is whole: closed, or from
// edge to edge of the area. Saddles go by the mean of their corners.
std::vector<PlanLine> iso_lines(const ErrorGrid& grid, double error_deg);

}  // namespace thole
