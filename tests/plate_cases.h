#pragma once

// The overhanging plate of the handbook (mount-structure.md 2.8, "overhang-6") and simple shapes.

#include <cmath>

#include "calc/plate/plate.h"

namespace thole::test {

inline PlateShape rectangle_plate(double length_m, double width_m, double thickness_m) {
  return {.outline = {{.at = {0.0, -0.5 * width_m}},
                      {.at = {length_m, -0.5 * width_m}},
                      {.at = {length_m, 0.5 * width_m}},
                      {.at = {0.0, 0.5 * width_m}}},
          .thickness_m = thickness_m};
}

inline constexpr PlateMaterial kHandbookAlloy{
    .modulus_Pa = 68.9e9, .poisson_ratio = 0.33, .density_kg_per_m3 = 2700.0};

inline PlateModel overhang_six(double thickness_m, double size_m) {
  PlateModel model{.shape = rectangle_plate(0.6, 0.2, thickness_m), .material = kHandbookAlloy};
  for (const double x_m : {0.05, 0.20, 0.35})
    for (const double y_m : {0.08, -0.08}) model.shape.bolts.push_back({.at = {x_m, y_m}});
  model.wish = {.size_m = size_m, .fixed = {{0.58, 0.0}, {0.60, 0.0}}};
  model.cases = {{"stowed",
                  {{.foot = {.middle = {0.58, 0.04}}, .force_N = -250.0},
                   {.foot = {.middle = {0.58, -0.04}}, .force_N = -250.0}}}};
  return model;
}

inline double sag_at_m(const PlateSolution& plate, PlatePoint at, std::size_t load_case = 0) {
  for (std::size_t i = 0; i < plate.mesh.nodes.size(); ++i)
    if (std::hypot(plate.mesh.nodes[i].x_m - at.x_m, plate.mesh.nodes[i].y_m - at.y_m) < 1e-6)
      return plate.cases[load_case].sag_m[i];
  return static_cast<double>(NAN);
}

}  // namespace thole::test
