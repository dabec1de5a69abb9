#include "io/measure.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <span>
#include <vector>

#include "base/number.h"
#include "base/units.h"
#include "io/text.h"

namespace thole {
namespace {

// --- units --------------------------------------------------------------------------------------

constexpr double kPascalPerPsi = kNewtonPerPoundForce / (kMetrePerInch * kMetrePerInch);
constexpr double kMetrePerMile = 1609.344;
constexpr double kWattPerHorsepower = 550.0 * kNewtonPerPoundForce * kMetrePerFoot;

// A way to write a unit: lower case, without blanks, dots and hyphens. `factor` leads to the first
// unit of its kind.
struct Spelling {
  std::string_view text{};
  double factor = 1.0;
  double offset = 0.0;  // added after the factor
};

struct KindOfMeasure {
  std::span<const Spelling> spellings{};
  std::string_view name{};    // "a length"
  std::string_view metric{};  // examples of what is understood
  std::string_view us{};
};

constexpr std::array kLengths{
    Spelling{"m"},
    Spelling{"metre"},
    Spelling{"metres"},
    Spelling{"meter"},
    Spelling{"meters"},
    Spelling{"mm", 1e-3},
    Spelling{"cm", 1e-2},
    Spelling{"km", 1e3},
    Spelling{"ft", kMetrePerFoot},
    Spelling{"foot", kMetrePerFoot},
    Spelling{"feet", kMetrePerFoot},
    Spelling{"'", kMetrePerFoot},
    Spelling{"in", kMetrePerInch},
    Spelling{"inch", kMetrePerInch},
    Spelling{"inches", kMetrePerInch},
    Spelling{"ins", kMetrePerInch},
    Spelling{"\"", kMetrePerInch},
    Spelling{"yd", 3.0 * kMetrePerFoot},
    Spelling{"mi", kMetrePerMile},
    Spelling{"mile", kMetrePerMile},
    Spelling{"miles", kMetrePerMile},
    Spelling{"nm", kMetrePerNauticalMile},
    Spelling{"nmi", kMetrePerNauticalMile},
};
constexpr std::array kAreas{
    Spelling{"m2"},
    Spelling{"sqm"},
    Spelling{"cm2", 1e-4},
    Spelling{"mm2", 1e-6},
    Spelling{"ft2", kMetrePerFoot* kMetrePerFoot},
    Spelling{"sqft", kMetrePerFoot* kMetrePerFoot},
    Spelling{"in2", kMetrePerInch* kMetrePerInch},
    Spelling{"sqin", kMetrePerInch* kMetrePerInch},
};
constexpr double kCubicFoot_m3 = kMetrePerFoot * kMetrePerFoot * kMetrePerFoot;
constexpr std::array kVolumes{
    Spelling{"m3"},
    Spelling{"l", 1e-3},
    Spelling{"litre", 1e-3},
    Spelling{"litres", 1e-3},
    Spelling{"liter", 1e-3},
    Spelling{"liters", 1e-3},
    Spelling{"ft3", kCubicFoot_m3},
    Spelling{"cuft", kCubicFoot_m3},
};
constexpr std::array kMasses{
    Spelling{"kg"},
    Spelling{"g", 1e-3},
    Spelling{"t", 1e3},
    Spelling{"lb", kKilogramPerPound},
    Spelling{"lbs", kKilogramPerPound},
    Spelling{"pound", kKilogramPerPound},
    Spelling{"pounds", kKilogramPerPound},
    Spelling{"#", kKilogramPerPound},
    Spelling{"oz", kKilogramPerPound / 16.0},
};
constexpr std::array kForces{
    Spelling{"n"},
    Spelling{"kn", 1e3},
    Spelling{"kgf", kGravity_mps2},
    Spelling{"kp", kGravity_mps2},
    Spelling{"lbf", kNewtonPerPoundForce},
    Spelling{"lb", kNewtonPerPoundForce},
    Spelling{"lbs", kNewtonPerPoundForce},
    Spelling{"pound", kNewtonPerPoundForce},
    Spelling{"pounds", kNewtonPerPoundForce},
    Spelling{"#", kNewtonPerPoundForce},
};
constexpr double kPoundFoot_Nm = kNewtonPerPoundForce * kMetrePerFoot;
constexpr std::array kTorques{
    Spelling{"nm"},
    Spelling{"lbfft", kPoundFoot_Nm},
    Spelling{"lbft", kPoundFoot_Nm},
    Spelling{"ftlb", kPoundFoot_Nm},
    Spelling{"ftlbf", kPoundFoot_Nm},
    Spelling{"ftlbs", kPoundFoot_Nm},
    Spelling{"inlb", kPoundFoot_Nm / 12.0},
    Spelling{"lbin", kPoundFoot_Nm / 12.0},
    Spelling{"lbfin", kPoundFoot_Nm / 12.0},
};
constexpr std::array kSpeeds{
    Spelling{"m/s"},
    Spelling{"mps"},
    Spelling{"km/h", 1.0 / 3.6},
    Spelling{"kmh", 1.0 / 3.6},
    Spelling{"kph", 1.0 / 3.6},
    Spelling{"kn", mps_from_kn(1.0)},
    Spelling{"kt", mps_from_kn(1.0)},
    Spelling{"kts", mps_from_kn(1.0)},
    Spelling{"knot", mps_from_kn(1.0)},
    Spelling{"knots", mps_from_kn(1.0)},
    Spelling{"mph", mps_from_mph(1.0)},
    Spelling{"ft/s", kMetrePerFoot},
    Spelling{"fps", kMetrePerFoot},
};
constexpr std::array kPressures{
    Spelling{"mpa"},
    Spelling{"gpa", 1e3},
    Spelling{"kpa", 1e-3},
    Spelling{"n/mm2"},
    Spelling{"psi", 1e-6 * kPascalPerPsi},
    Spelling{"ksi", 1e-3 * kPascalPerPsi},
    Spelling{"msi", kPascalPerPsi},
};
constexpr std::array kTemperatures{
    Spelling{"c"},
    Spelling{"degc"},
    Spelling{"celsius"},
    Spelling{"f", 1.0 / 1.8, -32.0 / 1.8},
    Spelling{"degf", 1.0 / 1.8, -32.0 / 1.8},
    Spelling{"fahrenheit", 1.0 / 1.8, -32.0 / 1.8},
};
constexpr std::array kShares{Spelling{"%", 0.01}, Spelling{"percent", 0.01}};
constexpr std::array kAngles{Spelling{"deg"}, Spelling{"degree"}, Spelling{"degrees"}};
constexpr std::array kCurrents{Spelling{"a"}, Spelling{"amp"}, Spelling{"amps"},
                               Spelling{"ma", 1e-3}};
constexpr std::array kCharges{Spelling{"ah"}};
constexpr std::array kVoltages{Spelling{"v"}, Spelling{"volt"}, Spelling{"volts"},
                               Spelling{"mv", 1e-3}};
constexpr std::array kPowers{Spelling{"w"}, Spelling{"watt"}, Spelling{"watts"},
                             Spelling{"kw", 1e3}, Spelling{"hp", kWattPerHorsepower}};
constexpr std::array kEnergies{Spelling{"wh"}, Spelling{"kwh", 1e3}};
constexpr std::array kResistances{Spelling{"ohm"}, Spelling{"ohms"}, Spelling{"mohm", 1e-3},
                                  Spelling{"milliohm", 1e-3}, Spelling{"uohm", 1e-6}};
constexpr std::array kTimes{
    Spelling{"s"},
    Spelling{"sec"},
    Spelling{"second"},
    Spelling{"seconds"},
    Spelling{"min", 60.0},
    Spelling{"mins", 60.0},
    Spelling{"minute", 60.0},
    Spelling{"minutes", 60.0},
    Spelling{"h", 3600.0},
    Spelling{"hr", 3600.0},
    Spelling{"hrs", 3600.0},
    Spelling{"hour", 3600.0},
    Spelling{"hours", 3600.0},
    Spelling{"d", 86400.0},
    Spelling{"day", 86400.0},
    Spelling{"days", 86400.0},
};
constexpr std::array kFrequencies{Spelling{"hz"}};
constexpr std::array kDifferences{Spelling{"k"}};
constexpr std::array<Spelling, 0> kPlain{};

constexpr KindOfMeasure kLength{kLengths, "a length", "1.35 m, 135 cm or 4 ft 5 in",
                                "4 ft 5 in, 4' 5 1/2\" or 1.35 m"};
constexpr KindOfMeasure kArea{kAreas, "an area", "0.5 m2, 50 cm2 or 5 sq ft",
                              "5 sq ft, 8 sq in or 0.5 m2"};
constexpr KindOfMeasure kVolume{kVolumes, "a volume", "0.15 m3 or 150 l", "5 cu ft or 150 l"};
constexpr KindOfMeasure kMass{kMasses, "a weight", "25 kg or 55 lb", "55 lb or 25 kg"};
constexpr KindOfMeasure kForce{kForces, "a force", "400 N or 90 lbf", "90 lbf or 400 N"};
constexpr KindOfMeasure kTorque{kTorques, "a torque", "20 N m or 15 lbf ft", "15 lbf ft or 20 N m"};
constexpr KindOfMeasure kSpeed{kSpeeds, "a speed", "15 kn, 7.7 m/s or 17 mph",
                               "15 kn, 17 mph or 7.7 m/s"};
constexpr KindOfMeasure kPressure{kPressures, "a stress", "200 MPa or 29 ksi", "29 ksi or 200 MPa"};
constexpr KindOfMeasure kTemperature{kTemperatures, "a temperature", "7 C or 45 F", "45 F or 7 C"};
constexpr KindOfMeasure kShare{kShares, "a share", "3 %", "3 %"};
constexpr KindOfMeasure kAngle{kAngles, "an angle", "15 deg", "15 deg"};
constexpr KindOfMeasure kCurrent{kCurrents, "a current", "50 A", "50 A"};
constexpr KindOfMeasure kCharge{kCharges, "a capacity", "100 Ah", "100 Ah"};
constexpr KindOfMeasure kVoltage{kVoltages, "a voltage", "36 V", "36 V"};
constexpr KindOfMeasure kPower{kPowers, "a power", "1200 W or 1.2 kW", "1200 W or 1.2 kW"};
constexpr KindOfMeasure kEnergy{kEnergies, "an energy", "3600 Wh or 3.6 kWh", "3600 Wh or 3.6 kWh"};
constexpr KindOfMeasure kResistance{kResistances, "a resistance", "4 mohm", "4 mohm"};
constexpr KindOfMeasure kTime{kTimes, "a time", "6.5 h or 1 h 30 min", "6.5 h or 1 h 30 min"};
constexpr KindOfMeasure kFrequency{kFrequencies, "a frequency", "12 Hz", "12 Hz"};
constexpr KindOfMeasure kDifference{kDifferences, "a difference of temperature", "10 K", "10 K"};
constexpr KindOfMeasure kNumber{kPlain, "a number", "1.25", "1.25"};

// A unit as names carry it, and how each system shows it. `factor` and `offset` lead from a shown
// number to the value.
struct Display {
  std::string_view text{};
  double factor = 1.0;
  double offset = 0.0;
};
struct Unit {
  std::string_view suffix{};
  const KindOfMeasure& kind;
  double factor = 1.0;  // to the first unit of its kind
  Display metric{};
  Display us{};
};

constexpr Display kKnots{"kn", mps_from_kn(1.0)};
constexpr std::array kUnits{
    Unit{"m", kLength, 1.0, {"m"}, {"ft", kMetrePerFoot}},
    Unit{"mm", kLength, 1e-3, {"mm"}, {"in", 1e3 * kMetrePerInch}},
    Unit{"m2", kArea, 1.0, {"m²"}, {"ft²", kMetrePerFoot* kMetrePerFoot}},
    Unit{"cm2", kArea, 1e-4, {"cm²"}, {"in²", 1e4 * kMetrePerInch* kMetrePerInch}},
    Unit{"mm2", kArea, 1e-6, {"mm²"}, {"mm²"}},
    Unit{"m3", kVolume, 1.0, {"m³"}, {"ft³", kCubicFoot_m3}},
    Unit{"kg", kMass, 1.0, {"kg"}, {"lb", kKilogramPerPound}},
    Unit{"N", kForce, 1.0, {"N"}, {"lbf", kNewtonPerPoundForce}},
    Unit{"Nm", kTorque, 1.0, {"N m"}, {"lbf ft", kPoundFoot_Nm}},
    Unit{"mps", kSpeed, 1.0, kKnots, kKnots},
    Unit{"MPa", kPressure, 1.0, {"MPa"}, {"ksi", 1e-3 * kPascalPerPsi}},
    Unit{"GPa", kPressure, 1e3, {"GPa"}, {"GPa"}},
    Unit{"C", kTemperature, 1.0, {"°C"}, {"°F", 1.0 / 1.8, -32.0 / 1.8}},
    Unit{"K", kDifference, 1.0, {"K"}, {"K"}},
    Unit{"frac", kShare, 1.0, {"%", 0.01}, {"%", 0.01}},
    Unit{"deg", kAngle, 1.0, {"°"}, {"°"}},
    Unit{"A", kCurrent, 1.0, {"A"}, {"A"}},
    Unit{"Ah", kCharge, 1.0, {"Ah"}, {"Ah"}},
    Unit{"V", kVoltage, 1.0, {"V"}, {"V"}},
    Unit{"W", kPower, 1.0, {"W"}, {"W"}},
    Unit{"Wh", kEnergy, 1.0, {"Wh"}, {"Wh"}},
    Unit{"ohm", kResistance, 1.0, {"mΩ", 1e-3}, {"mΩ", 1e-3}},
    Unit{"s", kTime, 1.0, {"s"}, {"s"}},
    Unit{"min", kTime, 60.0, {"min"}, {"min"}},
    Unit{"h", kTime, 3600.0, {"h"}, {"h"}},
    Unit{"Hz", kFrequency, 1.0, {"Hz"}, {"Hz"}},
};

const Unit* find_unit(std::string_view suffix) {
  for (const Unit& unit : kUnits) {
    if (unit.suffix == suffix) return &unit;
  }
  return nullptr;
}

const Display& display(const Unit& unit, System system) {
  return system == System::metric ? unit.metric : unit.us;
}

const Spelling* find_spelling(const KindOfMeasure& kind, std::string_view text) {
  for (const Spelling& spelling : kind.spellings) {
    if (spelling.text == text) return &spelling;
  }
  return nullptr;
}

// --- showing ------------------------------------------------------------------------------------

std::string figures(double value, int count) { return trimmed(significant(value, count)); }

// A count of inches in fractions: "5 1/8", "3/8", "0".
std::string in_fractions(long parts, long parts_per_inch) {
  const long whole = parts / parts_per_inch;
  long top = parts % parts_per_inch;
  long bottom = parts_per_inch;
  while (top > 0 && top % 2 == 0) {
    top /= 2;
    bottom /= 2;
  }
  std::string text = whole > 0 || top == 0 ? std::to_string(whole) : "";
  if (top == 0) return text;
  if (!text.empty()) text += ' ';
  return text + std::to_string(top) + "/" + std::to_string(bottom);
}

// 4′ 5 1/8″, to the eighth of an inch.
Shown feet_and_inches(double length_m) {
  constexpr long kPerInch = 8;
  const long parts = std::lround(std::abs(in_from_m(length_m)) * kPerInch);
  const long feet = parts / (12 * kPerInch);
  std::string text = length_m < 0.0 && parts > 0 ? "-" : "";
  if (feet > 0) text += std::to_string(feet) + "′ ";
  return {text + in_fractions(parts % (12 * kPerInch), kPerInch) + "″", ""};
}

Shown show_m(double value, System system) {
  const double size = std::abs(value);
  if (system == System::metric) {
    if (size >= 10000.0) return {figures(value / 1000.0, 3), "km"};
    if (size < 0.095) return {figures(value, 2), "m"};
    return {trimmed(fixed(value, size < 100.0 ? 2 : 0)), "m"};
  }
  if (size < 30.0) return feet_and_inches(value);
  if (size < 3000.0) return {fixed(ft_from_m(value), 0), "ft"};
  return {figures(value / kMetrePerNauticalMile, 3), "nmi"};
}

// Inches in sixteenths where that says it; small and odd sizes as a decimal.
Shown show_mm(double value, System system) {
  if (system == System::metric) return {figures(value, 3), "mm"};
  constexpr long kPerInch = 16;
  const double inches = in_from_m(0.001 * value);
  const double parts = std::abs(inches) * kPerInch;
  const long whole_parts = std::lround(parts);
  const bool too_small = whole_parts == 0 && std::abs(inches) >= 0.0005;
  if (too_small || (std::abs(inches) < 0.5 && std::abs(parts - static_cast<double>(whole_parts)) > 0.07)) {
    return {figures(inches, 3), "in"};
  }
  return {(value < 0.0 && whole_parts > 0 ? "-" : "") + in_fractions(whole_parts, kPerInch) + "″",
          ""};
}

// Thousands take the bigger unit from ten thousand on.
Shown show_large(double value, std::string_view unit) {
  if (std::abs(value) < 10000.0) return {figures(value, 3), std::string(unit)};
  return {figures(value / 1000.0, 3), "k" + std::string(unit)};
}

// --- reading ------------------------------------------------------------------------------------

struct Replacement {
  std::string_view from{};
  std::string_view to{};
};
// What phones and word processors put for plain characters.
constexpr std::array kReplacements{
    Replacement{"′", "'"},        Replacement{"’", "'"},      Replacement{"‘", "'"},
    Replacement{"ʹ", "'"},        Replacement{"″", "\""},     Replacement{"”", "\""},
    Replacement{"“", "\""},       Replacement{"''", "\""},    Replacement{"\u00A0", " "},
    Replacement{"\u2009", " "},   Replacement{"\u202F", " "}, Replacement{"\t", " "},
    Replacement{"−", "-"},        Replacement{"–", "-"},      Replacement{"⁄", "/"},
    Replacement{"½", " 1/2"},     Replacement{"¼", " 1/4"},   Replacement{"¾", " 3/4"},
    Replacement{"⅛", " 1/8"},     Replacement{"⅜", " 3/8"},   Replacement{"⅝", " 5/8"},
    Replacement{"⅞", " 7/8"},     Replacement{"²", "2"},      Replacement{"³", "3"},
    Replacement{"^", ""},         Replacement{"°", "deg"},    Replacement{"Ω", "ohm"},
    Replacement{"\u2126", "ohm"}, Replacement{"µ", "u"},      Replacement{"μ", "u"},
    Replacement{"·", ""},
};

std::string plain(std::string_view text) {
  std::string out;
  while (!text.empty()) {
    const auto found =
        std::find_if(kReplacements.begin(), kReplacements.end(),
                     [&text](const Replacement& r) { return text.starts_with(r.from); });
    if (found != kReplacements.end()) {
      out += found->to;
      text.remove_prefix(found->from.size());
    } else {
      const char c = text.front();
      out += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
      text.remove_prefix(1);
    }
  }
  return out;
}

bool is_digit(char c) { return c >= '0' && c <= '9'; }

// One number with the unit that follows it.
struct Part {
  double number = 0.0;
  std::string unit{};
};

// Takes measures apart: "4ft 5 1/2in" is {4, "ft"}, {5.5, "in"}.
class Parts {
 public:
  Parts(std::string_view text, System system, bool powers)
      : rest_(text), system_(system), powers_(powers) {}

  // Empty when the text is not made of numbers and units.
  std::vector<Part> read() {
    std::vector<Part> parts;
    skip_blanks();
    while (!rest_.empty() && parts.size() < 3) {
      Part part;
      if (!read_number(part.number)) return {};
      part.unit = read_unit();
      parts.push_back(std::move(part));
    }
    return rest_.empty() ? parts : std::vector<Part>{};
  }

 private:
  void skip_blanks() { rest_.remove_prefix(std::min(rest_.find_first_not_of(' '), rest_.size())); }

  std::string_view take_digits(std::string_view also) {
    std::size_t count = 0;
    while (count < rest_.size() && (is_digit(rest_[count]) || also.find(rest_[count]) != also.npos))
      ++count;
    const std::string_view taken = rest_.substr(0, count);
    rest_.remove_prefix(count);
    return taken;
  }

  // "1.35", "1,35"; "5,500" is five and a half thousand where a comma parts thousands.
  std::optional<double> decimal(std::string_view digits) const {
    const std::size_t comma = digits.find(',');
    const bool thousands =
        system_ == System::us && comma != digits.npos && comma >= 1 && comma <= 3 &&
        digits.front() != '0' && digits.substr(comma + 1).find(',') == digits.npos &&
        digits.substr(comma + 1,
                      digits.find('.') == digits.npos ? digits.npos : digits.find('.') - comma - 1)
                .size() == 3;
    std::string text(digits);
    if (thousands) text.erase(comma, 1);
    return plain_number(text);
  }

  // "5", "5.5", "3/8", "5 1/2", "5-1/2"
  bool read_number(double& number) {
    const std::string_view digits = take_digits(".,");
    const std::optional<double> first = decimal(digits);
    if (!first) return false;
    number = *first;
    const std::string_view before = rest_;
    if (const std::optional<double> below = take_denominator()) {  // "3/8"
      number /= *below;
      return *below > 0.0 && number < 1e15;
    }
    rest_ = before;
    if (!rest_.empty() && rest_.front() == '-') rest_.remove_prefix(1);
    skip_blanks();
    const std::optional<double> above = plain_number(take_digits(""));
    const std::optional<double> below = take_denominator();
    if (above && below && *below > 0.0 && digits.find_first_of(".,") == digits.npos) {
      number += *above / *below;
    } else {
      rest_ = before;
    }
    return number < 1e15;
  }

  std::optional<double> take_denominator() {
    if (rest_.empty() || rest_.front() != '/') return std::nullopt;
    rest_.remove_prefix(1);
    return plain_number(take_digits(""));
  }

  // Up to the next number; "m2" and "ft3" keep theirs where an area or a volume is asked for.
  std::string read_unit() {
    std::string unit;
    while (!rest_.empty()) {
      const char c = rest_.front();
      const bool power = powers_ && (c == '2' || c == '3') && !unit.empty();
      if (is_digit(c) && !power) break;
      if (c != ' ' && c != '-' && c != '.') unit += c;
      rest_.remove_prefix(1);
    }
    return unit;
  }

  std::string_view rest_;
  System system_;
  bool powers_;
};

// The unit that a number alone stands for: at the front the system's own, then the next smaller.
std::string_view unit_that_follows(std::string_view spelling) {
  if (spelling == "ft" || spelling == "'" || spelling == "feet" || spelling == "foot") return "in";
  if (spelling == "m") return "cm";
  if (spelling == "h" || spelling == "hr") return "min";
  if (spelling == "lb" || spelling == "lbs") return "oz";
  return {};
}

// Dividing by 100 keeps a typed decimal as it was typed, multiplying by 0.01 does not.
double scaled(double number, double factor) {
  const double inverse = std::round(1.0 / factor);
  const bool whole = factor < 1.0 && std::abs(inverse * factor - 1.0) < 1e-14;
  return whole ? number / inverse : number * factor;
}

// The sum of the parts in `unit`; empty when one is not of its kind, or when they do not go from
// large to small.
std::optional<double> sum_of(std::vector<Part> parts, const Unit& unit, System system) {
  const Display& own = display(unit, system);
  double sum = 0.0;
  double previous = 0.0;
  for (std::size_t i = 0; i < parts.size(); ++i) {
    Part& part = parts[i];
    double factor = own.factor;
    double offset = own.offset;
    const bool bare = part.unit.empty();
    if (i > 0) {
      const bool feet = parts[i - 1].unit.empty() && own.text == "ft";
      if (bare) part.unit = unit_that_follows(feet ? "ft" : std::string_view(parts[i - 1].unit));
      if (part.unit.empty()) return std::nullopt;
    }
    if (!part.unit.empty()) {
      const Spelling* spelling = find_spelling(unit.kind, part.unit);
      if (spelling == nullptr) return std::nullopt;
      factor = spelling->factor / unit.factor;
      offset = spelling->offset;
    }
    if (i > 0) {
      const bool too_many = bare && part.number * factor >= previous;  // "4 50" in feet and inches
      if (factor >= previous || too_many || offset != 0.0) return std::nullopt;
    }
    previous = factor;
    sum += scaled(part.number, factor) + offset;
  }
  return sum;
}

}  // namespace

Shown show(double value, std::string_view suffix, System system) {
  if (!std::isfinite(value)) return {"-", ""};
  const Unit* unit = find_unit(suffix);
  if (unit == nullptr) return {figures(value, 4), unit_text(suffix)};
  if (suffix == "m") return show_m(value, system);
  if (suffix == "mm") return show_mm(value, system);
  if (suffix == "W" || suffix == "Wh") return show_large(value, suffix);
  const Display& own = display(*unit, system);
  const double number = (value - own.offset) / own.factor;
  if (suffix == "frac" && std::abs(number) < 0.005) return {"0", "%"};  // nobody means 1e-13 %
  if (suffix == "mps") return {trimmed(fixed(number, 1)), std::string(own.text)};
  if (suffix == "C")
    return {trimmed(fixed(number, system == System::us ? 0 : 1)), std::string(own.text)};
  if (suffix == "deg") return {figures(number, 3) + "°", ""};
  if (suffix == "ohm" && number >= 1000.0) return {figures(value, 3), "Ω"};
  if (own.text == "ksi" && std::abs(number) < 1.0) return {figures(1000.0 * number, 3), "psi"};
  return {figures(number, 3), std::string(own.text)};
}

double shown_number(double value, std::string_view suffix, System system) {
  const Unit* unit = find_unit(suffix);
  if (unit == nullptr) return value;
  return (value - display(*unit, system).offset) / display(*unit, system).factor;
}

double value_of_shown(double number, std::string_view suffix, System system) {
  const Unit* unit = find_unit(suffix);
  if (unit == nullptr) return number;
  return scaled(number, display(*unit, system).factor) + display(*unit, system).offset;
}

std::string unit_text(std::string_view suffix) {
  constexpr std::array kTexts{
      Replacement{"m2", "m²"},   Replacement{"cm2", "cm²"},   Replacement{"mm2", "mm²"},
      Replacement{"mm4", "mm⁴"}, Replacement{"mm3", "mm³"},   Replacement{"m3", "m³"},
      Replacement{"m4", "m⁴"},   Replacement{"mps2", "m/s²"}, Replacement{"mps", "m/s"},
      Replacement{"ohm", "Ω"},   Replacement{"C", "°C"},      Replacement{"deg", "°"},
      Replacement{"Nm", "N m"},  Replacement{"kgm", "kg m"},  Replacement{"frac", ""},
      Replacement{"factor", ""}, Replacement{"ratio", ""},    Replacement{"exponent", ""},
      Replacement{"count", ""},
  };
  std::string text;
  bool per = false;
  while (!suffix.empty()) {
    const std::size_t end = suffix.find_first_of("_/ ");
    const std::string_view part = suffix.substr(0, end);
    const bool slash = end != suffix.npos && suffix[end] == '/';
    suffix.remove_prefix(end == suffix.npos ? suffix.size() : end + 1);
    if (part == "per") {
      per = true;
      continue;
    }
    const auto found = std::find_if(kTexts.begin(), kTexts.end(),
                                    [part](const Replacement& r) { return r.from == part; });
    if (per) {
      text += text.empty() ? "1/" : "/";
    } else if (!text.empty()) {
      text += ' ';
    }
    text += found != kTexts.end() ? found->to : part;
    per = slash;
  }
  return text;
}

std::optional<double> read_measure(std::string_view text, std::string_view suffix, System system,
                                   std::string* message) {
  const Unit* known = find_unit(suffix);
  const Unit plain_unit{suffix, kNumber, 1.0, {}, {}};
  const Unit& unit = known != nullptr ? *known : plain_unit;
  const auto refuse = [&]() -> std::optional<double> {
    if (message != nullptr) {
      const std::string_view examples = system == System::metric ? unit.kind.metric : unit.kind.us;
      *message = "\"" + plain_line(text, 30) + "\" is not " + std::string(unit.kind.name) +
                 ". Write it like " + std::string(examples) + ".";
    }
    return std::nullopt;
  };
  constexpr std::size_t kLongest = 60;
  if (text.size() > kLongest) return refuse();
  const std::string plain_text = plain(text);
  std::string_view rest = plain_text;
  rest.remove_prefix(std::min(rest.find_first_not_of(' '), rest.size()));
  const bool negative = rest.starts_with('-');
  if (negative || rest.starts_with('+')) rest.remove_prefix(1);
  const bool powers = &unit.kind == &kArea || &unit.kind == &kVolume || &unit.kind == &kPressure;
  std::vector<Part> parts = Parts(rest, system, powers).read();
  if (parts.empty()) return refuse();
  const bool one = parts.size() == 1;
  if (negative && one) parts.front().number = -parts.front().number;
  const std::optional<double> sum = sum_of(std::move(parts), unit, system);
  if (!sum || !std::isfinite(*sum)) return refuse();
  if (message != nullptr) message->clear();
  return negative && !one ? -*sum : *sum;
}

}  // namespace thole
