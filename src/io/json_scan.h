#pragma once

// Hostile JSON as a flat list. What stands before the place where a text breaks off is in the list;
// a tree would lose it.

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "base/issue.h"

namespace thole {

enum class JsonKind { object, array, number, boolean, text, null };

struct JsonItem {
  std::string path{};  // "boat.length_m", "motors[2].price"; empty for the document itself
  JsonKind kind = JsonKind::null;
  double number = 0.0;  // a boolean is 0 or 1
  std::string text{};
};

struct JsonScan {
  std::vector<JsonItem> items{};  // in the order of the text, a container before what it holds
  Issues issues{};                // errors without field: the text is not sound JSON
};

// A text of more than `most_bytes`, nested more than 16 deep, not UTF-8 or not JSON is an error; a
// key that is given twice is a warning.
JsonScan scan_json(std::string_view text, std::size_t most_bytes);

// What follows `parent` in `path` when it is directly or further inside: "boat" in "boat.length_m"
// leaves "length_m", "" in "title" leaves "title". Empty when it is not inside.
std::string_view inside(std::string_view path, std::string_view parent);

}  // namespace thole
