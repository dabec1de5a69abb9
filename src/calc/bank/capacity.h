#pragma once

// What a label's amp-hours are worth: at another current, in the cold, with age, over the years.

#include "data/parts.h"

namespace thole {

// A capacity and the time over which the label gives it, at 25 C.
struct Rating {
  double capacity_Ah = 0.0;     // > 0
  double rated_hours_h = 20.0;  // > 0
};

// Hours at a steady current, by Peukert's law in its rated-hour form:
//
//   t = H (C / (I H))^k
//
// Range: steady current, 25 C, about C/50 to 1 C; it overstates endurance above that and ignores
// rest. Source: Peukert's law with rated hours, general references.
double peukert_hours_h(const Rating& rating, double exponent, double current_A);

// Amp-hours that come out at a steady current, never more than the label's:
//   Q = C min(1, (C / (I H))^(k - 1)).
double capacity_at_Ah(const Rating& rating, double exponent, double current_A);

// The label that delivers `needed_Ah` at `current_A`; the inverse of capacity_at_Ah().
double label_for_Ah(double needed_Ah, double rated_hours_h, double exponent, double current_A);

// Peukert exponent that joins two ratings, k = ln(t2/t1) / ln(I1/I2). 1 when they are the same.
struct Discharge {
  double current_A = 0.0;
  double time_h = 0.0;
};
double peukert_exponent(const Discharge& a, const Discharge& b);

// The discharge behind a reserve capacity: that many minutes at 25 A to 1.75 V a cell (SAE J537).
inline constexpr double kReserveCurrent_A = 25.0;
Discharge reserve_discharge(double reserve_capacity_min);

// By how much a bank must be larger than at 25 C. Lead-acid: IEEE 485 table 1, straight lines
// between its rows; lithium iron phosphate: the reciprocal of published simulation defaults. Beyond
// a table's ends its last line goes on, which is unsafe below about -15 C.
double temperature_factor(Chemistry chemistry, double temperature_C);

// The cubic published as a fit to the IEEE 485 table, -3.9 .. 51.7 C; only for comparison.
double temperature_factor_fit(double temperature_C);

// Days until 80 % of the capacity is left when each uses `depth_frac` of it: N = N1 / depth^m.
// A fit to open default data; a maker's own curve is better.
double cycle_life_count(Chemistry chemistry, double depth_frac);

// By how much a block must be larger for its age: its capacity falls in a straight line to 80 % at
// the end of its years in the calendar (there 1.25, as IEEE 485 sizes), and on to a fifth. Common
// practice: a block that was used hard, or kept flat, has less.
double age_factor_after(Chemistry chemistry, double age_years_count);

// Current that carries the same heat as `peak_A` for `duty_frac` of the time and `base_A` for the
// rest.
double rms_current_A(double peak_A, double base_A, double duty_frac);

}  // namespace thole
