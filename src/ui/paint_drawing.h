#pragma once

#include "draw/drawing.h"
#include "ui/sheet.h"

namespace thole::ui {

// Paints the drawing into the rectangle, to its own scale; only the screen's y points down.
void paint_drawing(Sheet& sheet, const Drawing& drawing, const Rect& rect);

}  // namespace thole::ui
