#pragma once

#include <string>

#include "base/issue.h"

namespace thole {

// [{"severity": "error", "field": "boat.length_m", "message": "..."}]
std::string write_issues(const Issues& issues);

}  // namespace thole
