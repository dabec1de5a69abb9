#pragma once

#include <vector>

#include "draw/layout.h"

namespace thole {

// A line of text on the sheet, y down.
struct TextBox {
  Point centre{};
  Size size{};
};

// Moves texts so that none is cut by the edge of the sheet and none lies over another. The first
// keep their place; a later one that collides moves up or down by as little as clears it, and stays
// where it is when there is no room at all.
void keep_apart(std::vector<TextBox>& boxes, Size sheet);

}  // namespace thole
