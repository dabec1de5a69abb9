#pragma once

// The files of presets/, as they are part of the program.

#include <string>
#include <string_view>
#include <vector>

#include "job/catalogue.h"
#include "job/job.h"

namespace thole {

struct ReadyJob {
  std::string id{};     // name of the file without ending: "skiff-on-a-lake"
  std::string label{};  // the job's title
  Job job;
  std::string_view text{};  // the file
};

// Generic classes at invented prices, with all boat types and waters.
const Catalogue& default_catalogue();

// Jobs to look round with, in the order of their names.
const std::vector<ReadyJob>& ready_jobs();

// Gives a shop's own catalogue the boat types and waters that it does not bring.
void add_default_presets(Catalogue& catalogue);

}  // namespace thole
