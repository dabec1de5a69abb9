// The plate under load on the mount page, by role and name.

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

TEST_SUITE("plate under load") {
  TEST_CASE("each load has its picture, all cases their row; a thinner plate is worked out anew") {
    Wizard wizard({.width = 412.0f, .height = 915.0f});
    wizard.page("mount");
    press(wizard, "mount.The plate under load");
    REQUIRE(wizard.app().tree().find("plate-load") != nullptr);
    const std::string thrust = description_of(wizard, "plate-load");
    CHECK(thrust.find("Full thrust") != std::string::npos);
    for (int i = 0; i < 12; ++i) {
      CAPTURE(i);
      CHECK(wizard.app().tree().find("why.plate.case." + std::to_string(i)) != nullptr);
    }
    press(wizard, "plate.load.person");
    CHECK(description_of(wizard, "plate-load").find("person") != std::string::npos);
    const std::string before = description_of(wizard, "why.plate.case.4");
    wizard.app().act("mount.Plate", "click", "");
    wizard.settle();
    wizard.type("Plate width", "320 mm");
    wizard.settle();
    CHECK(wizard.app().tree().find("plate-load") != nullptr);
    CHECK(description_of(wizard, "why.plate.case.4") != before);
  }

  TEST_CASE("drawing, template and cut file are offered; a plate that cannot be cut has only its drawing") {
    Wizard wizard({.width = 412.0f, .height = 915.0f});
    wizard.page("mount");
    press(wizard, "mount.Drawings to make it by");
    const auto disabled = [&](std::string_view id) {
      const SemNode* node = wizard.app().tree().find(id);
      REQUIRE(node != nullptr);
      return node->disabled;
    };
    for (const char* id : {"show-plate", "show-template-a4", "show-template-letter", "save-dxf-r12", "save-dxf-r2000"}) {
      CAPTURE(id);
      CHECK_FALSE(disabled(id));
    }
    press(wizard, "mount.Bolts");
    wizard.type("Bolt gauge", "210 mm");  // of a plate 220 mm wide: the holes break its edge
    wizard.settle();
    CHECK_FALSE(disabled("show-plate"));
    CHECK(disabled("save-dxf-r12"));
  }
}
