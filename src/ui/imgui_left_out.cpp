// Thole draws its own controls: of Dear ImGui it uses frames, type and draw lists.
// imgui_widgets.cpp and imgui_tables.cpp are left out of the build, which saves the page what no
// one would see; what the core calls of them in passing stands here and does nothing. A newer Dear
// ImGui that calls more fails to link, and says what.

#include <imgui.h>
#include <imgui_internal.h>

#include <cstring>

ImGuiInputTextState::ImGuiInputTextState() { std::memset(this, 0, sizeof *this); }
ImGuiInputTextState::~ImGuiInputTextState() {}

void ImGuiMenuColumns::Update(float, bool) {}

namespace ImGui {

bool Button(const char*, const ImVec2&) { return false; }
bool ButtonBehavior(const ImRect&, ImGuiID, bool*, bool*, ImGuiButtonFlags) { return false; }
bool CloseButton(ImGuiID, const ImVec2&) { return false; }
bool CollapseButton(ImGuiID, const ImVec2&) { return false; }
bool InputText(const char*, char*, size_t, ImGuiInputTextFlags, ImGuiInputTextCallback, void*) {
  return false;
}
bool Selectable(const char*, bool, ImGuiSelectableFlags, const ImVec2&) { return false; }
bool SliderInt(const char*, int*, int, int, const char*, ImGuiSliderFlags) { return false; }
ImGuiMultiSelectIO* EndMultiSelect() { return nullptr; }
void EndColumns() {}
void EndMenuBar() {}
void EndTabBar() {}
void EndTable() {}
void InputTextDeactivateHook(ImGuiID) {}
void Scrollbar(ImGuiAxis) {}
void SeparatorText(const char*) {}
void TableEndRow(ImGuiTable*) {}
void TableGcCompactSettings() {}
void TableGcCompactTransientBuffers(ImGuiTable*) {}
void TableGcCompactTransientBuffers(ImGuiTableTempData*) {}
void TableSettingsAddSettingsHandler() {}
void TextV(const char*, va_list) {}
void TreePop() {}

}  // namespace ImGui
