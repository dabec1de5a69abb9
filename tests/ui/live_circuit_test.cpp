// The feeder as a circuit and the six answers on the feeder page, by role and name.

#include <doctest/doctest.h>

#include <string>

#include "ui/studies.h"
#include "wizard.h"

using thole::test::Wizard;
using thole::ui::Role;
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

TEST_SUITE("live circuit") {
  TEST_CASE("the circuit follows the moment chosen and the circuit typed; pieces are listed worst first") {
    Wizard wizard({.width = 412.0f, .height = 915.0f});
    wizard.page("feeder");
    press(wizard, "feeder.The circuit, piece by piece");
    const std::string end = description_of(wizard, "live-circuit");
    CHECK(end.find("W are lost") != std::string::npos);
    CHECK(wizard.app().tree().find("why.circuit.piece.0") != nullptr);
    press(wizard, "circuit.moment.full");
    CHECK(description_of(wizard, "live-circuit") != end);
    press(wizard, "circuit.moment.rest");
    CHECK(description_of(wizard, "live-circuit") != end);
    press(wizard, "circuit.moment.end");
    CHECK(description_of(wizard, "live-circuit") == end);
    wizard.type("The circuit, piece by piece", "lug device 5m:4AWG [bow] motor [back] 5m:4AWG lug; [bow] load:30W [back]");
    wizard.settle();
    CHECK(description_of(wizard, "live-circuit").find("Load") != std::string::npos);
    CHECK(wizard.text().find("the circuit that you typed") != std::string::npos);
    wizard.type("The circuit, piece by piece", "lug 300m:10AWG motor 300m:10AWG lug");
    wizard.settle();
    CHECK(wizard.app().tree().find("live-circuit") == nullptr);
    CHECK(wizard.text().find("limits it most") != std::string::npos);
  }

  TEST_CASE("the same cable: six answers of drop with their temperatures, three practices of ampacity") {
    Wizard wizard({.width = 412.0f, .height = 915.0f});
    wizard.page("feeder");
    press(wizard, "feeder.Same cable, six answers");
    for (const char* id : {"iso", "bare_20", "e11_awg", "tinned_warm", "tinned_75"}) {
      CAPTURE(id);
      CHECK(description_of(wizard, "why.answers.drop." + std::string(id)).find("°C") != std::string::npos);
    }
    for (const char* id : {"cfr", "e11", "iso"}) {
      CAPTURE(id);
      CHECK(wizard.app().tree().find("why.answers.ampacity." + std::string(id)) != nullptr);
      CHECK(wizard.app().tree().find("why.answers.ampacity." + std::string(id) + ".Bundle") != nullptr);
    }
  }
}
