#pragma once

// HTML and SVG as they are written: piece by piece into one string, for chains of "+" make a long
// program, and this one travels over the wire.

#include <string>
#include <string_view>
#include <utility>

namespace thole {

class Markup {
 public:
  // As it stands.
  void raw(std::string_view markup);
  // Made fit for HTML and XML, between tags and in quoted attributes: the five signs that mean
  // something there are written out, control characters become blanks, what is not UTF-8 "?".
  void text(std::string_view text);
  void number(double value, int decimals = 1);  // without zeros at its end

  void open(std::string_view tag);   // "<td class=\"n\">" of "td class=\"n\""
  void close(std::string_view tag);  // "</td>" of the same
  // open, text, close
  void line(std::string_view tag, std::string_view text);

  // " cx=\"1.5\"", between "<" and ">"
  void attribute(std::string_view name, std::string_view text);
  void attribute(std::string_view name, double value);

  std::size_t size() const { return out_.size(); }
  void forget_from(std::size_t size) { out_.resize(size); }
  std::string take() { return std::move(out_); }

 private:
  std::string out_{};
};

std::string escaped(std::string_view text);

}  // namespace thole
