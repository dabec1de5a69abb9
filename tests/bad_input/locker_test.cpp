// Lockers, banks and chargers that cannot be: each a sentence, and no number that is not one.

#include <algorithm>
#include <cmath>
#include <limits>
#include <string>
#include <vector>

#include "calc/bank/thresholds.h"
#include "calc/charge/dc_dc.h"
#include "calc/charge/shore.h"
#include "calc/charge/solar.h"
#include "calc/charge/vent_plan.h"
#include "calc/locker/packing.h"
#include "calc/locker/place.h"
#include "calc/locker/restraint.h"
#include "calc/locker_study.h"
#include "draw/locker_plan.h"
#include "draw/svg.h"
#include "io/locker_text.h"
#include "io/presets.h"
#include "support.h"

using namespace thole;

namespace {

constexpr double kNaN = std::numeric_limits<double>::quiet_NaN();
constexpr double kInfinity = std::numeric_limits<double>::infinity();
const std::vector<double> kNotPositive{0.0, -1.0, kNaN, kInfinity, -kInfinity, 1e300};

PackingInput sound() {
  return {.locker_length_m = 1.2,
          .locker_width_m = 0.5,
          .locker_height_m = 0.4,
          .opening_length_m = 0.5,
          .opening_width_m = 0.4,
          .block_length_m = 0.330,
          .block_width_m = 0.173,
          .block_height_m = 0.240,
          .series_count = 3};
}

bool finite(const PackingResult& result) {
  for (const Arrangement& arrangement : result.arrangements) {
    if (!std::isfinite(arrangement.jumpers_m) || !std::isfinite(arrangement.height_m)) return false;
    for (const PlacedBlock& block : arrangement.blocks) {
      for (const Spot& spot : {block.low, block.size, block.minus, block.plus}) {
        if (!std::isfinite(spot.x_m + spot.y_m + spot.z_m)) return false;
      }
    }
  }
  for (const auto* list : {&result.all_of, &result.one_of}) {
    for (const Shortfall& shortfall : *list) {
      if (!std::isfinite(shortfall.missing_m) || shortfall.missing_m <= 0.0) return false;
    }
  }
  return true;
}

}  // namespace

TEST_CASE("lockers and blocks without a size are refused with a sentence") {
  REQUIRE(pack(sound()).fits);
  for (double PackingInput::*side :
       {&PackingInput::locker_length_m, &PackingInput::locker_width_m,
        &PackingInput::locker_height_m, &PackingInput::opening_length_m,
        &PackingInput::opening_width_m, &PackingInput::block_length_m, &PackingInput::block_width_m,
        &PackingInput::block_height_m}) {
    for (const double bad : kNotPositive) {
      PackingInput in = sound();
      in.*side = bad;
      const PackingResult result = pack(in);
      CAPTURE(bad);
      CHECK_FALSE(result.fits);
      CHECK_FALSE(result.problem.empty());
      CHECK(finite(result));
      REQUIRE(result.trace.checks.size() == 1);
      CHECK(result.trace.checks[0].verdict() == Verdict::not_evaluated);
    }
  }
  for (double PackingInput::*room : {&PackingInput::air_gap_m, &PackingInput::strap_room_m,
                                     &PackingInput::terminal_room_m, &PackingInput::shelf_m}) {
    for (const double bad : {-0.001, kNaN, kInfinity}) {
      PackingInput in = sound();
      in.*room = bad;
      CHECK_FALSE(pack(in).problem.empty());
      in.*room = 0.0;
      CHECK(pack(in).fits);
    }
  }
}

TEST_CASE("no block, two hundred blocks, and numbers past any count") {
  for (const int bad : {0, -1, -2147483647, 9, 200, 2147483647}) {
    PackingInput in = sound();
    in.series_count = bad;
    CHECK_FALSE(pack(in).fits);
    CHECK_FALSE(pack(in).problem.empty());
    in = sound();
    in.series_count = 1;
    in.parallel_count = bad;
    CHECK_FALSE(pack(in).problem.empty());
  }
  // A locker that nine might go into is not searched for them; two hundred need more floor than it has.
  PackingInput in = sound();
  in.locker_length_m = in.locker_width_m = in.locker_height_m = 3.0;
  in.series_count = 9;
  CHECK(pack(in).problem.find("up to 8 blocks") != std::string::npos);
  CHECK(fit_check(in, fit(in)).verdict() == Verdict::not_evaluated);
  in = sound();
  in.series_count = 200;
  CHECK(pack(in).problem.find("of its 200 blocks at the very most") != std::string::npos);
  CHECK(fit_check(in, fit(in)).verdict() == Verdict::fail);
}

TEST_CASE("a job with a locker of no length is told so by field, and its bank is judged without one") {
  Job job;
  job.locker.length_m = {0.0, Origin::given};
  job.locker.width_m = {0.5, Origin::given};
  job.locker.height_m = {0.4, Origin::given};
  const Design design = Evaluation(job, default_catalogue()).design();
  CHECK(std::any_of(design.issues.begin(), design.issues.end(),
                    [](const Issue& issue) { return issue.field == "locker.length_m" && !issue.message.empty(); }));
  CHECK_FALSE(design.locker.measured);
  CHECK(design.find_check("locker.fit") == nullptr);
}

TEST_CASE("an opening larger than the locker is remarked on and lets the same blocks in") {
  Job job;
  job.locker.length_m = {2.5, Origin::given};
  job.locker.width_m = {1.0, Origin::given};
  job.locker.height_m = {0.4, Origin::given};
  const auto remarks = [](const Design& design) {
    std::string text;
    for (const std::string& remark : locker_remarks(locker_study(design, default_catalogue()), design, System::metric)) text += remark;
    return text;
  };
  const Design usual = Evaluation(job, default_catalogue()).design();
  CHECK(remarks(usual).find("measure both again") == std::string::npos);
  job.locker.opening_length_m = {3.0, Origin::given};
  const Design odd = Evaluation(job, default_catalogue()).design();
  CHECK(remarks(odd).find("The opening is larger than the locker") != std::string::npos);
  CHECK(odd.locker.fits == usual.locker.fits);
}

TEST_CASE("lockers far too small and blocks like needles or dice end with an answer") {
  for (const double locker_m : {1e-9, 0.001, 0.05, 20.0}) {
    for (const double length_m : {0.001, 0.173, 19.0}) {
      for (const double width_m : {0.001, 0.173, 19.0}) {
        PackingInput in = sound();
        in.locker_length_m = in.locker_width_m = in.locker_height_m = locker_m;
        in.block_length_m = length_m;
        in.block_width_m = width_m;
        in.side_allowed = in.tiers_allowed = true;
        in.opening_length_m = in.opening_width_m = 20.0;
        in.series_count = 4;
        in.parallel_count = 2;
        const PackingResult result = pack(in);
        CHECK(result.fits == result.problem.empty());
        CHECK(finite(result));
        CHECK(write_svg(locker_plan_picture(in, result, 2000000000, System::metric)).size() > 0);
      }
    }
  }
}

TEST_CASE("the picture of an impossible locker is a sheet with its sentence") {
  PackingInput in = sound();
  in.locker_length_m = 0.0;
  const PackingResult result = pack(in);
  const Drawing drawing = locker_plan_picture(in, result, -1, System::metric);
  CHECK(drawing.description == result.problem);
  CHECK(drawing.high.x > drawing.low.x);
  CHECK(std::isfinite(drawing.high.y));
}

TEST_CASE("restraint of nothing says nothing") {
  for (const double bad : {0.0, -5.0, kNaN, kInfinity}) {
    CHECK(restrain({.block_mass_kg = bad, .block_height_m = 0.2}).rules.empty());
    CHECK(restrain({.block_mass_kg = 20.0, .block_height_m = bad}).rules.empty());
  }
  for (const double bad : {-5.0, kNaN, kInfinity}) {
    const RestraintResult result = restrain(
        {.block_mass_kg = 20.0, .block_height_m = 0.2, .slam_known_g = bad, .strap_rated_N = bad});
    CHECK(std::isfinite(result.vertical_N));
    CHECK(result.strap_count == 2);
    const RestraintResult still = restrain(
        {.block_mass_kg = 20.0, .block_height_m = 0.2, .planes = false, .slam_known_g = bad});
    CHECK(std::isfinite(still.vertical_N));
  }
  const RestraintResult weak =
      restrain({.block_mass_kg = 20.0, .block_height_m = 0.2, .strap_rated_N = 1e-300});
  CHECK(weak.strap_count == 8);
}

TEST_CASE("chargers and banks that cannot be are refused with a sentence") {
  const DcDcInput converter{.capacity_Ah = 100.0,
                            .depth_frac = 0.5,
                            .charge_V = 43.0,
                            .output_A = 20.0,
                            .alternator_A = 100.0,
                            .running_h = 2.0};
  REQUIRE(dc_dc(converter).problem.empty());
  for (double DcDcInput::*value :
       {&DcDcInput::capacity_Ah, &DcDcInput::charge_V, &DcDcInput::output_A,
        &DcDcInput::alternator_V, &DcDcInput::alternator_A, &DcDcInput::efficiency_frac}) {
    for (const double bad : {0.0, -1.0, kNaN, kInfinity}) {
      DcDcInput in = converter;
      in.*value = bad;
      CHECK_FALSE(dc_dc(in).problem.empty());
    }
  }
  DcDcInput busy = converter;
  busy.own_loads_A = 50.0;
  CHECK(dc_dc(busy).problem.find("nothing to spare") != std::string::npos);
  CHECK(dc_dc(busy).output_A == 0.0);

  const ShoreInput night{.block_capacity_Ah = 100.0,
                         .block_charge_V = 14.4,
                         .block_count = 3,
                         .depth_frac = 0.5,
                         .charger_A = 15.0,
                         .night_h = 10.0};
  REQUIRE(shore(night).problem.empty());
  for (double ShoreInput::*value :
       {&ShoreInput::block_capacity_Ah, &ShoreInput::block_charge_V, &ShoreInput::charger_A,
        &ShoreInput::efficiency_frac, &ShoreInput::power_factor, &ShoreInput::shore_V,
        &ShoreInput::outlet_A}) {
    for (const double bad : {0.0, -1.0, kNaN, kInfinity}) {
      ShoreInput in = night;
      in.*value = bad;
      CHECK_FALSE(shore(in).problem.empty());
    }
  }
  for (const int bad : {0, -3, 200}) {
    ShoreInput in = night;
    in.block_count = bad;
    CHECK_FALSE(shore(in).problem.empty());
  }
  for (const double bad : {-0.1, 1.1, kNaN}) {
    ShoreInput in = night;
    in.depth_frac = bad;
    CHECK_FALSE(shore(in).problem.empty());
    DcDcInput other = converter;
    other.depth_frac = bad;
    CHECK_FALSE(dc_dc(other).problem.empty());
    CHECK_FALSE(solar({.bank_Wh = 1000.0, .missing_frac = bad}).problem.empty());
  }
  for (const double bad : {0.0, -1.0, kNaN, kInfinity}) {
    CHECK_FALSE(solar({.bank_Wh = bad}).problem.empty());
  }
  for (const double bad : {-1.0, kNaN, kInfinity}) {
    CHECK_FALSE(solar({.bank_Wh = 1000.0, .panel_W = bad}).problem.empty());
    CHECK_FALSE(solar({.bank_Wh = 1000.0, .full_sun_h = bad}).problem.empty());
  }
  const SolarResult dark = solar({.bank_Wh = 1000.0, .panel_W = 20.0});
  CHECK(dark.problem.empty());
  CHECK(dark.panel_least_W == 0.0);
  CHECK_FALSE(dark.keeps_full);
}

TEST_CASE("a full bank needs no hours") {
  CHECK(
      shore(
          {.block_capacity_Ah = 100.0, .block_charge_V = 14.4, .block_count = 3, .charger_A = 15.0})
          .full_tonight);
  CHECK(dc_dc({.capacity_Ah = 100.0, .charge_V = 43.0, .output_A = 20.0, .alternator_A = 200.0})
            .full_h == 0.0);
}

TEST_CASE("vents of nothing are refused with a sentence") {
  const VentPlanInput sound_vents{
      .block_capacity_Ah = 100.0, .block_count = 3, .charger_A = 15.0, .free_volume_m3 = 0.2};
  REQUIRE(vent_plan(sound_vents).problem.empty());
  for (double VentPlanInput::*value : {&VentPlanInput::block_capacity_Ah, &VentPlanInput::charger_A,
                                       &VentPlanInput::free_volume_m3}) {
    for (const double bad : {0.0, -1.0, kNaN, kInfinity}) {
      VentPlanInput in = sound_vents;
      in.*value = bad;
      CHECK_FALSE(vent_plan(in).problem.empty());
      CHECK(vent_plan(in).demands.empty());
    }
  }
  for (const double bad : {-1.0, kNaN, kInfinity}) {
    for (double VentPlanInput::*value :
         {&VentPlanInput::low_opening_cm2, &VentPlanInput::high_opening_cm2,
          &VentPlanInput::fan_m3_per_h}) {
      VentPlanInput in = sound_vents;
      in.*value = bad;
      CHECK_FALSE(vent_plan(in).problem.empty());
    }
  }
  VentPlanInput cold = sound_vents;
  cold.temperature_C = -274.0;
  CHECK_FALSE(vent_plan(cold).problem.empty());
  CHECK(round_hole_mm(kNaN) == 0.0);
  CHECK(round_hole_mm(-1.0) == 0.0);
}

TEST_CASE("thresholds of nothing are no threshold") {
  for (const double bad : {0.0, -1.0, kNaN}) {
    CHECK(lifetime(Chemistry::agm, bad, 50.0).years_count == 0.0);
    CHECK(lifetime(Chemistry::agm, 400.0, bad).years_count == 0.0);
  }
  CHECK(mixed_blocks({}).empty());
}
