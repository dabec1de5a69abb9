#include "io/base64url.h"

#include <cstdint>

namespace thole {
namespace {

constexpr std::string_view kAlphabet =
    "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";

}  // namespace

bool is_base64url(char c) { return kAlphabet.find(c) != kAlphabet.npos; }

std::string to_base64url(std::string_view bytes) {
  std::string text;
  text.reserve((bytes.size() * 4 + 2) / 3);
  std::uint32_t held = 0;
  int held_bits = 0;
  for (const char byte : bytes) {
    held = (held << 8) | static_cast<unsigned char>(byte);
    held_bits += 8;
    while (held_bits >= 6) {
      held_bits -= 6;
      text += kAlphabet[(held >> held_bits) & 63u];
    }
  }
  if (held_bits > 0) text += kAlphabet[(held << (6 - held_bits)) & 63u];
  return text;
}

std::optional<std::string> from_base64url(std::string_view text) {
  if (text.size() % 4 == 1) return std::nullopt;
  std::string bytes;
  bytes.reserve(text.size() * 3 / 4);
  std::uint32_t held = 0;
  int held_bits = 0;
  for (const char c : text) {
    const std::size_t value = kAlphabet.find(c);
    if (value == kAlphabet.npos) return std::nullopt;
    held = (held << 6) | static_cast<std::uint32_t>(value);
    held_bits += 6;
    if (held_bits >= 8) {
      held_bits -= 8;
      bytes += static_cast<char>((held >> held_bits) & 255u);
    }
  }
  if ((held & ((1u << held_bits) - 1u)) != 0u) return std::nullopt;
  return bytes;
}

}  // namespace thole
