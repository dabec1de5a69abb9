#include "calc/feeder/protection.h"

#include <algorithm>
#include <array>

#include "base/units.h"

namespace thole {
namespace {

constexpr double kContinuous_frac = 0.8;       // kContinuousLoad
constexpr double kOverAmpacity_ratio = 1.5;    // kE11Rating, kCfrDeviceRating
constexpr double kCranking_V = 12.6 - 7.2;     // kCrankingFault: at rest, and under the test

// kStandardRatings
constexpr std::array kRatings_A{15.0,  20.0,  25.0,  30.0,  35.0,  40.0,  45.0,  50.0,  60.0,
                                70.0,  80.0,  90.0,  100.0, 110.0, 125.0, 150.0, 175.0, 200.0,
                                225.0, 250.0, 300.0, 350.0, 400.0, 450.0, 500.0, 600.0};

}  // namespace

double device_min_A(double current_A) { return current_A / kContinuous_frac; }

double standard_rating_up_A(double current_A) {
  const auto* const found = std::lower_bound(kRatings_A.begin(), kRatings_A.end(), current_A);
  return found == kRatings_A.end() ? kRatings_A.back() : *found;
}

double device_max_A(double ampacity_A) {
  // Beyond the standard ratings there is no next size; the ampacity itself is the bound.
  const double next_A = std::max(standard_rating_up_A(ampacity_A), ampacity_A);
  return std::min(next_A, kOverAmpacity_ratio * ampacity_A);
}

double device_ceiling_A(double table_ampacity_A) { return kOverAmpacity_ratio * table_ampacity_A; }

double placement_limit_m(bool sheathed, bool from_battery_terminal) {
  if (!sheathed) return m_from_in(7.0);
  return m_from_in(from_battery_terminal ? 72.0 : 40.0);
}

double cranking_resistance_ohm(double cranking_A) { return kCranking_V / cranking_A; }

InterruptRating interrupt_for_cranking(double total_cranking_A) {
  if (total_cranking_A <= 650.0) return {.main_A = 1500.0, .branch_A = 750.0};  // kE11Interrupt
  if (total_cranking_A <= 1100.0) return {.main_A = 3000.0, .branch_A = 1500.0};
  return {.main_A = 5000.0, .branch_A = 2500.0};
}

}  // namespace thole
