#include <cstddef>

#include "calc/outputs.h"

namespace thole {
namespace {

struct Words {
  std::string_view label{};
  std::string_view step{};
};

#define THOLE_OWN(stage, key, label, step, ...) Words{label, step}
#define THOLE_NUMBER(stage, key, label, step) Words{label, step}
#define THOLE_GAS(stage, key, label, step) Words{label, step}
#define THOLE_LOCKER(key, label, step) Words{label, step}
#define THOLE_LINK(key, label, step) Words{label, step}
#define THOLE_TEXT(stage, key, label, from) Words{label, ""}
#define THOLE_JOB(stage, key, label) Words{label, "estimate." #stage "." #key}

constexpr Words kWords[] = {
#include "calc/outputs.inc"
};

#undef THOLE_OWN
#undef THOLE_NUMBER
#undef THOLE_GAS
#undef THOLE_LOCKER
#undef THOLE_LINK
#undef THOLE_TEXT
#undef THOLE_JOB

// Both tables are made from one list.
const Words& words_of(const Output& output) {
  return kWords[static_cast<std::size_t>(&output - all_outputs().data())];
}

}  // namespace

std::string_view label_of(const Output& output) { return words_of(output).label; }
std::string_view step_of(const Output& output) { return words_of(output).step; }

}  // namespace thole
