#include "calc/mount/fatigue.h"

#include <cmath>

#include "calc/mount/slam.h"

namespace thole {
namespace {

constexpr double kMPaPerKsi = 6.894757293168;
constexpr double kSlams_per_s = 1.0;       // project decision, as the next four
constexpr double kRough_h_per_year = 50.0;
constexpr double kSwings_per_h = 360.0;
constexpr double kReversals_per_h = 1.0;
constexpr double kHolding_h_per_year = 300.0;

constexpr FatigueDetail design_manual(std::string_view name, double factor_ksi, double slope_exponent) {
  return {name, factor_ksi * kMPaPerKsi, 1.0, slope_exponent};
}

}  // namespace

FatigueDetail aluminium_plain() { return design_manual("A", 96.5, 6.85); }
FatigueDetail aluminium_bolt_holes() { return design_manual("B", 130.0, 4.84); }
FatigueDetail aluminium_poor_holes() { return design_manual("D", 157.0, 3.73); }
FatigueDetail aluminium_welds() { return design_manual("E", 160.0, 3.45); }
FatigueDetail steel_plain() { return {"160", 160.0, 2e6, 3.0}; }
FatigueDetail steel_bolt_holes() { return {"90", 90.0, 2e6, 3.0}; }
FatigueDetail bolt_thread() { return {"50", 50.0, 2e6, 3.0}; }

double hole_in_bending_factor(double hole_mm, double thickness_mm) {
  const double r = hole_mm / thickness_mm;
  return 1.79 + 0.25 / (0.39 + r) + 0.81 / (1.0 + r * r) - 0.26 / (1.0 + r * r * r);
}

double range_MPa(const FatigueDetail& detail, double cycles_count) {
  return detail.range_MPa * std::pow(detail.cycles_count / cycles_count, 1.0 / detail.slope_exponent);
}

double same_harm_factor(double slope_exponent) {
  return std::pow(std::tgamma(slope_exponent + 1.0), 1.0 / slope_exponent);
}

double slams_in_life() { return kSlams_per_s * 3600.0 * kRough_h_per_year * kLife_year; }

double swings_in_life() { return kSwings_per_h * kHolding_h_per_year * kLife_year; }

double swing_factor(double slope_exponent, double reversal_factor) {
  const double swing_factor = same_harm_factor(slope_exponent) / highest_one_in_factor(100.0);
  return std::pow(std::pow(swing_factor, slope_exponent) +
                      kReversals_per_h / kSwings_per_h * std::pow(reversal_factor, slope_exponent),
                  1.0 / slope_exponent);
}

double life_years(const FatigueDetail& detail, double thrust_range_MPa, double slam_range_MPa) {
  const auto harm_in_life = [&](double stress_MPa, double cycles_count) {
    return std::pow(stress_MPa / range_MPa(detail, cycles_count), detail.slope_exponent);
  };
  return kLife_year / (harm_in_life(thrust_range_MPa, swings_in_life()) + harm_in_life(slam_range_MPa, slams_in_life()));
}

}  // namespace thole
