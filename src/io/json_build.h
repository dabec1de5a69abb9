#pragma once

// JSON values built piece by piece, out of line: on the web an initializer list of pairs weighs several
// times as much.

#include <nlohmann/json.hpp>
#include <string>
#include <string_view>
#include <utility>

#include "base/issue.h"

namespace thole {

using Json = nlohmann::ordered_json;  // what is written keeps its order

class JsonObject {
 public:
  JsonObject& put(const char* key, Json value);
  JsonObject& put(const char* key, std::string_view text);
  JsonObject& put(const char* key, const std::string& text) { return put(key, std::string_view(text)); }
  JsonObject& put(const char* key, const char* text) { return put(key, std::string_view(text)); }
  JsonObject& put(const char* key, double number);  // null when it is not finite
  JsonObject& put(const char* key, int number);
  JsonObject& put(const char* key, bool truth);

  // What was built; nothing is left.
  Json take() { return std::move(object_); }

 private:
  Json object_ = Json::object();
};

Json json_of(std::string_view text);
Json json_of(double number);  // null when it is not finite
Json json_of(const Issues& issues);

}  // namespace thole
