#include "calc/foredeck/light.h"
#include "calc/foredeck/stow.h"

#include <cmath>

#include "base/units.h"
#include "calc/length_study.h"
#include "calc/shaft/tube.h"
#include "calc/snag_study.h"
#include "support.h"

using namespace thole;

namespace {

Bar post(double aft_m, double starboard_m, double low_m, double high_m, double radius_m) {
  return {"post", {aft_m, starboard_m, low_m}, {aft_m, starboard_m, high_m}, radius_m};
}

}  // namespace

TEST_SUITE("published") {
  // COLREGs 1972, Rule 21(b): "an arc of the horizon of 112.5 degrees ... from right ahead to 22.5 degrees
  // abaft the beam"; Annex I, 9(a)(i): cut-off between 1 and 3 degrees; 9(b)(i): 6 degrees.
  TEST_CASE("arcs of sidelights [colregs-1972-rule-21, annex i 9]") {
    CHECK(near(sidelight_arc(0.4).from_deg, 0.0, 0.0));
    CHECK(near(sidelight_arc(0.4).to_deg, 90.0 + 22.5, 0.0));
    CHECK(near(sidelight_arc(-0.4).from_deg, -(90.0 + 22.5), 0.0));
    CHECK(near(sidelight_arc(-0.4).to_deg, 0.0, 0.0));
    CHECK(near(sidelight_arc(0.0).to_deg - sidelight_arc(0.0).from_deg, 225.0, 0.0));
    CHECK(near(kCutOffLeast_deg, 1.0, 0.0));
    CHECK(near(kCutOffMost_deg, 3.0, 0.0));
    CHECK(near(kAllRoundHidden_deg, 6.0, 0.0));
  }

  // A round post of radius r at distance d hides 2 asin(r/d) (plane geometry). The six degrees that an
  // all-round light may lose are a post 105 mm thick at 1 m: 2 asin(0.0525) = 6.019 degrees, worked by hand.
  TEST_CASE("what a post hides [plane geometry]") {
    const std::vector<Arc> arcs = hidden_arcs({1.0, 0.0, 0.5}, {post(0.0, 0.0, 0.0, 1.0, 0.0525)}, kFullLight_deg);
    REQUIRE(arcs.size() == 1);
    CHECK(near(sum_deg(arcs), 6.019, 0.0005));
    CHECK(near(arcs[0].from_deg, -3.0095, 0.0005));
    // On the starboard beam: 90 degrees.
    const std::vector<Arc> beam = hidden_arcs({1.0, 0.0, 0.5}, {post(1.0, 1.0, 0.0, 1.0, 0.0525)}, kFullLight_deg);
    CHECK(near(beam[0].from_deg, 90.0 - 3.0095, 0.0005));
    CHECK(near(widest_deg(hidden_arcs({0.0, 0.0, 0.5}, {post(1.0, 0.0, 0.0, 1.0, 0.0525)}, kFullLight_deg)), 6.019, 0.0005));
  }

  // Annex I, 10(a): all of the light to 5 degrees, 60 % to 7.5 (recalled). At 1 m, 5 degrees are 87.5 mm and
  // 7.5 degrees 131.7 mm (tan, by hand): a post that begins 110 mm above the light hides only the second.
  TEST_CASE("vertical sectors [colregs-1972-annex-i-10]") {
    const std::vector<Bar> high{post(0.0, 0.0, 0.611, 2.0, 0.001)};
    CHECK(hidden_arcs({1.0, 0.0, 0.5}, high, kFullLight_deg).empty());
    CHECK(hidden_arcs({1.0, 0.0, 0.5}, high, kMostLight_deg).size() == 1);
    const std::vector<Bar> higher{post(0.0, 0.0, 0.634, 2.0, 0.001)};
    CHECK(hidden_arcs({1.0, 0.0, 0.5}, higher, kMostLight_deg).empty());
  }

  // Revised NIOSH lifting equation, multipliers as its tables print them (two decimals): H 40 cm 0.63 (0.625),
  // 50 cm 0.50, 60 cm 0.42; V 0 cm 0.78 (0.775), 30 cm 0.87 (0.865); D 40 cm 0.93, 55 cm 0.90, 100 cm 0.87 (0.865).
  TEST_CASE("weight that one may lift [niosh-lifting-1991]") {
    CHECK(near(lift_limit_kg(0.25, 0.75, 0.25), 23.0, 1e-9));
    CHECK(near(lift_limit_kg(0.40, 0.75, 0.25) / 23.0, 0.63, 0.0051));
    CHECK(near(lift_limit_kg(0.50, 0.75, 0.25) / 23.0, 0.50, 0.0051));
    CHECK(near(lift_limit_kg(0.60, 0.75, 0.25) / 23.0, 0.42, 0.0051));
    CHECK(near(lift_limit_kg(0.25, 0.0, 0.25) / 23.0, 0.78, 0.0051));
    CHECK(near(lift_limit_kg(0.25, 0.30, 0.25) / 23.0, 0.87, 0.0051));
    CHECK(near(lift_limit_kg(0.25, 0.75, 0.40) / 23.0, 0.93, 0.0051));
    CHECK(near(lift_limit_kg(0.25, 0.75, 0.55) / 23.0, 0.90, 0.0051));
    CHECK(near(lift_limit_kg(0.25, 0.75, 1.00) / 23.0, 0.87, 0.0051));
    CHECK(near(lift_limit_kg(0.64, 0.75, 0.25), 0.0, 0.0));
  }

  // Textbook cantilever pushed at its end (Timoshenko, Strength of Materials): at half its length the
  // deflection is 5/16 and the slope 3/4 of those at the end. Handbook 6.1: 38 x 3 mm, 193 GPa, 400 N, 1.5 m:
  // 45.8 mm, 2.6 degrees, 224 MPa; GRP 38 x 6, 25 GPa: 225 mm.
  TEST_CASE("bend along the shaft [beam theory, handbook 6.1]") {
    const BendPoint end = bend_at(38.0, 3.0, 193.0, 1.5, 400.0, 1.5);
    CHECK(near(end.deflection_mm, 45.8, 0.05));
    CHECK(near(end.slope_deg, 2.6, 0.05));
    CHECK(near(bend_at(38.0, 3.0, 193.0, 1.5, 400.0, 0.0).stress_MPa, 224.0, 0.5));
    CHECK(near(bend_at(38.0, 6.0, 25.0, 1.5, 400.0, 1.5).deflection_mm, 225.0, 0.6));
    const BendPoint middle = bend_at(38.0, 3.0, 193.0, 1.5, 400.0, 0.75);
    CHECK(middle.deflection_mm == rel(5.0 / 16.0 * end.deflection_mm, 1e-12));
    CHECK(middle.slope_deg == rel(0.75 * end.slope_deg, 1e-12));
  }

  // Handbook 1.6: 38 x 3 mm steel of 300 MPa: plastic moment 1105 N m, 737 N at 1.5 m; 3000 kg at 0.5 m/s
  // against 8729 N/m: 2559 N.
  TEST_CASE("a snag [handbook 1.6]") {
    const double moment_Nm = tube_last_moment_Nm(tube_section(38.0, 3.0), 300.0, false);
    CHECK(near(moment_Nm, 1105.0, 0.5));
    CHECK(near(moment_Nm / 1.5, 737.0, 0.5));
    CHECK(near(snag_force_N(3000.0, 0.5, 8729.0), 2559.0, 0.5));
    // A composite has no plastic reserve: 2678 mm3 (handbook 6.1) times 300 MPa.
    CHECK(near(tube_last_moment_Nm(tube_section(38.0, 3.0), 300.0, true), 803.4, 0.5));
  }
}
