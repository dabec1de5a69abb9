#include "io/issues_json.h"

#include "io/json_build.h"

namespace thole {

std::string write_issues(const Issues& issues) {
  return json_of(issues).dump(2, ' ', false, Json::error_handler_t::replace);
}

}  // namespace thole
