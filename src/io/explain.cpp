#include "io/explain.h"

#include <algorithm>
#include <cmath>

#include "base/number.h"
#include "io/measure.h"

namespace thole {
namespace {

bool is_letter(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); }
bool is_symbol(char c) { return is_letter(c) || (c >= '0' && c <= '9') || c == '_'; }

std::string number_text(double value) {
  const double size = std::abs(value);
  if (value != 0.0 && (size < 1e-4 || size >= 1e7)) {  // 5.08e-08 reads as 5.08 * 10^-8
    const int exponent = static_cast<int>(std::floor(std::log10(size)));
    return trimmed(significant(value / std::pow(10.0, exponent), 4)) + " * 10^" +
           std::to_string(exponent);
  }
  return trimmed(significant(value, 4));
}

std::string with_unit(double value, std::string_view unit) {
  const std::string text = unit_text(unit);
  return number_text(value) + (text.empty() ? "" : " " + text);
}

std::string_view bracketed(const Source& source) {
  return source.confirmed ? "" : " (unconfirmed)";
}

std::string source_line(const Source& source) {
  std::string line = std::string(source.title);
  if (!source.locator.empty()) line += ", " + std::string(source.locator);
  return line + std::string(bracketed(source));
}

}  // namespace

std::string numbers_put_in(const Step& step) {
  std::string out;
  std::string_view rest = step.formula;
  while (!rest.empty()) {
    std::size_t count = 1;
    if (is_symbol(rest.front())) {
      while (count < rest.size() && is_symbol(rest[count])) ++count;
    }
    const std::string_view word = rest.substr(0, count);
    const auto term = std::find_if(step.terms.begin(), step.terms.end(),
                                   [word](const Term& t) { return t.symbol == word; });
    if (term == step.terms.end()) {
      out += word;
    } else {
      const std::string number = number_text(term->value);
      const bool plain = number.find_first_of("-*") == number.npos;
      out += plain ? number : "(" + number + ")";
    }
    rest.remove_prefix(count);
  }
  return out;
}

std::string explain(const Step& step) {
  const std::string symbol(step.symbol.empty() ? std::string_view("=") : step.symbol);
  const std::string margin = "  " + std::string(symbol.size(), ' ');
  std::string text = step.label + "  [" + step.id + "]\n";
  if (!step.formula.empty()) {
    text += "  " + symbol + " = " + std::string(step.formula) + "\n";
    text += margin + " = " + numbers_put_in(step) + "\n" + margin;
  } else {
    text += "  " + symbol;
  }
  text += " = " + with_unit(step.value, step.unit) + "\n";
  for (const Term& term : step.terms) {
    text += "    " + std::string(term.symbol) + " = " + with_unit(term.value, term.unit) + ": " +
            std::string(term.meaning) + "\n";
  }
  for (const std::string& assumption : step.assumptions) text += "  Assumed: " + assumption + "\n";
  return text + "  Source: " + source_line(step.source) + "\n";
}

std::string explain(const Check& check) {
  std::string text = check.label + "  [" + check.id + "]\n";
  const Verdict verdict = check.verdict();
  text += "  " + std::string(word(verdict));
  if (verdict == Verdict::not_evaluated) {
    text += "\n";
  } else {
    text += ": " + with_unit(check.actual, check.unit) +
            (check.comparison == Comparison::at_most ? ", at most " : ", at least ") +
            with_unit(check.limit, check.unit);
    const double used = check.utilisation();
    if (std::isfinite(used)) text += " (" + fixed(100.0 * used, 0) + " % of the limit used)";
    text += "\n";
  }
  if (verdict != Verdict::pass && !check.remedy.empty()) text += "  Remedy: " + check.remedy + "\n";
  return text + "  Limit by: " + source_line(check.source) + "\n";
}

}  // namespace thole
