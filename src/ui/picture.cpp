// The picture of a page: eased, said in words, and taken hold of.

#include <algorithm>
#include <cmath>
#include <optional>

#include "base/number.h"
#include "draw/blend.h"
#include "io/figures.h"
#include "ui/paint_drawing.h"
#include "ui/widgets.h"

namespace thole::ui {
namespace {

constexpr double kEase_s = 0.15;
constexpr float kReach = 44.0f;     // side of what a finger hits
constexpr float kFromEdge = 10.0f;  // a dot stays whole
constexpr float kAbove = 56.0f;     // the value stands clear of the finger

double eased_out(double share) { return 1.0 - std::pow(1.0 - share, 3.0); }

// --- easing
// ---------------------------------------------------------------------------------------

// What to paint in this frame on the way to `target`.
const Drawing& ease(Context& ui, const std::string& key, const Drawing& target) {
  Eased& eased = ui.state.eased;
  const int version = ui.document.version();
  const bool still = ui.sheet.view().reduced_motion || !ui.state.dragged.id.empty();
  if (eased.key != key || still) {
    eased.moving_s = kEase_s;
  } else if (eased.version != version) {
    eased.from = eased.shown;
    const bool moves = !(eased.from == target) && can_blend(eased.from, target);
    eased.moving_s = moves ? 0.0 : kEase_s;
  } else if (eased.moving_s < kEase_s) {
    eased.moving_s += static_cast<double>(ImGui::GetIO().DeltaTime);
  }
  eased.key = key;
  eased.version = version;
  if (eased.moving_s < kEase_s) {
    eased.shown = blend(eased.from, target, eased_out(eased.moving_s / kEase_s));
    ui.state.easing = true;
  } else {
    eased.shown = target;
  }
  return eased.shown;
}

// --- dragging
// -------------------------------------------------------------------------------------

struct Move {
  double right_px = 0.0;
  double down_px = 0.0;
};

// "12 -3.5"
std::optional<Move> read_move(std::string_view text) {
  const std::size_t gap = text.find(' ');
  if (gap == text.npos) return std::nullopt;
  const std::optional<double> right = plain_number(text.substr(0, gap));
  const std::optional<double> down = plain_number(text.substr(gap + 1));
  if (!right || !down) return std::nullopt;
  return Move{*right, *down};
}

// On the stepper's grid and within the field's range.
double snapped(const Field& field, double value, System system) {
  const double step = step_for(field, system);
  return std::clamp(std::round(value / step) * step, field.min, field.max);
}

void press(Context& ui, const std::string& id, const Handle& handle, double value,
           const Drawing& drawing, const Rect& rect) {
  const Frame frame(drawing, {static_cast<double>(rect.width), static_cast<double>(rect.height)});
  const Point origin = frame.at(Point{0.0, 0.0});
  const Point unit = frame.at(Point{1.0, 1.0});
  ui.state.dragged = {.id = id,
                      .handle = handle,
                      .value = value,
                      .per_px = {1.0 / (unit.x - origin.x), 1.0 / (unit.y - origin.y)},
                      .low = drawing.low,
                      .high = drawing.high};
}

void drag(Context& ui, const Field& field, Move move) {
  Dragged& dragged = ui.state.dragged;
  const double value = moved_value(dragged.handle, dragged.value, move.right_px * dragged.per_px.x,
                                   move.down_px * dragged.per_px.y);
  // A press alone, and the way back to where it began, leave the value as it was.
  const bool back = std::abs(value - dragged.value) < 0.5 * step_for(field, ui.state.system);
  if (back && !dragged.moved) return;
  dragged.moved = true;
  ui.state.rejected.erase(field.path());
  ui.document.nudge(field, back ? dragged.value : snapped(field, value, ui.state.system));
}

void drop(Context& ui) {
  ui.state.dragged = {};
  ui.state.eased.version = -1;  // the sheet eases to where it now belongs
  ui.document.let_go();
}

// Everything that was done to one handle since the last frame.
void take_events(Context& ui, const std::string& id, const Field& field, const Handle& handle,
                 const Drawing& drawing, const Rect& rect) {
  for (Event event = ui.sheet.take(id); !event.verb.empty(); event = ui.sheet.take(id)) {
    if (event.verb == "drag") {
      const double value = field.access.get(ui.document.design().job);
      if (ui.state.dragged.id != id) press(ui, id, handle, value, drawing, rect);
      if (const std::optional<Move> move = read_move(event.text)) drag(ui, field, *move);
    } else if (event.verb == "drop") {
      if (ui.state.dragged.id == id) drop(ui);
    } else if (event.verb == "set") {
      const std::string_view unit = shown_unit(field.key);
      const std::optional<double> number = plain_number(event.text);
      if (!number) continue;
      ui.state.rejected.erase(field.path());
      ui.document.nudge(
          field, snapped(field, value_of_shown(*number, unit, ui.state.system), ui.state.system));
    }
  }
}

void record_handle(Context& ui, const std::string& id, const Field& field, ImVec2 centre) {
  const System system = ui.state.system;
  const std::string_view unit = shown_unit(field.key);
  const double value = field.access.get(ui.document.design().job);
  const auto shown = [&](double measure) { return shown_number(measure, unit, system); };
  ui.sheet.record({.id = id,
                   .role = Role::slider,
                   .name = std::string(field.label),
                   .value = trimmed(fixed(shown(value), 4)),
                   .unit = show(value, unit, system).text(),
                   .description = std::string(help_of(field)),
                   .min = shown(field.min),
                   .max = shown(field.max),
                   .step = shown(step_for(field, system)) - shown(0.0),
                   .action = "drag"},
                  {centre.x - 0.5f * kReach, centre.y - 0.5f * kReach, kReach, kReach});
}

// The value in hand, above the finger or else beside it, always within the picture.
void paint_value(Sheet& sheet, const std::string& text, ImVec2 at, const Rect& rect) {
  const Palette& palette = sheet.palette();
  const float width = sheet.text_width(kTextStrong, text) + 24.0f;
  const float height = sheet.scaled(kTextStrong.line) + 8.0f;
  float x = at.x - 0.5f * width;
  float y = at.y - kAbove - 0.5f * height;
  if (y < rect.y + 4.0f) {
    const bool right = at.x < rect.x + 0.5f * rect.width;
    x = right ? at.x + kAbove - 16.0f : at.x - kAbove + 16.0f - width;
    y = at.y - 0.5f * height;
  }
  x = std::clamp(x, rect.x + 4.0f, std::max(rect.x + rect.width - width - 4.0f, rect.x + 4.0f));
  y = std::clamp(y, rect.y + 4.0f, std::max(rect.y + rect.height - height - 4.0f, rect.y + 4.0f));
  sheet.box({x, y, width, height}, palette.raised, palette.accent, kRadius, 1.5f);
  sheet.text_at(x + 12.0f, y + 4.0f, kTextStrong, palette.ink, text);
}

void outline(Sheet& sheet, const Rect& rect, std::uint32_t rgb) {
  const float left = rect.x + 0.5f;
  const float top = rect.y + 0.5f;
  const float right = rect.x + rect.width - 0.5f;
  const float bottom = rect.y + rect.height - 0.5f;
  const ImVec2 corners[] = {{left, top}, {right, top}, {right, bottom}, {left, bottom}};
  sheet.path(corners, 4, rgb, 1.0f, true);
}

ImVec2 centre_of(const Handle& handle, const Frame& frame, const Rect& rect, float margin) {
  const Point at = frame.at(handle.at);
  const auto within = [margin](double place, float start, float size) {
    const float half = std::min(margin, 0.5f * size);
    return start + std::clamp(static_cast<float>(place), half, size - half);
  };
  return {within(at.x, rect.x, rect.width), within(at.y, rect.y, rect.height)};
}

}  // namespace

// Ground, drawing, frame, and the words for it.
static void put_on_sheet(Sheet& sheet, std::string_view id, const Drawing& drawing,
                         const Drawing& shown, const Rect& rect) {
  const Palette& palette = sheet.palette();
  sheet.box(rect, palette.paper, palette.paper);
  paint_drawing(sheet, shown, rect);
  outline(sheet, rect, palette.line);
  sheet.record({.id = std::string(id),
                .role = Role::image,
                .name = drawing.title + ". " + drawing.description},
               rect);
}

void figure(Context& ui, std::string_view id, Drawing drawing, float height) {
  Sheet& sheet = ui.sheet;
  const auto kept = std::make_shared<const Drawing>(std::move(drawing));
  put_on_sheet(sheet, id, *kept, *kept, {sheet.x, sheet.y, sheet.width, height});
  ui.state.figures[std::string(id)] = kept;
  sheet.y += height + kUnit;
}

void picture(Context& ui, std::string_view id, const Drawing& drawing, float height) {
  Sheet& sheet = ui.sheet;
  const Rect rect{sheet.x, sheet.y, sheet.width, height};
  const Size size{static_cast<double>(rect.width), static_cast<double>(rect.height)};
  const std::string prefix = std::string(id) + ".";
  Dragged& dragged = ui.state.dragged;
  const auto in_hand = [&](const Handle& handle) { return prefix + handle.field == dragged.id; };

  const std::string key = ui.state.page + "/" + std::string(id);
  const Drawing& painted = ui.state.eased.key == key ? ui.state.eased.shown : drawing;
  for (const Handle& handle : drawing.handles) {
    if (const Field* field = find_field(handle.field)) {
      take_events(ui, prefix + handle.field, *field, handle, painted, rect);
    }
  }
  if (std::none_of(drawing.handles.begin(), drawing.handles.end(), in_hand)) dragged = {};

  Drawing target = drawing;
  if (!dragged.id.empty()) {
    target.low = dragged.low;
    target.high = dragged.high;
  }
  const Drawing& shown = ease(ui, key, target);
  put_on_sheet(sheet, id, drawing, shown, rect);

  // Elements stand where the dots come to rest; the dots ease with the picture.
  const Frame resting(target, size);
  const Frame moving(shown, size);
  std::string value;
  ImVec2 value_at{};
  for (std::size_t i = 0; i < drawing.handles.size(); ++i) {
    const Handle& handle = drawing.handles[i];
    const Field* field = find_field(handle.field);
    if (field == nullptr) continue;
    const std::string own = prefix + handle.field;
    record_handle(ui, own, *field, centre_of(handle, resting, rect, 0.5f * kReach));
    const ImVec2 at = centre_of(shown.handles[i], moving, rect, kFromEdge);
    const bool held = in_hand(handle);
    paint_handle(sheet, at, held || sheet.hovered == own || sheet.pressed == own);
    if (held) {
      value =
          show(field->access.get(ui.document.design().job), shown_unit(field->key), ui.state.system)
              .text();
      value_at = at;
    }
  }
  if (!value.empty()) paint_value(sheet, value, value_at, rect);
  sheet.y += height + kUnit;
}

}  // namespace thole::ui
