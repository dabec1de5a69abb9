#include "ui/widgets.h"

#include <algorithm>
#include <cmath>

#include "base/number.h"
#include "base/units.h"
#include "data/beaufort.h"
#include "io/figures.h"
#include "io/text.h"

namespace thole::ui {

double step_for(const Field& field, System system) {
  if (system == System::metric) return field.step;
  const std::string_view unit = field.unit();
  if (unit == "m")
    return m_from_in(field.step < 0.03   ? 0.5
                     : field.step < 0.08 ? 1.0
                     : field.step < 0.3  ? 6.0
                                         : 1200.0);
  if (unit == "mm") return 1000.0 * m_from_in(field.step < 2.0 ? 1.0 / 16.0 : 0.5);
  if (unit == "kg") return kg_from_lb(field.step < 5.0 ? 1.0 : 100.0);
  if (unit == "N") return N_from_lbf(2.0);
  if (unit == "C") return field.step / 1.8;
  return field.step;
}

namespace {

constexpr float kInner = 12.0f;  // text inside a box from its edge

struct Touch {
  bool hovered = false;
  bool pressed = false;
};

Touch touch(const Sheet& sheet, std::string_view id) {
  return {sheet.hovered == id, sheet.pressed == id};
}

std::uint32_t mixed(std::uint32_t a, std::uint32_t b, float share_of_b) {
  std::uint32_t out = 0;
  for (int shift = 0; shift <= 16; shift += 8) {
    const auto from = static_cast<float>((a >> shift) & 0xFF);
    const auto to = static_cast<float>((b >> shift) & 0xFF);
    const float value = from + (to - from) * share_of_b + 0.5f;
    out |= static_cast<std::uint32_t>(value) << shift;
  }
  return out;
}

std::vector<SemOption> catalogue_options(const Catalogue& catalogue, std::string_view list) {
  std::vector<SemOption> out;
  const auto add = [&](const auto& rows) {
    for (const auto& row : rows) out.push_back({row.id, shown_item(catalogue, list, row.id)});
  };
  if (list == "boats") add(catalogue.boats);
  if (list == "waters") add(catalogue.waters);
  if (list == "motors") add(catalogue.motors);
  if (list == "blocks") add(catalogue.blocks);
  if (list == "devices") add(catalogue.devices);
  if (list == "chargers") add(catalogue.chargers);
  if (list == "plates") add(catalogue.plates);
  if (list == "cables") add(catalogue.cables);
  if (list == "bolts") add(catalogue.bolts);
  return out;
}

// The label line over a control: name on the left, where the value comes from on the right.
void label_line(Context& ui, const Field& field, Origin origin) {
  Sheet& sheet = ui.sheet;
  const float height = sheet.scaled(kNote.line);
  const std::string forget_id = field.path() + ".forget";
  float right = sheet.x + sheet.width;
  if (origin == Origin::given && field.kind != Kind::text) {
    const bool preset = field.list == "boats" || field.list == "waters";
    const bool choosable = field.kind == Kind::catalogue_id && !preset;
    const std::string word = preset      ? "none of these"
                             : choosable ? "let Thole choose"
                                         : "use the estimate";
    const float wide = sheet.text_width(kNote, word);
    right -= wide;
    const std::uint32_t rgb = sheet.palette().accent;
    sheet.text_at(right, sheet.y, kNote, rgb, word);
    sheet.rule(right, right + wide, sheet.y + height - 2.0f, rgb);
    sheet.record({.id = forget_id,
                  .role = Role::button,
                  .name = (preset      ? "None of these: "
                           : choosable ? "Let Thole choose: "
                                       : "Use the estimate: ") +
                          std::string(field.label)},
                 {right - 8.0f, sheet.y - 20.0f, wide + 8.0f, 44.0f});
    if (sheet.take(forget_id).verb == "click") {
      ui.state.rejected.erase(field.path());
      ui.document.forget(field);
    }
  } else if (field.kind != Kind::text) {
    const std::string_view word = origin_word(origin);
    right -= sheet.text_width(kNote, word);
    sheet.text_at(right, sheet.y, kNote, sheet.palette().muted, word);
  }
  const float room = right - sheet.x - 8.0f;
  sheet.y += sheet.paragraph(sheet.x, sheet.y, std::max(room, 80.0f), kNoteStrong,
                             sheet.palette().ink, field.label);
  sheet.y += 4.0f;
}

void help_line(Context& ui, const Field& field, const std::string& error) {
  Sheet& sheet = ui.sheet;
  const std::string_view text = error.empty() ? help_of(field) : std::string_view(error);
  if (!text.empty()) {
    sheet.y += 4.0f;
    const std::uint32_t rgb = error.empty() ? sheet.palette().muted : sheet.palette().fails;
    const float top = sheet.y;
    sheet.y += sheet.paragraph(sheet.x, sheet.y, sheet.width, error.empty() ? kNote : kNoteStrong,
                               rgb, text);
    if (!error.empty()) {
      sheet.record({.id = field.path() + ".error", .role = Role::alert, .name = error},
                   {sheet.x, top, sheet.width, sheet.y - top});
    }
  }
  sheet.y += kFieldGap;
}

void chevron(Sheet& sheet, float cx, float cy, bool down, std::uint32_t rgb) {
  const float s = sheet.scaled(5.0f);
  const ImVec2 open[] = {{cx - s, cy - 0.5f * s}, {cx, cy + 0.5f * s}, {cx + s, cy - 0.5f * s}};
  const ImVec2 shut[] = {{cx - 0.5f * s, cy - s}, {cx + 0.5f * s, cy}, {cx - 0.5f * s, cy + s}};
  sheet.path(down ? open : shut, 3, rgb, 2.0f, false);
}

// What the text of a field means, in the field's own unit; empty with a message when it means
// nothing or is out of range.
std::optional<double> read_field(const Field& field, std::string_view text, System system,
                                 std::string* message) {
  const std::optional<double> value =
      read_measure(text, field.kind == Kind::count ? std::string_view{} : shown_unit(field.key),
                   system, message);
  if (!value) return std::nullopt;
  if (field.kind == Kind::count && *value != std::floor(*value)) {
    *message = std::string(field.label) + " must be a whole number.";
    return std::nullopt;
  }
  *message = range_message(field, *value);
  if (!message->empty()) {
    const Shown low = show(field.min, shown_unit(field.key), system);
    const Shown high = show(field.max, shown_unit(field.key), system);
    *message =
        std::string(field.label) + " must be between " + low.text() + " and " + high.text() + ".";
    return std::nullopt;
  }
  return value;
}

void stepper(Context& ui, const Field& field, double value, int direction, const Rect& rect) {
  Sheet& sheet = ui.sheet;
  const std::string id = field.path() + (direction < 0 ? ".less" : ".more");
  const Touch state = touch(sheet, id);
  const Palette& palette = sheet.palette();
  sheet.box(rect,
            state.pressed   ? mixed(palette.raised, palette.accent, 0.25f)
            : state.hovered ? mixed(palette.raised, palette.accent, 0.1f)
                            : palette.raised,
            palette.line, kRadius);
  const float cx = rect.x + 0.5f * rect.width;
  const float cy = rect.y + 0.5f * rect.height;
  sheet.rule(cx - 8.0f, cx + 8.0f, cy - 1.0f, palette.accent, 2.0f);
  if (direction > 0) {
    const ImVec2 upright[] = {{cx, cy - 8.0f}, {cx, cy + 8.0f}};
    sheet.path(upright, 2, palette.accent, 2.0f, false);
  }
  sheet.record({.id = id,
                .role = Role::button,
                .name = (direction < 0 ? "Less: " : "More: ") + std::string(field.label),
                .action = "repeat"},
               rect);
  if (sheet.take(id).verb == "click") {
    const double step = step_for(field, ui.state.system);
    const double next = (std::round(value / step) + direction) * step;
    ui.state.rejected.erase(field.path());
    ui.document.nudge(field, std::clamp(next, field.min, field.max));
  }
}

// "From 0.2 m to 4 m.", for those who do not see the error before they hear the field.
std::string range_text(const Field& field, System system) {
  const auto shown = [&](double value) {
    return field.kind == Kind::count ? fixed(value, 0)
                                     : show(value, shown_unit(field.key), system).text();
  };
  return "From " + shown(field.min) + " to " + shown(field.max) + ".";
}

void number_control(Context& ui, const Field& field) {
  Sheet& sheet = ui.sheet;
  const Palette& palette = sheet.palette();
  const std::string path = field.path();
  const Job& full = ui.document.design().job;
  const Origin origin = field.access.origin(full);
  const double value = field.access.get(full);
  const bool count = field.kind == Kind::count;

  if (const Event event = sheet.take(path); event.verb == "set") {
    std::string message;
    if (event.text.empty()) {
      ui.state.rejected.erase(path);
      ui.document.forget(field);
    } else if (const auto typed = read_field(field, event.text, ui.state.system, &message)) {
      ui.state.rejected.erase(path);
      ui.document.set(field, *typed);
    } else {
      ui.state.rejected[path] = {event.text, message};
    }
  }
  const auto rejected = ui.state.rejected.find(path);
  const bool bad = rejected != ui.state.rejected.end();

  label_line(ui, field, origin);
  const float height = sheet.scaled(kTarget);
  const float steppers = 2.0f * (height + kUnit);
  const Rect box{sheet.x, sheet.y, sheet.width - steppers, height};
  sheet.box(box, palette.raised, bad ? palette.fails : palette.line, kRadius, bad ? 2.0f : 1.0f);
  std::string shown = bad ? rejected->second.text : "";
  if (!bad && origin != Origin::absent) {
    shown = count ? fixed(value, 0) : show(value, shown_unit(field.key), ui.state.system).text();
  }
  const float text_y = box.y + 0.5f * (height - sheet.scaled(kText.line));
  const bool own = bad || origin == Origin::given;
  sheet.text_at(box.x + kInner, text_y, own ? kTextStrong : kText,
                own ? palette.ink : palette.muted,
                sheet.fitted(kText, shown, box.width - 2.0f * kInner));
  sheet.record(
      {.id = path,
       .role = Role::textbox,
       .name = std::string(field.label),
       .value = shown,
       .unit = std::string(count ? std::string_view{} : shown_unit(field.key)),
       .description = std::string(help_of(field)) + " " + range_text(field, ui.state.system) + " " +
                      std::string(origin_word(origin)) + ".",
       .error = bad ? rejected->second.message : "",
       .inputmode = count                                              ? "numeric"
                    : field.min < 0.0 || ui.state.system == System::us ? "text"
                                                                       : "decimal",
       .text_size = sheet.scaled(kText.size)},
      box);
  const double base = origin == Origin::absent ? field.min : value;
  stepper(ui, field, base, -1, {box.x + box.width + kUnit, box.y, height, height});
  stepper(ui, field, base, +1, {box.x + box.width + 2.0f * kUnit + height, box.y, height, height});
  sheet.y += height;
  help_line(ui, field, bad ? rejected->second.message : "");
}

void select_box(Context& ui, const Field& field, const std::string& shown, const std::string& taken,
                const std::vector<SemOption>& options, bool own) {
  Sheet& sheet = ui.sheet;
  const Palette& palette = sheet.palette();
  const float height = sheet.scaled(kTarget);
  const Rect box{sheet.x, sheet.y, sheet.width, height};
  sheet.box(box, palette.raised, palette.line, kRadius);
  const float text_y = box.y + 0.5f * (height - sheet.scaled(kText.line));
  sheet.text_at(box.x + kInner, text_y, own ? kTextStrong : kText,
                own ? palette.ink : palette.muted,
                sheet.fitted(own ? kTextStrong : kText, shown, box.width - 48.0f - kInner));
  chevron(sheet, box.x + box.width - 24.0f, box.y + 0.5f * height, true, palette.accent);
  sheet.record({.id = field.path(),
                .role = Role::select,
                .name = std::string(field.label),
                .value = taken,
                .description = std::string(help_of(field)),
                .options = options,
                .text_size = sheet.scaled(kText.size)},
               box);
  sheet.y += height;
}

void choice_control(Context& ui, const Field& field) {
  Sheet& sheet = ui.sheet;
  const Job& full = ui.document.design().job;
  const Origin origin = field.access.origin(full);
  const auto index = static_cast<int>(field.access.get(full));
  std::vector<SemOption> options;
  for (const Option& option : field.options) {
    options.push_back({std::string(option.key), std::string(option.label)});
  }
  label_line(ui, field, origin);
  if (options.size() <= 3) {
    const int pressed =
        segments(ui, field.path(), field.label, options, origin == Origin::absent ? -1 : index);
    if (pressed >= 0) ui.document.set(field, pressed);
  } else {
    const bool known = origin != Origin::absent && index < static_cast<int>(options.size());
    const auto at = static_cast<std::size_t>(index);
    if (const Event event = sheet.take(field.path()); event.verb == "set") {
      for (std::size_t i = 0; i < options.size(); ++i) {
        if (options[i].key == event.text) ui.document.set(field, static_cast<double>(i));
      }
    }
    select_box(ui, field, known ? options[at].label : "", known ? options[at].key : "", options,
               origin == Origin::given);
  }
  help_line(ui, field, "");
}

void catalogue_control(Context& ui, const Field& field) {
  Sheet& sheet = ui.sheet;
  const Job& full = ui.document.design().job;
  const Origin origin = field.access.origin(full);
  std::vector<SemOption> options = catalogue_options(ui.document.catalogue(), field.list);
  const bool preset = field.list == "boats" || field.list == "waters";
  options.insert(options.begin(), {"", preset ? "None of these" : "Let Thole choose"});
  if (const Event event = sheet.take(field.path()); event.verb == "set") {
    if (event.text.empty()) {
      ui.document.forget(field);
    } else {
      ui.document.set_text(field, event.text);
    }
  }
  label_line(ui, field, origin);
  const std::string& id = field.access.get_text(full);
  std::string shown = options.front().label;
  for (const SemOption& option : options) {
    if (!id.empty() && option.key == id) shown = option.label;
  }
  const bool own = field.access.origin(ui.document.given()) == Origin::given;
  select_box(ui, field, shown, own ? id : "", options, own);
  help_line(ui, field, "");
}

void toggle_control(Context& ui, const Field& field) {
  Sheet& sheet = ui.sheet;
  const Palette& palette = sheet.palette();
  const Job& full = ui.document.design().job;
  const Origin origin = field.access.origin(full);
  const bool on = origin != Origin::absent && field.access.get(full) != 0.0;
  const float height = sheet.scaled(kTarget);
  const Rect row{sheet.x, sheet.y, sheet.width, height};
  const float side = sheet.scaled(26.0f);
  const Rect square{row.x, row.y + 0.5f * (height - side), side, side};
  const std::uint32_t ground = on ? palette.accent : palette.raised;
  sheet.box(square, ground, on ? palette.accent : palette.line, 4.0f, 1.5f);
  if (on) {
    const ImVec2 tick[] = {{square.x + 0.22f * side, square.y + 0.52f * side},
                           {square.x + 0.42f * side, square.y + 0.72f * side},
                           {square.x + 0.78f * side, square.y + 0.30f * side}};
    sheet.path(tick, 3, palette.paper, 2.5f, false);
  }
  const std::string_view word = origin_word(origin);
  const float room = sheet.text_width(kNote, word);
  sheet.text_at(row.x + side + kInner, row.y + 0.5f * (height - sheet.scaled(kText.line)),
                origin == Origin::given ? kTextStrong : kText, palette.ink,
                sheet.fitted(kText, field.label, row.width - side - kInner - room - kUnit));
  sheet.text_at(row.x + row.width - room, row.y + 0.5f * (height - sheet.scaled(kNote.line)), kNote,
                palette.muted, word);
  sheet.record({.id = field.path(),
                .role = Role::checkbox,
                .name = std::string(field.label),
                .value = on ? "1" : "0",
                .description = std::string(help_of(field)),
                .checked = on},
               row);
  if (const Event event = sheet.take(field.path()); event.verb == "click" || event.verb == "set") {
    const bool next = event.verb == "click" ? !on : event.text == "1" || event.text == "true";
    ui.document.set(field, next ? 1.0 : 0.0);
  }
  sheet.y += height;
  help_line(ui, field, "");
}

void text_control(Context& ui, const Field& field) {
  Sheet& sheet = ui.sheet;
  const std::string path = field.path();
  if (const Event event = sheet.take(path); event.verb == "set") {
    if (event.text.empty()) {
      ui.document.forget(field);
    } else {
      ui.document.set_text(field, event.text.substr(0, most_text_bytes(field)));
    }
  }
  label_line(ui, field, field.access.origin(ui.document.given()));
  const float height = sheet.scaled(kTarget);
  const Rect box{sheet.x, sheet.y, sheet.width, height};
  const Palette& palette = sheet.palette();
  sheet.box(box, palette.raised, palette.line, kRadius);
  const std::string& value = field.access.get_text(ui.document.given());
  sheet.text_at(box.x + kInner, box.y + 0.5f * (height - sheet.scaled(kText.line)), kText,
                palette.ink, sheet.fitted(kText, value, box.width - 2.0f * kInner));
  sheet.record({.id = path,
                .role = Role::textbox,
                .name = std::string(field.label),
                .value = value,
                .description = std::string(help_of(field)),
                .inputmode = "text",
                .text_size = sheet.scaled(kText.size)},
               box);
  sheet.y += height;
  help_line(ui, field, "");
}

// "I * rho * 2" reads better with a centred dot.
std::string printed(std::string_view formula) {
  std::string out;
  for (std::size_t i = 0; i < formula.size(); ++i) {
    if (formula[i] == '*') {
      if (!out.empty() && out.back() == ' ') out.pop_back();
      out += "·";
      if (i + 1 < formula.size() && formula[i + 1] == ' ') ++i;
    } else {
      out += formula[i];
    }
  }
  return out;
}

std::string with_unit(double value, std::string_view unit) {
  std::string text = significant(value, 4);
  if (!unit.empty()) text += " " + unit_text(unit);
  return text;
}

}  // namespace

void heading(Context& ui, int level, std::string_view text) {
  Sheet& sheet = ui.sheet;
  const Type& type = level <= 1 ? kTitle : kSection;
  const float top = sheet.y;
  sheet.y += sheet.paragraph(sheet.x, sheet.y, sheet.width, type, sheet.palette().ink, text);
  sheet.record({.role = Role::heading, .level = level, .name = std::string(text)},
               {sheet.x, top, sheet.width, sheet.y - top});
  sheet.y += kUnit;
}

void body(Context& ui, std::string_view text) {
  Sheet& sheet = ui.sheet;
  const float top = sheet.y;
  sheet.y += sheet.paragraph(sheet.x, sheet.y, sheet.width, kText, sheet.palette().ink, text);
  sheet.record({.role = Role::text, .name = std::string(text)},
               {sheet.x, top, sheet.width, sheet.y - top});
  sheet.y += kUnit;
}

void note(Context& ui, std::string_view text) {
  Sheet& sheet = ui.sheet;
  const float top = sheet.y;
  sheet.y += sheet.paragraph(sheet.x, sheet.y, sheet.width, kNote, sheet.palette().muted, text);
  sheet.record({.role = Role::text, .name = std::string(text)},
               {sheet.x, top, sheet.width, sheet.y - top});
  sheet.y += kUnit;
}

void caution(Context& ui, const Caution& caution) {
  Sheet& sheet = ui.sheet;
  const Palette& palette = sheet.palette();
  const float top = sheet.y;
  const float left = sheet.x + 40.0f;
  const float room = sheet.width - 40.0f;
  sheet.y += kUnit;
  sheet.y += sheet.paragraph(left, sheet.y, room, kText, palette.ink, caution.text);
  if (!caution.source->id.empty() && !caution.source->title.empty()) {
    sheet.y += sheet.paragraph(left, sheet.y, room, kNote, palette.muted, caution.source->title);
  }
  sheet.y += kUnit;
  const float cx = sheet.x + 16.0f;
  const float cy = top + kUnit + 13.0f;
  const ImVec2 triangle[] = {{cx, cy - 12.0f}, {cx + 13.0f, cy + 10.0f}, {cx - 13.0f, cy + 10.0f}};
  sheet.path(triangle, 3, palette.changes, 2.0f, true);
  const ImVec2 stem[] = {{cx, cy - 4.0f}, {cx, cy + 3.0f}};
  sheet.path(stem, 2, palette.changes, 2.5f, false);
  sheet.disc(cx, cy + 6.5f, 1.5f, palette.changes);
  sheet.rule(sheet.x, sheet.x + 2.0f, top, palette.changes, sheet.y - top);
  sheet.record({.role = Role::text, .name = "Caution: " + caution.text},
               {sheet.x, top, sheet.width, sheet.y - top});
  sheet.y += kUnit;
}

bool button(Context& ui, std::string_view id, std::string_view label, Weight weight, float columns,
            std::string_view action, bool enabled) {
  Sheet& sheet = ui.sheet;
  const Palette& palette = sheet.palette();
  const float wide = columns > 0.0f ? columns : sheet.width;
  const float room = wide - 2.0f * kInner;
  const Type& type = weight == Weight::primary ? kTextStrong : kText;
  const float text_height = sheet.paragraph(0.0f, 0.0f, room, type, 0, label, true);
  const Rect rect{sheet.x, sheet.y, wide,
                  std::max(sheet.scaled(kTarget), text_height + 2.0f * kInner)};
  const Touch state = touch(sheet, id);
  std::uint32_t ground = weight == Weight::primary ? palette.accent : palette.raised;
  if (weight == Weight::quiet) ground = palette.paper;
  if (state.hovered) ground = mixed(ground, palette.ink, 0.06f);
  if (state.pressed) ground = mixed(ground, palette.ink, 0.16f);
  const std::uint32_t ink = !enabled                    ? palette.muted
                            : weight == Weight::primary ? palette.paper
                                                        : palette.accent;
  sheet.box(rect, ground,
            weight == Weight::plain ? (enabled ? palette.accent : palette.line) : ground, kRadius);
  const float text_y = rect.y + 0.5f * (rect.height - text_height);
  if (text_height <= sheet.scaled(type.line) + 1.0f && weight != Weight::quiet) {
    const float text_w = sheet.text_width(type, label);
    sheet.text_at(rect.x + 0.5f * (rect.width - text_w), text_y, type, ink, label);
  } else {
    sheet.paragraph(rect.x + kInner, text_y, room, type, ink, label);
  }
  sheet.record({.id = std::string(id),
                .role = Role::button,
                .name = std::string(label),
                .disabled = !enabled,
                .action = std::string(action)},
               rect);
  sheet.y += rect.height + kUnit;
  return sheet.take(id).verb == "click" && enabled;
}

int pair_of_buttons(Context& ui, const ButtonChoice& first, const ButtonChoice& second) {
  Sheet& sheet = ui.sheet;
  const float half = 0.5f * (sheet.width - kUnit);
  const float left = sheet.x;
  const float top = sheet.y;
  const auto press = [&](const ButtonChoice& it) {
    return button(ui, it.id, it.label, it.weight, half, it.action, it.enabled);
  };
  int pressed = press(first) ? 0 : -1;
  const float below = sheet.y;
  sheet.x = left + half + kUnit;
  sheet.y = top;
  if (press(second)) pressed = 1;
  sheet.x = left;
  sheet.y = std::max(below, sheet.y);
  return pressed;
}

bool disclosure(Context& ui, std::string_view id, std::string_view label) {
  Sheet& sheet = ui.sheet;
  const Palette& palette = sheet.palette();
  const std::string key(id);
  if (sheet.take(id).verb == "click") {
    if (!ui.state.opened.erase(key)) ui.state.opened.insert(key);
  }
  const bool open = ui.state.opened.count(key) != 0;
  const Rect row{sheet.x, sheet.y, sheet.width, sheet.scaled(kTarget)};
  sheet.rule(row.x, row.x + row.width, row.y, palette.line);
  sheet.text_at(row.x, row.y + 0.5f * (row.height - sheet.scaled(kSection.line)), kSection,
                touch(sheet, id).hovered ? palette.accent : palette.ink,
                sheet.fitted(kSection, label, row.width - 32.0f));
  chevron(sheet, row.x + row.width - 12.0f, row.y + 0.5f * row.height, open, palette.accent);
  sheet.record({.id = key,
                .role = Role::button,
                .level = 2,
                .name = std::string(label),
                .expandable = true,
                .expanded = open},
               row);
  sheet.y += row.height + kUnit;
  return open;
}

void field_control(Context& ui, const Field& field) {
  switch (field.kind) {
    case Kind::number:
    case Kind::count:
      number_control(ui, field);
      break;
    case Kind::toggle:
      toggle_control(ui, field);
      break;
    case Kind::choice:
      choice_control(ui, field);
      break;
    case Kind::catalogue_id:
      catalogue_control(ui, field);
      break;
    case Kind::text:
      text_control(ui, field);
      break;
  }
}

// Whether every word has so much room.
static bool words_fit(const Sheet& sheet, const std::vector<SemOption>& options, float room) {
  for (const SemOption& option : options) {
    std::string_view rest = option.label;
    while (!rest.empty()) {
      const std::size_t end = std::min(rest.find(' '), rest.size());
      if (sheet.text_width(kTextStrong, rest.substr(0, end)) > room) return false;
      rest.remove_prefix(std::min(end + 1, rest.size()));
    }
  }
  return true;
}

// All side by side where every word has room; of four or more as many in two rows, where they fit so; else one
// below the other.
static std::size_t segment_columns(const Sheet& sheet, const std::vector<SemOption>& options) {
  const auto fit = [&](std::size_t columns) {
    return words_fit(sheet, options, sheet.width / static_cast<float>(columns) - 2.0f * kUnit);
  };
  if (fit(options.size())) return options.size();
  const std::size_t half = (options.size() + 1) / 2;
  return options.size() >= 4 && fit(half) ? half : 1;
}

int segments(Context& ui, std::string_view id, std::string_view name,
             const std::vector<SemOption>& options, int taken) {
  Sheet& sheet = ui.sheet;
  const Palette& palette = sheet.palette();
  const std::size_t columns = segment_columns(sheet, options);
  const std::size_t rows = (options.size() + columns - 1) / columns;
  const float room = sheet.width / static_cast<float>(columns) - 2.0f * kUnit;
  float height = sheet.scaled(kTarget);
  for (const SemOption& option : options) {
    const float text = sheet.paragraph(0, 0, room, kTextStrong, 0, option.label, true);
    height = std::max(height, text + 2.0f * kUnit);
  }
  const float whole = height * static_cast<float>(rows);
  sheet.tree().open({.id = std::string(id),
                     .role = Role::group,
                     .name = std::string(name),
                     .pinned = sheet.pinned(),
                     .x = sheet.x,
                     .y = sheet.y,
                     .width = sheet.width,
                     .height = whole});
  int pressed = -1;
  for (std::size_t i = 0; i < options.size(); ++i) {
    const bool own = static_cast<int>(i) == taken;
    const std::string item = std::string(id) + "." + options[i].key;
    const std::size_t row = i / columns;
    const std::size_t in_row = std::min(columns, options.size() - row * columns);  // the last row stretches
    const float wide = sheet.width / static_cast<float>(in_row);
    const Rect rect{sheet.x + static_cast<float>(i - row * columns) * wide,
                    sheet.y + static_cast<float>(row) * height, wide, height};
    const Touch state = touch(sheet, item);
    std::uint32_t ground = own ? palette.accent : palette.raised;
    if (state.hovered && !own) ground = mixed(ground, palette.accent, 0.1f);
    sheet.box(rect, ground, palette.line, i == 0 || i + 1 == options.size() ? kRadius : 0.0f);
    const Type& type = own ? kTextStrong : kText;
    const float tall = sheet.paragraph(0, 0, room, type, 0, options[i].label, true);
    const float text_w = std::min(sheet.text_width(type, options[i].label), room);
    sheet.paragraph(rect.x + 0.5f * (wide - text_w), rect.y + 0.5f * (height - tall), room, type,
                    own ? palette.paper : palette.ink, options[i].label);
    sheet.record({.id = item, .role = Role::radio, .name = options[i].label, .checked = own}, rect);
    if (const Event event = sheet.take(item); event.verb == "click" || event.verb == "set") {
      pressed = static_cast<int>(i);
    }
  }
  sheet.tree().close();
  sheet.y += whole;
  return pressed;
}

// Where the knob of a slider can be.
struct Track {
  float from = 0.0f;
  float to = 0.0f;
  float at(double share) const {
    return from + (to - from) * static_cast<float>(std::clamp(share, 0.0, 1.0));
  }
};
constexpr float kKnob = 14.0f;

static Track track_of(const Rect& row) { return {row.x + kKnob, row.x + row.width - kKnob}; }

static void paint_track(Sheet& sheet, const Rect& row, double share) {
  const Palette& palette = sheet.palette();
  const Track track = track_of(row);
  const float cy = row.y + 0.5f * row.height;
  const float at = track.at(share);
  sheet.rule(track.from, track.to, cy - 1.0f, palette.line, 2.0f);
  sheet.rule(track.from, at, cy - 2.0f, palette.accent, 4.0f);
  sheet.disc(at, cy, kKnob, palette.accent);
  sheet.disc(at, cy, kKnob - 4.0f, palette.raised);
}

std::optional<double> slider(Context& ui, const SliderInput& in) {
  Sheet& sheet = ui.sheet;
  std::optional<double> wanted;
  for (Event event = sheet.take(in.id); !event.verb.empty(); event = sheet.take(in.id)) {
    if (event.verb == "set") wanted = plain_number(event.text);
  }
  sheet.text_at(sheet.x, sheet.y, kNote, sheet.palette().muted, in.name);
  const float words = sheet.text_width(kTextStrong, in.words);
  sheet.text_at(sheet.x + sheet.width - words, sheet.y, kTextStrong, sheet.palette().ink, in.words);
  sheet.y += sheet.scaled(kText.line);
  const Rect row{sheet.x, sheet.y, sheet.width, sheet.scaled(kTarget)};
  paint_track(sheet, row, in.most_min > 0.0 ? in.value_min / in.most_min : 0.0);
  sheet.record({.id = std::string(in.id),
                .role = Role::slider,
                .name = std::string(in.name),
                .value = trimmed(fixed(in.value_min, 3)),
                .unit = std::string(in.words),
                .min = 0.0,
                .max = in.most_min,
                .step = in.step_min},
               row);
  sheet.y += row.height;
  return wanted;
}

void progress_bar(Context& ui, std::string_view id, std::string_view name, double done_frac) {
  Sheet& sheet = ui.sheet;
  const Palette& palette = sheet.palette();
  const double share = std::clamp(done_frac, 0.0, 1.0);
  const float top = sheet.y;
  sheet.text_at(sheet.x, sheet.y, kText, palette.ink, name);
  sheet.y += sheet.scaled(kText.line) + 0.5f * kUnit;
  sheet.box({sheet.x, sheet.y, sheet.width, 8.0f}, palette.raised, palette.line, 4.0f);
  sheet.box({sheet.x, sheet.y, std::max(8.0f, sheet.width * static_cast<float>(share)), 8.0f},
            palette.accent, palette.accent, 4.0f);
  sheet.y += 8.0f;
  sheet.record({.id = std::string(id),
                .role = Role::progress,
                .name = std::string(name),
                .value = fixed(100.0 * share, 0)},
               {sheet.x, top, sheet.width, sheet.y - top});
  sheet.y += kUnit;
}

void wind_slider(Context& ui, const Field& field) {
  Sheet& sheet = ui.sheet;
  const Palette& palette = sheet.palette();
  const std::string id = field.path() + ".slider";
  const double kTop_mps = mps_from_kn(35.0);
  if (const Event event = sheet.take(id); event.verb == "set") {
    if (const auto knots = plain_number(event.text)) {
      ui.state.rejected.erase(field.path());
      ui.document.nudge(field, mps_from_kn(std::clamp(std::round(*knots), 0.0, 35.0)));
    }
  }
  const double wind_mps = field.access.get(ui.document.design().job);
  const BeaufortBand& band = beaufort(wind_mps);
  const Shown shown = show(wind_mps, "mps", ui.state.system);
  const std::string words = shown.text() + ", " + std::string(band.name);
  label_line(ui, field, field.access.origin(ui.document.design().job));
  sheet.text_at(sheet.x, sheet.y, kTextStrong, palette.ink, words);
  sheet.y += sheet.scaled(kText.line);
  const Rect row{sheet.x, sheet.y, sheet.width, sheet.scaled(kTarget)};
  const Track track = track_of(row);
  const float cy = row.y + 0.5f * row.height;
  for (const BeaufortBand& tick : kBeaufort) {
    if (tick.upper_mps > kTop_mps) break;
    const float tick_x = track.at(tick.upper_mps / kTop_mps);
    sheet.rule(tick_x, tick_x + 1.0f, cy + 8.0f, palette.line, 6.0f);
  }
  paint_track(sheet, row, wind_mps / kTop_mps);
  sheet.record({.id = id,
                .role = Role::slider,
                .name = std::string(field.label),
                .value = fixed(kn_from_mps(wind_mps), 0),
                .unit = words,
                .description = std::string(help_of(field)),
                .min = 0.0,
                .max = 35.0,
                .step = 1.0},
               row);
  sheet.y += row.height;
  help_line(ui, field, "");
}

void field_slider(Context& ui, const Field& field, const FieldRange& range) {
  Sheet& sheet = ui.sheet;
  const std::string id = field.path() + ".slider";
  if (const Event event = sheet.take(id); event.verb == "set") {
    if (const auto wanted = plain_number(event.text)) {
      const double rounded = range.low + std::round((*wanted - range.low) / range.step) * range.step;
      ui.state.rejected.erase(field.path());
      ui.document.nudge(field, std::clamp(rounded, range.low, range.high));
    }
  }
  const double value = field.access.get(ui.document.design().job);
  const std::string words = show(value, field.unit(), ui.state.system).text();
  const float words_w = sheet.text_width(kTextStrong, words);
  const bool beside = sheet.text_width(kNote, range.name) + kInner + words_w <= sheet.width;
  sheet.text_at(sheet.x, sheet.y, kNote, sheet.palette().muted, range.name);
  if (!beside) sheet.y += sheet.scaled(kNote.line);
  sheet.text_at(beside ? sheet.x + sheet.width - words_w : sheet.x, sheet.y, kTextStrong,
                sheet.palette().ink, words);
  sheet.y += sheet.scaled(kText.line);
  const Rect row{sheet.x, sheet.y, sheet.width, sheet.scaled(kTarget)};
  const double share = range.high > range.low ? (value - range.low) / (range.high - range.low) : 0.0;
  paint_track(sheet, row, share);
  sheet.record({.id = id,
                .role = Role::slider,
                .name = std::string(range.name),
                .value = trimmed(fixed(value, 3)),
                .unit = words,
                .description = std::string(help_of(field)),
                .min = range.low,
                .max = range.high,
                .step = range.step},
               row);
  sheet.y += row.height;
}

void step_note(Context& ui, const Step& step) {
  Sheet& sheet = ui.sheet;
  const Palette& palette = sheet.palette();
  struct Row {
    Type type{};
    std::uint32_t rgb = 0;
    std::string text{};
  };
  std::vector<Row> rows;
  rows.push_back({kTextStrong, palette.ink, step.label + ": " + with_unit(step.value, step.unit)});
  std::string line;
  if (!step.symbol.empty()) line = std::string(step.symbol) + " = ";
  rows.push_back({kNote, palette.ink, line + printed(step.formula)});
  for (const Term& term : step.terms) {
    rows.push_back({kNote, palette.muted,
                    std::string(term.symbol) + " = " + with_unit(term.value, term.unit) +
                        (term.meaning.empty() ? "" : "  " + std::string(term.meaning))});
  }
  std::string source = "Source: " + std::string(step.source->title);
  if (!step.source->locator.empty()) source += ", " + std::string(step.source->locator);
  rows.push_back({kNote, palette.ink, source});
  if (!step.source->confirmed) {
    rows.push_back({kNoteStrong, palette.changes, "Not confirmed: recalled or disputed."});
  }
  for (const std::string& assumption : step.assumptions) {
    rows.push_back({kNote, palette.ink, "Assumed: " + assumption});
  }

  const float room = sheet.width - 2.0f * kInner;
  float height = 2.0f * kInner;
  for (const Row& row : rows) height += sheet.paragraph(0, 0, room, row.type, 0, row.text, true);
  const Rect rect{sheet.x, sheet.y, sheet.width, height};
  sheet.box(rect, palette.raised, palette.line);
  float at = rect.y + kInner;
  std::string spoken;
  for (const Row& row : rows) {
    at += sheet.paragraph(rect.x + kInner, at, room, row.type, row.rgb, row.text);
    spoken += row.text + "\n";
  }
  sheet.record({.id = "step." + step.id, .role = Role::text, .name = spoken}, rect);
  sheet.y += height + kUnit;
}

void result_row(Context& ui, std::string_view id, std::string_view label, const Shown& value,
                std::string_view step_id) {
  Sheet& sheet = ui.sheet;
  const Palette& palette = sheet.palette();
  const std::string key = "why." + std::string(id);
  const Step* step = step_id.empty() ? nullptr : ui.document.design().find_step(step_id);
  const bool opens = step != nullptr || (!step_id.empty() && !ui.document.told());
  if (step != nullptr && sheet.take(key).verb == "click") {
    if (!ui.state.opened.erase(key)) ui.state.opened.insert(key);
  }
  const bool open = step != nullptr && ui.state.opened.count(key) != 0;
  const float figure = sheet.text_width(kTextStrong, value.number);
  const float unit = value.unit.empty() ? 0.0f : sheet.text_width(kNote, value.unit) + 4.0f;
  const float mark = 28.0f;
  const float whole = sheet.width - mark;
  // Name and value share a line when both fit; else the value has lines of its own below.
  const bool beside = sheet.text_width(kText, label) + kInner + figure + unit <= whole ||
                      figure + unit <= 0.4f * whole;
  const float room = beside ? whole - figure - unit - kUnit : whole;
  const float tall = sheet.paragraph(0, 0, room, kText, 0, label, true);
  const float below =
      beside ? 0.0f : sheet.paragraph(0, 0, whole, kTextStrong, 0, value.number, true);
  const Rect row{sheet.x, sheet.y, sheet.width,
                 std::max(sheet.scaled(kTarget), tall + below + 2.0f * kUnit)};
  const float mid = row.y + 0.5f * row.height;
  const float top = mid - 0.5f * (tall + below);
  sheet.paragraph(row.x, top, room, kText, palette.ink, label);
  if (beside) {
    const float right = row.x + whole;
    sheet.text_at(right - unit - figure, mid - 0.5f * sheet.scaled(kText.line), kTextStrong,
                  palette.ink, value.number);
    sheet.text_at(right - unit + 4.0f, mid - 0.5f * sheet.scaled(kNote.line) + 1.0f, kNote,
                  palette.muted, value.unit);
  } else {
    sheet.paragraph(row.x, top + tall, whole, kTextStrong, palette.ink, value.number);
  }
  if (opens) chevron(sheet, row.x + row.width - 10.0f, mid, open, palette.accent);
  sheet.rule(row.x, row.x + row.width, row.y + row.height - 1.0f,
             mixed(palette.paper, palette.line, 0.4f));
  const std::string spoken = std::string(label) + ": " + value.text();
  if (opens) {
    sheet.record({.id = key,
                  .role = Role::button,
                  .name = spoken,
                  .description = "Opens how it was found.",
                  .expandable = true,
                  .expanded = open},
                 row);
  } else {
    sheet.record({.id = key, .role = Role::text, .name = spoken}, row);
  }
  sheet.y += row.height;
  if (open) {
    sheet.y += kUnit;
    step_note(ui, *step);
  }
}

std::uint32_t verdict_colour(const Palette& palette, Verdict verdict) {
  switch (verdict) {
    case Verdict::pass:
      return palette.fits;
    case Verdict::marginal:
      return palette.changes;
    case Verdict::fail:
      return palette.fails;
    case Verdict::not_evaluated:
      return palette.unknown;
  }
  return palette.unknown;
}

std::uint32_t fit_colour(const Palette& palette, Fit fit) {
  switch (fit) {
    case Fit::fits:
      return palette.fits;
    case Fit::fits_with_changes:
      return palette.changes;
    case Fit::does_not_fit:
      return palette.fails;
    case Fit::not_evaluated:
      return palette.unknown;
  }
  return palette.unknown;
}

std::string_view fit_word(Fit fit) {
  switch (fit) {
    case Fit::fits:
      return "Fits";
    case Fit::fits_with_changes:
      return "Fits with changes";
    case Fit::does_not_fit:
      return "Does not fit";
    case Fit::not_evaluated:
      return "Not evaluated";
  }
  return "";
}

namespace {

// A tick in a circle, a stroke in a diamond, a bar in a square, a dash in an open circle.
void shape_mark(Sheet& sheet, float x, float y, float size, int kind, std::uint32_t rgb) {
  const std::uint32_t paper = sheet.palette().paper;
  const float cx = x + 0.5f * size;
  const float cy = y + 0.5f * size;
  const float r = 0.5f * size;
  if (kind == 0) {
    sheet.disc(cx, cy, r, rgb);
    const ImVec2 tick[] = {{cx - 0.45f * r, cy + 0.02f * r},
                           {cx - 0.1f * r, cy + 0.38f * r},
                           {cx + 0.48f * r, cy - 0.36f * r}};
    sheet.path(tick, 3, paper, 0.1f * size, false);
  } else if (kind == 1) {
    const ImVec2 diamond[] = {{cx, y}, {x + size, cy}, {cx, y + size}, {x, cy}};
    sheet.area(diamond, 4, rgb);
    const ImVec2 stroke[] = {{cx - 0.28f * r, cy + 0.28f * r}, {cx + 0.28f * r, cy - 0.28f * r}};
    sheet.path(stroke, 2, paper, 0.11f * size, false);
  } else if (kind == 2) {
    sheet.box({x + 0.04f * size, y + 0.04f * size, 0.92f * size, 0.92f * size}, rgb, rgb);
    sheet.box({cx - 0.55f * r, cy - 0.13f * r, 1.1f * r, 0.26f * r}, paper, paper);
  } else {
    sheet.ring(cx, cy, r - 1.0f, rgb, 2.0f);
    sheet.box({cx - 0.5f * r, cy - 1.0f, r, 2.0f}, rgb, rgb);
  }
}

}  // namespace

void verdict_mark(Sheet& sheet, float x, float y, float size, Verdict verdict) {
  const int kind = verdict == Verdict::pass       ? 0
                   : verdict == Verdict::marginal ? 1
                   : verdict == Verdict::fail     ? 2
                                                  : 3;
  shape_mark(sheet, x, y, size, kind, verdict_colour(sheet.palette(), verdict));
}

void fit_mark(Sheet& sheet, float x, float y, float size, Fit fit) {
  const int kind = fit == Fit::fits                ? 0
                   : fit == Fit::fits_with_changes ? 1
                   : fit == Fit::does_not_fit      ? 2
                                                   : 3;
  shape_mark(sheet, x, y, size, kind, fit_colour(sheet.palette(), fit));
}

void utilisation_bar(Sheet& sheet, const Rect& rect, const Check& check) {
  constexpr float kFullScale = 1.5f;  // the limit stands at two thirds
  const Palette& palette = sheet.palette();
  const double used = check.utilisation();
  sheet.box(rect, mixed(palette.paper, palette.line, 0.25f), palette.paper, 0.0f, 0.0f);
  if (!std::isnan(used)) {
    const bool cut = used > static_cast<double>(kFullScale);
    const float share = cut ? 1.0f : static_cast<float>(used) / kFullScale;
    sheet.box({rect.x, rect.y, rect.width * share, rect.height},
              verdict_colour(palette, check.verdict()), verdict_colour(palette, check.verdict()));
    if (cut) {
      const float at = rect.x + rect.width - 10.0f;
      const float q = 0.25f * rect.height;
      const ImVec2 zigzag[] = {{at, rect.y - 1.0f},
                               {at + 4.0f, rect.y + q},
                               {at, rect.y + 2.0f * q},
                               {at + 4.0f, rect.y + 3.0f * q},
                               {at, rect.y + rect.height + 1.0f}};
      sheet.path(zigzag, 5, palette.paper, 2.5f, false);
    }
  }
  const float limit = rect.x + rect.width / kFullScale;
  sheet.rule(limit - 1.0f, limit + 1.0f, rect.y - 3.0f, palette.ink, rect.height + 6.0f);
}

void check_row(Context& ui, const Check& check) {
  Sheet& sheet = ui.sheet;
  const Palette& palette = sheet.palette();
  const Verdict verdict = check.verdict();
  const float top = sheet.y;
  const float mark = sheet.scaled(22.0f);
  const float left = sheet.x + mark + kInner;
  const float room = sheet.width - mark - kInner;
  const std::string figures = shown_check(check, ui.state.system);
  sheet.y += kUnit;
  verdict_mark(sheet, sheet.x, sheet.y + 1.0f, mark, verdict);
  const float figure_w = sheet.text_width(kNote, figures);
  const bool beside = sheet.text_width(kText, check.label) + figure_w + kInner <= room;
  sheet.y += beside ? sheet.scaled(kText.line)
                    : sheet.paragraph(left, sheet.y, room, kText, palette.ink, check.label);
  if (beside) {
    sheet.text_at(left, sheet.y - sheet.scaled(kText.line), kText, palette.ink, check.label);
    sheet.text_at(sheet.x + sheet.width - figure_w,
                  sheet.y - sheet.scaled(kText.line) + 0.5f * sheet.scaled(kText.line - kNote.line),
                  kNote, palette.muted, figures);
  } else {
    sheet.text_at(left, sheet.y, kNote, palette.muted, figures);
    sheet.y += sheet.scaled(kNote.line);
  }
  utilisation_bar(sheet, {left, sheet.y + 4.0f, room, 6.0f}, check);
  sheet.y += 16.0f;
  const std::string spoken = check.label + ": " + figures + ", " + std::string(word(verdict)) + ".";
  sheet.record({.id = "check." + check.id, .role = Role::text, .name = spoken},
               {sheet.x, top, sheet.width, sheet.y - top});
  if (verdict != Verdict::pass) {
    const float remedy_top = sheet.y;
    sheet.y += sheet.paragraph(left, sheet.y, room, kNote, palette.ink, check.remedy);
    sheet.record({.role = Role::text, .name = check.remedy},
                 {left, remedy_top, room, sheet.y - remedy_top});
    sheet.y += 4.0f;
    sheet.y +=
        sheet.paragraph(left, sheet.y, room, kNote, palette.muted, shown_source(check.source));
    sheet.y += 4.0f;
    if (verdict == Verdict::fail || verdict == Verdict::not_evaluated) {
      for (std::size_t i = 0; i < check.changes.size(); ++i) {
        const Change& change = check.changes[i];
        const Field* field = find_field(change.field);
        if (field == nullptr) continue;
        const bool useless =
            change.clear && !(field->access.origin(ui.document.given()) == Origin::given);
        if (useless) continue;
        const float column_x = sheet.x;
        const float column_w = sheet.width;
        sheet.x = left;
        sheet.width = room;
        const std::string id = "apply." + check.id + "." + std::to_string(i);
        if (button(ui, id, change.label)) ui.document.apply(change);
        sheet.x = column_x;
        sheet.width = column_w;
      }
    }
  }
  sheet.y += kUnit;
}

}  // namespace thole::ui
