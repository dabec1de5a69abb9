#pragma once

// Evaluates the text of a displayed formula. Grammar: + - * / ^ (right-associative), parentheses,
// unary minus, numbers, symbols (letters, digits, underscore, starting with a letter), and the
// functions sqrt exp ln log10 sin cos tan atan tanh abs min max.

#include <map>
#include <string>
#include <string_view>

namespace thole::test {

struct Evaluation {
  double value = 0.0;
  std::string error{};  // empty when all went well
};

Evaluation evaluate_formula(std::string_view text, const std::map<std::string, double>& terms);

}  // namespace thole::test
