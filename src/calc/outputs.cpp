#include "calc/outputs.h"

namespace thole {
namespace {

// Path and member cannot differ.
#define THOLE_OWN(stage, key, label, step, ...) Output{#stage, #key, __VA_ARGS__}
#define THOLE_NUMBER(stage, key, label, step) \
  Output{#stage, #key, [](const Design& design) { return static_cast<double>(design.stage.key); }}
// A number that only lead-acid has: it gives off hydrogen.
#define THOLE_GAS(stage, key, label, step)                                                       \
  Output {                                                                                       \
    #stage, #key, [](const Design& design) { return static_cast<double>(design.stage.key); }, nullptr, \
        [](const Design& design) { return is_lead(design.bank.block.chemistry); }                \
  }
// A number of the locker, once it was measured.
#define THOLE_LOCKER(key, label, step)                                                              \
  Output {                                                                                          \
    "locker", #key, [](const Design& design) { return static_cast<double>(design.locker.key); }, nullptr, \
        [](const Design& design) { return design.locker.measured; }                                 \
  }
// A text that a stage decided; `from` is where it stands in the stage's result.
#define THOLE_TEXT(stage, key, label, from) \
  Output{#stage, #key, nullptr, [](const Design& design) { return std::string(design.stage.from); }}
// A number of the full job.
#define THOLE_JOB(stage, key, label) \
  Output{#stage, #key, [](const Design& design) { return design.job.stage.key.value; }}
// Of the data link, where there is one.
#define THOLE_LINK(key, label, step)                                                                \
  Output {                                                                                          \
    "control", "network_" #key, [](const Design& design) { return design.control.link.key; }, nullptr, \
        [](const Design& design) {                                                                  \
          return design.job.control.link.value == DataLink::marine_network;                         \
        }                                                                                           \
  }

constexpr Output kOutputs[] = {
#include "calc/outputs.inc"
};

#undef THOLE_OWN
#undef THOLE_NUMBER
#undef THOLE_GAS
#undef THOLE_LOCKER
#undef THOLE_LINK
#undef THOLE_TEXT
#undef THOLE_JOB

}  // namespace

std::string Output::path() const { return std::string(stage) + "." + std::string(key); }

std::span<const Output> all_outputs() { return kOutputs; }

const Output* find_output(std::string_view path) {
  const std::size_t dot = path.find('.');
  if (dot == path.npos) return nullptr;
  for (const Output& output : kOutputs) {
    if (output.stage == path.substr(0, dot) && output.key == path.substr(dot + 1)) return &output;
  }
  return nullptr;
}

}  // namespace thole
