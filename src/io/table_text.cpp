#include "io/table_text.h"

#include <algorithm>
#include <cstddef>

namespace thole {
namespace {

std::size_t signs_in(const std::string& text) {
  return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), [](char c) {
    return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U;  // not the inside of a UTF-8 sign
  }));
}

}  // namespace

std::string table_text(const TextTable& table) {
  std::vector<std::size_t> widths;
  for (const std::vector<std::string>& row : table.rows) {
    widths.resize(std::max(widths.size(), row.size()));
    for (std::size_t i = 0; i < row.size(); ++i) widths[i] = std::max(widths[i], signs_in(row[i]));
  }
  std::string text;
  for (const std::vector<std::string>& row : table.rows) {
    std::string line;
    for (std::size_t i = 0; i < row.size(); ++i) {
      const std::string fill(widths[i] - signs_in(row[i]), ' ');
      const bool right = i < table.right.size() && table.right[i] != 0;
      if (i > 0) line += "  ";
      line += right ? fill + row[i] : row[i] + fill;
    }
    line.erase(line.find_last_not_of(' ') + 1);
    text += line + "\n";
  }
  return text;
}

}  // namespace thole
