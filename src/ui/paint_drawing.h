#pragma once

#include <vector>

#include "draw/drawing.h"
#include "draw/layout.h"
#include "ui/sheet.h"

namespace thole::ui {

// A figure or a note as it is painted: its corner in the sheet's coordinates.
struct Figure {
  Rect rect{};
  Type type{};
  std::uint32_t rgb = 0;
  std::string text{};
};

// Where the texts of a drawing stand when it is painted into the rectangle: first the dimensions in
// their order, then the labels.
std::vector<Figure> lay_figures(const Sheet& sheet, const Drawing& drawing, const Rect& rect);

// Paints the drawing into the rectangle, to its own scale; only the screen's y points down.
void paint_drawing(Sheet& sheet, const Drawing& drawing, const Rect& rect);

// The dots that can be dragged; `at` is in the sheet's coordinates.
void paint_handle(Sheet& sheet, ImVec2 at, bool active);

}  // namespace thole::ui
