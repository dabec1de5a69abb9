#include "io/text.h"

#include "io/limits.h"

namespace thole {
namespace {

// Bytes of the UTF-8 character at the front of `text`; 0 when it is not sound (RFC 3629: neither
// overlong, nor a surrogate, nor above U+10FFFF).
std::size_t character_bytes(std::string_view text) {
  const auto byte = [&text](std::size_t i) {
    return i < text.size() ? static_cast<unsigned char>(text[i]) : 0u;
  };
  const unsigned first = byte(0);
  if (first < 0x80) return 1;
  const std::size_t count = first >= 0xF0 ? 4 : first >= 0xE0 ? 3 : 2;
  if (first < 0xC2 || first > 0xF4) return 0;
  for (std::size_t i = 1; i < count; ++i) {
    if ((byte(i) & 0xC0u) != 0x80u) return 0;
  }
  const unsigned second = byte(1);
  if ((first == 0xE0 && second < 0xA0) || (first == 0xED && second > 0x9F)) return 0;
  if ((first == 0xF0 && second < 0x90) || (first == 0xF4 && second > 0x8F)) return 0;
  return count;
}

}  // namespace

bool is_utf8(std::string_view text) {
  while (!text.empty()) {
    const std::size_t count = character_bytes(text);
    if (count == 0) return false;
    text.remove_prefix(count);
  }
  return true;
}

std::string plain_line(std::string_view text, std::size_t most_bytes) {
  std::string line;
  while (!text.empty()) {
    const std::size_t count = character_bytes(text);
    const std::size_t taken = count == 0 ? 1 : count;
    if (line.size() + taken > most_bytes) break;
    if (count == 0) {
      line += '?';
    } else if (static_cast<unsigned char>(text.front()) < 0x20 || text.front() == 0x7F) {
      line += ' ';
    } else {
      line += text.substr(0, count);
    }
    text.remove_prefix(taken);
  }
  return line;
}

std::size_t most_text_bytes(const Field& field) {
  const bool long_text = field.kind == Kind::text && field.max > 0.0;
  return long_text ? static_cast<std::size_t>(field.max) : kMostTextBytes;
}

}  // namespace thole
