// What must hold of any day's draw.

#include "calc/hold/day.h"

#include <algorithm>
#include <cmath>

#include "calc/design.h"
#include "calc/hold/simulate.h"
#include "io/presets.h"
#include "support.h"
#include "trace_support.h"

using namespace thole;

namespace {

DayInput day_of(const Design& design) {
  const MotorClass& motor = design.hold.motor;
  return {.power_full_W = motor.power_full_W,
          .power_idle_W = motor.power_idle_W,
          .supply_V = design.bank.nominal_V,
          .segments = planned_day(hold_input(design), motor)};
}

bool ordered(const Draw& draw) {
  return draw.mean_A <= draw.rms_A * (1.0 + 1e-12) && draw.rms_A <= draw.peak_A * (1.0 + 1e-12);
}

}  // namespace

TEST_SUITE("property") {
  TEST_CASE("times of a duty add up; more load never takes less power nor less time at full") {
    double power_before = 0.0;
    double full_before = 0.0;
    for (int i = 0; i <= 150; ++i) {
      const double load_frac = 0.01 * i;
      CAPTURE(load_frac);
      double time = 0.0;
      double power = 0.0;
      double thrust_before = -1.0;
      const std::vector<Duty> duty = holding_duty(load_frac);
      for (const Duty& part : duty) {
        CHECK(part.time_frac >= 0.0);
        CHECK(part.thrust_frac > thrust_before);
        CHECK(part.thrust_frac <= 1.0);
        thrust_before = part.thrust_frac;
        time += part.time_frac;
        power += part.time_frac * std::pow(part.thrust_frac, 1.5);
      }
      CHECK(near(time, 1.0, 1e-12));
      CHECK(power >= power_before - 1e-9);
      const double full = duty.back().thrust_frac < 1.0 ? 0.0 : duty.back().time_frac;
      CHECK(full >= full_before - 1e-9);
      power_before = power;
      full_before = full;
    }
    CHECK(power_before == rel(1.0, 1e-12));
  }

  TEST_CASE("the day of a ready-made job takes the energy that the hold stage says") {
    for (const ReadyJob& ready : ready_jobs()) {
      CAPTURE(ready.id);
      const Design design = evaluate(ready.job, default_catalogue());
      const DayResult day = day_draw(day_of(design));
      CHECK(day.day.energy_Wh == rel(design.hold.energy_Wh, 0.01));
      CHECK(ordered(day.day));
      test::check_formulas(day.trace);
      double energy_Wh = 0.0;
      double levels_h = 0.0;
      for (const SegmentDraw& segment : day.segments) {
        CHECK(ordered(segment.draw));
        energy_Wh += segment.draw.energy_Wh;
      }
      for (const DrawLevel& level : day.levels) levels_h += level.duration_h;
      CHECK(day.day.energy_Wh == rel(energy_Wh, 1e-12));
      CHECK(day.day.duration_h == rel(levels_h, 1e-12));
      CHECK(day.day.charge_Ah * design.bank.nominal_V == rel(day.day.energy_Wh, 1e-12));
    }
  }

  TEST_CASE("the order of the stretches does not matter to the day") {
    const Design design = evaluate(ready_jobs().front().job, default_catalogue());
    DayInput in = day_of(design);
    in.segments.push_back(holding_segment(hold_input(design), design.hold.motor, 3.0, 2.0));
    const Draw there = day_draw(in).day;
    std::reverse(in.segments.begin(), in.segments.end());
    const Draw back = day_draw(in).day;
    CHECK(back.energy_Wh == rel(there.energy_Wh, 1e-12));
    CHECK(back.rms_A == rel(there.rms_A, 1e-12));
    CHECK(back.peak_A == there.peak_A);
  }

  TEST_CASE("more wind never draws less") {
    const Design design = evaluate(ready_jobs().front().job, default_catalogue());
    double before_W = 0.0;
    for (double wind_mps = 0.0; wind_mps <= 35.0; wind_mps += 0.5) {
      DayInput in = day_of(design);
      in.segments = {holding_segment(hold_input(design), design.hold.motor, wind_mps, 1.0)};
      const double mean_W = day_draw(in).day.mean_W;
      CAPTURE(wind_mps);
      CHECK(mean_W >= before_W * (1.0 - 1e-6));
      before_W = mean_W;
    }
    CHECK(before_W == rel(design.hold.motor.power_full_W, 1e-9));
  }

  TEST_CASE("a day without hours or stretches draws nothing") {
    for (const DayInput& in :
         {DayInput{.power_full_W = 900.0, .supply_V = 24.0},
          DayInput{
              .power_full_W = 900.0, .supply_V = 24.0, .segments = {creeping_segment(1.0, 0.0)}}}) {
      const DayResult day = day_draw(in);
      CHECK(day.segments.empty());
      CHECK(day.day.energy_Wh == 0.0);
      CHECK(day.day.mean_A == 0.0);
      CHECK(day.day.rms_A == 0.0);
      CHECK(day.trace.steps.empty());
    }
  }

  // Bins of a twentieth: their middles stand for what was in them.
  TEST_CASE("the draw of a simulated hour is that of its record") {
    const ReadyJob& ready = ready_jobs().front();
    const Design design = evaluate(ready.job, default_catalogue());
    HoldRunInput run = run_input(hold_input(design), design.hold, false);
    run.record_h = 0.2;
    const HoldStatistics held = simulate_hold(run).statistics;
    double full_frac = std::min(held.full_frac, held.thrust_share.back());
    const DayResult day =
        day_draw({.power_full_W = run.power.power_full_W,
                  .power_idle_W = run.power.power_idle_W,
                  .supply_V = run.power.nominal_V,
                  .segments = {{.label = "Recorded",
                                .duration_h = run.record_h,
                                .duty = recorded_duty(held.thrust_share, full_frac),
                                .peak_thrust_frac = 1.0}}});
    CHECK(day.day.mean_W == rel(held.power_mean_W, 0.02));
    CHECK(day.day.mean_A == rel(held.current_mean_A, 0.02));
  }
}
