#pragma once

// Colours, type and space of the sheet. Contrast of every pair in use is held by a test.

#include <imgui.h>

#include <cstdint>

namespace thole::ui {

// Colours by what they mean, as 0xRRGGBB.
struct Palette {
  std::uint32_t paper = 0;
  std::uint32_t raised = 0;
  std::uint32_t ink = 0;
  std::uint32_t muted = 0;
  std::uint32_t line = 0;
  std::uint32_t accent = 0;
  std::uint32_t water = 0;
  std::uint32_t hull = 0;
  std::uint32_t fits = 0;
  std::uint32_t changes = 0;
  std::uint32_t fails = 0;
  std::uint32_t unknown = 0;
};

inline constexpr Palette kDay{.paper = 0xF7F5EF,
                              .raised = 0xFFFFFF,
                              .ink = 0x12263A,
                              .muted = 0x425263,
                              .line = 0x6F7B87,
                              .accent = 0x0A5A78,
                              .water = 0xCFE4EC,
                              .hull = 0xE9E2D3,
                              .fits = 0x145A37,
                              .changes = 0x734500,
                              .fails = 0x9B1C1C,
                              .unknown = 0x4D535A};
inline constexpr Palette kNight{.paper = 0x0C1218,
                                .raised = 0x151E27,
                                .ink = 0xEFE9DD,
                                .muted = 0xB3B7B8,
                                .line = 0x7B858D,
                                .accent = 0xE6B066,
                                .water = 0x12303B,
                                .hull = 0x2A2A26,
                                .fits = 0x7CCB94,
                                .changes = 0xF0BE62,
                                .fails = 0xFF9A8C,
                                .unknown = 0xA9AFB5};

constexpr ImU32 colour(std::uint32_t rgb, float alpha = 1.0f) {
  return IM_COL32((rgb >> 16) & 0xFF, (rgb >> 8) & 0xFF, rgb & 0xFF,
                  static_cast<int>(alpha * 255.0f + 0.5f));  // NOLINT: lround is not constexpr
}

// Type roles in px at 100 % text size: size, line height, weight.
struct Type {
  float size = 17.0f;
  float line = 24.0f;
  bool semibold = false;
};
inline constexpr Type kHeadline{34.0f, 40.0f, true};
inline constexpr Type kTitle{24.0f, 30.0f, true};
inline constexpr Type kSection{18.0f, 24.0f, true};
inline constexpr Type kText{17.0f, 24.0f, false};
inline constexpr Type kTextStrong{17.0f, 24.0f, true};
inline constexpr Type kNote{14.0f, 20.0f, false};
inline constexpr Type kNoteStrong{14.0f, 20.0f, true};

// Space in px at 100 %.
inline constexpr float kUnit = 8.0f;
inline constexpr float kTarget = 48.0f;  // height of what a thumb touches
inline constexpr float kFieldGap = 24.0f;
inline constexpr float kGroupGap = 40.0f;
inline constexpr float kStrip = 56.0f;  // verdict strip and way on
inline constexpr float kRadius = 6.0f;
inline constexpr float kWideFrom = 1000.0f;  // from here on the picture stands beside the form

}  // namespace thole::ui
