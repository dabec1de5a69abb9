#include "ui/wizard.h"

#include "io/presets.h"
#include "support.h"
#include "ui/fonts.h"

namespace thole::test {

Wizard::Wizard(ui::Viewport viewport) : view(viewport), context_(ImGui::CreateContext()) {
  ImGui::SetCurrentContext(context_);
  ImGuiIO& io = ImGui::GetIO();
  io.IniFilename = nullptr;
  io.BackendFlags |= ImGuiBackendFlags_RendererHasTextures;  // nobody looks at the textures
  app_ = std::make_unique<ui::App>(default_catalogue(), ui::load_fonts());
  settle();
}

Wizard::~Wizard() {
  ImGui::SetCurrentContext(context_);
  for (ImTextureData* texture : ImGui::GetPlatformIO().Textures) {
    texture->SetStatus(ImTextureStatus_Destroyed);
  }
  ImGui::DestroyContext(context_);
}

void Wizard::settle() {
  ImGui::SetCurrentContext(context_);
  int frames = 0;
  do {
    ImGuiIO& io = ImGui::GetIO();
    io.DisplaySize = {view.width, view.height};
    io.DeltaTime = 1.0f / 60.0f;
    ImGui::NewFrame();
    app_->frame(view);
    ImGui::Render();
    for (ImTextureData* texture : ImGui::GetPlatformIO().Textures) {
      if (texture->Status == ImTextureStatus_WantCreate ||
          texture->Status == ImTextureStatus_WantUpdates) {
        texture->SetTexID(1);
        texture->SetStatus(ImTextureStatus_OK);
      }
    }
    REQUIRE(++frames < 20);  // the page comes to rest
  } while (app_->frames_wanted() > 0);
}

void Wizard::page(std::string_view key) {
  app_->act("app", "page", key);
  settle();
}

const ui::SemNode& Wizard::get(ui::Role role, std::string_view name) {
  const ui::SemNode* node = app_->tree().find(role, name);
  INFO("looking for ", std::string(role_name(role)), " \"", std::string(name), "\" in\n", text());
  REQUIRE(node != nullptr);
  return *node;
}

bool Wizard::has(ui::Role role, std::string_view name) {
  return app_->tree().find(role, name) != nullptr;
}

void Wizard::click(ui::Role role, std::string_view name) {
  app_->act(get(role, name).id, "click", "");
  settle();
}

void Wizard::type(std::string_view name, std::string_view typed) {
  app_->act(get(ui::Role::textbox, name).id, "set", typed);
  settle();
}

void Wizard::pick(std::string_view name, std::string_view label) {
  const ui::SemNode& node = get(ui::Role::select, name);
  std::string key;
  bool found = false;
  for (const ui::SemOption& option : node.options) {
    if (option.label == label) {
      key = option.key;
      found = true;
    }
  }
  REQUIRE(found);
  app_->act(node.id, "set", key);
  settle();
}

std::string Wizard::text() {
  std::string out;
  for (const ui::SemNode& node : app_->tree().nodes()) {
    out += std::string(role_name(node.role)) + " \"" + node.name + "\" " + node.value + "\n";
  }
  return out;
}

}  // namespace thole::test
