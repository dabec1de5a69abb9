// A shop's colours, whatever they are, leave the sheet readable: contrast by the relative luminance
// of WCAG 2.2, computed here and not by the code under test.

#include "ui/shop_theme.h"

#include <cmath>
#include <random>

#include "support.h"
#include "ui/contrast.h"

namespace {

using namespace thole::ui;
using thole::test::contrast;

void check_readable(const Palette& palette) {
  CAPTURE(palette.paper);
  CAPTURE(palette.accent);
  for (const std::uint32_t text : {palette.ink, palette.muted, palette.fits, palette.changes,
                                   palette.fails, palette.unknown}) {
    CAPTURE(text);
    CHECK(contrast(text, palette.paper) >= 7.0);
    CHECK(contrast(text, palette.raised) >= 7.0);
    CHECK(contrast(text, palette.water) >= 4.5);
  }
  CHECK(contrast(palette.accent, palette.paper) >= 4.5);
  CHECK(contrast(palette.accent, palette.raised) >= 4.5);
  CHECK(contrast(palette.accent, palette.water) >= 4.5);
  CHECK(contrast(palette.line, palette.paper) >= 3.0);
  CHECK(contrast(palette.line, palette.raised) >= 3.0);
}

}  // namespace

TEST_SUITE("property") {
  TEST_CASE("no colours of a shop make the sheet unreadable") {
    std::mt19937 random(20260101);
    for (const Palette& base : {kDay, kNight}) {
      for (int i = 0; i < 4000; ++i) {
        const auto any = [&random]() -> std::optional<std::uint32_t> {
          if (random() % 4 == 0) return std::nullopt;
          return random() & 0xFFFFFFu;
        };
        check_readable(shop_palette(base, {.accent = any(), .paper = any(), .ink = any()}));
      }
    }
  }

  TEST_CASE("the ends of the scale are readable too") {
    const std::uint32_t ends[] = {0x000000, 0xFFFFFF, 0xFF0000, 0x00FF00, 0x0000FF, 0x808080};
    for (const Palette& base : {kDay, kNight}) {
      for (const std::uint32_t accent : ends) {
        for (const std::uint32_t paper : ends) {
          for (const std::uint32_t ink : ends) {
            check_readable(shop_palette(base, {.accent = accent, .paper = paper, .ink = ink}));
          }
        }
      }
    }
  }
}

TEST_SUITE("ui") {
  TEST_CASE("colours that can be read are taken as they are") {
    const Palette palette =
        shop_palette(kDay, {.accent = 0x7A1F5C, .paper = 0xF4EAF0, .ink = 0x2A0A1F});
    CHECK(palette.accent == 0x7A1F5C);
    CHECK(palette.paper == 0xF4EAF0);
    CHECK(palette.ink == 0x2A0A1F);
  }

  TEST_CASE("a light accent is darkened by day and keeps its hue") {
    const std::uint32_t accent = shop_palette(kDay, {.accent = 0xFFA500}).accent;
    CHECK(((accent >> 16) & 0xFF) > ((accent >> 8) & 0xFF));
    CHECK(((accent >> 8) & 0xFF) > (accent & 0xFF));
    CHECK(contrast(accent, kDay.paper) < 6.0);  // no darker than it has to be
    CHECK(shop_palette(kNight, {.accent = 0xFFA500}).accent == 0xFFA500);
  }

  TEST_CASE("a paper from the other side of the day is brought to this one") {
    CHECK(contrast(shop_palette(kDay, {.paper = 0x101418}).paper, 0x000000) > 12.0);
    CHECK(contrast(shop_palette(kNight, {.paper = 0xFFF4D0}).paper, 0xFFFFFF) > 14.0);
  }

  TEST_CASE("without a wish the night stays as it is drawn, the day within a step") {
    const Palette night = shop_palette(kNight, {});
    CHECK(night.ink == kNight.ink);
    CHECK(night.accent == kNight.accent);
    CHECK(night.fails == kNight.fails);
    CHECK(shop_palette(kDay, {}).ink == kDay.ink);
    CHECK(shop_palette(kDay, {}).accent == kDay.accent);
    CHECK(shop_palette(kDay, {}).line == kDay.line);
  }

  TEST_CASE("a colour is '#' and six digits, nothing else") {
    CHECK(read_colour("#0a5A78") == 0x0A5A78u);
    CHECK(read_colour("#000000") == 0u);
    for (const char* text :
         {"", "#", "0a5a78", "#0a5a7", "#0a5a788", "#0a5a7g", "red", "#-12345"}) {
      CAPTURE(text);
      CHECK(!read_colour(text));
    }
  }
}
