#include "io/json_scan.h"

#include <algorithm>
#include <cstdint>
#include <nlohmann/json.hpp>
#include <set>

#include "io/text.h"

namespace thole {
namespace {

using Json = nlohmann::ordered_json;  // as what is written, so that the program holds one kind

constexpr std::size_t kMostDepth = 16;
constexpr std::size_t kMostItems = 100000;
constexpr std::size_t kMostIssues = 50;

// A key as a part of a path. One that could be taken for something else is put in brackets.
std::string path_part(std::string_view key) {
  const bool plain = !key.empty() && std::all_of(key.begin(), key.end(), [](char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '_' ||
           c == '-' || c == '$';
  });
  if (plain && key.size() <= 64) return std::string(key);
  return "[\"" + plain_line(key, 64) + "\"]";
}

// What nlohmann's parser calls. Returning false ends the scan.
class Scanner {
 public:
  Scanner(JsonScan& scan, std::string_view text) : scan_(scan), text_(text) {}

  bool null() { return add({.path = path(), .kind = JsonKind::null}); }
  bool boolean(bool value) {
    return add({.path = path(), .kind = JsonKind::boolean, .number = value ? 1.0 : 0.0});
  }
  bool number_integer(std::int64_t value) { return number(static_cast<double>(value)); }
  bool number_unsigned(std::uint64_t value) { return number(static_cast<double>(value)); }
  bool number_float(double value, const std::string&) { return number(value); }
  bool string(std::string& value) {
    return add({.path = path(), .kind = JsonKind::text, .text = std::move(value)});
  }
  bool binary(Json::binary_t&) { return false; }  // JSON has none
  bool start_object(std::size_t) { return open(JsonKind::object); }
  bool start_array(std::size_t) { return open(JsonKind::array); }
  bool end_object() { return close(); }
  bool end_array() { return close(); }
  bool key(std::string& name) {
    Level& level = levels_.back();
    level.part = path_part(name);
    if (!level.keys.insert(level.part).second && scan_.issues.size() < kMostIssues) {
      scan_.issues.push_back(
          {Severity::warning, path(), "This key is given twice; the last one counts."});
    }
    return true;
  }
  template <class Exception>
  bool parse_error(std::size_t position, const std::string&, const Exception& exception) {
    const std::string_view before = text_.substr(0, std::min(position, text_.size()));
    const auto line = 1 + std::count(before.begin(), before.end(), '\n');
    constexpr int kNumberOverflow = 406;
    fail("Not sound JSON from line " + std::to_string(line) + " on: " +
         (exception.id == kNumberOverflow ? "a number is too large."
          : position >= text_.size()      ? "the text breaks off."
                                          : "check commas, quotes and brackets there."));
    return false;
  }

 private:
  struct Level {
    std::string path{};
    bool array = false;
    std::size_t index = 0;
    std::string part{};
    std::set<std::string> keys{};
  };

  std::string path() const {
    if (levels_.empty()) return {};
    const Level& level = levels_.back();
    if (level.array) return level.path + "[" + std::to_string(level.index) + "]";
    const bool dot = !level.path.empty() && level.part.front() != '[';
    return level.path + (dot ? "." : "") + level.part;
  }
  bool number(double value) {
    return add({.path = path(), .kind = JsonKind::number, .number = value});
  }
  bool open(JsonKind kind) {
    if (levels_.size() >= kMostDepth) return fail("Brackets are nested too deep.");
    std::string own = path();
    if (!insert({.path = own, .kind = kind})) return false;
    levels_.push_back({.path = std::move(own), .array = kind == JsonKind::array});
    return true;
  }
  bool close() {
    levels_.pop_back();
    return step();
  }
  bool add(JsonItem item) { return insert(std::move(item)) && step(); }
  bool insert(JsonItem item) {
    if (scan_.items.size() >= kMostItems) return fail("The file holds too many values.");
    scan_.items.push_back(std::move(item));
    return true;
  }
  bool step() {
    if (!levels_.empty() && levels_.back().array) ++levels_.back().index;
    return true;
  }
  bool fail(std::string message) {
    scan_.issues.push_back({Severity::error, "", std::move(message)});
    return false;
  }

  JsonScan& scan_;
  std::string_view text_;
  std::vector<Level> levels_{};
};

}  // namespace

JsonScan scan_json(std::string_view text, std::size_t most_bytes) {
  JsonScan scan;
  const auto refuse = [&scan](std::string message) {
    scan.issues.push_back({Severity::error, "", std::move(message)});
  };
  if (text.find_first_not_of(" \t\r\n") == text.npos) {
    refuse("The file is empty.");
  } else if (text.size() > most_bytes) {
    refuse("The file is larger than " + std::to_string(most_bytes / 1000) + " kB.");
  } else if (!is_utf8(text)) {
    refuse("The file is not UTF-8 text.");
  } else {
    Scanner scanner(scan, text);
    Json::sax_parse(text.begin(), text.end(), &scanner);
  }
  return scan;
}

std::string_view inside(std::string_view path, std::string_view parent) {
  if (parent.empty()) return path;
  if (path.size() <= parent.size() || path.substr(0, parent.size()) != parent) return {};
  path.remove_prefix(parent.size());
  if (path.front() == '.') return path.substr(1);
  return path.front() == '[' ? path : std::string_view{};
}

}  // namespace thole
