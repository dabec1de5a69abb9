#pragma once

// What is known of a chemistry when the label does not say: volts at rest, resistance, allowances
// against cold, charging limits. Rows are of a "12 V" block (six lead-acid cells, or four lithium
// iron phosphate cells); the functions scale them to the block at hand.

#include <span>
#include <string_view>

#include "base/trace.h"
#include "data/parts.h"

namespace thole {

// Volts at rest and resistance against the charge that is left, rising.
struct RestRow {
  double charge_frac = 0.0;
  double open_circuit_V = 0.0;    // of a 12 V block, 25 C
  double resistance_ratio = 1.0;  // to the charged block's
};

// The factor by which a cold bank must be larger, against temperature, rising.
struct ColdRow {
  double temperature_C = 0.0;
  double factor = 1.0;
};

// Two neighbouring rows of a table; between them it is a straight line, beyond its ends the last
// line goes on.
template <class Row>
struct Between {
  Row low{};
  Row high{};
};

struct ChemistryFacts {
  std::string_view label{};   // "lead-acid, AGM"
  double named_cell_V = 2.0;  // by which banks are named: 6 lead cells, 4 lithium are "12 V"
  double peukert_exponent = 1.12;
  double resistance_ohm_Ah = 0.4;         // of a charged 12 V block, times its amp-hours
  double absorption_cell_V = 2.45;        // upper end of the absorption window, 25 C
  double absorption_slope_V_per_K = 0.0;  // of that, each cell
  double bulk_max_frac = 0.4;             // of capacity, per hour
  double tail_frac = 0.02;                // of capacity, per hour: the current that ends absorption
  double bulk_efficiency_frac = 0.95;
  double absorption_efficiency_frac = 0.75;
  double absorption_min_h = 0.0;
  double cycles_at_full_count = 112.5;  // to 80 % of capacity, when emptied each time
  double cycles_exponent = 1.912;       // N = cycles_at_full / depth ^ this
  double depth_design_frac = 0.5;       // what a day may use
  double floor_cell_V = 1.75;           // end of a discharge
  double calendar_years_count = 8.0;    // until 80 % of capacity, by time alone
  SourceRef peukert_source{};
  SourceRef cycles_source{};
};
const ChemistryFacts& facts_of(Chemistry chemistry);

std::span<const RestRow> rest_table(Chemistry chemistry);
Between<RestRow> rest_between(Chemistry chemistry, double charge_frac);
const Source& rest_source(Chemistry chemistry);

std::span<const ColdRow> cold_table(Chemistry chemistry);
Between<ColdRow> cold_between(Chemistry chemistry, double temperature_C);
const Source& cold_source(Chemistry chemistry, double temperature_C);

// Cells in series inside a block of this nominal voltage: 12 V lead 6, 12.8 V lithium 4, 51.2 V 16.
int cell_count(Chemistry chemistry, double nominal_V);

// The voltage that the trade calls it by: 12 for a 12.8 V block, 48 for a 51.2 V one.
double named_V(Chemistry chemistry, double nominal_V);

// Specific gravity of a lead-acid cell's electrolyte against its volts at rest, 25 C:
// V = SG + 0.84. Source: rule of thumb, from memory; agrees with a published list of pairs.
constexpr double rest_cell_V(double specific_gravity_ratio) {
  return specific_gravity_ratio + 0.84;
}

// Temperature at which the electrolyte freezes, 1.100 .. 1.280. US Army training texts.
double freezing_C(double specific_gravity_ratio);

}  // namespace thole
