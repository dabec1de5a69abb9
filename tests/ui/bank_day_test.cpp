// The bank's day on its page, by role and name.

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

TEST_SUITE("bank over the day") {
  TEST_CASE("is run when its group is opened, scrubbed, and run anew when a block is named") {
    Wizard wizard({.width = 412.0f, .height = 915.0f});
    wizard.page("bank");
    CHECK(wizard.app().tree().find("bank-day") == nullptr);
    press(wizard, "bank.The day, hour by hour");
    REQUIRE(wizard.app().tree().find("bank-day") != nullptr);
    REQUIRE(wizard.app().tree().find("wind-hours") != nullptr);
    CHECK(description_of(wizard, "wind-hours").find("wind") != std::string::npos);
    CHECK(wizard.app().tree().find("why.bank-day.block.0") == nullptr);
    const std::string before = description_of(wizard, "why.bank-day.left");
    wizard.app().act("bank-day.at", "set", "60");
    wizard.settle();
    CHECK(description_of(wizard, "why.bank-day.left") != before);
    press(wizard, "bank.Blocks in the boat, and their years");
    wizard.type("Blocks one by one", "100Ah 2y, 100Ah 2y, 60Ah 7y");
    wizard.settle();
    REQUIRE(wizard.app().tree().find("why.bank-day.block.0") != nullptr);
    CHECK(wizard.text().find("60 Ah") != std::string::npos);
  }
}
