#include "ui/sheet.h"

#include <algorithm>
#include <cfloat>
#include <utility>

namespace thole::ui {

Within::Within(Sheet& sheet, Role role, std::string name) : tree_(sheet.tree()) {
  tree_.open({.role = role, .name = std::move(name)});
}

Within::Within(Sheet& sheet, Role role, std::string name, const Rect& strip) : tree_(sheet.tree()) {
  tree_.open({.role = role,
              .name = std::move(name),
              .pinned = sheet.pinned(),
              .x = strip.x,
              .y = strip.y,
              .width = strip.width,
              .height = strip.height});
}

Within::~Within() { tree_.close(); }

Sheet::Sheet(ImDrawList* draw, const Fonts& fonts, const Viewport& view, const Palette& palette,
             SemTree& tree, std::vector<Event>& events)
    : draw_(draw), fonts_(fonts), view_(view), tree_(tree), events_(events), palette_(&palette) {}

Event Sheet::take(std::string_view id) {
  const auto found = std::find_if(events_.begin(), events_.end(),
                                  [&](const Event& event) { return event.id == id; });
  if (found == events_.end()) return {};
  Event event = *found;
  events_.erase(found);
  return event;
}

ImVec2 Sheet::screen(float at_x, float at_y) const {
  return {at_x, pinned_ == Pinned::no ? at_y - view_.scroll_y : at_y};
}

bool Sheet::in_view(float top, float bottom) const {
  const float shift = pinned_ == Pinned::no ? view_.scroll_y : 0.0f;
  return bottom - shift > -64.0f && top - shift < view_.height + 64.0f;
}

void Sheet::box(const Rect& rect, std::uint32_t fill, std::uint32_t border, float radius,
                float thickness) {
  if (!in_view(rect.y, rect.y + rect.height)) return;
  const ImVec2 low = screen(rect.x, rect.y);
  const ImVec2 high = screen(rect.x + rect.width, rect.y + rect.height);
  draw_->AddRectFilled(low, high, colour(fill), radius);
  if (border != fill && thickness > 0.0f) {
    const float half = 0.5f * thickness;
    draw_->AddRect({low.x + half, low.y + half}, {high.x - half, high.y - half}, colour(border),
                   radius, 0, thickness);
  }
}

void Sheet::rule(float from_x, float to_x, float at_y, std::uint32_t rgb, float thickness) {
  if (!in_view(at_y, at_y)) return;
  draw_->AddRectFilled(screen(from_x, at_y), screen(to_x, at_y + thickness), colour(rgb));
}

void Sheet::path(const ImVec2* points, int count, std::uint32_t rgb, float thickness, bool closed) {
  std::vector<ImVec2> moved(points, points + count);
  for (ImVec2& point : moved) point = screen(point.x, point.y);
  draw_->AddPolyline(moved.data(), count, colour(rgb), closed ? ImDrawFlags_Closed : 0, thickness);
}

void Sheet::area(const ImVec2* points, int count, std::uint32_t rgb) {
  std::vector<ImVec2> moved(points, points + count);
  for (ImVec2& point : moved) point = screen(point.x, point.y);
  // The filler takes an outline clockwise on screen only: else it fills across the hollows.
  float twice_area = 0.0f;
  for (std::size_t i = 0; i < moved.size(); ++i) {
    const ImVec2 a = moved[i];
    const ImVec2 b = moved[(i + 1) % moved.size()];
    twice_area += a.x * b.y - b.x * a.y;
  }
  if (twice_area < 0.0f) std::reverse(moved.begin(), moved.end());
  draw_->AddConcavePolyFilled(moved.data(), count, colour(rgb));
}

void Sheet::ring(float cx, float cy, float radius, std::uint32_t rgb, float thickness) {
  draw_->AddCircle(screen(cx, cy), radius, colour(rgb), 0, thickness);
}

void Sheet::disc(float cx, float cy, float radius, std::uint32_t rgb) {
  draw_->AddCircleFilled(screen(cx, cy), radius, colour(rgb), 0);
}

void Sheet::text_at(float at_x, float at_y, const Type& type, std::uint32_t rgb,
                    std::string_view text) {
  const float size = scaled(type.size);
  if (text.empty() || !in_view(at_y, at_y + size)) return;
  draw_->AddText(font(type), size, screen(at_x, at_y + 0.5f * scaled(type.line - type.size)),
                 colour(rgb), text.data(), text.data() + text.size());
}

const char* with_whole_number(const char* begin, const char* stop, const char* end) {
  const auto is_figure = [](char c) { return c >= '0' && c <= '9'; };
  if (stop - begin < 2 || stop == end || !is_figure(*stop) || (stop[-1] != '.' && stop[-1] != ',') || !is_figure(stop[-2])) return stop;
  const char* before = stop;
  while (before > begin && before[-1] != ' ') --before;
  return before > begin ? before : stop;
}

float Sheet::paragraph(float at_x, float at_y, float columns, const Type& type, std::uint32_t rgb,
                       std::string_view text, bool measure) {
  const float size = scaled(type.size);
  const float line = scaled(type.line);
  float height = 0.0f;
  const char* begin = text.data();
  const char* const end = begin + text.size();
  while (begin < end) {
    const char* stop = with_whole_number(begin, font(type)->CalcWordWrapPosition(size, begin, end, columns), end);
    if (stop == begin) ++stop;  // a column narrower than one letter
    const char* newline = std::find(begin, stop, '\n');
    const char* cut = std::min(stop, newline);
    if (!measure) {
      text_at(at_x, at_y + height, type, rgb,
              std::string_view(begin, static_cast<std::size_t>(cut - begin)));
    }
    height += line;
    begin = newline < stop ? newline + 1 : stop;
    while (begin < end && *begin == ' ') ++begin;
  }
  return height;
}

float Sheet::text_width(const Type& type, std::string_view text) const {
  if (text.empty()) return 0.0f;
  return font(type)
      ->CalcTextSizeA(scaled(type.size), FLT_MAX, 0.0f, text.data(), text.data() + text.size())
      .x;
}

std::string Sheet::fitted(const Type& type, std::string_view text, float columns) const {
  std::string whole(text);
  if (text_width(type, whole) <= columns) return whole;
  while (!whole.empty()) {
    char last = 0;
    do {  // a letter is one or more bytes
      last = whole.back();
      whole.pop_back();
    } while (!whole.empty() && (static_cast<unsigned char>(last) & 0xC0) == 0x80);
    std::string shown = whole + "…";
    if (text_width(type, shown) <= columns) return shown;
  }
  return whole;
}

void Sheet::clip(const Rect& rect) {
  draw_->PushClipRect(screen(rect.x, rect.y), screen(rect.x + rect.width, rect.y + rect.height),
                      true);
}

void Sheet::unclip() { draw_->PopClipRect(); }

int Sheet::record(SemNode node, const Rect& rect) {
  node.pinned = pinned_;
  node.x = rect.x;
  node.y = rect.y;
  node.width = rect.width;
  node.height = rect.height;
  return tree_.add(std::move(node));
}

}  // namespace thole::ui
