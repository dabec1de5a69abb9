#pragma once

// Numbers as text, the same bytes on every platform and in every locale.

#include <optional>
#include <string>
#include <string_view>

namespace thole {

// Fixed count of decimals, a point, no grouping; "-0.00" is printed as "0.00". Not finite: "-".
std::string fixed(double value, int decimals);

// `digits` significant figures without an exponent for 1e-6 <= |value| < 1e15: 0.01234 -> "0.0123",
// 1234 -> "1230" is not done: digits before the point are always kept ("1234").
std::string significant(double value, int digits);

// Without zeros at the end of the decimals: "7.600" -> "7.6", "3.0" -> "3".
std::string trimmed(std::string number);

// A plain decimal number with point or comma, surrounding blanks allowed: "1.35", " 1,35 ", "-2".
// Nothing else is accepted ("1e3", "1.2.3", "").
std::optional<double> plain_number(std::string_view text);

}  // namespace thole
