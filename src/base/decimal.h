#pragma once

// Doubles in decimal figures and back: exact, and the same under every locale and on every machine.
//
// Own code: what the C library does hangs on the host's locale and, on the web, weighs ten kilobytes; a
// standard library's to_chars and from_chars, where it has them, weigh more. Tested against the C library.

#include <cstddef>
#include <string>
#include <string_view>

namespace thole {

// So many figures after the point, rounded from the exact value, a tie to the even figure: as "%.*f" does.
// Precondition: value is finite, decimals >= 0.
std::string decimal(double value, int decimals);

struct DecimalRead {
  double value = 0.0;      // nearest double, a tie to the even one; infinite beyond the largest
  std::size_t length = 0;  // of what was read; 0: no number there
};

// "-12.5e-3" at the beginning of a text; nothing else counts as a number: no blanks, no hexadecimal figures, no
// words.
DecimalRead read_decimal(std::string_view text);

}  // namespace thole
