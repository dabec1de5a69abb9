#pragma once

// JSON written piece by piece, indented by two. As text and not as a tree of values: nothing has to be
// looked up or taken back, and on the web a tree weighs several times as much.

#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "base/issue.h"

namespace thole {

// One value as it stands in a document, without indent in front and without an end of line behind.
struct JsonText {
  std::string text{};
};

JsonText json_of(std::string_view text);  // in quotes; what is not UTF-8 becomes "?"
JsonText json_of(double number);          // the shortest text that reads back; null when it is not finite
JsonText json_of(int number);
JsonText json_of(bool truth);
JsonText json_of(const Issues& issues);

class JsonList {
 public:
  JsonList& add(const JsonText& item);
  JsonText take();  // nothing is left

 private:
  std::string inside_{};
};

class JsonObject {
 public:
  JsonObject& put(std::string_view key, const JsonText& value);
  JsonObject& put(std::string_view key, std::string_view text) { return put(key, json_of(text)); }
  JsonObject& put(std::string_view key, const std::string& text) { return put(key, json_of(text)); }
  JsonObject& put(std::string_view key, const char* text) {
    return put(key, json_of(std::string_view(text)));
  }
  JsonObject& put(std::string_view key, double number) { return put(key, json_of(number)); }
  JsonObject& put(std::string_view key, int number) { return put(key, json_of(number)); }
  JsonObject& put(std::string_view key, bool truth) { return put(key, json_of(truth)); }
  JsonText take();  // nothing is left

 private:
  std::string inside_{};
};

// Objects inside one object, filled in any order; they stand in the order in which they were first asked for.
class JsonSections {
 public:
  JsonObject& in(std::string_view name);
  void put_into(JsonObject& whole);

 private:
  std::vector<std::pair<std::string_view, JsonObject>> sections_{};
};

}  // namespace thole
