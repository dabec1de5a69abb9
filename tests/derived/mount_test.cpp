// The mount against values worked out by other means.

#include "calc/mount/mount.h"

#include "base/units.h"
#include "calc/mount/bolt_group.h"
#include "calc/mount/plate.h"
#include "calc/mount/slam.h"
#include "support.h"

using namespace thole;

TEST_SUITE("derived") {
  // The constant of DNV's formula is the average impact of Savitsky and Brown at 4 deg of trim
  // times the factor of the 1/100 highest: they must agree whatever the boat.
  TEST_CASE("speed and sea state agree with the average impact") {
    const PlaningHull hull{.waterline_length_m = 8.0,
                           .chine_beam_m = 2.4,
                           .deadrise_deg = 22.0,
                           .displacement_kg = 3500.0,
                           .speed_mps = mps_from_kn(22.0)};
    const Impact impact = average_impact({.length_m = 8.0,
                                          .beam_m = 2.4,
                                          .deadrise_deg = 22.0,
                                          .trim_deg = 4.0,
                                          .weight_N = 3500.0 * 9.80665,
                                          .wave_m = 0.4,
                                          .speed_kn = 22.0});
    CHECK(acceleration_in_sea_g(hull, 0.4) == rel(5.6052 * impact.cg_g, 2e-3));
  }

  // A finite-element plate with one-sided deck contact (600 x 200 mm, 68.9 GPa, 500 N 180 mm ahead
  // of the deck's edge, front row 50 mm behind it) pulls each front bolt with 792 N at 6.35 mm and
  // 528 N at 9.525 mm. The hand rule stays on the safe side, by less than a sixth for the thin
  // plate.
  TEST_CASE("prying against a finite-element plate") {
    const double each_N = prying_tension_N(500.0 * 0.180, 50.0, 2);
    CHECK(each_N == rel(900.0, 1e-12));
    CHECK(each_N > 792.0);
    CHECK(each_N < 792.0 * 7.0 / 6.0);
    CHECK(each_N > 528.0);
  }

  // The same plate at 9.525 mm sags 1.978 mm under the load: held at the front row, 230 mm behind
  // it.
  TEST_CASE("sag against a finite-element plate on one-sided contact") {
    const PlateStrip strip{
        .modulus_GPa = 68.9, .width_mm = 200.0, .thickness_mm = 9.525, .reach_mm = 230.0};
    CHECK(500.0 / strip_stiffness_N_per_mm(strip) == rel(1.978, 0.05));
  }

  struct WideRow {
    double width_over_reach_ratio, sag_coefficient, tolerance;
  };

  // Ritz solution of a cantilever plate, nu 0.3, load amid its free edge: w D/(P
  // a^2). Up to one and a half reaches the strip is within 5 %; beyond, on the safe side.
  TEST_CASE("strip against a finite cantilever plate") {
    const WideRow rows[] = {{0.5, 0.7079, 0.04}, {1.0, 0.3615, 0.02}, {1.5, 0.2568, 0.05}};
    const auto sag = [](double ratio) {
      const PlateStrip strip{
          .modulus_GPa = 70.0, .width_mm = 200.0 * ratio, .thickness_mm = 8.0, .reach_mm = 200.0};
      return plate_rigidity_Nm(70.0, 8.0, 0.3) / 40.0 / strip_stiffness_N_per_mm(strip);
    };
    for (const WideRow& row : rows) {
      CAPTURE(row.width_over_reach_ratio);
      CHECK(sag(row.width_over_reach_ratio) == rel(row.sag_coefficient, row.tolerance));
    }
    CHECK(sag(2.0) > 0.2113);
    CHECK(sag(4.0) > 0.1687);
  }

  // Fixed-pinned beam of span 600 mm, 1000 N in the middle: fixed moment 3 P L/16 = 112.5 N m,
  // nothing left at the prop's end of the first half: 5 P L/32 under the load with the other sign.
  TEST_CASE("moments of a propped beam") {
    const MomentShares shares = moment_shares(true);
    CHECK(1000.0 * shares.moment_factor * 0.3 == rel(112.5, 1e-12));
    CHECK(1000.0 * (shares.moment_factor - shares.reaction_factor) * 0.3 == rel(-93.75, 1e-12));
  }
}
