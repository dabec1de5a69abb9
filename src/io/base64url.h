#pragma once

// base64url without padding, RFC 4648 sections 5 and 3.2. Strict: one text for one row of bytes.

#include <optional>
#include <string>
#include <string_view>

namespace thole {

std::string to_base64url(std::string_view bytes);

// Empty when a character is not of the alphabet, the length is impossible, or the bits left over in
// the last character are not zero.
std::optional<std::string> from_base64url(std::string_view text);

bool is_base64url(char c);

}  // namespace thole
