// Figures of the feeder recomputed by other means: by hand, or from another form of the formula.

#include <array>
#include <cmath>
#include <string_view>

#include "base/units.h"
#include "calc/circuit.h"
#include "calc/fault.h"
#include "calc/feeder/cable.h"
#include "calc/heading.h"
#include "calc/feeder/protection.h"
#include "calc/trip.h"
#include "data/conductors.h"
#include "support.h"

using namespace thole;

TEST_SUITE("derived") {
  TEST_CASE("Table areas and mils agree with the AWG formula") {
    constexpr double pi = 3.14159265358979;
    struct Row {
      std::string_view label{};
      int gauge = 0;
    };
    const Row rows[] = {{"14 AWG", 14}, {"12 AWG", 12}, {"10 AWG", 10},  {"8 AWG", 8},
                        {"6 AWG", 6},   {"4 AWG", 4},   {"3 AWG", 3},    {"2 AWG", 2},
                        {"1 AWG", 1},   {"1/0 AWG", 0}, {"2/0 AWG", -1}, {"3/0 AWG", -2},
                        {"4/0 AWG", -3}};
    for (const Row& row : rows) {
      CAPTURE(row.label);
      const double d_mm = awg_diameter_mm(row.gauge);
      CHECK(find_conductor(row.label)->area_mm2 == rel(0.25 * pi * d_mm * d_mm, 3e-4));
    }
  }

  TEST_CASE("Same cable, six answers: 60 A, 12 m out and back, 6 AWG") {
    const Conductor& cable = *find_conductor("6 AWG");
    CHECK(iso_drop_V(60.0, 12.0, 13.30) == rel(0.888, 1e-3));                            // VD-4
    CHECK(60.0 * 12.0 * resistance_at(cable.bare_ohm_per_m, 20.0) == rel(0.954, 1e-3));  // RES-2
    CHECK(e11_drop_V(60.0, 12.0, 26240.0) == rel(0.968, 1e-3));                          // VD-3
    CHECK(e11_drop_V(60.0, 12.0, cable.sae_mils_count) == rel(1.035, 1e-3));
    const double warm_C = conductor_temperature_C({.current_A = 60.0, .ampacity_A = 120.0});
    CHECK(60.0 * 12.0 * resistance_at(cable.tinned_ohm_per_m, warm_C) == rel(1.090, 1e-3));
    CHECK(60.0 * 12.0 * resistance_at(cable.tinned_ohm_per_m, 75.0) == rel(1.205, 1e-3));
  }

  TEST_CASE("Least sizes for 3 % and 10 % by the E-11 formula, SAE areas") {
    struct Row {
      double nominal_V = 0.0;
      double current_A = 0.0;
      std::array<std::string_view, 6> sizes{};  // 3 and 10 % at 3, 6 and 9 m one way; "" above 4/0
    };
    const Row rows[] = {
        {12, 30, {"6", "12", "4", "8", "2", "6"}},     {12, 60, {"4", "8", "1", "6", "2/0", "4"}},
        {12, 90, {"2", "6", "2/0", "4", "4/0", "2"}},  {12, 120, {"1", "6", "3/0", "2", "", "1"}},
        {24, 30, {"10", "14", "6", "12", "4", "10"}},  {24, 60, {"6", "12", "4", "8", "2", "6"}},
        {24, 90, {"4", "10", "2", "6", "1/0", "6"}},   {24, 120, {"4", "8", "1", "6", "2/0", "4"}},
        {36, 30, {"10", "14", "8", "14", "6", "12"}},  {36, 60, {"8", "14", "6", "10", "4", "8"}},
        {36, 90, {"6", "12", "4", "8", "2", "6"}},     {36, 120, {"6", "10", "2", "8", "1", "6"}},
        {48, 30, {"12", "14", "10", "14", "8", "12"}}, {48, 60, {"10", "14", "6", "12", "4", "10"}},
        {48, 90, {"8", "12", "4", "10", "2", "8"}},    {48, 120, {"6", "12", "4", "8", "2", "6"}},
    };
    for (const Row& row : rows) {
      for (std::size_t i = 0; i < row.sizes.size(); ++i) {
        const double loop_m = 2.0 * std::array{3.0, 6.0, 9.0}[i / 2];
        const double drop_V = row.nominal_V * (i % 2 == 0 ? 0.03 : 0.10);
        CAPTURE(row.nominal_V);
        CAPTURE(row.current_A);
        CAPTURE(loop_m);
        const Conductor* found = e11_size(row.current_A, loop_m, drop_V, AreaBasis::sae);
        CHECK((found == nullptr ? "" : found->label.substr(0, found->label.find(' '))) ==
              row.sizes[i]);
      }
    }
  }

  TEST_CASE("RES-6 K of 10.75 is pure copper at 29.3 C") {
    // rho in ohm m over a loop of one foot and an area of one circular mil.
    const double rho_20_ohm_m = 1.7241e-8;
    const double k = resistance_at(rho_20_ohm_m, 29.3) * kMetrePerFoot / 5.067075e-10;
    CHECK(near(k, e11_drop_V(1.0, kMetrePerFoot, 1.0), 0.01));
  }

  TEST_CASE("TMP temperature of the conductor under load, by hand iteration") {
    struct Row {
      double current_A = 0.0;
      double ampacity_A = 0.0;
      double ambient_C = 0.0;
      double temperature_C = 0.0;
      double ratio = 0.0;
    };
    const Row rows[] = {{60, 120, 30, 45.5, 1.100},
                        {60, 120, 50, 66.6, 1.183},
                        {100, 120, 30, 77.9, 1.228},
                        {56, 160, 30, 37.4, 1.068},
                        {80, 160, 40, 56.1, 1.142}};
    for (const Row& row : rows) {
      CAPTURE(row.current_A);
      const double found_C = conductor_temperature_C(
          {.current_A = row.current_A, .ampacity_A = row.ampacity_A, .ambient_C = row.ambient_C});
      CHECK(near(found_C, row.temperature_C, 0.06));
      CHECK(resistance_at(1.0, found_C) == rel(row.ratio, 5e-4));
    }
    // At its ampacity a cable in 30 C air reaches its insulation's rating.
    CHECK(near(conductor_temperature_C({.current_A = 120.0, .ampacity_A = 120.0}), 105.0, 1e-9));
    CHECK(near(temperature_from_resistance_C(1.100), 45.4, 0.05));  // MV-2
  }

  TEST_CASE("AMP-3 ambient factor: a sun-heated locker at 45 C, 105 C cable") {
    CHECK(near(ambient_factor(105.0, 45.0), 0.894, 5e-4));
    CHECK(near(ambient_factor(90.0, 50.0), 0.816, 5e-4));
  }

  // FEED-1: two lithium blocks of 13.2 V and 8 mohm, 2 x 6 m of 6 AWG at 20 C, fuse, breaker, plug.
  constexpr double kFeedBank_ohm = 0.016;
  constexpr double kFeedExternal_ohm = 0.019452;

  TEST_CASE("FEED-1 resistances add up: jumper, eight lugs, fuse, breaker, two cables, plug") {
    const double cable_ohm = 6.0 * find_conductor("6 AWG")->bare_ohm_per_m;
    const double jumper_ohm = 0.30 * find_conductor("2 AWG")->bare_ohm_per_m;
    const double external_ohm =
        jumper_ohm + 8.0 * 1e-4 + 0.6e-3 + 1.0e-3 + 2.0 * cable_ohm + 2.0 * 0.5e-3;
    CHECK(external_ohm == rel(kFeedExternal_ohm, 3e-4));
  }

  TEST_CASE("FEED-1a constant current, 56 A") {
    const OperatingPoint at = constant_current(26.4, kFeedBank_ohm + kFeedExternal_ohm, 56.0);
    CHECK(at.load_V == rel(24.415, 1e-4));
    CHECK(constant_current(26.4, kFeedBank_ohm, 56.0).load_V == rel(25.504, 1e-4));
    CHECK(56.0 * 56.0 * kFeedExternal_ohm == rel(61.0, 1e-3));
    const std::vector<double> nodes =
        node_voltages_V(26.4, 56.0, {kFeedBank_ohm, kFeedExternal_ohm});
    REQUIRE(nodes.size() == 2);
    CHECK(nodes[0] == rel(25.504, 1e-4));
    CHECK(nodes[1] == rel(24.415, 1e-4));
  }

  TEST_CASE("FEED-1b constant power, 1344 W") {
    const OperatingPoint at = constant_power(26.4, kFeedBank_ohm + kFeedExternal_ohm, 1344.0);
    CHECK(at.solvable);
    CHECK(at.load_V == rel(24.451, 1e-4));
    CHECK(at.current_A == rel(54.97, 1e-4));
    CHECK(at.limit_W == rel(4915.0, 1e-3));
  }

  TEST_CASE("FEED-1 on lead-acid at the end of discharge draws 13 % more current") {
    const double loop_ohm = 0.024 + kFeedExternal_ohm;
    CHECK(constant_current(24.0, loop_ohm, 56.0).load_V == rel(21.567, 1e-4));
    const OperatingPoint at = constant_power(24.0, loop_ohm, 1344.0);
    CHECK(at.load_V == rel(21.252, 1e-4));
    CHECK(at.current_A == rel(63.24, 1e-4));
  }

  TEST_CASE("FEED-2 more power than the loop can deliver has no solution") {
    const OperatingPoint at = constant_power(26.4, 0.035452, 5000.0);
    CHECK_FALSE(at.solvable);
    CHECK(at.load_V == rel(13.2, 1e-9));
    CHECK(constant_power(26.4, 0.035452, 4900.0).solvable);
  }

  TEST_CASE("Jumpers of a 48 V bank: three of 0.30 m 6 AWG and six lugs, 1.79 mohm") {
    const double ohm = 3.0 * 0.30 * find_conductor("6 AWG")->bare_ohm_per_m + 6.0 * 1e-4;
    CHECK(1e3 * ohm == rel(1.79, 3e-3));
  }

  TEST_CASE("SC-1, SC-3 short-circuit currents by Ohm's law") {
    CHECK(fault_A(26.4, 0.016) == rel(1650.0, 1e-3));
    CHECK(fault_A(26.4, 0.035452) == rel(744.7, 1e-3));
    CHECK(fault_A(24.0, 0.06995) == rel(343.0, 2e-3));  // aged lead, warm cable
    CHECK(fault_A(13.3, 4.0 * 0.20e-3) == rel(16600.0, 5e-3));
    CHECK(fault_A(13.3, 4.0 * 0.20e-3 + 0.4e-3) == rel(11100.0, 5e-3));
  }

  TEST_CASE("K-2 what conductors stand, k = 115") {
    struct Row {
      std::string_view label{};
      double square_A2s = 0.0;
      double at_1650_s = 0.0;
    };
    const Row rows[] = {{"8 AWG", 9.26e5, 0.34},
                        {"6 AWG", 2.339e6, 0.859},
                        {"4 AWG", 5.92e6, 2.17},
                        {"2 AWG", 1.50e7, 5.5}};
    for (const Row& row : rows) {
      CAPTURE(row.label);
      const double area_mm2 = find_conductor(row.label)->area_mm2;
      CHECK(withstand_s(115.0, area_mm2, 1.0) == rel(row.square_A2s, 5e-3));
      CHECK(withstand_s(115.0, area_mm2, 1650.0) == rel(row.at_1650_s, 1e-2));
    }
    CHECK(near(adiabatic_factor(50.0, 160.0), 129.2, 0.1));
    CHECK(near(adiabatic_factor(105.0, 160.0), 87.6, 0.1));
    CHECK(withstand_s(115.0, 13.302, 745.0) == rel(4.2, 1e-2));
  }

  TEST_CASE("A short circuit at the plug: a 60 A breaker opens in time, a 300 A fuse hardly") {
    const double stands_s = withstand_s(115.0, 13.302, 745.0);
    const auto longest_s = [](DeviceKind kind, double rating_ratio) {
      return opening_band(curve_of(usual_class(kind)), rating_ratio).longest_s;
    };
    CHECK(longest_s(DeviceKind::breaker, 745.0 / 60.0) < stands_s);
    CHECK(longest_s(DeviceKind::fuse, 745.0 / 300.0) > stands_s);
    CHECK(longest_s(DeviceKind::fuse, 343.0 / 300.0) > 3600.0);  // may never clear
  }

  // The handbook (6.6) takes the field square to north; the checks take the worst heading, which is
  // never less: asin for atan.
  TEST_CASE("MAG-1, MAG-2 field of a pair and of a single wire, and the heading error") {
    struct Row {
      double spacing_m = 0.0;
      double distance_m = 0.0;
      double field_uT = 0.0;
      std::array<double, 3> error_deg{};  // at 16, 20 and 25 uT
    };
    const Row rows[] = {{0.02, 0.3, 2.67, {9.5, 7.6, 6.1}},
                        {0.02, 0.5, 0.96, {3.4, 2.75, 2.2}},
                        {0.02, 1.0, 0.24, {0.86, 0.69, 0.55}},
                        {0.10, 0.5, 4.8, {16.7, 13.5, 10.9}}};
    for (const Row& row : rows) {
      CAPTURE(row.distance_m);
      const double field_uT = pair_field_uT(60.0, row.spacing_m, row.distance_m, row.distance_m);
      CHECK(field_uT == rel(row.field_uT, 5e-3));
      CHECK(near(square_error_deg(field_uT, 16.0), row.error_deg[0], 0.06));
      CHECK(near(square_error_deg(field_uT, 20.0), row.error_deg[1], 0.06));
      CHECK(near(square_error_deg(field_uT, 25.0), row.error_deg[2], 0.06));
    }
    CHECK(wire_field_uT(60.0, 1.0) == rel(12.0, 1e-9));
    CHECK(near(square_error_deg(12.0, 20.0), 31.0, 0.06));
    CHECK(worst_error_deg(12.0, 20.0) == rel(36.8699, 1e-6));  // 3-4-5 triangle
    CHECK(near(worst_error_deg(0.96, 20.0), square_error_deg(0.96, 20.0), 0.006));
  }

  TEST_CASE("MAG-3 the product form equals the sum of two wires, point (0.2, 0.3)") {
    // Vector sum of the fields of wires at (+-0.05, 0).
    const double r1_m = std::hypot(0.15, 0.3);
    const double r2_m = std::hypot(0.25, 0.3);
    const double b1 = wire_field_uT(60.0, r1_m);
    const double b2 = wire_field_uT(60.0, r2_m);
    const double bx = -b1 * 0.3 / r1_m + b2 * 0.3 / r2_m;
    const double by = b1 * 0.15 / r1_m - b2 * 0.25 / r2_m;
    const double product_uT = pair_field_uT(60.0, 0.1, r1_m, r2_m);
    CHECK(std::hypot(bx, by) == rel(9.1616, 1e-5));
    CHECK(product_uT == rel(std::hypot(bx, by), 1e-9));
  }

  TEST_CASE("Distances at which a heading errs by one and two degrees, 20 uT") {
    CHECK(near(clear_distance_m(60.0, 0.02, 20.0, 1.0), 0.83, 0.006));
    CHECK(near(clear_distance_m(60.0, 0.02, 20.0, 2.0), 0.59, 0.006));
    CHECK(near(clear_distance_m(60.0, 0.10, 20.0, 1.0), 1.85, 0.006));
    CHECK(near(clear_distance_m(60.0, 0.10, 20.0, 2.0), 1.31, 0.006));
    CHECK(near(clear_distance_m(120.0, 0.02, 20.0, 1.0), 1.17, 0.006));
    CHECK(near(clear_distance_m(120.0, 0.02, 20.0, 2.0), 0.83, 0.006));
  }
}
