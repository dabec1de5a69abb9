#pragma once

// The wizard without a window: frames are drawn into nowhere, the semantic tree is read, elements are
// used by role and name as a person would.

#include <imgui.h>

#include <memory>
#include <string>
#include <string_view>

#include "ui/app.h"

namespace thole::test {

class Wizard {
 public:
  explicit Wizard(ui::Viewport view = {});
  ~Wizard();
  Wizard(const Wizard&) = delete;
  Wizard& operator=(const Wizard&) = delete;

  // Draws one frame, `dt_s` after the last.
  void frame(float dt_s = 1.0f / 60.0f);
  // Draws until nothing more is wanted.
  void settle();
  void page(std::string_view key);

  // By role and accessible name; a missing element fails the test.
  const ui::SemNode& get(ui::Role role, std::string_view name);
  bool has(ui::Role role, std::string_view name);
  void click(ui::Role role, std::string_view name);
  void type(std::string_view name, std::string_view text);   // a textbox
  void pick(std::string_view name, std::string_view label);  // a select

  // The text of everything on the page, one line per element.
  std::string text();

  // Words of texels that the frames so far handed to the painter.
  std::size_t texels_sent() const { return texels_sent_; }

  ui::App& app() { return *app_; }
  ui::Viewport view;

 private:
  ImGuiContext* context_ = nullptr;
  std::unique_ptr<ui::App> app_{};
  std::size_t texels_sent_ = 0;
};

}  // namespace thole::test
