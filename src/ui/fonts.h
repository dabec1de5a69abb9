#pragma once

#include "ui/sheet.h"

namespace thole::ui {

// Adds the embedded fonts to the atlas of the current Dear ImGui context.
Fonts load_fonts();

}  // namespace thole::ui
