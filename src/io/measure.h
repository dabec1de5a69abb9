#pragma once

// Measures on screen and from the keyboard. Inside, every value is SI with its unit in its name;
// this is the only place that shows or reads customary units. A unit is given as the suffix of the
// name
// ("m", "mps", "ohm"; "frac" for a share of one, shown as percent; "" for a plain number).

#include <optional>
#include <string>
#include <string_view>

namespace thole {

enum class System { metric, us };

struct Shown {
  std::string number{};  // "1.35", or the whole measure where it has marks of its own: "4′ 5 1/8″"
  std::string unit{};  // "m"; empty when there is none to add
  std::string text() const { return unit.empty() ? number : number + " " + unit; }
};

// Three or four figures, as a person would say it. Not finite: "-".
Shown show(double value, std::string_view unit, System system);

// The number that stands for a value on screen, and back: 0.3048 m is 1 (foot) in the US system. For
// sliders, whose numbers go without their unit.
double shown_number(double value, std::string_view unit, System system);
double value_of_shown(double number, std::string_view unit, System system);

// The suffix as it is printed: "m2" -> "m²", "mps" -> "m/s", "ohm_per_m" -> "Ω/m".
std::string unit_text(std::string_view unit);

// What was typed, in `unit`. Understands the units of both systems whichever is on screen ("135
// cm", "4 ft 5 1/2 in", "4'5 1/2\"", "15 mph", "5500 lb", "3 %", "45 F"), decimal comma or point,
// fractions, and a number alone as the system's own unit ("4 5" in feet and inches). Otherwise
// empty, and a sentence in `message` (which may be null) that says what would be understood.
std::optional<double> read_measure(std::string_view text, std::string_view unit, System system,
                                   std::string* message);

}  // namespace thole
