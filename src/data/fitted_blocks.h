#pragma once

// The blocks of a bank one by one, as a line of text.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "data/parts.h"

namespace thole {

// What is said of one block; the rest is as the bank's other figures say.
struct SaidBlock {
  double capacity_Ah = 0.0;  // by its label
  std::optional<double> age_years_count{};
  std::optional<Chemistry> chemistry{};
  std::optional<double> nominal_V{};
  std::optional<double> resistance_ohm{};  // charged, 25 C
  std::optional<double> charge_frac{};     // in the morning
};

inline constexpr std::size_t kMostStrings = 6;
inline constexpr std::size_t kMostInString = 8;

// Reads blocks in the order of wiring, commas between them, "/" between strings: "100Ah 2y, 100Ah 2y,
// 80Ah 5y". Each has its amp-hours, and may have its age (2y), chemistry (flooded, agm, gel,
// lifepo4), volts (12V), resistance (4mohm) and charge in the morning (90%), in any order. Not
// understood or out of range: `message` is one sentence.
struct FittedRead {
  std::vector<std::vector<SaidBlock>> strings{};
  std::string message{};  // empty: it was understood
};
FittedRead read_fitted(std::string_view text);

// The strings as said; when no "/" was, a string goes on until its volts come to what the motor is
// made for. `series_count` > 0: so many blocks to a string instead. `nominal_V`: of a block that
// does not say its own.
std::vector<std::vector<SaidBlock>> strings_of(const FittedRead& read, int series_count,
                                               double motor_V, double nominal_V);

}  // namespace thole
