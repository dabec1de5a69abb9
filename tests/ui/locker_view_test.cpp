// Where the bank lives, on the bank page, by role and name.

#include <doctest/doctest.h>

#include <string>

#include "ui/studies.h"
#include "wizard.h"

using thole::test::Wizard;
using thole::ui::Role;
using thole::ui::SemNode;

namespace {

std::string words_of(Wizard& wizard, std::string_view id) {
  const SemNode* node = wizard.app().tree().find(id);
  return node == nullptr ? std::string() : node->name + " " + node->value;
}

void press(Wizard& wizard, std::string_view id) {
  REQUIRE(wizard.app().tree().find(id) != nullptr);
  wizard.app().act(id, "click", "");
  wizard.settle();
}

bool says(Wizard& wizard, std::string_view words) { return wizard.text().find(words) != std::string::npos; }

void measure(Wizard& wizard, std::string_view length, std::string_view width, std::string_view height) {
  wizard.type("Locker length", length);
  wizard.type("Locker width", width);
  wizard.type("Locker height", height);
  wizard.settle();
}

}  // namespace

TEST_SUITE("where the bank lives") {
  TEST_CASE("not measured: says which; measured: a plan with jumpers; too small: says by how much, and fails") {
    Wizard wizard({.width = 412.0f, .height = 915.0f});
    wizard.page("bank");
    press(wizard, "bank.Into the locker");
    CHECK(says(wizard, "Not measured yet: Locker length, Locker width, Locker height"));
    CHECK(wizard.app().tree().find("locker-plan") == nullptr);
    wizard.type("Locker length", "1500 mm");
    wizard.settle();
    CHECK(says(wizard, "Not measured yet: Locker width, Locker height"));
    measure(wizard, "2500 mm", "1000 mm", "400 mm");
    REQUIRE(wizard.app().tree().find("locker-plan") != nullptr);
    CHECK(words_of(wizard, "locker-plan").find("upright in a locker of") != std::string::npos);
    const thole::Design& design = wizard.app().document().design();
    CHECK(design.locker.measured);
    CHECK(design.locker.fits);
    REQUIRE(wizard.app().tree().find("check.locker.jumper_each") != nullptr);
    measure(wizard, "300 mm", "200 mm", "250 mm");
    CHECK_FALSE(design.locker.fits);
    CHECK(says(wizard, "mm too "));
    REQUIRE(design.find_check("locker.fit") != nullptr);
    CHECK(design.find_check("locker.fit")->verdict() == thole::Verdict::fail);
  }

  TEST_CASE("a longer jumper than the feeder counts on offers the length that the blocks need") {
    Wizard wizard({.width = 412.0f, .height = 915.0f});
    wizard.page("feeder");
    press(wizard, "feeder.Jumpers and joints");
    wizard.type("Jumper between blocks", "50 mm");
    wizard.settle();
    wizard.page("bank");
    press(wizard, "bank.Into the locker");
    measure(wizard, "2500 mm", "1000 mm", "400 mm");
    press(wizard, "apply.locker.jumper_each.0");
    CHECK(wizard.app().document().design().job.feeder.jumper_m.value > 0.08);
    CHECK(wizard.app().tree().find("apply.locker.jumper_each.0") == nullptr);
  }

  TEST_CASE("leave to lie on their sides gives a second way, and choosing it changes the picture") {
    Wizard wizard({.width = 412.0f, .height = 915.0f});
    wizard.page("bank");
    press(wizard, "bank.Into the locker");
    measure(wizard, "2500 mm", "1000 mm", "800 mm");
    wizard.click(Role::checkbox, "Blocks may lie on their sides");
    wizard.settle();
    REQUIRE(wizard.app().tree().find("locker.lie.1") != nullptr);
    const std::string first = words_of(wizard, "locker-plan");
    press(wizard, "locker.lie.1");
    CHECK(words_of(wizard, "locker-plan") != first);
  }

  TEST_CASE("what is near: open checks say so and do not fail the job; a tank above does") {
    Wizard wizard({.width = 412.0f, .height = 915.0f});
    wizard.page("bank");
    press(wizard, "bank.Near the bank");
    CHECK(words_of(wizard, "why.open.locker.bilge").find("not measured yet") != std::string::npos);
    CHECK(words_of(wizard, "why.open.locker.fuel_part").find("not measured yet: at least") != std::string::npos);
    const thole::Design& design = wizard.app().document().design();
    CHECK(design.find_check("locker.tank") == nullptr);
    wizard.click(Role::checkbox, "Fuel tank, filter or fitting straight above or below");
    wizard.settle();
    REQUIRE(design.find_check("locker.tank") != nullptr);
    CHECK(design.find_check("locker.tank")->verdict() == thole::Verdict::fail);
  }

  TEST_CASE("held down: the rules stand side by side, the one that counts says so") {
    Wizard wizard({.width = 320.0f, .height = 640.0f});
    wizard.page("bank");
    press(wizard, "bank.Held down");
    CHECK(says(wizard, "33 CFR 183.420"));
    CHECK(says(wizard, "ISO 10133"));
    CHECK(says(wizard, ": counts"));
    CHECK(says(wizard, "Straps over each block"));
  }
}
