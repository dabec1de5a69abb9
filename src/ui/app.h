#pragma once

// The wizard, whole: give it a viewport and it draws a frame; tell it what was done and it acts.
// The caller owns the Dear ImGui context, has loaded the fonts, and brackets frame() with
// ImGui::NewFrame() and ImGui::Render().

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "base/issue.h"
#include "ui/document.h"
#include "ui/semantics.h"
#include "ui/sheet.h"
#include "ui/shop_theme.h"
#include "ui/widgets.h"

namespace thole::ui {

class App {
 public:
  App(Catalogue catalogue, Fonts fonts);

  void frame(const Viewport& view);

  // What somebody did to the element with this id: "click", "set" (text), "hover" and "press" (text
  // "1" or "0"), "drag" (px since the press: "dx dy"), "drop". For the whole wizard the id is
  // "app": "page" (text is its key), "undo", "redo", "units", "escape", and what the page around it
  // tells: "can-share", "unkept", "update", "address", "date", "kept" (a line to a job).
  void act(std::string_view id, std::string_view verb, std::string_view text);

  // Opens a link (an address, or what follows its '#') or the text of a job file. When it cannot be
  // read the present job stays; the issues say why, and the status line too.
  Issues open(std::string_view text);

  // A shop's own parts and prices. Rows that are not sound are left out and named; text that is no
  // catalogue changes nothing.
  Issues set_catalogue(std::string_view text);

  // What a shop's page may choose: "units", "page", "pages" (keys, blank between), "accent",
  // "paper", "ink" (#rrggbb, or empty), "contactLabel". Unknown keys and values that cannot be are
  // ignored.
  void configure(std::string_view key, std::string_view value);

  // One more trial of what would make the job fit; false when all is tried. Frames do it by
  // themselves, once nothing moves.
  bool search() { return document_.search(); }

  // Before anything but frames asks for the design.
  void tell();

  const SemTree& tree() const { return tree_; }
  float content_height() const { return content_height_; }
  int frames_wanted() const { return frames_wanted_; }
  // True once after the page changed: the shell scrolls to its top.
  bool take_page_turn();

  const Document& document() const { return document_; }
  const UiState& state() const { return state_; }
  std::string link() const;      // "job=..."
  std::string address() const;   // of the page, with the link
  std::string job_text() const;  // the job file
  std::string label() const;     // the job in a few words: "Bay boat, 6.7 m"
  const Palette& palette(bool dark) const { return dark ? night_ : day_; }

 private:
  bool at_a_glance() const;
  void told(const Event& event);
  bool heard(std::string_view verb, std::string_view text);

  Document document_;
  UiState state_{};
  Fonts fonts_;
  ShopColours colours_{};
  Palette day_ = kDay;
  Palette night_ = kNight;
  SemTree tree_{};
  std::vector<Event> events_{};
  std::string hovered_{};
  std::string pressed_{};
  float content_height_ = 0.0f;
  int frames_wanted_ = 2;
  bool page_turned_ = false;
};

}  // namespace thole::ui
