// The shaft page below its fields, by role and name.

#include <doctest/doctest.h>

#include <string>

#include "base/number.h"
#include "calc/snag_study.h"
#include "ui/studies.h"
#include "wizard.h"

using thole::test::Wizard;
using thole::ui::SemNode;

namespace {

std::string described(Wizard& wizard, std::string_view id) {
  const SemNode* node = wizard.app().tree().find(id);
  return node == nullptr ? std::string() : node->name + " " + node->value;
}

void press(Wizard& wizard, std::string_view id) {
  REQUIRE(wizard.app().tree().find(id) != nullptr);
  wizard.app().act(id, "click", "");
  wizard.settle();
}

}  // namespace

TEST_SUITE("foredeck page") {
  TEST_CASE("length, tube and snag have their pictures and rows; a higher bow is worked out anew") {
    Wizard wizard({.width = 412.0f, .height = 915.0f});
    wizard.page("shaft");
    press(wizard, "shaft.Thrust against length");
    const std::string before = described(wizard, "length-curve");
    CHECK(before.find("needed") != std::string::npos);
    press(wizard, "shaft.The tube");
    CHECK(described(wizard, "tube-bend").find("tilts") != std::string::npos);
    press(wizard, "shaft.In a snag");
    CHECK(wizard.app().tree().find("why.snag.0") != nullptr);
    const thole::SnagStudy snag = thole::snag_study(wizard.app().document().design());
    CHECK(snag.over_ratio > 0.0);
    CHECK(wizard.text().find("hold " + thole::fixed(snag.over_ratio, 2) + " times what the shaft does; 1.2 times is asked") != std::string::npos);
    wizard.type("Bow height", "1.9 m");
    wizard.settle();
    CHECK(described(wizard, "length-curve") != before);
  }

  TEST_CASE("unmeasured, the deck's checks stay open; measured, the nearest thing is named with its distance") {
    Wizard wizard({.width = 320.0f, .height = 700.0f});
    wizard.page("shaft");
    press(wizard, "shaft.Room on the foredeck");
    REQUIRE(wizard.app().tree().find("foredeck-plan") != nullptr);
    CHECK(described(wizard, "foredeck-plan").find("not measured") != std::string::npos);
    wizard.type("Mount aft of the stem", "-0.3 m");
    wizard.type("Mount to starboard", "0 m");
    wizard.type("What stands on it", "cleat@0.8,-0.45:0.2x0.06x0.08");
    wizard.settle();
    CHECK(described(wizard, "foredeck-plan").find("cleat") != std::string::npos);
    CHECK(described(wizard, "foredeck-side").find("cleat") != std::string::npos);
  }

  TEST_CASE("light and stowing name what is asked for; the elevation is drawn") {
    Wizard wizard({.width = 1280.0f, .height = 900.0f});
    wizard.page("shaft");
    press(wizard, "shaft.The bow light");
    CHECK(wizard.text().find("under way, not at anchor") != std::string::npos);
    press(wizard, "shaft.Stowing it");
    CHECK(wizard.text().find("Switch the motor off") != std::string::npos);
    press(wizard, "shaft.The bow from the side");
    CHECK(described(wizard, "bow-elevation").find("above calm water") != std::string::npos);
  }
}
