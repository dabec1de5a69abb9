#include "calc/compass/earth_field.h"

#include <array>
#include <cmath>
#include <string>

#include "base/number.h"
#include "base/units.h"
#include "data/igrf.h"
#include "data/sources_power.h"

namespace thole {
namespace {

constexpr double kTeslaPerNanotesla = 1e-9;
constexpr double kLowest_m = -1000.0;
constexpr double kHighest_m = 600000.0;

constexpr std::size_t kSide = kIgrfDegree + 1;
using Table = std::array<std::array<double, kSide>, kSide>;

// Schmidt semi-normalised, by degree and order, at one colatitude.
struct Legendre {
  Table value{};
  Table slope{};      // by the colatitude
  Table over_sine{};  // value / sin(colatitude) for orders from 1, finite at the poles
};

Legendre legendre(double colatitude_rad) {
  const double c = std::cos(colatitude_rad);
  const double s = std::sin(colatitude_rad);
  Legendre p;
  p.value[0][0] = 1.0;
  for (std::size_t n = 1; n < kSide; ++n) {
    const double dn = static_cast<double>(n);
    const double diagonal = n == 1 ? 1.0 : std::sqrt((2.0 * dn - 1.0) / (2.0 * dn));
    p.value[n][n] = diagonal * s * p.value[n - 1][n - 1];
    p.slope[n][n] = diagonal * (c * p.value[n - 1][n - 1] + s * p.slope[n - 1][n - 1]);
    p.over_sine[n][n] = n == 1 ? 1.0 : diagonal * s * p.over_sine[n - 1][n - 1];
    for (std::size_t m = 0; m < n; ++m) {
      const double dm = static_cast<double>(m);
      const double scale = 1.0 / std::sqrt(dn * dn - dm * dm);
      const double first = scale * (2.0 * dn - 1.0);
      // The factor is 0 where there is no such term two degrees down.
      const double second = m + 1 < n ? scale * std::sqrt((dn - 1.0) * (dn - 1.0) - dm * dm) : 0.0;
      const std::size_t before = n >= 2 ? n - 2 : 0;
      p.value[n][m] = first * c * p.value[n - 1][m] - second * p.value[before][m];
      p.slope[n][m] =
          first * (c * p.slope[n - 1][m] - s * p.value[n - 1][m]) - second * p.slope[before][m];
      p.over_sine[n][m] = first * c * p.over_sine[n - 1][m] - second * p.over_sine[before][m];
    }
  }
  return p;
}

void refuse_outside(double value, double low, double high, const char* field,
                    const std::string& name, const std::string& unit, Issues& issues) {
  if (value >= low && value <= high) return;  // this way round, NaN is refused too
  issues.push_back({Severity::error, field,
                    name + " must be from " + trimmed(fixed(low, 1)) + " to " +
                        trimmed(fixed(high, 1)) + unit + "."});
}

Issues issues_of(const EarthFieldInput& in) {
  Issues issues;
  refuse_outside(in.latitude_deg, -90.0, 90.0, "latitude_deg", "Latitude", " degrees", issues);
  refuse_outside(in.longitude_deg, -180.0, 360.0, "longitude_deg", "Longitude", " degrees", issues);
  refuse_outside(in.altitude_m, kLowest_m, kHighest_m, "altitude_m", "Height over the sea", " m",
                 issues);
  refuse_outside(in.year, kIgrfFrom_year, kIgrfUntil_year, "year", "The year of the magnetic field",
                 "", issues);
  return issues;
}

}  // namespace

EarthFieldResult earth_field(const EarthFieldInput& in) {
  EarthFieldResult result{.source = in.year > kIgrfFrom_year ? kIgrf14Forecast : kIgrf14,
                          .issues = issues_of(in)};
  if (has_error(result.issues)) return result;
  // Geodetic to geocentric.
  const double latitude_rad = rad_from_deg(in.latitude_deg);
  const double longitude_rad = rad_from_deg(in.longitude_deg);
  const double s = std::sin(latitude_rad);
  const double c = std::abs(in.latitude_deg) == 90.0 ? 0.0 : std::cos(latitude_rad);
  const double e2 = kFlattening_frac * (2.0 - kFlattening_frac);
  const double normal_m = kEquatorRadius_m / std::sqrt(1.0 - e2 * s * s);
  const double axis_m = (normal_m + in.altitude_m) * c;
  const double north_m = (normal_m * (1.0 - e2) + in.altitude_m) * s;
  const double radius_m = std::hypot(axis_m, north_m);
  const Legendre p = legendre(std::atan2(axis_m, north_m));

  double north_nT = 0.0;  // along the sphere
  double east_nT = 0.0;
  double down_nT = 0.0;
  const double years = in.year - kIgrfFrom_year;
  for (const IgrfTerm& term : igrf_terms()) {
    const auto n = static_cast<std::size_t>(term.degree);
    const auto m = static_cast<std::size_t>(term.order);
    const double g = term.g_nT + years * term.g_rate_nT_per_year;
    const double h = term.h_nT + years * term.h_rate_nT_per_year;
    const double cosine = std::cos(term.order * longitude_rad);
    const double sine = std::sin(term.order * longitude_rad);
    const double shrunk = std::pow(kIgrfRadius_m / radius_m, term.degree + 2);
    north_nT += shrunk * (g * cosine + h * sine) * p.slope[n][m];
    east_nT += shrunk * term.order * (g * sine - h * cosine) * p.over_sine[n][m];
    down_nT -= shrunk * (term.degree + 1) * (g * cosine + h * sine) * p.value[n][m];
  }

  // The plumb line leans against the radius.
  const double lean_rad = std::atan2(north_m, axis_m) - latitude_rad;
  EarthField field{.north_T = kTeslaPerNanotesla *
                              (north_nT * std::cos(lean_rad) - down_nT * std::sin(lean_rad)),
                   .east_T = kTeslaPerNanotesla * east_nT,
                   .down_T = kTeslaPerNanotesla *
                             (north_nT * std::sin(lean_rad) + down_nT * std::cos(lean_rad))};
  field.horizontal_T = std::hypot(field.north_T, field.east_T);
  field.total_T = std::hypot(field.horizontal_T, field.down_T);
  field.declination_deg = deg_from_rad(std::atan2(field.east_T, field.north_T));
  field.inclination_deg = deg_from_rad(std::atan2(field.down_T, field.horizontal_T));
  result.field = field;
  return result;
}

}  // namespace thole
