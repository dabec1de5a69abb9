#pragma once

// The job document and the presets (boat types, waters) as JSON: {"schema": 1, "boat": {"length_m":
// 7.6}}. Keys, units and ranges are those of job/fields.h.
//
// A reader takes anything and never fails: what is wrong is in the issues, each with the path of
// the value and what would be right; what could be read is kept, up to the place where a file
// breaks off. An error without a field means that the document as a whole is not sound.

#include <string>
#include <string_view>

#include "base/issue.h"
#include "job/catalogue.h"
#include "job/job.h"

namespace thole {

struct JobRead {
  Job job;
  Issues issues{};
};
JobRead read_job(std::string_view text);

// The given values alone, in the order of the field table, two-space indent, "\n" at the end.
std::string write_job(const Job& job);

struct PresetRead {
  Preset preset;
  Issues issues{};
};
PresetRead read_preset(std::string_view text);
std::string write_preset(const Preset& preset);

}  // namespace thole
