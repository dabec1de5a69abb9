// The pictures: said in words, legible, calm when a value changes, and draggable.

#include <algorithm>
#include <cmath>
#include <set>

#include "base/number.h"
#include "draw/apart.h"
#include "draw/blend.h"
#include "draw/pictures.h"
#include "io/presets.h"
#include "support.h"
#include "ui/pages.h"
#include "ui/paint_drawing.h"
#include "ui/wizard.h"

using namespace thole;
using thole::test::Wizard;
using thole::ui::Role;

namespace {

constexpr ui::Viewport kPhone{.width = 412.0f, .height = 915.0f};
constexpr ui::Viewport kSmall{.width = 320.0f, .height = 640.0f};
constexpr ui::Viewport kWide{.width = 1280.0f, .height = 800.0f};

Design design_of(double length_m, double bow_height_m) {
  Job job;
  job.boat.layout = {Layout::t_top, Origin::given};
  job.boat.length_m = {length_m, Origin::given};
  job.boat.bow_height_m = {bow_height_m, Origin::given};
  return evaluate(job, default_catalogue());
}

// Calls use(name, drawing) for every picture of every ready-made job, in both systems.
template <class Use>
void for_each_picture(Use use) {
  for (const ReadyJob& ready : ready_jobs()) {
    const Design design = evaluate(ready.job, default_catalogue());
    for (const System system : {System::metric, System::us}) {
      for (const ui::Page& page : ui::all_pages()) {
        if (page.picture == nullptr) continue;
        const std::string name =
            ready.id + ", " + std::string(page.key) + (system == System::us ? ", us" : ", metric");
        use(name, page.picture(design, system));
      }
    }
  }
}

bool contains(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

int sentences(const std::string& text) {
  int count = text.ends_with('.') ? 1 : 0;
  for (std::size_t at = text.find(". "); at != text.npos; at = text.find(". ", at + 1)) ++count;
  return count;
}

// From its first digit on; empty when there is none, or nothing but a count.
std::string figure_in(const std::string& label) {
  const std::size_t digit = label.find_first_of("0123456789");
  if (digit == label.npos) return {};
  const std::string figure = label.substr(digit);
  return figure.find_first_not_of("0123456789") == figure.npos ? "" : figure;
}

// --- on the page
// ----------------------------------------------------------------------------------

std::vector<ui::SemNode> handles(Wizard& wizard) {
  std::vector<ui::SemNode> found;
  for (const ui::SemNode& node : wizard.app().tree().nodes()) {
    if (node.action == "drag") found.push_back(node);
  }
  return found;
}

const ui::SemNode& handle(Wizard& wizard, const std::string& field) {
  const ui::SemNode* node = wizard.app().tree().find("picture." + field);
  REQUIRE(node != nullptr);
  return *node;
}

Point centre(const ui::SemNode& node) {
  return {static_cast<double>(node.x + 0.5f * node.width),
          static_cast<double>(node.y + 0.5f * node.height)};
}

void drag(Wizard& wizard, const std::string& field, double right_px, double down_px) {
  wizard.app().act("picture." + field, "drag", fixed(right_px, 2) + " " + fixed(down_px, 2));
  wizard.settle();
}

void drop(Wizard& wizard, const std::string& field) {
  wizard.app().act("picture." + field, "drop", "");
  wizard.settle();
}

double value(Wizard& wizard, const std::string& field) {
  return find_field(field)->access.get(wizard.app().document().design().job);
}

// A job in which everything that can be dragged shows.
void open_tidal_job(Wizard& wizard) {
  for (const ReadyJob& ready : ready_jobs()) {
    if (ready.id == "centre-console-in-the-tidal-sea") {
      CHECK(wizard.app().open(ready.text).empty());
    }
  }
  wizard.settle();
}

}  // namespace

TEST_SUITE("ui") {
  TEST_CASE(
      "a picture's words: never empty, three sentences at most, every figure that is painted") {
    int figures = 0;
    for_each_picture([&](const std::string& name, const Drawing& drawing) {
      CAPTURE(name);
      CAPTURE(drawing.description);
      CHECK_FALSE(drawing.title.empty());
      CHECK_FALSE(drawing.description.empty());
      CHECK(sentences(drawing.description) <= 3);
      for (const Dimension& dimension : drawing.dimensions) {
        CAPTURE(dimension.text);
        CHECK(contains(drawing.description, dimension.text));
        ++figures;
      }
      for (const Label& label : drawing.labels) {
        CAPTURE(label.text);
        if (label.text == "0 h") continue;  // where the day begins
        // "6 AWG, 5.8 m" are two
        for (std::size_t from = 0; from < label.text.size();) {
          const std::size_t comma = std::min(label.text.find(", ", from), label.text.size());
          CHECK(contains(drawing.description, figure_in(label.text.substr(from, comma - from))));
          from = comma + 2;
          ++figures;
        }
      }
    });
    CHECK(figures > 500);
  }

  TEST_CASE("texts keep apart and off the edge") {
    std::vector<TextBox> boxes{{{100.0, 50.0}, {80.0, 20.0}},
                               {{110.0, 52.0}, {80.0, 20.0}},
                               {{100.0, 50.0}, {80.0, 20.0}},
                               {{295.0, 2.0}, {60.0, 20.0}}};
    keep_apart(boxes, {300.0, 100.0});
    CHECK(boxes[0].centre.y == 50.0);
    for (std::size_t i = 0; i < 3; ++i) {
      for (std::size_t k = 0; k < i; ++k) {
        CHECK(std::abs(boxes[i].centre.y - boxes[k].centre.y) >= 15.9);
      }
    }
    CHECK(std::abs(boxes[1].centre.y - 52.0) < 20.0);
    CHECK(boxes[3].centre.x <= 270.0);
    CHECK(boxes[3].centre.y >= 8.0);
  }

  TEST_CASE("figures of every picture: whole, and none over another, from 320 px up") {
    Wizard wizard(kPhone);  // for its fonts
    const auto& fonts = ImGui::GetIO().Fonts->Fonts;
    for (const ui::Rect& rect :
         {ui::Rect{0.0f, 0.0f, 288.0f, 179.0f}, ui::Rect{0.0f, 0.0f, 380.0f, 236.0f},
          ui::Rect{0.0f, 0.0f, 568.0f, 284.0f}}) {
      ImGui::NewFrame();
      ui::SemTree tree;
      std::vector<ui::Event> events;
      const ui::Sheet sheet(nullptr, {fonts[0], fonts[1]}, kPhone, ui::kDay, tree, events);
      for_each_picture([&](const std::string& name, const Drawing& drawing) {
        CAPTURE(name);
        CAPTURE(rect.width);
        const std::vector<ui::Figure> figures = ui::lay_figures(sheet, drawing, rect);
        CHECK(figures.size() == drawing.dimensions.size() + drawing.labels.size());
        for (std::size_t i = 0; i < figures.size(); ++i) {
          const ui::Rect& a = figures[i].rect;
          CAPTURE(figures[i].text);
          CHECK(figures[i].type.size >= 14.0f);
          CHECK(a.x >= 0.0f);
          CHECK(a.x + a.width <= rect.width);
          CHECK(a.y >= -3.0f);  // of a line, letters fill the middle 14 px
          CHECK(a.y + a.height <= rect.height + 3.0f);
          for (std::size_t k = 0; k < i; ++k) {
            const ui::Rect& b = figures[k].rect;
            CAPTURE(figures[k].text);
            const bool apart =
                a.x + a.width <= b.x || b.x + b.width <= a.x || std::abs(a.y - b.y) >= 15.0f;
            CHECK(apart);
          }
        }
      });
      ImGui::EndFrame();
    }
  }

  TEST_CASE("a blend lies between two pictures and ends in the second") {
    const Drawing from = boat_picture(design_of(7.0, 0.9), System::metric);
    const Drawing to = boat_picture(design_of(9.0, 1.3), System::metric);
    REQUIRE(can_blend(from, to));
    CHECK(blend(from, to, 1.0) == to);
    const Drawing start = blend(from, to, 0.0);
    const Drawing half = blend(from, to, 0.5);
    for (std::size_t i = 0; i < to.shapes.size(); ++i) {
      for (std::size_t k = 0; k < to.shapes[i].points.size(); ++k) {
        const Point a = from.shapes[i].points[k];
        const Point b = to.shapes[i].points[k];
        const Point middle = half.shapes[i].points[k];
        CHECK(start.shapes[i].points[k] == a);
        CHECK(near(middle.x - a.x, b.x - middle.x, 1e-9));
        CHECK(near(middle.y - a.y, b.y - middle.y, 1e-9));
      }
    }
    CHECK(near(half.high.x, 0.5 * (from.high.x + to.high.x), 1e-9));
    REQUIRE(half.dimensions.size() == 2);
    CHECK(half.dimensions[0].text == "9 m");
    CHECK(near(half.dimensions[0].b.x, 8.0, 1e-9));
    CHECK(half.description == to.description);
    // No way between different things.
    const Drawing other = bank_picture(design_of(7.0, 0.9), System::metric);
    CHECK_FALSE(can_blend(from, other));
    CHECK(blend(from, other, 0.5) == other);
  }

  TEST_CASE("a picture eases for 150 ms to a changed value, then nothing is drawn") {
    Wizard wizard(kPhone);
    wizard.page("shaft");
    const Drawing before = wizard.app().state().eased.shown;
    wizard.app().act("boat.bow_height_m", "set", "1.9 m");
    wizard.frame();  // takes the value down
    wizard.frame();  // sets out
    const Drawing after = shaft_picture(wizard.app().document().design(), System::metric);
    REQUIRE_FALSE(before == after);
    double high = before.high.y;
    int between = 0;
    double moved_s = 0.0;
    while (wizard.app().state().eased.shown.high.y < after.high.y && moved_s < 1.0) {
      const double now = wizard.app().state().eased.shown.high.y;
      CHECK(now >= high);
      CHECK(wizard.app().frames_wanted() > 0);
      if (now > before.high.y) ++between;
      high = now;
      wizard.frame(0.02f);
      moved_s += 0.02;
    }
    CHECK(between >= 5);
    CHECK(moved_s >= 0.13);
    CHECK(moved_s <= 0.17);
    CHECK(wizard.app().state().eased.shown == after);
    wizard.settle();  // what would make it fit is looked for once the picture rests
    CHECK(wizard.app().state().eased.shown == after);
    CHECK(wizard.app().frames_wanted() == 0);
  }

  TEST_CASE(
      "a picture does not ease under reduced motion, when a page opens, or for another unit") {
    Wizard wizard(kPhone);
    wizard.view.reduced_motion = true;
    wizard.page("shaft");
    wizard.app().act("boat.bow_height_m", "set", "1.9 m");
    wizard.frame();
    wizard.frame();
    CHECK(wizard.app().state().eased.shown ==
          shaft_picture(wizard.app().document().design(), System::metric));

    wizard.view.reduced_motion = false;
    wizard.app().act("app", "page", "mount");
    wizard.frame();
    wizard.frame();
    CHECK(wizard.app().state().eased.shown ==
          mount_picture(wizard.app().document().design(), System::metric));
    wizard.settle();
    wizard.app().act("app", "units", "us");
    wizard.frame();
    wizard.frame();
    CHECK(wizard.app().state().eased.shown ==
          mount_picture(wizard.app().document().design(), System::us));
  }

  TEST_CASE("a change that alters nothing in the picture moves nothing") {
    Wizard wizard(kPhone);
    wizard.page("shaft");
    wizard.type("Bow height", "1.2 m");
    const int version = wizard.app().document().version();
    wizard.app().act("boat.bow_height_m", "set", "1.2 m");
    wizard.frame();
    wizard.frame();
    CHECK(wizard.app().document().version() > version);
    CHECK(wizard.app().state().eased.moving_s >= 0.15);
  }

  TEST_CASE("handles are sliders with name, range and a finger's reach, within the picture") {
    for (const ui::Viewport& view : {kPhone, kSmall, kWide}) {
      Wizard wizard(view);
      open_tidal_job(wizard);
      std::set<std::string> fields;
      for (const ui::Page& page : ui::all_pages()) {
        wizard.page(page.key);
        CAPTURE(std::string(page.key));
        CAPTURE(view.width);
        const std::vector<ui::SemNode> found = handles(wizard);
        if (found.empty()) continue;
        const ui::SemNode* picture = wizard.app().tree().find("picture");
        REQUIRE(picture != nullptr);
        for (std::size_t i = 0; i < found.size(); ++i) {
          const ui::SemNode& node = found[i];
          CAPTURE(node.id);
          const std::string path = node.id.substr(std::string("picture.").size());
          REQUIRE(find_field(path) != nullptr);
          fields.insert(path);
          CHECK(node.role == Role::slider);
          CHECK(node.name == find_field(path)->label);
          CHECK_FALSE(node.unit.empty());
          CHECK(node.min < node.max);
          CHECK(node.step > 0.0);
          const std::optional<double> shown = plain_number(node.value);
          REQUIRE(shown);
          CHECK(*shown >= node.min);
          CHECK(*shown <= node.max);
          CHECK(node.width == 44.0f);
          CHECK(node.height == 44.0f);
          CHECK(node.x >= picture->x - 0.01f);
          CHECK(node.y >= picture->y - 0.01f);
          CHECK(node.x + node.width <= picture->x + picture->width + 0.01f);
          CHECK(node.y + node.height <= picture->y + picture->height + 0.01f);
          for (std::size_t k = 0; k < i; ++k) {  // at least 24 px apart [wcag-2.2 2.5.8]
            const Point a = centre(node);
            const Point b = centre(found[k]);
            CAPTURE(found[k].id);
            CHECK(std::hypot(a.x - b.x, a.y - b.y) >= 24.0);
          }
        }
      }
      CHECK(fields == std::set<std::string>{
                          "boat.bow_height_m", "boat.length_m", "control.feeder_y_m",
                          "control.receiver_x_m", "control.sensor_x_m", "feeder.run_m",
                          "mount.bolt_gauge_mm", "mount.bolt_pitch_mm", "mount.overhang_mm",
                          "shaft.length_m", "shaft.thruster_forward_m", "trim.bank_x_m",
                          "water.current_angle_deg", "water.current_mps", "water.wind_mps"});
    }
  }

  TEST_CASE("a dragged handle stays under the finger and its value becomes yours") {
    struct Pull {
      std::string_view page;
      std::string field;
      double right_px;
      double down_px;
    };
    const Pull pulls[] = {
        {"quick", "boat.length_m", -40.0, 0.0},
        {"boat", "boat.bow_height_m", 0.0, -12.0},
        {"water", "water.wind_mps", 30.0, 0.0},
        {"water", "water.current_mps", -12.0, 0.0},
        {"hold", "water.wind_mps", 25.0, 0.0},
        {"shaft", "boat.bow_height_m", 0.0, 25.0},
        {"shaft", "shaft.thruster_forward_m", -30.0, 0.0},
        {"shaft", "shaft.length_m", 0.0, -25.0},
        {"feeder", "feeder.run_m", 30.0, 0.0},
        {"mount", "mount.overhang_mm", -40.0, 0.0},
        {"mount", "mount.bolt_gauge_mm", 0.0, 15.0},
        {"mount", "mount.bolt_pitch_mm", -30.0, 0.0},
        {"trim", "trim.bank_x_m", -30.0, 0.0},
    };
    for (const ui::Viewport& view : {kPhone, kWide}) {
      for (const Pull& pull : pulls) {
        CAPTURE(std::string(pull.page));
        CAPTURE(pull.field);
        Wizard wizard(view);
        open_tidal_job(wizard);
        wizard.page(pull.page);
        const Point start = centre(handle(wizard, pull.field));
        const double before = value(wizard, pull.field);
        const std::string words = wizard.app().tree().find("picture")->name;
        drag(wizard, pull.field, 0.4 * pull.right_px, 0.4 * pull.down_px);
        drag(wizard, pull.field, pull.right_px, pull.down_px);
        const Point end = centre(handle(wizard, pull.field));
        CHECK(value(wizard, pull.field) != before);
        CHECK(wizard.app().tree().find("picture")->name != words);
        const Field& field = *find_field(pull.field);
        CHECK(field.access.origin(wizard.app().document().given()) == Origin::given);
        // Within the px of half a step of the grid that values snap to.
        const double per_step = std::hypot(end.x - start.x, end.y - start.y) * field.step /
                                std::abs(value(wizard, pull.field) - before);
        CAPTURE(per_step);
        if (pull.right_px != 0.0) {
          CHECK(near(end.x - start.x, pull.right_px, 0.5 * per_step + 0.6));
        } else {
          CHECK(near(end.y - start.y, pull.down_px, 0.5 * per_step + 0.6));
        }
        const double steps = value(wizard, pull.field) / field.step;
        CHECK(near(steps, std::round(steps), 1e-6));
        const double dropped = value(wizard, pull.field);
        drop(wizard, pull.field);
        CHECK(value(wizard, pull.field) == dropped);
      }
    }
  }

  TEST_CASE("the current's handle turns about the boat") {
    Wizard wizard(kPhone);
    open_tidal_job(wizard);
    wizard.page("hold");
    const std::string field = "water.current_angle_deg";
    const Point start = centre(handle(wizard, field));
    const ui::SemNode& picture = *wizard.app().tree().find("picture");
    const Point middle = centre(picture);
    const auto drag_to = [&](double right, double below) {
      drag(wizard, field, middle.x + right - start.x, middle.y + below - start.y);
      return value(wizard, field);
    };
    CHECK(drag_to(60.0, 0.0) == 90.0);
    CHECK(drag_to(0.0, 50.0) == 180.0);
    CHECK(drag_to(0.0, -50.0) == 0.0);
    CHECK(drag_to(-60.0, 0.0) == 90.0);  // left and right are alike
    CHECK(drag_to(0.0, 0.0) <= 180.0);
    drop(wizard, field);
    CHECK(value(wizard, field) >= 0.0);
  }

  TEST_CASE("a drag ends at the field's range") {
    Wizard wizard(kPhone);
    open_tidal_job(wizard);
    for (const std::string_view page :
         {"boat", "water", "hold", "shaft", "feeder", "mount", "trim"}) {
      wizard.page(page);
      for (const ui::SemNode& node : handles(wizard)) {
        CAPTURE(node.id);
        const std::string path = node.id.substr(8);
        const Field& field = *find_field(path);
        for (const double far_px : {5000.0, -5000.0}) {
          drag(wizard, path, far_px, -far_px);
          drag(wizard, path, far_px, far_px);
          CHECK(value(wizard, path) >= field.min);
          CHECK(value(wizard, path) <= field.max);
        }
        drop(wizard, path);
        wizard.app().act("app", "undo", "");
        wizard.settle();
      }
    }
    wizard.page("shaft");
    drag(wizard, "boat.bow_height_m", 0.0, -5000.0);
    CHECK(value(wizard, "boat.bow_height_m") == find_field("boat.bow_height_m")->max);
    drag(wizard, "boat.bow_height_m", 0.0, 5000.0);
    CHECK(value(wizard, "boat.bow_height_m") == find_field("boat.bow_height_m")->min);
  }

  TEST_CASE("one drag is one step of undo; the next drag is another") {
    Wizard wizard(kPhone);
    wizard.page("shaft");
    const std::string field = "boat.bow_height_m";
    const Job before = wizard.app().document().given();
    drag(wizard, field, 0.0, -10.0);
    drag(wizard, field, 0.0, -20.0);
    drag(wizard, field, 0.0, -30.0);
    drop(wizard, field);
    const Job first = wizard.app().document().given();
    drag(wizard, field, 0.0, 10.0);
    drag(wizard, field, 0.0, 20.0);
    drop(wizard, field);
    CHECK_FALSE(wizard.app().document().given() == first);
    wizard.app().act("app", "undo", "");
    wizard.settle();
    CHECK(wizard.app().document().given() == first);
    wizard.app().act("app", "undo", "");
    wizard.settle();
    CHECK(wizard.app().document().given() == before);
    CHECK_FALSE(wizard.app().document().can_undo());
  }

  TEST_CASE("a press alone changes nothing; the way back gives the value back") {
    Wizard wizard(kPhone);
    wizard.page("shaft");
    wizard.type("Bow height", "1.233 m");
    const std::string field = "boat.bow_height_m";
    drag(wizard, field, 0.0, 0.0);
    drag(wizard, field, 0.3, -0.3);
    drop(wizard, field);
    CHECK(value(wizard, field) == 1.233);
    drag(wizard, field, 0.0, -30.0);
    CHECK(value(wizard, field) != 1.233);
    drag(wizard, field, 0.0, 0.2);
    drop(wizard, field);
    CHECK(value(wizard, field) == 1.233);
  }

  TEST_CASE("a drag that is not understood, or never let go, does no harm") {
    Wizard wizard(kPhone);
    wizard.page("shaft");
    const std::string id = "picture.boat.bow_height_m";
    const Job before = wizard.app().document().given();
    for (const std::string_view text : {"", "12", "a b", "1 2 3", "1e9 2", "nan nan"}) {
      wizard.app().act(id, "drag", text);
      wizard.settle();
    }
    wizard.app().act("picture.shaft.length_m", "drop", "");  // not the one in hand
    wizard.app().act(id, "set", "high");
    wizard.settle();
    CHECK(wizard.app().document().given() == before);
    CHECK(wizard.app().state().dragged.id == id);
    wizard.page("bank");  // the page turns under the finger
    CHECK(wizard.app().state().dragged.id.empty());
    wizard.page("shaft");
    drag(wizard, "boat.bow_height_m", 0.0, -30.0);
    CHECK_FALSE(wizard.app().document().given() == before);
  }

  TEST_CASE("handles by keyboard: a number in the unit shown") {
    Wizard wizard(kPhone);
    wizard.page("shaft");
    const std::string field = "boat.bow_height_m";
    wizard.app().act("picture." + field, "set", "1.2");
    wizard.settle();
    CHECK(value(wizard, field) == rel(1.2, 1e-9));
    CHECK(handle(wizard, field).value == "1.2");
    CHECK(handle(wizard, field).unit == "1.2 m");
    // One step up, as the page computes it.
    wizard.app().act("picture." + field, "set", fixed(1.2 + handle(wizard, field).step, 4));
    wizard.settle();
    CHECK(value(wizard, field) == rel(1.25, 1e-9));
    wizard.app().act("picture." + field, "set", fixed(handle(wizard, field).max, 4));
    wizard.settle();
    CHECK(value(wizard, field) == rel(3.0, 1e-9));

    wizard.app().act("app", "units", "us");
    wizard.settle();
    wizard.app().act("picture." + field, "set", "4");
    wizard.settle();
    CHECK(value(wizard, field) == rel(1.2192, 1e-9));
    CHECK(handle(wizard, field).unit == "4′ 0″");
    CHECK(handle(wizard, field).step == rel(1.0 / 12.0, 1e-9));
    wizard.app().act("picture." + field, "set", fixed(4.0 + handle(wizard, field).step, 4));
    wizard.settle();
    CHECK(value(wizard, field) == rel(49 * 0.0254, 1e-9));
  }

  TEST_CASE("while it is dragged the sheet stays still; let go, it eases to fit") {
    Wizard wizard(kPhone);
    wizard.page("shaft");
    const Drawing before = wizard.app().state().eased.shown;
    drag(wizard, "boat.bow_height_m", 0.0, -30.0);
    CHECK(wizard.app().state().eased.shown.high == before.high);
    wizard.app().act("picture.boat.bow_height_m", "drop", "");
    wizard.frame();
    wizard.frame();
    const Drawing rest = shaft_picture(wizard.app().document().design(), System::metric);
    CHECK(rest.high.y > before.high.y);
    CHECK(wizard.app().state().eased.shown.high.y < rest.high.y);
    wizard.settle();
    CHECK(wizard.app().state().eased.shown == rest);
  }
}
