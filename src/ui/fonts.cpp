#include "ui/fonts.h"

#include "io/embedded.h"

namespace thole::ui {
namespace {

ImFont* load(std::string_view part) {
  for (const EmbeddedFile& file : font_files()) {
    if (file.path.find(part) == std::string_view::npos) continue;
    ImFontConfig config;
    config.FontDataOwnedByAtlas = false;  // the bytes are part of the program
    config.OversampleH = 2;
    config.OversampleV = 1;
    // Dear ImGui takes a mutable pointer but does not write when it does not own the bytes.
    void* bytes = const_cast<char*>(file.text.data());
    return ImGui::GetIO().Fonts->AddFontFromMemoryTTF(bytes, static_cast<int>(file.text.size()),
                                                      kText.size, &config);
  }
  return nullptr;
}

}  // namespace

Fonts load_fonts() {
  Fonts fonts;
  fonts.regular = load("regular");
  fonts.semibold = load("semibold");
  return fonts;
}

}  // namespace thole::ui
