#include <vector>

#include "calc/trim/hydrostatics.h"
#include "support.h"

using namespace thole;

TEST_SUITE("derived") {
  // The same waterplane cut into thin strips and summed, against the closed forms.
  TEST_CASE("transom waterplane by strips") {
    for (const double ratio : {0.68, 0.75, 0.83, 0.95}) {
      CAPTURE(ratio);
      const double full = 3.0 * ratio - 2.0;
      const int strips = 20000;
      double area = 0.0, first = 0.0, second = 0.0, across = 0.0;
      for (int i = 0; i < strips; ++i) {
        const double x = (i + 0.5) / strips;
        const double s = x > full ? (x - full) / (1.0 - full) : 0.0;
        const double beam = 1.0 - s * s;
        area += beam / strips;
        first += beam * x / strips;
        second += beam * x * x / strips;
        across += beam * beam * beam / 12.0 / strips;
      }
      const WaterplaneShape shape = transom_waterplane(ratio);
      CHECK(area == rel(ratio, 1e-6));
      CHECK(shape.flotation_ratio == rel(first / area, 1e-6));
      CHECK(shape.longitudinal_inertia_ratio == rel(second - first * first / area, 1e-6));
      CHECK(shape.transverse_inertia_ratio == rel(across, 1e-6));
    }
  }
}
