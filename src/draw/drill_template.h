#pragma once

// The plate at true size on sheets of paper that are joined, taped to deck or plate, and drilled
// through.

#include <string>
#include <vector>

#include "calc/plate/shape.h"
#include "draw/drawing.h"

namespace thole {

enum class Paper { a4, letter };

struct DrillTemplate {
  PlateShape shape{};
  std::string name{};  // on every page: "P-103 rev B"
  Paper paper = Paper::a4;
  double countersink_deg = 90.0;
};

// How the plate falls on pages: each shows a window of the plate, and neighbours share a strip.
struct TemplateTiling {
  int columns = 0;  // along the plate's x
  int rows = 0;     // along its y
  double page_width_mm = 0.0;
  double page_height_mm = 0.0;
  double window_width_mm = 0.0;
  double window_height_mm = 0.0;
  // Of the first window's low corner from the low corner of the plate's bounding box.
  double first_x_mm = 0.0;
  double first_y_mm = 0.0;
};
inline constexpr double kTemplateOverlap_mm = 15.0;
inline constexpr double kTemplateMargin_mm = 10.0;  // what printers leave white
inline constexpr int kMostTemplatePages = 60;

// Upright or across, whichever takes fewer pages. No columns: nothing to draw, or too many pages.
TemplateTiling tile_template(const DrillTemplate& wanted);

// Pages row by row from the aft starboard corner, each a drawing in millimetres of paper (for
// write_svg with .paper) with its number, marks that fall on one another where pages join, and two
// bars to measure before drilling: 100.0 mm and 4.000 in. Empty when tile_template() finds nothing.
std::vector<Drawing> drill_template(const DrillTemplate& wanted);

}  // namespace thole
