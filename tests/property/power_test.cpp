// What must hold for every bank and charger.

#include <cmath>
#include <initializer_list>
#include <limits>
#include <string>

#include "calc/bank/bank.h"
#include "calc/bank/capacity.h"
#include "calc/bank/kinetic.h"
#include "calc/charge/charge.h"
#include "data/batteries.h"
#include "job/estimate.h"
#include "job/fields.h"
#include "support.h"
#include "trace_support.h"

using namespace thole;

namespace {

BatteryBlock block_of(Chemistry chemistry, double nominal_V, double capacity_Ah) {
  return {.id = "block",
          .label = "A block",
          .chemistry = chemistry,
          .nominal_V = nominal_V,
          .capacity_Ah = capacity_Ah,
          .resistance_ohm = 0.4 / capacity_Ah * nominal_V / 12.0,
          .mass_kg = (is_lead(chemistry) ? 0.29 : 0.13) * capacity_Ah * nominal_V / 12.0,
          .continuous_A = is_lead(chemistry) ? 0.0 : capacity_Ah,
          .series_max = is_lead(chemistry) ? 0 : 4,
          .price = capacity_Ah};
}

std::vector<BatteryBlock> shelf(Chemistry chemistry) {
  std::vector<BatteryBlock> blocks;
  for (const double capacity_Ah : {50.0, 75.0, 100.0, 125.0, 200.0}) {
    blocks.push_back(block_of(chemistry, is_lead(chemistry) ? 12.0 : 12.8, capacity_Ah));
  }
  blocks.push_back(block_of(chemistry, is_lead(chemistry) ? 6.0 : 25.6, 180.0));
  return blocks;
}

BankInput holding_day(Chemistry chemistry = Chemistry::agm, double motor_V = 36.0) {
  return {.motor_nominal_V = motor_V,
          .motor_minimum_V = 0.83 * motor_V,
          .motor_maximum_V = 1.4 * motor_V,
          .energy_Wh = 1100.0,
          .holding_h = 4.0,
          .hours_on_h = 4.5,
          .mean_power_W = 230.0,
          .full_power_W = 1100.0,
          .blocks = shelf(chemistry)};
}

std::vector<ChargerModel> charger_shelf() {
  std::vector<ChargerModel> chargers;
  for (const int outputs : {1, 2, 3, 4}) {
    for (const double output_A : {5.0, 10.0, 15.0, 20.0}) {
      chargers.push_back({.id = std::to_string(outputs) + "x" + std::to_string(int(output_A)),
                          .outputs = outputs,
                          .output_A = output_A,
                          .lithium_profile = true,
                          .price = outputs * output_A});
    }
  }
  return chargers;
}

ChargeInput evening(Chemistry chemistry = Chemistry::agm) {
  return {.chemistry = chemistry,
          .block_capacity_Ah = 100.0,
          .block_nominal_V = is_lead(chemistry) ? 12.0 : 12.8,
          .series_count = 3,
          .parallel_count = 1,
          .depth_used_frac = 0.4,
          .chargers = charger_shelf()};
}

const Check* find_check(const Trace& trace, std::string_view id) {
  for (const Check& check : trace.checks) {
    if (check.id == id) return &check;
  }
  return nullptr;
}

Verdict verdict(const Trace& trace, std::string_view id) {
  const Check* check = find_check(trace, id);
  REQUIRE_MESSAGE(check != nullptr, std::string(id));
  return check->verdict();
}

bool has_caution(const Trace& trace, std::string_view id) {
  for (const Caution& caution : trace.cautions) {
    if (caution.id == id) return true;
  }
  return false;
}

void check_trace(const Trace& trace) {
  test::check_formulas(trace);
  for (const Step& step : trace.steps) {
    CAPTURE(step.id);
    CHECK(std::isfinite(step.value));
  }
  for (const Check& check : trace.checks) {
    CAPTURE(check.id);
    CHECK_FALSE(check.label.empty());
    CHECK_FALSE(check.remedy.empty());
    CHECK_FALSE(check.source->id.empty());
    for (const Change& change : check.changes) {
      CHECK_MESSAGE(find_field(change.field) != nullptr, change.field);
      CHECK_FALSE(change.label.empty());
    }
  }
}

void check_finite(const BankResult& result) {
  for (const double value : {result.nominal_V,
                             result.capacity_Ah,
                             result.capacity_required_Ah,
                             result.energy_Wh,
                             result.usable_Wh,
                             result.endurance_h,
                             result.endurance_full_h,
                             result.mean_A,
                             result.peak_A,
                             result.used_Ah,
                             result.depth_used_frac,
                             result.open_circuit_full_V,
                             result.open_circuit_end_V,
                             result.resistance_full_ohm,
                             result.resistance_end_ohm,
                             result.terminal_end_V,
                             result.charge_V,
                             result.mass_kg,
                             result.cycles_count}) {
    CHECK(std::isfinite(value));
    CHECK(value >= 0.0);
  }
  for (const DayPoint& point : result.day) {
    CHECK(std::isfinite(point.time_h));
    CHECK(std::isfinite(point.left_Wh));
  }
}

}  // namespace

TEST_SUITE("property") {
  TEST_CASE("bank: shown formulas give the shown values, whatever is asked") {
    for (const Chemistry chemistry :
         {Chemistry::flooded, Chemistry::agm, Chemistry::gel, Chemistry::lifepo4}) {
      for (const double motor_V : {12.0, 24.0, 36.0, 48.0}) {
        for (const double temperature_C : {-20.0, 0.0, 10.0, 30.0, 45.0}) {
          for (const double depth_frac : {0.1, 0.5, 1.0}) {
            CAPTURE(motor_V);
            CAPTURE(temperature_C);
            CAPTURE(depth_frac);
            BankInput in = holding_day(chemistry, motor_V);
            in.temperature_C = temperature_C;
            in.depth_of_discharge_frac = depth_frac;
            const BankResult result = bank(in);
            check_trace(result.trace);
            check_finite(result);
          }
        }
      }
    }
  }

  TEST_CASE("bank: extremes of the fields stay finite and explained") {
    const double tiny = 5.0;
    for (const double capacity_Ah : {tiny, 600.0}) {
      for (const double power_W : {0.0, 5000.0}) {
        for (const double hours_h : {0.0, 24.0}) {
          for (const double exponent : {0.0, 1.0, 1.6}) {
            for (const double rated_hours_h : {1.0, 100.0}) {
              BankInput in = holding_day();
              in.blocks = {block_of(Chemistry::agm, 12.0, capacity_Ah)};
              in.blocks[0].rated_hours_h = rated_hours_h;
              in.blocks[0].reserve_capacity_min = 180.0;
              in.blocks[0].resistance_ohm = 0.1;
              in.holding_h = hours_h;
              in.hours_on_h = hours_h;
              in.mean_power_W = power_W;
              in.full_power_W = power_W;
              in.energy_Wh = power_W * hours_h;
              in.peukert_exponent = exponent;
              in.age_factor = 2.0;
              const BankResult result = bank(in);
              check_trace(result.trace);
              check_finite(result);
            }
          }
        }
      }
    }
  }

  TEST_CASE("bank: with nothing on offer it says so") {
    BankInput in = holding_day();
    in.blocks.clear();
    const BankResult result = bank(in);
    CHECK_FALSE(result.found);
    CHECK(verdict(result.trace, "bank.block") == Verdict::fail);
    check_trace(result.trace);
    check_finite(result);
  }

  TEST_CASE("bank: an ordinary day finds a bank that passes every check") {
    for (const double motor_V : {12.0, 24.0, 36.0, 48.0}) {
      CAPTURE(motor_V);
      const BankResult result = bank(holding_day(Chemistry::agm, motor_V));
      for (const Check& check : result.trace.checks) {
        CAPTURE(check.id);
        CHECK(check.utilisation() <= 1.0);
      }
    }
  }

  TEST_CASE("bank: more demand never gets a lighter bank") {
    double last_kg = 0.0;
    for (double energy_Wh = 200.0; energy_Wh < 4000.0; energy_Wh += 200.0) {
      BankInput in = holding_day();
      in.energy_Wh = energy_Wh;
      in.mean_power_W = energy_Wh / in.hours_on_h;
      const BankResult result = bank(in);
      if (result.trace.governing()->verdict() == Verdict::fail) break;
      CHECK(result.mass_kg >= last_kg);
      last_kg = result.mass_kg;
    }
    CHECK(last_kg > 0.0);
  }

  TEST_CASE("bank: twice the strings, at least twice the hours; half the resistance") {
    BankInput in = holding_day();
    in.blocks = {block_of(Chemistry::agm, 12.0, 100.0)};
    in.parallel_count = 1;
    const BankResult one = bank(in);
    in.parallel_count = 2;
    const BankResult two = bank(in);
    CHECK(two.endurance_h >= 2.0 * one.endurance_h);
    CHECK(two.resistance_full_ohm == rel(0.5 * one.resistance_full_ohm, 1e-12));
    CHECK(two.terminal_end_V > one.terminal_end_V);
    CHECK(two.cycles_count > one.cycles_count);
    CHECK(two.peak_A < one.peak_A);
  }

  TEST_CASE("bank: cold, age, margin and depth push the way they should") {
    BankInput in = holding_day();
    in.blocks = {block_of(Chemistry::agm, 12.0, 100.0)};
    in.parallel_count = 1;
    const BankResult base = bank(in);
    const auto changed = [&](auto change) {
      BankInput other = in;
      change(other);
      return bank(other);
    };
    const BankResult cold = changed([](BankInput& i) { i.temperature_C = -5.0; });
    CHECK(cold.capacity_required_Ah > base.capacity_required_Ah);
    CHECK(cold.endurance_h < base.endurance_h);
    CHECK(cold.terminal_end_V < base.terminal_end_V);
    CHECK(cold.charge_V > base.charge_V);
    const BankResult aged = changed([](BankInput& i) { i.age_factor = 1.5; });
    CHECK(aged.capacity_required_Ah > base.capacity_required_Ah);
    CHECK(aged.endurance_h < base.endurance_h);
    const BankResult wary = changed([](BankInput& i) { i.margin_factor = 1.3; });
    CHECK(wary.capacity_required_Ah > base.capacity_required_Ah);
    CHECK(wary.endurance_h == rel(base.endurance_h, 1e-12));
    const BankResult deep = changed([](BankInput& i) { i.depth_of_discharge_frac = 0.8; });
    CHECK(deep.capacity_required_Ah < base.capacity_required_Ah);
    CHECK(deep.open_circuit_end_V < base.open_circuit_end_V);
    CHECK(deep.endurance_h > base.endurance_h);
  }

  TEST_CASE("bank: the energy check and the hours agree, exactly at the limit") {
    // Without margin, a bank that just passes lasts just as long as the day.
    for (const Chemistry chemistry : {Chemistry::agm, Chemistry::lifepo4}) {
      BankInput in = holding_day(chemistry);
      in.blocks = {block_of(chemistry, is_lead(chemistry) ? 12.0 : 12.8, 100.0)};
      in.parallel_count = 1;
      in.margin_factor = 1.0;
      in.holding_h = bank(in).endurance_h;
      in.hours_on_h = in.holding_h;
      in.energy_Wh = in.mean_power_W * in.holding_h;
      const BankResult just = bank(in);
      CHECK(just.endurance_h == rel(in.hours_on_h, 1e-9));
      CHECK(just.capacity_required_Ah == rel(just.capacity_Ah, 1e-9));
      in.energy_Wh *= 1.001;
      CHECK(verdict(bank(in).trace, "bank.energy") == Verdict::fail);
      in.energy_Wh *= 0.998;
      CHECK(verdict(bank(in).trace, "bank.energy") == Verdict::marginal);
    }
  }

  TEST_CASE("bank: each check fails when its own limit is passed") {
    BankInput in = holding_day(Chemistry::lifepo4);
    in.blocks = {block_of(Chemistry::lifepo4, 12.8, 100.0)};
    const auto verdict_of = [](const BankInput& input, std::string_view id) {
      return verdict(bank(input).trace, id);
    };
    SUBCASE("sag") {
      CHECK(verdict_of(in, "bank.sag") == Verdict::pass);
      in.motor_minimum_V = 40.0;
      CHECK(verdict_of(in, "bank.sag") == Verdict::fail);
    }
    SUBCASE("voltage") {
      CHECK(verdict_of(in, "bank.voltage") == Verdict::pass);
      in.series_count = 2;
      CHECK(verdict_of(in, "bank.voltage") == Verdict::fail);
      const BankResult result = bank(in);
      const Check* check = find_check(result.trace, "bank.voltage");
      bool offered = false;
      for (const Change& change : check->changes)
        offered |= change.field == "bank.series_count" && change.clear;
      CHECK(offered);
    }
    SUBCASE("charge voltage: three blocks charge at 43.8 V") {
      in.motor_maximum_V = 43.9;
      CHECK(verdict_of(in, "bank.charge_voltage") != Verdict::fail);
      in.motor_maximum_V = 43.7;
      CHECK(verdict_of(in, "bank.charge_voltage") == Verdict::fail);
    }
    SUBCASE("series: as many as the maker allows, else one") {
      in.blocks[0].series_max = 3;
      CHECK(verdict_of(in, "bank.series") == Verdict::pass);
      in.blocks[0].series_max = 2;
      CHECK(verdict_of(in, "bank.series") == Verdict::fail);
      in.blocks[0].series_max = 0;
      CHECK(verdict_of(in, "bank.series") == Verdict::fail);
      in.blocks[0] = block_of(Chemistry::lifepo4, 38.4, 60.0);
      in.blocks[0].series_max = 0;
      CHECK(verdict_of(in, "bank.series") == Verdict::pass);
      in.blocks[0] = block_of(Chemistry::agm, 12.0, 100.0);
      CHECK(verdict_of(in, "bank.series") == Verdict::pass);
    }
    SUBCASE("peak: 80 % of the electronics' limit, never green when it is unknown") {
      in.parallel_count = 1;
      const double peak_A = bank(in).peak_A;
      in.blocks[0].continuous_A = peak_A / 0.8 * 1.001;
      CHECK(verdict_of(in, "bank.peak") == Verdict::marginal);
      in.blocks[0].continuous_A = peak_A / 0.8 * 0.999;
      CHECK(verdict_of(in, "bank.peak") == Verdict::fail);
      in.blocks[0].continuous_A = 0.0;
      CHECK(verdict_of(in, "bank.peak") == Verdict::not_evaluated);
    }
    SUBCASE("temperature") {
      in.temperature_C = -19.0;
      CHECK(verdict_of(in, "bank.temperature") == Verdict::pass);
      in.temperature_C = -21.0;
      CHECK(verdict_of(in, "bank.temperature") == Verdict::fail);
      in.blocks = {block_of(Chemistry::flooded, 12.0, 100.0)};
      in.temperature_C = -20.0;
      in.depth_of_discharge_frac = 0.5;
      CHECK(verdict_of(in, "bank.temperature") == Verdict::pass);
      in.depth_of_discharge_frac = 1.0;  // a flat battery freezes near -10 C
      CHECK(verdict_of(in, "bank.temperature") == Verdict::fail);
    }
    SUBCASE("last burst: a day that drains the first well leaves no full thrust") {
      in.blocks = {block_of(Chemistry::agm, 12.0, 100.0)};
      in.parallel_count = 1;
      in.depth_of_discharge_frac = 1.0;
      in.temperature_C = 25.0;
      CHECK(verdict_of(in, "bank.last_burst") == Verdict::pass);
      in.mean_power_W = 600.0;
      in.energy_Wh = in.mean_power_W * in.hours_on_h;
      CHECK(verdict_of(in, "bank.last_burst") == Verdict::fail);
    }
  }

  TEST_CASE("bank: lithium weighs less; its dangers are named, those of lead are not") {
    const BankResult lead = bank(holding_day(Chemistry::agm));
    const BankResult lithium = bank(holding_day(Chemistry::lifepo4));
    CHECK(lithium.mass_kg < 0.5 * lead.mass_kg);
    for (const std::string_view id :
         {"bank.fire", "bank.cold_charge", "bank.cut_off", "bank.balance"}) {
      CAPTURE(id);
      CHECK(has_caution(lithium.trace, id));
      CHECK_FALSE(has_caution(lead.trace, id));
    }
    CHECK(has_caution(lead.trace, "bank.acid"));
    CHECK(has_caution(lead.trace, "bank.tap"));
    BankInput alone = holding_day(Chemistry::agm, 12.0);
    alone.blocks = {block_of(Chemistry::agm, 12.0, 200.0)};
    CHECK_FALSE(has_caution(bank(alone).trace, "bank.tap"));
  }

  TEST_CASE("bank: the order on the shelf does not matter; of equal weights the cheaper") {
    BankInput in = holding_day();
    const BankResult forth = bank(in);
    std::vector<BatteryBlock> turned(in.blocks.rbegin(), in.blocks.rend());
    in.blocks = turned;
    CHECK(bank(in).mass_kg == rel(forth.mass_kg, 1e-12));
    BatteryBlock dear = forth.block;
    dear.id = "dear";
    dear.price += 50.0;
    in.blocks = {dear, forth.block};
    CHECK(bank(in).block.id == forth.block.id);
  }

  TEST_CASE(
      "bank: the picture of the day starts full, never rises, ends with what the day leaves") {
    const BankInput in = holding_day();
    const BankResult result = bank(in);
    REQUIRE(result.day.size() > 10);
    CHECK(result.day.front().left_Wh == rel(result.energy_Wh, 1e-12));
    CHECK(result.day.back().time_h == rel(in.hours_on_h, 1e-12));
    for (std::size_t i = 1; i < result.day.size(); ++i) {
      CHECK(result.day[i].left_Wh <= result.day[i - 1].left_Wh);
      CHECK(result.day[i].time_h > result.day[i - 1].time_h);
    }
    const double day_Wh = in.energy_Wh / (1.0 - in.feeder_drop_frac);
    CHECK(result.day.back().left_Wh == rel(result.energy_Wh - day_Wh, 1e-9));
  }

  TEST_CASE("capacity: the label that a need asks for delivers it") {
    for (const double exponent : {1.0, 1.05, 1.12, 1.3}) {
      for (const double current_A : {2.0, 20.0, 60.0}) {
        for (const double needed_Ah : {10.0, 100.0, 400.0}) {
          const double label_Ah = label_for_Ah(needed_Ah, 20.0, exponent, current_A);
          CHECK(capacity_at_Ah({label_Ah, 20.0}, exponent, current_A) == rel(needed_Ah, 1e-9));
        }
      }
    }
  }

  TEST_CASE("kinetic model: charge is neither made nor lost, rest brings the wells level") {
    const KineticModel model = kinetic_model(Chemistry::agm, {100.0, 20.0}, 0.0);
    KineticState state = full_state(model);
    double drawn_Ah = 0.0;
    for (const double current_A : {30.0, 0.0, 10.0, -5.0}) {
      state = after(model, state, current_A, 0.4);
      drawn_Ah += 0.4 * current_A;
      CHECK(state.available_Ah + state.bound_Ah == rel(model.capacity_Ah - drawn_Ah, 1e-12));
    }
    state = after(model, state, 0.0, 100.0);
    CHECK(state.available_Ah / (state.available_Ah + state.bound_Ah) ==
          rel(model.available_frac, 1e-9));
    // What it says can be held empties the first well exactly.
    const double held_A = held_current_A(model, state, 0.5);
    CHECK(near(after(model, state, held_A, 0.5).available_Ah, 0.0, 1e-9));
  }

  TEST_CASE("temperature factors never rise with warmth") {
    for (const Chemistry chemistry : {Chemistry::agm, Chemistry::lifepo4}) {
      for (double temperature_C = -20.0; temperature_C < 45.0; temperature_C += 0.5) {
        CHECK(temperature_factor(chemistry, temperature_C + 0.5) <=
              temperature_factor(chemistry, temperature_C));
      }
    }
  }

  TEST_CASE("charge: shown formulas give the shown values, whatever is asked") {
    for (const Chemistry chemistry :
         {Chemistry::flooded, Chemistry::agm, Chemistry::gel, Chemistry::lifepo4}) {
      for (const double capacity_Ah : {5.0, 100.0, 600.0}) {
        for (const double depth_frac : {0.0, 0.1, 0.6, 1.0}) {
          for (const int series : {1, 3, 8}) {
            for (const double vent_area_cm2 : {-1.0, 0.0, 60.0}) {
              ChargeInput in = evening(chemistry);
              in.block_capacity_Ah = capacity_Ah;
              in.depth_used_frac = depth_frac;
              in.series_count = series;
              in.vent_area_cm2 = vent_area_cm2;
              in.temperature_C = depth_frac > 0.5 ? -20.0 : 20.0;
              const ChargeResult result = charge(in);
              check_trace(result.trace);
              for (const double value : {result.time_h, result.shore_A, result.ventilation_m3_per_h,
                                         result.vent_area_cm2, result.minutes_to_limit_min,
                                         result.spark_clearance_mm, result.charge_V}) {
                CHECK(std::isfinite(value));
                CHECK(value >= 0.0);
              }
            }
          }
        }
      }
    }
  }

  TEST_CASE("charge: without a bank or a charger it says so") {
    ChargeInput in = evening();
    in.chargers.clear();
    CHECK_FALSE(charge(in).found);
    CHECK(verdict(charge(in).trace, "charge.charger") == Verdict::fail);
    check_trace(charge(in).trace);
    in = evening();
    in.series_count = 0;
    CHECK_FALSE(charge(in).found);
  }

  TEST_CASE("charge: the smallest that serves; less time never a smaller one") {
    ChargeInput in = evening();
    double last_A = 0.0;
    for (const double available_h : {24.0, 10.0, 7.0, 6.0}) {
      in.available_h = available_h;
      const ChargeResult result = charge(in);
      CAPTURE(available_h);
      CHECK(result.time_h <= available_h);
      CHECK(result.shore_A <= in.shore_limit_A);
      CHECK(result.output_A >= last_A);
      CHECK(result.charger_count * result.charger.outputs == 3);
      last_A = result.output_A;
    }
    CHECK(last_A > 5.0);
  }

  TEST_CASE("charge: each check fails when its own limit is passed") {
    ChargeInput in = evening();
    in.chargers = {{.id = "one", .outputs = 3, .output_A = 15.0}};
    const auto verdict_of = [](const ChargeInput& input, std::string_view id) {
      return verdict(charge(input).trace, id);
    };
    const ChargeResult base = charge(in);
    SUBCASE("time") {
      in.available_h = base.time_h * 0.999;
      CHECK(verdict_of(in, "charge.time") == Verdict::fail);
      in.available_h = base.time_h * 1.2;
      CHECK(verdict_of(in, "charge.time") == Verdict::pass);
    }
    SUBCASE("shore") {
      in.shore_limit_A = base.shore_A * 0.999;
      CHECK(verdict_of(in, "charge.shore_current") == Verdict::fail);
      in.shore_limit_A = base.shore_A * 1.2;
      CHECK(verdict_of(in, "charge.shore_current") == Verdict::pass);
    }
    SUBCASE("bulk current: gel takes no more than a fifth") {
      CHECK(verdict_of(in, "charge.bulk_current") == Verdict::pass);
      in.chemistry = Chemistry::gel;
      in.block_capacity_Ah = 74.0;
      CHECK(verdict_of(in, "charge.bulk_current") == Verdict::fail);
      in.block_capacity_Ah = 76.0;
      CHECK(verdict_of(in, "charge.bulk_current") == Verdict::marginal);
    }
    SUBCASE("volts and profile") {
      CHECK(verdict_of(in, "charge.output_voltage") == Verdict::pass);
      CHECK(verdict_of(in, "charge.profile") == Verdict::pass);
      in.chemistry = Chemistry::lifepo4;
      in.block_nominal_V = 12.8;
      CHECK(verdict_of(in, "charge.output_voltage") == Verdict::pass);
      CHECK(verdict_of(in, "charge.profile") == Verdict::fail);
      in.block_nominal_V = 38.4;
      CHECK(verdict_of(in, "charge.output_voltage") == Verdict::fail);
    }
    SUBCASE("vent: made as required unless a size is given; NaN is not given") {
      CHECK(find_check(base.trace, "charge.vent_area") == nullptr);
      in.vent_area_cm2 = std::numeric_limits<double>::quiet_NaN();
      CHECK(find_check(charge(in).trace, "charge.vent_area") == nullptr);
      in.vent_area_cm2 = base.vent_area_cm2 * 0.99;
      CHECK(verdict_of(in, "charge.vent_area") == Verdict::fail);
      in.vent_area_cm2 = base.vent_area_cm2 * 1.2;
      CHECK(verdict_of(in, "charge.vent_area") == Verdict::pass);
      in.vent_area_cm2 = 0.0;
      CHECK(verdict_of(in, "charge.vent_area") == Verdict::fail);
    }
    SUBCASE("cold, only for lithium") {
      CHECK(find_check(base.trace, "charge.cold") == nullptr);
      in.chemistry = Chemistry::lifepo4;
      in.temperature_C = 5.0;
      CHECK(verdict_of(in, "charge.cold") == Verdict::pass);
      in.temperature_C = 4.9;
      CHECK(verdict_of(in, "charge.cold") == Verdict::fail);
    }
  }

  TEST_CASE("charge: a larger bank vents more, lithium vents no hydrogen") {
    ChargeInput in = evening();
    const ChargeResult one = charge(in);
    in.block_capacity_Ah *= 2.0;
    const ChargeResult two = charge(in);
    CHECK(two.ventilation_m3_per_h == rel(2.0 * one.ventilation_m3_per_h, 1e-12));
    CHECK(two.spark_clearance_mm > one.spark_clearance_mm);
    const ChargeResult lithium = charge(evening(Chemistry::lifepo4));
    CHECK(lithium.ventilation_m3_per_h == 0.0);
    CHECK(lithium.vent_area_cm2 == 0.0);
    CHECK(has_caution(lithium.trace, "charge.cell_gas"));
    CHECK_FALSE(has_caution(lithium.trace, "charge.hydrogen"));
    CHECK(has_caution(one.trace, "charge.hydrogen"));
    CHECK(has_caution(one.trace, "charge.shore_power"));
  }

  TEST_CASE("estimates fill what the stages need, within the ranges, and leave choices alone") {
    Job job{};
    Trace trace{};
    estimate_bank(job, trace);
    estimate_charge(job, trace);
    CHECK(job.bank.chemistry.value == Chemistry::agm);
    for (const std::string_view path :
         {"bank.depth_of_discharge_frac", "bank.age_factor", "bank.margin_factor",
          "bank.temperature_C", "charge.shore_V", "charge.shore_limit_A", "charge.available_h",
          "charge.locker_volume_m3"}) {
      CAPTURE(path);
      const Field* field = find_field(path);
      REQUIRE(field != nullptr);
      CHECK(field->access.origin(job) == Origin::estimated);
      CHECK(range_message(*field, field->access.get(job)).empty());
    }
    for (const std::string_view path : {"bank.block", "bank.series_count", "bank.parallel_count",
                                        "charge.charger", "charge.vent_area_cm2"}) {
      CAPTURE(path);
      CHECK(find_field(path)->access.origin(job) == Origin::absent);
    }
    Job lithium{};
    lithium.bank.chemistry = {Chemistry::lifepo4, Origin::given};
    lithium.water.air_C = {4.0, Origin::given};
    estimate_bank(lithium, trace);
    CHECK(lithium.bank.depth_of_discharge_frac.value > job.bank.depth_of_discharge_frac.value);
    CHECK(near(lithium.bank.temperature_C.value, 4.0, 1e-12));
  }
}
