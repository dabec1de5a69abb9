// The hold page's questions that take longer than a frame: asked, waited for, answered, by role and
// name.

#include <doctest/doctest.h>

#include <string>

#include "io/link.h"
#include "job/fields.h"
#include "ui/studies.h"
#include "wizard.h"

using thole::test::Wizard;
using thole::ui::Role;
using thole::ui::SemNode;

namespace {

const thole::ui::Viewport kPhone{.width = 412.0f, .height = 915.0f};

// By its id, and only the frame that takes it: what it sets off is under way then.
void press(Wizard& wizard, std::string_view id) {
  REQUIRE(wizard.app().tree().find(id) != nullptr);
  wizard.app().act(id, "click", "");
  wizard.frame();
  wizard.frame();
}

void open_hold(Wizard& wizard, const std::string& group) {
  wizard.page("hold");
  press(wizard, "hold." + group);
}

// Frames until the element is there, at most so many.
bool appears(Wizard& wizard, std::string_view id, int frames = 3000) {
  for (int i = 0; i < frames; ++i) {
    if (wizard.app().tree().find(id) != nullptr) return true;
    wizard.frame();
  }
  return false;
}

std::string name_of(Wizard& wizard, std::string_view id) {
  const SemNode* node = wizard.app().tree().find(id);
  return node == nullptr ? std::string() : node->name;
}

}  // namespace

TEST_SUITE("hold studies") {
  TEST_CASE("an hour is simulated in slices, with progress, and can be played") {
    Wizard wizard(kPhone);
    open_hold(wizard, "How still: an hour of it");
    press(wizard, "hour.start");
    const SemNode* progress = wizard.app().tree().find("hour.running");
    REQUIRE(progress != nullptr);
    CHECK(progress->role == Role::progress);
    CHECK(std::stod(progress->value) < 100.0);
    REQUIRE(appears(wizard, "footprint"));
    wizard.settle();
    CHECK(name_of(wizard, "footprint").find("for 95 % (solid)") != std::string::npos);
    CHECK(name_of(wizard, "why.hour.most").starts_with("Within, 95 % of the time: "));
    CHECK(name_of(wizard, "thrust-history").starts_with("Thrust over the time"));

    // At its end at first; played, it starts over, and comes to rest there again.
    const SemNode* moment = wizard.app().tree().find("hour.at");
    REQUIRE(moment != nullptr);
    const double end_min = moment->max;
    CHECK(std::stod(moment->value) == doctest::Approx(end_min).epsilon(1e-4));
    press(wizard, "hour.play");
    CHECK(std::stod(wizard.app().tree().find("hour.at")->value) < 0.1 * end_min);
    CHECK(wizard.has(Role::button, "Pause"));
    wizard.app().act("hour.at", "set", "12");
    wizard.settle();
    CHECK(std::stod(wizard.app().tree().find("hour.at")->value) == doctest::Approx(12.0));
    CHECK(wizard.has(Role::button, "Play it"));
    // For somebody listening the picture's words stay while it plays; the slider says the moment.
    CHECK(wizard.app().tree().find("hour.at")->unit == "12.0 min");
  }

  TEST_CASE("another hour has other gusts; the first seed gives what the command line gives") {
    Wizard wizard(kPhone);
    open_hold(wizard, "How still: an hour of it");
    press(wizard, "hour.start");
    REQUIRE(appears(wizard, "footprint"));
    const std::string first = name_of(wizard, "footprint");
    thole::HoldRunInput in = thole::hold_run_input(wizard.app().document().design());
    const thole::HoldRun run = thole::simulate_hold(in);
    const thole::ui::WatchedHour& hour = wizard.app().state().studies->hour;
    CHECK(hour.run->statistics.radius_95_m == run.statistics.radius_95_m);
    press(wizard, "hour.again");
    REQUIRE(appears(wizard, "hour.running"));
    REQUIRE(appears(wizard, "footprint"));
    CHECK(name_of(wizard, "footprint") != first);
  }

  TEST_CASE("a changed design makes the hour stale, and stopping leaves nothing behind") {
    Wizard wizard(kPhone);
    open_hold(wizard, "How still: an hour of it");
    press(wizard, "hour.start");
    REQUIRE(appears(wizard, "footprint"));
    wizard.type("Near enough", "2 m");
    wizard.settle();
    CHECK(wizard.text().find("The design has changed since this was") != std::string::npos);
    press(wizard, "hour.start");
    REQUIRE(appears(wizard, "hour.stop"));
    press(wizard, "hour.stop");
    wizard.settle();
    CHECK(wizard.has(Role::button, "Simulate it"));
    CHECK(wizard.app().tree().find("hour.running") == nullptr);
  }

  TEST_CASE("the margin for one's own tolerance stands beside the rules'") {
    Wizard wizard(kPhone);
    open_hold(wizard, "How still: an hour of it");
    press(wizard, "hour.start");
    REQUIRE(appears(wizard, "hour.margin"));
    press(wizard, "hour.margin");
    REQUIRE(appears(wizard, "hour.searching"));
    REQUIRE(appears(wizard, "why.margin.found"));
    const thole::ui::WatchedHour& hour = wizard.app().state().studies->hour;
    const thole::RequiredMargin whole = thole::required_margin(hour.input, hour.mean_load_N);
    CHECK(hour.required->found == whole.found);
    CHECK(hour.required->margin_factor == whole.margin_factor);
    CHECK(name_of(wizard, "why.margin.firm") == "Rule, holds firm: 1.60");
  }

  TEST_CASE("limits from every side, headings and loads stand as rows") {
    Wizard wizard(kPhone);
    open_hold(wizard, "Limits from every side");
    CHECK(name_of(wizard, "why.limit.0").find("wind, ") != std::string::npos);
    CHECK(name_of(wizard, "why.limit.180").find("current") != std::string::npos);
    CHECK(name_of(wizard, "why.load.90").starts_with("From 90°: "));
    CHECK(name_of(wizard, "why.balance.0").find("off the wind") != std::string::npos);
  }

  TEST_CASE("what moves the answer most is ranked a value to a frame") {
    Wizard wizard(kPhone);
    open_hold(wizard, "What moves the answer most");
    REQUIRE(appears(wizard, "tornado"));
    wizard.settle();
    const thole::SensitivityResult whole = thole::sensitivity(
        wizard.app().document().given(), wizard.app().document().catalogue(), {});
    REQUIRE(!whole.swings.empty());
    const thole::Field* widest = thole::find_field(whole.swings.front().field);
    REQUIRE(widest != nullptr);
    CHECK(name_of(wizard, "tornado").find(std::string(widest->label)) != std::string::npos);
    wizard.app().act("ranked.bank.endurance_h", "click", "");
    wizard.frame();
    REQUIRE(appears(wizard, "tornado"));
    CHECK(wizard.app().state().studies->ranked.output == 1);
  }

  TEST_CASE("a trial at sea is typed in, fitted, used, undone, and travels in the link") {
    Wizard wizard(kPhone);
    open_hold(wizard, "A trial at sea");
    CHECK(wizard.text().find("Still missing") != std::string::npos);
    wizard.type("Wind in the trial", "6 m/s");
    wizard.settle();
    wizard.type("Minutes adrift", "8");
    wizard.settle();
    wizard.type("Drift over the ground", "0.35 m/s");
    wizard.settle();
    wizard.type("Thrust shown while holding", "30 %");
    wizard.settle();
    REQUIRE(appears(wizard, "trial-bands", 5));
    CHECK(name_of(wizard, "trial-bands").find("Wind load ") != std::string::npos);
    const thole::Given<double> before = wizard.app().document().design().job.hold.windage_factor;
    wizard.click(Role::button, "Use these factors");
    wizard.settle();
    const thole::Given<double> after = wizard.app().document().design().job.hold.windage_factor;
    CHECK(after.given());
    CHECK(after.value != before.value);
    CHECK(wizard.has(Role::button, "These factors are in use"));
    const thole::LinkRead read = thole::read_link(wizard.app().link());
    CHECK(read.job.hold.drift_mps.value == doctest::Approx(0.35));
    CHECK(read.job.hold.held_thrust_frac.value == doctest::Approx(0.3));
    wizard.app().act("app", "undo", "");
    wizard.settle();
    CHECK_FALSE(wizard.app().document().design().job.hold.windage_factor.given());
  }

  TEST_CASE("a quarter of an hour, four hours, and how fast they play, can be chosen") {
    Wizard wizard(kPhone);
    open_hold(wizard, "How still: an hour of it");
    press(wizard, "hour.length.quarter");
    press(wizard, "hour.start");
    REQUIRE(appears(wizard, "footprint"));
    const double quarter_min = wizard.app().tree().find("hour.at")->max;
    CHECK(quarter_min == doctest::Approx(15.0).epsilon(0.01));
    press(wizard, "hour.pace.slow");
    wizard.app().act("hour.at", "set", "0");
    wizard.settle();
    press(wizard, "hour.play");
    for (int i = 0; i < 60; ++i) wizard.frame();  // a second at ten times
    const double slow_min = wizard.app().state().studies->hour.at_s / 60.0;
    CHECK(slow_min > 0.1);
    CHECK(slow_min < 0.25);
  }

  TEST_CASE("weather beyond any motor, and calm: each has its words") {
    for (const char* wind : {"0 kn", "100 kn"}) {
      CAPTURE(wind);
      Wizard wizard(kPhone);
      wizard.page("water");
      wizard.type("Wind to hold in", wind);
      wizard.settle();
      open_hold(wizard, "How still: an hour of it");
      press(wizard, "hour.start");
      CHECK(appears(wizard, "footprint"));
      wizard.settle();
      press(wizard, "hold.Limits from every side");
      press(wizard, "hold.What moves the answer most");
      for (int i = 0; i < 80; ++i) wizard.frame();
      CHECK(wizard.text().find("nan") == std::string::npos);
      CHECK(wizard.text().find("inf ") == std::string::npos);
    }
  }
}
