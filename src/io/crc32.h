#pragma once

// CRC-32 as in ISO-HDLC, Ethernet (IEEE 802.3) and zip: polynomial 0x04C11DB7, reflected, all ones
// in and out. Tells every burst of up to 32 altered bits, so every single altered character of a
// link.

#include <cstdint>
#include <string_view>

namespace thole {

constexpr std::uint32_t crc32(std::string_view bytes) {
  std::uint32_t remainder = 0xFFFFFFFFu;
  for (const char byte : bytes) {
    remainder ^= static_cast<unsigned char>(byte);
    for (int bit = 0; bit < 8; ++bit) {
      remainder = (remainder >> 1) ^ ((remainder & 1u) != 0u ? 0xEDB88320u : 0u);
    }
  }
  return ~remainder;
}

}  // namespace thole
