#pragma once

// One painted frame as a single block of 32-bit words, so that it can be handed to a thread or a
// program that owns the graphics context and knows nothing of Dear ImGui (web/painter.js).
//
//   header    pixel width, pixel height, width and height in CSS px (float), ground 0xRRGGBB,
//             textures, commands, vertices, indices (counts)
//   textures  id, what (0 make, 1 alter, 2 drop), full width, full height, x, y, width, height,
//             words; then the coverage of that rectangle, a byte to a texel, rows without gaps
//   commands  texture id, first index, indices, clip x, y, width, height in pixels from the lower
//             left corner
//   vertices  x, y, u, v (float), colour 0xAABBGGRR
//   indices   into the vertices of the whole frame

#include <imgui.h>

#include <cstdint>
#include <vector>

namespace thole::ui {

inline constexpr int kPacketHeader = 9;
inline constexpr int kPacketTexture = 9;
inline constexpr int kPacketCommand = 7;
inline constexpr int kPacketVertex = 5;

enum class TextureDeed : std::uint32_t { make = 0, alter = 1, drop = 2 };

// The frame that ImGui::Render() has closed. Textures that it carries count as received; with
// `all_textures` it carries every one whole, for a painter that has lost them. The atlas must be
// of one byte to a texel (ImTextureFormat_Alpha8).
std::vector<std::uint32_t> pack_frame(const ImDrawData& frame, std::uint32_t ground_rgb,
                                      bool all_textures);

}  // namespace thole::ui
