// A trial at sea beside published drift: the slopes of the US Coast Guard's leeway table, as the
// handbook prints them (1.11), read as if this boat had drifted so.

#include <cmath>

#include "calc/hold/calibrate.h"
#include "support.h"

using namespace thole;

namespace {

// R25 of the handbook, in deep water, where its side drags 0.6.
HoldInput r25() {
  return {.length_m = 7.6,
          .waterline_length_m = 6.6,
          .waterline_beam_m = 2.3,
          .draft_m = 0.45,
          .displacement_kg = 2300.0,
          .frontal_area_m2 = 4.0,
          .lateral_area_m2 = 9.0,
          .lateral_centroid_m = 0.3,
          .underwater_area_m2 = 2.8,
          .underwater_centroid_m = -0.3,
          .bow_angle_rad = 0.44684,
          .thruster_forward_m = 3.7,
          .depth_m = 50.0,
          .air_C = 14.8};
}

CalibrateResult drifted(double downwind_frac, double crosswind_frac) {
  const double wind_mps = 8.0;
  return calibrate(
      {.boat = r25(),
       .drifts = {{.time_min = 30.0,
                   .drift_mps = wind_mps * std::hypot(downwind_frac, crosswind_frac),
                   .drift_angle_deg = 57.29577951308232 * std::atan2(crosswind_frac, downwind_frac),
                   .wind_mps = wind_mps}}});
}

}  // namespace

TEST_SUITE("derived") {
  // Printed: downwind slope in % of the wind at 10 m, crosswind slope, and the ratio of the drag
  // areas that the handbook derived from the first; R25's own ratio is 0.9 x 9.0 / (0.6 x 2.8).
  TEST_CASE("boats of the published table, as a trial would see them") {
    struct Row {
      const char* name;
      double downwind_frac, crosswind_frac, area_ratio;
      bool like_ours;
    };
    const double own_ratio = 0.9 * 9.0 / (0.6 * 2.8);
    for (const Row& row : {Row{"sport boat", 0.0654, 0.0219, 4.10, true},
                           Row{"sport fisher, centre console", 0.0555, 0.0227, 2.89, true},
                           Row{"skiff, modified V", 0.0315, 0.0129, 0.885, false},
                           Row{"skiff, V", 0.0287, 0.0062, 0.731, false}}) {
      CAPTURE(row.name);
      const CalibrateResult r = drifted(row.downwind_frac, row.crosswind_frac);
      REQUIRE(r.fitted);
      const ReadingFit& read = r.readings.front();
      CHECK(near(read.computed_frac, 0.0705, 0.0005));  // HL-17
      CHECK(read.measured_frac == rel(row.downwind_frac, 1e-6));
      CHECK(std::abs(read.cross_frac) == rel(row.crosswind_frac, 1e-6));
      // Each of them drifts slower than computed: less windage, or more drag.
      CHECK(r.windage_over_drag.value_factor < 1.0);
      CHECK(r.windage_over_drag.value_factor > row.area_ratio / own_ratio);  // held towards 1
      if (row.like_ours) {
        CHECK(r.windage_over_drag.low_factor < row.area_ratio / own_ratio);
        CHECK(std::abs(read.off_ratio) < 2.0);
      }
      for (const Check& check : r.trace.checks) {
        if (check.id == "calibrate.across") CHECK(check.verdict() == Verdict::pass);
      }
    }
  }

  // Handbook 1.6, table of the profile at 10 m/s (ISO 19901-1, recomputed there): 0.8281 of it at
  // 1.5 m, 0.8542 at 2 m, 0.8909 at 3 m. Read backwards.
  TEST_CASE("a wind read near the water is brought back to 10 m") {
    struct Row {
      double height_m, read_mps;
    };
    for (const Row& row : {Row{1.5, 8.281}, Row{2.0, 8.542}, Row{3.0, 8.909}}) {
      CAPTURE(row.height_m);
      CHECK(near(wind_at_ten_metres_mps(row.read_mps, row.height_m), 10.0, 0.001));
    }
  }
}
