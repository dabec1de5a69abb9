#pragma once

// The pages of the wizard, in order, as a table: most differ only in their picture, their results
// and their fields.

#include <span>
#include <string_view>
#include <vector>

#include "draw/pictures.h"
#include "ui/widgets.h"

namespace thole::ui {

struct Group {
  std::string_view title{};  // empty: always open, without a title
  std::span<const std::string_view> fields{};
  void (*after)(Context&) = nullptr;  // what follows the fields while it is open
};

struct Page {
  std::string_view key{};
  std::string_view title{};
  std::string_view lead{};      // what the page settles, one sentence
  std::string_view headline{};  // path of the output in large type
  std::span<const std::string_view> results{};
  std::span<const Group> groups{};
  Drawing (*picture)(const Design&, System) = nullptr;
  void (*under_picture)(Context&) = nullptr;  // what moves it, so close that both are seen at once
  const Trace* (*trace)(const Design&) = nullptr;
  // Pages with more than fields draw that themselves, before the groups.
  void (*extra)(Context&) = nullptr;
};

// Two that are not steps of the job: all checks, and the list of the pages.
inline constexpr std::string_view kChecksPage = "checks";
inline constexpr std::string_view kContentsPage = "contents";

std::span<const Page> all_pages();
const Page& find_page(std::string_view key);  // the first page when there is none
int page_index(std::string_view key);         // 0 when there is none

// The pages that are shown here: all, or those that the shop chose.
std::vector<const Page*> shown_pages(const UiState& state);
bool may_show(const UiState& state, std::string_view key);

// Draws the page into the sheet's column, or into the two columns given on a wide screen.
struct Columns {
  Rect picture{};  // x and width; on a phone the same as form
  Rect form{};
  bool wide = false;
};
void draw_page(Context& ui, const Page& page, const Columns& columns);

// What the page decided, as one short text; empty when it has no headline.
std::string page_value(const Context& ui, const Page& page);

// All checks, worst first.
void draw_checks(Context& ui);
// The list of pages.
void draw_contents(Context& ui);

}  // namespace thole::ui
