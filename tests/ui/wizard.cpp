#include "ui/wizard.h"

#include "io/presets.h"
#include "support.h"
#include "ui/fonts.h"
#include "ui/frame_packet.h"

namespace thole::test {

Wizard::Wizard(ui::Viewport viewport) : view(viewport), context_(ImGui::CreateContext()) {
  ImGui::SetCurrentContext(context_);
  ImGuiIO& io = ImGui::GetIO();
  io.IniFilename = nullptr;
  io.BackendFlags |= ImGuiBackendFlags_RendererHasTextures;
  io.Fonts->TexDesiredFormat = ImTextureFormat_Alpha8;
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

void Wizard::frame(float dt_s) {
  ImGui::SetCurrentContext(context_);
  ImGuiIO& io = ImGui::GetIO();
  io.DisplaySize = {view.width, view.height};
  io.DeltaTime = dt_s;
  ImGui::NewFrame();
  app_->frame(view);
  ImGui::Render();
  const auto packet = ui::pack_frame(*ImGui::GetDrawData(), 0, false);
  std::size_t at = ui::kPacketHeader;
  for (std::uint32_t i = 0; i < packet[5]; ++i) {
    texels_sent_ += packet[at + 8];
    at += ui::kPacketTexture + packet[at + 8];
  }
}

void Wizard::settle() {
  int frames = 0;
  do {
    frame();
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
