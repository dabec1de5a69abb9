#pragma once

// Metals in flowing sea water, by their potentials, and how far apart two may be before the baser
// one is eaten.

#include <span>
#include <string_view>

#include "base/trace.h"
#include "data/alloys.h"
#include "data/bolts.h"

namespace thole {

struct MetalPotential {
  std::string_view name{};
  double noble_V = 0.0;  // the noblest reading, against saturated calomel
  double base_V = 0.0;   // the basest
};

// Noblest first. Source: kGalvanicTable.
std::span<const MetalPotential> metal_potentials();
const MetalPotential* find_metal(std::string_view name);  // "316 passive"; null when there is none

inline constexpr std::string_view kAluminium = "aluminium alloys";

// As they are while air reaches them: stainless passive, by its grade.
const MetalPotential* metal_of(const Alloy& alloy);
const MetalPotential* metal_of(const BoltGrade& grade);

// Most that may lie between two: from the noblest reading of the one to the basest of the other.
double potential_gap_V(const MetalPotential& a, const MetalPotential& b);

// What is let pass without keeping them apart. MIL-STD-889 and older practice, recalled.
inline constexpr double kGapSpray_V = 0.15;       // salt spray and wet joints
inline constexpr double kGapNormal_V = 0.25;      // in the open, kept dry
inline constexpr double kGapControlled_V = 0.50;  // indoors

}  // namespace thole
