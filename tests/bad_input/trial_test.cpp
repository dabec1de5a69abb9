// Readings of a trial that nobody could have made, and lines that nobody can read.

#include <cmath>
#include <limits>
#include <random>

#include "calc/design.h"
#include "calc/hold/calibrate.h"
#include "io/day_text.h"
#include "io/presets.h"
#include "io/trial_text.h"
#include "support.h"

using namespace thole;

namespace {

constexpr double kNaN = std::numeric_limits<double>::quiet_NaN();
constexpr double kInfinite = std::numeric_limits<double>::infinity();

CalibrateInput ready_boat() {
  const Design design = evaluate(ready_jobs().front().job, default_catalogue());
  return {.boat = hold_input(design), .motor = design.hold.motor};
}

bool finite(const Band& band) {
  return std::isfinite(band.value_factor + band.low_factor + band.high_factor) &&
         band.low_factor >= 0.25 && band.high_factor <= 4.0 &&
         band.low_factor <= band.value_factor && band.value_factor <= band.high_factor;
}

}  // namespace

TEST_SUITE("bad_input") {
  TEST_CASE("a drift that cannot be is refused with a sentence") {
    const DriftReading good{.time_min = 5.0, .drift_mps = 0.5, .wind_mps = 7.0};
    CalibrateInput in = ready_boat();
    in.drifts = {good};
    REQUIRE(calibrate(in).fitted);
    std::vector<DriftReading> bad;
    const auto with = [&](double DriftReading::*value, double number) {
      DriftReading one = good;
      one.*value = number;
      bad.push_back(one);
    };
    for (const double number : {kNaN, kInfinite, -1.0, 1e300}) {
      with(&DriftReading::time_min, number);
      with(&DriftReading::drift_mps, number);
      with(&DriftReading::wind_mps, number);
      with(&DriftReading::wind_height_m, number);
      with(&DriftReading::current_mps, number);
    }
    for (const double number : {kNaN, kInfinite, 1e9}) {
      with(&DriftReading::drift_angle_deg, number);
      with(&DriftReading::current_angle_deg, number);
    }
    with(&DriftReading::time_min, 0.0);
    with(&DriftReading::drift_mps, 0.0);
    with(&DriftReading::wind_mps, 0.0);
    with(&DriftReading::wind_mps, 1.9);
    with(&DriftReading::current_mps, 0.6);        // faster than it drifted
    with(&DriftReading::drift_mps, 3.0);          // nearly half of the wind
    with(&DriftReading::drift_angle_deg, 180.0);  // against the wind
    for (std::size_t i = 0; i < bad.size(); ++i) {
      CAPTURE(i);
      in.drifts = {bad[i]};
      const CalibrateResult r = calibrate(in);
      CHECK_FALSE(r.fitted);
      CHECK(r.readings.empty());
      REQUIRE(r.issues.size() == 1);
      CHECK(r.issues.front().field == "drift 1");
      CHECK(r.issues.front().message.size() > 20);
      CHECK(r.windage.value_factor == 1.0);
    }
  }

  TEST_CASE(
      "a held reading that cannot be is refused with a sentence, the good one beside it used") {
    const HeldReading good{.thrust_frac = 0.4, .wind_mps = 7.0};
    CalibrateInput in = ready_boat();
    for (const double thrust_frac : {kNaN, -0.5, 0.0, 0.98, 1.0, 40.0, kInfinite}) {
      CAPTURE(thrust_frac);
      HeldReading bad = good;
      bad.thrust_frac = thrust_frac;
      in.holds = {bad, good};
      const CalibrateResult r = calibrate(in);
      CHECK(r.fitted);
      REQUIRE(r.readings.size() == 1);
      CHECK(r.readings.front().label == "Held 2");
      REQUIRE(r.issues.size() == 1);
      CHECK(r.issues.front().field == "held 1");
    }
    in.holds = {good};
    in.holds.front().wave_height_m = -1.0;
    CHECK_FALSE(calibrate(in).fitted);
    in.holds = {good};
    in.motor = {};
    CHECK_FALSE(calibrate(in).fitted);
    CHECK_FALSE(calibrate({.boat = in.boat, .motor = in.motor}).fitted);
  }

  TEST_CASE("whatever is read, the factors are finite and in range") {
    std::mt19937 generator(7);
    const auto any = [&](double low, double high) {
      return low + (high - low) * static_cast<double>(generator()) / 4294967296.0;
    };
    CalibrateInput in = ready_boat();
    int fitted = 0;
    for (int i = 0; i < 400; ++i) {
      in.drifts = {{.time_min = any(0.0, 130.0),
                    .drift_mps = any(0.0, 3.0),
                    .drift_angle_deg = any(-180.0, 180.0),
                    .wind_mps = any(0.0, 36.0),
                    .wind_height_m = any(0.5, 31.0),
                    .current_mps = any(0.0, 1.0),
                    .current_angle_deg = any(-180.0, 180.0)}};
      in.holds = {{.thrust_frac = any(0.0, 1.0),
                   .wind_mps = any(0.0, 36.0),
                   .wind_height_m = any(0.5, 31.0),
                   .current_mps = any(0.0, 4.2),
                   .current_angle_deg = any(-180.0, 180.0)}};
      const CalibrateResult r = calibrate(in);
      CHECK(finite(r.windage));
      CHECK(finite(r.drag));
      CHECK(finite(r.windage_over_drag));
      for (const ReadingFit& one : r.readings) {
        CHECK(std::isfinite(one.measured_frac + one.computed_frac + one.calibrated_frac +
                            one.cross_frac + one.off_ratio));
      }
      fitted += r.fitted ? 1 : 0;
    }
    CHECK(fitted > 300);
  }

  TEST_CASE("lines of readings: what can be read, in either system, and what cannot") {
    std::string message;
    const std::optional<DriftReading> drift =
        read_drift("minutes=5, speed = 0.9 kn,wind=12 kn, off=-10", System::metric, message);
    REQUIRE(drift);
    CHECK(drift->drift_mps == rel(0.463, 1e-3));
    CHECK(drift->wind_mps == rel(6.1733, 1e-4));
    CHECK(drift->drift_angle_deg == -10.0);
    CHECK(drift->wind_height_m == 10.0);
    const std::optional<HeldReading> held =
        read_held("thrust=45 %, wind=14 mph, waves=1 ft", System::us, message);
    REQUIRE(held);
    CHECK(held->thrust_frac == rel(0.45, 1e-12));
    REQUIRE(held->wave_height_m);
    CHECK(*held->wave_height_m == rel(0.3048, 1e-9));
    CHECK_FALSE(read_held("thrust=45, wind=7 m/s", System::metric, message)->wave_height_m);
    for (const char* text :
         {"", "minutes=5", "minutes=5,speed=1 kn", "speed=1 kn,wind=12 kn",
          "minutes=5,speed=x,wind=12 kn", "minutes,speed=1,wind=1",
          "minutes=5,speed=1 kg,wind=12 kn", "minutes=5,minutes=6,speed=1,wind=9",
          "minutes=5,speed=1,wind=9,tide=2", "=,=,=", ",,,", "minutes=5;speed=1"}) {
      CAPTURE(text);
      message.clear();
      CHECK_FALSE(read_drift(text, System::metric, message));
      CHECK_FALSE(message.empty());
    }
  }

  TEST_CASE("stretches of a day: a wind or a thrust, not both, not neither, in range") {
    std::string message;
    const std::optional<Stretch> held = read_stretch("hours=2, wind=12 kn", System::us, message);
    REQUIRE(held);
    CHECK(held->duration_h == 2.0);
    REQUIRE(held->wind_mps);
    CHECK(*held->wind_mps == rel(6.1733, 1e-4));
    const std::optional<Stretch> creep =
        read_stretch("hours=0.5,thrust=50", System::metric, message);
    REQUIRE(creep);
    CHECK_FALSE(creep->wind_mps);
    CHECK(creep->thrust_frac == rel(0.5, 1e-12));
    for (const char* text : {"hours=2", "hours=2,wind=9,thrust=50", "wind=9", "hours=-1,wind=9",
                             "hours=100,wind=9", "hours=1,wind=200 kn", "hours=1,thrust=101",
                             "hours=1,thrust=-1", "hours=1e9,wind=3", "hours=two,wind=3"}) {
      CAPTURE(text);
      CHECK_FALSE(read_stretch(text, System::metric, message));
      CHECK_FALSE(message.empty());
    }
  }
}
