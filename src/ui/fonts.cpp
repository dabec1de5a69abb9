#include "ui/fonts.h"

#include "io/embedded.h"

namespace thole::ui {
namespace {

// `merged`: only what the font before it lacks is taken from it.
ImFont* load(std::string_view part, bool merged = false) {
  for (const EmbeddedFile& file : font_files()) {
    if (file.path.find(part) == std::string_view::npos) continue;
    ImFontConfig config;
    config.FontDataOwnedByAtlas = false;  // the bytes are part of the program
    config.MergeMode = merged;
    config.OversampleV = 1;  // across, Dear ImGui decides: fine screens need none
    // Dear ImGui takes a mutable pointer but does not write when it does not own the bytes.
    void* bytes = const_cast<char*>(file.text.data());
    return ImGui::GetIO().Fonts->AddFontFromMemoryTTF(bytes, static_cast<int>(file.text.size()),
                                                      kText.size, &config);
  }
  return nullptr;
}

}  // namespace

Fonts load_fonts() {
  // Roomy from the start: a page of a fine screen fits without growing and packing anew.
  ImGui::GetIO().Fonts->TexMinWidth = 1024;
  ImGui::GetIO().Fonts->TexMinHeight = 512;
  Fonts fonts;
  fonts.regular = load("regular");
  fonts.semibold = load("semibold");
  load("regular", true);
  return fonts;
}

}  // namespace thole::ui
