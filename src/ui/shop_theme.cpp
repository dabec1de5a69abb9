#include "ui/shop_theme.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <span>

namespace thole::ui {
namespace {

// Contrast and relative luminance: WCAG 2.2 (W3C Recommendation, 2023), its glossary. The levels
// are those of 1.4.6 (text), 1.4.3 (text on water, where it is short, and the accent) and 1.4.11
// (lines).
constexpr double kFlare = 0.05;
constexpr double kTextRatio = 7.0;
constexpr double kOnWaterRatio = 4.5;
constexpr double kAccentRatio = 4.5;
constexpr double kLineRatio = 3.0;
// Ours: a day's paper is light and a night's dark enough that every level above can be met.
constexpr double kLeastDay = 0.62;
constexpr double kMostNight = 0.02;
// Ours: fields stand off a night's paper by this share of white; by day they are white.
constexpr double kNightRaise = 0.008;

// A colour in light, each channel 0 to 1: here mixtures keep their hue, and luminance is a sum.
struct Light {
  double red = 0.0;
  double green = 0.0;
  double blue = 0.0;

  double luminance() const { return 0.2126 * red + 0.7152 * green + 0.0722 * blue; }
};

double decoded(std::uint32_t byte) {
  const double value = byte / 255.0;
  return value <= 0.04045 ? value / 12.92 : std::pow((value + 0.055) / 1.055, 2.4);
}

Light light_of(std::uint32_t rgb) {
  return {decoded((rgb >> 16) & 0xFF), decoded((rgb >> 8) & 0xFF), decoded(rgb & 0xFF)};
}

enum class Round { down, up };

// Rounded to the side on which contrast grows.
std::uint32_t encoded(double value, Round round) {
  const double clamped = std::clamp(value, 0.0, 1.0);
  const double code =
      clamped <= 0.0031308 ? 12.92 * clamped : 1.055 * std::pow(clamped, 1.0 / 2.4) - 0.055;
  return static_cast<std::uint32_t>(round == Round::down ? std::floor(255.0 * code)
                                                         : std::ceil(255.0 * code));
}

std::uint32_t rgb_of(const Light& light, Round round) {
  return (encoded(light.red, round) << 16) | (encoded(light.green, round) << 8) |
         encoded(light.blue, round);
}

double luminance(std::uint32_t rgb) { return light_of(rgb).luminance(); }

// The colour with at most this luminance: its own hue, less of it.
std::uint32_t darkened(std::uint32_t rgb, double most) {
  const Light light = light_of(rgb);
  const double now = light.luminance();
  if (now <= most) return rgb;
  const double share = std::max(most, 0.0) / now;
  return rgb_of({share * light.red, share * light.green, share * light.blue}, Round::down);
}

// The colour with at least this luminance: white mixed in.
std::uint32_t lightened(std::uint32_t rgb, double least) {
  const Light light = light_of(rgb);
  const double now = light.luminance();
  if (now >= least) return rgb;
  const double share = (std::min(least, 1.0) - now) / (1.0 - now);
  const auto mixed = [share](double channel) { return channel + share * (1.0 - channel); };
  return rgb_of({mixed(light.red), mixed(light.green), mixed(light.blue)}, Round::up);
}

struct Ground {
  std::uint32_t rgb = 0;
  double ratio = 1.0;  // contrast asked for on it
};

// The colour, as near to itself as it can be read on all the grounds.
std::uint32_t readable(std::uint32_t rgb, std::span<const Ground> grounds, bool day) {
  double most = 1.0;
  double least = 0.0;
  for (const Ground& ground : grounds) {
    const double below = luminance(ground.rgb) + kFlare;
    most = std::min(most, below / ground.ratio - kFlare);
    least = std::max(least, below * ground.ratio - kFlare);
  }
  return day ? darkened(rgb, most) : lightened(rgb, least);
}

}  // namespace

Palette shop_palette(const Palette& base, const ShopColours& shop) {
  const bool day = luminance(base.paper) > luminance(base.ink);
  Palette out = base;
  if (shop.paper) {
    out.paper = day ? lightened(*shop.paper, kLeastDay) : darkened(*shop.paper, kMostNight);
    out.raised = day ? base.raised : lightened(out.paper, luminance(out.paper) + kNightRaise);
  }
  const std::array text{Ground{out.paper, kTextRatio}, Ground{out.raised, kTextRatio},
                        Ground{out.water, kOnWaterRatio}};
  const std::array touch{Ground{out.paper, kAccentRatio}, Ground{out.raised, kAccentRatio},
                         Ground{out.water, kAccentRatio}};
  const std::array line{Ground{out.paper, kLineRatio}, Ground{out.raised, kLineRatio}};
  out.ink = readable(shop.ink.value_or(base.ink), text, day);
  out.accent = readable(shop.accent.value_or(base.accent), touch, day);
  for (std::uint32_t Palette::*role :
       {&Palette::muted, &Palette::fits, &Palette::changes, &Palette::fails, &Palette::unknown}) {
    out.*role = readable(base.*role, text, day);
  }
  out.line = readable(base.line, line, day);
  return out;
}

std::optional<std::uint32_t> read_colour(std::string_view text) {
  if (text.size() != 7 || text.front() != '#') return std::nullopt;
  std::uint32_t rgb = 0;
  for (const char c : text.substr(1)) {
    std::uint32_t digit = 0;
    if (c >= '0' && c <= '9') {
      digit = static_cast<std::uint32_t>(c - '0');
    } else if (c >= 'a' && c <= 'f') {
      digit = static_cast<std::uint32_t>(c - 'a' + 10);
    } else if (c >= 'A' && c <= 'F') {
      digit = static_cast<std::uint32_t>(c - 'A' + 10);
    } else {
      return std::nullopt;
    }
    rgb = (rgb << 4) | digit;
  }
  return rgb;
}

}  // namespace thole::ui
