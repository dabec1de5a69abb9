#include "io/issues_json.h"

#include "io/json_build.h"

namespace thole {

std::string write_issues(const Issues& issues) { return json_of(issues).text; }

}  // namespace thole
