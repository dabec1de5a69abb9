// A day's draw, held against simulated hours of holding that the handbook prints and against sums
// done by hand.

#include "calc/hold/day.h"

#include <cmath>

#include "support.h"

using namespace thole;

namespace {

double mean_thrust_frac(const std::vector<Duty>& duty) {
  double sum = 0.0;
  for (const Duty& part : duty) sum += part.time_frac * part.thrust_frac;
  return sum;
}

double mean_duty(const std::vector<Duty>& duty) {
  double sum = 0.0;
  for (const Duty& part : duty) sum += part.time_frac * std::pow(part.thrust_frac, 1.5);
  return sum;
}

}  // namespace

TEST_SUITE("derived") {
  // Handbook 5.4, R25 in 15 kn: share of the time at full thrust for thrust over mean load. Another
  // honest simulation may differ by a third, the handbook says; ten points are less than that
  // where it matters.
  TEST_CASE("time at full thrust goes with the margin as in the simulated hours") {
    struct Row {
      double margin_factor, saturated_frac;
    };
    for (const Row& row : {Row{1.1, 1.0}, Row{1.25, 0.69}, Row{1.4, 0.34}, Row{1.6, 0.14},
                           Row{2.0, 0.02}, Row{2.5, 0.0}}) {
      CAPTURE(row.margin_factor);
      CHECK(near(holding_duty(1.0 / row.margin_factor).back().time_frac, row.saturated_frac, 0.10));
    }
  }

  // Handbook 5.4, base case: static load 152 N, mean thrust 171 N of 356 N, mean (T/Tmax)^1.5 0.35;
  // and 20 kn: 268 N static, 306 N mean (its own motor has 1.6 times the load).
  TEST_CASE("mean thrust and power of the simulated hours") {
    const std::vector<Duty> duty = holding_duty(152.0 / 356.0);
    CHECK(near(356.0 * mean_thrust_frac(duty), 171.0, 3.0));
    CHECK(near(mean_duty(duty), 0.35, 0.005));
    CHECK(near(1.6 * 268.0 * mean_thrust_frac(holding_duty(1.0 / 1.6)), 306.0, 10.0));
  }

  // Handbook 6: R25 at 15 kn, 356 N, 1236 W at full thrust: mean 433 W, that is 18 A at 24 V and
  // 12 A at 36 V, against 52 and 34 A at full thrust.
  TEST_CASE("mean and peak current of the handbook's boat") {
    struct Row {
      double supply_V, mean_A, peak_A;
    };
    for (const Row& row : {Row{24.0, 18.0, 52.0}, Row{36.0, 12.0, 34.0}}) {
      const DayResult day = day_draw({.power_full_W = 1236.0,
                                      .supply_V = row.supply_V,
                                      .segments = {{.label = "Holding",
                                                    .duration_h = 1.0,
                                                    .duty = holding_duty(152.0 / 356.0),
                                                    .peak_thrust_frac = 1.0}}});
      CAPTURE(row.supply_V);
      CHECK(near(day.day.mean_W, 433.0, 4.0));
      CHECK(near(day.day.mean_A, row.mean_A, 0.5));
      CHECK(near(day.day.peak_A, row.peak_A, 0.5));
    }
  }

  // By hand. 1000 W and 50 V: a quarter of full thrust takes 125 W and 2.5 A, full thrust 1000 W
  // and 20 A. An hour of each: 1125 Wh, mean 11.25 A, r.m.s. sqrt((6.25 + 400)/2) = 14.2522 A.
  // Then two hours at rest: 0 A; over four hours 5.625 A and 14.2522/sqrt 2 = 10.0778 A.
  TEST_CASE("a day done by hand") {
    DayInput in{.power_full_W = 1000.0,
                .supply_V = 50.0,
                .segments = {{.label = "Back and forth",
                              .duration_h = 2.0,
                              .duty = {{0.25, 0.5}, {1.0, 0.5}},
                              .peak_thrust_frac = 1.0},
                             creeping_segment(0.0, 2.0)}};
    const DayResult day = day_draw(in);
    REQUIRE(day.segments.size() == 2);
    const Draw& first = day.segments[0].draw;
    CHECK(first.energy_Wh == rel(1125.0, 1e-12));
    CHECK(first.charge_Ah == rel(22.5, 1e-12));
    CHECK(first.mean_A == rel(11.25, 1e-12));
    CHECK(first.rms_A == rel(14.2522, 1e-5));
    CHECK(first.peak_A == rel(20.0, 1e-12));
    CHECK(first.full_thrust_frac == rel(0.5, 1e-12));
    CHECK(day.segments[1].draw.peak_A == 0.0);
    CHECK(day.day.duration_h == rel(4.0, 1e-12));
    CHECK(day.day.mean_A == rel(5.625, 1e-12));
    CHECK(day.day.rms_A == rel(10.0778, 1e-5));
    CHECK(day.day.peak_A == rel(20.0, 1e-12));
    CHECK(day.day.full_thrust_frac == rel(0.25, 1e-12));
    REQUIRE(day.levels.size() == 3);
    CHECK(day.levels[0].duration_h == rel(2.0, 1e-12));
    CHECK(day.levels[1].current_A == rel(2.5, 1e-12));
  }

  // A record of 4 bins: half of the time in the first, a quarter in the second, a quarter in the
  // last, a tenth of all at full thrust: levels 1/8, 3/8, 7/8 and 1.
  TEST_CASE("the duty of a record, by hand") {
    const double shares[] = {0.5, 0.25, 0.0, 0.25};
    const std::vector<Duty> duty = recorded_duty(shares, 0.1);
    REQUIRE(duty.size() == 5);
    CHECK(duty[1].thrust_frac == rel(0.375, 1e-12));
    CHECK(duty[3].time_frac == rel(0.15, 1e-12));
    CHECK(duty[4].thrust_frac == 1.0);
    CHECK(duty[4].time_frac == rel(0.1, 1e-12));
    CHECK(recorded_duty({}, 0.5).empty());
  }
}
