#pragma once

// Files that are part of the program: tools/embed.py writes their bytes into a source of the build.

#include <span>
#include <string_view>

namespace thole {

struct EmbeddedFile {
  std::string_view path{};  // last two parts: "jobs/skiff.json"
  std::string_view text{};  // its bytes
};

std::span<const EmbeddedFile> preset_files();     // presets/: catalogue, boats, waters
std::span<const EmbeddedFile> ready_job_files();  // presets/jobs/
std::span<const EmbeddedFile> font_files();       // with the wizard only

}  // namespace thole
