// Fetch-limited seas against the handbook's table, which was recomputed there from the authors'
// equations; height printed to 0.001 m, period to 0.01 s.

#include "data/sea.h"

#include "base/units.h"
#include "support.h"

using namespace thole;

namespace {

struct SeaRow {
  double wind_kn = 0.0;
  double fetch_m = 0.0;
  double height_m = 0.0;
  double period_s = 0.0;
};

}  // namespace

TEST_SUITE("published") {
  // HL-36 and handbook 3.3: Shore Protection Manual (1984), depth 3 m.
  TEST_CASE("sea over a fetch of 3 m depth [spm-1984, recomputed]") {
    const SeaRow rows[] = {{15, 2000, .192, 1.52},
                           {15, 5000, .287, 1.95},
                           {15, 20000, .454, 2.67},
                           {20, 5000, .394, 2.20},
                           {20, 20000, .589, 3.02}};
    for (const SeaRow& row : rows) {
      CAPTURE(row.wind_kn);
      CAPTURE(row.fetch_m);
      const Sea sea = spm_sea(mps_from_kn(row.wind_kn), row.fetch_m, 3.0);
      CHECK(near(sea.height_m, row.height_m, 0.001));
      CHECK(near(sea.period_s, row.period_s, 0.01));
    }
  }

  // HL-35 and handbook 3.3: Hasselmann et al. (1973).
  TEST_CASE("sea over a deep fetch by JONSWAP [jonswap-1973, recomputed]") {
    const SeaRow rows[] = {{15, 2000, .176, 1.52},
                           {15, 5000, .279, 2.06},
                           {15, 20000, .558, 3.26},
                           {20, 5000, .372, 2.27},
                           {20, 20000, .743, 3.59}};
    for (const SeaRow& row : rows) {
      CAPTURE(row.wind_kn);
      CAPTURE(row.fetch_m);
      const Sea sea = jonswap_sea(mps_from_kn(row.wind_kn), row.fetch_m);
      CHECK(near(sea.height_m, row.height_m, 0.001));
      CHECK(near(sea.period_s, row.period_s, 0.01));
    }
  }

  // HL-37 and handbook 3.3: Wilson (1965). The period printed is the significant one, 0.95 of the
  // peak's.
  TEST_CASE("sea over a deep fetch by Wilson [wilson-1965, recomputed]") {
    const SeaRow rows[] = {{15, 2000, .238, 1.60},
                           {15, 5000, .356, 2.06},
                           {15, 20000, .617, 2.91},
                           {20, 5000, .493, 2.34},
                           {20, 20000, .881, 3.38}};
    for (const SeaRow& row : rows) {
      CAPTURE(row.wind_kn);
      CAPTURE(row.fetch_m);
      const Sea sea = wilson_sea(mps_from_kn(row.wind_kn), row.fetch_m);
      CHECK(near(sea.height_m, row.height_m, 0.001));
      CHECK(near(0.95 * sea.period_s, row.period_s, 0.01));
    }
  }
}
