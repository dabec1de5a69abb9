#pragma once

// Cables and limits of the data links that a bow motor hangs on: the open marine network of five
// wires (NMEA 2000, IEC 61162-3) and Ethernet.

#include <span>
#include <string_view>

#include "base/trace.h"

namespace thole {

// A backbone. The current is of each of its legs; the resistance of one conductor of its power pair.
struct NetworkCable {
  std::string_view id{};     // "light"
  std::string_view label{};  // "Light"
  double longest_m = 0.0;    // backbone, terminator to terminator
  double rated_A = 0.0;
  double ohm_per_m = 0.0;
  SourceRef length_source{};
  SourceRef resistance_source{};
};

// Lightest first.
std::span<const NetworkCable> network_cables();

inline constexpr double kLongestDrop_m = 6.0;  // kNetworkLimits, as the next four
inline constexpr double kAllDrops_m = 78.0;
inline constexpr int kNetworkDevice_count = 50;
inline constexpr int kTerminator_count = 2;
inline constexpr double kLoadNumber_A = 0.05;
inline constexpr double kNetworkDrop_V = 1.5;  // kNetworkDrop
inline constexpr double kEthernet_m = 100.0;   // kEthernetLength

}  // namespace thole
