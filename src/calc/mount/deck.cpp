#include "calc/mount/deck.h"

#include <algorithm>
#include <numbers>

#include "data/alloys.h"
#include "data/sources.h"
#include "data/sources_mount.h"

namespace thole {
namespace {

// Project decision: a factor of 4 on laminate, after a test series found the standard's compressive
// strength optimistic (hence 0.8); half of a core's, under a clamp that is seldom renewed.
constexpr double kLaminateCrushing_factor = 0.8 / 4.0;
constexpr double kCoreCrushing_factor = 0.5;
constexpr double kPunching_factor = 1.0 / 4.0;
constexpr double kAluminiumBearing_factor = 0.4;
constexpr double kAluminiumShear_MPa = 170.0;  // 5083-O, Aluminum Design Manual Table 3.3-1M

// Common practice: load spreads at most 2 to 2.5 thicknesses beyond the washer.
constexpr double kSpread_factor = 2.0;

// Common practice: two to three bolt diameters, six millimetres all round at least.
constexpr double kPlugBolts_factor = 2.5;
constexpr double kPlugRing_mm = 12.0;

struct StrongPointLine {
  double slope_kN_per_m = 0.0;
  double offset_kN = 0.0;
};

// ISO 15084:2003, recalled.
constexpr StrongPointLine strong_point_line(StrongPoint use) {
  switch (use) {
    case StrongPoint::anchoring:
      return {4.3, 5.4};
    case StrongPoint::bow_mooring:
      return {3.5, 4.3};
    case StrongPoint::aft:
      return {3.0, 3.8};
  }
  return {4.3, 5.4};
}

}  // namespace

DeckStrength deck_strength(DeckKind kind) {
  const Laminate skin = laminate(kDeckGlass_frac);
  DeckStrength strength{.crushing_MPa = skin.compressive_MPa,
                        .crushing_factor = kLaminateCrushing_factor,
                        .punching_MPa = skin.interlaminar_shear_MPa,
                        .punching_factor = kPunching_factor,
                        .crushing_source = kIso12215Laminate,
                        .punching_source = kIso12215Laminate};
  switch (kind) {
    case DeckKind::single_skin:
      break;
    case DeckKind::cored_balsa:
    case DeckKind::cored_foam:
      strength.crushing_MPa = deck_core(kind).compressive_MPa;
      strength.crushing_factor = kCoreCrushing_factor;
      strength.crushing_source = kIso12215Core;
      break;
    case DeckKind::aluminium: {
      const Alloy* alloy = find_alloy("5083-O");
      strength.crushing_MPa = alloy != nullptr ? alloy->yield_MPa : 0.0;
      strength.crushing_factor = kAluminiumBearing_factor;
      strength.punching_MPa = kAluminiumShear_MPa;
      strength.crushing_source = kAluminumDesignManual;
      strength.punching_source = kAluminumDesignManual;
      break;
    }
  }
  return strength;
}

double effective_backing_side_mm(const BackingInput& in) {
  const double spread_mm = in.washer_mm + 2.0 * kSpread_factor * in.thickness_mm;
  return std::min({in.side_mm, spread_mm, in.room_mm});
}

double plug_diameter_mm(double bolt_mm) {
  return std::max(kPlugBolts_factor * bolt_mm, bolt_mm + kPlugRing_mm);
}

double backing_thickness_mm(double side_mm, double washer_mm) { return 0.5 * (side_mm - washer_mm) / kSpread_factor; }

double backing_area_mm2(double effective_side_mm, double hole_mm) {
  const double hole_area_mm2 = std::numbers::pi / 4.0 * hole_mm * hole_mm;
  return std::max(effective_side_mm * effective_side_mm - hole_area_mm2, 0.0);
}

double punching_N(double perimeter_mm, double thickness_mm, double shear_MPa) {
  return perimeter_mm * thickness_mm * shear_MPa;
}

double strong_point_N(StrongPoint use, double mean_length_m, double category_factor) {
  const StrongPointLine line = strong_point_line(use);
  return std::max(1000.0 * category_factor * (line.slope_kN_per_m * mean_length_m - line.offset_kN),
                  0.0);
}

}  // namespace thole
