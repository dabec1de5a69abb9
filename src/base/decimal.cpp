#include "base/decimal.h"

#include <algorithm>
#include <bit>
#include <cmath>
#include <cstdint>
#include <cstring>
#include <limits>
#include <vector>

namespace thole {
namespace {

constexpr int kMantissa = 53;          // bits of a double
constexpr int kLowest = -1074;         // exponent of its last bit at the least
constexpr int kMostFigures = 800;      // no tie between two doubles has more
constexpr int kFarExponent = 2000;     // beyond any double with that many figures
constexpr int kFarthest = 100000000;     // figures and exponents are counted so far; no text is as long
constexpr std::uint32_t kBillion = 1000000000;

// A whole number of any size, in words from the lowest; no word on top is zero.
class Whole {
 public:
  explicit Whole(std::uint64_t value) {
    for (; value != 0; value >>= 32) words_.push_back(static_cast<std::uint32_t>(value));
  }

  bool zero() const { return words_.empty(); }
  int bits() const { return words_.empty() ? 0 : 32 * static_cast<int>(words_.size()) - std::countl_zero(words_.back()); }

  void multiply(std::uint32_t by, std::uint32_t add = 0) {
    std::uint64_t carried = add;
    for (std::uint32_t& word : words_) {
      carried += std::uint64_t{word} * by;
      word = static_cast<std::uint32_t>(carried);
      carried >>= 32;
    }
    if (carried != 0) words_.push_back(static_cast<std::uint32_t>(carried));
  }
  void multiply_by_power_of_ten(int power) {
    for (; power >= 9; power -= 9) multiply(kBillion);
    for (; power > 0; --power) multiply(10);
  }
  // The remainder.
  std::uint32_t divide(std::uint32_t by) {
    std::uint64_t rest = 0;
    for (std::size_t i = words_.size(); i-- > 0;) {
      rest = rest << 32 | words_[i];
      words_[i] = static_cast<std::uint32_t>(rest / by);
      rest %= by;
    }
    trim();
    return static_cast<std::uint32_t>(rest);
  }
  void shift_up(int count) {
    multiply(std::uint32_t{1} << count % 32);
    if (zero()) return;
    const auto whole = static_cast<std::size_t>(count / 32);
    words_.resize(words_.size() + whole);
    std::memmove(words_.data() + whole, words_.data(), (words_.size() - whole) * sizeof(words_[0]));
    std::memset(words_.data(), 0, whole * sizeof(words_[0]));
  }
  void halve() { divide(2); }
  // Halved so often, to the nearest, a tie to the even one. Precondition: count > 0.
  void shift_down(int count) {
    if (zero()) return;
    const bool half = bit(count - 1);
    bool below = false;
    for (int k = 0; k < count - 1 && !below; ++k) below = bit(k);
    const std::size_t whole = std::min<std::size_t>(static_cast<std::size_t>(count / 32), words_.size());
    std::memmove(words_.data(), words_.data() + whole, (words_.size() - whole) * sizeof(words_[0]));
    words_.resize(words_.size() - whole);
    if (count % 32 != 0) divide(std::uint32_t{1} << count % 32);
    if (half && (below || bit(0))) multiply(1, 1);
  }
  bool at_least(const Whole& other) const {
    if (words_.size() != other.words_.size()) return words_.size() > other.words_.size();
    return !std::lexicographical_compare(words_.rbegin(), words_.rend(), other.words_.rbegin(), other.words_.rend());
  }
  // Precondition: at_least(other).
  void take(const Whole& other) {
    std::int64_t carried = 0;
    for (std::size_t i = 0; i < words_.size(); ++i) {
      carried += std::int64_t{words_[i]} - (i < other.words_.size() ? other.words_[i] : 0);
      words_[i] = static_cast<std::uint32_t>(carried);
      carried >>= 32;
    }
    trim();
  }
  std::string figures() && {
    std::string text;
    while (!zero()) {
      std::uint32_t nine = divide(kBillion);
      for (int k = 0; k < 9 && (nine != 0 || !zero()); ++k, nine /= 10) text += static_cast<char>('0' + nine % 10);
    }
    std::reverse(text.begin(), text.end());
    return text;
  }

 private:
  bool bit(int k) const {
    const auto word = static_cast<std::size_t>(k / 32);
    return word < words_.size() && (words_[word] >> k % 32 & 1u) != 0;
  }
  void trim() {
    while (!words_.empty() && words_.back() == 0) words_.pop_back();
  }

  std::vector<std::uint32_t> words_{};
};

// top / bottom, correctly rounded.
double quotient(Whole top, Whole bottom) {
  constexpr int kKept = 62;  // bits of the quotient, or one more
  const int shift = kKept - (top.bits() - bottom.bits());
  if (shift > 0) top.shift_up(shift);
  if (shift < 0) bottom.shift_up(-shift);
  bottom.shift_up(kKept);
  std::uint64_t found = 0;
  for (int bit = kKept; bit >= 0; --bit) {
    found <<= 1;
    if (top.at_least(bottom)) {
      top.take(bottom);
      found |= 1;
    }
    bottom.halve();
  }
  if (!top.zero()) found |= 1;  // more than it says
  const int bits = 64 - std::countl_zero(found);
  const int kept = std::min(kMantissa, bits - shift - kLowest);  // fewer where doubles end
  if (kept < 0) return 0.0;
  const int dropped = bits - kept;
  const std::uint64_t half = std::uint64_t{1} << (dropped - 1);
  const std::uint64_t rest = found & (2 * half - 1);
  std::uint64_t mantissa = found >> dropped;
  if (rest > half || (rest == half && (mantissa & 1) != 0)) ++mantissa;
  return std::ldexp(static_cast<double>(mantissa), dropped - shift);
}

double nearest(std::uint64_t small, const Whole& figures, bool is_small, int power) {
  // Both exact: so is, but for one rounding, what comes of them.
  constexpr double kPowers[] = {1e0,  1e1,  1e2,  1e3,  1e4,  1e5,  1e6,  1e7,  1e8,  1e9,  1e10, 1e11,
                                1e12, 1e13, 1e14, 1e15, 1e16, 1e17, 1e18, 1e19, 1e20, 1e21, 1e22};
  if (is_small && small < (std::uint64_t{1} << kMantissa) && std::abs(power) < static_cast<int>(std::size(kPowers))) {
    const double exact = static_cast<double>(small);
    return power < 0 ? exact / kPowers[-power] : exact * kPowers[power];
  }
  Whole top = figures, bottom(1);
  (power < 0 ? bottom : top).multiply_by_power_of_ten(std::abs(power));
  return quotient(std::move(top), std::move(bottom));
}

bool is_figure(std::string_view text, std::size_t i) { return i < text.size() && text[i] >= '0' && text[i] <= '9'; }

}  // namespace

std::string decimal(double value, int decimals) {
  int exponent = 0;
  const double part = std::frexp(std::abs(value), &exponent);
  exponent -= kMantissa;
  Whole scaled(static_cast<std::uint64_t>(std::ldexp(part, kMantissa)));
  scaled.multiply_by_power_of_ten(decimals);
  if (exponent > 0) scaled.shift_up(exponent);
  if (exponent < 0) scaled.shift_down(-exponent);
  std::string text = std::move(scaled).figures();
  const auto after = static_cast<std::size_t>(decimals);
  if (text.size() <= after) text.insert(0, after + 1 - text.size(), '0');
  if (after > 0) text.insert(text.size() - after, 1, '.');
  if (std::signbit(value)) text.insert(0, 1, '-');
  return text;
}

DecimalRead read_decimal(std::string_view text) {
  std::size_t i = 0;
  const bool negative = i < text.size() && text[i] == '-';
  if (i < text.size() && (text[i] == '-' || text[i] == '+')) ++i;
  Whole figures(0);
  std::uint64_t small = 0;
  int count = 0, power = 0;
  bool any = false, point = false, lost = false;
  for (;; ++i) {
    if (!point && i < text.size() && text[i] == '.') {
      point = true;
      continue;
    }
    if (!is_figure(text, i)) break;
    any = true;
    const auto figure = static_cast<std::uint32_t>(text[i] - '0');
    if (count < kMostFigures) {
      if (count > 0 || figure != 0) ++count;
      figures.multiply(10, figure);
      small = 10 * small + figure;
      power -= point ? 1 : 0;
    } else {
      lost = lost || figure != 0;
      power += point ? 0 : 1;
    }
    power = std::clamp(power, -kFarthest, kFarthest);
  }
  if (!any) return {};
  DecimalRead read{.length = i};
  if (i < text.size() && (text[i] == 'e' || text[i] == 'E')) {
    std::size_t k = i + 1;
    const bool down = k < text.size() && text[k] == '-';
    if (k < text.size() && (text[k] == '-' || text[k] == '+')) ++k;
    int exponent = 0;
    const bool said = is_figure(text, k);
    for (; is_figure(text, k); ++k) exponent = std::min(10 * exponent + (text[k] - '0'), kFarthest);
    if (said) {
      power += down ? -exponent : exponent;
      read.length = k;
    }
  }
  if (lost) figures.multiply(10, 1), --power;
  if (figures.zero() || power < -kFarExponent) {
    read.value = 0.0;
  } else if (power > kFarExponent) {
    read.value = std::numeric_limits<double>::infinity();
  } else {
    constexpr int kSmall = 19;  // figures that 64 bits hold
    read.value = nearest(small, figures, count <= kSmall, power);
  }
  if (negative) read.value = -read.value;
  return read;
}

}  // namespace thole
