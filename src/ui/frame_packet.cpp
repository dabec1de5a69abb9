#include "ui/frame_packet.h"

#include <algorithm>
#include <cmath>
#include <cstring>

namespace thole::ui {
namespace {

using Words = std::vector<std::uint32_t>;

static_assert(sizeof(ImDrawVert) == kPacketVertex * sizeof(std::uint32_t));
static_assert(sizeof(ImDrawIdx) == sizeof(std::uint32_t));

std::uint32_t word(float value) {
  std::uint32_t bits = 0;
  std::memcpy(&bits, &value, sizeof bits);
  return bits;
}
std::uint32_t word(int value) { return static_cast<std::uint32_t>(value); }

void append(Words& words, const void* bytes, std::size_t count) {
  const std::size_t at = words.size();
  words.resize(at + (count + 3) / 4);
  if (count > 0) std::memcpy(words.data() + at, bytes, count);
}

void append_texture(Words& words, ImTextureData& texture, TextureDeed deed) {
  const ImTextureRect whole{0, 0, static_cast<unsigned short>(texture.Width),
                            static_cast<unsigned short>(texture.Height)};
  const ImTextureRect rect = deed == TextureDeed::alter ? texture.UpdateRect : whole;
  std::vector<unsigned char> texels;
  if (deed != TextureDeed::drop) {
    texels.reserve(static_cast<std::size_t>(rect.w) * rect.h);
    for (int row = 0; row < rect.h; ++row) {
      const auto* from =
          static_cast<const unsigned char*>(texture.GetPixelsAt(rect.x, rect.y + row));
      texels.insert(texels.end(), from, from + rect.w);
    }
  }
  const auto texel_words = static_cast<std::uint32_t>((texels.size() + 3) / 4);
  words.insert(words.end(),
               {word(texture.UniqueID + 1), static_cast<std::uint32_t>(deed), word(texture.Width),
                word(texture.Height), rect.x, rect.y, rect.w, rect.h, texel_words});
  append(words, texels.data(), texels.size());
}

// Takes down what became of each texture; returns how many records that made.
std::uint32_t append_textures(Words& words, ImVector<ImTextureData*>& textures, bool all) {
  std::uint32_t count = 0;
  for (ImTextureData* texture : textures) {
    const ImTextureStatus status = texture->Status;
    if (status == ImTextureStatus_WantDestroy) {
      append_texture(words, *texture, TextureDeed::drop);
      texture->SetTexID(ImTextureID_Invalid);
      texture->SetStatus(ImTextureStatus_Destroyed);
    } else if (status == ImTextureStatus_WantCreate ||
               (all && status != ImTextureStatus_Destroyed)) {
      append_texture(words, *texture, TextureDeed::make);
      texture->SetTexID(static_cast<ImTextureID>(texture->UniqueID + 1));
      texture->SetStatus(ImTextureStatus_OK);
    } else if (status == ImTextureStatus_WantUpdates) {
      append_texture(words, *texture, TextureDeed::alter);
      texture->SetStatus(ImTextureStatus_OK);
    } else {
      continue;
    }
    ++count;
  }
  return count;
}

// The clip rectangle in pixels; empty when nothing of it is on the screen.
struct Clip {
  int x = 0;
  int y = 0;  // from the bottom
  int width = 0;
  int height = 0;
};
Clip clip_of(const ImVec4& rect, const ImDrawData& frame, int pixel_width, int pixel_height) {
  const auto pixel = [](float px, float scale, int limit) {
    return std::clamp(static_cast<int>(std::lround(px * scale)), 0, limit);
  };
  const ImVec2 scale = frame.FramebufferScale;
  const int left = pixel(rect.x - frame.DisplayPos.x, scale.x, pixel_width);
  const int right = pixel(rect.z - frame.DisplayPos.x, scale.x, pixel_width);
  const int top = pixel(rect.y - frame.DisplayPos.y, scale.y, pixel_height);
  const int bottom = pixel(rect.w - frame.DisplayPos.y, scale.y, pixel_height);
  return {left, pixel_height - bottom, std::max(right - left, 0), std::max(bottom - top, 0)};
}

}  // namespace

std::vector<std::uint32_t> pack_frame(const ImDrawData& frame, std::uint32_t ground_rgb,
                                      bool all_textures) {
  const int pixel_width =
      static_cast<int>(std::lround(frame.DisplaySize.x * frame.FramebufferScale.x));
  const int pixel_height =
      static_cast<int>(std::lround(frame.DisplaySize.y * frame.FramebufferScale.y));
  Words words{word(pixel_width), word(pixel_height), word(frame.DisplaySize.x),
              word(frame.DisplaySize.y), ground_rgb};
  words.resize(kPacketHeader);
  if (frame.Textures != nullptr) words[5] = append_textures(words, *frame.Textures, all_textures);

  std::uint32_t commands = 0;
  std::uint32_t first_index = 0;
  for (const ImDrawList* list : frame.CmdLists) {
    for (const ImDrawCmd& command : list->CmdBuffer) {
      const Clip clip = clip_of(command.ClipRect, frame, pixel_width, pixel_height);
      if (command.ElemCount == 0 || clip.width == 0 || clip.height == 0) continue;
      words.insert(words.end(), {static_cast<std::uint32_t>(command.GetTexID()),
                                 first_index + command.IdxOffset, command.ElemCount, word(clip.x),
                                 word(clip.y), word(clip.width), word(clip.height)});
      ++commands;
    }
    first_index += word(list->IdxBuffer.Size);
  }
  words[6] = commands;
  words[7] = word(frame.TotalVtxCount);
  words[8] = word(frame.TotalIdxCount);
  for (const ImDrawList* list : frame.CmdLists) {
    append(words, list->VtxBuffer.Data,
           static_cast<std::size_t>(list->VtxBuffer.Size) * sizeof(ImDrawVert));
  }
  std::uint32_t first_vertex = 0;
  for (const ImDrawList* list : frame.CmdLists) {
    // The renderer flag for vertex offsets is off: indices count from the start of their list.
    for (const ImDrawIdx index : list->IdxBuffer) words.push_back(first_vertex + index);
    first_vertex += word(list->VtxBuffer.Size);
  }
  return words;
}

}  // namespace thole::ui
