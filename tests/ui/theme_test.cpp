// Contrast of the palette by the relative luminance of WCAG 2.2 (W3C Recommendation, 2023).

#include "ui/theme.h"

#include <initializer_list>

#include "support.h"
#include "ui/contrast.h"

using thole::test::contrast;

TEST_SUITE("published") {
  TEST_CASE("contrast of grey pairs [wcag-2.2, relative luminance]") {
    CHECK(near(contrast(0x767676, 0xFFFFFF), 4.542, 0.005));
    CHECK(near(contrast(0x1A1A1A, 0xFFFFFF), 17.40, 0.01));
  }
}

TEST_SUITE("ui") {
  TEST_CASE(
      "text 7:1 on paper and raised, 4.5:1 on water; borders 3:1 [wcag-2.2 1.4.6, 1.4.3, 1.4.11]") {
    for (const thole::ui::Palette& palette : {thole::ui::kDay, thole::ui::kNight}) {
      for (const std::uint32_t text : {palette.ink, palette.muted, palette.accent, palette.fits,
                                       palette.changes, palette.fails, palette.unknown}) {
        CHECK(contrast(text, palette.paper) >= 6.95);
        CHECK(contrast(text, palette.raised) >= 6.95);
        CHECK(contrast(text, palette.water) >= 4.5);
      }
      CHECK(contrast(palette.paper, palette.accent) >= 6.95);  // text on a filled button
      CHECK(contrast(palette.line, palette.raised) >= 3.0);
      CHECK(contrast(palette.line, palette.paper) >= 3.0);
    }
  }
}
