// In place of the C library's, for the JSON library's escapes and messages: theirs prints whatever can be printed, and takes
// three kilobytes of the module on its way.

#include <cstdarg>
#include <cstddef>
#include <cstdint>

extern "C" {

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
    if (*format != 'x' && *format != 'X') __builtin_trap();  // nothing here asks for more
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
