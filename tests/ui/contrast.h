#pragma once

// Relative luminance and contrast as WCAG 2.2 (W3C Recommendation, 2023) defines them.

#include <algorithm>
#include <cmath>
#include <cstdint>

namespace thole::test {

inline double luminance(std::uint32_t rgb) {
  const auto channel = [rgb](int shift) {
    const double value = static_cast<double>((rgb >> shift) & 0xFF) / 255.0;
    return value <= 0.04045 ? value / 12.92 : std::pow((value + 0.055) / 1.055, 2.4);
  };
  return 0.2126 * channel(16) + 0.7152 * channel(8) + 0.0722 * channel(0);
}

inline double contrast(std::uint32_t a, std::uint32_t b) {
  const double high = std::max(luminance(a), luminance(b));
  const double low = std::min(luminance(a), luminance(b));
  return (high + 0.05) / (low + 0.05);
}

}  // namespace thole::test
