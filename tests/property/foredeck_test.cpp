#include "calc/foredeck_study.h"

#include <cmath>

#include "calc/length_study.h"
#include "calc/snag_study.h"
#include "draw/bow_elevation.h"
#include "draw/foredeck_plan.h"
#include "draw/length_curve.h"
#include "io/presets.h"
#include "support.h"
#include "trace_support.h"

using namespace thole;

namespace {

RoomInput deck() {
  return {.motor = {.length_m = 1.8, .tube_m = 0.04, .propeller_diameter_m = 0.3, .collar_m = 0.15},
          .stance = {.pivot_aft_m = -0.2, .pivot_starboard_m = 0.1, .stow_angle_deg = 5.0},
          .deck_length_m = 2.5,
          .deck_width_m = 1.4,
          .mount_measured = true,
          .items = {{DeckItemKind::cleat, 0.8, 0.45, 0.2, 0.06, 0.08},
                    {DeckItemKind::lid, 0.7, -0.25, 0.4, 0.3, 0.03},
                    {DeckItemKind::post, 1.4, 0.4, 0.1, 0.1, 0.6}},
          .rail_height_m = 0.6,
          .rail_inset_m = 0.05};
}

double clearance_to(const std::vector<Clearance>& all, int item) {
  for (const Clearance& at : all) {
    if (at.item == item) return at.distance_m;
  }
  return -1.0;
}

RoomInput mirrored(RoomInput in) {
  in.stance.pivot_starboard_m *= -1.0;
  in.stance.stow_angle_deg *= -1.0;
  for (DeckItem& item : in.items) item.starboard_m *= -1.0;
  return in;
}

}  // namespace

TEST_SUITE("foredeck") {
  TEST_CASE("an item moved away from the motor is never nearer") {
    RoomInput in = deck();
    double stowed_m = -1.0;
    double swinging_m = -1.0;
    for (int i = 0; i < 20; ++i) {
      in.items[0].starboard_m = 0.45 + 0.05 * i;
      const RoomResult room = foredeck_room(in);
      CHECK(clearance_to(room.stowed, 0) >= stowed_m);
      CHECK(clearance_to(room.swinging, 0) >= swinging_m);
      CHECK(clearance_to(room.swinging, 0) <= clearance_to(room.stowed, 0));
      stowed_m = clearance_to(room.stowed, 0);
      swinging_m = clearance_to(room.swinging, 0);
    }
  }

  // By hand: shaft straight aft on the centreline 150+ mm up (0.17 m: blade and 20 mm), tube 20 mm in radius;
  // a post 1 m tall whose side is 0.3 m off: 280 mm. A box 0.1 m high under it: 170 - 100 - 20 = 50 mm.
  TEST_CASE("clearances that can be reckoned by hand") {
    RoomInput in = deck();
    in.stance = {-0.2, 0.0, 0.0};
    in.rail_height_m = 0.0;
    in.items = {{DeckItemKind::post, 1.0, 0.35, 0.1, 0.1, 1.0}, {DeckItemKind::other, 1.0, 0.0, 0.2, 0.4, 0.1}};
    const RoomResult room = foredeck_room(in);
    CHECK(near(clearance_to(room.stowed, 0), 0.280, 1e-4));
    CHECK(near(clearance_to(room.stowed, 1), 0.050, 1e-4));
    CHECK(room.stowed.front().item == 1);
    CHECK(room.stowed.front().part == "shaft");
    CHECK(near(room.stowed_end_m, -0.2 + 1.8 + 0.25 - 0.15, 1e-12));
    // The pivot stands 0.2 m ahead of the stem, which is the nearest of the deck's edge.
    CHECK(near(room.outside_m, 0.2, 1e-3));
  }

  TEST_CASE("a mirrored deck gives the mirrored answer") {
    const RoomResult room = foredeck_room(deck());
    const RoomResult other = foredeck_room(mirrored(deck()));
    REQUIRE(room.stowed.size() == other.stowed.size());
    for (int item = 0; item < 3; ++item) {
      CHECK(clearance_to(room.stowed, item) == rel(clearance_to(other.stowed, item), 1e-9));
      CHECK(clearance_to(room.swinging, item) == rel(clearance_to(other.swinging, item), 1e-9));
    }
    CHECK(room.outside_m == rel(other.outside_m, 1e-9));
    const std::vector<Bar> bars = tilted_motor(deck().motor, deck().stance, 0.0);
    const std::vector<Bar> turned = tilted_motor(deck().motor, mirrored(deck()).stance, 0.0);
    const double hidden = sum_deg(within(hidden_arcs({0.3, 0.3, 0.16}, bars, kFullLight_deg), sidelight_arc(0.3)));
    CHECK(hidden == rel(sum_deg(within(hidden_arcs({0.3, -0.3, 0.16}, turned, kFullLight_deg), sidelight_arc(-0.3))), 1e-6));
    CHECK(hidden > 0.0);
  }

  TEST_CASE("a wider band of heights never hides less; nothing is hidden from high above") {
    const std::vector<Bar> bars = tilted_motor(deck().motor, deck().stance, 0.0);
    for (const double up_m : {0.0, 0.1, 0.2, 0.3, 0.5}) {
      const Place3 light{0.3, 0.0, up_m};
      CHECK(sum_deg(hidden_arcs(light, bars, kMostLight_deg)) >= sum_deg(hidden_arcs(light, bars, kFullLight_deg)));
    }
    CHECK(hidden_arcs({0.3, 0.0, 3.0}, bars, kMostLight_deg).empty());
  }

  TEST_CASE("a longer shaft never ventilates more, keeps no less, bends no less; every ready-made job is drawn") {
    for (const ReadyJob& ready : ready_jobs()) {
      CAPTURE(ready.id);
      const Design design = evaluate(ready.job, default_catalogue());
      const LengthStudy study = length_study(design);
      REQUIRE(study.problem.empty());
      for (std::size_t i = 1; i < study.curve.size(); ++i) {
        CHECK(study.curve[i].ventilating_frac <= study.curve[i - 1].ventilating_frac);
        CHECK(study.curve[i].tip_frac <= study.curve[i].ventilating_frac);
        CHECK(study.curve[i].kept_frac >= study.curve[i - 1].kept_frac - 1e-12);
        CHECK(study.curve[i].deflection_mm >= study.curve[i - 1].deflection_mm);
      }
      // What the study says of the chosen length is what the design says.
      CHECK(study.chosen.kept_frac == rel(design.shaft.immersion_factor, 1e-12));
      CHECK(near(study.chosen.tip_frac, design.shaft.emergence_frac, 1e-12));
      CHECK(study.chosen.deflection_mm == rel(design.shaft.tube_deflection_mm, 1e-12));
      CHECK(study.bend.back().deflection_mm == rel(design.shaft.tube_deflection_mm, 1e-9));
      CHECK(study.bend.front().stress_MPa == rel(design.shaft.tube_stress_MPa, 1e-9));
      CHECK_FALSE(length_curve_picture(study, System::us).shapes.empty());
      CHECK_FALSE(bow_elevation(design, System::metric).shapes.empty());
      CHECK_FALSE(foredeck_picture(design, System::metric).shapes.empty());
      const ForedeckStudy deck_study = foredeck_study(design);
      test::check_formulas(snag_study(design).trace);
      test::check_formulas(deck_study.room.trace);
      test::check_formulas(deck_study.stowing.trace);
      // Unmeasured: open, neither passed nor failed.
      for (const Check& check : deck_study.room.trace.checks) CHECK(check.verdict() == Verdict::not_evaluated);
    }
  }

  // Yield order by hand, the first ready-made job's figures put in: each part's push is what its own step
  // says, and the list ascends.
  TEST_CASE("what gives first: ascending, and a stronger part comes later") {
    Job job;
    job.boat.length_m = {7.0, Origin::given};
    job.boat.displacement_kg = {2400.0, Origin::given};
    job.boat.bow_height_m = {1.1, Origin::given};
    job.mount.backing_side_mm = {80.0, Origin::given};
    job.mount.backing_thickness_mm = {16.0, Origin::given};
    const auto force_of = [](const SnagStudy& study, SnagPart part) {
      for (const SnagStrength& each : study.order) {
        if (each.part == part) return each.force_N;
      }
      return 0.0;
    };
    const SnagStudy study = snag_study(evaluate(job, default_catalogue()));
    REQUIRE(study.problem.empty());
    REQUIRE(study.order.size() == 6);
    for (std::size_t i = 1; i < study.order.size(); ++i) CHECK(study.order[i].force_N >= study.order[i - 1].force_N);
    Job stout = job;
    stout.mount.backing_side_mm = {120.0, Origin::given};
    stout.mount.backing_thickness_mm = {20.0, Origin::given};
    const SnagStudy better = snag_study(evaluate(stout, default_catalogue()));
    CHECK(force_of(better, SnagPart::skin) > force_of(study, SnagPart::skin));
    CHECK(force_of(better, SnagPart::core) > force_of(study, SnagPart::core));
    CHECK(force_of(better, SnagPart::tube) == rel(force_of(study, SnagPart::tube), 1e-12));
    Job soft = job;
    soft.shaft.tube_yield_MPa = {120.0, Origin::given};
    const SnagStudy fuse = snag_study(evaluate(soft, default_catalogue()));
    CHECK(fuse.order.front().part == SnagPart::tube);
    CHECK(fuse.trace.checks.front().verdict() != Verdict::fail);
  }

  // By hand: single skin 5 mm under 60 mm squares of 10 mm, washers 24 mm: s_e = min(60, 24 + 40, 120) = 60 mm. Skin:
  // 4 60 5 16.375 = 19650 N (tau 22.5 - 17.5 0.35), over what the worst bolt pulls at full thrust by the plate's elements.
  // By the elastic group, three rows at 120 mm, 140 mm apart, a push h below gives the worst bolt h (120 c / 57600 +
  // 70 s / 29400), at most h / 316.1 mm: a plate that pries tears out before that.
  TEST_CASE("the deck's push against a hand computation") {
    Job job;
    job.boat.length_m = {7.0, Origin::given};
    job.boat.displacement_kg = {2400.0, Origin::given};
    job.boat.bow_height_m = {1.1, Origin::given};
    job.boat.deck = {DeckKind::single_skin, Origin::given};
    job.mount.deck_thickness_mm = {5.0, Origin::given};
    job.mount.bolt = {"m8-a4-70", Origin::given};
    job.mount.backing_side_mm = {60.0, Origin::given};
    job.mount.backing_thickness_mm = {10.0, Origin::given};
    const Design design = evaluate(job, default_catalogue());
    REQUIRE(design.mount.bolt.size == "M8");
    const SnagStudy study = snag_study(design);
    const double h_mm = 1000.0 * (design.shaft.length_m - design.job.shaft.collar_m.value);
    const PlateStudy plate = plate_study(design);
    double pull_N = 0.0;
    for (const PlateFinding& at : plate.findings)
      if (at.id == "thrust") pull_N = std::max(pull_N, at.bolt_N);
    REQUIRE(pull_N > 0.0);
    bool told = false;
    for (const SnagStrength& each : study.order) {
      if (each.part != SnagPart::skin) continue;
      told = true;
      CHECK(each.force_N == rel(design.hold.motor.thrust_N * 19650.0 / pull_N, 1e-9));
      CHECK(each.force_N < 19650.0 * 316.1 / h_mm);
      CHECK(each.force_N > 0.25 * 19650.0 * 316.1 / h_mm);
    }
    CHECK(told);
  }
}
