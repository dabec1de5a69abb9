#include "draw/title_block.h"

#include <algorithm>
#include <cstddef>
#include <utility>

#include "draw/plate_strokes.h"
#include "draw/sketch.h"

namespace thole {
namespace {

constexpr double kLetter_mm = 2.35;  // room to a letter

}  // namespace

// Text cut to what a width holds; bytes that go on with a letter are kept with it.
std::string fitted(std::string text, double width_mm) {
  const auto most = static_cast<std::size_t>(std::max(width_mm / kLetter_mm, 4.0));
  std::size_t letters = 0;
  for (std::size_t i = 0; i < text.size(); ++i) {
    if ((static_cast<unsigned char>(text[i]) & 0xC0u) == 0x80u) continue;
    if (++letters > most) {
      text.resize(i);
      return text + "…";
    }
  }
  return text;
}

std::vector<std::string> wrapped(std::string_view text, double width_mm) {
  const auto most = static_cast<std::size_t>(std::max(width_mm / kLetter_mm, 8.0));
  std::vector<std::string> lines;
  while (text.size() > most) {
    std::size_t cut = text.rfind(' ', most);
    if (cut == text.npos || cut == 0) cut = text.find(' ');
    if (cut == text.npos) break;
    lines.emplace_back(text.substr(0, cut));
    text.remove_prefix(cut + 1);
  }
  lines.emplace_back(text);
  return lines;
}

void add_title_block(Drawing& drawing, Point low, Point high, const std::vector<std::vector<TitleCell>>& rows) {
  const double wide_mm = high.x - low.x;
  const double row_mm = (high.y - low.y) / static_cast<double>(rows.size());
  add_line(drawing, low, {low.x, high.y}, Line::outline);
  double top_mm = high.y;
  for (const std::vector<TitleCell>& row : rows) {
    double x_mm = low.x;
    for (std::size_t i = 0; i < row.size(); ++i) {
      if (i > 0) add_line(drawing, {x_mm, top_mm}, {x_mm, top_mm - row_mm}, Line::thin);
      const double cell_mm = row[i].wide_frac * wide_mm;
      if (!row[i].text.empty()) {
        add_label(drawing, {x_mm + 3.0, top_mm - 0.5 * row_mm}, fitted(row[i].text, cell_mm - 5.0), Align::left, row[i].role);
      }
      x_mm += cell_mm;
    }
    top_mm -= row_mm;
    if (&row != &rows.back()) add_line(drawing, {low.x, top_mm}, {high.x, top_mm}, Line::thin);
  }
}

}  // namespace thole
