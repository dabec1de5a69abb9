// Load cases on the mount page.

#include <doctest/doctest.h>

#include <string>

#include "wizard.h"

using thole::test::Wizard;
using thole::ui::SemNode;

TEST_SUITE("loads") {
  TEST_CASE("both speed limits, the cases and the formulas are there; a person's weight is among them") {
    Wizard wizard({.width = 320.0f, .height = 700.0f, .text_scale = 2.0f});
    wizard.page("mount");
    REQUIRE(wizard.app().tree().find("mount.Loads") != nullptr);
    wizard.app().act("mount.Loads", "click", "");
    wizard.settle();
    for (const char* id : {"why.loads.stowed", "why.loads.deployed", "load-bars", "why.load.slam", "why.load.person.step",
                           "why.load.snag", "why.slam-formula.0", "why.slam-formula.3", "why.sea-speed.0"}) {
      CAPTURE(id);
      CHECK(wizard.app().tree().find(id) != nullptr);
    }
    const SemNode* bars = wizard.app().tree().find("load-bars");
    CHECK((bars->name + bars->value + bars->description).find("Full thrust") != std::string::npos);
  }
}
