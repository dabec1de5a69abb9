#include "data/batteries.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "base/units.h"
#include "data/sources.h"
#include "data/sources_battery.h"

namespace thole {
namespace {

// Charging figures, resistances and depths: common practice of the trade. Cycles: kLeadCycles and
// kLithiumCycles. Floors: SAE J537 for lead-acid; where its electronics open, common practice, for
// lithium. Years in the calendar: common practice. The trade calls four lithium iron phosphate cells "12 V", hence 3 V each.
constexpr ChemistryFacts kFlooded{.label = "lead-acid, flooded",
                                  .peukert_exponent = 1.25,
                                  .resistance_ohm_Ah = 0.50,
                                  .absorption_cell_V = 14.8 / 6.0,
                                  .absorption_slope_V_per_K = -0.004,
                                  .bulk_max_frac = 0.25,
                                  .absorption_min_h = 2.0,
                                  .calendar_years_count = 6.0,
                                  .peukert_source = kPeukertRanges,
                                  .cycles_source = kLeadCycles};
constexpr ChemistryFacts kAgm{.label = "lead-acid, AGM",
                              .peukert_exponent = 1.12,
                              .resistance_ohm_Ah = 0.40,
                              .absorption_cell_V = 14.7 / 6.0,
                              .absorption_slope_V_per_K = -0.004,
                              .bulk_max_frac = 0.40,
                              .absorption_min_h = 2.0,
                              .peukert_source = kPeukertRanges,
                              .cycles_source = kLeadCycles};
constexpr ChemistryFacts kGel{.label = "lead-acid, gel",
                              .peukert_exponent = 1.15,
                              .resistance_ohm_Ah = 0.65,
                              .absorption_cell_V = 14.2 / 6.0,
                              .absorption_slope_V_per_K = -0.004,
                              .bulk_max_frac = 0.20,
                              .absorption_min_h = 2.0,
                              .peukert_source = kPeukertRanges,
                              .cycles_source = kLeadCycles};
constexpr ChemistryFacts kLithium{.label = "lithium iron phosphate",
                                  .named_cell_V = 3.0,
                                  .peukert_exponent = 1.03,
                                  .resistance_ohm_Ah = 0.60,
                                  .absorption_cell_V = 3.65,
                                  .bulk_max_frac = 0.50,
                                  .tail_frac = 0.05,
                                  .bulk_efficiency_frac = 0.99,
                                  .absorption_efficiency_frac = 0.99,
                                  .cycles_at_full_count = 771.8,
                                  .cycles_exponent = 1.161,
                                  .depth_design_frac = 0.8,
                                  .floor_cell_V = 2.5,
                                  .calendar_years_count = 12.0,
                                  .peukert_source = kPeukertRanges,
                                  .cycles_source = kLithiumCycles};

// Resistance of the sealed module over its 1.769 mohm when charged: kRestAgm. The flooded block
// takes the same course, for want of a better one.
constexpr std::array kRestAgmRows{RestRow{0.0, 11.406, 4.570 / 1.769},
                                  RestRow{0.1, 11.730, 2.686 / 1.769},
                                  RestRow{0.2, 11.904, 2.226 / 1.769},
                                  RestRow{0.3, 12.096, 1.970 / 1.769},
                                  RestRow{0.4, 12.216, 1.843 / 1.769},
                                  RestRow{0.5, 12.384, 1.747 / 1.769},
                                  RestRow{0.6, 12.492, 1.711 / 1.769},
                                  RestRow{0.7, 12.636, 1.685 / 1.769},
                                  RestRow{0.8, 12.750, 1.697 / 1.769},
                                  RestRow{0.9, 12.918, 1.756 / 1.769},
                                  RestRow{1.0, 12.990, 1.0}};
// Gravities of a cell that has 1.265 when full: kRestFlooded.
constexpr double flooded_V(double gravity_ratio) { return 6.0 * rest_cell_V(gravity_ratio); }
constexpr std::array kRestFloodedRows{
    RestRow{0.00, flooded_V(1.120), 4.570 / 1.769}, RestRow{0.25, flooded_V(1.160), 2.098 / 1.769},
    RestRow{0.50, flooded_V(1.190), 1.747 / 1.769}, RestRow{0.75, flooded_V(1.225), 1.691 / 1.769},
    RestRow{1.00, flooded_V(1.265), 1.0}};
// The rise of resistance towards empty is common practice.
constexpr std::array kRestLithiumRows{
    RestRow{0.00, 10.40, 2.0}, RestRow{0.05, 12.20, 1.5}, RestRow{0.10, 12.60, 1.0},
    RestRow{0.20, 12.84, 1.0}, RestRow{0.30, 13.00, 1.0}, RestRow{0.40, 13.08, 1.0},
    RestRow{0.50, 13.14, 1.0}, RestRow{0.60, 13.16, 1.0}, RestRow{0.70, 13.24, 1.0},
    RestRow{0.80, 13.28, 1.0}, RestRow{0.90, 13.32, 1.0}, RestRow{0.95, 13.36, 1.0},
    RestRow{1.00, 13.60, 1.0}};

// IEEE 485 table 1; kIeee485Temperature, its ends kIeee485TemperatureEnds.
constexpr std::array kColdLeadRows{
    ColdRow{C_from_F(25.0), 1.520},  ColdRow{C_from_F(30.0), 1.430},
    ColdRow{C_from_F(35.0), 1.350},  ColdRow{C_from_F(40.0), 1.300},
    ColdRow{C_from_F(45.0), 1.250},  ColdRow{C_from_F(50.0), 1.190},
    ColdRow{C_from_F(55.0), 1.150},  ColdRow{C_from_F(60.0), 1.110},
    ColdRow{C_from_F(65.0), 1.080},  ColdRow{C_from_F(68.0), 1.056},
    ColdRow{C_from_F(70.0), 1.040},  ColdRow{C_from_F(73.0), 1.023},
    ColdRow{C_from_F(75.0), 1.011},  ColdRow{C_from_F(77.0), 1.000},
    ColdRow{C_from_F(80.0), 0.980},  ColdRow{C_from_F(85.0), 0.960},
    ColdRow{C_from_F(90.0), 0.940},  ColdRow{C_from_F(95.0), 0.930},
    ColdRow{C_from_F(100.0), 0.910}, ColdRow{C_from_F(105.0), 0.890},
    ColdRow{C_from_F(110.0), 0.880}, ColdRow{C_from_F(115.0), 0.870},
    ColdRow{C_from_F(120.0), 0.860}, ColdRow{C_from_F(125.0), 0.850}};
constexpr double kConfirmedFrom_C = C_from_F(40.0);
constexpr double kConfirmedTo_C = C_from_F(120.0);
// Reciprocals of the capacity that is left: kLithiumCold.
constexpr std::array kColdLithiumRows{ColdRow{-10.0, 1.0 / 0.60}, ColdRow{0.0, 1.0 / 0.80},
                                      ColdRow{25.0, 1.0}, ColdRow{40.0, 1.0}};

struct FreezingRow {
  double gravity_ratio = 0.0;
  double freezing_C = 0.0;
};
constexpr std::array kFreezingRows{
    FreezingRow{1.100, C_from_F(19.0)}, FreezingRow{1.150, C_from_F(5.0)},
    FreezingRow{1.200, C_from_F(-16.0)}, FreezingRow{1.250, C_from_F(-62.0)},
    FreezingRow{1.280, C_from_F(-90.0)}};

// The two rows round `at`, or the last two at that end.
template <class Row>
Between<Row> neighbours(std::span<const Row> rows, double Row::*column, double at) {
  std::size_t high = 1;
  while (high + 1 < rows.size() && rows[high].*column < at) ++high;
  return {rows[high - 1], rows[high]};
}

}  // namespace

const ChemistryFacts& facts_of(Chemistry chemistry) {
  switch (chemistry) {
    case Chemistry::flooded:
      return kFlooded;
    case Chemistry::agm:
      return kAgm;
    case Chemistry::gel:
      return kGel;
    case Chemistry::lifepo4:
      return kLithium;
  }
  return kAgm;
}

std::span<const RestRow> rest_table(Chemistry chemistry) {
  if (chemistry == Chemistry::lifepo4) return kRestLithiumRows;
  if (chemistry == Chemistry::flooded) return kRestFloodedRows;
  return kRestAgmRows;
}

Between<RestRow> rest_between(Chemistry chemistry, double charge_frac) {
  return neighbours(rest_table(chemistry), &RestRow::charge_frac, charge_frac);
}

const Source& rest_source(Chemistry chemistry) {
  if (chemistry == Chemistry::lifepo4) return kRestLithium;
  return chemistry == Chemistry::flooded ? kRestFlooded : kRestAgm;
}

std::span<const ColdRow> cold_table(Chemistry chemistry) {
  if (is_lead(chemistry)) return kColdLeadRows;
  return kColdLithiumRows;
}

Between<ColdRow> cold_between(Chemistry chemistry, double temperature_C) {
  return neighbours(cold_table(chemistry), &ColdRow::temperature_C, temperature_C);
}

const Source& cold_source(Chemistry chemistry, double temperature_C) {
  if (!is_lead(chemistry)) return kLithiumCold;
  const bool confirmed = temperature_C >= kConfirmedFrom_C && temperature_C <= kConfirmedTo_C;
  return confirmed ? kIeee485Temperature : kIeee485TemperatureEnds;
}

int cell_count(Chemistry chemistry, double nominal_V) {
  if (is_lead(chemistry)) return std::max(1, static_cast<int>(std::lround(nominal_V / 2.0)));
  // Labels give 3.2 V a cell or the name, 3 V a cell. Blocks from 12 V up are made of fours.
  constexpr double kFour_V = 12.4;  // between 4 x 3.0 and 4 x 3.2
  const long cells = nominal_V < 10.0 ? std::lround(nominal_V / (kFour_V / 4.0))
                                      : 4 * std::lround(nominal_V / kFour_V);
  return std::max(1, static_cast<int>(cells));
}

double named_V(Chemistry chemistry, double nominal_V) {
  return facts_of(chemistry).named_cell_V * cell_count(chemistry, nominal_V);
}

double freezing_C(double specific_gravity_ratio) {
  const double gravity_ratio =
      std::clamp(specific_gravity_ratio, kFreezingRows.front().gravity_ratio,
                 kFreezingRows.back().gravity_ratio);
  const auto [low, high] = neighbours(std::span<const FreezingRow>(kFreezingRows),
                                      &FreezingRow::gravity_ratio, gravity_ratio);
  const double share_frac =
      (gravity_ratio - low.gravity_ratio) / (high.gravity_ratio - low.gravity_ratio);
  return low.freezing_C + share_frac * (high.freezing_C - low.freezing_C);
}

}  // namespace thole
