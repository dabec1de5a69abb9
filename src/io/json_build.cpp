#include "io/json_build.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <nlohmann/detail/conversions/to_chars.hpp>

#include "io/text.h"

namespace thole {
namespace {

std::string_view word(Severity severity) {
  switch (severity) {
    case Severity::note:
      return "note";
    case Severity::warning:
      return "warning";
    case Severity::error:
      return "error";
  }
  return "error";
}

// Adds a value on a line of its own, inside brackets. No text holds an end of line, so that each one is
// between values.
void add_line(std::string_view key, const JsonText& value, std::string& inside) {
  inside += inside.empty() ? "\n  " : ",\n  ";
  if (!key.empty()) inside += json_of(key).text + ": ";
  for (const char c : value.text) {
    inside += c;
    if (c == '\n') inside += "  ";
  }
}

JsonText in_brackets(char open, std::string inside, char close) {
  if (!inside.empty()) inside += '\n';
  return {open + inside + close};
}

}  // namespace

JsonText json_of(std::string_view text) {
  constexpr std::string_view kDigits = "0123456789abcdef";
  const std::string sound = is_utf8(text) ? std::string(text) : plain_line(text, text.size());
  std::string out = "\"";
  for (const char c : sound) {
    const auto byte = static_cast<unsigned char>(c);
    if (c == '"' || c == '\\') {
      out += '\\';
      out += c;
    } else if (byte < 0x20) {  // RFC 8259, section 7
      out += "\\u00";
      out += kDigits[byte >> 4];
      out += kDigits[byte & 15u];
    } else {
      out += c;
    }
  }
  return {out + "\""};
}

JsonText json_of(double number) {
  if (!std::isfinite(number)) return {"null"};
  std::array<char, 64> buffer{};
  const char* first = buffer.data();
  const char* end = nlohmann::detail::to_chars(buffer.data(), first + buffer.size(), number);
  return {std::string(first, end)};
}

JsonText json_of(int number) { return {std::to_string(number)}; }
JsonText json_of(bool truth) { return {truth ? "true" : "false"}; }

JsonText json_of(const Issues& issues) {
  JsonList list;
  for (const Issue& issue : issues) {
    list.add(JsonObject()
                 .put("severity", word(issue.severity))
                 .put("field", issue.field)
                 .put("message", issue.message)
                 .take());
  }
  return list.take();
}

JsonList& JsonList::add(const JsonText& item) {
  add_line({}, item, inside_);
  return *this;
}
JsonText JsonList::take() { return in_brackets('[', std::exchange(inside_, {}), ']'); }

JsonObject& JsonObject::put(std::string_view key, const JsonText& value) {
  add_line(key, value, inside_);
  return *this;
}
JsonText JsonObject::take() { return in_brackets('{', std::exchange(inside_, {}), '}'); }

JsonObject& JsonSections::in(std::string_view name) {
  const auto at = std::find_if(sections_.begin(), sections_.end(),
                               [&](const auto& section) { return section.first == name; });
  if (at != sections_.end()) return at->second;
  return sections_.emplace_back(name, JsonObject()).second;
}

void JsonSections::put_into(JsonObject& whole) {
  for (auto& [name, section] : sections_) whole.put(name, section.take());
  sections_.clear();
}

}  // namespace thole
