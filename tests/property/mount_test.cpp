// What any installer knows of a mount, and what must hold of it for any job.

#include "calc/mount/mount.h"

#include <cmath>
#include <random>
#include <string>

#include "job/estimate.h"
#include "support.h"
#include "trace_support.h"

using namespace thole;

namespace {

std::vector<PlateStock> all_plates() {
  return {{.id = "a6", .alloy = "5083-H116", .thickness_mm = 6.0, .price_per_m2 = 100.0},
          {.id = "b6", .alloy = "6061-T6", .thickness_mm = 6.35, .price_per_m2 = 110.0},
          {.id = "a8", .alloy = "5083-H116", .thickness_mm = 8.0, .price_per_m2 = 130.0},
          {.id = "b9", .alloy = "6061-T6", .thickness_mm = 9.525, .price_per_m2 = 150.0},
          {.id = "a10", .alloy = "5083-H116", .thickness_mm = 10.0, .price_per_m2 = 160.0},
          {.id = "a12", .alloy = "5083-H116", .thickness_mm = 12.0, .price_per_m2 = 190.0},
          {.id = "b13", .alloy = "6061-T6", .thickness_mm = 12.7, .price_per_m2 = 210.0},
          {.id = "a16", .alloy = "5083-H116", .thickness_mm = 16.0, .price_per_m2 = 260.0}};
}

std::vector<BoltOffer> all_bolts() {
  return {{.id = "m6", .size = "M6", .grade = "A4-70"},
          {.id = "q", .size = "1/4-20", .grade = "F593G"},
          {.id = "m8", .size = "M8", .grade = "A4-70"},
          {.id = "m10", .size = "M10", .grade = "A4-70"},
          {.id = "m12", .size = "M12", .grade = "A4-80"}};
}

// The job that estimates make of a 7.6 m boat.
MountInput usual_job() {
  return {.thrust_N = 400.0,
          .thrust_lever_m = 1.5,
          .motor_mass_kg = 25.0,
          .overhang_mm = 350.0,
          .plate_length_mm = 450.0,
          .plate_width_mm = 220.0,
          .plates = all_plates(),
          .bolt_rows = 3,
          .bolt_pitch_mm = 120.0,
          .bolt_gauge_mm = 140.0,
          .bolts = all_bolts(),
          .deck_thickness_mm = 3.6,
          .backing_side_mm = 60.0,
          .backing_thickness_mm = 10.0,
          .run_speed_mps = 12.86,
          .run_wave_m = 0.4,
          .displacement_kg = 2300.0,
          .waterline_length_m = 6.6,
          .chine_beam_m = 2.2,
          .deadrise_deg = 18.0,
          .motor_x_m = 6.6};
}

const Check* find(const MountResult& result, std::string_view id) {
  for (const Check& check : result.trace.checks) {
    if (check.id == id) return &check;
  }
  return nullptr;
}

bool fails(const MountResult& result, std::string_view id) {
  const Check* check = find(result, id);
  return check != nullptr && check->verdict() == Verdict::fail;
}

// Within the ranges of the fields, corners more often than not.
MountInput random_job(std::mt19937& random) {
  const auto between = [&](double low, double high) {
    const int corner = static_cast<int>(random() % 4);
    if (corner == 0) return low;
    if (corner == 1) return high;
    return low + (high - low) * static_cast<double>(random() % 1001) / 1000.0;
  };
  MountInput in{.thrust_N = between(50.0, 1500.0),
                .thrust_lever_m = between(0.2, 4.0),
                .motor_mass_kg = between(1.0, 120.0),
                .overhang_mm = between(0.0, 1000.0),
                .chocked = random() % 2 == 0,
                .plate_length_mm = between(150.0, 1200.0),
                .plate_width_mm = between(80.0, 600.0),
                .plates = all_plates(),
                .bolt_rows = 2 + static_cast<int>(random() % 5),
                .bolt_pitch_mm = between(30.0, 400.0),
                .bolt_gauge_mm = between(40.0, 500.0),
                .bolts = all_bolts(),
                .countersunk = random() % 2 == 0,
                .deck = static_cast<DeckKind>(random() % 4),
                .deck_thickness_mm = between(1.0, 40.0),
                .core_thickness_mm = between(0.0, 60.0),
                .backing_side_mm = between(15.0, 300.0),
                .backing_thickness_mm = between(1.0, 30.0),
                .run_speed_mps = between(0.0, 26.0),
                .run_wave_m = between(0.0, 3.0),
                .displacement_kg = between(250.0, 15000.0),
                .waterline_length_m = between(3.0, 14.5),
                .chine_beam_m = between(1.0, 4.8),
                .deadrise_deg = between(0.0, 30.0)};
  in.motor_x_m = between(0.0, 1.1 * in.waterline_length_m);
  in.centre_x_m = between(0.3, 0.5) * in.waterline_length_m;
  in.core_plugged = random() % 3 == 0;
  in.finish = static_cast<Finish>(random() % 4);
  if (random() % 3 == 0) {
    const std::size_t count = 3 + random() % 6;
    for (std::size_t i = 0; i < count; ++i) in.bolt_places.push_back({between(0.0, 1000.0), between(-300.0, 300.0)});
    // Not in one line, whatever the others do.
    in.bolt_places.push_back({501.0, 7.0});
    in.bolt_places.push_back({577.0, -11.0});
    in.bolt_places.push_back({433.0, -91.0});
    in.bolt_edge_mm = between(0.1, 60.0);
  }
  if (random() % 8 == 0) in.plates.clear();
  if (random() % 8 == 0) in.bolts.clear();
  if (random() % 8 == 0) in.plates = {{.id = "x", .alloy = "unknown", .thickness_mm = 10.0}};
  if (random() % 8 == 0) in.bolts = {{.id = "x", .size = "M9", .grade = "A4-70"}};
  if (random() % 8 == 0) in.plates = {in.plates.empty() ? PlateStock{} : in.plates.back()};
  return in;
}

}  // namespace

TEST_SUITE("property") {
  TEST_CASE("bolts put where the rows have them change nothing; moved apart they pull less, and the sum of their pulls holds the moment") {
    const MountInput rows = usual_job();
    MountInput placed = rows;
    const BoltPattern pattern = pattern_of(rows);
    for (const BoltPoint& at : pattern.bolts) placed.bolt_places.push_back({at.x_mm + pattern.middle.x_mm, at.y_mm + pattern.middle.y_mm});
    const MountResult as_rows = mount(rows);
    const MountResult as_placed = mount(placed);
    CHECK(as_placed.bolt_count == as_rows.bolt_count);
    CHECK(as_placed.thrust_tension_N == rel(as_rows.thrust_tension_N, 1e-12));
    CHECK(as_placed.slam_tension_N == rel(as_rows.slam_tension_N, 1e-12));
    CHECK(as_placed.bolt_shear_N == rel(as_rows.bolt_shear_N, 1e-12));
    CHECK(as_placed.pull_limit_N == rel(as_rows.pull_limit_N, 1e-12));
    MountInput wide = placed;
    for (BoltPoint& at : wide.bolt_places) at.y_mm *= 1.2;
    CHECK(mount(wide).thrust_tension_N < as_rows.thrust_tension_N);
    // One bolt alone in front holds what two held.
    MountInput single = placed;
    single.bolt_places.back().x_mm += 20.0;
    CHECK(mount(single).slam_tension_N > 1.5 * as_rows.slam_tension_N);
    std::mt19937 random(11);
    const auto any = [&](double low, double high) { return low + (high - low) * static_cast<double>(random() % 10001) / 10000.0; };
    for (int i = 0; i < 200; ++i) {
      std::vector<BoltPoint> places;
      for (int k = 0; k < 3 + i % 5; ++k) places.push_back({any(0.0, 600.0), any(-200.0, 200.0)});
      const BoltPattern group = bolt_pattern(places);
      const GroupMoments sum = group_moments(group.bolts);
      if (sum.x_mm2 * sum.y_mm2 - sum.xy_mm2 * sum.xy_mm2 < 1e-3 * sum.x_mm2 * sum.y_mm2) continue;  // nearly in one line
      const GroupLoad load{any(-900.0, 900.0), any(-900.0, 900.0), any(-900.0, 900.0), any(-900.0, 900.0), any(-900.0, 900.0), any(-900.0, 900.0)};
      GroupLoad held{};
      for (std::size_t b = 0; b < places.size(); ++b) {
        const BoltForce force = elastic_forces(group.bolts, load)[b];
        held.force_x_N += force.shear_x_N;
        held.force_y_N += force.shear_y_N;
        held.force_z_N += force.tension_N;
        held.moment_x_Nm += force.tension_N * group.bolts[b].y_mm / 1000.0;
        held.moment_y_Nm -= force.tension_N * group.bolts[b].x_mm / 1000.0;
        held.moment_z_Nm += (force.shear_y_N * group.bolts[b].x_mm - force.shear_x_N * group.bolts[b].y_mm) / 1000.0;
      }
      CHECK(std::abs(held.force_x_N - load.force_x_N) < 1e-9 * 900.0);
      CHECK(std::abs(held.force_y_N - load.force_y_N) < 1e-9 * 900.0);
      CHECK(std::abs(held.force_z_N - load.force_z_N) < 1e-9 * 900.0);
      CHECK(std::abs(held.moment_x_Nm - load.moment_x_Nm) < 1e-9 * 900.0);
      CHECK(std::abs(held.moment_y_Nm - load.moment_y_Nm) < 1e-9 * 900.0);
      CHECK(std::abs(held.moment_z_Nm - load.moment_z_Nm) < 1e-9 * 900.0);
    }
  }

  TEST_CASE("any job within the ranges gives finite figures that their formulas explain") {
    std::mt19937 random(7);
    for (int i = 0; i < 400; ++i) {
      CAPTURE(i);
      const MountResult result = mount(random_job(random));
      for (const double value :
           {result.plate_thickness_mm, result.plate_mass_kg, result.bow_acceleration_factor,
            result.slam_N, result.slam_moment_Nm, result.thrust_moment_Nm, result.plate_stress_MPa,
            result.sag_mm, result.frequency_Hz, result.bolt_tension_N, result.bolt_shear_N,
            result.bolt_torque_Nm, result.preload_N, result.bolt_length_mm, result.backing_area_mm2,
            result.speed_limit_mps}) {
        CHECK(std::isfinite(value));
        CHECK(value >= 0.0);
      }
      for (const Check& check : result.trace.checks) {
        CAPTURE(check.id);
        CHECK(std::isfinite(check.actual));
        CHECK(std::isfinite(check.limit));
        CHECK_FALSE(check.remedy.empty());
        CHECK_FALSE(check.source->id.empty());
      }
      test::check_formulas(result.trace);
    }
  }

  TEST_CASE("the usual job is sane: a plate serves, and a chock lets a thinner one serve") {
    MountInput in = usual_job();
    const MountResult free_end = mount(in);
    CHECK(free_end.plate_found);
    CHECK(free_end.bolt_found);
    for (const Check& check : free_end.trace.checks) {
      CAPTURE(check.id);
      CHECK(check.utilisation() <= 1.0);
    }
    in.chocked = true;
    const MountResult chocked = mount(in);
    CHECK(chocked.plate_found);
    CHECK(chocked.plate_thickness_mm < free_end.plate_thickness_mm);
    CHECK(chocked.plate_thickness_mm >= 9.0);
    CHECK(chocked.plate_thickness_mm <= 10.0);
  }

  TEST_CASE("no thinner plate than the chosen one serves") {
    MountInput in = usual_job();
    const double chosen_mm = mount(in).plate_thickness_mm;
    for (const PlateStock& stock : all_plates()) {
      in.plates = {stock};
      CAPTURE(stock.id);
      if (stock.thickness_mm < chosen_mm) CHECK_FALSE(mount(in).plate_found);
    }
  }

  TEST_CASE("a thicker plate sags less, is stressed less and weighs more") {
    MountInput in = usual_job();
    in.plates = {{.alloy = "5083-H116", .thickness_mm = 8.0}};
    const MountResult thin = mount(in);
    in.plates = {{.alloy = "5083-H116", .thickness_mm = 12.0}};
    const MountResult thick = mount(in);
    CHECK(thick.sag_mm == rel(thin.sag_mm * 8.0 / 27.0, 1e-9));
    CHECK(thick.plate_mass_kg == rel(1.5 * thin.plate_mass_kg, 1e-9));
    CHECK(thick.plate_stress_MPa < thin.plate_stress_MPa);
    CHECK(thick.frequency_Hz > thin.frequency_Hz);
  }

  TEST_CASE("more speed, more motor or more overhang never unloads the mount") {
    const MountResult base = mount(usual_job());
    for (const double factor : {1.1, 1.5, 2.0}) {
      CAPTURE(factor);
      MountInput in = usual_job();
      in.plates = {base.plate};
      in.run_speed_mps *= factor;
      CHECK(mount(in).slam_N >= base.slam_N);
      in = usual_job();
      in.plates = {base.plate};
      in.motor_mass_kg *= factor;
      CHECK(mount(in).sag_mm > base.sag_mm);
      in = usual_job();
      in.plates = {base.plate};
      in.overhang_mm *= factor;
      CHECK(mount(in).slam_moment_Nm > base.slam_moment_Nm);
      in = usual_job();
      in.plates = {base.plate};
      in.thrust_N *= factor;
      CHECK(mount(in).thrust_moment_Nm == rel(factor * base.thrust_moment_Nm, 1e-12));
      CHECK(mount(in).bolt_shear_N == rel(factor * base.bolt_shear_N, 1e-9));
    }
  }

  TEST_CASE("a rougher sea lowers the speed limit") {
    MountInput in = usual_job();
    double last_mps = 1e9;
    for (const double wave_m : {0.0, 0.2, 0.5, 1.0, 3.0}) {
      in.run_wave_m = wave_m;
      const double limit_mps = mount(in).speed_limit_mps;
      CHECK(limit_mps < last_mps);
      last_mps = limit_mps;
    }
  }

  TEST_CASE("what is not on the shelf is said, with a remedy") {
    MountInput in = usual_job();
    in.plates.clear();
    in.bolts.clear();
    const MountResult none = mount(in);
    CHECK_FALSE(none.plate_found);
    CHECK_FALSE(none.bolt_found);
    CHECK(fails(none, "mount.plate"));
    CHECK(fails(none, "mount.bolt"));
    CHECK(none.slam_N > 0.0);
    CHECK(none.bolt_tension_N > 0.0);
  }

  TEST_CASE("a flat head that is too deep for a thin plate is refused") {
    MountInput in = usual_job();
    in.countersunk = true;
    in.plates = {{.alloy = "6061-T6", .thickness_mm = 6.35}};
    in.bolts = {{.size = "M8", .grade = "A4-70"}};
    CHECK(fails(mount(in), "mount.countersink"));
    in.bolts = {{.size = "1/4-20", .grade = "F593G"}};
    CHECK_FALSE(fails(mount(in), "mount.countersink"));
    in.countersunk = false;
    CHECK(find(mount(in), "mount.countersink") == nullptr);
  }

  TEST_CASE("edge distance just under and just over two holes") {
    MountInput in = usual_job();
    in.bolts = {{.size = "M8", .grade = "A4-70"}};  // hole 9 mm
    in.plate_width_mm = in.bolt_gauge_mm + 2.0 * 17.9;
    CHECK(fails(mount(in), "mount.edge"));
    in.plate_width_mm = in.bolt_gauge_mm + 2.0 * 18.1;
    CHECK_FALSE(fails(mount(in), "mount.edge"));
  }

  TEST_CASE("foam takes less torque than balsa, balsa no more than laminate") {
    MountInput in = usual_job();
    in.bolts = {{.size = "M10", .grade = "A4-70"}};
    in.deck = DeckKind::single_skin;
    const double laminate_Nm = mount(in).bolt_torque_Nm;
    in.deck = DeckKind::cored_balsa;
    const double balsa_Nm = mount(in).bolt_torque_Nm;
    in.deck = DeckKind::cored_foam;
    const double foam_Nm = mount(in).bolt_torque_Nm;
    CHECK(foam_Nm < balsa_Nm);
    CHECK(balsa_Nm <= laminate_Nm);
  }

  TEST_CASE("the backing that a failed check proposes passes it") {
    MountInput in = usual_job();
    in.chocked = true;
    in.deck = DeckKind::cored_foam;
    in.backing_side_mm = 30.0;
    in.backing_thickness_mm = 3.0;
    const MountResult before = mount(in);
    const Check* check = find(before, "mount.backing");
    REQUIRE(check != nullptr);
    CHECK(check->verdict() == Verdict::fail);
    REQUIRE_FALSE(check->changes.empty());
    for (const Change& change : check->changes) {
      if (change.field == "mount.backing_side_mm") in.backing_side_mm = change.value;
      if (change.field == "mount.backing_thickness_mm") in.backing_thickness_mm = change.value;
    }
    CHECK_FALSE(fails(mount(in), "mount.backing"));
  }

  TEST_CASE("estimates leave nothing of the mount blank but plate and bolt") {
    for (const DeckKind deck :
         {DeckKind::single_skin, DeckKind::cored_balsa, DeckKind::cored_foam, DeckKind::aluminium}) {
      Job job{};
      job.boat.deck = {deck, Origin::given};
      job.boat.waterline_length_m = {7.2, Origin::given};
      job.mount.overhang_mm = {280.0, Origin::given};
      Trace trace{};
      estimate_mount(job, trace);
      test::check_formulas(trace);
      CHECK(job.mount.overhang_mm.value == 280.0);
      CHECK(job.mount.deck_thickness_mm.value > 2.0);
      CHECK((job.mount.core_thickness_mm.value > 0.0) ==
            (deck == DeckKind::cored_balsa || deck == DeckKind::cored_foam));
      CHECK(job.mount.run_wave_m.known());
      CHECK(job.mount.chocked.value);
      CHECK_FALSE(job.mount.plate.known());
      CHECK_FALSE(job.mount.bolt.known());
    }
  }
}
