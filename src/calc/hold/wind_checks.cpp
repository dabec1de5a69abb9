#include "calc/hold/wind_checks.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <numbers>

#include "base/units.h"
#include "calc/hold/loads.h"

namespace thole {
namespace {

using std::numbers::pi;

struct IsherwoodRow {
  std::array<double, 7> surge{};  // A0 to A6
  std::array<double, 7> sway{};   // B0 to B6
  std::array<double, 6> yaw{};    // C0 to C5
};

// Degrees off the bow in the margin.
// clang-format off
constexpr std::array kIsherwood{
    IsherwoodRow{{2.152, -5.0, 0.243, -0.164, 0.0, 0.0, 0.0}, {0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0}, {0.0, 0.0, 0.0, 0.0, 0.0, 0.0}},  // 0
    IsherwoodRow{{1.714, -3.33, 0.145, -0.121, 0.0, 0.0, 0.0}, {0.096, 0.22, 0.0, 0.0, 0.0, 0.0, 0.0}, {0.0596, 0.061, 0.0, 0.0, 0.0, -0.074}},  // 10
    IsherwoodRow{{1.818, -3.97, 0.211, -0.143, 0.0, 0.0, 0.033}, {0.176, 0.71, 0.0, 0.0, 0.0, 0.0, 0.0}, {0.1106, 0.204, 0.0, 0.0, 0.0, -0.17}},  // 20
    IsherwoodRow{{1.965, -4.81, 0.243, -0.154, 0.0, 0.0, 0.041}, {0.225, 1.38, 0.0, 0.023, 0.0, -0.29, 0.0}, {0.2258, 0.245, 0.0, 0.0, 0.0, -0.38}},  // 30
    IsherwoodRow{{2.333, -5.99, 0.247, -0.19, 0.0, 0.0, 0.042}, {0.329, 1.82, 0.0, 0.043, 0.0, -0.59, 0.0}, {0.2017, 0.457, 0.0, 0.0067, 0.0, -0.472}},  // 40
    IsherwoodRow{{1.726, -6.54, 0.189, -0.173, 0.348, 0.0, 0.048}, {1.164, 1.26, 0.121, 0.0, -0.242, -0.95, 0.0}, {0.1759, 0.573, 0.0, 0.0118, 0.0, -0.523}},  // 50
    IsherwoodRow{{0.913, -4.68, 0.0, -0.104, 0.482, 0.0, 0.052}, {1.163, 0.96, 0.101, 0.0, -0.177, -0.88, 0.0}, {0.1925, 0.48, 0.0, 0.0115, 0.0, -0.546}},  // 60
    IsherwoodRow{{0.457, -2.88, 0.0, -0.068, 0.346, 0.0, 0.043}, {0.916, 0.53, 0.069, 0.0, 0.0, -0.65, 0.0}, {0.2133, 0.315, 0.0, 0.0081, 0.0, -0.526}},  // 70
    IsherwoodRow{{0.341, -0.91, 0.0, -0.031, 0.0, 0.0, 0.032}, {0.844, 0.55, 0.082, 0.0, 0.0, -0.54, 0.0}, {0.1827, 0.254, 0.0, 0.0053, 0.0, -0.443}},  // 80
    IsherwoodRow{{0.355, 0.0, 0.0, 0.0, -0.247, 0.0, 0.018}, {0.889, 0.0, 0.138, 0.0, 0.0, -0.66, 0.0}, {0.2627, 0.0, 0.0, 0.0, 0.0, -0.508}},  // 90
    IsherwoodRow{{0.601, 0.0, 0.0, 0.0, -0.372, 0.0, -0.02}, {0.799, 0.0, 0.155, 0.0, 0.0, -0.55, 0.0}, {0.2102, 0.0, -0.0195, 0.0, 0.0335, -0.492}},  // 100
    IsherwoodRow{{0.651, 1.29, 0.0, 0.0, -0.582, 0.0, -0.031}, {0.797, 0.0, 0.151, 0.0, 0.0, -0.55, 0.0}, {0.1567, 0.0, -0.0258, 0.0, 0.0497, -0.457}},  // 110
    IsherwoodRow{{0.564, 2.54, 0.0, 0.0, -0.748, 0.0, -0.024}, {0.996, 0.0, 0.184, 0.0, -0.212, -0.66, 0.34}, {0.0801, 0.0, -0.0311, 0.0, 0.074, -0.396}},  // 120
    IsherwoodRow{{-0.142, 3.58, 0.0, 0.047, -0.7, 0.0, -0.028}, {1.014, 0.0, 0.191, 0.0, -0.28, -0.69, 0.44}, {-0.0189, 0.0, -0.0488, 0.0101, 0.1128, -0.42}},  // 130
    IsherwoodRow{{-0.677, 3.64, 0.0, 0.069, -0.529, 0.0, -0.032}, {0.784, 0.0, 0.166, 0.0, -0.209, -0.53, 0.38}, {0.0256, 0.0, -0.0422, 0.01, 0.0889, -0.463}},  // 140
    IsherwoodRow{{-0.723, 3.14, 0.0, 0.064, -0.475, 0.0, -0.032}, {0.536, 0.0, 0.176, -0.029, -0.163, 0.0, 0.27}, {0.0552, 0.0, -0.0381, 0.0109, 0.0689, -0.476}},  // 150
    IsherwoodRow{{-2.148, 2.56, 0.0, 0.081, 0.0, 1.27, -0.027}, {0.251, 0.0, 0.106, -0.022, 0.0, 0.0, 0.0}, {0.0881, 0.0, -0.0306, 0.0091, 0.0366, -0.415}},  // 160
    IsherwoodRow{{-2.707, 3.97, -0.175, 0.126, 0.0, 1.81, 0.0}, {0.125, 0.0, 0.046, -0.012, 0.0, 0.0, 0.0}, {0.0851, 0.0, -0.0122, 0.0025, 0.0, -0.22}},  // 170
    IsherwoodRow{{-2.529, 3.76, -0.174, 0.128, 0.0, 1.55, 0.0}, {0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0}, {0.0, 0.0, 0.0, 0.0, 0.0, 0.0}},  // 180
};
// clang-format on

template <std::size_t kCount>
double sum_of(const std::array<double, kCount>& factors, const std::array<double, kCount>& terms) {
  double sum = 0.0;
  for (std::size_t i = 0; i < kCount; ++i) sum += factors[i] * terms[i];
  return sum;
}

WindFactors at_row(const IsherwoodInput& in, const IsherwoodRow& row) {
  const double side = 2.0 * in.lateral_area_m2 / (in.length_m * in.length_m);
  const double front = 2.0 * in.frontal_area_m2 / (in.beam_m * in.beam_m);
  const double slender = in.length_m / in.beam_m;
  const double edge = in.perimeter_m / in.length_m;
  const double centre = in.bow_to_centroid_m / in.length_m;
  const double house = in.superstructure_m2 / in.lateral_area_m2;
  const double masts = in.mast_count;
  return {.surge_factor = -sum_of<7>(row.surge, {1.0, side, front, slender, edge, centre, masts}),
          .sway_factor = sum_of<7>(row.sway, {1.0, side, front, slender, edge, centre, house}),
          .yaw_factor = sum_of<6>(row.yaw, {1.0, side, front, slender, edge, centre})};
}

struct AnchorRow {
  double length_ft = 0.0;
  double load_lbf = 0.0;
};
constexpr std::array kLunchHook{AnchorRow{20.0, 90.0}, AnchorRow{25.0, 125.0},
                                AnchorRow{30.0, 175.0}, AnchorRow{35.0, 225.0},
                                AnchorRow{40.0, 300.0}};

constexpr double kHeeling_factor = 0.3;

}  // namespace

WindFactors isherwood(const IsherwoodInput& in, double from_rad) {
  const double turns = from_rad / (2.0 * pi);
  const double off_bow_rad = std::abs(from_rad - 2.0 * pi * std::floor(turns + 0.5));
  const double place = std::clamp(off_bow_rad * 18.0 / pi, 0.0, 18.0);
  const auto low = static_cast<std::size_t>(std::min(17.0, std::floor(place)));
  const double share_frac = place - static_cast<double>(low);
  const WindFactors a = at_row(in, kIsherwood[low]);
  const WindFactors b = at_row(in, kIsherwood[low + 1]);
  const auto between = [share_frac](double x, double y) { return x + share_frac * (y - x); };
  const double side = std::sin(from_rad) < 0.0 ? -1.0 : 1.0;  // the table is of one side
  return {.surge_factor = between(a.surge_factor, b.surge_factor),
          .sway_factor = side * between(a.sway_factor, b.sway_factor),
          .yaw_factor = side * between(a.yaw_factor, b.yaw_factor)};
}

double land_gust_ratio(double averaging_s) {
  const double t = std::clamp(averaging_s, 1.0, 36000.0);
  if (t > 3600.0) return 1.5334 - 0.15 * std::log10(t);
  return 1.277 + 0.296 * std::tanh(0.9 * std::log10(45.0 / t));
}

double heeling_moment_Nm(const HeelingInput& in) {
  return kHeeling_factor * in.lateral_area_m2 *
         (in.lateral_area_m2 / in.waterline_length_m + in.draft_m) * in.wind_mps * in.wind_mps;
}

double heeling_side_factor(double air_density_kg_per_m3) {
  return kHeeling_factor * 4.0 / air_density_kg_per_m3;
}

double anchor_load_N(double length_m) {
  const double length_ft =
      std::clamp(ft_from_m(length_m), kLunchHook.front().length_ft, kLunchHook.back().length_ft);
  std::size_t i = 1;
  while (length_ft > kLunchHook[i].length_ft) ++i;
  const AnchorRow& a = kLunchHook[i - 1];
  const AnchorRow& b = kLunchHook[i];
  return N_from_lbf(a.load_lbf + (b.load_lbf - a.load_lbf) * (length_ft - a.length_ft) /
                                     (b.length_ft - a.length_ft));
}

}  // namespace thole
