#include "io/presets.h"

#include "io/catalogue_json.h"
#include "io/embedded.h"
#include "io/job_json.h"

namespace thole {
namespace {

// "skiff" of "jobs/skiff.json"; empty when the file is not in that folder.
std::string_view name_in(std::string_view folder, std::string_view path) {
  if (!path.starts_with(folder)) return {};
  path.remove_prefix(folder.size());
  return path.substr(0, path.rfind('.'));
}

std::vector<Preset> presets_in(std::string_view folder) {
  std::vector<Preset> presets;
  for (const EmbeddedFile& file : preset_files()) {
    if (!name_in(folder, file.path).empty()) presets.push_back(read_preset(file.text).preset);
  }
  return presets;
}

Catalogue read_default_catalogue() {
  Catalogue catalogue;
  for (const EmbeddedFile& file : preset_files()) {
    if (file.path == "presets/catalogue.json") catalogue = read_catalogue(file.text).catalogue;
  }
  add_default_presets(catalogue);
  return catalogue;
}

std::vector<ReadyJob> read_ready_jobs() {
  std::vector<ReadyJob> jobs;
  for (const EmbeddedFile& file : ready_job_files()) {
    const std::string_view id = name_in("jobs/", file.path);
    Job job = read_job(file.text).job;
    std::string label = job.title.value;
    jobs.push_back({std::string(id), std::move(label), std::move(job), file.text});
  }
  return jobs;
}

}  // namespace

// The embedded files are read once; they never change.
const Catalogue& default_catalogue() {
  static const Catalogue catalogue = read_default_catalogue();
  return catalogue;
}

const std::vector<ReadyJob>& ready_jobs() {
  static const std::vector<ReadyJob> jobs = read_ready_jobs();
  return jobs;
}

void add_default_presets(Catalogue& catalogue) {
  if (catalogue.boats.empty()) catalogue.boats = presets_in("boats/");
  if (catalogue.waters.empty()) catalogue.waters = presets_in("waters/");
}

}  // namespace thole
