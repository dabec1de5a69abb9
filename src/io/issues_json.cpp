#include "io/issues_json.h"

#include <nlohmann/json.hpp>

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

std::string write_issues(const Issues& issues) {
  using Json = nlohmann::ordered_json;
  Json list = Json::array();
  for (const Issue& issue : issues) {
    list.push_back({{"severity", std::string(word(issue.severity))},
                    {"field", issue.field},
                    {"message", issue.message}});
  }
  return list.dump(2, ' ', false, Json::error_handler_t::replace);
}

}  // namespace thole
