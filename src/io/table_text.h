#pragma once

// Tables for a terminal: columns as wide as what stands in them.

#include <string>
#include <vector>

namespace thole {

struct TextTable {
  std::vector<std::vector<std::string>> rows{};  // all as long as the first
  std::vector<char> right{};                     // columns whose text stands to the right
};

// Two blanks between columns, none at the end of a line; counts signs, not bytes.
std::string table_text(const TextTable& table);

}  // namespace thole
