#pragma once

// What a golden file holds of a design: verdict, every output and every check to six figures.

#include <string>

#include "calc/outputs.h"

namespace thole::test {

std::string golden_text(const Design& design);
std::string golden_path(const std::string& job_id);

}  // namespace thole::test
