#pragma once

// The sheet in a shop's own colours. What the shop asks for is a wish: hue and character are kept,
// lightness gives way until everything can be read, so that no choice of colours makes a figure or
// a verdict invisible on a boat in the sun.

#include <cstdint>
#include <optional>
#include <string_view>

#include "ui/theme.h"

namespace thole::ui {

struct ShopColours {
  std::optional<std::uint32_t> accent{};  // 0xRRGGBB: buttons, links, handles
  std::optional<std::uint32_t> paper{};   // ground
  std::optional<std::uint32_t> ink{};     // text
};

// `base` is kDay or kNight; a paper from the other side of the day is brought to this one. Holds
// for every choice, by the relative luminance of WCAG 2.2: text and verdicts 7:1 on paper and
// raised, 4.5:1 on water; accent 4.5:1 on all three; lines 3:1 on paper and raised.
Palette shop_palette(const Palette& base, const ShopColours& shop);

// "#0a5a78" as 0x0A5A78; empty when it is anything else.
std::optional<std::uint32_t> read_colour(std::string_view text);

}  // namespace thole::ui
