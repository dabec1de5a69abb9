// Hulls and weather that contradict themselves: each gets figures and, where it can be told, a note
// that names the field.

#include <algorithm>
#include <cmath>
#include <string>
#include <string_view>

#include "base/units.h"
#include "calc/design.h"
#include "io/job_json.h"
#include "io/link.h"
#include "io/presets.h"
#include "support.h"

using namespace thole;

namespace {

std::string document(std::string_view boat, std::string_view water) {
  return R"({"schema": 1, "boat": {"length_m": 7.6)" + std::string(boat) +
         R"(}, "water": {"exposure": "open")" + std::string(water) + "}}";
}

const Check* margin_of(const Design& design) {
  for (const Check& check : design.hold.trace.checks) {
    if (check.id == "hold.margin") return &check;
  }
  return nullptr;
}

bool notes(const HoldResult& hold, std::string_view field) {
  return std::any_of(hold.trace.assumptions.begin(), hold.trace.assumptions.end(),
                     [&](const auto& note) { return note.field == field; });
}

void check_figures(const Design& design) {
  for (const Step& step : design.hold.trace.steps) {
    CAPTURE(step.id);
    CHECK(std::isfinite(step.value));
  }
  CHECK(std::isfinite(design.hold.thrust_mean_N));
  CHECK(std::isfinite(design.hold.limiting_wind_mps));
  CHECK(std::isfinite(design.hold.energy_Wh));
  CHECK(design.hold.rose.size() == 13);
  for (const RosePoint& point : design.hold.rose) {
    CHECK(std::isfinite(point.thrust_N + point.heading_deg + point.limiting_wind_mps));
  }
}

}  // namespace

TEST_SUITE("bad_input") {
  TEST_CASE("weather beyond any motor fails the margin and says by how much") {
    const std::string_view rows[] = {R"(, "wind_mps": 30)", R"(, "current_mps": 3)"};
    for (const std::string_view water : rows) {
      const JobRead read = read_job(document(R"(, "displacement_kg": 2300)", water));
      CAPTURE(water);
      REQUIRE(read.issues.empty());
      const Design design = evaluate(read.job, default_catalogue());
      check_figures(design);
      const Check* margin = margin_of(design);
      REQUIRE(margin != nullptr);
      CHECK(margin->verdict() == Verdict::fail);
      CHECK(margin->utilisation() > 1.0);
      CHECK_FALSE(margin->remedy.empty());
      CHECK(design.outcome.fit != Fit::fits);
      // The same job from a link gives the same figures.
      const LinkRead again = read_link(write_link(read.job));
      REQUIRE(again.issues.empty());
      CHECK(evaluate(again.job, default_catalogue()).hold.thrust_mean_N ==
            rel(design.hold.thrust_mean_N, 1e-9));
    }
  }

  TEST_CASE("a current faster than full thrust holds in no wind at all") {
    HoldInput in;
    in.current_mps = 5.0;
    in.motors = {{.id = "m",
                  .label = "weak",
                  .thrust_N = 200.0,
                  .nominal_V = 12.0,
                  .power_full_W = 600.0,
                  .propeller_diameter_m = 0.25}};
    const HoldResult r = hold(in);
    CHECK(r.limiting_wind_mps == 0.0);
    CHECK(r.thrust_effective_N >= 0.0);
    CHECK(r.margin_actual_factor < 1.0);
  }

  TEST_CASE("a hundred knots, a fetch of a hand, no water to speak of, a hull of contradictions") {
    HoldInput in;
    in.motors = default_catalogue().motors;
    const auto sound = [](const HoldInput& odd) {
      const HoldResult r = hold(odd);
      for (const Step& step : r.trace.steps) {
        CAPTURE(step.id);
        CHECK(std::isfinite(step.value));
      }
      return r;
    };
    HoldInput odd = in;
    odd.wind_mps = mps_from_kn(100.0);
    CHECK(sound(odd).limiting_wind_mps < odd.wind_mps);
    odd = in;
    odd.wind_mps = 8.0;
    odd.fetch_m = 0.1;
    CHECK(sound(odd).wave_height_m < 0.01);
    odd.depth_m = 0.01;  // less than the draft: aground
    CHECK(sound(odd).thrust_mean_N > 0.0);
    CHECK(notes(sound(odd), "water.depth_m"));
    odd.depth_m = odd.draft_m;
    CHECK(notes(sound(odd), "water.depth_m"));
    odd.depth_m = odd.draft_m + 0.01;
    CHECK_FALSE(notes(sound(odd), "water.depth_m"));
    odd = in;
    odd.waterline_length_m = 12.0;  // longer than the boat
    odd.wind_mps = 8.0;
    CHECK(sound(odd).thrust_mean_N > 0.0);
    CHECK(notes(sound(odd), "boat.waterline_length_m"));
    odd.waterline_length_m = odd.length_m;  // plumb bow
    CHECK_FALSE(notes(sound(odd), "boat.waterline_length_m"));
    odd = in;  // still air and water
    odd.motors.clear();
    const HoldResult calm = sound(odd);
    CHECK(calm.thrust_mean_N <
          1e-5);  // the sea counts light airs as 0.1 m/s, see adjusted_wind_mps()
    CHECK(calm.thrust_mean_N >= 0.0);
    CHECK(calm.heading_deg == 0.0);
    CHECK_FALSE(calm.motor_found);
  }
}
