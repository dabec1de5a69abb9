#pragma once

#include <string>
#include <vector>

namespace thole {

enum class Severity { note, warning, error };

// Something a reader of the job must be told: where, and what would be right. `field` is the path
// of the JSON key ("feeder.run_m"), so that the wizard puts the message beside the right box and
// the command line prints it; empty when the whole document is meant.
struct Issue {
  Severity severity = Severity::error;
  std::string field{};
  std::string message{};
};
using Issues = std::vector<Issue>;

inline bool has_error(const Issues& issues) {
  for (const Issue& issue : issues) {
    if (issue.severity == Severity::error) return true;
  }
  return false;
}

}  // namespace thole
