#pragma once

// What the dimensioned sheets share: words cut to a width, and the block that names the sheet (fields
// after ISO 7200, as recalled).

#include <string>
#include <string_view>
#include <vector>

#include "draw/drawing.h"

namespace thole {

// In millimetres of paper.
std::string fitted(std::string text, double width_mm);
std::vector<std::string> wrapped(std::string_view text, double width_mm);

struct TitleCell {
  std::string text{};
  double wide_frac = 1.0;  // of the block
  TextRole role = TextRole::note;
};

// Rows from the top, all as high.
void add_title_block(Drawing& drawing, Point low, Point high, const std::vector<std::vector<TitleCell>>& rows);

}  // namespace thole
