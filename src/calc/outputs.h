#pragma once

// One table of what a design says, for every reader: the JSON of the command line, the headline and
// result rows of the wizard, the job sheet.

#include <span>
#include <string>
#include <string_view>

#include "calc/design.h"

namespace thole {

struct Output {
  std::string_view stage{};  // "hold"
  std::string_view key{};    // "thrust_required_N": the unit is its suffix
  double (*number)(const Design&) = nullptr;
  std::string (*text)(const Design&) = nullptr;  // instead of a number
  bool (*applies)(const Design&) = nullptr;      // null: always; otherwise shown only when true

  std::string path() const;
};

std::span<const Output> all_outputs();

// Of one of them: "Thrust needed, with margin", and the id of the step that explains it; empty when it is a
// choice.
std::string_view label_of(const Output& output);
std::string_view step_of(const Output& output);

const Output* find_output(std::string_view path);  // "hold.thrust_required_N"

}  // namespace thole
