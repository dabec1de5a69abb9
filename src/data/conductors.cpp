#include "data/conductors.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "base/units.h"
#include "data/sources_power.h"

namespace thole {
namespace {

constexpr double kCircularMil_mm2 =
    5.067075e-4;                          // kAstmB258: pi/4 of a thousandth of an inch squared
constexpr double kFinestWire_mm = 0.127;  // kAstmB258: 36 AWG, 0.005 in
constexpr double kWireRatio = 92.0;       // kAstmB258: 4/0 over 36 AWG ...
constexpr double kWireSteps = 39.0;       // ... in so many steps
constexpr double kLay_factor = 1.02;                    // kCopperLay

// Areas: kAstmB258. SAE areas: kSaeAreas. Resistances: kNecTable8, bare and coated.
constexpr std::array kAwg{
    Conductor{"14 AWG", false, 2.081, 3702.0, 8.471e-3, 8.795e-3},
    Conductor{"12 AWG", false, 3.309, 5833.0, 5.342e-3, 5.530e-3},
    Conductor{"10 AWG", false, 5.261, 9343.0, 3.345e-3, 3.480e-3},
    Conductor{"8 AWG", false, 8.366, 14810.0, 2.099e-3, 2.183e-3},
    Conductor{"6 AWG", false, 13.302, 24538.0, 1.325e-3, 1.376e-3},
    Conductor{"4 AWG", false, 21.151, 37360.0, 0.8309e-3, 0.8660e-3},
    Conductor{"3 AWG", false, 26.670, 0.0, 0.6609e-3, 0.6852e-3},
    Conductor{"2 AWG", false, 33.631, 62450.0, 0.5234e-3, 0.5422e-3},
    Conductor{"1 AWG", false, 42.408, 77790.0, 0.4154e-3, 0.4316e-3},
    Conductor{"1/0 AWG", false, 53.475, 98980.0, 0.3291e-3, 0.3426e-3},
    Conductor{"2/0 AWG", false, 67.431, 125100.0, 0.2609e-3, 0.2725e-3},
    Conductor{"3/0 AWG", false, 85.029, 158600.0, 0.2066e-3, 0.2150e-3},
    Conductor{"4/0 AWG", false, 107.219, 205500.0, 0.1640e-3, 0.1689e-3},
};

// Nominal areas; resistances: kIec60228, plain and tinned.
constexpr std::array kMetric{
    Conductor{"2.5 mm2", true, 2.5, 0.0, 7.98e-3, 8.21e-3},
    Conductor{"4 mm2", true, 4.0, 0.0, 4.95e-3, 5.09e-3},
    Conductor{"6 mm2", true, 6.0, 0.0, 3.30e-3, 3.39e-3},
    Conductor{"10 mm2", true, 10.0, 0.0, 1.91e-3, 1.95e-3},
    Conductor{"16 mm2", true, 16.0, 0.0, 1.21e-3, 1.24e-3},
    Conductor{"25 mm2", true, 25.0, 0.0, 0.780e-3, 0.795e-3},
    Conductor{"35 mm2", true, 35.0, 0.0, 0.554e-3, 0.565e-3},
    Conductor{"50 mm2", true, 50.0, 0.0, 0.386e-3, 0.393e-3},
    Conductor{"70 mm2", true, 70.0, 0.0, 0.272e-3, 0.277e-3},
    Conductor{"95 mm2", true, 95.0, 0.0, 0.206e-3, 0.210e-3},
    Conductor{"120 mm2", true, 120.0, 0.0, 0.161e-3, 0.164e-3},
    Conductor{"150 mm2", true, 150.0, 0.0, 0.129e-3, 0.132e-3},
};

constexpr auto kConductors = [] {
  std::array<Conductor, kAwg.size() + kMetric.size()> all{};
  std::copy(kAwg.begin(), kAwg.end(), all.begin());
  std::copy(kMetric.begin(), kMetric.end(), all.begin() + kAwg.size());
  return all;
}();

template <std::size_t N>
struct AmpacityRow {
  std::string_view label{};
  std::array<double, N> current_A{};  // by insulation
};

constexpr std::array kCfrInsulation_C{60.0, 75.0, 80.0, 90.0, 105.0, 125.0, 200.0};
using CfrRow = AmpacityRow<kCfrInsulation_C.size()>;
constexpr std::array<double, 7> kCfrEngineSpace_factor{0.58, 0.75, 0.78, 0.82, 0.85, 0.89, 1.00};

constexpr std::array kCfrAmpacity{
    // kCfrTable5
    CfrRow{"18 AWG", {10, 10, 15, 20, 20, 25, 25}},
    CfrRow{"16 AWG", {15, 15, 20, 25, 25, 30, 35}},
    CfrRow{"14 AWG", {20, 20, 25, 30, 35, 40, 45}},
    CfrRow{"12 AWG", {25, 25, 35, 40, 45, 50, 55}},
    CfrRow{"10 AWG", {40, 40, 50, 55, 60, 70, 70}},
    CfrRow{"8 AWG", {55, 65, 70, 70, 80, 90, 100}},
    CfrRow{"6 AWG", {80, 95, 100, 100, 120, 125, 135}},
    CfrRow{"4 AWG", {105, 125, 130, 135, 160, 170, 180}},
    CfrRow{"3 AWG", {120, 145, 150, 155, 180, 195, 210}},
    CfrRow{"2 AWG", {140, 170, 175, 180, 210, 225, 240}},
    CfrRow{"1 AWG", {165, 195, 210, 210, 245, 265, 280}},
    CfrRow{"1/0 AWG", {195, 230, 245, 245, 285, 305, 325}},
    CfrRow{"2/0 AWG", {225, 265, 285, 285, 330, 355, 370}},
    CfrRow{"3/0 AWG", {260, 310, 330, 330, 385, 410, 430}},
    CfrRow{"4/0 AWG", {300, 360, 385, 385, 445, 475, 510}},
};

constexpr std::array kIsoInsulation_C{60.0, 70.0, 85.0, 105.0, 125.0, 200.0};
using IsoRow = AmpacityRow<kIsoInsulation_C.size()>;

// One published abstract prints the 200 C column as that of 105 C; Table 5 of 33 CFR 183.425
// settles which is right (docs/decisions.md).
constexpr std::array kIsoAmpacityRows{
    // kIsoAmpacity
    IsoRow{"2.5 mm2", {17, 25, 30, 35, 40, 45}},
    IsoRow{"4 mm2", {22, 35, 40, 45, 50, 55}},
    IsoRow{"6 mm2", {29, 45, 50, 60, 70, 75}},
    IsoRow{"10 mm2", {40, 65, 70, 90, 100, 120}},
    IsoRow{"16 mm2", {54, 90, 100, 130, 150, 170}},
    IsoRow{"25 mm2", {71, 120, 140, 170, 185, 200}},
    IsoRow{"35 mm2", {87, 160, 185, 210, 225, 240}},
    IsoRow{"50 mm2", {105, 210, 230, 270, 300, 325}},
    IsoRow{"70 mm2", {135, 265, 285, 330, 360, 375}},
    IsoRow{"95 mm2", {165, 310, 330, 390, 410, 430}},
    IsoRow{"120 mm2", {190, 360, 400, 450, 480, 520}},
    IsoRow{"150 mm2", {220, 380, 430, 475, 520, 560}},
};

struct PullRow {
  std::string_view label{};
  double force_N = 0.0;
  bool confirmed = false;
};
constexpr std::array kPullRows{
    // kE11Pull, else kE11PullRecalled
    PullRow{"16 AWG", N_from_lbf(15.0), true}, PullRow{"14 AWG", N_from_lbf(30.0)},
    PullRow{"12 AWG", N_from_lbf(35.0)}, PullRow{"10 AWG", N_from_lbf(40.0), true},
    PullRow{"8 AWG", N_from_lbf(45.0)}, PullRow{"6 AWG", N_from_lbf(50.0)},
    PullRow{"4 AWG", N_from_lbf(70.0)}, PullRow{"2 AWG", N_from_lbf(90.0)},
    PullRow{"1 AWG", N_from_lbf(100.0)}, PullRow{"1/0 AWG", N_from_lbf(125.0)},
    PullRow{"2/0 AWG", N_from_lbf(150.0)}, PullRow{"3/0 AWG", N_from_lbf(175.0)},
    PullRow{"4/0 AWG", N_from_lbf(225.0)},
    // kIsoPull
    PullRow{"2.5 mm2", 150.0}, PullRow{"4 mm2", 170.0}, PullRow{"6 mm2", 200.0},
    PullRow{"10 mm2", 220.0}, PullRow{"16 mm2", 260.0}, PullRow{"25 mm2", 310.0},
    PullRow{"35 mm2", 350.0}, PullRow{"50 mm2", 400.0}, PullRow{"70 mm2", 440.0},
    PullRow{"95 mm2", 550.0}, PullRow{"120 mm2", 660.0}, PullRow{"150 mm2", 770.0}};

const PullRow* find_pull(std::string_view label) {
  for (const PullRow& row : kPullRows) {
    if (row.label == label) return &row;
  }
  return nullptr;
}

// A thicker row never carries less, nor does better insulation.
template <class Rows>
constexpr bool rises(const Rows& rows) {
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const auto& row = rows[i].current_A;
    if (!std::is_sorted(row.begin(), row.end())) return false;
    for (std::size_t j = 0; i > 0 && j < row.size(); ++j) {
      if (row[j] <= rows[i - 1].current_A[j]) return false;
    }
  }
  return true;
}
static_assert(rises(kCfrAmpacity) && rises(kIsoAmpacityRows));

template <class Rows>
constexpr bool thickens(const Rows& rows) {
  return std::is_sorted(rows.begin(), rows.end(), [](const Conductor& a, const Conductor& b) {
    return a.area_mm2 < b.area_mm2 && a.tinned_ohm_per_m > b.tinned_ohm_per_m;
  });
}
static_assert(thickens(kAwg) && thickens(kMetric));

// The last column whose temperature is not above the insulation's; -1 when there is none.
template <std::size_t N>
int column_below(const std::array<double, N>& columns_C, double insulation_C) {
  int column = -1;
  for (const double rated_C : columns_C) {
    if (!(rated_C <= insulation_C)) break;
    ++column;
  }
  return column;
}

template <std::size_t N, std::size_t Rows>
double from_table(const std::array<AmpacityRow<N>, Rows>& table,
                  const std::array<double, N>& columns_C, std::string_view label,
                  double insulation_C) {
  const int column = column_below(columns_C, insulation_C);
  if (column < 0) return 0.0;
  for (const AmpacityRow<N>& row : table) {
    if (row.label == label) return row.current_A[static_cast<std::size_t>(column)];
  }
  return 0.0;
}

}  // namespace

std::span<const Conductor> conductors() { return kConductors; }

const Conductor* find_conductor(std::string_view label) {
  for (const Conductor& conductor : kConductors) {
    if (conductor.label == label) return &conductor;
  }
  return nullptr;
}

double awg_diameter_mm(int gauge) {
  return kFinestWire_mm * std::pow(kWireRatio, (36.0 - gauge) / kWireSteps);
}

double resistance_at(double at_20_ohm, double temperature_C) {
  return at_20_ohm * (1.0 + kCopperSlope_frac_per_K * (temperature_C - 20.0));
}

double stranded_ohm_per_m(double area_mm2) {
  return kPureCopper_ohm_mm2_per_m * kLay_factor / area_mm2;
}

double circular_mils(double area_mm2) { return area_mm2 / kCircularMil_mm2; }

double ampacity_A(std::string_view label, double insulation_C) {
  return std::max(from_table(kCfrAmpacity, kCfrInsulation_C, label, insulation_C),
                  from_table(kIsoAmpacityRows, kIsoInsulation_C, label, insulation_C));
}

double engine_space_factor(double insulation_C) {
  const int column = column_below(kCfrInsulation_C, insulation_C);
  return kCfrEngineSpace_factor[static_cast<std::size_t>(std::max(column, 0))];
}

double ambient_factor(double insulation_C, double ambient_C) {
  const double room_K = std::max(insulation_C - ambient_C, 0.0);
  return std::min(1.0, std::sqrt(room_K / (insulation_C - 30.0)));
}

double bundling_factor(int bundled_count) {
  if (bundled_count < 3) return 1.0;
  if (bundled_count == 3) return 0.70;
  if (bundled_count <= 6) return 0.60;
  return bundled_count <= 24 ? 0.50 : 0.40;
}

double pull_test_N(std::string_view label) {
  const PullRow* row = find_pull(label);
  return row == nullptr ? 0.0 : row->force_N;
}

const Source& pull_source(std::string_view label) {
  const PullRow* row = find_pull(label);
  if (row != nullptr && row->confirmed) return kE11Pull;
  return label.ends_with("mm2") ? kIsoPull : kE11PullRecalled;
}

const Source& resistance_source(const Conductor& conductor) {
  return conductor.metric ? kIec60228 : kNecTable8;
}

const Source& ampacity_source(const Conductor& conductor) {
  return conductor.metric ? kIsoAmpacity : kCfrTable5;
}

const Source& engine_space_source(double insulation_C) {
  return insulation_C >= 105.0 && insulation_C < 125.0 ? kCfrEngineSpace : kCfrEngineSpaceOther;
}

}  // namespace thole
