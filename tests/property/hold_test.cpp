// What anyone who holds boats knows, whatever the numbers.

#include "calc/hold/hold.h"

#include <cmath>

#include "base/units.h"
#include "calc/hold/equilibrium.h"
#include "calc/hold/thruster.h"
#include "job/complete.h"
#include "job/fields.h"
#include "support.h"
#include "trace_support.h"

using namespace thole;

namespace {

MotorClass motor(const char* id, double thrust_N, double power_W, double mass_kg) {
  return {.id = id,
          .label = id,
          .thrust_N = thrust_N,
          .nominal_V = 36.0,
          .power_full_W = power_W,
          .power_idle_W = 20.0,
          .propeller_diameter_m = 0.30,
          .mass_kg = mass_kg};
}

std::vector<MotorClass> three_motors() {
  return {motor("large", 890.0, 4500.0, 48.0), motor("small", 245.0, 800.0, 22.0),
          motor("middle", 490.0, 1900.0, 33.0)};
}

HoldInput centre_console() {
  return {.length_m = 7.6,
          .waterline_length_m = 6.6,
          .waterline_beam_m = 2.3,
          .draft_m = 0.45,
          .displacement_kg = 2300.0,
          .frontal_area_m2 = 4.0,
          .lateral_area_m2 = 9.0,
          .lateral_centroid_m = 0.3,
          .underwater_area_m2 = 2.8,
          .underwater_centroid_m = -0.3,
          .bow_angle_rad = 0.44684,
          .thruster_forward_m = 3.7,
          .wind_mps = 7.7,
          .current_mps = 0.4,
          .motors = three_motors()};
}

const Check& check_named(const HoldResult& result, std::string_view id) {
  for (const Check& check : result.trace.checks) {
    if (check.id == id) return check;
  }
  FAIL("no such check");
  return result.trace.checks.front();
}

bool warns_of(const HoldResult& result, std::string_view id) {
  for (const Caution& caution : result.trace.cautions) {
    if (caution.id == id) return true;
  }
  return false;
}

bool finite(const HoldResult& r) {
  double sum = r.wave_height_m + r.wave_period_s + r.wind_N + r.current_N + r.wave_N +
               r.thrust_head_on_N + r.heading_deg + r.thrust_equilibrium_N + r.thrust_mean_N +
               r.thrust_required_N + r.thrust_effective_N + r.margin_actual_factor +
               r.limiting_wind_mps + r.power_full_W + r.power_mean_W + r.energy_Wh;
  for (const RosePoint& point : r.rose) {
    sum += point.heading_deg + point.thrust_N + point.limiting_wind_mps;
  }
  for (const Step& step : r.trace.steps) sum += step.value;
  return std::isfinite(sum);
}

}  // namespace

TEST_SUITE("property") {
  TEST_CASE("more wind never needs less thrust") {
    for (const double angle_deg : {0.0, 45.0}) {
      HoldInput in = centre_console();
      in.current_angle_deg = angle_deg;
      double last_N = 0.0;
      for (int step = 0; step <= 70; ++step) {
        in.wind_mps = 0.5 * step;
        CAPTURE(in.wind_mps);
        const double now_N = hold(in).thrust_required_N;
        CHECK(now_N >= last_N);
        last_N = now_N;
      }
      CHECK(last_N > 1000.0);
    }
  }

  TEST_CASE("more current from ahead never needs less thrust") {
    HoldInput in = centre_console();
    double last_N = 0.0;
    for (int step = 0; step <= 40; ++step) {
      in.current_mps = 0.1 * step;
      const double now_N = hold(in).thrust_required_N;
      CHECK(now_N >= last_N);
      last_N = now_N;
    }
  }

  TEST_CASE("larger windage, more legs, colder air and higher waves never need less thrust") {
    const HoldInput base = centre_console();
    const double base_N = hold(base).thrust_head_on_N;
    HoldInput in = base;
    in.frontal_area_m2 += 1.0;
    CHECK(hold(in).thrust_head_on_N > base_N);
    in = base;
    in.leg_count = 3;
    CHECK(hold(in).thrust_head_on_N > base_N);
    in = base;
    in.legs_down = false;
    CHECK(hold(in).thrust_head_on_N < base_N);
    in = base;
    in.air_C = -10.0;
    CHECK(hold(in).thrust_head_on_N > base_N);
    in = base;
    in.fetch_m *= 4.0;
    CHECK(hold(in).thrust_head_on_N > base_N);
    in = base;
    in.wind_at_boat_height = true;
    CHECK(hold(in).wind_N < hold(base).wind_N);
  }

  TEST_CASE("a mirrored current mirrors the heading") {
    const HeldHull hull{.wind = {4.0, 9.0, 0.3, 6.6},
                        .current = {0.2, 2.8, -0.3, 6.6},
                        .wave = {.waterline_beam_m = 2.3,
                                 .waterline_length_m = 6.6,
                                 .underwater_length_m = 6.6,
                                 .bow_angle_rad = 0.45},
                        .thruster_forward_m = 3.7};
    for (double angle_deg = 7.0; angle_deg < 180.0; angle_deg += 19.0) {
      Weather weather{.wind_mps = 8.0,
                      .sea = {.height_m = 0.3, .period_s = 2.1},
                      .current_mps = 0.6,
                      .current_from_rad = rad_from_deg(angle_deg)};
      const Equilibrium one =
          worst_heading(hull, vane_table(hull, weather.current_from_rad), weather);
      weather.current_from_rad = -weather.current_from_rad;
      const Equilibrium other =
          worst_heading(hull, vane_table(hull, weather.current_from_rad), weather);
      CAPTURE(angle_deg);
      CHECK(near(one.heading_rad, -other.heading_rad, 1e-8));
      CHECK(one.thrust_N == rel(other.thrust_N, 1e-8));
    }
  }

  TEST_CASE("head to wind when there is no current") {
    for (const double angle_deg : {0.0, 60.0, 180.0}) {
      HoldInput in = centre_console();
      in.current_mps = 0.0;
      in.current_angle_deg = angle_deg;
      const HoldResult result = hold(in);
      CHECK(near(result.heading_deg, 0.0, 1e-6));
      CHECK(result.thrust_equilibrium_N == rel(result.thrust_head_on_N, 1e-9));
    }
  }

  TEST_CASE("still air and water need next to nothing") {
    HoldInput in = centre_console();
    in.wind_mps = 0.0;
    in.current_mps = 0.0;
    const HoldResult result = hold(in);
    CHECK(result.thrust_required_N < 0.01);
    CHECK(result.motor.id == "small");
    CHECK(finite(result));
    CHECK(check_named(result, "hold.margin").verdict() == Verdict::pass);
    thole::test::check_formulas(result.trace);
  }

  TEST_CASE("the lightest motor that suffices is chosen, else the strongest") {
    HoldInput in = centre_console();
    for (const double wind_mps : {3.0, 7.7, 10.0, 13.0, 30.0}) {
      in.wind_mps = wind_mps;
      const HoldResult result = hold(in);
      CAPTURE(wind_mps);
      const bool enough = result.thrust_effective_N >= result.thrust_required_N;
      CHECK((check_named(result, "hold.margin").utilisation() <= 1.0) == enough);
      for (const MotorClass& other : in.motors) {
        HoldInput alone = in;
        alone.motors = {other};
        const double other_N = hold(alone).thrust_effective_N;
        if (enough && other.mass_kg < result.motor.mass_kg)
          CHECK(other_N < result.thrust_required_N);
        if (!enough) CHECK(other_N <= result.thrust_effective_N);
      }
    }
    in.wind_mps = 30.0;
    CHECK(hold(in).motor.id == "large");
  }

  TEST_CASE("the limiting wind is the limit") {
    for (const double angle_deg : {0.0, 40.0, 90.0}) {
      HoldInput in = centre_console();
      in.current_angle_deg = angle_deg;
      in.motors = {motor("middle", 490.0, 1900.0, 33.0)};
      const double limit_mps = hold(in).limiting_wind_mps;
      CAPTURE(angle_deg);
      CHECK(limit_mps > 5.0);
      CHECK(limit_mps < 20.0);
      in.wind_mps = 0.995 * limit_mps;
      CHECK(check_named(hold(in), "hold.margin").utilisation() <= 1.0);
      in.wind_mps = 1.005 * limit_mps;
      CHECK(check_named(hold(in), "hold.margin").utilisation() > 1.0);
    }
  }

  TEST_CASE("the limit does not depend on the wind that was asked for") {
    HoldInput in = centre_console();
    in.motors = {motor("middle", 490.0, 1900.0, 33.0)};
    const double limit_mps = hold(in).limiting_wind_mps;
    in.wind_mps = 4.0;
    CHECK(hold(in).limiting_wind_mps == rel(limit_mps, 1e-3));
  }

  TEST_CASE("a sea that was given counts in the limit") {
    HoldInput in = centre_console();
    in.motors = {motor("middle", 490.0, 1900.0, 33.0)};
    const double limit_mps = hold(in).limiting_wind_mps;
    in.wave_height_m = 0.0;
    in.wave_period_s = 2.0;
    CHECK(hold(in).wave_N == 0.0);
    CHECK(hold(in).limiting_wind_mps > limit_mps);
    in.wave_height_m = 0.6;
    CHECK(hold(in).limiting_wind_mps < limit_mps);
  }

  TEST_CASE("a larger margin never raises the limiting wind, a stronger motor never lowers it") {
    HoldInput in = centre_console();
    double last_mps = 1e9;
    for (const double factor : {1.0, 1.4, 1.6, 2.0}) {
      in.margin_factor = factor;
      in.motors = {motor("middle", 490.0, 1900.0, 33.0)};
      const double limit_mps = hold(in).limiting_wind_mps;
      CHECK(limit_mps <= last_mps);
      in.motors = {motor("large", 890.0, 4500.0, 48.0)};
      CHECK(hold(in).limiting_wind_mps >= limit_mps);
      last_mps = limit_mps;
    }
  }

  TEST_CASE("the rose runs from 0 to 180 and agrees with the stage") {
    HoldInput in = centre_console();
    in.current_angle_deg = 45.0;
    const HoldResult result = hold(in);
    REQUIRE(result.rose.size() == 13);
    CHECK(result.rose.front().angle_deg == 0.0);
    CHECK(result.rose.back().angle_deg == 180.0);
    CHECK(result.rose[3].heading_deg == rel(result.heading_deg, 1e-9));
    CHECK(result.rose[3].thrust_N == rel(result.thrust_equilibrium_N, 1e-9));
    CHECK(near(result.rose[0].heading_deg, 0.0, 1e-6));
    CHECK(result.rose[0].thrust_N == rel(result.thrust_head_on_N, 1e-9));
    CHECK(result.limiting_wind_mps <= result.rose[0].limiting_wind_mps + 0.02);
    CHECK(result.limiting_wind_mps <= result.rose[3].limiting_wind_mps + 0.02);
  }

  TEST_CASE("thrust in a current is that of the same ideal power") {
    const Disc disc{.diameter_m = 0.3, .density_kg_per_m3 = 1026.0};
    for (const double inflow_mps : {0.0, 0.1, 1.0, 4.0, 40.0}) {
      const double thrust_N = thrust_in_current_N(disc, 500.0, inflow_mps);
      CHECK(ideal_power_W(disc, thrust_N, inflow_mps) ==
            rel(ideal_power_W(disc, 500.0, 0.0), 1e-9));
      CHECK(thrust_N <= 500.0 * (1.0 + 1e-12));
    }
  }

  TEST_CASE("more hours never take less energy; power stays between rest and full") {
    HoldInput in = centre_console();
    const HoldResult base = hold(in);
    in.holding_h *= 2.0;
    CHECK(hold(in).energy_Wh > base.energy_Wh);
    for (const double wind_mps : {0.0, 5.0, 10.0, 35.0}) {
      in.wind_mps = wind_mps;
      const HoldResult result = hold(in);
      CHECK(result.power_mean_W >= result.motor.power_idle_W);
      CHECK(result.power_mean_W <= result.motor.power_full_W * (1.0 + 1e-12));
    }
  }

  TEST_CASE("nothing to choose from is an answer") {
    HoldInput in = centre_console();
    in.motors.clear();
    const HoldResult result = hold(in);
    CHECK_FALSE(result.motor_found);
    CHECK(check_named(result, "hold.margin").verdict() == Verdict::fail);
    CHECK(finite(result));
    thole::test::check_formulas(result.trace);
    in.wind_mps = 0.0;
    in.current_mps = 0.0;
    CHECK(check_named(hold(in), "hold.margin").verdict() == Verdict::fail);
  }

  TEST_CASE("a thrust that no propeller could make is refused, missing papers are not judged") {
    HoldInput in = centre_console();
    in.motors = {motor("boast", 1500.0, 1000.0, 20.0)};
    CHECK(check_named(hold(in), "hold.plausible").verdict() == Verdict::fail);
    in.motors = {motor("honest", 490.0, 1900.0, 33.0)};
    CHECK(check_named(hold(in), "hold.plausible").utilisation() < 0.9);
    in.motors.front().power_full_W = 0.0;
    CHECK(check_named(hold(in), "hold.plausible").verdict() == Verdict::not_evaluated);
    in.motors.front() = {};
    CHECK(finite(hold(in)));
  }

  TEST_CASE("cautions stand where they apply, on either side of their bounds") {
    HoldInput in = centre_console();
    in.motors = {motor("strong", 512.0, 2600.0, 30.0)};
    in.length_m = 7.9;
    CHECK(warns_of(hold(in), "hold.cut_off_switch"));  // 115 lbf, under 26 ft (46 U.S.C. 4312)
    in.motors.front().thrust_N = 511.0;
    CHECK_FALSE(warns_of(hold(in), "hold.cut_off_switch"));
    in.motors.front().thrust_N = 600.0;
    in.length_m = 7.93;
    CHECK_FALSE(warns_of(hold(in), "hold.cut_off_switch"));

    CHECK_FALSE(warns_of(hold(in), "hold.lies_off_waves"));
    in.current_mps = 1.03;
    in.current_angle_deg = 120.0;
    CHECK(hold(in).heading_deg > 60.0);
    CHECK(warns_of(hold(in), "hold.lies_off_waves"));

    CHECK_FALSE(warns_of(hold(in), "hold.loose"));
    in.margin_factor = margin_factor(false, true);
    CHECK(warns_of(hold(in), "hold.loose"));

    CHECK_FALSE(warns_of(hold(in), "hold.claim"));
    in.motors.front().power_full_W = 2000.0;
    CHECK(warns_of(hold(in), "hold.claim"));
    CHECK(check_named(hold(in), "hold.plausible").utilisation() <= 1.0);

    CHECK(warns_of(hold(in), "hold.propeller"));
    CHECK(warns_of(hold(in), "hold.not_an_anchor"));
  }

  TEST_CASE("every check says what to do and changes fields that exist") {
    HoldInput in = centre_console();
    in.wind_mps = 30.0;
    for (const Check& check : hold(in).trace.checks) {
      CAPTURE(check.id);
      CHECK_FALSE(check.remedy.empty());
      for (const Change& change : check.changes) {
        CAPTURE(change.field);
        const Field* field = find_field(change.field);
        REQUIRE(field != nullptr);
        CHECK_FALSE(change.label.empty());
        if (!change.clear) CHECK(range_message(*field, change.value) == "");
      }
    }
  }

  TEST_CASE("the changes for a failed margin mean what their buttons say") {
    HoldInput in = centre_console();
    in.wind_mps = 30.0;
    const HoldResult result = hold(in);
    Job job;
    for (const Change& change : check_named(result, "hold.margin").changes) apply(change, job);
    CHECK(job.boat.leg.value == Leg::tilted);
    CHECK(job.boat.leg.given());
    CHECK(job.hold.firmness.value == Firmness::loose);
  }

  TEST_CASE("margins: gusty water asks for most, holding loosely for least") {
    CHECK(margin_factor(true, false) > margin_factor(false, false));
    CHECK(margin_factor(false, false) > margin_factor(false, true));
    CHECK(margin_factor(true, true) == margin_factor(false, true));
  }

  TEST_CASE("every shown formula gives its shown value, all over the fields") {
    int count = 0;
    for (const double wind_mps : {0.0, 6.0, 35.0}) {
      for (const double current_mps : {0.0, 0.7, 4.0}) {
        for (const double angle_deg : {0.0, 77.0, 180.0}) {
          for (const double deadrise_deg : {0.0, 30.0}) {
            HoldInput in = centre_console();
            in.wind_mps = wind_mps;
            in.current_mps = current_mps;
            in.current_angle_deg = angle_deg;
            in.deadrise_deg = deadrise_deg;
            in.wind_at_boat_height = ++count % 2 == 0;
            in.salt = count % 3 != 0;
            if (count % 4 == 0) in.wave_height_m = 0.8;
            const HoldResult result = hold(in);
            CAPTURE(count);
            CHECK(finite(result));
            thole::test::check_formulas(result.trace);
          }
        }
      }
    }
  }

  TEST_CASE("the corners of the fields stay finite") {
    for (int corner = 0; corner < 128; ++corner) {
      const auto pick = [&](int bit, double low, double high) {
        return (corner >> bit) % 2 == 0 ? low : high;
      };
      HoldInput in{.length_m = pick(0, 4.0, 15.0),
                   .waterline_length_m = pick(0, 3.0, 14.5),
                   .waterline_beam_m = pick(1, 1.0, 4.8),
                   .draft_m = pick(1, 0.1, 1.5),
                   .displacement_kg = pick(2, 250.0, 15000.0),
                   .deadrise_deg = pick(3, 0.0, 30.0),
                   .frontal_area_m2 = pick(2, 0.5, 30.0),
                   .lateral_area_m2 = pick(4, 1.0, 60.0),
                   .lateral_centroid_m = pick(5, -4.0, 4.0),
                   .underwater_area_m2 = pick(6, 0.4, 20.0),
                   .underwater_centroid_m = pick(4, -4.0, 4.0),
                   .bow_angle_rad = rad_from_deg(pick(3, 8.0, 60.0)),
                   .thruster_forward_m = pick(5, 0.0, 8.0),
                   .leg_count = 4,
                   .wind_mps = pick(1, 0.0, 35.0),
                   .fetch_m = pick(2, 50.0, 200000.0),
                   .depth_m = pick(3, 0.5, 200.0),
                   .current_mps = pick(6, 0.0, 4.0),
                   .current_angle_deg = pick(4, 0.0, 180.0),
                   .wave_height_m = pick(5, 0.0, 4.0),
                   .wave_period_s = pick(0, 0.5, 15.0),
                   .margin_factor = 1.6,
                   .motors = three_motors()};
      CAPTURE(corner);
      CHECK(finite(hold(in)));
    }
  }

  TEST_CASE("estimates: nothing given, everything filled, within the fields' ranges") {
    for (int known = 0; known < 16; ++known) {
      for (const double length_m : {4.0, 5.5, 7.6, 9.8, 13.0, 15.0}) {
        Job job;
        if (known & 1) job.boat.length_m = {length_m, Origin::given};
        if (known & 2)
          job.boat.displacement_kg = {5.3 * length_m * length_m * length_m * 0.8, Origin::given};
        if (known & 4) job.boat.layout = {Layout::pontoon, Origin::given};
        if (known & 8) job.water.exposure = {Exposure::open, Origin::given};
        const Completed done = complete(job, {});
        CAPTURE(known);
        CAPTURE(length_m);
        thole::test::check_formulas(done.trace);
        for (const Field& field : all_fields()) {
          const bool ours = field.section == "boat" || field.section == "water";
          if (!ours || field.access.is_text()) continue;
          CAPTURE(field.path());
          CHECK(field.access.origin(done.job) != Origin::absent);
          CHECK(range_message(field, field.access.get(done.job)) == "");
        }
        CHECK(done.job.hold.firmness.known());
        CHECK(done.job.hold.holding_h.known());
        CHECK_FALSE(done.job.hold.motor.known());
      }
    }
  }

  TEST_CASE("estimates: where it holds decides fetch and depth") {
    const auto water_at = [](Exposure exposure) {
      Job job;
      job.water.exposure = {exposure, Origin::given};
      return complete(job, {}).job.water;
    };
    CHECK(water_at(Exposure::sheltered).fetch_m.value == 1000.0);
    CHECK(water_at(Exposure::bay).fetch_m.value == 5000.0);
    CHECK(water_at(Exposure::open).fetch_m.value == 20000.0);
    CHECK(water_at(Exposure::sheltered).wave_height_m.value <
          water_at(Exposure::bay).wave_height_m.value);
    CHECK(water_at(Exposure::bay).wave_height_m.value <
          water_at(Exposure::open).wave_height_m.value);
  }

  TEST_CASE("estimates: a longer boat is wider, heavier, higher and shows more to the wind") {
    Job shorter;
    shorter.boat.length_m = {7.0, Origin::given};
    shorter.boat.layout = {Layout::walkaround, Origin::given};
    Job longer = shorter;
    longer.boat.length_m.value = 9.0;
    const Boat a = complete(shorter, {}).job.boat;
    const Boat b = complete(longer, {}).job.boat;
    CHECK(b.beam_m.value > a.beam_m.value);
    CHECK(b.displacement_kg.value > a.displacement_kg.value);
    CHECK(b.bow_height_m.value > a.bow_height_m.value);
    CHECK(b.frontal_area_m2.value > a.frontal_area_m2.value);
    CHECK(b.lateral_area_m2.value > a.lateral_area_m2.value);
    CHECK(b.underwater_area_m2.value > a.underwater_area_m2.value);
  }

  TEST_CASE("estimates: what is given stays, and a given wave height gets its period") {
    Job job;
    job.boat.beam_m = {2.5, Origin::given};
    job.water.wave_height_m = {0.4, Origin::given};
    const Job full = complete(job, {}).job;
    CHECK(full.boat.beam_m.value == 2.5);
    CHECK(full.boat.beam_m.origin == Origin::given);
    // Deep water, one twenty-fifth as high as long: 10 m long, 2.53 s.
    CHECK(near(full.water.wave_period_s.value, 2.53, 0.01));
  }
}
