// In place of the C library's, for the JSON library, which calls them for numbers and for escapes: theirs compute in 128
// bits and print whatever can be printed, and take ten kilobytes of the module on its way.

#include <cstdarg>
#include <cstddef>
#include <cstdint>

#include "base/decimal.h"

extern "C" {

double strtod(const char* text, char** end) {
  const char* from = text;
  while (*from == ' ' || (*from >= '\t' && *from <= '\r')) ++from;
  const thole::DecimalRead read = thole::read_decimal(from);
  if (end != nullptr) *end = const_cast<char*>(read.length > 0 ? from + read.length : text);
  return read.value;
}
// Nothing calls these two; they come in one piece with it there.
float strtof(const char* text, char** end) { return static_cast<float>(strtod(text, end)); }
long double strtold(const char* text, char** end) { return static_cast<long double>(strtod(text, end)); }

// Text, and %x or %X with so many figures at least ("%04x", "%.2hhX"): what escapes and messages about bytes ask for.
int snprintf(char* to, std::size_t size, const char* format, ...) {
  std::va_list values;
  va_start(values, format);
  std::size_t length = 0;
  const auto put = [&](char c) {
    if (length + 1 < size) to[length] = c;
    ++length;
  };
  for (; *format != '\0'; ++format) {
    if (*format != '%') {
      put(*format);
      continue;
    }
    int figures = 1;
    for (++format; *format == '.' || *format == 'h' || (*format >= '0' && *format <= '9'); ++format)
      if (*format >= '0' && *format <= '9') figures = *format - '0';
    if (*format != 'x' && *format != 'X') break;
    const auto value = va_arg(values, std::uint32_t);
    while (figures < 8 && value >> 4 * figures != 0) ++figures;
    for (int shift = 4 * (figures - 1); shift >= 0; shift -= 4)
      put((*format == 'x' ? "0123456789abcdef" : "0123456789ABCDEF")[value >> shift & 15u]);
  }
  va_end(values);
  if (size > 0) to[length < size ? length : size - 1] = '\0';
  return static_cast<int>(length);
}
}
