// What any installer knows of a locker and of charging.

#include <algorithm>
#include <cmath>
#include <random>
#include <string>
#include <vector>

#include "calc/charge/dc_dc.h"
#include "calc/charge/refill.h"
#include "calc/charge/shore.h"
#include "calc/charge/solar.h"
#include "calc/charge/vent_plan.h"
#include "calc/locker/packing.h"
#include "calc/locker/place.h"
#include "calc/locker/restraint.h"
#include "draw/locker_plan.h"
#include "draw/svg.h"
#include "support.h"
#include "trace_support.h"

using namespace thole;
using namespace thole::test;

namespace {

constexpr double kSame_m = 1e-6;

// Lockers round the size that decides, blocks of the common groups.
class Lockers {
 public:
  PackingInput next() {
    const double groups[][3] = {{0.260, 0.173, 0.225}, {0.306, 0.173, 0.225},
                                {0.330, 0.173, 0.240}, {0.264, 0.183, 0.270},
                                {0.527, 0.222, 0.250}, {0.197, 0.166, 0.170}};
    const auto& group = groups[pick(0, 5)];
    PackingInput in{.chemistry = static_cast<Chemistry>(pick(0, 3)),
                    .block_length_m = group[0],
                    .block_width_m = group[1],
                    .block_height_m = group[2],
                    .series_count = pick(1, 4),
                    .parallel_count = pick(0, 3) == 0 ? 2 : 1};
    const double side_m = std::sqrt(in.series_count * in.parallel_count * group[0] * group[1]);
    in.locker_length_m = side_m * between(0.8, 2.0) + 0.05;
    in.locker_width_m = side_m * between(0.8, 1.4) + 0.05;
    in.locker_height_m = group[2] * between(0.9, 2.6);
    in.opening_length_m = group[0] + between(0.0, 0.2);
    in.opening_width_m = group[1] + between(0.0, 0.2);
    in.side_allowed = pick(0, 1) == 1;
    in.tiers_allowed = pick(0, 1) == 1;
    return in;
  }
  double between(double low, double high) {
    return low + (high - low) * static_cast<double>(random_()) / 4294967295.0;
  }
  int pick(int low, int high) {
    return low + static_cast<int>(random_() % static_cast<unsigned>(high - low + 1));
  }

 private:
  std::mt19937 random_{20240611};
};

bool same(const Spot& a, const Spot& b) {
  return near(a.x_m, b.x_m, kSame_m) && near(a.y_m, b.y_m, kSame_m) && near(a.z_m, b.z_m, kSame_m);
}

Spot high_of(const PlacedBlock& block) {
  return {block.low.x_m + block.size.x_m, block.low.y_m + block.size.y_m,
          block.low.z_m + block.size.z_m};
}

void check_arrangement(const PackingInput& in, const Arrangement& arrangement) {
  const int count = in.series_count * in.parallel_count;
  REQUIRE(static_cast<int>(arrangement.blocks.size()) == count);
  for (std::size_t i = 0; i < arrangement.blocks.size(); ++i) {
    const PlacedBlock& block = arrangement.blocks[i];
    const Spot high = high_of(block);
    CHECK(block.low.x_m >= in.air_gap_m - kSame_m);
    CHECK(block.low.y_m >= in.air_gap_m - kSame_m);
    CHECK(block.low.z_m >= 0.0);
    CHECK(high.x_m <= in.locker_length_m - in.air_gap_m + kSame_m);
    CHECK(high.y_m <= in.locker_width_m - in.air_gap_m + kSame_m);
    CHECK(high.z_m <= in.locker_height_m + kSame_m);
    CHECK(block.size.x_m * block.size.y_m * block.size.z_m ==
          rel(in.block_length_m * in.block_width_m * in.block_height_m, 1e-9));
    for (const Spot& post : {block.minus, block.plus}) {
      CHECK(post.x_m >= block.low.x_m - kSame_m);
      CHECK(post.x_m <= high.x_m + kSame_m);
      CHECK(post.y_m >= block.low.y_m - kSame_m);
      CHECK(post.y_m <= high.y_m + kSame_m);
    }
    for (std::size_t k = 0; k < i; ++k) {
      const PlacedBlock& other = arrangement.blocks[k];
      const Spot other_high = high_of(other);
      const double apart_m = std::max({block.low.x_m - other_high.x_m, other.low.x_m - high.x_m,
                                       block.low.y_m - other_high.y_m, other.low.y_m - high.y_m});
      const double above_m = std::max(block.low.z_m - other_high.z_m, other.low.z_m - high.z_m);
      CHECK((apart_m >= in.air_gap_m - kSame_m || above_m >= in.shelf_m - kSame_m));
    }
  }
  CHECK(arrangement.jumpers.size() == static_cast<std::size_t>(count - 1 + in.parallel_count - 1));
  double sum_m = 0.0;
  int links = 0;
  for (const Jumper& jumper : arrangement.jumpers) {
    sum_m += jumper.length_m;
    links += jumper.links_strings ? 1 : 0;
    const PlacedBlock& from = arrangement.blocks[static_cast<std::size_t>(jumper.from)];
    const PlacedBlock& to = arrangement.blocks[static_cast<std::size_t>(jumper.to)];
    const bool at_plus = same(jumper.a, from.plus);
    CHECK((at_plus || same(jumper.a, from.minus)));
    const bool to_plus = same(jumper.b, to.plus);
    CHECK((to_plus || same(jumper.b, to.minus)));
    CHECK((at_plus == to_plus) == jumper.links_strings);  // like poles link strings, unlike blocks
    const bool one_string = jumper.from / in.series_count == jumper.to / in.series_count;
    CHECK(one_string != jumper.links_strings);
  }
  CHECK(links == 2 * (in.parallel_count - 1));
  if (!arrangement.jumpers.empty()) CHECK(arrangement.jumpers_m == rel(sum_m, 1e-9));
}

std::vector<Shortfall> joined(const PackingResult& result, std::size_t choice) {
  std::vector<Shortfall> list = result.all_of;
  if (choice < result.one_of.size()) list.push_back(result.one_of[choice]);
  return list;
}

// The locker, larger by what is missing, and this much more.
PackingInput mended(PackingInput in, const std::vector<Shortfall>& list, double more_m) {
  for (const Shortfall& shortfall : list) {
    const double by_m = shortfall.missing_m + more_m;
    switch (shortfall.direction) {
      case Direction::length:
        in.locker_length_m += by_m;
        break;
      case Direction::width:
        in.locker_width_m += by_m;
        break;
      case Direction::height:
        in.locker_height_m += by_m;
        break;
      case Direction::opening_length:
        in.opening_length_m += by_m;
        break;
      case Direction::opening_width:
        in.opening_width_m += by_m;
        break;
    }
  }
  return in;
}

}  // namespace

TEST_CASE("blocks lie inside, apart and wired pole to pole") {
  Lockers lockers;
  int fitting = 0, refused = 0, mixed = 0;
  for (int i = 0; i < 150; ++i) {
    const PackingInput in = lockers.next();
    const PackingResult result = pack(in);
    CAPTURE(i);
    CHECK(result.fits == result.problem.empty());
    CHECK(result.exact);
    fitting += result.fits ? 1 : 0;
    refused += result.fits ? 0 : 1;
    for (const Arrangement& arrangement : result.arrangements) {
      check_arrangement(in, arrangement);
      mixed += arrangement.tier_count > 1 || arrangement.posture == Posture::on_side ? 1 : 0;
      if (in.chemistry == Chemistry::flooded) {
        CHECK(arrangement.posture == Posture::upright);
        CHECK(arrangement.tier_count == 1);
      }
    }
    for (std::size_t k = 1; k < result.arrangements.size(); ++k) {
      CHECK(result.arrangements[k - 1].jumpers_m <= result.arrangements[k].jumpers_m + kSame_m);
    }
    check_formulas(result.trace);
  }
  CHECK(fitting > 30);
  CHECK(refused > 30);
  CHECK(mixed > 5);
}

TEST_CASE("what is said to be missing is enough, and a millimetre less is not") {
  Lockers lockers;
  int tried = 0;
  for (int i = 0; i < 120; ++i) {
    const PackingInput in = lockers.next();
    const PackingResult result = pack(in);
    if (result.fits) continue;
    CAPTURE(i);
    CAPTURE(result.problem);
    const std::size_t choices = std::max<std::size_t>(result.one_of.size(), 1);
    for (std::size_t choice = 0; choice < choices; ++choice) {
      const std::vector<Shortfall> list = joined(result, choice);
      REQUIRE_FALSE(list.empty());
      CHECK(pack(mended(in, list, 1e-6)).fits);
      ++tried;
      if (in.side_allowed || in.tiers_allowed) continue;  // another way of lying may want less
      for (std::size_t k = 0; k < list.size(); ++k) {
        std::vector<Shortfall> less = list;
        less[k].missing_m -= 0.001;
        CHECK_FALSE(pack(mended(in, less, 0.0)).fits);
      }
    }
  }
  CHECK(tried > 40);
}

TEST_CASE("a mirrored locker gives the mirrored answer, a turned one the turned answer") {
  Lockers lockers;
  int fitting = 0;
  for (int i = 0; i < 60; ++i) {
    const PackingInput in = lockers.next();
    PackingInput mirrored = in;
    mirrored.push_to_high_end = true;
    PackingInput turned = in;
    std::swap(turned.locker_length_m, turned.locker_width_m);
    const PackingResult here = pack(in);
    const PackingResult there = pack(mirrored);
    const PackingResult across = pack(turned);
    CAPTURE(i);
    REQUIRE(there.arrangements.size() == here.arrangements.size());
    CHECK(across.fits == here.fits);
    CHECK(across.capacity_count == here.capacity_count);
    if (!here.fits) continue;
    ++fitting;
    for (std::size_t k = 0; k < here.arrangements[0].blocks.size(); ++k) {
      const PlacedBlock& a = here.arrangements[0].blocks[k];
      const PlacedBlock& b = there.arrangements[0].blocks[k];
      CHECK(near(b.low.x_m, in.locker_length_m - a.low.x_m - a.size.x_m, kSame_m));
      CHECK(near(b.low.y_m, a.low.y_m, kSame_m));
      CHECK(near(b.plus.x_m, in.locker_length_m - a.plus.x_m, kSame_m));
    }
    CHECK(near(there.arrangements[0].jumpers_m, here.arrangements[0].jumpers_m, 1e-12));
    if (here.arrangements[0].proved && across.arrangements[0].proved) {
      CHECK(near(across.arrangements[0].jumpers_m, here.arrangements[0].jumpers_m, 1e-5));
    }
  }
  CHECK(fitting > 10);
}

TEST_CASE("a larger locker never fits fewer, and the same one twice is the same") {
  Lockers lockers;
  for (int i = 0; i < 60; ++i) {
    const PackingInput in = lockers.next();
    const PackingResult small = pack(in);
    CAPTURE(i);
    for (double PackingInput::*side :
         {&PackingInput::locker_length_m, &PackingInput::locker_width_m,
          &PackingInput::locker_height_m, &PackingInput::opening_length_m,
          &PackingInput::opening_width_m}) {
      PackingInput larger = in;
      larger.*side += lockers.between(0.0, 0.3);
      const PackingResult result = pack(larger);
      CHECK(result.capacity_count >= small.capacity_count);
      CHECK((result.fits || !small.fits));
    }
    const PackingResult again = pack(in);
    REQUIRE(again.arrangements.size() == small.arrangements.size());
    if (small.fits) {
      for (std::size_t k = 0; k < small.arrangements[0].blocks.size(); ++k) {
        CHECK(again.arrangements[0].blocks[k].low.x_m == small.arrangements[0].blocks[k].low.x_m);
        CHECK(again.arrangements[0].blocks[k].plus.y_m == small.arrangements[0].blocks[k].plus.y_m);
      }
    }
  }
}

TEST_CASE("up to eight blocks the search ends with a proof; cut short it proves nothing false") {
  constexpr long kCutShort_count = 200;
  Lockers lockers;
  int fitting = 0;
  for (int i = 0; i < 2000; ++i) {
    PackingInput in = lockers.next();
    in.parallel_count = lockers.pick(1, 2);
    const double more = std::sqrt(static_cast<double>(in.parallel_count));
    in.locker_length_m *= more;
    in.locker_width_m *= more;
    const FitResult full = fit(in);
    const FitResult cut = fit(in, kCutShort_count);
    CAPTURE(i);
    CHECK(full.exact);
    if (cut.fits || cut.exact) CHECK(cut.fits == full.fits);
    CHECK(cut.held_count <= full.held_count);
    bool exact = true;
    CHECK(std::min(in.series_count * in.parallel_count, capacity_count(in, exact)) == full.held_count);
    fitting += full.fits ? 1 : 0;
  }
  CHECK(fitting > 200);
  CHECK(fitting < 1800);
}

TEST_CASE("of more blocks than are searched for only what the floor rules out fails") {
  Lockers lockers;
  for (int i = 0; i < 200; ++i) {
    PackingInput in = lockers.next();
    in.series_count = 3;
    in.parallel_count = lockers.pick(3, 60);
    const FitResult many = fit(in);
    CAPTURE(i);
    CHECK_FALSE(many.fits);
    CHECK_FALSE(many.problem.empty());
    if (!many.exact) continue;
    in.series_count = in.parallel_count = 1;
    bool exact = true;
    CHECK(capacity_count(in, exact) <= std::max(many.held_count, 0));
  }
}

TEST_CASE("a heavier block never wants less, nor does a bow locker") {
  for (const bool planes : {false, true}) {
    double last_N = 0.0;
    for (double mass_kg = 5.0; mass_kg < 80.0; mass_kg += 5.0) {
      RestraintInput in{.block_mass_kg = mass_kg,
                        .block_height_m = 0.24,
                        .planes = planes,
                        .strap_rated_N = 900.0};
      const RestraintResult result = restrain(in);
      CHECK(result.vertical_N >= last_N);
      last_N = result.vertical_N;
      for (const RestraintRule& rule : result.rules) CHECK(result.vertical_N >= rule.vertical_N);
      CHECK(result.strap_count * 0.5 * result.strap_need_N == rel(result.vertical_N, 1e-12));
      check_formulas(result.trace);
      in.at_bow = true;
      CHECK(restrain(in).vertical_N >= result.vertical_N);
    }
  }
}

TEST_CASE("a refill goes on without a step, and is whole when taper() says so") {
  for (const Chemistry kind :
       {Chemistry::flooded, Chemistry::agm, Chemistry::gel, Chemistry::lifepo4}) {
    for (const double depth_frac : {0.05, 0.3, 0.5, 0.8, 1.0}) {
      for (const double bulk_A : {1.0, 10.0, 40.0}) {
        const TaperInput course = refill_course(kind, 100.0, depth_frac, bulk_A);
        const double whole_h = taper(course).time_h;
        CHECK(stored_Ah(course, whole_h) == rel(100.0 * depth_frac, 1e-9));
        CHECK(stored_Ah(course, 0.0) == 0.0);
        double last_Ah = 0.0;
        for (int i = 1; i <= 200; ++i) {
          const double now_Ah = stored_Ah(course, whole_h * i / 200.0);
          CHECK(now_Ah >= last_Ah);
          CHECK(now_Ah - last_Ah <= bulk_A * whole_h / 200.0 + 1e-9);
          last_Ah = now_Ah;
        }
      }
    }
  }
}

TEST_CASE("more alternator, more sun and more night never leave the bank emptier") {
  double last_frac = 0.0;
  for (double alternator_A = 20.0; alternator_A <= 200.0; alternator_A += 20.0) {
    const DcDcResult result = dc_dc({.capacity_Ah = 100.0,
                                     .depth_frac = 0.6,
                                     .charge_V = 43.0,
                                     .output_A = 20.0,
                                     .alternator_A = alternator_A,
                                     .own_loads_A = 5.0,
                                     .running_h = 2.0});
    CHECK(result.left_frac >= last_frac);
    CHECK(result.left_frac <= 1.0);
    last_frac = result.left_frac;
    check_formulas(result.trace);
  }
  last_frac = 0.0;
  for (double night_h = 0.0; night_h <= 16.0; night_h += 1.0) {
    const ShoreResult result = shore({.block_capacity_Ah = 100.0,
                                      .block_charge_V = 14.4,
                                      .block_count = 3,
                                      .depth_frac = 0.7,
                                      .charger_A = 15.0,
                                      .other_loads_A = 4.0,
                                      .night_h = night_h});
    CHECK(result.left_frac >= last_frac);
    CHECK(result.full_tonight == (result.left_frac > 1.0 - 1e-9));
    last_frac = result.left_frac;
    check_formulas(result.trace);
  }
  double last_Wh = -1e9;
  for (double panel_W = 0.0; panel_W <= 100.0; panel_W += 10.0) {
    const SolarResult result = solar({.bank_Wh = 4000.0,
                                      .panel_W = panel_W,
                                      .full_sun_h = 3.0,
                                      .standing_W = 1.0,
                                      .missing_frac = 0.2});
    CHECK(result.net_Wh > last_Wh);
    CHECK(result.keeps_full == (panel_W >= result.panel_least_W));
    last_Wh = result.net_Wh;
    check_formulas(result.trace);
  }
}

TEST_CASE("more cells want more air and last shorter; a failure is never milder than boost") {
  for (const Chemistry kind : {Chemistry::flooded, Chemistry::agm, Chemistry::gel}) {
    double last_m3_per_h = 0.0;
    for (int blocks = 1; blocks <= 8; ++blocks) {
      const VentPlanResult result = vent_plan({.chemistry = kind,
                                               .block_capacity_Ah = 100.0,
                                               .block_count = blocks,
                                               .charger_A = 15.0,
                                               .free_volume_m3 = 0.2});
      REQUIRE(result.demands.size() == 3);
      for (std::size_t i = 1; i < 3; ++i) {
        CHECK(result.demands[i].flow_m3_per_h > result.demands[i - 1].flow_m3_per_h);
        CHECK(result.demands[i].closed_min < result.demands[i - 1].closed_min);
      }
      CHECK(result.opening_cm2 > last_m3_per_h);
      last_m3_per_h = result.opening_cm2;
      check_formulas(result.trace);
    }
  }
}

TEST_CASE("the plan shows each block, post, jumper and strap inside its sheet") {
  Lockers lockers;
  int fitting = 0;
  for (int i = 0; i < 40; ++i) {
    const PackingInput in = lockers.next();
    const PackingResult result = pack(in);
    const Drawing drawing = locker_plan_picture(in, result, 2, System::metric);
    CAPTURE(i);
    for (const Shape& shape : drawing.shapes) {
      for (const Point& point : shape.points) {
        CHECK(point.x >= drawing.low.x);
        CHECK(point.x <= drawing.high.x);
        CHECK(point.y >= drawing.low.y);
        CHECK(point.y <= drawing.high.y);
      }
    }
    CHECK_FALSE(drawing.description.empty());
    CHECK(write_svg(drawing).find("nan") == std::string::npos);
    if (!result.fits) {
      CHECK(drawing.description == result.problem);
      continue;
    }
    ++fitting;
    const std::size_t blocks = result.arrangements[0].blocks.size();
    CHECK(drawing.circles.size() == 2 * blocks);
    const auto lines = std::count_if(drawing.shapes.begin(), drawing.shapes.end(),
                                     [](const Shape& s) { return s.line == Line::accent; });
    CHECK(static_cast<std::size_t>(lines) == 2 * result.arrangements[0].jumpers.size());
    const Drawing bare = locker_plan_picture(in, result, 0, System::us);
    CHECK(drawing.shapes.size() >= bare.shapes.size() + 2 * blocks);
  }
  CHECK(fitting > 8);
}
