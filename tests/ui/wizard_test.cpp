#include "ui/wizard.h"

#include <set>

#include "calc/outputs.h"
#include "io/link.h"
#include "support.h"
#include "ui/pages.h"
#include "ui/sheet.h"

using thole::test::Wizard;
using thole::ui::Role;

namespace {

constexpr thole::ui::Viewport kPhone{.width = 412.0f, .height = 915.0f};
constexpr thole::ui::Viewport kSmall{.width = 320.0f, .height = 640.0f};
constexpr thole::ui::Viewport kLargeText{.width = 320.0f, .height = 640.0f, .text_scale = 2.0f};
constexpr thole::ui::Viewport kWide{.width = 1280.0f, .height = 800.0f};

bool interactive(Role role) {
  return role == Role::button || role == Role::textbox || role == Role::slider ||
         role == Role::checkbox || role == Role::select || role == Role::radio;
}

}  // namespace

TEST_SUITE("ui") {
  TEST_CASE("three numbers give an answer") {
    Wizard wizard(kPhone);
    wizard.type("Length overall", "7.6 m");
    wizard.type("Loaded weight", "2300 kg");
    wizard.type("Bow height", "1,1 m");
    CHECK(wizard.app().document().given().boat.length_m.value == rel(7.6, 1e-12));
    CHECK(wizard.app().document().given().boat.bow_height_m.value == rel(1.1, 1e-12));
    CHECK(wizard.get(Role::textbox, "Bow height").value == "1.1 m");
    const thole::ui::SemNode* answer = wizard.app().tree().find("answer");
    REQUIRE(answer != nullptr);
    CHECK(answer->name != "Not evaluated");
  }

  TEST_CASE("feet and inches are understood and give the same design as metres") {
    Wizard feet(kPhone);
    feet.click(Role::radio, "US");
    feet.type("Bow height", "4 ft 5 1/2 in");
    Wizard metres(kPhone);
    metres.type("Bow height", "1.3589 m");
    CHECK(feet.app().document().given().boat.bow_height_m.value ==
          rel(metres.app().document().given().boat.bow_height_m.value, 1e-12));
    CHECK(feet.app().document().design().shaft.length_required_m ==
          rel(metres.app().document().design().shaft.length_required_m, 1e-12));
  }

  TEST_CASE("what cannot be read is named and kept, and the job stays") {
    Wizard wizard(kPhone);
    wizard.type("Length overall", "7.6 m");
    wizard.type("Length overall", "about seven");
    CHECK(wizard.app().document().given().boat.length_m.value == rel(7.6, 1e-12));
    const thole::ui::SemNode& box = wizard.get(Role::textbox, "Length overall");
    CHECK(box.value == "about seven");
    CHECK(box.error != "");
    wizard.type("Length overall", "400 m");
    CHECK(wizard.get(Role::textbox, "Length overall").error.find("between") != std::string::npos);
    wizard.type("Length overall", "8 m");
    CHECK(wizard.get(Role::textbox, "Length overall").error == "");
  }

  TEST_CASE("undo and redo") {
    Wizard wizard(kPhone);
    wizard.type("Length overall", "7.6 m");
    wizard.type("Length overall", "9 m");
    wizard.click(Role::button, "Undo");
    CHECK(wizard.app().document().given().boat.length_m.value == rel(7.6, 1e-12));
    wizard.click(Role::button, "Redo");
    CHECK(wizard.app().document().given().boat.length_m.value == rel(9.0, 1e-12));
    wizard.click(Role::button, "Undo");
    wizard.click(Role::button, "Undo");
    CHECK_FALSE(wizard.app().document().given().boat.length_m.known());
    CHECK(wizard.get(Role::button, "Undo").disabled);
  }

  TEST_CASE("a line does not end inside a number") {
    const auto first_line = [](std::string_view text, std::size_t would_end) {
      const char* const begin = text.data();
      const char* const stop = thole::ui::with_whole_number(begin, begin + would_end, begin + text.size());
      return std::string_view(begin, static_cast<std::size_t>(stop - begin));
    };
    CHECK(first_line("after some 0.3 years", 13) == "after some ");
    CHECK(first_line("after some 0,3 years", 13) == "after some ");
    CHECK(first_line("after all. 3 years", 10) == "after all.");
    CHECK(first_line("in 1990.5 of", 3) == "in ");
    CHECK(first_line("1234.5678", 5) == "1234.");  // no room for it anywhere
    CHECK(first_line("some 0.", 7) == "some 0.");
  }

  TEST_CASE("a held stepper is one step of undo") {
    Wizard wizard(kPhone);
    wizard.type("Bow height", "1.0 m");
    for (int i = 0; i < 5; ++i) wizard.click(Role::button, "More: Bow height");
    CHECK(wizard.app().document().given().boat.bow_height_m.value == rel(1.25, 1e-9));
    wizard.click(Role::button, "Undo");
    CHECK(wizard.app().document().given().boat.bow_height_m.value == rel(1.0, 1e-12));
  }

  TEST_CASE(
      "every page: known fields and outputs, one title, targets a thumb can hit, nothing off the "
      "sheet") {
    for (const thole::ui::Viewport& view : {kPhone, kSmall, kLargeText, kWide}) {
      Wizard wizard(view);
      for (const thole::ui::Page& page : thole::ui::all_pages()) {
        CAPTURE(std::string(page.key));
        CAPTURE(view.width);
        for (const std::string_view path : page.results) {
          CAPTURE(std::string(path));
          CHECK(thole::find_output(path) != nullptr);
        }
        if (!page.headline.empty()) CHECK(thole::find_output(page.headline) != nullptr);
        for (const thole::ui::Group& group : page.groups) {
          for (const std::string_view path : group.fields) {
            CAPTURE(std::string(path));
            CHECK(thole::find_field(path) != nullptr);
          }
        }
        wizard.page(page.key);
        int titles = 0;
        std::set<std::string> ids;
        for (const thole::ui::SemNode& node : wizard.app().tree().nodes()) {
          CAPTURE(node.id);
          CAPTURE(node.name);
          if (node.role == Role::heading && node.level == 1) ++titles;
          if (interactive(node.role)) {
            CHECK_FALSE(node.name.empty());
            CHECK(node.width >= 43.5f);
            CHECK(node.height >= 43.5f);
            CHECK(ids.insert(node.id).second);
          }
          CHECK(node.x >= -0.5f);
          CHECK(node.x + node.width <= view.width + 0.5f);
        }
        CHECK(titles == 1);
      }
    }
  }

  TEST_CASE("every field of the job stands on some page") {
    std::set<std::string> shown{"boat.type", "water.place"};
    for (const thole::ui::Page& page : thole::ui::all_pages()) {
      for (const thole::ui::Group& group : page.groups) {
        for (const std::string_view path : group.fields) shown.insert(std::string(path));
      }
    }
    for (const thole::Field& field : thole::all_fields()) {
      CAPTURE(field.path());
      CHECK(shown.count(field.path()) == 1);
    }
  }

  TEST_CASE("a result opens the step behind it") {
    Wizard wizard(kPhone);
    wizard.page("hold");
    const std::string why = "why.hold.wind_N";
    REQUIRE(wizard.app().tree().find(why) != nullptr);
    wizard.app().act(why, "click", "");
    wizard.settle();
    const thole::ui::SemNode* step = wizard.app().tree().find("step.hold.wind");
    REQUIRE(step != nullptr);
    CHECK(step->name.find("Source: ") != std::string::npos);
  }

  TEST_CASE("a change that mends a check can be applied and undone") {
    Wizard wizard(kPhone);
    const thole::Field& plate = *thole::find_field("mount.plate");
    std::string thinnest;
    double thickness_mm = 1e9;
    for (const thole::PlateStock& stock : wizard.app().document().catalogue().plates) {
      if (stock.thickness_mm < thickness_mm) {
        thickness_mm = stock.thickness_mm;
        thinnest = stock.id;
      }
    }
    wizard.page("mount");
    wizard.app().act(plate.path(), "set", thinnest);
    wizard.settle();
    CHECK(wizard.app().document().design().outcome.fit != thole::Fit::fits);
    wizard.app().act("verdict.open", "click", "");
    wizard.settle();
    std::string apply;
    for (const thole::ui::SemNode& node : wizard.app().tree().nodes()) {
      if (node.id.starts_with("apply.mount.") && apply.empty()) apply = node.id;
    }
    REQUIRE_FALSE(apply.empty());
    const thole::Job before = wizard.app().document().given();
    wizard.app().act(apply, "click", "");
    wizard.settle();
    CHECK_FALSE(wizard.app().document().given() == before);
    wizard.app().act("app", "undo", "");
    wizard.settle();
    CHECK(wizard.app().document().given() == before);
  }

  TEST_CASE("a lithium bank shows no hydrogen figures, a lead-acid one does") {
    Wizard wizard(kPhone);
    wizard.page("bank");
    wizard.pick("Chemistry", "Lithium iron phosphate");
    wizard.page("charge");
    CHECK(wizard.app().tree().find("why.charge.minutes_to_limit_min") == nullptr);
    wizard.page("bank");
    wizard.pick("Chemistry", "Lead-acid, AGM");
    wizard.page("charge");
    const thole::ui::SemNode* minutes = wizard.app().tree().find("why.charge.minutes_to_limit_min");
    REQUIRE(minutes != nullptr);
    CHECK(minutes->name.find(": 0") == std::string::npos);
  }

  TEST_CASE("links: the job comes back; a broken one leaves it alone") {
    Wizard wizard(kPhone);
    wizard.type("Length overall", "9.8 m");
    const std::string link = wizard.app().link();
    Wizard other(kPhone);
    CHECK(other.app().open(link).empty());
    CHECK(other.app().document().given().boat.length_m.value == rel(9.8, 1e-12));
    CHECK_FALSE(other.app().open(link.substr(0, link.size() - 3)).empty());
    CHECK(other.app().document().given().boat.length_m.value == rel(9.8, 1e-12));
    other.settle();
    CHECK(other.text().find("unchanged") != std::string::npos);
  }

  TEST_CASE("the tree is the same wherever the page is scrolled to") {
    Wizard wizard(kPhone);
    wizard.page("feeder");
    const std::string top = wizard.text();
    wizard.view.scroll_y = 900.0f;
    wizard.settle();
    CHECK(wizard.text() == top);
  }

  TEST_CASE("moving through the pages") {
    Wizard wizard(kPhone);
    wizard.click(Role::button, "Next page: Boat");
    CHECK(wizard.app().state().page == "boat");
    CHECK(wizard.app().take_page_turn());
    CHECK_FALSE(wizard.app().take_page_turn());
    wizard.click(Role::button, "Previous page: Quick check");
    wizard.click(Role::button, "Show all checks");
    CHECK(wizard.app().state().page == "checks");
    wizard.click(Role::button, "Back");
    CHECK(wizard.app().state().page == "quick");
  }
}
