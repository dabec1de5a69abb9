// Tests at the dock against printed figures.

#include "calc/trim/dock_tests.h"
#include "calc/trim/hydrostatics.h"
#include "support.h"
#include "trace_support.h"

using namespace thole;

TEST_SUITE("published") {
  // Handbook, batteries 6.2, after IMO A.749(18) Annex 3: B 2.4 m, f 0.80.
  TEST_CASE("metacentric height from a roll's period [imo-a749-annex-3, recomputed]") {
    struct Row {
      double period_s, gm_m, printed_m;
    };
    for (const Row& row : {Row{1.5, 1.64, 0.005}, Row{1.8, 1.138, 0.0006}, Row{2.2, 0.762, 0.0006}}) {
      CAPTURE(row.period_s);
      const GmReading reading = roll_test({.beam_m = 2.4, .period_s = row.period_s});
      CHECK(near(reading.gm_m, row.gm_m, row.printed_m));
      CHECK(reading.doubts.empty());
    }
  }

  // Handbook, batteries 6.2: 75 kg moved by 0.9 m on 1500 kg giving 3 degrees. tan 3 deg = 0.052408,
  // so that a plumb line of a metre goes across by 52.408 mm.
  TEST_CASE("metacentric height from people who change sides [handbook 6.2, recomputed]") {
    const GmReading reading = inclining_test({.mass_kg = 75.0,
                                              .shift_m = 0.9,
                                              .pendulum_m = 1.0,
                                              .pendulum_shift_mm = 52.408,
                                              .displacement_kg = 1500.0});
    CHECK(near(reading.gm_m, 0.859, 0.0005));
    CHECK(near(pendulum_deg(1.0, 52.408), 3.0, 1e-3));
  }

  // The textbook example of the inclining experiment, as Derrett has it in ch. 14 (from memory, and
  // recomputed): a ship of 8000 t, 30 t moved across by 8.5 m, plumb line of 10 m, its foot across by
  // 24 cm: GM 1.328 m.
  TEST_CASE("inclining experiment of a ship [derrett-ship-stability, recalled]") {
    const GmReading reading = inclining_test({.mass_kg = 30e3,
                                              .shift_m = 8.5,
                                              .pendulum_m = 10.0,
                                              .pendulum_shift_mm = 240.0,
                                              .displacement_kg = 8000e3});
    CHECK(near(reading.gm_m, 1.328, 0.0005));
  }

  // Derrett ch. 9: 128 m x 20 m, C_w 0.85, salt water: 22.3 t sink her by a centimetre.
  TEST_CASE("coefficient back from a known weight [derrett-ship-stability, ch. 9]") {
    const ImmersionReading reading = immersion_test({.mass_kg = 223040.0,
                                                     .sinkage_mm = 100.0,
                                                     .waterline_length_m = 128.0,
                                                     .waterline_beam_m = 20.0});
    CHECK(near(reading.immersion_kg_per_cm, 22300.0, 10.0));
    CHECK(near(reading.waterplane_ratio, 0.85, 0.001));
  }

  // Weight added: dGM = w / (W + w) (T + t/2 - GM - h) (Rawson and Tupper; from memory). A box of
  // 20 x 6 m, 3 m deep in salt water, KG 2 m: KB 1.5, BM 36/36, GM 0.5 m. With a tenth of its
  // weight at 5 m above the keel it sinks by 0.3 m; KB, BM and KG of the new draft give the new GM.
  TEST_CASE("metacentric height after weight is added [box vessel, from first principles]") {
    const double before_kg = 1025.0 * 20.0 * 6.0 * 3.0;
    const double added_kg = 1025.0 * 20.0 * 6.0 * 0.3;
    const double kb_m = 1.65, bm_m = 36.0 / (12.0 * 3.3);
    const double kg_m = (before_kg * 2.0 + added_kg * 5.0) / (before_kg + added_kg);
    const double gm_before_m = 1.5 + 36.0 / (12.0 * 3.0) - 2.0;
    const double gm_m = gm_with_weights_m(gm_before_m, before_kg, added_kg, added_kg * (5.0 - 3.0), 0.3);
    CHECK(gm_m == rel(kb_m + bm_m - kg_m, 1e-12));
    const double rule_m = added_kg / (before_kg + added_kg) * (3.0 + 0.15 - gm_before_m - 5.0);
    CHECK(gm_m - gm_before_m == rel(rule_m, 1e-9));
  }
}

TEST_SUITE("property") {
  TEST_CASE("readings that are better known narrow the band; formulas give what they show") {
    const RollTestInput roll{.beam_m = 2.4, .period_s = 1.8};
    RollTestInput better = roll;
    better.roll_factor_spread_factor = 0.02;
    CHECK(roll_test(better).spread_m < roll_test(roll).spread_m);
    thole::test::check_formulas(roll_test(roll).trace);
    InclineInput incline{.mass_kg = 75.0, .shift_m = 0.9, .pendulum_m = 1.2, .pendulum_shift_mm = 60.0, .displacement_kg = 1500.0};
    const double wide_m = inclining_test(incline).spread_m;
    thole::test::check_formulas(inclining_test(incline).trace);
    incline.displacement_spread_frac = 0.02;
    CHECK(inclining_test(incline).spread_m < wide_m);
    const ImmersionReading sunk = immersion_test({.mass_kg = 150.0, .sinkage_mm = 17.0, .waterline_length_m = 5.6, .waterline_beam_m = 2.1});
    thole::test::check_formulas(sunk.trace);
    CHECK(sunk.doubts.empty());
  }

  // IMO A.749(18) Annex 3 and practice print coefficients of 0.73 to 0.88. The band is straight, the
  // square is not: hence 1.05.
  TEST_CASE("the roll test's band holds what any published coefficient would give") {
    for (const double factor : {0.73, 0.75, 0.78, 0.80, 0.88}) {
      CAPTURE(factor);
      const GmReading reading = roll_test({.beam_m = 2.4, .period_s = 1.8});
      CHECK(near(roll_test_gm_m(factor, 2.4, 1.8), reading.gm_m, 1.05 * reading.spread_m));
    }
  }
}

TEST_SUITE("bad input") {
  TEST_CASE("readings that cannot be are doubted in words, not hidden") {
    CHECK_FALSE(roll_test({.beam_m = 4.8, .period_s = 0.4}).doubts.empty());
    const InclineInput usual{.mass_kg = 75.0, .shift_m = 0.9, .pendulum_m = 1.0, .pendulum_shift_mm = 52.0, .displacement_kg = 1500.0};
    CHECK(inclining_test(usual).doubts.empty());
    InclineInput faint = usual;
    faint.pendulum_shift_mm = 5.0;
    CHECK_FALSE(inclining_test(faint).doubts.empty());
    InclineInput steep = usual;
    steep.pendulum_shift_mm = 300.0;
    CHECK_FALSE(inclining_test(steep).doubts.empty());
    CHECK_FALSE(immersion_test({.mass_kg = 2000.0, .sinkage_mm = 1.0, .waterline_length_m = 5.6, .waterline_beam_m = 2.1}).doubts.empty());
  }

  TEST_CASE("boundary: one and seven degrees") {
    InclineInput in{.mass_kg = 75.0, .shift_m = 0.9, .pendulum_m = 1.0, .displacement_kg = 3000.0};
    const auto doubted = [&](double shift_mm, std::string_view words) {
      in.pendulum_shift_mm = shift_mm;
      for (const std::string& doubt : inclining_test(in).doubts) {
        if (doubt.find(words) != std::string::npos) return true;
      }
      return false;
    };
    CHECK(doubted(17.45, "less than one"));        // tan 1 deg = 0.017455
    CHECK_FALSE(doubted(17.46, "less than one"));
    CHECK_FALSE(doubted(122.78, "more than seven"));  // tan 7 deg = 0.122785
    CHECK(doubted(122.79, "more than seven"));
  }
}
