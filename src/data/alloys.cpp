#include "data/alloys.h"

#include <array>

#include "data/sources_mount.h"

namespace thole {
namespace {

// Welded 6061: LR 125, ISO 115, EN 1999-1-1 115 MPa; the lower stands here. 304 and 316L: the lower
// of the two standards.
constexpr std::array kAlloys{
    Alloy{"5052-H32", 215, 160, 65, 70.3, 0.33, 2680, kAluminumDesignManual},
    Alloy{"5083-H116", 305, 215, 125, 71.7, 0.33, 2660, kAluminumDesignManual},
    Alloy{"5083-O", 275, 125, 125, 71.7, 0.33, 2660, kAluminumDesignManual},
    Alloy{"5086-H116", 275, 195, 95, 71.7, 0.33, 2660, kAluminumDesignManual},
    Alloy{"5754-H111", 190, 80, 80, 70.0, 0.33, 2670, kLloydsAluminium},
    Alloy{"5383-H34", 305, 220, 145, 71.0, 0.33, 2660, kIso12215Alloys},
    Alloy{"6061-T6", 290, 240, 115, 69.6, 0.33, 2700, kAluminumDesignManual},
    Alloy{"6082-T6", 280, 240, 115, 70.0, 0.33, 2700, kLloydsAluminium},
    Alloy{"316L", 485, 170, 170, 193.0, 0.30, 8000, kStainlessPlate},
    Alloy{"304", 515, 205, 205, 193.0, 0.30, 7900, kStainlessPlate},
};

}  // namespace

const Alloy* find_alloy(std::string_view name) {
  for (const Alloy& alloy : kAlloys) {
    if (alloy.name == name) return &alloy;
  }
  return nullptr;
}

}  // namespace thole
