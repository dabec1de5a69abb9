// The control page: picture, headline, the heading sensor's plan, a link and its checks.

#include <doctest/doctest.h>

#include <string>

#include "ui/studies.h"
#include "wizard.h"

using thole::test::Wizard;
using thole::ui::SemNode;

namespace {

void press(Wizard& wizard, std::string_view id) {
  REQUIRE(wizard.app().tree().find(id) != nullptr);
  wizard.app().act(id, "click", "");
  wizard.settle();
}

std::string said_of(Wizard& wizard, std::string_view id) {
  const SemNode* node = wizard.app().tree().find(id);
  return node == nullptr ? std::string() : node->name + " " + node->value;
}

}  // namespace

TEST_SUITE("control page") {
  TEST_CASE("it has a picture, and the plan only while its group is open") {
    Wizard wizard({.width = 412.0f, .height = 915.0f});
    wizard.page("control");
    CHECK(said_of(wizard, "picture").find("heading sensor") != std::string::npos);
    CHECK(wizard.app().tree().find("heading-plan") == nullptr);
    press(wizard, "control.Heading sensor");
    REQUIRE(wizard.app().tree().find("heading-plan") != nullptr);
    CHECK(said_of(wizard, "heading-plan").find("limit") != std::string::npos);
    CHECK(wizard.app().tree().find("check.control.heading") != nullptr);
  }

  TEST_CASE("wires far apart under the sensor fail there, and a press mends it") {
    Wizard wizard({.width = 412.0f, .height = 915.0f});
    wizard.page("control");
    press(wizard, "control.The feeder's way past it");
    wizard.type("Conductors apart", "400 mm");
    wizard.type("Feeder to starboard", "0 m");
    wizard.settle();
    press(wizard, "control.Heading sensor");
    CHECK(said_of(wizard, "check.control.heading").find("fails") != std::string::npos);
    CHECK(wizard.text().find("Keep the two cables touching") != std::string::npos);
  }

  TEST_CASE("a network's checks appear with it") {
    Wizard wizard({.width = 412.0f, .height = 915.0f});
    wizard.page("control");
    wizard.app().act("checks.control", "click", "");
    wizard.settle();
    CHECK(wizard.text().find("Backbone, end to end") == std::string::npos);
    wizard.click(thole::ui::Role::radio, "Marine network, five wires");
    wizard.settle();
    CHECK(wizard.text().find("Backbone, end to end") != std::string::npos);
    CHECK(said_of(wizard, "picture").find("network") != std::string::npos);
  }

  TEST_CASE("a receiver on the feeder is told to move, and a press raises it") {
    Wizard wizard({.width = 412.0f, .height = 915.0f});
    wizard.page("control");
    wizard.app().act("checks.control", "click", "");
    wizard.settle();
    CHECK(wizard.text().find("Receiver clear of the feeder") == std::string::npos);
    press(wizard, "control.Position receiver");
    press(wizard, "control.The feeder's way past it");
    wizard.type("Feeder to starboard", "0 m");
    wizard.type("Feeder above the water", "0.9 m");
    wizard.type("Receiver above the water", "1 m");
    wizard.settle();
    CHECK(wizard.text().find("Receiver clear of the feeder") != std::string::npos);
    CHECK(said_of(wizard, "check.control.receiver_gap").find("fails") != std::string::npos);
  }
}
