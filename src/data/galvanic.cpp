#include "data/galvanic.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace thole {
namespace {

constexpr std::array kMetals{
    MetalPotential{"316 passive", 0.00, -0.10},       MetalPotential{"304 passive", -0.04, -0.10},
    MetalPotential{"nickel-aluminium bronze", -0.14, -0.22}, MetalPotential{"copper", -0.30, -0.37},
    MetalPotential{"316 active", -0.33, -0.46},       MetalPotential{"304 active", -0.44, -0.58},
    MetalPotential{"mild steel", -0.60, -0.72},       MetalPotential{"aluminium alloys", -0.76, -1.00},
    MetalPotential{"zinc", -0.98, -1.03},
};

}  // namespace

std::span<const MetalPotential> metal_potentials() { return kMetals; }

const MetalPotential* find_metal(std::string_view name) {
  const auto found = std::find_if(kMetals.begin(), kMetals.end(),
                                  [&](const MetalPotential& metal) { return metal.name == name; });
  return found == kMetals.end() ? nullptr : &*found;
}

const MetalPotential* metal_of(const Alloy& alloy) {
  return find_metal(!is_stainless(alloy) ? kAluminium : alloy.name == "304" ? "304 passive" : "316 passive");
}

const MetalPotential* metal_of(const BoltGrade& grade) {
  return find_metal(grade.carbon_steel ? "mild steel"
                    : grade.name.starts_with("A2") || grade.name == "F593C" ? "304 passive" : "316 passive");
}

double potential_gap_V(const MetalPotential& a, const MetalPotential& b) {
  return std::max(std::abs(a.noble_V - b.base_V), std::abs(b.noble_V - a.base_V));
}

}  // namespace thole
