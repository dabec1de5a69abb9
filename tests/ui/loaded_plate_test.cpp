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

// The load case of this label.
std::string row_of(Wizard& wizard, std::string_view label) {
  for (int i = 0; i < 40; ++i) {
    const std::string row = description_of(wizard, "why.plate.case." + std::to_string(i));
    if (row.find(label) != std::string::npos) return row;
  }
  FAIL("no such load case");
  return {};
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
    CHECK(description_of(wizard, "plate-load").find("its bending drawn ") != std::string::npos);
    // All loads, one after the other, and back to the kinds of load.
    bool snagged = false;
    for (int i = 0; i < 40 && !snagged; ++i) {
      press(wizard, "plate.load.after");
      snagged = description_of(wizard, "plate-load").find("caught from the side") != std::string::npos;
    }
    CHECK(snagged);
    press(wizard, "plate.load.before");
    CHECK(description_of(wizard, "plate-load").find("caught from the side") == std::string::npos);
    press(wizard, "plate.load.person");
    CHECK(description_of(wizard, "plate-load").find("person") != std::string::npos);
    press(wizard, "plate.bend.true");
    CHECK(description_of(wizard, "plate-load").find("from the side, bent to scale.") != std::string::npos);
    press(wizard, "plate.bend.more");
    CHECK(description_of(wizard, "plate-load").find("times.") != std::string::npos);
    const std::string before = row_of(wizard, "A person steps");
    wizard.app().act("mount.Plate", "click", "");
    wizard.settle();
    wizard.type("Plate width", "320 mm");
    wizard.settle();
    CHECK(wizard.app().tree().find("plate-load") != nullptr);
    CHECK(row_of(wizard, "A person steps") != before);
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
    for (const char* id : {"show-plate", "show-template-a4", "show-template-letter", "show-elevation-a4", "show-elevation-letter", "save-dxf-r12", "save-dxf-r2000"}) {
      CAPTURE(id);
      CHECK_FALSE(disabled(id));
    }
    press(wizard, "mount.Bolts");
    wizard.type("Bolt gauge", "210 mm");  // of a plate 220 mm wide: the holes break its edge
    wizard.settle();
    CHECK_FALSE(disabled("show-plate"));
    CHECK(disabled("save-dxf-r12"));
  }

  TEST_CASE("a bolt is moved by finger and by button, and goes back to the grid") {
    Wizard wizard({.width = 412.0f, .height = 915.0f});
    wizard.page("mount");
    press(wizard, "mount.The plate under load");
    REQUIRE(wizard.app().tree().find("plate.hole.0") != nullptr);
    CHECK_FALSE(wizard.app().document().given().mount.bolt_places.known());
    const std::string before = wizard.app().tree().find("plate.hole.0")->value;
    wizard.app().act("plate.hole.0", "drag", "20 0");
    wizard.settle();
    CHECK_FALSE(wizard.app().document().given().mount.bolt_places.known());  // not before it is let go
    wizard.app().act("plate.hole.0", "drop", "");
    wizard.settle();
    CHECK(wizard.app().document().given().mount.bolt_places.known());
    CHECK(wizard.app().tree().find("plate.hole.0")->value != before);
    const std::string moved = wizard.app().document().given().mount.bolt_places.value;
    press(wizard, "plate.bolt.fore");
    CHECK(wizard.app().document().given().mount.bolt_places.value != moved);
    press(wizard, "plate.bolt.grid");
    CHECK_FALSE(wizard.app().document().given().mount.bolt_places.known());
    CHECK(wizard.app().tree().find("plate.hole.0")->value == before);
    wizard.app().act("plate.probe", "set", "100");
    wizard.settle();
    CHECK(wizard.app().tree().find("plate.probe")->value == "100");
  }

  TEST_CASE("metals that meet and what the joint is bedded in have their rows") {
    Wizard wizard({.width = 412.0f, .height = 915.0f});
    wizard.page("mount");
    press(wizard, "mount.Metal on metal, road");
    CHECK(description_of(wizard, "why.joint.bolts-plate").find("kept apart") != std::string::npos);
    CHECK(description_of(wizard, "why.joint.bed.deck").find("polysulfide") != std::string::npos);
    CHECK(wizard.text().find("Kept apart by") != std::string::npos);
  }

  TEST_CASE("every stock is tried, and the one that serves is taken") {
    Wizard wizard({.width = 412.0f, .height = 915.0f});
    wizard.page("mount");
    press(wizard, "mount.Which plate serves");
    press(wizard, "stock.start");
    for (int i = 0; i < 60; ++i) wizard.frame();
    const bool found = wizard.app().tree().find("stock.take") != nullptr;
    const bool none = wizard.text().find("None does") != std::string::npos;
    CHECK(found != none);
  }

  TEST_CASE("a flex test asks for what is missing, then says what the deck is") {
    Wizard wizard({.width = 412.0f, .height = 915.0f});
    wizard.page("mount");
    press(wizard, "mount.A flex test");
    CHECK(wizard.text().find("known weight") != std::string::npos);
    wizard.type("Hung on in the flex test", "40 kg");
    wizard.type("Forward of the front bolts", "200 mm");
    wizard.type("Sag measured", "99 mm");
    wizard.settle();
    CHECK(wizard.text().find("No deck is so soft") != std::string::npos);
  }
}
