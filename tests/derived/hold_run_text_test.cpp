// What is said of an hour of holding, read back by other means.

#include "io/hold_run_text.h"

#include <cmath>
#include <nlohmann/json.hpp>
#include <sstream>

#include "held_boats.h"
#include "support.h"

using namespace thole;
using namespace thole::test;

namespace {

HoldReport report(double thrust_N) {
  HoldReport hour{.input = r25_held(kFifteenKnots_mps, thrust_N),
                  .required = {.found = true, .thrust_N = 200.0, .margin_factor = 1.3},
                  .mean_load_N = 152.0,
                  .margin_factor = thrust_N / 152.0};
  hour.input.record_h = 0.1;
  hour.run = simulate_hold(hour.input);
  return hour;
}

bool says(const std::string& text, const std::string& words) {
  return text.find(words) != std::string::npos;
}

}  // namespace

TEST_SUITE("derived") {
  TEST_CASE("the track as lines of figures") {
    const HoldReport hour = report(356.0);
    std::istringstream lines(track_csv(hour.run.track));
    std::string line;
    REQUIRE(std::getline(lines, line));
    CHECK(line ==
          "time_s,upwind_m,right_m,heading_deg,thrust_N,thrust_from_wind_deg,power_W,wind_mps");
    double farthest_m = 0.0;
    int count = 0;
    while (std::getline(lines, line)) {
      double time_s = -1.0;
      double upwind_m = 0.0;
      double right_m = 0.0;
      char comma = 0;
      std::istringstream(line) >> time_s >> comma >> upwind_m >> comma >> right_m;
      CHECK(time_s == count);
      farthest_m = std::max(farthest_m, std::hypot(upwind_m, right_m));
      ++count;
    }
    CHECK(count == 360);
    CHECK(near(farthest_m, hour.run.statistics.radius_max_m, 0.2));
  }

  TEST_CASE("figures for a program") {
    const HoldReport hour = report(356.0);
    const auto json = nlohmann::json::parse(write_hold_report(hour));
    CHECK(json["statistics"]["radius_95_m"].get<double>() == hour.run.statistics.radius_95_m);
    CHECK(json["statistics"]["lost_at_s"].is_null());
    CHECK(json["statistics"]["thrust_share"].size() == 20);
    CHECK(json["required"]["margin_factor"].get<double>() == 1.3);
    CHECK(json["checks"].size() == 2);
    CHECK(json["checks"][0]["verdict"] == "passes");
  }

  TEST_CASE("words for a person, in either system") {
    HoldReport hour = report(356.0);
    const std::string metric = hold_report_text(hour, System::metric);
    CHECK(says(metric, "Spot lost                       no"));
    CHECK(says(metric, "For 5 m, 95 % of the time       1.30, 200 N at the boat"));
    CHECK(says(hold_report_text(hour, System::us), "lbf"));
    hour.required.found = false;
    CHECK(says(hold_report_text(hour, System::metric), "not even four times"));
    CHECK(says(hold_report_text(report(20.0), System::metric), "min, more than 22.8 m off"));
  }
}
