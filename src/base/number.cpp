#include "base/number.h"

#include <algorithm>
#include <cmath>

#include "base/decimal.h"

namespace thole {

std::string fixed(double value, int decimals) {
  if (!std::isfinite(value)) return "-";
  std::string text = decimal(value, std::clamp(decimals, 0, 300));
  const bool zero = text.find_first_of("123456789") == std::string::npos;
  if (zero && !text.empty() && text.front() == '-') text.erase(0, 1);
  return text;
}

std::string significant(double value, int digits) {
  if (!std::isfinite(value)) return "-";
  if (value == 0.0) return "0";
  const int exponent = static_cast<int>(std::floor(std::log10(std::abs(value))));
  int decimals = std::clamp(digits - 1 - exponent, 0, 12);
  std::string text = fixed(value, decimals);
  // 9.996 with three figures rounds up to 10.00: one decimal too many.
  const double rounded = std::abs(read_decimal(text).value);
  if (rounded > 0.0) {
    const int after = static_cast<int>(std::floor(std::log10(rounded) + 1e-12));
    if (after > exponent && decimals > 0) text = fixed(value, --decimals);
  }
  return text;
}

std::string trimmed(std::string number) {
  if (number.find('.') == number.npos) return number;
  number.erase(number.find_last_not_of('0') + 1);
  if (number.back() == '.') number.pop_back();
  return number;
}

std::optional<double> plain_number(std::string_view text) {
  const std::size_t first = text.find_first_not_of(" \t");
  if (first == std::string_view::npos) return std::nullopt;
  text = text.substr(first, text.find_last_not_of(" \t") - first + 1);
  if (text.size() > 40) return std::nullopt;
  double sign = 1.0;
  if (text.front() == '-' || text.front() == '+') {
    sign = text.front() == '-' ? -1.0 : 1.0;
    text.remove_prefix(1);
  }
  bool digit = false;
  bool point = false;
  std::string digits;
  for (const char c : text) {
    if (c >= '0' && c <= '9') {
      digit = true;
      digits += c;
    } else if ((c == '.' || c == ',') && !point) {
      point = true;
      digits += '.';
    } else {
      return std::nullopt;
    }
  }
  if (!digit) return std::nullopt;
  return sign * read_decimal(digits).value;
}

}  // namespace thole
