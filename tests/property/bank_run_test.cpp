// What must hold of any day of a bank.

#include <algorithm>
#include <span>

#include "calc/bank/day_run.h"
#include "calc/power_day.h"
#include "support.h"

using namespace thole;

namespace {

BatteryBlock agm_block() {
  return {.chemistry = Chemistry::agm,
          .nominal_V = 12.0,
          .capacity_Ah = 100.0,
          .rated_hours_h = 20.0,
          .resistance_ohm = 0.004};
}

BankRunInput string_of(std::size_t series_count) {
  return {.strings = {alike_string(agm_block(), series_count, 1, 1.0)}, .feeder_ohm = 0.008};
}

BatteryBlock lithium_block(double continuous_A) {
  return {.chemistry = Chemistry::lifepo4,
          .nominal_V = 12.8,
          .capacity_Ah = 100.0,
          .rated_hours_h = 20.0,
          .resistance_ohm = 0.005,
          .continuous_A = continuous_A};
}

std::vector<PowerStep> bursts(double hours_h) {
  std::vector<PowerStep> steps;
  for (int i = 0; i < static_cast<int>(hours_h * 3600.0); ++i) {
    steps.push_back({.power_W = i % 60 < 12 ? 900.0 : 120.0});
  }
  return steps;
}

}  // namespace

TEST_SUITE("property") {
  TEST_CASE("bank run: energy from the wells is what arrives and what is lost") {
    const BankRunResult run = run_bank(string_of(2), bursts(2.0), 3600.0);
    CHECK(run.cut_off == CutOff::none);
    CHECK(run.rest_Wh == rel(run.load_Wh + run.feeder_loss_Wh + run.block_loss_Wh, 1e-9));
  }

  TEST_CASE("bank run: charge that left is charge that was drawn") {
    const BankRunResult run = run_bank(string_of(3), bursts(2.0), 3600.0);
    CHECK(1.0 - run.moments.back().charge_frac == rel(run.charge_Ah / 100.0, 1e-9));
  }

  TEST_CASE("bank run: two strings halve each one's share and last longer") {
    BankRunInput in = string_of(2);
    const BankRunResult one = run_bank(in, bursts(24.0), 3600.0);
    in.strings.front().count = 2;
    const BankRunResult two = run_bank(in, bursts(24.0), 3600.0);
    REQUIRE(one.cut_off != CutOff::none);
    CHECK(two.cut_off_h > 2.0 * one.cut_off_h);  // and less for the resistance, so more than twice
  }

  TEST_CASE("bank run: the weak block goes first, wherever it stands, and ends the string") {
    const double alike_h = run_bank(string_of(3), bursts(24.0), 3600.0).cut_off_h;
    for (std::size_t weak = 0; weak < 3; ++weak) {
      CAPTURE(weak);
      BankRunInput in = string_of(3);
      in.strings.front().blocks[weak].condition.capacity_frac = 0.7;
      const BankRunResult run = run_bank(in, bursts(24.0), 3600.0);
      CHECK((run.cut_off == CutOff::block_empty || run.cut_off == CutOff::block_floor));
      CHECK(run.cut_off_block.block == weak);
      CHECK(run.cut_off_h < alike_h);
      const std::vector<double>& left = run.moments.back().block_charge_frac;
      for (std::size_t i = 0; i < left.size(); ++i) CHECK((i == weak || left[i] > left[weak]));
    }
  }

  TEST_CASE("bank run: colder, older, more power, longer feeder never lasts longer") {
    const auto hours = [](double temperature_C, double age_factor, double power_W,
                          double feeder_ohm) {
      BankRunInput in = string_of(2);
      in.temperature_C = temperature_C;
      in.strings = {alike_string(agm_block(), 2, 1, age_factor)};
      in.feeder_ohm = feeder_ohm;
      return run_bank(in, std::vector<PowerStep>(100000, PowerStep{power_W, 1.0}), 1e9).cut_off_h;
    };
    const double as_is_h = hours(25.0, 1.0, 300.0, 0.008);
    CHECK(hours(0.0, 1.0, 300.0, 0.008) < as_is_h);
    CHECK(hours(25.0, 1.25, 300.0, 0.008) < as_is_h);
    CHECK(hours(25.0, 1.0, 400.0, 0.008) < as_is_h);
    CHECK(hours(25.0, 1.0, 300.0, 0.030) < as_is_h);
  }

  TEST_CASE("bank run: step of the run hardly moves its end") {
    const auto hours = [](double step_s) {
      return run_bank(string_of(2),
                      std::vector<PowerStep>(static_cast<std::size_t>(90000.0 / step_s),
                                             PowerStep{300.0, step_s}),
                      1e9)
          .cut_off_h;
    };
    CHECK(hours(1.0) == rel(hours(10.0), 2e-3));
  }

  TEST_CASE(
      "bank run: what the circuit, the electronics and the plug cannot give cuts off at once") {
    BankRunInput in = string_of(1);
    CHECK(run_bank(in, {{.power_W = 1e5}}, 1.0).cut_off == CutOff::no_such_power);
    in.minimum_V = 20.0;
    CHECK(run_bank(in, {{.power_W = 100.0}}, 1.0).cut_off == CutOff::motor_minimum);
    in.strings.clear();
    CHECK(run_bank(in, {{.power_W = 500.0}}, 1.0).moments.empty());
    in.strings.resize(1);
    CHECK(run_bank(in, {{.power_W = 500.0}}, 1.0).moments.empty());
  }

  TEST_CASE("bank run: electronics carry a burst, then open [twice for 10 s: common practice]") {
    BankRunInput in{.strings = {alike_string(lithium_block(50.0), 1, 1, 1.0)}};
    const auto at = [&](double power_W, double time_s) {
      return run_bank(in, std::vector<PowerStep>(static_cast<std::size_t>(time_s), {power_W, 1.0}), 1e9);
    };
    CHECK(at(500.0, 600.0).cut_off == CutOff::none);            // 38 A
    CHECK(at(900.0, 10.0).cut_off == CutOff::none);             // 69 A
    const BankRunResult too_long = at(900.0, 12.0);
    CHECK(too_long.cut_off == CutOff::current_limit);
    CHECK(too_long.cut_off_h * 3600.0 == rel(10.0, 1e-9));
    CHECK(too_long.over_limit_s == 10.0);
    CHECK(at(1500.0, 1.0).cut_off == CutOff::current_limit);    // 118 A, more than twice
    in.strings = {alike_string(lithium_block(0.0), 1, 1, 1.0)};  // no limit known
    CHECK(at(1500.0, 60.0).cut_off == CutOff::none);
  }

  TEST_CASE("bank run: a string that opens leaves the load to the others") {
    BankRunInput in{.strings = {alike_string(lithium_block(100.0), 2, 1, 1.0),
                                alike_string(lithium_block(100.0), 2, 1, 1.0)}};
    in.strings[1].blocks[0].condition.capacity_frac = 0.3;
    const BankRunResult run = run_bank(in, std::vector<PowerStep>(60000, {700.0, 1.0}), 3600.0);
    REQUIRE(run.openings.size() == 1);
    CHECK(run.openings[0].place.string == 1);
    CHECK(run.openings[0].place.block == 0);
    CHECK(run.cut_off_h > run.openings[0].time_h);
    CHECK(run.moments.back().string_A[1] == 0.0);
    CHECK(run.rest_Wh == rel(run.load_Wh + run.feeder_loss_Wh + run.block_loss_Wh, 1e-9));
  }

  TEST_CASE("bank run: alike strings told apart or counted give the same day") {
    BankRunInput counted = string_of(2);
    counted.strings[0].count = 2;
    BankRunInput apart = string_of(2);
    apart.strings.push_back(apart.strings[0]);
    const BankRunResult a = run_bank(counted, bursts(24.0), 3600.0);
    const BankRunResult b = run_bank(apart, bursts(24.0), 3600.0);
    CHECK(a.cut_off_h == rel(b.cut_off_h, 1e-12));
    CHECK(a.charge_Ah == rel(b.charge_Ah, 1e-9));
    CHECK(b.crossed_Ah < 1e-6);
  }

  TEST_CASE("bank run: a flat string is charged by its fellow, a frozen lithium one is not") {
    const auto crossed_Ah = [](const BatteryBlock& block, double temperature_C) {
      BankRunInput in{.strings = {alike_string(block, 1, 1, 1.0), alike_string(block, 1, 1, 1.0)},
                      .temperature_C = temperature_C};
      in.strings[1].blocks[0].condition.charge_frac = 0.4;
      const BankRunResult run = run_bank(in, std::vector<PowerStep>(7200, {5.0, 1.0}), 3600.0);
      CHECK(run.rest_Wh == rel(run.load_Wh + run.feeder_loss_Wh + run.block_loss_Wh, 1e-9));
      return run.crossed_Ah;
    };
    CHECK(crossed_Ah(agm_block(), 25.0) > 1.0);
    CHECK(crossed_Ah(lithium_block(0.0), 25.0) > 1.0);
    CHECK(crossed_Ah(lithium_block(0.0), -1.0) == 0.0);
    CHECK(crossed_Ah(agm_block(), -1.0) > 1.0);
  }

  TEST_CASE("bank run: a weaker block never lasts longer, a further string never shorter") {
    const auto hours_h = [](double capacity_frac, double charge_frac, double resistance_factor) {
      BankRunInput in = string_of(3);
      in.strings[0].blocks[1].condition = {capacity_frac, charge_frac, resistance_factor};
      return run_bank(in, std::vector<PowerStep>(100000, {400.0, 1.0}), 1e9).cut_off_h;
    };
    for (double frac = 1.0; frac > 0.3; frac -= 0.1) {
      CAPTURE(frac);
      CHECK(hours_h(frac - 0.1, 1.0, 1.0) < hours_h(frac, 1.0, 1.0));
      CHECK(hours_h(1.0, frac - 0.1, 1.0) < hours_h(1.0, frac, 1.0));
      CHECK(hours_h(1.0, 1.0, 2.0 / frac) <= hours_h(1.0, 1.0, 1.0 / frac));
    }
    BankRunInput in = string_of(2);
    const std::vector<PowerStep> steps(200000, {400.0, 1.0});
    const double alone_h = run_bank(in, steps, 1e9).cut_off_h;
    in.strings.push_back(alike_string({.capacity_Ah = 40.0, .resistance_ohm = 0.01}, 2, 1, 1.2));
    CHECK(run_bank(in, steps, 1e9).cut_off_h > alone_h);
  }

  TEST_CASE("bank run: in slices as at once") {
    const std::vector<PowerStep> steps = bursts(3.0);
    const BankRunResult whole = run_bank(string_of(2), steps, 600.0);
    BankRun run(string_of(2), 600.0);
    for (std::size_t i = 0; i < steps.size(); i += 777) {
      run.take(std::span(steps).subspan(i, std::min<std::size_t>(777, steps.size() - i)));
    }
    CHECK(run.result().charge_Ah == whole.charge_Ah);
    CHECK(run.result().moments.size() == whole.moments.size());
    CHECK(run.result().moments.back().charge_frac == whole.moments.back().charge_frac);
  }

  TEST_CASE("power steps hold each level for its share of the time") {
    const DaySegment segment{
        .duration_h = 2.0, .duty = {{0.0, 0.5}, {0.25, 0.3}, {1.0, 0.2}}, .peak_thrust_frac = 1.0};
    double energy_Wh = 0.0;
    for (const PowerStep& step : power_steps(segment, 1000.0, 20.0, 1.0)) {
      energy_Wh += step.power_W * step.time_s / 3600.0;
    }
    // 20 W + 980 W (0.3 / 8 + 0.2), for two hours.
    CHECK(energy_Wh == rel(505.5, 2e-3));
    CHECK(power_steps({.duration_h = 1.0}, 1000.0, 20.0, 1.0).empty());
  }
}
