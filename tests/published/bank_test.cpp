// Capacity, volts and forces of the bank against printed values. Standing of a row: "confirmed" in
// a published text, "recomputed" by the handbook from a published form, or "from memory".

#include "calc/bank/bank.h"

#include "base/units.h"
#include "calc/bank/capacity.h"
#include "calc/circuit.h"
#include "calc/bank/kinetic.h"
#include "data/batteries.h"
#include "support.h"

using namespace thole;

namespace {

constexpr Chemistry kAgm = Chemistry::agm;
constexpr Chemistry kLithium = Chemistry::lifepo4;

// Open data for AGM, per 100 Ah over 20 h; ratings confirmed, fit recomputed.
KineticModel open_agm_model() { return fit({100.0, 20.0}, {93.2, 10.0}, {58.12, 1.0}); }

double rest_12V(Chemistry chemistry, double charge_frac) {
  for (const RestRow& row : rest_table(chemistry)) {
    if (near(row.charge_frac, charge_frac, 1e-9)) return row.open_circuit_V;
  }
  return 0.0;
}

BatteryBlock group_31() {
  return {.id = "group-31",
          .label = "Group 31 AGM",
          .chemistry = kAgm,
          .nominal_V = 12.0,
          .capacity_Ah = 105.0,
          .resistance_ohm = 0.004,
          .mass_kg = 31.0};
}

BankInput day_at_36V() {
  return {.motor_nominal_V = 36.0,
          .motor_minimum_V = 30.0,
          .motor_maximum_V = 50.0,
          .energy_Wh = 1000.0,
          .holding_h = 4.0,
          .hours_on_h = 4.5,
          .mean_power_W = 230.0,
          .full_power_W = 1100.0,
          .blocks = {group_31()}};
}

}  // namespace

TEST_SUITE("published") {
  TEST_CASE("PK1: 100 Ah over 20 h at 25 A, k 1.20 [Peukert, rated hours; recomputed]") {
    CHECK(near(peukert_hours_h({100.0, 20.0}, 1.20, 25.0), 2.899, 0.0005));
  }

  TEST_CASE("PK3: 100 Ah at 1 A, k 1.2, 5 A [published example, prints 14.5 h; confirmed]") {
    CHECK(near(peukert_hours_h({100.0, 100.0}, 1.2, 5.0), 14.5, 0.05));
  }

  TEST_CASE("PK4: exponent from 100 Ah and 180 min, 105 Ah and 160 min [SAE J537; recomputed]") {
    CHECK(near(peukert_exponent({5.0, 20.0}, reserve_discharge(180.0)), 1.179, 0.0005));
    CHECK(near(peukert_exponent({5.25, 20.0}, reserve_discharge(160.0)), 1.291, 0.0005));
  }

  TEST_CASE("exponent of an open AGM set, 20 h to 10 h and to 1 h [NREL SAM; recomputed]") {
    CHECK(near(peukert_exponent({5.0, 20.0}, {9.32, 10.0}), 1.113, 0.0005));
    CHECK(near(peukert_exponent({5.0, 20.0}, {58.12, 1.0}), 1.221, 0.0005));
  }

  struct ColdPrint {
    double temperature_F;
    double factor;
  };

  TEST_CASE("TF1: cell size correction, 40 to 120 F [IEEE 485 Table 1; confirmed]") {
    const ColdPrint rows[] = {{40, 1.300},  {45, 1.250},  {50, 1.190},  {55, 1.150},  {60, 1.110},
                              {65, 1.080},  {68, 1.056},  {70, 1.040},  {73, 1.023},  {75, 1.011},
                              {77, 1.000},  {80, 0.980},  {85, 0.960},  {90, 0.940},  {95, 0.930},
                              {100, 0.910}, {105, 0.890}, {110, 0.880}, {115, 0.870}, {120, 0.860}};
    for (const ColdPrint& row : rows) {
      CAPTURE(row.temperature_F);
      CHECK(near(temperature_factor(kAgm, C_from_F(row.temperature_F)), row.factor, 0.0005));
      CHECK(cold_source(kAgm, C_from_F(row.temperature_F)).confirmed);
    }
  }

  TEST_CASE("TF3: cell size correction, ends of the table [IEEE 485 Table 1; from memory]") {
    const ColdPrint rows[] = {{25, 1.520}, {30, 1.430}, {35, 1.350}, {125, 0.850}};
    for (const ColdPrint& row : rows) {
      CAPTURE(row.temperature_F);
      CHECK(near(temperature_factor(kAgm, C_from_F(row.temperature_F)), row.factor, 0.0005));
      CHECK_FALSE(cold_source(kAgm, C_from_F(row.temperature_F)).confirmed);
    }
  }

  TEST_CASE("TF4: published fit at 25 C and at -3.9 C [confirmed]") {
    CHECK(near(temperature_factor_fit(25.0), 0.9995, 0.0001));
    CHECK(near(temperature_factor_fit(-3.9), 1.509, 0.0005));
  }

  // The handbook says "within 1 % except at -3.9 C". Recomputed, it is -0.8 % there; the one row
  // that departs is 1.350 at 35 F, by 1.08 %, and that row is from memory. The confirmed rows all
  // agree.
  TEST_CASE("TF4: the fit is within 1 % of the confirmed rows, 40 to 120 F [published fit]") {
    int row_count = 0;
    for (const ColdRow& row : cold_table(kAgm)) {
      if (!cold_source(kAgm, row.temperature_C).confirmed) continue;
      CAPTURE(row.temperature_C);
      CHECK(temperature_factor_fit(row.temperature_C) == rel(row.factor, 0.01));
      ++row_count;
    }
    CHECK(row_count == 20);
  }

  TEST_CASE("lithium capacity 0.60, 0.80, 1.00 at -10, 0, 25 C [NREL SAM; confirmed]") {
    CHECK(near(1.0 / temperature_factor(kLithium, -10.0), 0.60, 0.005));
    CHECK(near(1.0 / temperature_factor(kLithium, 0.0), 0.80, 0.005));
    CHECK(near(1.0 / temperature_factor(kLithium, 25.0), 1.00, 0.005));
  }

  TEST_CASE(
      "SZ1: 20 A, 4 h, 10 C: 130.9 Ah [IEEE 485 method; recomputed, 1.25 and 1.10 from memory]") {
    const double needed_Ah = 20.0 * 4.0 * temperature_factor(kAgm, 10.0) * 1.25 * 1.10;
    CHECK(near(needed_Ah, 130.9, 0.05));
    CHECK(near(needed_Ah / 0.8, 163.6, 0.05));
  }

  TEST_CASE("SZ1 through the stage: 80 Ah become 130.9 Ah at the load's own rate") {
    // With exponent 1 the label's hours do not matter; the whole depth may be used.
    BankInput in = day_at_36V();
    in.peukert_exponent = 1.0;
    in.parallel_count = 1;
    in.depth_of_discharge_frac = 1.0;
    in.feeder_drop_frac = 0.0;
    in.hours_on_h = in.holding_h;
    const BankResult once = bank(in);
    in.energy_Wh *= 80.0 / once.used_Ah;
    const BankResult result = bank(in);
    CHECK(near(result.used_Ah, 80.0, 1e-6));
    CHECK(near(result.capacity_required_Ah, 130.9, 0.05));
  }

  TEST_CASE("CY1: cycles to 80 % at depths of 0.5, 0.8, 1 [fit to NREL SAM, AGM; recomputed]") {
    CHECK(near(cycle_life_count(kAgm, 0.5), 423.0, 0.5));
    CHECK(near(cycle_life_count(kAgm, 0.8), 172.0, 0.5));
    CHECK(near(cycle_life_count(kAgm, 1.0), 112.5, 0.05));
  }

  TEST_CASE("CY1: the data behind the fit, 1125 at 0.3 and 425 at 0.5 [NREL SAM; confirmed]") {
    CHECK(cycle_life_count(kAgm, 0.3) == rel(1125.0, 0.005));
    CHECK(cycle_life_count(kAgm, 0.5) == rel(425.0, 0.005));
  }

  TEST_CASE("generic lithium-ion, 5000 cycles at 0.2 and 1000 at 0.8 [NREL SAM; confirmed]") {
    CHECK(cycle_life_count(kLithium, 0.2) == rel(5000.0, 0.001));
    CHECK(cycle_life_count(kLithium, 0.8) == rel(1000.0, 0.001));
  }

  TEST_CASE("KB1: k 0.784, c 0.4474, 107.88 Ah [kinetic model, NREL SAM ratings; recomputed]") {
    const KineticModel model = open_agm_model();
    CHECK(near(model.rate_frac_per_h, 0.784, 0.0005));
    CHECK(near(model.available_frac, 0.4474, 0.00005));
    CHECK(near(model.capacity_Ah, 107.88, 0.005));
  }

  TEST_CASE(
      "KB1: lead-acid test set, k 0.677, c 0.4751, 108.16 Ah [NREL SAM ratings; recomputed]") {
    const KineticModel model = fit({100.0, 20.0}, {93.0, 10.0}, {60.0, 1.0});
    CHECK(near(model.rate_frac_per_h, 0.677, 0.0005));
    CHECK(near(model.available_frac, 0.4751, 0.00005));
    CHECK(near(model.capacity_Ah, 108.16, 0.005));
  }

  TEST_CASE("KB2: 20 A from full lasts 3.893 h [kinetic model; recomputed]") {
    CHECK(near(kinetic_hours_h(open_agm_model(), 20.0, 100.0), 3.893, 0.0005));
  }

  TEST_CASE("KB3: 60 A for 20 %, 10 A for 80 % of each 60 s lasts 3.886 h [recomputed]") {
    const KineticModel model = open_agm_model();
    KineticState state = full_state(model);
    double time_h = 0.0;
    const double burst_h = 12.0 / 3600.0;
    const double rest_h = 48.0 / 3600.0;
    while (time_h < 10.0) {
      const KineticState after_burst = after(model, state, 60.0, burst_h);
      if (after_burst.available_Ah < 0.0) {  // empty within this burst
        time_h += burst_h * state.available_Ah / (state.available_Ah - after_burst.available_Ah);
        break;
      }
      state = after(model, after_burst, 10.0, rest_h);
      time_h += burst_h + rest_h;
    }
    CHECK(near(time_h, 3.886, 0.0005));
  }

  TEST_CASE("KB5: 25 A for an hour, then an hour of rest [kinetic model; recomputed]") {
    const KineticModel model = open_agm_model();
    const KineticState tired = after(model, full_state(model), 25.0, 1.0);
    CHECK(near(tired.available_Ah, 27.504, 0.0005));
    CHECK(near(tired.bound_Ah, 55.373, 0.0005));
    const KineticState rested = after(model, tired, 0.0, 1.0);
    CHECK(near(rested.available_Ah, 32.708, 0.0005));
    CHECK(near(rested.bound_Ah, 50.169, 0.0005));
  }

  TEST_CASE("KB6, KB7: 58.12 A held for an hour; 73.13 Ah over three [recomputed]") {
    const KineticModel model = open_agm_model();
    CHECK(near(held_current_A(model, full_state(model), 1.0), 58.12, 0.005));
    CHECK(near(capacity_over_Ah(model, 3.0), 73.13, 0.005));
  }

  TEST_CASE(
      "KB: 100 Ah with 180 min of reserve: c 0.4734, 107.09 Ah, 60.47 Ah an hour [recomputed]") {
    const KineticModel model = kinetic_model(kAgm, {100.0, 20.0}, 180.0);
    CHECK(near(model.available_frac, 0.4734, 0.00005));
    CHECK(near(model.capacity_Ah, 107.09, 0.005));
    CHECK(near(capacity_over_Ah(model, 1.0), 60.47, 0.005));
  }

  TEST_CASE("KB1: a label without a reserve capacity takes the open set [recomputed]") {
    const KineticModel model = kinetic_model(kAgm, {100.0, 20.0}, 0.0);
    CHECK(near(model.capacity_Ah, 107.88, 0.005));
    CHECK(near(capacity_over_Ah(model, 10.0), 93.2, 0.05));
  }

  TEST_CASE("RM1: 60 A for 20 %, 10 A for 80 %: 28.28 A [definition; recomputed]") {
    CHECK(near(rms_current_A(60.0, 10.0, 0.2), 28.28, 0.005));
  }

  TEST_CASE("CP1: 25.2 V behind 12 mohm, 1500 W [constant-power quadratic; form confirmed]") {
    const OperatingPoint point = constant_power(25.2, 0.012, 1500.0);
    CHECK(point.solvable);
    CHECK(near(point.current_A, 61.314, 0.0005));
    CHECK(near(point.load_V, 24.464, 0.0005));
    // P_max = 13 230 W
    CHECK(constant_power(25.2, 0.012, 13229.0).solvable);
    CHECK_FALSE(constant_power(25.2, 0.012, 13231.0).solvable);
  }

  TEST_CASE("OC1: specific gravity and volts at rest [published pairs; confirmed]") {
    const double rows[][2] = {{1.270, 12.66}, {1.240, 12.45}, {1.210, 12.30}, {1.180, 12.15}};
    for (const auto& row : rows) {
      CAPTURE(row[0]);
      CHECK(near(6.0 * rest_cell_V(row[0]), row[1], 0.035));  // the rule is good to 0.03 V
    }
    CHECK(near(6.0 * rest_cell_V(1.270), 12.66, 0.005));
  }

  TEST_CASE("OC2: sealed 12 V module of 91 Ah, volts and resistance [NREL ADVISOR; confirmed]") {
    struct Print {
      double charge_frac;
      double open_V;
      double resistance_mohm;
    };
    const Print rows[] = {{0.0, 11.406, 4.570}, {0.1, 11.730, 2.686}, {0.2, 11.904, 2.226},
                          {0.3, 12.096, 1.970}, {0.4, 12.216, 1.843}, {0.5, 12.384, 1.747},
                          {0.6, 12.492, 1.711}, {0.7, 12.636, 1.685}, {0.8, 12.750, 1.697},
                          {0.9, 12.918, 1.756}, {1.0, 12.990, 1.769}};
    const auto table = rest_table(kAgm);
    REQUIRE(table.size() == 11);
    for (std::size_t i = 0; i < table.size(); ++i) {
      CAPTURE(i);
      CHECK(near(table[i].charge_frac, rows[i].charge_frac, 1e-9));
      CHECK(near(table[i].open_circuit_V, rows[i].open_V, 0.0005));
      CHECK(near(1.769 * table[i].resistance_ratio, rows[i].resistance_mohm, 0.0005));
    }
  }

  TEST_CASE(
      "OC: flooded cells of 1.265 when full [published gravities; confirmed, volts recomputed]") {
    const double rows[][2] = {
        {1.0, 12.63}, {0.75, 12.39}, {0.5, 12.18}, {0.25, 12.00}, {0.0, 11.76}};
    for (const auto& row : rows) {
      CAPTURE(row[0]);
      CHECK(near(rest_12V(Chemistry::flooded, row[0]), row[1], 0.005));
    }
    // The rounded rule of the trade: 12.6, 12.4, 12.2, 12.0, 11.6 V.
    CHECK(near(rest_12V(Chemistry::flooded, 1.0), 12.6, 0.05));
    CHECK(near(rest_12V(Chemistry::flooded, 0.5), 12.2, 0.05));
  }

  TEST_CASE("OC: lithium iron phosphate, four cells [composite curve; from memory]") {
    CHECK(near(rest_12V(kLithium, 1.0), 13.60, 0.005));
    CHECK(near(rest_12V(kLithium, 0.5), 13.14, 0.005));
    CHECK(near(rest_12V(kLithium, 0.2), 12.84, 0.005));
    CHECK(near(rest_12V(kLithium, 0.0), 10.40, 0.005));
    CHECK_FALSE(rest_source(kLithium).confirmed);
  }

  TEST_CASE("section 5: three modules at half charge, 60 A: 36.84 V [NREL ADVISOR; recomputed]") {
    const double power_W = 60.0 * 36.84;
    const OperatingPoint point = constant_power(3.0 * 12.384, 3.0 * 0.001747, power_W);
    CHECK(near(point.load_V, 36.84, 0.005));
    CHECK(near(point.current_A, 60.0, 0.05));
  }

  TEST_CASE("FZ1: freezing of electrolyte [US Army training texts; confirmed]") {
    const double rows[][2] = {{1.280, -90}, {1.250, -62}, {1.200, -16}, {1.150, 5}, {1.100, 19}};
    for (const auto& row : rows) {
      CAPTURE(row[0]);
      CHECK(near(freezing_C(row[0]), C_from_F(row[1]), 0.3));
    }
  }

  TEST_CASE("1.3: series for 12, 24, 36, 48 V and their names [handbook table; recomputed]") {
    CHECK(cell_count(kAgm, 12.0) == 6);
    CHECK(cell_count(kAgm, 6.0) == 3);
    CHECK(cell_count(kAgm, 8.0) == 4);
    const double lithium[][2] = {{12.8, 4}, {25.6, 8}, {38.4, 12}, {51.2, 16},
                                 {12.0, 4}, {24.0, 8}, {36.0, 12}, {48.0, 16}};
    for (const auto& row : lithium) {
      CAPTURE(row[0]);
      CHECK(cell_count(kLithium, row[0]) == static_cast<int>(row[1]));
      CHECK(near(facts_of(kLithium).absorption_cell_V * row[1], 14.6 * row[1] / 4.0, 0.005));
    }
    CHECK(near(named_V(kLithium, 51.2), 48.0, 1e-9));
  }

  TEST_CASE("36 V is three group 31 blocks in series [common practice, no source]") {
    const BankResult result = bank(day_at_36V());
    CHECK(result.found);
    CHECK(result.series_count == 3);
    CHECK(near(result.nominal_V, 36.0, 1e-9));
    CHECK(near(result.mass_kg / result.block_count, 31.0, 1e-9));
  }

  TEST_CASE(
      "a 51.2 V bank is beyond 50 V rules, a lead-acid 48 V bank is only so on charge "
      "[ISO 10133:2012 scope; confirmed]") {
    BankInput in = day_at_36V();
    in.motor_nominal_V = 48.0;
    in.motor_minimum_V = 40.0;
    in.motor_maximum_V = 62.0;
    const auto over_50 = [](const BankResult& result) -> std::string {
      for (const Caution& caution : result.trace.cautions) {
        if (caution.id == "bank.over_50") return caution.text;
      }
      return "";
    };
    const BankResult lead = bank(in);
    CHECK(near(lead.nominal_V, 48.0, 1e-9));
    CHECK(over_50(lead).find("on charge beyond") != std::string::npos);
    in.blocks[0].chemistry = kLithium;
    in.blocks[0].nominal_V = 51.2;
    in.blocks[0].continuous_A = 100.0;
    const BankResult lithium = bank(in);
    CHECK(near(lithium.nominal_V, 51.2, 1e-9));
    CHECK(near(lithium.charge_V, 58.4, 0.005));
    CHECK(over_50(lithium).find("51.2 V by name") != std::string::npos);
    in.motor_nominal_V = 36.0;
    in.blocks = {group_31()};
    CHECK(over_50(bank(in)).empty());
  }
}
