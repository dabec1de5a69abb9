#pragma once

// A row of named measures on one line: "minutes=5, speed=0.9 kn, wind=12 kn".

#include <span>
#include <string>
#include <string_view>

#include "io/measure.h"

namespace thole {

struct NamedMeasure {
  std::string_view name{};
  std::string_view unit{};  // the suffix of the value's own name
  bool needed = false;
  double* value = nullptr;  // left as it is when not named
  bool named = false;       // set when it was
};

// Empty when all could be read; else one sentence on what would be.
std::string read_named_measures(std::string_view text, std::span<NamedMeasure> measures,
                                System system);

}  // namespace thole
