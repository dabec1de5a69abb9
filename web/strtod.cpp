// In place of the C library's, for the JSON library: theirs computes in 128 bits, which takes four kilobytes of what
// travels.

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
}
