// The ways to charge on their page, by role and name.

#include <doctest/doctest.h>

#include <string>

#include "ui/studies.h"
#include "wizard.h"

using thole::test::Wizard;
using thole::ui::SemNode;

namespace {

std::string description_of(Wizard& wizard, std::string_view id) {
  const SemNode* node = wizard.app().tree().find(id);
  return node == nullptr ? std::string() : node->name + " " + node->value;
}

void press(Wizard& wizard, std::string_view id) {
  REQUIRE(wizard.app().tree().find(id) != nullptr);
  wizard.app().act(id, "click", "");
  wizard.settle();
}

}  // namespace

TEST_SUITE("ways to charge") {
  TEST_CASE("each way answers below its fields, and anew when they change") {
    Wizard wizard({.width = 412.0f, .height = 915.0f});
    wizard.page("charge");
    press(wizard, "charge.Tonight on shore");
    REQUIRE(wizard.app().tree().find("charge-curve") != nullptr);
    CHECK(description_of(wizard, "charge-curve").find("absorption") != std::string::npos);
    const std::string before = description_of(wizard, "why.charge.night.shore_A");
    wizard.type("Breaker of the shore outlet", "6 A");
    wizard.type("Other loads on that outlet", "4 A");
    wizard.settle();
    CHECK(description_of(wizard, "why.charge.night.shore_A") != before);

    press(wizard, "charge.Openings and fan");
    CHECK(wizard.app().tree().find("vent-plan") != nullptr);

    press(wizard, "charge.Under way, from the engine");
    CHECK(description_of(wizard, "why.charge.engine.converter_A").find("Largest") != std::string::npos);
    wizard.type("Converter from the engine's side", "10 A");
    wizard.settle();
    CHECK(description_of(wizard, "why.charge.engine.converter_A").find("Largest") == std::string::npos);

    press(wizard, "charge.By the sun");
    CHECK(wizard.app().tree().find("why.charge.sun.panel_least_W") != nullptr);
  }
}
