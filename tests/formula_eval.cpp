#include "formula_eval.h"

#include <algorithm>
#include <cctype>
#include <cmath>
#include <cstdlib>
#include <vector>

namespace thole::test {
namespace {

class Parser {
 public:
  Parser(std::string_view text, const std::map<std::string, double>& terms)
      : text_(text), terms_(terms) {}

  Evaluation run() {
    const double value = sum();
    skip();
    if (error_.empty() && at_ != text_.size()) fail("unexpected text");
    return {value, error_};
  }

 private:
  double sum() {
    double value = product();
    for (;;) {
      if (take('+')) value += product();
      else if (take('-')) value -= product();
      else return value;
    }
  }
  double product() {
    double value = unary();
    for (;;) {
      if (take('*')) value *= unary();
      else if (take('/')) value /= unary();
      else return value;
    }
  }
  double unary() { return take('-') ? -unary() : power(); }
  double power() {
    const double base = atom();
    return take('^') ? std::pow(base, unary()) : base;
  }
  double atom() {
    skip();
    if (take('(')) {
      const double value = sum();
      if (!take(')')) fail("missing )");
      return value;
    }
    if (at_ < text_.size() && (std::isdigit(peek()) || peek() == '.')) return number();
    if (at_ < text_.size() && std::isalpha(peek())) return name();
    fail("value expected");
    return 0.0;
  }
  double number() {
    const std::string rest(text_.substr(at_));
    char* end = nullptr;
    const double value = std::strtod(rest.c_str(), &end);
    at_ += static_cast<std::size_t>(end - rest.c_str());
    return value;
  }
  double name() {
    std::string word;
    while (at_ < text_.size() && (std::isalnum(peek()) || peek() == '_')) word += text_[at_++];
    if (!take('(')) {
      const auto found = terms_.find(word);
      if (found == terms_.end()) fail("no term '" + word + "'");
      return found == terms_.end() ? 0.0 : found->second;
    }
    std::vector<double> arguments{sum()};
    while (take(',')) arguments.push_back(sum());
    if (!take(')')) fail("missing )");
    const double x = arguments.front();
    if (word == "min") return *std::min_element(arguments.begin(), arguments.end());
    if (word == "max") return *std::max_element(arguments.begin(), arguments.end());
    if (arguments.size() != 1) fail("one argument expected");
    if (word == "sqrt") return std::sqrt(x);
    if (word == "exp") return std::exp(x);
    if (word == "ln") return std::log(x);
    if (word == "log10") return std::log10(x);
    if (word == "sin") return std::sin(x);
    if (word == "cos") return std::cos(x);
    if (word == "tan") return std::tan(x);
    if (word == "atan") return std::atan(x);
    if (word == "tanh") return std::tanh(x);
    if (word == "abs") return std::abs(x);
    fail("no function '" + word + "'");
    return 0.0;
  }

  unsigned char peek() const { return static_cast<unsigned char>(text_[at_]); }
  void skip() {
    while (at_ < text_.size() && text_[at_] == ' ') ++at_;
  }
  bool take(char c) {
    skip();
    if (at_ >= text_.size() || text_[at_] != c) return false;
    ++at_;
    return true;
  }
  void fail(const std::string& what) {
    if (error_.empty()) error_ = what + " at " + std::to_string(at_) + " in " + std::string(text_);
    at_ = text_.size();
  }

  std::string_view text_;
  const std::map<std::string, double>& terms_;
  std::size_t at_ = 0;
  std::string error_{};
};

}  // namespace

Evaluation evaluate_formula(std::string_view text, const std::map<std::string, double>& terms) {
  return Parser(text, terms).run();
}

}  // namespace thole::test
