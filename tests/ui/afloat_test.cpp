// The trim page: the bank on a slider, each weight's share, tests at the dock.

#include <doctest/doctest.h>

#include <string>

#include "wizard.h"

using thole::test::Wizard;
using thole::ui::Role;
using thole::ui::SemNode;

namespace {

std::string described(Wizard& wizard, std::string_view id) {
  const SemNode* node = wizard.app().tree().find(id);
  return node == nullptr ? std::string() : node->name + " " + node->value + " " + node->description;
}

void press(Wizard& wizard, std::string_view id) {
  REQUIRE(wizard.app().tree().find(id) != nullptr);
  wizard.app().act(id, "click", "");
  wizard.settle();
}

}  // namespace

TEST_SUITE("boat afloat") {
  TEST_CASE("the slider stands within the first phone screen with the picture, and moves the boat") {
    Wizard wizard({.width = 412.0f, .height = 915.0f});
    wizard.page("trim");
    const SemNode* slider = wizard.app().tree().find("trim.bank_x_m.slider");
    REQUIRE(slider != nullptr);
    CHECK(slider->role == Role::slider);
    CHECK(slider->height >= 44.0f);
    const SemNode* picture = wizard.app().tree().find("picture");
    REQUIRE(picture != nullptr);
    CHECK(slider->y >= picture->y + picture->height);
    CHECK(slider->y + slider->height < 600.0f);
    const std::string before = described(wizard, "picture");
    wizard.app().act("trim.bank_x_m.slider", "set", "1");
    wizard.settle();
    CHECK(described(wizard, "picture") != before);
    CHECK(wizard.app().tree().find("trim.bank_x_m.slider")->value == "1");
    wizard.app().act("trim.bank_x_m.slider", "set", "nowhere");
    wizard.settle();
    CHECK(wizard.app().tree().find("trim.bank_x_m.slider")->value == "1");
    wizard.app().act("trim.bank_x_m.slider", "set", "999");
    wizard.settle();
    CHECK(std::stod(wizard.app().tree().find("trim.bank_x_m.slider")->value) < 14.0);
  }

  TEST_CASE("each thing has its share, and the roll test goes into the job") {
    Wizard wizard({.width = 320.0f, .height = 700.0f, .text_scale = 2.0f});
    wizard.page("trim");
    press(wizard, "trim.What each thing does");
    for (int i = 0; i < 4; ++i) {
      CAPTURE(i);
      CHECK(described(wizard, "why.share." + std::to_string(i)).find("bow") != std::string::npos);
    }
    press(wizard, "trim.Roll test");
    CHECK(wizard.text().find("Not measured yet") != std::string::npos);
    wizard.type("Roll period", "2 s");
    wizard.settle();
    CHECK(described(wizard, "why.roll-test.gm").find("±") != std::string::npos);
    press(wizard, "roll-test.use");
    CHECK(wizard.has(Role::button, "This figure is in use"));
    press(wizard, "trim.Heights");
    CHECK(described(wizard, "list-picture").find("list") != std::string::npos);
    press(wizard, "trim.The capacity plate");
    wizard.type("Persons on the capacity plate", "6");
    wizard.settle();
    CHECK(described(wizard, "why.plate.persons").find("left") != std::string::npos);
  }
}
