#pragma once

// The controls of the wizard. Each paints itself, records itself in the semantic tree, and acts on
// what was done to it. Nothing else in src/ui touches events or colours of controls.

#include <map>
#include <memory>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "draw/drawing.h"
#include "io/measure.h"
#include "ui/document.h"
#include "ui/sheet.h"

namespace thole::ui {

// What was typed and not understood: kept until it is mended, so that nothing entered is lost.
struct Rejected {
  std::string text{};
  std::string message{};
};

// What the page around the wizard can do, and has told it.
struct Surroundings {
  bool can_share = false;            // the system has a share sheet
  bool keeps_nothing = false;        // storage is full or forbidden
  bool update_ready = false;         // a newer build waits
  std::string address{};             // of the page, without what follows '#'
  std::string date{};                // today, as the person writes it
  std::vector<std::string> kept{};   // other jobs in this browser, the latest first
  std::vector<std::string> pages{};  // the only ones to be shown; empty: all
  std::string contact_label{};       // a shop asks to be asked: "Ask for a quote"
};

// A picture on its way to the design of now: it eases for a moment after a value has changed.
struct Eased {
  std::string key{};    // page and picture
  int version = -1;     // of the document it stands for
  Drawing from{};       // where it set out
  Drawing shown{};      // what the last frame painted
  double moving_s = 0;  // since it set out
};

// A handle in somebody's hand. Everything is kept as it was at the press, so that the value stays
// under the finger and rounding does not add up.
struct Dragged {
  std::string id{};  // of its element; empty: nothing is dragged
  Handle handle{};
  double value = 0.0;  // of the field
  Point per_px{};      // the drawing's units to a px, right and down
  Point low{};         // the sheet stays as it is under the finger
  Point high{};
  bool moved = false;
  bool holds() const { return !id.empty(); }
};

struct Studies;

// How the person looks at the job; never saved with it.
struct UiState {
  float strip_height = 0.0f;  // of the verdict's strip, as it was when nothing was dragged
  std::string page = "quick";
  std::string returning = "quick";  // where Back leads from checks and contents
  System system = System::metric;
  std::set<std::string> opened{};              // groups and reasons that are open
  std::map<std::string, Rejected> rejected{};  // by field path
  std::string message{};                       // said once, in the status line
  Eased eased{};
  Dragged dragged{};
  bool easing = false;  // set by a picture that wants another frame; whoever reads it resets it
  Surroundings around{};
  std::shared_ptr<Studies> studies{};                             // see studies.h
  std::map<std::string, std::shared_ptr<const Drawing>> figures{};  // of this frame, by id
};

struct Context {
  Sheet& sheet;
  Document& document;
  UiState& state;
};

enum class Weight { plain, primary, quiet };

void heading(Context& ui, int level, std::string_view text);
void body(Context& ui, std::string_view text);
void note(Context& ui, std::string_view text);
void caution(Context& ui, const Caution& caution);

// True when it was pressed. Full width of the column unless `columns` is given.
bool button(Context& ui, std::string_view id, std::string_view label, Weight weight = Weight::plain,
            float columns = 0.0f, std::string_view action = {}, bool enabled = true);

// Two buttons side by side; returns which was pressed, 0 or 1, or -1.
struct ButtonChoice {
  std::string_view id{};
  std::string_view label{};
  std::string_view action{};
  bool enabled = true;
  Weight weight = Weight::plain;
};
int pair_of_buttons(Context& ui, const ButtonChoice& first, const ButtonChoice& second);

// A disclosure: true while open.
bool disclosure(Context& ui, std::string_view id, std::string_view label);

// What a stepper of the field adds, in round figures of the system shown.
double step_for(const Field& field, System system);

// The control that suits the field, with label, origin, help and error.
void field_control(Context& ui, const Field& field);

// One of a few, side by side; returns the index pressed or -1.
int segments(Context& ui, std::string_view id, std::string_view name,
             const std::vector<SemOption>& options, int taken);

// The wind on a slider with Beaufort's words.
void wind_slider(Context& ui, const Field& field);

// A field on a slider from `low` to `high` in its own unit, with what it is now in words; beside
// its text box, so under a name of its own.
struct FieldRange {
  std::string_view name{};
  double low = 0.0;
  double high = 1.0;
  double step = 0.05;
};
void field_slider(Context& ui, const Field& field, const FieldRange& range);

// Name and value on one line; pressed, it opens the step behind it.
void result_row(Context& ui, std::string_view id, std::string_view label, const Shown& value,
                std::string_view step_id);
void step_note(Context& ui, const Step& step);

void check_row(Context& ui, const Check& check);

// A drawing that eases to the design of now, with its text equivalent, and after it the dots that
// can be dragged: sliders by keyboard, and by "drag" with the px moved since the press ("12 -3", y
// down) and "drop".
void picture(Context& ui, std::string_view id, const Drawing& drawing, float height);

// A drawing that stays as it is: no easing, nothing to take hold of. Its id is unique in the frame.
void figure(Context& ui, std::string_view id, Drawing drawing, float height);

// Something under way.
void progress_bar(Context& ui, std::string_view id, std::string_view name, double done_frac);

// Minutes from 0 to the most; returns what it was set to.
struct SliderInput {
  std::string_view id{};
  std::string_view name{};
  std::string_view words{};  // the value, spoken and painted
  double value_min = 0.0;
  double most_min = 1.0;
  double step_min = 1.0;
};
std::optional<double> slider(Context& ui, const SliderInput& in);

// Shape and word of a verdict; `size` is the side of the shape.
void verdict_mark(Sheet& sheet, float x, float y, float size, Verdict verdict);
void fit_mark(Sheet& sheet, float x, float y, float size, Fit fit);
std::uint32_t verdict_colour(const Palette& palette, Verdict verdict);
std::uint32_t fit_colour(const Palette& palette, Fit fit);
std::string_view fit_word(Fit fit);  // "Fits with changes"

// Bar of utilisation, the limit at two thirds; past 1.5 it is cut with a zigzag.
void utilisation_bar(Sheet& sheet, const Rect& rect, const Check& check);

}  // namespace thole::ui
