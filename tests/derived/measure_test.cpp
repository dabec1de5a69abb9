// What a person types and reads, worked out by hand from the definitions.

#include "io/measure.h"

#include <cmath>
#include <optional>
#include <string>
#include <string_view>

#include "support.h"

using namespace thole;

namespace {

struct Typed {
  std::string_view text, unit;
  System system;
  double value;
};

struct Seen {
  double value;
  std::string_view unit;
  System system;
  std::string_view text;
};

constexpr System kMetric = System::metric;
constexpr System kUs = System::us;

}  // namespace

TEST_SUITE("derived") {
  TEST_CASE("measures as they are typed") {
    const Typed rows[] = {
        {"1.35", "m", kMetric, 1.35},
        {"1,35 m", "m", kMetric, 1.35},
        {" 1.35m ", "m", kUs, 1.35},
        {"135 cm", "m", kMetric, 1.35},
        {"1350 mm", "m", kUs, 1.35},
        {"1 m 35", "m", kMetric, 1.35},
        {"1 m 35 cm", "m", kMetric, 1.35},
        {"4 ft 5 1/2 in", "m", kMetric, 1.3589},
        {"4'5 1/2\"", "m", kMetric, 1.3589},
        {"4′ 5 1/2″", "m", kUs, 1.3589},
        {"4’5½”", "m", kUs, 1.3589},
        {"4ft5.5in", "m", kUs, 1.3589},
        {"4'-5 1/2\"", "m", kUs, 1.3589},
        {"4 FEET 5-1/2 Inches", "m", kUs, 1.3589},
        {"4 5 1/2", "m", kUs, 1.3589},
        {"4 5", "m", kUs, 1.3462},
        {"4' 5", "m", kUs, 1.3462},
        {"4 1/2", "m", kUs, 1.3716},
        {"4.5", "m", kUs, 1.3716},
        {"53 1/2 in", "m", kMetric, 1.3589},
        {"-1' 6\"", "m", kUs, -0.4572},
        {"−2", "m", kMetric, -2.0},
        {"3/8 in", "mm", kMetric, 9.525},
        {"3/8", "mm", kUs, 9.525},
        {"1 1/4", "mm", kUs, 31.75},
        {"6", "mm", kMetric, 6.0},
        {"1 cm", "mm", kMetric, 10.0},
        {"20 km", "m", kMetric, 20000.0},
        {"15", "mps", kMetric, 7.716666666666667},
        {"15kn", "mps", kUs, 7.716666666666667},
        {"15 knots", "mps", kUs, 7.716666666666667},
        {"15 mph", "mps", kUs, 6.7056},
        {"7.7 m/s", "mps", kMetric, 7.7},
        {"36 km/h", "mps", kMetric, 10.0},
        {"5500 lb", "kg", kMetric, 2494.758035},
        {"5500", "kg", kUs, 2494.758035},
        {"5,500 lbs", "kg", kUs, 2494.758035},
        {"5,500.5 lbs", "kg", kUs, 2494.984831185},
        {"5,5", "kg", kMetric, 5.5},
        {"2.5 t", "kg", kMetric, 2500.0},
        {"85 lbf", "N", kMetric, 378.0988372971425},
        {"85 lb", "N", kUs, 378.0988372971425},
        {"85", "N", kUs, 378.0988372971425},
        {"0.4 kN", "N", kMetric, 400.0},
        {"3 %", "frac", kMetric, 0.03},
        {"3", "frac", kUs, 0.03},
        {"7%", "frac", kMetric, 0.07},
        {"45 F", "C", kMetric, 7.222222222222222},
        {"45 °F", "C", kMetric, 7.222222222222222},
        {"45", "C", kUs, 7.222222222222222},
        {"-5", "C", kMetric, -5.0},
        {"-4", "C", kUs, -20.0},
        {"20 N m", "Nm", kMetric, 20.0},
        {"15 ft-lb", "Nm", kUs, 20.337269224971},
        {"29 ksi", "MPa", kUs, 199.947961501882},
        {"4 mΩ", "ohm", kMetric, 0.004},
        {"4", "ohm", kMetric, 0.004},
        {"0.004 ohm", "ohm", kMetric, 0.004},
        {"1.2 kW", "W", kMetric, 1200.0},
        {"3.6 kWh", "Wh", kMetric, 3600.0},
        {"90 min", "h", kMetric, 1.5},
        {"1 h 30 min", "h", kMetric, 1.5},
        {"1h30", "h", kMetric, 1.5},
        {"6.5", "h", kUs, 6.5},
        {"0.5 m²", "m2", kMetric, 0.5},
        {"0.5 m2", "m2", kUs, 0.5},
        {"50 cm^2", "cm2", kMetric, 50.0},
        {"150 l", "m3", kMetric, 0.15},
        {"15°", "deg", kMetric, 15.0},
        {"1,25", "", kMetric, 1.25},
        {"12 Hz", "Hz", kMetric, 12.0},
    };
    for (const Typed& row : rows) {
      CAPTURE(row.text);
      std::string message = "left over";
      const std::optional<double> value = read_measure(row.text, row.unit, row.system, &message);
      REQUIRE(value.has_value());
      CHECK(*value == rel(row.value, 1e-13));
      CHECK(message.empty());
    }
  }

  TEST_CASE("what is no measure says what would be one") {
    struct Row {
      std::string_view text, unit;
      System system;
    };
    const Row rows[] = {
        {"", "m", kMetric},
        {"   ", "m", kMetric},
        {"abc", "m", kMetric},
        {"12 kg", "m", kMetric},
        {"5 bananas", "m", kUs},
        {"1.2.3", "m", kMetric},
        {"1e3", "m", kMetric},
        {"nan", "kg", kMetric},
        {"inf", "kg", kMetric},
        {"-", "m", kMetric},
        {"--5", "m", kMetric},
        {"5/0 in", "mm", kUs},
        {"1 2 3 4", "m", kUs},
        {"5 in 4 ft", "m", kUs},
        {"4 50", "m", kUs},
        {"1 35", "m", kMetric},
        {"15 kn", "m2", kMetric},
        {"\xff\xfe", "m", kMetric},
        {"4 ft 5 kg", "m", kUs},
        {"5 m", "", kMetric},
        {"m", "m", kMetric},
        {"99999999999999999999999999999999999999999999", "m", kMetric},
        {"1111111111111111111111111111111111111111111111111111111111111111", "m", kMetric},
    };
    for (const Row& row : rows) {
      CAPTURE(row.text);
      std::string message;
      CHECK_FALSE(read_measure(row.text, row.unit, row.system, &message).has_value());
      CHECK(message.find("Write it like ") != message.npos);
      CHECK_FALSE(read_measure(row.text, row.unit, row.system, nullptr).has_value());
    }
    std::string message;
    read_measure("12 kg", "m", kMetric, &message);
    CHECK(message == "\"12 kg\" is not a length. Write it like 1.35 m, 135 cm or 4 ft 5 in.");
  }

  TEST_CASE("measures as they are shown") {
    const Seen rows[] = {
        {1.35, "m", kMetric, "1.35 m"},      {7.6, "m", kMetric, "7.6 m"},
        {0.0, "m", kMetric, "0 m"},          {0.004, "m", kMetric, "0.004 m"},
        {150.0, "m", kMetric, "150 m"},      {20000.0, "m", kMetric, "20 km"},
        {1.3589, "m", kUs, "4′ 5 1/2″"},     {1.35, "m", kUs, "4′ 5 1/8″"},
        {1.2192, "m", kUs, "4′ 0″"},         {1.2190, "m", kUs, "4′ 0″"},
        {0.13, "m", kUs, "5 1/8″"},          {0.0, "m", kUs, "0″"},
        {-0.4572, "m", kUs, "-1′ 6″"},       {-0.0001, "m", kUs, "0″"},
        {50.0, "m", kUs, "164 ft"},          {9.525, "mm", kUs, "3/8″"},
        {6.35, "mm", kUs, "1/4″"},           {450.0, "mm", kUs, "17 11/16″"},
        {0.4, "mm", kUs, "0.0157 in"},       {9.525, "mm", kMetric, "9.53 mm"},
        {0.05, "mm", kUs, "0.00197 in"},     {0.0001, "mm", kUs, "0″"},
        {450.0, "mm", kMetric, "450 mm"},    {2300.0, "kg", kMetric, "2300 kg"},
        {2494.758035, "kg", kUs, "5500 lb"}, {400.0, "N", kMetric, "400 N"},
        {400.0, "N", kUs, "89.9 lbf"},       {7.716666666666667, "mps", kMetric, "15 kn"},
        {6.7056, "mps", kUs, "13 kn"},       {20.0, "Nm", kMetric, "20 N m"},
        {20.0, "Nm", kUs, "14.8 lbf ft"},    {200.0, "MPa", kUs, "29 ksi"},
        {1.0, "MPa", kUs, "145 psi"},        {33.6, "mm2", kUs, "33.6 mm²"},
        {0.5, "m2", kMetric, "0.5 m²"},      {0.5, "m2", kUs, "5.38 ft²"},
        {20.0, "C", kMetric, "20 °C"},       {20.0, "C", kUs, "68 °F"},
        {0.004, "ohm", kMetric, "4 mΩ"},     {0.031, "frac", kMetric, "3.1 %"},
        {0.03, "frac", kUs, "3 %"},          {1740.0, "W", kMetric, "1740 W"},
        {12300.0, "Wh", kUs, "12.3 kWh"},    {15.0, "deg", kMetric, "15°"},
        {1.125, "", kMetric, "1.125"},       {1.2, "m3_per_h", kMetric, "1.2 m³/h"},
        {std::nan(""), "m", kMetric, "-"},   {HUGE_VAL, "kg", kUs, "-"},
    };
    for (const Seen& row : rows) {
      CAPTURE(row.value);
      CAPTURE(row.unit);
      CHECK(show(row.value, row.unit, row.system).text() == row.text);
    }
  }

  TEST_CASE("numbers of a slider: shown and taken back") {
    struct Number {
      double value;
      std::string_view unit;
      System system;
      double shown;
    };
    const Number rows[] = {
        {0.3048, "m", kUs, 1.0},  {1.35, "m", kMetric, 1.35}, {25.4, "mm", kUs, 1.0},
        {0.03, "frac", kUs, 3.0}, {20.0, "C", kUs, 68.0},     {15.0, "deg", kMetric, 15.0},
    };
    for (const Number& row : rows) {
      CAPTURE(row.unit);
      CHECK(shown_number(row.value, row.unit, row.system) == rel(row.shown, 1e-12));
      CHECK(value_of_shown(row.shown, row.unit, row.system) == rel(row.value, 1e-12));
    }
    CHECK(shown_number(1852.0 / 3600.0, "mps", kMetric) == rel(1.0, 1e-12));
  }

  TEST_CASE("units as they are printed") {
    CHECK(unit_text("m") == "m");
    CHECK(unit_text("mps") == "m/s");
    CHECK(unit_text("mps2") == "m/s²");
    CHECK(unit_text("ohm_per_m") == "Ω/m");
    CHECK(unit_text("kg_per_m3") == "kg/m³");
    CHECK(unit_text("per_K") == "1/K");
    CHECK(unit_text("kg/m3") == "kg/m³");
    CHECK(unit_text("ohm/m") == "Ω/m");
    CHECK(unit_text("N m") == "N m");
    CHECK(unit_text("frac") == "");
    CHECK(unit_text("") == "");
  }
}
