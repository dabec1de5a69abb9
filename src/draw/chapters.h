#pragma once

// What a design is told in: one chapter to a question of the trade, in the order of the work. The
// job sheet and the command line go by it.

#include <span>
#include <string_view>

#include "draw/drawing.h"
#include "draw/pictures.h"

namespace thole {

struct Chapter {
  std::string_view key{};       // section of the job and of the outputs: "hold"
  std::string_view title{};     // "Hold"
  std::string_view lead{};      // what it settles, one sentence
  std::string_view headline{};  // path of its first output; empty: it has none
  Drawing (*picture)(const Design&, System) = nullptr;  // null: none
  const Trace* (*trace)(const Design&) = nullptr;       // null: only the estimates speak of it
  bool (*applies)(const Design&) = nullptr;             // null: to every design

  bool told(const Design& design) const { return applies == nullptr || applies(design); }
};

std::span<const Chapter> all_chapters();
const Chapter* find_chapter(std::string_view key);  // null when there is none

}  // namespace thole
