#include "ui/app.h"

#include <algorithm>
#include <utility>

#include "base/number.h"
#include "io/catalogue_json.h"
#include "io/figures.h"
#include "io/job_json.h"
#include "io/link.h"
#include "ui/pages.h"

namespace thole::ui {
namespace {

constexpr float kSideWidth = 224.0f;
constexpr float kFormWidth = 376.0f;
constexpr float kSheetWidth = 1440.0f;  // wider screens keep margins

// Where the columns stand on this screen.
struct Layout {
  bool wide = false;
  Rect side{};
  Columns columns{};
  float top = 0.0f;     // of the document, below the strip
  float bottom = 0.0f;  // room kept free at the end
};

// The strip's own height grows with what it has to say.
Layout lay_out(const Viewport& view) {
  Layout layout;
  layout.wide = view.width >= kWideFrom * std::min(view.text_scale, 1.4f);
  if (!layout.wide) {
    const float margin = 16.0f;
    const float left = view.inset_left + margin;
    const float room = view.width - view.inset_left - view.inset_right - 2.0f * margin;
    const float width = std::min(room, 640.0f);
    const Rect column{left + 0.5f * (room - width), 0.0f, width, 0.0f};
    layout.columns = {column, column, false};
    layout.top = 16.0f;
    layout.bottom = view.inset_bottom + kStrip * view.text_scale + 24.0f;
    return layout;
  }
  layout.top = 24.0f;
  const float gap = 32.0f;
  const float whole = std::min(view.width, kSheetWidth);
  const float left = 0.5f * (view.width - whole) + 24.0f;
  const float scale = std::min(view.text_scale, 1.4f);
  layout.side = {left, 0.0f, kSideWidth * scale, 0.0f};
  const float form = kFormWidth * scale;
  const float picture_x = left + layout.side.width + gap;
  const float right = left + whole - 48.0f;
  layout.columns.picture = {picture_x, 0.0f, right - form - gap - picture_x, 0.0f};
  layout.columns.form = {right - form, 0.0f, form, 0.0f};
  layout.columns.wide = true;
  layout.bottom = 48.0f;
  return layout;
}

// The verdict, always in view: shape, word, the governing check and its bar. Returns its lower
// edge.
float draw_strip(Context& ui, const Layout& layout) {
  Sheet& sheet = ui.sheet;
  const Palette& palette = sheet.palette();
  const Viewport& view = sheet.view();
  const Design& design = ui.document.design();
  sheet.pin(Pinned::top);
  const float left = layout.wide ? layout.side.x : layout.columns.form.x;
  const float right = layout.columns.form.x + layout.columns.form.width;
  const float mark = sheet.scaled(26.0f);
  const float text_x = left + mark + 12.0f;
  const float room = right - text_x;
  const Check* governing = design.find_check(design.outcome.governing);
  const std::string word(fit_word(design.outcome.fit));
  const std::string reason =
      governing == nullptr ? "" : governing->label + " " + shown_check(*governing, ui.state.system);
  const float word_height = sheet.paragraph(0, 0, room, kSection, 0, word, true);
  const float reason_height =
      reason.empty() ? 0.0f : sheet.paragraph(0, 0, room, kNote, 0, reason, true);
  const float height = std::max(kStrip, word_height + reason_height + 12.0f);
  const Rect band{0.0f, 0.0f, view.width, view.inset_top + height};
  const Within banner(sheet, Role::banner, "", band);
  sheet.box(band, palette.raised, palette.raised);
  sheet.rule(0.0f, view.width, band.height - 1.0f, palette.line);
  const float mid = view.inset_top + 0.5f * height;
  fit_mark(sheet, left, mid - 0.5f * mark, mark, design.outcome.fit);
  const float first = mid - 0.5f * (word_height + reason_height);
  sheet.paragraph(text_x, first, room, kSection, fit_colour(palette, design.outcome.fit), word);
  sheet.paragraph(text_x, first + word_height, room, kNote, palette.muted, reason);
  // The bar stands beside the word, where there is room for it.
  const float bar = std::min(96.0f, 0.2f * (right - left));
  if (governing != nullptr && sheet.text_width(kSection, word) + bar + 12.0f <= room) {
    const float bar_y = first + 0.5f * word_height - 3.0f;
    utilisation_bar(sheet, {right - bar, bar_y, bar, 8.0f}, *governing);
  }
  const std::string spoken = reason.empty() ? word : word + ". " + reason;
  const Rect whole{left - 8.0f, view.inset_top, right - left + 16.0f, height};
  sheet.record({.id = "verdict", .role = Role::status, .name = spoken}, whole);
  sheet.record({.id = "verdict.open",
                .role = Role::button,
                .name = ui.state.page == kChecksPage ? "Back to the page" : "Show all checks",
                .description = spoken},
               whole);
  sheet.pin(Pinned::no);
  // However many lines the verdict takes meanwhile, what is dragged stays under the finger.
  if (!ui.state.dragged.holds()) ui.state.strip_height = band.height;
  return ui.state.strip_height;
}

// Previous page, where we are, next page.
void draw_way_on(Context& ui, const Layout& layout) {
  Sheet& sheet = ui.sheet;
  const Palette& palette = sheet.palette();
  const Viewport& view = sheet.view();
  sheet.pin(Pinned::bottom);
  const float height = kStrip * std::min(view.text_scale, 1.5f);
  const float top = view.height - height - view.inset_bottom;
  const Rect band{0.0f, top, view.width, height + view.inset_bottom};
  sheet.box(band, palette.raised, palette.raised);
  sheet.rule(0.0f, view.width, top, palette.line);
  const Within landmark(sheet, Role::navigation, "Way on", band);
  const std::vector<const Page*> pages = shown_pages(ui.state);
  const auto here = std::find_if(pages.begin(), pages.end(),
                                 [&](const Page* page) { return page->key == ui.state.page; });
  const bool listed = here != pages.end();
  const auto at = static_cast<std::size_t>(listed ? here - pages.begin() : 0);
  const float third = (layout.columns.form.width) / 3.0f;
  const float left = layout.columns.form.x;
  const auto cell = [&](int column, std::string_view id, const std::string& shown,
                        const std::string& name, Align align, bool strong) {
    const Rect rect{left + static_cast<float>(column) * third, top + 4.0f, third, height - 8.0f};
    const Type& type = strong ? kTextStrong : kText;
    // Where the title of a page has no room the arrow alone points on; its name is spoken.
    const bool fits = sheet.text_width(type, shown) <= third - 4.0f;
    const std::string text = fits                     ? shown
                             : shown.starts_with("◂") ? "◂"
                             : shown.ends_with("▸")   ? "▸"
                                                      : shown;
    const float wide = sheet.text_width(type, text);
    float x = rect.x;
    if (align == Align::centre) x += 0.5f * (third - wide);
    if (align == Align::right) x += third - wide;
    sheet.text_at(x, rect.y + 0.5f * (rect.height - sheet.scaled(type.line)), type, palette.accent,
                  text);
    sheet.record({.id = std::string(id), .role = Role::button, .name = name}, rect);
    return sheet.take(id).verb == "click";
  };
  std::string turn;
  if (!listed) {
    if (cell(0, "back", "◂ Back", "Back", Align::left, true)) turn = "back";
  } else {
    if (at > 0) {
      const std::string title(pages[at - 1]->title);
      if (cell(0, "previous", "◂ " + title, "Previous page: " + title, Align::left, false)) {
        turn = pages[at - 1]->key;
      }
    }
    const std::string where = std::to_string(at + 1) + " of " + std::to_string(pages.size());
    if (cell(1, "contents", where, "Pages, " + where, Align::centre, false)) turn = kContentsPage;
    if (at + 1 < pages.size()) {
      const std::string title(pages[at + 1]->title);
      if (cell(2, "next", title + " ▸", "Next page: " + title, Align::right, true)) {
        turn = pages[at + 1]->key;
      }
    }
  }
  if (!turn.empty()) {
    ui.state.page = turn == "back" ? ui.state.returning : turn;
  }
  sheet.pin(Pinned::no);
}

// On a wide screen: the pages with what each decided.
void draw_side(Context& ui, const Layout& layout) {
  Sheet& sheet = ui.sheet;
  const Palette& palette = sheet.palette();
  sheet.pin(Pinned::side);
  const Within landmark(sheet, Role::navigation, "Pages", layout.side);
  const std::vector<const Page*> pages = shown_pages(ui.state);
  float y = layout.side.y;
  const float row =
      std::clamp((layout.side.height - 24.0f) / static_cast<float>(pages.size()), 44.0f, 60.0f);
  for (const Page* listed : pages) {
    const Page& page = *listed;
    const bool here = page.key == ui.state.page;
    const std::string id = "side." + std::string(page.key);
    const Rect rect{layout.side.x, y, layout.side.width, row};
    if (here) sheet.rule(rect.x, rect.x + 3.0f, rect.y + 6.0f, palette.accent, row - 12.0f);
    const std::string value = page_value(ui, page);
    const float text_x = rect.x + 14.0f;
    const float mid = rect.y + 0.5f * row;
    const bool two = !value.empty() && row >= 46.0f;
    sheet.text_at(
        text_x, two ? mid - sheet.scaled(kText.line) + 2.0f : mid - 0.5f * sheet.scaled(kText.line),
        here ? kTextStrong : kText, here || sheet.hovered == id ? palette.accent : palette.ink,
        page.title);
    if (two) {
      sheet.text_at(text_x, mid, kNote, palette.muted,
                    sheet.fitted(kNote, value, rect.width - 16.0f));
    }
    sheet.record({.id = id,
                  .role = Role::button,
                  .name = std::string(page.title) + (value.empty() ? "" : ", " + value),
                  .current = here},
                 rect);
    if (sheet.take(id).verb == "click") ui.state.page = std::string(page.key);
    y += row;
  }
  sheet.pin(Pinned::no);
}

// The parts between the separators; empty ones are left out.
std::vector<std::string> split(std::string_view text, char separator) {
  std::vector<std::string> parts;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find(separator), text.size());
    if (end > 0) parts.emplace_back(text.substr(0, end));
    text.remove_prefix(std::min(end + 1, text.size()));
  }
  return parts;
}

}  // namespace

App::App(Catalogue catalogue, Fonts fonts)
    : document_(std::move(catalogue), Telling::no_steps), fonts_(fonts) {}

// The first picture of a first visit opens nothing: it does without the steps, and on the web without
// the part of the program that writes them.
bool App::at_a_glance() const {
  return state_.page == UiState{}.page && std::all_of(events_.begin(), events_.end(), [](const Event& event) {
    return event.id == "app" && event.verb == "units";
  });
}

void App::tell() { document_.tell(); }

void App::frame(const Viewport& view) {
  if (!at_a_glance()) document_.tell();
  const std::string page_before = state_.page;
  ImGui::SetNextWindowPos({0.0f, 0.0f});
  ImGui::SetNextWindowSize({view.width, view.height});
  ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding, {0.0f, 0.0f});
  ImGui::PushStyleVar(ImGuiStyleVar_WindowBorderSize, 0.0f);
  ImGui::PushStyleColor(ImGuiCol_WindowBg, colour(palette(view.dark).paper));
  ImGui::Begin("Thole", nullptr,
               ImGuiWindowFlags_NoDecoration | ImGuiWindowFlags_NoMove |
                   ImGuiWindowFlags_NoSavedSettings | ImGuiWindowFlags_NoInputs |
                   ImGuiWindowFlags_NoNav | ImGuiWindowFlags_NoBringToFrontOnFocus);
  tree_.begin();
  state_.figures.clear();
  Sheet sheet(ImGui::GetWindowDrawList(), fonts_, view, palette(view.dark), tree_, events_);
  sheet.hovered = hovered_;
  sheet.pressed = pressed_;
  Context ui{sheet, document_, state_};
  Layout layout = lay_out(view);

  if (const Event event = sheet.take("verdict.open"); event.verb == "click") {
    if (state_.page == kChecksPage) {
      state_.page = state_.returning;
    } else {
      if (state_.page != kContentsPage) state_.returning = state_.page;
      state_.page = kChecksPage;
    }
  }

  // Reading order: verdict, page, way on. The pinned bands are painted over the page, but come
  // first and last in the tree.
  ImDrawList* list = ImGui::GetWindowDrawList();
  list->ChannelsSplit(2);
  list->ChannelsSetCurrent(1);
  layout.top += draw_strip(ui, layout);
  layout.side.y = layout.top;
  layout.side.height = view.height - layout.top;
  if (layout.wide) draw_side(ui, layout);

  list->ChannelsSetCurrent(0);
  sheet.y = layout.top;
  sheet.x = layout.columns.form.x;
  sheet.width = layout.columns.form.width;
  tree_.open({.id = "main",
              .role = Role::main,
              .name = "Job",
              .x = 0.0f,
              .y = 0.0f,
              .width = view.width,
              .height = 0.0f});
  const int main_index = static_cast<int>(tree_.nodes().size()) - 1;
  if (!state_.message.empty()) {
    note(ui, state_.message);
  }
  if (state_.page == kChecksPage || state_.page == kContentsPage) {
    if (layout.wide) {
      sheet.x = layout.columns.picture.x;
      sheet.width = layout.columns.picture.width;
    }
    if (state_.page == kChecksPage) {
      draw_checks(ui);
    } else {
      draw_contents(ui);
    }
  } else {
    draw_page(ui, find_page(state_.page), layout.columns);
  }
  content_height_ = sheet.y + layout.bottom;
  tree_.close();
  tree_.stretch(main_index, content_height_);

  list->ChannelsSetCurrent(1);
  // While somebody types, what is left of a small screen belongs to the field.
  if (!layout.wide && !view.typing) draw_way_on(ui, layout);
  list->ChannelsMerge();
  ImGui::End();
  ImGui::PopStyleColor();
  ImGui::PopStyleVar(2);

  for (const Event& event : std::exchange(events_, {})) {
    if (event.id != "app") continue;
    told(event);
  }
  if (state_.page != page_before) {
    page_turned_ = true;
    state_.dragged = {};  // the page turned under the finger
    state_.message.clear();
    if (page_before != kChecksPage && page_before != kContentsPage) state_.returning = page_before;
  }
  const bool changed = document_.settle();
  frames_wanted_ = changed || state_.page != page_before ? 2 : std::max(0, frames_wanted_ - 1);
  const bool easing = std::exchange(state_.easing, false);
  // At rest it is looked for what would make the job fit, a trial or two to a frame.
  const bool searching = document_.searching();
  if (searching && !changed && !easing) document_.search();
  if (easing || searching) frames_wanted_ = std::max(frames_wanted_, 2);
}

// For the whole wizard, and not for one element of it; between two frames.
void App::told(const Event& event) {
  const auto is = [&](std::string_view verb) { return event.verb == verb; };
  if (is("undo")) document_.undo();
  if (is("redo")) document_.redo();
  if (is("page") && may_show(state_, event.text)) state_.page = event.text;
  if (is("units")) state_.system = event.text == "us" ? System::us : System::metric;
  if (is("escape") && (state_.page == kChecksPage || state_.page == kContentsPage)) {
    state_.page = state_.returning;
  }
}

// What the page around tells of itself; true when it was that.
bool App::heard(std::string_view verb, std::string_view text) {
  Surroundings& around = state_.around;
  if (verb == "can-share") {
    around.can_share = text == "1";
  } else if (verb == "unkept") {
    around.keeps_nothing = text == "1";
  } else if (verb == "update") {
    around.update_ready = text == "1";
  } else if (verb == "address") {
    around.address = text;
  } else if (verb == "date") {
    around.date = text;
  } else if (verb == "kept") {
    around.kept = split(text, '\n');
  } else {
    return false;
  }
  return true;
}

void App::act(std::string_view id, std::string_view verb, std::string_view text) {
  if (verb == "hover") {
    hovered_ = text == "1" ? std::string(id) : "";
  } else if (verb == "press") {
    pressed_ = text == "1" ? std::string(id) : "";
  } else if (id != "app" || !heard(verb, text)) {
    events_.push_back({std::string(id), std::string(verb), std::string(text)});
  }
  frames_wanted_ = std::max(frames_wanted_, 2);
}

Issues App::open(std::string_view text) {
  frames_wanted_ = 2;
  const std::size_t start = text.find_first_not_of(" \t\r\n");
  const bool file = start != std::string_view::npos && text[start] == '{';
  Job job;
  Issues issues;
  if (file) {
    JobRead read = read_job(text);
    job = std::move(read.job);
    issues = std::move(read.issues);
  } else {
    LinkRead read = read_link(text);
    job = std::move(read.job);
    issues = std::move(read.issues);
  }
  // A field that cannot be read is named and left out; a document that cannot be read changes
  // nothing.
  const bool unreadable = std::any_of(issues.begin(), issues.end(), [](const Issue& issue) {
    return issue.severity == Severity::error && issue.field.empty();
  });
  if (!unreadable) {
    document_.replace(job);
    document_.settle();
    state_.rejected.clear();
  }
  state_.message = unreadable ? "Not opened; your job is unchanged. " : "";
  for (const Issue& issue : issues) state_.message += issue.message + " ";
  return issues;
}

Issues App::set_catalogue(std::string_view text) {
  frames_wanted_ = 2;
  CatalogueRead read = read_catalogue(text);
  const bool unreadable = std::any_of(read.issues.begin(), read.issues.end(), [](const Issue& i) {
    return i.severity == Severity::error && i.field.empty();
  });
  if (!unreadable) {
    // A shop sells parts; boats and waters are the same everywhere.
    read.catalogue.boats = document_.catalogue().boats;
    read.catalogue.waters = document_.catalogue().waters;
    document_.set_catalogue(std::move(read.catalogue));
  }
  return read.issues;
}

void App::configure(std::string_view key, std::string_view value) {
  frames_wanted_ = 2;
  Surroundings& around = state_.around;
  if (key == "units") act("app", "units", value);
  if (key == "contactLabel") around.contact_label = value;
  if (key == "pages") {
    around.pages.clear();
    for (std::string& page : split(value, ' ')) {
      if (find_page(page).key == page) around.pages.push_back(std::move(page));
    }
    if (!may_show(state_, state_.page)) state_.page = shown_pages(state_).front()->key;
  }
  if (key == "page") act("app", "page", value);
  if (key == "accent") colours_.accent = read_colour(value);
  if (key == "paper") colours_.paper = read_colour(value);
  if (key == "ink") colours_.ink = read_colour(value);
  day_ = shop_palette(kDay, colours_);
  night_ = shop_palette(kNight, colours_);
}

bool App::take_page_turn() { return std::exchange(page_turned_, false); }

std::string App::link() const { return write_link(document_.given()); }

std::string App::address() const { return state_.around.address + "#" + link(); }

std::string App::job_text() const { return write_job(document_.given()); }

std::string App::label() const {
  const Job& job = document_.design().job;
  if (!job.title.value.empty()) return job.title.value;
  const std::string length = show(job.boat.length_m.value, "m", state_.system).text();
  const Preset* boat = find_item(document_.catalogue().boats, job.boat.type.value);
  if (boat != nullptr) return boat->label;
  return "Boat of " + length;
}

}  // namespace thole::ui
