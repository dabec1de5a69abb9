#pragma once

// The paper of one frame: where the next thing goes, how it is painted, and what it is called.
// Dear ImGui supplies type and triangles; every control on the page is our own, drawn here.

#include <imgui.h>

#include <string>
#include <string_view>
#include <vector>

#include "ui/semantics.h"
#include "ui/theme.h"

namespace thole::ui {

// What somebody did to an element: "click", "set" (with text), "step" (with a count).
struct Event {
  std::string id{};
  std::string verb{};
  std::string text{};
};

struct Fonts {
  ImFont* regular = nullptr;
  ImFont* semibold = nullptr;
};

// How the page is looked at. Lengths in CSS px.
struct Viewport {
  float width = 412.0f;
  float height = 915.0f;
  float scroll_y = 0.0f;
  float inset_top = 0.0f;
  float inset_right = 0.0f;
  float inset_bottom = 0.0f;
  float inset_left = 0.0f;
  float text_scale = 1.0f;
  bool dark = false;
  bool reduced_motion = false;
  bool typing = false;  // a soft keyboard takes half of the screen
};

struct Rect {
  float x = 0.0f;
  float y = 0.0f;
  float width = 0.0f;
  float height = 0.0f;
};

class Sheet;

// What is recorded while it lives belongs to one landmark, list or item.
class Within {
 public:
  Within(Sheet& sheet, Role role, std::string name = {});
  // Pinned, it takes the touches of a whole strip.
  Within(Sheet& sheet, Role role, std::string name, const Rect& strip);
  ~Within();
  Within(const Within&) = delete;
  Within& operator=(const Within&) = delete;

 private:
  SemTree& tree_;
};

// A line that begins at `begin` and would end at `stop`, amid a text to `end`: it ends before a number that it would cut at
// the decimal point, unless that is all that it has.
const char* with_whole_number(const char* begin, const char* stop, const char* end);

class Sheet {
 public:
  Sheet(ImDrawList* draw, const Fonts& fonts, const Viewport& view, const Palette& palette,
        SemTree& tree, std::vector<Event>& events);

  // The column that is being filled; `y` is where the next thing goes.
  float x = 0.0f;
  float y = 0.0f;
  float width = 0.0f;

  const Palette& palette() const { return *palette_; }
  const Viewport& view() const { return view_; }
  SemTree& tree() { return tree_; }
  float scaled(float px) const { return px * view_.text_scale; }
  void space(float px) { y += px; }

  // Everything between these is painted in viewport coordinates and does not scroll.
  void pin(Pinned where) { pinned_ = where; }
  Pinned pinned() const { return pinned_; }

  // The pointer rests on, or presses, the element with this id.
  std::string hovered{};
  std::string pressed{};

  // The first event for this element, taken out of the queue; empty verb when there is none.
  Event take(std::string_view id);

  // Painting, in document coordinates (viewport ones when pinned). Nothing outside the view is
  // sent.
  void box(const Rect& rect, std::uint32_t fill, std::uint32_t border, float radius = 0.0f,
           float thickness = 1.0f);
  void rule(float from_x, float to_x, float at_y, std::uint32_t rgb, float thickness = 1.0f);
  void path(const ImVec2* points, int count, std::uint32_t rgb, float thickness, bool closed);
  void area(const ImVec2* points, int count, std::uint32_t rgb);
  void ring(float cx, float cy, float radius, std::uint32_t rgb, float thickness);
  void disc(float cx, float cy, float radius, std::uint32_t rgb);
  void text_at(float at_x, float at_y, const Type& type, std::uint32_t rgb, std::string_view text);
  // Paints in at most `columns` px and returns the height; with `measure` it paints nothing.
  float paragraph(float at_x, float at_y, float columns, const Type& type, std::uint32_t rgb,
                  std::string_view text, bool measure = false);
  float text_width(const Type& type, std::string_view text) const;
  // Cut with an ellipsis so that it fits.
  std::string fitted(const Type& type, std::string_view text, float columns) const;
  void clip(const Rect& rect);
  void unclip();

  // Records an element that occupies this rectangle, under the open group.
  int record(SemNode node, const Rect& rect);

  ImDrawList* draw_list() { return draw_; }
  ImVec2 screen(float at_x, float at_y) const;

 private:
  bool in_view(float top, float bottom) const;
  ImFont* font(const Type& type) const { return type.semibold ? fonts_.semibold : fonts_.regular; }

  ImDrawList* draw_;
  Fonts fonts_;
  const Viewport& view_;
  SemTree& tree_;
  std::vector<Event>& events_;
  const Palette* palette_;
  Pinned pinned_ = Pinned::no;
};

}  // namespace thole::ui
