// A day planned in stretches: read, refused, and handed on to the bank.

#include <doctest/doctest.h>

#include <cmath>
#include <string>

#include "base/units.h"
#include "calc/design.h"
#include "data/day_plan.h"
#include "io/job_json.h"
#include "io/presets.h"
#include "support.h"

using namespace thole;

namespace {

Design planned(const std::string& day) {
  Job job;
  if (!day.empty()) job.hold.day = {day, Origin::given};
  return evaluate(job, default_catalogue());
}

}  // namespace

TEST_SUITE("derived") {
  TEST_CASE("a day plan is read in knots, metres a second and percent") {
    const DayPlanRead read = read_day_plan(" 2h@8kn 1.5@6m/s  0.5h@50%");
    REQUIRE(read.message.empty());
    REQUIRE(read.stretches.size() == 3);
    CHECK(read.stretches[0].duration_h == 2.0);
    CHECK(read.stretches[0].wind_mps == rel(mps_from_kn(8.0), 1e-12));
    CHECK(read.stretches[1].wind_mps == 6.0);
    CHECK(read.stretches[2].creeping);
    CHECK(read.stretches[2].thrust_frac == rel(0.5, 1e-12));
  }

  TEST_CASE("a day plan that cannot be is refused with a sentence, and the day's hours count instead") {
    for (const char* text : {"", "2h", "2h@", "@8kn", "2h@8", "2h@8mph", "-1h@8kn", "0h@8kn", "2h@80kn",
                             "2h@120%", "20h@8kn 5h@8kn", "nan@8kn", "2h@nankn", "2h@8kn,1h@8kn"}) {
      CAPTURE(text);
      CHECK(read_day_plan(text).message.ends_with("."));
    }
    std::string many;
    for (int i = 0; i < 25; ++i) many += "0.1h@8kn ";
    CHECK_FALSE(read_day_plan(many).message.empty());
    const Design design = planned("2h@80kn");
    bool named = false;
    for (const Issue& issue : design.issues) named = named || issue.field == "hold.day";
    CHECK(named);
    CHECK(design.hold.energy_Wh == planned("").hold.energy_Wh);
  }

  TEST_CASE("the bank gets the plan's mean, its hours and its current") {
    const Design light = planned("2h@6kn 0.5h@40%");
    const Design long_day = planned("4h@6kn 1h@40%");
    const Design windy = planned("2h@14kn 0.5h@40%");
    CHECK(light.hold.hours_on_h == rel(2.5, 1e-12));
    CHECK(light.hold.holding_h == rel(2.0, 1e-12));
    // Twice the hours of the same: twice the energy, the same currents.
    CHECK(long_day.hold.energy_Wh == rel(2.0 * light.hold.energy_Wh, 1e-9));
    CHECK(long_day.hold.day_rms_A == rel(light.hold.day_rms_A, 1e-9));
    CHECK(windy.hold.energy_Wh > light.hold.energy_Wh);
    CHECK(windy.hold.day_rms_A > light.hold.day_rms_A);
    CHECK(windy.hold.day_peak_A >= windy.hold.day_rms_A);
    // A mean current heats no more than the r.m.s. one does.
    const double mean_A =
        light.hold.energy_Wh / light.hold.hours_on_h / light.hold.motor.nominal_V;
    CHECK(light.hold.day_rms_A >= mean_A * (1.0 - 1e-12));
    const Step* energy = light.find_step("hold.energy");
    REQUIRE(energy != nullptr);
    CHECK(energy->value == light.hold.energy_Wh);
  }
}
