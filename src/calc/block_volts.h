#pragma once

// A block's volts at rest and its resistance: by the charge that is left, in the cold, with age.

#include <span>

#include "data/batteries.h"
#include "data/parts.h"

namespace thole {

// Of a "12 V" block at 25 C. Tables of data/batteries.h, straight lines between their rows.
double rest_V(Chemistry chemistry, double charge_frac);

// Resistance at this charge over that of the charged block.
double rest_ratio(Chemistry chemistry, double charge_frac);

// Both at once for a charge that moves little from one question to the next: it looks on from the row
// that it found the last time.
class RestCursor {
 public:
  explicit RestCursor(Chemistry chemistry) : rows_(rest_table(chemistry)) {}
  void to(double charge_frac);
  double rest_V() const { return rest_V_; }
  double rest_ratio() const { return rest_ratio_; }

 private:
  std::span<const RestRow> rows_{};
  std::size_t low_ = 0;
  double rest_V_ = 0.0;
  double rest_ratio_ = 1.0;
};

// Degrees below 25 C that double the resistance.
double double_K(Chemistry chemistry);

// A resistance grows so many times as the capacity falls with age. kProjectDecision.
inline constexpr double kAgedResistance_factor = 2.0;

// What a resistance grows by in the cold and with age.
double resistance_growth(Chemistry chemistry, double temperature_C, double age_factor);

// Of one charged block, new, at 25 C: by its papers, else typical of its kind and capacity.
double charged_ohm(const BatteryBlock& block);

}  // namespace thole
