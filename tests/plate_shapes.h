#pragma once

// Plates that several tests cut and draw.

#include <string>
#include <utility>
#include <vector>

#include "calc/plate/outline.h"

namespace thole::test {

// 500 x 200 mm, corners of 12 mm, four holes of 9 mm, a slot with round ends on the centre line.
inline PlateShape slotted_plate() {
  PlateShape shape{.outline = rectangle_outline(0.5, 0.2, 0.012), .thickness_m = 0.010};
  shape.cut_outs = {
      {{{0.30, -0.02}, 0.02}, {{0.40, -0.02}, 0.02}, {{0.40, 0.02}, 0.02}, {{0.30, 0.02}, 0.02}}};
  for (const double x_m : {0.05, 0.25}) {
    for (const double y_m : {0.07, -0.07}) {
      shape.bolts.push_back({.at = {x_m, y_m}, .diameter_m = 0.009});
    }
  }
  return shape;
}

inline PlateShape countersunk_trapezoid() {
  PlateShape shape{.outline = trapezoid_outline(0.55, 0.24, 0.14, 0.03), .thickness_m = 0.0127};
  for (const double x_m : {0.06, 0.18, 0.30}) {
    for (const double y_m : {0.055, -0.055}) {
      shape.bolts.push_back({.at = {x_m, y_m}, .diameter_m = 0.009, .countersink_m = 0.01792});
    }
  }
  return shape;
}

inline PlateShape bow_shaped() {
  const BowOutline bow =
      bow_outline({.offsets = {{4.1, 0.36}, {4.3, 0.32}, {4.5, 0.25}, {4.7, 0.14}},
                   .margin_m = 0.04,
                   .radius_m = 0.015});
  PlateShape shape{.outline = bow.outline, .thickness_m = 0.008};
  for (const double y_m : {0.1, 0.0, -0.1}) {
    shape.bolts.push_back({.at = {0.1, y_m}, .diameter_m = 0.0066});
  }
  return shape;
}

// A corner that turns inward, and one corner without radius.
inline PlateShape notched_plate() {
  return {
      .outline = {{{0.0, -0.15}, 0.02},
                  {{0.4, -0.15}, 0.02},
                  {{0.4, 0.0}, 0.05},
                  {{0.25, 0.0}, 0.03},
                  {{0.25, 0.15}, 0.0},
                  {{0.0, 0.15}, 0.02}},
      .bolts = {{.at = {0.05, 0.1}, .diameter_m = 0.011}, {.at = {0.3, -0.1}, .diameter_m = 0.011}},
      .thickness_m = 0.009525};
}

// All sides arcs: corners that take half of each side.
inline PlateShape round_plate() {
  return {.outline = rectangle_outline(0.3, 0.3, 1.0),
          .bolts = {{.at = {0.15, 0.05}, .diameter_m = 0.0135}},
          .thickness_m = 0.012};
}

inline std::vector<std::pair<std::string, PlateShape>> plates_to_cut() {
  return {{"slotted", slotted_plate()},
          {"countersunk", countersunk_trapezoid()},
          {"bow", bow_shaped()},
          {"notched", notched_plate()},
          {"round", round_plate()}};
}

}  // namespace thole::test
