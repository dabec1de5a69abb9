#include "io/json_build.h"

#include <cmath>

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

}  // namespace

JsonObject& JsonObject::put(const char* key, Json value) {
  object_[key] = std::move(value);
  return *this;
}
JsonObject& JsonObject::put(const char* key, std::string_view text) { return put(key, json_of(text)); }
JsonObject& JsonObject::put(const char* key, double number) { return put(key, json_of(number)); }
JsonObject& JsonObject::put(const char* key, int number) { return put(key, Json(number)); }
JsonObject& JsonObject::put(const char* key, bool truth) { return put(key, Json(truth)); }

Json json_of(std::string_view text) { return std::string(text); }

Json json_of(double number) { return std::isfinite(number) ? Json(number) : Json(nullptr); }

Json json_of(const Issues& issues) {
  Json list = Json::array();
  for (const Issue& issue : issues) {
    list.push_back(JsonObject()
                       .put("severity", word(issue.severity))
                       .put("field", issue.field)
                       .put("message", issue.message)
                       .take());
  }
  return list;
}

}  // namespace thole
