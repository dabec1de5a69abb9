#include "calc/trim/trim.h"

#include "base/units.h"
#include "calc/trim/capacity_label.h"
#include "calc/trim/hydrostatics.h"
#include "support.h"

using namespace thole;

namespace {

// Handbook, batteries 6.3.
TrimInput example() {
  return {.length_m = 6.5,
          .waterline_length_m = 5.60,
          .waterline_beam_m = 2.10,
          .displacement_kg = 1500.0,
          .waterplane_ratio = 0.75,
          .salt = true,
          .gm_m = 0.90,
          .initial_trim_deg = -0.5,
          .bow_height_m = 0.9};
}

}  // namespace

TEST_SUITE("published") {
  // Derrett, Ship Stability for Masters and Mates, ch. 9 (WP1): 172.8 m2, the book prints 173; and
  // 22.3 t per cm.
  TEST_CASE("waterplane area and immersion [derrett-ship-stability, ch. 9]") {
    CHECK(near(hydrostatics(36.0, 6.0, 0.8, 1025.0).area_m2, 172.8, 0.1));
    CHECK(near(hydrostatics(128.0, 20.0, 0.85, 1025.0).immersion_kg_per_cm, 22300.0, 50.0));
  }

  // TM1. Drafts 6.7 m forward, 7.3 m aft; 220 t discharged 24 m forward of midships. Then 380 t is
  // moved 25 m forward, which brings the stern to 7.00 m. (The forward draft that the handbook adds
  // to this, 6.75 m, cannot follow: moving weight keeps the mean draft, so that 6.56 m does.)
  TEST_CASE("change of draft by weight [derrett-ship-stability, trim]") {
    const Settling off = settle(120.0, 60.0, 10000.0, 250000.0, -220000.0, -220000.0 * 24.0);
    CHECK(near(off.sinkage_m, -0.22, 1e-9));
    CHECK(near(off.trim_m, -0.2112, 1e-9));
    CHECK(near(6.7 + off.bow_sinkage_m, 6.3744, 1e-4));
    CHECK(near(7.3 + off.stern_sinkage_m, 7.1856, 1e-4));
    const Settling moved = settle(120.0, 60.0, 10000.0, 250000.0, 0.0, 380000.0 * 25.0);
    CHECK(near(7.3 + off.stern_sinkage_m + moved.stern_sinkage_m, 7.00, 0.01));
  }

  // TM4 and the table of batteries 6.2: exact geometry of the family, four or five figures printed.
  TEST_CASE("transom waterplanes [handbook 6.2, geometry recomputed]") {
    struct Row {
      double ratio, flotation, longitudinal, transverse;
    };
    const Row rows[] = {{0.70, 0.3821, 0.04181, 0.04262}, {0.75, 0.3958, 0.04551, 0.04940},
                        {0.80, 0.4125, 0.05001, 0.05619}, {0.85, 0.4316, 0.05570, 0.06298},
                        {0.90, 0.4528, 0.06293, 0.06976}, {1.00, 0.5000, 0.08333, 0.08333}};
    for (const Row& row : rows) {
      CAPTURE(row.ratio);
      const WaterplaneShape shape = transom_waterplane(row.ratio);
      CHECK(near(shape.flotation_ratio, row.flotation, 6e-5));
      CHECK(near(shape.longitudinal_inertia_ratio, row.longitudinal, 6e-6));
      CHECK(near(shape.transverse_inertia_ratio, row.transverse, 6e-6));
    }
  }

  // TM2.
  TEST_CASE("hydrostatics of the example boat [handbook 6.3, recomputed]") {
    const Hydrostatics water = hydrostatics(5.60, 2.10, 0.75, 1025.0);
    CHECK(near(water.area_m2, 8.82, 0.005));
    CHECK(near(water.immersion_kg_per_cm, 90.4, 0.1));
    CHECK(near(water.moment_kgm_per_cm, 30.72, 0.05));
    CHECK(near(water.flotation_x_m, 2.217, 0.002));
  }

  // Batteries 6.3, the table: motor with mount 45 kg at 5.7 m, three blocks; cm with two decimals,
  // from rounded intermediate values, so 0.02 cm.
  TEST_CASE("motor and bank on the example boat [handbook 6.3, recomputed]") {
    TrimInput in = example();
    in.items = {{.label = "motor", .mass_kg = 45.0, .x_m = 5.7},
                {.label = "bank", .mass_kg = 81.0, .x_m = 4.6}};
    const TrimResult at_bow = trim(in);
    CHECK(at_bow.added_kg == 126.0);
    CHECK(near(100.0 * at_bow.trim_change_m, 11.39, 0.02));
    CHECK(near(at_bow.trim_change_deg, 1.165, 0.002));
    CHECK(near(100.0 * at_bow.bow_sinkage_m, 8.27, 0.02));
    CHECK(near(100.0 * at_bow.stern_sinkage_m, -3.11, 0.02));

    in.items[1].x_m = 2.3;
    const TrimResult at_console = trim(in);
    CHECK(near(100.0 * at_console.trim_change_m, 5.32, 0.02));
    CHECK(near(100.0 * at_console.bow_sinkage_m, 4.61, 0.02));
    CHECK(near(100.0 * at_console.stern_sinkage_m, -0.71, 0.02));

    in.items[1] = {.label = "bank", .mass_kg = 40.5, .x_m = 4.6};
    CHECK(near(100.0 * trim(in).trim_change_m, 8.24, 0.02));
  }

  // HL1 and its neighbour in batteries 6.3.
  TEST_CASE("list from weights off the centreline [handbook 6.1, recomputed]") {
    CHECK(near(heel_deg(45.0 * 0.25, 1626.0, 0.90), 0.440, 0.003));
    CHECK(near(heel_deg(27.0 * 0.60, 1626.0, 0.90), 0.63, 0.005));
  }

  // IN1.
  TEST_CASE("metacentric height by inclining [inclining experiment, recomputed]") {
    CHECK(near(inclining_gm_m(75.0, 0.9, 1500.0, 3.0), 0.859, 0.002));
  }

  // IMO A.749(18) Annex 3: B 2.4 m, f 0.80.
  TEST_CASE("metacentric height by roll period [imo-a749-annex-3, recomputed]") {
    CHECK(near(roll_test_gm_m(0.80, 2.4, 1.5), 1.64, 0.005));
    CHECK(near(roll_test_gm_m(0.80, 2.4, 1.8), 1.138, 0.0005));
    CHECK(near(roll_test_gm_m(0.80, 2.4, 2.2), 0.762, 0.0005));
  }

  // PC1.
  TEST_CASE("persons on a capacity label [33-cfr-183-41]") {
    CHECK(label_persons(kg_from_lb(550.0)) == 4);
    CHECK(label_persons(kg_from_lb(547.0)) == 4);
  }

  // PC2, and the classes below it.
  TEST_CASE("battery that a capacity label counts [33-cfr-183-75-2018]") {
    CHECK(label_battery(100.0).dry_kg == rel(kg_from_lb(45.0), 1e-12));
    CHECK(label_battery(100.0).submerged_kg == rel(kg_from_lb(25.0), 1e-12));
    CHECK(label_battery(10.9).dry_kg == rel(kg_from_lb(20.0), 1e-12));
    CHECK(label_battery(7.0).submerged_kg == rel(kg_from_lb(11.0), 1e-12));
    CHECK(label_battery(6.9).dry_kg == 0.0);
  }

  // Batteries 6.5: motor 99 lb and three blocks of 60 lb: 234 lb beyond the label, 1.66 persons.
  TEST_CASE("persons that the work takes from a label [33-cfr-183-75-2018, recomputed]") {
    TrimInput in = example();
    in.length_m = 6.0;
    in.items = {{.label = "motor", .mass_kg = kg_from_lb(99.0), .x_m = 5.7},
                {.label = "bank", .mass_kg = kg_from_lb(180.0), .x_m = 2.3}};
    CHECK(near(trim(in).persons_taken_count, 1.66, 0.005));
    in.length_m = 6.096;  // 20 ft: no label any more
    CHECK(trim(in).persons_taken_count == 0.0);
  }

  // Batteries 6.4: limits by custom, on a boat of 5.6 m waterline.
  TEST_CASE("acceptance of weight at the bow [common practice]") {
    TrimInput in = example();
    in.items = {{.label = "motor", .mass_kg = 45.0, .x_m = 5.7},
                {.label = "bank", .mass_kg = 81.0, .x_m = 4.6, .x_field = "trim.bank_x_m"}};
    const TrimResult result = trim(in);
    const auto limit = [&](std::string_view id) {
      for (const Check& check : result.trace.checks) {
        if (check.id == id) return check.limit;
      }
      return -1.0;
    };
    CHECK(limit("trim.added") == rel(56.0, 1e-12));  // mm: 1 % of 5.6 m
    CHECK(limit("trim.mass") == rel(75.0, 1e-12));   // kg: 5 % of 1500 kg
    CHECK(limit("trim.list") == 2.0);
    CHECK(limit("trim.attitude") == 0.5);
    CHECK(limit("trim.bow_freeboard") == rel(0.10, 1e-12));
  }
}
