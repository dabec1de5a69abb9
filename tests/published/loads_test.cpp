// Load cases, fatigue and metals against printed figures.

#include "calc/mount/load_cases.h"

#include <cmath>
#include <string_view>

#include "base/units.h"
#include "calc/mount/fatigue.h"
#include "data/bolts.h"
#include "data/galvanic.h"
#include "support.h"
#include "trace_support.h"

using namespace thole;

namespace {

// The pattern of the handbook's bolt group check B (mount-structure 4.5): x 0, 150, 300, y +-80 mm.
LoadCasesInput check_b() {
  return {.thrust_N = 400.0,
          .thrust_lever_m = 1.8,
          .motor_mass_kg = 30.0,
          .pattern = bolt_pattern(bolt_rectangle(3, 150.0, 160.0)),
          .reach_mm = 350.0,
          .plate_end_mm = 100.0,
          .slam_N = 2059.4,
          .bow_g = 6.0,
          .motor_g = 6.0,
          .amplification_factor = 1.0,
          .hull = {.waterline_length_m = 7.2, .chine_beam_m = 2.3, .deadrise_deg = 18.0, .displacement_kg = 3200.0, .speed_mps = mps_from_kn(30.0)},
          .run_wave_m = 0.5,
          .motor_x_m = 7.2,
          .centre_x_m = 2.9,
          .design_cg_g = 2.1414,
          .immersed_m = 0.9,
          .stem_drag_N_s2_per_m2 = 22.98,
          .deployed_limit_mps = 4.2};
}

const LoadCase& case_of(const LoadCases& loads, std::string_view id) {
  for (const LoadCase& at : loads.cases) {
    if (at.id == id) return at;
  }
  FAIL("no such case");
  return loads.cases.front();
}

}  // namespace

TEST_SUITE("published") {
  // FA5: fore-and-aft thrust +-1200 N on the end bolts; stowed 30 kg with n_bow 6 at x 650: about the
  // centroid 1029.7 Nm, fwd bolts -2059.4, aft +1372.9 N.
  TEST_CASE("load cases on bolt group check B [handbook 4.5, recomputed]") {
    const LoadCases loads = load_cases(check_b());
    const LoadCase& ahead = case_of(loads, "thrust.000");
    CHECK(near(ahead.moment_Nm, 720.0, 0.01));
    CHECK(near(ahead.bolt_N, 1200.0, 0.1));
    const LoadCase& aside = case_of(loads, "thrust.090");
    CHECK(near(std::abs(aside.at_bolts.moment_x_Nm), 720.0, 0.01));
    CHECK(near(std::abs(aside.at_bolts.moment_z_Nm), 200.0, 0.01));
    CHECK(near(aside.bolt_N, 1500.0, 0.1));
    const LoadCase& slam = case_of(loads, "slam");
    CHECK(near(slam.moment_Nm, 1029.7, 0.1));
    CHECK(near(slam.bolt_N, 1372.9, 0.2));
    thole::test::check_formulas(loads.trace);
  }

  // Handbook 1.2 (c) and LD6, LD7: H 0.5 m, 30 kn: 8.697 g; 14.89 kn for 2.1414 g. 1.2 (a): 3.804 g.
  TEST_CASE("formulas and the stowed speed limit [handbook 1.2, LD1, LD6, LD7]") {
    const LoadCases loads = load_cases(check_b());
    CHECK(loads.formulas[0].cg_g == rel(3.8038, 1e-4));
    CHECK(loads.formulas[0].outside.empty());
    CHECK(loads.formulas[2].cg_g == rel(8.697, 1e-3));
    CHECK(loads.formulas[3].cg_g == rel(2.141, 1e-3));
    bool found = false;
    for (const SeaSpeed& sea : loads.seas) {
      if (sea.wave_m != 0.5) continue;
      found = true;
      CHECK(near(kn_from_mps(sea.speed_mps), 14.89, 0.05));
    }
    CHECK(found);
  }

  // Handbook 1.5, SH6: 38 mm stem over 0.9 m and pod: 152 N at 5 kn; times 1.5 in the case.
  TEST_CASE("left down under way [handbook 1.5, recomputed]") {
    LoadCasesInput in = check_b();
    in.deployed_limit_mps = mps_from_kn(5.0);
    const LoadCase& down = case_of(load_cases(in), "down.limit");
    CHECK(near(-down.force.force_x_N, 152.0, 2.0));
    CHECK(down.load_factor == 1.5);
    CHECK(down.at_bolts.force_x_N == rel(1.5 * down.force.force_x_N, 1e-12));
  }

  // Handbook 1.5, LD10 with 1.1, LC4: 45.30 N of waves and current in 19.75 Nm about the surface, 0.9 m under a plate that
  // full thrust of 400 N pushes 1.8 m below it: 400 1.8 + 1.5 (45.30 0.9 + 19.75) Nm.
  TEST_CASE("thrust with current and waves acts between the two [handbook 1.5]") {
    LoadCasesInput in = check_b();
    in.deployed_drag_N = 45.30;
    in.deployed_lever_m = 0.9 + 19.75 / 45.30;
    const LoadCase& both = case_of(load_cases(in), "deployed");
    CHECK(-both.force.force_x_N == rel(400.0 + 1.5 * 45.30, 1e-12));
    CHECK(std::abs(both.at_bolts.moment_y_Nm) == rel(400.0 * 1.8 + 1.5 * (45.30 * 0.9 + 19.75), 1e-9));
  }

  // Roark, Table 17.1: 3 for a hole that is small beside the thickness, 1.79 for a wide one; between, 8.5 mm in 9.525 mm.
  TEST_CASE("a hole raises the stress of bending [roark-table-17-1-hole-in-bending]") {
    CHECK(hole_in_bending_factor(0.001, 10.0) == rel(2.98, 1e-3));
    CHECK(hole_in_bending_factor(1e6, 10.0) == rel(1.79, 1e-4));
    CHECK(hole_in_bending_factor(10.0, 10.0) == rel(1.79 + 0.25 / 1.39 + 0.405 - 0.13, 1e-12));
    for (double mm = 1.0; mm < 60.0; mm *= 1.3) CHECK(hole_in_bending_factor(mm, 10.0) > hole_in_bending_factor(1.3 * mm, 10.0));
  }

  // By hand (Miner): the range that is stood just so often as in the life uses it up in that life; both at once in half.
  TEST_CASE("years that a detail stands [aluminum-design-manual-fatigue, recalled]") {
    const FatigueDetail plain = aluminium_plain();
    const double thrust_MPa = range_MPa(plain, swings_in_life()), slam_MPa = range_MPa(plain, slams_in_life());
    CHECK(life_years(plain, thrust_MPa, 0.0) == rel(kLife_year, 1e-12));
    CHECK(life_years(plain, thrust_MPa, slam_MPa) == rel(0.5 * kLife_year, 1e-12));
    CHECK(life_years(plain, 2.0 * thrust_MPa, 0.0) == rel(kLife_year * std::pow(2.0, -6.85), 1e-9));
  }

  // Handbook 1.6: 3000 kg at 0.5 m/s on k 8729 N/m: 2559 N; plastic moment 1105 Nm at 1.5 m: 737 N.
  TEST_CASE("a snag is capped by the shaft's folding [handbook 1.6, recomputed]") {
    LoadCasesInput in = check_b();
    in.hull.displacement_kg = 3000.0;
    in.shaft_N_per_m = 8729.0;
    in.shaft_arm_m = 1.5;
    in.shaft_plastic_Nm = 1105.0;
    CHECK(near(-case_of(load_cases(in), "snag").force.force_x_N, 737.0, 0.5));
    in.shaft_plastic_Nm = 1e6;
    CHECK(near(-case_of(load_cases(in), "snag").force.force_x_N, 2559.0, 1.0));
  }

  // Handbook 1.10: the pairs give back the Aluminum Design Manual's remembered limits at 5e6 cycles
  // (70.0, 37.0, 17.3, 12.6 MPa) and the ranges at 1e6 (88.5, 51.6, 26.7, 20.1).
  TEST_CASE("fatigue categories [aluminum-design-manual-fatigue, recalled]") {
    struct Row {
      FatigueDetail detail;
      double at_1e6_MPa, at_5e6_MPa;
    };
    for (const Row& row : {Row{aluminium_plain(), 88.5, 70.0}, Row{aluminium_bolt_holes(), 51.6, 37.0},
                           Row{aluminium_poor_holes(), 26.7, 17.3}, Row{aluminium_welds(), 20.1, 12.6}}) {
      CAPTURE(row.detail.name);
      CHECK(near(range_MPa(row.detail, 1e6), row.at_1e6_MPa, 0.06));
      CHECK(near(range_MPa(row.detail, 5e6), row.at_5e6_MPa, 0.06));
    }
    // EN 1993-1-9: the limit at 5e6 is 0.737 of the category.
    CHECK(near(range_MPa(bolt_thread(), 5e6) / 50.0, 0.737, 0.0005));
    CHECK(slams_in_life() == rel(1.8e6, 1e-12));
  }

  // The mean of x^m over exponentially distributed x is m! for whole m.
  TEST_CASE("steady range of the same harm [definition of the gamma function]") {
    CHECK(same_harm_factor(1.0) == rel(1.0, 1e-12));
    CHECK(same_harm_factor(3.0) == rel(std::cbrt(6.0), 1e-12));
    CHECK(same_harm_factor(5.0) == rel(std::pow(120.0, 0.2), 1e-12));
  }

  // Handbook 1.10: 0.1 Hz, 300 hours a year, ten years are 1.1e6. By hand, 1 + ln 100 = 5.60517: for m = 1
  // 1 / 5.60517 + 2 / 360; for m = 3 the cube root of 6 / 176.103 + 1 / 360 (Miner's sum).
  TEST_CASE("swings of the thrust [handbook 1.10; by hand]") {
    CHECK(swings_in_life() == rel(1.08e6, 1e-12));
    CHECK(swing_factor(1.0, 2.0) == rel(0.183963, 1e-5));
    CHECK(swing_factor(3.0, 1.0) == rel(0.332768, 1e-5));
    CHECK(swing_factor(4.84, 2.0) > swing_factor(4.84, 1.0));
  }

  // Handbook 5: stainless against aluminium 0.66 to 1.0 V while passive.
  TEST_CASE("metals in sea water [aca-galvanic-sea-water]") {
    const MetalPotential& stainless = *find_metal("316 passive");
    const MetalPotential& aluminium = *find_metal("aluminium alloys");
    CHECK(near(potential_gap_V(stainless, aluminium), 1.00, 1e-9));
    CHECK(near(stainless.base_V - aluminium.noble_V, 0.66, 1e-9));
    CHECK(potential_gap_V(stainless, aluminium) == potential_gap_V(aluminium, stainless));
    CHECK(potential_gap_V(stainless, stainless) <= kGapSpray_V);
    CHECK(find_metal("gold") == nullptr);
    double last_V = 1.0;
    for (const MetalPotential& metal : metal_potentials()) {
      CHECK(metal.noble_V > metal.base_V);
      CHECK(metal.noble_V < last_V);
      last_V = metal.noble_V;
    }
  }

  // Handbook 4.1 and 4.2: M8 A4-70 at 65 % of yield 10.71 kN, 12.8 Nm with K 0.15, 17.1 with 0.20; SAE
  // J429 grade 5 has 120 ksi, 92 ksi yield: 3/8-16 breaks at 9300 lbf (0.0775 in2 x 120 ksi).
  TEST_CASE("torque and classes of bolts [handbook 4.1, 4.2; SAE J429 from memory]") {
    const BoltSize& m8 = *find_bolt_size("M8");
    const double preload_N = 0.65 * yield_N(m8, *find_bolt_grade("A4-70"));
    CHECK(near(preload_N, 10710.0, 5.0));
    CHECK(near(torque_Nm(0.15, 8.0, preload_N), 12.8, 0.06));
    CHECK(near(torque_Nm(0.20, 8.0, preload_N), 17.1, 0.06));
    CHECK(near(lbf_from_N(tensile_N(*find_bolt_size("3/8-16"), *find_bolt_grade("J429-5"))), 9300.0, 10.0));
    CHECK(find_bolt_grade("J429-5")->carbon_steel);
    CHECK_FALSE(find_bolt_grade("A4-70")->carbon_steel);
  }
}

TEST_SUITE("property") {
  TEST_CASE("thrust from one side mirrors the other; every case has source and range") {
    LoadCasesInput in = check_b();
    in.trailered = true;
    const LoadCases loads = load_cases(in);
    CHECK(case_of(loads, "thrust.090").bolt_N == rel(case_of(loads, "thrust.270").bolt_N, 1e-9));
    CHECK(case_of(loads, "thrust.045").moment_Nm == rel(case_of(loads, "thrust.225").moment_Nm, 1e-9));
    for (const LoadCase& at : loads.cases) {
      CAPTURE(at.id);
      CHECK_FALSE(at.range.empty());
      CHECK_FALSE(at.source->id.empty());
      CHECK(std::isfinite(at.moment_Nm));
    }
    CHECK(case_of(loads, "road.down").at_bolts.force_z_N < 0.0);
    in.trailered = false;
    for (const LoadCase& at : load_cases(in).cases) CHECK(at.id.find("road") == std::string::npos);
  }

  TEST_CASE("rougher seas never let her go faster, farther forward never slams less") {
    LoadCasesInput in = check_b();
    double last_mps = 1e9;
    for (const SeaSpeed& sea : load_cases(in).seas) {
      CHECK(sea.speed_mps < last_mps);
      last_mps = sea.speed_mps;
    }
    double last_g = 0.0;
    for (const double x_m : {5.0, 6.0, 7.2, 7.8}) {
      in.motor_x_m = x_m;
      const double motor_g = load_cases(in).formulas.front().motor_g;
      CHECK(motor_g > last_g);
      last_g = motor_g;
    }
    in.motor_x_m = 7.2;  // at the bow
    CHECK(load_cases(in).formulas.front().motor_g == rel(load_cases(in).formulas.front().bow_g, 1e-12));
  }

  TEST_CASE("a chock takes moment off the bolts, never from the rebound") {
    LoadCasesInput in = check_b();
    const LoadCases free = load_cases(in);
    in.chocked = true;
    const LoadCases chocked = load_cases(in);
    CHECK(case_of(chocked, "slam").moment_Nm < case_of(free, "slam").moment_Nm);
    CHECK(case_of(chocked, "rebound").moment_Nm == rel(case_of(free, "rebound").moment_Nm, 1e-12));
  }

  TEST_CASE("outside of a formula's range there is a sentence; at its bound there is none") {
    LoadCasesInput in = check_b();
    in.hull.speed_mps = mps_from_kn(5.0 * std::sqrt(7.2) + 0.01);
    CHECK(load_cases(in).formulas.front().outside.empty());
    in.hull.speed_mps = mps_from_kn(5.0 * std::sqrt(7.2) - 0.01);
    const LoadCases slow = load_cases(in);
    CHECK_FALSE(slow.formulas.front().outside.empty());
    CHECK_FALSE(case_of(slow, "slam").in_range);
  }
}

TEST_SUITE("bad input") {
  TEST_CASE("without a tube the snag is not worked out, and says so") {
    const LoadCase& snag = case_of(load_cases(check_b()), "snag");
    CHECK_FALSE(snag.in_range);
    CHECK(snag.moment_Nm == 0.0);
    CHECK(snag.range.find("not known") != std::string::npos);
  }

  TEST_CASE("nothing known of the boat's run or sea: figures stay finite") {
    LoadCasesInput in = check_b();
    in.run_wave_m = 0.0;
    in.hull.speed_mps = 0.0;
    in.thrust_N = 0.0;
    in.slam_N = 0.0;
    for (const LoadCase& at : load_cases(in).cases) CHECK(std::isfinite(at.bolt_N));
    for (const SlamFormula& row : load_cases(in).formulas) CHECK(std::isfinite(row.motor_g));
  }

  // By hand with DNV-RP-C205's coefficient, recalled: 3.717 x 0.3 m = 1.115 m; 2 pi / 4 s x that = 1.7515 m/s; 1025 / 2 x
  // 2 pi x 1.7515^2 = 9879 Pa.
  TEST_CASE("the sea under a plate [flat-plate-slam]") {
    const Dive sea = dive(0.3, 0.8, 4.0, 1025.0);
    CHECK(sea.reaches);
    CHECK(sea.rise_m == rel(1.1151, 1e-4));
    CHECK(sea.speed_mps == rel(1.7516, 1e-4));
    CHECK(sea.pressure_Pa == rel(9880.0, 1e-3));
    CHECK_FALSE(dive(0.3, 1.2, 4.0, 1025.0).reaches);
    CHECK(dive(0.3, 1.2, 4.0, 1025.0).pressure_Pa == 5000.0);
    CHECK(dive(0.3, 0.1, 20.0, 1025.0).pressure_Pa == 5000.0);  // slow: a deck's least pressure stands
    LoadCasesInput in = check_b();
    in.plate_end_mm = 300.0;
    in.deck_ahead_mm = 80.0;
    in.overhang_m2 = 0.22 * 0.2;
    in.plate_height_m = 0.8;
    in.relative_sigma_m = 0.3;
    in.wave_period_s = 4.0;
    const LoadCases loads = load_cases(in);
    const LoadCase& at = case_of(loads, "dive");
    CHECK(at.force.force_z_N == rel(9880.0 * 0.22 * 0.2, 1e-3));
    CHECK(at.at.x_mm == rel(150.0 + 80.0 + 110.0, 1e-9));
    thole::test::check_formulas(loads.trace);
  }
}
