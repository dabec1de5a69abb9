// Every way to charge, from the design's own figures: it says what the charge stage says, and what
// the handbook's examples say.

#include "calc/charging_study.h"

#include <doctest/doctest.h>

#include <cmath>

#include "calc/charge/refill.h"
#include "draw/apart.h"
#include "draw/charge_curve.h"
#include "draw/vent_plan.h"
#include "io/charging_text.h"
#include "io/presets.h"
#include "support.h"
#include "trace_support.h"

using namespace thole;

namespace {

Verdict verdict_of(const Design& design, std::string_view id) {
  const Check* check = design.find_check(id);
  return check == nullptr ? Verdict::not_evaluated : check->verdict();
}

Job lead_job() {
  Job job = ready_jobs().front().job;
  job.bank.chemistry = {Chemistry::agm, Origin::given};
  job.bank.block = {};
  return job;
}

// 36 V of flooded blocks, 100 Ah: the handbook's worked bank.
ChargeInput three_flooded() {
  return {.chemistry = Chemistry::flooded,
          .block_capacity_Ah = 100.0,
          .series_count = 3,
          .parallel_count = 1,
          .depth_used_frac = 0.5,
          .chargers = {{.outputs = 3, .output_A = 15.0}},
          .locker_volume_m3 = 0.3};
}

bool inside(const Drawing& drawing, Point point) {
  return point.x >= drawing.low.x && point.x <= drawing.high.x && point.y >= drawing.low.y &&
         point.y <= drawing.high.y;
}

void check_drawing(const Drawing& drawing) {
  CHECK_FALSE(drawing.title.empty());
  CHECK_FALSE(drawing.description.empty());
  for (const Shape& shape : drawing.shapes)
    for (const Point& point : shape.points) CHECK(inside(drawing, point));
  for (const Label& label : drawing.labels) CHECK(inside(drawing, label.at));
  for (const Arrow& arrow : drawing.arrows) {
    CHECK(inside(drawing, arrow.a));
    CHECK(inside(drawing, arrow.b));
  }
}

}  // namespace

TEST_CASE("every ready-made job: tonight, engine, sun and air say what the charge stage says") {
  for (const ReadyJob& ready : ready_jobs()) {
    CAPTURE(ready.id);
    const Design design = evaluate(ready.job, default_catalogue());
    const ChargingStudy study = charging_study(design);
    if (!design.bank.found || !design.charge.found) {
      CHECK_FALSE(study.problem.empty());
      continue;
    }
    REQUIRE(study.problem.empty());
    REQUIRE(study.shore.problem.empty());
    CHECK(study.shore.spare_A == rel(design.find_check("charge.shore_current")->limit, 1e-12));
    // Not turned down: the stage's own hours and amps.
    if (verdict_of(design, "charge.shore_current") != Verdict::fail) {
      CHECK(study.shore.full_h == rel(design.charge.time_h, 1e-12));
      CHECK(study.shore.shore_A == rel(design.charge.shore_A, 1e-12));
      CHECK(study.shore.full_tonight == (verdict_of(design, "charge.time") != Verdict::fail));
    }
    CHECK(study.venting.opening_cm2 == design.charge.vent_area_cm2);
    CHECK(study.night.points.front().charge_frac == rel(1.0 - design.bank.depth_used_frac, 1e-12));
    double before = 0.0;
    for (const NightPoint& point : study.night.points) {
      CHECK(point.charge_frac >= before - 1e-12);
      CHECK(point.charge_frac <= 1.0 + 1e-12);
      CHECK(point.current_A <= study.shore.output_A * (1.0 + 1e-12));
      before = point.charge_frac;
    }
    for (const Trace* trace : {&study.shore.trace, &study.engine.trace, &study.sun.trace, &study.venting.trace}) {
      test::check_formulas(*trace);
    }
    CHECK_FALSE(charging_text(study, System::metric).empty());
    CHECK(write_charging(study).find("\"venting\"") != std::string::npos);
    for (const System system : {System::metric, System::us}) {
      check_drawing(charge_curve_picture(study.night, system));
      check_drawing(vent_plan_picture(study, design, system));
    }
  }
}

TEST_CASE("VE1, VE3 through the stage: 13.5 m3/h and 6.4 min when it fails at 0 C, 50.4 cm2 at boost [IEC/EN 62485-2, Faraday]") {
  const ChargeResult result = charge(three_flooded());
  CHECK(near(result.vent_area_cm2, 50.4, 0.05));
  CHECK(near(result.spark_clearance_mm, 659.0, 0.6));
  REQUIRE(result.venting.demands.size() == 3);
  CHECK(near(result.venting.demands[2].flow_m3_per_h, 13.5, 0.05));
  // 6.4 min at 0 C; gas at 20 C takes 7 % more room.
  CHECK(near(result.minutes_to_limit_min * 293.15 / 273.15, 6.4, 0.05));
}

TEST_CASE("20 A into 36 V draws 72 A at 13.5 V, and fails on an alternator of 100 A, half of it hot [handbook 3.4, common practice]") {
  ChargeInput in = three_flooded();
  in.converter_A = 20.0;
  in.alternator_A = 100.0;
  ChargeResult charged = charge(in);
  DcDcInput engine = dc_dc_input(in, charged);
  engine.charge_V = 43.0;
  CHECK(near(dc_dc(engine).input_A, 72.4, 0.1));
  const auto of = [](const ChargeResult& result) -> const Check* {
    for (const Check& check : result.trace.checks)
      if (check.id == kAlternatorCheck) return &check;
    return nullptr;
  };
  REQUIRE(of(charged) != nullptr);
  CHECK(of(charged)->verdict() == Verdict::fail);
  // Turned down as proposed it passes.
  in.converter_A = of(charged)->changes.front().value;
  CHECK(of(charge(in))->verdict() != Verdict::fail);
  in.converter_A += 0.5;
  CHECK(of(charge(in))->verdict() == Verdict::fail);
  in.converter_A = 0.0;
  CHECK(of(charge(in)) == nullptr);
}

TEST_CASE("openings and fan decide once they are given, on either side of their limits") {
  const Catalogue& shelf = default_catalogue();
  Job job = lead_job();
  const Design plain = evaluate(job, shelf);
  REQUIRE(plain.charge.vent_area_cm2 > 0.0);
  CHECK(plain.find_check("charge.vent_area") == nullptr);
  job.charge.vent_area_cm2 = {plain.charge.vent_area_cm2 * 1.01, Origin::given};
  CHECK(verdict_of(evaluate(job, shelf), "charge.vent_area") != Verdict::fail);
  job.charge.vent_area_cm2 = {plain.charge.vent_area_cm2 * 0.99, Origin::given};
  CHECK(verdict_of(evaluate(job, shelf), "charge.vent_area") == Verdict::fail);

  job.charge.vents_opposite = {false, Origin::given};
  CHECK(verdict_of(evaluate(job, shelf), "charge.vent_apart") == Verdict::not_evaluated);
  job.charge.vents_apart_m = {2.01, Origin::given};
  CHECK(verdict_of(evaluate(job, shelf), "charge.vent_apart") != Verdict::fail);

  job.charge.fan_m3_per_h = {500.0, Origin::given};
  const Design fan = evaluate(job, shelf);
  CHECK(fan.find_check("charge.vent_area") == nullptr);  // the fan serves instead
  CHECK(verdict_of(fan, "charge.fan_interlock") == Verdict::fail);
  job.charge.fan_with_charger = {true, Origin::given};
  job.charge.fan_protected = {true, Origin::given};
  CHECK(verdict_of(evaluate(job, shelf), "charge.fan_interlock") == Verdict::pass);
  CHECK(verdict_of(evaluate(job, shelf), "charge.fan_flow") == Verdict::pass);
}

TEST_CASE("the outlet: 15 A or 16 A by its volts, the breaker that the given current needs, 80 % of a given one") {
  const Catalogue& shelf = default_catalogue();
  Job job = lead_job();
  job.charge.shore_V = {120.0, Origin::given};
  job.charge.shore_limit_A = {};
  CHECK(evaluate(job, shelf).job.charge.outlet_A.value == 15.0);
  CHECK(evaluate(job, shelf).job.charge.shore_limit_A.value == rel(12.0, 1e-12));
  job.charge.shore_V = {230.0, Origin::given};
  CHECK(evaluate(job, shelf).job.charge.outlet_A.value == 16.0);
  job.charge.shore_limit_A = {24.0, Origin::given};
  CHECK(evaluate(job, shelf).job.charge.outlet_A.value == 30.0);
  job.charge.outlet_A = {10.0, Origin::given};
  job.charge.other_loads_A = {3.0, Origin::given};
  CHECK(evaluate(job, shelf).find_check("charge.shore_current")->limit == rel(5.0, 1e-12));
}

TEST_CASE("without a converter or a panel it says what one would do") {
  const ChargingStudy study = charging_study(evaluate(lead_job(), default_catalogue()));
  REQUIRE(study.problem.empty());
  CHECK_FALSE(study.converter);
  CHECK(study.converter_A > 0.0);
  CHECK(study.engine.input_A <= study.engine.spare_A * (1.0 + 1e-9));
  CHECK(engine_said(study, System::metric).find("largest that the alternator feeds") != std::string::npos);
  CHECK(sun_said(study, System::metric).find("would keep it") != std::string::npos);
  SolarInput least = solar_input(study.input);
  least.panel_W = study.sun.panel_least_W * 1.001;
  CHECK(solar(least).keeps_full);
  least.panel_W = study.sun.panel_least_W * 0.999;
  CHECK_FALSE(solar(least).keeps_full);
}

TEST_CASE("more current never fills later, a larger opening never fails more, whatever the night") {
  for (const Chemistry chemistry : {Chemistry::flooded, Chemistry::agm, Chemistry::gel, Chemistry::lifepo4}) {
    double before_h = 1e9;
    double before_Ah = 0.0;
    for (double current_A = 2.0; current_A <= 40.0; current_A *= 1.2) {
      const TaperInput course = refill_course(chemistry, 100.0, 0.6, current_A);
      CHECK(taper(course).time_h <= before_h * (1.0 + 1e-12));
      CHECK(stored_Ah(course, 5.0) >= before_Ah * (1.0 - 1e-9));
      before_h = taper(course).time_h;
      before_Ah = stored_Ah(course, 5.0);
      // The amps are what fills it.
      double put_in_Ah = 0.0;
      const double whole_h = taper(course).time_h;
      const double bulk_h = taper(course).bulk_h;
      constexpr int kSlices = 20000;
      for (int i = 0; i < kSlices; ++i) {
        const double time_h = whole_h * (i + 0.5) / kSlices;
        const double efficiency_frac =
            time_h < bulk_h ? course.bulk_efficiency_frac : course.absorption_efficiency_frac;
        put_in_Ah += efficiency_frac * refill_current_A(course, time_h) * whole_h / kSlices;
      }
      CHECK(put_in_Ah >= 60.0 * 0.999);
    }
  }
  ChargeInput in = three_flooded();
  bool passed = false;
  for (double area_cm2 = 0.0; area_cm2 < 120.0; area_cm2 += 3.0) {
    in.vent_area_cm2 = area_cm2;
    for (const Check& check : charge(in).trace.checks) {
      if (check.id != "charge.vent_area") continue;
      CHECK_FALSE((passed && check.verdict() == Verdict::fail));
      passed = passed || check.verdict() != Verdict::fail;
    }
  }
  CHECK(passed);
}

TEST_CASE("no bank and no charger are a sentence; odd figures crash nothing") {
  Catalogue bare = default_catalogue();
  bare.chargers.clear();
  const ChargingStudy no_charger = charging_study(evaluate(lead_job(), bare));
  CHECK_FALSE(no_charger.problem.empty());
  CHECK(charging_text(no_charger, System::metric).find(no_charger.problem) != std::string::npos);
  CHECK_FALSE(charging_study(Design{}).problem.empty());
  Job job = lead_job();
  job.charge.other_loads_A = {63.0, Origin::given};
  job.charge.engine_loads_A = {200.0, Origin::given};
  job.charge.full_sun_h = {0.0, Origin::given};
  const ChargingStudy starved = charging_study(evaluate(job, default_catalogue()));
  CHECK_FALSE(starved.shore.problem.empty());
  CHECK(starved.night.points.empty());
  CHECK_FALSE(starved.engine.problem.empty());
  CHECK(sun_said(starved, System::metric).find("no panel keeps it") != std::string::npos);
  CHECK_FALSE(charging_text(starved, System::us).empty());
}

TEST_CASE("what is not fitted fails nothing") {
  Job job = lead_job();
  for (const double panel_W : {0.0, 5.0}) {
    job.charge.panel_W = {panel_W, Origin::given};
    job.charge.converter_A = {0.0, Origin::given};
    const Design design = evaluate(job, default_catalogue());
    CHECK(design.find_check("charge.dc_dc_alternator") == nullptr);
    CHECK(design.find_check("charge.solar_keeps") == nullptr);
    const ChargingStudy study = charging_study(design);
    CHECK(study.engine.trace.checks.empty());
    CHECK(study.sun.trace.checks.empty() == (panel_W == 0.0));
  }
}

TEST_CASE("a measured locker gives the air that its bank charges in, unless that is given") {
  Job job = lead_job();
  const auto volume_m3 = [&] { return evaluate(job, default_catalogue()).job.charge.locker_volume_m3; };
  job.charge.locker_volume_m3 = {};
  job.locker = {};
  CHECK(volume_m3().value == 0.15);
  job.locker.length_m = {0.9, Origin::given};
  job.locker.width_m = {0.5, Origin::given};
  CHECK(volume_m3().value == 0.15);  // not measured yet
  job.locker.height_m = {0.4, Origin::given};
  CHECK(volume_m3().value == rel(0.09, 1e-12));  // half of 0.18 m3
  CHECK(volume_m3().origin == Origin::estimated);
  job.locker.height_m = {0.05, Origin::given};
  CHECK(volume_m3().value >= 0.02);  // no less than the field takes
  job.charge.locker_volume_m3 = {0.3, Origin::given};
  CHECK(volume_m3().value == 0.3);
}
