#pragma once

// The earth's main magnetic field as the coefficients of its potential (kIgrf14): degree 13 at
// 2025.0, and what they change by each year until 2030.0, to degree 8 (kIgrf14Forecast). Schmidt
// semi-normalised, reference radius below. The field of the crust, the boat's own and that of the
// sun's storms are no part of it.

#include <span>

namespace thole {

inline constexpr double kIgrfFrom_year = 2025.0;  // epoch of the coefficients
inline constexpr double kIgrfUntil_year = 2030.0;
inline constexpr double kIgrfRadius_m = 6371200.0;
inline constexpr int kIgrfDegree = 13;

// kWgs84
inline constexpr double kEquatorRadius_m = 6378137.0;
inline constexpr double kFlattening_frac = 1.0 / 298.257223563;

struct IgrfTerm {
  int degree = 0;
  int order = 0;
  double g_nT = 0.0;
  double h_nT = 0.0;
  double g_rate_nT_per_year = 0.0;
  double h_rate_nT_per_year = 0.0;
};

// Degree by degree from 1, in each the orders from 0.
std::span<const IgrfTerm> igrf_terms();

}  // namespace thole
