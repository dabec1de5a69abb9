#pragma once

// Text from outside, made fit for a line on screen.

#include <cstddef>
#include <string>
#include <string_view>

#include "job/fields.h"

namespace thole {

bool is_utf8(std::string_view text);

// One line of sound UTF-8 of at most `most_bytes`: control characters become blanks, what is not
// UTF-8 becomes "?", and what is too long is cut between characters.
std::string plain_line(std::string_view text, std::size_t most_bytes);

// How much text a field holds.
std::size_t most_text_bytes(const Field& field);

}  // namespace thole
