#include "io/named_measures.h"

#include <algorithm>
#include <optional>

namespace thole {
namespace {

std::string_view without_blanks(std::string_view text) {
  while (!text.empty() && text.front() == ' ') text.remove_prefix(1);
  while (!text.empty() && text.back() == ' ') text.remove_suffix(1);
  return text;
}

std::string names_of(std::span<const NamedMeasure> measures) {
  std::string text;
  for (const NamedMeasure& one : measures) {
    if (!text.empty()) text += ", ";
    text += one.name;
  }
  return text;
}

std::string quoted(std::string_view text) { return "\"" + std::string(text) + "\""; }

}  // namespace

std::string read_named_measures(std::string_view text, std::span<NamedMeasure> measures,
                                System system) {
  while (!text.empty()) {
    const std::size_t comma = std::min(text.find(','), text.size());
    const std::string_view part = without_blanks(text.substr(0, comma));
    text.remove_prefix(std::min(comma + 1, text.size()));
    if (part.empty()) continue;
    const std::size_t equals = std::min(part.find('='), part.size());
    const std::string_view name = without_blanks(part.substr(0, equals));
    const auto one = std::find_if(measures.begin(), measures.end(),
                                  [name](const NamedMeasure& m) { return m.name == name; });
    if (equals == part.size() || one == measures.end()) {
      return quoted(part) + " is not understood; name=value, with " + names_of(measures) + ".";
    }
    if (one->named) return quoted(name) + " is there twice.";
    std::string message;
    const std::optional<double> value =
        read_measure(part.substr(equals + 1), one->unit, system, &message);
    if (!value) return std::string(name) + ": " + message;
    *one->value = *value;
    one->named = true;
  }
  for (const NamedMeasure& one : measures) {
    if (one.needed && !one.named) return quoted(one.name) + " is missing.";
  }
  return {};
}

}  // namespace thole
